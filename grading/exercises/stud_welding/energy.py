"""Exercises on the heat of one weld: arc energy, and energy per area of the stud face."""

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Range, RangeKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate import arc

HEADING = "How much heat goes in?"
MILLISECONDS_AS_SECONDS = "The time was taken in seconds. The timer counts thousandths of a second."


def _draw_predict(draw):
    return scene(draw) | {
        "time_ms": draw.whole("time_ms", 15, 35),
        "current_a": draw.whole("current_a", 500, 750, 10),
    }


PREDICT_ENERGY = Exercise(
    id="stud_welding.predict_energy",
    objective="energy",
    title="Predict: twice the time",
    prompt=(
        "A stud welder is set to {current_a:.0f} A and {time_ms:.0f} ms. "
        "Somebody doubles the time and leaves the current alone. "
        "Decide before you move a slider."
    ),
    parts=(
        Choice(
            id="heat",
            ask="What happens to the heat that goes into the weld?",
            options=(
                option("twice", "It becomes twice as much."),
                wrong(
                    "same",
                    "It stays the same, because the current is the same.",
                    "Heat is current times voltage times time. The time counts as much as the current.",
                ),
                wrong(
                    "four_times",
                    "It becomes four times as much.",
                    "Four times would need the current to double as well.",
                ),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"heat": ChoiceKey(right=same(table, "twice"))},
    reasons=(
        "The arc voltage hardly changes, so the heat follows current times time. "
        "Twice the time is twice the heat."
    ),
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
    prompt=(
        "At {shop} a test weld ran at {current_a:.0f} A for {time_ms:.0f} ms. "
        "A recorder showed {voltage_v:.0f} V across the arc. "
        "The shop's other machine has no recorder, so there only the usual band of arc voltage is known."
    ),
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
                slip(
                    "ten_percent",
                    "That is one middle value with ten per cent either way. "
                    "Use the lowest and the highest arc voltage of the band.",
                ),
                slip("seconds", MILLISECONDS_AS_SECONDS),
            ),
        ),
    ),
    draw=_draw_energy,
    solve=_solve_energy,
    reasons=(
        "Energy is voltage times current times time, with the time in seconds. "
        "Where the voltage was not measured, take the lowest and the highest voltage that stud arcs run at. "
        "The true energy lies somewhere between the two, and no single number is honest."
    ),
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
    prompt=(
        "A stud with an M{thread_mm:.0f} thread stands on a flange of {flange_mm:.0f} mm. "
        "One arc gave {first_j:.0f} J. "
        "The next stud of the same kind got {change_words} energy."
    ),
    shown=lambda scenario: {
        "change_words": (
            f"{abs(scenario['change_percent'])} % {'more' if scenario['change_percent'] > 0 else 'less'}"
        )
    },
    parts=(
        Number(
            id="per_area",
            ask="How much energy fell on each square millimetre of the stud's face?",
            unit="J/mm2",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "diameter_for_radius",
                    "The area is four times too large: the diameter was used as the radius.",
                ),
                slip("thread_for_flange", "The arc burns on the whole flange, not only under the thread."),
                slip("no_area", "That divides by a length. Work out the area of the face first."),
            ),
        ),
        Choice(
            id="second_stud",
            ask="What does the collar of the second stud look like, compared with the first?",
            options=(
                wrong(
                    "same",
                    "Just the same, because stud and flange are the same.",
                    "The same face with another energy is another weld.",
                ),
                option("hotter", "Lower and glossier, with more spatter."),
                option("colder", "Smaller and duller, with gaps."),
            ),
        ),
    ),
    draw=_draw_per_area,
    solve=_solve_per_area,
    reasons=(
        "The face is a circle as wide as the flange: its area is pi times the diameter squared, divided by "
        "four. Divide the energy by that area. "
        "Studs of different size can be compared by this number; more of it is a hotter weld, less is a "
        "colder one."
    ),
    read_again=HEADING,
)


EXERCISES = (
    PREDICT_ENERGY,
    ENERGY,
    PER_AREA,
)
