"""Exercises on what heat did to the metal of the plate: ageing, and two models of one loss."""

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Range, RangeKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, looked_up, option, slip
from grading.exercises.scenes import scene
from secondplate.softening import (
    ACTIVATION_ENERGY_J_MOL,
    HEAT_WORDS,
    equivalent_time_s,
    heat_life_s,
    judge_heat,
    softening,
    typical_heat_limits,
)
from secondplate.softening_history import GAS_CONSTANT_J_MOLK
from secondplate.softening_limits import METAL
from secondplate.units import k_from_c

HEADING = "What did the heat do?"
KNOWN_C = 200.0
ENERGY = ACTIVATION_ENERGY_J_MOL
METAL_LIMIT = typical_heat_limits()[METAL]
SPOKEN = dict(zip(HEAT_WORDS, ("kept", "warn", "stop"), strict=True))


def _faster(hot_c, energy_j_mol):
    """Return how many times faster a plate ages at a temperature than at the known one."""
    return 1 / equivalent_time_s(
        1.0, from_c=KNOWN_C, to_c=np.asarray(hot_c, dtype=float), activation_energy_j_mol=energy_j_mol
    )


def _in_celsius(hot_c, energy_j_mol):
    """Return the same with degrees Celsius where kelvin belong."""
    return np.exp(energy_j_mol / GAS_CONSTANT_J_MOLK * (1 / KNOWN_C - 1 / np.asarray(hot_c, dtype=float)))


def _draw_ageing(draw):
    hot_c = draw.pick("hot_c", (220, 225, 230, 235, 240, 245, 250, 255, 260))
    # Of the life at heat, so that it is plain whether a limit is kept; the limits are 3 and 5 %.
    used = draw.pick("used", (0.006, 0.012, 0.02, 0.0385, 0.041, 0.08, 0.12, 0.2))
    seconds = used * heat_life_s(hot_c)
    return scene(draw) | {"hot_c": hot_c, "held_s": max(10, round(seconds / 10) * 10)}


def _solve_ageing(table):
    hot_c, held_s = table["hot_c"], table["held_s"]
    factor = _faster(hot_c, ENERGY.best)
    used = held_s / heat_life_s(hot_c)
    ends = [_faster(hot_c, energy) for energy in (ENERGY.low, ENERGY.high)]
    return {
        "factor": NumberKey(
            value=factor,
            slips={
                "celsius": _in_celsius(hot_c, ENERGY.best),
                "ratio": k_from_c(hot_c) / k_from_c(KNOWN_C),
            },
        ),
        "doubt": RangeKey(
            low=ends[0],
            high=ends[1],
            slips={
                "in_proportion": tuple(factor * end / ENERGY.best for end in (ENERGY.low, ENERGY.high)),
                "celsius": tuple(_in_celsius(hot_c, end) for end in (ENERGY.low, ENERGY.high)),
            },
        ),
        "used": NumberKey(
            value=100 * used,
            slips={"not_hotter": 100 * used / factor, "longer": 100 * used / factor**2},
        ),
        "verdict": ChoiceKey(right=[SPOKEN[str(word)] for word in judge_heat({METAL: used})[METAL]]),
    }


