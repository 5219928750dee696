"""Li, Gong and Lv 2022: heat ageing of a structural adhesive, seen."""

from secondplate.softening_limits import typical_heat_limits

SOURCE = "adhesive_ageing_2022"


def test_bond_line_limit_lies_between_no_change_and_fall():
    """No change at 80, 100 and 120 C, falling at 140 C: the stop stands at the last that did no harm."""
    limit = typical_heat_limits()["bond line"]
    assert limit.word([80, 100, 120, 140]).tolist() == ["kept", "warn", "warn", "stop"]
