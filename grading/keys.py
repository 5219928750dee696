"""Keys of the exercises: solved by the library for many learners in one call, then handed out row by row.

A key that does not fit its part, or that cannot be computed, becomes a problem of that learner's round; it
never becomes a mark.
"""

import math
from collections import defaultdict
from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

import numpy as np

from grading.bench_settings import SETTINGS
from grading.exercise import (
    Bench,
    BenchKey,
    Choice,
    ChoiceKey,
    Choices,
    ChoicesKey,
    Number,
    NumberKey,
    Order,
    OrderKey,
    Range,
    RangeKey,
    Reading,
    RowRun,
    RowRunKey,
    Verdicts,
    VerdictsKey,
)
from grading.part_results import FAULTS
from grading.row_plans import SLIP_IDS
from grading.variants import canonical, digest_of, scenario, table
from secondplate.bench import FINDINGS, STOP_REASONS, RowDay, WeldSettings

_WEIGHT_NOISE = 1e-9  # shares such as 0.2 are no binary fractions


class RoundKey(NamedTuple):
    """One learner's key to one round of one exercise: the numbers, their digest and a key for each part.

    ``keys`` and ``numbers`` are empty where ``problem`` says why there are none.
    """

    digest: str
    keys: dict
    problem: str = ""
    numbers: Mapping = MappingProxyType({})


def row_keys(exercise, scenarios):
    """Return for each scenario a mapping from part id to a key that holds single values.

    The library is called once for all of them. Raises ``ValueError`` where the solution does not fit.
    """
    scenarios = list(scenarios)
    if not scenarios:
        return []
    solved = exercise.solve(table(scenarios))
    ids = [part.id for part in exercise.parts]
    if set(solved) != set(ids):
        _refuse(exercise.id, f"answer the parts {', '.join(ids)}", ", ".join(map(str, solved)))
    columns = [
        _rows(f"{exercise.id}.{part.id}", part, solved[part.id], len(scenarios)) for part in exercise.parts
    ]
    return [dict(zip(ids, row, strict=True)) for row in zip(*columns, strict=True)]


def _refuse(name, must, got):
    """Raise the one sentence about a solution that does not fit."""
    message = f"solution of {name} must {must}, got {got}"
    raise ValueError(message)


def _rows(name, part, key, count):
    """Split the key of one part into one key per scenario, each checked."""
    wanted, split = _SPLIT[type(part)]
    if not isinstance(key, wanted):
        _refuse(name, f"be a {wanted.__name__}", type(key).__name__)
    return split(name, part, key, count)


def _floats(name, values, count, *, finite):
    """Return a column of numbers; where they need not be finite, one that is not matches nothing."""
    column = np.asarray(values, dtype=float)
    if column.ndim == 0:
        column = np.broadcast_to(column, (count,))
    if column.shape != (count,):
        _refuse(name, f"hold {count} values", f"shape {column.shape}")
    whole = np.isfinite(column)
    if finite and not whole.all():
        _refuse(name, "be finite", column[~whole][0])
    return column.tolist() if whole.all() else np.where(whole, column, math.nan).tolist()


def _listed(name, values, count):
    """Return a column of ids or tuples of ids as plain Python values; a single one counts for every row."""
    column = values.tolist() if isinstance(values, np.ndarray) else values
    if isinstance(column, str):
        column = [column] * count
    column = list(column)
    if column and isinstance(values, tuple) and len(column) != count:
        _refuse(name, f"hold {count} entries", len(column))
    if len(column) != count:
        _refuse(name, f"hold {count} entries", len(column))
    return column


def _slip_columns(name, part, slips):
    """Check that a key names exactly the slips of its part."""
    ids = [slip.id for slip in part.slips]
    if set(slips) != set(ids):
        _refuse(name, f"hold the slips {', '.join(ids)}", ", ".join(slips))
    return ids


def _split_number(name, part, key, count):
    """Split the key of a number."""
    ids = _slip_columns(name, part, key.slips)
    values = _floats(name, key.value, count, finite=True)
    slips = [_floats(f"{name}.{slip}", key.slips[slip], count, finite=False) for slip in ids]
    by_row = zip(*slips, strict=True) if ids else [()] * count
    return [
        NumberKey(value=value, slips=dict(zip(ids, row, strict=True)))
        for value, row in zip(values, by_row, strict=True)
    ]


