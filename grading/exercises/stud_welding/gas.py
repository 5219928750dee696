"""Exercises on shielding gas: when it is needed, gas for each stud, and how long a cylinder lasts."""

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Option, Verdicts, VerdictsKey
from grading.exercises.keys import PLANNING_COUNT, THREE_FIGURES, chosen, looked_up, same, slip
from grading.exercises.scenes import scene
from secondplate import gas, units

HEADING = "When is gas needed, and how much?"
CUBIC_FEET_AS_LITRES = "The gauge reads cubic feet per hour; the number was used as litres per minute."


# Stud, what it stands on, and process: the jobs of the table of gas advice that a body shop meets.
CASES = (
    ("austenitic stainless", "steel rivet head", "short cycle"),
    ("carbon steel", "steel rivet head", "short cycle"),
    ("carbon steel", "steel sheet", "drawn arc with ferrule"),
    ("carbon steel", "steel sheet", "drawn arc with gas"),
    ("austenitic stainless", "steel sheet", "drawn arc with ferrule"),
    ("austenitic stainless", "steel rivet head", "drawn arc with gas"),
    ("aluminium", "aluminium sheet", "short cycle"),
    ("aluminium", "aluminium sheet", "drawn arc with gas"),
)
CASE_ROWS = ("case_1", "case_2", "case_3", "case_4")
CARBON_DIOXIDE_PERCENT = (1.5, 2.0, 2.5, 3.0, 6.0, 8.0, 10.0, 12.0, 16.0, 18.0, 20.0, 22.0)


def _draw_predict(draw):
    return scene(draw) | {"flow_l_min": draw.whole("flow_l_min", 8, 12), "time_ms": draw.whole("time_ms", 20, 40)}


