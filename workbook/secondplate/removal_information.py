"""What it is worth to know more before a method is chosen: own timings, own damage rates, all of it.

Expected cost is minutes plus what a damaged place costs in minutes. Knowing is worth something only where it
can turn the choice.
"""

from dataclasses import dataclass, replace

import numpy as np

from secondplate.checks import require_at_least
from secondplate.removal_methods import QUANTITIES, mean_parts
from secondplate.removal_simulation import draw_parts


def row_cost_min(parts, *, damage_min):
    """Return the expected cost of a row: ``minutes + damage price x damaged places``.

    Parameters
    ----------
    parts : RowParts
        The row, at the means of its bands or drawn [-]
    damage_min : float or array
        What one damaged place of the second plate costs, 0 or more [min]

    Returns
    -------
    float or numpy.ndarray
        Cost [min]

    Raises
    ------
    ValueError
        If the price is below 0.

    Notes
    -----
    Source: raiffa_schlaifer: expected loss.

    Examples
    --------
    >>> from secondplate.removal_methods import usual_times
    >>> round(row_cost_min(mean_parts(usual_times("pull"), rivets=12, second_plate_mm=2.0), damage_min=60), 1)
    102.2
    """
    return parts.minutes + require_at_least("price of damage", damage_min, 0, unit="min") * parts.damaged


@dataclass(frozen=True, kw_only=True)
class TimingValue:
    """What it is worth to know one quantity of one method for certain.

    Parameters
    ----------
    method : str
        The method [-]
    quantity : str
        One of ``removal_methods.QUANTITIES`` [-]
    worth_min : float
        Time saved on the average [min]

    Examples
    --------
    >>> TimingValue(method="drill", quantity="first_min", worth_min=2.0).words
    'first of drill'
    """

    method: str
    quantity: str
    worth_min: float

    @property
    def words(self):
        """The quantity in words."""
        return f"{self.quantity.removesuffix('_min').replace('_', ' ')} of {self.method}"


@dataclass(frozen=True, kw_only=True)
class Information:
    """What knowing more is worth before a choice between methods.

    Parameters
    ----------
    choice : str
        Method of least expected cost as things stand [-]
    all_min : float
        Worth of knowing every quantity: nothing can be worth more [min]
    each : tuple of TimingValue
        Worth of knowing one quantity alone, the greatest first [-]

    Examples
    --------
    >>> Information(choice="pull", all_min=0.0, each=()).choice
    'pull'
    """

    choice: str
    all_min: float
    each: tuple


def value_of_timings(options, *, rivets, second_plate_mm, damage_min, rows, seed):
    """Return what it is worth to know the bands of some methods better before choosing among them.

    Parameters
    ----------
    options : sequence of MethodTimes
        Methods to choose among, at least 1 [-]
    rivets : int
        Rivets in the row, 1 to 200 [-]
    second_plate_mm : float
        Thickness of the second plate, 0.5 to 6 [mm]
    damage_min : float
        What one damaged place costs, 0 or more [min]
    rows : int
        Draws from the bands, 1 to 1 000 000 [-]
    seed : bytes
        Seed [-]

    Returns
    -------
    Information
        Choice, worth of knowing all, worth of each quantity [-]

    Raises
    ------
    ValueError
        If there is no method, or a value lies outside its range.

    Notes
    -----
    Source: raiffa_schlaifer: expected value of perfect information, all of it and by quantity.

    Examples
    --------
    >>> from secondplate.removal_methods import usual_times
    >>> found = value_of_timings([usual_times("pull"), usual_times("punch")], rivets=9, second_plate_mm=2.0,
    ...                          damage_min=60, rows=4000, seed=b"a row")
    >>> found.choice, round(found.all_min, 1), found.each[0].words
    ('pull', 8.1, 'damage probability of punch')
    """
    if not options:
        message = "methods must be at least 1, got 0"
        raise ValueError(message)
    given = {"rivets": rivets, "second_plate_mm": second_plate_mm}
    drawn = [draw_parts(times, **given, rows=rows, seed=seed) for times in options]
    costs = np.array([row_cost_min(parts, damage_min=damage_min) for parts in drawn])
    means = costs.mean(axis=1)
    each = []
    for number, times in enumerate(options):
        middle, rival = mean_parts(times, **given), np.delete(means, number).min(initial=np.inf)
        for name in QUANTITIES:
            part = "curve" if name == "learning_rate" else name
            known = replace(middle, values=middle.values | {part: drawn[number].values[part]})
            cost = np.asarray(row_cost_min(known, damage_min=damage_min))
            worth = min(cost.mean(), rival) - np.minimum(cost, rival).mean()
            each.append(TimingValue(method=times.method, quantity=name, worth_min=float(worth)))
    return Information(
        choice=options[int(np.argmin(means))].method,
        all_min=float(means.min() - costs.min(axis=0).mean()),
        each=tuple(sorted(each, key=lambda value: -value.worth_min)),
    )
