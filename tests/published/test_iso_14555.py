"""ISO 14555 Arc stud welding of metallic materials. Not read: every value here is from memory."""

import pytest

from secondplate.arc import voltage_band_v
from secondplate.inspection import acceptance_facts, bend_test_angle_deg
from secondplate.stud_weld import minimum_sheet_mm, rule_current_a, rule_time_ms, set_up

SOURCE = "iso_14555"


def test_rule_for_thick_studs():
    """From memory, Annex A: 90 A a millimetre above 16 mm and 40 ms a millimetre above 12 mm."""
    assert rule_current_a(20) == 1800
    assert rule_time_ms(16) == 640


def test_arc_voltage():
    """From memory, Annex A: 20 to 40 V."""
    band = voltage_band_v()
    assert (band.low, band.high) == (20, 40)
    assert "from memory" in band.basis


@pytest.mark.parametrize(("diameter_mm", "lift_mm", "protrusion_mm"), [(3, 1.5, 1), (25, 7, 8)])
def test_ends_of_lift_and_protrusion(diameter_mm, lift_mm, protrusion_mm):
    """From memory, Annex A: lift 1.5 to 7 mm and protrusion 1 to 8 mm, rising with the stud."""
    found = set_up(
        stud_diameter_mm=diameter_mm,
        stud_material="carbon steel",
        base="steel sheet",
        process="drawn arc with ferrule",
    )
    (lift,) = [rule for rule in found.lift_mm.rules if rule.source == SOURCE]
    (protrusion,) = [rule for rule in found.protrusion_mm.rules if rule.source == SOURCE]
    assert lift.band.best == pytest.approx(lift_mm, rel=1e-4)  # the slopes are stored to six digits
    assert protrusion.band.best == pytest.approx(protrusion_mm, rel=1e-4)
    assert lift.basis == protrusion.basis == "from memory"


def test_thinnest_aluminium_sheet():
    """From memory: half the diameter for aluminium."""
    (rule,) = minimum_sheet_mm(6, process="drawn arc with gas", base="aluminium sheet").rules
    assert (rule.band.best, rule.basis) == (3, "from memory")


def test_thinnest_short_cycle_sheet():
    """From memory: an eighth of the diameter and at least 0.6 mm."""
    for diameter_mm, least_mm in ((3, 0.6), (8, 1.0)):
        rules = minimum_sheet_mm(diameter_mm, process="short cycle").rules
        assert [rule.band.best for rule in rules if rule.source == SOURCE] == [least_mm]


def test_bend_angle():
    """From memory: 60 degrees for drawn arc and short cycle, against 30 in the American code."""
    advice = bend_test_angle_deg(purpose="before production")
    assert [rule.band.best for rule in advice.rules if rule.source == SOURCE] == [60]
    assert advice.agreed is None


def test_studs_before_work_starts():
    """From memory, clause 14: at least three studs before work starts."""
    found = [
        fact.value
        for fact in acceptance_facts("before production")
        if fact.source == SOURCE and fact.name == "test studs"
    ]
    assert found == [3]
