"""Processes of stud welding with their printed limits, the drawn-arc rule and the short-cycle chart."""

from dataclasses import dataclass

import numpy as np

from secondplate import tables
from secondplate.arrays import plain
from secondplate.checks import require_between, require_choice, require_finite
from secondplate.weld_rules import band_of, rule_rows

PROCESSES = ("drawn arc with gas", "drawn arc with ferrule", "short cycle")


@dataclass(frozen=True, kw_only=True)
class Process:
    """Limits of a process as printed.

    Parameters
    ----------
    name : str
        One of ``PROCESSES`` [-]
    number : int
        Reference number of ISO 4063 [-]
    smallest_diameter_mm : float
        Smallest stud [mm]
    largest_diameter_mm : float
        Largest stud [mm]
    greatest_current_a : float
        Greatest weld current [A]
    shortest_time_ms : float
        Shortest weld time [ms]
    longest_time_ms : float
        Longest weld time [ms]

    Examples
    --------
    >>> process_limits("short cycle").longest_time_ms
    100.0
    """

    name: str
    number: int
    smallest_diameter_mm: float
    largest_diameter_mm: float
    greatest_current_a: float
    shortest_time_ms: float
    longest_time_ms: float


@dataclass(frozen=True, kw_only=True)
class ShortCycleRow:
    """One line of the short-cycle chart, for plain steel studs with a flange.

    Parameters
    ----------
    thread : str
        Thread, for instance ``M6`` [-]
    stud_diameter_mm : float
        Stud diameter [mm]
    flange_diameter_mm : float
        Flange diameter [mm]
    current_a : float
        Weld current as printed [A]
    time_ms : float
        Weld time as printed [ms]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge [-]

    Examples
    --------
    >>> short_cycle_row(6).current_a
    800.0
    """

    thread: str
    stud_diameter_mm: float
    flange_diameter_mm: float
    current_a: float
    time_ms: float
    source: str
    locator: str
    basis: str


def process_limits(process):
    """Return the limits of a process as printed.

    Parameters
    ----------
    process : str
        One of ``PROCESSES`` [-]

    Returns
    -------
    Process
        Its limits [-]

    Raises
    ------
    ValueError
        If the process is not in the list.

    Notes
    -----
    Sources: stud_manual_process page 24; numbers of iso_4063 from memory. stud_manual_inspection page 4 ends
    the drawn arc at 1000 ms. Charts go below the shortest time for the smallest studs.

    Examples
    --------
    >>> process_limits("short cycle").number
    784
    """
    require_choice("process", process, PROCESSES)
    rows = tables.load("stud_weld_processes")
    of = {row.name: row.number for row in rows if row.keys["process"] == process}
    return Process(
        name=process,
        number=int(of["process number"]),
        smallest_diameter_mm=of["smallest diameter"],
        largest_diameter_mm=of["largest diameter"],
        greatest_current_a=of["greatest current"],
        shortest_time_ms=of["shortest time"],
        longest_time_ms=of["longest time"],
    )


def _line_rule(quantity, stud_diameter_mm):
    """Work out the drawn-arc rule for numbers and arrays alike."""
    diameter = require_between("stud diameter", stud_diameter_mm, 3, 25, unit="mm")
    values = np.zeros_like(np.asarray(diameter))
    for row in rule_rows(quantity, name="drawn arc rule"):
        above, up_to = float(row.keys["above_mm"]), float(row.keys["up_to_mm"])
        values = np.where((diameter > above) & (diameter <= up_to), row.number * np.asarray(diameter), values)
    return plain(values)


def rule_current_a(stud_diameter_mm):
    """Return the current of the drawn-arc rule, 80 d, and 90 d above 16 mm.

    Parameters
    ----------
    stud_diameter_mm : float or array
        Stud diameter d, 3 to 25 mm [mm]

    Returns
    -------
    float or array
        Current, in the shape of the diameter [A]

    Raises
    ------
    ValueError
        If the diameter is out of its range.

    Notes
    -----
    For unalloyed steel in the flat position.
    Sources: stud_manual_process page 24 up to 16 mm; iso_14555 Annex A above, from memory. The chart of
    stud_manual_gas page 40 lies 0 to 6 % above it.

    Examples
    --------
    >>> rule_current_a(6)
    480.0
    """
    return _line_rule("current", stud_diameter_mm)


def rule_time_ms(stud_diameter_mm):
    """Return the time of the drawn-arc rule, 20 d, and 40 d above 12 mm, in milliseconds.

    Parameters
    ----------
    stud_diameter_mm : float or array
        Stud diameter d, 3 to 25 mm [mm]

    Returns
    -------
    float or array
        Time, in the shape of the diameter [ms]

    Raises
    ------
    ValueError
        If the diameter is out of its range.

    Notes
    -----
    For unalloyed steel in the flat position.
    Sources: stud_manual_process page 24 up to 12 mm; iso_14555 Annex A above, from memory. Compared with
    stud_manual_gas page 40.

    Examples
    --------
    >>> rule_time_ms(6)
    120.0
    """
    return _line_rule("time", stud_diameter_mm)


def stainless_energy_factor():
    """Return what a stainless stud needs of the energy charted for a plain one.

    Returns
    -------
    Band
        Factor, about 0.9 [-]

    Notes
    -----
    Take it off the current or off the time, not off both.
    Source: stud_manual_short_cycle page 39 footnote 2.

    Examples
    --------
    >>> stainless_energy_factor().best
    0.9
    """
    return band_of(rule_rows("stainless energy factor")[0], 0.0)


def _charted_mm(row):
    """Return the one diameter that a chart row is printed for, the middle of its narrow range."""
    return round((float(row.keys["above_mm"]) + float(row.keys["up_to_mm"])) / 2, 3)


def short_cycle_row(stud_diameter_mm):
    """Return one line of the short-cycle chart for plain steel studs with a flange.

    Parameters
    ----------
    stud_diameter_mm : float
        Stud diameter, one of 3, 4, 5 and 6 mm [mm]

    Returns
    -------
    ShortCycleRow
        Flange, current and time as printed; take about 10 % energy off for A2 studs [-]

    Raises
    ------
    ValueError
        If the diameter is not in the chart.

    Notes
    -----
    Source: stud_manual_short_cycle page 39.

    Examples
    --------
    >>> short_cycle_row(4).flange_diameter_mm
    5.0
    """
    diameter = require_finite("stud diameter", stud_diameter_mm, unit="mm")
    charted = {_charted_mm(row): row for row in rule_rows("flange", name="short-cycle chart")}
    if diameter not in charted:
        sizes = ", ".join(f"{size:g}" for size in charted)
        message = f"stud diameter must be one of {sizes} mm, got {diameter:g} mm"
        raise ValueError(message)
    flange = charted[diameter]
    current, time = (
        next(row for row in rule_rows(quantity, name="short-cycle chart") if _charted_mm(row) == diameter)
        for quantity in ("current", "time")
    )
    return ShortCycleRow(
        thread=f"M{diameter:g}",
        stud_diameter_mm=diameter,
        flange_diameter_mm=flange.number,
        current_a=current.number,
        time_ms=time.number,
        source=flange.source,
        locator=flange.locator,
        basis=flange.basis,
    )
