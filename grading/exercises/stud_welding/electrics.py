"""Exercises on the machine and its cables: duty cycle, studs per minute, voltage lost on the way."""

import math

from grading.exercise import Choice, ChoiceKey, Choices, ChoicesKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate import electrics

HEADING = "Can the machine and the cables keep up?"


def _draw_predict(draw):
    rated_a = draw.whole("rated_a", 600, 900, 50)
    return scene(draw) | {
        "rated_a": rated_a,
        "half_a": rated_a / 2,
        "duty_percent": draw.whole("duty_percent", 4, 12),
    }


PREDICT_DUTY = Exercise(
    id="stud_welding.predict_duty",
    objective="electrics",
    title="Predict: half the current",
    prompt=(
        "The plate on a machine says {rated_a:.0f} A at {duty_percent:.0f} % duty cycle. "
        "A job needs only {half_a:.0f} A. Decide before you compute."
    ),
    parts=(
        Choice(
            id="share",
            ask="For what share of the time may the arc burn now, compared with the plate?",
            options=(
                option("four_times", "Four times the share."),
                wrong(
                    "same",
                    "The same share; the plate is the plate.",
                    "The plate holds for one current. Less current warms the machine less.",
                ),
                wrong(
                    "twice",
                    "Twice the share.",
                    "Heat in a winding goes with the square of the current, not with the current.",
                ),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"share": ChoiceKey(right=same(table, "four_times"))},
    reasons=(
        "The winding warms with the square of the current. "
        "Half the current is a quarter of the heat, so the arc may burn four times as long."
    ),
    read_again=HEADING,
    counts=False,
)

# What a crew might plan, as a share of what the machine could hold.
PLAN_SHARES = (0.5, 0.6, 0.75, 1.3, 1.5, 1.8)


def _draw_duty(draw):
    rated_a = draw.whole("rated_a", 700, 1000, 50)
    return scene(draw) | {
        "rated_a": rated_a,
        "rated_percent": draw.whole("rated_percent", 2, 5),
        "current_a": rated_a - draw.whole("less_a", 130, 330, 10),
        "time_ms": draw.whole("time_ms", 140, 300, 10),
        "plan_share": draw.pick("plan_share", PLAN_SHARES),
    }


def _duty_and_studs(current_a, scenario):
    """Return duty cycle and studs per minute of one scenario or of a table of them."""
    duty_percent = electrics.duty_cycle_percent(
        rated_current_a=scenario["rated_a"],
        rated_duty_cycle_percent=scenario["rated_percent"],
        current_a=current_a,
    )
    return duty_percent, electrics.studs_per_minute(
        duty_cycle_percent=duty_percent, weld_time_ms=scenario["time_ms"]
    )


def _planned_studs(scenario):
    _, studs = _duty_and_studs(scenario["current_a"], scenario)
    return {"planned": f"{float(studs) * scenario['plan_share']:.0f}"}


def _solve_duty(table):
    duty_percent, studs = _duty_and_studs(table["current_a"], table)
    linear_percent = table["rated_percent"] * table["rated_a"] / table["current_a"]
    upside_down_percent = table["rated_percent"] * (table["current_a"] / table["rated_a"]) ** 2
    return {
        "duty": NumberKey(
            value=duty_percent,
            slips={
                "linear": linear_percent,
                "upside_down": upside_down_percent,
                "plate": table["rated_percent"],
            },
        ),
        "studs": NumberKey(
            value=studs,
            slips={
                "linear": electrics.studs_per_minute(
                    duty_cycle_percent=linear_percent, weld_time_ms=table["time_ms"]
                ),
                "plate": electrics.studs_per_minute(
                    duty_cycle_percent=table["rated_percent"], weld_time_ms=table["time_ms"]
                ),
                "per_second": studs / 60.0,
            },
        ),
        "plan": ChoiceKey(right=chosen([table["plan_share"] < 1.0], ["holds"], otherwise="too_fast")),
    }


DUTY = Exercise(
    id="stud_welding.duty_cycle",
    objective="electrics",
    title="How fast may you weld?",
    prompt=(
        "The plate on the machine at {shop} says {rated_a:.0f} A at {rated_percent:.0f} % duty cycle. "
        "The job is welded at {current_a:.0f} A and {time_ms:.0f} ms. "
        "A trial of the machine alone on scrap is planned at {planned} studs a minute."
    ),
    shown=_planned_studs,
    parts=(
        Number(
            id="duty",
            ask="What duty cycle may the machine run at this current?",
            unit="%",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("linear", "The current was taken once. Heat in the winding goes with its square."),
                slip("upside_down", "The ratio is upside down: less current allows more time, not less."),
                slip("plate", "That is the plate's own number. It holds for the plate's current only."),
            ),
        ),
        Number(
            id="studs",
            ask="How many studs a minute can the machine hold without getting too warm?",
            unit="studs",
            relative_tolerance=0.02,
            tolerance_reason="It is a limit of warmth, not a count of studs: 2 % either way is right.",
            slips=(
                slip(
                    "linear", "The duty cycle behind this took the current once and not squared.", credit=0.5
                ),
                slip("plate", "That uses the duty cycle on the plate, which is for another current."),
                slip("per_second", "That is studs in one second. A minute has sixty."),
            ),
        ),
        Choice(
            id="plan",
            ask="What do you say to the planned pace?",
            options=(
                wrong(
                    "raise_current",
                    "Go on, and raise the current so that each stud takes less time.",
                    "More current warms the machine with its square. That makes it worse.",
                ),
                option("holds", "The machine can hold it."),
                option("too_fast", "It is too fast: slow down or take breaks by the manual."),
            ),
        ),
    ),
    draw=_draw_duty,
    solve=_solve_duty,
    reasons=(
        "The allowed share of time grows with the square of the plate's current over your current. "
        "Take the share of a minute, in milliseconds, and divide it by the time of one stud. "
        "That is only what the winding can stand: a careful technician is far slower, and the manual's own "
        "limit comes first."
    ),
    read_again=HEADING,
)


def _draw_cable(draw):
    return scene(draw) | {
        "one_way_m": draw.whole("one_way_m", 4, 12),
        "area_mm2": draw.pick("area_mm2", (25, 35, 50, 70)),
        "temperature_c": draw.whole("temperature_c", 50, 75, 5),
        "current_a": draw.whole("current_a", 500, 800, 20),
    }


def _solve_cable(table):
    loop_m, area_mm2 = 2.0 * table["one_way_m"], table["area_mm2"]

    def drop_v(loop_length_m, **temperature):
        return electrics.voltage_drop_v(
            current_a=table["current_a"], loop_length_m=loop_length_m, area_mm2=area_mm2, **temperature
        )

    warm_v = drop_v(loop_m, temperature_c=table["temperature_c"])
    return {
        "drop": NumberKey(
            value=warm_v,
            slips={
                "one_way": 0.5 * warm_v,
                "cold_cable": drop_v(loop_m),
                "diameter_as_area": warm_v * 4.0 / (math.pi * area_mm2),
            },
        ),
        "remedy": ChoicesKey(right=same(table, ("thicker", "shorter"))),
    }


CABLE = Exercise(
    id="stud_welding.cable_drop",
    objective="electrics",
    title="What the cable keeps for itself",
    prompt=(
        "Gun cable and work cable at {shop} are {one_way_m:.0f} m each, copper, {area_mm2:.0f} mm². "
        "After a row of studs they are at {temperature_c:.0f} degrees C. "
        "The weld runs at {current_a:.0f} A."
    ),
    parts=(
        Number(
            id="drop",
            ask="How many volts are lost in the two warm cables together?",
            unit="V",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("one_way", "The current goes out and comes back: both cables count.", credit=0.25),
                slip(
                    "cold_cable", "That is the cable at 20 degrees C. Warm copper resists more.", credit=0.5
                ),
                slip("diameter_as_area", "The cross-section is already an area. Do not work it out again."),
            ),
        ),
        Choices(
            id="remedy",
            ask="The collars get colder as the cables warm. Which changes take the loss away?",
            options=(
                wrong(
                    "coil",
                    "Coil the spare length tidily round the machine.",
                    "A coil keeps its heat in and adds a magnetic field. It takes no loss away.",
                ),
                option("thicker", "Cables with a larger cross-section."),
                wrong(
                    "swap_poles",
                    "Swap the two poles.",
                    "The loss does not care about the direction. The weld does.",
                ),
                option("shorter", "Shorter cables, with the machine nearer to the car."),
            ),
        ),
    ),
    draw=_draw_cable,
    solve=_solve_cable,
    reasons=(
        "Resistance is the resistivity of copper times the length of the whole loop, divided by the "
        "cross-section, and grows by about 0.4 % for each degree above 20 degrees C. "
        "Times the current it gives the volts that never reach the arc. "
        "Short, thick, laid-out cables lose least."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_DUTY, DUTY, CABLE)
