"""The button as a dome: its shape, the strain that made it, and the strain of pressing it back.

A spherical cap stands for the button. It is the mild model: under the leg of the rivet the plate is strained
far more, so everything here is a lower bound. Leaves out friction, springback and the ring round the leg.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between


@dataclass(frozen=True, kw_only=True)
class ButtonDome:
    """Spherical cap in place of the button; arrays stand for a column of buttons.

    Parameters
    ----------
    base_radius_mm : float or array
        Radius of its foot a, above 0 [mm]
    rise_mm : float or array
        How far it stands proud h, at least 0 and at most the base radius [mm]
    sheet_mm : float or array
        Thickness of the plate before riveting t, above 0 [mm]

    Raises
    ------
    ValueError
        If a size lies outside its range.

    Notes
    -----
    Source: plane_geometry, circular segment; strains derived for incompressible sheet without draw-in.

    Examples
    --------
    >>> button = ButtonDome(base_radius_mm=4, rise_mm=1, sheet_mm=1.5)
    >>> button.sphere_radius_mm, round(button.arc_mm, 5), round(button.press_back_strain, 3)
    (8.5, 4.16464, 0.209)
    """

    base_radius_mm: float
    rise_mm: float
    sheet_mm: float

    def __post_init__(self):
        """Refuse a dome that is no cap of a sphere, and sheet without thickness."""
        base = require_above("base radius of the dome", self.base_radius_mm, 0, unit="mm")
        rise = require_at_least("rise of the dome", self.rise_mm, 0, unit="mm")
        require_above("sheet thickness", self.sheet_mm, 0, unit="mm")
        too_high = np.asarray(rise) > np.asarray(base)
        if np.any(too_high):
            bad = np.broadcast_to(rise, too_high.shape)[too_high].flat[0]
            message = f"rise of the dome must be at most its base radius in mm, got {bad:g} mm"
            raise ValueError(message)

    @property
    def _ratio(self):
        """Rise over base radius."""
        return np.divide(self.rise_mm, self.base_radius_mm)

    @property
    def curvature_1_mm(self):
        """Curvature of the sphere in 1/mm; 0 for a flat plate."""
        squares = np.square(self.base_radius_mm, dtype=float) + np.square(self.rise_mm, dtype=float)
        return plain(2 * np.asarray(self.rise_mm, dtype=float) / squares)

    @property
    def sphere_radius_mm(self):
        """Radius of the sphere in mm: (a^2 + h^2)/(2 h); endless for a flat plate."""
        with np.errstate(divide="ignore"):
            return plain(np.divide(1.0, self.curvature_1_mm))

    @property
    def half_angle_rad(self):
        """Angle from the axis to the foot in rad: 2 atan(h/a)."""
        return plain(2 * np.arctan(self._ratio))

    @property
    def arc_mm(self):
        """Way over the dome from its top to its foot in mm."""
        return plain(np.multiply(self.base_radius_mm, np.exp(self.meridional_strain)))

    @property
    def meridional_strain(self):
        """True strain along the arc: ln(s/a)."""
        angle = np.asarray(self.half_angle_rad)
        # s/a = theta/sin(theta), which is 1 for a flat plate.
        return plain(np.log(1 / np.sinc(angle / np.pi)))

    @property
    def small_dome_strain(self):
        """The same for a low dome: 2 h^2/(3 a^2)."""
        return plain(2 * self._ratio**2 / 3)

    @property
    def area_ratio(self):
        """Area of the dome over that of its foot: 1 + (h/a)^2."""
        return plain(1 + self._ratio**2)

    @property
    def thinning_strain(self):
        """True strain through the thickness, below 0: -ln(area ratio)."""
        return plain(-np.log1p(self._ratio**2))

    @property
    def mean_thickness_mm(self):
        """Mean thickness of the dome in mm."""
        return plain(self.sheet_mm / np.asarray(self.area_ratio))

    @property
    def cap_volume_mm3(self):
        """Volume under the dome in mm3: pi h (3 a^2 + h^2)/6."""
        base, rise = np.asarray(self.base_radius_mm, dtype=float), np.asarray(self.rise_mm, dtype=float)
        return plain(np.pi * rise * (3 * base**2 + rise**2) / 6)

    @property
    def skin_bending_strain(self):
        """Bending strain of the skin: t/(2 R)."""
        return plain(np.multiply(self.sheet_mm, self.curvature_1_mm) / 2)

    @property
    def press_back_strain(self):
        """Strain of the skin by forming and pressing back: 2 |ln thinning| + t/(2 R)."""
        return plain(2 * np.abs(self.thinning_strain) + self.skin_bending_strain)

    @property
    def membrane_strain_there_and_back(self):
        """Equivalent strain of the middle of the sheet by forming and flattening: 2 |ln thinning|."""
        return plain(2 * np.abs(self.thinning_strain))

    @property
    def skin_strain_there_and_back(self):
        """Bending strain of the skin by forming and flattening: 2 t/(2 R)."""
        return plain(2 * np.asarray(self.skin_bending_strain))

    def springs_back(self, *, proof_stress_mpa, elastic_modulus_mpa=70_000.0):
        """Whether pressing it flat stays elastic, so that it springs up again: 2 h^2/(3 a^2) < f_o/E."""
        stress = require_above("proof stress", proof_stress_mpa, 0, unit="MPa")
        modulus = require_above("elastic modulus", elastic_modulus_mpa, 0, unit="MPa")
        return self.small_dome_strain < np.asarray(stress) / modulus


def springing_rise_mm(*, base_radius_mm, proof_stress_mpa, elastic_modulus_mpa=70_000.0):
    """Return the rise below which a dome only springs: h = a root(3 f_o/(2 E)).

    Parameters
    ----------
    base_radius_mm : float or array
        Radius of the foot a, above 0 [mm]
    proof_stress_mpa : float or array
        Proof stress f_o of the plate, above 0 and below 0.1 of the modulus [MPa]
    elastic_modulus_mpa : float
        Elastic modulus E, above 0; that of aluminium unless told [MPa]

    Returns
    -------
    float or numpy.ndarray
        Rise [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: strength_of_materials, derived from the strain of a low dome.

    Examples
    --------
    >>> round(springing_rise_mm(base_radius_mm=4, proof_stress_mpa=140), 2)
    0.22
    """
    base = require_above("base radius of the dome", base_radius_mm, 0, unit="mm")
    modulus = require_above("elastic modulus", elastic_modulus_mpa, 0, unit="MPa")
    stress = np.asarray(require_above("proof stress", proof_stress_mpa, 0, unit="MPa"))
    require_between("proof stress over modulus", stress / modulus, 0, 0.1, unit="")
    return plain(base * np.sqrt(3 * stress / (2 * modulus)))


def bending_strain(*, bend_radius_mm, sheet_mm):
    """Return the strain of the outer skin of sheet bent over a radius: e = 1/(2 R/t + 1).

    Parameters
    ----------
    bend_radius_mm : float or array
        Inner radius of the bend R, at least 0 [mm]
    sheet_mm : float or array
        Sheet thickness t, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Engineering strain; its true strain is ln(1 + e) [-]

    Raises
    ------
    ValueError
        If a size lies outside its range.

    Notes
    -----
    Source: manufacturing_handbook, bending of sheet, from memory.

    Examples
    --------
    >>> round(bending_strain(bend_radius_mm=1.5, sheet_mm=1.5), 4)
    0.3333
    """
    radius = np.asarray(require_at_least("bend radius", bend_radius_mm, 0, unit="mm"))
    thickness = require_above("sheet thickness", sheet_mm, 0, unit="mm")
    return plain(1 / (2 * radius / thickness + 1))


def least_bend_ratio(reduction_of_area_percent):
    """Return the least bend radius over thickness from a tensile test: R/t = 50/r - 1.

    Parameters
    ----------
    reduction_of_area_percent : float or array
        Reduction of area at fracture r, 1 to 90 [%]

    Returns
    -------
    float or numpy.ndarray
        Least inner radius over thickness; 0 from 50 % on [-]

    Raises
    ------
    ValueError
        If the reduction lies outside its range.

    Notes
    -----
    Source: manufacturing_handbook, bending of sheet, from memory.

    Examples
    --------
    >>> least_bend_ratio(20)
    1.5
    """
    reduction = require_between("reduction of area", reduction_of_area_percent, 1, 90, unit="%")
    return plain(np.maximum(0.0, 50 / np.asarray(reduction) - 1))
