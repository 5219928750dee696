"""Exercise on whether a stud is strong enough for the pull that a rivet may ask for."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, looked_up, option, same, slip, wrong
from grading.exercises.rivet_anatomy.drawing_out import HEADING, joints, one_pull, pull
from grading.exercises.rivet_anatomy.holding import spoken
from grading.exercises.scenes import scene
from secondplate import studs

CLASSES = ("A2-50", "A2-70")


def _stud_loads(thread_mm, names):
    """Return proof load, breaking load, and the breaking load reckoned with the full circle."""
    thread_mm = np.asarray(thread_mm, dtype=float)
    area_mm2 = studs.stress_area_mm2(thread_mm, pitch_mm=studs.coarse_pitch_mm(thread_mm))
    classes = looked_up(names, studs.property_class)
    tensile_mpa = np.array([found.tensile_strength_mpa for found in classes])
    proof_mpa = np.array([found.proof_stress_mpa for found in classes])
    return (
        studs.proof_load_n(area_mm2, proof_mpa),
        studs.breaking_load_n(area_mm2, tensile_mpa),
        studs.breaking_load_n(np.pi / 4 * thread_mm**2, tensile_mpa),
    )


def _enough(peak, proof_n):
    """Return over how much of a band a stud keeps its length, as an id."""
    return chosen([peak.high < proof_n, peak.low < proof_n], ["whole", "part"], otherwise="none")


@cache
def _studs():
    """Return studs with joints by whether the stud is enough, without loads close to an end of the band."""
    pairs = [
        joint | {"thread_mm": thread_mm, "property_class": name}
        for found in joints().values()
        for joint in found
        for thread_mm in (4, 5, 6)
        for name in CLASSES
    ]
    table = {name: np.array([pair[name] for pair in pairs]) for name in pairs[0]}
    peak = pull(table).peak_n
    proof_n = _stud_loads(table["thread_mm"], table["property_class"])[0]
    found = {}
    for pair, proof, low, high, enough in zip(
        pairs, proof_n, peak.low, peak.high, _enough(peak, proof_n), strict=True
    ):
        if min(abs(proof - low) / low, abs(proof - high) / high) > 0.05:
            found.setdefault(enough, []).append(pair)
    return found


def _draw_stud(draw):
    found = _studs()
    return scene(draw) | draw.pick("pair", found[draw.pick("enough", sorted(found))])


def _stud_words(scenario):
    """Return the band of the pull and what the class of the stud stands for."""
    grade = studs.property_class(scenario["property_class"])
    return {
        "band": spoken(one_pull(scenario).peak_n),
        "tensile": f"{grade.tensile_strength_mpa:.0f}",
        "proof": f"{grade.proof_stress_mpa:.0f}",
    }


def _solve_stud(table):
    peak = pull(table).peak_n
    proof_n, breaking_n, circle_n = _stud_loads(table["thread_mm"], table["property_class"])
    return {
        "share": NumberKey(
            value=100 * peak.high / breaking_n,
            slips={
                "low_end": 100 * peak.low / breaking_n,
                "nominal_area": 100 * peak.high / circle_n,
                "proof_load": 100 * peak.high / proof_n,
            },
        ),
        "enough": ChoiceKey(right=_enough(peak, proof_n)),
        "stop": ChoiceKey(right=same(table, "tested")),
    }


STUD = Exercise(
    id="rivet_anatomy.stud_enough",
    objective="holding",
    title="Is the stud strong enough?",
    prompt=(
        "For the rivets of {vehicle} the whole pull is worked out as {band}, friction and top plate counted. "
        "At {shop} there are M{thread_mm} studs with coarse thread, class {property_class}: "
        "tensile strength {tensile} N/mm², proof stress {proof} N/mm²."
    ),
    shown=_stud_words,
    parts=(
        Number(
            id="share",
            ask="What share of the breaking load of its thread would the high end of the band take?",
            unit="%",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("low_end", "That is the low end of the band. A plan goes by the high end."),
                slip(
                    "nominal_area",
                    "The full circle of the thread was used. The thread cuts into it: take the stress area.",
                ),
                slip("proof_load", "That is the share of the load at which the stud begins to stretch."),
            ),
        ),
        Choice(
            id="enough",
            ask="Does the stud keep its length, by its thread alone?",
            options=(
                option("part", "Over part of the band only: it stretches or breaks before the high end."),
                option("none", "Not even at the low end."),
                option("whole", "Over the whole band."),
            ),
        ),
        Choice(
            id="stop",
            ask="On the car, up to which force do you pull?",
            options=(
                wrong(
                    "high_end",
                    "Up to the high end of the band, whatever the stud.",
                    "The band says what the rivet may ask for, not what this weld can bear.",
                ),
                wrong(
                    "until",
                    "Until something gives.",
                    "What gives may be the stud, and a stud that breaks flies.",
                ),
                option("tested", "Up to what the test stud held and the procedure allows, and not beyond."),
            ),
        ),
    ),
    draw=_draw_stud,
    solve=_solve_stud,
    reasons=(
        "Take the stress area of the thread times the tensile strength, and divide the high end by it. "
        "Whether the stud keeps its length goes by the proof stress instead. "
        "A band is planned for by its high end. "
        "The thread says nothing of the weld on the head: that a test pull has to show."
    ),
    read_again=HEADING,
)

EXERCISES = (STUD,)
