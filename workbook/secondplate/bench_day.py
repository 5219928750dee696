"""A row of rivets for the virtual bench: a plan for it, what its day may bring, and what things take.

What comes of a stud is counted on studs that ``bench_pull`` welded and pulled with the right and with the
wrong set-up, so the chances of failure and damage are the bench's own. How often a set-up is wrong, what
things take and what damage costs is given with the day; where the library sets it, it is own judgement.
"""

from dataclasses import dataclass, replace
from functools import cache

import numpy as np

from secondplate.bench_pull import StudPull, pull_studs
from secondplate.bench_settings import chart_settings, draw_job
from secondplate.bench_site import draw_site
from secondplate.bench_weld import weld
from secondplate.checks import require_at_least, require_between
from secondplate.removal_methods import MOST_RIVETS, damage_chance, mean_of_band, usual_times
from secondplate.trials_checks import share, whole

MOST_STUDS = 20_000
_MINUTES = ("rivet_min", "failed_pull_min", "test_delay_min", "reset_min", "other_min", "damage_min")
_SHARES = (
    "wrong_probability",
    "wrong_after_reset_probability",
    "drift_probability",
    "damage_after_failure_probability",
    "other_damage_probability",
)
PLAN_LIMITS = {
    "test_first": 20,
    "test_after_reset": 20,
    "weld_at_once": MOST_RIVETS,
    "reset_at": 20,
    "most_resets": 5,
}


@dataclass(frozen=True, kw_only=True)
class RowPlan:
    """How somebody means to work through a row: five whole numbers, or arrays of them for many plans.

    Parameters
    ----------
    test_first : int or array
        Studs welded and pulled one by one before the others, 0 to 20 [-]
    test_after_reset : int or array
        The same after each re-set, 0 to 20 [-]
    weld_at_once : int or array
        Studs welded at once after that before they are pulled, 0 for all that are left, up to 200 [-]
    reset_at : int or array
        Failed pulls since the machine was set at which it is set again, 0 for never, up to 20 [-]
    most_resets : int or array
        Re-sets at most, 0 to 5; where one more is due, the rivets left go to another method [-]

    Raises
    ------
    ValueError
        If a number is no whole number in its range.

    Examples
    --------
    >>> RowPlan(test_first=1, test_after_reset=1, weld_at_once=0, reset_at=1, most_resets=1).test_first
    1
    """

    test_first: int
    test_after_reset: int
    weld_at_once: int
    reset_at: int
    most_resets: int

    def __post_init__(self):
        """Refuse numbers that are no plan."""
        for name, most in PLAN_LIMITS.items():
            whole(name.replace("_", " "), getattr(self, name), least=0, most=most)


@dataclass(frozen=True, kw_only=True, eq=False)
class RowDay:
    """A row, what its day may bring, and what things take; a day is equal to itself only.

    Parameters
    ----------
    rivets : int
        Rivets in the row, 1 to 200 [-]
    right : StudPull
        Studs pulled with the right set-up, as ``stud_pool`` gives them [-]
    wrong : StudPull
        As many studs pulled with the wrong set-up [-]
    wrong_probability : float
        Chance that the day begins with the wrong set-up, 0 to 1 [-]
    wrong_after_reset_probability : float
        Chance that it is still wrong after a re-set, 0 to 1 [-]
    drift_probability : float
        Chance that a right set-up goes wrong with each stud welded, 0 to 1 [-]
    rivet_min : float
        Time for each rivet pulled, weld and all, 0 or more [min]
    failed_pull_min : float
        Time that a failed pull costs on top, its rivet done again, 0 or more [min]
    test_delay_min : float
        Time that it costs to stop welding and pull, 0 or more [min]
    reset_min : float
        Time that a re-set costs, 0 or more [min]
    other_min : float
        Time for each rivet by the other method, 0 or more [min]
    damage_min : float
        What one damaged place costs, 0 or more [min]
    damage_after_failure_probability : float
        Chance that a rivet done again damages its place, 0 to 1 [-]
    other_damage_probability : float
        Chance that the other method damages a place, 0 to 1 [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or the studs of both set-ups are not as many.

    Notes
    -----
    A place is damaged where the top plate is dished or the second plate is torn.

    Examples
    --------
    >>> example_day().failure_probabilities
    (0.0325, 0.7525)
    """

    rivets: int
    right: StudPull
    wrong: StudPull
    wrong_probability: float
    wrong_after_reset_probability: float
    drift_probability: float
    rivet_min: float
    failed_pull_min: float
    test_delay_min: float
    reset_min: float
    other_min: float
    damage_min: float
    damage_after_failure_probability: float
    other_damage_probability: float

    def __post_init__(self):
        """Refuse what is no day."""
        whole("rivets", self.rivets, least=1, most=MOST_RIVETS)
        for name in _MINUTES:
            words = name.removesuffix("_min").replace("_", " ")
            require_at_least(words, getattr(self, name), 0, unit="min")
        for name in _SHARES:
            share(name.replace("_", " "), getattr(self, name))
        sizes = [np.size(pool.rivet_out) for pool in self.pools]
        require_between("studs with the wrong set-up", sizes[1], sizes[0], sizes[0], unit="")

    @property
    def pools(self):
        """Studs of the right and of the wrong set-up."""
        return (self.right, self.wrong)

    @property
    def failure_probabilities(self):
        """Chance that a pull fails with the right and with the wrong set-up: counted, so without error."""
        return tuple(round(float(1 - np.mean(pool.rivet_out)), 9) for pool in self.pools)

    @property
    def damage_probabilities(self):
        """Chance that a pulled rivet leaves a damaged place with either set-up, done again or not."""
        after = self.damage_after_failure_probability
        harmed = [pool.top_plate_dished | pool.second_plate_torn for pool in self.pools]
        return tuple(
            round(float(np.mean(np.where(pool.rivet_out, harm, harm + (1 - harm) * after))), 9)
            for pool, harm in zip(self.pools, harmed, strict=True)
        )


