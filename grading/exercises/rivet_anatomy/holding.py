"""Exercises on what holds a set rivet: its head in the top plate, and its shank where plates are sheared."""

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
from grading.exercises.building_blocks import (
    THREE_FIGURES,
    chosen,
    looked_up_numbers,
    option,
    same,
    slip,
    wrong,
)
from grading.exercises.scenes import scene
from secondplate.fastener_bearing import (
    ALUMINIUM_STANDARD,
    AMERICAN_STANDARD,
    STEEL_STANDARD,
    bearing_coefficient,
    pull_through_n,
    screw_bearing_n,
)
from secondplate.joint_strength import head_pull_through_n, head_shear_n
from secondplate.rivet import Rivet, Sheet, piercing_force_n
from secondplate.sheet_alloys import sheet_band
from secondplate.tables import values
from secondplate.tail_pull_out import tail_hold

HEADING = "What holds the rivet?"
SHARE = values("pull_out_constants")["shear over tension"]
# One rivet for every sum on what holds it; its length enters none of them.
RIVET = Rivet(rivet_length_mm=6.0)


def strength_mpa(alloys):
    """Return the tensile strength to start from, for each alloy of a column."""
    return looked_up_numbers(alloys, lambda name: sheet_band(name, "tensile strength").best)


def clear_bands(first, second, *, share=0.06):
    """Tell where two bands part or meet so plainly that rounding cannot change which it is."""
    return (np.abs(first.high - second.low) > share * second.low) & (
        np.abs(second.high - first.low) > share * first.low
    )


def newtons(force_n):
    """Write a force as a learner reads it, to ten newtons."""
    return f"{np.round(force_n, -1).item():.0f} N"


def spoken(band):
    """Write a band of forces as a learner reads it, to ten newtons."""
    return f"{newtons(band.low)} to {newtons(band.high)}"


def _draw_predict(draw):
    return scene(draw) | {"alloy": draw.pick("alloy", ("5754-O", "6016-T4"))}


