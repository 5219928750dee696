"""Hand-ins: a round trip, and what strangers may pack without harm."""

import json
import re
import time
import zipfile
from datetime import UTC, datetime

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from grading import hand_in
from grading.hand_in import HandInError, pack_hand_in, read_hand_in, save_learner
from grading.journal import Journal
from tests.grading.made_archives import MANIFEST
from tests.grading.made_notebooks import practical_notebook

NOW = datetime(2026, 11, 25, 8, 30, 15, tzinfo=UTC)


@pytest.fixture
def workbook(tmp_path, small_page):
    """Return a workbook with one page, signed in, with three answers and a written one."""
    folder = tmp_path / "work book"
    page = folder / small_page.folder
    page.mkdir(parents=True)
    save_learner(folder, " Ann  Lee ")
    for number in range(3):
        Journal(page / "answers.jsonl").append(
            learner="ann lee",
            course="test-class",
            page="arcs",
            exercise="arcs.energy",
            round_number=1,
            bank="test",
            scenario="0" * 16,
            answers={"energy": f"{number} J"},
        )
    (page / "arcs.ipynb").write_text(
        practical_notebook(["I welded *one* stud,\n", "then pulled it."]), encoding="utf-8"
    )
    return folder


@pytest.fixture
def pack(workbook, small_page, class_settings, tmp_path):
    """Return a function that packs the workbook."""

    def packed(**how):
        how = {
            "pages": {"arcs": small_page},
            "bank_version": "test",
            "settings": class_settings,
            "now": NOW,
            **how,
        }
        return pack_hand_in(workbook, tmp_path, **how)

    return packed


def test_round_trip(pack):
    """What is packed is read: who, which class, when, every record and the written answer."""
    path = pack()
    assert path.name.startswith("hand_in_ann_lee_")
    assert path.name.endswith("_20261125_083015.zip")
    got = read_hand_in(path)
    assert (got.learner, got.display_name, got.course, got.bank) == (
        "ann lee",
        "Ann Lee",
        "test-class",
        "test",
    )
    assert got.made_at == "2026-11-25T08:30:15+00:00"
    assert [record.answers["energy"] for record in got.records] == ["0 J", "1 J", "2 J"]
    assert got.written == {"arcs": "I welded *one* stud,\nthen pulled it."}
    assert got.problems == ()
    assert list(path.parent.glob("*.new")) == []


def test_only_the_written_answer_of_a_notebook_is_packed(pack):
    """The learner's code and outputs stay at home, and what is packed is a valid small notebook."""
    with zipfile.ZipFile(pack()) as archive:
        notebook = json.loads(archive.read("pages/arcs.ipynb"))
        assert sorted(archive.namelist()) == ["answers/arcs.jsonl", "hand_in.json", "pages/arcs.ipynb"]
    assert len(notebook["cells"]) == 1
    assert "SystemExit" not in json.dumps(notebook)
    import nbformat

    nbformat.validate(notebook)


def test_a_whole_notebook_is_read_too(make_zip):
    """Somebody who packs by hand may put the whole notebook in."""
    assert read_hand_in(make_zip([("pages/arcs.ipynb", practical_notebook("all of it"))])).written == {
        "arcs": "all of it"
    }


def test_nobody_signed_in_cannot_hand_in(pack, workbook):
    """Practice is not handed in; the sentence says what to do."""
    (workbook / "learner.json").unlink()
    with pytest.raises(HandInError, match="nobody is signed in: sign in on the first page, then hand in"):
        pack()
    (workbook / "learner.json").write_text("{")
    with pytest.raises(
        HandInError, match="learner.json cannot be read, so nobody is signed in: sign in again"
    ):
        pack()


def test_nothing_saved_cannot_be_handed_in(pack, workbook):
    """Without a saved answer there is nothing to mark."""
    (workbook / "1_arcs" / "answers.jsonl").unlink()
    with pytest.raises(HandInError, match="there are no saved answers to hand in yet"):
        pack()


