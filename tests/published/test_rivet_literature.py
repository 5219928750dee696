"""Papers on self-piercing riveted joints: usual sizes and orders of magnitude. From memory."""

import pytest

from secondplate.hardness import rivet_hardness_classes
from secondplate.joint_facts import joint_fact
from secondplate.joint_strength import cross_tension, lap_shear
from secondplate.rivet import Rivet, Stack
from secondplate.sheet_alloys import body_sheet

SOURCE = "rivet_literature"


def test_hardness_classes():
    """From memory: 280, 410, 480 and 555 HV10, each 30 either way."""
    assert [(band.low, band.high) for band in rivet_hardness_classes()] == [
        (250, 310),
        (380, 440),
        (450, 510),
        (525, 585),
    ]


@pytest.mark.parametrize("interlock_mm", [0.4, 0.6])
def test_bands_meet_the_orders_of_magnitude(interlock_mm):
    """From memory: 3 to 5.5 kN in cross tension and 5.5 to 8 kN in lap shear, aluminium 2 on 2 mm.

    The models are not tuned to it; their bands must meet these ranges all the same.
    """
    plates = Stack(top=body_sheet("5754-O", thickness_mm=2.0), second=body_sheet("5754-O", thickness_mm=2.0))
    rivet = Rivet(rivet_length_mm=6.0)
    tension = cross_tension(rivet, plates, interlock_mm=interlock_mm, penetration_mm=1.6).strength_n
    shear = lap_shear(rivet, plates).strength_n
    for band, name in ((tension, "cross_tension"), (shear, "lap_shear")):
        low, high = (1e3 * joint_fact(f"remembered_{name}_{end}").number for end in ("low", "high"))
        assert band.low < high
        assert low < band.high
