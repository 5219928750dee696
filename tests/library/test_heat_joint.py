"""Shape of the riveted joint and its cells: sizes that fit, parts where they belong, volumes, contacts."""

import dataclasses

import numpy as np
import pytest

from secondplate.heat.joint import LIMITS_MM, PARTS, RivetedJoint, default_joint, part_at, rivet_radii_mm
from secondplate.heat.joint_body import (
    RIVET,
    contact_w_m2k,
    joint_cells,
    places,
    weights_at,
)

JOINT = default_joint()


def part_name(joint, radius_mm, height_mm):
    """Name of the part at one place, or open air."""
    number = int(part_at(joint, radius_mm, height_mm))
    return PARTS[number] if number >= 0 else "open air"


@pytest.mark.parametrize(
    ("radius_mm", "height_mm", "part"),
    [
        (0, -20.1, "open air"),
        (0, -10, "stud"),
        (3.2, -0.5, "stud"),
        (3.2, -1.5, "open air"),
        (3.8, 0.01, "rivet"),
        (3.8, 0.5, "top plate"),
        (0, 1.05, "rivet"),
        (0, 1.15, "bore"),
        (1.7, 1.6, "rivet"),
        (2.7, 1.6, "gap"),
        (0, 2.85, "slug"),
        (0, 2.75, "bore"),
        (3.1, 4.25, "rivet"),
        (3.1, 2.0, "second plate"),
        (0, 4.4, "second plate"),
        (4.4, 4.7, "second plate"),
        (4.6, 4.7, "open air"),
        (30, 1.6, "gap"),
        (61, 1.0, "open air"),
    ],
)
def test_parts_of_the_usual_joint(radius_mm, height_mm, part):
    """Each part lies where the section of the joint shows it."""
    assert part_name(JOINT, radius_mm, height_mm) == part


def test_heights_follow_from_the_plates():
    """Second plate from 1.8, plates to 3.8, button to 4.8, tail to 4.3 mm with the usual sizes."""
    assert JOINT.second_plate_from_mm == pytest.approx(1.8, abs=1e-9)  # sums of decimals
    assert JOINT.plates_to_mm == pytest.approx(3.8, abs=1e-9)
    assert JOINT.button_to_mm == pytest.approx(4.8, abs=1e-9)
    assert JOINT.tail_depth_mm == pytest.approx(4.3, abs=1e-9)
    assert JOINT.slug_from_mm == pytest.approx(2.8, abs=1e-9)


def test_interlock_is_half_the_spread():
    """The tail reaches (tail - shank)/2 beyond the shank: 0.55 mm (geometry identity of the spread tail)."""
    bore, outer = rivet_radii_mm(JOINT, JOINT.tail_depth_mm - 1e-9)
    assert float(outer) - JOINT.shank_diameter_mm / 2 == pytest.approx(
        0.55, abs=1e-6
    )  # the tail is open there
    assert float(outer - bore) == pytest.approx(1.0, abs=1e-6)


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        (
            {"bore_diameter_mm": 5.4},
            "bore diameter must be less than the shank diameter of 5.3 mm, got 5.4 mm",
        ),
        (
            {"flange_diameter_mm": 8.0},
            "flange diameter must be at most the head diameter of 7.75 mm, got 8 mm",
        ),
        ({"flange_diameter_mm": 5.0}, "stud diameter must be at most the flange diameter of 5 mm, got 6 mm"),
        ({"top_plate_mm": 0}, "top plate must be between 0.5 mm and 6 mm, got 0 mm"),
        ({"second_plate_mm": 0}, "second plate must be between 0.5 mm and 6 mm, got 0 mm"),
        ({"gap_mm": -0.1}, "gap must be between 0 mm and 3 mm, got -0.1 mm"),
        ({"web_mm": 3.5}, "slug must be at most the depth of the bore of 0.8 mm, got 1.5 mm"),
        (
            {"tail_diameter_mm": 9.5},
            "tail diameter must be less than the button diameter of 9 mm, got 9.5 mm",
        ),
        ({"tail_diameter_mm": 5.0}, "shank diameter must be at most the tail diameter of 5 mm, got 5.3 mm"),
        (
            {"remaining_thickness_mm": 3.0},
            "remaining thickness must be less than the button of 3 mm, got 3 mm",
        ),
        ({"stud_length_mm": float("nan")}, "stud length must be finite, got nan mm"),
        ({"web_mm": "1.1"}, "web must be a number in mm, got '1.1'"),
        ({"web_mm": True}, "web must be a number in mm, got True"),
        ({"gap_filling": "rubber"}, "gap filling must be one of adhesive, air, got 'rubber'"),
        ({"stud_material": "cheese"}, "stud material must be one of .* got 'cheese'"),
        ({"colour": 1}, "field of the joint must be one of .* got 'colour'"),
    ],
)
def test_what_does_not_fit_is_refused(changes, sentence):
    """One sentence with name, limit, unit and value for each size that does not fit."""
    with pytest.raises(ValueError, match=sentence):
        default_joint(**changes)


