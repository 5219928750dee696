"""Marking many hand-ins: the same marks one by one or together, in one process or in several."""

from dataclasses import replace
from datetime import timedelta

import pytest

from grading import marking
from grading.answers import journal_bytes
from grading.demo_class import write_demo_class
from grading.exercises import EXERCISES
from grading.hand_in import read_hand_in
from grading.hand_ins import NoHandInsError, hand_in_files, merge_hand_ins
from grading.marking import mark_class
from grading.scoring import mark_learner
from tests.grading.made_hand_ins import (
    MADE_AT,
    MAXIMUM,
    SETTINGS,
    journals,
    manifest,
    raw_hand_in,
    right_hand_in,
    right_records,
    zipped,
)


@pytest.fixture(scope="module")
def demo_files(tmp_path_factory):
    """Give the files of an invented class of thirty."""
    return write_demo_class(tmp_path_factory.mktemp("class"), SETTINGS, learners=30)


def test_right_answers_earn_everything(tmp_path):
    """A learner who is right everywhere at the first try earns every point, and nothing is reported."""
    result = mark_class([right_hand_in(tmp_path, "Mara Quillby")], SETTINGS)
    (mara,) = result.learners
    assert mara.points == pytest.approx(MAXIMUM, abs=1e-9), "sums of floats"
    assert mara.marks.points == {each.id: each.points for each in EXERCISES.values() if each.counts}
    assert (mara.marks.first_name, mara.marks.last_name) == ("Mara", "Quillby")
    assert result.problems == ()
    assert result.slip_counts == []


def test_class_and_page_agree(demo_files):
    """Every learner's marks are those that the page's own function gives for the same records."""
    result = mark_class(demo_files[:12], SETTINGS)
    assert len(result.learners) >= 10
    for each in result.learners:
        records = [record for path in each.paths for record in read_hand_in(path).records]
        if len(each.paths) == 1:
            alone = mark_learner(records, SETTINGS)
            assert each.points == alone.points
            assert each.marks.points == {
                name: one.points
                for name, one in alone.exercises.items()
                if EXERCISES[name].counts and one.submissions
            }
            assert all(one.points == 0.0 for one in alone.exercises.values() if not one.submissions)


def test_processes_and_chunks_change_nothing(demo_files, monkeypatch):
    """Two processes with small chunks give the marks, problems and slips of one process with one chunk."""
    whole = mark_class(demo_files, SETTINGS)
    monkeypatch.setattr(marking, "CHUNK", 4)
    monkeypatch.setattr(marking, "WORTH_PROCESSES", 1)
    assert mark_class(demo_files, SETTINGS, processes=2) == whole
    assert mark_class(reversed(demo_files), SETTINGS, processes=1) == whole


def test_progress_reaches_the_end(demo_files):
    """Progress is told in numbers that rise to the count of files."""
    told = []
    mark_class(demo_files, SETTINGS, progress=lambda done, total: told.append((done, total)))
    assert told[-1] == (len(demo_files), len(demo_files))
    assert told == sorted(told)


def test_two_hand_ins_are_put_together(tmp_path):
    """Half of the answers in each of two files make the whole, once, under the later time; it is reported."""
    records = right_records("Bram Saltby")
    half = len(records) // 2
    raw_hand_in(tmp_path, "Bram Saltby", journals(records[:half]), made_at=MADE_AT)
    raw_hand_in(tmp_path, "Bram Saltby", journals(records[half - 3 :]), made_at=MADE_AT + timedelta(days=1))
    result = mark_class(hand_in_files(tmp_path), SETTINGS)
    (bram,) = result.learners
    assert bram.points == pytest.approx(MAXIMUM, abs=1e-9), "sums of floats"
    assert bram.marks.handed_in == (MADE_AT + timedelta(days=1)).replace(tzinfo=None)
    assert [each.kind for each in result.problems].count("several hand-ins") == 1


def test_hand_ins_in_different_chunks_are_put_together(tmp_path, monkeypatch):
    """It does not matter that the two files of one learner were read by different processes."""
    records = right_records("Bram Saltby")
    raw_hand_in(tmp_path, "Bram Saltby", journals(records[:4]), file_name="a.zip")
    right_hand_in(tmp_path, "Mara Quillby", file_name="m.zip")
    raw_hand_in(tmp_path, "Bram Saltby", journals(records[4:]), file_name="z.zip")
    together = mark_class(hand_in_files(tmp_path), SETTINGS)
    monkeypatch.setattr(marking, "CHUNK", 1)
    given = []
    assert mark_class(hand_in_files(tmp_path), SETTINGS, taken=given.extend) == together
    assert len(together.learners) == 2
    assert [each.first_name for each in given] == ["Bram", "Mara", "Bram", "Bram"]
    last = {each.student_id: each for each in given}
    assert sorted(last.values()) == [each.marks for each in together.learners], "the whole comes last"


