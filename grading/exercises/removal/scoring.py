"""Exercise on weighed marks: what they add up to, and how the winner turns with the weights."""

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import option, same, slip, wrong
from grading.exercises.removal.decision import HEADING, apart
from grading.exercises.scenes import scene
from secondplate.bench_random import uniform
from secondplate.removal import weighted_sum

SCORED = ("pull", "drill", "grind")
WEIGHTS = ((60, 25, 15), (55, 15, 30), (50, 35, 15), (20, 55, 25), (15, 35, 50), (25, 15, 60))
CLEAR = 5  # the winner leads by so many percent at least


def _sums(scores, weights):
    """Return the weighted sums of the three ways."""
    return weighted_sum(scores, weights=np.asarray(weights) / 100)


@worked_out
def _score_cards():
    """Return cards of scores with two sets of weights, by whether the winner turns with them."""
    drawn = uniform(b"score cards of page 3", "score", np.arange(9 * 1500)).reshape(1500, 3, 3)
    found = {"stays": [], "turns": []}
    for number, scores in enumerate(20 + 20 * np.floor(5 * drawn).astype(int)):
        if scores[0, 0] <= scores[1:, 0].max():  # nothing spares the second plate as pulling does
            continue
        first, second = WEIGHTS[number % 3], WEIGHTS[3 + number // 3 % 3]
        both = [_sums(scores, weights) for weights in (first, second)]
        of_pull = scores[0]
        # No mark and no weight of the prompt is the answer by chance.
        shown = np.concatenate([scores.ravel(), first, second])
        answers = np.array([both[0][0], both[1][0], of_pull.sum(), of_pull.mean()])
        plain = apart(answers, least=1.5) and np.abs(shown - answers[0]).min() > 0.6
        if not plain or min(np.diff(np.sort(each))[-1] for each in both) < CLEAR:
            continue
        winners = {int(np.argmax(each)) for each in both}
        card = {"scores": scores.tolist(), "first": list(first), "second": list(second)}
        found["turns" if len(winners) == 2 else "stays"].append(card)
    return found


def _draw_scores(draw):
    return scene(draw) | draw.pick("card", _score_cards()[draw.pick("kind", ("stays", "turns", "turns"))])


def _score_words(scenario):
    """Return the scores of each way and both sets of weights in words."""
    scores = {
        f"{way}_scores": ", ".join(f"{score} %" for score in row)
        for way, row in zip(SCORED, scenario["scores"], strict=True)
    }
    return scores | {
        f"{name}_weights": ", ".join(f"{weight} %" for weight in scenario[name])
        for name in ("first", "second")
    }


def _solve_scores(table):
    sums = {
        name: np.array(
            [_sums(scores, weights) for scores, weights in zip(table["scores"], table[name], strict=True)]
        )
        for name in ("first", "second")
    }
    of_pull = np.array([scores[0] for scores in table["scores"]])
    return {
        "sum": NumberKey(
            value=sums["first"][:, 0],
            slips={
                "other_weights": sums["second"][:, 0],
                "no_weights": of_pull.sum(axis=1),
                "mean": of_pull.mean(axis=1),
            },
        ),
        "second_shop": ChoiceKey(right=[SCORED[place] for place in np.argmax(sums["second"], axis=1)]),
        "refused": ChoiceKey(right=same(table, "out")),
    }


SCORING = Exercise(
    id="removal.scoring",
    objective="time",
    title="Marks, weights, and who wins",
    prompt=(
        "{shop} marks each way by three things: care of the second plate, time, and tools at hand. "
        "The best there could be is 100 %. In this order the marks are: "
        "pulling {pull_scores}; drilling {drill_scores}; grinding {grind_scores}. "
        "The shop weighs the three by {first_weights}. "
        "A second shop takes the same marks and weighs them by {second_weights}."
    ),
    shown=_score_words,
    parts=(
        Number(
            id="sum",
            ask="What does pulling get in the first shop, all three weighed?",
            unit="%",
            absolute_tolerance=0.5,
            tolerance_reason="Sums are worked out to whole percent: half of one either way.",
            slips=(
                slip("other_weights", "Those are the weights of the second shop."),
                slip("no_weights", "The marks were just added. Multiply each by its weight first."),
                slip("mean", "That is the plain mean. The weights differ."),
            ),
        ),
        Choice(
            id="second_shop",
            ask="Which way wins in the second shop?",
            options=(
                option("drill", "Drilling."),
                option("pull", "Pulling."),
                option("grind", "Grinding."),
            ),
        ),
        Choice(
            id="refused",
            ask="On one car the limits refuse the way that wins. What now?",
            options=(
                wrong(
                    "lead",
                    "It stays first if its lead is large enough.",
                    "A limit is no criterion among others. No marks outweigh what the car forbids.",
                ),
                option("out", "It is out before any marks are given."),
                wrong(
                    "weight",
                    "Give the second plate more weight and count again.",
                    "Whatever the weights, a refused way can still win. It does not belong on the list.",
                ),
            ),
        ),
    ),
    draw=_draw_scores,
    solve=_solve_scores,
    reasons=(
        "Multiply each mark by its weight and add. "
        "The winner can turn with the weights, though nothing about the ways has changed. "
        "So a score shows what somebody holds dear; it does not find the better way. "
        "Limits come first, then minutes and damage."
    ),
    read_again=HEADING,
)

EXERCISES = (SCORING,)
