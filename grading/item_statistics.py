"""How hard each exercise is and how well it tells the stronger from the weaker: whole tables at once.

A table has one row a learner and one column an exercise, and no gaps: who takes part is decided before.
"""

import numpy as np

from secondplate.checks import require_between, require_finite

GROUP = 0.27  # of the class in the upper and in the lower group; source: kelley_1939


def table_of(scores, *, least_learners=1, least_items=1):
    """Return scores as a table of floats, or raise where it has gaps or is too small."""
    table = np.asarray(require_finite("scores", scores, unit=""))
    if table.ndim != 2 or table.shape[0] < least_learners or table.shape[1] < least_items:
        message = (
            f"scores must be a table of at least {least_learners} by {least_items}, "
            f"learners by exercises, got shape {table.shape}"
        )
        raise ValueError(message)
    return table


def difficulties(scores, maxima):
    """Return the mean share of the points that was earned with each item: 1 is easy, 0 is hard."""
    return (table_of(scores) / np.asarray(require_finite("maxima", maxima, unit=""))).mean(axis=0)


def item_total_correlations(scores):
    """Return the correlation of each item with the total: the point-biserial one where scores are 0 and 1.

    Not a number where an item or the total is the same for everybody.
    """
    table = table_of(scores, least_learners=2)
    return _correlations(table, table.sum(axis=1, keepdims=True))


def item_rest_correlations(scores):
    """Return the correlation of each item with the total of the other items, which it is no part of.

    Not a number where an item or the rest is the same for everybody.
    """
    table = table_of(scores, least_learners=2, least_items=2)
    return _correlations(table, table.sum(axis=1, keepdims=True) - table)


def _correlations(first, second):
    """Return the correlation of each column of the first table with its column of the second."""
    first, second = first - first.mean(axis=0), second - second.mean(axis=0)
    scale = np.sqrt((first**2).sum(axis=0) * (second**2).sum(axis=0))
    together = (first * second).sum(axis=0)
    # Sums of floats leave a rounding error where nothing differs.
    return np.divide(together, scale, out=np.full(scale.shape, np.nan), where=scale > 1e-9)


def group_size(learners, *, group=GROUP):
    """Return how many learners are in the upper group, and in the lower: the share rounded to a whole."""
    share = require_between("group", group, 0.05, 0.5, unit="")
    return min(max(int(learners * share + 0.5), 1), learners // 2)


def upper_lower_differences(scores, maxima, *, group=GROUP):
    """Return the difference of the difficulty of each item between the upper and the lower group.

    The groups are taken by the total. Where learners with the same total stand at the cut, the places left
    are shared out among them in equal parts, so that the order of the rows changes nothing.
    """
    table = table_of(scores, least_learners=2)
    shares = table / np.asarray(require_finite("maxima", maxima, unit=""))
    totals = np.round(table.sum(axis=1), 6)
    size = group_size(len(table), group=group)
    return (_membership(totals, size) - _membership(-totals, size)) @ shares / size


def _membership(totals, size):
    """Return the part of each learner that belongs to the group of the highest totals; they sum to size."""
    cut = np.sort(totals)[-size]
    above, level = totals > cut, totals == cut
    return above + level * ((size - above.sum()) / level.sum())
