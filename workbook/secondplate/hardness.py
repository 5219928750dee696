"""Hardness of rivets and what it says of their strength: conversion tables for steel, classes as bands.

For unalloyed and low-alloy steel only. Aluminium, stainless steel and cold-worked surfaces are left out.
"""

from types import MappingProxyType

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_between
from secondplate.rivet import steel_strength_mpa
from secondplate.tables import load, values


def _table(quantity):
    """Return the columns of one conversion, Vickers rising."""
    rows = [row for row in load("hardness_conversion") if row.name == quantity]
    return np.array([(float(row.keys["hardness_hv"]), row.number) for row in rows]).T


_TABLES = MappingProxyType(
    {name: _table(name) for name in ("Brinell hardness", "Rockwell C hardness", "tensile strength")}
)
TABLE_RANGE_HV = (float(_TABLES["tensile strength"][0, 0]), float(_TABLES["tensile strength"][0, -1]))


def _numbers(name):
    """Return every number that the table of rivets holds under a name."""
    return [row.number for row in load("rivet_hardness") if row.name == name]


def _converted(quantity, hardness_hv):
    """Read a table, in a straight line from row to row."""
    hardness = require_between("hardness", hardness_hv, *TABLE_RANGE_HV, unit="HV")
    return plain(np.interp(hardness, *_TABLES[quantity]))


def table_strength_mpa(hardness_hv):
    """Read the tensile strength of steel off the conversion table, in a straight line from row to row.

    Parameters
    ----------
    hardness_hv : float or array
        Vickers hardness, 250 to 560 [HV]

    Returns
    -------
    float or numpy.ndarray
        Tensile strength [MPa]

    Raises
    ------
    ValueError
        If the hardness lies outside the rows held here.

    Notes
    -----
    Source: iso_18265 Table A.1, some of its rows. The rule 3.2 HV lies up to 3 % below it.

    Examples
    --------
    >>> table_strength_mpa(410)
    1320.0
    """
    return _converted("tensile strength", hardness_hv)


def brinell_hardness_hbw(hardness_hv):
    """Read the Brinell hardness of steel off the conversion table, in a straight line from row to row.

    Parameters
    ----------
    hardness_hv : float or array
        Vickers hardness, 250 to 560 [HV]

    Returns
    -------
    float or numpy.ndarray
        Brinell hardness [HBW]

    Raises
    ------
    ValueError
        If the hardness lies outside the rows held here.

    Notes
    -----
    Source: iso_18265 Table A.1, some of its rows.

    Examples
    --------
    >>> brinell_hardness_hbw(480)
    456.0
    """
    return _converted("Brinell hardness", hardness_hv)


def rockwell_hardness_hrc(hardness_hv):
    """Read the Rockwell C hardness of steel off the conversion table, in a straight line from row to row.

    Parameters
    ----------
    hardness_hv : float or array
        Vickers hardness, 250 to 560 [HV]

    Returns
    -------
    float or numpy.ndarray
        Rockwell C hardness [HRC]

    Raises
    ------
    ValueError
        If the hardness lies outside the rows held here.

    Notes
    -----
    Source: iso_18265 Table A.1, some of its rows.

    Examples
    --------
    >>> rockwell_hardness_hrc(400)
    40.8
    """
    return _converted("Rockwell C hardness", hardness_hv)


def vickers_from_rockwell_hv(hardness_hrc):
    """Estimate the Vickers hardness of steel from Rockwell C: HV = (223 HRC + 14500) / (100 - HRC).

    Parameters
    ----------
    hardness_hrc : float or array
        Rockwell C hardness, 20 to 60 [HRC]

    Returns
    -------
    float or numpy.ndarray
        Vickers hardness [HV]

    Raises
    ------
    ValueError
        If the hardness lies outside its range.

    Notes
    -----
    Source: rockwell_formula; within 1 % of the rows of astm_e140 that were seen.

    Examples
    --------
    >>> vickers_from_rockwell_hv(50)
    513.0
    """
    hrc = require_between("Rockwell hardness", hardness_hrc, 20, 60, unit="HRC")
    return plain((223 * np.asarray(hrc) + 14500) / (100 - np.asarray(hrc)))


def steel_strength_band_mpa(hardness_hv):
    """Return what a hardness tells of the tensile strength of steel, as a band round 3.2 HV.

    Parameters
    ----------
    hardness_hv : float or array
        Vickers hardness, 200 to 650 [HV]

    Returns
    -------
    Band
        Tensile strength, 10 % either way [MPa]

    Raises
    ------
    ValueError
        If the hardness lies outside its range.

    Notes
    -----
    Source: iso_18265, trend of its table; the width of 10 % is from memory and holds the table itself.

    Examples
    --------
    >>> steel_strength_band_mpa(480).contains(table_strength_mpa(480))
    True
    """
    best = steel_strength_mpa(hardness_hv)
    (spread,) = _numbers("strength spread")
    return Band(low=best * (1 - spread), best=best, high=best * (1 + spread), basis="3.2 HV, 10 % either way")


def rivet_hardness_classes():
    """Return the classes in which rivets are sold, soft to hard, each as a band.

    Returns
    -------
    tuple of Band
        Vickers hardness of each class [HV]

    Notes
    -----
    Source: rivet_literature, from memory. The soft class serves aluminium, 410 to 480 HV aluminium on steel.
    rivet_features_page has no figures: discrete levels; too soft and the leg collapses, too hard and the
    second plate is thinned or pierced, or the tail cracks.

    Examples
    --------
    >>> [band.best for band in rivet_hardness_classes()]
    [280.0, 410.0, 480.0, 555.0]
    """
    (half,) = _numbers("half width")
    return tuple(
        Band(low=middle - half, best=middle, high=middle + half, basis="class of rivets, from memory")
        for middle in _numbers("hardness class")
    )


def tube_strength_n(rivet, *, in_shear=False):
    """Return what the tube of a rivet bears: F = A 3.2 HV, in shear 0.577 of it.

    Parameters
    ----------
    rivet : Rivet
        The rivet: section of the tube and hardness count [-]
    in_shear : bool
        Whether the tube is sheared instead of pulled [-]

    Returns
    -------
    Band
        Force, 10 % either way [N]

    Notes
    -----
    Source: iso_18265, trend of its table; shear over tension after von Mises (strength_of_materials).

    Examples
    --------
    >>> from secondplate.rivet import Rivet
    >>> rivet = Rivet(rivet_length_mm=5.0, bore_diameter_mm=3.34)
    >>> round(tube_strength_n(rivet).best), round(tube_strength_n(rivet, in_shear=True).best)
    (17450, 10069)
    """
    share = values("pull_out_constants")["shear over tension"] if in_shear else 1.0
    strength = steel_strength_band_mpa(rivet.hardness_hv)
    ends = {
        end: plain(share * rivet.tube_area_mm2 * getattr(strength, end)) for end in ("low", "best", "high")
    }
    return Band(**ends, basis=strength.basis)
