"""The class file: what it sets, and the one sentence it answers a mistake with."""

from datetime import timedelta

import pytest

from grading.class_settings import (
    SHIPPED_CLASS_FILE,
    ClassFileError,
    ClassSettings,
    class_file_problems,
    default_settings,
    read_class_file,
    settings_of,
)

GOOD = '[class]\ncourse_key = "key"\ntitle = "A class"\n'


def _write(folder, text):
    """Write a class file and return its path."""
    path = folder / "class.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_shipped_file_can_be_read():
    """The class file that ships with the workbook is a sound one."""
    settings = read_class_file(SHIPPED_CLASS_FILE)
    assert settings.tries_per_round == len(settings.credit_by_try) == 3


def test_what_is_left_out_is_the_default(tmp_path):
    """A file with only the key and the title gets the default policy."""
    settings = read_class_file(_write(tmp_path, GOOD))
    assert settings == ClassSettings(course_key="key", title="A class")
    assert settings.credit_by_try == (1.0, 0.8, 0.6)


def test_every_setting_is_read(tmp_path):
    """Each setting in the file arrives; a date that TOML reads itself becomes ISO text."""
    text = GOOD + (
        "due = 2026-12-18T18:00:00+01:00\ntries_per_round = 2\n"
        "credit_by_try = [1, 0.5]\nlater_round_credit = 0.7\n"
    )
    settings = read_class_file(_write(tmp_path, text))
    assert settings.due == "2026-12-18T18:00:00+01:00"
    assert settings.credit_by_try == (1, 0.5)
    assert (settings.tries_per_round, settings.later_round_credit) == (2, 0.7)


@pytest.mark.parametrize(
    ("more", "sentence"),
    [
        ("dew = 'x'\n", "setting in class.toml must be one of course_key, title, due.*, got 'dew'"),
        ("due = '18 December'\n", "due must be an ISO time such as .*, got '18 December'"),
        ("due = 2026-12-18T18:00:00\n", "due must be a time with its offset from UTC"),
        ("due = 5\n", "due must be an ISO time"),
        ("tries_per_round = 0\n", "tries_per_round must be a whole number from 1 to 20, got 0"),
        ("tries_per_round = true\n", "tries_per_round must be a whole number from 1 to 20, got True"),
        ("tries_per_round = 2\n", "credit_by_try must be 2 numbers, one for each try"),
        ("credit_by_try = 'abc'\n", "credit_by_try must be 3 numbers"),
        ("credit_by_try = [1, 2, 0.5]\n", "credit_by_try must be numbers from 0 to 1, got 2"),
        ("credit_by_try = [1, nan, 0.5]\n", "credit_by_try must be numbers from 0 to 1, got nan"),
        ("credit_by_try = [0.5, 0.8, 0.5]\n", "credit_by_try must be never rising"),
        ("later_round_credit = 'much'\n", "later_round_credit must be a number from 0 to 1, got 'much'"),
        ("[other]\n", r"class.toml must hold one table \[class\], got class, other"),
        ("title = 'again'\n", "class.toml is not a readable class file"),
    ],
)
def test_mistakes_are_refused_in_one_sentence(tmp_path, more, sentence):
    """A setting that is misspelt, out of range or of the wrong kind is refused by name."""
    with pytest.raises(ClassFileError, match=sentence):
        read_class_file(_write(tmp_path, GOOD + more))


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", r"must hold one table \[class\], got nothing"),
        ("class = 3\n", r"must hold one table \[class\]"),
        ("[class]\ntitle = 'x'\n", "must set course_key, got only title"),
        ("[class]\ncourse_key = ' '\ntitle = 'x'\n", "course_key must be a text of 1 to 200 characters"),
        ("[class]\ncourse_key = 5\ntitle = 'x'\n", "course_key must be a text"),
        ("#" * 70_000, "class.toml must be at most 64 kB, got 68 kB"),
    ],
)
def test_files_without_the_needed_table_are_refused(tmp_path, text, sentence):
    """An empty, an incomplete and a huge file each get their sentence."""
    with pytest.raises(ClassFileError, match=sentence):
        read_class_file(_write(tmp_path, text))


