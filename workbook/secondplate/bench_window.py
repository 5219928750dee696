"""Where the window of a bench lies, which way a change of settings leads, and what a collar sign asks for."""

import numpy as np

from secondplate import tables
from secondplate.bench_model import FAULTS, flattened, scattered, weld_of
from secondplate.bench_settings import SETTING_NAMES
from secondplate.bench_weld import SIGN_IDS, checked_head, strengths_n
from secondplate.checks import require_choice
from secondplate.process_window import process_window

VERDICTS = ("better", "worse", "no change")


def outside_window(fields):
    """Return how far welds without scatter lie outside the window, 0 inside.

    The sum over all faults of the logarithm of a severity above 1, and that of the rivet's hold over the
    weakest of weld, stud and head.

    Parameters
    ----------
    fields : dict of str to numpy.ndarray
        Settings and job, flat [-]

    Returns
    -------
    numpy.ndarray
        Distance, at least 0 [-]

    Raises
    ------
    ValueError
        If the stud's flange is wider than the head.

    Notes
    -----
    Source: see ``bench``.

    Examples
    --------
    >>> from secondplate.bench_settings import chart_settings, draw_job
    >>> fields, _ = flattened(chart_settings(stud_diameter_mm=6), draw_job(b"a day", machine="weak"))
    >>> bool(outside_window(fields)[0] > 0)
    True
    """
    checked_head(fields)
    found = weld_of(fields, scattered(None, 0, fields))
    severity = np.stack([found.severity[fault] for fault in FAULTS])
    beyond = np.log(np.maximum(severity, 1)).sum(axis=0)
    weakest = np.min(np.stack(strengths_n(fields, found)), axis=0)
    return beyond + np.log(np.maximum(fields["rivet_hold_n"] / np.maximum(weakest, 1), 1))


def in_window(settings, job):
    """Tell whether settings make a sound weld on this job when nothing scatters.

    Sound: no fault shows, and weld, stud and head bear more than the rivet holds.

    Parameters
    ----------
    settings : WeldSettings
        What is set [-]
    job : WeldJob
        Rivet and machine [-]

    Returns
    -------
    bool or array of bool
        Whether they do [-]

    Raises
    ------
    ValueError
        If the stud's flange is wider than the head.

    Notes
    -----
    Source: see ``bench``.

    Examples
    --------
    >>> from secondplate.bench_settings import chart_settings, draw_job
    >>> in_window(chart_settings(stud_diameter_mm=6), draw_job(b"a day at the shop"))
    False
    """
    fields, shape = flattened(settings, job)
    inside = (outside_window(fields) <= 0).reshape(shape)
    return bool(inside) if inside.ndim == 0 else inside


def window(job, *, stud_diameter_mm, current_a, time_ms):
    """Map currents as the machine shows them and times to cold, sound, hot and burnt through on this job.

    Parameters
    ----------
    job : WeldJob
        One rivet and machine [-]
    stud_diameter_mm : float
        Stud diameter, one of 3, 4, 5 and 6 mm [mm]
    current_a : float or array
        Current as shown [A]
    time_ms : float or array
        Weld time, 2 to 200 ms [ms]

    Returns
    -------
    ProcessWindow
        The map; its current is the true one [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: ``process_window``.

    Examples
    --------
    >>> from secondplate.bench_settings import draw_job
    >>> job = draw_job(b"a day at the shop", machine="weak")
    >>> str(window(job, stud_diameter_mm=6, current_a=600, time_ms=30).state)
    'cold'
    """
    return process_window(
        stud_diameter_mm=stud_diameter_mm,
        web_mm=job.web_mm,
        current_a=np.asarray(current_a, dtype=float) * job.current_share,
        time_ms=time_ms,
        voltage_v=job.voltage_v,
    )


def right_direction(before, after, job):
    """Tell for each changed setting whether its change leads toward the window.

    Each change is tried alone on the settings before: first a tenth of it and, where that tells nothing, all
    of it; so a step too far in the right direction still counts as right.

    Parameters
    ----------
    before : WeldSettings
        Settings of one weld [-]
    after : WeldSettings
        Settings of the next weld [-]
    job : WeldJob
        Rivet and machine [-]

    Returns
    -------
    dict of str to str
        Changed settings with one of ``VERDICTS`` [-]

    Raises
    ------
    ValueError
        If the stud's flange is wider than the head.

    Notes
    -----
    Source: see ``bench``.

    Examples
    --------
    >>> from dataclasses import replace
    >>> from secondplate.bench_settings import chart_settings, draw_job
    >>> job, chart = draw_job(b"a day at the shop", machine="weak"), chart_settings(stud_diameter_mm=6)
    >>> right_direction(chart, replace(chart, current_a=700.0), job)
    {'current_a': 'better'}
    """
    return verdicts([(vars(before), vars(after), vars(job))])[0]