PREDICT_LEG = Exercise(
    id="rivet_anatomy.predict_leg",
    objective="holding",
    title="Predict: what gives first?",
    prompt=(
        "A rivet of hard steel sits in two aluminium plates of {alloy}, with an interlock of 0.2 mm. "
        "You pull it straight out by its head. Decide before you work it out."
    ),
    parts=(
        Choice(
            id="first",
            ask="What gives way first?",
            options=(
                wrong(
                    "leg",
                    "The leg: it bends back inward or snaps.",
                    "The leg is steel, several times as strong as the plate that it hooks into.",
                ),
                wrong(
                    "head",
                    "The head: it tears off the shank.",
                    "Head and shank are one piece of hard steel.",
                ),
                option("plate", "The aluminium round the tail."),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"first": ChoiceKey(right=chosen([_plate_first(table)], ["plate"], otherwise="leg"))},
    reasons=(
        "Steel is several times as strong as the aluminium round it. "
        "So with a small interlock in a soft plate the rivet moves and the plate gives way."
    ),
    read_again=HEADING,
    counts=False,
)


def _plate_first(table):
    """Tell where only the plate can give first."""
    hold = tail_hold(
        RIVET, interlock_mm=0.2, penetration_mm=1.6, tensile_strength_mpa=strength_mpa(table["alloy"])
    )
    steel = np.minimum(hold.forces_n["leg closure"].low, hold.forces_n["tube snaps"].low)
    return hold.strength_n.high < steel


def _draw_head(draw):
    return scene(draw) | {
        "head_mm": draw.decimal("head_mm", 7.5, 8.0, 0.05, 2),
        "shank_mm": draw.pick("shank_mm", (5.3, 5.4, 5.5)),
        "top_mm": draw.decimal("top_mm", 0.9, 1.5, 0.1, 1),
        "strength": draw.whole("strength", 190, 320, 10),
    }


def _solve_head(table):
    head_mm, shank_mm = table["head_mm"], table["shank_mm"]
    rivet = Rivet(head_diameter_mm=head_mm, shank_diameter_mm=shank_mm, rivet_length_mm=6.0)
    top = Sheet(thickness_mm=table["top_mm"], tensile_strength_mpa=table["strength"])
    band = head_pull_through_n(rivet, top)
    shear_n = head_shear_n(rivet, top)
    at_shank_n = pull_through_n(
        top.thickness_mm, head_diameter_mm=shank_mm, tensile_strength_mpa=top.tensile_strength_mpa
    )
    shank_shear_n = piercing_force_n(
        shank_diameter_mm=shank_mm,
        thickness_mm=top.thickness_mm,
        tensile_strength_mpa=top.tensile_strength_mpa,
    )
    return {
        "pull_through": NumberKey(
            value=band.low, slips={"shank": at_shank_n, "round": np.pi * band.low, "radius": band.low / 2}
        ),
        "shear": NumberKey(value=shear_n, slips={"shank": shank_shear_n, "tension": shear_n / SHARE}),
        "upper": ChoiceKey(right=same(table, "shear")),
        "say": ChoiceKey(right=same(table, "band")),
    }


HEAD = Exercise(
    id="rivet_anatomy.head_side",
    objective="holding",
    title="Can the head come through the top plate?",
    prompt=(
        "Two plates of {vehicle} are pulled apart. "
        "The rivet's head measures {head_mm} mm, its shank {shank_mm} mm. "
        "The top plate is {top_mm} mm thick and has a strength of {strength} N/mm². "
        "A standard for screws in thin sheet takes head diameter × thickness × strength. "
        "Plain mechanics takes the shear all round the head, with {share} of the strength."
    ),
    shown=lambda scenario: {"share": f"{SHARE}"},
    parts=(
        Number(
            id="pull_through",
            ask="At which force does the head come through by the standard for screws?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("shank", "That is the shank. What has to come through here is the head."),
                slip("round", "This form takes the diameter as it is, not the way round it."),
                slip("radius", "That is half of it: the form takes the diameter, not the radius."),
            ),
        ),
        Number(
            id="shear",
            ask="At which force is the plate sheared through all round the head?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("shank", "That is a cut round the shank. The cut runs round the head."),
                slip("tension", "In shear a metal bears less than in tension: the share is missing."),
            ),
        ),
        Choice(
            id="upper",
            ask="Which of the two is the upper estimate?",
            options=(
                wrong(
                    "pull_through",
                    "The form for screws.",
                    "Compare the two forces that you found.",
                ),
                option("shear", "The shear: it forgets that the plate dishes and so gives earlier."),
                wrong(
                    "neither",
                    "Neither: both reckon with the same strength.",
                    "The strength is the same, what is multiplied with it is not.",
                ),
            ),
        ),
        Choice(
            id="say",
            ask="Somebody wants to know what the head side bears. What do you say?",
            options=(
                wrong(
                    "mean",
                    "The mean of the two, to the nearest ten newtons.",
                    "A mean of two guesses is still a guess, and ten newtons promise what nobody measured.",
                ),
                wrong(
                    "standard",
                    "The value of the standard, because a standard is safe.",
                    "It was written for screws in steel. No rivet is within its range.",
                ),
                option("band", "Somewhere between the two: neither was tried on such a joint."),
            ),
        ),
    ),
    draw=_draw_head,
    solve=_solve_head,
    reasons=(
        "The form for screws multiplies diameter, thickness and strength. "
        "The shear takes the way round the head times thickness, times strength, times the share for shear. "
        "The plate dishes before it shears through, so the shear is the upper end of the band. "
        "Both forms are borrowed: give the band and say where it comes from."
    ),
    read_again=HEADING,
)

