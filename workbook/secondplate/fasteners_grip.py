"""Length and hole of a blind rivet: the grip that a length holds, and the hole that a body needs.

The table of grips is that of ISO 15981; other standards have tables of their own that could not be read.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least
from secondplate.fasteners_kinds import FASTENER_RULES
from secondplate.tables import load

HOLE_VERDICTS = ("too tight", "right", "too wide")


def _read_grips():
    """Read the grips as {diameter: {length: (least, greatest)}}."""
    found = {}
    for row in load("rivet_grips"):
        lengths = found.setdefault(float(row.keys["diameter_mm"]), {})
        lengths[float(row.keys["length_mm"])] = (float(row.keys["low_mm"]), row.number)
    return found


_GRIPS = _read_grips()
GRIP_DIAMETERS_MM = tuple(sorted(_GRIPS))


def _lengths(diameter_mm):
    """Return the lengths of a diameter with their grips."""
    diameter = require_above("diameter of the rivet", diameter_mm, 0, unit="mm")
    if diameter not in _GRIPS:
        listed = ", ".join(f"{size:g}" for size in GRIP_DIAMETERS_MM)
        message = f"diameter of the rivet must be one of {listed} mm, got {diameter:.6g} mm"
        raise ValueError(message)
    return _GRIPS[diameter]


def grip_range_mm(diameter_mm, *, rivet_length_mm):
    """Return the least and the greatest grip of a blind rivet by ISO 15981.

    Parameters
    ----------
    diameter_mm : float
        Nominal diameter, one of ``GRIP_DIAMETERS_MM`` [mm]
    rivet_length_mm : float
        Nominal length, one of the table [mm]

    Returns
    -------
    tuple of float
        Least and greatest grip [mm]

    Raises
    ------
    ValueError
        If the diameter or the length is not in the table.

    Notes
    -----
    Source: iso_15981, table of grips, seen; the heads of the columns are inferred.

    Examples
    --------
    >>> grip_range_mm(4.8, rivet_length_mm=10)
    (4.0, 6.0)
    """
    lengths = _lengths(diameter_mm)
    length = require_above("length of the rivet", rivet_length_mm, 0, unit="mm")
    if length not in lengths:
        listed = ", ".join(f"{size:g}" for size in lengths)
        message = f"length of a {diameter_mm:g} mm rivet must be one of {listed} mm, got {length:.6g} mm"
        raise ValueError(message)
    return lengths[length]


def grip_mm(*thicknesses_mm, adhesive_mm=0.0, gap_mm=0.0):
    """Return the grip of a joint: sheets, adhesive and gap together.

    Parameters
    ----------
    *thicknesses_mm : float or array
        Thickness of each sheet, above 0 [mm]
    adhesive_mm : float or array
        Thickness of adhesive, at least 0 [mm]
    gap_mm : float or array
        Gap that stays open, at least 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Grip [mm]

    Raises
    ------
    ValueError
        If there is no sheet or a value lies outside its range.

    Notes
    -----
    Source: iso_15981, grip; the gap counts.

    Examples
    --------
    >>> round(grip_mm(1.5, 2.0, adhesive_mm=0.2), 2)
    3.7
    """
    if not thicknesses_mm:
        message = "sheets must be one at least, got none"
        raise ValueError(message)
    sheets = sum(
        np.asarray(require_above("sheet thickness", sheet, 0, unit="mm")) for sheet in thicknesses_mm
    )
    adhesive = require_at_least("adhesive thickness", adhesive_mm, 0, unit="mm")
    return plain(sheets + adhesive + require_at_least("gap", gap_mm, 0, unit="mm"))


def blind_rivet_length_mm(diameter_mm, *, closed_grip_mm, gap_mm=0.0):
    """Return the shortest blind rivet whose range holds the grip, with the gap and without it.

    Parameters
    ----------
    diameter_mm : float
        Nominal diameter, one of ``GRIP_DIAMETERS_MM`` [mm]
    closed_grip_mm : float
        Sheets and adhesive without the gap, above 0 [mm]
    gap_mm : float
        Gap that may stay open, at least 0 [mm]

    Returns
    -------
    float
        Nominal length [mm]

    Raises
    ------
    ValueError
        If no length holds the grip; the sentence names the range of the diameter, or that of the length
        which holds the closed grip where only the gap is too much.

    Notes
    -----
    Source: iso_15981, table of grips.

    Examples
    --------
    >>> blind_rivet_length_mm(4.8, closed_grip_mm=3.7)
    8.0
    >>> blind_rivet_length_mm(4.8, closed_grip_mm=27)
    Traceback (most recent call last):
    ValueError: grip must lie in a range of ISO 15981 for 4.8 mm (1.5 mm to 25 mm), got 27 mm
    """
    lengths = _lengths(diameter_mm)
    least = require_above("grip", closed_grip_mm, 0, unit="mm")
    most = least + require_at_least("gap", gap_mm, 0, unit="mm")
    # Forgives the last digits of a sum of thicknesses.
    held = [size for size, (low, high) in lengths.items() if low - 1e-9 <= least and most <= high + 1e-9]
    if not held:
        raise ValueError(_why_none(lengths, diameter_mm, least, most))
    return min(held)


def _why_none(lengths, diameter_mm, least, most):
    """Say whether a grip lies outside every range, or runs from one into the next with its gap."""
    low, high = min(low for low, _ in lengths.values()), max(high for _, high in lengths.values())
    got = f"{least:.6g} mm" if most == least else f"{least:.6g} mm to {most:.6g} mm with the gap"
    closed = {size: ends for size, ends in lengths.items() if ends[0] - 1e-9 <= least <= ends[1] + 1e-9}
    if closed and most <= high + 1e-9:
        size = min(closed)
        holds = f"{size:g} mm long: {closed[size][0]:.6g} mm to {closed[size][1]:.6g} mm"
        where = f"the range of one length of ISO 15981 for {diameter_mm:g} mm ({holds})"
    else:
        where = f"a range of ISO 15981 for {diameter_mm:g} mm ({low:.6g} mm to {high:.6g} mm)"
    return f"grip must lie in {where}, got {got}"


def hole_verdict(hole_diameter_mm, *, fastener):
    """Return whether a hole fits a fastener.

    Parameters
    ----------
    hole_diameter_mm : float or array
        Hole as measured, above 0 [mm]
    fastener : Fastener
        The fastener [-]

    Returns
    -------
    str or numpy.ndarray
        One of ``HOLE_VERDICTS`` [-]

    Raises
    ------
    ValueError
        If the hole is not above 0.

    Notes
    -----
    A hole too wide lowers shear and tension and lets the body swell between the sheets: source
    blind_rivet_design_page.

    Examples
    --------
    >>> from secondplate.fasteners_kinds import blind_rivet
    >>> hole_verdict(5.3, fastener=blind_rivet("ISO 15979", 4.8))
    'too wide'
    """
    hole = np.asarray(require_above("hole diameter", hole_diameter_mm, 0, unit="mm"))
    tight, wide = hole < fastener.hole_least_mm - 1e-9, hole > fastener.hole_most_mm + 1e-9
    named = np.where(tight, "too tight", np.where(wide, "too wide", "right"))
    return str(named) if named.ndim == 0 else named


def advised_pitch_mm(diameter_mm):
    """Return the pitch that a design page advises for blind rivets: about 4 d.

    Parameters
    ----------
    diameter_mm : float or array
        Nominal diameter d, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Pitch [mm]

    Raises
    ------
    ValueError
        If the diameter is not above 0.

    Notes
    -----
    Source: blind_rivet_design_page.

    Examples
    --------
    >>> round(advised_pitch_mm(4.8), 1)
    19.2
    """
    diameter = np.asarray(require_above("diameter of the rivet", diameter_mm, 0, unit="mm"))
    return plain(FASTENER_RULES["pitch of blind rivets"] * diameter)
