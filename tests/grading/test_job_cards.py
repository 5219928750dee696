"""Job cards: the ways to take are the library's own decision, and none of them is a close call."""

import pytest

from grading.exercises.removal import cards, cards_closed, cards_open, cards_other_metal
from grading.keys import row_keys
from grading.variants import scenario
from secondplate.removal import HARD_LIMITS, METHODS, decide

CARDS = (*cards_closed.EXERCISES, *cards_open.EXERCISES, *cards_other_metal.EXERCISES)
LEARNERS = 60


@pytest.fixture(scope="module")
def cases():
    """Return by card the scenarios of some learners with their keys."""
    found = {}
    for exercise in CARDS:
        drawn = [
            scenario(exercise, course_key="cards", learner=f"learner {number}", round_number=1)
            for number in range(LEARNERS)
        ]
        found[exercise.id] = list(zip(drawn, row_keys(exercise, drawn), strict=True))
    return found


def _decided(numbers):
    """Return what the library decides for one card."""
    # 10 rows: only the spread comes from them, and it is not looked at.
    return decide(
        cards.job_of(numbers),
        rivets=numbers["rivets"],
        damage_min=numbers["damage_min"],
        seed=b"a card",
        rows=10,
    )


@pytest.mark.parametrize("exercise", CARDS[:-1], ids=lambda exercise: exercise.id)
def test_the_way_is_the_decision(exercise, cases):
    """The right way is the one that the library decides on, by at least 15 % over the next one allowed."""
    assert len({keys["way"].right for _, keys in cases[exercise.id]}) > 1
    for numbers, keys in cases[exercise.id][:2]:
        decision = _decided(numbers)
        assert keys["way"].right == (decision.method or "none")
        costs = sorted(each.cost_min for each in decision.outlooks if each.verdict == "allowed")
        assert len(costs) < 2 or costs[1] >= 1.15 * costs[0] - 1e-9  # 1e-9: rounding of a cost in minutes


@pytest.mark.parametrize("exercise", CARDS[:-1], ids=lambda exercise: exercise.id)
def test_the_card_alone_is_enough(exercise, cases):
    """The costs worked out by pencil from the printed row lead to the same way."""
    for numbers, keys in cases[exercise.id]:
        told = cards.card_words(numbers)["outlook_words"].split("; ")
        words = [line.split() for line in told]
        costs = {word[0]: float(word[1]) + numbers["damage_min"] * float(word[6]) for word in words}
        assert tuple(costs) == METHODS
        job = cards.job_of(numbers)
        barred = {limit.method for limit in HARD_LIMITS if limit.met(job)}
        left = {way: cost for way, cost in costs.items() if way not in barred}
        assert keys["way"].right == (min(left, key=left.get) if left else "none")
        first, *others = sorted(left.values()) or [0]
        assert not others or others[0] >= 1.149 * first  # 15 %, less what rounding the printed row takes


def test_no_number_lies_near_a_limit(cases):
    """Numbers keep 15 % from every hard limit, and half a hardness class from the end of a drill's table."""
    for exercise in CARDS:
        for numbers, keys in cases[exercise.id]:
            if exercise.id == CARDS[-1].id and keys["way"].right == "none":
                continue
            assert abs(cards.job_of(numbers).hardness_beyond_drill_hv) >= 30
            for limit in HARD_LIMITS:
                if limit.side != "is" and limit.fact in numbers:
                    limit_value = float(limit.value)
                    assert abs(numbers[limit.fact] - limit_value) >= 0.15 * limit_value


def test_another_fastener_has_no_way(cases):
    """The last card has a way only where hardness and stack are those of a self-piercing rivet."""
    seen = set()
    for numbers, keys in cases[CARDS[-1].id]:
        stack_mm = numbers["top_mm"] + numbers["second_plate_mm"]
        fits = numbers["rivet_hardness_hv"] >= 250 and stack_mm <= 6.5  # softest class; stack of page 2
        assert (keys["way"].right == "none") is not fits
        seen.add(fits)
    assert seen == {True, False}
