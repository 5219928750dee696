"""Process window of a stud weld on a rivet head: cold, sound, hot or burnt through, by current and time.

The depth of the melt decides; depth limits are our own judgement, given as bands, because no measured depth
of a short-cycle weld is known. It leaves out lift, protrusion, gas and arc blow.
"""

from dataclasses import dataclass
from types import MappingProxyType

import numpy as np

from secondplate import tables
from secondplate.arc import melting_start_ms
from secondplate.arc_heat import heat_flux_w_mm2, voltage_band_v
from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_above, require_at_least, require_between
from secondplate.materials import material
from secondplate.weld_charts import short_cycle_row
from secondplate.weld_rules import gathered

STATES = ("cold", "sound", "hot", "burnt through")
CURRENT_LIMITS_A = (50.0, 1500.0)
TIME_LIMITS_MS = (2.0, 200.0)
WEB_LIMITS_MM = (0.3, 3.0)
PULL_STUD = MappingProxyType({"stud_material": "austenitic stainless", "base": "steel rivet head"})


def _limit_bands():
    """Read the limits that part the states."""
    bands = {}
    for row in tables.load("process_window"):
        basis = f"{row.basis}: {row.conditions}"
        low, high = float(row.keys["low"]), float(row.keys["high"])
        bands[row.name] = Band(low=low, best=row.number, high=high, basis=basis)
    return bands


LIMITS = _limit_bands()


def head_melted_depth_mm(*, heat_flux_w_mm2, time_ms, web_mm):
    """Return how deep the head melts under a constant heat flux, never deeper than its web.

    Parameters
    ----------
    heat_flux_w_mm2 : float or array
        Heat flux into the face, 0 to 2000 W/mm2 [W/mm2]
    time_ms : float or array
        Weld time, 2 to 200 ms [ms]
    web_mm : float or array
        Thickness of the web under the face, 0.3 to 3 mm [mm]

    Returns
    -------
    float or array
        Melted depth, in the common shape [mm]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Estimate: the energy bound less the part that runs off, 1 - sqrt(t_m / t).
    Source: carslaw_jaeger section 2.9 for the time to melting.

    Examples
    --------
    >>> round(head_melted_depth_mm(heat_flux_w_mm2=200, time_ms=30, web_mm=1.1), 1)
    0.4
    """
    flux = require_between("heat flux", heat_flux_w_mm2, 0, 2000, unit="W/mm2")
    time = require_between("time", time_ms, *TIME_LIMITS_MS, unit="ms")
    web = require_between("web", web_mm, *WEB_LIMITS_MM, unit="mm")
    start_ms = melting_start_ms(heat_flux_w_mm2=np.maximum(flux, 10), material="boron rivet steel")
    content = material("boron rivet steel").heat_content_j_mm3().best
    kept = np.maximum(1 - np.sqrt(start_ms / time), 0)
    return plain(np.minimum(flux * time / 1000 / content * kept, web))  # ms to s


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
    state: np.ndarray
    doubtful: np.ndarray


