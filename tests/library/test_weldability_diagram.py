"""The diagram and the path through it: every field is met, borders part fields, tables equal places."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.weldability_composition import composition, mix, steel_names
from secondplate.weldability_diagram import (
    LINE_UNCERTAINTY_PERCENT,
    REGIONS,
    constitution_region,
    diagram_lines,
    near_border,
)
from secondplate.weldability_dilution import dilution_path, martensite_dilution
from secondplate.weldability_equivalents import schaeffler_equivalents

LINES = {line.name: line for line in diagram_lines()}
STUD, RIVET = composition("304-type"), composition("36MnB4")


@pytest.mark.parametrize(
    ("chromium", "nickel", "region"),
    [
        (5, 5, "martensite"),
        (10, 15, "austenite and martensite"),
        (20, 20, "austenite"),
        (14, 4, "martensite and ferrite"),
        (17, 9, "austenite, martensite and ferrite"),
        (25, 12, "austenite and ferrite"),
        (30, 3, "ferrite"),
        (0, 0, "martensite"),
        (40, 30, "austenite and ferrite"),
    ],
)
def test_a_place_in_each_field(chromium, nickel, region):
    """Each field is found at a place that lies well inside it."""
    assert constitution_region(chromium, nickel) == region


@given(chromium=st.floats(0, 40), nickel=st.floats(0, 30))
def test_every_place_has_a_field(chromium, nickel):
    """Any place gives one known field, and a table with it gives the same."""
    single = str(constitution_region(chromium, nickel))
    assert single in REGIONS
    table = constitution_region(np.array([chromium, 20.0]), np.array([[nickel], [20.0]]))
    assert table.shape == (2, 2)
    assert table[0, 0] == single


@pytest.mark.parametrize(
    "name", ["martensite line", "austenite line", "ferrite line 0 %", "ferrite line 100 %"]
)
def test_border_is_near_and_parts_two_fields(name):
    """On a border both sides differ; 0.29 across it is near, 0.31 is not."""
    line, chromium = LINES[name], 16.0
    across = np.hypot(1, line.slope)
    nickel = line.nickel_at(chromium)
    assert constitution_region(chromium, nickel - 0.01) != constitution_region(chromium, nickel + 0.01)
    offsets = np.array([-0.31, -0.29, 0.0, 0.29, 0.31]) * across
    assert near_border(chromium, nickel + offsets).tolist() == [False, True, True, True, False]


def test_ferrite_lines_lie_in_order():
    """To the right of no ferrite the lines of 5 to 100 % follow one another downwards."""
    at_20 = [line.nickel_at(20) for line in diagram_lines() if line.ferrite_percent is not None]
    assert np.all(np.diff(at_20) < 0)
    assert [line.ferrite_percent for line in diagram_lines()] == [None, None, 0, 5, 10, 20, 40, 80, 100]


def test_path_is_straight_and_ends_at_both_steels():
    """Equivalents are linear in the share, from those of the stud to those of the rivet."""
    path = dilution_path(STUD, RIVET)
    assert path.dilution.shape == path.region.shape == path.near_border.shape == (21,)
    for name in ("chromium_equivalent_percent", "nickel_equivalent_percent", "carbon_percent"):
        np.testing.assert_allclose(np.diff(getattr(path, name), 2), 0, rtol=0, atol=1e-12)  # rounding
    stud = schaeffler_equivalents(STUD)
    assert path.chromium_equivalent_percent[0] == pytest.approx(stud.chromium_equivalent_percent, rel=1e-15)
    assert path.in_wrc_1992[0]
    assert not path.in_wrc_1992[-1]


@pytest.mark.parametrize("stud", steel_names("stud"))
@pytest.mark.parametrize("rivet", steel_names("rivet"))
def test_martensite_begins_where_the_path_crosses(stud, rivet):
    """Just before the share the melt keeps some austenite, just after it none; the band is 0.3 either way."""
    of_stud, of_rivet = composition(stud), composition(rivet)
    share = martensite_dilution(of_stud, of_rivet)
    path = dilution_path(of_stud, of_rivet, dilution=[share.best - 1e-6, share.best + 1e-6])
    assert path.region.tolist() == ["austenite and martensite", "martensite"]
    line = LINES["martensite line"]
    for end, side in ((share.low, 1), (share.high, -1)):
        at = schaeffler_equivalents(mix(of_stud, of_rivet, dilution=end))
        above = at.nickel_equivalent_percent - line.nickel_at(at.chromium_equivalent_percent)
        # Exact but for rounding.
        across = above / np.hypot(1, line.slope)
        assert across == pytest.approx(side * LINE_UNCERTAINTY_PERCENT, rel=1e-9)


def test_a_richer_stud_bears_more_rivet():
    """A 309 stud stays clear of martensite alone longer than a 304 stud."""
    assert martensite_dilution(composition("309-type"), RIVET).low > martensite_dilution(STUD, RIVET).high


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: constitution_region(41, 10),
            "chromium equivalent must be between 0 % and 40 %, got 41 %",
        ),
        (lambda: near_border(10, 31), "nickel equivalent must be between 0 % and 30 %, got 31 %"),
        (
            lambda: martensite_dilution(RIVET, RIVET),
            "stud above the line of martensite must be between",
        ),
        (
            lambda: martensite_dilution(STUD, STUD),
            "rivet above the line of martensite must be between",
        ),
        (lambda: dilution_path(STUD, RIVET, dilution=[0, 1.1]), "dilution must be between 0 and 1, got 1.1"),
    ],
)
def test_refusals(call, sentence):
    """A place off the diagram, a path that does not cross and a share above one are refused."""
    with pytest.raises(ValueError, match=sentence):
        call()
