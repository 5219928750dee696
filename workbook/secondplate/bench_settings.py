"""Settings of the virtual bench, the job on it, and the hidden truths of its machine.

Settings are what a learner turns and chooses; a job is what the day brings: rivet, machine, scatter.
"""

from dataclasses import dataclass

import numpy as np

from secondplate import tables
from secondplate.bench_random import triangular, uniform
from secondplate.checks import require_above, require_between, require_choice
from secondplate.gas import FLOW_L_MIN
from secondplate.heat.melt_map import WEB_LIMITS_MM
from secondplate.process_window import PULL_STUD, chart_points
from secondplate.weld_charts import short_cycle_row
from secondplate.weld_rules import gathered

GASES = ("none", "I1", "M12", "M21")
POLARITIES = ("stud negative", "stud positive")
HEADS = ("ground bright", "coated", "oily")
EARTHS = ("two clamps, opposite", "one clamp, to one side")
STUD_DIAMETERS_MM = (3.0, 4.0, 5.0, 6.0)
MACHINES = ("weak", "strong")
FLANGES_MM = tuple(short_cycle_row(size).flange_diameter_mm for size in STUD_DIAMETERS_MM)


BENCH_BANDS = tables.bands("bench_bands", cited=False)
SETTING_LIMITS = {row.name: (float(row.keys["least"]), row.number) for row in tables.load("bench_settings")}
# Each setting that is a number: its field, its row in the table, its unit.
_NUMBERS = (
    ("current_a", "current", "A"),
    ("time_ms", "time", "ms"),
    ("lift_mm", "lift", "mm"),
    ("protrusion_mm", "protrusion", "mm"),
    ("flow_l_min", "gas flow", "L/min"),
    ("tilt_deg", "tilt", "deg"),
    ("offset_mm", "offset", "mm"),
)
_CHOICES = (("gas", GASES), ("polarity", POLARITIES), ("head", HEADS), ("earth", EARTHS))
SETTING_NAMES = ("stud_diameter_mm", *(field for field, *_ in _NUMBERS), *(field for field, _ in _CHOICES))


def _checked_choices(name, value, choices):
    """Return a choice or an array of choices, or refuse the first that is none of them."""
    if isinstance(value, str):
        return require_choice(name, value, choices)
    array = np.asarray(value)
    known = np.zeros(array.shape, dtype=bool)
    for choice in choices:
        known |= array == choice
    if not known.all():
        require_choice(name, array[~known].flat[0].item(), choices)
    return array


@dataclass(frozen=True, kw_only=True)
class WeldSettings:
    """All that is set for one weld, or for many as arrays of one length.

    Parameters
    ----------
    stud_diameter_mm : float or array
        Stud diameter, one of 3, 4, 5 and 6 mm [mm]
    current_a : float or array
        Current that the machine shows, 50 to 1500 A [A]
    time_ms : float or array
        Weld time, 2 to 200 ms [ms]
    lift_mm : float or array
        Lift, 0 to 6 mm [mm]
    protrusion_mm : float or array
        Protrusion, 0 to 6 mm [mm]
    gas : str or array of str
        One of ``GASES`` [-]
    flow_l_min : float or array
        Gas flow, 0 to 30 L/min [L/min]
    polarity : str or array of str
        One of ``POLARITIES`` [-]
    tilt_deg : float or array
        How far the gun is held off square, 0 to 20 degrees [deg]
    offset_mm : float or array
        How far off the middle of the head the stud is set, 0 to 5 mm [mm]
    head : str or array of str
        One of ``HEADS`` [-]
    earth : str or array of str
        One of ``EARTHS`` [-]

    Raises
    ------
    ValueError
        If a setting is out of its range or list.

    Notes
    -----
    Source: table bench_settings.

    Examples
    --------
    >>> chart_settings(stud_diameter_mm=6).current_a
    600.0
    """

    stud_diameter_mm: float
    current_a: float
    time_ms: float
    lift_mm: float
    protrusion_mm: float
    gas: str
    flow_l_min: float
    polarity: str
    tilt_deg: float
    offset_mm: float
    head: str
    earth: str

    def __post_init__(self):
        """Refuse what cannot be set."""
        sizes = np.atleast_1d(require_above("stud diameter", self.stud_diameter_mm, 0, unit="mm"))
        for size in sizes[~np.isin(sizes, STUD_DIAMETERS_MM)][:1]:
            short_cycle_row(float(size))  # refuses with the list of sizes
        for field, name, unit in _NUMBERS:
            require_between(name, getattr(self, field), *SETTING_LIMITS[name], unit=unit)
        for field, choices in _CHOICES:
            _checked_choices(field, getattr(self, field), choices)

    @property
    def flange_diameter_mm(self):
        """Diameter of the stud's flange in mm, from the short-cycle chart."""
        return np.interp(self.stud_diameter_mm, STUD_DIAMETERS_MM, FLANGES_MM)


def can_be_set(settings):
    """Tell whether single settings lie in their ranges and lists, as ``WeldSettings`` asks, only much faster.

    Parameters
    ----------
    settings : dict of str to object
        All of ``SETTING_NAMES``, numbers as int or float [-]

    Returns
    -------
    bool
        Whether they do [-]

    Examples
    --------
    >>> can_be_set(vars(chart_settings(stud_diameter_mm=6)))
    True
    """
    numbers = (
        (settings["stud_diameter_mm"], STUD_DIAMETERS_MM[0], STUD_DIAMETERS_MM[-1]),
        *((settings[field], *SETTING_LIMITS[name]) for field, name, _ in _NUMBERS),
    )
    return (
        all(not isinstance(value, str) and least <= value <= most for value, least, most in numbers)
        and settings["stud_diameter_mm"] in STUD_DIAMETERS_MM
        and all(settings[field] in choices for field, choices in _CHOICES)
    )


