"""Exercise on what a plate bears at one rivet, by four codes."""

from functools import cache

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Number,
    NumberKey,
    Range,
    RangeKey,
)
from grading.exercises.building_blocks import THREE_FIGURES, looked_up_numbers, option, same, slip, wrong
from grading.exercises.scenes import scene
from grading.exercises.second_plate.edges import FASTENERS, HEADING
from secondplate.eurocode9 import (
    EUROCODE9,
    GAMMA_M2,
    PLATE_CODE,
    bearing_by_codes,
    bearing_n,
    edge_factor,
    end_factor,
)
from secondplate.sheet_alloys import sheet_band

ALLOYS = ("5754-O", "5182-O", "6016-T4", "6016-T6", "6082-T6")
# Limits of the form for one row: end distances that stay clear of where both forms give the same.
END_SHARES = (1.55, 1.6, 1.65, 2.0, 2.1, 2.4, 2.6, 2.8)


@cache
def _least_mpa(alloy, quantity):
    """Return the least value that any source gives of one alloy."""
    return sheet_band(alloy, quantity).low


def strength_mpa(alloys, quantity="tensile strength"):
    """Return the least value that any source gives for each alloy, which is what a plan rests on."""
    return looked_up_numbers(alloys, lambda alloy: _least_mpa(alloy, quantity))


def _draw_bearing(draw):
    rivet = FASTENERS[f"blind rivets of {draw.pick('diameter', ('4', '4.8', '6.4'))} mm"]
    hole_mm = rivet.hole_most_mm
    return scene(draw) | {
        "alloy": draw.pick("alloy", ALLOYS),
        "sheet_mm": draw.decimal("sheet_mm", 1.2, 2.5, 0.1, 1),
        "body_mm": rivet.diameter_mm,
        "hole_mm": hole_mm,
        "end_mm": round(hole_mm * draw.pick("end", END_SHARES), 1),
        "edge_mm": round(hole_mm * draw.pick("edge", (1.6, 1.8, 2.0)), 1),
        "rivets": draw.whole("rivets", 3, 8),
    }


def _by_codes(table):
    """Return the bearing of each sheet by the name of each code."""
    return bearing_by_codes(
        table["sheet_mm"],
        diameter_mm=table["body_mm"],
        hole_diameter_mm=table["hole_mm"],
        tensile_strength_mpa=strength_mpa(table["alloy"]),
        supporting_thickness_mm=table["sheet_mm"],
        end_distance_mm=table["end_mm"],
        edge_distance_mm=table["edge_mm"],
    )


def _bearing_words(scenario):
    """Return the strength of the alloy, the constants of the rule, and what other codes put for k × a."""
    table = {name: np.array([value]) for name, value in scenario.items()}
    strength = strength_mpa(table["alloy"])
    unit_n = strength * table["body_mm"] * table["sheet_mm"] / GAMMA_M2
    others = [
        f"{name} {float((force / unit_n)[0]):.3f}"
        for name, force in _by_codes(table).items()
        if name != PLATE_CODE
    ]
    return {
        "strength": f"{strength[0]:.0f}",
        "others": ", ".join(others),
        "gamma": f"{GAMMA_M2:g}",
        "slope": f"{EUROCODE9['edge slope of the across factor']:g}",
        "offset": f"{EUROCODE9['offset of the across factor']:g}",
        "most": f"{EUROCODE9['largest across factor']:g}",
        "one_row": f"{EUROCODE9['single row factor']:g}",
    }


def _solve_bearing(table):
    codes = _by_codes(table)
    own = codes[PLATE_CODE]
    factors = {
        "along_factor": end_factor(table["end_mm"], hole_diameter_mm=table["hole_mm"]),
        "across_factor": edge_factor(table["edge_mm"], hole_diameter_mm=table["hole_mm"]),
    }
    sheet = {"diameter_mm": table["body_mm"], "tensile_strength_mpa": strength_mpa(table["alloy"])}
    product = bearing_n(table["sheet_mm"], **factors, **sheet)
    factors = {"along_factor": 1.0, "across_factor": EUROCODE9["single row factor"]}
    limit = bearing_n(table["sheet_mm"], **factors, **sheet)
    forces = np.stack(list(codes.values())) * table["rivets"]
    low, high = forces.min(axis=0), forces.max(axis=0)
    return {
        "own": NumberKey(
            value=own,
            slips={
                "larger": np.maximum(product, limit),
                "no_partial": own * GAMMA_M2,
            },
        ),
        "row": RangeKey(
            low=low,
            high=high,
            slips={
                "one_rivet": (low / table["rivets"], high / table["rivets"]),
                "twice_partial": (low / GAMMA_M2, high / GAMMA_M2),
            },
        ),
        "plan": ChoiceKey(right=same(table, "least")),
    }


BEARING = Exercise(
    id="second_plate.bearing",
    objective="fasten",
    title="What the plate bears at one rivet, by four codes",
    prompt=(
        "A flange of {alloy}, {sheet_mm} mm, of at least {strength} MPa, takes blind rivets of {body_mm} mm "
        "in holes of {hole_mm} mm: one row of {rivets} in a single lap, so wide apart that the "
        "pitch does not count. "
        "It is {end_mm} mm from a centre to the end along the load, {edge_mm} mm to the edge across it. "
        "EN 1999-1-1, from memory: bearing is k × a × strength × body × thickness / {gamma}. "
        "Here a is the end distance over 3 holes, at most 1. "
        "And k is {slope} edge distances over the hole, less {offset}, at most {most}. "
        "One row in a single lap counts at most {one_row} for k × a. "
        "In place of k × a, other codes come to: {others}."
    ),
    shown=_bearing_words,
    parts=(
        Number(
            id="own",
            ask="What does the plate bear at one rivet by EN 1999-1-1?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("larger", "Two forms hold, for k × a and for one row. The lesser of them counts."),
                slip("no_partial", "The partial factor is missing. A plan rests on the force by design."),
            ),
        ),
        Range(
            id="row",
            ask="Between which forces does the bearing of the whole row lie, by all four codes?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("one_rivet", "That is one rivet. The row was asked for."),
                slip(
                    "twice_partial", "The partial factor was taken twice. The codes' forces hold it already."
                ),
            ),
        ),
        Choice(
            id="plan",
            ask="The codes do not agree. Which force do you plan with?",
            options=(
                wrong(
                    "mean",
                    "The mean of the four.",
                    "No code gives the mean, and nothing says that the truth lies in the middle.",
                ),
                wrong(
                    "newest",
                    "That of the code with the highest force, for it wastes least.",
                    "A code that promises more has not tested your plate either.",
                ),
                option("least", "The least of them, unless the vehicle maker says otherwise."),
            ),
        ),
    ),
    draw=_draw_bearing,
    solve=_solve_bearing,
    reasons=(
        "Work out a, then k, and take the lesser of k × a and the form for one row. "
        "The range of the row runs from the lowest code to the highest, times the rivets. "
        "Most of these tables are from memory, some are for steel, none for car bodies. "
        "So the spread is part of the answer, and a plan takes its low end."
    ),
    read_again=HEADING,
)

EXERCISES = (BEARING,)
