"""Measures a section as a laboratory does, from the outlines alone.

Where the lines go: interlock from the outermost point of the tail to the corner in which rivet, top plate and
second plate meet, square to the axis; remaining bottom thickness along the axis, least under tail and bore;
head height from the face of the top plate far from the rivet; button across its wall half-way down.
Leaves out the unsharpness of a ground and etched face.
"""

from dataclasses import dataclass, fields

import numpy as np

from secondplate.arrays import plain

_ROWS = 100  # joints measured at once: their arrays stay in the processor's cache
_CRACK_WIDTH_MM = 0.2  # a notch wider than this is no crack
_NEEDED = ("rivet", "second plate", "top plate left", "top plate right")
_OF_SECOND_PLATE = ("remaining_thickness_mm", "button_diameter_mm", "button_depth_mm", "crack_mm")


@dataclass(frozen=True, kw_only=True)
class Measured:
    """What is measured on a section; arrays for a column of joints.

    Parameters
    ----------
    interlock_left_mm : float or numpy.ndarray
        Interlock at the left [mm]
    interlock_right_mm : float or numpy.ndarray
        Interlock at the right [mm]
    remaining_thickness_mm : float or numpy.ndarray
        Least thickness of the second plate under tail and bore [mm]
    head_flushness_mm : float or numpy.ndarray
        Height of the head's face above the top plate, negative where sunk [mm]
    tail_diameter_mm : float or numpy.ndarray
        Spread of the tail from outermost point to outermost point [mm]
    button_diameter_mm : float or numpy.ndarray
        Width of the button half-way down its wall [mm]
    button_depth_mm : float or numpy.ndarray
        Height of the button below the second plate [mm]
    buckle_mm : float or numpy.ndarray
        How far the shank bulges out and comes in again below, 0 in a sound joint [mm]
    crack_mm : float or numpy.ndarray
        Depth of the deepest crack in the button, 0 in a sound joint [mm]
    gap_mm : float or numpy.ndarray
        Distance of the plates at the edge of the section [mm]

    Examples
    --------
    >>> from secondplate.section_joint import build_section
    >>> from secondplate.section_parameters import usual_parameters
    >>> round(measure(build_section(usual_parameters(interlock_left_mm=0.3))).interlock_mm, 6)
    0.3
    """

    interlock_left_mm: float
    interlock_right_mm: float
    remaining_thickness_mm: float
    head_flushness_mm: float
    tail_diameter_mm: float
    button_diameter_mm: float
    button_depth_mm: float
    buckle_mm: float
    crack_mm: float
    gap_mm: float

    @property
    def interlock_mm(self):
        """The smaller interlock of the two sides in mm."""
        return plain(np.minimum(self.interlock_left_mm, self.interlock_right_mm))

    @property
    def unevenness_mm(self):
        """Difference of the interlocks of both sides in mm."""
        return plain(np.abs(np.asarray(self.interlock_left_mm) - self.interlock_right_mm))


MEASURES = tuple(item.name for item in fields(Measured))


def measure(section):
    """Measure one section or a column of sections, from the outlines alone.

    Parameters
    ----------
    section : Section
        Section with the outlines of rivet, both plates and slug [-]

    Returns
    -------
    Measured
        What was measured, in mm [-]

    Raises
    ------
    ValueError
        If a part is missing, or rivet, top plate and second plate meet in no corner.

    Notes
    -----
    Interlock and bottom thickness: construction from memory, purpose after zhao_spr_quality.

    Examples
    --------
    >>> from secondplate.section_joint import build_section
    >>> from secondplate.section_parameters import usual_parameters
    >>> round(measure(build_section(usual_parameters())).tail_diameter_mm, 2)
    6.49
    """
    outlines = {part: _column(section.outlines, part) for part in _NEEDED}
    rows = len(outlines["rivet"])
    parts = [
        _measure_rows({part: outline[first : first + _ROWS] for part, outline in outlines.items()})
        for first in range(0, rows, _ROWS)
    ]
    found = {name: np.concatenate([part[name] for part in parts]) for name in MEASURES}
    if not section.several:
        found = {name: float(values[0]) for name, values in found.items()}
    return Measured(**found)


