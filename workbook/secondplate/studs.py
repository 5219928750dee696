"""Threads and strength of a stud: stress area, property class, breaking load, working torque.

It treats the stud away from its weld; the strength of the weld itself is a matter of trial pulls.
"""

from dataclasses import dataclass

import numpy as np

from secondplate import tables
from secondplate.checks import (
    require_above,
    require_at_least,
    require_between,
    require_choice,
    require_finite,
)

_THREADS = tables.load("threads")
COARSE_PITCHES_MM = {float(row.keys["diameter_mm"]): row.number for row in _THREADS}
_SMALLEST_MM, _LARGEST_MM = 1.0, 40.0


@dataclass(frozen=True, kw_only=True)
class PropertyClass:
    """Strength class of a stud, with what the numbers rest on.

    Parameters
    ----------
    name : str
        Designation, for instance ``A2-70`` [-]
    tensile_strength_mpa : float
        Least tensile strength [MPa]
    proof_stress_mpa : float
        Least stress at which the stud stays longer for good: 0.2 % proof stress, in class 4.8 the stress
        at 0.0048 d of plastic elongation [MPa]
    lowest_hardness_hv : float or None
        Least hardness, None where the standard gives none [HV]
    highest_hardness_hv : float or None
        Greatest hardness, None where the standard gives none [HV]
    as_weld_stud : str
        What is known of welding studs of this class, in words [-]
    source : str
        Id of the source of the two strengths [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> property_class("A2-70").tensile_strength_mpa
    700.0
    """

    name: str
    tensile_strength_mpa: float
    proof_stress_mpa: float
    lowest_hardness_hv: float | None
    highest_hardness_hv: float | None
    as_weld_stud: str
    source: str
    locator: str
    basis: str


def _read_property_class(name, rows):
    """Put the rows of one class together."""
    by_name = {row.name: row for row in rows}
    strength = by_name["tensile strength"]
    lowest, highest = by_name.get("lowest hardness"), by_name.get("highest hardness")
    return PropertyClass(
        name=name,
        tensile_strength_mpa=strength.number,
        proof_stress_mpa=by_name["proof stress"].number,
        lowest_hardness_hv=lowest and lowest.number,
        highest_hardness_hv=highest and highest.number,
        as_weld_stud=by_name["as a weld stud"].value,
        source=strength.source,
        locator=strength.locator,
        basis=strength.basis,
    )


def _read_property_classes():
    """Read all classes, in the order of the table."""
    groups = {}
    for row in tables.load("property_classes"):
        groups.setdefault(row.keys["property_class"], []).append(row)
    return {name: _read_property_class(name, rows) for name, rows in groups.items()}


PROPERTY_CLASSES = _read_property_classes()


def property_class(name):
    """Return a property class by its designation.

    Parameters
    ----------
    name : str
        One of ``PROPERTY_CLASSES``: 4.8, 8.8, 10.9, 12.9, A2-50, A2-70, A2-80 [-]

    Returns
    -------
    PropertyClass
        The class [-]

    Raises
    ------
    ValueError
        If the name is not in the list.

    Notes
    -----
    Sources: iso_898_1 Table 3 (carbon steel) and iso_3506_1 (stainless), as reproduced.

    Examples
    --------
    >>> property_class("4.8").proof_stress_mpa
    340.0
    """
    return PROPERTY_CLASSES[require_choice("property class", name, tuple(PROPERTY_CLASSES))]


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
    Source: iso_724, coarse series, from memory.

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


def _checked_thread(diameter_mm, pitch_mm):
    """Refuse what is no thread: a pitch above 0.3 of the diameter leaves next to no core."""
    diameter_mm = require_between("diameter", diameter_mm, _SMALLEST_MM, _LARGEST_MM, unit="mm")
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
    Source: iso_724, from memory.

    Examples
    --------
    >>> pitch_diameter_mm(6, pitch_mm=1.0)
    5.3505
    """
    diameter_mm, pitch_mm = _checked_thread(diameter_mm, pitch_mm)
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
    Source: iso_724, from memory.

    Examples
    --------
    >>> minor_diameter_mm(6, pitch_mm=1.0)
    4.7731
    """
    diameter_mm, pitch_mm = _checked_thread(diameter_mm, pitch_mm)
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
    Source: iso_898_1 clause on stress area. Tables print it rounded to three figures.
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
    diameter_mm, pitch_mm = _checked_thread(diameter_mm, pitch_mm)
    return np.pi / 4 * (diameter_mm - 0.9743 * pitch_mm) ** 2


