"""Heat of one stud weld on the riveted joint: balance, limits, trends, the table of the melt, sensitivity."""

from dataclasses import replace

import numpy as np
import pytest

from secondplate.arc_heat import heat_flux_w_mm2
from secondplate.heat.joint import default_joint
from secondplate.heat.melt_map import melted_depth_mm
from secondplate.heat.sensitivity import input_bands, sensitivity
from secondplate.heat.weld import weld_heat
from secondplate.heat.weld_settings import WeldHeat, charted_settings

JOINT = default_joint()
SHOP = WeldHeat(current_a=600.0, time_ms=30.0)


def test_heat_balance_is_closed():
    """Heat in is heat out and kept, through melting, contacts and losses."""
    assert weld_heat(JOINT, SHOP).balance < 1e-6


def test_losses_to_the_air_are_small():
    """Within ten seconds the air takes less than a twentieth of the heat."""
    weld = weld_heat(JOINT, SHOP)
    assert 0 < weld.heat_out_j < 0.05 * weld.heat_in_j


def test_more_arc_melts_more():
    """Melted depth grows with the current and with the time, and never passes the bound of energy."""
    by_current = [weld_heat(JOINT, replace(SHOP, current_a=a)).head_depth_mm for a in (400.0, 600.0, 800.0)]
    by_time = [weld_heat(JOINT, replace(SHOP, time_ms=t)).head_depth_mm for t in (15.0, 30.0, 45.0)]
    for depths in (by_current, by_time):
        assert np.all(np.diff(depths) > 0)
    flux = heat_flux_w_mm2(voltage_v=SHOP.voltage_v, current_a=600.0, face_diameter_mm=7.0).best
    assert by_time[1] < flux * 0.030 / 8.9  # steel takes at least 8.9 J/mm3 to melt


def test_the_weld_is_cold_again_within_a_second():
    """From 800 to 500 C the head takes some tenths of a second, as every closed form says."""
    assert 0.01 < weld_heat(JOINT, SHOP).cooling_time_800_500_s < 1.0


def test_a_long_arc_burns_through():
    """700 A for 120 ms, near a chart of the long arc, leaves no solid web on a rivet head."""
    assert weld_heat(JOINT, replace(SHOP, current_a=700.0, time_ms=120.0)).burnt_through
    assert not weld_heat(JOINT, SHOP).burnt_through


def test_finer_cells_change_little():
    """Cells and steps of half the length move the melted depth by less than 3 %."""
    usual, fine = (weld_heat(JOINT, SHOP, fineness=f).head_depth_mm for f in (1.0, 2.0))
    assert usual == pytest.approx(fine, rel=0.03)


def test_grid_too_coarse_for_the_flux_is_refused():
    """A coarse grid under a strong arc is refused by one sentence with the fineness that would do."""
    strong = replace(SHOP, current_a=1500.0, time_ms=10.0)
    with pytest.raises(
        ValueError, match="fineness must be at least 0.82 for a heat flux of 497 W/mm2, got 0.25"
    ):
        weld_heat(JOINT, strong, fineness=0.25)


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"bore_diameter_mm": 6.0}, "bore diameter must be less than the shank diameter of 5.3 mm, got 6 mm"),
        (
            {"flange_diameter_mm": 9.0},
            "flange diameter must be at most the head diameter of 7.75 mm, got 9 mm",
        ),
        ({"top_plate_mm": 0.0}, "top plate must be between 0.5 mm and 6 mm, got 0 mm"),
    ],
)
def test_joints_that_do_not_fit_are_refused(change, message):
    """One sentence with name, limit and value."""
    with pytest.raises(ValueError, match=message):
        default_joint(6, **change)


@pytest.mark.parametrize(("current_a", "time_ms"), [(600.0, 30.0), (720.0, 20.0), (500.0, 40.0)])
def test_the_table_of_the_melt_agrees_with_the_model(current_a, time_ms):
    """The table between whose rows the bench reads gives the depth of the model."""
    model_mm = weld_heat(JOINT, replace(SHOP, current_a=current_a, time_ms=time_ms)).head_depth_mm
    flux = heat_flux_w_mm2(voltage_v=SHOP.voltage_v, current_a=current_a, face_diameter_mm=7.0).best
    table_mm, _, _ = melted_depth_mm(heat_flux_w_mm2=flux, time_ms=time_ms, web_mm=JOINT.web_mm)
    assert table_mm == pytest.approx(model_mm, rel=0.06, abs=0.02)  # as its docstring promises


def test_sensitivity_is_sorted_by_effect():
    """The strongest input stands on top, and losses by radiation at the bottom."""
    names = ("emittance", "rivet_heat_share", "voltage_v")
    assert set(names) <= set(input_bands())
    rows = sensitivity(JOINT, charted_settings(JOINT), inputs=names)
    effects = [row.effect("head depth") for row in rows]
    assert effects == sorted(effects, reverse=True)
    assert rows[-1].name == "emittance"