def test_a_journal_that_grew_past_the_limit_is_said(pack, workbook):
    """A file that reading would refuse is not made in the first place."""
    (workbook / "1_arcs" / "answers.jsonl").write_bytes(b"x" * 2_000_001)
    with pytest.raises(
        HandInError, match=r"answers/arcs.jsonl must be at most 2,000,000 bytes .*, got 2,000,001"
    ):
        pack()


def test_a_folder_that_cannot_be_written_is_said(workbook, small_page, class_settings, tmp_path):
    """The learner is told where the file could not be put."""
    with pytest.raises(HandInError, match="the hand-in cannot be written to .*nowhere"):
        pack_hand_in(workbook, tmp_path / "nowhere", pages={"arcs": small_page}, settings=class_settings)


@pytest.mark.parametrize(
    "name", ["=cmd()", "<script>alert(1)</script>", "Zo\u00eb O'Neil", "\u674e\u5c0f\u9f99", "a" * 80]
)
def test_names_are_kept_as_they_are(workbook, pack, name):
    """A name that means something to a spreadsheet or a browser is data; it comes back letter by letter."""
    save_learner(workbook, name)
    got = read_hand_in(pack())
    assert got.display_name == name


@pytest.mark.parametrize(
    ("members", "manifest", "sentence"),
    [
        ([("../../x", "x")], MANIFEST, "it holds '../../x', which has no place in one"),
        ([("/etc/passwd", "x")], MANIFEST, "it holds '/etc/passwd'"),
        ([("answers/../arcs.jsonl", "x")], MANIFEST, "has no place in one"),
        ([("answers\\arcs.jsonl", "x")], MANIFEST, "has no place in one"),
        ([("C:arcs.jsonl", "x")], MANIFEST, "has no place in one"),
        ([("answers/arcs.ipynb", "x")], MANIFEST, "has no place in one"),
        ([("answers/arcs.jsonl.exe", "x")], MANIFEST, "has no place in one"),
        ([("answers/ARCS.jsonl", "x")], MANIFEST, "has no place in one"),
        ([("pages/arcs.py", "x")], MANIFEST, "has no place in one"),
        (
            [("answers/arcs.jsonl", ""), ("answers/arcs.jsonl", "")],
            MANIFEST,
            "it holds two files of the same name",
        ),
        ([(f"answers/a{n}.jsonl", "") for n in range(70)], MANIFEST, "it must hold at most 64 files, got 71"),
        ([], None, "the file is no zip archive|it holds no hand_in.json"),
        ([("answers/arcs.jsonl", "")], None, "it holds no hand_in.json"),
        ([], "{", "hand_in.json cannot be read"),
        ([], "[" * 50_000, "hand_in.json cannot be read"),
        ([], "9" * 10_000, "hand_in.json cannot be read"),
        ([], [], "hand_in.json does not say that it is one"),
        ([], {}, "hand_in.json does not say that it is one"),
        ([], {**MANIFEST, "version": 2}, "this hand-in has version 2, and this copy reads version 1"),
        ([], {**MANIFEST, "learner": None}, "hand_in.json names no usable learner"),
        ([], {**MANIFEST, "course": ["x"]}, "hand_in.json names no usable course"),
        ([], {**MANIFEST, "display_name": "x" * 1000}, "hand_in.json names no usable display_name"),
        ([], {**MANIFEST, "learner": " "}, "this hand-in names no learner: it was made without signing in"),
        (
            [("answers/arcs.jsonl", b"0" * 2_000_001)],
            MANIFEST,
            "answers/arcs.jsonl must be at most 2,000,000 bytes",
        ),
        ([], b" " * 70_000, "hand_in.json must be at most 64,000 bytes"),
    ],
)
@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_what_is_not_a_hand_in_is_refused_in_one_sentence(make_zip, members, manifest, sentence):
    """A strange path, a doubled name, a missing or odd manifest, or too much of anything is refused."""
    with pytest.raises(HandInError, match=sentence) as refusal:
        read_hand_in(make_zip(members, manifest=manifest))
    assert "\n" not in str(refusal.value)
    assert len(str(refusal.value)) < 200