def test_stud_must_be_in_the_chart():
    """The flange comes from the chart, which has studs of 3 to 6 mm."""
    assert [default_joint(size).flange_diameter_mm for size in (3, 4, 5, 6)] == [4, 5, 6, 7]
    with pytest.raises(ValueError, match="stud diameter must be one of 3, 4, 5, 6 mm, got 8 mm"):
        default_joint(8)


def test_every_size_has_limits():
    """No length of the joint escapes the check of its range."""
    sizes = {field.name for field in dataclasses.fields(RivetedJoint) if field.name.endswith("_mm")}
    assert sizes == set(LIMITS_MM)


def test_grid_passes_through_every_face():
    """Flat faces and straight walls of the joint lie on edges of the grid, at any fineness."""
    for fineness in (0.5, 1, 2):
        grid = joint_cells(JOINT, fineness=fineness).grid
        for height in (-20, -1, 0, 1.1, 1.2, 1.5, 1.8, 2.8, 3.8, 4.3, 4.8):
            assert np.abs(grid.height_edges_mm - height).min() < 1e-9
        for radius in (0, 1.65, 2.65, 3, 3.5, 3.875, 4.5, 60):
            assert np.abs(grid.radius_edges_mm - radius).min() < 1e-9


def test_grid_is_fine_at_the_weld_and_grows_slowly():
    """Cells at the weld face are about 0.025 mm, and no cell is 1.8 times its neighbour."""
    heights = np.diff(joint_cells(JOINT).grid.height_edges_mm)
    row = joint_cells(JOINT).face_row
    assert heights[row - 1 : row + 1] == pytest.approx([0.026, 0.026], abs=0.003)  # fitted between faces
    assert np.max(heights[1:] / heights[:-1]) < 1.8
    assert np.min(heights[1:] / heights[:-1]) > 1 / 1.8


def _volume_mm3(cells, part):
    """Volume of all cells of a part."""
    grid = cells.grid
    volumes = np.diff(grid.height_edges_mm)[:, None] * np.pi * np.diff(grid.radius_edges_mm**2)
    return volumes[cells.part == part].sum()


def test_volume_of_the_rivet():
    """The rivet's cells hold the volume of head cone, tube and spread tail, worked out by frustums."""
    frustum = lambda height, one, two: np.pi * height / 3 * (one**2 + one * two + two**2)  # noqa: E731
    outside = frustum(1.2, 3.875, 2.65) + np.pi * 0.6 * 2.65**2 + frustum(2.5, 2.65, 3.2)
    bore = np.pi * 0.7 * 1.65**2 + frustum(2.5, 1.65, 2.2)
    found = _volume_mm3(joint_cells(JOINT, fineness=4), RIVET)
    assert found == pytest.approx(outside - bore, rel=0.003)  # stairs instead of slopes
    # 0.55 to 0.6 g at 7.83 g/cm3: rivets of this class weigh that much
    assert 0.5 < found * 7.83e-3 < 0.7


