"""The lines of a journal: what is wrong in them is said and set aside, and harms no other."""

import json
from hashlib import blake2b

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from grading import answers
from grading.answers import line_of, parse_journal
from tests.grading.made_journals import lines_of


def test_check_is_the_documented_hash(filled):
    """The check is BLAKE2b (16 bytes) of the record without it as JSON with sorted names and no spaces."""
    content = json.loads(lines_of(filled)[2])
    check = content.pop("check")
    canonical = json.dumps(content, sort_keys=True, separators=(",", ":")).encode()
    assert check == blake2b(canonical, digest_size=16).hexdigest()


def test_lines_that_were_only_laid_out_anew_are_sound(filled):
    """A tool that rewrites the JSON with spaces and another order changes no answer, so nothing is wrong."""
    anew = b"\r\n".join(
        json.dumps(dict(reversed(json.loads(line).items()))).encode() for line in lines_of(filled)
    )
    contents = parse_journal(b"\xef\xbb\xbf" + anew)
    assert contents.problems == ()
    assert contents.records == filled.read().records


@pytest.mark.parametrize("odd", [b"1e400", b"[" * 980 + b"]" * 980, b"[" * 110 + b"]" * 110])
def test_a_record_that_cannot_be_written_again_is_set_aside(filled, odd):
    """A number beyond any float, or lists within lists by the hundred, spoil one record and no more."""
    contents = parse_journal(filled.path.read_bytes().replace(b'"2 J"', odd))
    assert [record.line for record in contents.records] == [1, 2, 4, 5]
    assert [problem.line for problem in contents.problems] == [3]


def test_an_edited_record_is_set_aside_with_its_line(filled):
    """A changed answer is found by its check; the records around it stay."""
    edited = filled.path.read_bytes().replace(b'"2 J"', b'"9 J"')
    contents = parse_journal(edited)
    assert [record.line for record in contents.records] == [1, 2, 4, 5]
    assert [(problem.kind, problem.line) for problem in contents.problems] == [("bad check", 3)]
    assert "a record was changed after it was saved (line 3)" in contents.problems[0].sentence


@pytest.mark.parametrize(
    ("spoil", "after"),
    [
        (lambda lines: lines[:1] + [b"rubbish"] + lines[2:], [False, True, True, True]),
        (lambda lines: lines[2:], [True, True, True]),
        (lambda lines: lines[:2] + lines[1:], [False] * 5),
        (lambda lines: lines[:3] + [lines[3][:-9]], [False] * 3),
    ],
    ids=["unreadable", "front gone", "copied", "torn"],
)
def test_records_after_a_loss_know_of_it(filled, spoil, after):
    """What stands behind a line that is lost or may be says so; what stands before it, or is copied, not."""
    contents = parse_journal(b"\n".join(spoil(lines_of(filled))))
    assert [record.after_loss for record in contents.records] == after


def test_a_line_cannot_say_that_it_stands_after_a_loss(filled):
    """What is found while reading is not read from the line, however true its check is."""
    content = json.loads(lines_of(filled)[0])
    del content["check"]
    (record,) = parse_journal(line_of({**content, "after_loss": True}) + b"\n").records
    assert not record.after_loss


@pytest.mark.parametrize("removed", [0, 1, 3])
def test_a_removed_record_is_noticed(filled, removed):
    """The record after a gap does not name the check of the one before it; it still counts."""
    lines = lines_of(filled)
    del lines[removed]
    contents = parse_journal(b"\n".join(lines))
    assert len(contents.records) == 4
    assert [(problem.kind, problem.line) for problem in contents.problems] == [
        ("missing record", removed + 1)
    ]


def test_moved_records_are_noticed(filled):
    """Swapped lines break the chain."""
    lines = lines_of(filled)
    kinds = [problem.kind for problem in parse_journal(b"\n".join([lines[1], lines[0], *lines[2:]])).problems]
    assert set(kinds) == {"missing record"}


@pytest.mark.parametrize("place", [0, 2, 5])
def test_a_copied_record_counts_once(filled, place):
    """A line that stands there twice is no second try; the copy is named, and breaks no chain."""
    lines = lines_of(filled)
    copied = [*lines[:place], lines[0], *lines[place:]] if place else [lines[0], *lines]
    contents = parse_journal(b"\n".join(copied))
    assert [each.check for each in contents.records] == [each.check for each in filled.read().records]
    assert [(each.kind, each.line) for each in contents.problems] == [
        ("copied record", place + 1 if place else 2)
    ]


def test_a_journal_of_rubbish_is_told_in_brief(filled):
    """Of many bad lines the first are named and the others counted; sound records still count."""
    contents = parse_journal(b"x\n" * 5_000 + filled.path.read_bytes())
    assert len(contents.records) == 5
    assert len(contents.problems) == answers.MOST_TOLD + 1
    assert "4,900 more" in contents.problems[-1].sentence


