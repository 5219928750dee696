"""Files are put in place whole, or the old one stays."""

import pytest

from grading.whole_files import write_whole


def test_a_failed_write_leaves_the_old_file(tmp_path, monkeypatch):
    """When putting the file in place fails the old one is still there and no scrap is left."""
    path = tmp_path / "results.csv"
    path.write_text("old")

    def refuse(*_):
        message = "disk full"
        raise OSError(message)

    monkeypatch.setattr("grading.whole_files.os.replace", refuse)
    with pytest.raises(OSError, match="disk full"):
        write_whole(path, b"new")
    assert path.read_text() == "old"
    assert list(tmp_path.iterdir()) == [path]
