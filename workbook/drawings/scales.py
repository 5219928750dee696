"""Round numbers for axes: the end of a scale and its steps. It does not draw."""

import math

ROUND = (1, 2, 5, 10)
# Finer, where a scale should not be left half empty.
ROUND_CLOSE = (1, 1.5, 2, 3, 5, 7, 10)


def round_up(value, *, among=ROUND):
    """Return the smallest of the ``among`` factors times a power of ten that is not below ``value``."""
    power = 10.0 ** math.floor(math.log10(value))
    factor = next(f for f in among if f * power >= value * (1 - 1e-9))
    return round(factor * power, 12)


def steps(end, *, most=5):
    """Return evenly spaced round marks from 0 to ``end``, at most ``most`` of them after the 0."""
    step = round_up(end / most)
    count = int(math.floor(end / step + 1e-9))
    return [round(step * i, 12) for i in range(count + 1)]
