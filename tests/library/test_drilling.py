"""One import for drilling: every public name of its parts, and a rivet drilled from end to end."""

import pytest

from secondplate import drilling
from secondplate.hardness import brinell_hardness_hbw
from tests.library_reader import MEMBERS

PARTS = {name: member for name, member in MEMBERS.items() if name.startswith("drilling_")}


def test_every_public_name_is_here():
    """Whatever a part makes public is found in the one import, as the same thing."""
    assert len(PARTS) > 30
    for name, member in PARTS.items():
        short = name.rpartition(".")[2]
        assert short in drilling.__all__
        assert getattr(drilling, short) is member


def test_a_rivet_from_end_to_end():
    """A rivet of 480 HV under a carbide drill: table, turns, forces, time and heat hang together."""
    hardness = brinell_hardness_hbw(480)
    assert "solid carbide" in drilling.covering_tables(480)
    setting = drilling.table_setting(
        work_material=drilling.HARDENED_STEEL,
        drill="solid carbide",
        drill_diameter_mm=6.5,
        hardness_hbw=hardness,
    )
    feed, turns = setting.feed_mm_rev.best, setting.spindle_speed_rpm.best
    both = drilling.drill_forces(work_material="steel 400 HB", drill_diameter_mm=6.5, feed_mm_rev=feed)
    minutes = drilling.drilling_time_min(
        drilled_depth_mm=5,
        drill_diameter_mm=6.5,
        point_angle_deg=180,
        cutting_speed_m_min=setting.cutting_speed_m_min.best,
        feed_mm_rev=feed,
    )
    heat = drilling.cutting_heat_j(torque_n_m=both.handbook_torque_n_m, drilled_depth_mm=5, feed_mm_rev=feed)
    power = drilling.cutting_power_w(torque_n_m=both.handbook_torque_n_m, spindle_speed_rpm=turns)
    assert heat == pytest.approx(power * 60 * minutes, rel=1e-12)  # same energy
