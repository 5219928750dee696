"""Substances of the heat model: heat content and conductivity over temperature, melting included.

Melting is part of the heat content: it rises by the latent heat between solidus and liquidus. Density is that
at room temperature, so a cell keeps its mass and volume. Leaves out boiling, and the heat of changes in the
solid beyond what the heat capacity shows.
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
from secondplate.materials import material

# Ends of every table; the model refuses to leave them.
LOWEST_C = -100.0
HIGHEST_C = 10_000.0
_MM3_PER_M3 = 1e9
# Nodes of a table are this far apart where the properties bend, in kelvin.
_NODE_K = 10.0


@dataclass(frozen=True, kw_only=True, eq=False)
class Substance:
    """Heat content and conductivity as straight lines between nodes of temperature.

    Parameters
    ----------
    name : str
        Name of the substance [-]
    nodes_c : sequence of float
        Rising temperatures of the nodes [C]
    heat_content_j_mm3 : sequence of float
        Heat in one cubic millimetre at the nodes, strictly rising; its zero does not matter [J/mm3]
    conductivity_w_mk : sequence of float
        Conductivity at the nodes, above 0 [W/mK]
    solidus_c : float
        Temperature at which melting begins, the highest node where it never melts [C]
    liquidus_c : float
        Temperature at which melting ends, the highest node where it never melts [C]

    Raises
    ------
    ValueError
        If the nodes or the heat content do not rise, or a conductivity is not above 0.

    Examples
    --------
    >>> wax = Substance(name="wax", nodes_c=[-100, 50, 52, 200], conductivity_w_mk=[0.2] * 4,
    ...                 heat_content_j_mm3=[0, 0.3, 0.5, 0.9], solidus_c=50, liquidus_c=52)
    >>> round(wax.heat_at_j_mm3(51), 3)
    0.4
    """

    name: str
    nodes_c: np.ndarray
    heat_content_j_mm3: np.ndarray
    conductivity_w_mk: np.ndarray
    solidus_c: float = HIGHEST_C
    liquidus_c: float = HIGHEST_C

    def __post_init__(self):
        """Keep the tables as read-only arrays, or refuse them."""
        for field, unit in (("nodes_c", "C"), ("heat_content_j_mm3", "J/mm3"), ("conductivity_w_mk", "W/mK")):
            table = np.array(require_finite(f"{field} of {self.name}", getattr(self, field), unit=unit))
            if table.ndim != 1 or table.size < 2 or table.size != np.size(self.nodes_c):
                message = f"{field} of {self.name} must have one value for each of 2 nodes or more, "
                message += f"got {table.size}"
                raise ValueError(message)
            table.flags.writeable = False
            object.__setattr__(self, field, table)
        require_above(f"step between nodes of {self.name}", np.diff(self.nodes_c), 0, unit="K")
        require_above(f"heat capacity of {self.name}", np.diff(self.heat_content_j_mm3), 0, unit="J/mm3")
        require_above(f"conductivity of {self.name}", self.conductivity_w_mk, 0, unit="W/mK")

    @property
    def melts(self):
        """Whether it melts within its table."""
        return self.liquidus_c < self.nodes_c[-1]

    def heat_at_j_mm3(self, temperature_c):
        """Heat content at a temperature.

        Parameters
        ----------
        temperature_c : float or array
            Temperature within the table [C]

        Returns
        -------
        float or array
            Heat content, with the table's zero [J/mm3]

        Raises
        ------
        ValueError
            If the temperature lies outside the table.

        Examples
        --------
        >>> steel = metal("boron rivet steel")
        >>> round(steel.heat_at_j_mm3(1498.0) - steel.heat_at_j_mm3(20.0), 2)
        8.59
        """
        name = f"temperature of {self.name}"
        inside = require_between(name, temperature_c, self.nodes_c[0], self.nodes_c[-1], unit="C")
        found = np.interp(inside, self.nodes_c, self.heat_content_j_mm3)
        return float(found) if np.ndim(inside) == 0 else found


def metal(name, *, liquid_conductivity_w_mk=None):
    """Return a metal of the library with its melting.

    Heat content ``rho (integral of c + L f)`` with the melted share f rising evenly from solidus to liquidus;
    curves are held beyond their ends, so the liquid has the last heat capacity of the solid.

    Parameters
    ----------
    name : str
        One of ``materials.MATERIAL_NAMES`` [-]
    liquid_conductivity_w_mk : float or None
        Conductivity from the liquidus up, 1 to 2000 W/mK: raised for a stirred melt; the solid's last value
        where None [W/mK]

    Returns
    -------
    Substance
        The metal [-]

    Raises
    ------
    ValueError
        If the name is unknown or the conductivity out of its range.

    Notes
    -----
    Source: tables materials and material_curves; heat of melting spread evenly is a model choice.

    Examples
    --------
    >>> metal("austenitic stainless", liquid_conductivity_w_mk=100.0).conductivity_w_mk[-1].tolist()
    100.0
    """
    of = material(name)
    melting = of.melting_range_c
    capacity, conductivity = of.heat_capacity_curves[0], of.conductivity_curves[0]
    nodes = np.unique(
        np.concatenate([[LOWEST_C], np.arange(0, 1301, _NODE_K), [melting.low, melting.high, HIGHEST_C]])
    )
    steps = [capacity.integral(low, high) for low, high in zip(nodes[:-1], nodes[1:], strict=True)]
    share = np.interp(nodes, [melting.low, melting.high], [0.0, 1.0])
    heat = np.concatenate([[0.0], np.cumsum(steps)]) + of.latent_heat_j_kg * share
    values = conductivity.at(np.clip(nodes, conductivity.low_c, conductivity.high_c))
    if liquid_conductivity_w_mk is not None:
        require_between("liquid conductivity", liquid_conductivity_w_mk, 1, 2000, unit="W/mK")
        values = np.where(nodes >= melting.high, float(liquid_conductivity_w_mk), values)
    return Substance(
        name=name,
        nodes_c=nodes,
        heat_content_j_mm3=of.density_kg_m3 * heat / _MM3_PER_M3,
        conductivity_w_mk=values,
        solidus_c=melting.low,
        liquidus_c=melting.high,
    )


def constant(name, *, metal, melting_c=None, latent_heat_j_kg=0.0, melting_range_k=0.01):
    """Return a substance with constant properties, for comparison with exact solutions.

    Parameters
    ----------
    name : str
        Name of the substance [-]
    metal : secondplate.heat.constant_metal.ConstantMetal
        Its properties, each one number [-]
    melting_c : float or None
        Middle of the melting range; it never melts where None [C]
    latent_heat_j_kg : float
        Heat of melting, from 0 [J/kg]
    melting_range_k : float
        Width of the melting range, 1e-6 to 500 K [K]

    Returns
    -------
    Substance
        The substance [-]

    Raises
    ------
    ValueError
        If a value is out of its range.

    Notes
    -----
    Source: definition.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(constant("steel", metal=steel).heat_at_j_mm3(0.0), 3)
    0.51
    """
    require_at_least("latent heat", latent_heat_j_kg, 0, unit="J/kg")
    nodes, share, range_c = np.array([LOWEST_C, HIGHEST_C]), np.zeros(2), (HIGHEST_C, HIGHEST_C)
    if melting_c is not None:
        half = require_between("melting range", melting_range_k, 1e-6, 500, unit="K") / 2
        require_between("melting point", melting_c, LOWEST_C + half, HIGHEST_C - half, unit="C")
        range_c = (melting_c - half, melting_c + half)
        nodes, share = np.array([LOWEST_C, *range_c, HIGHEST_C]), np.array([0.0, 0.0, 1.0, 1.0])
    latent_j_mm3 = float(metal.density_kg_m3) * latent_heat_j_kg / _MM3_PER_M3
    return Substance(
        name=name,
        nodes_c=nodes,
        heat_content_j_mm3=metal.heat_by_volume_j_mm3k * (nodes - LOWEST_C) + latent_j_mm3 * share,
        conductivity_w_mk=np.full(nodes.size, float(metal.conductivity_w_mk)),
        solidus_c=range_c[0],
        liquidus_c=range_c[1],
    )


def _fillers():
    """Read the substances of gaps from their table."""
    found = {}
    for row in tables.load("gap_substances"):
        places = found.setdefault(row.keys["substance"], {}).setdefault(row.name, ([], []))
        places[0].append(float(row.keys["at_c"]))
        places[1].append(row.number)
    return found


_FILLERS = _fillers()
FILLER_NAMES = tuple(_FILLERS)


def filler(name):
    """Return what fills a gap or the bore: air at rest, or cured adhesive.

    Parameters
    ----------
    name : str
        One of ``FILLER_NAMES`` [-]

    Returns
    -------
    Substance
        The substance; it never melts, and values are held beyond the ends of the table [-]

    Raises
    ------
    ValueError
        If the name is unknown.

    Notes
    -----
    Air: volume heat at each temperature from density at 1 bar, so that hot air holds little.
    Source: table gap_substances, each row with its own.

    Examples
    --------
    >>> float(filler("air").conductivity_w_mk[0]), FILLER_NAMES
    (0.0257, ('air', 'adhesive'))
    """
    tabled = _FILLERS[require_choice("substance of a gap", name, FILLER_NAMES)]
    places = sorted({place for curve in tabled.values() for place in curve[0]} | {LOWEST_C, HIGHEST_C})
    by_place = {what: np.interp(places, *curve) for what, curve in tabled.items()}
    volume_heat = by_place["density"] * by_place["heat capacity"] / _MM3_PER_M3
    steps = (volume_heat[1:] + volume_heat[:-1]) / 2 * np.diff(places)
    return Substance(
        name=name,
        nodes_c=places,
        heat_content_j_mm3=np.concatenate([[0.0], np.cumsum(steps)]),
        conductivity_w_mk=by_place["conductivity"],
    )
