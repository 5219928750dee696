"""What is read off a computed weld: depths between cells, fused area, burn-off, times, bands, trends."""

from dataclasses import replace

import numpy as np
import pytest

from secondplate.arc import melted_depth_mm
from secondplate.heat.joint import default_joint
from secondplate.heat.joint_body import RADII_MM
from secondplate.heat.sensitivity import input_bands, sensitivity
from secondplate.heat.weld import weld_heat, weld_heat_band
from secondplate.heat.weld_result import cooling_time_s, melted_depths_mm, time_above_s
from secondplate.heat.weld_settings import WeldHeat, charted_settings, weld_heat_bands

JOINT = default_joint()
SETTINGS = charted_settings(JOINT)
WELD = weld_heat(JOINT, SETTINGS)


def test_depth_of_a_straight_fall_is_exact():
    """Where the peak falls as a straight line, the melting point is found exactly, in any cell."""
    edges = np.array([0.0, 0.1, 0.25, 0.45, 0.8, 1.2])
    middles = (edges[1:] + edges[:-1]) / 2
    for depth in (0.02, 0.1, 0.2, 0.5, 0.9):
        peaks = (1450.0 + 700.0 * (depth - middles))[:, None]
        assert melted_depths_mm(peaks, edges, 1450.0)[0] == pytest.approx(depth, rel=1e-9)  # exact


def test_depth_at_the_ends():
    """Nothing where the face stays solid; the whole part where its last cell melts."""
    edges = np.array([0.0, 0.1, 0.2, 0.3])
    peaks = np.array([[1000.0, 1700.0, 1700.0], [900.0, 1650.0, 1600.0], [800.0, 1600.0, np.nan]])
    assert melted_depths_mm(peaks, edges, 1450.0).round(9).tolist() == [0.0, 0.3, 0.2]


def test_time_above_a_threshold():
    """A triangle of 100 K and 3 s lies above its middle for half the time; touching counts as nothing."""
    times, trace = np.array([0.0, 1.0, 3.0]), np.array([0.0, 100.0, 0.0])
    assert time_above_s(times, trace, 50.0) == pytest.approx(1.5, rel=1e-12)  # exact
    assert time_above_s(times, trace, 0.0) == pytest.approx(3.0, rel=1e-12)
    assert time_above_s(times, trace, 100.0) == 0.0
    assert time_above_s(times, np.full(3, 70.0), 50.0) == pytest.approx(3.0, rel=1e-12)


def test_cooling_time_counts_the_last_fall():
    """A trace that crosses 800 C twice counts from the last crossing; one that never does gives None."""
    times = np.array([0.0, 1.0, 2.0, 3.0, 13.0])
    assert cooling_time_s(times, np.array([20.0, 900.0, 700.0, 1000.0, 0.0])) == pytest.approx(3.0, rel=1e-12)
    assert cooling_time_s(times, np.array([20.0, 700.0, 600.0, 400.0, 300.0])) is None
    assert cooling_time_s(times, np.array([20.0, 900.0, 900.0, 850.0, 600.0])) is None


def test_exponential_cooling():
    """Of ``20 + 1000 exp(-t)`` the time from 800 to 500 C is ln(780/480)."""
    times = np.linspace(0, 3, 3001)
    found = cooling_time_s(times, 20 + 1000 * np.exp(-times))
    assert found == pytest.approx(np.log(780 / 480), rel=1e-5)  # straight lines between points


def test_depths_of_the_charted_weld():
    """At the charted setting both sides melt 0.12 to 0.42 mm as half-spaces do, under the energy bound."""
    assert 0.12 < WELD.head_depth_mm <= WELD.greatest_head_depth_mm < 0.42
    assert 0.12 < WELD.stud_depth_mm <= WELD.greatest_stud_depth_mm < 0.42
    for depth, metal in (
        (WELD.head_depth_mm, "boron rivet steel"),
        (WELD.stud_depth_mm, "austenitic stainless"),
    ):
        bound = melted_depth_mm(energy_j=30 * 720 * 0.020, face_diameter_mm=7, material=metal)
        assert 0.4 < depth / bound.best < 0.85  # the half-spaces keep 0.3 to 0.65, stirred ones up to 0.76


