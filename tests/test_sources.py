"""The chain from a value to its source: checks name a source, and every source is named by something."""

import re
from pathlib import Path

import pytest

from secondplate.data_files import DATA_FOLDER
from secondplate.sources import BIBLIOGRAPHY

ROOT = Path(__file__).resolve().parent.parent
PUBLISHED = sorted((ROOT / "tests" / "published").glob("test_*.py"))
WORD = re.compile(r"[a-z0-9_]+")


@pytest.mark.parametrize("path", PUBLISHED, ids=lambda path: path.stem)
def test_each_published_file_names_its_source(path):
    """Each file of published checks names one source of the bibliography, and is called after it."""
    (named,) = re.findall(r'^SOURCE = "(\w+)"$', path.read_text(encoding="utf-8"), flags=re.MULTILINE)
    assert named in BIBLIOGRAPHY
    assert path.stem == f"test_{named}"


def test_every_source_is_named_by_a_value_a_docstring_or_a_check():
    """No entry of the bibliography lies idle."""
    texts = [path for path in DATA_FOLDER.glob("*.csv") if path.stem != "sources"]
    texts += [*(ROOT / "workbook" / "secondplate").rglob("*.py"), *PUBLISHED]
    named = {word for path in texts for word in WORD.findall(path.read_text(encoding="utf-8"))}
    assert set(BIBLIOGRAPHY) - named == set()
