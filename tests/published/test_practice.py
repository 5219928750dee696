"""Common practice of the trade, no source: what shops set for a 6 mm stainless pull stud on a rivet head."""

from secondplate import gas
from secondplate.units import l_min_from_ft3_h

SOURCE = "practice"


def test_gas_on_for_a_stainless_pull_stud():
    """Common practice, no source: gas is on for a stainless stud on the rivet head."""
    advice = gas.gas_advice(
        stud_material="austenitic stainless", base="steel rivet head", process="short cycle"
    )
    assert advice.needed
    assert advice.basis == "common practice"
    assert "without gas" in advice.contradiction


def test_no_gas_for_plain_steel_on_steel():
    """Common practice, no source: plain steel studs on steel are welded without gas."""
    advice = gas.gas_advice(stud_material="carbon steel", base="steel sheet", process="short cycle")
    assert not advice.needed
    assert advice.basis == "common practice"


def test_one_second_of_pre_flow():
    """Common practice, no source: the gas flows one second before the arc."""
    assert gas.PRE_FLOW_S.best == 1


def test_about_21_on_the_flow_gauge():
    """Common practice, no source: 21 on the gauge fits the flow band as ft3/h, not as L/min."""
    assert gas.FLOW_L_MIN.contains(l_min_from_ft3_h(21))
    assert not gas.FLOW_L_MIN.contains(21)
