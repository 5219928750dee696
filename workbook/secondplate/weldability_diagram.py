"""The Schaeffler diagram: its lines, and the structure at a place in it.

Lines are digitised by a third party and good to 0.3; a place nearer to a line than that is called so.
"""

from dataclasses import dataclass
from functools import cache

import numpy as np

from secondplate import tables
from secondplate.arrays import plain
from secondplate.checks import require_between

CHROMIUM_PERCENT, NICKEL_PERCENT = (0.0, 40.0), (0.0, 30.0)  # axes of the diagram
LINE_UNCERTAINTY_PERCENT = 0.3
REGIONS = (
    "martensite",
    "austenite and martensite",
    "austenite",
    "martensite and ferrite",
    "austenite, martensite and ferrite",
    "austenite and ferrite",
    "ferrite",
)
_BORDERS = ("martensite line", "austenite line", "ferrite line 0 %", "ferrite line 100 %")


@dataclass(frozen=True, kw_only=True)
class DiagramLine:
    """One straight line of the diagram.

    Parameters
    ----------
    name : str
        What it parts [-]
    chromium_equivalent_percent : tuple of float
        Chromium equivalents of its two ends [%]
    nickel_equivalent_percent : tuple of float
        Nickel equivalents of its two ends [%]
    ferrite_percent : float or None
        Ferrite along the line; None for a line that parts martensite [%]

    Examples
    --------
    >>> diagram_lines()[0].name
    'martensite line'
    """

    name: str
    chromium_equivalent_percent: tuple[float, float]
    nickel_equivalent_percent: tuple[float, float]
    ferrite_percent: float | None

    @property
    def slope(self):
        """Nickel equivalent for each percent of chromium equivalent."""
        (x0, x1), (y0, y1) = self.chromium_equivalent_percent, self.nickel_equivalent_percent
        return (y1 - y0) / (x1 - x0)

    def nickel_at(self, chromium_equivalent_percent):
        """Return the nickel equivalent of the line, drawn on beyond its ends."""
        past = np.asarray(chromium_equivalent_percent) - self.chromium_equivalent_percent[0]
        return plain(self.nickel_equivalent_percent[0] + self.slope * past)


@cache
def diagram_lines():
    """Return the lines of the diagram, for drawing and for ``constitution_region``.

    Returns
    -------
    tuple of DiagramLine
        Line of martensite, line of austenite, then the ferrite lines from 0 to 100 % [-]

    Notes
    -----
    Source: schaeffler_code.

    Examples
    --------
    >>> round(diagram_lines()[0].nickel_at(10), 2)
    11.6
    """
    ends = {}
    for row in tables.load("weldability_diagram"):
        ends.setdefault(row.name, []).append(row)
    return tuple(
        DiagramLine(
            name=name,
            chromium_equivalent_percent=tuple(float(row.keys["chromium_equivalent_percent"]) for row in rows),
            nickel_equivalent_percent=tuple(row.number for row in rows),
            ferrite_percent=None
            if rows[0].keys["ferrite_percent"] == "-"
            else float(rows[0].keys["ferrite_percent"]),
        )
        for name, rows in ends.items()
    )


def _above(chromium, nickel):
    """Return how far the nickel equivalent lies above each border, by name of the border."""
    lines = {line.name: line for line in diagram_lines()}
    return {name: nickel - lines[name].nickel_at(chromium) for name in _BORDERS}


def constitution_region(chromium_equivalent_percent, nickel_equivalent_percent):
    """Return the structure of a weld at a place of the diagram.

    Parameters
    ----------
    chromium_equivalent_percent : float or array
        Chromium equivalent, 0 to 40 % [%]
    nickel_equivalent_percent : float or array
        Nickel equivalent, 0 to 30 % [%]

    Returns
    -------
    numpy.ndarray of str
        Names of ``REGIONS``, in the common shape [-]

    Raises
    ------
    ValueError
        If an equivalent lies off the diagram.

    Notes
    -----
    The diagram was made for slow arc welds; at the speed of a stud weld a structure may be kept back.
    Source: schaeffler_code.

    Examples
    --------
    >>> str(constitution_region(9.787, 11.013))
    'martensite'
    """
    chromium = require_between(
        "chromium equivalent", chromium_equivalent_percent, *CHROMIUM_PERCENT, unit="%"
    )
    nickel = require_between("nickel equivalent", nickel_equivalent_percent, *NICKEL_PERCENT, unit="%")
    above = _above(chromium, nickel)
    level = 1 * (np.asarray(above["martensite line"]) >= 0) + (np.asarray(above["austenite line"]) >= 0)
    some_ferrite = np.asarray(above["ferrite line 0 %"]) < 0
    only_ferrite = np.asarray(above["ferrite line 100 %"]) < 0
    return np.array(REGIONS)[np.where(only_ferrite, 6, level + 3 * some_ferrite)]


def near_border(chromium_equivalent_percent, nickel_equivalent_percent):
    """Tell whether a place lies so near to a border that either structure may come out.

    Parameters
    ----------
    chromium_equivalent_percent : float or array
        Chromium equivalent, 0 to 40 % [%]
    nickel_equivalent_percent : float or array
        Nickel equivalent, 0 to 30 % [%]

    Returns
    -------
    numpy.ndarray of bool
        True within 0.3 of a border, straight across, in the common shape [-]

    Raises
    ------
    ValueError
        If an equivalent lies off the diagram.

    Notes
    -----
    Source: schaeffler_code, accuracy of the digitising.

    Examples
    --------
    >>> bool(near_border(19.075, 10.700))
    True
    """
    chromium = require_between(
        "chromium equivalent", chromium_equivalent_percent, *CHROMIUM_PERCENT, unit="%"
    )
    nickel = require_between("nickel equivalent", nickel_equivalent_percent, *NICKEL_PERCENT, unit="%")
    lines = {line.name: line for line in diagram_lines()}
    near = [
        np.abs(distance) / np.hypot(1, lines[name].slope) <= LINE_UNCERTAINTY_PERCENT
        for name, distance in _above(chromium, nickel).items()
    ]
    return np.logical_or.reduce(np.broadcast_arrays(*near))
