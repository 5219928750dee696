"""Energy of the arc of a stud weld and what of it reaches each face, by area and by time.

It leaves out the shape of voltage and current over time; both are taken as steady.
"""

import numpy as np

from secondplate import tables
from secondplate.bands import Band
from secondplate.checks import require_above, require_between

_SHARES = tables.bands("arc_shares")


def voltage_band_v():
    """Return the band of arc voltage of drawn-arc stud welding.

    Returns
    -------
    Band
        Arc voltage, 20 to 40 with 30 as the value to reckon with [V]

    Notes
    -----
    Source: iso_14555 Annex A, from memory. Few machines show the voltage; measure it at the gun.

    Examples
    --------
    >>> voltage_band_v().best
    30.0
    """
    return _SHARES["arc voltage"]


def arc_energy_j(*, voltage_v, current_a, time_ms):
    """Return the energy of the arc, E = U I t.

    Parameters
    ----------
    voltage_v : float or array
        Arc voltage U, 10 to 50 V [V]
    current_a : float or array
        Weld current I, above 0 and at most 3000 A [A]
    time_ms : float or array
        Weld time t, above 0 and at most 3000 ms [ms]

    Returns
    -------
    float or array
        Energy E, in the common shape [J]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Voltage and current are taken as steady; a real trace is integrated instead.
    Source: definition; ranges from drawn_arc_ferrule_page (current, time).

    Examples
    --------
    >>> arc_energy_j(voltage_v=30, current_a=800, time_ms=20)
    480.0
    """
    voltage_v = require_between("voltage", voltage_v, 10, 50, unit="V")
    require_above("current", current_a, 0, unit="A")
    require_above("time", time_ms, 0, unit="ms")
    current_a = require_between("current", current_a, 0, 3000, unit="A")
    time_ms = require_between("time", time_ms, 0, 3000, unit="ms")
    return voltage_v * current_a * time_ms / 1000  # ms to s


def fusion_area_mm2(face_diameter_mm):
    """Return the area of the round face that melts, A = pi/4 D^2.

    Parameters
    ----------
    face_diameter_mm : float or array
        Diameter D of the face: the flange of a flanged stud, else the stud, 1 to 30 mm [mm]

    Returns
    -------
    float or array
        Area A, in the shape of the diameter [mm2]

    Raises
    ------
    ValueError
        If the diameter is out of its range.

    Notes
    -----
    Source: geometry; the small cone on the face is left out.

    Examples
    --------
    >>> round(fusion_area_mm2(7), 2)
    38.48
    """
    face_diameter_mm = require_between("face diameter", face_diameter_mm, 1, 30, unit="mm")
    return np.pi / 4 * face_diameter_mm**2


def energy_per_area_j_mm2(energy_j, *, face_diameter_mm):
    """Return the arc energy for each square millimetre of the face, E / A.

    Parameters
    ----------
    energy_j : float or array
        Arc energy E, above 0 [J]
    face_diameter_mm : float or array
        Diameter of the face, 1 to 30 mm [mm]

    Returns
    -------
    float or array
        Energy per area, in the common shape [J/mm2]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: definition. The short-cycle chart of stud_manual_short_cycle gives 9.5 to 13.8 J/mm2 at 30 V.

    Examples
    --------
    >>> round(energy_per_area_j_mm2(480, face_diameter_mm=7), 2)
    12.47
    """
    return require_above("energy", energy_j, 0, unit="J") / fusion_area_mm2(face_diameter_mm)


def face_heat_share():
    """Return the share of the arc energy that reaches one of the two faces.

    It is the arc efficiency times the share of one face.

    Returns
    -------
    Band
        Share, 0.32 to 0.54 with 0.425 as the best guess [-]

    Notes
    -----
    Sources: arc_efficiency_1995 (efficiency, carried over from other processes) and
    iron_arc_energy_balance (halves). No measurement for short stud arcs is known, so the band is wide.

    Examples
    --------
    >>> round(face_heat_share().best, 3)
    0.425
    """
    efficiency, face = _SHARES["arc efficiency"], _SHARES["share of one face"]
    return Band(
        low=efficiency.low * face.low,
        best=efficiency.best * face.best,
        high=efficiency.high * face.high,
        basis="derived: arc efficiency of like processes times half the heat to each face",
    )


def _scaled(band, factor, basis):
    """Multiply a band by a number or array above 0."""
    return Band(low=band.low * factor, best=band.best * factor, high=band.high * factor, basis=basis)


def heat_to_face_j(energy_j):
    """Return the heat that one face, of the stud or of the plate, takes from the arc.

    Parameters
    ----------
    energy_j : float or array
        Arc energy, above 0 [J]

    Returns
    -------
    Band
        Heat to one face, its three values in the shape of the energy [J]

    Raises
    ------
    ValueError
        If the energy is not above 0.

    Notes
    -----
    Source: see ``face_heat_share``.

    Examples
    --------
    >>> round(heat_to_face_j(480).best)
    204
    """
    energy_j = require_above("energy", energy_j, 0, unit="J")
    return _scaled(face_heat_share(), energy_j, face_heat_share().basis)


def heat_flux_w_mm2(*, voltage_v, current_a, face_diameter_mm):
    """Return the heat flux into one face while the arc burns, share U I / A.

    Parameters
    ----------
    voltage_v : float or array
        Arc voltage U, 10 to 50 V [V]
    current_a : float or array
        Weld current I, above 0 and at most 3000 A [A]
    face_diameter_mm : float or array
        Diameter of the face, 1 to 30 mm [mm]

    Returns
    -------
    Band
        Heat flux, its three values in the common shape [W/mm2]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: see ``face_heat_share``. 1 W/mm2 is 1 MW/m2.

    Examples
    --------
    >>> round(heat_flux_w_mm2(voltage_v=30, current_a=800, face_diameter_mm=7).best)
    265
    """
    joule_a_second = arc_energy_j(voltage_v=voltage_v, current_a=current_a, time_ms=1000.0)
    return heat_to_face_j(joule_a_second / fusion_area_mm2(face_diameter_mm))
