"""Process window of a stud weld on a rivet head: cold, sound, hot or burnt through, by current and time.

The depth of the melt decides; depth limits are our own judgement, given as bands, because no measured depth
of a short-cycle weld is known. It leaves out lift, protrusion, gas and arc blow.
"""

from dataclasses import dataclass
from types import MappingProxyType

import numpy as np

from secondplate import tables
from secondplate.arc_heat import heat_flux_w_mm2, voltage_band_v
from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_at_least, require_between, require_choice
from secondplate.heat.melt_map import (
    FLUX_LIMITS_W_MM2,
    TIME_LIMITS_MS,
    melted_depth_mm,
)
from secondplate.weld_charts import short_cycle_row
from secondplate.weld_rules import gathered

__all__ = [
    "CURRENT_LIMITS_A",
    "LIMITS",
    "PULL_STUD",
    "STATES",
    "TIME_LIMITS_MS",
    "ChartPoint",
    "ProcessWindow",
    "boundary_current_a",
    "chart_points",
    "process_window",
    "state_of_melt",
]

STATES = ("cold", "sound", "hot", "burnt through")
CURRENT_LIMITS_A = (50.0, 1500.0)
PULL_STUD = MappingProxyType({"stud_material": "austenitic stainless", "base": "steel rivet head"})


# What parts the states.
LIMITS = tables.bands("process_window", cited=False)


@dataclass(frozen=True, kw_only=True)
class ProcessWindow:
    """What becomes of the head over a field of currents and times.

    Parameters
    ----------
    current_a : float or array
        Weld current, as given [A]
    time_ms : float or array
        Weld time, as given [ms]
    melted_depth_mm : Band
        Melted depth of the head by the band of the heat share [mm]
    web_left_mm : Band
        Solid web under the melt by the same [mm]
    state : array of str
        One of ``STATES`` for the best depth and the best limits [-]
    doubtful : bool or array
        Whether the state changes somewhere within the bands of the limits [-]

    Examples
    --------
    >>> window = process_window(stud_diameter_mm=6, web_mm=1.1, current_a=600, time_ms=30)
    >>> str(window.state)
    'sound'
    """

    current_a: float
    time_ms: float
    melted_depth_mm: Band
    web_left_mm: Band
    state: np.ndarray
    doubtful: np.ndarray


def state_of_melt(melted_depth_mm, web_left_mm, *, cold="best", hot="best", least="best"):
    """Return the state of a weld as the index into ``STATES``.

    Parameters
    ----------
    melted_depth_mm : float or array
        Melted depth of the head, at least 0 [mm]
    web_left_mm : float or array
        Solid web under the melt, at least 0 [mm]
    cold : str
        Which value of the cold limit holds: low, best or high [-]
    hot : str
        Which value of the hot limit holds [-]
    least : str
        Which value of the least web holds [-]

    Returns
    -------
    int array
        Index into ``STATES`` [-]

    Raises
    ------
    ValueError
        If an argument is out of its range or list.

    Notes
    -----
    Source: table process_window.

    Examples
    --------
    >>> STATES[int(state_of_melt(0.1, 1.0))]
    'cold'
    """
    depth = require_at_least("melted depth", melted_depth_mm, 0, unit="mm")
    web = require_at_least("web left", web_left_mm, 0, unit="mm")
    ends = {"cold limit": cold, "hot limit": hot, "least web": least}
    limit = {
        name: getattr(LIMITS[name], require_choice(name, end, ("low", "best", "high")))
        for name, end in ends.items()
    }
    hotter = (depth > limit["hot limit"]) | (web < limit["least web"])
    return np.select([web <= 0, hotter, depth >= limit["cold limit"]], [3, 2, 1], default=0)


def process_window(*, stud_diameter_mm, web_mm, current_a, time_ms, voltage_v=None):
    """Map currents and times to cold, sound, hot and burnt through, with the doubtful fringe.

    Parameters
    ----------
    stud_diameter_mm : float
        Stud diameter, one of 3, 4, 5 and 6 mm [mm]
    web_mm : float or array
        Thickness of the web of the head, 0.3 to 3 mm [mm]
    current_a : float or array
        Weld current in the arc, 50 to 1500 A [A]
    time_ms : float or array
        Weld time, 2 to 200 ms [ms]
    voltage_v : float or array or None
        Arc voltage; the best of its band where None [V]

    Returns
    -------
    ProcessWindow
        Depth, state and fringe in the common shape [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Sources: table process_window; ``arc_heat`` for the heat, ``heat.melt_map`` for the melt;
    stud_manual_short_cycle page 39 for the flange.

    Examples
    --------
    >>> import numpy as np
    >>> currents = np.array([300, 600, 1100])
    >>> window = process_window(stud_diameter_mm=6, web_mm=1.1, current_a=currents, time_ms=30)
    >>> window.state.tolist()
    ['cold', 'sound', 'hot']
    """
    flange = short_cycle_row(stud_diameter_mm).flange_diameter_mm
    current = require_between("current", current_a, *CURRENT_LIMITS_A, unit="A")
    voltage = voltage_band_v().best if voltage_v is None else voltage_v
    flux = heat_flux_w_mm2(voltage_v=voltage, current_a=current, face_diameter_mm=flange)
    low, best, high = (
        melted_depth_mm(heat_flux_w_mm2=each, time_ms=time_ms, web_mm=web_mm)
        for each in (flux.low, flux.best, flux.high)
    )
    depth_mm, web_left_mm = _rising(low[0], best[0], high[0]), _rising(high[2], best[2], low[2])
    index = state_of_melt(best[0], best[2])
    return ProcessWindow(
        current_a=current,
        time_ms=time_ms,
        melted_depth_mm=depth_mm,
        web_left_mm=web_left_mm,
        state=np.array(STATES)[index],
        doubtful=_doubtful(best[0], best[2], index),
    )


