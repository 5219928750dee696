"""Exercise on which stud draws a rivet, and on what the weld has to say about it."""

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Verdicts, VerdictsKey
from grading.exercises.building_blocks import (
    chosen,
    clear_of,
    looked_up,
    option,
    same,
    wrong,
)
from grading.exercises.scenes import scene
from grading.exercises.stud_welding.strength import CLASSES, HEADING, THREADS_MM, thread_area_mm2
from secondplate import studs


def _limits_n():
    """Return the proof and breaking loads of every stud that the exercise names."""
    areas = [float(thread_area_mm2(float(thread))) for thread in THREADS_MM]
    classes = [studs.property_class(name) for name in CLASSES]
    return [
        area * stress
        for area in areas
        for item in classes
        for stress in (item.proof_stress_mpa, item.tensile_strength_mpa)
    ]


PULLS_N = clear_of(range(1500, 9001, 100), _limits_n())


def _draw_choice(draw):
    return scene(draw) | {
        "property_class": draw.pick("property_class", CLASSES),
        "pull_n": draw.pick("pull_n", PULLS_N),
    }


def _behaviour(thread_mm, table):
    """Return what a stud of one size does under the pull of each scenario."""
    classes = looked_up(table["property_class"], studs.property_class)
    area_mm2 = thread_area_mm2(float(thread_mm))
    proof_n = studs.proof_load_n(area_mm2, np.array([item.proof_stress_mpa for item in classes]))
    breaking_n = studs.breaking_load_n(area_mm2, np.array([item.tensile_strength_mpa for item in classes]))
    return chosen(
        [table["pull_n"] < proof_n, table["pull_n"] < breaking_n], ["holds", "stretches"], otherwise="breaks"
    )


def _solve_choice(table):
    verdicts = {f"m{thread}": _behaviour(thread, table) for thread in THREADS_MM}
    holds = {name: np.array(column) == "holds" for name, column in verdicts.items()}
    return {
        "studs": VerdictsKey(right=verdicts),
        "smallest": ChoiceKey(right=chosen(list(holds.values()), list(holds), otherwise="none")),
        "weld": ChoiceKey(right=same(table, "weld_limits")),
    }


STUD_CHOICE = Exercise(
    id="stud_welding.which_stud",
    objective="strength",
    title="Which stud draws this rivet?",
    prompt=(
        "Trial pulls at {shop} showed that this kind of rivet comes out at {pull_n:.0f} N. "
        "The studs on the shelf are of class {property_class}."
    ),
    parts=(
        Verdicts(
            id="studs",
            ask="What does each stud do under that pull, by its thread alone?",
            points=2.0,
            rows=(
                option("m4", "M4 of class {property_class}"),
                option("m5", "M5 of class {property_class}"),
                option("m6", "M6 of class {property_class}"),
            ),
            verdicts=(
                option("holds", "holds and keeps its length"),
                option("stretches", "stretches for good, does not break"),
                option("breaks", "breaks"),
            ),
        ),
        Choice(
            id="smallest",
            ask="Which is the smallest that keeps its length?",
            options=(
                option("m6", "M6"),
                option("m4", "M4"),
                option("none", "None of them: another class or another way of removal."),
                option("m5", "M5"),
            ),
        ),
        Choice(
            id="weld",
            ask=(
                "By its thread the stud you chose holds. "
                "On the test piece the weld tears at a third of that load. What limits the pull?"
            ),
            options=(
                option(
                    "weld_limits", "The weld: adjust it and test again before anything is pulled on the car."
                ),
                wrong(
                    "thread_limits",
                    "The thread, because that is what was computed.",
                    "The sum knows nothing about this weld. The test pull does.",
                ),
                wrong(
                    "mean_limits",
                    "The mean of the two loads.",
                    "A chain breaks at its weakest link, not at the mean of its links.",
                ),
            ),
        ),
    ),
    draw=_draw_choice,
    solve=_solve_choice,
    reasons=(
        "Work out the proof load and the breaking load of each size. "
        "Below the proof load a stud holds, between the two it stretches, above the breaking load it "
        "breaks. The smallest stud that holds puts the least heat into the head. "
        "All that is about the thread: the weld has to show in a test pull that it holds as well."
    ),
    read_again=HEADING,
)

EXERCISES = (STUD_CHOICE,)
