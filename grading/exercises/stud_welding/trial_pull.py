"""Exercise on what a test pull allows: the row, a change, or a stop."""

import numpy as np

from grading.exercise import Choices, ChoicesKey, Exercise, Number, NumberKey, Verdicts, VerdictsKey
from grading.exercises.building_blocks import THREE_FIGURES, looked_up, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate import inspection, studs

HEADING = "Weld one, pull it, adjust, then the row"

# How a test stud may come off: in the shank, in the weld, or beside it through the rivet.
BREAKS = ("slug", "flat_grey", "bright_crystalline")
BREAK_ROWS = ("pull_1", "pull_2", "pull_3")


def _draw_pull(draw):
    breaks = draw.shuffle("breaks", BREAKS)
    needed_n = draw.whole("needed_n", 2400, 4000, 100)
    loads = {
        f"{name}_n": round(
            needed_n * draw.pick(f"{name} share", (1.25, 1.35, 1.5) if kind == "slug" else (0.5, 0.65, 0.8)),
            -1,
        )
        for name, kind in zip(BREAK_ROWS, breaks, strict=True)
    }
    return (
        scene(draw)
        | {
            "needed_n": needed_n,
            "held_n": needed_n + draw.whole("more_n", 200, 1500, 100),
            "thread_mm": draw.pick("thread_mm", (5, 6)),
        }
        | dict(zip(BREAK_ROWS, breaks, strict=True))
        | loads
    )


def _pull_words(scenario):
    """Return how each test stud came off, in the words of the library's signs."""
    signs = {name: inspection.weld_sign(scenario[name]).sign for name in BREAK_ROWS}
    return {f"{name}_words": f"{sign}, at {scenario[name + '_n']:.0f} N" for name, sign in signs.items()}


def _after_break(sign_id):
    """Return what a break allows: go on where nothing is wrong, stop where more energy makes it worse."""
    sign = inspection.weld_sign(sign_id)
    if not sign.correction:
        return "go_on"
    return "stop" if sign.note else "adjust"


def _solve_pull(table):
    strength_mpa = studs.property_class("A2-70").tensile_strength_mpa
    proof_mpa = studs.property_class("A2-70").proof_stress_mpa
    thread_mm = 1.0 * table["thread_mm"]
    area_mm2 = studs.stress_area_mm2(thread_mm, pitch_mm=studs.coarse_pitch_mm(thread_mm))
    held_n = table["held_n"]
    return {
        "share": NumberKey(
            value=100.0 * held_n / studs.breaking_load_n(area_mm2, strength_mpa),
            slips={
                "nominal_area": (
                    100.0 * held_n / studs.breaking_load_n(np.pi / 4.0 * thread_mm**2, strength_mpa)
                ),
                "proof_load": 100.0 * held_n / studs.proof_load_n(area_mm2, proof_mpa),
                "of_needed": 100.0 * held_n / table["needed_n"],
            },
        ),
        "breaks": VerdictsKey(right={name: looked_up(table[name], _after_break) for name in BREAK_ROWS}),
        "new_test": ChoicesKey(right=same(table, inspection.NEW_TEST_AFTER)),
    }


FIRST_WELD = Exercise(
    id="stud_welding.test_pull",
    objective="sequence",
    title="What does the test pull allow?",
    prompt=(
        "At {shop} the rivets need {needed_n:.0f} N. "
        "The first M{thread_mm:.0f} test stud, class A2-70, coarse thread, was pulled to {held_n:.0f} N "
        "and held. "
        "Three more test studs, each welded differently, were pulled until something broke."
    ),
    shown=_pull_words,
    parts=(
        Number(
            id="share",
            ask="What share of the breaking load of its thread did the first stud hold?",
            unit="%",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "nominal_area",
                    "The full circle of the thread was used. The thread cuts into it: take the stress area.",
                ),
                slip("proof_load", "That is the share of the load at which it begins to stretch."),
                slip(
                    "of_needed", "That is the share of what the rivet needs, not of what the thread can hold."
                ),
            ),
        ),
        Verdicts(
            id="breaks",
            ask="What does each break allow you to do?",
            points=2.0,
            rows=tuple(option(name, "{" + name + "_words}") for name in BREAK_ROWS),
            verdicts=(
                option("stop", "stop: more energy makes it worse, ask for another way"),
                option("go_on", "go on to the row with this setting"),
                option("adjust", "adjust, weld one more test stud and pull it"),
            ),
        ),
        Choices(
            id="new_test",
            ask="Which changes ask for a new test stud?",
            options=(
                option("lift", "another lift"),
                wrong(
                    "next_rivet",
                    "the next rivet of the same row",
                    "Same rivets, same setting: the row goes on, with every collar looked at.",
                ),
                option("current", "another current"),
                option("voltage", "another arc voltage"),
                wrong("nut", "a new nut on the puller", "The nut does not change the weld."),
                option("time", "another time"),
                option("plunge", "another protrusion, and with it another plunge"),
            ),
        ),
    ),
    draw=_draw_pull,
    solve=_solve_pull,
    reasons=(
        "The breaking load of the thread is its stress area times 700 MPa; divide what was held by it. "
        "A slug of base metal or a broken shank means that the weld was the stronger part: go on. "
        "A flat grey break in the weld is a cold weld: clean, more energy, test again. "
        "A bright crystalline break beside the weld is hard and brittle metal, and more energy makes more "
        "of it: stop and ask. "
        "Whatever changes current, time, voltage, lift or plunge makes it a new weld that nobody has "
        "tested."
    ),
    read_again=HEADING,
)

EXERCISES = (FIRST_WELD,)
