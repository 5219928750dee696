"""The path of the weld metal from a stainless stud into a rivet through the Schaeffler diagram."""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_between
from secondplate.weldability_composition import mix
from secondplate.weldability_diagram import (
    LINE_UNCERTAINTY_PERCENT,
    constitution_region,
    diagram_lines,
    near_border,
)
from secondplate.weldability_equivalents import schaeffler_equivalents, wrc_1992_covers


@dataclass(frozen=True, kw_only=True)
class DilutionPath:
    """The way of the weld metal through the diagram, from the stud to the rivet; arrays by dilution.

    Parameters
    ----------
    dilution : numpy.ndarray
        Share of the rivet in the melt [-]
    carbon_percent : numpy.ndarray
        Carbon of the melt [%]
    chromium_equivalent_percent : numpy.ndarray
        Chromium equivalent of the melt [%]
    nickel_equivalent_percent : numpy.ndarray
        Nickel equivalent of the melt [%]
    region : numpy.ndarray of str
        Structure, of ``REGIONS`` [-]
    near_border : numpy.ndarray of bool
        Whether a border is nearer than the lines are sure [-]
    in_wrc_1992 : numpy.ndarray of bool
        Whether the WRC-1992 diagram speaks of this melt [-]

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> path = dilution_path(composition("304-type"), composition("36MnB4"), dilution=[0, 0.2, 0.5, 1])
    >>> path.region.tolist()
    ['austenite and ferrite', 'austenite and martensite', 'martensite', 'martensite']
    """

    dilution: np.ndarray
    carbon_percent: np.ndarray
    chromium_equivalent_percent: np.ndarray
    nickel_equivalent_percent: np.ndarray
    region: np.ndarray
    near_border: np.ndarray
    in_wrc_1992: np.ndarray


def dilution_path(stud, rivet, *, dilution=None):
    """Return the way of the weld metal through the Schaeffler diagram as the share of the rivet rises.

    Parameters
    ----------
    stud : Composition
        The stud [-]
    rivet : Composition
        The rivet [-]
    dilution : array or None
        Shares of the rivet, 0 to 1; None for 0 to 1 in steps of 0.05 [-]

    Returns
    -------
    DilutionPath
        Equivalents and structure for each share, as arrays of one shape [-]

    Raises
    ------
    ValueError
        If a share is out of its range or a melt lies off the diagram.

    Notes
    -----
    Source: ``mix``, ``schaeffler_equivalents`` and ``constitution_region``.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> dilution_path(composition("309-type"), composition("36MnB4")).region[4]
    np.str_('austenite')
    """
    shares = np.linspace(0, 1, 21) if dilution is None else np.atleast_1d(np.asarray(dilution, dtype=float))
    melt = mix(stud, rivet, dilution=shares)
    at = schaeffler_equivalents(melt)
    place = (at.chromium_equivalent_percent, at.nickel_equivalent_percent)
    return DilutionPath(
        dilution=shares,
        carbon_percent=melt.carbon_percent,
        chromium_equivalent_percent=place[0],
        nickel_equivalent_percent=place[1],
        region=constitution_region(*place),
        near_border=near_border(*place),
        in_wrc_1992=wrc_1992_covers(melt),
    )


def martensite_dilution(stud, rivet):
    """Return the share of the rivet from which the weld metal is martensite alone.

    Parameters
    ----------
    stud : Composition
        The stud, above the line of martensite [-]
    rivet : Composition
        The rivet, below the line of martensite [-]

    Returns
    -------
    Band
        Share of the rivet; its ends stand for lines that lie 0.3 to either side [-]

    Raises
    ------
    ValueError
        If the stud does not lie above the line of martensite, or the rivet not below it.

    Notes
    -----
    The path is straight in the diagram, so the share follows from the distances of its ends from the line.
    Source: schaeffler_code.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> round(martensite_dilution(composition("304-type"), composition("36MnB4")).best, 2)
    0.45
    """
    line = diagram_lines()[0]
    stud_above, rivet_above = (
        at.nickel_equivalent_percent - line.nickel_at(at.chromium_equivalent_percent)
        for at in (schaeffler_equivalents(stud), schaeffler_equivalents(rivet))
    )
    shift = LINE_UNCERTAINTY_PERCENT * np.hypot(1, line.slope)
    require_between("stud above the line of martensite", stud_above, shift, 40, unit="%")
    require_between("rivet above the line of martensite", rivet_above, -40, -shift, unit="%")
    low, best, high = (plain((stud_above - by) / (stud_above - rivet_above)) for by in (shift, 0.0, -shift))
    return Band(low=low, best=best, high=high, basis="straight path; line of martensite 0.3 either way")