def test_files_that_are_no_archive_are_refused(tmp_path):
    """A text, an empty file, a folder and a file that is not there each get their sentence."""
    path = tmp_path / "x.zip"
    for content in (b"", b"hello", b"PK\x03\x04", b"\x00" * 1000):
        path.write_bytes(content)
        with pytest.raises(HandInError, match="the file is no zip archive, or its end is missing"):
            read_hand_in(path)
    with pytest.raises(HandInError, match="gone.zip cannot be read"):
        read_hand_in(tmp_path / "gone.zip")
    with pytest.raises(HandInError, match="is not a file"):
        read_hand_in(tmp_path)


def test_every_truncation_is_refused(pack):
    """Cut a hand-in anywhere: one sentence, never half of the answers."""
    path = pack()
    data = path.read_bytes()
    for cut in range(0, len(data), 11):
        path.write_bytes(data[:cut])
        with pytest.raises(HandInError, match="no zip archive, or its end is missing|is damaged"):
            read_hand_in(path)


@given(data=st.data())
@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_no_changed_byte_crashes_the_reading_or_changes_an_answer(pack, data):
    """Change some bytes of a hand-in: it is refused in words, or read with the answers that were saved."""
    path = pack()
    whole = path.read_bytes()
    changed = bytearray(whole)
    for place in data.draw(st.lists(st.integers(0, len(whole) - 1), min_size=1, max_size=4)):
        changed[place] = data.draw(st.integers(0, 255))
    path.write_bytes(bytes(changed))
    try:
        got = read_hand_in(path)
    except HandInError:
        return
    assert {record.answers["energy"] for record in got.records} <= {"0 J", "1 J", "2 J"}


def test_a_huge_file_is_not_read_whole(tmp_path):
    """A file of 10 GB (with holes) is refused by its size, in no time."""
    path = tmp_path / "huge.zip"
    with path.open("wb") as file:
        file.truncate(10_000_000_000)
    start = time.perf_counter()
    with pytest.raises(
        HandInError, match="a hand-in must be at most 20,000,000 bytes, and this file is larger"
    ):
        read_hand_in(path)
    assert time.perf_counter() - start < 1.0


def test_a_journal_under_the_name_of_another_page_counts(pack, make_zip, small_page):
    """Records go to the page that their exercise is of, and it is told."""
    with zipfile.ZipFile(pack()) as archive:
        journal = archive.read("answers/arcs.jsonl")
    got = read_hand_in(make_zip([("answers/seams.jsonl", journal)]), pages={"arcs": small_page})
    assert len(got.journals["arcs"].records) == 3
    assert got.journals["seams"].records == ()
    assert [(each.kind, each.place) for each in got.problems] == [("other page", "answers/seams.jsonl")]


def test_problems_of_journals_are_carried(make_zip):
    """What the journal's reading sets aside is named with its page and line."""
    got = read_hand_in(make_zip([("answers/arcs.jsonl", "rubbish\n{}\n"), ("pages/arcs.ipynb", "rubbish")]))
    assert [(problem.place, problem.line) for problem in got.problems] == [
        ("answers/arcs.jsonl", 1),
        ("answers/arcs.jsonl", 2),
        ("pages/arcs.ipynb", 0),
    ]


@pytest.fixture
def packed_again(pack, make_zip, small_page):
    """Return a function that packs the hand-in again: lines that are left, other words in the manifest."""
    with zipfile.ZipFile(pack()) as archive:
        members = {name: archive.read(name) for name in archive.namelist()}
    manifest = json.loads(members.pop("hand_in.json"))
    lines = members.pop("answers/arcs.jsonl").splitlines(keepends=True)

    def packed(left, *, page="arcs", **changes):
        journal = [] if left is None else [(f"answers/{page}.jsonl", b"".join(lines[:left]))]
        made = make_zip([*members.items(), *journal], manifest={**manifest, **changes})
        return read_hand_in(made, pages={"arcs": small_page})

    return packed


