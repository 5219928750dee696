"""What each way to take a rivet out costs in time, and how often it harms the second plate, as bands.

Own judgement: no open repair time and no damage rate for these rivets was found. Put in your own timings with
``dataclasses.replace`` before you trust a decision.
"""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from functools import lru_cache

import numpy as np

from secondplate import tables
from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.bench_random import triangular
from secondplate.checks import require_between, require_choice
from secondplate.removal_limits import METHODS
from secondplate.removal_time import learning_exponent
from secondplate.trials_checks import whole

MOST_RIVETS = 200
REFERENCE_PLATE_MM = 2.0  # thickness that the damage bands hold for
_BANDS = {
    (row.keys["method"], row.keys["quantity"]): band
    for row, band in zip(
        tables.load("removal_times"), tables.bands("removal_times", cited=False).values(), strict=True
    )
}
RIVET_SCATTER = _BANDS["any", "scatter"]
_LIMITS = {"min": (0, 600), "rate": (0.5, 1), "probability": (0, 1)}
_CURVES = 64  # learning rates over which a mean curve is taken


@dataclass(frozen=True, kw_only=True)
class MethodTimes:
    """Bands of one method; each is drawn once a row, for a row has one worker, one machine and one set-up.

    Parameters
    ----------
    method : str
        One of ``removal_limits.METHODS`` [-]
    set_up_min : Band
        Set-up, 0 to 600 [min]
    first_min : Band
        First rivet, 0 to 600 [min]
    learning_rate : Band
        Learning rate of the unit model, 0.5 to 1 [-]
    failure_probability : Band
        Chance that a rivet has to be done again [-]
    rework_min : Band
        Time to do it again, 0 to 600 [min]
    clean_up_min : Band
        Clean-up at the end, 0 to 600 [min]
    damage_probability : Band
        Chance that a rivet out at the first try damages a second plate of 2.0 mm [-]
    damage_after_failure_probability : Band
        The same for a rivet done again [-]

    Raises
    ------
    ValueError
        If the method is unknown or a band leaves its range.

    Examples
    --------
    >>> usual_times("pull").first_min.best
    4.0
    """

    method: str
    set_up_min: Band
    first_min: Band
    learning_rate: Band
    failure_probability: Band
    rework_min: Band
    clean_up_min: Band
    damage_probability: Band
    damage_after_failure_probability: Band

    def __post_init__(self):
        """Refuse an unknown method and bands out of range."""
        require_choice("method", self.method, METHODS)
        for name in QUANTITIES:
            kind = name.rsplit("_", 1)[1]
            low, high = _LIMITS[kind]
            words, unit = name.removesuffix("_min").replace("_", " "), "min" if kind == "min" else ""
            for end in ("low", "high"):
                require_between(words, getattr(getattr(self, name), end), low, high, unit=unit)


QUANTITIES = tuple(field.name for field in fields(MethodTimes) if field.name != "method")


def usual_times(method):
    """Return the bands that come with the library for one method.

    Parameters
    ----------
    method : str
        One of ``removal_limits.METHODS`` [-]

    Returns
    -------
    MethodTimes
        The bands [-]

    Raises
    ------
    ValueError
        If the method is unknown.

    Notes
    -----
    Source: own_judgement; table removal_times.

    Examples
    --------
    >>> usual_times("drill").damage_probability.best > usual_times("pull").damage_probability.best
    True
    """
    require_choice("method", method, METHODS)
    return MethodTimes(method=method, **{name: _BANDS[method, name] for name in QUANTITIES})


def damage_chance(probability, *, second_plate_mm):
    """Return the chance of damage for another second plate: over its thickness, and never above 1.

    Parameters
    ----------
    probability : float or array
        Chance for a second plate of 2.0 mm, 0 to 1 [-]
    second_plate_mm : float or array
        Thickness beside the button, 0.5 to 6 [mm]

    Returns
    -------
    float or numpy.ndarray
        Chance [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: own_judgement: the same slip harms a thin plate more.

    Examples
    --------
    >>> damage_chance(0.15, second_plate_mm=[1.5, 3.0]).round(3).tolist()
    [0.2, 0.1]
    """
    chance = require_between("damage probability", probability, 0, 1, unit="")
    plate = np.asarray(require_between("second plate", second_plate_mm, 0.5, 6, unit="mm"))
    return plain(np.minimum(np.asarray(chance) * REFERENCE_PLATE_MM / plate, 1.0))


