"""Practical marks: read line by line of a rubric, entered as manual scores, a person's own left alone."""

from contextlib import suppress
from datetime import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from grading.changes import ChangeLog, change_score
from grading.gradebook import write_marks
from grading.gradebook_scores import read_scores
from grading.practical import PracticalError, append_judged, enter_practical, read_practical
from tests.grading.made_gradebook import PAGES, RUBRICS, SETTINGS, marks

HEAD = "learner,page,criterion,level,by,when,note\n"
FULL = (
    HEAD + "Ann Holt,bench,safe,2,R. Voss,2026-12-02,\nann,bench,weld,3,R. Voss,2026-12-02 15:30,straight\n"
)


@pytest.fixture
def gradebook(tmp_path):
    """Give the path of a gradebook with two learners, the second without this page."""
    path = tmp_path / "gradebook.db"
    nowhere = marks("bo", "Bo Ash")._replace(pages=())
    write_marks(path, [marks(), nowhere], pages=PAGES, settings=SETTINGS)
    return path


def _read(folder, text):
    """Write a table and read it."""
    path = folder / "practical.csv"
    path.write_text(text, encoding="utf-8")
    return read_practical(path, RUBRICS)


def _enter(gradebook, text):
    """Enter a table."""
    rows, problems = _read(gradebook.parent, text)
    assert problems == []
    return enter_practical(gradebook, rows, rubrics=RUBRICS, pages=PAGES, settings=SETTINGS)


def test_a_judged_practical_joins_the_written_marks(gradebook):
    """The sum counts beside the automatic marks, nothing waits, and the log says by whom."""
    done = _enter(gradebook, FULL)
    assert done.entered == {("ann", "bench-practical"): 5.0}
    ann, _ = read_scores(gradebook)
    assert ann.scores == {"bench-one": 1.5, "bench-two": 0.0, "bench-practical": 5.0}
    assert ann.waiting == set()
    (logged,) = ChangeLog(gradebook.with_name("changes.csv")).read()
    assert (logged.after, logged.by, logged.why) == (5.0, "R. Voss", "practical by its rubric, 2026-12-02")


def test_entering_again_changes_nothing(gradebook):
    """The same table a second time is known to be there."""
    _enter(gradebook, FULL)
    done = _enter(gradebook, FULL)
    assert (done.entered, done.same) == ({}, 1)
    assert len(ChangeLog(gradebook.with_name("changes.csv")).read()) == 1


def test_a_later_row_takes_the_place_of_an_earlier_one(gradebook):
    """The latest day counts, and on one day the later row, wherever the earlier ones stand."""
    more = "ann,bench,weld,4,N. Ode,2026-12-09,\nann,bench,weld,1,N. Ode,2026-12-01,\n"
    assert _enter(gradebook, FULL + more).entered == {("ann", "bench-practical"): 6.0}
    more += "ann,bench,weld,0,N. Ode,2026-12-09,\n"
    assert _enter(gradebook, FULL + more).entered == {("ann", "bench-practical"): 2.0}


def test_a_line_not_judged_keeps_the_practical_waiting(gradebook):
    """With one line of two judged nothing is entered; an unsafe act is entered at once."""
    done = _enter(gradebook, HEAD + "ann,bench,weld,3,V,2026-12-02,\n")
    assert done.waiting == ("ann bench: 1 of 2 lines are judged",)
    assert read_scores(gradebook)[0].waiting == {"bench-practical"}
    assert _enter(gradebook, HEAD + "ann,bench,safe,0,V,2026-12-02,\n").entered == {
        ("ann", "bench-practical"): 0.0
    }


def test_who_was_at_the_bench_before_handing_in_gets_a_place(gradebook):
    """A learner without the page gets it with nothing earned, and handing in later keeps the practical."""
    _enter(gradebook, FULL.replace("Ann Holt", "bo").replace("ann,", "Bo Ash,"))
    bo = read_scores(gradebook)[1]
    assert (bo.name, bo.scores, bo.waiting, bo.handed_in) == (
        "Bo Ash",
        {"bench-one": 0.0, "bench-two": 0.0, "bench-practical": 5.0},
        set(),
        None,
    )
    write_marks(gradebook, [marks("bo", "Bo Ash", two=2.0)], pages=PAGES, settings=SETTINGS)
    bo = read_scores(gradebook)[1]
    assert sum(bo.scores.values()) == 8.5
    assert bo.handed_in == datetime(2026, 12, 1, 9, 30)


def test_a_score_given_by_hand_is_left_alone(gradebook):
    """What a person gave after the rubric stays and is named; taken back, the rubric counts again."""
    _enter(gradebook, FULL)
    by_hand = {"learner": "ann", "item": "bench-practical", "by": "N. Ode", "why": "seen on film"}
    change_score(gradebook, points=1.0, **by_hand)
    done = _enter(gradebook, FULL)
    assert done.kept == ("ann bench-practical: 1 stays, the rubric comes to 5",)
    assert read_scores(gradebook)[0].scores["bench-practical"] == 1.0
    change_score(gradebook, points=None, **by_hand)
    assert _enter(gradebook, FULL).entered == {("ann", "bench-practical"): 5.0}


