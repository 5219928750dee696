"""Exercises on a weld that sits off the middle of the pull."""

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.weld_loads import elastic_load_share

HEADING = "What if the stud sits off the middle?"


def _draw_predict(draw):
    return scene(draw) | {"offset_mm": draw.decimal("offset_mm", 0.8, 1.0, 0.1, 1)}


PREDICT_OFF_CENTRE = Exercise(
    id="stud_welding.predict_off_centre",
    objective="strength",
    title="Predict: a little off the middle",
    prompt=(
        "A weld with a face of 7 mm would take 6000 N if the pull went straight through its middle. "
        "Now the pull runs {offset_mm} mm beside it. Decide before you work it out."
    ),
    parts=(
        Choice(
            id="load",
            ask="At which pull does the edge of the weld begin to give?",
            options=(
                option("half", "At about half."),
                wrong(
                    "ninety",
                    "At about nine tenths, because the offset is a small part of the face.",
                    "The pull also bends the weld, and bending loads the edge eight times as strongly as the "
                    "offset looks.",
                ),
                wrong("same", "At the same pull.", "Off the middle the pull bends the weld as well."),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"load": ChoiceKey(right=same(table, "half"))},
    reasons=(
        "The pull also bends the weld, and the bending adds up at the edge. "
        "An eighth of the diameter off the middle doubles the stress there."
    ),
    read_again=HEADING,
    counts=False,
)


def _draw_off_centre(draw):
    return scene(draw) | {
        "face_mm": draw.pick("face_mm", (5.0, 6.0, 7.0)),
        "eighths": draw.pick("eighths", (0.6, 0.8, 1.2, 1.4, 1.6)),
        "centred_n": draw.whole("centred_n", 4000, 8000, 200),
    }


def _offset_mm(face_mm, eighths):
    """Return the offset as it is shown: a share of an eighth of the face, to a tenth of a millimetre."""
    return np.round(face_mm / 8 * eighths, 1)


def _solve_off_centre(table):
    face_mm, centred_n = table["face_mm"], table["centred_n"]
    offset_mm = _offset_mm(face_mm, table["eighths"])
    share = elastic_load_share(offset_mm / face_mm)
    return {
        "load": NumberKey(
            value=centred_n * share,
            slips={
                "radius": centred_n * elastic_load_share(2 * offset_mm / face_mm),
                "no_bending": centred_n * (1 - offset_mm / face_mm),
                "centred": centred_n,
            },
        ),
        "times": NumberKey(value=1 / share, slips={"no_eight": 1 + offset_mm / face_mm, "share": share}),
        "edge": ChoiceKey(right=chosen([8 * offset_mm < face_mm], ["all_pulled"], otherwise="far_pressed")),
    }


OFF_CENTRE = Exercise(
    id="stud_welding.off_centre",
    objective="strength",
    title="A pull beside the middle",
    prompt=(
        "At {shop} a stud is welded with a face of {face_mm:.0f} mm. "
        "Pulled through its middle it would begin to give at {centred_n:.0f} N. "
        "The puller sits {offset_mm} mm off. "
        "The load at which the edge gives is the centred load divided by (1 + 8 × offset ÷ diameter)."
    ),
    shown=lambda scenario: {"offset_mm": f"{_offset_mm(scenario['face_mm'], scenario['eighths']):.1f}"},
    parts=(
        Number(
            id="times",
            ask="How many times as high as in the middle is the stress at the edge?",
            unit="times",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("no_eight", "The eight in front of the offset is missing: bending counts that much."),
                slip("share", "That is the share of the load that is left. The stress is the other way up."),
            ),
        ),
        Number(
            id="load",
            ask="At which pull does the edge begin to give?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("radius", "The offset was divided by the radius. The formula takes the diameter."),
                slip("no_bending", "That takes away the offset's share of the face. Bending takes more."),
                slip("centred", "That is the load through the middle. This pull is beside it."),
            ),
        ),
        Choice(
            id="edge",
            ask="What happens at the edge of the weld that is farthest from the pull?",
            options=(
                option("all_pulled", "It is still pulled: the offset is less than an eighth of the face."),
                option("far_pressed", "It is pressed: the offset is more than an eighth of the face."),
                wrong(
                    "nothing",
                    "Nothing can be said without the strength of the weld.",
                    "Where the stress changes its sign depends on the shape alone.",
                ),
            ),
        ),
    ),
    draw=_draw_off_centre,
    solve=_solve_off_centre,
    reasons=(
        "Divide the offset by the diameter, multiply by eight and add one: so much higher is the stress at "
        "the edge, and so much lower the pull at which it gives. "
        "Up to an eighth of the diameter the whole face is pulled; beyond it the far edge is pressed. "
        "Hard welds do not stretch, so the edge that gives first is where the weld tears open."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_OFF_CENTRE, OFF_CENTRE)
