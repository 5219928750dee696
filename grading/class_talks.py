"""Who needs a talk, and why: plain rules over one class, each with its limit, none of them a verdict.

What the rules see is a reason to sit down with somebody. What is behind it, only the talk can tell.
"""

from collections import defaultdict
from math import ceil
from typing import NamedTuple

from grading.class_words import percent
from grading.counts import how_many
from grading.exercises import PAGES
from grading.slip_notes import slip_notes

# Objectives that keep people whole: who is weak there is spoken to before the bench.
SAFETY = (("start_here", "cautions"), ("stud_welding", "safety"))
SAFE_SHARE = 0.8
HALF = 0.5
WEAK_SHARE = 0.25  # of the objectives handed in
FEWEST_WEAK = 2
TRIES_SHARE = 1 / 3  # of the exercises answered: all tries used there
FEWEST_EXERCISES = 6  # answered, before tries say anything
SAME_SLIP = 3  # exercises with slips of one row of the notes

RULES = (
    "less than half of the points of the pages handed in",
    f"less than half in a quarter of the objectives, in {FEWEST_WEAK} at least",
    "a page missing that at least half of the class handed in",
    f"slips of one kind, by the instructor's notes, in {SAME_SLIP} or more exercises",
    "all tries used in a third or more of the exercises",
    "handed in late",
)


class Talk(NamedTuple):
    """One learner by row, and the reasons in words, the weightiest first."""

    row: int
    reasons: tuple[str, ...]


def safety_talks(tables):
    """Return a ``Talk`` for everybody who is weak in what keeps people whole, the weakest first."""
    places = [place for place, each in enumerate(tables.objectives) if each in SAFETY]
    found = []
    for row in range(len(tables.names)):
        weak = [
            (tables.shares[row, place], place) for place in places if tables.shares[row, place] < SAFE_SHARE
        ]
        if weak:
            reasons = tuple(
                f"{objective_words(tables.objectives[place])} {percent(share)}" for share, place in weak
            )
            found.append((min(weak), Talk(row, reasons)))
    return [talk for _, talk in sorted(found, key=lambda each: each[0][0])]


def talks(tables):
    """Return a ``Talk`` for everybody whom another rule names, those with most reasons first."""
    found = []
    for row in range(len(tables.names)):
        reasons = [
            reason for rule in (_marks, _missing, _slips, _tries, _late) for reason in rule(tables, row)
        ]
        if reasons:
            found.append(Talk(row, tuple(reasons)))
    return sorted(found, key=lambda talk: -len(talk.reasons))


def _marks(tables, row):
    """Say where the points are below half."""
    if tables.total_shares[row] < HALF:
        yield f"{percent(tables.total_shares[row])} of the points of the pages handed in"
    shares = [
        (objective_words(objective), share)
        for objective, share in zip(tables.objectives, tables.shares[row], strict=True)
        if share == share  # a page that was not handed in has no share
    ]
    weak = [name for name, share in shares if share < HALF]
    if len(weak) >= max(FEWEST_WEAK, ceil(WEAK_SHARE * len(shares))):
        yield f"below half in {len(weak)} of {len(shares)} objectives ({', '.join(weak)})"


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
    """Say which row of the notes covers slips in several exercises."""
    exercises, notes = defaultdict(set), slip_notes()
    for slip in tables.slips[row]:
        if slip in notes:
            exercises[notes[slip]].add(slip.rsplit(".", 2)[0])
    for note, where in sorted(exercises.items(), key=lambda pair: (-len(pair[1]), pair[0])):
        if len(where) >= SAME_SLIP:
            yield f"one misunderstanding in {len(where)} exercises: {note.behind}"


def _tries(tables, row):
    """Say where many exercises took every try that there is."""
    answered = tables.tries[row] > 0
    used_up = answered & (tables.tries[row] >= tables.tries_per_round)
    enough = tables.tries_per_round > 1 and answered.sum() >= FEWEST_EXERCISES
    if enough and used_up.sum() >= TRIES_SHARE * answered.sum():
        yield f"all tries used in {used_up.sum()} of {how_many(answered.sum(), 'exercise')}"


def _late(tables, row):
    """Say whether the hand-in came late."""
    if tables.late[row]:
        yield "handed in late"


def objective_words(objective):
    """Return the short name of an objective: its id in words."""
    return objective[1].replace("_", " ")