def expected_improvement(before, after, job):
    """Return how much nearer to the window new settings lie, without scatter.

    Parameters
    ----------
    before : WeldSettings
        Settings of one weld [-]
    after : WeldSettings
        Settings of the next weld [-]
    job : WeldJob
        Rivet and machine [-]

    Returns
    -------
    float
        Distance from the window before less that after, above 0 where the change helps [-]

    Raises
    ------
    ValueError
        If the stud's flange is wider than the head.

    Notes
    -----
    Source: see ``outside_window``; all changes together, with no scatter.

    Examples
    --------
    >>> from dataclasses import replace
    >>> from secondplate.bench_settings import chart_settings, draw_job
    >>> job, chart = draw_job(b"a day at the shop", machine="weak"), chart_settings(stud_diameter_mm=6)
    >>> expected_improvement(chart, replace(chart, current_a=900.0), job) > 0
    True
    """
    rows = [vars(settings) | vars(job) for settings in (before, after)]
    far = outside_window({name: np.array([row[name] for row in rows]) for name in rows[0]})
    return float(far[0] - far[1])


def verdicts(changes):
    """Judge many changes of settings at once, as ``right_direction`` does one.

    Parameters
    ----------
    changes : list of tuple of dict
        Settings before, settings after and job, each by field [-]

    Returns
    -------
    list of dict of str to str
        Changed settings with one of ``VERDICTS``, for each change [-]

    Raises
    ------
    ValueError
        If the stud's flange is wider than the head.

    Notes
    -----
    Source: see ``bench``.

    Examples
    --------
    >>> verdicts([])
    []
    """
    rows, places = [], []
    for before, after, job in changes:
        start = len(rows)
        rows.append(before | job)
        for name in SETTING_NAMES:
            old, new = before[name], after[name]
            if old != new:
                in_steps = not isinstance(new, str) and name != "stud_diameter_mm"
                small = old + 0.1 * (new - old) if in_steps else new
                rows += [before | job | {name: small}, before | job | {name: new}]
                places.append((start, name, len(rows)))
        places.append((start, None, len(rows)))
    return _judged(rows, places)


def _judged(rows, places):
    """Run all rows at once and judge each changed setting by the first step that changes anything."""
    if not rows:
        return []
    fields = {name: np.array([row[name] for row in rows]) for name in rows[0]}
    far = outside_window(fields)
    found, current = [], {}
    for start, name, end in places:
        if name is None:
            found.append(current)
            current = {}
            continue
        steps = far[end - 2 : end] - far[start]
        moved = steps[np.abs(steps) > 1e-6]
        current[name] = "no change" if not moved.size else "better" if moved[0] < 0 else "worse"
    return found


def advise(outcome):
    """Return the sign whose correction in the table of signs comes next.

    Parameters
    ----------
    outcome : WeldOutcome
        One weld, or many [-]

    Returns
    -------
    str or array of str
        Id of the sign; good where nothing is to be changed [-]

    Notes
    -----
    Source: table weld_signs; see ``corrections`` for the settings that answer to it.

    Examples
    --------
    >>> from secondplate.bench_settings import chart_settings, draw_job
    >>> from secondplate.bench_weld import weld
    >>> job = draw_job(b"a day at the shop", machine="weak")
    >>> advise(weld(chart_settings(stud_diameter_mm=6), job, seed=b"a day at the shop", number=1))
    'cold'
    """
    return outcome.sign_id


def corrections(sign_id):
    """Return which settings answer to a collar sign, and which way they go.

    Parameters
    ----------
    sign_id : str
        Id of a collar sign [-]

    Returns
    -------
    tuple of tuple of str
        Pairs of a field of ``WeldSettings`` and ``more``, ``less`` or the choice to make [-]

    Raises
    ------
    ValueError
        If the id is not that of a collar sign.

    Notes
    -----
    Source: table bench_corrections, each row with its own source.

    Examples
    --------
    >>> corrections("jagged")
    (('time_ms', 'less'),)
    """
    require_choice("collar sign", sign_id, SIGN_IDS)
    return tuple(
        (row.keys["field"], row.value) for row in tables.load("bench_corrections") if row.name == sign_id
    )
