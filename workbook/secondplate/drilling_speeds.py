"""Cutting speeds and feeds of drills, as tables list them by metal and hardness, and where the tables end.

What no table lists is refused, never carried on from the last row: a rivet of 480 HV lies beyond every table
for high-speed steel. Tables are where to start from; the drill's own sheet and the vehicle maker come first.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_above, require_between, require_choice, require_single
from secondplate.drilling_depth import spindle_speed_rpm
from secondplate.tables import load
from secondplate.units import m_min_from_ft_min

_SPEEDS, _FEEDS = load("drill_speeds"), load("drill_feeds")
DRILL_KINDS = tuple(dict.fromkeys(row.name for row in _FEEDS))
SPEED_MATERIALS = tuple(dict.fromkeys(row.name for row in _SPEEDS))
HARDENED_STEEL = "hardened steel"
_NO_HARDNESS = "none"
_HBW_PER_HV = 0.95
_M_MIN_PER = {"ft/min": m_min_from_ft_min(1), "m/min": 1.0}


def _rows(work_material, drill):
    """Return the rows of one metal under one kind of drill, soft to hard."""
    require_choice("work material", work_material, SPEED_MATERIALS)
    require_choice("drill", drill, DRILL_KINDS)
    rows = [row for row in _SPEEDS if (row.name, row.keys["drill"]) == (work_material, drill)]
    if not rows:
        listed = ", ".join(dict.fromkeys(row.keys["drill"] for row in _SPEEDS if row.name == work_material))
        message = f"drill for {work_material} must be one that tables list ({listed}), got {drill!r}"
        raise ValueError(message)
    return rows


def _row_numbers(rows, work_material, drill, hardness_hbw):
    """Return which row a hardness belongs to; between two rows the harder one counts."""
    if rows[0].keys["low_hbw"] == _NO_HARDNESS:
        if hardness_hbw is not None:
            message = (
                f"hardness of {work_material} must be left out, its rows have none, got {hardness_hbw!r}"
            )
            raise ValueError(message)
        return 0
    lowest = float(rows[0].keys["low_hbw"])
    highest = [float(row.keys["high_hbw"]) for row in rows]
    name = f"hardness of {work_material} for {drill}"
    hardness = require_between(name, hardness_hbw, lowest, highest[-1], unit="HBW")
    return np.searchsorted(highest, hardness)


def _ends(rows, number):
    """Return low, best and high of the rows in metres a minute."""
    speeds = np.array([[float(row.keys["low"]), row.number, float(row.keys["high"])] for row in rows])
    factors = np.array([_M_MIN_PER[row.unit] for row in rows])
    return [plain((column * factors)[number]) for column in speeds.T]


def table_speed_m_min(*, work_material, drill, hardness_hbw=None):
    """Return the cutting speed that tables list for a metal, its hardness and a kind of drill.

    Parameters
    ----------
    work_material : str
        One of ``SPEED_MATERIALS`` [-]
    drill : str
        One of ``DRILL_KINDS`` [-]
    hardness_hbw : float, array or None
        Brinell hardness inside the rows of the table; left out for aluminium, whose rows have none [HBW]

    Returns
    -------
    Band
        Cutting speed; where the table has one number, all three are that number [m/min]

    Raises
    ------
    ValueError
        If the hardness lies beyond the table, the metal is not listed for this drill, or a name is unknown.

    Notes
    -----
    Source: drill_speed_tables. Between two rows the harder one counts. Nothing is read beyond the last row.

    Examples
    --------
    >>> table_speed_m_min(work_material="hardened steel", drill="solid carbide", hardness_hbw=456).best
    30.0
    >>> table_speed_m_min(work_material="hardened steel", drill="high-speed steel", hardness_hbw=456)
    Traceback (most recent call last):
    ValueError: hardness of hardened steel for high-speed steel must be ... 375 HBW and 425 HBW, got 456 HBW
    """
    rows = _rows(work_material, drill)
    number = _row_numbers(rows, work_material, drill, hardness_hbw)
    low, best, high = _ends(rows, number)
    return Band(low=low, best=best, high=high, basis=f"{rows[0].basis}: {rows[0].source}, {rows[0].locator}")


def table_covers(*, drill, hardness_hv):
    """Tell whether a table lists hardened steel of a hardness for a kind of drill.

    Parameters
    ----------
    drill : str
        One of ``DRILL_KINDS`` [-]
    hardness_hv : float or array
        Vickers hardness, 200 to 700 [HV]

    Returns
    -------
    bool or array of bool
        Whether a row holds it; HBW is taken as 0.95 HV [-]

    Raises
    ------
    ValueError
        If the hardness lies outside its range or the drill is unknown.

    Notes
    -----
    Source: drill_speed_tables for the rows, iso_18265 for 0.95.

    Examples
    --------
    >>> table_covers(drill="high-speed steel", hardness_hv=480)
    False
    """
    rows = _rows(HARDENED_STEEL, drill)
    hbw = _HBW_PER_HV * np.asarray(require_between("hardness", hardness_hv, 200, 700, unit="HV"))
    held = (hbw >= float(rows[0].keys["low_hbw"])) & (hbw <= float(rows[-1].keys["high_hbw"]))
    return bool(held) if held.ndim == 0 else held


def covering_tables(hardness_hv):
    """Return the kinds of drill whose tables list hardened steel of a hardness; none is an answer.

    Parameters
    ----------
    hardness_hv : float
        Vickers hardness, 200 to 700 [HV]

    Returns
    -------
    tuple of str
        Some of ``DRILL_KINDS``, empty where no table lists it [-]

    Raises
    ------
    ValueError
        If the hardness lies outside its range.

    Notes
    -----
    Source: drill_speed_tables. Steel softer than the rows held here has tables elsewhere.

    Examples
    --------
    >>> covering_tables(420), covering_tables(480), covering_tables(555)
    (('high-speed steel', 'solid carbide'), ('cobalt steel', 'solid carbide'), ())
    """
    hardness = require_single("hardness", hardness_hv, unit="HV")
    return tuple(drill for drill in DRILL_KINDS if table_covers(drill=drill, hardness_hv=hardness))


def table_feed_mm_rev(*, drill, drill_diameter_mm):
    """Return the feed that tables list for a kind of drill and its diameter.

    Parameters
    ----------
    drill : str
        One of ``DRILL_KINDS`` [-]
    drill_diameter_mm : float or array
        Diameter of the drill, above 0 up to 12.7 [mm]

    Returns
    -------
    Band
        Feed for a turn, best in the middle [mm/rev]

    Raises
    ------
    ValueError
        If the diameter lies beyond the table or the drill is unknown.

    Notes
    -----
    Source: drill_speed_tables; cobalt steel and solid carbide from memory.

    Examples
    --------
    >>> feed = table_feed_mm_rev(drill="high-speed steel", drill_diameter_mm=6.4)
    >>> feed.low, feed.high
    (0.05, 0.15)
    """
    rows = [row for row in _FEEDS if row.name == require_choice("drill", drill, DRILL_KINDS)]
    up_to = [float(row.keys["up_to_mm"]) for row in rows]
    diameter = require_above("drill diameter", drill_diameter_mm, 0, unit="mm")
    number = np.searchsorted(up_to, require_between("drill diameter", diameter, 0, up_to[-1], unit="mm"))
    ends = np.array([[float(row.keys["low"]), row.number, float(row.keys["high"])] for row in rows])
    low, best, high = (plain(column[number]) for column in ends.T)
    return Band(low=low, best=best, high=high, basis=f"{rows[0].basis}: {rows[0].source}, {rows[0].locator}")


@dataclass(frozen=True, kw_only=True)
class TableSetting:
    """What the tables list for one drill: where to start from.

    Parameters
    ----------
    cutting_speed_m_min : Band
        Cutting speed at the rim [m/min]
    spindle_speed_rpm : Band
        Turns of the drill in a minute at that speed [1/min]
    feed_mm_rev : Band
        Feed for a turn [mm/rev]

    Examples
    --------
    >>> setting = table_setting(work_material="aged aluminium", drill="high-speed steel",
    ...                         drill_diameter_mm=6.5)
    >>> round(setting.spindle_speed_rpm.best)
    5224
    """

    cutting_speed_m_min: Band
    spindle_speed_rpm: Band
    feed_mm_rev: Band


def table_setting(*, work_material, drill, drill_diameter_mm, hardness_hbw=None):
    """Return speed, turns and feed that tables list for a metal and a drill.

    Parameters
    ----------
    work_material : str
        One of ``SPEED_MATERIALS`` [-]
    drill : str
        One of ``DRILL_KINDS`` [-]
    drill_diameter_mm : float or array
        Diameter of the drill, above 0 up to 12.7 [mm]
    hardness_hbw : float, array or None
        Brinell hardness inside the rows of the table; left out for aluminium, whose rows have none [HBW]

    Returns
    -------
    TableSetting
        Three bands [-]

    Raises
    ------
    ValueError
        If a value lies beyond its table or a name is unknown.

    Notes
    -----
    Source: drill_speed_tables, machining_textbook for the turns.

    Examples
    --------
    >>> setting = table_setting(work_material="hardened steel", drill="cobalt steel", drill_diameter_mm=6.5,
    ...                         hardness_hbw=456)
    >>> round(setting.spindle_speed_rpm.low), round(setting.spindle_speed_rpm.high)
    (196, 392)
    """
    speed = table_speed_m_min(work_material=work_material, drill=drill, hardness_hbw=hardness_hbw)
    feed = table_feed_mm_rev(drill=drill, drill_diameter_mm=drill_diameter_mm)
    turns = {
        end: spindle_speed_rpm(cutting_speed_m_min=getattr(speed, end), drill_diameter_mm=drill_diameter_mm)
        for end in ("low", "best", "high")
    }
    return TableSetting(
        cutting_speed_m_min=speed, spindle_speed_rpm=Band(**turns, basis=speed.basis), feed_mm_rev=feed
    )
