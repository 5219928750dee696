"""Exercises on how long each way takes: learning along a row, and from how many rivets set-up pays."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, slip, wrong
from grading.exercises.scenes import scene
from secondplate.removal import (
    LEARNING_MODELS,
    break_even_rivets,
    mean_of_band,
    mean_parts,
    piece_min,
    series_min,
    usual_times,
)

HEADING = "How long does each way take?"
UNIT, AVERAGE = LEARNING_MODELS
SHORT_ROW, PLATE_MM = 1, 2.0


def _quicker(rivets):
    """Return the quicker of pull and drill for rows at the means of the library, True for the pull."""
    pull, drill = (
        np.asarray(mean_parts(usual_times(way), rivets=rivets, second_plate_mm=PLATE_MM).minutes)
        for way in ("pull", "drill")
    )
    return pull < drill


def _predicted(table):
    """Return which way is quicker for the shortest row and for the long one, as an id."""
    short, long = _quicker(np.full(table["rivets"].shape, SHORT_ROW)), _quicker(table["rivets"])
    return chosen([short & long, ~short & long], ["pull", "turns"], otherwise="drill")


PREDICT_MINUTES = Exercise(
    id="removal.predict_minutes",
    objective="time",
    title="Predict: which way is quicker?",
    prompt=(
        "{shop} has one rivet to take out of one panel of {vehicle}, and {rivets} out of another. "
        "Pulling needs welder, studs and a test first, and then goes quickly. "
        "Drilling starts at once, and each rivet takes longer. "
        "Decide before you read on."
    ),
    parts=(
        Choice(
            id="quicker",
            ask="Which way is quicker, counted from the first tool fetched to the last chip swept up?",
            options=(
                option("turns", "Drilling for the one, pulling for the many."),
                wrong(
                    "pull",
                    "Pulling for both.",
                    "One rivet has to pay for the whole set-up. Count it in.",
                ),
                wrong(
                    "drill",
                    "Drilling for both.",
                    "The set-up is paid once. Add up the minutes of a long row.",
                ),
            ),
        ),
    ),
    draw=lambda draw: scene(draw) | {"rivets": draw.whole("rivets", 14, 40)},
    solve=lambda table: {"quicker": ChoiceKey(right=_predicted(table))},
    reasons=(
        "Set-up is paid once, each rivet every time. "
        "So the way with more set-up wins long rows and loses short ones, and somewhere lies a count between."
    ),
    read_again=HEADING,
    counts=False,
)


def _draw_learning(draw):
    doublings = draw.pick("doublings", (3, 4))
    return scene(draw) | {
        "first_min": draw.decimal("first_min", 2.5, 7.0, 0.5, 1),
        "rate_percent": draw.pick("rate_percent", (84, 85, 86, 88, 90, 92)),
        "rivets": 2**doublings,
    }


def _solve_learning(table):
    rivets, first_min = table["rivets"], table["first_min"]
    curve = {"first_min": first_min, "learning_rate": table["rate_percent"] / 100}
    last = {model: piece_min(rivets, **curve, learning_model=model) for model in LEARNING_MODELS}
    row = {model: series_min(rivets, **curve, learning_model=model) for model in LEARNING_MODELS}
    return {
        "last": NumberKey(
            value=last[UNIT],
            slips={
                "each_rivet": first_min * curve["learning_rate"] ** (rivets - 1),
                "one_doubling": piece_min(2, **curve, learning_model=UNIT),
                "other_model": last[AVERAGE],
            },
        ),
        "row": NumberKey(
            value=row[AVERAGE],
            slips={
                "average": row[AVERAGE] / rivets,
                "other_model": row[UNIT],
                "no_learning": first_min * rivets,
            },
        ),
        "longer": ChoiceKey(right=chosen([row[UNIT] > row[AVERAGE]], ["unit"], otherwise="average")),
    }


LEARNING = Exercise(
    id="removal.learning",
    objective="time",
    title="Two learning curves with one name",
    prompt=(
        "At {shop} the first rivet of {vehicle} took {first_min} minutes. "
        "The row has {rivets}, and somebody says: a learning rate of {rate_percent} %. "
        "Some mean by that: each time the count doubles, the time of that one rivet falls to this share. "
        "That is the unit model. "
        "Others mean: the average over all rivets so far falls to this share. "
        "That is the model of the cumulative average."
    ),
    parts=(
        Number(
            id="last",
            ask="By the unit model, how long does the last rivet of the row take?",
            unit="min",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("each_rivet", "The share was taken for every rivet. It counts for every doubling."),
                slip("one_doubling", "Only the first doubling was counted. How often does the count double?"),
                slip("other_model", "That is the last rivet by the cumulative average. Read which is asked."),
            ),
        ),
        Number(
            id="row",
            ask="By the cumulative average, how long does the whole row take?",
            unit="min",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("average", "That is the average of one rivet. The row has more of them."),
                slip(
                    "other_model", "That is the sum by the unit model. Here the average falls, not the last."
                ),
                slip("no_learning", "Nobody learns in that sum: it is the first time for every rivet."),
            ),
        ),
        Choice(
            id="longer",
            ask="With the same rate, which model asks for more minutes for the row?",
            options=(
                wrong(
                    "average",
                    "The cumulative average.",
                    "If the average falls so far, late rivets must be far below it. Compare both sums.",
                ),
                wrong(
                    "same",
                    "Neither: one rate, one time.",
                    "The rate is applied to two different things. Compare both sums.",
                ),
                option("unit", "The unit model."),
            ),
        ),
    ),
    draw=_draw_learning,
    solve=_solve_learning,
    reasons=(
        "Count the doublings and take the rate once for each. "
        "By the unit model that is the last rivet; by the other it is the average, so multiply by the row. "
        "The same rate gives two plans, and the gap grows with the row. "
        "So ask which model a rate belongs to before you plan with it."
    ),
    read_again=HEADING,
)

WAYS = ("drill", "pull")  # less set-up first
HARM_MIN = 60.0  # what a harmed second plate costs in the last question


def _within(way, quantity, step):
    """Return the values of a band of the library in steps."""
    band = getattr(usual_times(way), quantity)
    return np.arange(np.ceil(band.low / step), np.floor(band.high / step) + 1) * step


def _count(table, *, damage_min=0.0):
    """Return the count at which both ways take as long, with the damage that each does priced in."""
    harm = {way: mean_of_band(usual_times(way).damage_probability) * damage_min for way in WAYS}
    return np.asarray(
        break_even_rivets(
            less_set_up_min=table["drill_set_up"],
            less_set_up_each_min=table["drill_each"] + harm["drill"],
            more_set_up_min=table["pull_set_up"],
            more_set_up_each_min=table["pull_each"] + harm["pull"],
        )
    )


@cache
def _timings():
    """Return timings inside the bands of the library whose count lies well inside a row."""
    sizes = {
        f"{way}_{short}": _within(way, quantity, step)
        for way in WAYS
        for short, quantity, step in (("set_up", "set_up_min", 1), ("each", "first_min", 0.5))
    }
    grid = np.meshgrid(*sizes.values(), indexing="ij")
    table = dict(zip(sizes, (column.ravel() for column in grid), strict=True))
    kept = (table["drill_each"] - table["pull_each"] >= 1) & (
        table["pull_set_up"] - table["drill_set_up"] >= 4
    )
    table = {name: column[kept] for name, column in table.items()}
    count = _count(table)
    rows = np.flatnonzero((count > 3) & (count < 14))[::5]
    return [
        {name: round(float(column[row]), 1) for name, column in table.items()} | {"count": float(count[row])}
        for row in rows
    ]


def _draw_break_even(draw):
    timing = dict(draw.pick("timing", _timings()))
    count = timing.pop("count")
    longer = draw.pick("longer", (True, False))
    # A row that is plainly longer or plainly shorter than the count.
    rivets = np.ceil(1.3 * count + 1) if longer else np.floor(0.7 * count)
    return scene(draw) | timing | {"rivets": int(rivets)}


def _solve_break_even(table):
    count, with_damage = _count(table), _count(table, damage_min=HARM_MIN)
    saved = table["drill_each"] - table["pull_each"]
    added = table["pull_set_up"] - table["drill_set_up"]
    return {
        "count": NumberKey(
            value=count,
            slips={
                "whole_set_up": table["pull_set_up"] / saved,
                "added": (table["pull_set_up"] + table["drill_set_up"]) / saved,
                "pull_is_free": added / table["drill_each"],
            },
        ),
        "row": ChoiceKey(right=chosen([table["rivets"] > count], ["pull"], otherwise="drill")),
        "damage": ChoiceKey(
            right=chosen([with_damage < count, with_damage > count], ["sooner", "later"], otherwise="same")
        ),
    }


def _percent(way):
    """Return how often a way harms the second plate, at the middle of its band, in per cent."""
    return f"{100 * mean_of_band(usual_times(way).damage_probability):.0f}"


BREAK_EVEN = Exercise(
    id="removal.break_even",
    objective="time",
    title="From how many rivets does set-up pay?",
    prompt=(
        "{shop} has timed itself on {vehicle}. "
        "Pulling: {pull_set_up:g} minutes of set-up, then {pull_each} minutes for each rivet. "
        "Drilling: {drill_set_up:g} minutes of set-up, then {drill_each} minutes for each rivet. "
        "Leave learning out. "
        "The row at hand has {rivets} rivets. "
        "By the bands of this page the pull harms the second plate at {pull_harm} % of the rivets, "
        "the drill at {drill_harm} %."
    ),
    shown=lambda scenario: {"pull_harm": _percent("pull"), "drill_harm": _percent("drill")},
    parts=(
        Number(
            id="count",
            ask="At how many rivets would both ways take as long? Give one decimal place.",
            unit="rivets",
            absolute_tolerance=0.06,
            relative_tolerance=0.01,
            tolerance_reason="One decimal place is asked for: half of it and a little, 1 % for long rows.",
            slips=(
                slip(
                    "whole_set_up",
                    "Drilling has a set-up as well. What counts is how much more pulling needs.",
                ),
                slip("added", "The two set-ups were added. What counts is how far they are apart."),
                slip("pull_is_free", "A pulled rivet takes time too. What counts is the time saved on each."),
            ),
        ),
        Choice(
            id="row",
            ask="Which way is quicker for the row at hand?",
            options=(
                wrong(
                    "alike",
                    "Both alike.",
                    "They are alike at one count only. Compare it with the row.",
                ),
                option("drill", "Drilling."),
                option("pull", "Pulling."),
            ),
        ),
        Choice(
            id="damage",
            ask=(
                "Suppose a harmed second plate costs an hour. "
                "Now each rivet also costs its share of that. What happens to the count?"
            ),
            options=(
                wrong(
                    "same",
                    "It stays: harm is no minutes.",
                    "Mending the plate takes minutes as well, and somebody pays them.",
                ),
                wrong(
                    "later",
                    "It rises: pulling pays only for longer rows.",
                    "Look at which way harms more often. That way gets slower with each rivet.",
                ),
                option("sooner", "It falls: pulling pays for shorter rows already."),
            ),
        ),
    ),
    draw=_draw_break_even,
    solve=_solve_break_even,
    reasons=(
        "Divide the minutes of set-up that pulling needs more by the minutes that it saves on each rivet. "
        "Longer rows than that go to the pull, shorter ones to the drill. "
        "Harm is paid in minutes as well, and the way that harms more often becomes the slower one. "
        "Put your own timings in: those of a book are those of nobody."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_MINUTES, LEARNING, BREAK_EVEN)
