"""The electric side of stud welding: duty cycle, studs a minute, cable loss, magnetic field.

Leaves out the power source itself: its heat, its ripple, and the rise and fall of the pulse.
"""

import math

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between
from secondplate.tables import values

_CONSTANTS = values("physical_constants")
_COPPER_OHM_MM2_M = _CONSTANTS["copper resistivity at 20 C"]
_COPPER_PER_K = _CONSTANTS["copper temperature coefficient"]
_REFERENCE_C = 20
# Microtesla times metre per ampere, from B = mu0 I / (2 pi r).
_FIELD_UT_M_A = 1e6 * _CONSTANTS["vacuum permeability"] / (2 * math.pi)


def duty_cycle_percent(*, rated_current_a, rated_duty_cycle_percent, current_a):
    """Duty cycle at another current than the rated one: ``X2 = X1 (I1 / I2)^2``, at most 100 %.

    Parameters
    ----------
    rated_current_a : float or array
        Current on the rating plate, I1 [A]
    rated_duty_cycle_percent : float or array
        Duty cycle on the rating plate, X1, above 0 up to 100 [%]
    current_a : float or array
        Current wanted, I2 [A]

    Returns
    -------
    float or array
        Share of a ten-minute period that the arc may burn [%]

    Raises
    ------
    ValueError
        If a current is not above 0 or the rated duty cycle lies outside its range.

    Notes
    -----
    Equal heat in the source: it goes with the square of the current. Holds inside the range of the source;
    no source gives more than its highest current, however short the arc.
    Source: iec_60974_1, rule as printed in duty_cycle_manual.

    Examples
    --------
    >>> round(duty_cycle_percent(
    ...     rated_current_a=800, rated_duty_cycle_percent=10, current_a=1000), 2)
    6.4
    """
    rated = require_above("rated current", rated_current_a, 0, unit="A")
    share = _share("rated duty cycle", rated_duty_cycle_percent)
    current = require_above("current", current_a, 0, unit="A")
    return plain(np.minimum(100, share * (rated / current) ** 2))


def current_at_duty_cycle_a(*, rated_current_a, rated_duty_cycle_percent, duty_cycle_percent):
    """Current that a source holds at another duty cycle: ``I2 = I1 sqrt(X1 / X2)``.

    Parameters
    ----------
    rated_current_a : float or array
        Current on the rating plate, I1 [A]
    rated_duty_cycle_percent : float or array
        Duty cycle on the rating plate, X1, above 0 up to 100 [%]
    duty_cycle_percent : float or array
        Duty cycle wanted, X2, above 0 up to 100 [%]

    Returns
    -------
    float or array
        Current I2 [A]

    Raises
    ------
    ValueError
        If the current is not above 0 or a duty cycle lies outside its range.

    Notes
    -----
    A heat limit only: the highest current of the source may be lower.
    Source: iec_60974_1, rule as printed in duty_cycle_manual.

    Examples
    --------
    >>> round(current_at_duty_cycle_a(
    ...     rated_current_a=400, rated_duty_cycle_percent=25, duty_cycle_percent=50), 1)
    282.8
    """
    rated = require_above("rated current", rated_current_a, 0, unit="A")
    rated_share = _share("rated duty cycle", rated_duty_cycle_percent)
    share = _share("duty cycle", duty_cycle_percent)
    return plain(rated * np.sqrt(rated_share / share))


def _share(name, percent):
    """Check a duty cycle: above 0, at most 100 %."""
    require_above(name, percent, 0, unit="%")
    return require_between(name, percent, 0, 100, unit="%")


def studs_per_minute(*, duty_cycle_percent, weld_time_ms):
    """Studs a minute that the heat of the source allows: ``n = 60 X / t``, X as a share, t in seconds.

    Parameters
    ----------
    duty_cycle_percent : float or array
        Duty cycle at the welding current, above 0 up to 100 [%]
    weld_time_ms : float or array
        Time the arc burns for one stud [ms]

    Returns
    -------
    float or array
        Rate that the heat allows; hands and charging are slower [studs/min]

    Raises
    ------
    ValueError
        If the duty cycle lies outside its range or the time is not above 0.

    Notes
    -----
    Source: definition of the duty cycle, aws_glossary.

    Examples
    --------
    >>> studs_per_minute(duty_cycle_percent=10, weld_time_ms=20)
    300.0
    """
    share = _share("duty cycle", duty_cycle_percent)
    time = require_above("weld time", weld_time_ms, 0, unit="ms")
    return plain(60_000 * (share / 100) / time)


