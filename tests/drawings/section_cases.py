"""Calls of the pictures of a riveted joint: usual ones, extremes, and refused ones."""

import drawings
from secondplate.rivet import Rivet
from secondplate.section import FAULT_NAMES, build_section, random_section, random_sections, usual_parameters
from secondplate.section_places import PLACED
from secondplate.tail_pull_out import tail_pull_out

JOINT = build_section(usual_parameters())
COLUMN, _ = random_sections([b"one", b"two"])
PULL = tail_pull_out(
    Rivet(rivet_length_mm=5.0),
    interlock_mm=0.4,
    penetration_mm=1.6,
    second_tensile_strength_mpa=215,
    top_proof_stress_mpa=100,
)
WEAK = tail_pull_out(
    Rivet(rivet_length_mm=5.0),
    interlock_mm=0,
    penetration_mm=0.1,
    second_tensile_strength_mpa=20,
    top_proof_stress_mpa=20,
    contact_pressure_mpa=0,
)

# The first peak of 2.16 to 4.81 kN is that of the library's own published check.
USUAL = {
    "section_view": (
        drawings.section_view,
        {"section": JOINT},
        ("the tail ends at", "cut through the middle"),
    ),
    "section_view named": (drawings.section_view, {"section": JOINT, "named": True}, ("parts are named",)),
    **{
        f"section_view {name}": (
            drawings.section_view,
            {"section": JOINT, "measured": name},
            ("caliper show",),
        )
        for name in PLACED
    },
    "section_view interlock": (
        drawings.section_view,
        {"section": JOINT, "measured": "interlock_left_mm"},
        ("interlock left is 0.5 mm",),
    ),
    **{
        f"section_view {fault}": (
            drawings.section_view,
            {"section": random_section(b"drawn", fault=fault)[0]},
            ("thinnest it reaches",),
        )
        for fault in FAULT_NAMES
    },
    "rivet_parts": (drawings.rivet_parts, {}, ("web is the solid steel", "button bulges")),
    "rivet_parts lettered": (
        drawings.rivet_parts,
        {"named": False},
        ("A points at the top", "F at the bulge"),
    ),
    "button_from_below": (
        drawings.button_from_below,
        {"section": JOINT},
        ("without a break", "one colour throughout"),
    ),
    "button_from_below cracked": (
        drawings.button_from_below,
        {"section": random_section(b"drawn", fault="crack in button")[0]},
        ("dark jagged line",),
    ),
    "setting_stages": (drawings.setting_stages, {}, ("1, clamp", "2, pierce", "3, flare", "4, seat")),
    "setting_at": (drawings.setting_at, {"stroke_share": 0.3}, ("30 % of the stroke", "stage pierce")),
    "force_stroke": (drawings.force_stroke, {}, ("not measured", "Clamp from 0 %", "seat from 85 %")),
    "force_stroke lettered": (drawings.force_stroke, {"named": False, "stage": "flare"}, ("Shaded: C.",)),
    "force_stroke marked": (drawings.force_stroke, {"stroke_share": 0.9}, ("Marked: 90 %",)),
    "pull_out_chart": (
        drawings.pull_out_chart,
        {"pull": PULL, "stud_n": 10050},
        ("first peak 2.2 to 4.8 kN", "stud breaks at 10.1 kN"),
    ),
}

EXTREMES = {
    "first touch": (drawings.setting_at, {"stroke_share": 0.0}),
    "head seated": (drawings.setting_at, {"stroke_share": 1.0}),
    "mark at the start": (drawings.force_stroke, {"stroke_share": 0.0, "stage": "clamp"}),
    "mark at the peak": (drawings.force_stroke, {"stroke_share": 1.0, "stage": "seat"}),
    "hardly any pull, weak stud": (drawings.pull_out_chart, {"pull": WEAK, "stud_n": 40}),
    "hardly any pull, strong stud": (drawings.pull_out_chart, {"pull": WEAK, "stud_n": 30000}),
    "pull without a stud": (drawings.pull_out_chart, {"pull": PULL}),
}

REFUSED = (
    (drawings.section_view, {"section": JOINT, "measured": "gap_mm"}, "measure must be one of .*'gap_mm'"),
    (
        drawings.section_view,
        {"section": COLUMN, "measured": "tail_diameter_mm"},
        "section must be a single one, got a column of 2",
    ),
    (drawings.button_from_below, {"section": COLUMN}, "section must be a single one, got a column of 2"),
    (drawings.setting_at, {"stroke_share": 1.2}, "share of the stroke must be between 0 and 1, got 1.2"),
    (drawings.force_stroke, {"stage": "squeeze"}, "stage must be one of clamp, .*'squeeze'"),
    (drawings.force_stroke, {"stroke_share": -0.1}, "share of the stroke must be between 0 and 1"),
    (
        drawings.pull_out_chart,
        {"pull": PULL, "stud_n": 0},
        "breaking load of the stud must be above 0 N, got 0 N",
    ),
)
