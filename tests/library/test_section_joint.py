"""Sections of 10,000 invented joints: no metal is lost, nothing overlaps, and what cannot be is refused."""

import numpy as np
import pytest

from secondplate.rivet import Die, Rivet, Sheet, Stack
from secondplate.section import (
    PARTS,
    build_section,
    random_sections,
    revolved_volume_mm3,
    unset_rivet_outline,
    usual_parameters,
)
from tests.outline_checks import depth_along_lines, proper_crossings

SEEDS = [b"joint %d" % number for number in range(10_000)]
SHEET = Sheet(thickness_mm=2.0)


@pytest.fixture(scope="module")
def sections():
    """Ten thousand joints, half of them faulty."""
    return random_sections(SEEDS)[0]


def plates_mm3(parameters, plate):
    """Volume of a plate before setting, by the disc that the section shows."""
    columns = parameters.columns()
    return np.pi * (columns["die_diameter_mm"] / 2 + 3.0) ** 2 * columns[f"{plate}_plate_mm"]


def test_the_rivet_keeps_its_volume(sections):
    """The set rivet has the volume of the unset one."""
    unset = revolved_volume_mm3(unset_rivet_outline(sections.parameters))
    found = revolved_volume_mm3(sections.outlines["rivet"])
    np.testing.assert_allclose(found, unset, rtol=1e-9)  # solved exactly; rounding only


def test_the_top_plate_keeps_its_volume(sections):
    """Top plate and slug together have the metal of the plate."""
    parts = ("top plate left", "top plate right", "slug")
    found = sum(revolved_volume_mm3(sections.outlines[part]) for part in parts)
    np.testing.assert_allclose(found, plates_mm3(sections.parameters, "top"), rtol=1e-9)  # as above


def test_the_second_plate_keeps_its_volume(sections):
    """What the second plate was pressed out of is in its button."""
    found = revolved_volume_mm3(sections.outlines["second plate"])
    np.testing.assert_allclose(found, plates_mm3(sections.parameters, "second"), rtol=1e-9)  # as above


def test_volume_by_another_rule():
    """The volume of an outline is that of thin rings summed (rectangles of 0.5 micrometre in x)."""
    outline = build_section(usual_parameters(interlock_left_mm=0.2)).outlines["rivet"]
    heights = np.linspace(outline[:, 1].min(), outline[:, 1].max(), 4001)
    middle = (heights[1:] + heights[:-1]) / 2
    begin, end = outline, np.roll(outline, -1, axis=0)
    hit = (begin[None, :, 1] <= middle[:, None]) != (end[None, :, 1] <= middle[:, None])
    line, edge = np.nonzero(hit)
    share = (middle[line] - begin[edge, 1]) / (end[edge, 1] - begin[edge, 1])
    x = begin[edge, 0] + share * (end[edge, 0] - begin[edge, 0])
    sign = np.where(end[edge, 1] > begin[edge, 1], 1, -1)
    volume = np.pi / 2 * np.sum(sign * x * np.abs(x)) * (heights[1] - heights[0])
    assert volume == pytest.approx(revolved_volume_mm3(outline), rel=1e-5)  # 4000 rings


def test_nothing_overlaps(sections):
    """Along 12 level lines through each joint no two parts overlap and no outline is turned round."""
    heights = np.random.default_rng(1).uniform(0, 1, (len(SEEDS), 12))
    rivet, second = sections.outlines["rivet"], sections.outlines["second plate"]
    low, high = second[..., 1].min(axis=1), rivet[..., 1].max(axis=1)
    heights = low[:, None] + heights * (high - low)[:, None]
    for first in range(0, len(SEEDS), 1000):
        block = [outline[first : first + 1000] for outline in sections.outlines.values()]
        one, more, turned = depth_along_lines(block, heights[first : first + 1000])
        assert more < 1e-9 * one  # edges that two parts share are cut at the same place to rounding
        assert turned < 1e-9 * one


def test_no_edges_cross(sections):
    """In 40 joints no edge of any part crosses another edge of it or of another part."""
    for number in range(0, len(SEEDS), 250):
        outlines = list(sections.one(number).outlines.values())
        for place, outline in enumerate(outlines):
            for other in outlines[place:]:
                assert proper_crossings(outline, other) == 0


def test_parts_share_their_corners(sections):
    """Rivet, plates and slug meet in corners that are equal to the last bit."""
    outlines = sections.one(0).outlines
    corners = {part: set(map(tuple, outline)) for part, outline in outlines.items()}
    for part in ("slug", "second plate", "top plate left", "top plate right"):
        assert len(corners[part] & corners["rivet"]) >= 5


def test_an_overlap_would_be_seen():
    """Two squares that overlap, one turned round, and two that share an edge are told apart."""
    square = np.array([[[0.0, 0], [1, 0], [1, 1], [0, 1]]])
    lines = np.array([[0.25, 0.5]])
    assert depth_along_lines([square, square + [1, 0]], lines)[1] == 0
    assert depth_along_lines([square, square + [0.9, 0]], lines)[1] == pytest.approx(
        0.2
    )  # two lines, 0.1 each
    assert depth_along_lines([square[:, ::-1]], lines)[2] == pytest.approx(2)  # two lines, 1 each
    assert proper_crossings(square[0], square[0] + [0.5, 0.5]) == 2
    assert proper_crossings(square[0], square[0] + [1, 0]) == 0


