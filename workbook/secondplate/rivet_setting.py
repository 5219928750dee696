"""Setting a rivet: its four stages, the shape of the force over the stroke, and trends from one set of rows.

The trends come from joints with a polymer top sheet: their signs carry over to metal, their numbers do not.
Leaves out speed, friction and the elastic frame of the setting tool.
"""

from dataclasses import dataclass

import numpy as np

from secondplate import tables
from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_between, require_choice
from secondplate.rivet import volume_ratio

CAUTION = "polymer top sheet on AA6082: the sign carries over to metal sheets, the number does not"
# Range of the rows: sizes seen; the bore is about the 3.3 mm of the drawing, its range was not seen.
_RANGES = {
    "rivet_length": ("rivet length", 4.0, 5.0),
    "bore_diameter": ("bore diameter", 2.9, 3.7),
    "die_diameter": ("die diameter", 7.56, 9.98),
    "die_depth": ("die depth", 0.70, 1.04),
}
_RATIO = (0.53, 1.37)
_OF_UNIT = {"kN": ("N", 1000.0), "mm": ("mm", 1.0)}  # unit and factor of what is returned
_ENDS = ("low", "best", "high")
_SHANK_MM, _WEB_MM = (5.2, 5.4), (1.0, 1.2)


@dataclass(frozen=True, kw_only=True)
class SettingStage:
    """One stage of setting a rivet.

    Parameters
    ----------
    name : str
        Name of the stage [-]
    happens : str
        What happens in it [-]
    stroke_from : float
        Share of the stroke at which it begins [-]
    stroke_to : float
        Share of the stroke at which it ends [-]
    force_at_end : Band
        Force at its end over the peak force [-]
    source : str
        Id in the bibliography [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> [stage.name for stage in SETTING_STAGES]
    ['clamp', 'pierce', 'flare', 'seat']
    """

    name: str
    happens: str
    stroke_from: float
    stroke_to: float
    force_at_end: Band
    source: str
    basis: str


def _stages():
    """Read the stages in their order."""
    rows = sorted(tables.load("rivet_stages"), key=lambda row: row.number)
    return tuple(
        SettingStage(
            name=row.name,
            happens=row.keys["happens"],
            stroke_from=float(row.keys["stroke_from"]),
            stroke_to=float(row.keys["stroke_to"]),
            force_at_end=Band(
                low=float(row.keys["force_low"]),
                best=float(row.keys["force_best"]),
                high=float(row.keys["force_high"]),
                basis="shape of usual curves, from memory",
            ),
            source=row.source,
            basis=row.basis,
        )
        for row in rows
    )


SETTING_STAGES = _stages()


def setting_force_share(stroke_share):
    """Return the force over the peak force along the stroke: the shape of the curve, as a band.

    Parameters
    ----------
    stroke_share : float or array
        Share of the stroke, 0 at the first touch to 1 with the head seated [-]

    Returns
    -------
    Band
        Force over its peak, 0 to 1 [-]

    Raises
    ------
    ValueError
        If a share lies outside 0 to 1.

    Notes
    -----
    Source: rivet_literature, from memory: slow rise, piercing, flaring, steep rise to the peak. A curve
    that never falls (monotone cubics) through the ends of the stages. Real curves may dip after piercing.

    Examples
    --------
    >>> setting_force_share(1.0).best
    1.0
    """
    share = require_between("share of the stroke", stroke_share, 0, 1, unit="")
    from scipy.interpolate import (
        PchipInterpolator,
    )  # here, so that a page without this curve does not load it

    strokes = [0.0, *(stage.stroke_to for stage in SETTING_STAGES)]
    bands = [stage.force_at_end for stage in SETTING_STAGES]
    forces = {end: [0.0, *(getattr(band, end) for band in bands)] for end in _ENDS}
    low, best, high = (plain(PchipInterpolator(strokes, forces[end])(share)) for end in _ENDS)
    return Band(low=low, best=best, high=high, basis="shape only, from memory")


def setting_stage(stroke_share):
    """Return the stage that a share of the stroke falls in.

    Parameters
    ----------
    stroke_share : float
        Share of the stroke, 0 to 1 [-]

    Returns
    -------
    SettingStage
        The stage; at a border the one that ends there [-]

    Raises
    ------
    ValueError
        If the share lies outside 0 to 1.

    Notes
    -----
    Source: rivet_literature, from memory.

    Examples
    --------
    >>> setting_stage(0.3).name
    'pierce'
    """
    share = require_between("share of the stroke", stroke_share, 0, 1, unit="")
    return next(stage for stage in SETTING_STAGES if share <= stage.stroke_to)


