"""Exercises on when gas is needed, and from which group."""

from grading.exercise import Choice, ChoiceKey, Exercise, Verdicts, VerdictsKey
from grading.exercises.building_blocks import looked_up, option, same, wrong
from grading.exercises.scenes import scene
from secondplate import gas

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
    return scene(draw) | {
        "flow_l_min": draw.whole("flow_l_min", 8, 12),
        "time_ms": draw.whole("time_ms", 20, 40),
    }


PREDICT_GAS = Exercise(
    id="stud_welding.predict_gas",
    objective="gas",
    title="Predict: where does the gas go?",
    prompt=(
        "The gun at {shop} blows {flow_l_min:.0f} L/min: one second before the arc, {time_ms:.0f} ms of "
        "arc, half a second after it. Decide before you compute."
    ),
    parts=(
        Choice(
            id="largest",
            ask="Which of the three uses the most gas?",
            options=(
                wrong(
                    "arc",
                    "The arc, because the weld needs it there.",
                    "The arc needs the gas most, but it lasts a few hundredths of a second.",
                ),
                option("pre_flow", "The second before the arc."),
                wrong("all_alike", "All three about alike.", "The flow is the same, the times are not."),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"largest": ChoiceKey(right=same(table, "pre_flow"))},
    reasons="The flow is the same all the time, so the longest time uses most. The arc itself hardly counts.",
    read_again=HEADING,
    counts=False,
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
    prompt=(
        "Four jobs wait at {shop}. "
        "A cylinder beside the machine is labelled: argon with {carbon_dioxide_percent:.1f} % carbon "
        "dioxide."
    ),
    shown=_case_words,
    parts=(
        Verdicts(
            id="jobs",
            ask="Which gas does each job need?",
            points=2.0,
            rows=tuple(option(name, "{" + name + "}") for name in CASE_ROWS),
            verdicts=(
                option("inert", "an inert gas: argon, with helium for large studs (I1, I3)"),
                option("no_gas", "none"),
                option("m21", "argon with 15 to 25 % carbon dioxide (M21)"),
                option(
                    "weakly_oxidising",
                    "argon with very little carbon dioxide or oxygen (M12, M13), M21 at need",
                ),
            ),
        ),
        Choice(
            id="label",
            ask="In which group of ISO 14175 is the cylinder beside the machine?",
            options=(
                wrong("i1", "I1", "Most of it is argon, but the rest is what names the group."),
                wrong("m21", "M21", "M21 is what stands ready in many shops. Read the label."),
                option("m12", "M12"),
                option("m20", "M20"),
            ),
        ),
    ),
    draw=_draw_need,
    solve=_solve_need,
    reasons=(
        "A ferrule keeps the air out by itself, and plain steel on steel is over in milliseconds, so both "
        "go without gas. "
        "Stainless needs gas that hardly oxidises, or its chromium burns and the collar turns dull and "
        "porous. Aluminium needs an inert gas. "
        "The share of carbon dioxide on the label names the group: up to 5 % M12, up to 15 % M20, up to 25 "
        "% M21. Sources and shops do not agree everywhere; the equipment manual decides."
    ),
    read_again=HEADING,
)


EXERCISES = (
    PREDICT_GAS,
    GAS_NEED,
)
