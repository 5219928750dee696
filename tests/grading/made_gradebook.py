"""A small gradebook for tests: one page of two choices and a practical, and the marks of its learners."""

from datetime import datetime

from grading.class_settings import ClassSettings
from grading.exercise import Choice, ChoiceKey, Exercise, Option, Page
from grading.marking import LearnerMarks
from grading.rubric import Rubric, RubricLine

SETTINGS = ClassSettings(course_key="brook lane 7", title="Brook Lane", due="2026-12-18T18:00:00+01:00")


def one_choice(slug, *, counts=True):
    """Make a small exercise of one choice, for two points."""
    part = Choice(
        id="which", ask="Which?", options=(Option(id="a", text="A"), Option(id="b", text="B")), points=2.0
    )
    return Exercise(
        id=f"bench.{slug}",
        objective="o",
        title=slug,
        prompt="",
        parts=(part,),
        draw=lambda draw: {"x": 1},
        solve=lambda table: {"which": ChoiceKey(right=["a"] * len(table["x"]))},
        reasons="",
        read_again="",
        counts=counts,
    )


PAGE = Page(
    id="bench",
    title="Bench",
    folder="1_bench",
    notebook="bench.ipynb",
    assignment="1_bench",
    objectives={"o": "You can."},
    exercises=(one_choice("one"), one_choice("two"), one_choice("guess", counts=False)),
    practical_points=6.0,
)
PAGES = {"bench": PAGE}
RUBRIC = Rubric(
    page="bench",
    title="A practical",
    lines=(
        RubricLine(id="safe", shown="is safe", levels={2: "all", 0: "unsafe"}, ends_the_try_at_0=True),
        RubricLine(id="weld", shown="welds", levels={4: "well", 0: "not"}),
    ),
)
RUBRICS = {"bench": RUBRIC}


def marks(student_id="ann", name="Ann Holt", *, one=1.5, two=0.0, when=datetime(2026, 12, 1, 9, 30)):
    """Make the marks of one learner."""
    first, _, last = name.partition(" ")
    return LearnerMarks(
        student_id=student_id,
        first_name=first,
        last_name=last,
        handed_in=when,
        pages=("bench",),
        points={"bench.one": one, "bench.two": two},
    )
