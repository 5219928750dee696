"""Exercise on how hard a nut on a stud may be turned."""

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import chosen, option, slip, wrong
from grading.exercises.stud_welding.strength import (
    HEADING,
    NOMINAL_AREA,
    draw_certificate,
    nominal_area_mm2,
    thread_area_mm2,
)
from secondplate import studs

WRENCH_SHARES = (0.7, 0.8, 0.9, 1.2, 1.4, 1.6)


def _draw_torque(draw):
    return draw_certificate(draw) | {"wrench_share": draw.pick("wrench_share", WRENCH_SHARES)}


def _torque_n_m(thread_mm, stress_mpa, *, area_mm2=None, preload_share=0.75):
    """Return the working torque of a thread; the defaults are the right way, the arguments the wrong ones."""
    return studs.working_torque_n_m(
        stress_area_mm2=thread_area_mm2(thread_mm) if area_mm2 is None else area_mm2,
        proof_stress_mpa=stress_mpa,
        diameter_mm=thread_mm,
        preload_share=preload_share,
    )


def _wrench(scenario):
    torque_n_m = float(_torque_n_m(scenario["thread_mm"], scenario["proof_mpa"]))
    return {"wrench_n_m": f"{torque_n_m * scenario['wrench_share']:.1f}"}


def _solve_torque(table):
    thread_mm, proof_mpa = table["thread_mm"], table["proof_mpa"]
    torque_n_m = _torque_n_m(thread_mm, proof_mpa)
    return {
        "torque": NumberKey(
            value=torque_n_m,
            slips={
                "millimetres": 1000.0 * torque_n_m,
                "nominal_area": _torque_n_m(thread_mm, proof_mpa, area_mm2=nominal_area_mm2(thread_mm)),
                "full_proof": _torque_n_m(thread_mm, proof_mpa, preload_share=1.0),
                "tensile_for_proof": _torque_n_m(thread_mm, table["tensile_mpa"]),
            },
        ),
        "wrench": ChoiceKey(right=chosen([table["wrench_share"] < 1.0], ["go_on"], otherwise="too_tight")),
    }


TORQUE = Exercise(
    id="stud_welding.working_torque",
    objective="strength",
    title="How hard may you turn?",
    prompt=(
        "A screw puller at {shop} loads an M{thread_mm:.0f} stud by turning a dry nut on it. "
        "The stud's certificate says proof stress {proof_mpa:.0f} MPa and tensile strength "
        "{tensile_mpa:.0f} MPa. "
        "The nut needs a torque of 0.2 times load times diameter, and the load stays at three quarters of "
        "the proof load. The wrench on the bench is set to {wrench_n_m} N m."
    ),
    shown=_wrench,
    parts=(
        Number(
            id="torque",
            ask="How much torque may the nut get?",
            unit="N m",
            relative_tolerance=0.015,
            tolerance_reason=(
                "Three figures are enough; 1.5 % keeps a forgotten reserve apart from a wrong area."
            ),
            slips=(
                slip(
                    "millimetres",
                    "That is in newton millimetres. A newton metre is a thousand of them.",
                    credit=0.25,
                ),
                slip("nominal_area", NOMINAL_AREA),
                slip(
                    "full_proof",
                    "That goes all the way to the proof load. Keep a quarter in hand.",
                    credit=0.25,
                ),
                slip(
                    "tensile_for_proof",
                    "The tensile strength was used. The stud stretches for good before that.",
                ),
            ),
        ),
        Choice(
            id="wrench",
            ask="What do you do with the wrench?",
            options=(
                option("too_tight", "Set it lower before the nut is turned."),
                wrong(
                    "oil_the_nut",
                    "Leave it and oil the nut.",
                    "On an oiled nut the same torque pulls harder. That makes it worse.",
                ),
                option("go_on", "Leave it: the stud is not overloaded by it."),
            ),
        ),
    ),
    draw=_draw_torque,
    solve=_solve_torque,
    reasons=(
        "Three quarters of the proof load is proof stress times stress area times 0.75. "
        "Multiply by 0.2 and by the diameter in metres. "
        "A wrench set below that is safe for the stud; one set above it stretches the thread."
    ),
    read_again=HEADING,
)

EXERCISES = (TORQUE,)
