"""Places new fasteners on a flange, clear of old sites, edges and each other, or says which rule forbids it.

Places lie on marks every half millimetre. On them the search is complete for one straight row, two straight
rows and one stepped row; other patterns are left out. The same flange always gives the same layout.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.checks import require_between
from secondplate.eurocode9_spacing import greatest_distance_mm
from secondplate.fastener_layout_rules import Flange, LayoutRules, OldSite
from secondplate.fasteners_kinds import FASTENER_RULES

STEP_MM = FASTENER_RULES["step of the marks"]
# How many even pitches and rows are tried before a row becomes uneven.
_PITCHES_TRIED, _ROWS_TRIED = 12, 9
PATTERNS = ("one row", "two rows", "stepped row")
_ROUNDING = 1e-9


@dataclass(frozen=True, kw_only=True)
class Layout:
    """New fasteners on a flange.

    Parameters
    ----------
    flange : Flange
        The flange [-]
    sites : tuple of OldSite
        Old sites [-]
    rules : LayoutRules
        The rules that the layout keeps [-]
    pattern : str
        One of ``PATTERNS`` [-]
    x_mm : numpy.ndarray
        Place of each fastener along the flange [mm]
    y_mm : numpy.ndarray
        Place of each across it, from the root [mm]

    Examples
    --------
    >>> flange = Flange(flange_length_mm=100, flange_width_mm=24, thickness_mm=1.5)
    >>> from secondplate.fastener_layout_rules import hole_rules
    >>> layout = place_fasteners(flange, fasteners=3, sites=(), rules=(hole_rules(5.0),))
    >>> layout.pattern, layout.x_mm.tolist(), layout.within_maximum
    ('one row', [29.0, 50.0, 71.0], True)
    """

    flange: Flange
    sites: tuple[OldSite, ...]
    rules: LayoutRules
    pattern: str
    x_mm: np.ndarray
    y_mm: np.ndarray

    @property
    def pitches_mm(self):
        """Distances from fastener to fastener along each row in mm, row after row."""
        if self.pattern == "two rows":
            return np.concatenate([np.diff(self.x_mm[self.y_mm == y]) for y in np.unique(self.y_mm)])
        return np.diff(self.x_mm)

    @property
    def within_maximum(self):
        """Whether no pitch is above the maximum of EN 1999-1-1 for members in compression."""
        greatest = greatest_distance_mm("spacing", self.flange.thickness_mm)
        return bool((self.pitches_mm <= greatest + _ROUNDING).all())


def _marks(flange, sites, rules):
    """Return the marks along and across, and which of their crossings are clear of the old sites."""
    low, high = rules.to_ends_mm, flange.flange_length_mm - rules.to_ends_mm
    x = low + STEP_MM * np.arange(max(np.floor((high - low) / STEP_MM + _ROUNDING) + 1, 0))
    low = max(rules.to_edges_mm, flange.root_clearance_mm)
    high = flange.flange_width_mm - rules.to_edges_mm
    if high < low - _ROUNDING:
        return x, np.empty(0), np.ones((0, x.size), dtype=bool)
    steps = low + STEP_MM * np.arange(np.floor((high - low) / STEP_MM + _ROUNDING) + 1)
    # The middle is a mark of its own: a row belongs there where nothing is in the way.
    y = np.unique(np.append(steps, (low + high) / 2))
    return x, y, _clear(x, y, sites, rules)


def _clear(x, y, sites, rules):
    """Return which crossings keep off every old site, by counting where each begins and ends."""
    if not (x.size and sites):
        return np.ones((y.size, x.size), dtype=bool)
    borders = np.zeros((y.size, x.size + 1), dtype=np.int32)
    rows = np.arange(y.size)
    for site in sites:
        reach = rules.site_distance_mm(site.affected_diameter_mm)
        half = np.sqrt(np.maximum(reach**2 - (y - site.y_mm) ** 2, 0))
        first = np.floor((site.x_mm - half - x[0]) / STEP_MM + _ROUNDING) + 1
        beyond = np.ceil((site.x_mm + half - x[0]) / STEP_MM - _ROUNDING)
        first, beyond = (np.clip(mark, 0, x.size).astype(int) for mark in (first, beyond))
        touched = beyond > first
        np.add.at(borders, (rows[touched], first[touched]), 1)
        np.add.at(borders, (rows[touched], beyond[touched]), -1)
    return np.cumsum(borders, axis=1)[:, :-1] == 0


def _packed(clear, gap, most):
    """Return for each row how many places it holds, gap marks apart, up to a number, and where.

    From the left each place is the first clear mark that keeps the gap; no other choice holds more.
    """
    rows, columns = clear.shape
    marks = np.where(clear, np.arange(columns), columns)
    following = np.full((rows, columns + gap + 1), columns)
    following[:, :columns] = np.minimum.accumulate(marks[:, ::-1], axis=1)[:, ::-1]
    place, found = following[:, 0], []
    while len(found) < most and (place < columns).any():
        found.append(place)
        place = following[np.arange(rows), np.minimum(place, columns) + gap]
    places = np.array(found, dtype=int).reshape(len(found), rows)
    return (places < columns).sum(axis=0), places


def _gap(distance_mm):
    """Return the least whole number of marks that spans a distance."""
    return int(np.ceil(distance_mm / STEP_MM - _ROUNDING))


def _even(clear, count, gap, widest):
    """Return the places of the widest even row on some rows of marks as (row, marks), or None."""
    columns = clear.shape[1]
    widest = max(min(widest, (columns - 1) // max(count - 1, 1)), gap)
    for pitch in np.unique(np.linspace(widest, gap, _PITCHES_TRIED).astype(int))[::-1]:
        span = pitch * (count - 1)
        if span >= columns:
            continue
        starts = clear[:, : columns - span].copy()
        for number in range(1, count):
            starts &= clear[:, number * pitch : number * pitch + columns - span]
        if starts.any():
            row = int(np.argmax(starts.any(axis=1)))
            free = np.flatnonzero(starts[row])
            first = free[np.argmin(np.abs(2 * free + span - (columns - 1)))]
            return row, first + pitch * np.arange(count)
    return None


def _uneven(clear_row, count, gap):
    """Return the places of one row that keep as far apart as they can, by halving the gap."""
    low, high = gap, max((clear_row.size - 1) // max(count - 1, 1), gap)
    while low < high:
        middle = (low + high + 1) // 2
        if _packed(clear_row[None], middle, count)[0][0] >= count:
            low = middle
        else:
            high = middle - 1
    return _packed(clear_row[None], low, count)[1][:, 0]


def _lay(clear, count, gap, widest):
    """Return (row, marks) of one row on some rows of marks that all hold the count, even where it can be."""
    found = _even(clear[:_ROWS_TRIED], count, gap, widest)
    return found if found is not None else (0, _uneven(clear[0], count, gap))


def _widest(flange):
    """Return the greatest pitch in marks: the maximum of the standard."""
    return int(greatest_distance_mm("spacing", flange.thickness_mm) / STEP_MM)


def _best_pair(y, held, rules):
    """Return the two rows, far enough apart, that together hold most; the most even and central of them."""
    apart = (y[None] - y[:, None]) >= rules.between_rows_mm - _ROUNDING
    if not apart.any():
        return None
    middle = (y[0] + y[-1]) / 2
    both = np.where(apart, held[:, None] + held, -1)
    off = np.abs(y[:, None] - middle) + np.abs(y - middle)
    best = np.lexsort((off.ravel(), -both.ravel()))[0]
    return divmod(int(best), y.size)


def _search(flange, sites, rules, count):
    """Return (pattern, x, y) of the first pattern that holds the count, or None, and the most held."""
    x, y, clear = _marks(flange, sites, rules)
    if not clear.size:
        return None, 0
    gap, widest = _gap(rules.pitch_mm), _widest(flange)
    held, _ = _packed(clear, gap, count)
    order = np.argsort(np.abs(y - (y[0] + y[-1]) / 2), kind="stable")
    able = order[held[order] >= count]
    if able.size:
        row, marks = _lay(clear[able], count, gap, widest)
        return ("one row", x[marks], np.full(count, y[able[row]])), count
    most = int(held.max())
    pair = _best_pair(y, held, rules)
    if pair is not None:
        most = max(most, int(held[list(pair)].sum()))
        if most >= count:
            return _two_rows(x, y, clear, pair, held, count, gap, widest), count
    open_marks = clear.any(axis=0)
    stepped = int(_packed(open_marks[None], gap, count)[0][0])
    if stepped >= count:
        _, marks = _lay(open_marks[None], count, gap, widest)
        rows = order[np.argmax(clear[order][:, marks], axis=0)]
        return ("stepped row", x[marks], y[rows]), count
    return None, max(most, stepped)


def _two_rows(x, y, clear, pair, held, count, gap, widest):
    """Share a count between two rows as evenly as they can hold it."""
    first = min(int(held[pair[0]]), (count + 1) // 2)
    first = max(first, count - int(held[pair[1]]))
    xs, ys = [], []
    for row, number in zip(pair, (first, count - first), strict=True):
        _, marks = _lay(clear[[row]], number, gap, widest)
        xs.append(x[marks])
        ys.append(np.full(number, y[row]))
    return "two rows", np.concatenate(xs), np.concatenate(ys)


def most_fasteners(flange, *, sites, rules):
    """Return how many fasteners a flange holds in the patterns that are searched.

    Parameters
    ----------
    flange : Flange
        The flange [-]
    sites : sequence of OldSite
        Old sites [-]
    rules : LayoutRules
        The rules [-]

    Returns
    -------
    int
        Number of fasteners [-]

    Examples
    --------
    >>> from secondplate.fastener_layout_rules import hole_rules
    >>> flange = Flange(flange_length_mm=100, flange_width_mm=16, thickness_mm=1.5)
    >>> most_fasteners(flange, sites=(), rules=hole_rules(5.0, level="minimum"))
    8
    """
    return _search(flange, tuple(sites), rules, 10**6)[1]


def place_fasteners(flange, *, fasteners, sites, rules):
    """Return the first layout that keeps the rules, asked in their order: regular before minimum.

    Under each rule one straight row comes first, then two, then a stepped one; a row near the middle of the
    flange, its pitch even and as wide as the standard's maximum lets it be.

    Parameters
    ----------
    flange : Flange
        The flange [-]
    fasteners : int
        How many to place, 1 to 200 [-]
    sites : sequence of OldSite
        Old sites [-]
    rules : sequence of LayoutRules
        Rules to try, the wished ones first [-]

    Returns
    -------
    Layout
        The layout [-]

    Raises
    ------
    ValueError
        If none keeps the last of the rules; the sentence names the rule and the value.

    Notes
    -----
    Source: en_1999_1_1 Table 8.2; the order of wishes is own_judgement.

    Examples
    --------
    >>> from secondplate.fastener_layout_rules import hole_rules
    >>> flange = Flange(flange_length_mm=60, flange_width_mm=11, thickness_mm=1.5)
    >>> place_fasteners(flange, fasteners=3, sites=(), rules=(hole_rules(5.0, level="minimum"),))
    Traceback (most recent call last):
    ValueError: flange width must be at least 12 mm (edges by minimum of EN 1999-1-1 Table 8.2), got 11 mm
    """
    count = int(require_between("number of fasteners", fasteners, 1, 200, unit=""))
    if count != fasteners:
        message = f"number of fasteners must be a whole number, got {fasteners!r}"
        raise ValueError(message)
    sites, rules = tuple(sites), tuple(rules)
    if not rules:
        message = "rules must be one at least, got none"
        raise ValueError(message)
    for rule in rules:
        found, most = _search(flange, sites, rule, count)
        if found is not None:
            pattern, x_mm, y_mm = found
            return Layout(flange=flange, sites=sites, rules=rule, pattern=pattern, x_mm=x_mm, y_mm=y_mm)
    raise ValueError(_why_not(flange, sites, rules[-1], count, most))


def _why_not(flange, sites, rules, count, most):
    """Say which rule forbids a layout: width, length, pitch, or the old sites."""
    width = rules.to_edges_mm + max(rules.to_edges_mm, flange.root_clearance_mm)
    if flange.flange_width_mm < width - _ROUNDING:
        edges = "root clearance and edge" if flange.root_clearance_mm > rules.to_edges_mm else "edges"
        got = f"{flange.flange_width_mm:.6g} mm"
        return f"flange width must be at least {width:.6g} mm ({edges} by {rules.name}), got {got}"
    length = 2 * rules.to_ends_mm
    if flange.flange_length_mm < length - _ROUNDING:
        got = f"{flange.flange_length_mm:.6g} mm"
        return f"flange length must be at least {length:.6g} mm (ends by {rules.name}), got {got}"
    bare = _search(flange, (), rules, count)[1]
    if bare < count:
        rule = f"pitch of {rules.pitch_mm:.6g} mm by {rules.name}"
        return f"number of fasteners must be at most {bare} on this flange ({rule}), got {count}"
    nearest = min(rules.site_distance_mm(site.affected_diameter_mm) for site in sites)
    rule = f"distance of {nearest:.6g} mm and more by {rules.name}"
    return f"number of fasteners must be at most {most} clear of the old sites ({rule}), got {count}"
