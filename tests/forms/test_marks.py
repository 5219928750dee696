"""The mark that the gradebook's cell returns."""

import pytest

from exercise_forms.marks import mark
from grading.hand_in import save_learner

MARKED = "start_here.cautions"


def test_the_mark_is_the_plain_number_that_the_page_shows(desk, sit):
    """nbgrader gives full marks for anything that is not a plain number."""
    sat = sit(MARKED)
    sat.submit({"who_decides": "maker", "who_stays_out": ["implant"]})
    found = mark(MARKED, folder=desk.folder)
    assert type(found) is float
    assert sat.form.state["mark_text"] == f"Mark so far: {found:.4g} of 4 (provisional)."


@pytest.mark.parametrize(
    "journal",
    [None, b"", b"\xff\xfe\x00", b"[1, 2]\n", b'{"answers": NaN}\n', b"{" * 100_000, b'{"at": "2026'],
)
def test_no_journal_makes_the_cell_fail_or_speak(tmp_path, capfd, journal):
    """A raise stops Run All, and one word on standard error costs all points."""
    if journal is not None:
        (tmp_path / "answers.jsonl").write_bytes(journal)
    assert mark(MARKED, folder=tmp_path) == 0.0
    assert capfd.readouterr() == ("", "")


def test_practice_earns_nothing(desk, sit, right):
    """Answers without a name are kept and not marked."""
    (desk.folder / "learner.json").unlink()
    sat = sit(MARKED)
    sat.submit(right(sat))
    assert mark(MARKED, folder=desk.folder) == 0.0


def test_the_learner_of_the_last_answer_is_marked(desk, sit, right):
    """Two people at one computer: the one who answered last hands in."""
    sat = sit(MARKED)
    sat.submit(right(sat))
    save_learner(desk.folder, "Ben")
    sit(MARKED).submit({"who_decides": "workbook"})
    assert mark(MARKED, folder=desk.folder) == 0.0


def test_an_exercise_that_is_not_in_the_bank_is_refused(tmp_path):
    """A misspelt cell is the author's fault and must not pass for a mark of nought."""
    with pytest.raises(ValueError, match="exercise must be one of"):
        mark("start_here.cautoins", folder=tmp_path)