def cable_resistance_milliohm(*, loop_length_m, area_mm2, temperature_c=20.0):
    """Resistance of a copper cable loop: ``R = rho20 L / S [1 + a (T - 20)]``.

    Parameters
    ----------
    loop_length_m : float or array
        Length there and back: gun cable and work cable together, L [m]
    area_mm2 : float or array
        Copper area, S [mm2]
    temperature_c : float or array
        Temperature of the copper, -30 to 120 [C]

    Returns
    -------
    float or array
        Resistance of the loop, without plugs and clamps [mohm]

    Raises
    ------
    ValueError
        If the length is below 0, the area not above 0 or the temperature outside its range.

    Notes
    -----
    rho20 = 0.017241 ohm mm2/m and a = 0.00393 1/K: iec_60028, clause 1. Flexible cable
    may be 10 to 14 % above it (iec_60228, class 5).

    Examples
    --------
    >>> round(cable_resistance_milliohm(loop_length_m=10, area_mm2=50), 3)
    3.448
    """
    length = require_at_least("loop length", loop_length_m, 0, unit="m")
    area = require_above("area", area_mm2, 0, unit="mm2")
    temperature = require_between("temperature", temperature_c, -30, 120, unit="C")
    warmer = 1 + _COPPER_PER_K * (temperature - _REFERENCE_C)
    return plain(1000 * _COPPER_OHM_MM2_M * length / area * warmer)


def voltage_drop_v(*, current_a, loop_length_m, area_mm2, temperature_c=20.0):
    """Voltage lost in a copper cable loop: ``dU = I R``.

    Parameters
    ----------
    current_a : float or array
        Welding current [A]
    loop_length_m : float or array
        Length there and back: gun cable and work cable together [m]
    area_mm2 : float or array
        Copper area [mm2]
    temperature_c : float or array
        Temperature of the copper, -30 to 120 [C]

    Returns
    -------
    float or array
        Voltage that does not reach the arc [V]

    Raises
    ------
    ValueError
        If the current is below 0 or a value is refused by ``cable_resistance_milliohm``.

    Notes
    -----
    Resistance only; the rise of a short pulse also meets the inductance of a coiled cable.
    Source: Ohm's law with the copper values of iec_60028, clause 1.

    Examples
    --------
    >>> round(voltage_drop_v(current_a=800, loop_length_m=10, area_mm2=50, temperature_c=60), 3)
    3.192
    """
    current = require_at_least("current", current_a, 0, unit="A")
    resistance = cable_resistance_milliohm(
        loop_length_m=loop_length_m, area_mm2=area_mm2, temperature_c=temperature_c
    )
    return plain(current * resistance / 1000)


def magnetic_field_ut(*, current_a, distance_m):
    """Magnetic field beside one long straight cable: ``B = mu0 I / (2 pi r)``.

    Parameters
    ----------
    current_a : float or array
        Current in the cable [A]
    distance_m : float or array
        Distance from the middle of the cable, at least 0.01 [m]

    Returns
    -------
    float or array
        Flux density [uT]

    Raises
    ------
    ValueError
        If the current is below 0 or the distance below 0.01 m.

    Notes
    -----
    Steady current in air, cable long against the distance, return cable far away.
    Source: law of Biot and Savart; vacuum permeability from codata_2022.

    Examples
    --------
    >>> round(magnetic_field_ut(current_a=1000, distance_m=0.3), 1)
    666.7
    """
    current = require_at_least("current", current_a, 0, unit="A")
    distance = require_at_least("distance", distance_m, 0.01, unit="m")
    return plain(_FIELD_UT_M_A * current / distance)


def pair_field_ut(*, current_a, distance_m, spacing_m):
    """Magnetic field beside two cables that carry the current there and back.

    ``B = mu0 I s / (2 pi r^2)``: the two fields nearly cancel.

    Parameters
    ----------
    current_a : float or array
        Current in each cable, in opposite directions [A]
    distance_m : float or array
        Distance from the middle of the pair, at least twice the spacing [m]
    spacing_m : float or array
        Distance between the middles of the two cables [m]

    Returns
    -------
    float or array
        Flux density [uT]

    Raises
    ------
    ValueError
        If the current is below 0, the spacing not above 0 or the distance below twice the spacing.

    Notes
    -----
    Leading term for a distance above the spacing; at twice the spacing the field in the plane of the cables
    is 7 % higher and square to it 6 % lower. Source: law of Biot and Savart for both cables.

    Examples
    --------
    >>> round(pair_field_ut(current_a=1000, distance_m=0.3, spacing_m=0.05), 1)
    111.1
    """
    spacing = require_above("spacing", spacing_m, 0, unit="m")
    distance = require_above("distance", distance_m, 0, unit="m")
    times = require_at_least("distance over spacing", distance / spacing, 2, unit="")
    return plain(magnetic_field_ut(current_a=current_a, distance_m=distance) / times)


def distance_for_field_m(*, current_a, field_ut):
    """Distance at which the field of one long straight cable has fallen to a value: ``r = mu0 I / (2 pi B)``.

    Parameters
    ----------
    current_a : float or array
        Current in the cable [A]
    field_ut : float or array
        Flux density not to be exceeded [uT]

    Returns
    -------
    float or array
        Distance from the middle of the cable [m]

    Raises
    ------
    ValueError
        If the current is below 0 or the field not above 0.

    Notes
    -----
    Inverse of ``magnetic_field_ut``. The limits themselves stand in ``cautions``.
    Source: law of Biot and Savart; vacuum permeability from codata_2022.

    Examples
    --------
    >>> round(distance_for_field_m(current_a=1000, field_ut=500), 3)
    0.4
    """
    current = require_at_least("current", current_a, 0, unit="A")
    field = require_above("field", field_ut, 0, unit="uT")
    return plain(_FIELD_UT_M_A * current / field)