def test_missing_and_binary_files_are_refused(tmp_path):
    """A file that is not there and one that is no text are refused, not crashed on."""
    with pytest.raises(ClassFileError, match="cannot be read: No such file"):
        read_class_file(tmp_path / "class.toml")
    (tmp_path / "class.toml").write_bytes(b"\xff\xfe\x00")
    with pytest.raises(ClassFileError, match="is not a readable class file"):
        read_class_file(tmp_path / "class.toml")


def test_byte_order_mark_is_allowed(tmp_path):
    """A text editor that writes a byte order mark does no harm."""
    (tmp_path / "class.toml").write_bytes(b"\xef\xbb\xbf" + GOOD.encode())
    assert read_class_file(tmp_path / "class.toml").title == "A class"


def test_nearest_class_file_above_a_folder_holds(tmp_path):
    """A page's folder takes the class file above it; without any, the shipped one holds."""
    page = tmp_path / "workbook" / "1_page"
    page.mkdir(parents=True)
    assert settings_of(page) == read_class_file(SHIPPED_CLASS_FILE)
    _write(tmp_path / "workbook", GOOD)
    assert settings_of(page).title == "A class"


def test_defaults_are_sound():
    """The defaults pass their own checks."""
    assert default_settings().course_key == "no-class"


@pytest.mark.parametrize(
    ("late_by", "off"),
    [
        (timedelta(minutes=-1), 0.0),
        (timedelta(minutes=30), 0.0),
        (timedelta(minutes=30, seconds=1), 0.1),
        (timedelta(days=1, minutes=30), 0.1),
        (timedelta(days=1, minutes=31), 0.2),
        (timedelta(days=3, minutes=31), 0.4),
        (timedelta(days=40), 0.45),
    ],
)
def test_late_work_loses_a_share_for_each_day_begun(late_by, off):
    """Nothing within the grace, a tenth for each day begun after it, and never below the floor."""
    settings = ClassSettings(
        course_key="k", title="K", late_grace_minutes=30, late_share_by_day=0.1, late_floor=0.55
    )
    assert settings.late_share_off(late_by) == pytest.approx(off, abs=1e-12), "floats of one sum"


def test_rounds_after_the_most_earn_nothing():
    """The first round earns in full, later ones their share, those after the most nothing."""
    settings = ClassSettings(course_key="k", title="K", later_round_credit=0.5, most_rounds=2)
    assert settings.credits(1) == (1.0, 0.8, 0.6)
    assert settings.credits(2) == pytest.approx((0.5, 0.4, 0.3), abs=1e-12), "floats of one product"
    assert settings.credits(3) == (0.0, 0.0, 0.0)
    assert ClassSettings(course_key="k", title="K").credits(50)[0] == 0.8, "without a most, every round earns"


def test_a_refusal_names_the_line(tmp_path):
    """The line of the refused setting is named, comments, quotes and indents notwithstanding."""
    path = _write(tmp_path, "# title of it all\n\n" + GOOD + '# late_floor = 0.5\n  "late_floor" = 2\n')
    with pytest.raises(
        ClassFileError, match=r"^class.toml line 7: late_floor must be a number from 0 to 1, got 2$"
    ):
        read_class_file(path)


def test_every_problem_of_a_file_is_found_with_its_line(tmp_path):
    """All refused settings of one file come together; a sound file has none; a syntax error has its line."""
    text = "[class]\ntitle = 3\ndew = 'x'\ntries_per_round = 0\ncredit_by_try = [1]\nlate_floor = -1\n"
    problems = class_file_problems(_write(tmp_path, text))
    assert [each.partition(" must")[0] for each in problems] == [
        "class.toml line 3: setting in class.toml",
        "class.toml",
        "class.toml line 2: title",
        "class.toml line 4: tries_per_round",
        "class.toml line 6: late_floor",
    ]
    assert class_file_problems(_write(tmp_path, GOOD)) == []
    (problem,) = class_file_problems(_write(tmp_path, GOOD + "due = \n"))
    assert "line 4" in problem