def test_merging_keeps_each_journal_in_order(tmp_path):
    """A computer whose clock jumped back does not turn a learner's tries round."""
    records = right_records("Ilse Grost", exercises=["stud_welding.arc_energy"] * 3)
    for record, minute in zip(records, (30, 10, 20), strict=True):
        record["at"] = (MADE_AT - timedelta(minutes=minute)).isoformat(timespec="milliseconds")
        record["answers"] = {"energy": f"{minute} J"}
    paths = [
        raw_hand_in(tmp_path, "Ilse Grost", journals(part), file_name=name)
        for part, name in ((records, "all.zip"), (records[:2], "early.zip"))
    ]
    merged, _ = merge_hand_ins([(path, read_hand_in(path)) for path in paths])
    assert [each.answers["energy"] for each in merged.records] == ["30 J", "10 J", "20 J"]


def test_only_pages_that_were_handed_in_count_as_submitted(tmp_path):
    """A page without a journal and without a written answer is no submission."""
    records = [each for each in right_records("Noor Merrin") if each["page"] == "start_here"]
    raw_hand_in(tmp_path, "Noor Merrin", journals(records))
    assert mark_class(hand_in_files(tmp_path), SETTINGS).learners[0].marks.pages == ("start_here",)


def test_answers_of_others_count_for_nobody(tmp_path):
    """Records of another learner and of another class in one's journal are reported and earn nothing."""
    mine, theirs = right_records("Mara Quillby"), right_records("Bram Saltby")
    other_class = [{**each, "course": "elsewhere"} for each in mine]
    raw_hand_in(tmp_path, "Mara Quillby", {"stud_welding": journal_bytes([*theirs, *other_class])})
    result = mark_class(hand_in_files(tmp_path), SETTINGS)
    assert result.learners[0].points == 0.0
    assert {"other learner", "other course"} <= {each.kind for each in result.problems}


def test_a_fault_of_ours_is_no_zero(tmp_path, monkeypatch):
    """Where an exercise cannot be solved its mark is None, a problem says so, and the rest is marked."""
    broken = "stud_welding.arc_energy"
    path = right_hand_in(tmp_path, "Mara Quillby")

    def fail(table):
        message = "no such table"
        raise ValueError(message)

    exercise = EXERCISES[broken]
    monkeypatch.setitem(EXERCISES, broken, replace(exercise, solve=fail))
    result = mark_class([path], SETTINGS)
    (mara,) = result.learners
    assert mara.marks.points[broken] is None
    assert mara.points == pytest.approx(MAXIMUM - exercise.points, abs=1e-9), "sums of floats"
    assert [each.kind for each in result.problems] == ["broken exercise"]


def test_odd_times_are_told(tmp_path):
    """A hand-in that names no usable time is marked, and the time is reported as not known."""
    right_hand_in(tmp_path, "Mara Quillby", file_name="h.zip")
    path = tmp_path / "h.zip"
    for odd in ("yesterday", "0001-01-01T00:00:00+14:00", "\ud800"):
        members = {
            "hand_in.json": manifest("Mara Quillby", made_at=odd),
            **{
                f"answers/{page}.jsonl": data
                for page, data in journals(right_records("Mara Quillby")).items()
            },
        }
        result = mark_class([zipped(path, members)], SETTINGS)
        assert result.learners[0].marks.handed_in is None
        assert "names no usable time" in result.problems[0].sentence


def test_files_are_found_in_folders_of_folders(tmp_path):
    """Files are found at any depth; what a system leaves behind is passed over."""
    (tmp_path / "mara").mkdir()
    (tmp_path / "__MACOSX").mkdir()
    for name in ("b.zip", "mara/a.zip", ".DS_Store", "__MACOSX/x.zip"):
        (tmp_path / name).write_bytes(b"")
    assert [path.relative_to(tmp_path).as_posix() for path in hand_in_files(tmp_path)] == [
        "b.zip",
        "mara/a.zip",
    ]
    assert hand_in_files(tmp_path / "b.zip") == [tmp_path / "b.zip"]


def test_nothing_to_mark_is_one_sentence(tmp_path):
    """A folder that is empty or not there says so."""
    with pytest.raises(NoHandInsError, match="must hold at least one hand-in, found none"):
        hand_in_files(tmp_path)
    with pytest.raises(NoHandInsError, match="must be a folder or a file, found nothing at"):
        hand_in_files(tmp_path / "nowhere")
