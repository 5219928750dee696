"""Manual page on shielding gas for aluminium studs. Read; its flow is printed in two units that disagree."""

import pytest

from secondplate.gas import gas_advice
from secondplate.units import ft3_h_from_l_min, l_min_from_ft3_h

SOURCE = "stud_manual_aluminium_gas"


def test_printed_flows_disagree():
    """The page prints 10 ft3/h (9 L/min); 10 ft3/h is 4.72 L/min and 9 L/min is 19.07 ft3/h."""
    assert l_min_from_ft3_h(10) == pytest.approx(4.72, abs=0.005)
    assert ft3_h_from_l_min(9) == pytest.approx(19.07, abs=0.005)
    assert 9 / l_min_from_ft3_h(10) == pytest.approx(1.9, abs=0.01)  # the trap is a factor of 1.9


def test_argon_for_aluminium():
    """Argon first, with helium for large studs; nothing that oxidises."""
    advice = gas_advice(stud_material="aluminium", base="aluminium sheet", process="drawn arc with gas")
    assert advice.groups == ("I1", "I3")
    assert advice.needed
    assert "4.7 L/min" in advice.contradiction
