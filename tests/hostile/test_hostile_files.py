"""Files that no learner of good will hands in: each is one clear sentence, and nobody else loses anything."""

import csv
import json
import struct
import zipfile
import zlib

import pytest
from click.testing import CliRunner

from grading.cli import main
from grading.exercises import PAGES
from grading.hand_in import learner_slug
from tests.grading.made_hand_ins import (
    MAXIMUM,
    SETTINGS,
    journals,
    manifest,
    raw_hand_in,
    right_hand_in,
    right_records,
    zipped,
)

NEIGHBOUR = "Mara Quillby"
TEN_GIGABYTES = 10_000_000_000


def _rows(path):
    """Read a table as dictionaries."""
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


@pytest.fixture
def folder(tmp_path):
    """Give a folder of hand-ins in which an ordinary neighbour has handed in."""
    folder = tmp_path / "hand_ins"
    folder.mkdir()
    right_hand_in(folder, NEIGHBOUR, file_name="neighbour.zip")
    return folder


def _mark(folder):
    """Mark the folder; check that the neighbour has full marks; return output, results and problems."""
    out = folder.parent / "results"
    result = CliRunner().invoke(main, ["mark", str(folder), "--out", str(out), "--json"])
    assert result.exit_code == 0, result.output
    rows = {row["learner"]: row for row in _rows(out / "results.csv")}
    assert float(rows[learner_slug(NEIGHBOUR)]["points"]) == pytest.approx(MAXIMUM, abs=1e-3), "four decimals"
    return json.loads(result.stdout), rows, _rows(out / "problems.csv")


