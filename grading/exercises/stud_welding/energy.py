"""Exercises on the heat of one weld: arc energy, energy per area of the stud face, share that the head takes."""

from grading.exercise import (
    Choice,
    ChoiceKey,
    Choices,
    ChoicesKey,
    Exercise,
    Number,
    NumberKey,
    Option,
    Range,
    RangeKey,
)
from grading.exercises.keys import THREE_FIGURES, chosen, same, slip
from grading.exercises.scenes import scene
from secondplate import arc

HEADING = "How much heat goes in?"
MILLISECONDS_AS_SECONDS = "The time was taken in seconds. The timer counts thousandths of a second."


def _draw_predict(draw):
    return scene(draw) | {"time_ms": draw.whole("time_ms", 15, 35), "current_a": draw.whole("current_a", 500, 750, 10)}


PREDICT_ENERGY = Exercise(
    id="stud_welding.predict_energy",
    objective="energy",
    title="Predict: twice the time",
    prompt="A stud welder is set to {current_a:.0f} A and {time_ms:.0f} ms. "
    "Somebody doubles the time and leaves the current alone. Decide before you move a slider.",
    parts=(
        Choice(
            id="heat",
            ask="What happens to the heat that goes into the weld?",
            options=(
                Option(
                    id="same",
                    text="It stays the same, because the current is the same.",
                    slip=slip("same", "Heat is current times voltage times time. The time counts as much as the current."),
                ),
                Option(
                    id="four_times",
                    text="It becomes four times as much.",
                    slip=slip("four_times", "Four times would need the current to double as well."),
                ),
                Option(id="twice", text="It becomes twice as much."),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"heat": ChoiceKey(right=same(table, "twice"))},
    reasons="The arc voltage hardly changes, so the heat follows current times time. Twice the time is twice the heat.",
    read_again=HEADING,
    counts=False,
)


def _draw_energy(draw):
    return scene(draw) | {
        "voltage_v": draw.whole("voltage_v", 23, 34),
        "current_a": draw.whole("current_a", 480, 780, 10),
        "time_ms": draw.whole("time_ms", 14, 36),
    }


def _solve_energy(table):
    voltage_v, band = table["voltage_v"], arc.voltage_band_v()

    def energy_j(voltage_v):
        return arc.arc_energy_j(voltage_v=voltage_v, current_a=table["current_a"], time_ms=table["time_ms"])

    return {
        "energy": NumberKey(
            value=energy_j(voltage_v),
            slips={
                "seconds": 1000.0 * energy_j(voltage_v),
                "no_voltage": energy_j(voltage_v) / voltage_v,
            },
        ),
        "energy_band": RangeKey(
            low=energy_j(band.low),
            high=energy_j(band.high),
            slips={
                "ten_percent": (0.9 * energy_j(band.best), 1.1 * energy_j(band.best)),
                "seconds": (1000.0 * energy_j(band.low), 1000.0 * energy_j(band.high)),
            },
        ),
    }


ENERGY = Exercise(
    id="stud_welding.arc_energy",
    objective="energy",
    title="The energy of one arc",
    prompt="At {shop} a test weld ran at {current_a:.0f} A for {time_ms:.0f} ms. "
    "A recorder showed {voltage_v:.0f} V across the arc. "
    "The shop's other machine has no recorder, so there only the usual band of arc voltage is known.",
    parts=(
        Number(
            id="energy",
            ask="How much energy did the recorded arc set free?",
            unit="J",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("seconds", MILLISECONDS_AS_SECONDS),
                slip("no_voltage", "That is current times time. The arc voltage is missing."),
            ),
        ),
        Range(
            id="energy_band",
            ask="Same current and time, voltage not measured: between which two energies can the arc lie?",
            unit="J",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("ten_percent", "That is one middle value with ten per cent either way. "
                     "Use the lowest and the highest arc voltage of the band."),
                slip("seconds", MILLISECONDS_AS_SECONDS),
            ),
        ),
    ),
    draw=_draw_energy,
    solve=_solve_energy,
    reasons="Energy is voltage times current times time, with the time in seconds. "
    "Where the voltage was not measured, take the lowest and the highest voltage that stud arcs run at. "
    "The true energy lies somewhere between the two, and no single number is honest.",
    read_again=HEADING,
)

# Foot of a flange stud and thread that sits on it, as on common short-cycle charts.
FLANGE_AND_THREAD_MM = ((5.0, 4.0), (6.0, 5.0), (7.0, 6.0))


def _draw_per_area(draw):
    flange_mm, thread_mm = draw.pick("stud", FLANGE_AND_THREAD_MM)
    return scene(draw) | {
        "flange_mm": flange_mm,
        "thread_mm": thread_mm,
        "first_j": draw.whole("first_j", 240, 420, 10),
        "change_percent": draw.pick("change_percent", (-20, -15, -10, 10, 15, 20)),
    }


