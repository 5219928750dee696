"""Calls of every picture: usual ones with the numbers that the words must tell, extremes, and refused ones.

Kept apart from the tests so that a new picture is one entry in each table.
"""

from functools import cache
from unittest import mock

from matplotlib.figure import Figure

import drawings
from secondplate.inspection import COLLAR_SIGNS
from secondplate.rivet import Sheet, Stack
from secondplate.rivet_rules import rivet_length_advice_mm
from tests.drawings import flange_cases, plate_cases, removal_cases, row_cases, section_cases, weld_cases

CYCLE = {
    "current_a": 600,
    "time_ms": 30,
    "lift_mm": 1.25,
    "protrusion_mm": 2.5,
    "pre_flow_s": 1,
    "post_flow_s": 0.7,
}
STUD = {
    "stud_diameter_mm": 6,
    "flange_diameter_mm": 7,
    "protrusion_mm": 2,
    "lift_mm": 1,
    "head_diameter_mm": 7.75,
}
POINT = {"stud_diameter_mm": 6, "current_a": 600, "time_ms": 30}
CABLE = {"current_a": 800, "loop_length_m": 10, "area_mm2": 50, "temperature_c": 60}
LENGTHS = rivet_length_advice_mm(
    Stack(top=Sheet(thickness_mm=2.0), second=Sheet(thickness_mm=2.0)), shank_diameter_mm=5.0
)
GAS = {"flow_l_min": 9, "pre_flow_s": 1, "weld_time_ms": 30, "post_flow_s": 0.5}
ROOM = {"room_volume_m3": 50, "flow_l_min": 10}

# Name of the case: what draws it, with what, and what its words must hold. The computed numbers are those of
# the library's own published checks: 3.192 V (800 A, 10 m, 50 mm2, 60 C), 0.24 m at 600 A, 6.0 h, 14.1 kN.
USUAL = {
    "weld_cycle": (
        drawings.weld_cycle,
        CYCLE,
        ("600 A", "30 ms", "1.25 mm", "2.5 mm", "1 s before", "0.7 s after"),
    ),
    "weld_cycle without gas": (
        drawings.weld_cycle,
        {**CYCLE, "pre_flow_s": 0, "post_flow_s": 0},
        ("No gas",),
    ),
    "stud_and_holder": (
        drawings.stud_and_holder,
        STUD,
        ("6 mm stud", "7 mm flange", "7.75 mm", "2 mm out of the nose", "1 mm off", "0.38 mm inside"),
    ),
    "stud_and_holder off the middle": (
        drawings.stud_and_holder,
        {**STUD, "offset_mm": -1.5},
        ("1.5 mm to the left", "lands on the shoulder", "1.12 mm past the edge"),
    ),
    "rivet_and_plates": (
        drawings.rivet_and_plates,
        {"top_thickness_mm": 1.5, "second_thickness_mm": 2.5},
        ("7.75 mm", "6 mm", "1.5 mm", "2.5 mm", "second plate stays on the car"),
    ),
    "energy_chart": (
        drawings.energy_chart,
        POINT,
        ("600 A for 30 ms", "540 J at 30 V", "540 to 660 A and 27 to 33 ms, setting inside"),
    ),
    "cable_drop": (
        drawings.cable_drop,
        CABLE,
        ("800 A", "60 degrees", "10 m", "50 mm2", "lose 3.19 V", "25 mm2 6.38 V"),
    ),
    "field_by_distance": (
        drawings.field_by_distance,
        {"current_a": 600},
        ("600 A", "0.5 mT", "0.24 m", "50 mm apart", "0.11 m"),
    ),
    "gas_use": (
        drawings.gas_use,
        GAS,
        (
            "9 L/min",
            "0.15 L before the arc (1 s)",
            "0.0045 L during the arc (30 ms)",
            "0.075 L",
            "0.23 L in all",
        ),
    ),
    "oxygen_in_room": (drawings.oxygen_in_room, ROOM, ("50 m3", "10 L/min", "20.95 %", "19.5 % in 6 h")),
    "oxygen_in_room with fresh air": (
        drawings.oxygen_in_room,
        {**ROOM, "fresh_air_l_min": 134.5},
        ("134.5 L/min of fresh air",),
    ),
    "stud_strength": (
        drawings.stud_strength,
        {"diameter_mm": 6, "pull_n": 5000},
        ("M6", "A2-70 yields at 9.1 kN and breaks at 14.1 kN", "5 kN", "weld may break earlier"),
    ),
    "rule_bars": (
        drawings.rule_bars,
        {"advice": LENGTHS, "value": 6.5},
        ("Shank rule: 7.75 mm", "casting: 4.5 to 5.5 mm", "do not all meet", "Chosen: 6.5 mm"),
    ),
    "job_sequence": (drawings.job_sequence, {}, ("weld one stud", "only then weld studs on all the other")),
    "polarity": (drawings.polarity, {}, ("gun is negative", "Two earth clamps")),
    "polarity with one clamp": (
        drawings.polarity,
        {"stud": "stud positive", "clamps": 1},
        ("gun is positive", "Only one earth clamp", "arc blow"),
    ),
    "collar_strip": (drawings.collar_strip, {}, tuple(sign.sign for sign in COLLAR_SIGNS)),
    **{f"collar {sign.id}": (drawings.collar, {"sign_id": sign.id}, (sign.sign,)) for sign in COLLAR_SIGNS},
    **weld_cases.USUAL,
    **flange_cases.USUAL,
    **section_cases.USUAL,
    **removal_cases.USUAL,
    **plate_cases.USUAL,
    **row_cases.USUAL,
}

