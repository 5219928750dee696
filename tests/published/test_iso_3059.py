"""ISO 3059: light for penetrant testing. From memory."""

import pytest

from secondplate.plate_penetrant import penetrant_faults

SOURCE = "iso_3059"
TEST = {"part_temperature_c": 20, "dwell_min": 10, "developing_min": 15}


@pytest.mark.parametrize(
    ("kind", "white", "ultraviolet", "faults"),
    [
        ("colour contrast", 500, 0, 0),
        ("colour contrast", 499, 0, 1),
        ("fluorescent", 20, 10, 0),
        ("fluorescent", 21, 10, 1),
        ("fluorescent", 20, 9.9, 1),
    ],
)
def test_light(kind, white, ultraviolet, faults):
    """Colour wants 500 lx of white light; fluorescent 10 W/m2 of ultraviolet and at most 20 lx of white."""
    found = penetrant_faults(penetrant_kind=kind, white_light_lx=white, ultraviolet_w_m2=ultraviolet, **TEST)
    assert len(found) == faults