PREDICT_GAS = Exercise(
    id="stud_welding.predict_gas",
    objective="gas",
    title="Predict: where does the gas go?",
    prompt="The gun at {shop} blows {flow_l_min:.0f} L/min: one second before the arc, {time_ms:.0f} ms of arc, "
    "half a second after it. Decide before you compute.",
    parts=(
        Choice(
            id="largest",
            ask="Which of the three uses the most gas?",
            options=(
                Option(
                    id="arc",
                    text="The arc, because the weld needs it there.",
                    slip=slip("arc", "The arc needs the gas most, but it lasts a few hundredths of a second."),
                ),
                Option(id="pre_flow", text="The second before the arc."),
                Option(
                    id="all_alike",
                    text="All three about alike.",
                    slip=slip("all_alike", "The flow is the same, the times are not."),
                ),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"largest": ChoiceKey(right=same(table, "pre_flow"))},
    reasons="The flow is the same all the time, so the longest time uses most. The arc itself hardly counts.",
    read_again=HEADING,
    counts=False,
)


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
    prompt="The flow gauge at {shop} is read at the gun: {flow_ft3_h:.0f} on a scale without a unit. "
    "The old gauge next to it, marked in L/min, shows {flow_l_min:.1f} for the same flow. "
    "The gas flows {pre_flow_s:.1f} s before the arc, through an arc of {time_ms:.0f} ms, "
    "and {post_flow_s:.1f} s after it.",
    shown=lambda scenario: {"flow_l_min": units.l_min_from_ft3_h(scenario["flow_ft3_h"])},
    parts=(
        Choice(
            id="gauge",
            ask="In which unit does the first gauge read?",
            options=(
                Option(id="l_min", text="Litres per minute.", slip=slip("l_min", CUBIC_FEET_AS_LITRES)),
                Option(
                    id="bar",
                    text="Bar.",
                    slip=slip("bar", "Bar is a pressure. It tells how full the cylinder is, not how much flows."),
                ),
                Option(id="ft3_h", text="Cubic feet per hour."),
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
    reasons="Two gauges on one flow tell the unit: about 2.1 cubic feet per hour are one litre per minute. "
    "Add the time before the arc, the arc and the time after it, all in seconds. "
    "Divide the flow by sixty to get litres per second and multiply.",
    read_again=HEADING,
)


def _draw_need(draw):
    pull_studs = draw.shuffle("pull_studs", (0, 1))
    others = draw.shuffle("others", range(2, len(CASES)))[:2]
    cases = draw.shuffle("cases", pull_studs + others)
    mix = {"carbon_dioxide_percent": draw.pick("carbon_dioxide_percent", CARBON_DIOXIDE_PERCENT)}
    return scene(draw) | mix | dict(zip(CASE_ROWS, cases, strict=True))


def _case_words(scenario):
    """Return each drawn job in words."""
    jobs = {name: CASES[scenario[name]] for name in CASE_ROWS}
    return {name: f"{stud} stud on {base}, {process}" for name, (stud, base, process) in jobs.items()}


def _case_verdict(case):
    """Return the verdict that the gas advice of one job leads to."""
    stud_material, base, process = CASES[int(case)]
    advice = gas.gas_advice(stud_material=stud_material, base=base, process=process)
    if not advice.needed:
        return "no_gas"
    return {"M12": "weakly_oxidising", "M21": "m21", "I1": "inert"}[advice.groups[0]]


def _group(carbon_dioxide_percent):
    """Return the option of the group that an argon and carbon dioxide mix falls in."""
    return gas.gas_group(carbon_dioxide_percent=float(carbon_dioxide_percent)).designation.lower()


def _solve_need(table):
    return {
        "jobs": VerdictsKey(right={name: looked_up(table[name], _case_verdict) for name in CASE_ROWS}),
        "label": ChoiceKey(right=looked_up(table["carbon_dioxide_percent"], _group)),
    }


GAS_NEED = Exercise(
    id="stud_welding.gas_need",
    objective="gas",
    title="Gas or no gas?",
    prompt="Four jobs wait at {shop}. A cylinder beside the machine is labelled: "
    "argon with {carbon_dioxide_percent:.1f} % carbon dioxide.",
    shown=_case_words,
    parts=(
        Verdicts(
            id="jobs",
            ask="Which gas does each job need?",
            points=2.0,
            rows=tuple(Option(id=name, text="{" + name + "}") for name in CASE_ROWS),
            verdicts=(
                Option(id="inert", text="an inert gas: argon, with helium for large studs (I1, I3)"),
                Option(id="no_gas", text="none"),
                Option(id="m21", text="argon with 15 to 25 % carbon dioxide (M21)"),
                Option(id="weakly_oxidising", text="argon with very little carbon dioxide or oxygen (M12, M13), M21 at need"),
            ),
        ),
        Choice(
            id="label",
            ask="In which group of ISO 14175 is the cylinder beside the machine?",
            options=(
                Option(
                    id="i1",
                    text="I1",
                    slip=slip("argon_is_argon", "Most of it is argon, but the rest is what names the group."),
                ),
                Option(id="m21", text="M21", slip=slip("usual_mix", "M21 is what stands ready in many shops. Read the label.")),
                Option(id="m12", text="M12"),
                Option(id="m20", text="M20"),
            ),
        ),
    ),
    draw=_draw_need,
    solve=_solve_need,
    reasons="A ferrule keeps the air out by itself, and plain steel on steel is over in milliseconds, so both go without gas. "
    "Stainless needs gas that hardly oxidises, or its chromium burns and the collar turns dull and porous. "
    "Aluminium needs an inert gas. "
    "The share of carbon dioxide on the label names the group: up to 5 % M12, up to 15 % M20, up to 25 % M21. "
    "Sources and shops do not agree everywhere; the equipment manual decides.",
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
    """Return the studs that a cylinder gives; the defaults are the right way, the arguments the wrong ones."""
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
    prompt="A cylinder of {capacity_l:.0f} L at {shop} shows {pressure_bar:.0f} bar and is changed at {rest_bar:.0f} bar. "
    "The gun blows {flow_ft3_h:.0f} ft3/h: {pre_flow_s:.1f} s before the arc, {time_ms:.0f} ms of arc, "
    "{post_flow_s:.1f} s after it. The courses of this month need {planned} studs, test studs included.",
    shown=_plan,
    parts=(
        Number(
            id="usable",
            ask="How many litres of gas will the cylinder still give?",
            unit="L",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("no_rest", "That empties the cylinder. It is changed while some pressure is left.", credit=0.5),
                slip("empty_volume", "That is the volume of the empty cylinder. Pressed gas is many times as much."),
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
                Option(id="too_little", text="Order gas now: it does not last."),
                Option(
                    id="less_flow",
                    text="It does not matter: turn the flow down until it lasts.",
                    slip=slip("less_flow", "The flow is set for the weld. Too little gas gives porous collars."),
                ),
                Option(id="enough", text="It lasts."),
            ),
        ),
    ),
    draw=_draw_cylinder,
    solve=_solve_cylinder,
    reasons="The cylinder gives its volume times the pressure that may still be used, in litres at room pressure. "
    "Turn the gauge's cubic feet per hour into litres per minute, and work out the gas of one stud with the time before and after the arc. "
    "Divide, round down, and compare with the plan.",
    read_again=HEADING,
)

EXERCISES = (PREDICT_GAS, GAS_NEED, GAS_PER_STUD, CYLINDER)
