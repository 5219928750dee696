"""What an instructor sets for a class, read from one small file, ``class.toml``.

The file holds a ``[class]`` table; every name in it is checked, and a name that is not known is refused,
so that a misspelt setting cannot be passed over in silence.
"""

import tomllib
from dataclasses import dataclass, fields
from datetime import datetime
from pathlib import Path

CLASS_FILE = "class.toml"
SHIPPED_CLASS_FILE = Path(__file__).resolve().parent.parent / "workbook" / CLASS_FILE
MOST_BYTES = 64 * 1024
MOST_TRIES = 20


class ClassFileError(ValueError):
    """A class file that cannot be used; the message is one sentence for the instructor."""


@dataclass(frozen=True, kw_only=True)
class ClassSettings:
    """One class: its key, its title, when hand-ins are due, and what a later try or round still earns.

    ``course_key`` enters the seed of every learner's numbers: another key gives the class other numbers.
    ``due`` is an ISO time with its offset from UTC, or empty. ``credit_by_try`` is the share of a part's
    points for the first, second ... try; ``later_round_credit`` is the share for rounds with fresh numbers.
    """

    course_key: str
    title: str
    due: str = ""
    tries_per_round: int = 3
    credit_by_try: tuple[float, ...] = (1.0, 0.8, 0.6)
    later_round_credit: float = 0.8

    def __post_init__(self):
        """Refuse settings that would mark wrongly."""
        _require_text("course_key", self.course_key)
        _require_text("title", self.title)
        _require_due(self.due)
        if type(self.tries_per_round) is not int or not 1 <= self.tries_per_round <= MOST_TRIES:
            _refuse("tries_per_round", f"a whole number from 1 to {MOST_TRIES}", self.tries_per_round)
        if not isinstance(self.credit_by_try, tuple) or len(self.credit_by_try) != self.tries_per_round:
            _refuse("credit_by_try", f"{self.tries_per_round} numbers, one for each try", self.credit_by_try)
        for credit in (*self.credit_by_try, self.later_round_credit):
            if type(credit) not in (int, float) or not 0 <= credit <= 1:
                _refuse("credit", "a number from 0 to 1", credit)
        if any(late > early for early, late in zip(self.credit_by_try, self.credit_by_try[1:], strict=False)):
            _refuse("credit_by_try", "never rising from one try to the next", self.credit_by_try)


def _refuse(name, must, got):
    """Raise the one sentence that every refusal has."""
    message = f"{name} must be {must}, got {got!r}"
    raise ClassFileError(message)


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
    path = Path(path)
    try:
        data = path.read_bytes()
        if len(data) > MOST_BYTES:
            message = f"{path.name} must be at most {MOST_BYTES // 1024} kB, got {len(data) // 1024} kB"
            raise ClassFileError(message)
        content = tomllib.loads(data.decode("utf-8-sig"))
    except OSError as error:
        message = f"{path} cannot be read: {error.strerror or error}"
        raise ClassFileError(message) from error
    except (UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        message = f"{path.name} is not a readable class file: {error}"
        raise ClassFileError(message) from error
    return _settings_from(content, path.name)


def _settings_from(content, name):
    """Turn the parsed file into settings; unknown names are refused."""
    known = [field.name for field in fields(ClassSettings)]
    given = content.get("class")
    if not isinstance(given, dict) or len(content) != 1:
        message = f"{name} must hold one table [class], got {', '.join(content) or 'nothing'}"
        raise ClassFileError(message)
    for key in given:
        if key not in known:
            message = f"setting in {name} must be one of {', '.join(known)}, got {key!r}"
            raise ClassFileError(message)
    for key in ("course_key", "title"):
        if key not in given:
            message = f"{name} must set {key}, got only {', '.join(given) or 'nothing'}"
            raise ClassFileError(message)
    values = dict(given)
    if isinstance(values.get("due"), datetime):
        values["due"] = values["due"].isoformat()
    if isinstance(values.get("credit_by_try"), list):
        values["credit_by_try"] = tuple(values["credit_by_try"])
    return ClassSettings(**values)


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
