"""Is a gauge good enough: repeatability and reproducibility, categories, and its share of the tolerance.

Also the go and no-go pins for holes. One study is a block of readings, parts by operators by repeats; every
operator measures every part as often. Leaves out bias and linearity, which a calibration shows.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_finite, require_truth
from secondplate.tables import bands

_VALUES = bands("measuring")
GAP_AND_FLUSH_MM = _VALUES["gap and flush gauge"]
_CATEGORIES_FACTOR = _VALUES["categories factor"].best
LEAST_CATEGORIES = round(_VALUES["least categories"].best)
GAUGE_SHARE = _VALUES["share of the tolerance for a gauge"]
PIN_OUTCOMES = ("hole too small", "hole within its limits", "hole too large", "pins mixed up: gauge again")


@dataclass(frozen=True, kw_only=True)
class GaugeStudy:
    """What a study of a gauge found, as standard deviations.

    Parameters
    ----------
    repeatability_mm : float
        Spread of one operator on one part [mm]
    reproducibility_mm : float
        Spread between operators, with what they do differently on some parts [mm]
    part_spread_mm : float
        Spread of the parts themselves [mm]

    Raises
    ------
    ValueError
        If one is below 0.

    Examples
    --------
    >>> study = GaugeStudy(repeatability_mm=0.010, reproducibility_mm=0.0066, part_spread_mm=0.05)
    >>> round(study.gauge_spread_mm, 3), study.good_enough
    (0.012, True)
    """

    repeatability_mm: float
    reproducibility_mm: float
    part_spread_mm: float

    def __post_init__(self):
        """Refuse a negative spread."""
        for name in ("repeatability_mm", "reproducibility_mm", "part_spread_mm"):
            words = name.removesuffix("_mm").replace("_", " ")
            require_at_least(words, getattr(self, name), 0, unit="mm")

    @property
    def gauge_spread_mm(self):
        """Repeatability and reproducibility together, in mm."""
        return plain(np.hypot(self.repeatability_mm, self.reproducibility_mm))

    @property
    def categories(self):
        """Whole number of groups that the gauge tells the parts apart into; endless for a perfect gauge.

        It is 0 where the parts do not differ: nothing was told apart, so nothing is proved.
        """
        spread = self.gauge_spread_mm
        if spread == 0:
            return np.inf if self.part_spread_mm > 0 else 0.0
        return float(np.floor(gauge_categories(self.part_spread_mm, spread)))

    @property
    def good_enough(self):
        """Whether the gauge tells at least five groups of parts apart."""
        return self.categories >= LEAST_CATEGORIES

    def tolerance_share(self, tolerance_mm):
        """Six gauge spreads as a share of the whole tolerance, which is above 0 mm."""
        return plain(6 * self.gauge_spread_mm / np.asarray(_tolerance(tolerance_mm)))


def _tolerance(tolerance_mm):
    """Return a tolerance, or raise."""
    return require_above("tolerance", tolerance_mm, 0, unit="mm")


def gauge_categories(part_spread_mm, gauge_spread_mm):
    """Return into how many groups a gauge can tell parts apart: 1.41 times the ratio of the spreads.

    Parameters
    ----------
    part_spread_mm : float or array
        Standard deviation of the parts, at least 0 [mm]
    gauge_spread_mm : float or array
        Standard deviation of the gauge, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Number of distinct categories before it is cut to the whole below; at least 5 are wanted [-]

    Raises
    ------
    ValueError
        If a spread lies outside its range.

    Notes
    -----
    Source: measurement_systems_analysis, number of distinct categories, from memory.

    Examples
    --------
    >>> round(gauge_categories(0.05, 0.012), 1)
    5.9
    """
    part = require_at_least("spread of the parts", part_spread_mm, 0, unit="mm")
    gauge = np.asarray(require_above("spread of the gauge", gauge_spread_mm, 0, unit="mm"))
    return plain(_CATEGORIES_FACTOR * part / gauge)


def gauge_study(readings_mm):
    """Return repeatability, reproducibility and spread of the parts from a block of readings.

    Variance by parts, operators and their interaction; an interaction that is not larger than the scatter of
    repeats is pooled with it.

    Parameters
    ----------
    readings_mm : array
        Readings by part, operator and repeat, at least two of each [mm]

    Returns
    -------
    GaugeStudy
        Three standard deviations [mm]

    Raises
    ------
    ValueError
        If the block has not three directions of two or more, or a reading is no finite number.

    Notes
    -----
    Source: measurement_systems_analysis, analysis of variance of a crossed study, from memory.

    Examples
    --------
    >>> study = gauge_study([[[1.00, 1.02], [1.01, 1.01]], [[1.20, 1.22], [1.22, 1.20]]])
    >>> round(study.repeatability_mm, 4), round(study.part_spread_mm, 3)
    (0.011, 0.141)
    """
    block = np.asarray(require_finite("reading", readings_mm, unit="mm"))
    if block.ndim != 3 or min(block.shape) < 2:
        message = f"readings must be parts by operators by repeats, 2 of each at least, got {block.shape}"
        raise ValueError(message)
    parts, operators, repeats = block.shape
    cells, mean = block.mean(axis=2), block.mean()
    by_part, by_operator = cells.mean(axis=1) - mean, cells.mean(axis=0) - mean
    mixed = cells - mean - by_part[:, None] - by_operator
    squares = {"mixed": repeats * np.sum(mixed**2), "repeat": np.sum((block - cells[..., None]) ** 2)}
    degrees = {"mixed": (parts - 1) * (operators - 1), "repeat": parts * operators * (repeats - 1)}
    repeat, interaction = (squares[name] / degrees[name] for name in ("repeat", "mixed"))
    if interaction <= repeat:
        repeat = interaction = sum(squares.values()) / sum(degrees.values())
    operator = max(0.0, repeats * parts * np.sum(by_operator**2) / (operators - 1) - interaction)
    part = max(0.0, repeats * operators * np.sum(by_part**2) / (parts - 1) - interaction)
    between = operator / (parts * repeats) + (interaction - repeat) / repeats
    return GaugeStudy(
        repeatability_mm=float(np.sqrt(repeat)),
        reproducibility_mm=float(np.sqrt(between)),
        part_spread_mm=float(np.sqrt(part / (operators * repeats))),
    )


def largest_gauge_uncertainty_mm(tolerance_mm):
    """Return the largest uncertainty that a gauge may have for a tolerance: a tenth of it.

    Parameters
    ----------
    tolerance_mm : float or array
        Whole tolerance, such as the window of a hole, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Uncertainty [mm]

    Raises
    ------
    ValueError
        If the tolerance is not above 0.

    Notes
    -----
    Source: measurement_systems_analysis, ten per cent rule, from memory; up to 30 % is sometimes let pass.

    Examples
    --------
    >>> round(largest_gauge_uncertainty_mm(0.1), 3)
    0.01
    """
    return plain(np.multiply(GAUGE_SHARE.best, _tolerance(tolerance_mm)))


def pin_outcome(*, go_enters, no_go_enters):
    """Return what a go pin and a no-go pin say of a hole.

    The go pin has the least diameter and must enter; the no-go pin has the greatest and must not.

    Parameters
    ----------
    go_enters : bool or array
        Whether the go pin enters [-]
    no_go_enters : bool or array
        Whether the no-go pin enters [-]

    Returns
    -------
    str or numpy.ndarray
        One of ``PIN_OUTCOMES`` [-]

    Raises
    ------
    ValueError
        If an answer is not true or false.

    Notes
    -----
    Source: practice, gauging of holes.

    Examples
    --------
    >>> pin_outcome(go_enters=True, no_go_enters=False)
    'hole within its limits'
    """
    go, no_go = (require_truth("answer of a pin", answer) for answer in (go_enters, no_go_enters))
    found = np.where(go, np.where(no_go, 2, 1), np.where(no_go, 3, 0))
    words = np.array(PIN_OUTCOMES)[found]
    return str(words) if words.ndim == 0 else words
