"""A band: what the trade knows when it does not know one number."""

from dataclasses import dataclass

import numpy as np

from secondplate.checks import require_finite


@dataclass(frozen=True, kw_only=True)
class Band:
    """Lowest, best and highest sensible value of a quantity, with what they rest on.

    Parameters
    ----------
    low : float or array
        Lowest sensible value, in the unit of the name that carries the band [-]
    best : float or array
        The value to start from, in the same unit [-]
    high : float or array
        Highest sensible value, in the same unit [-]
    basis : str
        Where the three numbers come from, in one short phrase [-]

    Raises
    ------
    ValueError
        If the three are not finite numbers in rising order.

    Examples
    --------
    >>> Band(low=540, best=600, high=660, basis="shop setting, 10 % either way").contains(650)
    True
    """

    low: float
    best: float
    high: float
    basis: str

    def __post_init__(self):
        """Refuse limits that are not numbers in rising order."""
        for name in ("low", "best", "high"):
            require_finite(f"band {name}", getattr(self, name), unit="")
        if not np.all((self.low <= self.best) & (self.best <= self.high)):
            message = f"band must rise from low to best to high, got {self.low}, {self.best}, {self.high}"
            raise ValueError(message)

    def contains(self, value):
        """Tell whether a value lies inside the band, its ends included."""
        return (self.low <= value) & (value <= self.high)

    def overlap(self, other):
        """Return the part shared with another band as ``(low, high)``, or None where they do not meet."""
        low, high = max(self.low, other.low), min(self.high, other.high)
        return (low, high) if low <= high else None
