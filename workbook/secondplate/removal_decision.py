"""Choose how to take a row of rivets out: hard limits first, then minutes and damage, with reasons.

Teaches the choice; it is no repair procedure. The vehicle maker's current procedure, the equipment manual and
local law come first, and may forbid what is allowed here.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.bands import Band
from secondplate.removal_choice import cheapest_allowed, times_of_all
from secondplate.removal_hazards import hazards_of
from secondplate.removal_information import row_cost_min, value_of_timings
from secondplate.removal_limits import METHODS, screen
from secondplate.removal_methods import MOST_RIVETS, mean_parts
from secondplate.removal_simulation import simulate_rows

_WORTH_SAYING_MIN = 0.5
NO_PROCEDURE = (
    "This is no repair procedure: the vehicle maker's current procedure, the equipment manual and local law "
    "come first."
)


@dataclass(frozen=True, kw_only=True)
class MethodOutlook:
    """What one method would give on a job, whether it is allowed or not.

    Parameters
    ----------
    method : str
        The method [-]
    verdict : str
        One of ``removal_limits.VERDICTS`` [-]
    minutes : Band
        Time of the row: what 1 in 10 rows does not reach, mean, what 9 in 10 do not reach [min]
    damaged : float
        Damaged places of the second plate, on the average [-]
    chance_of_damage : float
        Chance that at least one place is damaged [-]
    cost_min : float
        Mean time with the damage counted [min]

    Examples
    --------
    >>> from secondplate.removal_limits import RemovalJob
    >>> job = RemovalJob(behind="closed", bond="none", second_plate_mm=2.0, rivet_hardness_hv=480)
    >>> decide(job, rivets=12, damage_min=60, seed=b"a job").outlooks[1].verdict
    'refused'
    """

    method: str
    verdict: str
    minutes: Band
    damaged: float
    chance_of_damage: float
    cost_min: float


@dataclass(frozen=True, kw_only=True)
class Decision:
    """A chosen method with its reasons, and what would change it.

    Parameters
    ----------
    method : str
        The method, or None where no method is allowed as the job stands [-]
    outlooks : tuple of MethodOutlook
        All methods in their order, the refused ones too [-]
    reasons : tuple of str
        Sentences that say why [-]
    changes : tuple of str
        Sentences that say what would change it [-]
    first : str
        What comes before any decision of this library [-]

    Examples
    --------
    >>> from secondplate.removal_limits import RemovalJob
    >>> job = RemovalJob(behind="closed", bond="none", second_plate_mm=2.0, rivet_hardness_hv=480)
    >>> decide(job, rivets=12, damage_min=60, seed=b"a job").method
    'pull'
    """

    method: str
    outlooks: tuple
    reasons: tuple
    changes: tuple
    first: str = NO_PROCEDURE

    @property
    def hazards(self):
        """Hazards of the chosen method, each with what is done about it."""
        return hazards_of(self.method) if self.method else ()


def decide(job, *, rivets, damage_min, seed, times=None, rows=5000):
    """Choose a method: refuse by hard limits, then take the least expected cost.

    Parameters
    ----------
    job : RemovalJob
        One job [-]
    rivets : int
        Rivets in the row, 1 to 200 [-]
    damage_min : float
        What one damaged place of the second plate costs, 0 or more [min]
    seed : bytes
        Seed of the simulation [-]
    times : sequence of MethodTimes
        Bands of every method in the order of ``METHODS``; those of the library unless told [-]
    rows : int
        Rows to simulate for each method, 1 to 1 000 000 [-]

    Returns
    -------
    Decision
        Method, outlooks, reasons and changes [-]

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
    >>> job = RemovalJob(behind="closed", bond="none", second_plate_mm=2.0, rivet_hardness_hv=480)
    >>> print(decide(job, rivets=12, damage_min=60, seed=b"a job").reasons[1])
    punch is refused: Nobody can reach the button from behind.
    """
    times = times_of_all(times)
    given = {"rivets": rivets, "second_plate_mm": job.second_plate_mm}
    choice = cheapest_allowed(job, rivets=rivets, damage_min=damage_min, times=times)
    screening = screen(job)
    outlooks = tuple(
        _outlook(each, given, screening, choice, simulate_rows(each, **given, rows=rows, seed=seed))
        for each in times
    )
    allowed = [each for each in outlooks if each.method in screening.allowed]
    best = next((each for each in allowed if each.method == choice.method), None)
    changes = [*_lifted(outlooks, screening, best)]
    if len(allowed) > 1:
        options = [each for each in times if each.method in screening.allowed]
        changes += _other_rows(options, best.method, rivets, job.second_plate_mm, damage_min)
        changes += _other_prices(allowed, best)
        changes += _timings(options, given, damage_min, rows, seed)
    return Decision(
        method=best and best.method,
        outlooks=outlooks,
        reasons=tuple(_reasons(allowed, screening, best, damage_min)),
        changes=tuple(changes),
    )


def _outlook(times, given, screening, choice, rows):
    """Put together what the means give and what only simulated rows can tell: spread and chance."""
    means = mean_parts(times, **given)
    low, high = rows.minutes_between(0.1, 0.9)
    return MethodOutlook(
        method=times.method,
        verdict=screening.verdicts[times.method],
        minutes=Band(
            low=min(low, means.minutes),
            best=means.minutes,
            high=max(high, means.minutes),
            basis="simulation from own judgement",
        ),
        damaged=means.damaged,
        chance_of_damage=rows.chance_of_damage,
        cost_min=choice.costs_min[times.method],
    )


def _reasons(allowed, screening, best, damage_min):
    """Say what was refused and why, and what the chosen method costs against the next."""
    for method in METHODS:
        for limit in screening.against(method):
            yield (
                f"{method} is {limit.verdict}: {limit.reason}"
                if limit.verdict == "refused"
                else (f"{method} is not allowed yet: {limit.reason}")
            )
    if best is None:
        yield "No method is allowed on this job as it stands."
        return
    yield (
        f"{best.method} costs {best.cost_min:.0f} min on the average: {best.minutes.best:.0f} min of work "
        f"and {best.damaged:.2f} damaged places at {damage_min:g} min each."
    )
    for other in sorted(allowed, key=lambda each: each.cost_min)[1:]:
        yield (
            f"{other.method} costs {other.cost_min - best.cost_min:.0f} min more: "
            f"{other.minutes.best:.0f} min of work and {other.damaged:.2f} damaged places."
        )


def _lifted(outlooks, screening, best):
    """Say which limits, once lifted, would make another method the better one."""
    for each in outlooks:
        limits = screening.against(each.method)
        if not limits or (best and each.cost_min > best.cost_min - _WORTH_SAYING_MIN):
            continue
        steps = " ".join(dict.fromkeys(limit.lifted_by for limit in limits))
        saved = f", {best.cost_min - each.cost_min:.0f} min less" if best else ""
        yield f"{steps} Then {each.method} would cost {each.cost_min:.0f} min{saved}."


def _other_rows(options, best, rivets, second_plate_mm, damage_min):
    """Say at which shorter and longer rows another allowed method would cost less."""
    rows = np.arange(1, MOST_RIVETS + 1)
    costs = np.array(
        [
            row_cost_min(
                mean_parts(times, rivets=rows, second_plate_mm=second_plate_mm), damage_min=damage_min
            )
            for times in options
        ]
    )
    wins = np.array([times.method for times in options])[np.argmin(costs, axis=0)]
    others = np.flatnonzero(wins != best) + 1
    shorter, longer = others[others < rivets], others[others > rivets]
    if shorter.size:
        yield f"With {shorter[-1]} rivets or fewer {wins[shorter[-1] - 1]} would cost less."
    if longer.size:
        yield f"With {longer[0]} rivets or more {wins[longer[0] - 1]} would cost less."


def _other_prices(allowed, best):
    """Say at which price of a damaged place another method would cost as much."""
    for other in allowed:
        slower, safer = other.minutes.best - best.minutes.best, best.damaged - other.damaged
        if other is not best and slower * safer > 0:
            side = "above" if safer > 0 else "below"
            yield (
                f"With a damaged place {side} {slower / safer:.0f} min {other.method} would cost less than "
                f"{best.method}."
            )


def _timings(options, given, damage_min, rows, seed):
    """Say what it is worth to know the bands better."""
    found = value_of_timings(options, **given, damage_min=damage_min, rows=rows, seed=seed)
    if found.all_min < _WORTH_SAYING_MIN:
        yield f"Better timings would hardly change it: knowing all of them is worth {found.all_min:.1f} min."
        return
    top = found.each[0]
    yield (
        f"Own timings could change it: knowing all of them is worth {found.all_min:.1f} min a row, "
        f"the {top.words} alone {top.worth_min:.1f} min."
    )
