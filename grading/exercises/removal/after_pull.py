"""Exercises on what pulls tell of the setting, and on what to do after the first of them."""

from dataclasses import replace
from functools import cache

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Order, OrderKey
from grading.exercises.building_blocks import THREE_FIGURES, option, same, slip, wrong
from grading.exercises.removal.decision import apart
from grading.exercises.removal.row_policy import (
    ACTION_IDS,
    HEADING,
    MODEL_WORDS,
    belief_after,
    row_model,
)
from grading.exercises.scenes import scene
from secondplate.trials import next_step, plan_with_tests_min, reset_first_min, weld_all_min

LOGS = {"fresh": (0, 0), "one_good": (1, 0), "three_good": (3, 0), "one_failed": (1, 1), "four_mixed": (4, 1)}
LOG_TEXTS = {
    "one_good": "One pull, and it held.",
    "one_failed": "One pull, and it failed.",
    "three_good": "Three pulls, none failed.",
    "fresh": "No pull yet.",
    "four_mixed": "Four pulls, one of them failed.",
}


def _log_beliefs(table):
    """Return the belief after each log."""
    return {
        name: belief_after(table, *log) if log[0] else row_model(table).wrong_probability
        for name, log in LOGS.items()
    }


@cache
def _beliefs():
    """Return what is believed where no two logs lead to nearly the same belief, by their order."""
    names = ("belief_percent", "good_fails_percent", "wrong_fails_percent")
    grid = np.meshgrid(np.arange(10, 41, 2), (1, 2, 3, 4, 5), np.arange(25, 66, 5), indexing="ij")
    table = dict(zip(names, (column.ravel() for column in grid), strict=True))
    after = np.array([*_log_beliefs(table).values()])
    right = after[list(LOGS).index("one_failed")]
    chance = table["wrong_fails_percent"] / 100
    prior = table["belief_percent"] / 100
    failing = row_model(table).failure_chance(prior)
    plain = apart(after, share=0.1) & apart([right, chance, prior, prior * chance], share=0.06)
    rows = np.flatnonzero(plain & apart([failing, prior * chance], share=0.06))
    found = {}
    for row in rows:
        found.setdefault(tuple(np.argsort(after[:, row]).tolist()), []).append(
            {name: int(table[name][row]) for name in names}
        )
    return found


def _draw_belief(draw):
    by_order = _beliefs()
    return scene(draw) | draw.pick("row", by_order[draw.pick("order", sorted(by_order))])


def _solve_belief(table):
    model, prior, chance = row_model(table), table["belief_percent"], table["wrong_fails_percent"]
    failing = 100 * model.failure_chance(model.wrong_probability)
    beliefs = np.array([*_log_beliefs(table).values()])
    return {
        "fails": NumberKey(
            value=failing,
            slips={"only_wrong": prior * chance / 100, "mean": (chance + table["good_fails_percent"]) / 2},
        ),
        "belief": NumberKey(
            value=100 * belief_after(table, 1, 1),
            slips={"turned_round": chance + 0.0, "unchanged": prior + 0.0, "both": prior * chance / 100},
        ),
        "logs": OrderKey(
            right=[tuple(list(LOGS)[place] for place in order) for order in np.argsort(beliefs, axis=0).T]
        ),
    }


BELIEF = Exercise(
    id="removal.pull_tells",
    objective="plan",
    title="What does one pull tell?",
    prompt=(
        "At {shop} a row on {vehicle} is about to begin. "
        + MODEL_WORDS
        + "Each pull moves your belief, a failure up and a good pull down."
    ),
    parts=(
        Number(
            id="fails",
            ask="With which chance does the first pull fail?",
            unit="%",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("only_wrong", "A pull can fail with the machine set right as well."),
                slip("mean", "The two cases are not as likely as each other. Weigh them by your belief."),
            ),
        ),
        Number(
            id="belief",
            ask="It has failed. With how much do you believe now that the machine is set wrong?",
            unit="%",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "turned_round",
                    "That is how often a wrong machine fails. How often is a failure due to a wrong machine?",
                ),
                slip("unchanged", "A failure has happened. It must move your belief."),
                slip("both", "That is how often both come together. It has failed already: divide by that."),
            ),
        ),
        Order(
            id="logs",
            ask=(
                "Put these logs in order, from the least belief in a wrong setting to the most. "
                "Belief at the start is the same."
            ),
            points=1.5,
            options=tuple(option(name, text) for name, text in LOG_TEXTS.items()),
        ),
    ),
    draw=_draw_belief,
    solve=_solve_belief,
    reasons=(
        "The chance of a failure is the sum of both cases, each weighed by the belief. "
        "After a failure the new belief is the part of that sum that the wrong machine makes. "
        "Good pulls bring the belief down in small steps, one failure up in a large one. "
        "So after a failure a few good pulls do not make up for it."
    ),
    read_again=HEADING,
)


def _now(table):
    """Return what is believed after the pulls so far, and the row with that belief."""
    belief = belief_after(table, table["pulls"], table["failed"])
    return belief, replace(row_model(table), wrong_probability=belief)