def test_contacts():
    """Steel on aluminium has the one conductance, plate on plate the other, glue and metal are perfect."""
    part = np.array([[0, -1, -1], [1, 2, 2], [1, 3, 2], [1, 4, 4], [6, 5, 4]])
    outwards, down = contact_w_m2k(part=part, contact_rivet_plates_w_m2k=7.0, contact_plates_w_m2k=5.0)
    inf = np.inf
    assert outwards.tolist() == [[0, 0], [7, inf], [inf, inf], [7, inf], [inf, 5]]
    assert down.tolist() == [[inf, 0, 0], [inf, inf, inf], [inf, inf, 5], [inf, 5, inf]]


def test_every_place_lies_in_its_part():
    """Named places lie in the part that their name says."""
    cells = joint_cells(JOINT)
    expected = {
        "fusion face": "rivet",
        "web over the bore": "rivet",
        "rivet shank": "rivet",
        "rivet tail": "rivet",
        "top plate at the head": "top plate",
        "bond line 8 mm out": "gap",
        "second plate under the rivet": "second plate",
        "button": "second plate",
        "stud above the flange": "stud",
    }
    found = places(JOINT)
    for name, part in expected.items():
        weights = weights_at(cells, *found[name])
        assert {PARTS[number] for number in cells.part[weights > 0]} == {part}
        assert weights.sum() == pytest.approx(1, abs=1e-12)  # rounding


def test_weights_reproduce_a_straight_line():
    """A field that is linear in radius and height is met exactly in the plates."""
    cells = joint_cells(JOINT)
    radius = (cells.grid.radius_edges_mm[1:] + cells.grid.radius_edges_mm[:-1]) / 2
    height = (cells.grid.height_edges_mm[1:] + cells.grid.height_edges_mm[:-1]) / 2
    field = 3 * radius[None, :] - 2 * height[:, None] + 7
    weights = weights_at(cells, 8.0, 2.8)
    assert np.sum(weights * field) == pytest.approx(3 * 8.0 - 2 * 2.8 + 7, rel=1e-12)  # exact


def test_touching_plates_have_a_bond_line_too():
    """Without a gap the bond line is the upper face of the second plate."""
    joint = default_joint(gap_mm=0)
    cells = joint_cells(joint)
    weights = weights_at(cells, *places(joint)["bond line 8 mm out"])
    assert {PARTS[number] for number in cells.part[weights > 0]} == {"second plate"}


def test_places_outside_are_refused():
    """A place in the rivet's middle or beyond the plates is no bond line; open air has no temperature."""
    with pytest.raises(ValueError, match="radius of a place must be at least 2.65 mm, got 1 mm"):
        places(JOINT, radii_mm=(1.0,))
    with pytest.raises(ValueError, match="radius of a place must be between 0 mm and 60 mm, got 70 mm"):
        places(JOINT, radii_mm=(70.0,))
    with pytest.raises(ValueError, match="place must lie in the joint, got radius 10 mm and height -3 mm"):
        weights_at(joint_cells(JOINT), 10.0, -3.0)


def test_fineness_has_a_range():
    """Grids from a quarter to eight times as fine."""
    with pytest.raises(ValueError, match="fineness must be between 0.25 and 8, got 0.1"):
        joint_cells(JOINT, fineness=0.1)


def test_extreme_joints_keep_their_parts():
    """Thin and thick, with air or glue, with and without slug and button: every part is there."""
    for joint in (
        default_joint(3, top_plate_mm=0.8, second_plate_mm=0.8, button_depth_mm=1.2, slug_mm=0, web_mm=0.5),
        default_joint(top_plate_mm=4, second_plate_mm=4, gap_mm=2, gap_filling="air", web_mm=2.5),
        default_joint(gap_mm=0, button_depth_mm=0, remaining_thickness_mm=0.3, slug_mm=0.5),
    ):
        present = set(np.unique(joint_cells(joint).part))
        wanted = {0, 1, 2, 4} | ({3} if joint.gap_mm else set()) | ({5} if joint.slug_mm else set())
        assert wanted <= present
