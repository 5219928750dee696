"""Exercises on when a face begins to melt, and what is left of the arc time then."""

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate import arc

HEADING = "Where does the heat go?"
FLANGE_MM = 7.0


def _draw_predict(draw):
    return scene(draw) | {"time_ms": draw.whole("time_ms", 20, 40, 5)}


PREDICT_MELTING = Exercise(
    id="stud_welding.predict_melting",
    objective="energy",
    title="Predict: a third more current",
    prompt=(
        "In a {time_ms:.0f} ms arc the face of the head does not melt at once: it has to get hot first. "
        "Somebody raises the current by a third and leaves the time alone. "
        "Decide before you move a slider."
    ),
    parts=(
        Choice(
            id="start",
            ask="When does the face begin to melt now?",
            options=(
                wrong(
                    "third_sooner",
                    "A quarter sooner: in proportion to the current.",
                    "While the face heats up, its heat also runs away inward. Less waiting means less "
                    "running away, so more current counts twice.",
                ),
                option("half", "After little more than half the time."),
                wrong(
                    "same",
                    "At the same moment: melting takes as long as it takes.",
                    "The face melts when it has taken enough heat, and it takes it faster now.",
                ),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"start": ChoiceKey(right=same(table, "half"))},
    reasons=(
        "The wait goes with one over the square of the heat flux. "
        "Three quarters squared is nine sixteenths: a little more than half."
    ),
    read_again=HEADING,
    counts=False,
)


def _draw_melting(draw):
    return scene(draw) | {
        "first_a": draw.whole("first_a", 480, 540, 20),
        "second_a": draw.whole("second_a", 680, 760, 20),
        "time_ms": draw.whole("time_ms", 16, 26, 2),
    }


def _start_ms(current_a):
    """Return when the head's face begins to melt, at the best guesses for voltage and share."""
    flux = arc.heat_flux_w_mm2(
        voltage_v=arc.voltage_band_v().best, current_a=current_a, face_diameter_mm=FLANGE_MM
    )
    return arc.melting_start_ms(heat_flux_w_mm2=flux.best, material="boron rivet steel")


def _solve_melting(table):
    time_ms, first_a, second_a = table["time_ms"], table["first_a"], table["second_a"]
    first_ms, second_ms = _start_ms(first_a), _start_ms(second_a)
    linear_ms = first_ms * first_a / second_a
    return {
        "start": NumberKey(
            value=second_ms,
            slips={"linear": linear_ms, "upside_down": first_ms * (second_a / first_a) ** 2},
        ),
        "left": NumberKey(
            value=time_ms - second_ms,
            slips={"first_setting": time_ms - first_ms, "linear": time_ms - linear_ms, "whole_arc": time_ms},
        ),
    }


MELTING = Exercise(
    id="stud_welding.melting_start",
    objective="energy",
    title="First hot, then liquid",
    prompt=(
        "A 6 mm stud with a 7 mm flange, arc of {time_ms:.0f} ms. "
        "At {first_a:.0f} A the model lets the face of the rivet head begin to melt after {first_ms} ms. "
        "At {shop} the machine is set to {second_a:.0f} A, everything else the same. "
        "The wait goes with one over the square of the heat flux, and the flux goes with the current."
    ),
    shown=lambda scenario: {"first_ms": f"{_start_ms(scenario['first_a']):.3g}"},
    parts=(
        Number(
            id="start",
            ask="After which time does the face begin to melt at the higher current?",
            unit="ms",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("linear", "The wait goes with the square of the flux, and this is in proportion to it."),
                slip("upside_down", "More current melts sooner. The ratio is the wrong way round."),
            ),
        ),
        Number(
            id="left",
            ask="How much of the arc is then left to melt steel?",
            unit="ms",
            absolute_tolerance=0.3,
            relative_tolerance=0.02,
            tolerance_reason="It is a difference of two times that are each good to three figures.",
            slips=(
                slip("first_setting", "That is the time left at the lower current."),
                slip("linear", "The wait was taken in proportion to the current; it goes with the square."),
                slip("whole_arc", "That is the whole arc. Until the face is hot enough, nothing melts."),
            ),
        ),
    ),
    draw=_draw_melting,
    solve=_solve_melting,
    reasons=(
        "Divide the lower current by the higher one, square it, and multiply the known wait by it. "
        "Take the result from the arc time. "
        "A short arc at high current spends less of its time waiting, so less heat runs into the plates "
        "for the same melt."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_MELTING, MELTING)