def breaking_load_n(stress_area_mm2, tensile_strength_mpa):
    """Return the least load at which the thread breaks, F = As Rm.

    Parameters
    ----------
    stress_area_mm2 : float or array
        Stress area As, above 0 [mm2]
    tensile_strength_mpa : float or array
        Tensile strength Rm, above 0 [MPa]

    Returns
    -------
    float or array
        Breaking load, in the common shape [N]

    Raises
    ------
    ValueError
        If an argument is not above 0.

    Notes
    -----
    Source: iso_898_1, minimum ultimate tensile loads. The weld may break earlier.

    Examples
    --------
    >>> round(breaking_load_n(20.1, 700.0))
    14070
    """
    area = require_above("stress area", stress_area_mm2, 0, unit="mm2")
    return area * require_above("tensile strength", tensile_strength_mpa, 0, unit="MPa")


def proof_load_n(stress_area_mm2, proof_stress_mpa):
    """Return the load at which the thread begins to stay longer, F = As Rp.

    Parameters
    ----------
    stress_area_mm2 : float or array
        Stress area As, above 0 [mm2]
    proof_stress_mpa : float or array
        Proof stress Rp, above 0 [MPa]

    Returns
    -------
    float or array
        Load at the proof stress, in the common shape [N]

    Raises
    ------
    ValueError
        If an argument is not above 0.

    Notes
    -----
    Source: iso_3506_1 and iso_898_1, definition of the 0.2 % proof stress. The loads that ISO 898-1 tables
    head "proof load" rest on a lower test stress and are not these.

    Examples
    --------
    >>> round(proof_load_n(20.1, 450.0))
    9045
    """
    area = require_above("stress area", stress_area_mm2, 0, unit="mm2")
    return area * require_above("proof stress", proof_stress_mpa, 0, unit="MPa")


def working_torque_n_m(
    *, stress_area_mm2, proof_stress_mpa, diameter_mm, preload_share=0.75, torque_coefficient=0.2
):
    """Return the tightening torque of a stud, T = K x Rp As d.

    Parameters
    ----------
    stress_area_mm2 : float or array
        Stress area As, above 0 [mm2]
    proof_stress_mpa : float or array
        Proof stress Rp, above 0 [MPa]
    diameter_mm : float or array
        Nominal diameter d, 1 to 40 mm [mm]
    preload_share : float or array
        Share x of the proof load taken as preload, above 0 and at most 1 [-]
    torque_coefficient : float or array
        Torque coefficient K, 0.05 to 0.5; 0.2 stands for plain dry steel [-]

    Returns
    -------
    float or array
        Torque, in the common shape [N m]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Sources: stud_specification_page and stud_load_tables, T = 0.2 F d; us_stud_table, 75 % of yield.
    With the defaults it reproduces the table of dvs_0904 (stud_torque_page) within its rounding.

    Examples
    --------
    >>> round(working_torque_n_m(stress_area_mm2=20.12, proof_stress_mpa=340.0, diameter_mm=6.0), 1)
    6.2
    """
    load = proof_load_n(stress_area_mm2, proof_stress_mpa)
    diameter_mm = require_between("diameter", diameter_mm, _SMALLEST_MM, _LARGEST_MM, unit="mm")
    require_above("preload share", preload_share, 0, unit="")
    share = require_between("preload share", preload_share, 0, 1, unit="")
    coefficient = require_between("torque coefficient", torque_coefficient, 0.05, 0.5, unit="")
    return coefficient * share * load * diameter_mm / 1000  # N mm to N m


def torque_coefficient(*, diameter_mm, pitch_mm, friction, bearing_diameter_mm=None):
    """Return the torque coefficient, K = (0.159 P + 0.577 mu d2 + mu Dk/2) / d.

    Parameters
    ----------
    diameter_mm : float or array
        Nominal diameter d, 1 to 40 mm [mm]
    pitch_mm : float or array
        Pitch P, at most 0.3 of the diameter [mm]
    friction : float or array
        Coefficient of friction mu of thread and nut face alike, 0.04 to 0.4 [-]
    bearing_diameter_mm : float or array or None
        Mean diameter Dk of the nut face, at least d; 1.3 d where None [mm]

    Returns
    -------
    float or array
        Torque coefficient K, in the common shape [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: vdi_2230 part 1, tightening torque for 60 degree threads, from memory.

    Examples
    --------
    >>> round(torque_coefficient(diameter_mm=6, pitch_mm=1.0, friction=0.15), 4)
    0.2012
    """
    pitch_diameter = pitch_diameter_mm(diameter_mm, pitch_mm=pitch_mm)
    diameter_mm, pitch_mm = _checked_thread(diameter_mm, pitch_mm)
    friction = require_between("friction", friction, 0.04, 0.4, unit="")
    if bearing_diameter_mm is None:
        bearing_diameter_mm = 1.3 * diameter_mm
    bearing = require_above("bearing diameter", bearing_diameter_mm, 0, unit="mm")
    require_at_least("bearing diameter over diameter", bearing / diameter_mm, 1, unit="")
    arm_mm = 0.159 * pitch_mm + 0.577 * friction * pitch_diameter + friction * bearing / 2
    return arm_mm / diameter_mm
