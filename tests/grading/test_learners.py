"""Who is at work: names as they are typed, files that hold them, and what files are called after them."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from grading.learners import learner_of, learner_slug, save_learner


@pytest.fixture
def workbook(tmp_path):
    """Return a workbook with one page, signed in."""
    folder = tmp_path / "work book"
    (folder / "1_arcs").mkdir(parents=True)
    save_learner(folder, " Ann  Lee ")
    return folder


@pytest.mark.parametrize("name", ["", "  ", "\u200b", "a" * 81])
def test_unusable_names_are_refused(workbook, name):
    """A name must hold something that can be seen, and fit on a mark list."""
    with pytest.raises(ValueError, match="name must be 1 to 80 characters that can be seen"):
        save_learner(workbook, name)


def test_learner_is_found_from_any_page(workbook, tmp_path):
    """The nearest learner file above a folder counts; without one it is practice."""
    assert learner_of(workbook / "1_arcs").display_name == "Ann Lee"
    assert learner_of(tmp_path).learner == ""


@pytest.mark.parametrize(
    "text", ["[]", "{}", '{"name": 5}', '{"name": " "}', "\x00", '{"name": "' + "a" * 100 + '"}', "[" * 9999]
)
def test_broken_learner_files_are_said(workbook, text):
    """A learner file that cannot be used is practice with a sentence, never another learner."""
    (workbook / "learner.json").write_text(text)
    who = learner_of(workbook)
    assert who.learner == ""
    assert "sign in again" in who.problem


@pytest.mark.parametrize(
    ("name", "slug"),
    [("ann", "ann"), ("ann_lee", "ann_lee"), ("student7", "student7"), ("ANN", "ann")],
)
def test_plain_names_are_their_own_slug(name, slug):
    """A name of small letters, digits and low lines needs no change."""
    assert learner_slug(name) == slug


@given(st.text(min_size=1, max_size=60))
@settings(deadline=None)
def test_slugs_are_safe_file_names(name):
    """Any name gives a file name that every system takes: short, plain, no device name of Windows."""
    slug = learner_slug(name)
    assert 0 < len(slug) <= 50
    assert set(slug) <= set("abcdefghijklmnopqrstuvwxyz0123456789_")
    assert slug not in {"con", "nul", "prn", "aux", "com1", "lpt9"}


@pytest.mark.parametrize("name", ["con", "NUL", "Com1", "lpt9", "aux", "prn"])
def test_device_names_of_windows_are_changed(name):
    """A learner called like a device of Windows gets a file of their own."""
    assert learner_slug(name).startswith(f"{name.lower()}_")


def test_slugs_differ_where_names_do():
    """Names that lose their difference in plain letters keep it in the hash."""
    names = [
        "ann lee",
        "ann-lee",
        "ann.lee",
        "ann_lee",
        "\u00e4nn lee",
        "con",
        "../../x",
        "..\\x",
        "\u674e",
        "\u738b",
        "a" * 60,
        "a" * 61,
    ]
    assert len({learner_slug(name) for name in names}) == len(names)
