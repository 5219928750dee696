"""Exercises on how much gas a stud takes and how long a cylinder lasts."""

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import PLANNING_COUNT, THREE_FIGURES, chosen, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate import gas, units

HEADING = "When is gas needed, and how much?"
CUBIC_FEET_AS_LITRES = "The gauge reads cubic feet per hour; the number was used as litres per minute."


def _draw_use(draw):
    return scene(draw) | {
        "flow_ft3_h": draw.whole("flow_ft3_h", 16, 28),
        "pre_flow_s": draw.pick("pre_flow_s", (0.9, 1.0, 1.1, 1.2)),
        "post_flow_s": draw.pick("post_flow_s", (0.4, 0.5, 0.6)),
        "time_ms": draw.whole("time_ms", 20, 40),
    }


def _solve_use(table):
    flow_l_min = units.l_min_from_ft3_h(table["flow_ft3_h"])
    pre_flow_s, post_flow_s = table["pre_flow_s"], table["post_flow_s"]

    def per_stud_l(*, flow_l_min=flow_l_min, pre_flow_s=pre_flow_s, post_flow_s=post_flow_s):
        return gas.gas_per_stud_l(
            flow_l_min=flow_l_min,
            pre_flow_s=pre_flow_s,
            weld_time_ms=table["time_ms"],
            post_flow_s=post_flow_s,
        )

    return {
        "per_stud": NumberKey(
            value=per_stud_l(),
            slips={
                "cubic_feet": per_stud_l(flow_l_min=table["flow_ft3_h"]),
                "no_pre_flow": per_stud_l(pre_flow_s=0.0 * pre_flow_s),
                "no_post_flow": per_stud_l(post_flow_s=0.0 * post_flow_s),
                "per_second": 60.0 * per_stud_l(),
            },
        ),
        "gauge": ChoiceKey(right=same(table, "ft3_h")),
    }


GAS_PER_STUD = Exercise(
    id="stud_welding.gas_per_stud",
    objective="gas",
    title="Gas for one stud",
    prompt=(
        "The flow gauge at {shop} is read at the gun: {flow_ft3_h:.0f} on a scale without a unit. "
        "The old gauge next to it, marked in L/min, shows {flow_l_min:.1f} for the same flow. "
        "The gas flows {pre_flow_s:.1f} s before the arc, through an arc of {time_ms:.0f} ms, and "
        "{post_flow_s:.1f} s after it."
    ),
    shown=lambda scenario: {"flow_l_min": units.l_min_from_ft3_h(scenario["flow_ft3_h"])},
    parts=(
        Choice(
            id="gauge",
            ask="In which unit does the first gauge read?",
            options=(
                wrong("l_min", "Litres per minute.", CUBIC_FEET_AS_LITRES),
                wrong(
                    "bar", "Bar.", "Bar is a pressure. It tells how full the cylinder is, not how much flows."
                ),
                option("ft3_h", "Cubic feet per hour."),
            ),
        ),
        Number(
            id="per_stud",
            ask="How many litres of gas does one stud use?",
            unit="L",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("cubic_feet", CUBIC_FEET_AS_LITRES),
                slip("no_pre_flow", "The gas before the arc is missing."),
                slip("no_post_flow", "The gas after the arc is missing."),
                slip("per_second", "A flow per minute was used as a flow per second."),
            ),
        ),
    ),
    draw=_draw_use,
    solve=_solve_use,
    reasons=(
        "Two gauges on one flow tell the unit: about 2.1 cubic feet per hour are one litre per minute. "
        "Add the time before the arc, the arc and the time after it, all in seconds. "
        "Divide the flow by sixty to get litres per second and multiply."
    ),
    read_again=HEADING,
)

PLAN_SHARES = (0.4, 0.6, 0.8, 1.25, 1.5, 2.0)


def _draw_cylinder(draw):
    return scene(draw) | {
        "capacity_l": draw.pick("capacity_l", (5, 8, 10)),
        "pressure_bar": draw.whole("pressure_bar", 24, 48),
        "rest_bar": draw.whole("rest_bar", 5, 10),
        "flow_ft3_h": draw.whole("flow_ft3_h", 16, 26),
        "pre_flow_s": draw.pick("pre_flow_s", (0.8, 1.0, 1.2)),
        "post_flow_s": draw.pick("post_flow_s", (0.4, 0.5, 0.6)),
        "time_ms": draw.whole("time_ms", 20, 40),
        "plan_share": draw.pick("plan_share", PLAN_SHARES),
    }


