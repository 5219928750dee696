"""Stud specification page with formulas for area, load, torque and shear. Read."""

import math

import pytest

from secondplate.inspection import acceptance_facts
from secondplate.studs import inch_stress_area_mm2, stress_area_mm2, working_torque_n_m

SOURCE = "stud_specification_page"


@pytest.mark.parametrize(
    ("diameter_mm", "pitch_mm", "area_mm2"),
    [(3, 0.5, 4.959), (4, 0.7, 8.647), (5, 0.8, 13.990), (6, 1.0, 19.837), (8, 1.25, 36.126)],
)
def test_area_formula(diameter_mm, pitch_mm, area_mm2):
    """The page's area formula, worked for metric threads, lies 1.4 % under the metric stress area."""
    found_mm2 = inch_stress_area_mm2(diameter_mm, pitch_mm=pitch_mm)
    assert found_mm2 == pytest.approx(area_mm2, rel=1e-4)  # five figures
    assert found_mm2 / stress_area_mm2(diameter_mm, pitch_mm=pitch_mm) == pytest.approx(0.986, abs=2e-3)


def test_torque_formula():
    """T = 0.2 D L: a load of 1000 N on a 6 mm stud asks for 1.2 N m."""
    torque_n_m = working_torque_n_m(
        stress_area_mm2=10, proof_stress_mpa=100, diameter_mm=6, preload_share=1.0
    )
    assert math.isclose(torque_n_m, 1.2, rel_tol=1e-12)  # exact arithmetic


@pytest.mark.parametrize(("name", "percent"), [("permitted tension", 60), ("shear strength", 75)])
def test_shares(name, percent):
    """Use at most 60 % of yield; shear is 75 % of tensile."""
    (fact,) = [fact for fact in acceptance_facts("use") if fact.name == name]
    assert (fact.value, fact.unit, fact.source) == (percent, "%", SOURCE)
