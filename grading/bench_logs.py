"""Logs of the virtual bench: read from what a stranger may have saved, and played again by the library.

A log is a list of steps. It holds settings and nothing else that counts: what came of each weld and pull is
computed anew from the seed of the day.
"""

from dataclasses import dataclass
from itertools import accumulate

from grading.bench_settings import SETTINGS
from secondplate.bench import (
    DOINGS,
    BenchLog,
    PullOutcome,
    WeldOutcome,
    WeldSettings,
    read_log,
    test_pull,
    weld,
)

MOST_STEPS = 60  # thirty studs: whoever has not stopped by then has no rule of work
_KEYS = {"weld": {"do", "settings"}, "pull": {"do"}, "row": {"do"}, "stop": {"do", "why"}}
ENDS = ("row", "stop")


@dataclass(frozen=True, kw_only=True)
class Try:
    """One stud of a log: what was set and typed for it, what was seen, and its pull where there was one."""

    number: int
    typed: dict[str, str]
    settings: WeldSettings
    outcome: WeldOutcome
    pull: PullOutcome | None


def read_typed_log(part, key, typed):
    """Return ``(log, problem)`` of what was saved for a part of the bench; one of them is None or empty."""
    if not isinstance(typed, list):
        return None, "this answer is not a log of the bench"
    if len(typed) > MOST_STEPS:
        return None, f"a log must have at most {MOST_STEPS} steps, got {len(typed)}"
    steps = []
    for number, step in enumerate(typed, start=1):
        read, problem = _read_step(part, key, step)
        if problem:
            return None, f"step {number}: {problem}"
        steps.append(read)
    try:
        return read_log(steps), ""
    except ValueError as refusal:  # the order of the steps
        return None, str(refusal)


def _read_step(part, key, step):
    """Return ``(step with its settings as the library takes them, problem)``."""
    do = step.get("do") if isinstance(step, dict) else None
    if not isinstance(do, str) or do not in DOINGS or set(step) != _KEYS[do]:
        return None, "this is not a step of the bench"
    if do == "stop":
        reasons = [option.id for option in part.stop_reasons]
        if not isinstance(step["why"], str) or step["why"] not in reasons:
            return None, f"the reason to stop must be one of {', '.join(reasons)}"
    if do != "weld":
        return step, ""
    settings, problem = read_settings(part, key, step["settings"])
    return {"do": "weld", "settings": settings}, problem


def read_settings(part, key, typed):
    """Return ``(every setting by name, problem)`` from those that a learner set for one weld."""
    if not isinstance(typed, dict) or set(typed) != set(part.settings):
        return {}, f"the settings must be {', '.join(part.settings)}"
    settings = dict(key.start)
    for name in part.settings:
        settings[name], problem = SETTINGS[name].read(typed[name])
        if problem:
            return {}, problem
    return settings, _too_wide(settings, key) if "stud_diameter_mm" in part.settings else ""


def _too_wide(settings, key):
    """Say that a stud's flange does not fit on the head of the day, or return an empty text."""
    flange, head = float(WeldSettings(**settings).flange_diameter_mm), key.job.head_diameter_mm
    return "" if flange <= head else f"the flange must fit on the head of {head:g} mm, got {flange:g} mm"


def replay(log, key):
    """Return the tries of a log as the library gives them for this day."""
    welded_before = list(accumulate((do == "weld" for do in log.steps), initial=0))
    pulled = {welded_before[place] for place, do in enumerate(log.steps) if do == "pull"}
    return tuple(
        try_out(number, settings, key, pulled=number in pulled)
        for number, settings in enumerate(log.welds, start=1)
    )


def try_out(number, settings, key, *, pulled):
    """Weld one stud of the day with these settings, and pull it; the day remembers what came of it."""
    name = ("stud", number, tuple(settings.items()), pulled)
    if name not in key.worked:
        key.worked[name] = _try_out(number, settings, key, pulled=pulled)
    return key.worked[name]


def _try_out(number, settings, key, *, pulled):
    """Weld one stud of the day, and pull it."""
    set_up = WeldSettings(**settings)
    outcome = weld(set_up, key.job, seed=key.seed, number=number)
    return Try(
        number=number,
        typed={name: SETTINGS[name].typed(value) for name, value in settings.items()},
        settings=set_up,
        outcome=outcome,
        pull=test_pull(outcome, set_up, key.job) if pulled else None,
    )


def end_of(log):
    """Return how a log ends: ``row``, ``stop``, or an empty text where work goes on."""
    return log.steps[-1] if log.steps and log.steps[-1] in ENDS else ""


def log_lines(part, typed):
    """Write a log as lines: each stud with what was changed for it, its pull, and how the work ended."""
    lines, before, stud = [], {}, 0
    reasons = {option.id: option.text for option in part.stop_reasons}
    for step in typed:
        if step["do"] == "weld":
            stud += 1
            changed = [name for name in part.settings if step["settings"][name] != before.get(name)]
            said = ", ".join(SETTINGS[name].say(step["settings"][name]) for name in changed)
            lines.append(f"Stud {stud}: {said or 'nothing changed'}")
            before = step["settings"]
        elif step["do"] == "pull":
            lines[-1] += "; pulled"
        else:
            lines.append("Then the row" if step["do"] == "row" else f"Stopped: {reasons[step['why']]}")
    return [line if line.endswith(".") else f"{line}." for line in lines]


def weld_at(log, step):
    """Return the number of the weld that a step of the log (from 1 on) belongs to."""
    return sum(do == "weld" for do in log.steps[:step])


__all__ = [
    "ENDS",
    "MOST_STEPS",
    "BenchLog",
    "Try",
    "end_of",
    "log_lines",
    "read_settings",
    "read_typed_log",
    "replay",
    "try_out",
    "weld_at",
]
