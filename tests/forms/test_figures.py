"""Figures of exercises: drawn from the learner's numbers, once, and never in the way of an answer."""

import re
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from exercise_forms.desk import Desk
from exercise_forms.exercise_form import ExerciseForm
from exercise_forms.figures import FIGURES, Frame, figure_state
from grading.exercise import Figure
from grading.exercises import EXERCISES
from grading.exercises.second_plate.flange import PLACE_FASTENERS
from grading.hand_in import save_learner
from grading.keys import row_keys
from grading.part_scores import Outcome, score_part
from grading.variants import scenario, words
from secondplate.section import FAULT_NAMES, measure, random_section
from secondplate.section_places import measuring_places
from tests.forms.new_kinds import ALT, BANK, JUDGE, STEP

WITH_FIGURE = [exercise for exercise in EXERCISES.values() if exercise.figure]


@pytest.fixture
def sit_at(folder, wrap):
    """Return a function that sits Ana down at an exercise of the small bank."""
    return lambda exercise, bank=BANK: wrap(ExerciseForm(Desk(folder, bank=bank), exercise))


@pytest.mark.parametrize("exercise", WITH_FIGURE, ids=lambda exercise: exercise.id)
def test_every_figure_of_the_bank_can_be_drawn(exercise):
    """Each name that the bank uses is a drawing, and takes what twenty learners draw."""
    for number in range(20):
        numbers = scenario(exercise, course_key="figures", learner=f"learner {number}", round_number=1)
        assert figure_state(exercise.figure(numbers))["html"].startswith('<img alt="')


def test_a_form_shows_the_figure_of_its_own_numbers(sit_at, folder):
    """Two learners see two figures, each with its words."""
    seen = set()
    for name in ("Ana 17", "Ben", "Cleo", "Dov", "Eda"):
        save_learner(folder, name)
        figure = sit_at(JUDGE).form.figure
        assert figure["html"].startswith('<img alt="')
        assert "cold" not in figure["html"].partition('" style')[0].lower()
        seen.add(figure["html"])
    assert len(seen) > 1


def test_a_reading_carries_its_axis_its_span_and_the_frame(sit_at):
    """The browser can place the lines, and what is read comes back as text."""
    sat = sit_at(STEP)
    part = sat.part("height")
    assert (part["kind"], part["axis"], part["span"], part["unit"]) == (
        "reading",
        "vertical",
        [-2.0, 4.0],
        "mm",
    )
    assert sat.form.figure["frame"] == {"x0_mm": 0.0, "x1_mm": 8.0, "y0_mm": -2.0, "y1_mm": 4.0}
    assert ALT in sat.form.figure["html"]


def test_a_reading_is_saved_and_marked(sit_at, right):
    """What the lines say is what the journal holds; the right distance finishes the exercise."""
    sat = sit_at(STEP)
    sat.submit({"height": {"from": "0", "to": "3.9"}})
    assert sat.part("height")["saved"] == {"from": "0", "to": "3.9"}
    assert sat.part("height")["feedback"]["sentences"][0] == "The lines are 3.9 mm apart."
    sat.submit(right(sat))
    assert sat.form.state["finished"]


def test_a_figure_follows_the_learner_and_the_round(sit_at, folder, right):
    """Fresh numbers and another name bring another figure."""
    sat = sit_at(STEP)
    first = sat.form.figure
    sat.submit(right(sat))
    assert sat.form.figure == first
    sat.say(kind="fresh")
    second = sat.form.figure
    save_learner(folder, "Somebody Else")
    sat.form.told("signed in")
    assert len({figure["html"] for figure in (first, second, sat.form.figure)}) == 3


def test_a_figure_that_fails_is_said_and_answers_are_still_saved(sit_at):
    """A fault of ours in a drawing takes nothing away from the learner."""
    broken = replace(JUDGE, figure=lambda scenario: Figure(name="collar", arguments={"sign_id": "no such"}))
    bank = SimpleNamespace(EXERCISES={broken.id: broken}, PAGES={}, BANK_VERSION="test")
    sat = sit_at(broken, bank)
    assert "could not be drawn" in sat.form.figure["problem"]
    assert sat.submit({"sign": "good"})["kind"] == "saved"


