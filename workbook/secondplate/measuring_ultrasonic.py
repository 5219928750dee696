"""Plate thickness by ultrasound: one echo or the time between echoes, and what paint does to each.

For plane plates with both faces parallel. Leaves out the delay of the probe and its zero, which the set-up on
a step block takes out, and echoes from a curved or torn face, which mostly do not come back at all.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_above, require_at_least, require_between, require_whole
from secondplate.tables import bands

# Velocity of sound by metal and kind of wave, in m/s.
VELOCITIES_M_S = bands("echo_velocities")
_VALUES = bands("measuring")
_SOUND = (500.0, 15_000.0)
# Millimetres in a microsecond at one metre in a second.
_MM_US = 1e-3


def _velocity(name, velocity_m_s):
    """Return a velocity of sound as an array, or raise."""
    return np.asarray(require_between(name, velocity_m_s, *_SOUND, unit="m/s"))


def echo_thickness_mm(time_us, *, velocity_m_s):
    """Return the thickness from one echo: t = v tau/2. Paint counts as metal in it.

    Parameters
    ----------
    time_us : float or array
        Time from the face to the back wall and back, above 0 [us]
    velocity_m_s : float or array
        Velocity of sound, 500 to 15 000 [m/s]

    Returns
    -------
    float or numpy.ndarray
        Thickness [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: iso_16809, mode 1, from memory.

    Examples
    --------
    >>> round(echo_thickness_mm(0.47468, velocity_m_s=6320), 3)
    1.5
    """
    time = require_above("time of the echo", time_us, 0, unit="us")
    return plain(_velocity("velocity of sound", velocity_m_s) * time / 2 * _MM_US)


def echo_time_us(thickness_mm, *, velocity_m_s):
    """Return the time of the echo from a back wall: tau = 2 t/v.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness, above 0 [mm]
    velocity_m_s : float or array
        Velocity of sound, 500 to 15 000 [m/s]

    Returns
    -------
    float or numpy.ndarray
        Time [us]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: iso_16809, mode 1, from memory.

    Examples
    --------
    >>> round(echo_time_us(1.5, velocity_m_s=6320), 5)
    0.47468
    """
    thickness = require_above("thickness", thickness_mm, 0, unit="mm")
    return plain(2 * thickness / (_velocity("velocity of sound", velocity_m_s) * _MM_US))


def echo_to_echo_thickness_mm(first_us, later_us, *, echo_number, velocity_m_s):
    """Return the thickness from two echoes of the same back wall: t = v (tau_n - tau_1)/(2 (n - 1)).

    The way through the paint is in both times and drops out.

    Parameters
    ----------
    first_us : float or array
        Time of the first echo from the back wall, above 0 [us]
    later_us : float or array
        Time of a later echo, above the first [us]
    echo_number : int or array
        Number n of the later echo, a whole number from 2 [-]
    velocity_m_s : float or array
        Velocity of sound in the metal, 500 to 15 000 [m/s]

    Returns
    -------
    float or numpy.ndarray
        Thickness of the metal alone [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range or the later echo does not come later.

    Notes
    -----
    Source: iso_16809, mode 3, from memory.

    Examples
    --------
    >>> round(echo_to_echo_thickness_mm(0.57468, 1.04936, echo_number=2, velocity_m_s=6320), 3)
    1.5
    """
    first = np.asarray(require_above("time of the first echo", first_us, 0, unit="us"))
    later = np.asarray(require_above("time of the later echo", later_us, 0, unit="us"))
    require_above("time from the first to the later echo", later - first, 0, unit="us")
    number = np.asarray(require_whole("number of the later echo", echo_number, 2, unit=""))
    speed = _velocity("velocity of sound", velocity_m_s)
    return plain(speed * (later - first) / (2 * (number - 1)) * _MM_US)


def paint_reading_mm(paint_mm, *, velocity_m_s=None, paint_velocity_m_s=None):
    """Return what a layer of paint adds to a single-echo reading: paint times v over the paint's own v.

    Parameters
    ----------
    paint_mm : float or array
        Thickness of the paint, at least 0 [mm]
    velocity_m_s : float or array or None
        Velocity that the gauge is set to; that of aluminium unless told [m/s]
    paint_velocity_m_s : float or array or None
        Velocity of sound in the paint; the best of its band unless told [m/s]

    Returns
    -------
    float or numpy.ndarray
        Excess of the reading over the metal [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: iso_16809, coated parts, from memory.

    Examples
    --------
    >>> round(paint_reading_mm(0.12), 3)
    0.316
    """
    given = (
        VELOCITIES_M_S["aluminium"].best if velocity_m_s is None else velocity_m_s,
        VELOCITIES_M_S["paint"].best if paint_velocity_m_s is None else paint_velocity_m_s,
    )
    speed = _velocity("velocity of sound", given[0])
    paint = require_at_least("thickness of the paint", paint_mm, 0, unit="mm")
    return plain(paint * speed / _velocity("velocity of sound in paint", given[1]))


def echo_uncertainty_mm(*, thickness_mm, velocity_m_s, time_uncertainty_us, velocity_uncertainty_m_s):
    """Return the standard uncertainty of a thickness by ultrasound.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness, above 0 [mm]
    velocity_m_s : float or array
        Velocity of sound, 500 to 15 000 [m/s]
    time_uncertainty_us : float or array
        Standard uncertainty of the time, at least 0 [us]
    velocity_uncertainty_m_s : float or array
        Standard uncertainty of the velocity, at least 0 [m/s]

    Returns
    -------
    float or numpy.ndarray
        Standard uncertainty [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    ``u^2 = (v/2)^2 u(tau)^2 + (t/v)^2 u(v)^2``. Source: jcgm_100, 5.1.2, on the single echo of iso_16809.

    Examples
    --------
    >>> round(echo_uncertainty_mm(thickness_mm=1.5, velocity_m_s=6320, time_uncertainty_us=0.002,
    ...                           velocity_uncertainty_m_s=50), 4)
    0.0134
    """
    speed = _velocity("velocity of sound", velocity_m_s)
    thickness = require_above("thickness", thickness_mm, 0, unit="mm")
    time = require_at_least("uncertainty of the time", time_uncertainty_us, 0, unit="us")
    doubt = require_at_least("uncertainty of the velocity", velocity_uncertainty_m_s, 0, unit="m/s")
    return plain(np.hypot(speed / 2 * _MM_US * time, thickness / speed * doubt))


def velocity_at_m_s(velocity_m_s, *, temperature_c, set_up_c=20.0):
    """Return the velocity of sound in a metal that is warmer or colder than the step block was.

    Parameters
    ----------
    velocity_m_s : float or array
        Velocity at the set-up, 500 to 15 000 [m/s]
    temperature_c : float or array
        Temperature of the plate, -40 to 150 [C]
    set_up_c : float
        Temperature of the block at the set-up, -40 to 150 [C]

    Returns
    -------
    float or numpy.ndarray
        Velocity [m/s]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: iso_16809, about 1 % less by 55 K, a guide value for steel, from memory.

    Examples
    --------
    >>> round(velocity_at_m_s(6320, temperature_c=75))
    6257
    """
    speed = _velocity("velocity of sound", velocity_m_s)
    plate = np.asarray(require_between("temperature of the plate", temperature_c, -40, 150, unit="C"))
    block = require_between("temperature at the set-up", set_up_c, -40, 150, unit="C")
    return plain(
        speed * (1 - 0.01 * (plate - block) / _VALUES["temperature for one per cent of velocity"].best)
    )


def thinnest_wall_mm(*, frequency_mhz, velocity_m_s=None):
    """Return the thinnest wall that a contact probe can measure: 1 to 1.5 wavelengths, lambda = v/f.

    Parameters
    ----------
    frequency_mhz : float or array
        Frequency of the probe, 0.5 to 50 [MHz]
    velocity_m_s : float or array or None
        Velocity of sound; that of aluminium unless told [m/s]

    Returns
    -------
    Band
        Thickness; its low is one wavelength [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: iso_16809, measuring range; the factor is a rule of thumb.

    Examples
    --------
    >>> round(thinnest_wall_mm(frequency_mhz=20).low, 3)
    0.316
    """
    given = VELOCITIES_M_S["aluminium"].best if velocity_m_s is None else velocity_m_s
    frequency = require_between("frequency", frequency_mhz, 0.5, 50, unit="MHz")
    wavelength = _velocity("velocity of sound", given) / frequency * _MM_US
    factor = _VALUES["wavelengths of the thinnest wall"]
    ends = (plain(wavelength * part) for part in (factor.low, factor.best, factor.high))
    return Band(**dict(zip(("low", "best", "high"), ends, strict=True)), basis=factor.basis)
