"""Members of an archive: bombs and strange packings are refused, damage costs no more than itself."""

import io
import json
import struct
import time
import zipfile
import zlib

import pytest

from grading.hand_in import HandInError, read_hand_in
from tests.grading.made_archives import MANIFEST


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
        read_hand_in(path, pages={})  # loading the exercises is no part of the refusal
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
