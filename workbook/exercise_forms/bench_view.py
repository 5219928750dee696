"""What is to be seen at the virtual bench after the steps of a log: words, table and pictures."""

from collections import Counter
from dataclasses import asdict
from functools import cache, lru_cache

import numpy as np

from drawings import bench_collar, pulled_stud
from grading.bench_days import begin_with, day
from grading.bench_logs import end_of, replay, try_out
from grading.bench_scores import met
from grading.bench_settings import SETTINGS, Dial
from grading.exercise import BenchKey
from grading.quantities import show_quantity
from grading.unit_spellings import shown_unit
from secondplate.bench import GAVE, WeldSettings, test_pull, weld

NO_STUD = "The work ended before any stud was welded."
ROW = 6  # rivets of the row that is welded once the learner says so
NOTHING_YET = "The bench is ready. Set the machine, then weld one stud."
LENGTH_SEEN_MM = 0.05  # finer than a rule shows


@cache
def warm_up():
    """Weld and draw one stud unseen: the first picture of a kernel takes longest, and nobody waits yet."""
    seed, job = day(0)
    key = BenchKey(seed=seed, job=job, start=begin_with(6))
    _picture(try_out(1, dict(key.start), key, pulled=True), key)


def controls(part, start):
    """Return the settings that a learner may change, as the browser needs them, as the machine stands."""
    return [_control(SETTINGS[name], start[name]) for name in part.settings]


def _control(setting, value):
    """Return one setting: a slider with its text field, or a list to choose from."""
    if isinstance(setting, Dial):
        return asdict(setting) | {"unit": shown_unit(setting.unit), "start": setting.typed(value)}
    options = [{"id": option.id, "text": option.text} for option in setting.options]
    return {"name": setting.name, "label": setting.label, "options": options, "start": setting.typed(value)}


def fixed(part, start):
    """Return the settings that stay as they are, in words."""
    return [
        setting.say(setting.typed(start[name]))
        for name, setting in SETTINGS.items()
        if name not in part.settings
    ]


def view(part, key, log):
    """Return what is to be seen after a log that has been read."""
    tries = replay(log, key)
    last = tries[-1] if tries else None
    return {
        "rows": [_row(part, one, tries[one.number - 2] if one.number > 1 else None) for one in tries],
        "pictures": [_picture(last, key)] if last else [],
        "sentence": _sentence(part, key, log, last),
        "ended": end_of(log),
    }


RULES = {
    "tested_first": "The first stud was pulled before another was welded",
    "one_change": "One setting was changed at a time",
    "right_direction": "Each change led toward a sound weld",
    "reached_window": "The last setting makes sound welds on this rivet",
    "stopped": "The work ended when it should, and for the right reason",
}


def truth(part, key, log):
    """Return what nobody sees at the bench, for after the work: the machine's truth and the rules kept."""
    if not end_of(log):
        return []
    last = log.welds[-1] if log.welds else key.start
    shown, given = last["current_a"], last["current_a"] * key.job.current_share
    amperes = f"{show_quantity(shown, 'A')} and gave {show_quantity(given, 'A', 3)}"
    machine = f"The machine showed {amperes}, at {show_quantity(key.job.voltage_v, 'V', 3)} across the arc."
    rules = (f"{text}: {'yes' if met(part, key, log, rule) else 'no'}." for rule, text in RULES.items())
    return [machine, *rules]


def _row(part, one, before):
    """Return one line of the log: what was set or changed, what is to be seen, what the pull gave."""
    changed = [name for name in part.settings if before is None or one.typed[name] != before.typed[name]]
    said = "; ".join(_change(name, one, before) for name in changed)
    return {
        "number": one.number,
        "set": said or "nothing changed",
        "seen": _seen(one.outcome),
        "pull": _pulled(one.pull) if one.pull else "not pulled",
    }


def _change(name, one, before):
    """Say a setting, and what it was for the stud before."""
    said = SETTINGS[name].say(one.typed[name])
    if before is None:
        return said
    was = SETTINGS[name].say(before.typed[name]).removeprefix(SETTINGS[name].label).strip()
    return f"{said} (was {was})"


def _seen(outcome):
    """Say in a few words what eye and rule find on a weld, without naming a fault."""
    if outcome.collar_height_mm < LENGTH_SEEN_MM or "hang_up" in outcome.defects:
        collar = "no collar"
    else:
        gap = outcome.collar_gap_deg
        closed = f"open over {gap:.0f} degrees" if gap > 0 else "closed all round"
        collar = f"collar {outcome.surface}, {outcome.collar_height_mm:.1f} mm high, {closed}"
    off = outcome.length_off_mm
    length = f"{abs(off):.1f} mm too {'long' if off > 0 else 'short'}"
    return f"{collar}; stud {'of the right length' if abs(off) < LENGTH_SEEN_MM else length}"


def _pulled(pull):
    """Say what a pull gave."""
    face = f", face {pull.face}" if pull.face else ""
    return f"{show_quantity(pull.force_n, 'N')}: {pull.gave}{face}"


def _sentence(part, key, log, last):
    """Say what came of the last step, for eye and ear."""
    if not log.welds:
        return NO_STUD if end_of(log) else NOTHING_YET
    if end_of(log) == "row":
        return f"The row is welded with the setting of stud {last.number}: {_row_words(log, key)}"
    if end_of(log) == "stop":
        reasons = {option.id: option.text for option in part.stop_reasons}
        return f"Stopped: {reasons[log.why].rstrip('.')}. This rivet goes to another method."
    words = _picture(last, key)["alt"]
    return f"Stud {last.number}, {'pulled' if last.pull else 'welded'}. {words}"


def _row_words(log, key):
    """Weld and pull the row, and count what came of it."""
    set_up = WeldSettings(**log.welds[-1])
    numbers = len(log.welds) + 1 + np.arange(ROW)
    outcome = weld(set_up, key.job, seed=key.seed, number=numbers)
    counts = Counter(np.asarray(test_pull(outcome, set_up, key.job).gave).tolist())
    said = ", ".join(f"{gave} {counts[gave]}" for gave in GAVE if counts[gave])
    return f"of {ROW} studs pulled: {said}."


def _picture(one, key):
    """Return the picture of the last stud: as welded, or what its pull left."""
    return _drawn(one.pull, one.outcome, one.settings, key.job)


@lru_cache(maxsize=64)
def _drawn(pull, outcome, settings, job):
    """Draw one stud; the log is shown anew after every step, but a stud does not change."""
    if pull is None:
        picture = bench_collar(outcome, settings, job)
    else:
        picture = pulled_stud(pull, outcome, settings, job)
    return {"html": picture._repr_html_(), "alt": picture.alt}
