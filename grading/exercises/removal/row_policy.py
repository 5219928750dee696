"""Exercises on planning a row: weld one and pull it, or weld the row, or re-set first."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, option, same, slip, wrong
from grading.exercises.removal.decision import apart
from grading.exercises.scenes import scene
from secondplate.trials import (
    ACTIONS,
    RowModel,
    best_policy,
    plan_with_tests_min,
    reset_first_min,
    weld_all_min,
    wrong_belief,
)

HEADING = "Weld one, or weld the row?"
WELD_ALL, TEST, RESET_FIRST = ACTIONS
ACTION_IDS = {WELD_ALL: "weld_all", TEST: "test", RESET_FIRST: "reset"}
SIZES = {
    "rivets": (4, 6, 8, 10, 12, 15, 18, 24),
    "belief_percent": (10, 15, 20, 30, 40, 50),
    "good_fails_percent": (2, 3, 4),
    "wrong_fails_percent": (40, 50, 60),
    "failed_min": (10, 12, 15, 18),
    "delay_min": (3, 4, 6),
    "reset_min": (15, 20, 25, 30),
}


def row_model(table):
    """Return the beliefs and times of a table of rows; a re-set makes the machine right."""
    return RowModel(
        wrong_probability=table["belief_percent"] / 100,
        good_failure_probability=table["good_fails_percent"] / 100,
        wrong_failure_probability=table["wrong_fails_percent"] / 100,
        failed_pull_min=table.get("failed_min", 0),
        test_delay_min=table.get("delay_min", 0),
        reset_min=table.get("reset_min", 0),
    )


def belief_after(table, pulls, failures):
    """Return the belief that the machine is set wrong after some pulls."""
    return wrong_belief(row_model(table), pulls=pulls, failures=failures)


# What the prompts take for granted; the example of the page.
EXAMPLE = RowModel(
    wrong_probability=0.2,
    good_failure_probability=0.02,
    wrong_failure_probability=0.6,
    failed_pull_min=15,
    test_delay_min=4,
    reset_min=25,
)

PREDICT_ROW = Exercise(
    id="removal.predict_row",
    objective="plan",
    title="Predict: twelve rivets, a machine just set",
    prompt=(
        "{shop} is to draw twelve rivets from {vehicle}. "
        "The machine was set this morning, and such a setting is wrong about one time in five. "
        "Decide before you read on."
    ),
    parts=(
        Choice(
            id="first",
            ask="What comes first?",
            options=(
                wrong(
                    "weld_all",
                    "Weld all twelve, then pull: the gun is warm and it goes faster.",
                    "If the setting is wrong, all twelve studs have to come off again.",
                ),
                option("test", "Weld one, pull it, and then decide."),
                wrong(
                    "reset",
                    "Set the machine anew: then nothing can be wrong.",
                    "Four times in five it was right, and the time was for nothing.",
                ),
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {"first": ChoiceKey(right=same(table, ACTION_IDS[best_policy(12, EXAMPLE).action]))},
    reasons=(
        "One stud tells a great deal about a setting and costs little. "
        "It tells nothing that would count as a proof. "
        "With few rivets left it may not pay at all: that is worked out below."
    ),
    read_again=HEADING,
    counts=False,
)


def _plans(table):
    """Return what the three plans cost on the average."""
    rivets, model = table["rivets"], row_model(table)
    return {
        "weld_all": weld_all_min(rivets, model),
        "test": plan_with_tests_min(rivets, model, tests=1),
        "reset": reset_first_min(rivets, model),
    }


def _policy_answers(table):
    """Return the answers to both numbers, and what the slips make of them."""
    rivets, model, failed_min = table["rivets"], row_model(table), table["failed_min"]
    plans = _plans(table)
    failing = model.failure_chance(model.wrong_probability)
    after_good = model.failure_chance(belief_after(table, 1, 0))
    untold = (rivets - 1) * failed_min * (failing - after_good) * (1 - failing)
    return {
        "weld_all": {
            "right": plans["weld_all"],
            "if_wrong": rivets * model.wrong_failure_probability * failed_min,
            "if_right": rivets * model.good_failure_probability * failed_min,
            "one": failing * failed_min,
        },
        "one_test": {
            "right": plans["test"],
            "not_learnt": plans["test"] + untold,
            "no_reset": plans["test"] - failing * table["reset_min"],
            "no_failed": plans["test"] - failing * failed_min,
        },
    }


@cache
def _plain_rows():
    """Return rows by the plan that costs least, where it leads clearly and every slip shows."""
    grid = np.meshgrid(*SIZES.values(), indexing="ij")
    table = dict(zip(SIZES, (column.ravel() for column in grid), strict=True))
    costs = np.array([*_plans(table).values()])
    least, second = np.sort(costs, axis=0)[:2]
    plain = second > 1.06 * least
    for answers in _policy_answers(table).values():
        plain &= apart([*answers.values()], share=0.05)
    best = np.argmin(costs, axis=0)
    return {
        name: [
            {key: int(column[row]) for key, column in table.items()}
            for row in np.flatnonzero(plain & (best == number))[::7]
        ]
        for number, name in enumerate(_plans(table))
    }


def _draw_policy(draw):
    rows = _plain_rows()
    return scene(draw) | draw.pick("row", rows[draw.pick("best", sorted(rows))])


def _solve_policy(table):
    costs = _plans(table)
    answers = _policy_answers(table)
    names = list(costs)
    return {
        part: NumberKey(
            value=found["right"], slips={name: value for name, value in found.items() if name != "right"}
        )
        for part, found in answers.items()
    } | {
        "plan": ChoiceKey(right=[names[place] for place in np.argmin([*costs.values()], axis=0)]),
        "two_left": ChoiceKey(
            right=[ACTION_IDS[str(action)] for action in best_policy(2, row_model(table)).action]
        ),
    }


MODEL_WORDS = (
    "You believe with {belief_percent} % that the machine is set wrong. "
    "Set right, {good_fails_percent} % of pulls fail; set wrong, {wrong_fails_percent} %. "
)

ROW_POLICY = Exercise(
    id="removal.row_policy",
    objective="plan",
    title="Weld the row, or test one?",
    prompt=(
        "{shop} has {rivets} rivets in a row. "
        + MODEL_WORDS
        + "A failed pull costs {failed_min} min. "
        + "To stop and pull one before the rest is welded costs {delay_min} min. "
        + "A re-set costs {reset_min} min, and then the machine is right. "
        + "The plan with a test: if it fails, re-set and weld the rest; if not, weld the rest. "
        + "After one good pull the belief in a wrong setting is {after_good} %."
    ),
    shown=lambda scenario: {"after_good": f"{100 * belief_after(scenario, 1, 0):.2f}"},
    parts=(
        Number(
            id="weld_all",
            ask="What do failed pulls cost on the average if the whole row is welded at once?",
            unit="min",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "if_wrong", "That is the cost if the machine is wrong. Weigh both cases by your belief."
                ),
                slip(
                    "if_right", "That is the cost if the machine is right. Weigh both cases by your belief."
                ),
                slip("one", "That is for one rivet. The row has more."),
            ),
        ),
        Number(
            id="one_test",
            ask="What does the plan with one test cost on the average?",
            unit="min",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            points=2.0,
            slips=(
                slip(
                    "not_learnt",
                    "After a good pull you expect fewer failures than before. Use the new belief.",
                    credit=0.5,
                ),
                slip("no_reset", "If the test fails, the machine is re-set, and that takes its time."),
                slip("no_failed", "If the test fails, its own place costs as much as any failed pull."),
            ),
        ),
        Choice(
            id="plan",
            ask="Which plan costs least on the average?",
            options=(
                option("weld_all", "Weld the whole row."),
                option("reset", "Re-set first, then weld the row."),
                option("test", "Weld one, pull it, then decide."),
            ),
        ),
        Choice(
            id="two_left",
            ask="Suppose the same row had only two rivets. Which plan then?",
            options=(
                option("weld_all", "Weld both, then pull."),
                wrong(
                    "test",
                    "Weld one, pull it, then decide.",
                    "What the test tells could help with one rivet only. Compare that with its delay.",
                ),
                wrong(
                    "reset",
                    "Re-set first.",
                    "A re-set costs as much for two rivets as for twenty. Compare it with two failed pulls.",
                ),
            ),
        ),
    ),
    draw=_draw_policy,
    solve=_solve_policy,
    reasons=(
        "Chance that a pull fails: both cases, each weighed by the belief. Times rivets, times the cost. "
        "With a test: the delay; if it fails, its own place, the re-set and the rest with the machine right; "
        "if it holds, the rest with the new belief. "
        "A test pays where it can turn what you do next and enough rivets are left to gain from it."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_ROW, ROW_POLICY)
