"""How far the same class would get the same marks again: KR-20, coefficient alpha, standard error.

All of them rest on one sitting and on how the exercises agree with each other; none says whether the
exercises ask the right things.
"""

from math import sqrt

import numpy as np

from grading.item_statistics import table_of
from secondplate.checks import require_at_least


def kr20(right):
    """Return KR-20 of a table of items that are right (1) or not (0), or None where all totals are the same.

    ``k/(k - 1) (1 - sum p q / variance)``. As ``p q`` is the variance over the whole class, so is the
    variance of the totals; mixing it with the sample variance gives too much. Source: kuder_richardson_1937.
    """
    table = table_of(right, least_learners=2, least_items=2)
    if not np.isin(table, (0, 1)).all():
        message = f"right must be 0 or 1, got {table[~np.isin(table, (0, 1))][0]:g}"
        raise ValueError(message)
    return cronbach_alpha(table)  # with 0 and 1 the two are one formula


def cronbach_alpha(scores):
    """Return coefficient alpha of a table of scores, or None where all totals are the same.

    ``k/(k - 1) (1 - sum of the variances of the items / variance of the totals)``, both over the whole class
    or both of the sample, which is the same. Source: cronbach_1951.
    """
    table = table_of(scores, least_learners=2, least_items=2)
    items = table.shape[1]
    total = table.sum(axis=1).var()
    if total < 1e-12:
        return None
    return float(items / (items - 1) * (1 - table.var(axis=0).sum() / total))


def standard_error(standard_deviation, reliability):
    """Return the standard error of measurement, ``s sqrt(1 - r)``, in the unit of the marks.

    A reliability below zero counts as zero: then the marks are no surer than any learner's of the class.
    """
    spread = require_at_least("standard deviation", standard_deviation, 0, unit="points")
    if not reliability <= 1:
        message = f"reliability must be at most 1, got {reliability!r}"
        raise ValueError(message)
    return spread * sqrt(1 - max(reliability, 0.0))