def _cylinder_studs(scenario, *, flow_l_min=None, with_pre_flow=1.0, with_rest=1.0):
    """Return the studs that a cylinder gives; the arguments lead to the wrong paths."""
    gas_l = gas.cylinder_gas_l(
        water_capacity_l=scenario["capacity_l"],
        pressure_bar=scenario["pressure_bar"],
        remaining_pressure_bar=with_rest * scenario["rest_bar"],
    )
    per_stud_l = gas.gas_per_stud_l(
        flow_l_min=units.l_min_from_ft3_h(scenario["flow_ft3_h"]) if flow_l_min is None else flow_l_min,
        pre_flow_s=with_pre_flow * scenario["pre_flow_s"],
        weld_time_ms=scenario["time_ms"],
        post_flow_s=scenario["post_flow_s"],
    )
    return gas.studs_per_cylinder(gas_l=gas_l, gas_per_stud_l=per_stud_l)


def _plan(scenario):
    return {"planned": f"{_cylinder_studs(scenario) * scenario['plan_share']:.0f}"}


def _solve_cylinder(table):
    def usable_l(rest_bar):
        return gas.cylinder_gas_l(
            water_capacity_l=table["capacity_l"],
            pressure_bar=table["pressure_bar"],
            remaining_pressure_bar=rest_bar,
        )

    return {
        "usable": NumberKey(
            value=usable_l(table["rest_bar"]),
            slips={"no_rest": usable_l(0.0 * table["rest_bar"]), "empty_volume": 1.0 * table["capacity_l"]},
        ),
        "studs": NumberKey(
            value=_cylinder_studs(table),
            slips={
                "cubic_feet": _cylinder_studs(table, flow_l_min=table["flow_ft3_h"]),
                "no_pre_flow": _cylinder_studs(table, with_pre_flow=0.0),
                "no_rest": _cylinder_studs(table, with_rest=0.0),
            },
        ),
        "enough": ChoiceKey(right=chosen([table["plan_share"] < 1.0], ["enough"], otherwise="too_little")),
    }


CYLINDER = Exercise(
    id="stud_welding.cylinder",
    objective="gas",
    title="Does the cylinder last?",
    prompt=(
        "A cylinder of {capacity_l:.0f} L at {shop} shows {pressure_bar:.0f} bar and is changed at "
        "{rest_bar:.0f} bar. "
        "The gun blows {flow_ft3_h:.0f} ft³/h: {pre_flow_s:.1f} s before the arc, {time_ms:.0f} ms of arc, "
        "{post_flow_s:.1f} s after it. "
        "The courses of this month need {planned} studs, test studs included."
    ),
    shown=_plan,
    parts=(
        Number(
            id="usable",
            ask="How many litres of gas will the cylinder still give?",
            unit="L",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "no_rest",
                    "That empties the cylinder. It is changed while some pressure is left.",
                    credit=0.5,
                ),
                slip(
                    "empty_volume",
                    "That is the volume of the empty cylinder. Pressed gas is many times as much.",
                ),
            ),
        ),
        Number(
            id="studs",
            ask="How many studs is that enough for?",
            unit="studs",
            relative_tolerance=0.02,
            tolerance_reason=PLANNING_COUNT,
            slips=(
                slip("cubic_feet", CUBIC_FEET_AS_LITRES),
                slip("no_pre_flow", "The gas before the arc is missing. It is the largest share."),
                slip("no_rest", "The gas that stays in the cylinder was counted as well.", credit=0.5),
            ),
        ),
        Choice(
            id="enough",
            ask="What do you tell the shop?",
            options=(
                option("too_little", "Order gas now: it does not last."),
                wrong(
                    "less_flow",
                    "It does not matter: turn the flow down until it lasts.",
                    "The flow is set for the weld. Too little gas gives porous collars.",
                ),
                option("enough", "It lasts."),
            ),
        ),
    ),
    draw=_draw_cylinder,
    solve=_solve_cylinder,
    reasons=(
        "The cylinder gives its volume times the pressure that may still be used, in litres at room "
        "pressure. "
        "Turn the gauge's cubic feet per hour into litres per minute, and work out the gas of one stud "
        "with the time before and after the arc. "
        "Divide, round down, and compare with the plan."
    ),
    read_again=HEADING,
)

EXERCISES = (
    GAS_PER_STUD,
    CYLINDER,
)
