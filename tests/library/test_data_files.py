"""Data files are read whole or refused."""

import pytest

from secondplate.data_files import read_records


def write(folder, text):
    """Write a data file to try."""
    (folder / "trial.csv").write_text(text, encoding="utf-8")
    return folder


def test_cells_are_stripped(tmp_path):
    """Blanks round a cell do not count."""
    folder = write(tmp_path, "a,b\n 1 ,x y \n")
    assert read_records("trial", columns=("a", "b"), folder=folder) == [{"a": "1", "b": "x y"}]


@pytest.mark.parametrize(
    ("text", "complaint"),
    [
        ("a\n1\n", "data file trial must have the columns a, b, got no b"),
        ("a,b\n1,\n", "data file trial line 2 must have a b, got an empty cell"),
        ("a,b\n1,2\n3\n", "data file trial line 3 must have a b, got an empty cell"),
        ("a,b\n1,2,3\n", "data file trial line 2 must have 2 cells, got more"),
        ("", "data file trial must have the columns a, b, got no a"),
    ],
)
def test_gaps_are_refused(tmp_path, text, complaint):
    """A missing column, an empty cell, a short row and a long row are each refused by line."""
    with pytest.raises(ValueError, match=f"^{complaint}$"):
        read_records("trial", columns=("a", "b"), folder=write(tmp_path, text))


def test_a_file_that_is_not_there_is_an_error(tmp_path):
    """A missing file is not taken for an empty one."""
    with pytest.raises(FileNotFoundError, match="trial.csv"):
        read_records("trial", columns=("a",), folder=tmp_path)