def _split_range(name, part, key, count):
    """Split the key of a band."""
    ids = _slip_columns(name, part, key.slips)
    lows = _floats(f"{name} low", key.low, count, finite=True)
    highs = _floats(f"{name} high", key.high, count, finite=True)
    if any(low > high for low, high in zip(lows, highs, strict=True)):
        _refuse(name, "have low ends that are not above the high ends", "one that is")
    ends = []
    for slip in ids:
        low, high = key.slips[slip]
        columns = (_floats(f"{name}.{slip}", end, count, finite=False) for end in (low, high))
        ends.append(list(zip(*columns, strict=True)))
    by_row = zip(*ends, strict=True) if ids else [()] * count
    return [
        RangeKey(low=low, high=high, slips=dict(zip(ids, row, strict=True)))
        for low, high, row in zip(lows, highs, by_row, strict=True)
    ]


def _split_choice(name, part, key, count):
    """Split the key of a choice."""
    column = [str(right) for right in _listed(name, key.right, count)]
    _require_ids(name, column, part.options)
    made = {right: ChoiceKey(right=right) for right in set(column)}
    return [made[right] for right in column]


def _require_ids(name, ids, options):
    """Refuse ids that are not among the options."""
    known = {option.id for option in options}
    for other in set(ids) - known:
        _refuse(name, f"be among {', '.join(sorted(known))}", repr(other))


def _split_choices(name, part, key, count):
    """Split the key of several choices."""
    column = _tuples(name, key.right, count)
    for right in set(column):
        _require_ids(name, right, part.options)
        if not right or len(set(right)) != len(right):
            _refuse(name, "hold at least one option and none twice", right)
    made = {right: ChoicesKey(right=right) for right in set(column)}
    return [made[right] for right in column]


def _tuples(name, values, count):
    """Return a column of tuples of ids; one tuple of ids counts for every row."""
    values = list(values)
    if values and all(isinstance(value, str) for value in values):
        values = [values] * count
    if len(values) != count:
        _refuse(name, f"hold {count} entries", len(values))
    return [tuple(str(item) for item in value) for value in values]


def _split_order(name, part, key, count):
    """Split the key of an order."""
    column = _tuples(name, key.right, count)
    ids = sorted(option.id for option in part.options)
    for right in set(column):
        if sorted(right) != ids:
            _refuse(name, f"place each of {', '.join(ids)}", right)
    made = {right: OrderKey(right=right) for right in set(column)}
    return [made[right] for right in column]


def _split_verdicts(name, part, key, count):
    """Split the key of a table of verdicts."""
    ids = [row.id for row in part.rows]
    if set(key.right) != set(ids):
        _refuse(name, f"hold the rows {', '.join(ids)}", ", ".join(key.right))
    columns = []
    for row in ids:
        column = [str(verdict) for verdict in _listed(f"{name}.{row}", key.right[row], count)]
        _require_ids(f"{name}.{row}", column, part.verdicts)
        columns.append(column)
    return [VerdictsKey(right=dict(zip(ids, row, strict=True))) for row in zip(*columns, strict=True)]


def _split_bench(name, part, key, count):
    """Split the key of work at the bench; the part must fit what the bench can judge and set."""
    _require_bench_part(name, part)
    columns = (key.seed, key.job, key.start)
    if any(len(column) != count for column in columns):
        _refuse(name, f"hold {count} days", ", ".join(str(len(column)) for column in columns))
    made = {}  # learners with the same day share its key, and so what is worked out about it
    row_names = [(seed, id(job), id(start)) for seed, job, start in zip(*columns, strict=True)]
    for row, day in zip(row_names, zip(*columns, strict=True), strict=True):
        if row not in made:
            made[row] = _day_key(name, *day)
    return [made[row] for row in row_names]


def _day_key(name, seed, job, start):
    """Return the key of one day at the bench, or refuse a start that cannot be."""
    if set(start) != set(SETTINGS):
        _refuse(name, f"start with the settings {', '.join(SETTINGS)}", ", ".join(start))
    if WeldSettings(**start).flange_diameter_mm > job.head_diameter_mm:
        _refuse(name, "start with a flange that fits on the head", f"a head of {job.head_diameter_mm:g} mm")
    return BenchKey(seed=seed, job=job, start=start)


