"""The bibliography is complete, unique and free of brands' rows without a kind."""

import re
from pathlib import Path

import pytest

from secondplate.data_files import DATA_FOLDER
from secondplate.sources import BIBLIOGRAPHY, KINDS, Source, bibliography, source

ROW = {
    "id": "x",
    "kind": "handbook",
    "title": "X",
    "year": "2020",
    "doi": "-",
    "note": "read",
    "authors": "-",
}


def test_each_entry_says_what_was_read():
    """Every entry has a title, a kind of the list and a note on what was read."""
    for entry in BIBLIOGRAPHY.values():
        assert entry.kind in KINDS
        assert entry.title
        assert entry.note


def test_ids_are_plain_words():
    """Ids are lower-case words and digits joined by underscores."""
    assert all(re.fullmatch(r"[a-z0-9]+(_[a-z0-9]+)*", source_id) for source_id in BIBLIOGRAPHY)


def test_dois_look_like_dois():
    """An identifier starts with 10. and has a slash."""
    assert all(re.fullmatch(r"10\.\d{4,}/\S+", entry.doi) for entry in BIBLIOGRAPHY.values() if entry.doi)


def test_twice_the_same_id_is_refused():
    """Two rows of one id are refused."""
    with pytest.raises(ValueError, match="^source id must appear once in the bibliography, got 'x' twice$"):
        bibliography([ROW, ROW])


def test_unknown_kind_is_refused():
    """A kind that is not in the list is refused with the list."""
    with pytest.raises(ValueError, match="^source x kind must be one of standard, .*, got 'rumour'$"):
        bibliography([ROW | {"kind": "rumour"}])


def test_unknown_source_is_refused():
    """Asking for a source that is not there is refused."""
    with pytest.raises(ValueError, match="^source must be an id of the bibliography, got 'hearsay'$"):
        source("hearsay")


def test_citation_leaves_out_what_is_missing():
    """A citation joins only what there is."""
    entry = Source(id="x", kind="paper", title="T", year="", doi="10.1000/1", note="n", authors="A")
    assert entry.citation == "A, T, doi 10.1000/1"


@pytest.mark.parametrize("path", sorted(DATA_FOLDER.glob("*.csv")), ids=lambda path: path.name)
def test_data_files_are_plain(path):
    """Data files are UTF-8 text with plain line ends and one line end at the end."""
    text = Path(path).read_bytes().decode("utf-8")
    assert "\r" not in text
    assert text.endswith("\n")
    assert not text.endswith("\n\n")
