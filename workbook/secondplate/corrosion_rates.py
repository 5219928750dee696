"""How fast an anode goes: area ratio, mixed potential of a couple, oxygen at the cathode, Faraday's law.

For orientation: kinetic values of real joints are not known, and attack is never even. A big cathode on a
small anode is the bad case. A steel rivet in a big panel is a good one, except where only the ring round the
rivet is wet: then the anode is that ring.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_choice, require_finite
from secondplate.tables import load, values

_VALUES = values("corrosion_constants")
_METALS = {row.name: (row.number, float(row.keys["density_g_cm3"])) for row in load("corroding_metals")}
CORRODING_METALS = tuple(_METALS)
_MICRO = 1e6


def galvanic_density(*, factor, area_ratio):
    """Return the galvanic current density of the anode: i = k1 A_c/A_a.

    Parameters
    ----------
    factor : float or array
        Factor k1, the density at equal areas, at least 0 [-]
    area_ratio : float or array
        Area of the cathode over that of the anode, at least 0 [-]

    Returns
    -------
    float or numpy.ndarray
        Density, in the unit of the factor [-]

    Raises
    ------
    ValueError
        If a value is below 0.

    Notes
    -----
    The current itself follows the cathode and does not depend on the anode's area. Source: mansfeld_1974,
    tried at ratios of 0.1, 1 and 10.

    Examples
    --------
    >>> galvanic_density(factor=20, area_ratio=10)
    200.0
    """
    slope = require_at_least("factor", factor, 0, unit="")
    return plain(np.multiply(slope, require_at_least("area ratio", area_ratio, 0, unit="")))


def anode_rate(*, factor, area_ratio):
    """Return the whole rate of attack on the anode: r = k2 (1 + A_c/A_a).

    Parameters
    ----------
    factor : float or array
        Factor k2, the rate with no cathode, at least 0 [-]
    area_ratio : float or array
        Area of the cathode over that of the anode, at least 0 [-]

    Returns
    -------
    float or numpy.ndarray
        Rate, in the unit of the factor [-]

    Raises
    ------
    ValueError
        If a value is below 0.

    Notes
    -----
    Source: mansfeld_1974, tried at ratios of 0.1, 1 and 10.

    Examples
    --------
    >>> anode_rate(factor=2.0, area_ratio=10)
    22.0
    """
    slope = require_at_least("factor", factor, 0, unit="")
    return plain(slope * (1 + np.asarray(require_at_least("area ratio", area_ratio, 0, unit=""))))


@dataclass(frozen=True, kw_only=True)
class Electrode:
    """One side of a couple by a straight line in the logarithm of its current (Tafel).

    Parameters
    ----------
    potential_v : float or array
        Potential on its own [V]
    density_a_cm2 : float or array
        Current density at that potential, above 0 [A/cm2]
    slope_v : float or array
        Volts for ten times the current, above 0 [V]
    area_cm2 : float or array
        Wet area, above 0 [cm2]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Examples
    --------
    >>> Electrode(potential_v=-0.75, density_a_cm2=1e-6, slope_v=0.06, area_cm2=1).area_cm2
    1
    """

    potential_v: float
    density_a_cm2: float
    slope_v: float
    area_cm2: float

    def __post_init__(self):
        """Refuse what is no electrode."""
        require_finite("potential of the electrode", self.potential_v, unit="V")
        require_above("current density of the electrode", self.density_a_cm2, 0, unit="A/cm2")
        require_above("slope of the electrode", self.slope_v, 0, unit="V")
        require_above("area of the electrode", self.area_cm2, 0, unit="cm2")


@dataclass(frozen=True, kw_only=True)
class MixedPotential:
    """Where anode and cathode of a couple meet.

    Parameters
    ----------
    potential_v : float or array
        Potential of the couple [V]
    density_a_cm2 : float or array
        Current density of the anode [A/cm2]

    Examples
    --------
    >>> MixedPotential(potential_v=-0.66, density_a_cm2=3.2e-5).potential_v
    -0.66
    """

    potential_v: float
    density_a_cm2: float


def mixed_potential(*, anode, cathode):
    """Return potential and current density of a couple from two straight lines (Evans).

    Parameters
    ----------
    anode : Electrode
        The side that dissolves [-]
    cathode : Electrode
        The other side, nobler than the anode [-]

    Returns
    -------
    MixedPotential
        Potential of both and current density of the anode [-]

    Raises
    ------
    ValueError
        If the cathode is not nobler than the anode.

    Notes
    -----
    ``log(A_a i_a) + (E - E_a)/b_a = log(A_c i_c) + (E_c - E)/b_c``. Resistance of the water is left out.
    Source: corrosion_handbook, mixed potential.

    Examples
    --------
    >>> found = mixed_potential(
    ...     anode=Electrode(potential_v=-0.75, density_a_cm2=1e-6, slope_v=0.06, area_cm2=1),
    ...     cathode=Electrode(potential_v=-0.60, density_a_cm2=1e-5, slope_v=0.12, area_cm2=1),
    ... )
    >>> round(found.potential_v, 3), float(f"{found.density_a_cm2:.4g}")
    (-0.66, 3.162e-05)
    """
    require_above(
        "potential of the cathode less that of the anode",
        plain(np.subtract(cathode.potential_v, anode.potential_v)),
        0,
        unit="V",
    )
    currents = [np.log10(np.multiply(side.area_cm2, side.density_a_cm2)) for side in (anode, cathode)]
    weights = [1 / np.asarray(side.slope_v, dtype=float) for side in (anode, cathode)]
    lines = currents[1] - currents[0] + cathode.potential_v * weights[1] + anode.potential_v * weights[0]
    potential = lines / (weights[0] + weights[1])
    density = anode.density_a_cm2 * 10 ** ((potential - anode.potential_v) * weights[0])
    return MixedPotential(potential_v=plain(potential), density_a_cm2=plain(density))


def oxygen_limit_ua_cm2(*, diffusivity_cm2_s=None, dissolved_mol_cm3=None, layer_cm=None):
    """Return the greatest current density that oxygen lets a cathode draw: i = 4 F D c/delta.

    Parameters
    ----------
    diffusivity_cm2_s : float or array or None
        Diffusivity of oxygen in water, above 0; 2e-5 unless told [cm2/s]
    dissolved_mol_cm3 : float or array or None
        Dissolved oxygen, at least 0; that of water in air unless told [mol/cm3]
    layer_cm : float or array or None
        Thickness of the still layer, above 0; that of still water unless told [cm]

    Returns
    -------
    float or numpy.ndarray
        Current density of the cathode [uA/cm2]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: corrosion_handbook, oxygen-limited cathode; codata_2022 for Faraday's constant.

    Examples
    --------
    >>> round(oxygen_limit_ua_cm2(), 1)
    38.6
    """
    names = ("oxygen diffusivity", "oxygen dissolved", "still layer")
    given = (diffusivity_cm2_s, dissolved_mol_cm3, layer_cm)
    used = [_VALUES[name] if value is None else value for name, value in zip(names, given, strict=True)]
    diffusivity = require_above("diffusivity of oxygen", used[0], 0, unit="cm2/s")
    dissolved = require_at_least("dissolved oxygen", used[1], 0, unit="mol/cm3")
    layer = np.asarray(require_above("still layer", used[2], 0, unit="cm"))
    charge = _VALUES["electrons of oxygen"] * _VALUES["Faraday constant"]
    return plain(charge * np.multiply(diffusivity, dissolved) / layer * _MICRO)


def penetration_mm_year(density_ua_cm2, *, corroding_metal):
    """Return how deep a current eats in a year, spread evenly: r = 3.27e-3 i EW/rho.

    Parameters
    ----------
    density_ua_cm2 : float or array
        Current density of the anode, at least 0 [uA/cm2]
    corroding_metal : str
        One of ``CORRODING_METALS`` [-]

    Returns
    -------
    float or numpy.ndarray
        Penetration; pits go many times deeper [mm/year]

    Raises
    ------
    ValueError
        If the density is below 0 or the metal is not in the list.

    Notes
    -----
    Source: astm_g102, equation 4 and Table 1, from memory, recomputed from Faraday's law.

    Examples
    --------
    >>> round(penetration_mm_year(1, corroding_metal="aluminium"), 5)
    0.01089
    """
    density = require_at_least("current density", density_ua_cm2, 0, unit="uA/cm2")
    weight, mass = _METALS[require_choice("corroding metal", corroding_metal, CORRODING_METALS)]
    return plain(np.multiply(_VALUES["Faraday rate"], density) * weight / mass)
