"""The cheapest allowed way of removal by expected cost, for one job or for a class of them in arrays.

Costs are worked out from the means of the bands, so that no seed is needed; ``removal_decision`` adds the
spread.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.removal_information import row_cost_min
from secondplate.removal_limits import METHODS, VERDICTS, screen
from secondplate.removal_methods import mean_parts, usual_times

NO_METHOD = "none"


def times_of_all(times):
    """Return the bands of every method in the order of ``METHODS``, those of the library unless given.

    Parameters
    ----------
    times : sequence of MethodTimes
        Bands of every method, or None [-]

    Returns
    -------
    tuple of MethodTimes
        The bands [-]

    Raises
    ------
    ValueError
        If a method is missing or out of order.

    Examples
    --------
    >>> [each.method for each in times_of_all(None)]
    ['pull', 'drill', 'grind', 'punch']
    """
    if times is None:
        return tuple(usual_times(method) for method in METHODS)
    given = tuple(each.method for each in times)
    if given != METHODS:
        message = f"times must be of {', '.join(METHODS)} in this order, got {', '.join(given)}"
        raise ValueError(message)
    return tuple(times)


@dataclass(frozen=True, kw_only=True)
class Choice:
    """The cheapest allowed method and what each would cost.

    Parameters
    ----------
    method : str or numpy.ndarray
        The method, ``none`` where no method is allowed as the job stands [-]
    costs_min : Mapping of str to float or numpy.ndarray
        Expected cost by method, refused ones too [min]

    Examples
    --------
    >>> Choice(method="none", costs_min={}).method
    'none'
    """

    method: str
    costs_min: Mapping[str, float]


def cheapest_allowed(job, *, rivets, damage_min, times=None):
    """Return the allowed method of least expected cost.

    Parameters
    ----------
    job : RemovalJob
        One job, or many in arrays [-]
    rivets : int or array
        Rivets in the row, 1 to 200 [-]
    damage_min : float or array
        What one damaged place of the second plate costs, 0 or more [min]
    times : sequence of MethodTimes
        Bands of every method in the order of ``METHODS``; those of the library unless told [-]

    Returns
    -------
    Choice
        Method and costs [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or a method is missing.

    Notes
    -----
    Source: table removal_limits for the limits; own_judgement for the bands; raiffa_schlaifer for the rule.

    Examples
    --------
    >>> from secondplate.removal_limits import RemovalJob
    >>> job = RemovalJob(behind="open", bond="none", second_plate_mm=2.0, rivet_hardness_hv=480)
    >>> cheapest_allowed(job, rivets=[4, 12], damage_min=60).method.tolist()
    ['punch', 'pull']
    """
    given = {"rivets": rivets, "second_plate_mm": job.second_plate_mm}
    costs = [row_cost_min(mean_parts(each, **given), damage_min=damage_min) for each in times_of_all(times)]
    allowed = [verdict == VERDICTS[0] for verdict in screen(job).verdicts.values()]
    *both, _ = np.broadcast_arrays(*costs, *allowed, np.empty(np.shape(damage_min)))
    stacked, open_to = np.array(both[: len(METHODS)]), np.array(both[len(METHODS) :])
    best = np.argmin(np.where(open_to, stacked, np.inf), axis=0)
    method = np.where(open_to.any(axis=0), np.array(METHODS)[best], NO_METHOD)
    return Choice(
        method=str(method) if method.ndim == 0 else method,
        costs_min={name: plain(cost) for name, cost in zip(METHODS, stacked, strict=True)},
    )