@dataclass(frozen=True, kw_only=True)
class WeldJob:
    """What the day brings: the rivet, and the truths of the machine that nobody reads off it.

    Parameters
    ----------
    head_diameter_mm : float or array
        Diameter of the rivet head, 3 to 15 mm and not under the stud's flange [mm]
    web_mm : float or array
        Thickness of the web of the head, 0.3 to 3 mm [mm]
    rivet_hold_n : float or array
        Force that draws this rivet out, 100 to 20,000 N [N]
    current_share : float or array
        True current over the shown one, 0.3 to 1.9 [-]
    voltage_v : float or array
        Arc voltage at the usual lift, 20 to 40 V [V]
    scatter_share : float or array
        Scatter over the usual one, 0 to 3 [-]

    Raises
    ------
    ValueError
        If a number is out of its range.

    Examples
    --------
    >>> job = draw_job(b"a day at the shop")
    >>> 1500 <= job.rivet_hold_n <= 4000
    True
    """

    head_diameter_mm: float
    web_mm: float
    rivet_hold_n: float
    current_share: float
    voltage_v: float
    scatter_share: float = 1.0

    def __post_init__(self):
        """Refuse what is no job."""
        require_between("head diameter", self.head_diameter_mm, 3, 15, unit="mm")
        require_between("web", self.web_mm, *WEB_LIMITS_MM, unit="mm")
        require_between("rivet hold", self.rivet_hold_n, 100, 20000, unit="N")
        require_between("current share", self.current_share, 0.3, 1.9, unit="")
        require_between("voltage", self.voltage_v, 20, 40, unit="V")
        require_between("scatter share", self.scatter_share, 0, 3, unit="")


def chart_settings(*, stud_diameter_mm):
    """Return what the papers say for a stainless stud on a rivet head: the shop's setting, else the chart.

    Parameters
    ----------
    stud_diameter_mm : float
        Stud diameter, one of 3, 4, 5 and 6 mm [mm]

    Returns
    -------
    WeldSettings
        Settings to begin with: good gas, clean head, two clamps, gun square on the middle [-]

    Raises
    ------
    ValueError
        If the diameter is not in the chart.

    Notes
    -----
    Sources: ``process_window.chart_points``, ``weld_rules``, ``gas``. A shop setting is held for 6 mm only.

    Examples
    --------
    >>> chart_settings(stud_diameter_mm=5).current_a, chart_settings(stud_diameter_mm=5).time_ms
    (630.0, 15.0)
    """
    points = chart_points(stud_diameter_mm)
    point = next((each for each in points if each.rule.startswith("shop")), points[0])
    return WeldSettings(
        stud_diameter_mm=float(stud_diameter_mm),
        current_a=point.current_a,
        time_ms=point.time_ms,
        lift_mm=_usual("lift", stud_diameter_mm),
        protrusion_mm=_usual("protrusion", stud_diameter_mm),
        gas="M12",
        flow_l_min=FLOW_L_MIN.best,
        polarity=POLARITIES[0],
        tilt_deg=0.0,
        offset_mm=0.0,
        head=HEADS[0],
        earth=EARTHS[0],
    )


def _usual(quantity, stud_diameter_mm):
    """Return the shop's value of lift or protrusion where one is held, else the first rule's."""
    rules = gathered(quantity, stud_diameter_mm, **PULL_STUD, process="short cycle")
    return next((each for each in rules if each.rule.startswith("shop")), rules[0]).band.best


def drawn(name, share):
    """Return the value of a band of the bench at a share of its triangle.

    Parameters
    ----------
    name : str
        Name of a row of the table bench_bands [-]
    share : float or array
        Share, 0 to 1 [-]

    Returns
    -------
    float or array
        Value, in the unit of the row [-]

    Raises
    ------
    ValueError
        If the name is unknown or the share is out of its range.

    Notes
    -----
    Source: table bench_bands.

    Examples
    --------
    >>> drawn("web", 1.0)
    1.25
    """
    band = BENCH_BANDS[require_choice("band", name, tuple(BENCH_BANDS))]
    return triangular(band.low, band.best, band.high, share)


def draw_job(seed, *, machine=None, scatter_share=1.0):
    """Draw the job of the day: a rivet, and a machine on which the shop setting of a 6 mm stud does not do.

    A weak machine spoils the chart of every stud; a strong one may leave those of smaller studs sound.

    Parameters
    ----------
    seed : bytes
        Seed of the day [-]
    machine : str or None
        One of ``MACHINES``; drawn where None [-]
    scatter_share : float
        Scatter over the usual one, 0 to 3 [-]

    Returns
    -------
    WeldJob
        The job [-]

    Raises
    ------
    ValueError
        If the seed is not bytes, or the machine or the scatter is out of its list or range.

    Notes
    -----
    Source: table bench_bands. The shown current is off by as much as voltage and heat drawn ask for.

    Examples
    --------
    >>> draw_job(b"a day at the shop", machine="weak").current_share < 1
    True
    """
    kind = MACHINES[int(2 * uniform(seed, "machine", 0))] if machine is None else machine
    require_choice("machine", kind, MACHINES)

    def value(name):
        return round(drawn(name, uniform(seed, name, 0)), 4)

    voltage = value(f"voltage of a {kind} machine")
    return WeldJob(
        head_diameter_mm=value("head diameter"),
        web_mm=value("web"),
        rivet_hold_n=value("rivet hold"),
        current_share=round(value(f"heat of a {kind} machine") * 30 / voltage, 4),
        voltage_v=voltage,
        scatter_share=scatter_share,
    )