def state_of_depth(melted_depth_mm, *, web_mm, cold_limit_mm=None, hot_limit_mm=None, least_web_mm=None):
    """Return the state of a weld as the index into ``STATES``.

    Parameters
    ----------
    melted_depth_mm : float or array
        Melted depth of the head, at least 0 [mm]
    web_mm : float or array
        Thickness of the web, 0.3 to 3 mm [mm]
    cold_limit_mm : float or None
        Least depth of a sound weld; the best of ``LIMITS`` where None [mm]
    hot_limit_mm : float or None
        Greatest depth of a sound weld; the best of ``LIMITS`` where None [mm]
    least_web_mm : float or None
        Solid web that must stay; the best of ``LIMITS`` where None [mm]

    Returns
    -------
    int array
        Index into ``STATES`` [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: table process_window.

    Examples
    --------
    >>> STATES[int(state_of_depth(0.1, web_mm=1.1))]
    'cold'
    """
    depth = require_at_least("melted depth", melted_depth_mm, 0, unit="mm")
    web = require_between("web", web_mm, *WEB_LIMITS_MM, unit="mm")
    cold = LIMITS["cold limit"].best if cold_limit_mm is None else cold_limit_mm
    hot = LIMITS["hot limit"].best if hot_limit_mm is None else hot_limit_mm
    least = LIMITS["least web"].best if least_web_mm is None else least_web_mm
    hottest = np.minimum(hot, np.asarray(web) - least)
    return np.select([depth >= web, depth > hottest, depth >= cold], [3, 2, 1], default=0)


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
    Source: table process_window; heat from ``arc_heat``; flange from stud_manual_short_cycle page 39.

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
    depth = Band(
        **{
            end: head_melted_depth_mm(heat_flux_w_mm2=getattr(flux, end), time_ms=time_ms, web_mm=web_mm)
            for end in ("low", "best", "high")
        },
        basis="derived: heat flux by the band of the heat share",
    )
    index = state_of_depth(depth.best, web_mm=web_mm)
    return ProcessWindow(
        current_a=current,
        time_ms=time_ms,
        melted_depth_mm=depth,
        state=np.array(STATES)[index],
        doubtful=_doubtful(depth.best, web_mm, index),
    )


def _doubtful(depth_mm, web_mm, index):
    """Tell where the narrowest and the widest limits would not give the same state as the best ones."""
    doubt = np.zeros(np.shape(index), dtype=bool)
    for cold, hot, least in (("low", "high", "low"), ("high", "low", "high")):
        other = state_of_depth(
            depth_mm,
            web_mm=web_mm,
            cold_limit_mm=getattr(LIMITS["cold limit"], cold),
            hot_limit_mm=getattr(LIMITS["hot limit"], hot),
            least_web_mm=getattr(LIMITS["least web"], least),
        )
        doubt |= other != index
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


def boundary_current_a(*, depth_mm, stud_diameter_mm, web_mm, time_ms, voltage_v=None):
    """Return the current at which the head melts to a depth: a line of the map, with the doubt on the heat.

    Parameters
    ----------
    depth_mm : float or array
        Melted depth, above 0 and at most the web [mm]
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
        Current: low where most of the heat reaches the head, high where least does [A]

    Raises
    ------
    ValueError
        If an argument is out of its range or the depth is more than the web.

    Notes
    -----
    Found by halving the heat flux between 0 and 2000 W/mm2. Source: ``head_melted_depth_mm``.

    Examples
    --------
    >>> band = boundary_current_a(depth_mm=0.2, stud_diameter_mm=6, web_mm=1.1, time_ms=30)
    >>> band.low < band.best < band.high
    True
    """
    require_above("depth", depth_mm, 0, unit="mm")
    web = require_between("web", web_mm, *WEB_LIMITS_MM, unit="mm")
    require_between("depth over web", depth_mm / web, 0, 1, unit="")
    low, high = (
        0.0,
        np.full(np.broadcast_shapes(*(np.shape(each) for each in (depth_mm, web, time_ms))), 2000.0),
    )
    for _ in range(40):
        middle = (low + high) / 2
        deep = head_melted_depth_mm(heat_flux_w_mm2=middle, time_ms=time_ms, web_mm=web) >= depth_mm
        low, high = np.where(deep, low, middle), np.where(deep, middle, high)
    of_one_ampere = heat_flux_w_mm2(
        voltage_v=voltage_band_v().best if voltage_v is None else voltage_v,
        current_a=1.0,
        face_diameter_mm=short_cycle_row(stud_diameter_mm).flange_diameter_mm,
    )
    ends = {"low": of_one_ampere.high, "best": of_one_ampere.best, "high": of_one_ampere.low}
    return Band(
        **{end: plain(high / each) for end, each in ends.items()}, basis="derived: band of the heat share"
    )
