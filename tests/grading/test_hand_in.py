"""Hand-ins: a round trip, and what strangers may pack without harm."""

import io
import json
import struct
import time
import zipfile
import zlib
from datetime import UTC, datetime

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from grading import hand_in
from grading.hand_in import HandInError, pack_hand_in, read_hand_in, save_learner
from grading.journal import Journal
from tests.grading.made_notebooks import practical_notebook

NOW = datetime(2026, 11, 25, 8, 30, 15, tzinfo=UTC)
MANIFEST = {
    "format": "second plate hand-in",
    "version": 1,
    "learner": "ann",
    "display_name": "Ann",
    "course": "test-class",
    "bank": "test",
    "made_at": "2026-11-25T08:30:15+00:00",
}


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


@pytest.fixture
def make_zip(tmp_path):
    """Return a maker of zip files from names and bytes."""

    def make(members, *, manifest=MANIFEST, packing=zipfile.ZIP_DEFLATED):
        path = tmp_path / "made.zip"
        with zipfile.ZipFile(path, "w", packing) as archive:
            if manifest is not None:
                archive.writestr(
                    "hand_in.json", manifest if isinstance(manifest, (str, bytes)) else json.dumps(manifest)
                )
            for name, data in members:
                archive.writestr(name, data)
        return path

    return make


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