def _column(outlines, part):
    """Return the outline of a part as a column, or raise where the part is missing."""
    if part not in outlines:
        message = f"section must have an outline of the {part}, got {', '.join(sorted(outlines))}"
        raise ValueError(message)
    outline = np.asarray(outlines[part], dtype=float)
    return outline if outline.ndim == 3 else outline[None]


def _measure_rows(outlines):
    """Measure some joints."""
    rivet, second = outlines["rivet"], outlines["second plate"]
    plates = outlines["top plate left"], outlines["top plate right"]
    entries = [_entry(plate, rivet) for plate in plates]
    tails = [_outermost(rivet, entry, sign) for entry, sign in zip(entries, (-1, 1), strict=True)]
    interlocks = [
        np.abs(tail[:, 0]) - np.abs(entry[:, 0]) for tail, entry in zip(tails, entries, strict=True)
    ]
    faces = [_at_edge(plate, highest=True) for plate in plates]
    gaps = [
        _at_edge(plate, highest=False) - _at_edge(second * [sign, 1], highest=True)
        for plate, sign in zip(plates, (-1, 1), strict=True)
    ]
    return {
        "interlock_left_mm": interlocks[0],
        "interlock_right_mm": interlocks[1],
        "head_flushness_mm": rivet[..., 1].max(axis=1) - (faces[0] + faces[1]) / 2,
        "tail_diameter_mm": tails[1][:, 0] - tails[0][:, 0],
        "buckle_mm": np.maximum(*(_buckle(rivet, tail) for tail in tails)),
        "gap_mm": np.maximum(*gaps),
        **_measure_second_plate(second, tails),
    }


def _entry(plate, rivet):
    """Return the lowest corner in which a top plate touches the rivet."""
    beside = rivet[:, np.any(rivet[..., 0] * plate[:, :1, 0] > 0, axis=0)]
    reach = np.abs(rivet[..., 0]).max(axis=1, keepdims=True)
    plate = plate[:, np.any(np.abs(plate[..., 0]) <= reach, axis=0)]
    touching = np.any(_as_complex(plate)[:, :, None] == _as_complex(beside)[:, None], axis=2)
    if not np.all(touching.any(axis=1)):
        message = "rivet and top plate must meet in at least 1 corner, got 0"
        raise ValueError(message)
    return _pick(plate, np.argmin(np.where(touching, plate[..., 1], np.inf), axis=1))


def _as_complex(outline):
    """Return corners as complex numbers, so that both coordinates are compared at once."""
    return np.ascontiguousarray(outline).view(complex)[..., 0]


def _outermost(rivet, entry, sign):
    """Return the outermost corner of the tail on one side."""
    below = rivet[..., 1] < entry[:, None, 1]
    return _pick(rivet, np.argmax(np.where(below, sign * rivet[..., 0], -np.inf), axis=1))


def _pick(outline, number):
    """Return one corner of each outline."""
    return np.take_along_axis(outline, number[:, None, None], axis=1)[:, 0]


def _at_edge(outline, *, highest):
    """Return the highest or lowest corner at the outer edge of a plate, the one of its outermost corner."""
    x = outline[..., 0]
    away = np.abs(x) if np.all(x > 0) or np.all(x < 0) else x
    at_edge = away == away.max(axis=1, keepdims=True)
    if highest:
        return np.where(at_edge, outline[..., 1], -np.inf).max(axis=1)
    return np.where(at_edge, outline[..., 1], np.inf).min(axis=1)


def _rolled(outline, start):
    """Return outlines that begin at a given corner."""
    number = (start[:, None] + np.arange(outline.shape[1])) % outline.shape[1]
    return np.take_along_axis(outline, number[..., None], axis=1)


def _corner(outline, point):
    """Return the number of the corner that lies on a point, or raise where there is none."""
    on = (outline[..., 0] == point[:, None, 0]) & (outline[..., 1] == point[:, None, 1])
    if not np.all(on.any(axis=1)):
        message = "rivet and second plate must meet in at least 1 corner at the tail, got 0"
        raise ValueError(message)
    return np.argmax(on, axis=1)


