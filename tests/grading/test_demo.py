"""The invented class: as mixed as a real one, the same every time, and careful with other people's files."""

import pytest

from grading.demo_class import DemoError, learner_name, write_demo_class
from grading.exercises import EXERCISES
from grading.hand_in import HandInError, learner_slug, read_hand_in
from grading.marking import mark_class
from grading.scoring import Outcome, mark_learner
from tests.grading.made_hand_ins import SETTINGS


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """Give the folder of an invented class of the usual size."""
    folder = tmp_path_factory.mktemp("class")
    write_demo_class(folder, SETTINGS, learners=24)
    return folder


def _read(folder):
    """Return the hand-ins that can be read and the files that cannot."""
    sound, broken = [], []
    for path in sorted(folder.glob("*.zip")):
        try:
            sound.append(read_hand_in(path))
        except HandInError:
            broken.append(path)
    return sound, broken


def test_it_is_a_class_with_its_usual_troubles(folder):
    """24 learners, one of them with two files, one broken file, some late."""
    sound, broken = _read(folder)
    assert len({each.learner for each in sound}) == 24
    assert len(sound) == 25
    assert len(broken) == 1
    due = SETTINGS.due
    late = [each for each in sound if each.made_at > due]
    assert 1 <= len(late) <= 5


def test_every_outcome_occurs(folder):
    """Right, partly right, slips, wrong, unread and unanswered parts all occur."""
    sound, _ = _read(folder)
    outcomes = {
        mark.latest.outcome
        for each in sound
        for exercise in mark_learner(each.records, SETTINGS).exercises.values()
        for mark in exercise.parts.values()
    }
    assert outcomes == set(Outcome) - {Outcome.ERROR}


def test_marks_are_those_of_a_real_class(folder):
    """The mean lies between half and nine tenths and the best learner is well above the worst."""
    points = [each.points for each in mark_class(sorted(folder.glob("*.zip")), SETTINGS).learners]
    maximum = sum(exercise.points for exercise in EXERCISES.values())
    assert 0.5 < sum(points) / len(points) / maximum < 0.9
    assert max(points) - min(points) > 0.2 * maximum


def test_the_same_class_every_time(folder, tmp_path):
    """Made again elsewhere, every learner has the same answers at the same times."""
    write_demo_class(tmp_path, SETTINGS, learners=24)
    assert _read(tmp_path)[0] == _read(folder)[0]


def test_making_it_again_leaves_no_learner_behind(tmp_path):
    """A smaller class in the same folder takes the place of a larger one."""
    write_demo_class(tmp_path, SETTINGS, learners=6)
    write_demo_class(tmp_path, SETTINGS, learners=4)
    assert len({each.learner for each in _read(tmp_path)[0]}) == 4


def test_other_files_are_left_alone(tmp_path):
    """A folder with real hand-ins in it is refused and nothing in it is touched."""
    (tmp_path / "hand_in_real.zip").write_bytes(b"precious")
    with pytest.raises(DemoError, match="must be empty or hold an invented class, found hand_in_real.zip"):
        write_demo_class(tmp_path, SETTINGS, learners=4)
    assert (tmp_path / "hand_in_real.zip").read_bytes() == b"precious"


def test_names_never_fall_together():
    """Five thousand learners have five thousand names, also as file names."""
    names = [learner_name(number) for number in range(5000)]
    assert len(set(names)) == len({learner_slug(name) for name in names}) == 5000