def _require_bench_part(name, part):
    """Refuse a part with rules, settings or reasons that the bench does not know."""
    rules = [rule.id for rule in part.criteria]
    if not rules or not set(rules) <= set(FINDINGS) or len(set(rules)) != len(rules):
        _refuse(name, f"be judged by some of {', '.join(FINDINGS)}", ", ".join(rules))
    weights = [rule.weight for rule in part.criteria]
    if min(weights) <= 0 or abs(sum(weights) - 1.0) > _WEIGHT_NOISE:
        _refuse(name, "have weights above 0 that add up to 1", ", ".join(map(str, weights)))
    if not part.settings or not set(part.settings) <= set(SETTINGS):
        _refuse(name, f"open some of the settings {', '.join(SETTINGS)}", ", ".join(part.settings))
    reasons = [option.id for option in part.stop_reasons]
    if set(reasons) != set(STOP_REASONS):
        _refuse(name, f"have the reasons to stop {', '.join(STOP_REASONS)}", ", ".join(reasons))


def _split_row_run(name, part, key, count):
    """Split the key of a row; learners with the same day share its key."""
    if (
        not {slip.id for slip in part.slips} <= set(SLIP_IDS)
        or not 0 <= part.full_within < part.nothing_beyond
    ):
        _refuse(name, f"have slips of {', '.join(SLIP_IDS)} and rising limits", part)
    if len(key.seed) != count or len(key.day) != count:
        _refuse(name, f"hold {count} days", f"{len(key.seed)}, {len(key.day)}")
    for day in key.day:
        if not isinstance(day, RowDay):
            _refuse(name, "hold days of a row", type(day).__name__)
    made = {}
    for seed, day in zip(key.seed, key.day, strict=True):
        if (seed, id(day)) not in made:
            made[seed, id(day)] = RowRunKey(seed=seed, day=day)
    return [made[seed, id(day)] for seed, day in zip(key.seed, key.day, strict=True)]


_SPLIT = {
    Number: (NumberKey, _split_number),
    Range: (RangeKey, _split_range),
    Reading: (NumberKey, _split_number),
    Choice: (ChoiceKey, _split_choice),
    Choices: (ChoicesKey, _split_choices),
    Order: (OrderKey, _split_order),
    Verdicts: (VerdictsKey, _split_verdicts),
    Bench: (BenchKey, _split_bench),
    RowRun: (RowRunKey, _split_row_run),
}


def keys_for(wanted, *, course_key, exercises):
    """Return the keys of many learners' rounds, by ``(exercise id, learner, round number)``.

    Each exercise is solved once for everybody who answered it. Where that fails, each row is tried alone, so
    that one learner's numbers cannot spoil the marks of a class.
    """
    by_exercise = defaultdict(list)
    for exercise_id, learner, round_number in dict.fromkeys(wanted):
        by_exercise[exercise_id].append((learner, round_number))
    keys = {}
    for exercise_id, rounds in by_exercise.items():
        solved = solve_rounds(exercises[exercise_id], rounds, course_key)
        for (learner, round_number), key in zip(rounds, solved, strict=True):
            keys[exercise_id, learner, round_number] = key
    return keys


def solve_rounds(exercise, rounds, course_key):
    """Return a round key for each ``(learner, round number)`` of one exercise."""
    try:
        drawn = [
            scenario(exercise, course_key=course_key, learner=learner, round_number=round_number)
            for learner, round_number in rounds
        ]
        names = [canonical(numbers) for numbers in drawn]
        known = _known_keys(exercise)
        new = {name: numbers for name, numbers in zip(names, drawn, strict=True) if name not in known}
        solved = _solve_drawn(exercise, new)
    except FAULTS as fault:
        if len(rounds) == 1:
            problem = f"{exercise.id} cannot be solved: {type(fault).__name__}: {fault}"
            return [RoundKey(digest="", keys={}, problem=problem)]
        return [key for one in rounds for key in solve_rounds(exercise, [one], course_key)]
    if len(known) + len(solved) <= _MOST_KNOWN:
        known.update(solved)
    return [solved.get(name) or known[name] for name in names]


def _solve_drawn(exercise, drawn):
    """Return round keys of scenarios by their canonical JSON."""
    rows = row_keys(exercise, drawn.values())
    return {
        name: RoundKey(digest=digest_of(name), keys=row, numbers=numbers)
        for (name, numbers), row in zip(drawn.items(), rows, strict=True)
    }


_KNOWN = {}  # by id of an exercise: the exercise itself, and keys to scenarios that come again and again
_MOST_KNOWN = 100  # scenarios of one exercise; some have a few dozen, with others hardly two are the same


def _known_keys(exercise):
    """Return the keys of this exercise that are known, by their scenarios in canonical JSON."""
    known = _KNOWN.get(id(exercise))
    if known is None or known[0] is not exercise:
        known = _KNOWN[id(exercise)] = (exercise, {})
    return known[1]
