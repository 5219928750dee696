"""Exercise on a button as a dome: what strain pressing it back takes, and when it only springs."""

from itertools import pairwise, product

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import (
    THREE_FIGURES,
    looked_up_numbers,
    option,
    same,
    slip,
    wrong,
)
from grading.exercises.scenes import scene
from secondplate.plate import (
    ButtonDome,
    springing_rise_mm,
)
from secondplate.sheet_alloys import sheet_band

HEADING = "May it be pressed back?"
ALLOYS = ("5754-O", "6016-T4", "6016-T6", "6082-T6")
MODULUS_MPA = 70_000.0


def dome(diameter_mm, rise_mm, sheet_mm):
    """Return buttons by their diameter."""
    return ButtonDome(base_radius_mm=np.divide(diameter_mm, 2), rise_mm=rise_mm, sheet_mm=sheet_mm)


def _proof_mpa(alloy):
    """Return the best proof stress of one alloy."""
    return sheet_band(alloy, "proof stress").best


def _strains(diameter_mm, rise_mm, sheet_mm):
    """Return the strain of pressing back, and what wrong paths make of it."""
    button = dome(diameter_mm, rise_mm, sheet_mm)
    return button.press_back_strain, {
        "one_way": button.press_back_strain + button.thinning_strain,
        "no_bending": button.membrane_strain_there_and_back,
        "diameter": dome(np.multiply(2, diameter_mm), rise_mm, sheet_mm).press_back_strain,
    }


@worked_out
def told_apart():
    """Return sizes of buttons at which no two paths lead to much the same strain."""
    sizes = ((7.0, 7.5, 8.0, 8.5, 9.0), (0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2), (1.2, 1.5, 1.8, 2.0, 2.5))
    found = []
    for size in product(*sizes):
        right, slips = _strains(*size)
        values = sorted([right, *slips.values()])
        if all(high > 1.05 * low for low, high in pairwise(values)):
            found.append(size)
    return tuple(found)


def _draw_dome(draw):
    diameter_mm, rise_mm, sheet_mm = draw.pick("sizes", told_apart())
    return scene(draw) | {
        "diameter_mm": diameter_mm,
        "rise_mm": rise_mm,
        "sheet_mm": sheet_mm,
        "alloy": draw.pick("alloy", ALLOYS),
    }


def _solve_dome(table):
    diameter_mm, rise_mm, sheet_mm = table["diameter_mm"], table["rise_mm"], table["sheet_mm"]
    strain, wrong_strains = _strains(diameter_mm, rise_mm, sheet_mm)
    proof_mpa = looked_up_numbers(table["alloy"], _proof_mpa)
    springing = springing_rise_mm(
        base_radius_mm=diameter_mm / 2, proof_stress_mpa=proof_mpa, elastic_modulus_mpa=MODULUS_MPA
    )
    return {
        "strain": NumberKey(
            value=100 * strain, slips={name: 100 * value for name, value in wrong_strains.items()}
        ),
        "springs": NumberKey(
            value=springing,
            slips={"diameter": 2 * springing, "no_root": springing**2 / (diameter_mm / 2)},
        ),
        "model": ChoiceKey(right=same(table, "at_least")),
    }


DOME = Exercise(
    id="second_plate.dome",
    objective="reform",
    title="A button as a dome",
    prompt=(
        "A button behind {vehicle} is {diameter_mm} mm across at its foot and stands {rise_mm} mm proud. "
        "The plate is {alloy}, {sheet_mm} mm thick, with {proof} N/mm² proof stress and a modulus of "
        "{modulus} N/mm². "
        "Take it as a dome: foot radius a, height h. "
        "Forming it stretched the plate by ln(1 + h²/a²), and pressing it flat takes as much again. "
        "Its skin also bends by t/(2R), with R = (a² + h²)/(2h). "
        "Below 2h²/(3a²) = proof stress/modulus it only springs."
    ),
    shown=lambda scenario: {
        "proof": f"{_proof_mpa(scenario['alloy']):.0f}",
        "modulus": f"{MODULUS_MPA:.0f}",
    },
    parts=(
        Number(
            id="strain",
            ask="How much strain has the skin seen once it is flat again: there, back, and bending once?",
            unit="%",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("one_way", "That counts one way only. Flattening strains the plate again."),
                slip("no_bending", "The bending of the skin is missing."),
                slip("diameter", "The diameter was taken for the radius a."),
            ),
        ),
        Number(
            id="springs",
            ask="Up to which height would a button this wide only spring, and come back?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("diameter", "The diameter was taken for the radius a."),
                slip("no_root", "The height stands squared in the rule: the root is missing."),
            ),
        ),
        Choice(
            id="model",
            ask="A real button is no smooth dome. What is your strain worth?",
            options=(
                option(
                    "at_least", "It is the least: under the ring of the leg the plate was strained far more."
                ),
                wrong(
                    "at_most",
                    "It is the most: real buttons are rounder than a dome.",
                    "Where the ring of the leg pressed in, the plate is thinner than a dome says.",
                ),
                wrong(
                    "mean",
                    "It is about right, a little more or less.",
                    "A smooth dome leaves out the ring of the leg, and that errs to one side only.",
                ),
            ),
        ),
    ),
    draw=_draw_dome,
    solve=_solve_dome,
    reasons=(
        "Half the diameter is a. Stretch there and back, and the bending of the skin on top. "
        "Low domes only spring: solve the rule for h, with its root. "
        "A dome is the mild model. "
        "If even that says stop, stop."
    ),
    read_again=HEADING,
)


EXERCISES = (DOME,)
