"""Who needs a talk, and why: plain rules over one class, each with its limit, none of them a verdict.

What the rules see is a reason to sit down with somebody. What is behind it, only the talk can tell.
"""

from collections import Counter, defaultdict
from typing import NamedTuple

from grading.exercises import PAGES

# Objectives that keep people whole: who is weak there is spoken to before the bench.
SAFETY = (("start_here", "cautions"), ("stud_welding", "safety"))
SAFE_SHARE = 0.8
HALF = 0.5
WEAK_OBJECTIVES = 3
TRIES_SHARE = 1 / 3  # of the exercises answered: all tries used there
FEWEST_EXERCISES = 6  # answered, before tries say anything
SAME_SLIP = 3  # exercises with one kind of slip

RULES = (
    f"less than {SAFE_SHARE:.0%} of the points for keeping people safe",
    "less than half of all points of the pages handed in",
    f"less than half in {WEAK_OBJECTIVES} or more objectives",
    "a page missing that at least half of the class handed in",
    f"one kind of slip in {SAME_SLIP} or more exercises",
    "all tries used in a third or more of the exercises",
    "handed in late",
)


class Talk(NamedTuple):
    """One learner by row, and the reasons in words, the weightiest first."""

    row: int
    reasons: tuple[str, ...]


def talks(tables):
    """Return a ``Talk`` for everybody whom a rule names: safety first, then those with most reasons."""
    found = []
    for row in range(len(tables.names)):
        safety = _safety(tables, row)
        teaching = [*_marks(tables, row), *_missing(tables, row), *_slips(tables, row), *_tries(tables, row)]
        reasons = [*safety, *teaching, *_paper(tables, row)]
        if reasons:
            found.append((not safety, -len(teaching), -len(reasons), Talk(row, tuple(reasons))))
    return [each[-1] for each in sorted(found, key=lambda each: (each[:3], each[3].row))]


def _safety(tables, row):
    """Say where somebody is weak in what keeps people whole."""
    for place, objective in enumerate(tables.objectives):
        share = tables.shares[row, place]
        if objective in SAFETY and share < SAFE_SHARE:
            yield f"safety before the bench: {share:.0%} in {objective_words(objective)}"


def _marks(tables, row):
    """Say where the points are below half."""
    if tables.total_shares[row] < HALF:
        yield f"{tables.total_shares[row]:.0%} of the points of the pages handed in"
    weak = [
        objective_words(objective)
        for objective, share in zip(tables.objectives, tables.shares[row], strict=True)
        if share < HALF
    ]
    if len(weak) >= WEAK_OBJECTIVES:
        yield f"below half in {len(weak)} objectives: {', '.join(weak)}"


def _missing(tables, row):
    """Say which pages are missing that at least half of the class handed in."""
    usual = tables.handed_in.mean(axis=0) >= HALF
    missing = [
        PAGES[page].title
        for page, there, is_usual in zip(tables.pages, tables.handed_in[row], usual, strict=True)
        if is_usual and not there
    ]
    if missing:
        yield f"not handed in: {', '.join(missing)}"


def _slips(tables, row):
    """Say which kind of slip stands in several exercises: one misunderstanding rather than several."""
    exercises = defaultdict(set)
    for slip in tables.slips[row]:
        exercise, _, kind = slip.rsplit(".", 2)
        exercises[kind].add(exercise)
    again = Counter({kind: len(where) for kind, where in exercises.items() if len(where) >= SAME_SLIP})
    for kind, count in again.most_common():
        yield f"the slip \u201c{kind.replace('_', ' ')}\u201d in {count} exercises"


def _tries(tables, row):
    """Say where many exercises took every try."""
    answered = tables.tries[row] > 0
    used_up = (tables.tries[row] >= tables.tries_per_round) & (tables.points[row] < tables.maxima)
    if tables.tries_per_round > 1 and answered.sum() >= FEWEST_EXERCISES:
        share = used_up[answered].mean()
        if share >= TRIES_SHARE:
            yield f"all tries used in {used_up.sum()} of {answered.sum()} exercises"


def _paper(tables, row):
    """Say what is to be said about the hand-in itself."""
    if tables.late[row]:
        yield "handed in late"


def objective_words(objective):
    """Return the short name of an objective: its id in words."""
    return objective[1].replace("_", " ")