def test_heat_in_is_both_shares():
    """0.85 U I t enters, whatever the grid does: 367.2 J."""
    assert WELD.heat_in_j == pytest.approx(0.85 * 30 * 720 * 0.020, rel=1e-12)  # rounding


def test_melted_volume_is_depth_times_face():
    """Mean depths times the area of the face."""
    area_mm2 = np.pi / 4 * 7**2
    assert WELD.melted_volume_mm3 == pytest.approx(
        area_mm2 * (WELD.stud_depth_mm + WELD.head_depth_mm), rel=1e-9
    )
    assert WELD.melted_aluminium_mm3 == 0.0


def test_fused_area_shrinks_with_the_depth_asked_for():
    """Everything at 0.01 mm, nothing deeper than the greatest depth, less in between."""
    areas = [WELD.fused_area_mm2(least_depth_mm=depth) for depth in (0.01, 0.25, 0.30, 0.33, 0.5)]
    assert areas[0] == pytest.approx(np.pi / 4 * 49, rel=1e-9)
    assert areas[-1] == 0.0
    assert np.all(np.diff(areas) <= 0)
    with pytest.raises(ValueError, match="least depth must be at least 0.001 mm, got 0 mm"):
        WELD.fused_area_mm2(least_depth_mm=0)


def test_cold_weld_fuses_nothing():
    """A third of the current melts nothing and leaves the web whole."""
    cold = weld_heat(JOINT, replace(SETTINGS, current_a=240.0))
    assert (cold.head_depth_mm, cold.fused_share, cold.melted_volume_mm3) == (0.0, 0.0, 0.0)
    assert cold.web_left_mm == JOINT.web_mm
    assert cold.burn_off_mm.high == 0.0


def test_burn_off_lies_between_one_melt_and_both():
    """Low below the stud's melt, best at it, high at both melts together."""
    band = WELD.burn_off_mm
    assert band.low < WELD.stud_depth_mm == band.best
    assert band.high == pytest.approx(WELD.stud_depth_mm + WELD.head_depth_mm, rel=1e-12)


def test_bond_line_stays_cool_and_cools_outwards():
    """One short-cycle weld warms the bond line less the farther out, and 8 mm out not to 80 C."""
    peaks = [WELD.peak_at_c(f"bond line {radius:g} mm out") for radius in RADII_MM]
    assert np.all(np.diff(peaks) < 0)
    assert WELD.peak_at_c("bond line 8 mm out") < 80
    assert WELD.time_above_s("bond line 8 mm out", 80.0) == 0.0
    assert WELD.time_above_s("rivet shank", 200.0) > 0.1


def test_unknown_place_is_refused():
    """A place that was not kept is refused with the list of names."""
    with pytest.raises(ValueError, match="place must be one of .*fusion face.* got 'roof'"):
        WELD.peak_at_c("roof")


def test_better_contact_cools_the_rivet_and_warms_the_plate():
    """Ten times the contact conductance moves heat into the top plate; the melt hardly changes."""
    band = weld_heat_bands()["contact_rivet_plates_w_m2k"]
    poor, good = (
        weld_heat(JOINT, replace(SETTINGS, contact_rivet_plates_w_m2k=end)) for end in (band.low, band.high)
    )
    assert good.peak_at_c("rivet shank") < poor.peak_at_c("rivet shank")
    assert good.peak_at_c("top plate at the head") > poor.peak_at_c("top plate at the head") + 20
    assert good.cooling_time_800_500_s < poor.cooling_time_800_500_s
    assert good.head_depth_mm == pytest.approx(poor.head_depth_mm, rel=0.05)  # heat has no time to get there


