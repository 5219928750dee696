"""Exercise on the upper bound of what heat can take: the softened zone beside a seam."""

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.softening import (
    haz_effective_area_mm2,
    haz_extent_mm,
    haz_factors,
)

HEADING = "What did the heat do?"
SEAMS = ("6082-T6 sheet", "6082-T6 extruded", "6061-T6 sheet", "6005A-T6 extruded")


def _factors(seam, thickness_mm):
    """Return the factors of one alloy and product."""
    alloy, product = seam.rsplit(" ", 1)
    return haz_factors(alloy, product=product, thickness_mm=thickness_mm)


def _draw_seam(draw):
    return scene(draw) | {
        "seam": draw.pick("seam", SEAMS),
        "thickness_mm": draw.pick("thickness_mm", (1.5, 2.0, 2.5, 3.0)),
        "width_mm": draw.pick("width_mm", (100, 110, 120, 130, 140, 150)),
        "interpass_c": draw.pick("interpass_c", (75, 80, 85, 90, 95, 100)),
    }


def _solve_seam(table):
    seams = zip(table["seam"], table["thickness_mm"].tolist(), table["interpass_c"].tolist(), strict=True)
    found = [
        (
            _factors(str(seam), thickness_mm).tensile_strength_share,
            haz_extent_mm(thickness_mm=thickness_mm, interpass_c=interpass_c),
            haz_extent_mm(thickness_mm=thickness_mm),
        )
        for seam, thickness_mm, interpass_c in seams
    ]
    share, extent_mm, cold_mm = np.array(found).T
    plate = {"width_mm": table["width_mm"], "thickness_mm": table["thickness_mm"]}
    return {
        "extent": NumberKey(
            value=extent_mm, slips={"cold": cold_mm, "ratio": cold_mm * table["interpass_c"] / 60}
        ),
        "area": NumberKey(
            value=haz_effective_area_mm2(zone_width_mm=2 * extent_mm, strength_share=share, **plate),
            slips={
                "one_side": haz_effective_area_mm2(zone_width_mm=extent_mm, strength_share=share, **plate),
                "whole_width": haz_effective_area_mm2(
                    zone_width_mm=table["width_mm"], strength_share=share, **plate
                ),
            },
        ),
        "stud": ChoiceKey(right=same(table, "bound")),
    }


HAZ_BOUND = Exercise(
    id="second_plate.haz_bound",
    objective="heat",
    title="What a seam would cost",
    prompt=(
        "What would it cost, they ask at {shop}, to close an old site of {vehicle} by a MIG seam? "
        "It would run along the flange: {seam}, {width_mm} mm wide and {thickness_mm} mm thick. "
        "Its tensile strength is {parent} N/mm², and {zone} N/mm² in the softened zone. "
        "By the standard, from memory, the zone reaches {cold} mm to each side of the seam. "
        "Where the metal has {interpass_c} °C between passes, multiply that by 1 + (T − 60)/120. "
        "Count softened metal only by its strength over that of the parent."
    ),
    shown=lambda scenario: {
        "parent": f"{_factors(scenario['seam'], scenario['thickness_mm']).tensile_strength_mpa:.0f}",
        "zone": f"{_factors(scenario['seam'], scenario['thickness_mm']).zone_tensile_strength_mpa:.0f}",
        "cold": f"{haz_extent_mm(thickness_mm=scenario['thickness_mm']):.0f}",
    },
    parts=(
        Number(
            id="extent",
            ask="How far does the softened zone reach to each side?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("cold", "That is for metal that has cooled between passes. Here it is warmer."),
                slip(
                    "ratio", "The reach does not grow in proportion to the temperature. Look at the factor."
                ),
            ),
        ),
        Number(
            id="area",
            ask="What area of the plate counts after such a seam?",
            unit="mm²",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("one_side", "The zone was counted on one side. It reaches to both sides of the seam."),
                slip("whole_width", "The whole width was taken as softened. Only the zone is."),
            ),
        ),
        Choice(
            id="stud",
            ask="What are these values for a stud that is welded on the rivet head in a moment?",
            options=(
                wrong(
                    "same",
                    "The same: a weld is a weld.",
                    "A seam heats the plate itself, for seconds. The stud heats the head of the rivet.",
                ),
                option("bound", "An upper bound on what heat can take; the pulse is far milder."),
                wrong(
                    "lower",
                    "Too mild: the arc of a stud is hotter.",
                    "The arc is hot and short. What counts is how hot the plate gets, and for how long.",
                ),
            ),
        ),
    ),
    draw=_draw_seam,
    solve=_solve_seam,
    reasons=(
        "Multiply the reach by its factor, and count it to both sides. "
        "Take off what the zone loses: its area times one less the ratio of the strengths. "
        "A seam takes a good part of a narrow flange, and that is one reason to pull and not to weld shut. "
        "For the pulse of a stud it is only the bound that cannot be passed."
    ),
    read_again=HEADING,
)

EXERCISES = (HAZ_BOUND,)
