"""What is left after each way of removal: columns, edges between states, and geometry of the drill."""

import numpy as np
import pytest

from secondplate import plate_states as states

PULLED = {
    "second_plate_mm": 1.5,
    "tail_diameter_mm": 7.0,
    "button_diameter_mm": 9.0,
    "button_depth_mm": 1.2,
}


def test_pulled_columns():
    """A column of pulled sites is whole where metal is left and nothing tore, torn else."""
    left = states.after_pulling(
        remaining_thickness_mm=np.array([0.5, 0.0, 0.5]), torn=np.array([False, False, True]), **PULLED
    )
    assert left.plate_state.tolist() == [states.PULLED_WHOLE, states.PULLED_TORN, states.PULLED_TORN]
    assert left.least_thickness_mm.tolist() == [0.5, 0.0, 0.0]
    assert left.hole_diameter_mm.tolist() == [0.0, 7.0, 7.0]
    assert left.tight.tolist() == [True, False, False]


def test_cup_and_floor_make_the_whole():
    """Depth of the cup and metal left add up to plate and button."""
    left = states.after_pulling(remaining_thickness_mm=0.5, **PULLED)
    assert left.mark_depth_mm + left.least_thickness_mm == pytest.approx(2.7, rel=1e-12)  # arithmetic


def test_drilling_turns_from_dimple_to_hole_once():
    """Deeper tips thin the plate, then open a hole that grows to the size of the drill and stays there."""
    depths = np.linspace(0, 5, 101)
    left = states.after_drilling(metal_mm=1.5, tip_depth_mm=depths, drill_diameter_mm=5)
    holes = left.plate_state == states.DRILLED_HOLE
    assert np.array_equal(holes, depths >= 1.5)
    assert np.all(np.diff(left.least_thickness_mm) <= 0)
    assert np.all(np.diff(left.hole_diameter_mm) >= 0)
    assert left.hole_diameter_mm[-1] == 5.0


def test_cone_of_the_point():
    """A cone with a right angle is twice as wide as deep."""
    left = states.after_drilling(metal_mm=3, tip_depth_mm=1, drill_diameter_mm=6, point_angle_deg=90)
    assert left.mark_diameter_mm == pytest.approx(2.0, rel=1e-12)  # tangent of 45 degrees


def test_each_state_has_its_words():
    """Each state says what is seen and what it means."""
    assert set(states.STATE_SEEN) == set(states.STATE_MEANS) == set(states.PLATE_STATES)
    assert all((*states.STATE_SEEN.values(), *states.STATE_MEANS.values()))


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: states.after_pulling(remaining_thickness_mm=3, **PULLED),
            "depth of the cup must be at least 0 mm, got -0.3 mm",
        ),
        (
            lambda: states.after_pulling(remaining_thickness_mm=0.5, **(PULLED | {"button_diameter_mm": 6})),
            "diameter of the button less that of the tail must be at least 0 mm, got -1 mm",
        ),
        (
            lambda: states.after_pulling(remaining_thickness_mm=0.5, torn="no", **PULLED),
            "skin torn must be true or false, got 'no'",
        ),
        (
            lambda: states.after_drilling(metal_mm=0, tip_depth_mm=1, drill_diameter_mm=5),
            "metal under the drill must be above 0 mm, got 0 mm",
        ),
        (
            lambda: states.after_punching(second_plate_mm=0, button_diameter_mm=9),
            "thickness of the second plate must be above 0 mm, got 0 mm",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What cannot be left is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
