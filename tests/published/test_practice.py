"""Common practice of the trade, no source: what shops set for a 6 mm stainless pull stud on a rivet head."""

import pytest

from secondplate import gas
from secondplate.inspection import PRE_WELD_CHECKS
from secondplate.process_window import process_window
from secondplate.stud_weld import allowed_bases, polarity, set_up
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


@pytest.mark.parametrize("process", ["drawn arc with gas", "short cycle"])
def test_setting_of_the_6_mm_pull_stud(process):
    """Common practice, no source: 600 A, 30 ms, 2 mm protrusion, 1 mm lift for a 6 mm stainless stud."""
    found = set_up(
        stud_diameter_mm=6,
        stud_material="austenitic stainless",
        base="steel rivet head",
        process=process,
    )
    advice = (found.current_a, found.time_ms, found.protrusion_mm, found.lift_mm)
    best = [rule.band.best for each in advice for rule in each.rules if rule.rule.startswith("shop")]
    assert best == [600, 30, 2, 1]
    assert found.gas.needed


def test_polarity_of_the_chart():
    """Common practice, no source: the chart decides, many charts keep reversed polarity on rivet heads."""
    advice = polarity(stud_material="austenitic stainless", base="steel rivet head")
    assert "reversed polarity" in advice.contradiction
    assert [rule.choice for rule in advice.rules if rule.source == SOURCE] == [
        "as the equipment's chart says"
    ]


def test_one_stud_is_welded_pulled_and_adjusted_before_the_row():
    """Common practice, no source: weld one stud, pull it, adjust, and only then weld the row."""
    assert [check.id for check in PRE_WELD_CHECKS][-4:] == ["test_stud", "pull", "adjust", "row"]


@pytest.mark.parametrize(
    ("check_id", "words"),
    [
        ("holder", "for this stud size"),
        ("nose", "centre of the rivet head can be seen"),
        ("square", "square"),
        ("gas", "flow is set"),
        ("head_ground", "free of coating"),
    ],
)
def test_checks_before_welding(check_id, words):
    """Common practice, no source: own holder for each size, narrow nose, square gun, gas, bare head."""
    (check,) = [check for check in PRE_WELD_CHECKS if check.id == check_id]
    assert words in check.text


def test_steel_is_not_arc_welded_to_aluminium():
    """Common practice, no source: steel studs go on steel, aluminium studs on aluminium."""
    assert "aluminium sheet" not in allowed_bases("austenitic stainless")
    assert allowed_bases("aluminium") == ("aluminium sheet",)


def test_shop_setting_lies_in_the_sound_field():
    """Common practice, no source: 600 A for 30 ms on a 6 mm pull stud; neither cold nor hot on 1.1 mm."""
    window = process_window(stud_diameter_mm=6, web_mm=1.1, current_a=600.0, time_ms=30.0)
    assert str(window.state) == "sound"
    assert not window.doubtful
