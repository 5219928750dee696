"""Logs that keep every rule of the bench, and logs that break one: for worked answers and for checks.

The way of a good log: weld, pull, and while that is not sound change the one setting that helps most, until
the row can be welded or the rule of stopping says so.
"""

from functools import lru_cache

import numpy as np

from grading.bench_logs import MOST_STEPS, read_typed_log, try_out
from grading.bench_scores import met
from grading.bench_settings import SETTINGS, Dial
from grading.exercise import BenchKey
from secondplate.bench import SETTING_NAMES, WeldJob, WeldSettings, in_window
from secondplate.bench_model import NUMBERS
from secondplate.bench_window import outside_window, verdicts

SOUND = ("rivet drawn out", "stud broke")
MOST_DAYS = 2048  # days whose logs are kept in memory
_GRID = 60  # places tried of a dial


def right_log(part, key):
    """Return a log that keeps every rule, as it would be saved; None where none was found."""
    return _worked_once(_right_log, part, key.seed, key.job, tuple(key.start.items()))


def slip_log(part, key, slip_id):
    """Return a log that breaks the rule of a slip, as it would be saved; None where this day gives none."""
    return _worked_once(_slip_log, part, key.seed, key.job, tuple(key.start.items()), slip_id)


@lru_cache(maxsize=4 * MOST_DAYS)
def _worked_once(work, part, seed, job, start, *more):
    """Work through a day once in a process: learners of an invented class share their days."""
    return work(part, BenchKey(seed=seed, job=job, start=dict(start)), *more)


def _right_log(part, key):
    """Work at the bench until the row or the rule of stopping ends it."""
    settings, steps, unsound = dict(key.start), [], 0
    most = int(NUMBERS["tries without a sound pull"]) if part.tries is None else part.tries
    for number in range(1, MOST_STEPS // 2):
        one = try_out(number, settings, key, pulled=True)
        steps += [_weld(part, settings), {"do": "pull"}]
        if one.outcome.burnt_through or one.pull.gave == "head tore":
            return [*steps, {"do": "stop", "why": "head"}]
        sound = one.outcome.sign_id == "good" and one.pull.gave in SOUND
        if sound and in_window(one.settings, key.job):
            return [*steps, {"do": "row"}]
        unsound = 0 if sound else unsound + 1
        if unsound >= most:
            return [*steps, {"do": "stop", "why": "tries"}]
        settings |= _best_change(part, key, settings)
    return None


def _slip_log(part, key, slip_id):
    """Try logs that might break a rule until one does."""
    (rule,) = (rule.id for rule in part.criteria if rule.slip.id == slip_id)
    good = right_log(part, key)
    for log in _BREAKING[rule](part, key, good) if good else ():
        read, problem = read_typed_log(part, key, log)
        if not problem and not met(part, key, read, rule):
            return log
    return None


def _weld(part, settings):
    """Return the step of one weld with the settings that a learner may set, typed."""
    return {"do": "weld", "settings": {name: SETTINGS[name].typed(settings[name]) for name in part.settings}}


def _changes(part, key, settings):
    """Return every single change of a setting that is worth a thought: ``{name: value}``."""
    changes = []
    for name in part.settings:
        setting = SETTINGS[name]
        if isinstance(setting, Dial):
            grid = np.round(np.linspace(setting.low, setting.high, _GRID) / setting.step) * setting.step
            values = [float(setting.typed(value)) for value in np.clip(grid, setting.low, setting.high)]
        else:
            values = setting.values
        changes += [{name: value} for value in values if value != settings[name]]
    return [change for change in changes if _fits(key, change)]


def _fits(key, change):
    """Tell whether the flange of the stud still lies on the head of the day."""
    if "stud_diameter_mm" not in change:
        return True
    return WeldSettings(**{**key.start, **change}).flange_diameter_mm <= key.job.head_diameter_mm


def _ways(key, settings, changes):
    """Return for each single change whether it leads toward the window."""
    found = verdicts([(settings, {**settings, **change}, vars(key.job)) for change in changes])
    return [next(iter(verdict.values())) for verdict in found]


def _best_change(part, key, settings):
    """Return the change that lies deepest inside the window, else the one that helps most; none: empty."""
    changes = _changes(part, key, settings)
    ways = _ways(key, settings, changes)
    better = [change for change, way in zip(changes, ways, strict=True) if way == "better"]
    if not better:
        return {}
    tried = [{**settings, **change} for change in better]
    fields = {name: np.array([one[name] for one in tried]) for name in SETTING_NAMES}
    job = {name: np.full(len(tried), value) for name, value in vars(key.job).items()}
    far = outside_window(fields | vars(WeldJob(**job)))
    least = np.flatnonzero(far <= far.min() + 1e-12)
    return better[least[len(least) // 2]]  # the middle of what is equally good is the safest place


def _start_of(log):
    """Return the first stud of a log and its pull."""
    return log[:2]


def _second_stud_unpulled(part, key, good):
    """Weld two studs before the first pull."""
    yield [good[0], *good]
    yield [good[0], *_start_of(good), {"do": "stop", "why": "tries"}]


def _two_changes(part, key, good):
    """Change two settings between the first stud and the second."""
    changes = _changes(part, key, key.start)
    for first, second in zip(changes, changes[::-1], strict=True):
        if set(first) != set(second):
            yield _second_stud(part, key, good, {**first, **second})


def _wrong_way(part, key, good):
    """Change a setting the wrong way after the first stud."""
    changes = _changes(part, key, key.start)
    for change, way in zip(changes, _ways(key, key.start, changes), strict=True):
        if way == "worse":
            yield _second_stud(part, key, good, change)


def _second_stud(part, key, good, change):
    """Weld and pull a second stud with other settings, then the row."""
    changed = _weld(part, {**key.start, **change})
    return [*_start_of(good), changed, {"do": "pull"}, {"do": "row"}]


def _row_outside(part, key, good):
    """Weld the row with a setting outside the window."""
    yield [*_start_of(good), {"do": "row"}]
    for change in _changes(part, key, key.start):
        yield [_weld(part, {**key.start, **change}), {"do": "pull"}, {"do": "row"}]


def _other_end(part, key, good):
    """End a good log the other way."""
    yield [*good[:-1], {"do": "row"} if good[-1]["do"] == "stop" else {"do": "stop", "why": "tries"}]


_BREAKING = {
    "tested_first": _second_stud_unpulled,
    "one_change": _two_changes,
    "right_direction": _wrong_way,
    "reached_window": _row_outside,
    "stopped": _other_end,
}