@dataclass(frozen=True, kw_only=True)
class Trend:
    """What a regression gives for one joint, with what it rests on.

    Parameters
    ----------
    name : str
        Name of the regression [-]
    quantity : str
        What it is for [-]
    band : Band
        Value with its own error either way, in ``unit`` [-]
    unit : str
        N or mm [-]
    signs : tuple of tuple
        Each size with ``rises`` or ``falls``: how the quantity goes when that size grows [-]
    caution : str
        For what it does not hold [-]

    Examples
    --------
    >>> from secondplate.rivet import Die, Rivet
    >>> die = Die(die_diameter_mm=8.5, die_depth_mm=0.9)
    >>> polymer_trends("interlock", Rivet(rivet_length_mm=4.5), die)[0].signs[0]
    ('rivet length', 'rises')
    """

    name: str
    quantity: str
    band: Band
    unit: str
    signs: tuple
    caution: str


TREND_QUANTITIES = tuple(dict.fromkeys(row.keys["quantity"] for row in tables.load("rivet_trends")))


def polymer_trends(quantity, rivet, die):
    """Return what the regressions on 116 rows with a polymer top sheet give for a joint of 2 + 2 mm.

    Linear: y = c + sum of k x; power: y = c times the product of x^k; over rivet length, bore, die diameter,
    die depth, or the volume ratio alone.

    Parameters
    ----------
    quantity : str
        One of ``TREND_QUANTITIES`` [-]
    rivet : Rivet
        Rivet of the 5.3 mm class with a web of 1.1 mm, 4 to 5 mm long [-]
    die : Die
        Flat die, 7.56 to 9.98 mm wide and 0.7 to 1.04 mm deep [-]

    Returns
    -------
    tuple of Trend
        The regressions side by side, each with its error and the caution that only the signs carry over [-]

    Raises
    ------
    ValueError
        If a size lies outside the range of the rows.

    Notes
    -----
    Source: rivet_polymer_rows; regressions made here, errors by leaving one row out. Sheet thickness and
    shank were inferred from a drawing; whether the rows are tests or simulations was not said.

    Examples
    --------
    >>> from secondplate.rivet import Die, Rivet
    >>> rivet, die = Rivet(rivet_length_mm=4.5), Die(die_diameter_mm=8.5, die_depth_mm=0.9)
    >>> [round(trend.band.best / 1000, 1) for trend in polymer_trends("setting force", rivet, die)]
    [49.2, 49.8]
    """
    require_choice("quantity", quantity, TREND_QUANTITIES)
    sizes = {
        "rivet_length": rivet.rivet_length_mm,
        "bore_diameter": rivet.bore_diameter_mm,
        "die_diameter": die.die_diameter_mm,
        "die_depth": die.die_depth_mm,
    }
    for name, (words, low, high) in _RANGES.items():
        require_between(f"{words} for this trend", sizes[name], low, high, unit="mm")
    require_between("shank diameter for this trend", rivet.shank_diameter_mm, *_SHANK_MM, unit="mm")
    require_between("web for this trend", rivet.web_mm, *_WEB_MM, unit="mm")
    require_between("die tip for this trend", die.die_tip_mm, 0, 0, unit="mm")
    ratio = require_between("volume ratio for this trend", volume_ratio(rivet, die), *_RATIO, unit="")
    sizes["volume_ratio"] = ratio
    return tuple(
        _trend(row, sizes) for row in tables.load("rivet_trends") if row.keys["quantity"] == quantity
    )


def _trend(row, sizes):
    """Work out one regression."""
    slopes = {name: float(row.keys[name]) for name in sizes if float(row.keys[name])}
    if row.keys["form"] == "linear":
        best = row.number + sum(slope * sizes[name] for name, slope in slopes.items())
    else:
        best = row.number * np.prod([sizes[name] ** slope for name, slope in slopes.items()], axis=0)
    best = best * _OF_UNIT[row.unit][1]
    error = float(row.keys["error_percent"]) / 100
    width = error * np.abs(best)
    signs = tuple(
        (name.replace("_", " "), "rises" if slope > 0 else "falls") for name, slope in slopes.items()
    )
    return Trend(
        name=row.name,
        quantity=row.keys["quantity"],
        band=Band(low=plain(best - width), best=plain(best), high=plain(best + width), basis=CAUTION),
        unit=_OF_UNIT[row.unit][0],
        signs=signs,
        caution=CAUTION,
    )


def head_pressure_mpa(*, force_n, head_diameter_mm):
    """Return the mean pressure on the rivet head at a setting force: p = F / (pi/4 d^2).

    Parameters
    ----------
    force_n : float or array
        Setting force, 1000 to 200 000 [N]
    head_diameter_mm : float or array
        Diameter of the head, 3 to 12 [mm]

    Returns
    -------
    float or numpy.ndarray
        Pressure [MPa]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    The rows of rivet_polymer_rows had 938 MPa at their peak, with a scatter of 151 MPa.

    Examples
    --------
    >>> round(head_pressure_mpa(force_n=44200, head_diameter_mm=7.75))
    937
    """
    force = require_between("setting force", force_n, 1e3, 2e5, unit="N")
    head = require_between("head diameter", head_diameter_mm, 3, 12, unit="mm")
    return plain(np.asarray(force) / (np.pi / 4 * np.asarray(head) ** 2))
