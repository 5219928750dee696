"""Who needs a talk: each rule names those whom it should, and nobody else."""

from dataclasses import replace

import pytest

from grading.class_tables import class_tables
from grading.class_talks import SAFETY, safety_talks, talks
from grading.class_work import LONGEST_PAUSE_S, seconds_between_saves
from grading.exercises import EXERCISES, PAGES
from grading.gradebook import cell_name
from grading.slip_notes import slip_notes
from tests.grading.made_classes import made_class


def _talks(students, work):
    """Return the reasons of each row that a rule names."""
    return {talk.row: " ".join(talk.reasons) for talk in talks(class_tables(students, work))}


def _good(learners=4, **given):
    """Return a class in which everybody is right everywhere."""
    return made_class(learners, skill=[1.0] * learners, **given)


def test_a_class_without_trouble_names_nobody():
    """Where everything is right no rule names anybody."""
    students, work = _good()
    assert _talks(students, work) == {}
    assert safety_talks(class_tables(students, work)) == []


def test_safety_objectives_are_there():
    """The objectives that the rule looks at exist and carry marks."""
    for page, objective in SAFETY:
        assert objective in PAGES[page].objectives
        assert any(each.objective == objective and each.counts for each in PAGES[page].exercises)


def test_weak_in_safety_comes_first_whatever_the_marks():
    """Somebody who is right everywhere but in safety is named before the bench, and by no other rule."""
    students, work = _good()
    for each in PAGES["stud_welding"].exercises:
        if each.objective == "safety" and each.counts:
            students[1].scores[cell_name(each.id)] = 0.6 * each.points
    (talk,) = safety_talks(class_tables(students, work))
    assert (talk.row, talk.reasons) == (1, ("safety 60 %",))
    assert _talks(students, work) == {}


def test_few_points_and_weak_objectives():
    """Somebody who is wrong everywhere is named for the sum and for the objectives."""
    students, work = made_class(4, skill=[1.0, 1.0, 0.0, 1.0])
    reasons = _talks(students, work)
    assert list(reasons) == [2]
    assert "0 % of the points of the pages handed in" in reasons[2]
    assert "below half in 10 of 10 objectives (cautions, set up," in reasons[2]
    answered = sum(each.page in ("start_here", "stud_welding") for each in EXERCISES.values() if each.counts)
    assert f"all tries used in {answered} of {answered} exercises" in reasons[2]


def test_a_missing_page():
    """A page that most handed in is missed; one that only somebody handed in early is not."""
    students, work = _good()
    late_page = [name for name in students[0].scores if name.startswith("stud_welding")]
    for name in late_page:
        del students[3].scores[name]
    assert _talks(students, work) == {3: "not handed in: Stud welding a pull stud"}
    for row in (1, 2):
        for name in late_page:
            del students[row].scores[name]
    assert _talks(students, work) == {}


def test_one_misunderstanding_in_several_exercises():
    """Slips of one row of the notes in three exercises are one misunderstanding, told in the note's words."""
    rows = {}
    for slip, note in slip_notes().items():
        if slip.partition(".")[0] in PAGES:
            rows.setdefault(note, {})[slip.rsplit(".", 2)[0]] = slip
    note, slips = next((note, slips) for note, slips in rows.items() if len(slips) >= 3)
    three = list(slips.values())[:3]
    students, work = _good(slips=[three, three[:2], [], []])
    assert _talks(students, work) == {0: f"one misunderstanding in 3 exercises: {note.behind}"}


def test_late():
    """A late hand-in is named."""
    assert _talks(*_good(late={1})) == {1: "handed in late"}


def test_marks_changed_by_a_person_count():
    """Tables take the scores of the gradebook, and leave out what still waits for a person."""
    students, work = _good()
    exercise = "stud_welding.cylinder"
    students[0].scores[cell_name(exercise)] = 0.0
    tables = class_tables(students, work)
    place = tables.exercises.index(exercise)
    assert tables.points[0, place] == 0
    students[0].waiting.add(cell_name(exercise))
    tables = class_tables(students, work)
    assert tables.points[0, place] != tables.points[0, place], "a gap"
    found, left_out = tables.set_of(["stud_welding"])
    assert left_out == [exercise]
    assert found.learners == 4


def test_exercises_of_another_bank_are_left_out():
    """Work that was kept with other exercises is read by name."""
    students, work = _good()
    fewer = replace(
        work,
        exercises=work.exercises[1:],
        learners=tuple(
            replace(
                each, **{name: getattr(each, name)[1:] for name in ("tries", "rounds", "at_once", "seconds")}
            )
            for each in work.learners
        ),
    )
    assert (class_tables(students, fewer).tries == class_tables(students, work).tries).all()


class _Save:
    """One saved answer: when, and to what."""

    def __init__(self, at, exercise):
        self.at, self.exercise = at, exercise


@pytest.mark.parametrize(
    ("saves", "seconds"),
    [
        ([], {}),
        ([("10:00:00", "a")], {}),
        ([("10:00:00", "a"), ("10:01:30", "b"), ("10:02:00", "a")], {"b": 90, "a": 30}),
        ([("10:02:00", "a"), ("10:00:00", "b")], {"a": 120}),
        ([("10:00:00", "a"), ("10:20:00", "b")], {"b": LONGEST_PAUSE_S}),
        ([("10:00:00", "a"), ("10:20:01", "b")], {}),
        ([("10:00:00", "a"), ("sometime", "b"), ("10:00:10", "c")], {"c": 10}),
    ],
)
def test_time_between_saves(saves, seconds):
    """Time goes from save to save in the order of the clock; pauses and nonsense count for nothing."""
    records = [_Save(f"2026-12-01T{at}+00:00" if at[0].isdigit() else at, name) for at, name in saves]
    assert seconds_between_saves(records) == seconds