# The ends of the allowed ranges, where pictures come apart first.
EXTREMES = {
    "short weak cycle": (
        drawings.weld_cycle,
        {
            "current_a": 50,
            "time_ms": 1,
            "lift_mm": 0.2,
            "protrusion_mm": 0.2,
            "pre_flow_s": 0.1,
            "post_flow_s": 0,
        },
    ),
    "long strong cycle": (
        drawings.weld_cycle,
        {
            "current_a": 3000,
            "time_ms": 2000,
            "lift_mm": 8,
            "protrusion_mm": 8,
            "pre_flow_s": 10,
            "post_flow_s": 10,
        },
    ),
    "low lift, long protrusion": (drawings.weld_cycle, {**CYCLE, "lift_mm": 0.2, "protrusion_mm": 8}),
    "large stud far off": (
        drawings.stud_and_holder,
        {
            "stud_diameter_mm": 8,
            "flange_diameter_mm": 10,
            "protrusion_mm": 5,
            "lift_mm": 5,
            "head_diameter_mm": 11,
            "offset_mm": -4,
        },
    ),
    "small stud far off": (
        drawings.stud_and_holder,
        {
            "stud_diameter_mm": 3,
            "flange_diameter_mm": 3,
            "protrusion_mm": 0.2,
            "lift_mm": 0.2,
            "head_diameter_mm": 4,
            "offset_mm": 4,
        },
    ),
    "thin stack": (drawings.rivet_and_plates, {"top_thickness_mm": 0.8, "second_thickness_mm": 0.8}),
    "thick stack, small head": (
        drawings.rivet_and_plates,
        {"top_thickness_mm": 3, "second_thickness_mm": 3, "head_diameter_mm": 4, "stud_diameter_mm": 3},
    ),
    "thick stack, large head": (
        drawings.rivet_and_plates,
        {
            "top_thickness_mm": 3,
            "second_thickness_mm": 3,
            "head_diameter_mm": 11,
            "stud_diameter_mm": 8,
            "flange_diameter_mm": 10,
        },
    ),
    "5 mm chart with its misprint": (
        drawings.energy_chart,
        {"stud_diameter_mm": 5, "current_a": 420, "time_ms": 110},
    ),
    "far above all rules": (
        drawings.energy_chart,
        {"stud_diameter_mm": 3, "current_a": 3000, "time_ms": 1000},
    ),
    "far below all rules": (drawings.energy_chart, {"stud_diameter_mm": 12, "current_a": 50, "time_ms": 1}),
    "no rule held": (drawings.energy_chart, {"stud_diameter_mm": 7, "current_a": 600, "time_ms": 30}),
    "rule_bars of a thin stack, a value far off": (
        drawings.rule_bars,
        {
            "advice": rivet_length_advice_mm(
                Stack(top=Sheet(thickness_mm=0.8), second=Sheet(thickness_mm=0.8)), shank_diameter_mm=3.35
            ),
            "value": 10.0,
        },
    ),
    "very short cable": (drawings.cable_drop, {"current_a": 50, "loop_length_m": 1, "area_mm2": 120}),
    "very long thin cable": (
        drawings.cable_drop,
        {"current_a": 3000, "loop_length_m": 100, "area_mm2": 10, "temperature_c": 90},
    ),
    "areas close together": (drawings.cable_drop, {**CABLE, "area_mm2": 68}),
    "weak field": (drawings.field_by_distance, {"current_a": 50, "spacing_m": 0.1}),
    "strong field": (drawings.field_by_distance, {"current_a": 3000, "spacing_m": 0.02}),
    "gas only after": (
        drawings.gas_use,
        {"flow_l_min": 1, "pre_flow_s": 0, "weld_time_ms": 1, "post_flow_s": 0},
    ),
    "much gas": (
        drawings.gas_use,
        {"flow_l_min": 40, "pre_flow_s": 10, "weld_time_ms": 2000, "post_flow_s": 10},
    ),
    "footwell": (
        drawings.oxygen_in_room,
        {"room_volume_m3": 0.05, "flow_l_min": 40, "fresh_air_l_min": 5000},
    ),
    "hall": (drawings.oxygen_in_room, {"room_volume_m3": 1000, "flow_l_min": 1, "fresh_air_l_min": 1}),
    "all classes": (
        drawings.stud_strength,
        {
            "diameter_mm": 8,
            "property_classes": ("4.8", "8.8", "10.9", "12.9", "A2-50", "A2-70", "A2-80"),
            "pull_n": 60000,
        },
    ),
    "one class": (drawings.stud_strength, {"diameter_mm": 3, "property_classes": ("A2-50",), "pull_n": 1}),
    "two collars": (drawings.collar_strip, {"sign_ids": ("good", "off_centre")}),
    **{f"collar {s.id} to judge": (drawings.collar, {"sign_id": s.id, "named": False}) for s in COLLAR_SIGNS},
    **weld_cases.EXTREMES,
    **flange_cases.EXTREMES,
    **section_cases.EXTREMES,
    **removal_cases.EXTREMES,
    **plate_cases.EXTREMES,
}