def _solve_per_area(table):
    energy_j, flange_mm = table["first_j"], table["flange_mm"]
    per_area = arc.energy_per_area_j_mm2(energy_j, face_diameter_mm=flange_mm)
    return {
        "per_area": NumberKey(
            value=per_area,
            slips={
                "diameter_for_radius": arc.energy_per_area_j_mm2(energy_j, face_diameter_mm=2.0 * flange_mm),
                "thread_for_flange": arc.energy_per_area_j_mm2(energy_j, face_diameter_mm=table["thread_mm"]),
                "no_area": energy_j / flange_mm,
            },
        ),
        "second_stud": ChoiceKey(right=chosen([table["change_percent"] > 0], ["hotter"], otherwise="colder")),
    }


PER_AREA = Exercise(
    id="stud_welding.energy_per_area",
    objective="energy",
    title="Energy on each square millimetre",
    prompt="A stud with an M{thread_mm:.0f} thread stands on a flange of {flange_mm:.0f} mm. "
    "One arc gave {first_j:.0f} J. The next stud of the same kind got {change_words} energy.",
    shown=lambda scenario: {
        "change_words": f"{abs(scenario['change_percent'])} % {'more' if scenario['change_percent'] > 0 else 'less'}"
    },
    parts=(
        Number(
            id="per_area",
            ask="How much energy fell on each square millimetre of the stud's face?",
            unit="J/mm2",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("diameter_for_radius", "The area is four times too large: the diameter was used as the radius."),
                slip("thread_for_flange", "The arc burns on the whole flange, not only under the thread."),
                slip("no_area", "That divides by a length. Work out the area of the face first."),
            ),
        ),
        Choice(
            id="second_stud",
            ask="What does the collar of the second stud look like, compared with the first?",
            options=(
                Option(
                    id="same",
                    text="Just the same, because stud and flange are the same.",
                    slip=slip("same", "The same face with another energy is another weld."),
                ),
                Option(id="hotter", text="Lower and glossier, with more spatter."),
                Option(id="colder", text="Smaller and duller, with gaps."),
            ),
        ),
    ),
    draw=_draw_per_area,
    solve=_solve_per_area,
    reasons="The face is a circle as wide as the flange: its area is pi times the diameter squared, divided by four. "
    "Divide the energy by that area. "
    "Studs of different size can be compared by this number; more of it is a hotter weld, less is a colder one.",
    read_again=HEADING,
)


def _draw_share(draw):
    return scene(draw) | {"energy_j": draw.whole("energy_j", 300, 700, 10)}


def _solve_share(table):
    energy_j = table["energy_j"]
    share = arc.heat_to_face_j(1.0)  # the heat is in proportion to the energy of the arc
    return {
        "head_heat": RangeKey(
            low=share.low * energy_j,
            high=share.high * energy_j,
            slips={
                "whole_energy": (energy_j, energy_j),
                "half_and_no_loss": (0.5 * energy_j, 0.5 * energy_j),
            },
        ),
        "less_heat": ChoicesKey(right=same(table, ("shorter", "smaller_stud"))),
    }


HEAT_SHARE = Exercise(
    id="stud_welding.heat_share",
    objective="energy",
    title="What the rivet head takes",
    prompt="An arc at {shop} sets {energy_j:.0f} J free on {vehicle}. "
    "Some of it is lost, the rest is shared between the stud and the rivet head.",
    parts=(
        Range(
            id="head_heat",
            ask="Between which two values does the heat lie that goes into the rivet head?",
            unit="J",
            relative_tolerance=0.03,
            tolerance_reason="The shares are known to one figure only, so 3 % either way is right.",
            slips=(
                slip("whole_energy", "That is the whole arc. Some heat is lost and the stud takes its part."),
                slip("half_and_no_loss", "That is one half with no loss, as one number. "
                     "Both the loss and the split are known only as a band."),
            ),
        ),
        Choices(
            id="less_heat",
            ask="The aluminium round the rivet must stay cooler. Which changes put less heat into the rivet head?",
            options=(
                Option(
                    id="second_weld",
                    text="Weld a second stud on the same head straight after the first.",
                    slip=slip("second_weld", "A second weld on a warm head adds its heat to the first."),
                ),
                Option(id="shorter", text="A shorter time at the same current, if the test stud still holds."),
                Option(
                    id="more_gas",
                    text="A longer gas pre-flow.",
                    slip=slip("more_gas", "Gas before the arc keeps air away. It takes no heat out of the weld."),
                ),
                Option(id="smaller_stud", text="A smaller stud with its own, lower setting, if it can still pull the rivet."),
                Option(
                    id="more_current",
                    text="More current at the same time, so that it is over sooner.",
                    slip=slip("more_current", "The timer ends the arc, not the current. More current is more heat."),
                ),
            ),
        ),
    ),
    draw=_draw_share,
    solve=_solve_share,
    reasons="First take off what is lost to light, fume and spatter. "
    "Then split what is left between the stud and the head: about half each, known only to one part in five. "
    "Multiply the low shares for the low value and the high shares for the high value. "
    "Less energy in the arc, by time or by a smaller stud, is what cools the head.",
    read_again=HEADING,
)

EXERCISES = (PREDICT_ENERGY, ENERGY, PER_AREA, HEAT_SHARE)
