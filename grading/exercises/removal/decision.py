"""Exercises on what a wrong choice costs: minutes and damage together, and what knowing is worth."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.removal import mean_parts, row_cost_min, usual_times
from secondplate.trials import RowModel, reset_first_min, value_of_knowing, weld_all_min

HEADING = "What does a wrong choice cost?"
RIVALS = ("pull", "punch")
MARGIN = 0.08  # one way costs at least so much less than the other, so that rounding decides nothing


def _rows(rivets, second_plate_mm):
    """Return what a row asks for at the means of the library, by way."""
    given = {"rivets": rivets, "second_plate_mm": second_plate_mm}
    return {way: mean_parts(usual_times(way), **given) for way in RIVALS}


def _costs(rows, damage_min):
    """Return the expected cost of a row by way."""
    return {way: row_cost_min(parts, damage_min=damage_min) for way, parts in rows.items()}


def apart(answers, *, share=0.0, least=0.0):
    """Tell for each column of answers whether any two are apart by a share of the larger, or by so much."""
    pairs = [(one, other) for place, one in enumerate(answers) for other in answers[:place]]
    return np.all([np.abs(a - b) > share * np.maximum(a, b) + least for a, b in pairs], axis=0)


@cache
def _plain_jobs():
    """Return jobs by the cheaper way; those where both cost nearly the same are left out."""
    sizes = np.arange(4, 25), np.array([1.5, 2.0, 2.5, 3.0]), np.arange(20, 151, 10)
    rivets, plate_mm, price_min = (each.ravel() for each in np.meshgrid(*sizes, indexing="ij"))
    rows = _rows(rivets, plate_mm)
    pull, punch = _costs(rows, price_min).values()
    work_min, damage_min = rows["punch"].minutes, price_min * rows["punch"].damaged
    plain = apart([punch, work_min, damage_min, work_min + damage_min / rivets], share=0.05)
    jobs = [
        {"rivets": int(row), "plate_mm": float(plate), "damage_min": int(price)}
        for row, plate, price in zip(rivets, plate_mm, price_min, strict=True)
    ]
    return {
        way: [jobs[place] for place in np.flatnonzero(plain & (one < (1 - MARGIN) * other))]
        for way, one, other in (("pull", pull, punch), ("punch", punch, pull))
    }


def _draw_cost(draw):
    return scene(draw) | draw.pick("job", _plain_jobs()[draw.pick("cheaper", RIVALS)])


def _cost_words(scenario):
    """Return minutes of the row and share of places damaged by way, as somebody would note them down."""
    rows = _rows(scenario["rivets"], scenario["plate_mm"])
    return {f"{way}_min": f"{parts.minutes:.1f}" for way, parts in rows.items()} | {
        f"{way}_share": f"{100 * parts.damaged / scenario['rivets']:.2f}" for way, parts in rows.items()
    }


def _solve_cost(table):
    rivets, damage_min = table["rivets"], table["damage_min"]
    rows = _rows(rivets, table["plate_mm"])
    costs = _costs(rows, damage_min)
    pull, punch = rows["pull"], rows["punch"]
    more_min, fewer = pull.minutes - punch.minutes, punch.damaged - pull.damaged
    return {
        "cost": NumberKey(
            value=costs["punch"],
            slips={
                "work_only": punch.minutes,
                "one_place": punch.minutes + damage_min * punch.damaged / rivets,
                "damage_only": damage_min * punch.damaged,
            },
        ),
        "even": NumberKey(
            value=more_min / fewer,
            slips={"one_rivet": rivets * more_min / fewer, "punch_only": more_min / punch.damaged},
        ),
        "way": ChoiceKey(right=chosen([costs["pull"] < costs["punch"]], ["pull"], otherwise="punch")),
    }


EXPECTED_COST = Exercise(
    id="removal.expected_cost",
    objective="time",
    title="Minutes and damage in one sum",
    prompt=(
        "{shop} takes {rivets} rivets out of {vehicle}. "
        "The back can be reached, and no limit rules out pulling or punching. "
        "Judged from other rows, pulling takes {pull_min} min for the row and damages {pull_share} % of the "
        "places in the second plate. "
        "Punching takes {punch_min} min and damages {punch_share} %. "
        "Putting one damaged place right takes {damage_min} min."
    ),
    shown=_cost_words,
    parts=(
        Number(
            id="cost",
            ask="What does the row cost on the average when it is punched, damage counted?",
            unit="min",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("work_only", "That is the work alone. Some places will have to be put right."),
                slip("one_place", "Only one place was counted. Each rivet of the row has that chance."),
                slip("damage_only", "That is the damage alone. The work comes on top."),
            ),
        ),
        Number(
            id="even",
            ask="At which price of one damaged place would both ways cost the same?",
            unit="min",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "one_rivet", "The time is for the row, the damage for one rivet. Take both for the row."
                ),
                slip(
                    "punch_only", "Pulling damages places too. Only the difference between the ways counts."
                ),
            ),
        ),
        Choice(
            id="way",
            ask="Which way do you take?",
            options=(
                option("punch", "Punching: it costs less on the average."),
                wrong(
                    "habit",
                    "The one that the shop is used to: the average says nothing about this car.",
                    "What has not happened yet can only be weighed by its chance. Habit weighs nothing.",
                ),
                option("pull", "Pulling: it costs less on the average."),
            ),
        ),
    ),
    draw=_draw_cost,
    solve=_solve_cost,
    reasons=(
        "Cost is the time of the work, and the price of a place for each place that will be damaged. "
        "Places damaged are rivets times the chance for each. "
        "Both ways cost the same where the time saved is eaten up by the places that are damaged more. "
        "Times and chances are judgement, so put your own in their place."
    ),
    read_again=HEADING,
)

GOOD_FAILS = 0.02  # pulls that fail although the machine is set right


def _model(table):
    """Return the beliefs of a table of rows; a re-set makes the machine right."""
    return RowModel(
        wrong_probability=table["belief_percent"] / 100,
        good_failure_probability=GOOD_FAILS,
        wrong_failure_probability=table["wrong_fails_percent"] / 100,
        failed_pull_min=table["failed_min"],
        test_delay_min=0.0,
        reset_min=table["reset_min"],
    )


def _known_costs(table):
    """Return what welding on costs with the machine right and with it wrong, and what a re-set costs."""
    rivets, failed_min = table["rivets"], table["failed_min"]
    right_min = rivets * GOOD_FAILS * failed_min
    wrong_min = rivets * table["wrong_fails_percent"] / 100 * failed_min
    return right_min, wrong_min, reset_first_min(rivets, _model(table))


@cache
def _rows_worth_knowing():
    """Return rows where knowing is worth something, and where no slip comes near another answer."""
    sizes = {
        "rivets": np.arange(6, 25, 2),
        "belief_percent": np.array([10, 15, 20, 25, 30, 40]),
        "wrong_fails_percent": np.array([40, 50, 60]),
        "failed_min": np.array([10, 12, 15, 18]),
        "reset_min": np.array([15, 20, 25, 30]),
    }
    grid = np.meshgrid(*sizes.values(), indexing="ij")
    table = dict(zip(sizes, (column.ravel() for column in grid), strict=True))
    answers = np.array([*_worth(table).values()])
    kept = apart(answers, share=0.07) & (answers[0] > 4)
    return [{name: int(column[row]) for name, column in table.items()} for row in np.flatnonzero(kept)]


def _worth(table):
    """Return what knowing is worth, and what the slips make of it."""
    right_min, wrong_min, reset_min = _known_costs(table)
    worth = value_of_knowing(table["rivets"], _model(table))
    weld_min = weld_all_min(table["rivets"], _model(table))
    return {
        "worth": worth,
        "known": np.minimum(weld_min, reset_min) - worth,
        "unweighted": wrong_min - reset_min,
        "worse_plan": worth + np.abs(weld_min - reset_min),
    }


def _draw_knowing(draw):
    row = draw.pick("row", _rows_worth_knowing())
    worth = value_of_knowing(row["rivets"], _model({name: np.array(value) for name, value in row.items()}))
    share = draw.pick("share", (0.4, 0.6, 1.5, 2.0))
    return scene(draw) | row | {"check_min": max(1, round(share * worth))}


def _knowing_words(scenario):
    """Return the costs of both plans in both cases."""
    found = _known_costs({name: scenario[name] for name in _rows_worth_knowing()[0]})
    return dict(
        zip(("right_min", "wrong_min", "reset_first"), (f"{cost:.1f}" for cost in found), strict=True)
    )


def _solve_knowing(table):
    worth, *slips = _worth(table).items()
    return {
        "worth": NumberKey(value=worth[1], slips=dict(slips)),
        "check": ChoiceKey(right=chosen([table["check_min"] < worth[1]], ["check"], otherwise="leave")),
        "doubtful": ChoiceKey(right=same(table, "less")),
    }


INFORMATION = Exercise(
    id="removal.information",
    objective="time",
    title="What is it worth to know?",
    prompt=(
        "At {shop} {rivets} rivets are to be drawn, and the machine may be set wrong: "
        "you believe it with {belief_percent} %. "
        "To weld on as it stands costs {right_min} min of failed pulls if it is right, "
        "and {wrong_min} min if it is wrong. "
        "To re-set it first costs {reset_first} min in both cases. "
        "Somebody offers a check that tells for certain. It takes {check_min} min."
    ),
    shown=_knowing_words,
    parts=(
        Number(
            id="worth",
            ask="What does it save on the average to know beforehand, before the check is paid?",
            unit="min",
            relative_tolerance=0.03,
            tolerance_reason="A difference of rounded sums: 3 % either way covers the rounding.",
            slips=(
                slip(
                    "known", "That is what a row costs when you know. How much less is it than not knowing?"
                ),
                slip("unweighted", "That is the saving if it is wrong. It is wrong only now and then."),
                slip("worse_plan", "Without knowing you would take the better plan, not the worse one."),
            ),
        ),
        Choice(
            id="check",
            ask="Do you make the check?",
            options=(
                option("leave", "No: it costs more than it can save on the average."),
                option("check", "Yes: it costs less than it saves on the average."),
                wrong(
                    "always",
                    "Yes, whatever it costs: to know is always better.",
                    "Knowing helps only by what it lets you do better. That has a price like anything.",
                ),
            ),
        ),
        Choice(
            id="doubtful",
            ask="Another check can be mistaken. What is that one worth?",
            options=(
                wrong(
                    "same",
                    "As much: any check is better than none.",
                    "A mistaken check sends you the wrong way now and then.",
                ),
                wrong(
                    "nothing",
                    "Nothing: what may be wrong tells nothing.",
                    "It moves your belief, and that can still turn what you do.",
                ),
                option("less", "At the most as much as the certain one."),
            ),
        ),
    ),
    draw=_draw_knowing,
    solve=_solve_knowing,
    reasons=(
        "Without knowing you take the plan that costs less on the average. "
        "With knowing you take the better plan in each case, each case weighed by its chance. "
        "The difference is all that any check can be worth. "
        "A check that can be mistaken is worth less, and one that changes nothing is worth nothing."
    ),
    read_again=HEADING,
)

EXERCISES = (EXPECTED_COST, INFORMATION)