# What is refused, and the sentence.
REFUSED = (
    (
        drawings.weld_cycle,
        {**CYCLE, "current_a": 5000},
        "current must be between 50 A and 3000 A, got 5000 A",
    ),
    (drawings.weld_cycle, {**CYCLE, "time_ms": 0}, "weld time must be between 1 ms and 2000 ms, got 0 ms"),
    (drawings.weld_cycle, {**CYCLE, "lift_mm": float("nan")}, "lift must be finite, got nan mm"),
    (drawings.weld_cycle, {**CYCLE, "protrusion_mm": "2"}, "protrusion must be a number in mm, got '2'"),
    (drawings.weld_cycle, {**CYCLE, "pre_flow_s": -1}, "pre-flow must be between 0 s and 10 s, got -1 s"),
    (drawings.weld_cycle, {**CYCLE, "post_flow_s": True}, "post-flow must be a number in s, got True"),
    (
        drawings.stud_and_holder,
        {**STUD, "flange_diameter_mm": 5},
        "flange diameter must be between 6 mm and 10 mm, got 5 mm",
    ),
    (drawings.stud_and_holder, {**STUD, "offset_mm": 9}, "offset must be between -4 mm and 4 mm, got 9 mm"),
    (
        drawings.rivet_and_plates,
        {"top_thickness_mm": 0},
        "top plate thickness must be between 0.8 mm and 3 mm, got 0 mm",
    ),
    (
        drawings.energy_chart,
        {**POINT, "stud_diameter_mm": 20},
        "stud diameter must be between 3 mm and 12 mm, got 20 mm",
    ),
    (drawings.energy_chart, {**POINT, "base": "brick"}, "must be one of .*, got 'brick'"),
    (
        drawings.cable_drop,
        {**CABLE, "area_mm2": 0},
        "copper area must be between 10 mm2 and 120 mm2, got 0 mm2",
    ),
    (drawings.field_by_distance, {"current_a": float("inf")}, "current must be finite, got inf A"),
    (drawings.gas_use, {**GAS, "flow_l_min": 0}, "flow must be between 1 L/min and 40 L/min, got 0 L/min"),
    (
        drawings.oxygen_in_room,
        {**ROOM, "room_volume_m3": 0},
        "room volume must be between 0.05 m3 and 1000 m3, got 0 m3",
    ),
    (
        drawings.stud_strength,
        {"diameter_mm": 6, "property_classes": ("A2-90",)},
        "property class must be one of .*, got 'A2-90'",
    ),
    (
        drawings.stud_strength,
        {"diameter_mm": 6, "property_classes": ()},
        "property classes must be at least one, got none",
    ),
    (
        drawings.stud_strength,
        {"diameter_mm": 6, "pull_n": 0},
        "pull must be between 1 N and 60000 N, got 0 N",
    ),
    (drawings.polarity, {"stud": "plus"}, "polarity must be one of stud negative, stud positive, got 'plus'"),
    (drawings.polarity, {"clamps": 3}, "earth clamps must be 1 or 2, got 3"),
    (drawings.collar, {"sign_id": "fine"}, "collar sign must be one of good, .*, got 'fine'"),
    (drawings.collar_strip, {"sign_ids": ()}, "collar signs must be at least one, got none"),
    *weld_cases.REFUSED,
    *flange_cases.REFUSED,
    *section_cases.REFUSED,
    *removal_cases.REFUSED,
    *plate_cases.REFUSED,
    *row_cases.REFUSED,
)


def usual_calls():
    """Return every usual call as name, function and arguments."""
    return [(name, draw, given) for name, (draw, given, _) in USUAL.items()]


def all_calls():
    """Return every usual and every extreme call as name, function and arguments."""
    return usual_calls() + [(name, draw, given) for name, (draw, given) in EXTREMES.items()]


@cache
def drawn(name):
    """Return the picture of a case and the figure behind it, drawn once for all tests."""
    draw, given = next((draw, given) for case, draw, given in all_calls() if case == name)
    figures, save = [], Figure.savefig

    def kept_save(self, *arguments, **options):
        figures.append(self)
        return save(self, *arguments, **options)

    with mock.patch.object(Figure, "savefig", kept_save):
        shown = draw(**given)
    return shown, figures[-1]


def picture(name):
    """Return the picture of a case."""
    return drawn(name)[0]
