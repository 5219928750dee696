"""Shielding gas: how much a stud uses and what it does to the air; which gas is in ``gas_choice``.

Leaves out how gas flows in the nose. The room is taken as well mixed; argon in truth sinks and pools,
so a pit or a closed footwell is worse than the number says.
"""

import numpy as np

from secondplate.arrays import plain, whole_below
from secondplate.bands import Band
from secondplate.checks import require_above, require_at_least, require_between
from secondplate.gas_choice import GAS_GROUPS, GasAdvice, GasGroup, gas_advice, gas_group
from secondplate.tables import values

__all__ = [
    "FLOW_L_MIN",
    "GAS_GROUPS",
    "OXYGEN_IN_AIR_PERCENT",
    "OXYGEN_LIMIT_PERCENT",
    "POST_FLOW_S",
    "PRE_FLOW_S",
    "GasAdvice",
    "GasGroup",
    "cylinder_gas_l",
    "fresh_air_needed_l_min",
    "gas_advice",
    "gas_group",
    "gas_per_stud_l",
    "oxygen_percent",
    "studs_per_cylinder",
    "time_to_oxygen_limit_min",
]

_CONSTANTS = values("physical_constants")
_SETTINGS = values("gas_settings")
OXYGEN_IN_AIR_PERCENT = _CONSTANTS["oxygen in air"]
OXYGEN_LIMIT_PERCENT = values("cautions")["oxygen limit"]
# A limit at or above the oxygen of fresh air can never be kept.
_HIGHEST_LIMIT_PERCENT = 20.9
_MS_PER_MIN = 60_000


def _settings_band(name):
    """Make a band of the low, best and high rows of one gas setting."""
    low, best, high = (_SETTINGS[f"{name} {end}"] for end in ("low", "best", "high"))
    return Band(low=low, best=best, high=high, basis="from memory and common practice, table gas_settings")


FLOW_L_MIN = _settings_band("flow")
PRE_FLOW_S = _settings_band("pre-flow")
POST_FLOW_S = _settings_band("post-flow")


def gas_per_stud_l(*, flow_l_min, pre_flow_s, weld_time_ms, post_flow_s):
    """Gas that one stud uses: flow times pre-flow, weld time and post-flow together.

    ``V = Q (t_pre + t_weld + t_post)``.

    Parameters
    ----------
    flow_l_min : float or array
        Gas flow [L/min]
    pre_flow_s : float or array
        Time the gas flows before the arc [s]
    weld_time_ms : float or array
        Time the arc burns [ms]
    post_flow_s : float or array
        Time the gas flows after the arc [s]

    Returns
    -------
    float or array
        Gas at the pressure of the room [L]

    Raises
    ------
    ValueError
        If the flow is not above 0 or a time is below 0.

    Notes
    -----
    Source: definition of a volume flow; no source needed.

    Examples
    --------
    >>> gas_per_stud_l(flow_l_min=9, pre_flow_s=1.0, weld_time_ms=20, post_flow_s=0.5)
    0.228
    """
    flow = require_above("flow", flow_l_min, 0, unit="L/min")
    pre_flow = require_at_least("pre-flow", pre_flow_s, 0, unit="s")
    weld = require_at_least("weld time", weld_time_ms, 0, unit="ms")
    post_flow = require_at_least("post-flow", post_flow_s, 0, unit="s")
    open_ms = 1000 * (pre_flow + post_flow) + weld
    return plain(flow * open_ms / _MS_PER_MIN)


def cylinder_gas_l(*, water_capacity_l, pressure_bar, remaining_pressure_bar=0.0):
    """Gas that a cylinder gives off between two gauge pressures: ``V_gas = V (p - p_rest)``.

    Parameters
    ----------
    water_capacity_l : float or array
        Volume of the empty cylinder [L]
    pressure_bar : float or array
        Gauge pressure now, up to 300 [bar]
    remaining_pressure_bar : float or array
        Gauge pressure at which the cylinder is changed [bar]

    Returns
    -------
    float or array
        Gas at 1 bar and the temperature of the cylinder [L]

    Raises
    ------
    ValueError
        If the capacity is not above 0, the pressure lies outside 0 to 300 bar, or the rest is larger.

    Notes
    -----
    Ideal gas. Argon at 200 bar holds about 7 % more (argon_supplier_page), so the number errs on the careful
    side.
    Source: law of Boyle, worked example in gas_volume_page.

    Examples
    --------
    >>> cylinder_gas_l(water_capacity_l=20, pressure_bar=150, remaining_pressure_bar=10)
    2800.0
    """
    capacity = require_above("water capacity", water_capacity_l, 0, unit="L")
    pressure = require_between("pressure", pressure_bar, 0, 300, unit="bar")
    remaining = require_at_least("remaining pressure", remaining_pressure_bar, 0, unit="bar")
    used = require_at_least("pressure minus remaining pressure", pressure - remaining, 0, unit="bar")
    return plain(capacity * used)


