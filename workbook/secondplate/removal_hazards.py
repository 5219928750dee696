"""What can hurt in each way of removal, and the numbers that go with high voltage, vibration and dust.

Cautions, no permit: local law, the equipment manual and the vehicle maker's procedure come first. Hazards of
the stud weld itself are in ``cautions``.
"""

from dataclasses import dataclass

import numpy as np

from secondplate import tables
from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between, require_choice
from secondplate.removal_limits import METHODS

_DAY_H = 8.0
_OHM_PER_VOLT = {False: 100.0, True: 500.0}  # direct-voltage bus alone; alternating or combined buses
_MIN_PER_H = 60.0


@dataclass(frozen=True, kw_only=True)
class Hazard:
    """One hazard of a way of removal, with what is done about it.

    Parameters
    ----------
    method : str
        The method, or ``any`` [-]
    name : str
        What can hurt [-]
    control : str
        What is done about it [-]
    value : str
        Number that goes with it, or ``-`` [-]
    unit : str
        Unit of that number [-]
    conditions : str
        For what it holds [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> hazards_of("pull")[0].name
    'broken stud'
    """

    method: str
    name: str
    control: str
    value: str
    unit: str
    conditions: str
    source: str
    locator: str
    basis: str


HAZARDS_OF_REMOVAL = tuple(
    Hazard(
        method=require_choice("method", row.keys["method"], (*METHODS, "any")),
        name=row.name,
        control=row.keys["control"],
        value=row.value,
        unit=row.unit,
        conditions=row.conditions,
        source=row.source,
        locator=row.locator,
        basis=row.basis,
    )
    for row in tables.load("removal_hazards")
)


def hazards_of(method):
    """Return the hazards of a way of removal: its own first, then those of any.

    Parameters
    ----------
    method : str
        One of ``removal_limits.METHODS`` [-]

    Returns
    -------
    tuple of Hazard
        The hazards [-]

    Raises
    ------
    ValueError
        If the method is unknown.

    Notes
    -----
    Source: table removal_hazards, each row with its own source and basis.

    Examples
    --------
    >>> [hazard.name for hazard in hazards_of("grind")][:2]
    ['wheel that bursts', 'sparks and aluminium dust']
    """
    require_choice("method", method, METHODS)
    return tuple(
        hazard for wanted in (method, "any") for hazard in HAZARDS_OF_REMOVAL if hazard.method == wanted
    )


def isolation_needed_ohm(voltage_v, *, combined):
    """Return the isolation resistance that a high-voltage system must have: 100 or 500 ohm for each volt.

    Parameters
    ----------
    voltage_v : float or array
        Working voltage, 30 to 1500 [V]
    combined : bool
        Whether alternating voltage hangs on the bus as well [-]

    Returns
    -------
    float or numpy.ndarray
        Least isolation resistance [ohm]

    Raises
    ------
    ValueError
        If the voltage lies outside its range.

    Notes
    -----
    Source: un_r100. Measuring is for qualified persons; a good value does not make the system dead.

    Examples
    --------
    >>> isolation_needed_ohm(400, combined=False), isolation_needed_ohm(400, combined=True)
    (40000.0, 200000.0)
    """
    return plain(
        _OHM_PER_VOLT[bool(combined)]
        * np.asarray(require_between("working voltage", voltage_v, 30, 1500, unit="V"))
    )


def daily_vibration_m_s2(vibration_m_s2, *, time_h):
    """Return the vibration of a tool over a day of eight hours: ``A(8) = a sqrt(T / 8)``.

    Parameters
    ----------
    vibration_m_s2 : float or array
        Vibration a at the hand, 0 or more [m/s2]
    time_h : float or array
        Time T the tool runs, 0 to 24 [h]

    Returns
    -------
    float or numpy.ndarray
        Daily exposure [m/s2]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: directive_2002_44_ec: action from 2.5, never above 5.0 m/s2; from memory.

    Examples
    --------
    >>> daily_vibration_m_s2(5.0, time_h=2)
    2.5
    """
    vibration = require_at_least("vibration", vibration_m_s2, 0, unit="m/s2")
    return plain(vibration * np.sqrt(np.asarray(require_between("time", time_h, 0, 24, unit="h")) / _DAY_H))


def vibration_time_min(vibration_m_s2, *, daily_m_s2):
    """Return how long a tool may run until a daily exposure is reached: ``T = 8 h (A / a)^2``.

    Parameters
    ----------
    vibration_m_s2 : float or array
        Vibration a at the hand, above 0 [m/s2]
    daily_m_s2 : float or array
        Daily exposure A, above 0 [m/s2]

    Returns
    -------
    float or numpy.ndarray
        Time, more than a day where the tool is gentle [min]

    Raises
    ------
    ValueError
        If a value is not above 0.

    Notes
    -----
    Source: directive_2002_44_ec, from memory.

    Examples
    --------
    >>> round(vibration_time_min(7.5, daily_m_s2=2.5), 2)
    53.33
    """
    vibration = np.asarray(require_above("vibration", vibration_m_s2, 0, unit="m/s2"))
    daily = require_above("daily exposure", daily_m_s2, 0, unit="m/s2")
    return plain(_MIN_PER_H * _DAY_H * (daily / vibration) ** 2)


def dust_class(severity_bar_m_s):
    """Return the class of a dust by the severity of its explosion.

    Parameters
    ----------
    severity_bar_m_s : float
        Severity K_St, above 0 [bar m/s]

    Returns
    -------
    str
        ``St 1`` up to 200, ``St 2`` up to 300, ``St 3`` above [-]

    Raises
    ------
    ValueError
        If the severity is not above 0.

    Notes
    -----
    Source: dust_class_table. Any class explodes; fine aluminium is in the highest.

    Examples
    --------
    >>> dust_class(400), dust_class(100)
    ('St 3', 'St 1')
    """
    severity = require_above("severity", severity_bar_m_s, 0, unit="bar m/s")
    return "St 1" if severity <= 200 else "St 2" if severity <= 300 else "St 3"
