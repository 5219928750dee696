"""Exercise on the rule that says when to stop: two laws of hardening, and the lower counts."""

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import (
    looked_up_numbers,
    option,
    slip,
    wrong,
)
from grading.exercises.scenes import scene
from grading.exercises.second_plate.dome import dome
from secondplate.plate import (
    HARDENING_LAWS,
    PRESS_VERDICTS,
    STRAIN_SHARE,
    PressBack,
)

HEADING = "May it be pressed back?"
SHEET = "6016-T4"
LAWS = HARDENING_LAWS[SHEET]
VOCE = {name.rpartition(" ")[2]: law for name, law in LAWS.items() if name.startswith("Voce")}
SWIFT = {name.rpartition(" ")[2]: law for name, law in LAWS.items() if name.startswith("Swift")}


@worked_out
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

EXERCISES = (STOP_RULE,)
