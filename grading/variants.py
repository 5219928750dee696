"""Own numbers for every learner: a seed made from who, what and which round, and named draws from it.

Nothing here depends on the machine, the Python version or the order of calls: the same learner, course key,
exercise and round give the same numbers for ever.
"""

import json
import re
import unicodedata
from functools import lru_cache
from hashlib import blake2b

import msgspec
import numpy as np

PRACTICE = ""  # the learner of somebody who has not signed in

_PURPOSE = b"plate scenario 1"  # blake2b personalisation, 16 bytes: another use of the key gives other bytes
_BYTES = 8  # of a draw
_LONGEST_NAME = 200  # characters; signing in takes fewer
_MOST_SHUFFLED = 64  # 512 bits of digest hold 64! (296 bits) with more than 200 bits to spare


def normalise_learner(text):
    """Return the one spelling under which a learner is known.

    Letters that look alike in Unicode (NFKC), capitals, and runs of spaces are folded; control characters go.
    What is longer than any name is cut, so that no stranger's file can fill the memory of the cache.
    """
    return _normalised(text[:_LONGEST_NAME])


@lru_cache(maxsize=16384)
def _normalised(text):
    """Normalise a text of bearable length; the same names come again with every record."""
    folded = text
    for _ in range(4):  # folding can make new foldable letters; it settles after two rounds
        before = folded
        folded = unicodedata.normalize("NFKC", before).casefold()
        if folded == before:
            break
    kept = (" " if letter.isspace() else letter for letter in folded)
    kept = (letter for letter in kept if unicodedata.category(letter) not in {"Cc", "Cf", "Cs"})
    return " ".join("".join(kept).split())


def seed(*, course_key, learner, exercise_id, round_number):
    """Return 32 bytes that stand for one learner's numbers in one round of one exercise."""
    name, number = normalise_learner(learner), str(round_number)
    fields = f"{len(name)}:{name};{len(exercise_id)}:{exercise_id};{len(number)}:{number};"
    own = _course_hash(course_key).copy()
    own.update(fields.encode("utf-8", "surrogatepass"))
    return own.digest()


@lru_cache(maxsize=64)
def _course_hash(course_key):
    """Return the keyed hash of a course before anything is hashed; a course key may have any length."""
    key = blake2b(course_key.encode("utf-8", "surrogatepass"), digest_size=64).digest()
    return blake2b(key=key, person=_PURPOSE, digest_size=32)


class Draw:
    """Draws by name from one seed.

    Each name has its own stream, so adding a draw to an exercise changes none of the others.
    ``seed_of`` gives the same learner's seed for another exercise in the same round, by its id.
    """

    __slots__ = ("_keyed", "_seed", "_seed_of")

    def __init__(self, seed, seed_of=None):
        self._seed = seed
        self._seed_of = seed_of
        self._keyed = blake2b(key=seed, digest_size=_BYTES)  # copied for each name, which is half the work

    def of(self, exercise):
        """Return the numbers that the same learner gets in the same round of another exercise."""
        if self._seed_of is None:
            message = f"draw must be that of a learner to know the numbers of {exercise.id}, got a seed alone"
            raise ValueError(message)
        return exercise.draw(Draw(self._seed_of(exercise.id), self._seed_of))

    def _integer(self, name):
        """Return an integer of eight bytes that belongs to this name."""
        own = self._keyed.copy()
        own.update(name.encode())
        return int.from_bytes(own.digest(), "big")

    def pick(self, name, values):
        """Return one of ``values``, each as likely as the others."""
        if not values:
            message = f"values of draw {name!r} must hold at least one, got none"
            raise ValueError(message)
        return values[self._integer(name) % len(values)]

    def whole(self, name, low, high, step=1):
        """Return a whole number from ``low`` to ``high``, both included, in steps from ``low``."""
        if not (step > 0 and low <= high):
            _refuse_steps(name, low, high, step)
        return low + step * (self._integer(name) % ((high - low) // step + 1))

    def decimal(self, name, low, high, step, digits):
        """Return a number from ``low`` to ``high``, both included, in steps, to ``digits`` decimals."""
        if not (step > 0 and low <= high):
            _refuse_steps(name, low, high, step)
        count = int((high - low) / step + 1e-6) + 1  # 1e-6 of a step: (0.3 - 0.1) / 0.1 is 1.9999999999999998
        return round(low + step * (self._integer(name) % count), digits)

    def shuffle(self, name, values):
        """Return ``values`` as a list in drawn order, every order as likely as the others."""
        shuffled = list(values)
        if len(shuffled) > _MOST_SHUFFLED:
            message = f"values of draw {name!r} must be at most {_MOST_SHUFFLED}, got {len(shuffled)}"
            raise ValueError(message)
        rest = int.from_bytes(blake2b(name.encode(), key=self._seed, digest_size=64).digest(), "big")
        for last in range(len(shuffled) - 1, 0, -1):
            rest, other = divmod(rest, last + 1)
            shuffled[last], shuffled[other] = shuffled[other], shuffled[last]
        return shuffled


def _refuse_steps(name, low, high, step):
    """Refuse a range that holds no value."""
    message = f"draw {name!r} must rise from low to high in steps above 0, got {low}, {high}, step {step}"
    raise ValueError(message)


def scenario(exercise, *, course_key, learner, round_number):
    """Return the numbers that one learner gets in one round of one exercise."""

    def seed_of(exercise_id):
        return seed(
            course_key=course_key, learner=learner, exercise_id=exercise_id, round_number=round_number
        )

    return exercise.draw(Draw(seed_of(exercise.id), seed_of))


_CANONICAL = json.JSONEncoder(sort_keys=True, separators=(",", ":"), allow_nan=False).encode
_WRITE = msgspec.json.Encoder(order="sorted").encode
_POWER_OF_TEN = re.compile(rb"[0-9]e")


def canonical(scenario):
    """Return a scenario as canonical JSON: sorted names, no spaces, ASCII.

    The short way comes to the same bytes wherever none of the few things stands that it writes otherwise.
    """
    try:
        written = _WRITE(scenario)
    except (TypeError, ValueError):
        return _CANONICAL(scenario).encode()
    escapes = not written.isascii() or b"\\" in written or b"\x7f" in written
    if escapes or b"null" in written or _POWER_OF_TEN.search(written):  # what is not a number is null too
        return _CANONICAL(scenario).encode()
    return written


def scenario_digest(scenario):
    """Return 16 hexadecimal digits that stand for a scenario; saved with each answer."""
    return digest_of(canonical(scenario))


def digest_of(written):
    """Return the digest of a scenario in canonical JSON."""
    return blake2b(written, digest_size=8).hexdigest()


def table(scenarios):
    """Return scenarios of one exercise as columns: for each name an array with one entry per scenario."""
    rows = list(scenarios)
    return {name: _column([row[name] for row in rows]) for name in (rows[0] if rows else ())}


def _column(values):
    """Return values as an array; lists stay whole, one per entry, whatever their length."""
    if any(isinstance(value, (list, tuple, dict)) for value in values):
        column = np.empty(len(values), dtype=object)
        for row, value in enumerate(values):
            column[row] = value
        return column
    return np.array(values)


def words(exercise, scenario):
    """Return what the ``{name}`` places of an exercise's texts are filled from."""
    shown = exercise.shown(scenario) if exercise.shown else {}
    return {**scenario, **shown}


def fill(text, words):
    """Fill the ``{name}`` places of a prompt, a table row or the reasons."""
    return text.format_map(words)
