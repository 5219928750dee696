"""Sign-in, progress and hand-in: what they say, what they write, what they tell the other forms."""

import pytest

from exercise_forms.desk import Desk
from exercise_forms.hand_in_form import HandInForm
from exercise_forms.sign_in_form import SignInForm
from exercise_forms.summary_form import SummaryForm
from grading.exercises import PAGES
from grading.hand_in import read_hand_in

MARKED = "start_here.cautions"


@pytest.fixture
def empty_desk(tmp_path):
    """Return a desk at which nobody is signed in."""
    place = tmp_path / "nobody"
    place.mkdir()
    (place / "0_start_here.ipynb").write_text("{}", encoding="utf-8")
    return Desk(place)


def test_signing_in_gives_every_form_its_own_numbers(empty_desk, sit, wrap):
    """Practice numbers are said to be practice; after sign-in they are gone."""
    exercise = sit(MARKED, at=empty_desk)
    assert exercise.form.state["notes"][0].startswith("Practice numbers")
    reply = wrap(SignInForm(empty_desk)).say(kind="sign in", name="  Ana   17 ")
    assert reply["sentence"] == "Saved. Welcome, Ana 17."
    assert exercise.form.state["notes"] == []
    assert "ana 17" in exercise.form.state["key"]


@pytest.mark.parametrize("name", ["", "   ", "x" * 500])
def test_a_name_that_cannot_be_used_is_refused_in_a_sentence(empty_desk, wrap, name):
    """Nobody is signed in then, and no file is left behind."""
    reply = wrap(SignInForm(empty_desk)).say(kind="sign in", name=name)
    assert (reply["kind"], reply["sentence"][:15]) == ("problem", "Not signed in. ")
    assert not (empty_desk.folder / "learner.json").exists()


def test_a_broken_learner_file_is_said(empty_desk):
    """The page goes on with practice numbers and says why."""
    (empty_desk.folder / "learner.json").write_text("{", encoding="utf-8")
    assert "sign in again" in SignInForm(empty_desk).state["sentence"]


def test_progress_follows_an_answer(desk, sit, right):
    """The points in the summary are those under the exercise, as soon as it is answered."""
    page = PAGES["start_here"]
    summary = desk.put("summary", SummaryForm(desk, page))
    assert summary.state["total"] == "0 of 4 points so far."
    sat = sit(MARKED)
    sat.submit(right(sat))
    assert summary.state["total"] == "4 of 4 points so far."
    assert summary.state["objectives"][1]["exercises"] == [
        {"title": "What comes first?", "state": "finished, 4 of 4 points"}
    ]


def test_progress_tells_what_the_journal_reports(desk, sit):
    """A torn last line is set aside, and the learner hears of it once."""
    sit(MARKED).submit({"who_decides": "maker"})
    with desk.journal.path.open("ab") as journal:
        journal.write(b'{"at": "2026')
    notes = SummaryForm(desk, PAGES["start_here"]).state["notes"]
    assert len([note for note in notes if "last line" in note]) == 1


def test_handing_in_without_a_name_says_what_to_do(empty_desk, wrap):
    """Practice is never packed."""
    reply = wrap(HandInForm(empty_desk)).say(kind="hand in")
    assert reply["kind"] == "problem"
    assert reply["sentence"].startswith("No file was made. Nobody is signed in")


def test_handing_in_names_the_file_and_its_folder(desk, sit, wrap):
    """The file that is named is there, is ours, and holds the answer."""
    sit(MARKED).submit({"who_decides": "maker"})
    reply = wrap(HandInForm(desk)).say(kind="hand in")
    assert reply["folder"] == str(desk.folder)
    hand_in = read_hand_in(desk.folder / reply["file"])
    assert hand_in.display_name == "Ana 17"
    assert [record.answers for record in hand_in.records] == [{"who_decides": "maker"}]
