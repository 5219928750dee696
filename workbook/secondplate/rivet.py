"""Rivet, die, sheet and stack before setting, and how much steel the die has room for.

Leaves out tolerances, coatings and every special shape of head or tail; a set joint is in ``section``.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_below, require_between, require_choice

FAMILIES = ("aluminium", "cast aluminium", "steel", "polymer")
# Share of the cavity's radius that the tip of a die takes, and the cosine shape of that tip.
TIP_RADIUS_SHARE = 0.55
_COSINE_TIP_VOLUME = np.pi / 2 - 2 / np.pi  # volume of a tip of unit height and radius


@dataclass(frozen=True, kw_only=True)
class Rivet:
    """A tubular self-piercing rivet before setting; arrays stand for a column of rivets.

    Parameters
    ----------
    shank_diameter_mm : float or array
        Outer diameter of the shank, 2.5 to 8 [mm]
    head_diameter_mm : float or array
        Diameter of the head, above the shank, at most 12 [mm]
    bore_diameter_mm : float or array
        Diameter of the bore, at least 1 and below the shank [mm]
    rivet_length_mm : float or array
        Length from the head's face to the tail, above the web, at most 16 [mm]
    web_mm : float or array
        Solid steel between the head's face and the bore, at least 0.5 [mm]
    hardness_hv : float or array
        Vickers hardness, 200 to 650 [HV]

    Raises
    ------
    ValueError
        If a size lies outside its range or the bore is as wide as the shank, the head as narrow as it, or the
        web as thick as the rivet is long.

    Examples
    --------
    >>> Rivet(rivet_length_mm=5.0).volume_mm3
    76.95252...
    >>> Rivet(rivet_length_mm=5.0, bore_diameter_mm=5.4)
    Traceback (most recent call last):
    ValueError: bore diameter must be below the shank diameter of 5.3 mm, got 5.4 mm
    """

    shank_diameter_mm: float = 5.3
    head_diameter_mm: float = 7.75
    bore_diameter_mm: float = 3.3
    rivet_length_mm: float
    web_mm: float = 1.1
    hardness_hv: float = 410.0

    def __post_init__(self):
        """Refuse a rivet that cannot be made."""
        require_between("shank diameter", self.shank_diameter_mm, 2.5, 8, unit="mm")
        require_between("head diameter", self.head_diameter_mm, 2.5, 12, unit="mm")
        require_between("bore diameter", self.bore_diameter_mm, 1, 8, unit="mm")
        require_between("rivet length", self.rivet_length_mm, 1, 16, unit="mm")
        require_between("web", self.web_mm, 0.5, 16, unit="mm")
        require_between("hardness", self.hardness_hv, 200, 650, unit="HV")
        require_below("bore diameter", self.bore_diameter_mm, "shank diameter", self.shank_diameter_mm)
        require_below("shank diameter", self.shank_diameter_mm, "head diameter", self.head_diameter_mm)
        require_below("web", self.web_mm, "rivet length", self.rivet_length_mm)

    @property
    def wall_mm(self):
        """Wall of the shank in mm."""
        return (self.shank_diameter_mm - self.bore_diameter_mm) / 2

    @property
    def tube_area_mm2(self):
        """Section of the shank in mm2."""
        return np.pi / 4 * (self.shank_diameter_mm**2 - self.bore_diameter_mm**2)

    @property
    def volume_mm3(self):
        """Steel of shank and web in mm3; the rim of the head beyond the shank is left out."""
        bore = self.bore_diameter_mm**2 * (self.rivet_length_mm - self.web_mm)
        return np.pi / 4 * (self.shank_diameter_mm**2 * self.rivet_length_mm - bore)


@dataclass(frozen=True, kw_only=True)
class Die:
    """A round die with an even floor or with a tip in its middle; arrays stand for a column of dies.

    Parameters
    ----------
    die_diameter_mm : float or array
        Diameter of the cavity, 4 to 16 [mm]
    die_depth_mm : float or array
        Depth of the cavity, 0.3 to 4 [mm]
    die_tip_mm : float or array
        Height of the tip above the floor, 0 for a flat die, at most the depth [mm]

    Raises
    ------
    ValueError
        If a size lies outside its range or the tip stands out of the cavity.

    Examples
    --------
    >>> Die(die_diameter_mm=8.0, die_depth_mm=0.8).volume_mm3
    40.2123...
    """

    die_diameter_mm: float
    die_depth_mm: float
    die_tip_mm: float = 0.0

    def __post_init__(self):
        """Refuse a die that cannot be made."""
        require_between("die diameter", self.die_diameter_mm, 4, 16, unit="mm")
        require_between("die depth", self.die_depth_mm, 0.3, 4, unit="mm")
        require_between("die tip", self.die_tip_mm, 0, 4, unit="mm")
        require_below("die tip", self.die_tip_mm, "die depth", self.die_depth_mm, or_equal=True)

    @property
    def tip_radius_mm(self):
        """Radius at the foot of the tip in mm."""
        return TIP_RADIUS_SHARE * self.die_diameter_mm / 2

    @property
    def volume_mm3(self):
        """Room of the cavity in mm3."""
        tip = _COSINE_TIP_VOLUME * self.die_tip_mm * self.tip_radius_mm**2
        return np.pi / 4 * self.die_diameter_mm**2 * self.die_depth_mm - tip


@dataclass(frozen=True, kw_only=True)
class Sheet:
    """One sheet of a stack.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness, 0.3 to 6.5 [mm]
    family : str
        One of ``FAMILIES`` [-]
    tensile_strength_mpa : float
        Tensile strength, 20 to 2000 [MPa]
    elongation_percent : float or None
        Elongation at break, None where it is not known [%]

    Raises
    ------
    ValueError
        If a value lies outside its range or the family is not in the list.

    Examples
    --------
    >>> Sheet(thickness_mm=2.0).family
    'aluminium'
    """

    thickness_mm: float
    family: str = "aluminium"
    tensile_strength_mpa: float = 215.0
    elongation_percent: float | None = None

    def __post_init__(self):
        """Refuse a sheet that is none."""
        require_between("sheet thickness", self.thickness_mm, 0.3, 6.5, unit="mm")
        require_choice("sheet family", self.family, FAMILIES)
        require_between("tensile strength", self.tensile_strength_mpa, 20, 2000, unit="MPa")
        if self.elongation_percent is not None:
            require_between("elongation", self.elongation_percent, 0, 100, unit="%")


@dataclass(frozen=True, kw_only=True)
class Stack:
    """The sheets of a joint from the head side to the tail side.

    Parameters
    ----------
    top : Sheet
        The top plate, under the head [-]
    second : Sheet
        The second plate, in which the tail spreads [-]
    middle : Sheet or None
        A sheet between them, None in a joint of two [-]
    gap_mm : float or array
        Adhesive or air between the two plates, 0 to 1.5 [mm]

    Raises
    ------
    ValueError
        If the gap lies outside its range.

    Examples
    --------
    >>> Stack(top=Sheet(thickness_mm=1.5), second=Sheet(thickness_mm=2.0)).total_mm
    3.5
    """

    top: Sheet
    second: Sheet
    middle: Sheet | None = None
    gap_mm: float = 0.0

    def __post_init__(self):
        """Refuse a gap that no clamp would leave."""
        require_between("gap", self.gap_mm, 0, 1.5, unit="mm")

    @property
    def sheets(self):
        """The sheets from the head side to the tail side."""
        return tuple(sheet for sheet in (self.top, self.middle, self.second) if sheet is not None)

    @property
    def total_mm(self):
        """Thickness of all sheets together in mm, adhesive and air left out."""
        return sum(sheet.thickness_mm for sheet in self.sheets)


def volume_ratio(rivet, die):
    """Compare the room of the die with the steel of the rivet: q = V_die / V_rivet.

    Rule of thumb: near 1 is well; below it metal is coined and the force climbs, above it the button is not
    filled and the interlock falls.

    Parameters
    ----------
    rivet : Rivet
        The rivet, the rim of its head left out [-]
    die : Die
        The die [-]

    Returns
    -------
    float or numpy.ndarray
        Room of the die over the volume of the rivet [-]

    Notes
    -----
    V_rivet = pi/4 D^2 L - pi/4 d^2 (L - w) with shank D, bore d, length L, web w; V_die = pi/4 Dc^2 h for an
    even floor; a tip is taken off. The definitions are derived here, the rule of thumb is from memory.

    Examples
    --------
    >>> round(volume_ratio(Rivet(rivet_length_mm=4.0), Die(die_diameter_mm=8.0, die_depth_mm=0.8)), 3)
    0.634
    """
    return plain(die.volume_mm3 / rivet.volume_mm3)


def steel_strength_mpa(hardness_hv):
    """Estimate the tensile strength of a rivet from its hardness: R_m = 3.2 HV.

    Parameters
    ----------
    hardness_hv : float or array
        Vickers hardness, 200 to 650 [HV]

    Returns
    -------
    float or numpy.ndarray
        Tensile strength [MPa]

    Raises
    ------
    ValueError
        If the hardness lies outside its range.

    Notes
    -----
    Source: iso_18265, trend of its table for steel, from memory; good to about 10 %.

    Examples
    --------
    >>> steel_strength_mpa(410)
    1312.0
    """
    return plain(3.2 * require_between("hardness", hardness_hv, 200, 650, unit="HV"))


def rivet_axial_capacity_n(rivet):
    """Estimate the pull that snaps the shank of a rivet: F = A 3.2 HV with the section A of the tube.

    Parameters
    ----------
    rivet : Rivet
        The rivet [-]

    Returns
    -------
    float or numpy.ndarray
        Pull at which the tube breaks [N]

    Notes
    -----
    Derived, with ``steel_strength_mpa``; nobody's test. It is several times what the aluminium round the tail
    holds, so a pull moves the rivet and does not snap it.

    Examples
    --------
    >>> round(rivet_axial_capacity_n(Rivet(rivet_length_mm=5.0, bore_diameter_mm=3.34)))
    17450
    """
    return plain(np.asarray(rivet.tube_area_mm2) * steel_strength_mpa(rivet.hardness_hv))


def piercing_force_n(*, shank_diameter_mm, thickness_mm, tensile_strength_mpa):
    """Estimate the force that shears the slug out of the top plate: F = pi D t 0.577 R_m.

    Parameters
    ----------
    shank_diameter_mm : float or array
        Outer diameter of the shank, above 0 [mm]
    thickness_mm : float or array
        Thickness of the top plate, above 0 [mm]
    tensile_strength_mpa : float or array
        Tensile strength of the top plate, above 0 [MPa]

    Returns
    -------
    float or numpy.ndarray
        Force [N]

    Raises
    ------
    ValueError
        If a value is not above 0.

    Notes
    -----
    Derived: shear over the whole thickness at once, strength in shear by von Mises. A small part of the peak
    of a setting, so most of that peak flares the tail and coins the plates.

    Examples
    --------
    >>> round(piercing_force_n(shank_diameter_mm=5.3, thickness_mm=2.0, tensile_strength_mpa=215))
    4131
    """
    diameter = require_above("shank diameter", shank_diameter_mm, 0, unit="mm")
    thickness = require_above("sheet thickness", thickness_mm, 0, unit="mm")
    strength = require_above("tensile strength", tensile_strength_mpa, 0, unit="MPa")
    return plain(np.pi * diameter * thickness * 0.577 * strength)
