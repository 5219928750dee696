"""Hardening of sheet by three laws, the strain at which each begins to neck, and what is left of it.

The laws differ for one and the same metal: by Voce 6016-T4 necks at a strain of 0.165, by Swift at 0.276. All
are shown, and the lowest counts where something must not tear. Leaves out rate, temperature and anisotropy.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

import numpy as np

from secondplate import sheet_hardening
from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_above, require_at_least, require_between, require_choice
from secondplate.sheet_alloys import SHEETS, sheet_properties
from secondplate.tables import load


class _Necks:
    """What follows for every law from its stress and its necking strain."""

    @property
    def tensile_strength_mpa(self):
        """Tensile strength in MPa, stress at necking on the first section: s(e_u) exp(-e_u)."""
        return plain(self.flow_stress_mpa(self.necking_strain) * np.exp(-np.asarray(self.necking_strain)))

    def strain_left(self, strain_used):
        """Uniform strain left after some was used, at least 0: e_u - e_p."""
        used = require_at_least("strain used", strain_used, 0, unit="")
        return plain(np.maximum(0.0, np.asarray(self.necking_strain) - used))


@dataclass(frozen=True, kw_only=True)
class HollomonLaw(_Necks):
    """Power law s = K e^n; necks at e_u = n.

    Parameters
    ----------
    strength_coefficient_mpa : float
        Strength coefficient K, above 0 [MPa]
    hardening_exponent : float
        Hardening exponent n, 0.01 to 0.6 [-]

    Raises
    ------
    ValueError
        If a constant lies outside its range.

    Notes
    -----
    Source: hollomon_1945 with considere_1885; the formulas are those of ``sheet_hardening``.

    Examples
    --------
    >>> law = HollomonLaw(strength_coefficient_mpa=450, hardening_exponent=0.30)
    >>> round(law.flow_stress_mpa(0.10), 1), round(law.strain_left(0.10), 2)
    (225.5, 0.2)
    """

    strength_coefficient_mpa: float
    hardening_exponent: float

    def __post_init__(self):
        """Refuse constants out of range."""
        require_above("strength coefficient", self.strength_coefficient_mpa, 0, unit="MPa")
        require_between("hardening exponent", self.hardening_exponent, 0.01, 0.6, unit="")

    @property
    def necking_strain(self):
        """True strain at necking."""
        return self.hardening_exponent

    def flow_stress_mpa(self, true_strain):
        """True stress in MPa at a true plastic strain of 0.002 to 1."""
        return sheet_hardening.flow_stress_mpa(
            true_strain,
            strength_coefficient_mpa=self.strength_coefficient_mpa,
            hardening_exponent=self.hardening_exponent,
        )


@dataclass(frozen=True, kw_only=True)
class SwiftLaw(_Necks):
    """Power law with an offset s = K (e0 + e)^n; necks at e_u = n - e0.

    Parameters
    ----------
    strength_coefficient_mpa : float
        Strength coefficient K, above 0 [MPa]
    strain_offset : float
        Offset e0, at least 0 and below n [-]
    hardening_exponent : float
        Exponent n, 0.01 to 0.6 [-]

    Raises
    ------
    ValueError
        If a constant lies outside its range.

    Notes
    -----
    Source: swift_1952 with considere_1885.

    Examples
    --------
    >>> law = SwiftLaw(strength_coefficient_mpa=498.8, strain_offset=0.0089, hardening_exponent=0.285)
    >>> round(law.necking_strain, 4), round(law.tensile_strength_mpa, 1)
    (0.2761, 264.6)
    """

    strength_coefficient_mpa: float
    strain_offset: float
    hardening_exponent: float

    def __post_init__(self):
        """Refuse constants out of range."""
        require_above("strength coefficient", self.strength_coefficient_mpa, 0, unit="MPa")
        exponent = require_between("hardening exponent", self.hardening_exponent, 0.01, 0.6, unit="")
        require_at_least("strain offset", self.strain_offset, 0, unit="")
        require_above("exponent less strain offset", exponent - np.asarray(self.strain_offset), 0, unit="")

    @property
    def necking_strain(self):
        """True strain at necking."""
        return plain(np.subtract(self.hardening_exponent, self.strain_offset))

    def flow_stress_mpa(self, true_strain):
        """True stress in MPa at a true plastic strain of 0 to 1; at 0 it is the proof stress."""
        strain = np.asarray(require_between("true strain", true_strain, 0, 1, unit=""))
        return plain(self.strength_coefficient_mpa * (self.strain_offset + strain) ** self.hardening_exponent)


@dataclass(frozen=True, kw_only=True)
class VoceLaw(_Necks):
    """Law that levels off s = A - B exp(-C e); necks at e_u = ln(B (1 + C)/A)/C.

    Parameters
    ----------
    saturation_stress_mpa : float
        Stress A that it levels off at, above 0 [MPa]
    hardening_stress_mpa : float
        Whole hardening B, above 0 and below A [MPa]
    hardening_rate : float
        How fast it levels off C, above 0 [-]

    Raises
    ------
    ValueError
        If a constant lies outside its range.

    Notes
    -----
    Source: voce_1948 with considere_1885. Where B (1 + C) is not above A it necks at once, at a strain of 0.

    Examples
    --------
    >>> law = VoceLaw(saturation_stress_mpa=330.2, hardening_stress_mpa=190, hardening_rate=12.4)
    >>> round(law.necking_strain, 4), round(law.tensile_strength_mpa, 1)
    (0.1647, 259.2)
    """

    saturation_stress_mpa: float
    hardening_stress_mpa: float
    hardening_rate: float

    def __post_init__(self):
        """Refuse constants out of range."""
        whole = require_above("saturation stress", self.saturation_stress_mpa, 0, unit="MPa")
        part = require_above("hardening stress", self.hardening_stress_mpa, 0, unit="MPa")
        require_above(
            "saturation stress less hardening stress", plain(np.subtract(whole, part)), 0, unit="MPa"
        )
        require_above("hardening rate", self.hardening_rate, 0, unit="")

    @property
    def necking_strain(self):
        """True strain at necking."""
        ratio = np.multiply(self.hardening_stress_mpa, 1 + np.asarray(self.hardening_rate))
        return plain(np.maximum(0.0, np.log(ratio / self.saturation_stress_mpa) / self.hardening_rate))

    def flow_stress_mpa(self, true_strain):
        """True stress in MPa at a true plastic strain of 0 to 1; at 0 it is the proof stress."""
        strain = np.asarray(require_between("true strain", true_strain, 0, 1, unit=""))
        fall = np.exp(-self.hardening_rate * strain)
        return plain(self.saturation_stress_mpa - self.hardening_stress_mpa * fall)


_LAWS = {"Hollomon": HollomonLaw, "Swift": SwiftLaw, "Voce": VoceLaw}
_FIELDS = {
    "strength coefficient": "strength_coefficient_mpa",
    "strain offset": "strain_offset",
    "hardening exponent": "hardening_exponent",
    "saturation stress": "saturation_stress_mpa",
    "hardening stress": "hardening_stress_mpa",
    "hardening rate": "hardening_rate",
}


def _laws() -> Mapping[str, Mapping]:
    """Read the laws of the table, by sheet and then by name."""
    constants = {}
    for row in load("hardening_laws"):
        name = f"{row.keys['law']}, {row.source} set {row.keys['set']}"
        constants.setdefault((row.keys["sheet"], name, row.keys["law"]), {})[_FIELDS[row.name]] = row.number
    found = {}
    for (sheet, name, law), given in constants.items():
        found.setdefault(sheet, {})[name] = _LAWS[law](**given)
    return MappingProxyType({sheet: MappingProxyType(laws) for sheet, laws in found.items()})


HARDENING_LAWS = _laws()


@cache
def necking_strains(sheet):
    """Return every necking strain that is known of a sheet, by what it rests on.

    Parameters
    ----------
    sheet : str
        Alloy and temper [-]

    Returns
    -------
    Mapping of str to float
        True strain at necking by law and source: laws, printed exponents, uniform elongations [-]

    Raises
    ------
    ValueError
        If nothing is known of that sheet.

    Notes
    -----
    Source: table hardening_laws and table sheet_alloys, with considere_1885.

    Examples
    --------
    >>> strains = necking_strains("6016-T4")
    >>> round(min(strains.values()), 4), round(max(strains.values()), 4)
    (0.1647, 0.2827)
    """
    require_choice("sheet", sheet, HARDENING_SHEETS)
    return MappingProxyType(_strains(sheet))


def _strains(sheet):
    """Gather necking strains from both tables."""
    found = {name: law.necking_strain for name, law in HARDENING_LAWS.get(sheet, {}).items()}
    if sheet in SHEETS:
        for each in sheet_properties(sheet, "hardening exponent"):
            found[f"exponent, {each.source} {each.locator}"] = min(each.numbers)
        for each in sheet_properties(sheet, "uniform elongation"):
            strain = sheet_hardening.hardening_exponent(min(each.numbers))
            found[f"uniform elongation, {each.source} {each.locator}"] = strain
    return found


HARDENING_SHEETS = tuple(sheet for sheet in dict.fromkeys((*SHEETS, *HARDENING_LAWS)) if _strains(sheet))


def necking_strain_band(sheet):
    """Return the necking strain of a sheet as a band over every law and source.

    Parameters
    ----------
    sheet : str
        Alloy and temper, one of ``HARDENING_SHEETS`` [-]

    Returns
    -------
    Band
        True strain at necking; its low counts where nothing must tear [-]

    Raises
    ------
    ValueError
        If nothing is known of that sheet.

    Notes
    -----
    Source: ``necking_strains``.

    Examples
    --------
    >>> round(necking_strain_band("6061-T6").low, 3)
    0.05
    """
    strains = sorted(necking_strains(sheet).values())
    middle = float(np.median(strains))
    basis = f"{len(strains)} statements side by side, best in their middle"
    return Band(low=strains[0], best=middle, high=strains[-1], basis=basis)
