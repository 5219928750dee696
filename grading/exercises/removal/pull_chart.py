"""Exercises on a day of pulls: the limits of its chart, and what each line of the log asks for."""

from functools import cache

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Choices,
    ChoicesKey,
    Exercise,
    Number,
    NumberKey,
    Range,
    RangeKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import chosen, option, same, slip, wrong
from grading.exercises.removal.decision import apart
from grading.exercises.scenes import scene
from secondplate import tables
from secondplate.bench import GAVE
from secondplate.bench_random import triangular, uniform
from secondplate.trials import chance_of_at_most, individuals_charts

HEADING = "Is the day still in order?"
SERIES = 240
IN_SERIES = 20
DRAWN_OUT, _, WELD_BROKE, HEAD_TORE = GAVE
TRIES = int(tables.values("bench_limits")["tries without a sound pull"])


@cache
def charts(number):
    """Return the charts of a series of good pulls: forces to ten newtons, by the number of the series."""
    share = uniform(b"good pulls of page 3", f"series {number}", np.arange(IN_SERIES + 2))
    level_n, spread_n = 2400 + 1400 * share[0], 120 + 160 * share[1]
    forces_n = triangular(level_n - spread_n, level_n, level_n + spread_n, share[2:])
    return individuals_charts(np.round(forces_n, -1))


def limits_n(number):
    """Return the lower and the upper limit of single values of a series."""
    values, _ = charts(int(number))
    return values.lower, values.upper


def at_place(number, place):
    """Return a force in tens of newtons: the mean at 0, the limits at -1 and 1."""
    low, high = limits_n(number)
    return int(round((low + high) / 2 + place * (high - low) / 2, -1))


# Factors of both limits, as the library takes them.
_VALUES, _RANGES = charts(0)
WIDTH = (_VALUES.upper - _VALUES.centre) / _RANGES.centre
RANGE_FACTOR = _RANGES.upper / _RANGES.centre

LATER = ("one", "two", "three", "four", "five")
INSIDE, OUTSIDE = (-0.8, -0.6, -0.3, 0.1, 0.4, 0.7, 0.85), (-1.5, -1.3, -1.15, 1.15, 1.3, 1.5)
OUT = (("three",), ("four",), ("one", "three"), ("one", "four"), ("two", "five"), ("three", "five"))


def _draw_chart(draw):
    series, out = draw.whole("series", 0, SERIES - 1), draw.pick("out", OUT)
    places = {name: draw.pick(f"place {name}", OUTSIDE if name in out else INSIDE) for name in LATER}
    return (
        scene(draw) | {"series": series} | {name: at_place(series, place) for name, place in places.items()}
    )


def _chart_words(scenario):
    """Return the mean and the mean moving range of the series, and the factors of its limits."""
    values, ranges = charts(scenario["series"])
    return {
        "count": f"{IN_SERIES}",
        "mean_n": f"{values.centre:.0f}",
        "range_n": f"{ranges.centre:.1f}",
        "width": f"{WIDTH:.2f}",
        "range_factor": f"{RANGE_FACTOR:.3f}",
    }


def _solve_chart(table):
    both = [charts(int(number)) for number in table["series"]]
    mean = np.array([values.centre for values, _ in both])
    low = np.array([values.lower for values, _ in both])
    high = np.array([values.upper for values, _ in both])
    mean_range = np.array([ranges.centre for _, ranges in both])
    forces = np.array([table[name] for name in LATER])
    out = (forces < low) | (forces > high)
    ids = np.array(LATER)
    return {
        "limits": RangeKey(
            low=low,
            high=high,
            slips={
                "no_factor": (mean - mean_range, mean + mean_range),
                "of_ranges": (mean - RANGE_FACTOR * mean_range, mean + RANGE_FACTOR * mean_range),
                "half": (mean - WIDTH * mean_range / 2, mean + WIDTH * mean_range / 2),
            },
        ),
        "outside": ChoicesKey(right=[tuple(ids[column].tolist()) for column in out.T]),
        "then": ChoiceKey(right=same(table, "cause")),
        "other_limit": ChoiceKey(right=same(table, "own")),
    }


