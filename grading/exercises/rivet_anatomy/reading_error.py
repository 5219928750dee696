"""Exercises on what stands behind a reading: its scatter, and the standard that a test is done by."""

from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Number,
    NumberKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import chosen, option, same, slip, wrong
from grading.exercises.rivet_anatomy.reading import HEADING
from grading.exercises.scenes import scene
from secondplate.measuring_inputs import repeated_uncertainty


def _draw_error(draw):
    return scene(draw) | {
        "spread_um": draw.whole("spread_um", 18, 40, 1),
        "readings": draw.pick("readings", (3, 5, 6, 8, 10)),
    }


def _solve_error(table):
    spread_um, readings = table["spread_um"], table["readings"]
    mean_um = repeated_uncertainty(standard_deviation=spread_um, readings_count=readings)
    return {
        "mean": NumberKey(
            value=mean_um,
            slips={
                "of_one": spread_um,
                "no_root": spread_um / readings,
                "times_root": spread_um**2 / mean_um,
            },
        ),
        "stays": ChoiceKey(right=same(table, "scale")),
    }


READING_ERROR = Exercise(
    id="rivet_anatomy.reading_error",
    objective="measure",
    title="Read it again, and again",
    prompt=(
        "You set the lines for one interlock {readings} times, and take them away each time. "
        "The standard deviation of single readings is {spread_um} um. You report the mean."
    ),
    parts=(
        Number(
            id="mean",
            ask="What is the standard uncertainty of the mean from this scatter?",
            unit="um",
            relative_tolerance=0.03,
            tolerance_reason="The scatter is given to two figures: half of the last one is up to 3 %.",
            slips=(
                slip("of_one", "That is for one reading. The mean of several scatters less."),
                slip("no_root", "Divide by the root of the number of readings."),
                slip("times_root", "A mean scatters less than one reading, not more. Divide."),
            ),
        ),
        Choice(
            id="stays",
            ask="What do more readings of the same picture not make smaller?",
            options=(
                wrong(
                    "hand",
                    "The scatter of your hand and eye in the mean.",
                    "Just that is what more readings make smaller.",
                ),
                option("scale", "A wrong scale, or a cut beside the axis: all readings share it."),
                wrong(
                    "round",
                    "The rounding of each reading to the nearest tick.",
                    "Rounding goes now up, now down: most of it evens out in a mean.",
                ),
            ),
        ),
    ),
    draw=_draw_error,
    solve=_solve_error,
    reasons=(
        "The scatter of a mean is the scatter of one reading over the root of their number. "
        "What all readings share stays: scale, place of the cut, grinding. "
        "So check the scale on a known length, and cut through the middle."
    ),
    read_again=HEADING,
)

# Scope of the two standards, read in their abstracts.
THICKEST_SHEET_MM = 4.5


def _draw_standard(draw):
    return scene(draw) | {
        "shear_mm": draw.decimal("shear_mm", 1.0, 4.0, 0.5, 1),
        "cross_mm": draw.decimal("cross_mm", 1.0, 4.0, 0.5, 1),
        "thick_mm": draw.decimal("thick_mm", 3.0, 6.0, 0.2, 1),
    }


def _solve_standard(table):
    within = {name: table[f"{name}_mm"] <= THICKEST_SHEET_MM for name in ("shear", "cross", "thick")}
    return {
        "standard": VerdictsKey(
            right={
                "shear": chosen([within["shear"]], ["iso_12996"], otherwise="neither"),
                "cross": chosen([within["cross"]], ["iso_16237"], otherwise="neither"),
                "enough": same(table, "neither"),
                "thick": chosen([within["thick"]], ["iso_12996"], otherwise="neither"),
                "bridge": same(table, "neither"),
            }
        ),
        "force": ChoiceKey(right=same(table, "maximum")),
    }


WHICH_STANDARD = Exercise(
    id="rivet_anatomy.which_standard",
    objective="measure",
    title="Which standard tests what?",
    prompt=(
        "{shop} sends joints of {vehicle} to a laboratory, which asks which test is wanted. "
        "The two standards are for single sheets up to {most} mm; sheet includes extrusions and castings. "
        "Neither is named on the order."
    ),
    shown=lambda scenario: {"most": f"{THICKEST_SHEET_MM:g}"},
    parts=(
        Verdicts(
            id="standard",
            ask="Which standard is meant for it?",
            points=2.0,
            rows=(
                option("shear", "Two lapped sheets of {shear_mm} mm, pulled along their plane"),
                option("cross", "Two crossed sheets of {cross_mm} mm, pulled apart square to their plane"),
                option("enough", "How much interlock is enough for a car body"),
                option("thick", "Casting of {thick_mm} mm on sheet of 2 mm, pulled along the plane"),
                option("bridge", "Riveted sheets of a footbridge, pulled along their plane"),
            ),
            verdicts=(
                option("iso_16237", "ISO 16237, cross tension"),
                option("neither", "neither of the two"),
                option("iso_12996", "ISO 12996, tensile shear"),
            ),
        ),
        Choice(
            id="force",
            ask="What does the cross-tension standard call the strength of a joint?",
            options=(
                wrong(
                    "first_move",
                    "The force at which the plates first move apart.",
                    "They bend from the start. The force is read at its peak.",
                ),
                wrong(
                    "stress",
                    "The force over the section of the shank.",
                    "It is a force: which section gives is not known beforehand.",
                ),
                option("maximum", "The greatest force of the test."),
            ),
        ),
    ),
    draw=_draw_standard,
    solve=_solve_standard,
    reasons=(
        "Both standards say how to test, and neither says how much is enough: limits come from the maker. "
        "ISO 12996 is tensile shear and leaves out civil engineering; ISO 16237 is cross tension. "
        "Thicker sheets than the scope need a test that is agreed with the customer. "
        "Look into the edition in force before you order."
    ),
    read_again=HEADING,
)

EXERCISES = (READING_ERROR, WHICH_STANDARD)
