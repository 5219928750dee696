"""Judges the log of a learner at the virtual bench: every weld and pull is computed again from the seed.

Five findings: the first stud pulled before any other, one change at a time, each change toward the window, a
setting inside the window reached, stopped when the stop rule says so. The rule is judgement, in bench_limits.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from secondplate.bench_model import NUMBERS
from secondplate.bench_settings import SETTING_NAMES, WeldJob, WeldSettings, can_be_set
from secondplate.bench_weld import test_pull, weld
from secondplate.bench_window import in_window, verdicts
from secondplate.checks import require_choice

DOINGS = ("weld", "pull", "row", "stop")
STOP_REASONS = ("head", "tries")
FINDINGS = ("tested_first", "one_change", "right_direction", "reached_window", "stopped")
LONGEST_LOG = 100


@dataclass(frozen=True, kw_only=True)
class BenchLog:
    """A log that has been read: only steps that a bench allows, in an order that it allows.

    Parameters
    ----------
    steps : tuple of str
        What was done, each one of ``DOINGS`` [-]
    welds : tuple of dict of str to object
        Settings of each weld, all of ``SETTING_NAMES`` [-]
    why : str
        Reason of the stop, one of ``STOP_REASONS``; empty where it did not end so [-]

    Examples
    --------
    >>> read_log([]).steps
    ()
    """

    steps: tuple[str, ...]
    welds: tuple[dict, ...]
    why: str


@dataclass(frozen=True, kw_only=True)
class Finding:
    """How one rule of the bench was kept.

    Parameters
    ----------
    met : bool
        Whether it was kept throughout [-]
    share : float
        Part of the occasions on which it was kept, 0 to 1 [-]
    failed_steps : tuple of int
        Steps of the log, from 1 on, at which it was not [-]

    Examples
    --------
    >>> Finding(met=True, share=1.0, failed_steps=()).met
    True
    """

    met: bool
    share: float
    failed_steps: tuple[int, ...]


@dataclass(frozen=True, kw_only=True)
class Judgement:
    """The five findings on one log, and what the bench gave at each step.

    Parameters
    ----------
    tested_first : Finding
        The first stud was pulled before any other was welded or the row begun [-]
    one_change : Finding
        From weld to weld one setting was changed at most [-]
    right_direction : Finding
        Each change led toward the window [-]
    reached_window : Finding
        The last weld had settings inside the window, or a stop that was due ended the work [-]
    stopped : Finding
        Stopped when the rule says so and for that reason, and the row begun only after a sound pull [-]
    signs : tuple of str
        Collar sign of each weld [-]
    gave : tuple of str
        What each pull gave [-]

    Examples
    --------
    >>> from secondplate.bench_settings import draw_job
    >>> job = draw_job(b"a day", machine="weak")
    >>> judge_log([], job, b"a day").tested_first.met
    False
    """

    tested_first: Finding
    one_change: Finding
    right_direction: Finding
    reached_window: Finding
    stopped: Finding
    signs: tuple[str, ...]
    gave: tuple[str, ...]


def read_log(log):
    """Read the steps of a log, or refuse what no bench allows.

    Parameters
    ----------
    log : list of dict
        At most 100 steps ``{"do": "weld", "settings": {...}}`` with every setting as number or choice,
        ``{"do": "pull"}``, ``{"do": "row"}`` or ``{"do": "stop", "why": ...}`` [-]

    Returns
    -------
    BenchLog
        The log [-]

    Raises
    ------
    ValueError
        If it is no list of such steps, a setting is missing or out of range, a pull has no weld, or anything
        follows row or stop.

    Examples
    --------
    >>> read_log([{"do": "stop", "why": "tries"}]).why
    'tries'
    """
    if isinstance(log, str) or not isinstance(log, Sequence) or len(log) > LONGEST_LOG:
        message = f"log must be a list of at most {LONGEST_LOG} steps, got {_size_of(log)}"
        raise ValueError(message)
    done, welds, why = [], [], ""
    for number, step in enumerate(log, start=1):
        if not isinstance(step, Mapping):
            message = f"step {number} must be a mapping with do, got {step!r:.80}"
            raise ValueError(message)
        do = require_choice(f"step {number}", step.get("do"), DOINGS)
        if done and done[-1] in ("row", "stop"):
            message = f"step {number} must not follow {done[-1]}, got {do!r}"
            raise ValueError(message)
        if do == "pull" and (not done or done[-1] != "weld"):
            message = f"step {number} must be a pull of a stud just welded, got a pull with no such stud"
            raise ValueError(message)
        if do == "weld":
            welds.append(_settings_of(number, step))
        if do == "stop":
            why = require_choice(f"reason of step {number}", step.get("why"), STOP_REASONS)
        done.append(do)
    return BenchLog(steps=tuple(done), welds=tuple(welds), why=why)


def _size_of(log):
    """Say what a log is that is not a list of steps."""
    return (
        f"{len(log)} steps" if isinstance(log, Sequence) and not isinstance(log, str) else type(log).__name__
    )


def _settings_of(number, step):
    """Return the settings of a weld step, all of them and in their range."""
    given = step.get("settings")
    if not isinstance(given, Mapping) or set(given) != set(SETTING_NAMES):
        message = f"settings of step {number} must be {', '.join(SETTING_NAMES)}, got {given!r:.80}"
        raise ValueError(message)
    if not all(type(value) in (str, int, float) for value in given.values()):
        message = f"settings of step {number} must be single numbers and words, got {given!r:.80}"
        raise ValueError(message)
    return dict(given) if can_be_set(given) else vars(WeldSettings(**given))


def judge_log(log, job, seed, *, tries=None):
    """Judge one log on one job.

    Parameters
    ----------
    log : list of dict or BenchLog
        Steps as ``read_log`` takes them [-]
    job : WeldJob
        Rivet and machine of the exercise [-]
    seed : bytes
        Seed of the bench; its welds are numbered from 1 on [-]
    tries : int or None
        Tries without a sound pull after which to stop; that of the table where None [-]

    Returns
    -------
    Judgement
        The findings [-]

    Raises
    ------
    ValueError
        If the log, the seed or a setting is refused.

    Notes
    -----
    Source: table bench_limits; ti_809_26, which quotes AWS D1.1 7.7.1: a new test stud after each change.

    Examples
    --------
    >>> from secondplate.bench_settings import chart_settings, draw_job
    >>> job, chart = draw_job(b"a day", machine="weak"), vars(chart_settings(stud_diameter_mm=6))
    >>> log = [{"do": "weld", "settings": chart}, {"do": "pull"},
    ...        {"do": "weld", "settings": chart | {"current_a": 900}}, {"do": "pull"}, {"do": "row"}]
    >>> judgement = judge_log(log, job, b"a day")
    >>> judgement.signs, judgement.reached_window.met
    (('cold', 'good'), True)
    """
    read = log if isinstance(log, BenchLog) else read_log(log)
    return judge_logs([read], [job], [seed], tries=tries)[0]


def judge_logs(logs, jobs, seeds, *, tries=None):
    """Judge many logs at once, each on its own job and seed.

    Parameters
    ----------
    logs : list of BenchLog
        Logs as ``read_log`` gives them [-]
    jobs : list of WeldJob
        Job of each, of single values [-]
    seeds : list of bytes
        Seed of each [-]
    tries : int or None
        Tries without a sound pull after which to stop; that of the table where None [-]

    Returns
    -------
    list of Judgement
        Findings of each [-]

    Raises
    ------
    ValueError
        If the lists are not of one length or a seed is not bytes.

    Notes
    -----
    Source: see ``judge_log``.

    Examples
    --------
    >>> judge_logs([], [], [])
    []
    """
    if not len(logs) == len(jobs) == len(seeds):
        message = f"logs, jobs and seeds must be of one length, got {len(logs)}, {len(jobs)}, {len(seeds)}"
        raise ValueError(message)
    most = int(NUMBERS["tries without a sound pull"]) if tries is None else tries
    owner = [index for index, log in enumerate(logs) for _ in log.welds]
    if not owner:
        return [_judged(log, [], []) for log in logs]
    bench = _welded(logs, jobs, seeds, owner)
    changes = iter(verdicts(_changes(logs, jobs)))
    judged, first = [], 0
    for log in logs:
        own = bench[first : first + len(log.welds)]
        first += len(log.welds)
        turns = [next(changes) for _ in own[1:]]
        judged.append(_judged(log, own, turns, most))
    return judged


@dataclass(frozen=True, kw_only=True)
class _Try:
    """One weld of a log: what it showed, what its pull gave, whether its settings lie inside."""

    sign: str
    gave: str
    burnt: bool
    inside: bool


def _welded(logs, jobs, seeds, owner):
    """Weld and pull every stud of every log in one run."""
    rows = [dict(settings) for log in logs for settings in log.welds]
    settings = WeldSettings(**{name: np.array([row[name] for row in rows]) for name in SETTING_NAMES})
    job = WeldJob(
        **{name: np.array([getattr(jobs[index], name) for index in owner]) for name in vars(jobs[0])}
    )
    numbers = np.array([number for log in logs for number in range(1, len(log.welds) + 1)])
    outcome = weld(settings, job, seed=[seeds[index] for index in owner], number=numbers)
    pull = test_pull(outcome, settings, job)
    inside = in_window(settings, job)
    return [
        _Try(sign=str(sign), gave=str(gave), burnt=bool(burnt), inside=bool(within))
        for sign, gave, burnt, within in zip(
            outcome.sign_id, pull.gave, outcome.burnt_through, inside, strict=True
        )
    ]


def _changes(logs, jobs):
    """List settings before and after, with their job, for every second weld that follows a first."""
    return [
        (before, after, vars(job))
        for log, job in zip(logs, jobs, strict=True)
        for before, after in zip(log.welds[:-1], log.welds[1:], strict=True)
    ]


def _judged(log, tries, turns, most=0):
    """Put the five findings of one log together."""
    stopped, due = _stop_finding(log, tries, most)
    welded_at = [number for number, do in enumerate(log.steps, start=1) if do == "weld"]
    reached = bool(tries) and (tries[-1].inside or bool(due and stopped.met))
    # Who never changed a setting kept the rules of changing only if there was nothing to change.
    alone = [(number, len(turn) <= 1) for number, turn in zip(welded_at[1:], turns, strict=True) if turn]
    toward = [
        (number, verdict == "better" or (one.inside and verdict != "worse"))
        for number, turn, one in zip(welded_at[1:], turns, tries, strict=False)
        for verdict in turn.values()
    ]
    return Judgement(
        tested_first=_finding([(min(2, len(log.steps)), log.steps[:2] == ("weld", "pull"))]),
        one_change=_finding(alone or [(len(log.steps), reached)]),
        right_direction=_finding(toward or [(len(log.steps), reached)]),
        reached_window=_finding([(len(log.steps), reached)]),
        stopped=stopped,
        signs=tuple(one.sign for one in tries),
        gave=tuple(tries[index].gave for index in _pulled(log)),
    )


def _finding(occasions):
    """Make a finding of pairs of a step and whether the rule was kept there."""
    kept = [good for _, good in occasions]
    failed = tuple(dict.fromkeys(step for step, good in occasions if not good))
    return Finding(met=all(kept), share=sum(kept) / len(kept), failed_steps=failed)


def _pulled(log):
    """List which welds were pulled."""
    welded, pulled = -1, []
    for do in log.steps:
        welded += do == "weld"
        if do == "pull":
            pulled.append(welded)
    return pulled


def _stop_finding(log, tries, most):
    """Follow the log and return how the stop rule was kept, and what stop was due at its end."""
    welded, failed, due, sound, wrong = -1, 0, "", False, []
    for number, do in enumerate(log.steps, start=1):
        if do == "weld":
            welded, sound = welded + 1, False
            if due:
                wrong.append(number)
            due = due or ("head" if tries[welded].burnt else "")
        elif do == "pull":
            one = tries[welded]
            sound = one.sign == "good" and one.gave in ("rivet drawn out", "stud broke")
            failed = 0 if sound else failed + 1
            due = due or ("head" if one.gave == "head tore" else "tries" if failed >= most else "")
        elif (do == "row" and (due or not sound)) or (do == "stop" and log.why != due):
            wrong.append(number)
    ended = bool(log.steps) and log.steps[-1] in ("row", "stop")
    if not ended or (due and log.steps[-1] != "stop"):
        wrong.append(len(log.steps))
    return _finding([(number, False) for number in wrong] or [(len(log.steps), True)]), due
