"""Operating manual of an inverter power source for stud welding, page 40: drawn arc with gas. Read."""

from secondplate.gas import gas_advice

SOURCE = "stud_manual_gas"


def test_m21_for_unalloyed_studs():
    """The table for mild steel pins is headed with gas ISO 14175-M21."""
    advice = gas_advice(stud_material="carbon steel", base="steel sheet", process="drawn arc with gas")
    assert advice.needed
    assert advice.groups == ("M21",)
    assert (advice.groups_source, advice.groups_locator) == (SOURCE, "page 40")
