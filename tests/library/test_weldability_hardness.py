"""Hardness of the heat-affected zone: order of structures, limits, boron, vectors and refusals."""

import numpy as np
import pytest

from secondplate.weldability_composition import Composition, composition, steel_names
from secondplate.weldability_hardness import yurioka_hardness, zone_hardness
from secondplate.weldability_maynier import (
    cooling_rate_c_h,
    maynier_bainite_hv,
    maynier_ferrite_pearlite_hv,
    maynier_martensite_hv,
)

TIMES_S = np.geomspace(0.02, 2000, 61)


@pytest.mark.parametrize("steel", steel_names("rivet"))
def test_structures_stand_in_order(steel):
    """At one rate martensite is harder than bainite, and bainite than ferrite with pearlite."""
    rate = {"cooling_rate_c_h": 1e5}
    of = composition(steel)
    assert maynier_martensite_hv(of, **rate) > maynier_bainite_hv(of, **rate)
    assert maynier_bainite_hv(of, **rate) > maynier_ferrite_pearlite_hv(of, **rate)


def test_mean_rate():
    """300 C in one second is 1,080,000 C in an hour."""
    assert cooling_rate_c_h(1) == 1_080_000.0


@pytest.mark.parametrize("steel", steel_names("rivet"))
def test_yurioka_falls_from_martensite_to_bainite(steel):
    """The hardness never rises with the time and stays within its two ends, which it meets at both limits."""
    found = yurioka_hardness(composition(steel), cooling_time_800_500_s=TIMES_S)
    assert np.all(np.diff(found.hardness_hv) <= 0)
    assert found.hardness_hv[0] == found.martensite_hv
    assert found.hardness_hv[-1] == found.bainite_hv
    for time_s, share in ((found.martensite_time_s, 1.0), (found.bainite_time_s, 0.0)):
        at = yurioka_hardness(composition(steel), cooling_time_800_500_s=time_s)
        # atan(2)/2.2 is 0.5033, not a half, and the rest is cut off.
        assert at.martensite_share == pytest.approx(share, abs=1e-12)


@pytest.mark.parametrize(("boron_ppm", "rise"), [(0, 0), (1, 0), (2, 0.03), (3, 0.06), (4, 0.09), (50, 0.09)])
def test_boron_lengthens_the_time_of_martensite(boron_ppm, rise):
    """Each step of boron multiplies the time by exp(10.6 x rise), less where nitrogen binds the boron."""
    steel = {"carbon_percent": 0.35, "manganese_percent": 1.0, "nitrogen_percent": 0.005}
    without = yurioka_hardness(Composition(**steel), cooling_time_800_500_s=1).martensite_time_s
    with_boron = yurioka_hardness(
        Composition(**steel, boron_percent=boron_ppm * 1e-4), cooling_time_800_500_s=1
    ).martensite_time_s
    assert with_boron / without == pytest.approx(np.exp(10.6 * rise * 0.75), rel=1e-12)  # exact


def test_carbon_above_point_three_counts_a_sixth_for_the_time():
    """The carbon of the first and third equivalents is continuous at 0.3 % and flatter above."""
    steel = Composition(carbon_percent=np.array([0.29, 0.30, 0.31]), manganese_percent=1.0)
    logs = np.log(yurioka_hardness(steel, cooling_time_800_500_s=1).martensite_time_s)
    np.testing.assert_allclose(np.diff(logs), [10.6 * 0.01, 10.6 * 0.01 / 6], rtol=1e-9)  # exact


def test_both_formulas_agree_within_a_tenth_for_a_stud():
    """At the speed of a stud weld all is martensite, and the two formulas lie within a tenth."""
    for steel in steel_names("rivet"):
        found = zone_hardness(composition(steel), cooling_time_800_500_s=np.array([0.05, 0.2, 0.9]))
        assert np.all(found.all_martensite)
        assert np.all(found.band_hv.high < 1.1 * found.band_hv.low)


def test_zone_of_a_table_equals_single_times():
    """A column of times gives columns that equal one by one, ends of the band in order."""
    of = composition("38B2")
    table = zone_hardness(of, cooling_time_800_500_s=TIMES_S)
    single = [zone_hardness(of, cooling_time_800_500_s=time_s).maynier_hv for time_s in TIMES_S]
    np.testing.assert_allclose(table.maynier_hv, single, rtol=1e-13)  # same arithmetic
    assert np.all(table.band_hv.low <= table.band_hv.high)
    assert not table.all_martensite[-1]


def test_slow_zone_is_maynier_bainite():
    """Where no martensite is left Maynier's value is that of bainite alone."""
    of = composition("36MnB4")
    found = zone_hardness(of, cooling_time_800_500_s=500.0)
    bainite = maynier_bainite_hv(of, cooling_rate_c_h=cooling_rate_c_h(500.0))
    assert found.maynier_hv == pytest.approx(bainite, rel=1e-12)  # exact


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: cooling_rate_c_h(0.001), "cooling time must be between 0.01 s and 10000 s, got 0.001 s"),
        (
            lambda: maynier_martensite_hv(composition("38B2"), cooling_rate_c_h=10),
            r"cooling rate must be between 100 C/h and 1.1e\+08 C/h, got 10 C/h",
        ),
        (
            lambda: maynier_bainite_hv(composition("304-type"), cooling_rate_c_h=1e5),
            "carbon for Maynier hardness must be between 0.1 % and 0.5 %, got 0.05 %",
        ),
        (
            lambda: yurioka_hardness(composition("304-type"), cooling_time_800_500_s=1),
            "nitrogen for Yurioka hardness must be between 0 % and 0.01 %, got 0.05 %",
        ),
        (
            lambda: zone_hardness(composition("38B2"), cooling_time_800_500_s=-1),
            "cooling time must be between 0.01 s and 10000 s, got -1 s",
        ),
    ],
)
def test_refusals(call, sentence):
    """Steels, times and rates out of range are refused with their sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()


def test_alloyed_steel_by_hand():
    """Molybdenum, vanadium and niobium have their weights; 0.3 C with 0.5 Mo, 0.1 V and 0.03 Nb by hand."""
    steel = Composition(
        carbon_percent=0.3, molybdenum_percent=0.5, vanadium_percent=0.1, niobium_percent=0.03
    )
    rate = {"cooling_rate_c_h": 1e4}
    # Sums of a few decimals, exact but for rounding.
    bainite = -323 + 55.5 + 95.5 + (89 + 15.9 - 16.5) * 4
    assert maynier_bainite_hv(steel, **rate) == pytest.approx(bainite, rel=1e-12)
    ferrite = 42 + 66.9 + 9.5 + (10 + 13) * 4
    assert maynier_ferrite_pearlite_hv(steel, **rate) == pytest.approx(ferrite, rel=1e-12)
    found = yurioka_hardness(steel, cooling_time_800_500_s=1)
    assert found.bainite_hv == pytest.approx(145 + 130 * np.tanh(2.65 * 0.53 - 0.69), rel=1e-12)
    assert found.martensite_time_s == pytest.approx(np.exp(10.6 * 0.425 - 4.8), rel=1e-12)
    assert found.bainite_time_s == pytest.approx(np.exp(6.2 * 0.425 + 0.74), rel=1e-12)
