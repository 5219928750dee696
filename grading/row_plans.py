"""Plans for a whole row: read from what anybody may have saved, judged by the library, marked by their cost.

A plan is a few whole numbers and nothing else; what it costs, and what came of its run, is computed anew.
"""

from dataclasses import dataclass, fields
from functools import lru_cache

from grading.catalogues import worked_out
from grading.part_results import UNANSWERED, Outcome, PartResult, invalid
from grading.quantities import read_beside
from grading.row_days import DAYS, number_of, row_day
from secondplate.bench import (
    HABITS,
    PLAN_LIMITS,
    RowExpectation,
    RowPlan,
    best_plan,
    expected_row,
    judge_plan,
)

COUNTED = "studs"  # a word that may be typed or left out beside each number
NEVER_TESTS, _, NEVER_STOPS, _ = HABITS
_EXPECTED = tuple(each.name for each in fields(RowExpectation))


@dataclass(frozen=True, kw_only=True)
class PlanField:
    """One number of a plan: what it is called and what it means, in the order of the form."""

    name: str
    label: str
    hint: str

    @property
    def most(self):
        """Greatest number that it may be."""
        return PLAN_LIMITS[self.name]


FIELDS = (
    PlanField(
        name="test_first",
        label="Studs to test at first",
        hint="welded and pulled one by one before the others",
    ),
    PlanField(
        name="weld_at_once",
        label="Then weld before you pull",
        hint="so many studs, then pull them and look; 0 means all that are left",
    ),
    PlanField(
        name="reset_at",
        label="Failed pulls that bring a re-set",
        hint="counted since the machine was set; 0 means never",
    ),
    PlanField(
        name="test_after_reset",
        label="Studs to test after a re-set",
        hint="one by one, before the others",
    ),
    PlanField(
        name="most_resets",
        label="Re-sets at most",
        hint="when one more is due, the rivets left go to another method",
    ),
)
SLIP_IDS = tuple(habit.replace(" ", "_") for habit in HABITS)


def read_plan(typed):
    """Return ``(plan, problem)`` of what was saved; one of them is None or empty."""
    if not isinstance(typed, dict) or not set(typed) <= set(PLAN_LIMITS):
        return None, "this answer is not a plan for a row"
    numbers = {}
    for field in FIELDS:
        reading = read_beside(typed.get(field.name, ""), COUNTED)
        if reading.value is None:
            return None, f"{field.label}: {reading.problem}"
        if reading.value != int(reading.value) or not 0 <= reading.value <= field.most:
            wanted = f"a whole number from 0 to {field.most}"
            return None, f"{field.label} must be {wanted}, got {reading.value:g}"
        numbers[field.name] = int(reading.value)
    return RowPlan(**numbers), ""


def typed_plan(plan):
    """Write a plan as a learner types it."""
    return {field.name: str(getattr(plan, field.name)) for field in FIELDS}


def plan_lines(typed):
    """Write a typed plan as lines, one a number."""
    return [f"{field.label}: {typed[field.name]}" for field in FIELDS]


@worked_out
def _best_numbers(number):
    """Return the best plan for a day by its number, and what it costs, as plain numbers."""
    day = row_day(number)[1]
    plan = best_plan(day)
    cost = expected_row(plan, day)
    return [getattr(plan, name) for name in PLAN_LIMITS], [getattr(cost, name) for name in _EXPECTED]


@lru_cache(maxsize=4 * DAYS)
def _best(day):
    """Return the best plan for a day and what it costs on the average."""
    if (number := number_of(day)) is None:
        plan = best_plan(day)
        return plan, expected_row(plan, day)
    numbers, cost = _best_numbers(number)
    return (
        RowPlan(**dict(zip(PLAN_LIMITS, numbers, strict=True))),
        RowExpectation(**dict(zip(_EXPECTED, cost, strict=True))),
    )


def best_of(day):
    """Return the best plan for a day."""
    return _best(day)[0]


@lru_cache(maxsize=16 * DAYS)
def judged(day, plan):
    """Return the judgement of a plan for a day; learners of a class share days and often plans."""
    best, least = _best(day)
    return judge_plan(plan, day, best=best, least=least)


def score_row(part, key, typed):
    """Score a plan by what it costs on the average, beside the best plan for the day."""
    if typed == "" or (isinstance(typed, dict) and all(text == "" for text in typed.values())):
        return UNANSWERED
    plan, problem = read_plan(typed)
    if problem:
        return invalid(problem)
    found = judged(key.day, plan)
    cost = _cost_sentence(found.share_lost)
    if found.share_lost <= part.full_within:
        return PartResult(outcome=Outcome.CORRECT, fraction=1.0, sentence=cost)
    fraction = 1 - (found.share_lost - part.full_within) / (part.nothing_beyond - part.full_within)
    shown = [slip for slip in part.slips if slip.id in _shown_ids(found.habits)]
    said = [*(slip.sentence for slip in shown), cost]
    nothing = Outcome.SLIP if shown else Outcome.INCORRECT
    ids = tuple(slip.id for slip in shown)
    return PartResult(
        outcome=Outcome.PARTLY if fraction > 0 else nothing,
        fraction=max(fraction, 0.0),
        slip_id=ids[0] if ids else "",
        more_slip_ids=ids[1:],
        sentence=" ".join(said),
    )


def _shown_ids(habits):
    """Return ids of the slips that habits stand for: who never tests has nothing to stop for."""
    dropped = {NEVER_STOPS} if NEVER_TESTS in habits else set()
    return {habit.replace(" ", "_") for habit in habits if habit not in dropped}


def _cost_sentence(share_lost):
    """Say what a plan costs beside the best one, over all that the day may bring."""
    percent = round(100 * share_lost)
    more = f"about {percent} % more than" if percent else "no more than"
    return f"Over all that such a day may bring, this plan costs {more} the best one."


def right_plan(part, key):
    """Return the best plan as it would be typed."""
    del part
    return typed_plan(best_of(key.day))


def slip_plan(part, key, slip_id):
    """Return a plan that shows the habit of a slip and costs marks, as it would be typed; None: none does."""
    typed = typed_plan(_SHOWING[slip_id](best_of(key.day)))
    result = score_row(part, key, typed)
    return typed if result.outcome is not Outcome.CORRECT and slip_id in result.slip_ids else None


_NUMBERS = tuple(PLAN_LIMITS)
_SHOWING = dict(
    zip(
        SLIP_IDS,
        (
            lambda best: RowPlan(**dict.fromkeys(_NUMBERS, 0)),
            lambda best: RowPlan(test_first=1, test_after_reset=1, weld_at_once=1, reset_at=1, most_resets=2),
            lambda best: RowPlan(**dict.fromkeys(_NUMBERS, 0) | {"test_first": max(best.test_first, 1)}),
            lambda best: RowPlan(**vars(best) | {"reset_at": 1, "most_resets": 0}),
        ),
        strict=True,
    )
)
