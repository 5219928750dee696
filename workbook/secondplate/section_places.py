"""Where a caliper's two lines stand for each measure of one section, so that a picture can show them."""

import numpy as np

from secondplate.checks import require_choice
from secondplate.section_measure import measure

PLACED = (
    "interlock_left_mm",
    "interlock_right_mm",
    "remaining_thickness_mm",
    "head_flushness_mm",
    "tail_diameter_mm",
    "button_diameter_mm",
    "button_depth_mm",
)


def measuring_places(section, name):
    """Return the two points that a measure of one section is taken between.

    Parameters
    ----------
    section : Section
        One section, no column [-]
    name : str
        The measure, one of ``PLACED`` [-]

    Returns
    -------
    tuple of tuple of float
        First and second point, each x and y; across they share y, along the axis x [mm]

    Raises
    ------
    ValueError
        If the measure is not placed, or the section is a column.

    Notes
    -----
    Source: rivet_literature, quality measures, from memory. Constructed as ``measure`` does, for the eye.

    Examples
    --------
    >>> from secondplate.section_joint import build_section
    >>> from secondplate.section_parameters import usual_parameters
    >>> first, second = measuring_places(build_section(usual_parameters()), "interlock_right_mm")
    >>> round(second[0] - first[0], 2)
    0.5
    """
    require_choice("measure", name, PLACED)
    require_single(section)
    measured = measure(section)
    if name.startswith("interlock"):
        return _interlock(section, measured, -1 if "left" in name else 1)
    if name == "tail_diameter_mm":
        (left, low), (right, high) = (_tail(section, sign) for sign in (-1, 1))
        return (left, min(low, high)), (right, min(low, high))
    if name == "head_flushness_mm":
        rivet = section.outlines["rivet"]
        top = rivet[np.argmax(rivet[:, 1])]
        x, level = float(abs(top[0])), float(top[1])
        return (x, level - measured.head_flushness_mm), (x, level)
    floor, under = _floor_and_under(section)
    if name == "remaining_thickness_mm":
        return _thinnest(floor, under)
    plane = float((floor[0, 1] + floor[-1, 1]) / 2)
    lowest = floor[np.argmin(floor[:, 1])]
    if name == "button_depth_mm":
        return (float(lowest[0]), float(lowest[1])), (float(lowest[0]), plane)
    level = plane - measured.button_depth_mm / 2
    inside = np.flatnonzero(floor[:, 1] < level)
    left = np.interp(level, floor[[inside[0], inside[0] - 1], 1], floor[[inside[0], inside[0] - 1], 0])
    return (float(left), level), (float(left) + measured.button_diameter_mm, level)


def require_single(section):
    """Refuse a column of sections.

    Parameters
    ----------
    section : Section
        One section, or a column [-]

    Returns
    -------
    Section
        The same section [-]

    Raises
    ------
    ValueError
        If it is a column.

    Examples
    --------
    >>> from secondplate.section_joint import build_section
    >>> from secondplate.section_parameters import usual_parameters
    >>> require_single(build_section(usual_parameters())).several
    False
    """
    if section.several:
        message = f"section must be a single one, got a column of {len(section.outlines['rivet'])}"
        raise ValueError(message)
    return section


def _tail(section, sign):
    """Return the outermost point of the tail on one side: of the rivet, below where the plates meet."""
    rivet = section.outlines["rivet"]
    plate = section.outlines["top plate left" if sign < 0 else "top plate right"]
    shared = {tuple(corner) for corner in plate} & {tuple(corner) for corner in rivet}
    entry = min(level for _, level in shared)
    below = rivet[rivet[:, 1] < entry]
    x, y = below[np.argmax(sign * below[:, 0])]
    return float(x), float(y)


def _interlock(section, measured, sign):
    """Return where the rivet enters the second plate and where its tail ends, at the height of the tail."""
    x, y = _tail(section, sign)
    wide = measured.interlock_left_mm if sign < 0 else measured.interlock_right_mm
    return (x - sign * wide, y), (x, y)


def _floor_and_under(section):
    """Return the underside of the second plate, and its upper side from tip to tip of the tail."""
    ring = section.outlines["second plate"]
    lowest = [
        np.argmin(np.where(ring[:, 0] == end, ring[:, 1], np.inf))
        for end in (ring[:, 0].min(), ring[:, 0].max())
    ]
    floor = _run(ring, *lowest)
    tips = [_tail(section, sign) for sign in (-1, 1)]
    ends = [int(np.argmin(np.abs(ring - tip).sum(axis=1))) for tip in tips]
    return floor, _run(ring, *ends)


def _run(ring, first, last):
    """Return the corners of a ring from one to another, the way round that runs from left to right."""
    for step in (1, -1):
        count = (step * (last - first)) % len(ring)
        corners = ring[(first + step * np.arange(count + 1)) % len(ring)]
        if np.all(np.diff(corners[:, 0]) >= 0):
            return corners
    message = "second plate must run from left to right under the tail, got a line that turns back"
    raise ValueError(message)


def _thinnest(floor, under):
    """Return the ends of the shortest distance along the axis between two lines."""
    x = np.union1d(floor[:, 0], under[:, 0])
    x = x[(x >= under[0, 0]) & (x <= under[-1, 0])]
    low, high = (np.interp(x, line[:, 0], line[:, 1]) for line in (floor, under))
    thin = np.argmin(high - low)
    return (float(x[thin]), float(low[thin])), (float(x[thin]), float(high[thin]))
