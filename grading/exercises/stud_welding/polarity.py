"""Exercises on the pole of the gun."""

from grading.exercise import Choice, ChoiceKey, Exercise, Verdicts, VerdictsKey
from grading.exercises.building_blocks import looked_up, option, same, wrong
from grading.exercises.scenes import scene
from secondplate import stud_weld

HEADING = "Which pole on the gun?"

POLE_CASES = (
    ("austenitic stainless", "steel rivet head"),
    ("carbon steel", "steel rivet head"),
    ("austenitic stainless", "steel sheet"),
    ("carbon steel", "steel sheet"),
    ("aluminium", "aluminium sheet"),
)
POLE_ROWS = ("job_1", "job_2", "job_3")


def _draw_predict(draw):
    return scene(draw) | {"thread_mm": draw.pick("thread_mm", (4, 5, 6))}


PREDICT_POLE = Exercise(
    id="stud_welding.predict_pole",
    objective="set_up",
    title="Predict: which pole?",
    prompt=(
        "The panel of {vehicle} is aluminium. The rivet in it is steel. "
        "The M{thread_mm:.0f} stud is stainless. Decide before you read on."
    ),
    parts=(
        Choice(
            id="decides",
            ask="Which metal decides which pole goes to the gun?",
            options=(
                wrong(
                    "panel",
                    "The aluminium of the panel.",
                    "The arc never touches the panel. It burns between the stud and the rivet head.",
                ),
                wrong(
                    "none",
                    "None: the poles make no difference.",
                    "The poles share the heat between stud and head, and steady the arc.",
                ),
                option("stud_and_head", "The steel of the stud and of the rivet head."),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"decides": ChoiceKey(right=same(table, "stud_and_head"))},
    reasons=(
        "The arc burns between the stud and the rivet head, and both are steel. "
        "The panel only carries the current away."
    ),
    read_again=HEADING,
    counts=False,
)


def _draw_pole(draw):
    others = draw.shuffle("others", (1, 2, 3))[:1]
    jobs = draw.shuffle("jobs", [0, 4, *others])
    return (
        scene(draw)
        | {"chart_pole": draw.pick("chart_pole", ("positive", "negative"))}
        | dict(zip(POLE_ROWS, jobs, strict=True))
    )


def _pole_words(scenario):
    """Return each drawn job in words."""
    jobs = {name: POLE_CASES[scenario[name]] for name in POLE_ROWS}
    panels = {"steel rivet head": "a steel rivet head in an aluminium panel"}
    return {name: f"{stud} stud on {panels.get(base, base)}" for name, (stud, base) in jobs.items()}


def _general_pole(case):
    """Return the pole of the gun by the first, general rule."""
    stud_material, base = POLE_CASES[int(case)]
    return stud_weld.polarity(stud_material=stud_material, base=base).rules[0].choice.replace(" ", "_")


POLE = Exercise(
    id="stud_welding.polarity",
    objective="set_up",
    title="Which pole goes to the gun?",
    prompt=(
        "Three jobs are on the list at {shop}. "
        "The chart on the machine says for pull studs: gun {chart_pole}."
    ),
    shown=_pole_words,
    parts=(
        Verdicts(
            id="jobs",
            ask="By the general rule, which pole does the stud get?",
            points=2.0,
            rows=tuple(option(name, "{" + name + "}") for name in POLE_ROWS),
            verdicts=(
                option("stud_positive", "stud positive"),
                option("stud_negative", "stud negative"),
            ),
        ),
        Choice(
            id="chart",
            ask="What do you set for the pull stud on the rivet head?",
            options=(
                option("chart", "What the chart says; weld a test stud, pull it and write the pole down."),
                wrong(
                    "rule_always",
                    "The general rule, whatever the chart says.",
                    "The chart was made with this equipment. Many charts reverse the poles for this job.",
                ),
                wrong(
                    "panel",
                    "What suits the aluminium of the panel.",
                    "The arc burns on the steel of the rivet head, not on the panel.",
                ),
            ),
        ),
    ),
    draw=_draw_pole,
    solve=lambda table: {
        "jobs": VerdictsKey(right={name: looked_up(table[name], _general_pole) for name in POLE_ROWS}),
        "chart": ChoiceKey(right=same(table, "chart")),
    },
    reasons=(
        "The general rule goes by what the arc burns on: stud negative for steel and stainless, stud "
        "positive for aluminium. "
        "For pull studs many shops and charts keep reversed polarity, and no source settles it. "
        "So set what the chart of the equipment says, prove it with a test stud, and write it down."
    ),
    read_again=HEADING,
)

EXERCISES = (
    PREDICT_POLE,
    POLE,
)