CHART = Exercise(
    id="removal.chart",
    objective="proof",
    title="Limits from the pulls themselves",
    prompt=(
        "{count} good pulls with one setting at {shop} have a mean of {mean_n} N. "
        "From pull to pull the force differs by {range_n} N on the average. "
        "A single force belongs to the same day if it is within {width} times that of the mean. "
        "A step from pull to pull belongs to it up to {range_factor} times that. "
        "The next five pulls: {one}, {two}, {three}, {four} and {five} N."
    ),
    shown=_chart_words,
    parts=(
        Range(
            id="limits",
            ask="Between which limits must a single force lie?",
            unit="N",
            absolute_tolerance=6.0,
            tolerance_reason="Forces are read to ten newtons: about half of that either way.",
            slips=(
                slip("no_factor", "That is one mean step to each side. A single force may go further."),
                slip("of_ranges", "That factor is for the steps. Single forces have the other one."),
                slip("half", "The factor goes to each side of the mean, whole."),
            ),
        ),
        Choices(
            id="outside",
            ask="Which of the five lie outside?",
            options=(
                option("one", "The first."),
                option("two", "The second."),
                option("three", "The third."),
                option("four", "The fourth."),
                option("five", "The fifth."),
            ),
        ),
        Choice(
            id="then",
            ask="A force lies above the upper limit, and the rivet came out whole. What do you do?",
            options=(
                wrong(
                    "glad",
                    "Go on: a weld that bears more is a better one.",
                    "The weld bore what the rivet asked for, and this one asked for more. There is a reason.",
                ),
                option("cause", "Look for what has changed before the next weld."),
                wrong(
                    "wider",
                    "Work the limits out anew with this pull in them.",
                    "Limits that follow every stray pull find nothing any more.",
                ),
            ),
        ),
        Choice(
            id="other_limit",
            ask="All pulls lie inside. What do these limits say of what stud and weld can bear?",
            options=(
                option(
                    "own", "Nothing: they come from the pulls themselves, and say whether the day is even."
                ),
                wrong(
                    "bears",
                    "Up to the upper limit they bear for certain.",
                    "No stud was pulled to its end. What it bears is worked out from the chain.",
                ),
                wrong(
                    "maker",
                    "They are the limits that the vehicle maker allows.",
                    "The maker has not seen these pulls. The limits were worked out from the day.",
                ),
            ),
        ),
    ),
    draw=_draw_chart,
    solve=_solve_chart,
    reasons=(
        "The mean, and to each side the factor for single values times the mean moving range. "
        "A force outside, high or low, says that something is no longer as it was. "
        "It does not say what: another rivet, another plate, glue, a worn tool. "
        "Inside means an even day, not a strong one."
    ),
    read_again=HEADING,
)

LINES = ("first", "second", "third", "fourth")
KINDS = {
    "inside": (DRAWN_OUT, INSIDE),
    "outside": (DRAWN_OUT, OUTSIDE),
    "weld": (WELD_BROKE, (-0.9, -0.5, 0.2, 0.6)),
    "head": (HEAD_TORE, (-0.7, -0.2, 0.3, 0.8)),
}


@cache
def _chances():
    """Return failing pulls in percent and pulls a day for which no two answers are alike."""
    percent, pulls = (each.ravel() for each in np.meshgrid((2, 3, 4, 5), np.arange(8, 31)))
    plain = apart([*_any_fails(percent, pulls).values()], least=1.2)
    return [(int(percent[place]), int(pulls[place])) for place in np.flatnonzero(plain)]


def _any_fails(percent, pulls):
    """Return the chance in percent that any pull of a day fails, and what the slips make of it."""
    none = 100 * chance_of_at_most(pulls, 0, failure_probability=percent / 100)
    return {"right": 100 - none, "added": percent * pulls + 0.0, "none": none, "one": percent + 0.0}