def stud_pool(settings, job, site, *, seed, studs=2000):
    """Weld and pull many studs with one set-up: what its rows are then drawn from.

    Parameters
    ----------
    settings : WeldSettings
        What is set [-]
    job : WeldJob
        Rivet and machine [-]
    site : PullSite
        Joint and puller [-]
    seed : bytes
        Seed [-]
    studs : int
        How many, 1 to 20 000 [-]

    Returns
    -------
    StudPull
        What came of each [-]

    Raises
    ------
    ValueError
        If the count or the seed is refused.

    Examples
    --------
    >>> from secondplate.bench_settings import chart_settings, draw_job
    >>> from secondplate.bench_site import draw_site
    >>> pool = stud_pool(chart_settings(stud_diameter_mm=6), draw_job(b"a day"), draw_site(b"a day"),
    ...                  seed=b"a day", studs=50)
    >>> len(pool.result)
    50
    """
    number = np.arange(1, 1 + int(whole("studs", studs, least=1, most=MOST_STUDS)))
    outcome = weld(settings, job, seed=seed, number=number)
    return pull_studs(outcome, settings, job, site, seed=seed, number=number)


@cache
def example_day():
    """Return a day to try plans on: a row of twenty on ordinary plates, a machine that may give too little.

    Returns
    -------
    RowDay
        The day; times and chances of damage are the means of ``removal_methods`` [-]

    Notes
    -----
    Source: own_judgement for how often a set-up is wrong and what a stop and a re-set take.

    Examples
    --------
    >>> example_day().rivets
    20
    """
    seed, settings = b"example of a day", chart_settings(stud_diameter_mm=6)
    job = replace(draw_job(seed), current_share=1.0, voltage_v=30.0, rivet_hold_n=2000.0)
    right, wrong = (
        stud_pool(replace(settings, current_a=current), job, draw_site(seed), seed=seed, studs=400)
        for current in (settings.current_a, 370.0)
    )
    return RowDay(
        rivets=20,
        right=right,
        wrong=wrong,
        wrong_probability=0.25,
        wrong_after_reset_probability=0.05,
        drift_probability=0.005,
        test_delay_min=4.0,
        reset_min=20.0,
        damage_min=60.0,
        **usual_row_times(),
    )


def usual_row_times(second_plate_mm=2.0):
    """Return what a rivet takes and how often it is harmed: pulled, done again, or drilled.

    Parameters
    ----------
    second_plate_mm : float
        Thickness of the second plate, 0.5 to 6 [mm]

    Returns
    -------
    dict of str to float
        Fields of ``RowDay`` by name; the other method is drilling [-]

    Raises
    ------
    ValueError
        If the thickness lies outside its range.

    Notes
    -----
    Source: means of the bands of table removal_times, own_judgement. A drilled rivet carries its share of
    rework in its time and in its damage.

    Examples
    --------
    >>> usual_row_times()["rivet_min"]
    4.5
    """
    pull, drill = usual_times("pull"), usual_times("drill")
    again = mean_of_band(drill.failure_probability)
    sound, after = (
        damage_chance(mean_of_band(band), second_plate_mm=second_plate_mm)
        for band in (drill.damage_probability, drill.damage_after_failure_probability)
    )
    done_again = damage_chance(
        mean_of_band(pull.damage_after_failure_probability), second_plate_mm=second_plate_mm
    )
    return {
        "rivet_min": round(mean_of_band(pull.first_min), 1),
        "failed_pull_min": round(mean_of_band(pull.rework_min), 1),
        "other_min": round(mean_of_band(drill.first_min) + again * mean_of_band(drill.rework_min), 1),
        "damage_after_failure_probability": round(done_again, 3),
        "other_damage_probability": round((1 - again) * sound + again * after, 3),
    }
