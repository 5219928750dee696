"""What an instructor sets for a class, read from one small file, ``class.toml``.

The file holds a ``[class]`` table; every name in it is checked, and a name that is not known is refused,
so that a misspelt setting cannot be passed over in silence. A refusal names the line.
"""

import re
import tomllib
from dataclasses import dataclass, fields
from datetime import datetime, timedelta
from pathlib import Path

CLASS_FILE = "class.toml"
SHIPPED_CLASS_FILE = Path(__file__).resolve().parent.parent / "workbook" / CLASS_FILE
MOST_BYTES = 64 * 1024
MOST_TRIES = 20
_NEEDED = ("course_key", "title")
MOST_ROUNDS = 100
MOST_GRACE_MINUTES = 7 * 24 * 60


class ClassFileError(ValueError):
    """A class file that cannot be used; the message is one sentence for the instructor.

    ``setting`` is the name of the setting that is refused, where it is one of them.
    """

    def __init__(self, message, *, setting=""):
        """Keep the sentence and the setting that it is about."""
        super().__init__(message)
        self.setting = setting


@dataclass(frozen=True, kw_only=True)
class ClassSettings:
    """One class: its key, its title, when hand-ins are due, and what late work, later tries and rounds earn.

    ``course_key`` enters the seed of every learner's numbers: another key gives the class other numbers.
    ``due`` is an ISO time with its offset from UTC, or empty. ``credit_by_try`` is the share of a part's
    points for the first, second ... try; ``later_round_credit`` is the share for rounds with fresh numbers,
    and rounds after ``most_rounds`` are practice that earns nothing (0: every round earns).

    Nothing is taken off within ``late_grace_minutes`` after a hand-in was due. For each day begun after
    that, ``late_share_by_day`` of its points is taken off, until ``late_floor`` of them is left.
    """

    course_key: str
    title: str
    due: str = ""
    tries_per_round: int = 3
    credit_by_try: tuple[float, ...] = (1.0, 0.8, 0.6)
    later_round_credit: float = 0.8
    most_rounds: int = 0
    late_grace_minutes: int = 0
    late_share_by_day: float = 0.0
    late_floor: float = 0.0

    def __post_init__(self):
        """Refuse settings that would mark wrongly."""
        _require_text("course_key", self.course_key)
        _require_text("title", self.title)
        _require_due(self.due)
        _require_whole("tries_per_round", self.tries_per_round, 1, MOST_TRIES)
        _require_credit_by_try(self.credit_by_try, self.tries_per_round)
        for name in ("later_round_credit", "late_share_by_day", "late_floor"):
            _require_share(name, getattr(self, name))
        _require_whole("most_rounds", self.most_rounds, 0, MOST_ROUNDS)
        _require_whole("late_grace_minutes", self.late_grace_minutes, 0, MOST_GRACE_MINUTES)

    def credits(self, round_number):
        """Return the share of a part's points that each try of a round earns."""
        if self.most_rounds and round_number > self.most_rounds:
            return (0.0,) * self.tries_per_round
        if round_number > 1:
            return tuple(self.later_round_credit * credit for credit in self.credit_by_try)
        return self.credit_by_try

    def late_share_off(self, late):
        """Return the share of a hand-in's points that is taken off; ``late`` is how long after it was due."""
        overdue = late - timedelta(minutes=self.late_grace_minutes)
        if overdue <= timedelta(0):
            return 0.0
        days = -(-overdue // timedelta(days=1))  # rounded up: a day begun counts
        return min(days * self.late_share_by_day, 1.0 - self.late_floor)


def _refuse(name, must, got):
    """Raise the one sentence that every refusal has."""
    message = f"{name} must be {must}, got {got!r}"
    raise ClassFileError(message, setting=name)


def _require_whole(name, value, low, high):
    """Refuse what is not a whole number in its range."""
    if type(value) is not int or not low <= value <= high:
        _refuse(name, f"a whole number from {low} to {high}", value)


def _require_share(name, value):
    """Refuse what is not a share."""
    if type(value) not in (int, float) or not 0 <= value <= 1:
        _refuse(name, "a number from 0 to 1", value)


def _require_credit_by_try(credits, tries):
    """Refuse credit that does not fit the tries, is no share, or rises from one try to the next."""
    if not isinstance(credits, tuple) or len(credits) != tries:
        _refuse("credit_by_try", f"{tries} numbers, one for each try", credits)
    for credit in credits:
        if type(credit) not in (int, float) or not 0 <= credit <= 1:
            _refuse("credit_by_try", "numbers from 0 to 1", credit)
    if any(late > early for early, late in zip(credits, credits[1:], strict=False)):
        _refuse("credit_by_try", "never rising from one try to the next", credits)


def _require_text(name, value):
    """Refuse what is not a short text."""
    if not isinstance(value, str) or not value.strip() or len(value) > 200:
        _refuse(name, "a text of 1 to 200 characters", value)


def _require_due(due):
    """Refuse a due time that could be understood in two ways."""
    if due == "":
        return
    try:
        moment = datetime.fromisoformat(due)
    except (TypeError, ValueError):
        _refuse("due", "an ISO time such as 2026-12-18T18:00:00+01:00, or empty", due)
    if moment.tzinfo is None:
        _refuse("due", "a time with its offset from UTC, such as 2026-12-18T18:00:00+01:00", due)


def read_class_file(path):
    """Return the settings in a class file, or raise ``ClassFileError`` with one sentence."""
    settings, errors = _read(path, most_errors=1)
    if errors:
        raise errors[0]
    return settings


def class_file_problems(path):
    """Return everything that is wrong with a class file, each in one sentence with its line."""
    return [str(error) for error in _read(path, most_errors=MOST_BYTES)[1]]


def _read(path, *, most_errors):
    """Return ``(settings or None, errors)`` of a class file; reading goes on without what is refused."""
    path = Path(path)
    try:
        text = _text_of(path)
        values = _class_table(text, path.name)
    except ClassFileError as error:
        return None, [error]
    errors = []
    while len(errors) < most_errors:
        try:
            return _settings_from(values, path.name), errors
        except ClassFileError as error:
            errors.append(_with_line(error, text, path.name))
            values.pop(error.setting, None)
            if error.setting in _NEEDED:
                values[error.setting] = "-"
            elif error.setting == "tries_per_round":
                values.pop("credit_by_try", None)  # cannot be judged without it
    return None, errors


def _text_of(path):
    """Read a class file as text."""
    try:
        data = path.read_bytes()
    except OSError as error:
        message = f"{path} cannot be read: {error.strerror or error}"
        raise ClassFileError(message) from error
    if len(data) > MOST_BYTES:
        message = f"{path.name} must be at most {MOST_BYTES // 1024} kB, got {len(data) // 1024} kB"
        raise ClassFileError(message)
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
        message = f"{path.name} is not a readable class file: line {line} is no UTF-8 text"
        raise ClassFileError(message) from error


def _class_table(text, name):
    """Return the ``[class]`` table of a class file, its dates and lists as the settings want them."""
    try:
        content = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        message = f"{name} is not a readable class file: {error}"
        raise ClassFileError(message) from error
    given = content.get("class")
    if not isinstance(given, dict) or len(content) != 1:
        message = f"{name} must hold one table [class], got {', '.join(content) or 'nothing'}"
        raise ClassFileError(message)
    values = dict(given)
    if isinstance(values.get("due"), datetime):
        values["due"] = values["due"].isoformat()
    if isinstance(values.get("credit_by_try"), list):
        values["credit_by_try"] = tuple(values["credit_by_try"])
    return values


def _settings_from(values, name):
    """Turn the table into settings; unknown names are refused."""
    known = [field.name for field in fields(ClassSettings)]
    for key in values:
        if key not in known:
            message = f"setting in {name} must be one of {', '.join(known)}, got {key!r}"
            raise ClassFileError(message, setting=key)
    for key in _NEEDED:
        if key not in values:
            message = f"{name} must set {key}, got only {', '.join(values) or 'nothing'}"
            raise ClassFileError(message, setting=key)
    return ClassSettings(**values)


def _with_line(error, text, name):
    """Return the error with the line of the setting that it is about."""
    key = re.escape(error.setting)
    found = re.search(rf"""^[ \t]*(?:{key}|"{key}"|'{key}')[ \t]*[.=]""", text, re.MULTILINE) if key else None
    if not found:
        return error
    line = text.count("\n", 0, found.start()) + 1
    return ClassFileError(f"{name} line {line}: {error}", setting=error.setting)


def default_settings():
    """Return the settings of a workbook that belongs to no class."""
    return ClassSettings(course_key="no-class", title="Self-paced")


def settings_of(folder):
    """Return the settings that hold in a folder.

    They come from the nearest class file in it or above it, else from the one shipped with the workbook,
    else they are the defaults.
    """
    folder = Path(folder).resolve()
    for place in (folder, *folder.parents):
        if (place / CLASS_FILE).is_file():
            return read_class_file(place / CLASS_FILE)
    return read_class_file(SHIPPED_CLASS_FILE) if SHIPPED_CLASS_FILE.is_file() else default_settings()
