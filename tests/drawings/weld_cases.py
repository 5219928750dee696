"""Calls of the pictures of the bench and of the heat, for the tables of ``cases``."""

from dataclasses import replace

import drawings
from secondplate.bands import Band
from secondplate.bench import FACES, PullOutcome, WeldJob, chart_settings, weld
from secondplate.heat.joint import default_joint
from secondplate.heat.sensitivity import SensitivityRow
from secondplate.heat.weld import weld_heat
from secondplate.heat.weld_settings import WeldHeat

JOB = WeldJob(
    head_diameter_mm=7.75, web_mm=1.1, rivet_hold_n=2600.0, current_share=1.0, voltage_v=30.0, scatter_share=0
)
CHART = chart_settings(stud_diameter_mm=6)
# Settings that bring out each look of a collar, by what they change on the chart.
LOOKS = {
    "good": {},
    "necked": {"protrusion_mm": 0.5},
    "cold": {"current_a": 380.0},
    "hot": {"current_a": 900.0},
    "one_sided": {"earth": "one clamp, to one side"},
    "hang_up": {"protrusion_mm": 0.05},
    "partial": {"tilt_deg": 8.0},
    "jagged": {"current_a": 420.0, "time_ms": 60.0},
    "porous": {"gas": "none"},
    "off_centre": {"offset_mm": 2.0},
}


def bench_call(**changes):
    """Return the arguments of a picture of one weld without scatter."""
    settings = replace(CHART, **changes)
    return {"outcome": weld(settings, JOB, seed=None, number=0), "settings": settings, "job": JOB}


def pull_call(gave, face="", **changes):
    """Return the arguments of a picture of one pull."""
    return {"pull": PullOutcome(force_n=2600.0, gave=gave, face=face), **bench_call(**changes)}


WINDOW = {"stud_diameter_mm": 6, "web_mm": 1.1, "current_a": 620, "time_ms": 31}

SHOP_WELD = weld_heat(default_joint(), WeldHeat(current_a=600, time_ms=30))
# Burnt through, a small stud, and thick plates that touch, without slug and button.
HOT_WELD = weld_heat(default_joint(), WeldHeat(current_a=900, time_ms=100))
SMALL_WELD = weld_heat(default_joint(3), WeldHeat(current_a=360, time_ms=10))
PLAIN_WELD = weld_heat(
    default_joint(
        5,
        gap_mm=0.0,
        slug_mm=0.0,
        top_plate_mm=3.0,
        second_plate_mm=3.0,
        button_depth_mm=0.0,
        remaining_thickness_mm=1.0,
    ),
    WeldHeat(current_a=630, time_ms=15),
)


def moved(name, low, high, at_low, at_high):
    """Return a made-up row of what an input does to two results."""
    results = [{"head depth": depth, "peak in the shank": 1000 * depth} for depth in (at_low, 0.4, at_high)]
    band = Band(low=low, best=(low + high) / 2, high=high, basis="made up for a drawing")
    return SensitivityRow(name=name, band=band, at_low=results[0], at_best=results[1], at_high=results[2])


ROWS = (
    moved("web_mm", 0.9, 1.4, 0.42, 0.41),
    moved("voltage_v", 20, 40, 0.17, 0.62),
    moved("rivet_heat_share", 0.32, 0.54, 0.27, 0.57),
    moved("contact_rivet_plates_w_m2k", 2000, 20000, 0.42, 0.39),
    moved("contact_plates_w_m2k", 2000, 20000, 0.41, 0.41),
    moved("emittance", 0.05, 0.8, 0.4, 0.4),
)


def cooling(low, best, high):
    """Return a band of cooling times."""
    return Band(low=low, best=best, high=high, basis="made up for a drawing")


