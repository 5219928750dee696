"""A metal with one conductivity, density and heat capacity at all temperatures, for the exact solutions."""

from dataclasses import dataclass

from secondplate.arrays import plain
from secondplate.checks import require_above
from secondplate.materials import ROOM_TEMPERATURE_C
from secondplate.materials import material as material_of


@dataclass(frozen=True, kw_only=True)
class ConstantMetal:
    """Properties that do not change with temperature; each a float or an array.

    Parameters
    ----------
    conductivity_w_mk : float or array
        Conductivity k, above 0 [W/mK]
    density_kg_m3 : float or array
        Density rho, above 0 [kg/m3]
    heat_capacity_j_kgk : float or array
        Heat capacity c, above 0 [J/kgK]

    Raises
    ------
    ValueError
        If a property is not above 0.

    Examples
    --------
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(steel.diffusivity_mm2_s, 3)
    5.879
    """

    conductivity_w_mk: float
    density_kg_m3: float
    heat_capacity_j_kgk: float

    def __post_init__(self):
        """Refuse a property that is not above 0."""
        require_above("conductivity", self.conductivity_w_mk, 0, unit="W/mK")
        require_above("density", self.density_kg_m3, 0, unit="kg/m3")
        require_above("heat capacity", self.heat_capacity_j_kgk, 0, unit="J/kgK")

    @property
    def conductivity_w_mmk(self):
        """Conductivity for lengths in millimetres, in W/mmK."""
        return plain(self.conductivity_w_mk) / 1000

    @property
    def heat_by_volume_j_mm3k(self):
        """Heat that warms a cubic millimetre by one kelvin, rho c, in J/mm3K."""
        return plain(self.density_kg_m3) * plain(self.heat_capacity_j_kgk) * 1e-9

    @property
    def diffusivity_mm2_s(self):
        """How fast heat spreads, k / (rho c), in mm2/s."""
        return self.conductivity_w_mmk / self.heat_by_volume_j_mm3k


def mean_metal(material, *, up_to_c):
    """Return a metal of the library with its mean properties from 20 C to a temperature.

    Parameters
    ----------
    material : str
        One of ``materials.MATERIAL_NAMES`` [-]
    up_to_c : float
        Upper end of the means, above 20 C and within the curves of the material [C]

    Returns
    -------
    ConstantMetal
        Mean conductivity and heat capacity, density at 20 C [-]

    Raises
    ------
    ValueError
        If the material is unknown or the temperature outside its curves.

    Notes
    -----
    Source: curves of ``materials``, integrated. A mean over temperature is a choice; another one moves a time
    to melting by a fifth.

    Examples
    --------
    >>> round(mean_metal("carbon steel", up_to_c=1500).conductivity_w_mk, 1)
    34.2
    """
    of = material_of(material)
    require_above("upper temperature", up_to_c, ROOM_TEMPERATURE_C, unit="C")
    rise_k = up_to_c - ROOM_TEMPERATURE_C
    return ConstantMetal(
        conductivity_w_mk=of.conductivity_curves[0].integral(ROOM_TEMPERATURE_C, up_to_c) / rise_k,
        density_kg_m3=of.density_kg_m3,
        heat_capacity_j_kgk=of.heat_to_j_kg(up_to_c) / rise_k,
    )
