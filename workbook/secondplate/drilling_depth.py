"""Drilling out: length of the point, speed, time of a hole, and what may go wrong with its depth.

A conical point is through before it is full width: a drill that has cut its full diameter in the top plate
always stands in the second plate. A flat-bottomed cutter does not. What is left there: ``plate_states``.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between


def _half_angle_tangent(point_angle_deg):
    """Return the tangent of half the point angle; a flat bottom has none."""
    angle = np.asarray(require_between("point angle", point_angle_deg, 60, 180, unit="deg"), dtype=float)
    # At 180 degrees the tangent is without end; a point length of 0 comes out all the same.
    return np.where(angle == 180, np.inf, np.tan(np.deg2rad(angle / 2)))


def point_length_mm(*, drill_diameter_mm, point_angle_deg):
    """Return the length of a drill's conical point, (D/2) / tan(point angle / 2).

    Parameters
    ----------
    drill_diameter_mm : float or array
        Diameter of the drill, above 0 [mm]
    point_angle_deg : float or array
        Angle of the point, 60 to 180; 180 is a flat bottom [deg]

    Returns
    -------
    float or array
        From the tip to the full diameter, 0 for a flat bottom [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: plane_geometry, a cone. It leaves out the chisel edge.

    Examples
    --------
    >>> round(point_length_mm(drill_diameter_mm=8, point_angle_deg=118), 2)
    2.4
    """
    diameter = np.asarray(require_above("drill diameter", drill_diameter_mm, 0, unit="mm"))
    return plain(diameter / 2 / _half_angle_tangent(point_angle_deg))


def spindle_speed_rpm(*, cutting_speed_m_min, drill_diameter_mm):
    """Return the speed of the spindle, 1000 v / (pi D).

    Parameters
    ----------
    cutting_speed_m_min : float or array
        Cutting speed at the rim, above 0 [m/min]
    drill_diameter_mm : float or array
        Diameter of the drill, above 0 [mm]

    Returns
    -------
    float or array
        Turns in a minute [1/min]

    Raises
    ------
    ValueError
        If a value is not above 0.

    Notes
    -----
    Source: machining_textbook.

    Examples
    --------
    >>> round(spindle_speed_rpm(cutting_speed_m_min=6, drill_diameter_mm=6.5))
    294
    """
    speed = np.asarray(require_above("cutting speed", cutting_speed_m_min, 0, unit="m/min"))
    diameter = require_above("drill diameter", drill_diameter_mm, 0, unit="mm")
    return plain(1000 * speed / (np.pi * np.asarray(diameter)))


def drilling_time_min(
    *,
    drilled_depth_mm,
    drill_diameter_mm,
    point_angle_deg,
    cutting_speed_m_min,
    feed_mm_rev,
    approach_mm=0.0,
    overrun_mm=0.0,
):
    """Return the time of one hole with the way of the point, (approach + depth + point + overrun) / (f N).

    Parameters
    ----------
    drilled_depth_mm : float or array
        Depth at full diameter, at least 0 [mm]
    drill_diameter_mm : float or array
        Diameter of the drill, above 0 [mm]
    point_angle_deg : float or array
        Angle of the point, 60 to 180 [deg]
    cutting_speed_m_min : float or array
        Cutting speed at the rim, above 0 [m/min]
    feed_mm_rev : float or array
        Feed for a turn, above 0 [mm/rev]
    approach_mm : float or array
        Way at this feed before the tip meets the metal, at least 0 [mm]
    overrun_mm : float or array
        Way at this feed beyond the depth, at least 0 [mm]

    Returns
    -------
    float or array
        Time of the cut alone, nothing else [min]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: machining_textbook. Without the point the answer is a well-known wrong one.

    Examples
    --------
    >>> round(drilling_time_min(drilled_depth_mm=60, drill_diameter_mm=12.7, point_angle_deg=118,
    ...                         cutting_speed_m_min=25, feed_mm_rev=0.3), 3)
    0.339
    """
    depth = np.asarray(require_at_least("drilled depth", drilled_depth_mm, 0, unit="mm"))
    feed = np.asarray(require_above("feed", feed_mm_rev, 0, unit="mm/rev"))
    beside = np.add(
        require_at_least("approach", approach_mm, 0, unit="mm"),
        require_at_least("overrun", overrun_mm, 0, unit="mm"),
    )
    point = point_length_mm(drill_diameter_mm=drill_diameter_mm, point_angle_deg=point_angle_deg)
    way = depth + point + beside
    turns = spindle_speed_rpm(cutting_speed_m_min=cutting_speed_m_min, drill_diameter_mm=drill_diameter_mm)
    return plain(way / (feed * turns))


def bottom_volume_mm3(*, tip_depth_mm, drill_diameter_mm, point_angle_deg):
    """Return the metal that a tip has cut: pi/3 (z tan)^2 z while it is a cone, then a cylinder more.

    Parameters
    ----------
    tip_depth_mm : float or array
        How far the tip went in, at least 0 [mm]
    drill_diameter_mm : float or array
        Diameter of the drill, above 0 [mm]
    point_angle_deg : float or array
        Angle of the point, 60 to 180 [deg]

    Returns
    -------
    float or array
        Volume of the dimple, or of the hole with its conical bottom [mm3]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: plane_geometry, a cone and a cylinder.

    Examples
    --------
    >>> round(bottom_volume_mm3(tip_depth_mm=0.5, drill_diameter_mm=8, point_angle_deg=118), 3)
    0.363
    """
    tip = np.asarray(require_at_least("tip depth", tip_depth_mm, 0, unit="mm"))
    sizes = {"drill_diameter_mm": drill_diameter_mm, "point_angle_deg": point_angle_deg}
    point = np.asarray(point_length_mm(**sizes))
    area = np.pi / 4 * np.square(np.asarray(drill_diameter_mm, dtype=float))
    # A flat bottom has no cone; its share is never used.
    share = np.where(point > 0, np.minimum(tip, point) / np.where(point > 0, point, 1.0), 0.0)
    return plain(area * (point / 3 * share**3 + np.maximum(0.0, tip - point)))


@dataclass(frozen=True, kw_only=True)
class DepthBudget:
    """What may go wrong with the depth of a hole: the worst case, and what is to be expected.

    Parameters
    ----------
    worst_mm : float
        All errors at their limits and in one direction [mm]
    expected_mm : float
        Root of the sum of squares: independent errors seldom add up [mm]

    Examples
    --------
    >>> depth_budget((0.1, 0.3, 0.4)).worst_mm
    0.8
    """

    worst_mm: float
    expected_mm: float


def depth_budget(errors_mm):
    """Return worst case and expected size of the error of a depth stop.

    Parameters
    ----------
    errors_mm : sequence of float
        Limit of each error, plus or minus, at least 0: setting of the stop, give of the plate, lunge at the
        break-through, length of the drill [mm]

    Returns
    -------
    DepthBudget
        Both sums [-]

    Raises
    ------
    ValueError
        If there is no error, or one is below 0.

    Notes
    -----
    Source: practice; both are shown because people use both.

    Examples
    --------
    >>> round(depth_budget((0.1, 0.3, 0.4)).expected_mm, 3)
    0.51
    """
    errors = np.atleast_1d(require_at_least("error of the depth", errors_mm, 0, unit="mm"))
    if not errors.size:
        message = "errors of the depth must be one at least, got none"
        raise ValueError(message)
    return DepthBudget(worst_mm=float(errors.sum()), expected_mm=float(np.sqrt(np.square(errors).sum())))