@pytest.mark.parametrize(
    ("left", "lost"), [(2, "1 of the 3 answers"), (1, "2 of the 3"), (0, "3 of the 3"), (None, "3 of the 3")]
)
def test_a_journal_cut_at_the_end_of_a_line_is_told(packed_again, left, lost):
    """It looks like an earlier state of itself; the count in the manifest says how many answers are lost."""
    got = packed_again(left)
    assert len(got.records) == (left or 0)
    (problem,) = got.problems
    assert (problem.kind, problem.place) == ("lost answers", "answers/arcs.jsonl")
    assert re.fullmatch(
        rf"{lost}( answers)? that were packed on page arcs (is|are) missing", problem.sentence
    ), problem.sentence


def test_another_last_answer_is_told(packed_again):
    """As many answers as were packed, but the last is another one, as from the journal of another day."""
    got = packed_again(3, journals={"arcs": {"records": 3, "last": "0" * 32}})
    assert [each.sentence for each in got.problems] == [
        "the last answer on page arcs is not the one that was packed"
    ]


def test_a_journal_that_was_renamed_has_lost_nothing(packed_again):
    """Its answers count under the page that they are of, so none is missing there."""
    got = packed_again(3, page="seams")
    assert [each.kind for each in got.problems] == ["other page"]


@pytest.mark.parametrize(
    ("journals", "told"),
    [
        (None, []),  # as an older copy packs
        ({}, []),
        ({"seams": {"records": 9, "last": ""}}, []),  # a page of a newer copy
        ([], ["the hand-in does not say how many answers were packed"]),
        *(
            ({"arcs": count}, ["the hand-in does not say how many answers were packed on page arcs"])
            for count in (
                7,
                {},
                {"records": True, "last": ""},
                {"records": -1, "last": ""},
                {"records": 10**4000, "last": ""},
                {"records": 3, "last": None},
            )
        ),
    ],
)
def test_a_manifest_without_usable_counts_loses_nothing(packed_again, journals, told):
    """All answers count whatever the manifest says of them; only counts that cannot be read are told."""
    got = packed_again(3, journals=journals)
    assert len(got.records) == 3
    assert [each.sentence for each in got.problems] == told


UNTOUCHED = ("Write here.\n\n*Who watched, and when.*", "Write here.\r\n\r\n*Who watched,  and when.*\n")


@pytest.mark.parametrize("text", UNTOUCHED)
def test_a_practical_that_nobody_wrote_in_is_not_handed_in(workbook, small_page, pack, text):
    """What stood in the cell from the start is no answer, whatever an editor did to its spaces."""
    (workbook / small_page.folder / small_page.notebook).write_text(
        practical_notebook(text), encoding="utf-8"
    )
    with zipfile.ZipFile(pack()) as archive:
        assert not any(name.startswith("pages/") for name in archive.namelist())


@pytest.mark.parametrize("text", UNTOUCHED)
def test_a_packed_practical_that_nobody_wrote_in_counts_as_unwritten(make_zip, small_page, text):
    """A notebook put into the file by hand is no written answer either, and no fault."""
    got = read_hand_in(make_zip([("pages/arcs.ipynb", practical_notebook(text))]), pages={"arcs": small_page})
    assert (got.written, got.problems) == ({}, ())


def test_words_below_the_cue_are_an_answer(make_zip, small_page):
    """Somebody who leaves the cue standing and writes below it has written."""
    text = f"{small_page.practical_cue}\n\nPulled one."
    got = read_hand_in(make_zip([("pages/arcs.ipynb", practical_notebook(text))]), pages={"arcs": small_page})
    assert got.written == {"arcs": text}


def test_reading_imports_and_runs_nothing(make_zip, monkeypatch):
    """No member is written anywhere, and nothing is evaluated."""
    monkeypatch.setattr(zipfile.ZipFile, "extract", None)
    monkeypatch.setattr(zipfile.ZipFile, "extractall", None)
    before = dict(vars(hand_in))
    read_hand_in(make_zip([("pages/arcs.ipynb", practical_notebook("x"))]))
    assert dict(vars(hand_in)) == before
