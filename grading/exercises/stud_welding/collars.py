"""Exercises on reading a collar: from the sign to its cause, and from the cause to one change at a time."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Verdicts, VerdictsKey
from grading.exercises.building_blocks import THREE_FIGURES, looked_up, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate import arc, inspection

HEADING = "What does the collar tell you?"
# Signs whose causes no careful reader could mistake for one another.
SIGNS = ("good", "cold", "hot", "one_sided", "hang_up", "porous")
SIGN_ROWS = ("collar_1", "collar_2", "collar_3", "collar_4")
LENGTH_ROWS = ("stud_1", "stud_2", "stud_3")
OFF_LENGTH_MM = (-2.4, -1.8, -1.4, -0.7, -0.4, 0.3, 0.6, 1.3, 1.6, 2.2)


def _draw_predict(draw):
    return scene(draw) | {"thread_mm": draw.pick("thread_mm", (4, 5, 6))}


PREDICT_COLLAR = Exercise(
    id="stud_welding.predict_collar",
    objective="collar",
    title="Predict: hot or cold?",
    prompt=(
        "The collar round an M{thread_mm:.0f} stud on {vehicle} is uneven and dull, and the stud stands "
        "too tall. Decide before you read on."
    ),
    parts=(
        Choice(
            id="energy",
            ask="Did the weld get too little heat, too much, or just enough?",
            options=(
                wrong(
                    "too_much",
                    "Too much.",
                    "Too much heat melts more of the stud, so it would stand too short.",
                ),
                option("too_little", "Too little."),
                wrong(
                    "enough",
                    "Just enough: a tall stud is a strong stud.",
                    "A good weld uses up a set length. A tall stud did not melt in.",
                ),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"energy": ChoiceKey(right=same(table, "too_little"))},
    reasons=(
        "Where little melts, the stud hardly dips in and the collar is small, uneven and dull. "
        "That is a cold weld."
    ),
    read_again=HEADING,
    counts=False,
)


def _draw_read(draw):
    signs = draw.shuffle("signs", SIGNS)[: len(SIGN_ROWS)]
    expected_mm = draw.whole("expected_mm", 18, 30)
    lengths = {f"{name}_mm": round(expected_mm + draw.pick(name, OFF_LENGTH_MM), 1) for name in LENGTH_ROWS}
    return scene(draw) | {"expected_mm": expected_mm} | dict(zip(SIGN_ROWS, signs, strict=True)) | lengths


@cache
def _length_verdict(expected_mm, measured_mm):
    verdict = inspection.length_verdict(
        expected_length_mm=float(expected_mm), measured_length_mm=float(measured_mm)
    )
    return verdict.replace(" ", "_")


def _solve_read(table):
    lengths = {
        name: [
            _length_verdict(expected, measured)
            for expected, measured in zip(table["expected_mm"], table[f"{name}_mm"], strict=True)
        ]
        for name in LENGTH_ROWS
    }
    return {
        "causes": VerdictsKey(right={name: [str(sign) for sign in table[name]] for name in SIGN_ROWS}),
        "lengths": VerdictsKey(right=lengths),
    }


READ_COLLARS = Exercise(
    id="stud_welding.read_collars",
    objective="collar",
    title="Read four collars",
    prompt=(
        "Four test studs stand on the bench at {shop}. "
        "Three more were measured: a good weld of this stud leaves {expected_mm:.0f} mm."
    ),
    shown=lambda scenario: {f"{name}_words": inspection.weld_sign(scenario[name]).sign for name in SIGN_ROWS},
    parts=(
        Verdicts(
            id="causes",
            ask="What is the cause of each collar?",
            points=3.0,
            rows=tuple(option(name, "{" + name + "_words}") for name in SIGN_ROWS),
            verdicts=tuple(
                option(name, inspection.weld_sign(name).cause)
                for name in ("hot", "porous", "good", "hang_up", "cold", "one_sided")
            ),
        ),
        Verdicts(
            id="lengths",
            ask="How do the measured studs stand?",
            rows=tuple(option(name, "{" + name + "_mm:.1f} mm after welding") for name in LENGTH_ROWS),
            verdicts=(
                option("too_long", "too long: melted too little"),
                option("within_tolerance", "within tolerance"),
                option("too_short", "too short: melted too much"),
            ),
        ),
    ),
    draw=_draw_read,
    solve=_solve_read,
    reasons=(
        "Look at three things: is the collar closed all round, is it dull or glossy, is the stud too long "
        "or too short. "
        "Dull and too long is too little heat, glossy and too short is too much. "
        "One-sided is a matter of clamps, edges or a tilted gun, never of current alone. "
        "A stud may be 1 mm longer or shorter than a good weld leaves it."
    ),
    read_again=HEADING,
)

# The option of each correction, and what to say to somebody who takes it for the wrong sign.
CORRECTIONS = {
    "hot": "That takes heat away. Look again whether the weld had too much of it.",
    "one_sided": "That cures a one-sided collar. Look again whether this one leans to a side.",
    "hang_up": "That frees a stud that did not dip in at all. Look again at the collar.",
    "cold": "That gives more heat. Look again whether the weld had too little of it.",
    "porous": "That keeps air and dirt out. Look again whether there are pores.",
}


def _draw_correct(draw):
    return scene(draw) | {
        "sign": draw.pick("sign", tuple(CORRECTIONS)),
        "thread_mm": draw.pick("thread_mm", (4, 5, 6)),
    }


CORRECT_COLLAR = Exercise(
    id="stud_welding.correct_collar",
    objective="collar",
    title="From the collar to the correction",
    prompt="On an M{thread_mm:.0f} test stud at {shop} you see this: {sign_words}.",
    shown=lambda scenario: {"sign_words": _in_sentence(inspection.weld_sign(scenario["sign"]).sign)},
    parts=(
        Choice(
            id="correction",
            ask="What do you change before the next test stud?",
            points=2.0,
            options=tuple(
                wrong(name, inspection.weld_sign(name).correction, sentence)
                for name, sentence in CORRECTIONS.items()
            ),
        ),
        Choice(
            id="how_many",
            ask="How many settings do you change before you weld and pull again?",
            options=(
                option("one", "One."),
                wrong(
                    "all",
                    "All that might help, to save test studs.",
                    "Then nobody knows which change helped, and two may cancel each other.",
                ),
                wrong(
                    "none",
                    "None: the next one may come out better.",
                    "The same setting on the same head gives the same weld.",
                ),
            ),
        ),
    ),
    draw=_draw_correct,
    solve=lambda table: {
        "correction": ChoiceKey(right=[str(sign) for sign in table["sign"]]),
        "how_many": ChoiceKey(right=same(table, "one")),
    },
    reasons=(
        "Name the cause first, then take the correction that belongs to it. "
        "Change one setting, weld one stud, pull it and look again. "
        "Two changes at once hide which of them did it."
    ),
    read_again=HEADING,
)


def _in_sentence(text):
    """Return a phrase the way it stands inside a sentence."""
    return text[0].lower() + text[1:]


# Sign of the change of time that a collar asks for, and how it is seen on the bench.
CHANGES = {"cold": 1.0, "hot": -1.0}


def _draw_adjust(draw):
    return scene(draw) | {
        "sign": draw.pick("sign", tuple(CHANGES)),
        "current_a": draw.whole("current_a", 480, 700, 10),
        "time_ms": draw.whole("time_ms", 20, 36, 2),
        "step_percent": draw.pick("step_percent", (8, 10, 12, 15)),
    }


def _solve_adjust(table):
    direction = np.array(looked_up(table["sign"], CHANGES.get))
    time_ms, step = 1.0 * table["time_ms"], table["step_percent"] / 100.0
    new_ms, wrong_ms = time_ms * (1.0 + direction * step), time_ms * (1.0 - direction * step)

    def energy_j(time_ms, *, current_a=table["current_a"]):
        return arc.arc_energy_j(voltage_v=arc.voltage_band_v().best, current_a=current_a, time_ms=time_ms)

    return {
        "new_time": NumberKey(
            value=new_ms,
            slips={"wrong_way": wrong_ms, "percent_as_ms": time_ms + direction * table["step_percent"]},
        ),
        "new_energy": NumberKey(
            value=energy_j(new_ms),
            slips={
                "wrong_way": energy_j(wrong_ms),
                "unchanged": energy_j(time_ms),
                "both": energy_j(new_ms, current_a=table["current_a"] * (1.0 + direction * step)),
            },
        ),
    }


ADJUST_TIME = Exercise(
    id="stud_welding.adjust_time",
    objective="collar",
    title="One change, in numbers",
    prompt=(
        "On the test stud at {shop} you see this: {sign_words}. "
        "It was welded at {current_a:.0f} A and {time_ms:.0f} ms. "
        "Cables, clamps and gas are in order. "
        "You change the time by {step_percent:.0f} % and nothing else."
    ),
    shown=lambda scenario: {"sign_words": _in_sentence(inspection.weld_sign(scenario["sign"]).sign)},
    parts=(
        Number(
            id="new_time",
            ask="To which time do you set it?",
            unit="ms",
            relative_tolerance=0.02,
            tolerance_reason="Timers step by a millisecond or less, so 2 % is right.",
            slips=(
                slip(
                    "wrong_way",
                    "That is the other direction. Read the collar again: too much heat or too little?",
                ),
                slip("percent_as_ms", "The change was not taken as a share of the time.", credit=0.25),
            ),
        ),
        Number(
            id="new_energy",
            ask="At 30 V across the arc, what energy does the new setting give?",
            unit="J",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("wrong_way", "That goes with a change in the other direction."),
                slip("unchanged", "That is the energy of the old setting."),
                slip("both", "That changes the current as well. Change one setting at a time."),
            ),
        ),
    ),
    draw=_draw_adjust,
    solve=_solve_adjust,
    reasons=(
        "First say which way: dull and too long needs more, glossy and too short needs less. "
        "Take the share of the old time and add it or take it off. "
        "The energy is 30 V times the current times the new time in seconds. "
        "Because only the time changed, the energy changes by the same share."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_COLLAR, READ_COLLARS, CORRECT_COLLAR, ADJUST_TIME)