@dataclass(frozen=True, kw_only=True)
class RowParts:
    """Values of one row in place of the bands, and what they give; floats or arrays.

    Parameters
    ----------
    values : Mapping of str to float or numpy.ndarray
        Value by quantity, as in ``QUANTITIES``; ``curve`` for the sum over the learning curve [-]
    rivets : int or array
        Rivets in the row [-]
    second_plate_mm : float or array
        Thickness of the second plate [mm]

    Examples
    --------
    >>> parts = mean_parts(usual_times("pull"), rivets=12, second_plate_mm=2.0)
    >>> round(parts.minutes, 1), round(parts.damaged, 3)
    (79.1, 0.384)
    """

    values: Mapping[str, float]
    rivets: int
    second_plate_mm: float

    @property
    def minutes(self):
        """Time that the row takes on the average."""
        found = self.values
        pieces = found["first_min"] * found["curve"] * mean_of_band(RIVET_SCATTER)
        again = self.rivets * found["failure_probability"] * found["rework_min"]
        return plain(found["set_up_min"] + pieces + again + found["clean_up_min"])

    @property
    def damaged(self):
        """Places of the second plate that are damaged on the average."""
        failing = self.values["failure_probability"]
        sound, after = (
            np.asarray(damage_chance(self.values[name], second_plate_mm=self.second_plate_mm))
            for name in ("damage_probability", "damage_after_failure_probability")
        )
        return plain(self.rivets * ((1 - failing) * sound + failing * after))


def mean_of_band(band):
    """Return the mean of a triangular law over a band: a third of the sum of its three numbers.

    Parameters
    ----------
    band : Band
        The band [-]

    Returns
    -------
    float
        Mean, in the unit of the band [-]

    Notes
    -----
    Source: plane_geometry, centroid of a triangle.

    Examples
    --------
    >>> mean_of_band(Band(low=1, best=2, high=6, basis="example"))
    3.0
    """
    return (band.low + band.best + band.high) / 3


def mean_parts(times, *, rivets, second_plate_mm):
    """Return a row with every band at its mean, and the learning curve at the mean over its band.

    Parameters
    ----------
    times : MethodTimes
        Bands of the method [-]
    rivets : int or array
        Rivets in the row, 1 to 200 [-]
    second_plate_mm : float or array
        Thickness of the second plate, 0.5 to 6 [mm]

    Returns
    -------
    RowParts
        The row; minutes and damaged are its properties [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: own_judgement for the bands. Damage is a straight line in its chances where none reaches 1.

    Examples
    --------
    >>> round(mean_parts(usual_times("drill"), rivets=12, second_plate_mm=2.0).minutes, 1)
    122.5
    """
    rivets = whole("rivets", rivets, least=1, most=MOST_RIVETS)
    require_between("second plate", second_plate_mm, 0.5, 6, unit="mm")
    found = {name: mean_of_band(getattr(times, name)) for name in QUANTITIES}
    band = times.learning_rate
    found["curve"] = plain(_mean_curve(band.low, band.best, band.high)[rivets - 1])
    return RowParts(values=found, rivets=rivets, second_plate_mm=second_plate_mm)


@lru_cache(maxsize=16)
def _mean_curve(low, best, high):
    """Return how many first pieces 1, 2, 3 ... rivets come to, over the band of the learning rate."""
    rates = triangular(low, best, high, (np.arange(_CURVES) + 0.5) / _CURVES)
    pieces = np.arange(1, MOST_RIVETS + 1) ** learning_exponent(rates)[:, None]
    return np.cumsum(pieces, axis=1).mean(axis=0)
