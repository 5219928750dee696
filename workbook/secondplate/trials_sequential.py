"""Sequential test of pulls: after each pull accept the set-up, reject it, or go on.

The probability ratio test for a failure probability that is good and one that is bad.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.trials_checks import counted, open_share, pulls_and_failures, share, whole

DECISIONS = ("accept", "go on", "reject")
_GRACE = 1e-9  # a line that is met is not missed by the last binary digit


@dataclass(frozen=True, kw_only=True)
class SequentialPlan:
    """Two parallel lines over the number of pulls: accept at or below one, reject at or above the other.

    Parameters
    ----------
    good_failure_probability : float
        Failure probability p1 of a set-up that is to be accepted, between 0 and 1 [-]
    bad_failure_probability : float
        Failure probability p2 of one that is to be rejected, above p1 [-]
    producer_risk : float
        Chance alpha to reject a good set-up, between 0 and 1 [-]
    consumer_risk : float
        Chance beta to accept a bad one; both risks together below 1 [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or p2 is not above p1.

    Notes
    -----
    Source: nist_handbook, section 6.2.6; wald_1947.

    Examples
    --------
    >>> plan = SequentialPlan(good_failure_probability=0.01, bad_failure_probability=0.10,
    ...                       producer_risk=0.05, consumer_risk=0.10)
    >>> round(plan.accept_intercept, 5), round(plan.reject_intercept, 5), round(plan.slope, 5)
    (0.93886, 1.20538, 0.03975)
    """

    good_failure_probability: float
    bad_failure_probability: float
    producer_risk: float
    consumer_risk: float

    def __post_init__(self):
        """Refuse probabilities out of range or order."""
        good = open_share("good failure probability", self.good_failure_probability)
        bad = open_share("bad failure probability", self.bad_failure_probability)
        if np.any(bad <= good):
            message = f"bad failure probability must be above the good one of {good}, got {bad}"
            raise ValueError(message)
        risks = open_share("producer risk", self.producer_risk) + open_share(
            "consumer risk", self.consumer_risk
        )
        if np.any(risks >= 1):
            message = f"both risks together must be below 1, got {np.max(risks):.6g}"
            raise ValueError(message)

    @property
    def _steps(self):
        """What a failure adds to the log of the probability ratio, and what a good pull takes off."""
        good, bad = self.good_failure_probability, self.bad_failure_probability
        return np.log(bad / good), np.log((1 - good) / (1 - bad))

    @property
    def accept_intercept(self):
        """How far h1 the line of acceptance starts below 0."""
        return plain(np.log((1 - self.producer_risk) / self.consumer_risk) / sum(self._steps))

    @property
    def reject_intercept(self):
        """How far h2 the line of rejection starts above 0."""
        return plain(np.log((1 - self.consumer_risk) / self.producer_risk) / sum(self._steps))

    @property
    def slope(self):
        """Slope s of both lines in failures a pull."""
        return plain(self._steps[1] / sum(self._steps))

    def accept_at(self, pulls):
        """Return the most failures at which to accept after so many pulls; -1 where none is few enough."""
        pulls = whole("pulls", pulls, least=1)
        return counted(np.maximum(np.floor(self.slope * pulls - self.accept_intercept + _GRACE), -1))

    def reject_at(self, pulls):
        """Return the fewest failures at which to reject after so many pulls."""
        pulls = whole("pulls", pulls, least=1)
        return counted(np.ceil(self.slope * pulls + self.reject_intercept - _GRACE))

    def decide(self, pulls, failures):
        """Return the decision after so many pulls and failures, one of ``DECISIONS``."""
        pulls, failures = pulls_and_failures(pulls, failures)
        side = (failures > self.accept_at(pulls)).astype(int) + (failures >= self.reject_at(pulls))
        words = np.array(DECISIONS)[side]
        return str(words) if words.ndim == 0 else words

    @property
    def first_acceptance(self):
        """Fewest pulls, all good, after which the set-up is accepted."""
        return counted(np.ceil(self.accept_intercept / self.slope - _GRACE))


def average_pulls(plan, *, bad):
    """Return how many pulls a sequential test takes on the average, by the approximation of its author.

    Parameters
    ----------
    plan : SequentialPlan
        The plan [-]
    bad : bool
        Whether the set-up is bad (p2) or good (p1) [-]

    Returns
    -------
    float or numpy.ndarray
        Average number of pulls [-]

    Notes
    -----
    Source: wald_1947: expected log ratio at the end over that of one pull; overshoot is neglected.

    Examples
    --------
    >>> plan = SequentialPlan(good_failure_probability=0.01, bad_failure_probability=0.10,
    ...                       producer_risk=0.05, consumer_risk=0.10)
    >>> round(average_pulls(plan, bad=False), 2), round(average_pulls(plan, bad=True), 2)
    (27.96, 16.45)
    """
    up, down = plan._steps
    failing = plan.bad_failure_probability if bad else plan.good_failure_probability
    accepted = plan.consumer_risk if bad else 1 - plan.producer_risk
    ends = (1 - accepted) * plan.reject_intercept - accepted * plan.accept_intercept
    return plain(ends * (up + down) / (failing * up - (1 - failing) * down))


def exact_sequential(plan, *, failure_probability, last_pull):
    """Return what a truncated sequential test really does, by following every path.

    Parameters
    ----------
    plan : SequentialPlan
        The plan [-]
    failure_probability : float
        Chance that one pull fails, 0 to 1 [-]
    last_pull : int
        Pull at which the test is broken off, at least 1 [-]

    Returns
    -------
    tuple of float
        Chance to accept, chance to reject, chance to be left without decision, average pulls [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: binomial_law, step by step over the lines of the plan.

    Examples
    --------
    >>> plan = SequentialPlan(good_failure_probability=0.01, bad_failure_probability=0.10,
    ...                       producer_risk=0.05, consumer_risk=0.10)
    >>> accepted, rejected, open_, average = exact_sequential(plan, failure_probability=0.6, last_pull=12)
    >>> round(rejected, 3), round(average, 2)
    (1.0, 3.33)
    """
    failing = float(share("failure probability", failure_probability))
    last = int(whole("last pull", last_pull, least=1, most=10_000))
    going, done, average = np.zeros(last + 2), {"accept": 0.0, "reject": 0.0}, 0.0
    going[0] = 1.0
    failures = np.arange(last + 2)
    for pull in range(1, last + 1):
        average += going.sum()
        going = (1 - failing) * going + failing * np.concatenate(([0.0], going[:-1]))
        for word, ends in (
            ("accept", failures <= plan.accept_at(pull)),
            ("reject", failures >= plan.reject_at(pull)),
        ):
            done[word] += going[ends].sum()
            going = np.where(ends, 0.0, going)
    return tuple(float(part) for part in (done["accept"], done["reject"], going.sum(), average))
