"""Tables refuse rows that cannot be trusted; every table of the library loads."""

import pytest

from secondplate.data_files import DATA_FOLDER
from secondplate.sources import BIBLIOGRAPHY
from secondplate.tables import BASES, COLUMNS, Row, load, values

HEAD = ",".join(COLUMNS)
# These have columns of their own, read and checked where they are used.
OTHER_FILES = {"sources", "glossary", "spr_joint_rows", "joint_models_left_out"}
TABLES = sorted(path.stem for path in DATA_FOLDER.glob("*.csv") if path.stem not in OTHER_FILES)


def table(folder, *rows, head=HEAD):
    """Write a table to try and return its folder."""
    (folder / "trial.csv").write_text("\n".join([head, *rows, ""]), encoding="utf-8")
    return folder


@pytest.mark.parametrize("name", TABLES)
def test_each_table_loads(name):
    """Every table of the library loads, and each row has a known basis and source."""
    rows = load(name)
    assert rows
    assert all(row.basis in BASES and row.source in BIBLIOGRAPHY for row in rows)


@pytest.mark.parametrize("name", TABLES)
def test_further_source_columns_hold_known_sources(name):
    """Key columns that name a source or basis hold known ones, or ``-``."""
    for row in load(name):
        for column, cell in row.keys.items():
            if column.endswith("source"):
                assert cell == "-" or cell in BIBLIOGRAPHY
            if column.endswith("basis"):
                assert cell == "-" or cell in BASES


def test_further_columns_become_keys(tmp_path):
    """Columns beyond the fixed ones are kept as keys."""
    folder = table(tmp_path, "flow,8,L/min,any,practice,none,common practice,gun", head=HEAD + ",foot")
    (row,) = load("trial", folder=folder)
    assert row.keys == {"foot": "gun"}
    assert row.number == 8


@pytest.mark.parametrize("column", COLUMNS)
def test_a_row_without_one_of_the_columns_is_refused(tmp_path, column):
    """Each of the seven cells must be filled."""
    cells = dict(
        zip(COLUMNS, ("flow", "8", "L/min", "any", "practice", "none", "common practice"), strict=True)
    )
    folder = table(tmp_path, ",".join((cells | {column: ""}).values()))
    with pytest.raises(ValueError, match=f"^data file trial line 2 must have a {column}, got an empty cell$"):
        load("trial", folder=folder)


@pytest.mark.parametrize(
    ("row", "complaint"),
    [
        (
            "flow,8,L/min,any,hearsay,none,published",
            "source must be an id of the bibliography, got 'hearsay'",
        ),
        ("flow,8,L/min,any,iso_14175,x,guess", "basis of flow must be one of published, .*, got 'guess'"),
        ("flow,8,L/min,any,iso_14175,x,common practice", "basis of flow must fit its source iso_14175, got"),
        ("flow,8,L/min,any,practice,none,published", "basis of flow must fit its source practice, got"),
    ],
)
def test_rows_that_cannot_be_trusted_are_refused(tmp_path, row, complaint):
    """Unknown sources, unknown bases and common practice that claims a source are refused."""
    with pytest.raises(ValueError, match=f"^{complaint}"):
        load("trial", folder=table(tmp_path, row))


@pytest.mark.parametrize("text", ["nan", "inf", "a few", "1,5", "5 A"])
def test_a_value_that_is_no_number_is_refused_when_used_as_one(text):
    """Words may stand in a table, but not where a number is asked for."""
    row = Row(
        name="flow", value=text, unit="L/min", conditions="any", source="practice", locator="none",
        basis="common practice",
    )  # fmt: skip
    with pytest.raises(ValueError, match="^value of flow must be a finite number in L/min, got "):
        _ = row.number


def test_a_name_twice_is_refused_as_dictionary(tmp_path):
    """A table with one name twice is no dictionary of values."""
    row = "flow,8,L/min,any,practice,none,common practice"
    with pytest.raises(ValueError, match="^name in table trial must appear once, got 'flow' twice$"):
        values("trial", folder=table(tmp_path, row, row))