def test_a_journal_of_endless_lines_is_not_read_whole(filled):
    """A million lines, for which somebody would wait for minutes, are read to a limit; that is named."""
    contents = parse_journal(filled.path.read_bytes() + b"x\n" * 1_000_000 + filled.path.read_bytes())
    assert len(contents.records) == 5
    assert contents.problems[-1].kind == "unreadable"
    assert "at most 20,000 lines" in contents.problems[-1].sentence
    assert parse_journal(filled.path.read_bytes() + b"\n" * 1_000_000).problems == ()


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        (b"not json", "a line is not a record"),
        (b"[1, 2]", "a line is not a record"),
        (b"5", "a line is not a record"),
        (b"\xff\xfe", "a line is not a record"),
        (b"\x00" * 500, "a line is not a record"),
        (b"[" * 100_000, "a line is not a record"),
        (b"9" * 50_000, "a line is not a record"),
        (b'{"a": NaN}', "a line is not a record"),
        (b"{}", "a record has no usable at"),
        (b"x" * 200_001, "a line must be at most 131072 bytes long, got 200001"),
    ],
)
def test_unreadable_lines_are_set_aside(filled, line, sentence):
    """Rubbish between two records is reported with its line and harms no other."""
    lines = lines_of(filled)
    contents = parse_journal(b"\n".join([*lines[:2], line, *lines[2:], b""]))
    assert len(contents.records) == 5
    assert [(problem.kind, problem.line) for problem in contents.problems] == [("unreadable", 3)]
    assert sentence in contents.problems[0].sentence


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("answers", "x"),
        ("answers", None),
        ("round", "1"),
        ("round", True),
        ("round", 1.0),
        ("learner", None),
        ("previous", 5),
    ],
)
def test_fields_of_the_wrong_kind_are_set_aside(filled, name, value):
    """A record with a sound check but a field of the wrong kind is not used."""
    content = json.loads(lines_of(filled)[4])
    content.pop("check")
    content[name] = value
    forged = answers.line_of(content)
    contents = parse_journal(b"\n".join([*lines_of(filled)[:4], forged, b""]))
    assert len(contents.records) == 4
    assert contents.problems[0].sentence == f"a record has no usable {name} (line 5)"


@given(st.binary(max_size=400))
@settings(deadline=None)
def test_no_bytes_crash_the_reading(data):
    """Any bytes give records or problems."""
    contents = parse_journal(data)
    assert contents.records == ()
    assert len(contents.problems) == sum(
        1 for line in data.removeprefix(b"\xef\xbb\xbf").split(b"\n") if line.strip()
    )


def _rewritten(line, name, text):
    """Return a stored line with the text of one value replaced and its check made to fit again."""
    content = json.loads(line)
    del content["check"]
    body = json.dumps(content, sort_keys=True, separators=(",", ":"))
    value = json.dumps(content[name], sort_keys=True, separators=(",", ":"))
    body = body.replace(f'"{name}":{value}', f'"{name}":{text}', 1)
    check = blake2b(body.encode(), digest_size=16).hexdigest()
    return f'{body[:-1]},"check":"{check}"}}'.encode()


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("round", "1.0"),
        ("round", "1e0"),
        ("round", "-0"),
        ("round", "true"),
        ("round", "99999999999999999999999"),
        ("round", "9" * 5000),
        ("round", '1,"line":7'),
        ("bank", "null"),
        ("bank", '"\\ud800"'),
        ("bank", '"a\\/b\\u0041"'),
        ("bank", '"x","bank":"y"'),
        ("bank", '"x","more":"y"'),
        ("answers", '{"a":1}'),
        ("answers", '{"a":[{"b":{"c":"d"}},null,["e"]]}'),
        ("answers", '{"a":[[[[["deep"]]]]]}'),
        ("answers", "[]"),
        ("answers", '{"a":"b","a":"c"}'),
    ],
)
def test_the_short_way_reads_what_the_general_one_reads(filled, name, text, monkeypatch):
    """Whatever a line holds that fits its check, both ways of reading give the same records and problems."""
    first, *rest = lines_of(filled)
    data = b"\n".join([_rewritten(first, name, text), *rest, b""])
    short = parse_journal(data)
    monkeypatch.setattr(answers, "_sound_records", lambda data: None)
    general = parse_journal(data)
    assert short == general
    assert repr(short.records) == repr(general.records)


def test_any_flipped_byte_is_noticed(filled):
    """Whichever byte of a record is changed, no changed record is taken for a sound one."""
    data = filled.path.read_bytes()
    sound = {record.check: record for record in filled.read().records}
    for place in range(0, len(data), 7):
        changed = bytearray(data)
        changed[place] ^= 0x15
        contents = parse_journal(bytes(changed))
        assert contents.problems
        for record in contents.records:
            assert record.answers == sound[record.check].answers