@pytest.mark.parametrize(
    ("row", "sentence"),
    [
        (",bench,weld,3,V,2026-12-02,", "line 3: learner must be a name of 1 to 200 characters, got ''"),
        ("ann,bank,weld,3,V,2026-12-02,", "line 3: page must be one of bench, got 'bank'"),
        ("ann,bench,weldd,3,V,2026-12-02,", "line 3: criterion must be one of safe, weld, got 'weldd'"),
        ("ann,bench,weld,5,V,2026-12-02,", "line 3: level must be a whole number from 0 to 4, got '5'"),
        ("ann,bench,weld,2.5,V,2026-12-02,", "line 3: level must be a whole number from 0 to 4, got '2.5'"),
        ("ann,bench,weld,\u0663,V,2026-12-02,", "line 3: level must be a whole number"),
        ("ann,bench,weld,3,,2026-12-02,", "line 3: by must be a name of 1 to 200 characters, got ''"),
        ("ann,bench,weld,3,V,2 Dec,", "line 3: when must be a date such as 2026-11-20.*, got '2 Dec'"),
        ("ann,,,,V,2026-12-02", "line 3: page must be one of bench, got ''"),
    ],
)
def test_a_mistake_is_named_with_its_line(tmp_path, row, sentence):
    """Each mistake is one sentence with its line, and the other rows are read."""
    rows, (problem,) = _read(
        tmp_path, f"{HEAD}ann,bench,safe,2,V,2026-12-02,\n{row}\n\nann,bench,weld,1,V,2026-12-02\n"
    )
    assert [each.line for each in rows] == [2, 5]
    with pytest.raises(PracticalError, match=f"practical.csv {sentence}"):
        raise PracticalError(problem)


def test_lines_are_counted_as_an_editor_counts_them(tmp_path):
    """A note over two lines does not shift the numbers of the lines after it."""
    _, (problem,) = _read(
        tmp_path, HEAD + 'ann,bench,safe,2,V,2026-12-02,"two\nlines"\nann,bench,weld,9,V,2026-12-02,\n'
    )
    assert "line 4: level" in problem


def test_a_table_of_a_spreadsheet_is_read(tmp_path):
    """Semicolons, a byte order mark, other columns between and an apostrophe in front do no harm."""
    text = "\ufeffwhen;learner;room;page;criterion;level;by\r\n2026-12-02;'=Ann;3;bench;weld;3;V\r\n"
    (row,), problems = _read(tmp_path, text)
    assert (row.learner, row.level, problems) == ("=Ann", 3, [])


def test_a_table_without_its_columns_is_refused(tmp_path):
    """A missing column and a file that is no text are refused as a whole."""
    with pytest.raises(PracticalError, match="line 1: the columns must be .*, found no level"):
        _read(tmp_path, "learner,page,criterion,by,when\n")
    (tmp_path / "x.csv").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(PracticalError, match="x.csv must be UTF-8 text"):
        read_practical(tmp_path / "x.csv", RUBRICS)


def test_an_unknown_learner_is_named_with_the_line(gradebook):
    """A name that nobody has refuses the table, nearest name told, and nothing is entered."""
    with pytest.raises(
        PracticalError, match="practical.csv line 2: learner must be .* nearest name is 'ann holt'"
    ):
        _enter(gradebook, FULL.replace("Ann Holt", "Anne Holt"))
    assert read_scores(gradebook)[0].waiting == {"bench-practical"}


def test_appended_rows_come_back(tmp_path):
    """Rows added twice stand in one table under one header, formulas made harmless."""
    path = tmp_path / "practical.csv"
    append_judged(path, [("=Ann", "bench", "safe", 2, "V", "2026-12-02", "=1+1")])
    append_judged(path, [("ann", "bench", "weld", 4, "V", "2026-12-02", "")])
    rows, problems = read_practical(path, RUBRICS)
    assert [(row.learner, row.level) for row in rows] == [("=Ann", 2), ("ann", 4)]
    assert problems == []
    assert "'=1+1" in path.read_text(encoding="utf-8-sig")
    path.write_text("learner,level\n")
    with pytest.raises(PracticalError, match="line 1: the columns must be"):
        append_judged(path, [("ann", "bench", "weld", 4, "V", "2026-12-02", "")])
    path.write_text(HEAD + "ann,be")
    with pytest.raises(PracticalError, match="must end with a whole line"):
        append_judged(path, [("ann", "bench", "weld", 4, "V", "2026-12-02", "")])


@given(
    st.binary(max_size=400) | st.text(max_size=400).map(lambda text: (HEAD + text).encode("utf-8", "replace"))
)
def test_no_table_breaks_the_reader(tmp_path_factory, data):
    """Whatever the file holds, it is read, or refused in a sentence."""
    path = tmp_path_factory.mktemp("table") / "practical.csv"
    path.write_bytes(data)
    rows, problems = (), ()
    with suppress(PracticalError):
        rows, problems = read_practical(path, RUBRICS)
    assert all(each.startswith("practical.csv line ") for each in problems)
    assert all(row.level <= 4 for row in rows)
