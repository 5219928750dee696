"""Quality of a drilled hole: tolerance grade, oversize and run-out, burr, metal left beside it.

Numbers for oversize and burr are bands from memory, for no measured ones were found. Measure the first hole.
"""

from types import MappingProxyType

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import (
    require_above,
    require_at_least,
    require_below,
    require_between,
    require_choice,
    require_single,
    require_truth,
)
from secondplate.tables import bands, load

_GRADE_ROWS, _HOLES = load("tolerance_grades"), bands("drilled_holes", cited=False)
TOLERANCE_GRADES = tuple(dict.fromkeys(row.name for row in _GRADE_ROWS))
OVERSIZE_MM, RUN_OUT_MM = _HOLES["oversize"], _HOLES["run-out"]
OVERSIZE_RANGE_MM = (6.0, 8.0)
HOLE_FACTS = MappingProxyType({row.name: row for row in load("hole_facts")})
_MM_PER_UM = 1e-3


def hole_tolerance_mm(*, tolerance_grade, nominal_diameter_mm):
    """Return the width of the tolerance field of a grade.

    Parameters
    ----------
    tolerance_grade : str
        One of ``TOLERANCE_GRADES`` [-]
    nominal_diameter_mm : float or array
        Nominal diameter, above 3 up to 18 [mm]

    Returns
    -------
    float or array
        Greatest less least diameter allowed [mm]

    Raises
    ------
    ValueError
        If the diameter lies beyond the rows held here or the grade is unknown.

    Notes
    -----
    Source: iso_286_1 Table 1; a size on the border belongs to the smaller step.

    Examples
    --------
    >>> hole_tolerance_mm(tolerance_grade="IT12", nominal_diameter_mm=8)
    0.15
    """
    require_choice("tolerance grade", tolerance_grade, TOLERANCE_GRADES)
    rows = [row for row in _GRADE_ROWS if row.name == tolerance_grade]
    up_to = [float(row.keys["up_to_mm"]) for row in rows]
    above = require_above("nominal diameter", nominal_diameter_mm, float(rows[0].keys["above_mm"]), unit="mm")
    size = require_between("nominal diameter", above, 0, up_to[-1], unit="mm")
    widths = np.array([row.number for row in rows])
    return plain(widths[np.searchsorted(up_to, size)] * _MM_PER_UM)


def finest_grade(*, oversize_mm, nominal_diameter_mm):
    """Return the finest grade that still holds a hole which came out too wide, its field from the nominal up.

    Parameters
    ----------
    oversize_mm : float
        Measured less nominal diameter, at least 0 [mm]
    nominal_diameter_mm : float
        Nominal diameter, above 3 up to 18 [mm]

    Returns
    -------
    str or None
        One of ``TOLERANCE_GRADES``, None where not even the coarsest holds it [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: iso_286_1 Table 1. Drills usually make IT11 to IT13 (``HOLE_FACTS``, from memory).

    Examples
    --------
    >>> finest_grade(oversize_mm=0.1, nominal_diameter_mm=8)
    'IT12'
    """
    oversize = require_single("oversize", require_at_least("oversize", oversize_mm, 0, unit="mm"), unit="mm")
    require_single("nominal diameter", nominal_diameter_mm, unit="mm")
    for grade in TOLERANCE_GRADES:
        if oversize <= hole_tolerance_mm(tolerance_grade=grade, nominal_diameter_mm=nominal_diameter_mm):
            return grade
    return None


def drilled_diameter_mm(drill_diameter_mm, *, run_out_mm=0.0):
    """Return how wide a hole comes out in aluminium: drill plus oversize, at most the run-out more.

    Parameters
    ----------
    drill_diameter_mm : float or array
        Diameter of the drill, 6 to 8 [mm]
    run_out_mm : float or array
        Full reading at the tip, 0 to 0.5; the high end takes all of it [mm]

    Returns
    -------
    Band
        Diameter of the hole [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: own_judgement for the oversize of 0.03 to 0.15 mm, from memory; plane_geometry for the run-out:
    a tip that runs out by r cuts at most r wider.

    Examples
    --------
    >>> hole = drilled_diameter_mm(6.5, run_out_mm=0.1)
    >>> round(hole.low, 2), round(hole.high, 2)
    (6.53, 6.75)
    """
    drill = np.asarray(require_between("drill diameter", drill_diameter_mm, *OVERSIZE_RANGE_MM, unit="mm"))
    run_out = np.asarray(require_between("run-out", run_out_mm, 0, 0.5, unit="mm"))
    return Band(
        low=plain(drill + OVERSIZE_MM.low),
        best=plain(drill + OVERSIZE_MM.best),
        high=plain(drill + OVERSIZE_MM.high + run_out),
        basis=OVERSIZE_MM.basis,
    )


def burr_height_mm(*, sharp):
    """Return the height of the burr in soft aluminium.

    Parameters
    ----------
    sharp : bool
        Whether the drill is sharp and the feed gentle [-]

    Returns
    -------
    Band
        Height at entry or exit; between plates with a gap more [mm]

    Raises
    ------
    ValueError
        If it is no true or false.

    Notes
    -----
    Source: own_judgement, from memory; burr_gap_2019 for the gap.

    Examples
    --------
    >>> burr_height_mm(sharp=False).high
    0.5
    """
    is_sharp = require_truth("sharp", sharp)
    return _HOLES["burr of a sharp drill" if is_sharp else "burr of a dull drill"]


def metal_beside_hole_mm(*, drill_diameter_mm, flange_width_mm, edge_distance_mm):
    """Return the least metal left between a hole and the sides of its flange.

    Parameters
    ----------
    drill_diameter_mm : float or array
        Diameter of the drill, above 0 and below the width of the flange [mm]
    flange_width_mm : float or array
        Width of the flange, above 0 [mm]
    edge_distance_mm : float or array
        From the middle of the hole to the edge of the sheet, above 0 and below the width [mm]

    Returns
    -------
    float or array
        Least metal; below 0 where the hole breaks through a side [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range or the drill is as wide as the flange.

    Notes
    -----
    Source: plane_geometry. What a new fastener wants beside it: ``fasteners``.

    Examples
    --------
    >>> metal_beside_hole_mm(drill_diameter_mm=6.5, flange_width_mm=18, edge_distance_mm=8)
    4.75
    """
    width = require_above("flange width", flange_width_mm, 0, unit="mm")
    drill = require_above("drill diameter", drill_diameter_mm, 0, unit="mm")
    edge = require_above("edge distance", edge_distance_mm, 0, unit="mm")
    require_below("drill diameter", drill, "flange width", width)
    require_below("edge distance", edge, "flange width", width)
    return plain(np.minimum(edge, np.subtract(width, edge)) - np.asarray(drill) / 2)