HEAT_TO_PLATE = Exercise(
    id="second_plate.heat_to_plate",
    objective="heat",
    title="A hot-air gun on the flange",
    prompt=(
        "To soften old glue on {vehicle}, a flange of 6xxx-T6 was held at {hot_c} °C for {held_s} s. "
        "At {known} °C such metal falls to its specified strength after {life} s. "
        "Ageing at another temperature is faster by e^(Q/R × (1/T1 − 1/T2)), with temperatures in kelvin, "
        "which is °C + 273.15. "
        "Take R = {gas} J/(mol K) and Q = {best} J/mol; it may be anything from {low} to {high}. "
        "The rule at {shop}: warn above {warn} % of that life, stop above {stop} %."
    ),
    shown=lambda scenario: {
        "known": f"{KNOWN_C:.0f}",
        "life": f"{heat_life_s(KNOWN_C):.0f}",
        "gas": f"{GAS_CONSTANT_J_MOLK:.3f}",
        "best": f"{ENERGY.best:.0f}",
        "low": f"{ENERGY.low:.0f}",
        "high": f"{ENERGY.high:.0f}",
        "warn": f"{100 * METAL_LIMIT.warn_above:g}",
        "stop": f"{100 * METAL_LIMIT.stop_above:g}",
    },
    parts=(
        Number(
            id="factor",
            ask="How many times faster does it age at the hotter temperature?",
            unit="times",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("celsius", "The temperatures went in as °C. They have to be in kelvin."),
                slip("ratio", "That is the ratio of the temperatures. Ageing goes by the exponential."),
            ),
        ),
        Range(
            id="doubt",
            ask="Between which factors may it lie, with the doubt on Q?",
            unit="times",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("in_proportion", "The factor was moved in proportion to Q. Q stands in the exponent."),
                slip("celsius", "The temperatures went in as °C. They have to be in kelvin."),
            ),
        ),
        Number(
            id="used",
            ask="With the best Q, how much of its life has the flange used?",
            unit="%",
            relative_tolerance=0.03,
            tolerance_reason="It follows from the factor, so a little more than its 2 % is right.",
            slips=(
                slip("not_hotter", "That is the time over the life at the lower temperature. It was hotter."),
                slip("longer", "The life was made longer by the factor. Hotter makes it shorter."),
            ),
        ),
        Choice(
            id="verdict",
            ask="What does the shop's rule say?",
            options=(
                option("stop", "Stop: too much of the life is used; measure hardness before anything else."),
                option("kept", "The limit is kept."),
                option("warn", "Warn: note it down and do not heat this flange again."),
            ),
        ),
    ),
    draw=_draw_ageing,
    solve=_solve_ageing,
    reasons=(
        "Put both temperatures in kelvin; a few tens of degrees multiply the speed of ageing. "
        "Do it again with both ends of Q. "
        "The life at the hotter temperature is the known life over the factor; the time is a share of it. "
        "Only 177 to 218 °C were measured: above that the factor is carried on, and the limits are a choice."
    ),
    read_again=HEADING,
)

PULSES = tuple((peak, tau) for peak in (400, 425, 450, 475, 500, 525) for tau in (0.5, 1, 2, 4, 8))


@worked_out
def shares(pulse):
    """Return both models' shares of the strength left after a pulse in %, and the worse of the two, as ends.

    A pulse is a peak in C and a time constant in s, as text. Ends are whole per cent, as they are shown.
    """
    peak_c, decay_s = map(float, pulse.split())
    times_s = np.linspace(0, 8 * decay_s, 401)
    found = softening(times_s, 20 + (peak_c - 20) * np.exp(-times_s / decay_s), softening_kind="6xxx-T6")
    bands = (*found.by_model.values(), found.strength_left)
    return tuple((round(100 * band.low), round(100 * band.high)) for band in bands)


def _wrong_bands(ageing, dissolving):
    """Return what wrong paths make of two bands in %."""
    return {
        "multiplied": tuple(one * other / 100 for one, other in zip(ageing, dissolving, strict=True)),
        "better": tuple(map(max, zip(ageing, dissolving, strict=True))),
        "mean": tuple((one + other) / 2 for one, other in zip(ageing, dissolving, strict=True)),
    }


