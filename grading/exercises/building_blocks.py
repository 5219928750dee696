"""Building blocks of the exercise bank: keys for a whole table of scenarios, and common reasons.

A scenario table maps each scenario name to a numpy array with one entry per learner.
"""

import numpy as np

from grading.exercise import Option, Slip

THREE_FIGURES = "Three figures are enough at the bench, so 2 % either way is right."
PLANNING_COUNT = "It is a plan, not a stock count: 2 % either way covers what rounding on the way does."


def rows(table):
    """Return how many scenarios a table holds."""
    return len(next(iter(table.values())))


def same(table, right):
    """Return one right answer repeated for every scenario of a table."""
    return [right] * rows(table)


def chosen(conditions, ids, *, otherwise):
    """Return for each scenario the id of the first condition that holds there, as a list of text."""
    picked = np.select([np.asarray(condition) for condition in conditions], list(ids), default=otherwise)
    return [str(name) for name in picked]


def looked_up(names, function):
    """Return ``function(name)`` for each name, calling it once for each different name."""
    found = {str(name): function(str(name)) for name in dict.fromkeys(names)}
    return [found[str(name)] for name in names]


def looked_up_numbers(names, function):
    """Return ``function(name)`` for each name as a float array, calling it once for each different name."""
    return np.array(looked_up(names, function), dtype=float)


def current_and_time(setting):
    """Return the current in A and the time in ms of a setting such as ``600 A, 30 ms``."""
    return tuple(float(quantity.split()[0]) for quantity in setting.split(", "))


def clear_of(values, limits, *, share=0.04):
    """Return the values that keep a distance of ``share`` from every limit, so that a verdict is plain."""
    return tuple(
        value for value in values if all(abs(value - limit) > share * abs(limit) for limit in limits)
    )


def slip(slip_id, sentence, *, credit=0.0):
    """Return a named slip; short enough to sit beside the option or part that it belongs to."""
    return Slip(id=slip_id, sentence=sentence, credit=credit)


def option(option_id, text):
    """Return something to choose or to put in order."""
    return Option(id=option_id, text=text)


def wrong(option_id, text, sentence):
    """Return an option that a misunderstanding leads to, with the sentence for those who choose it."""
    return Option(id=option_id, text=text, slip=Slip(id=option_id, sentence=sentence))
