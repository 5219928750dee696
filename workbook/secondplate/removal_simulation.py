"""Rows taken out on paper: seeded draws from the bands give minutes, rivets done again and damaged places.

The same seed gives the same rows on every machine, and a row keeps its numbers whatever else is drawn. How
often each thing happens rests on the bands of ``removal_methods``, which are own judgement.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.bench_random import triangular, uniform
from secondplate.checks import require_between
from secondplate.removal_methods import (
    MOST_RIVETS,
    QUANTITIES,
    RIVET_SCATTER,
    RowParts,
    damage_chance,
)
from secondplate.removal_time import learning_exponent
from secondplate.trials_checks import whole

MOST_ROWS = 1_000_000
# The last digits of a power may differ between machines; a millionth hides them.
_DIGITS = 6


@dataclass(frozen=True, kw_only=True)
class RowOutcomes:
    """What came of each simulated row.

    Parameters
    ----------
    method : str
        The method [-]
    rivets : int
        Rivets in each row [-]
    minutes : numpy.ndarray
        Time of each row [min]
    failures : numpy.ndarray
        Rivets done again in each row [-]
    damaged : numpy.ndarray
        Damaged places of the second plate in each row [-]

    Examples
    --------
    >>> from secondplate.removal_methods import usual_times
    >>> rows = simulate_rows(usual_times("pull"), rivets=12, second_plate_mm=2.0, rows=2000, seed=b"a row")
    >>> [round(end) for end in rows.minutes_between(0.1, 0.9)]
    [61, 100]
    """

    method: str
    rivets: int
    minutes: np.ndarray
    failures: np.ndarray
    damaged: np.ndarray

    @property
    def mean_min(self):
        """Mean time of a row."""
        return float(self.minutes.mean())

    @property
    def mean_damaged(self):
        """Mean number of damaged places in a row."""
        return float(self.damaged.mean())

    @property
    def chance_of_damage(self):
        """Share of rows with at least one damaged place."""
        return float((self.damaged > 0).mean())

    @property
    def chance_error(self):
        """Standard error of that share from the number of rows drawn; the bands matter more."""
        share = self.chance_of_damage
        return float(np.sqrt(share * (1 - share) / self.damaged.size))

    def minutes_between(self, low, high):
        """Return the times that a share of the rows does not reach, such as 0.1 and 0.9."""
        shares = require_between("share of the rows", [low, high], 0, 1, unit="")
        return tuple(float(end) for end in np.quantile(self.minutes, shares))


def _rows(rows):
    """Return how many rows to draw."""
    return int(whole("rows", rows, least=1, most=MOST_ROWS))


def draw_parts(times, *, rivets, second_plate_mm, rows, seed):
    """Draw what belongs to each row: one value from each band of a method.

    Parameters
    ----------
    times : MethodTimes
        Bands of the method [-]
    rivets : int
        Rivets in each row, 1 to 200 [-]
    second_plate_mm : float
        Thickness of the second plate, 0.5 to 6 [mm]
    rows : int
        Rows, 1 to 1 000 000 [-]
    seed : bytes
        Seed [-]

    Returns
    -------
    RowParts
        The drawn rows as arrays [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or the seed is not bytes.

    Notes
    -----
    Source: own_judgement; each band is taken for a triangular law, and the bands for independent.

    Examples
    --------
    >>> from secondplate.removal_methods import usual_times
    >>> parts = draw_parts(usual_times("pull"), rivets=12, second_plate_mm=2.0, rows=3, seed=b"a row")
    >>> parts.values["set_up_min"].round(1).tolist()
    [20.9, 28.6, 19.8]
    """
    rivets = int(whole("rivets", rivets, least=1, most=MOST_RIVETS))
    numbers = np.arange(_rows(rows))
    found = {}
    for name in QUANTITIES:
        band = getattr(times, name)
        found[name] = triangular(
            band.low, band.best, band.high, uniform(seed, f"{times.method} {name}", numbers)
        )
    found["curve"] = np.zeros(numbers.size)
    exponent = learning_exponent(found["learning_rate"])
    for number in range(1, rivets + 1):
        found["curve"] += np.round(number**exponent, _DIGITS)
    return RowParts(values=found, rivets=rivets, second_plate_mm=second_plate_mm)


def simulate_rows(times, *, rivets, second_plate_mm, rows, seed):
    """Simulate rows of one method, rivet by rivet.

    A rivet takes its time on the learning curve, with scatter; it may have to be done again; it may damage
    the second plate, more likely when done again.

    Parameters
    ----------
    times : MethodTimes
        Bands of the method [-]
    rivets : int
        Rivets in each row, 1 to 200 [-]
    second_plate_mm : float
        Thickness of the second plate, 0.5 to 6 [mm]
    rows : int
        Rows, 1 to 1 000 000 [-]
    seed : bytes
        Seed [-]

    Returns
    -------
    RowOutcomes
        Minutes, rivets done again and damaged places by row [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or the seed is not bytes.

    Notes
    -----
    Source: own_judgement; splitmix64 for the draws.

    Examples
    --------
    >>> from secondplate.removal_methods import usual_times
    >>> rows = simulate_rows(usual_times("pull"), rivets=12, second_plate_mm=2.0, rows=2000, seed=b"a row")
    >>> round(rows.mean_min, 1), round(rows.chance_of_damage, 2)
    (79.6, 0.32)
    """
    parts = draw_parts(times, rivets=rivets, second_plate_mm=second_plate_mm, rows=rows, seed=seed)
    found, numbers = parts.values, np.arange(_rows(rows)) * MOST_RIVETS
    exponent = learning_exponent(found["learning_rate"])
    sound, after = (
        damage_chance(found[name], second_plate_mm=second_plate_mm)
        for name in ("damage_probability", "damage_after_failure_probability")
    )
    minutes = found["set_up_min"] + found["clean_up_min"]
    failures, damaged = np.zeros(numbers.size, dtype=np.int64), np.zeros(numbers.size, dtype=np.int64)
    for number in range(parts.rivets):  # in this order, so that sums round alike everywhere
        scatter, failing, harming = (
            uniform(seed, f"{times.method} {name} of a rivet", numbers + number)
            for name in ("time", "failure", "damage")
        )
        factor = np.round((number + 1) ** exponent, _DIGITS) * _scattered(scatter)
        failed = failing < found["failure_probability"]
        minutes += found["first_min"] * factor + np.where(failed, found["rework_min"], 0.0)
        damaged += harming < np.where(failed, after, sound)
        failures += failed
    return RowOutcomes(
        method=times.method,
        rivets=parts.rivets,
        minutes=np.round(minutes, _DIGITS),
        failures=failures,
        damaged=damaged,
    )


def _scattered(share):
    """Return the time of one rivet over its mean on the learning curve."""
    return triangular(RIVET_SCATTER.low, RIVET_SCATTER.best, RIVET_SCATTER.high, share)