USUAL = {
    "sensitivity_chart": (
        drawings.sensitivity_chart,
        {"rows": ROWS, "most": 5},
        ("0.40 mm", "Arc voltage, 20 to 40 V: 0.17 to 0.62; heat share of the rivet", "as weaker: 1"),
    ),
    "zone_hardness_chart": (
        drawings.zone_hardness_chart,
        {"rivet": "36MnB4", "cooling_time_800_500_s": cooling(0.2, 0.4, 0.8)},
        # Longest time for martensite alone, and hardnesses: the library's own published checks.
        (
            "36MnB4",
            "0.2 to 0.8 s",
            "martensite alone",
            "600 HV after Yurioka",
            "up to 3.8 s",
            "535 to 585 HV",
        ),
    ),
    "temperature_histories": (
        drawings.temperature_histories,
        {"weld": SHOP_WELD},
        (
            "600 A for 30 ms",
            f"fusion face {SHOP_WELD.peak_at_c('fusion face'):.0f} degrees after 30 ms",
            f"bond line 4 mm out {SHOP_WELD.peak_at_c('bond line 4 mm out'):.0f} degrees",
            "over 800 for",
        ),
    ),
    "temperature_field": (
        drawings.temperature_field,
        {"weld": SHOP_WELD},
        (
            "600 A for 30 ms",
            f"rivet head {SHOP_WELD.head_depth_mm:.2f} mm",
            f"bond line 8 mm out {SHOP_WELD.peak_at_c('bond line 8 mm out'):.0f}",
            f"rivet shank {SHOP_WELD.peak_at_c('rivet shank'):.0f}",
        ),
    ),
    "constitution_diagram": (
        drawings.constitution_diagram,
        {"stud": "304-type", "rivet": "36MnB4"},
        # Equivalents of both steels and of the half-and-half melt: the library's own published checks.
        ("19.1 %", "10.7 %", "50 % of rivet", "9.8 %", "11 %, martensite", "From 45 %"),
    ),
    "weld_window": (
        drawings.weld_window,
        WINDOW,
        (
            "6 mm stud",
            "web of 1.1 mm",
            "shop setting for a 6 mm pull stud 600 A for 30 ms, sound",
            "620 A for 31 ms",
        ),
    ),
    "weld_window of a bench": (
        drawings.weld_window,
        {**WINDOW, "job": replace(JOB, current_share=0.6)},
        ("as this machine shows them", "600 A for 30 ms, cold"),
    ),
    "bench_collar": (
        drawings.bench_collar,
        bench_call(),
        ("closes all round", "surface is bright", "mm below its mark", "stands square", "middle of the head"),
    ),
    "pulled_stud": (
        drawings.pulled_stud,
        pull_call("rivet drawn out"),
        ("let go at 2600 N", "whole rivet", "open round hole"),
    ),
    "pulled_stud weld broke": (
        drawings.pulled_stud,
        pull_call("weld broke", "flat and grey", current_a=300.0),
        ("let go at 2600 N", "flat, grey and dull", "% of the flange face"),
    ),
}

EXTREMES = {
    "sensitivity of a temperature": (
        drawings.sensitivity_chart,
        {"rows": ROWS, "result": "peak in the shank", "most": 12},
    ),
    "sensitivity to nothing": (drawings.sensitivity_chart, {"rows": ROWS[-1:]}),
    "zone hardness, slow": (
        drawings.zone_hardness_chart,
        {"rivet": "38B2", "cooling_time_800_500_s": cooling(200, 500, 1000)},
    ),
    "zone hardness at one time": (
        drawings.zone_hardness_chart,
        {"rivet": "37MnB5", "cooling_time_800_500_s": cooling(0.01, 0.01, 0.01)},
    ),
    "temperature histories, burnt through": (drawings.temperature_histories, {"weld": HOT_WELD}),
    "temperature histories of the bond line": (
        drawings.temperature_histories,
        {
            "weld": SMALL_WELD,
            "places": (*(f"bond line {out} mm out" for out in (4, 6, 8, 12, 20)), "second plate 4 mm out"),
            "thresholds_c": (80, 120),
        },
    ),
    "temperature history of one place": (
        drawings.temperature_histories,
        {"weld": PLAIN_WELD, "places": ("button",), "thresholds_c": ()},
    ),
    "temperature field, burnt through": (drawings.temperature_field, {"weld": HOT_WELD}),
    "temperature field of a small stud": (drawings.temperature_field, {"weld": SMALL_WELD}),
    "temperature field of thick plates": (drawings.temperature_field, {"weld": PLAIN_WELD}),
    "constitution of pure stud": (
        drawings.constitution_diagram,
        {"stud": "309-type", "rivet": "38B2", "dilution": 0},
    ),
    "constitution near a border": (
        drawings.constitution_diagram,
        {"stud": "304-type", "rivet": "36MnB4", "dilution": 0},
    ),
    "constitution of pure rivet": (
        drawings.constitution_diagram,
        {"stud": "304-type", "rivet": "37MnB5", "dilution": 1},
    ),
    "constitution half way in austenite": (
        drawings.constitution_diagram,
        {"stud": "309-type", "rivet": "33B2", "dilution": 0.2},
    ),
    "weld window of a thin web": (
        drawings.weld_window,
        {**WINDOW, "web_mm": 0.3, "current_a": 50, "time_ms": 2},
    ),
    "weld window of a thick web": (
        drawings.weld_window,
        {"stud_diameter_mm": 4, "web_mm": 3, "current_a": 1500, "time_ms": 200},
    ),
    "weld window, smallest stud": (
        drawings.weld_window,
        {"stud_diameter_mm": 3, "web_mm": 1.1, "current_a": 200, "time_ms": 12},
    ),
    "weld window without sound": (drawings.weld_window, {**WINDOW, "web_mm": 0.5, "current_a": 1100}),
    "weld window of a strong machine": (
        drawings.weld_window,
        {**WINDOW, "job": replace(JOB, current_share=1.8)},
    ),
    **{
        f"bench collar {name}": (drawings.bench_collar, bench_call(**changes))
        for name, changes in LOOKS.items()
    },
    "bench collar burnt through": (
        drawings.bench_collar,
        bench_call(current_a=1500.0, time_ms=200.0, protrusion_mm=6.0),
    ),
    "bench collar far off, hot": (
        drawings.bench_collar,
        bench_call(current_a=1000.0, offset_mm=5.0, protrusion_mm=4.0),
    ),
    "bench collar of a small stud, leaning": (
        drawings.bench_collar,
        bench_call(stud_diameter_mm=3.0, current_a=270.0, time_ms=10.0, tilt_deg=20.0, protrusion_mm=6.0),
    ),
    "bench collar without melt": (drawings.bench_collar, bench_call(current_a=50.0, time_ms=2.0)),
    **{
        f"pulled stud, {gave}": (drawings.pulled_stud, pull_call(gave, stud_diameter_mm=4.0, current_a=400.0))
        for gave in ("rivet drawn out", "stud broke", "head tore")
    },
    **{f"pulled stud, {face}": (drawings.pulled_stud, pull_call("weld broke", face)) for face in FACES[1:]},
}