def _buckle(rivet, tail):
    """Return how far one side of the shank comes in again below its widest place."""
    ring = rivet if np.all(tail[:, 0] > 0) else rivet[:, ::-1]
    ring = _rolled(ring, _corner(ring, tail))
    top = np.argmax(ring[..., 1] >= ring[..., 1].max(axis=1, keepdims=True), axis=1)
    number = np.arange(ring.shape[1])
    radius = np.where(number <= top[:, None], np.abs(ring[..., 0]), np.inf)
    neck = ring.shape[1] - 1 - np.argmin(radius[:, ::-1], axis=1)
    excess = np.where(number < neck[:, None], radius - np.minimum.accumulate(radius, axis=1), 0.0)
    return excess.max(axis=1)


def _measure_second_plate(second, tails):
    """Measure bottom thickness, button and cracks; joints of like corners are done together."""
    left = second[..., 0] == second[..., 0].min(axis=1, keepdims=True)
    second = _rolled(second, np.argmin(np.where(left, second[..., 1], np.inf), axis=1))
    right = second[..., 0] == second[..., 0].max(axis=1, keepdims=True)
    corners = np.stack(
        [
            np.argmin(np.where(right, second[..., 1], np.inf), axis=1),
            *(_corner(second, tail) for tail in tails),
        ],
        axis=1,
    )
    found = {name: np.empty(len(second)) for name in _OF_SECOND_PLATE}
    for last, tail_left, tail_right in np.unique(corners, axis=0):
        alike = np.all(corners == (last, tail_left, tail_right), axis=1)
        floor = second[alike, : last + 1]
        under = second[alike, tail_right : tail_left + 1][:, ::-1]
        for name, values in zip(_OF_SECOND_PLATE, _measure_floor(floor, under), strict=True):
            found[name][alike] = values
    return found


def _measure_floor(floor, under):
    """Return bottom thickness, width and depth of the button, and depth of cracks."""
    plane = (floor[:, 0, 1] + floor[:, -1, 1]) / 2
    depth = plane - floor[..., 1].min(axis=1)
    level = plane - depth / 2
    low = floor[..., 1] < level[:, None]
    first = np.argmax(low, axis=1)
    last = low.shape[1] - 1 - np.argmax(low[:, ::-1], axis=1)
    width = _crossing(floor, last, last + 1, level) - _crossing(floor, first - 1, first, level)
    return _thinnest(floor, under), width, depth, _deepest_crack(floor)


def _crossing(floor, before, after, level):
    """Return where the straight line between two corners crosses a level."""
    (x1, y1), (x2, y2) = _pick(floor, before).T, _pick(floor, after).T
    return x1 + (x2 - x1) * (level - y1) / (y2 - y1)


def _thinnest(floor, under):
    """Return the least distance along the axis between two boundaries that run from left to right."""
    for name, line in (("underside of the second plate", floor), ("second plate under the tail", under)):
        if np.any(np.diff(line[..., 0], axis=1) < 0):
            message = f"{name} must run from left to right, got a line that turns back"
            raise ValueError(message)
    above = _along_rows(floor[..., 0], under)
    inside = (floor[..., 0] >= under[:, :1, 0]) & (floor[..., 0] <= under[:, -1:, 0])
    at_floor = np.where(inside, above - floor[..., 1], np.inf)
    at_under = under[..., 1] - _along_rows(under[..., 0], floor)
    return np.minimum(at_floor.min(axis=1), at_under.min(axis=1))


def _along_rows(x, line):
    """Return the height of a line at each x, row by row in one call: rows are laid side by side."""
    shift = 3 * np.abs(line[..., 0]).max() * np.arange(len(line))[:, None]
    return np.interp((x + shift).ravel(), (line[..., 0] + shift).ravel(), line[..., 1].ravel()).reshape(
        x.shape
    )


def _deepest_crack(floor):
    """Return the depth of the deepest narrow notch."""
    x, y = floor[..., 0], floor[..., 1]
    depth = np.minimum(y[:, 1:-1] - y[:, :-2], y[:, 1:-1] - y[:, 2:])
    narrow = x[:, 2:] - x[:, :-2] < _CRACK_WIDTH_MM
    return np.maximum(np.where(narrow, depth, 0.0).max(axis=1), 0.0)