@worked_out
def pulses():
    """Return pulses where the two models differ enough, with the shares that a joint may ask for."""
    found = {}
    for peak_c, decay_s in PULSES:
        pulse = f"{peak_c} {decay_s}"
        ageing, dissolving, left = shares(pulse)
        wrongs = [left, *_wrong_bands(ageing, dissolving).values()]
        apart = all(
            max(abs(a - b) for a, b in zip(one, other, strict=True)) > 2.5
            for number, one in enumerate(wrongs)
            for other in wrongs[:number]
        )
        if not apart:
            continue
        for asked in (60, 65, 70, 75, 80, 85, 90, 95):
            if all(abs(asked - end) > 2 for end in left):
                word = "left" if asked < left[0] else "lost" if asked > left[1] else "open"
                found.setdefault(word, []).append((pulse, asked))
    return found


def _draw_models(draw):
    pulse, asked = draw.pick("pulse", pulses()[draw.pick("word", ("left", "lost", "open"))])
    proof_mpa = draw.pick("proof_mpa", (240, 250, 260, 270, 280))
    return scene(draw) | {
        "pulse": pulse,
        "proof_mpa": proof_mpa,
        "asked_mpa": round(asked * proof_mpa / 100),
    }


def _pulse_words(scenario):
    peak_c, decay_s = scenario["pulse"].split()
    ageing, dissolving, _ = shares(scenario["pulse"])
    return {
        "peak": peak_c,
        "decay": decay_s,
        "ageing": f"{ageing[0]} to {ageing[1]} %",
        "dissolving": f"{dissolving[0]} to {dissolving[1]} %",
    }


def _solve_models(table):
    bands, proof_mpa = looked_up(table["pulse"], shares), table["proof_mpa"]
    low, high = proof_mpa / 100 * np.array([left for *_, left in bands]).T
    wrongs = [_wrong_bands(ageing, dissolving) for ageing, dissolving, _ in bands]
    return {
        "left": RangeKey(
            low=low,
            high=high,
            slips={
                name: tuple(proof_mpa / 100 * np.array([each[name] for each in wrongs]).T)
                for name in ("multiplied", "better", "mean")
            },
        ),
        "verdict": ChoiceKey(
            right=chosen(
                [table["asked_mpa"] < low, table["asked_mpa"] > high], ["left", "lost"], otherwise="open"
            )
        ),
    }


TWO_MODELS = Exercise(
    id="second_plate.two_models",
    objective="heat",
    title="Two models of one hot moment",
    prompt=(
        "A slip of a hand: an arc touched the second plate of {vehicle} beside the rivet. "
        "The 6xxx-T6 sheet reached {peak} °C there and cooled with a time constant of {decay} s. "
        "One model counts ageing and says that {ageing} of the proof stress are left. "
        "Another counts what dissolves and says {dissolving}. "
        "They describe the same loss in different ways. "
        "The sheet had {proof_mpa} N/mm² before, and the joint needs {asked_mpa} N/mm²."
    ),
    shown=_pulse_words,
    parts=(
        Range(
            id="left",
            ask="Between which values do you take the proof stress that is left?",
            unit="N/mm²",
            absolute_tolerance=1.5,
            tolerance_reason="The shares are whole per cent: half of one is about this much.",
            slips=(
                slip("multiplied", "One loss was taken on top of the other. They are the same loss."),
                slip("better", "At each end the better model was taken. The worse one counts."),
                slip("mean", "A mean hides the worse model, and that may be the right one."),
            ),
        ),
        Choice(
            id="verdict",
            ask="What do you say of the plate there?",
            options=(
                option("left", "Enough strength is left, even at the low end."),
                option("open", "It cannot be told: measure hardness, or take it as lost."),
                option("lost", "Too much is lost, even at the high end."),
            ),
        ),
    ),
    draw=_draw_models,
    solve=_solve_models,
    reasons=(
        "Two models of one loss are not added: at each end the lower share counts. "
        "Then compare the whole band with what the joint needs. "
        "Where the need lies inside the band the models decide nothing, and hardness does. "
        "A sound weld on the rivet head leaves this plate below a hundred degrees or so."
    ),
    read_again=HEADING,
)

EXERCISES = (HEAT_TO_PLATE, TWO_MODELS)
