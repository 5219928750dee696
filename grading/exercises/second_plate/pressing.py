"""Exercises on pressing a button back: the strain that it takes, and the rule that says when to stop."""

from functools import cache
from itertools import pairwise, product

import numpy as np

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
    HARDENING_LAWS,
    PRESS_VERDICTS,
    STRAIN_SHARE,
    ButtonDome,
    PressBack,
    springing_rise_mm,
)
from secondplate.sheet_alloys import sheet_band

HEADING = "May it be pressed back?"
ALLOYS = ("5754-O", "6016-T4", "6016-T6", "6082-T6")
MODULUS_MPA = 70_000.0
SHEET = "6016-T4"
LAWS = HARDENING_LAWS[SHEET]
VOCE = {name.rpartition(" ")[2]: law for name, law in LAWS.items() if name.startswith("Voce")}
SWIFT = {name.rpartition(" ")[2]: law for name, law in LAWS.items() if name.startswith("Swift")}


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


@cache
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
                    "A dome is smooth. Where the ring of the leg pressed in, the plate is thinner than a dome says.",
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


@cache
def buttons(voce, swift):
    """Return buttons by what the two laws say: both allow it, one allows it, neither."""
    lows = STRAIN_SHARE * VOCE[voce].necking_strain, STRAIN_SHARE * SWIFT[swift].necking_strain
    sizes = ((7.0, 7.5, 8.0, 8.5, 9.0), np.arange(3, 15) / 10, (1.2, 1.5, 1.8, 2.0))
    diameter_mm, rise_mm, sheet_mm = (size.ravel() for size in np.meshgrid(*sizes, indexing="ij"))
    needed = dome(diameter_mm, rise_mm, sheet_mm).press_back_strain
    found = {}
    for number, strain in enumerate(needed):
        # A strain near a limit would let rounding decide.
        if all(abs(strain - limit) > 0.06 * limit for limit in lows) and 0.05 < strain < 0.4:
            button = tuple(round(float(each[number]), 1) for each in (diameter_mm, rise_mm, sheet_mm))
            found.setdefault(sum(strain <= limit for limit in lows), []).append(button)
    return found


def _draw_rule(draw):
    voce, swift = draw.pick("voce", tuple(VOCE)), draw.pick("swift", tuple(SWIFT))
    allowed = draw.pick("allowed", (0, 1, 2))
    diameter_mm, rise_mm, sheet_mm = draw.pick("button", buttons(voce, swift)[allowed])
    return scene(draw) | {
        "voce": voce,
        "swift": swift,
        "diameter_mm": diameter_mm,
        "rise_mm": rise_mm,
        "sheet_mm": sheet_mm,
    }


def _rule_words(scenario):
    voce, swift = VOCE[scenario["voce"]], SWIFT[scenario["swift"]]
    button = dome(scenario["diameter_mm"], scenario["rise_mm"], scenario["sheet_mm"])
    return {
        "needed": f"{100 * button.press_back_strain:.1f}",
        "a": f"{voce.saturation_stress_mpa:g}",
        "b": f"{voce.hardening_stress_mpa:g}",
        "c": f"{voce.hardening_rate:g}",
        "k": f"{swift.strength_coefficient_mpa:g}",
        "n": f"{swift.hardening_exponent:g}",
        "e0": f"{swift.strain_offset:g}",
        "share": f"{100 * STRAIN_SHARE:.0f}",
        "sheet": SHEET,
    }


def _solve_rule(table):
    voce, rate = (
        looked_up_numbers(table["voce"], lambda name, field=field: getattr(VOCE[name], field))
        for field in ("necking_strain", "hardening_rate")
    )
    swift, exponent, offset = (
        looked_up_numbers(table["swift"], lambda name, field=field: getattr(SWIFT[name], field))
        for field in ("necking_strain", "hardening_exponent", "strain_offset")
    )
    button = dome(table["diameter_mm"], table["rise_mm"], table["sheet_mm"])
    pressed = [
        PressBack(strain_needed=strain, limits={"voce": STRAIN_SHARE * one, "swift": STRAIN_SHARE * other})
        for strain, one, other in zip(button.press_back_strain, voce, swift, strict=True)
    ]
    allowed, _ = PRESS_VERDICTS
    return {
        "voce": NumberKey(
            value=100 * voce, slips={"log_ten": 100 * voce / np.log(10), "not_divided": 100 * voce * rate}
        ),
        "swift": NumberKey(
            value=100 * swift, slips={"exponent": 100 * exponent, "added": 100 * (exponent + offset)}
        ),
        "counts": ChoiceKey(right=[each.governing for each in pressed]),
        "verdict": ChoiceKey(
            right=["press" if each.verdict == allowed else "stop" for each in pressed],
        ),
    }


TENTH_OF_A_PER_CENT = (
    "Laws of one metal differ by far more than a tenth of one per cent, which is right here."
)

STOP_RULE = Exercise(
    id="second_plate.stop_rule",
    objective="reform",
    title="Two laws, one rule to stop",
    prompt=(
        "Two teams pulled the same sheet, {sheet}, and fitted a law each, with stress in N/mm². "
        "First law: {a} − {b} e^(−{c} × strain); it necks at ln(B(1 + C)/A)/C, with A, B, C in this order. "
        "Second law: {k} × ({e0} + strain)^{n}; it necks at n − e0. "
        "The rule of {shop}: use at most {share} % of the strain at necking. "
        "Pressing this button flat takes {needed} % by the dome."
    ),
    shown=_rule_words,
    parts=(
        Number(
            id="voce",
            ask="At which strain does the sheet neck by the first law?",
            unit="%",
            absolute_tolerance=0.1,
            tolerance_reason=TENTH_OF_A_PER_CENT,
            slips=(
                slip("log_ten", "That is the logarithm to base ten. The law takes the natural one."),
                slip("not_divided", "The logarithm was not divided by C."),
            ),
        ),
        Number(
            id="swift",
            ask="And by the second law?",
            unit="%",
            absolute_tolerance=0.1,
            tolerance_reason=TENTH_OF_A_PER_CENT,
            slips=(
                slip("exponent", "That is the exponent alone. The strain offset comes off."),
                slip("added", "The strain offset was added. It comes off."),
            ),
        ),
        Choice(
            id="counts",
            ask="Which of the two do you work with?",
            options=(
                option("voce", "The first law."),
                wrong(
                    "swift",
                    "The second law.",
                    "It allows more strain. If the other law is right, the sheet tears before that.",
                ),
                wrong(
                    "mean",
                    "The mean of both.",
                    "A mean lets you go beyond what one of them allows. Tearing is what must not happen.",
                ),
            ),
        ),
        Choice(
            id="verdict",
            ask="May the button be pressed back?",
            options=(
                wrong(
                    "try",
                    "Try it: it may tear or not, that can be seen afterwards.",
                    "A tear is not taken back, and the part goes with it. That is what the rule is for.",
                ),
                option("press", "Yes, by this rule and by the mild model of a dome."),
                option("stop", "No: leave it standing, or use another way."),
            ),
        ),
    ),
    draw=_draw_rule,
    solve=_solve_rule,
    reasons=(
        "Put the constants in: the two laws neck at strains that differ by half and more. "
        "Nobody knows which is right for your sheet, so the lower counts. "
        "Take the rule's share of it and compare it with what pressing takes. "
        "The share is a choice of the house, and the dome is mild: a yes is no promise."
    ),
    read_again=HEADING,
)

EXERCISES = (DOME, STOP_RULE)
