"""A small bank with the kinds of part that need a figure or a bench, for tests of forms and browser."""

from types import SimpleNamespace

from drawings import Picture
from exercise_forms.figures import FIGURES, Frame, Shown
from grading.bench_days import DAYS, begin_with, bench_key, day
from grading.exercise import (
    Bench,
    Choice,
    ChoiceKey,
    Criterion,
    Exercise,
    Figure,
    NumberKey,
    Option,
    Page,
    Reading,
    RowRun,
    Slip,
)
from grading.row_days import row_run_key
from grading.row_plans import SLIP_IDS
from secondplate.bench import FINDINGS

STEP_SVG = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 300" width="400" height="300">'
    '<rect width="400" height="300" fill="#ffffff"/>'
    '<path d="M0 300 V200 H200 V{top} H400 V300 Z" fill="#cfd6da" stroke="#1f3a4d" stroke-width="2"/></svg>'
)
ALT = "A plate with a step in it, seen from the side."


def draw_step(*, height_mm):
    """Draw a step in a plate: 8 mm wide and 6 mm high, one millimetre is 50 units."""
    svg = STEP_SVG.format(top=200 - 50 * height_mm)
    return Shown(picture=Picture(svg, ALT), frame=Frame(x0_mm=0.0, x1_mm=8.0, y0_mm=-2.0, y1_mm=4.0))


FIGURES["step of the tests"] = draw_step

STEP = Exercise(
    id="bench_tests.step",
    objective="reading",
    title="Read a step off its drawing",
    prompt="The drawing shows a step in a plate.",
    parts=(
        Reading(
            id="height",
            ask="How high is the step?",
            unit="mm",
            slips=(
                Slip(id="with_plate", sentence="That is the step and the plate below it."),
                Slip(id="width", sentence="That is how wide the step is."),
            ),
            tolerance_reason="A line can be set to a tenth of a millimetre here.",
            absolute_tolerance=0.1,
            axis="vertical",
            span=(-2.0, 4.0),
        ),
    ),
    draw=lambda draw: {"height_mm": draw.decimal("height", 1.0, 2.5, 0.1, 1)},
    solve=lambda table: {
        "height": NumberKey(
            value=table["height_mm"], slips={"with_plate": table["height_mm"] + 2.0, "width": 4.0}
        )
    },
    reasons="One line stands on the lower edge of the step. The other stands on its upper edge.",
    read_again="How high?",
    figure=lambda scenario: Figure(name="step of the tests", arguments={"height_mm": scenario["height_mm"]}),
)
JUDGE = Exercise(
    id="bench_tests.judge",
    objective="reading",
    title="Judge a collar",
    prompt="Look at the collar.",
    parts=(
        Choice(
            id="sign",
            ask="What is it?",
            options=(
                Option(id="good", text="Good."),
                Option(id="cold", text="Cold."),
                Option(id="hot", text="Hot."),
            ),
        ),
    ),
    draw=lambda draw: {"sign": draw.pick("sign", ("good", "cold", "hot"))},
    solve=lambda table: {"sign": ChoiceKey(right=table["sign"])},
    reasons="Look at its edge. Look at its length.",
    read_again="How high?",
    figure=lambda scenario: Figure(name="collar", arguments={"sign_id": scenario["sign"]}),
)
BENCH = Exercise(
    id="bench_tests.bench",
    objective="bench",
    title="A stud at the bench",
    prompt="Set up the machine on a spare head. Stop after three studs in a row that are not sound.",
    parts=(
        Bench(
            id="log",
            ask="Weld and pull until the row can be welded.",
            settings=("current_a", "time_ms", "gas"),
            criteria=tuple(
                Criterion(id=rule, weight=0.2, slip=Slip(id=f"not_{rule}", sentence=f"Broke {rule}."))
                for rule in FINDINGS
            ),
            stop_reasons=(
                Option(id="head", text="The head is spoilt"),
                Option(id="tries", text="Three studs in a row were not sound"),
            ),
        ),
    ),
    draw=lambda draw: {"day": draw.whole("day", 1, DAYS)},
    solve=lambda table: {
        "log": bench_key(
            [day(int(number), "weak") for number in table["day"]], [begin_with(6)] * len(table["day"])
        )
    },
    reasons="One stud, one pull. Then one change.",
    read_again="How high?",
)
ROW = Exercise(
    id="bench_tests.row",
    objective="bench",
    title="A row by a plan",
    prompt="Plan the row.",
    parts=(
        RowRun(
            id="plan",
            ask="How do you work through this row?",
            slips=tuple(Slip(id=slip_id, sentence=f"Shows {slip_id}.") for slip_id in SLIP_IDS),
            full_within=0.05,
            nothing_beyond=0.25,
            tolerance_reason="Nobody knows the chances better than this.",
        ),
    ),
    draw=lambda draw: {"day": draw.whole("day", 6, 6)},
    solve=lambda table: {"plan": row_run_key(table["day"])},
    reasons="Test two. Then the row.",
    read_again="How high?",
)
PAGE = Page(
    id="bench_tests",
    title="Tests",
    folder=".",
    notebook="tests.ipynb",
    assignment="tests",
    objectives={"reading": "Read", "bench": "Bench"},
    exercises=(STEP, JUDGE, BENCH, ROW),
)
BANK = SimpleNamespace(
    EXERCISES={exercise.id: exercise for exercise in PAGE.exercises},
    PAGES={PAGE.id: PAGE},
    BANK_VERSION="test",
)
