"""Estimates that say how sure they are: a value with its interval, or words where there are too few to say.

Intervals of shares come from ``secondplate.trials``; here are those of correlations and of reliability.
"""

from dataclasses import dataclass
from math import atanh, sqrt, tanh

from secondplate.checks import require_at_least, require_between

CONFIDENCE = 0.95  # of both ends of every interval together
TOO_FEW = "too few to say"
NO_SPREAD = "all alike, nothing to compare"


@dataclass(frozen=True, kw_only=True)
class Estimate:
    """A value with its interval and the number of learners behind it; ``value`` is None where it has none.

    ``why`` then says why in words. A value never stands without the count that it rests on.
    """

    count: int
    value: float | None = None
    low: float | None = None
    high: float | None = None
    why: str = ""

    def in_words(self, form=".2f"):
        """Write the value and its interval with a format, or why there is none."""
        if self.value is None:
            return self.why
        minus = "\u2212"
        value, low, high = (
            "" if each is None else format(each, form).replace("-", minus)
            for each in (self.value, self.low, self.high)
        )
        return f"{value} ({low} to {high})" if low else value


def too_few(count):
    """Return the estimate of what must not be estimated from so few."""
    return Estimate(count=count, why=TOO_FEW)


def no_spread(count):
    """Return the estimate of what compares differences where there are none."""
    return Estimate(count=count, why=NO_SPREAD)


def feldt_interval(alpha, *, learners, items, confidence=CONFIDENCE):
    """Return low and high end of the interval of coefficient alpha, or of KR-20, which is the same.

    ``1 - (1 - alpha) F``, with the upper and lower quantiles of F for ``n - 1`` and ``(n - 1)(k - 1)``
    degrees of freedom. It holds for items that measure one thing equally well; with others it is a guide.
    Source: feldt_1965.
    """
    from scipy.special import fdtri  # here, so that marking without a report does not load it

    require_at_least("learners", learners, 2, unit="")
    require_at_least("items", items, 2, unit="")
    tail = (1 - require_between("confidence", confidence, 0.5, 0.9999, unit="")) / 2
    first, second = learners - 1, (learners - 1) * (items - 1)
    low, high = (1 - (1 - alpha) * fdtri(first, second, each) for each in (1 - tail, tail))
    return float(low), float(high)


def correlation_interval(correlation, *, learners, confidence=CONFIDENCE):
    """Return low and high end of the interval of a correlation, by the inverse hyperbolic tangent.

    ``tanh(atanh(r) -+ z / sqrt(n - 3))``; a guide where items are only right or wrong.
    """
    from scipy.special import ndtri

    require_at_least("learners", learners, 4, unit="")
    z = ndtri((1 + require_between("confidence", confidence, 0.5, 0.9999, unit="")) / 2)
    if abs(correlation) >= 1:
        return correlation, correlation
    half = float(z) / sqrt(learners - 3)
    return tanh(atanh(correlation) - half), tanh(atanh(correlation) + half)
