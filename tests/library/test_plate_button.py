"""Balance of volumes and required thickness: closed books, there and back, refusals."""

import numpy as np
import pytest

from secondplate import plate_button as button


def test_the_balance_closes():
    """What stands proud on both sides is what the rivet and the empty bore take."""
    rivet, bore, proud = np.array([80.0, 95.0]), np.array([10.0, 0.0]), np.array([0.0, 5.0])
    below = button.button_volume_mm3(rivet_volume_mm3=rivet, empty_bore_mm3=bore, proud_volume_mm3=proud)
    left = button.hole_left_volume_mm3(rivet_volume_mm3=rivet, empty_bore_mm3=bore)
    assert below + proud == pytest.approx(left, rel=1e-12)  # arithmetic only


def test_a_full_die_is_filled_once():
    """A button as large as the room of its die fills it wholly."""
    room = button.die_room_mm3(die_diameter_mm=10, die_depth_mm=1.6)
    assert button.die_filling(button_mm3=room, room_mm3=room) == 1.0


def test_bearing_thickness_carries_its_force():
    """The plate of the required thickness carries the force by the formula it was solved from."""
    thickness = button.bearing_thickness_mm(
        force_n=np.array([1000.0, 2000.0]), diameter_mm=4.8, tensile_strength_mpa=190, bearing_factor=1.7
    )
    assert 1.7 * 190 * 4.8 * thickness / 1.25 == pytest.approx([1000, 2000], rel=1e-12)  # arithmetic only


def test_more_holes_need_more_thickness():
    """Required thickness rises with the number and size of holes."""
    common = {"force_n": 5000, "width_mm": 40, "tensile_strength_mpa": 190}
    by_number = button.net_section_thickness_mm(hole_diameter_mm=5, holes=np.arange(5), **common)
    by_size = button.net_section_thickness_mm(hole_diameter_mm=np.arange(1.0, 20), **common)
    assert np.all(np.diff(by_number) > 0)
    assert np.all(np.diff(by_size) > 0)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: button.button_volume_mm3(rivet_volume_mm3=10, proud_volume_mm3=11),
            "volume of the button must be at least 0 mm3, got -1 mm3",
        ),
        (
            lambda: button.die_room_mm3(die_diameter_mm=10, die_depth_mm=1, tip_radius_mm=6),
            "radius of the tip over that of the die must be between 0 and 1, got 1.2",
        ),
        (lambda: button.die_filling(button_mm3=1, room_mm3=0), "room of the die must be above 0 mm3"),
        (
            lambda: button.bearing_thickness_mm(force_n=1, diameter_mm=0, tensile_strength_mpa=190),
            "diameter of the fastener must be above 0 mm, got 0 mm",
        ),
        (
            lambda: button.net_section_thickness_mm(
                force_n=1, width_mm=10, hole_diameter_mm=5, holes=2, tensile_strength_mpa=190
            ),
            "width left beside the holes must be above 0 mm, got 0 mm",
        ),
        (
            lambda: button.net_section_thickness_mm(
                force_n=1, width_mm=10, hole_diameter_mm=5, holes=1.5, tensile_strength_mpa=190
            ),
            "number of holes must be a whole number, got 1.5",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What cannot be is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