def _rising(low, best, high):
    """Make a band of three depths; the last figure of an interpolation must not turn their order."""
    return Band(
        low=plain(np.minimum(low, best)),
        best=best,
        high=plain(np.maximum(best, high)),
        basis="derived: heat flux by the band of the heat share",
    )


def _doubtful(depth_mm, web_left_mm, index):
    """Tell where the narrowest and the widest limits would not give the same state as the best ones."""
    wide = state_of_melt(depth_mm, web_left_mm, cold="low", hot="high", least="low")
    narrow = state_of_melt(depth_mm, web_left_mm, cold="high", hot="low", least="high")
    doubt = (wide != index) | (narrow != index)
    return doubt if doubt.ndim else bool(doubt)


@dataclass(frozen=True, kw_only=True)
class ChartPoint:
    """Current and time that belong together on one chart.

    Parameters
    ----------
    rule : str
        The chart in a few words [-]
    process : str
        Process of the chart [-]
    current_a : float
        Current for a stainless stud [A]
    time_ms : float
        Weld time as charted [ms]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> chart_points(6)[1].current_a
    600.0
    """

    rule: str
    process: str
    current_a: float
    time_ms: float
    source: str
    locator: str
    basis: str


def chart_points(stud_diameter_mm):
    """Return the pairs of current and time that charts and shops give for a pull stud, to place on the map.

    The energy that a stainless stud wants less is taken off the current, never off the time as well.

    Parameters
    ----------
    stud_diameter_mm : float
        Stud diameter, one of 3, 4, 5 and 6 mm [mm]

    Returns
    -------
    tuple of ChartPoint
        Short cycle first, then the drawn arc with gas [-]

    Raises
    ------
    ValueError
        If the diameter is not in the chart.

    Notes
    -----
    Source: table stud_weld_rules, each row with its own. The drawn-arc chart is for thick base: on the thin
    web of a rivet head it melts far too deep.

    Examples
    --------
    >>> [(point.rule, point.current_a, point.time_ms) for point in chart_points(4)][0]
    ('short-cycle chart, M4', 540.0, 15.0)
    """
    short_cycle_row(stud_diameter_mm)  # refuses what is in no chart
    plain_stud = {**PULL_STUD, "stud_material": "carbon steel"}
    points = {}
    for process in ("short cycle", "drawn arc with gas"):
        times = [
            rule
            for names in (PULL_STUD, plain_stud)
            for rule in _rules("time", stud_diameter_mm, process, names)
        ]
        for current in _rules("current", stud_diameter_mm, process, PULL_STUD):
            # Later times overwrite earlier ones of the same name: the plain stud's is the time as charted.
            points |= {
                time.rule: ChartPoint(
                    rule=time.rule,
                    process=points[time.rule].process if time.rule in points else process,
                    current_a=current.band.best,
                    time_ms=time.band.best,
                    source=current.source,
                    locator=current.locator,
                    basis=time.basis,
                )
                for time in times
                if time.rule.startswith(current.rule)
            }
    return tuple(points.values())


def _rules(quantity, stud_diameter_mm, process, names):
    """Gather the rules of one quantity."""
    return gathered(quantity, stud_diameter_mm, process=process, **names)


def boundary_current_a(state, *, stud_diameter_mm, web_mm, time_ms, voltage_v=None):
    """Return the least current that brings the head to a state: a line of the map, doubt on the heat told.

    Parameters
    ----------
    state : str
        One of ``STATES`` but the first [-]
    stud_diameter_mm : float
        Stud diameter, one of 3, 4, 5 and 6 mm [mm]
    web_mm : float or array
        Thickness of the web, 0.3 to 3 mm [mm]
    time_ms : float or array
        Weld time, 2 to 200 ms [ms]
    voltage_v : float or array or None
        Arc voltage; the best of its band where None [V]

    Returns
    -------
    Band
        Current: low where most of the heat reaches the head, high where least does; that of 2000 W/mm2 where
        the state is not reached by then [A]

    Raises
    ------
    ValueError
        If an argument is out of its range or list.

    Notes
    -----
    Found by halving the heat flux. Source: ``heat.melt_map``; limits from table process_window.

    Examples
    --------
    >>> band = boundary_current_a("sound", stud_diameter_mm=6, web_mm=1.1, time_ms=30)
    >>> band.low < band.best < band.high
    True
    """
    level = STATES.index(require_choice("state", state, STATES[1:]))
    shape = np.broadcast_shapes(np.shape(web_mm), np.shape(time_ms))
    low, high = np.zeros(shape), np.full(shape, FLUX_LIMITS_W_MM2[1])
    for _ in range(40):
        middle = (low + high) / 2
        depth, _, web_left = melted_depth_mm(heat_flux_w_mm2=middle, time_ms=time_ms, web_mm=web_mm)
        reached = state_of_melt(depth, web_left) >= level
        low, high = np.where(reached, low, middle), np.where(reached, middle, high)
    of_one_ampere = heat_flux_w_mm2(
        voltage_v=voltage_band_v().best if voltage_v is None else voltage_v,
        current_a=1.0,
        face_diameter_mm=short_cycle_row(stud_diameter_mm).flange_diameter_mm,
    )
    ends = {
        "low": of_one_ampere.high,
        "best": of_one_ampere.best,
        "high": of_one_ampere.low,
    }
    return Band(
        **{end: plain(high / each) for end, each in ends.items()},
        basis="derived: band of the heat share",
    )