def studs_per_cylinder(*, gas_l, gas_per_stud_l):
    """Whole studs that an amount of gas is enough for: the ratio, rounded down.

    Parameters
    ----------
    gas_l : float or array
        Gas at hand [L]
    gas_per_stud_l : float or array
        Gas that one stud uses [L]

    Returns
    -------
    int or array of int
        Number of studs [studs]

    Raises
    ------
    ValueError
        If the gas is below 0 or the gas per stud not above 0.

    Notes
    -----
    Source: counting; no source needed.

    Examples
    --------
    >>> studs_per_cylinder(gas_l=2800, gas_per_stud_l=0.228)
    12280
    """
    gas = require_at_least("gas", gas_l, 0, unit="L")
    per_stud = require_above("gas per stud", gas_per_stud_l, 0, unit="L")
    return whole_below(gas / per_stud)


def oxygen_percent(*, room_volume_m3, flow_l_min, time_min, fresh_air_l_min=0.0):
    """Oxygen left in a well-mixed room into which shielding gas and fresh air flow.

    ``c = c0 [Qa + Qg exp(-(Qa + Qg) t / V)] / (Qa + Qg)``, Qg gas, Qa fresh air, c0 oxygen in air.

    Parameters
    ----------
    room_volume_m3 : float or array
        Free volume of the closed space [m3]
    flow_l_min : float or array
        Shielding gas that flows in [L/min]
    time_min : float or array
        Time since the air was fresh [min]
    fresh_air_l_min : float or array
        Fresh air that flows in [L/min]

    Returns
    -------
    float or array
        Volume fraction of oxygen [%]

    Raises
    ------
    ValueError
        If the room or the flow is not above 0, or time or fresh air is below 0.

    Notes
    -----
    Well mixed, mixture displaced at the rate of inflow. Source: balance of the well-mixed vessel.

    Examples
    --------
    >>> round(oxygen_percent(room_volume_m3=50, flow_l_min=10, time_min=358.6), 2)
    19.5
    """
    volume = 1000 * require_above("room volume", room_volume_m3, 0, unit="m3")
    flow = require_above("flow", flow_l_min, 0, unit="L/min")
    time = require_at_least("time", time_min, 0, unit="min")
    fresh = require_at_least("fresh air", fresh_air_l_min, 0, unit="L/min")
    inflow = flow + fresh
    left = fresh + flow * np.exp(-inflow * time / volume)
    return plain(OXYGEN_IN_AIR_PERCENT * left / inflow)


def time_to_oxygen_limit_min(*, room_volume_m3, flow_l_min, limit_percent=OXYGEN_LIMIT_PERCENT):
    """Time until a closed, well-mixed room falls to an oxygen limit: ``t = (V / Q) ln(c0 / c)``.

    Parameters
    ----------
    room_volume_m3 : float or array
        Free volume of the closed space [m3]
    flow_l_min : float or array
        Shielding gas that flows in [L/min]
    limit_percent : float or array
        Oxygen limit, 1 to 20.9 [%]

    Returns
    -------
    float or array
        Time with the gas open all the while [min]

    Raises
    ------
    ValueError
        If the room or the flow is not above 0 or the limit lies outside its range.

    Notes
    -----
    Below 19.5 % an atmosphere is hazardous: source osha_1910_146, paragraph (b). It is not safe at 19.5 %.

    Examples
    --------
    >>> round(time_to_oxygen_limit_min(room_volume_m3=50, flow_l_min=10) / 60, 1)
    6.0
    """
    volume = 1000 * require_above("room volume", room_volume_m3, 0, unit="m3")
    flow = require_above("flow", flow_l_min, 0, unit="L/min")
    limit = require_between("oxygen limit", limit_percent, 1, _HIGHEST_LIMIT_PERCENT, unit="%")
    return plain(volume / flow * np.log(OXYGEN_IN_AIR_PERCENT / limit))


def fresh_air_needed_l_min(*, flow_l_min, limit_percent=OXYGEN_LIMIT_PERCENT):
    """Fresh air that holds a room at an oxygen limit for ever: ``Qa = Qg c / (c0 - c)``.

    Parameters
    ----------
    flow_l_min : float or array
        Shielding gas that flows in [L/min]
    limit_percent : float or array
        Oxygen limit, 1 to 20.9 [%]

    Returns
    -------
    float or array
        Fresh air [L/min]

    Raises
    ------
    ValueError
        If the flow is not above 0 or the limit lies outside its range.

    Notes
    -----
    Steady state of ``oxygen_percent``; the limit itself from osha_1910_146, paragraph (b).

    Examples
    --------
    >>> round(fresh_air_needed_l_min(flow_l_min=10), 1)
    134.5
    """
    flow = require_above("flow", flow_l_min, 0, unit="L/min")
    limit = require_between("oxygen limit", limit_percent, 1, _HIGHEST_LIMIT_PERCENT, unit="%")
    return plain(flow * limit / (OXYGEN_IN_AIR_PERCENT - limit))
