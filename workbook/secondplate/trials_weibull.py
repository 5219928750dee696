"""Weibull law for pull forces: ``R(F) = exp(-(F/F0)^m)``, fitted to pulls that broke and pulls that held.

The two-parameter law by greatest likelihood; a pull that was stopped before anything broke counts as held.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least
from secondplate.trials_checks import open_share, require_data, whole

_LOW_SHAPE, _HIGH_SHAPE = 0.02, 2000.0


@dataclass(frozen=True, kw_only=True)
class Weibull:
    """Weibull law of two parameters.

    Parameters
    ----------
    shape : float or array
        Shape m, above 0; the larger, the less scatter [-]
    scale : float or array
        Scale F0, above 0: what 63 % do not reach, in the unit of what was measured [-]

    Raises
    ------
    ValueError
        If a parameter is not above 0.

    Notes
    -----
    Source: weibull_law.

    Examples
    --------
    >>> law = Weibull(shape=10.0, scale=3200.0)
    >>> round(law.survival(2500.0), 3), round(law.variation, 2)
    (0.919, 0.12)
    """

    shape: float
    scale: float

    def __post_init__(self):
        """Refuse parameters that are not above 0."""
        require_above("shape", self.shape, 0, unit="")
        require_above("scale", self.scale, 0, unit="")

    def survival(self, reached):
        """Return the share that holds beyond a value, 0 or more."""
        reached = require_at_least("value", reached, 0, unit="")
        return plain(np.exp(-((reached / self.scale) ** self.shape)))

    def reached_by(self, share):
        """Return the value at which a share, between 0 and 1, has failed: 0.1 gives B10."""
        failed = open_share("share", share)
        return plain(self.scale * (-np.log1p(-failed)) ** (1 / self.shape))

    @property
    def mean(self):
        """Mean value."""
        return plain(self.scale * self._moment(1))

    @property
    def variation(self):
        """Standard deviation over mean."""
        return plain(np.sqrt(self._moment(2) / self._moment(1) ** 2 - 1))

    def _moment(self, power):
        """Return the mean of a power of the value over the scale."""
        from scipy.special import gamma  # here, so that a page without this law does not load it

        return gamma(1 + power / self.shape)


def fit_weibull(failed, *, held=()):
    """Fit a Weibull law by greatest likelihood.

    The shape solves ``sum x^m ln x / sum x^m - 1/m = mean of ln x over the failed``; sums run over all.

    Parameters
    ----------
    failed : array
        Values at which something broke, above 0, at least 2 that differ, in any one unit [-]
    held : array
        Values that were reached without a break, in the same unit [-]

    Returns
    -------
    Weibull
        The law [-]

    Raises
    ------
    ValueError
        If a value is not above 0, or the failed are fewer than 2 or all alike.

    Notes
    -----
    Source: weibull_law; nist_handbook, section 8.4.1.2.

    Examples
    --------
    >>> law = fit_weibull([54, 187, 216, 240, 244, 335, 361, 373, 375, 386], held=[500] * 10)
    >>> round(law.shape, 4), round(law.scale, 2)
    (1.7208, 606.53)
    """
    from scipy.optimize import brentq

    failed = require_data(
        "failed values", require_above("failed values", failed, 0, unit=""), unit="", least=2
    )
    held = np.asarray(require_above("held values", held, 0, unit="")) if np.size(held) else np.empty(0)
    if failed.min() == failed.max() and (held.size == 0 or held.max() <= failed.max()):
        message = f"failed values must differ, got {failed.size} times {failed[0]:.6g}"
        raise ValueError(message)
    every = np.concatenate((failed, np.ravel(held)))
    greatest = every.max()
    logs = np.log(every / greatest)  # of at most 1, so that no power overflows

    def slope(shape):
        powers = np.exp(shape * logs)
        return powers @ logs / powers.sum() - 1 / shape - np.log(failed / greatest).mean()

    if slope(_HIGH_SHAPE) < 0:
        message = f"failed values must scatter enough for a shape below {_HIGH_SHAPE:.0f}, got less"
        raise ValueError(message)
    shape = brentq(slope, _LOW_SHAPE, _HIGH_SHAPE, xtol=1e-12)
    scale = greatest * (np.exp(shape * logs).sum() / failed.size) ** (1 / shape)
    return Weibull(shape=float(shape), scale=float(scale))


def median_ranks(pulls, *, exact):
    """Return where to plot each of n ordered values: the median of its rank.

    Parameters
    ----------
    pulls : int
        Values n, at least 1 [-]
    exact : bool
        The median of the beta law, or else the approximation ``(i - 0.3) / (n + 0.4)`` [-]

    Returns
    -------
    numpy.ndarray
        Ranks of the first to the last value [-]

    Raises
    ------
    ValueError
        If the count is no whole number in its range.

    Notes
    -----
    Source: weibull_law.

    Examples
    --------
    >>> median_ranks(5, exact=False)[0].round(4), median_ranks(5, exact=True)[0].round(4)
    (np.float64(0.1296), np.float64(0.1294))
    """
    from scipy.special import betaincinv

    total = int(whole("pulls", pulls, least=1))
    order = np.arange(1, total + 1)
    return betaincinv(order, total - order + 1, 0.5) if exact else (order - 0.3) / (total + 0.4)