def test_without_losses_the_peaks_hardly_change():
    """Convection and radiation over their bands move the named peaks by less than 3 % of their rise."""
    bands = weld_heat_bands()
    ends = [
        replace(SETTINGS, film_w_m2k=film, emittance=emittance)
        for film, emittance in ((0.0, 0.0), (bands["film_w_m2k"].high, bands["emittance"].high))
    ]
    none, most = (weld_heat(JOINT, each) for each in ends)
    for place in none.traces_c:
        rise = none.peak_at_c(place) - 20
        assert abs(none.peak_at_c(place) - most.peak_at_c(place)) < 0.03 * rise


def test_start_temperature_adds_to_the_peaks():
    """A panel that starts 40 K warmer peaks about 40 K higher far from the weld."""
    warm = weld_heat(JOINT, replace(SETTINGS, start_c=60.0))
    place = "bond line 12 mm out"
    assert warm.peak_at_c(place) - WELD.peak_at_c(place) == pytest.approx(
        40, abs=2
    )  # properties move a little


def test_band_of_the_weld():
    """Doubt on heat and melt: from hardly any melt to beyond the half-spaces; web left the other way."""
    found = weld_heat_band(JOINT, SETTINGS)
    head, web = found["head depth"], found["web left"]
    assert head.low < 0.1 < head.best < 0.42 < head.high
    assert web.low < web.best < web.high <= JOINT.web_mm


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"time_ms": 0}, "time must be between 1 ms and 1000 ms, got 0 ms"),
        ({"time_ms": 2000}, "time must be between 1 ms and 1000 ms, got 2000 ms"),
        ({"current_a": 3000}, "current must be between 50 A and 2000 A, got 3000 A"),
        ({"current_a": float("nan")}, "current must be finite, got nan A"),
        ({"voltage_v": 5}, "voltage must be between 10 V and 50 V, got 5 V"),
        ({"stud_heat_share": 0.7}, "sum of the heat shares must be between 0 and 1, got 1.125"),
        ({"emittance": "0.4"}, "emittance must be a number, got '0.4'"),
        (
            {"liquid_conductivity_w_mk": 1},
            "liquid conductivity must be between 5 W/mK and 1000 W/mK, got 1 W/mK",
        ),
        ({"lift": 2}, "field of the settings must be one of .* got 'lift'"),
    ],
)
def test_settings_out_of_range_are_refused(changes, sentence):
    """One sentence with name, limit, unit and value."""
    with pytest.raises(ValueError, match=sentence):
        charted_settings(JOINT, **changes)


def test_charted_settings_of_stainless_and_steel_studs():
    """The chart's 800 A and 20 ms for M6, a tenth less current for a stainless stud (its footnote 2)."""
    steel = default_joint(6, stud_material="carbon steel")
    assert charted_settings(steel) == WeldHeat(current_a=800.0, time_ms=20.0)
    assert charted_settings(JOINT) == WeldHeat(current_a=720.0, time_ms=20.0)


def test_every_band_of_the_settings_is_moved():
    """Sensitivity knows each field that is a band, and sizes of the joint beside."""
    assert set(weld_heat_bands()) < set(input_bands())
    assert set(input_bands()) > {"web_mm", "gap_mm"}


def test_directions_of_the_sensitivity():
    """More heat melts more and leaves less web; a thicker web leaves more; the unknown is refused."""
    rows = {row.name: row for row in sensitivity(JOINT, SETTINGS, inputs=("voltage_v", "web_mm"))}
    voltage, web = rows["voltage_v"], rows["web_mm"]
    assert voltage.at_low["head depth"] < voltage.at_best["head depth"] < voltage.at_high["head depth"]
    assert voltage.at_low["web left"] > voltage.at_high["web left"]
    assert web.at_high["web left"] - web.at_low["web left"] == pytest.approx(0.5, abs=0.05)  # 0.9 to 1.4 mm
    assert web.effect("head depth") < 0.1 * voltage.effect("head depth")
    with pytest.raises(ValueError, match="input must be one of .* got 'weather'"):
        sensitivity(JOINT, SETTINGS, inputs=("weather",))
    with pytest.raises(ValueError, match="result must be one of .* got 'beauty'"):
        sensitivity(JOINT, SETTINGS, by="beauty")