@pytest.mark.parametrize("fault", FAULT_NAMES)
def test_lines_on_a_section_meet_what_is_drawn(fault):
    """The frame's millimetres are those of the picture: outlines lie where it says, to 0.01 mm."""
    joint, _ = random_section(b"page 2 section 7", fault=fault)
    shown = FIGURES["section"](seed="page 2 section 7", fault=fault, measure="")
    view = [float(number) for number in re.search(r'viewBox="([^"]*)"', shown.picture.svg)[1].split()]
    drawn = np.array(
        [
            [float(number) for number in pair]
            for pair in re.findall(r"[ML] (-?[\d.]+) (-?[\d.]+)", shown.picture.svg)
        ]
    )
    frame = shown.frame
    across = frame.x0_mm + drawn[:, 0] / view[2] * (frame.x1_mm - frame.x0_mm)
    up = frame.y1_mm - drawn[:, 1] / view[3] * (frame.y1_mm - frame.y0_mm)
    for name, (x, y) in (
        ("tail_diameter_mm", measuring_places(joint, "interlock_left_mm")[1]),
        ("tail_diameter_mm", measuring_places(joint, "interlock_right_mm")[1]),
        ("button_depth_mm", measuring_places(joint, "button_depth_mm")[0]),
    ):
        assert np.min(np.hypot(across - x, up - y)) < 0.01, name


def test_a_figure_to_judge_names_no_fault():
    """The words of a section or a button do not give its fault away, nor a value that is to be read."""
    for fault in FAULT_NAMES:
        for name, more in (("section", {"measure": ""}), ("button", {})):
            words = FIGURES[name](seed="page 2 section 3", fault=fault, **more).picture.alt.lower()
            assert fault not in words
            assert "interlock" not in words
            assert "crack" not in words


@pytest.mark.parametrize(
    ("fault", "told"),
    [
        ("crack in button", r"its underside has a narrow notch 0\.[1-9]"),
        ("buckled shank", r"the outside of the shank turns inwards by 0\.\d"),
        ("sound", "the shank never turns inwards.*its underside has no notch"),
    ],
)
def test_words_of_a_section_tell_what_an_eye_would_find(fault, told):
    """Whoever hears the words instead of seeing the lines can judge the joint too."""
    words = FIGURES["section"](seed="page 2 section 3", fault=fault, measure="").picture.alt
    assert re.search(told, words)


def test_words_of_a_section_tell_where_the_plates_lie():
    """The distance of the plates follows from the places told, as it was built."""
    joint, _ = random_section(b"page 2 section 3", fault="plates gapped")
    words = FIGURES["section"](seed="page 2 section 3", fault="plates gapped", measure="").picture.alt
    found = re.search(r"the top plate ends at (\S+) and the second plate reaches from (\S+) to", words)
    top, second = (float(place.replace("\N{MINUS SIGN}", "-")) for place in found.groups())
    assert top - second == pytest.approx(measure(joint).gap_mm, abs=0.01)  # two places, each rounded to 0.005


def _judged_by_words(told, limit):
    """Judge the places of a flange by what its words tell and the limits of the prompt, by letter."""
    judged = {}
    for letter, *distances in re.findall(
        r"([A-F]) is (\S+) mm from the left end, (\S+) mm from the right end, (\S+) mm from the root "
        r"and (\S+) mm from the free edge, (\S+) mm from the nearest old site, and (\S+) mm along",
        told,
    ):
        left, right, root, free, site, along = map(float, distances)
        near_edge = min(left, right, free) < limit["edge"] or root < limit["root"]
        near = (near_edge, "edge"), (site < limit["site"], "old_site"), (along < limit["pitch"], "each_other")
        judged[letter.lower()] = next((name for broken, name in near if broken), "allowed")
    return judged


def test_words_of_a_flange_are_enough_to_judge_it():
    """Whoever hears the distances reaches the right verdict on every place, and hears no verdict."""
    seen = set()
    for number in range(0, 120, 13):
        numbers = {"shop": "a shop", "vehicle": "a car", "flange": number}
        told = FIGURES["flange"](**PLACE_FASTENERS.figure(numbers).arguments).picture.alt
        shown = words(PLACE_FASTENERS, numbers)
        limit = {name: float(shown[name]) for name in ("edge", "root", "site", "pitch")}
        (keys,) = row_keys(PLACE_FASTENERS, [numbers])
        assert _judged_by_words(told, limit) == keys["places"].right
        assert not re.search("near an|allowed|must", told)
        seen |= set(keys["places"].right.values())
    assert len(seen) == 4


def test_an_unknown_figure_is_named():
    """A name that no drawing has is refused with those that there are."""
    with pytest.raises(ValueError, match="figure must be one of button, collar.*got 'nothing'"):
        figure_state(Figure(name="nothing"))
    assert "collar" in FIGURES


@pytest.mark.parametrize("edges", [(1, 1, 0, 1), (0, 1, 2, 1)])
def test_a_frame_without_an_inside_is_refused(edges):
    """Lines could not be placed in it."""
    with pytest.raises(ValueError, match="frame must rise"):
        Frame(**dict(zip(("x0_mm", "x1_mm", "y0_mm", "y1_mm"), edges, strict=True)))


def test_what_the_lines_start_with_is_no_answer():
    """The browser sends nothing for lines that nobody moved."""
    (part,) = STEP.parts
    assert score_part(part, None, {}).outcome is Outcome.UNANSWERED
