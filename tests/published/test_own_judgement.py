"""Own judgement: the stop rule for pressing a button back, worked by hand on three domes."""

import numpy as np
import pytest

from secondplate.plate_dome import ButtonDome
from secondplate.plate_forming import press_back

SOURCE = "own_judgement"
DOMES = ButtonDome(base_radius_mm=4, rise_mm=np.array([0.5, 1.0, 1.5]), sheet_mm=1.5)


def test_strain_of_three_domes():
    """Left side of the rule for 0.5, 1.0 and 1.5 mm: 0.0772, 0.2095, 0.3865."""
    found = press_back(DOMES, "6016-T4").strain_needed
    assert found == pytest.approx([0.0772, 0.2095, 0.3865], abs=1e-4)  # sum of three rounded numbers


def test_verdicts_by_law():
    """6016-T4: Voce (0.132) passes the first only, Swift (0.221) the first two; the lower counts."""
    limits = press_back(DOMES, "6016-T4").limits
    allowed = [
        limits[name] >= np.array([0.0772, 0.2095, 0.3865])
        for name in ("Voce, habraken_2022 set 1", "Swift, habraken_2022 set 3")
    ]
    assert [each.tolist() for each in allowed] == [[True, False, False], [True, True, False]]
    assert press_back(DOMES, "6016-T4").verdict.tolist() == ["press back"] + 2 * ["do not press back"]


@pytest.mark.parametrize("sheet", ["6061-T6", "6082-T6"])
def test_heat_treated_sheet_is_at_or_over_its_limit(sheet):
    """6xxx-T6 with a limit of 0.04 to 0.08: the first dome is at or over it, the taller two are over."""
    found = press_back(DOMES, sheet)
    assert 0.03 < found.limit < 0.08
    assert found.verdict.tolist() == 3 * ["do not press back"]