def _stream_of_zeros(size):
    """Return a deflate stream that unpacks to this many zeros, made of one block said again and again."""
    packer = zlib.compressobj(9, zlib.DEFLATED, -15)
    block = packer.compress(bytes(16_000_000)) + packer.flush(zlib.Z_FULL_FLUSH)
    return block * (size // 16_000_000) + zlib.compressobj(9, zlib.DEFLATED, -15).flush()


def _bomb(path, member, *, claimed):
    """Write a hand-in with a member that unpacks to 10 GB and claims a size of its own choice."""
    data = _stream_of_zeros(TEN_GIGABYTES)
    zipped(path, {"hand_in.json": manifest("Bomb Maker")})
    with zipfile.ZipFile(path) as archive:
        (first,) = archive.infolist()
        start = archive.start_dir
    head = path.read_bytes()[:start]
    name = member.encode()
    fields = (20, 0, 8, 0, 33, 0, len(data), claimed)
    local = struct.pack("<4s5H3L2H", b"PK\x03\x04", *fields, len(name), 0) + name
    central = [
        _central(
            first.filename.encode(), (20, 0, 8, 0, 33, first.CRC, first.compress_size, first.file_size), 0
        )
    ]
    central.append(_central(name, fields, len(head)))
    listing = b"".join(central)
    body = head + local + data
    end = struct.pack("<4s4H2LH", b"PK\x05\x06", 0, 0, 2, 2, len(listing), len(body), 0)
    path.write_bytes(body + listing + end)


def _central(name, fields, offset):
    """Return an entry of a zip file's own list."""
    return struct.pack("<4s6H3L5H2L", b"PK\x01\x02", 20, *fields, len(name), 0, 0, 0, 0, 0, offset) + name


@pytest.mark.parametrize("claimed", [2**32 - 2, 100], ids=["honest size", "false size"])
def test_a_file_that_unpacks_to_ten_gigabytes(folder, claimed):
    """It is refused whatever size it claims, without being unpacked."""
    _bomb(folder / "bomb.zip", "answers/stud_welding.jsonl", claimed=claimed)
    assert (folder / "bomb.zip").stat().st_size < 20_000_000
    _, rows, problems = _mark(folder)
    assert len(rows) == 1
    (problem,) = problems
    assert problem["file"] == "bomb.zip"
    assert "bytes" in problem["problem"] or "damaged" in problem["problem"]


@pytest.mark.parametrize(
    "member",
    ["../../x", "..\\..\\x", "/etc/x", "answers/../../x.jsonl", "C:\\x", "answers/stud_welding.jsonl/../y"],
)
def test_paths_that_leave_the_folder(folder, member):
    """A member that would lie outside is refused by name, and nothing is written anywhere."""
    before = {path for path in folder.parent.parent.rglob("*") if "results" not in path.parts}
    zipped(folder / "paths.zip", {"hand_in.json": manifest("Path Finder"), member: b"x"})
    _, rows, problems = _mark(folder)
    assert len(rows) == 1
    assert "has no place in one" in problems[0]["problem"]
    after = {path for path in folder.parent.parent.rglob("*") if "results" not in path.parts}
    assert after - before == {folder / "paths.zip"}


def test_files_that_are_not_ours(folder):
    """A text, an empty file, a photograph's archive, half a hand-in: one sentence each, all named."""
    (folder / "notes.txt").write_text("my answers are on the other stick")
    (folder / "empty.zip").write_bytes(b"")
    zipped(folder / "photos.zip", {"car.jpg": b"\xff\xd8"})
    whole = right_hand_in(folder, "Torn Stick", file_name="half.zip").read_bytes()
    (folder / "half.zip").write_bytes(whole[: len(whole) // 2])
    _, rows, problems = _mark(folder)
    assert len(rows) == 1
    assert [each["file"] for each in problems] == ["empty.zip", "half.zip", "notes.txt", "photos.zip"]
    assert all(each["problem"].count("\n") == 0 and each["problem"] for each in problems)


@pytest.mark.parametrize(
    "name",
    ["=cmd()", "<script>alert(1)</script>", "../../x", "CON", "a/b\\c", "Ann\x1b[2JHolt", "\u202eevil"],
)
def test_names_that_would_act(folder, name):
    """A learner's name is text in the table, on the page and in the terminal, and safe as a file name."""
    right_hand_in(folder, name, file_name="named.zip")
    summary, rows, _ = _mark(folder)
    row = rows[learner_slug(name)]
    assert float(row["points"]) == pytest.approx(MAXIMUM, abs=1e-3), "four decimals"
    assert not row["name"].startswith(("=", "+", "-", "@"))
    assert row["name"].isprintable()
    page = folder.parent / "results" / "feedback" / f"{learner_slug(name)}.html"
    assert page.is_file()
    assert "<script>" not in page.read_text(encoding="utf-8")
    assert len(list(page.parent.iterdir())) == 2
    assert all(text.isprintable() for text in (*summary["late"], *summary["problems"]))


def test_two_hand_ins_of_one_learner(folder):
    """Their answers are put together and it is reported, naming both files."""
    records = right_records("Bram Saltby")
    raw_hand_in(folder, "Bram Saltby", journals(records[:9]), file_name="monday.zip")
    raw_hand_in(folder, "  BRAM   saltby ", journals(records[9:]), file_name="tuesday.zip")
    _, rows, problems = _mark(folder)
    assert float(rows[learner_slug("Bram Saltby")]["points"]) == pytest.approx(MAXIMUM, abs=1e-3), (
        "four decimals"
    )
    (problem,) = problems
    assert "monday.zip" in problem["file"]
    assert "tuesday.zip" in problem["file"]


def _spoilt_journals():
    """Return journals that something happened to, with the share of sound records each still has."""
    data = journals(right_records("Ilse Grost"))["stud_welding"]
    lines = data.splitlines(keepends=True)
    other_bank = [{**each, "bank": "1999.1", "scenario": "0" * 16} for each in right_records("Ilse Grost")]
    edited = lines[3].replace(b'"round":1', b'"round":2')
    return {
        "torn": (data[: -len(lines[-1]) // 2], "torn"),
        "edited": (b"".join([*lines[:3], edited, *lines[4:]]), "bad check"),
        "a line taken out": (b"".join([*lines[:3], *lines[4:]]), "missing record"),
        "other bank": (journals(other_bank)["stud_welding"], "other bank"),
        "empty": (b"", None),
        "not JSON": (b"hello\nyou\n", "unreadable"),
        "not Unicode": (b"\xff\xfe\x00\n" * 9, "unreadable"),
        "deeply nested": (b"[" * 100_000 + b"\n", "unreadable"),
        "two copies": (data + data, "copied record"),
    }


@pytest.mark.parametrize("case", sorted(_spoilt_journals()))
def test_spoilt_journals(folder, case):
    """Whatever happened to a journal is reported by its kind, and its sound records still count."""
    data, kind = _spoilt_journals()[case]
    raw_hand_in(folder, "Ilse Grost", {"stud_welding": data}, file_name="ilse.zip")
    _, rows, problems = _mark(folder)
    points = float(rows[learner_slug("Ilse Grost")]["points"])
    if kind:
        assert kind in {each["kind"] for each in problems if each["file"] == "ilse.zip"}
    sound = {"torn": 0.9, "edited": 0.9, "a line taken out": 0.9, "two copies": 0.9}
    most = sum(exercise.points for exercise in PAGES["stud_welding"].exercises)
    assert points >= sound.get(case, 0.0) * most * 0.9
    assert points <= most


UNREADABLE = (
    "7" * 10_000,
    "480",
    "480 furlongs",
    "480 C",
    "1,200 J",
    "six",
    "inf J",
    "nan J",
    "",
    " ",
    5,
    None,
    [],
    {},
    True,
    "\ud800",
    "480\x00J",
    {"low": "1 J"},
    [["a"]],
    1e308,
    "9" * 60 + " J",
    "1e9999 J",
)


def test_spoilt_answers_earn_nothing(folder):
    """No answer that cannot be read earns a point in any part of any exercise, whatever its shape."""
    names = [f"Spoilt {number}" for number in range(len(UNREADABLE))]
    for name, typed in zip(names, UNREADABLE, strict=True):
        records = right_records(name)
        for record in records:
            record["answers"] = dict.fromkeys(record["answers"], typed)
        raw_hand_in(folder, name, journals(records))
    _, rows, _ = _mark(folder)
    points = {name: float(rows[learner_slug(name)]["points"]) for name in names}
    assert points == dict.fromkeys(names, 0.0)


def test_settings_of_a_stranger_are_not_used(folder):
    """Another course named in the manifest changes nothing; its records are reported as of another class."""
    records = [{**each, "course": "elsewhere"} for each in right_records("Ilse Grost")]
    raw_hand_in(folder, "Ilse Grost", journals(records), course="elsewhere", file_name="ilse.zip")
    _, rows, problems = _mark(folder)
    assert float(rows[learner_slug("Ilse Grost")]["points"]) == 0.0, "atol 0: nothing was earned"
    assert "other course" in {each["kind"] for each in problems}
    assert SETTINGS.course_key != "elsewhere"
