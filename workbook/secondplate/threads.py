"""Metric threads: coarse pitch, pitch and minor diameter, and the stress area by two formulas.

It leaves out tolerances; every diameter is the basic one.
"""

import numpy as np

from secondplate import tables
from secondplate.checks import require_above, require_between, require_finite

COARSE_PITCHES_MM = {float(row.keys["diameter_mm"]): row.number for row in tables.load("threads")}
DIAMETER_LIMITS_MM = (1.0, 40.0)


def coarse_pitch_mm(diameter_mm):
    """Return the coarse pitch of a metric thread.

    Parameters
    ----------
    diameter_mm : float or array
        Nominal diameter, one of 3, 4, 5, 6, 8, 10, 12 and 16 mm [mm]

    Returns
    -------
    float or array
        Pitch, in the shape of ``diameter_mm`` [mm]

    Raises
    ------
    ValueError
        If a diameter is not in the table.

    Notes
    -----
    Source: thread_table_page, coarse series of ISO 261.

    Examples
    --------
    >>> coarse_pitch_mm(6)
    1.0
    """
    diameter_mm = require_finite("diameter", diameter_mm, unit="mm")
    flat = np.atleast_1d(diameter_mm)
    unknown = ~np.isin(flat, list(COARSE_PITCHES_MM))
    if unknown.any():
        sizes = ", ".join(f"{size:g}" for size in COARSE_PITCHES_MM)
        message = f"diameter must be one of {sizes} mm, got {float(flat[unknown][0]):g} mm"
        raise ValueError(message)
    if np.ndim(diameter_mm) == 0:
        return COARSE_PITCHES_MM[diameter_mm]
    return np.vectorize(COARSE_PITCHES_MM.get, otypes=[float])(diameter_mm)


def checked_thread(diameter_mm, pitch_mm):
    """Return diameter and pitch, or refuse what is no thread: a pitch above 0.3 d leaves next to no core.

    Parameters
    ----------
    diameter_mm : float or array
        Nominal diameter d, 1 to 40 mm [mm]
    pitch_mm : float or array
        Pitch P, at most 0.3 of the diameter [mm]

    Returns
    -------
    tuple of float or array
        Diameter and pitch [mm]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Examples
    --------
    >>> checked_thread(6, 1)
    (6.0, 1.0)
    """
    diameter_mm = require_between("diameter", diameter_mm, *DIAMETER_LIMITS_MM, unit="mm")
    pitch_mm = require_above("pitch", pitch_mm, 0, unit="mm")
    require_between("pitch over diameter", np.divide(pitch_mm, diameter_mm), 0, 0.3, unit="")
    return diameter_mm, pitch_mm


def pitch_diameter_mm(diameter_mm, *, pitch_mm):
    """Return the pitch diameter of a metric thread, d2 = d - 0.6495 P.

    Parameters
    ----------
    diameter_mm : float or array
        Nominal diameter d, 1 to 40 mm [mm]
    pitch_mm : float or array
        Pitch P, at most 0.3 of the diameter [mm]

    Returns
    -------
    float or array
        Pitch diameter d2, in the common shape [mm]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: iso_724, as used in thread_table_page and thread_area_page.

    Examples
    --------
    >>> pitch_diameter_mm(6, pitch_mm=1.0)
    5.3505
    """
    diameter_mm, pitch_mm = checked_thread(diameter_mm, pitch_mm)
    return diameter_mm - 0.6495 * pitch_mm


def minor_diameter_mm(diameter_mm, *, pitch_mm):
    """Return the minor diameter of a metric outside thread, d3 = d - 1.2269 P.

    Parameters
    ----------
    diameter_mm : float or array
        Nominal diameter d, 1 to 40 mm [mm]
    pitch_mm : float or array
        Pitch P, at most 0.3 of the diameter [mm]

    Returns
    -------
    float or array
        Minor diameter d3, in the common shape [mm]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: iso_724, as used in thread_table_page and thread_area_page.

    Examples
    --------
    >>> round(minor_diameter_mm(6, pitch_mm=1.0), 4)
    4.7731
    """
    diameter_mm, pitch_mm = checked_thread(diameter_mm, pitch_mm)
    return diameter_mm - 1.2269 * pitch_mm


def stress_area_mm2(diameter_mm, *, pitch_mm):
    """Return the stress area of a metric thread, As = pi/4 ((d2 + d3)/2)^2.

    Parameters
    ----------
    diameter_mm : float or array
        Nominal diameter d, 1 to 40 mm [mm]
    pitch_mm : float or array
        Pitch P, at most 0.3 of the diameter [mm]

    Returns
    -------
    float or array
        Stress area As, in the common shape [mm2]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: iso_898_1, clause on the stress area; compared with thread_area_page. The standard's own tables
    print it rounded to three figures.
    ``inch_stress_area_mm2`` gives the other formula found on stud pages.

    Examples
    --------
    >>> round(stress_area_mm2(6, pitch_mm=1.0), 2)
    20.12
    """
    pitch_diameter = pitch_diameter_mm(diameter_mm, pitch_mm=pitch_mm)
    minor_diameter = minor_diameter_mm(diameter_mm, pitch_mm=pitch_mm)
    return np.pi / 4 * ((pitch_diameter + minor_diameter) / 2) ** 2


def inch_stress_area_mm2(diameter_mm, *, pitch_mm):
    """Return the tensile area of the inch thread formula, pi/4 (d - 0.9743 P)^2.

    Some stud pages use it for metric studs too; it is 1.4 % smaller than ``stress_area_mm2`` there.

    Parameters
    ----------
    diameter_mm : float or array
        Nominal diameter d, 1 to 40 mm [mm]
    pitch_mm : float or array
        Pitch P, one inch over the threads per inch, at most 0.3 of the diameter [mm]

    Returns
    -------
    float or array
        Tensile area, in the common shape [mm2]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: stud_specification_page, formula for the mean effective thread area.

    Examples
    --------
    >>> round(inch_stress_area_mm2(6, pitch_mm=1.0), 2)
    19.84
    """
    diameter_mm, pitch_mm = checked_thread(diameter_mm, pitch_mm)
    return np.pi / 4 * (diameter_mm - 0.9743 * pitch_mm) ** 2
