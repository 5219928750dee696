"""Several ways in which a joint can give, each with its force as a band, and which of them comes first.

It compares bands and nothing else: where more than one can be the least, the mode is not decided.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_at_least
from secondplate.tables import values

NOT_DECIDED = "not decided"
MODEL_SPREAD = values("pull_out_constants")["model spread"]


def untried_band(*forces_n, basis):
    """Return the band of a force that was never tried on a joint, from one estimate or several.

    It holds every estimate and reaches at least from the geometric mean over sqrt(2) to sqrt(2) times it,
    so it is never narrower than a factor of 2. The best is the geometric mean.

    Parameters
    ----------
    *forces_n : float or array
        Estimates of one force, at least 0 [N]
    basis : str
        What the estimates rest on [-]

    Returns
    -------
    Band
        The force [N]

    Raises
    ------
    ValueError
        If an estimate is below 0.

    Notes
    -----
    Source: pull_out_mechanics, uncertainty: a factor of 2 at least.

    Examples
    --------
    >>> band = untried_band(2000, 4000, basis="example")
    >>> round(band.low), round(band.best), round(band.high)
    (2000, 2828, 4000)
    """
    forces = [np.asarray(require_at_least("force", force, 0, unit="N")) for force in forces_n]
    stacked = np.stack(np.broadcast_arrays(*forces))
    half, mean = np.sqrt(MODEL_SPREAD), stacked.prod(axis=0) ** (1 / len(forces))
    return Band(
        low=plain(np.minimum(stacked.min(axis=0), mean / half)),
        best=plain(mean),
        high=plain(np.maximum(stacked.max(axis=0), mean * half)),
        basis=basis,
    )


@dataclass(frozen=True, kw_only=True)
class FailureModes:
    """Ways in which a joint can give, and the force that each needs.

    Parameters
    ----------
    forces_n : Mapping of str to Band
        Force of each mode; arrays in the bands stand for a column of joints [N]

    Raises
    ------
    ValueError
        If there is no mode.

    Examples
    --------
    >>> modes = FailureModes(forces_n={
    ...     "sheet": Band(low=2000, best=2500, high=3000, basis="example"),
    ...     "rivet": Band(low=9000, best=10000, high=11000, basis="example"),
    ... })
    >>> modes.likely_mode, modes.margin
    ('sheet', 0.75)
    """

    forces_n: Mapping[str, Band]

    def __post_init__(self):
        """Refuse an empty list of modes."""
        if not self.forces_n:
            message = "failure modes must hold one mode at least, got none"
            raise ValueError(message)

    def _stacked(self, end):
        """Stack one end of all bands, one row a mode."""
        ends = (np.asarray(getattr(band, end), dtype=float) for band in self.forces_n.values())
        return np.stack(np.broadcast_arrays(*ends))

    @property
    def strength_n(self):
        """Force at which the first mode gives, as a band in N: the least of the lows, bests and highs."""
        low, best, high = (plain(self._stacked(end).min(axis=0)) for end in ("low", "best", "high"))
        return Band(low=low, best=best, high=high, basis="least of " + ", ".join(self.forces_n))

    @property
    def can_be_first(self):
        """For each mode whether it can be the first: its low is not above the least high."""
        able = self._stacked("low") <= self._stacked("high").min(axis=0)
        rows = (bool(row) if row.ndim == 0 else row for row in able)
        return dict(zip(self.forces_n, rows, strict=True))

    @property
    def likely_mode(self):
        """The mode that comes first, or ``not decided`` where the bands of two overlap there."""
        able = np.stack(list(self.can_be_first.values()))
        first = np.array(list(self.forces_n))[self._stacked("best").argmin(axis=0)]
        named = np.where(able.sum(axis=0) == 1, first, NOT_DECIDED)
        return str(named) if named.ndim == 0 else named

    @property
    def margin(self):
        """How far the second mode lies above the first by best values, as a share of the second.

        It is 0 where two are equal, 1 where the first needs no force at all or is the only one.
        """
        bests = np.sort(self._stacked("best"), axis=0)
        if len(bests) == 1:
            return plain(np.ones_like(bests[0]))
        # The second is 0 only where both are; they are equal then.
        second = np.where(bests[1] > 0, bests[1], 1.0)
        return plain(np.where(bests[1] > 0, bests[1] - bests[0], 0.0) / second)