# How the form is written for each of three standards; the strength keeps under what one of them counts.
FORMS = {"steel": STEEL_STANDARD, "aluminium": ALUMINIUM_STANDARD, "american": AMERICAN_STANDARD}


@cache
def _slopes():
    """Return the factor before the root of each form, as the words of the prompt need it."""
    # A sheet of a quarter of the shank lies below every plateau; the root of the ratio is then a half.
    alphas = {
        name: bearing_coefficient(1.0, shank_diameter_mm=4.0, supporting_thickness_mm=1.0, standard=standard)
        for name, standard in FORMS.items()
    }
    return {name: f"{2 * alpha:.1f}" for name, alpha in alphas.items()}


def _draw_bearing(draw):
    return scene(draw) | {
        "shank_mm": draw.pick("shank_mm", (5.3, 5.4, 5.5)),
        "plate_mm": draw.decimal("plate_mm", 1.0, 1.8, 0.1, 1),
        "strength": draw.whole("strength", 190, 260, 5),
    }


def _solve_bearing(table):
    plate_mm, shank_mm, strength = table["plate_mm"], table["shank_mm"], table["strength"]
    plate = {
        "shank_diameter_mm": shank_mm,
        "tensile_strength_mpa": strength,
        "supporting_thickness_mm": plate_mm,
    }
    steel_n, aluminium_n, american_n = (
        screw_bearing_n(plate_mm, standard=standard, **plate) for standard in FORMS.values()
    )
    root = np.sqrt(plate_mm / shank_mm)
    return {
        "by_steel": NumberKey(
            value=steel_n, slips={"no_root": steel_n * root, "upside_down": steel_n / root**2}
        ),
        "forms": RangeKey(
            low=aluminium_n,
            high=american_n,
            slips={"without_aluminium": (steel_n, american_n), "tenth": (0.9 * steel_n, 1.1 * steel_n)},
        ),
        "earlier": ChoiceKey(right=same(table, "tilts")),
    }


BEARING = Exercise(
    id="rivet_anatomy.bearing",
    objective="holding",
    title="How hard does the shank press sideways?",
    prompt=(
        "At {shop} two equal aluminium plates of {plate_mm} mm, strength {strength} N/mm², are pulled along "
        "each other. The shank measures {shank_mm} mm. "
        "Three standards for screws write: F = k × √(thickness ÷ shank) × strength × shank × thickness. "
        "For steel in Europe k is {steel}, for aluminium in Europe {aluminium}, in America {american}. "
        "None of them was written for rivets."
    ),
    shown=lambda scenario: _slopes(),
    parts=(
        Number(
            id="by_steel",
            ask="What does a plate bear by the European form for steel?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("no_root", "The ratio of thickness to shank comes under a root first."),
                slip("upside_down", "The ratio is the other way up: thickness over shank."),
            ),
        ),
        Range(
            id="forms",
            ask="Between which two forces do the three forms put it?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("without_aluminium", "One of the three is missing, and it gives the least."),
                slip("tenth", "That is one form with ten per cent either way. Use all three."),
            ),
        ),
        Choice(
            id="earlier",
            ask="A shear test gives way below all three, and the tail has come out. Why?",
            options=(
                option("tilts", "The plates bend, and the tail is drawn out: no form reckons with that."),
                wrong(
                    "weak",
                    "The plates were weaker than their certificate says.",
                    "Then the hole would be pulled long. Here the tail came out.",
                ),
                wrong(
                    "sum",
                    "The sum was wrong: three standards cannot all be too high.",
                    "They all reckon with the same event, the pressed side of the hole.",
                ),
            ),
        ),
    ),
    draw=_draw_bearing,
    solve=_solve_bearing,
    reasons=(
        "Take the root of thickness over shank, then multiply all the rest. "
        "The smallest factor gives the low end and the largest the high end. "
        "In a single lap the plates bend, and then the interlock gives before the side of the hole does. "
        "So even the low end can be too high."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_LEG, HEAD, BEARING)