REFUSED = (
    (drawings.sensitivity_chart, {"rows": ()}, "number of rows must be between 1 and 1000, got 0"),
    (drawings.sensitivity_chart, {"rows": ROWS, "result": "luck"}, "result must be one of .*, got 'luck'"),
    (
        drawings.sensitivity_chart,
        {"rows": ROWS, "most": 13},
        "number of inputs must be between 1 and 12, got 13",
    ),
    (
        drawings.zone_hardness_chart,
        {"rivet": "brass", "cooling_time_800_500_s": cooling(1, 1, 1)},
        "rivet must be one of .*, got 'brass'",
    ),
    (
        drawings.zone_hardness_chart,
        {"rivet": "38B2", "cooling_time_800_500_s": cooling(0.001, 1, 1)},
        "cooling time must be between 0.01 s and 10000 s, got 0.001 s",
    ),
    (
        drawings.temperature_histories,
        {"weld": SHOP_WELD, "places": ("roof",)},
        "place must be one of .*, got 'roof'",
    ),
    (
        drawings.temperature_histories,
        {"weld": SHOP_WELD, "places": ()},
        "number of places must be between 1 and 6, got 0",
    ),
    (
        drawings.temperature_histories,
        {"weld": SHOP_WELD, "thresholds_c": (9,)},
        "threshold must be between 30 C and 2000 C, got 9 C",
    ),
    (
        drawings.constitution_diagram,
        {"stud": "304-type", "rivet": "36MnB4", "dilution": 2},
        "dilution must be between 0 and 1, got 2",
    ),
    (
        drawings.constitution_diagram,
        {"stud": "36MnB4", "rivet": "36MnB4"},
        "stud must be one of .*, got '36MnB4'",
    ),
    (drawings.weld_window, {**WINDOW, "current_a": 40}, "current must be between 50 A and 1500 A, got 40 A"),
    (drawings.weld_window, {**WINDOW, "time_ms": 1}, "weld time must be between 2 ms and 200 ms, got 1 ms"),
    (drawings.weld_window, {**WINDOW, "web_mm": 9}, "web must be between 0.3 mm and 3 mm, got 9 mm"),
    (
        drawings.bench_collar,
        {**bench_call(), "outcome": weld(CHART, JOB, seed=None, number=[0, 1])},
        "outcome must be of one weld, got 2",
    ),
    (
        drawings.pulled_stud,
        {**bench_call(), "pull": PullOutcome(force_n=1.0, gave="nothing", face="")},
        "what gave must be one of .*, got 'nothing'",
    ),
)
