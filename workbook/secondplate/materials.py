"""Thermal properties of the metals of a riveted joint, each with its source, several sources side by side.

The first curve of a property is the one that computations use; the others are there to be compared with it.
Leaves out phase change in the solid beyond what the heat capacity shows, and the liquid.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from secondplate.bands import Band
from secondplate.checks import require_between, require_choice
from secondplate.curves import Curve, curves_from_rows
from secondplate.tables import Row, load

ROOM_TEMPERATURE_C = 20.0
_MM3_PER_M3 = 1e9
# A curve that starts this near room temperature tells the heat content from there on.
_NEAR_ROOM_C = 30.0


@dataclass(frozen=True, kw_only=True)
class Material:
    """One metal: constants with their rows, and property curves over temperature.

    Parameters
    ----------
    name : str
        Name of the metal [-]
    facts : Mapping of str to secondplate.tables.Row
        Constants by name, with source and basis [-]
    heat_capacity_curves : tuple of Curve
        Heat capacity by source, the one in use first [J/kgK]
    conductivity_curves : tuple of Curve
        Thermal conductivity by source, the one in use first [W/mK]

    Examples
    --------
    >>> material("austenitic stainless").melting_range_c.best
    1433.85
    """

    name: str
    facts: Mapping[str, Row]
    heat_capacity_curves: tuple[Curve, ...]
    conductivity_curves: tuple[Curve, ...]

    @property
    def density_kg_m3(self):
        """Density at room temperature in kg/m3."""
        return self.facts["density"].number

    @property
    def latent_heat_j_kg(self):
        """Heat of melting in J/kg."""
        return self.facts["latent heat"].number

    @property
    def melting_range_c(self):
        """Band from solidus to liquidus in Celsius; its best value is the melting point to reckon with."""
        point = self.facts["melting point"]
        return Band(
            low=self.facts["solidus"].number,
            best=point.number,
            high=self.facts["liquidus"].number,
            basis=f"solidus, {point.conditions}, liquidus",
        )

    def heat_capacity_j_kgk(self, temperature_c):
        """Heat capacity at a temperature, by the curve in use.

        Parameters
        ----------
        temperature_c : float or array
            Temperature inside the range of the curve [C]

        Returns
        -------
        float or array
            Heat capacity [J/kgK]

        Raises
        ------
        ValueError
            If a temperature lies outside the range of the curve.

        Examples
        --------
        >>> material("carbon steel").heat_capacity_j_kgk(735)
        5000.0
        """
        return self.heat_capacity_curves[0].at(temperature_c)

    def conductivity_w_mk(self, temperature_c):
        """Thermal conductivity at a temperature, by the curve in use.

        Parameters
        ----------
        temperature_c : float or array
            Temperature inside the range of the curve [C]

        Returns
        -------
        float or array
            Conductivity [W/mK]

        Raises
        ------
        ValueError
            If a temperature lies outside the range of the curve.

        Examples
        --------
        >>> material("boron rivet steel").conductivity_w_mk(20)
        30.7
        """
        return self.conductivity_curves[0].at(temperature_c)

    def heat_to_j_kg(self, temperature_c, *, curve=None):
        """Heat that brings one kilogram from 20 C to a temperature below melting: the integral of c.

        Above the range of the curve its last value is held.

        Parameters
        ----------
        temperature_c : float
            Temperature, 20 C up to the liquidus [C]
        curve : Curve or None
            Heat capacity curve to use, the one in use where None [-]

        Returns
        -------
        float
            Heat without melting [J/kg]

        Raises
        ------
        ValueError
            If the temperature lies outside its range.

        Examples
        --------
        >>> round(material("carbon steel").heat_to_j_kg(600))
        335738
        """
        end = require_between(
            "temperature", temperature_c, ROOM_TEMPERATURE_C, self.melting_range_c.high, unit="C"
        )
        return (curve or self.heat_capacity_curves[0]).integral(ROOM_TEMPERATURE_C, end)

    def heat_content_j_mm3(self):
        """Heat that melts one cubic millimetre from 20 C: ``rho (integral of c + L)``.

        The lower end takes the leanest source to the solidus, the upper the richest to the liquidus.

        Returns
        -------
        Band
            Heat content [J/mm3]

        Examples
        --------
        >>> band = material("austenitic stainless").heat_content_j_mm3()
        >>> round(band.low, 1), round(band.high, 1)
        (8.0, 9.0)
        """
        curves = [curve for curve in self.heat_capacity_curves if curve.low_c <= _NEAR_ROOM_C]
        melting = self.melting_range_c
        low = min(self._melt_j_mm3(melting.low, curve) for curve in curves)
        high = max(self._melt_j_mm3(melting.high, curve) for curve in curves)
        sources = ", ".join(curve.source for curve in curves)
        return Band(low=low, best=(low + high) / 2, high=high, basis=f"derived from {sources}")

    def _melt_j_mm3(self, temperature_c, curve):
        """Heat to a temperature and of melting, by volume of the solid."""
        heat = self.heat_to_j_kg(temperature_c, curve=curve) + self.latent_heat_j_kg
        return self.density_kg_m3 * heat / _MM3_PER_M3

    def heat_capacity_by_source(self, temperature_c):
        """Heat capacity at one temperature, side by side for every source whose range holds it.

        Parameters
        ----------
        temperature_c : float
            Temperature [C]

        Returns
        -------
        dict of str to float
            Heat capacity by id of the source [J/kgK]

        Examples
        --------
        >>> sorted(material("austenitic stainless").heat_capacity_by_source(1400))
        ['measured_304l']
        """
        return _by_source(self.heat_capacity_curves, temperature_c)

    def conductivity_by_source(self, temperature_c):
        """Conductivity at one temperature, side by side for every source whose range holds it.

        Parameters
        ----------
        temperature_c : float
            Temperature [C]

        Returns
        -------
        dict of str to float
            Conductivity by id of the source [W/mK]

        Examples
        --------
        >>> list(material("6xxx aluminium").conductivity_by_source(20))
        ['en_1999_1_2']
        """
        return _by_source(self.conductivity_curves, temperature_c)


def _by_source(curves, temperature_c):
    """Evaluate each curve that reaches a temperature."""
    return {
        curve.source: curve.at(temperature_c)
        for curve in curves
        if curve.low_c <= temperature_c <= curve.high_c
    }


def _materials():
    """Build every material of the tables."""
    facts = {}
    for row in load("materials"):
        facts.setdefault(row.keys["material"], {})[row.name] = row
    curves = curves_from_rows(load("material_curves"))
    return {
        name: Material(
            name=name,
            facts=MappingProxyType(rows),
            heat_capacity_curves=_curves_of(curves, name, "heat capacity"),
            conductivity_curves=_curves_of(curves, name, "conductivity"),
        )
        for name, rows in facts.items()
    }


def _curves_of(curves, name, quantity):
    """Pick the curves of one property of one material."""
    return tuple(curve for curve in curves if curve.of == name and curve.quantity == quantity)


MATERIALS: Mapping[str, Material] = MappingProxyType(_materials())
MATERIAL_NAMES = tuple(MATERIALS)


def material(name):
    """Return a material by its name.

    Parameters
    ----------
    name : str
        One of ``MATERIAL_NAMES`` [-]

    Returns
    -------
    Material
        Constants and curves [-]

    Raises
    ------
    ValueError
        If the name is not in the list.

    Notes
    -----
    Source: tables materials and material_curves, each row with its own source and basis.

    Examples
    --------
    >>> material("carbon steel").density_kg_m3
    7850.0
    """
    return MATERIALS[require_choice("material", name, MATERIAL_NAMES)]