def test_same_seed_same_joint():
    """Seeds decide: the same ones give the same joints alone and in a column."""
    alone, _ = random_sections(SEEDS[3:5])
    column, _ = random_sections(SEEDS[:8])
    for part in ("rivet", "slug"):
        np.testing.assert_array_equal(alone.outlines[part], column.outlines[part][3:5])


def test_one_joint_equals_its_row(sections):
    """A joint built alone from its parameters is the row of the column, and keeps its parameters."""
    one = sections.one(7)
    again = build_section(one.parameters)
    assert not one.several
    assert one.outlines.keys() == again.outlines.keys()
    for part, outline in one.outlines.items():
        np.testing.assert_allclose(again.outlines[part], outline, rtol=0, atol=1e-12)  # same arithmetic
    assert one.parameters.rivet.rivet_length_mm == sections.parameters.rivet.rivet_length_mm[7]


def test_no_gap_where_plates_lie_on_each_other():
    """A joint without adhesive has no outline of a gap."""
    assert not any(part.startswith("gap") for part in build_section(usual_parameters()).outlines)
    glued = Stack(top=SHEET, second=SHEET, gap_mm=0.2)
    assert set(build_section(usual_parameters(stack=glued)).outlines) == set(PARTS)


def test_longer_setting_leaves_less_bottom():
    """A rivet pressed deeper spends bottom thickness."""
    lengths = np.array([5.0, 5.1, 5.2])
    section = build_section(usual_parameters(set_length_left_mm=lengths, set_length_right_mm=lengths))
    assert np.all(np.diff(section.constructed["remaining_thickness_mm"]) < 0)


def test_wider_die_makes_a_flatter_button():
    """The same metal in a wider die makes a flatter button."""
    dies = Die(die_diameter_mm=np.array([8.5, 9.0, 9.5]), die_depth_mm=2.4)
    assert np.all(np.diff(build_section(usual_parameters(die=dies)).constructed["button_depth_mm"]) < 0)


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        (
            {"die": Die(die_diameter_mm=7.0, die_depth_mm=3.0)},
            "die diameter must be at least 7.6.* mm, got 7 mm",
        ),
        (
            {"die": Die(die_diameter_mm=9.0, die_depth_mm=1.5)},
            "die depth, for this button, must be at least 1.805 mm, got 1.5 mm",
        ),
        (
            {"set_length_left_mm": 3.9, "set_length_right_mm": 3.9},
            "thickening of the wall at the set length must be at most 1.5, got 1.85",
        ),
        (
            {"rivet": Rivet(rivet_length_mm=9.0)},
            "thickening of the wall at the set length must be at most 1.5, got inf",
        ),
        (
            {
                "rivet": Rivet(rivet_length_mm=6.5),
                "set_length_left_mm": 6.5,
                "set_length_right_mm": 6.5,
                "die": Die(die_diameter_mm=9.5, die_depth_mm=3.0),
            },
            "second plate left under the tail must be above 0 mm, got -0.*",
        ),
        ({"draw_down_mm": 3.0}, "reach into the second plate must be at least 0.3 mm, got 0.1 mm"),
        ({"slug_share": 2.0}, "slug above the straight part of the bore must be below -0.02 mm, got 0.*"),
        (
            {"draw_down_mm": 0.3},
            "bending of the top plate beyond its draw down must be at most 0.9 mm, got .*",
        ),
        ({"interlock_left_mm": 2}, "interlock left must be between 0 mm and 1.5 mm, got 2 mm"),
        ({"crack_left_mm": np.nan}, "crack left must be finite, got nan mm"),
        ({"slug_share": 3}, "slug share must be between 0.7 and 2, got 3"),
        (
            {"stack": Stack(top=SHEET, middle=SHEET, second=SHEET)},
            "stack must have 2 sheets for a section, got 3",
        ),
        (
            {"interlock_left_mm": np.array([0.4, 0.5]), "crack_left_mm": np.zeros(3)},
            "parameters must be numbers or columns of one length, got .*",
        ),
    ],
)
def test_what_cannot_be_is_refused(change, sentence):
    """Each impossible joint is refused by one sentence with name, limit and value."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        build_section(usual_parameters(**change))


@pytest.mark.filterwarnings("error")
@pytest.mark.parametrize("longer_mm", [0.0, 0.5, 2.5])
def test_refusals_come_without_a_warning(longer_mm):
    """Whatever the length of the rivet, one sentence comes, and no warning of a division beside it."""
    stack = Stack(top=Sheet(thickness_mm=2.2), second=Sheet(thickness_mm=1.5))
    length_mm = stack.total_mm + longer_mm
    set_mm = {"set_length_left_mm": 0.965 * length_mm, "set_length_right_mm": 0.965 * length_mm}
    with pytest.raises(ValueError, match=" must be "):
        build_section(usual_parameters(rivet=Rivet(rivet_length_mm=length_mm), stack=stack, **set_mm))
