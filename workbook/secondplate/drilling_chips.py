"""What drilling leaves behind: chips of hardened steel on aluminium, and the heat of the cut.

A chip left on wet aluminium starts a couple (``corrosion_couples``). Volumes and energies follow from sizes;
how many chips are missed and how hot an edge gets was found nowhere.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_below, require_between
from secondplate.materials import material

_MG_PER_MM3 = 1e-3  # of one kilogram in a cubic metre


def swarf_volume_mm3(*, drill_diameter_mm, drilled_length_mm, bore_diameter_mm=0.0):
    """Return the metal that a drill turns into chips, pi/4 (D^2 - d^2) L.

    Parameters
    ----------
    drill_diameter_mm : float or array
        Diameter of the drill, above 0 [mm]
    drilled_length_mm : float or array
        Length of metal that is drilled, at least 0 [mm]
    bore_diameter_mm : float or array
        Bore that was there before, as in a rivet, at least 0 and at most the drill [mm]

    Returns
    -------
    float or array
        Volume of the chips as solid metal [mm3]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: plane_geometry.

    Examples
    --------
    >>> round(swarf_volume_mm3(drill_diameter_mm=5.5, drilled_length_mm=5, bore_diameter_mm=3.3), 1)
    76.0
    """
    drill = np.asarray(require_above("drill diameter", drill_diameter_mm, 0, unit="mm"))
    bore = np.asarray(require_at_least("bore diameter", bore_diameter_mm, 0, unit="mm"))
    length = np.asarray(require_at_least("drilled length", drilled_length_mm, 0, unit="mm"))
    require_below("bore diameter", bore, "drill diameter", drill, or_equal=True)
    return plain(np.pi / 4 * (drill**2 - bore**2) * length)


@dataclass(frozen=True, kw_only=True)
class ChipsLeft:
    """Steel chips that cleaning has missed.

    Parameters
    ----------
    chips_mg : float or array
        Mass of what is left [mg]
    chips : float or array
        About how many chips that is [-]

    Examples
    --------
    >>> chips_left(swarf_volume_mm3=76, missed_share=0.01, chip_volume_mm3=0.02).chips
    38.0
    """

    chips_mg: float
    chips: float


def chips_left(*, swarf_volume_mm3, missed_share, chip_volume_mm3):
    """Return mass and number of the rivet's steel chips that cleaning misses, each able to start a couple.

    Parameters
    ----------
    swarf_volume_mm3 : float or array
        Steel that was drilled away, at least 0 [mm3]
    missed_share : float or array
        Part that catching, vacuum and magnet miss, 0 to 1; weigh what you caught [-]
    chip_volume_mm3 : float or array
        Volume of one chip: thickness, width and length, above 0 [mm3]

    Returns
    -------
    ChipsLeft
        Mass and number [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: hot_stamping_22mnb5, density of rivet steel; the rest is volume. No missed share was found.

    Examples
    --------
    >>> round(chips_left(swarf_volume_mm3=76, missed_share=0.01, chip_volume_mm3=0.02).chips_mg, 2)
    5.95
    """
    volume = np.asarray(require_at_least("volume of the swarf", swarf_volume_mm3, 0, unit="mm3"))
    missed = np.asarray(require_between("missed share", missed_share, 0, 1, unit=""))
    one = np.asarray(require_above("volume of a chip", chip_volume_mm3, 0, unit="mm3"))
    density = material("boron rivet steel").density_kg_m3
    return ChipsLeft(
        chips_mg=plain(volume * missed * density * _MG_PER_MM3), chips=plain(volume * missed / one)
    )


def cutting_heat_j(*, torque_n_m, drilled_depth_mm, feed_mm_rev):
    """Return the energy that a cut turns into heat, torque times the angle turned: 2 pi M L / f.

    Parameters
    ----------
    torque_n_m : float or array
        Torque of the drill, at least 0 [N m]
    drilled_depth_mm : float or array
        Depth at full diameter, at least 0 [mm]
    feed_mm_rev : float or array
        Feed for a turn, above 0 [mm/rev]

    Returns
    -------
    float or array
        Heat in chips, drill and plates together [J]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: drilling_formula_sheet, work of the torque. No cutting temperature was found in a source.

    Examples
    --------
    >>> round(cutting_heat_j(torque_n_m=6.17, drilled_depth_mm=2, feed_mm_rev=0.1))
    775
    """
    torque = np.asarray(require_at_least("torque", torque_n_m, 0, unit="N m"))
    depth = np.asarray(require_at_least("drilled depth", drilled_depth_mm, 0, unit="mm"))
    feed = np.asarray(require_above("feed", feed_mm_rev, 0, unit="mm/rev"))
    return plain(2 * np.pi * torque * depth / feed)