def _bomb(size, *, claimed):
    """Return a hand-in whose journal unpacks to ``size`` zeros while its headers claim another size."""
    packer = zlib.compressobj(9, zlib.DEFLATED, -15)
    block = packer.compress(b"\x00" * 1_000_000) + packer.flush(zlib.Z_FULL_FLUSH)  # can be repeated as it is
    packed = block * (size // 1_000_000) + packer.flush()
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as archive:
        archive.writestr("hand_in.json", json.dumps(MANIFEST))
    head = buffer.getvalue()
    start, count = head.rindex(b"PK\x01\x02"), struct.unpack("<H", head[-12:-10])[0]
    name = b"answers/arcs.jsonl"
    fields = struct.pack("<HHHHLLLHH", 0, 8, 0, 33, 0, len(packed), claimed, len(name), 0)
    local = b"PK\x03\x04" + struct.pack("<H", 20) + fields + name
    listed = (
        b"PK\x01\x02" + struct.pack("<HH", 20, 20) + fields + struct.pack("<HHHLL", 0, 0, 0, 0, start) + name
    )
    directory = head[start:-22] + listed
    offset = start + len(local) + len(packed)
    end = b"PK\x05\x06" + struct.pack("<HHHHLLH", 0, 0, count + 1, count + 1, len(directory), offset, 0)
    return head[:start] + local + packed + directory + end


@pytest.mark.parametrize("claimed", [4_000_000_000, 1000, 2_000_000])
def test_a_bomb_is_refused_at_once(tmp_path, claimed):
    """Ten gigabytes packed into ten megabytes: refused within a second, whatever the headers claim."""
    path = tmp_path / "bomb.zip"
    path.write_bytes(_bomb(10_000_000_000, claimed=claimed))
    start = time.perf_counter()
    with pytest.raises(HandInError, match="must be at most 2,000,000 bytes|is damaged"):
        read_hand_in(path)
    assert time.perf_counter() - start < 1.0


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


def test_a_long_list_of_members_is_not_parsed(tmp_path):
    """A directory of 300,000 entries, or one that claims to be short, is refused before it is read."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as archive:
        for number in range(3000):
            archive.writestr(f"answers/a{number}.jsonl", b"")
    data = bytearray(buffer.getvalue())
    path = tmp_path / "long.zip"
    for count in (3000, 1):
        data[-14:-10] = struct.pack("<HH", count, count)
        path.write_bytes(bytes(data))
        with pytest.raises(HandInError, match="it must hold at most 64 files"):
            read_hand_in(path)


@pytest.mark.parametrize("packing", [zipfile.ZIP_BZIP2, zipfile.ZIP_LZMA])
def test_other_packings_are_refused(make_zip, packing):
    """A packing that can ask for gigabytes of memory is refused by name."""
    with pytest.raises(HandInError, match="hand_in.json is packed in a way that hand-ins never are"):
        read_hand_in(make_zip([], packing=packing))


def test_packed_again_by_hand(make_zip):
    """Entries for the two folders, as file managers add them, do no harm."""
    got = read_hand_in(make_zip([("answers/", ""), ("answers/arcs.jsonl", ""), ("pages/", "")]))
    assert list(got.journals) == ["arcs"]


def test_a_folder_that_holds_something_is_none(make_zip):
    """A file under the name of a folder is not passed over."""
    with pytest.raises(HandInError, match="it holds 'answers/', which has no place in one"):
        read_hand_in(make_zip([("answers/", "x"), ("answers/arcs.jsonl", "")]))


def test_a_notebook_that_is_too_large_is_left_out(make_zip):
    """A notebook swollen with output costs nobody the answers beside it; it is named."""
    got = read_hand_in(make_zip([("answers/arcs.jsonl", ""), ("pages/arcs.ipynb", b"0" * 5_000_001)]))
    assert list(got.journals) == ["arcs"]
    assert got.written == {}
    assert [problem.sentence for problem in got.problems] == [
        "pages/arcs.ipynb must be at most 5,000,000 bytes, and it unpacks to more, so it was left out"
    ]


def test_a_journal_under_the_name_of_another_page_counts(pack, make_zip, small_page):
    """Records go to the page that their exercise is of, and it is told."""
    with zipfile.ZipFile(pack()) as archive:
        journal = archive.read("answers/arcs.jsonl")
    got = read_hand_in(make_zip([("answers/seams.jsonl", journal)]), pages={"arcs": small_page})
    assert len(got.journals["arcs"].records) == 3
    assert got.journals["seams"].records == ()
    assert [(each.kind, each.place) for each in got.problems] == [("other page", "answers/seams.jsonl")]


def _spoilt(path, change):
    """Change the bytes of a file in place; ``change`` takes the bytes and where each member is listed."""
    data = bytearray(path.read_bytes())
    with zipfile.ZipFile(path) as archive:
        heads = {info.filename: info.header_offset for info in archive.infolist()}
    listed = {name: data.rindex(name.encode()) - 46 for name in heads}
    change(data, heads, listed)
    path.write_bytes(bytes(data))
    return path


_FULL = [("answers/arcs.jsonl", "rubbish\n"), ("answers/seams.jsonl", "x" * 500)]


def _damaged_content(data, heads, listed):
    """Change a byte of what the second journal is packed to."""
    data[heads["answers/seams.jsonl"] + 30 + len("answers/seams.jsonl") + 1] ^= 0xFF


def _no_packed_bytes(data, heads, listed):
    """Claim that the second journal is packed to nothing: the general reader takes that for its end."""
    data[listed["answers/seams.jsonl"] + 20 : listed["answers/seams.jsonl"] + 24] = bytes(4)


def _other_place(data, heads, listed):
    """Claim that the second journal begins elsewhere."""
    data[listed["answers/seams.jsonl"] + 42] ^= 1


@pytest.mark.parametrize("change", [_damaged_content, _no_packed_bytes, _other_place])
def test_a_damaged_journal_costs_no_other(make_zip, change):
    """The journal beside a damaged one is read, and the damaged one is named."""
    got = read_hand_in(_spoilt(make_zip(_FULL), change))
    assert list(got.journals) == ["arcs"]
    (problem,) = [each for each in got.problems if each.kind == "hand-in"]
    assert problem.place == "answers/seams.jsonl"
    assert "is damaged" in problem.sentence
    assert type(problem.sentence) is str, "plain text goes into the record of a marking"


def test_where_nothing_can_be_read_the_whole_file_is_refused(make_zip):
    """A hand-in whose only journal is damaged is no hand-in with nothing in it."""
    with pytest.raises(HandInError, match="answers/seams.jsonl is damaged"):
        read_hand_in(_spoilt(make_zip(_FULL[1:]), _damaged_content))


def test_a_list_that_breaks_off_is_seen(make_zip):
    """A wrong length in the list, over which the general reader loses the members behind it, is a damage."""

    def longer(data, heads, listed):
        data[listed["hand_in.json"] + 33] ^= 0x10  # 4,096 bytes of comment

    with pytest.raises(HandInError, match="its list of 3 files breaks off after 1"):
        read_hand_in(_spoilt(make_zip(_FULL), longer))


def test_a_name_ends_where_it_ends(make_zip):
    """A zero byte in a name does not make another name of it."""
    plain = make_zip([("answers/arcs.jsonlx.txt", b"x")])
    plain.write_bytes(plain.read_bytes().replace(b".jsonlx.txt", b".jsonl\0.txt"))
    with pytest.raises(HandInError, match="has no place in one"):
        read_hand_in(plain)


def test_problems_of_journals_are_carried(make_zip):
    """What the journal's reading sets aside is named with its page and line."""
    got = read_hand_in(make_zip([("answers/arcs.jsonl", "rubbish\n{}\n"), ("pages/arcs.ipynb", "rubbish")]))
    assert [(problem.place, problem.line) for problem in got.problems] == [
        ("answers/arcs.jsonl", 1),
        ("answers/arcs.jsonl", 2),
        ("pages/arcs.ipynb", 0),
    ]


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
