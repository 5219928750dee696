"""29 CFR 1910.133 Eye and face protection, table of filter lenses. Read on two law sites."""

import pytest

from secondplate.cautions import ARC_PROCESSES, cautions_about, minimum_shade

SOURCE = "osha_1910_133"


@pytest.mark.parametrize(
    ("process", "current_a", "shade"),
    [
        ("shielded metal arc", 50, 7),
        ("shielded metal arc", 100, 8),
        ("shielded metal arc", 200, 10),
        ("shielded metal arc", 400, 11),
        ("gas metal arc", 50, 7),
        ("gas metal arc", 400, 10),
        ("gas tungsten arc", 100, 8),
        ("gas tungsten arc", 300, 10),
        ("plasma arc", 10, 6),
        ("plasma arc", 50, 8),
        ("plasma arc", 200, 10),
        ("plasma arc", 600, 11),
        ("air carbon arc", 800, 11),
    ],
)
def test_minimum_shade(process, current_a, shade):
    """Each row of the table gives its minimum shade."""
    assert minimum_shade(process=process, current_a=current_a) == shade


def test_stud_welding_is_not_listed():
    """The table has no row for stud welding, and the caution says so."""
    assert not any("stud" in process for process in ARC_PROCESSES)
    assert any("stud welding is not listed" in caution.conditions for caution in cautions_about("eyes"))