@worked_out
def _next_rows():
    """Return rows after some pulls by what is best now, where it leads clearly over the other plans."""
    sizes = {
        "belief_percent": (10, 15, 20, 30),
        "good_fails_percent": (2, 3),
        "wrong_fails_percent": (40, 50, 60),
        "failed_min": (12, 15, 18),
        "delay_min": (2, 3, 4),
        "reset_min": (20, 25, 30),
        "left": (2, 3, 5, 8, 11, 14, 18),
        "log": (0, 1, 2, 3, 4),
    }
    grid = np.meshgrid(*sizes.values(), indexing="ij")
    table = dict(zip(sizes, (column.ravel() for column in grid), strict=True))
    log = np.array([(1, 0), (2, 0), (1, 1), (2, 1), (3, 1)])[table.pop("log")]
    table |= {"pulls": log[:, 0], "failed": log[:, 1]}
    _, model = _now(table)
    plans = {
        "weld_all": weld_all_min(table["left"], model),
        "test": plan_with_tests_min(table["left"], model, tests=1),
        "reset": reset_first_min(table["left"], model),
    }
    costs = np.array([*plans.values()])
    least, second = np.sort(costs, axis=0)[:2]
    found = {}
    for number, name in enumerate(plans):
        rows = np.flatnonzero((np.argmin(costs, axis=0) == number) & (second > 1.08 * least))
        some = {key: column[rows[:: max(1, len(rows) // 200)]] for key, column in table.items()}
        # A plan of several tests may be better still: such rows are left out.
        for row in np.flatnonzero(np.array(_best_now(some)) == name):
            found.setdefault(name, []).append({key: int(column[row]) for key, column in some.items()})
    return found


def _best_now(table):
    """Return the id of what is best to do now, over all plans."""
    steps = next_step(table["left"], row_model(table), pulls=table["pulls"], failures=table["failed"])
    return [ACTION_IDS[str(action)] for action in steps.action]


def _reset_words(scenario):
    """Return what is believed now, and what would be believed after one good pull more."""
    more = belief_after(scenario, scenario["pulls"] + 1, scenario["failed"])
    return {"now_percent": f"{100 * _now(scenario)[0]:.1f}", "more_percent": f"{100 * more:.1f}"}


def _draw_reset(draw):
    rows = _next_rows()
    return scene(draw) | draw.pick("row", rows[draw.pick("action", sorted(rows))])


def _solve_reset(table):
    return {
        "now": ChoiceKey(right=_best_now(table)),
        "counts_from": ChoiceKey(right=same(table, "anew")),
        "steps": OrderKey(right=same(table, ("stop", "look", "cause", "set", "trial", "rest"))),
    }


RE_SET = Exercise(
    id="removal.re_set",
    objective="plan",
    title="After the first pulls: go on, test, or re-set?",
    prompt=(
        "{left} rivets are left in the row that {shop} draws from {vehicle}. "
        "Pulls with this setting: {pulls}, failed: {failed}. "
        "You believed with {belief_percent} % in a wrong setting before them, and with {now_percent} % now; "
        "one more good pull would make it {more_percent} %. "
        "Set right, {good_fails_percent} % of pulls fail; set wrong, {wrong_fails_percent} %. "
        "A failed pull costs {failed_min} min, a stop for a test {delay_min} min, a re-set {reset_min} min."
    ),
    parts=(
        Choice(
            id="now",
            ask="What is best now, by cost on the average?",
            options=(
                option("weld_all", "Weld all that are left."),
                option("test", "Weld one more, pull it, then decide."),
                option("reset", "Re-set the machine first."),
            ),
        ),
        Choice(
            id="counts_from",
            ask="The machine has been re-set. What do the pulls before it tell of the new setting?",
            options=(
                wrong(
                    "go_on",
                    "They count on: good pulls stay good.",
                    "They were made with another setting. What they told went with it.",
                ),
                wrong(
                    "failures",
                    "Only the failures count on, to be careful.",
                    "They, too, belong to the old setting. The new one has its own belief to begin with.",
                ),
                option("anew", "Nothing: the count begins anew, and so does the testing."),
            ),
        ),
        Order(
            id="steps",
            ask="A pull has failed at the weld. Put the steps in order.",
            points=1.5,
            options=(
                option("rest", "Weld what is left of the row."),
                option("look", "Look at the broken face and the collar, and write down what you see."),
                option("trial", "Weld one stud with the new setting and pull it."),
                option("stop", "Stop welding: no further stud with this setting."),
                option("set", "Change one setting."),
                option("cause", "Say which cause fits what you saw."),
            ),
        ),
    ),
    shown=_reset_words,
    draw=_draw_reset,
    solve=_solve_reset,
    reasons=(
        "A failure moves the belief so far that a re-set often pays, where enough rivets are left. "
        "Near the end of a row the re-set can be the dearest of all. "
        "After it, everything begins anew: one stud, one pull. "
        "Stop, look, name a cause, change one thing, test, and only then go on. "
        "The stop rule of the shop and the maker's procedure come before any average."
    ),
    read_again=HEADING,
)

EXERCISES = (BELIEF, RE_SET)
