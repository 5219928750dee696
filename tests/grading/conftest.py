"""A small bank of exercises with every kind of part, and records to answer it with."""

from functools import partial

import numpy as np
import pytest

from grading.answers import Record
from grading.class_settings import ClassSettings
from grading.exercise import (
    Choice,
    ChoiceKey,
    Choices,
    ChoicesKey,
    Exercise,
    Number,
    NumberKey,
    Option,
    Order,
    OrderKey,
    Page,
    Range,
    RangeKey,
    Slip,
    Verdicts,
    VerdictsKey,
)
from grading.journal import Journal
from grading.variants import scenario, scenario_digest
from tests.grading.made_archives import zip_of
from tests.grading.made_journals import entry

HALVED = Slip(id="halved", sentence="Half of it was taken.", credit=0.25)
DOUBLED = Slip(id="doubled", sentence="Twice of it was taken.")
TOO_WARM = Slip(id="too_warm", sentence="Warm is not safe.", credit=0.1)


def _energy_draw(draw):
    """Draw an arc."""
    return {
        "voltage_v": draw.whole("voltage", 20, 40),
        "current_a": draw.whole("current", 400, 800, 10),
        "time_ms": draw.whole("time", 10, 40),
    }


def _energy_solve(table):
    """Solve the arc: energy, and a band of 10 % either way."""
    energy = table["voltage_v"] * table["current_a"] * table["time_ms"] / 1000.0
    return {
        "energy": NumberKey(value=energy, slips={"halved": energy / 2, "doubled": energy * 2}),
        "band": RangeKey(
            low=energy * 0.9, high=energy * 1.1, slips={"halved": (energy * 0.45, energy * 0.55)}
        ),
    }


ENERGY = Exercise(
    id="arcs.energy",
    objective="energy",
    title="Energy of an arc",
    prompt="An arc of {voltage_v} V and {current_a} A burns for {time_ms} ms.",
    parts=(
        Number(
            id="energy",
            ask="Energy",
            unit="J",
            slips=(HALVED, DOUBLED),
            relative_tolerance=0.02,
            tolerance_reason="three figures",
            points=2.0,
        ),
        Range(
            id="band",
            ask="Band",
            unit="J",
            slips=(HALVED,),
            relative_tolerance=0.02,
            tolerance_reason="three figures",
        ),
    ),
    draw=_energy_draw,
    solve=_energy_solve,
    reasons="Energy is {voltage_v} V times {current_a} A times {time_ms} ms.",
    read_again="How much energy?",
)

_LETTERS = ("a", "b", "c", "d")
_OPTIONS = tuple(
    Option(id=letter, text=letter.upper(), slip=TOO_WARM if letter == "d" else None) for letter in _LETTERS
)


def _kinds_draw(draw):
    """Draw what is right."""
    return {
        "right": draw.pick("right", ("a", "b")),
        "order": draw.shuffle("order", _LETTERS),
        "wait": draw.pick("wait", (1, 2)),
    }


def _kinds_solve(table):
    """Solve the kinds of part that are chosen, not typed."""
    first = table["right"] == "a"
    return {
        "one": ChoiceKey(right=table["right"]),
        "many": ChoicesKey(right=[("a", "c") if is_first else ("b", "c") for is_first in first]),
        "sequence": OrderKey(right=[tuple(order) for order in table["order"]]),
        "table": VerdictsKey(
            right={
                "r1": np.where(first, "good", "bad"),
                "r2": np.where(first, "bad", "good"),
                "r3": "good",
            }
        ),
        "count": NumberKey(value=table["wait"] + 1.0, slips={}),
    }


_VERDICTS = (Option(id="good", text="Good"), Option(id="bad", text="Bad"))

KINDS = Exercise(
    id="arcs.kinds",
    objective="kinds",
    title="Every kind",
    prompt="Choose.",
    parts=(
        Choice(id="one", ask="One", options=_OPTIONS),
        Choices(id="many", ask="Many", options=_OPTIONS, points=2.0),
        Order(id="sequence", ask="Order", options=_OPTIONS, points=3.0),
        Verdicts(
            id="table",
            ask="Table",
            rows=(
                Option(id="r1", text="one"),
                Option(id="r2", text="two"),
                Option(id="r3", text="three", slip=TOO_WARM),
            ),
            verdicts=_VERDICTS,
            points=3.0,
        ),
        Number(id="count", ask="Studs", unit="studs", slips=(), tolerance_reason="a count is exact"),
    ),
    draw=_kinds_draw,
    solve=_kinds_solve,
    reasons="Because.",
    read_again="Which kinds?",
)

GUESS = Exercise(
    id="arcs.guess",
    objective="energy",
    title="A guess before the sum",
    prompt="Guess.",
    parts=(Choice(id="guess", ask="Which?", options=_OPTIONS),),
    draw=_kinds_draw,
    solve=lambda table: {"guess": ChoiceKey(right=table["right"])},
    reasons="Because.",
    read_again="Which kinds?",
    counts=False,
)

SMALL_PAGE = Page(
    id="arcs",
    title="Arcs",
    folder="1_arcs",
    notebook="arcs.ipynb",
    assignment="arcs",
    objectives={"energy": "Energy", "kinds": "Kinds"},
    exercises=(ENERGY, KINDS, GUESS),
    practical_points=5.0,
    practical_cue="Write here.\n\n*Who watched, and when.*",
)


@pytest.fixture(scope="session")
def small_page():
    """Return a page that holds every kind of part."""
    return SMALL_PAGE


@pytest.fixture(scope="session")
def small_bank():
    """Return the exercises of the small page by id."""
    return {exercise.id: exercise for exercise in SMALL_PAGE.exercises}


@pytest.fixture(scope="session")
def class_settings():
    """Return the settings that the small bank is marked with."""
    return ClassSettings(course_key="test-class", title="Test class")


@pytest.fixture(scope="session")
def make_record(small_bank, class_settings):
    """Return a maker of sound records of the small bank."""

    def make(exercise_id, answers, *, learner="ann", round_number=1, line=1, **changes):
        numbers = scenario(
            small_bank[exercise_id],
            course_key=class_settings.course_key,
            learner=learner,
            round_number=round_number,
        )
        fields = {
            "at": "2026-11-25T08:00:00.000+00:00",
            "learner": learner,
            "course": class_settings.course_key,
            "page": "arcs",
            "exercise": exercise_id,
            "round_number": round_number,
            "bank": "test",
            "scenario": scenario_digest(numbers),
            "answers": answers,
            "previous": "",
            "check": "",
            "line": line,
        }
        return Record(**{**fields, **changes})

    return make


@pytest.fixture
def journal(tmp_path):
    """Return a journal that does not exist yet."""
    return Journal(tmp_path / "answers.jsonl")


@pytest.fixture
def filled(journal):
    """Return a journal of five records."""
    for number in range(5):
        journal.append(**entry(number))
    return journal


@pytest.fixture
def make_zip(tmp_path):
    """Return a maker of hand-in archives from names and bytes."""
    return partial(zip_of, tmp_path / "made.zip")