def _draw_log(draw):
    series = draw.whole("series", 0, SERIES - 1)
    kinds = draw.shuffle("kinds", ["inside", "outside", "weld", draw.pick("fourth kind", tuple(KINDS))])
    percent, pulls = draw.pick("chance", _chances())
    scenario = scene(draw) | {"series": series, "percent": percent, "pulls": pulls}
    for line, kind in zip(LINES, kinds, strict=True):
        gave, places = KINDS[kind]
        force_n = at_place(series, draw.pick(f"place {line}", places))
        scenario |= {f"{line}_n": force_n, f"{line}_gave": gave}
    return scenario | {"in_row": draw.whole("in_row", 1, TRIES + 1)}


def _log_words(scenario):
    """Return the limits to ten newtons, and the rule to stop."""
    low, high = limits_n(scenario["series"])
    return {"low_n": f"{low:.0f}", "high_n": f"{high:.0f}", "tries": f"{TRIES}"}


def _solve_log(table):
    low, high = np.array([limits_n(number) for number in table["series"]]).T
    right = {}
    for line in LINES:
        force, gave = table[f"{line}_n"], table[f"{line}_gave"]
        outside = (force < low) | (force > high)
        right[line] = chosen(
            [gave == HEAD_TORE, gave == WELD_BROKE, outside], ["stop", "failed", "why"], otherwise="in_order"
        )
    answers = _any_fails(table["percent"], table["pulls"])
    return {
        "lines": VerdictsKey(right=right),
        "any_fails": NumberKey(
            value=answers["right"], slips={name: answers[name] for name in ("added", "none", "one")}
        ),
        "rule": ChoiceKey(right=chosen([table["in_row"] >= TRIES], ["stop"], otherwise="one_change")),
    }


PULL_LOG = Exercise(
    id="removal.pull_log",
    objective="proof",
    title="Four lines of a log",
    prompt=(
        "The chart of {shop} for {vehicle} has its limits at {low_n} and {high_n} N. "
        "With the machine set right, {percent} % of pulls fail; {pulls} are made in a day. "
        "The rule of the shop: after {tries} pulls in a row without a sound weld, stop and find the cause. "
        "At the end of the day {in_row} failed in a row."
    ),
    shown=_log_words,
    parts=(
        Verdicts(
            id="lines",
            ask="What does each line of the log ask for?",
            points=2.0,
            rows=tuple(option(line, "{" + line + "_n} N, {" + line + "_gave}") for line in LINES),
            verdicts=(
                option("failed", "a failed pull: it counts for the rule"),
                option("in_order", "in order"),
                option("stop", "stop here: nothing is left to weld on"),
                option("why", "rivet out, but something has changed"),
            ),
        ),
        Number(
            id="any_fails",
            ask="With which chance does at least one pull of a day fail, although the machine is right?",
            unit="%",
            absolute_tolerance=0.5,
            tolerance_reason="Chances are worked out to whole percent: half of one either way.",
            slips=(
                slip("added", "Chances of several pulls do not add up: two can fail on one day."),
                slip("none", "That is the chance that none fails. Take what is left."),
                slip("one", "That is for one pull. A day has more of them."),
            ),
        ),
        Choice(
            id="rule",
            ask="What do you do at the end of that day?",
            options=(
                option("one_change", "Change one setting, weld one stud, and pull it."),
                option("stop", "Stop: the rule is met, and the cause comes first."),
                wrong(
                    "average",
                    "Go on with the row: over the day most pulls were good.",
                    "Good pulls of the morning do not tell of the setting of now.",
                ),
            ),
        ),
    ),
    draw=_draw_log,
    solve=_solve_log,
    reasons=(
        "First what came off, then the force: a weld that broke has failed whatever it bore. "
        "A head that tore leaves nothing to weld on, so it goes on by another way. "
        "One failure in a day of many pulls is no news; several in a row are. "
        "A rule that was made in the morning spares you the argument in the evening."
    ),
    read_again=HEADING,
)

EXERCISES = (CHART, PULL_LOG)
