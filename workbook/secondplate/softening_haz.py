"""Strength beside an arc weld by the factors of EN 1999-1-1: the upper bound of what heat can take.

They are for seams of seconds and minutes; the pulse of a stud is far milder. The factors hold after natural
ageing of some days.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import (
    require_above,
    require_at_least,
    require_between,
    require_choice,
    require_single,
)
from secondplate.tables import load

_ROWS = load("haz_factors")
_EXTENTS = load("haz_extent")
HAZ_ALLOYS = tuple(dict.fromkeys(row.keys["alloy"] for row in _ROWS))
PRODUCTS = ("sheet", "extruded")
SEAM_PROCESSES = ("MIG", "TIG")


@dataclass(frozen=True, kw_only=True)
class HazFactors:
    """Strength of one alloy and temper, beside a seam and away from it.

    Parameters
    ----------
    proof_stress_mpa : float
        Proof stress of the parent f_o [MPa]
    tensile_strength_mpa : float
        Tensile strength of the parent f_u [MPa]
    zone_proof_stress_mpa : float
        Proof stress in the heat-affected zone [MPa]
    zone_tensile_strength_mpa : float
        Tensile strength in the heat-affected zone [MPa]

    Examples
    --------
    >>> found = haz_factors("6082-T6", product="extruded", thickness_mm=3)
    >>> round(found.proof_stress_share, 2), round(found.tensile_strength_share, 2)
    (0.5, 0.64)
    """

    proof_stress_mpa: float
    tensile_strength_mpa: float
    zone_proof_stress_mpa: float
    zone_tensile_strength_mpa: float

    @property
    def proof_stress_share(self):
        """Factor on the proof stress: rho_o,haz."""
        return self.zone_proof_stress_mpa / self.proof_stress_mpa

    @property
    def tensile_strength_share(self):
        """Factor on the tensile strength: rho_u,haz."""
        return self.zone_tensile_strength_mpa / self.tensile_strength_mpa


def haz_factors(alloy, *, product, thickness_mm):
    """Return the strength of an alloy beside a seam and away from it.

    Parameters
    ----------
    alloy : str
        Alloy and temper, one of ``HAZ_ALLOYS`` [-]
    product : str
        ``sheet`` or ``extruded`` [-]
    thickness_mm : float
        Thickness, within the rows of the table [mm]

    Returns
    -------
    HazFactors
        Strengths, and their ratios [-]

    Raises
    ------
    ValueError
        If the table has no such alloy, product or thickness.

    Notes
    -----
    Source: en_1999_1_1, Tables 3.2a and 3.2b, from memory; 6082-T6 extruded up to 5 mm as haz_check_code
    cites it. Where two rows meet, that of the thinner holds.

    Examples
    --------
    >>> haz_factors("5754-O", product="sheet", thickness_mm=1.5).proof_stress_share
    1.0
    """
    require_choice("alloy", alloy, HAZ_ALLOYS)
    require_choice("product", product, PRODUCTS)
    thickness = require_single("thickness", thickness_mm, unit="mm")
    require_above("thickness", thickness, 0, unit="mm")
    found = {}
    for row in _ROWS:
        low, high = float(row.keys["thickness_low_mm"]), float(row.keys["thickness_high_mm"])
        if (row.keys["alloy"], row.keys["product"]) == (alloy, product) and low <= thickness <= high:
            found.setdefault(row.name, row.number)
    if not found:
        message = f"{product} of {alloy} must be in the table of factors, got none for {thickness:g} mm"
        raise ValueError(message)
    return HazFactors(
        proof_stress_mpa=found["proof stress"],
        tensile_strength_mpa=found["tensile strength"],
        zone_proof_stress_mpa=found["proof stress in the zone"],
        zone_tensile_strength_mpa=found["tensile strength in the zone"],
    )


def haz_extent_mm(*, thickness_mm, seam_process="MIG", interpass_c=60.0):
    """Return how far the heat-affected zone of a seam reaches to each side.

    Parameters
    ----------
    thickness_mm : float
        Thickness, above 0; at most 100 for MIG and 6 for TIG [mm]
    seam_process : str
        ``MIG`` or ``TIG`` [-]
    interpass_c : float
        Temperature between passes, 0 to 180; above 60 the zone grows by 1 + (T - 60)/120 [C]

    Returns
    -------
    float
        Extent to each side, from the centre line of a butt weld [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: en_1999_1_1, 6.1.6.3, for 6xxx alloys, from memory; widths also in haz_check_code.

    Examples
    --------
    >>> haz_extent_mm(thickness_mm=2, interpass_c=120)
    30.0
    """
    require_choice("process of the seam", seam_process, SEAM_PROCESSES)
    rows = [row for row in _EXTENTS if row.keys["process"] == seam_process]
    greatest = float(rows[-1].keys["thickness_to_mm"])
    thickness = require_single("thickness", thickness_mm, unit="mm")
    require_above("thickness", thickness, 0, unit="mm")
    require_between("thickness", thickness, 0, greatest, unit="mm")
    interpass = require_single("temperature between passes", interpass_c, unit="C")
    require_between("temperature between passes", interpass, 0, 180, unit="C")
    width = next(row.number for row in rows if thickness <= float(row.keys["thickness_to_mm"]))
    return width * (1 + max(0.0, interpass - 60) / 120)


def haz_effective_area_mm2(*, width_mm, thickness_mm, zone_width_mm, strength_share):
    """Return the area that counts in a plate with a softened zone: b t - (1 - rho) b_haz t.

    Parameters
    ----------
    width_mm : float or array
        Width of the plate, above 0 [mm]
    thickness_mm : float or array
        Thickness, above 0 [mm]
    zone_width_mm : float or array
        Width of all softened zones together, at least 0 and at most that of the plate [mm]
    strength_share : float or array
        Factor rho of the zone, 0 to 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Area [mm2]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: en_1999_1_1, 6.1.6.2, from memory.

    Examples
    --------
    >>> round(haz_effective_area_mm2(width_mm=60, thickness_mm=2, zone_width_mm=40, strength_share=0.64), 1)
    91.2
    """
    width = np.asarray(require_above("width", width_mm, 0, unit="mm"))
    thickness = require_above("thickness", thickness_mm, 0, unit="mm")
    zone = np.asarray(require_at_least("width of the zone", zone_width_mm, 0, unit="mm"))
    require_between("width of the zone over that of the plate", zone / width, 0, 1, unit="")
    share = np.asarray(require_between("factor of the zone", strength_share, 0, 1, unit=""))
    return plain((width - (1 - share) * zone) * thickness)
