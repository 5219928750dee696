"""Pictures of heat and metallurgy: shapes are those of the library, names find room, words tell numbers."""

import numpy as np
import pytest
from matplotlib.path import Path

from drawings import constitution_diagram, sensitivity_chart, temperature_field, zone_hardness_chart
from drawings.constitution import _region_grid
from drawings.room import roomiest
from drawings.sensitivity_chart import _Scale
from drawings.temperature_field import ABOVE_MM, WIDE_MM, _filled, _outlines
from drawings.temperature_histories import _spread
from secondplate.heat.joint import PARTS, default_joint, part_at
from secondplate.weldability_composition import steel_names
from secondplate.weldability_diagram import REGIONS, constitution_region
from tests.drawings.weld_cases import HOT_WELD, PLAIN_WELD, ROWS, SHOP_WELD, cooling, moved

# The order in which the section is painted; what comes later covers what came before.
PAINTED = ("second plate", "gap", "top plate", "slug", "rivet", "stud")


@pytest.mark.parametrize("stud_diameter_mm", [3, 6])
def test_drawn_parts_are_the_parts_of_the_library(stud_diameter_mm):
    """At places all over the section the part on top of the drawing is the library's part."""
    joint = default_joint(stud_diameter_mm)
    outlines = _outlines(joint)
    radius, height = np.meshgrid(
        np.linspace(0.03, WIDE_MM - 0.03, 67), np.linspace(0.03 - ABOVE_MM, joint.button_to_mm - 0.03, 71)
    )
    places = np.column_stack([radius.ravel(), height.ravel()])
    drawn = np.full(len(places), "", dtype=object)
    for name in PAINTED:
        drawn[Path(outlines[name], closed=False).contains_points(places)] = name
    held = part_at(joint, *places.T)
    known = np.isin(held, [PARTS.index(name) for name in PAINTED])
    wanted = np.array([PARTS[part] for part in held[known]], dtype=object)
    # Places nearer to a sloping edge than the 0.1 mm steps of its outline may fall to either side.
    assert (drawn[known] == wanted).mean() > 0.99


def test_field_is_kept_inside_and_carried_on_outside():
    """A part's own values stay, the cells outside take the nearest value of it in line."""
    field = np.array([[1.0, 2.0, 9.0], [3.0, 9.0, 9.0], [9.0, 9.0, 9.0]])
    inside = np.array([[True, True, False], [True, False, False], [False, False, False]])
    # Exact: values are copied.
    np.testing.assert_array_equal(_filled(field, inside), [[1, 2, 2], [3, 3, 3], [3, 3, 3]])


@pytest.mark.parametrize("weld", [SHOP_WELD, HOT_WELD, PLAIN_WELD], ids=["shop", "hot", "plain"])
def test_section_tells_web_and_burning_through(weld):
    """A web that is left is told in mm, a head that is burnt through is called so."""
    words = temperature_field(weld).alt
    assert ("burnt through" in words) == weld.burnt_through
    assert ("of the web stay solid" in words) != weld.burnt_through


def test_labels_keep_their_room_and_their_order():
    """Crowded labels are pushed apart by their room, stay in the plane and in their order."""
    levels = _spread([0.9, 0.2, 0.19, 0.18, 0.1], 0.15, 0.0, 1.0)
    # Room but for binary fractions.
    assert (-np.diff(levels) >= 0.15 - 1e-12).all()
    assert min(levels) >= 0.075 - 1e-12
    assert max(levels) <= 1 - 0.075 + 1e-12


def test_labels_with_room_stay_at_their_lines():
    """Labels that do not touch are not moved."""
    # Exact: nothing is computed.
    np.testing.assert_array_equal(_spread([0.8, 0.5, 0.2], 0.1, 0.0, 1.0), [0.8, 0.5, 0.2])


def test_a_name_finds_room_in_its_own_area():
    """The box lies wholly in the area, clear of what is taken; where nothing fits there is no place."""

    def in_circle(x, y):
        return (x - 6) ** 2 + (y - 4) ** 2 < 9

    x, y = roomiest(in_circle, across=(0, 10), up=(0, 10), half=(1, 0.5), taken=[(6, 4)], margin=(0.2, 0.2))
    assert all(in_circle(x + a, y + b) for a in (-1, 1) for b in (-0.5, 0.5))
    assert abs(x - 6) > 1.2 or abs(y - 4) > 0.7
    assert roomiest(in_circle, across=(0, 10), up=(0, 10), half=(4, 0.5)) is None


def test_region_grid_is_the_librarys():
    """The grid that names are placed by holds the library's regions."""
    grid = _region_grid()
    for row, column in ((0, 0), (50, 10), (55, 50), (140, 100), (20, 180), (40, 120)):
        assert REGIONS[grid[row, column]] == str(constitution_region(column / 5, row / 5))


@pytest.mark.parametrize("stud", steel_names("stud"))
@pytest.mark.parametrize("rivet", steel_names("rivet"))
def test_every_pair_of_steels_has_its_diagram(stud, rivet):
    """Each stud on each rivet is drawn, ends at martensite, and tells the share from which it is alone."""
    words = constitution_diagram(stud=stud, rivet=rivet).alt
    assert f"a stud of {stud} to a rivet of {rivet}" in words
    assert "% of rivet on the weld metal is martensite alone" in words


@pytest.mark.parametrize(("seconds", "alone"), [(0.1, True), (50, False)])
def test_hardness_says_whether_martensite_is_alone(seconds, alone):
    """A quick fall is called martensite alone, a slow one is not."""
    words = zone_hardness_chart(rivet="36MnB4", cooling_time_800_500_s=cooling(seconds, seconds, seconds)).alt
    assert ("not martensite alone" in words) != alone


def test_strongest_input_stands_first():
    """Rows are told by falling effect, whatever their order."""
    words = sensitivity_chart(ROWS[::-1]).alt
    places = [words.lower().index(name) for name in ("arc voltage", "heat share of the rivet", "emittance")]
    assert places == sorted(places)


def test_inputs_that_share_a_term_are_told_apart():
    """Two contacts have one term in the glossary; the words of their fields part them."""
    words = sensitivity_chart(ROWS).alt
    assert "contact rivet plates, 2000 to 20000 W/m2K" in words
    assert "contact plates, 2000 to 20000 W/m2K" in words


@pytest.mark.parametrize(("low", "high"), [(0.17, 0.62), (0.4, 0.4), (0.3999, 0.4001), (-0.2, 0.5)])
def test_scale_holds_both_ends(low, high):
    """The scale holds every end and is never narrower than a fifth of the value."""
    scale = _Scale([moved("web_mm", 1, 2, low, high)], "head depth")
    assert scale.low <= min(low, 0.4)
    assert scale.high >= max(high, 0.4)
    # A fifth of 0.4, but for binary fractions.
    assert scale.high - scale.low >= 0.08 - 1e-9
    assert 2 <= len(scale.marks()) <= 9
