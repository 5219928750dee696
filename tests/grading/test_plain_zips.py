"""Plain archives are read as the general reader reads them, and whatever is not plain is left to it."""

import io
import random
import zipfile

import pytest

from grading.plain_zips import plain_members

MEMBERS = {
    "hand_in.json": b'{"format": "x"}',
    "answers/arcs.jsonl": b'{"answers":{}}\n' * 40,
    "pages/arcs.ipynb": b"",
    "answers/seams.jsonl": bytes(range(256)) * 4,
}


def _zipped(members=MEMBERS, packing=zipfile.ZIP_DEFLATED, comment=b""):
    """Return an archive as bytes."""
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w", packing) as archive:
        for name, data in members.items():
            archive.writestr(name, data)
        archive.comment = comment
    return file.getvalue()


def _general(data):
    """Return the members as the general reader gives them, or None where it refuses."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            return {name: archive.read(name) for name in archive.namelist()}
    except Exception:  # noqa: BLE001, whatever it raises on damaged bytes is a refusal
        return None


def _limit(name):
    """Allow every member a good size."""
    return 10_000


@pytest.mark.parametrize("packing", [zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED])
def test_plain_archives_are_read(packing):
    """Names, order and contents are those of the general reader."""
    members = plain_members(_zipped(packing=packing), _limit)
    assert members == MEMBERS
    assert list(members) == list(MEMBERS)


def test_what_is_not_plain_is_left_to_the_general_reader():
    """Other packings, comments, bytes before or after, names beyond ASCII, streamed members, empty bytes."""
    plain = _zipped()
    streamed = io.BytesIO()
    with zipfile.ZipFile(streamed, "w") as archive, archive.open("a", "w", force_zip64=True) as member:
        member.write(b"x")
    odd = [
        _zipped(packing=zipfile.ZIP_BZIP2),
        _zipped(comment=b"c"),
        b"x" + plain,
        plain + b"x",
        _zipped({"\u00fc": b""}),
        streamed.getvalue(),
        b"",
        plain[-30:],
    ]
    assert [plain_members(each, _limit) for each in odd] == [None] * len(odd)


def test_limits_and_names_hold():
    """A member that unpacks to more than its limit, or that has no place, is not read here."""
    data = _zipped({"a": b"x" * 9_000})
    assert plain_members(data, lambda name: 8_999) is None
    assert plain_members(data, lambda name: None) is None
    assert plain_members(data, lambda name: 9_000) == {"a": b"x" * 9_000}


def test_a_member_is_never_unpacked_to_more_than_it_claims():
    """A list and a head that name a smaller size than the member has do not get more than that unpacked."""
    data = _zipped({"a": b"\0" * 1_000_000}).replace(
        (1_000_000).to_bytes(4, "little"), (5).to_bytes(4, "little")
    )
    assert plain_members(data, _limit) is None


@pytest.mark.filterwarnings("ignore::UserWarning")
def test_damaged_archives_are_read_alike_or_not_at_all():
    """Whatever bits are turned: what is read here is what the general reader reads."""
    dice, read = random.Random("turned bits"), 0
    for packing in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
        whole = _zipped(packing=packing)
        for _ in range(1500):
            data = bytearray(whole)
            for _ in range(dice.randint(1, 2)):
                data[dice.randrange(len(data))] ^= 1 << dice.randrange(8)
            members = plain_members(bytes(data), _limit)
            if members is not None:
                read += 1
                assert members == _general(bytes(data))
    assert read > 100, "some bits, such as those of the date, do not matter"
