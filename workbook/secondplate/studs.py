"""Strength of a stud: property class, breaking load, proof load, working torque; threads come along.

It treats the stud away from its weld; the strength of the weld itself is a matter of trial pulls.
"""

from dataclasses import dataclass

from secondplate import tables
from secondplate.checks import require_above, require_at_least, require_between, require_choice
from secondplate.threads import (
    DIAMETER_LIMITS_MM,
    checked_thread,
    coarse_pitch_mm,
    inch_stress_area_mm2,
    minor_diameter_mm,
    pitch_diameter_mm,
    stress_area_mm2,
)

__all__ = [
    "PROPERTY_CLASSES",
    "PropertyClass",
    "breaking_load_n",
    "coarse_pitch_mm",
    "inch_stress_area_mm2",
    "minor_diameter_mm",
    "pitch_diameter_mm",
    "proof_load_n",
    "property_class",
    "stress_area_mm2",
    "torque_coefficient",
    "working_torque_n_m",
]


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
    diameter_mm = require_between("diameter", diameter_mm, *DIAMETER_LIMITS_MM, unit="mm")
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
    Source: vdi_2230 part 1, tightening torque for 60 degree threads, from memory; within 5 % of
    stainless_torque_page.

    Examples
    --------
    >>> round(torque_coefficient(diameter_mm=6, pitch_mm=1.0, friction=0.15), 4)
    0.2012
    """
    pitch_diameter = pitch_diameter_mm(diameter_mm, pitch_mm=pitch_mm)
    diameter_mm, pitch_mm = checked_thread(diameter_mm, pitch_mm)
    friction = require_between("friction", friction, 0.04, 0.4, unit="")
    if bearing_diameter_mm is None:
        bearing_diameter_mm = 1.3 * diameter_mm
    bearing = require_above("bearing diameter", bearing_diameter_mm, 0, unit="mm")
    require_at_least("bearing diameter over diameter", bearing / diameter_mm, 1, unit="")
    arm_mm = 0.159 * pitch_mm + 0.577 * friction * pitch_diameter + friction * bearing / 2
    return arm_mm / diameter_mm
