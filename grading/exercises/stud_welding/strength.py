"""Exercises on what a stud can carry: where it stretches, and where it breaks."""

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import (
    THREE_FIGURES,
    option,
    same,
    slip,
    wrong,
)
from grading.exercises.scenes import scene
from secondplate import studs

HEADING = "What can the stud carry?"
THREADS_MM = (4, 5, 6)
CLASSES = ("A2-50", "A2-70")
NOMINAL_AREA = "The full circle of the thread was used. The thread cuts into it: take the stress area."


def nominal_area_mm2(diameter_mm):
    """Return the area of the full circle, which is the slip that most people make."""
    return np.pi / 4.0 * np.asarray(diameter_mm, dtype=float) ** 2


def thread_area_mm2(diameter_mm):
    """Return the stress area of a stud with coarse thread."""
    return studs.stress_area_mm2(diameter_mm, pitch_mm=studs.coarse_pitch_mm(diameter_mm))


def _draw_predict(draw):
    return scene(draw) | {"property_class": draw.pick("property_class", CLASSES)}


PREDICT_SIZE = Exercise(
    id="stud_welding.predict_size",
    objective="strength",
    title="Predict: from M4 to M6",
    prompt=(
        "A shop runs out of M4 studs of class {property_class} and takes M6 of the same class. "
        "Decide before you compute."
    ),
    parts=(
        Choice(
            id="growth",
            ask="How much more can the thread carry before it breaks?",
            options=(
                wrong(
                    "half_more",
                    "About half as much again.",
                    "That compares the diameters. What carries is the area.",
                ),
                option("over_twice", "A little more than twice as much."),
                wrong(
                    "over_three_times",
                    "More than three times as much.",
                    "That compares the volumes. What carries is the area.",
                ),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"growth": ChoiceKey(right=same(table, "over_twice"))},
    reasons=(
        "The load goes with the area, and the area with the square of the diameter. "
        "From 4 to 6 mm that is a little more than twice, because the finer thread of the M4 stud cuts "
        "away less in millimetres but more in share."
    ),
    read_again=HEADING,
    counts=False,
)


def draw_certificate(draw):
    """Draw a stud with its certificate; the two strengths keep apart from what a wrong area leads to."""
    proof_mpa = draw.whole("proof_mpa", 260, 380, 10)
    ratio = draw.pick("tensile_over_proof", (1.6, 1.7, 1.8, 1.9, 2.0, 2.1))
    return scene(draw) | {
        "thread_mm": draw.pick("thread_mm", THREADS_MM),
        "proof_mpa": proof_mpa,
        "tensile_mpa": round(proof_mpa * ratio),
    }


def _draw_loads(draw):
    return draw_certificate(draw)


def _solve_loads(table):
    thread_mm, tensile_mpa, proof_mpa = table["thread_mm"], table["tensile_mpa"], table["proof_mpa"]
    area_mm2, nominal_mm2 = thread_area_mm2(thread_mm), nominal_area_mm2(thread_mm)
    return {
        "breaking": NumberKey(
            value=studs.breaking_load_n(area_mm2, tensile_mpa),
            slips={
                "nominal_area": studs.breaking_load_n(nominal_mm2, tensile_mpa),
                "diameter_for_radius": studs.breaking_load_n(4.0 * nominal_mm2, tensile_mpa),
                "proof_for_tensile": studs.breaking_load_n(area_mm2, proof_mpa),
            },
        ),
        "proof": NumberKey(
            value=studs.proof_load_n(area_mm2, proof_mpa),
            slips={
                "nominal_area": studs.proof_load_n(nominal_mm2, proof_mpa),
                "tensile_for_proof": studs.proof_load_n(area_mm2, tensile_mpa),
            },
        ),
        "limit": ChoiceKey(right=same(table, "proof")),
    }


LOADS = Exercise(
    id="stud_welding.stud_loads",
    objective="strength",
    title="Where does the stud stretch, where does it break?",
    prompt=(
        "A box of M{thread_mm:.0f} pull studs with coarse thread comes to {shop}. "
        "Its certificate says: tensile strength {tensile_mpa:.0f} MPa, proof stress {proof_mpa:.0f} MPa."
    ),
    parts=(
        Number(
            id="breaking",
            ask="At which pull does the thread break?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("nominal_area", NOMINAL_AREA),
                slip(
                    "diameter_for_radius", "The area is far too large: the diameter was used as the radius."
                ),
                slip(
                    "proof_for_tensile",
                    "That is where the stud begins to stretch for good, not where it breaks.",
                ),
            ),
        ),
        Number(
            id="proof",
            ask="At which pull does it begin to stretch for good?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("nominal_area", NOMINAL_AREA),
                slip(
                    "tensile_for_proof", "That is where the stud breaks. It stretches for good long before."
                ),
            ),
        ),
        Choice(
            id="limit",
            ask=(
                "Which load do you stay under when you draw a rivet, so that the stud keeps its length and "
                "its thread?"
            ),
            options=(
                option("proof", "The load at which it begins to stretch for good."),
                wrong(
                    "breaking",
                    "The breaking load.",
                    "Just under the breaking load the thread is already stretched and the nut binds.",
                ),
                wrong(
                    "puller",
                    "The largest pull that the puller can give.",
                    "The puller does not know how strong the stud is.",
                ),
            ),
        ),
    ),
    draw=_draw_loads,
    solve=_solve_loads,
    reasons=(
        "What carries is the stress area, a circle a little wider than the core of the thread: take "
        "the diameter less 0.9382 times the pitch. "
        "Times the tensile strength it gives the breaking load, times the proof stress the load at which "
        "the stud stays longer. "
        "The weld may fail before either, so the test pull has the last word."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_SIZE, LOADS)
