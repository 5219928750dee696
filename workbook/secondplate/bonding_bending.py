"""Shear and peel of the adhesive in a single lap that bends (Goland and Reissner), for two equal plates.

The load lines of the two plates are offset, so the lap turns and the ends peel. Plastic adhesive is left out.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_between

# Beyond it the sinh of twice lambda leaves the range of a float.
_LARGEST = 300.0


@dataclass(frozen=True, kw_only=True)
class BentLap:
    """A bonded single lap of two equal plates under load; arrays stand for a column of laps.

    Parameters
    ----------
    line_load_n_mm : float or array
        Load P by width of the lap, above 0 [N/mm]
    overlap_mm : float or array
        Length L = 2 c of the overlap, above 0 [mm]
    thickness_mm : float or array
        Thickness t of each plate, above 0 [mm]
    elastic_modulus_mpa : float or array
        Elastic modulus E of the plates, above 0 [MPa]
    adhesive_modulus_mpa : float or array
        Shear modulus G of the adhesive, above 0 [MPa]
    adhesive_stretch_modulus_mpa : float or array
        Elastic modulus E_a of the adhesive, above 0 [MPa]
    adhesive_mm : float or array
        Thickness t_a of the adhesive, above 0 [mm]
    poisson_ratio : float or array
        Poisson's ratio of the plates, 0 to 0.5 [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or the overlap is too long for the formulas.

    Notes
    -----
    ``k = 1/(1 + 2 sqrt(2) tanh u)``, ``u = sqrt(3 (1 - nu^2)/2) (c/t) sqrt(p/E)``, p = P/t;
    ``beta^2 = 8 G t/(E t_a)``, ``lambda = (6 E_a t/(E t_a))^(1/4) c/t``. The source counts 1 - nu^2 in the
    plates outside the lap only. Source: lap_bending_1944, k seen in open code, the rest from memory.

    Examples
    --------
    >>> lap = BentLap(line_load_n_mm=100, overlap_mm=25, thickness_mm=2, elastic_modulus_mpa=70000,
    ...               adhesive_modulus_mpa=1000, adhesive_stretch_modulus_mpa=2700, adhesive_mm=0.2)
    >>> round(lap.moment_factor, 5), round(lap.plate_stress_mpa, 2)
    (0.64955, 147.43)
    """

    line_load_n_mm: float
    overlap_mm: float
    thickness_mm: float
    elastic_modulus_mpa: float
    adhesive_modulus_mpa: float
    adhesive_stretch_modulus_mpa: float
    adhesive_mm: float
    poisson_ratio: float = 0.33

    def __post_init__(self):
        """Refuse a lap that cannot be."""
        require_above("load by width", self.line_load_n_mm, 0, unit="N/mm")
        require_above("overlap", self.overlap_mm, 0, unit="mm")
        require_above("sheet thickness", self.thickness_mm, 0, unit="mm")
        require_above("elastic modulus", self.elastic_modulus_mpa, 0, unit="MPa")
        require_above("shear modulus of the adhesive", self.adhesive_modulus_mpa, 0, unit="MPa")
        require_above("elastic modulus of the adhesive", self.adhesive_stretch_modulus_mpa, 0, unit="MPa")
        require_above("adhesive thickness", self.adhesive_mm, 0, unit="mm")
        require_between("Poisson's ratio", self.poisson_ratio, 0, 0.5, unit="")
        require_between("overlap in lengths of peel", self.peel_length_factor, 0, _LARGEST, unit="")
        half_in_thicknesses = self.shear_factor * self._slenderness
        require_between("overlap in lengths of shear", plain(half_in_thicknesses), 0, 2 * _LARGEST, unit="")

    @property
    def _slenderness(self):
        """Half overlap over thickness c/t."""
        return np.asarray(self.overlap_mm, dtype=float) / 2 / self.thickness_mm

    @property
    def stress_mpa(self):
        """Stress p = P/t of the plates away from the lap in MPa."""
        return plain(np.asarray(self.line_load_n_mm, dtype=float) / self.thickness_mm)

    @property
    def moment_factor(self):
        """Factor k of the moment at the end of the overlap, M = k P t/2."""
        plate = 3 * (1 - np.asarray(self.poisson_ratio) ** 2) / 2
        turn = np.sqrt(plate * self.stress_mpa / self.elastic_modulus_mpa) * self._slenderness
        return plain(1 / (1 + 2 * np.sqrt(2) * np.tanh(turn)))

    @property
    def shear_factor(self):
        """Factor beta of the shear."""
        ratio = np.asarray(self.adhesive_modulus_mpa) * self.thickness_mm
        return plain(np.sqrt(8 * ratio / (np.asarray(self.elastic_modulus_mpa) * self.adhesive_mm)))

    @property
    def peel_length_factor(self):
        """Factor lambda of the peel."""
        ratio = np.asarray(self.adhesive_stretch_modulus_mpa) * self.thickness_mm
        power = (6 * ratio / (np.asarray(self.elastic_modulus_mpa) * self.adhesive_mm)) ** 0.25
        return plain(power * self._slenderness)

    @property
    def plate_stress_mpa(self):
        """Greatest stress of a plate at the end of the overlap in MPa: p (1 + 3 k)."""
        return plain(np.asarray(self.stress_mpa) * (1 + 3 * np.asarray(self.moment_factor)))


def _places(lap, position_mm):
    """Return places as shares of half the overlap, -1 to 1."""
    share = 2 * np.asarray(position_mm, dtype=float) / np.asarray(lap.overlap_mm)
    return np.asarray(require_between("place over half the overlap", plain(share), -1, 1, unit=""))


def bent_lap_shear_mpa(lap, *, position_mm):
    """Return the shear along the overlap.

    tau = (p t/(8 c)) ((beta c/t)(1 + 3 k) cosh(beta x/t)/sinh(beta c/t) + 3 (1 - k)).

    Parameters
    ----------
    lap : BentLap
        The lap [-]
    position_mm : float or array
        Place x from the middle of the overlap, -c to c [mm]

    Returns
    -------
    float or numpy.ndarray
        Shear [MPa]

    Raises
    ------
    ValueError
        If the place lies outside the overlap.

    Notes
    -----
    Source: lap_bending_1944, from memory; its integral is the load.

    Examples
    --------
    >>> lap = BentLap(line_load_n_mm=100, overlap_mm=25, thickness_mm=2, elastic_modulus_mpa=70000,
    ...               adhesive_modulus_mpa=1000, adhesive_stretch_modulus_mpa=2700, adhesive_mm=0.2)
    >>> round(bent_lap_shear_mpa(lap, position_mm=12.5), 4)
    20.7529
    """
    share = _places(lap, position_mm)
    end = np.asarray(lap.shear_factor) * lap._slenderness
    k = np.asarray(lap.moment_factor)
    shape = end * (1 + 3 * k) * np.cosh(end * share) / np.sinh(end) + 3 * (1 - k)
    return plain(np.asarray(lap.stress_mpa) / (8 * lap._slenderness) * shape)


def bent_lap_peel_mpa(lap, *, position_mm):
    """Return the peel along the overlap; above 0 pulls the plates apart.

    sigma = (p t^2/(c^2 R3)) ((R2 l^2 k/2 + l k' cosh l cos l) cosh(l x/c) cos(l x/c)
    + (R1 l^2 k/2 + l k' sinh l sin l) sinh(l x/c) sin(l x/c)), l = lambda.

    Parameters
    ----------
    lap : BentLap
        The lap [-]
    position_mm : float or array
        Place x from the middle of the overlap, -c to c [mm]

    Returns
    -------
    float or numpy.ndarray
        Peel [MPa]

    Raises
    ------
    ValueError
        If the place lies outside the overlap.

    Notes
    -----
    R1 = cosh l sin l + sinh l cos l, R2 = sinh l cos l - cosh l sin l, R3 = (sin 2l + sinh 2l)/2,
    k' = k (c/t) sqrt(3 (1 - nu^2) p/E). Source: lap_bending_1944, from memory.

    Examples
    --------
    >>> lap = BentLap(line_load_n_mm=100, overlap_mm=25, thickness_mm=2, elastic_modulus_mpa=70000,
    ...               adhesive_modulus_mpa=1000, adhesive_stretch_modulus_mpa=2700, adhesive_mm=0.2)
    >>> round(bent_lap_peel_mpa(lap, position_mm=12.5), 3)
    26.454
    """
    share = _places(lap, position_mm)
    length, k, stress = (
        np.asarray(value) for value in (lap.peel_length_factor, lap.moment_factor, lap.stress_mpa)
    )
    plate = 3 * (1 - np.asarray(lap.poisson_ratio) ** 2)
    end_shear = k * lap._slenderness * np.sqrt(plate * stress / lap.elastic_modulus_mpa)
    sinh, cosh, sin, cos = (turn(length) for turn in (np.sinh, np.cosh, np.sin, np.cos))
    moment = length**2 * k / 2
    even = (sinh * cos - cosh * sin) * moment + length * end_shear * cosh * cos
    odd = (cosh * sin + sinh * cos) * moment + length * end_shear * sinh * sin
    place = length * share
    shape = even * np.cosh(place) * np.cos(place) + odd * np.sinh(place) * np.sin(place)
    return plain(stress / lap._slenderness**2 * shape * 2 / (np.sin(2 * length) + np.sinh(2 * length)))
