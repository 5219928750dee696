"""Many answers to one part compared with their keys at once, to the results that ``score_part`` gives each.

What many learners give alike is compared once, typed numbers are compared as one array, and everything else
is left to ``score_part``, which alone says what an answer comes to.
"""

import numpy as np

from grading.exercise import Choice, Choices, Number, Order, Verdicts
from grading.part_results import CORRECT
from grading.part_scores import matches, score_part
from grading.quantities import read_quantity


def score_column(part, keys, typed):
    """Return the results of many typed answers to one part, each against the key beside it."""
    if type(part) is Number:
        return _score_numbers(part, keys, typed)
    if type(part) in _ALIKE:
        return _score_alike(part, keys, typed, *_ALIKE[type(part)])
    return [score_part(part, key, one) for key, one in zip(keys, typed, strict=True)]


def _of_object(typed):
    """Return what tells one table of verdicts from another."""
    return tuple(typed.items())


# Answers that many learners give alike: the kind of their value, and what tells one from another.
_ALIKE = {Choice: (str, str), Choices: (list, tuple), Order: (list, tuple), Verdicts: (dict, _of_object)}


def _score_alike(part, keys, typed, kind, named):
    """Score answers of which the same one to the same key comes again and again."""
    results, known = [], {}
    for key, one in zip(keys, typed, strict=True):
        name = (id(key), named(one)) if type(one) is kind else None  # keys are held, so no two share an id
        try:
            result = known.get(name)
        except TypeError:  # lists within the list
            name = result = None
        if result is None:
            result = score_part(part, key, one)
            if name:
                known[name] = result
        results.append(result)
    return results


def _score_numbers(part, keys, typed):
    """Score typed numbers: those that are read and right as one array, the others one by one."""
    unit = part.unit
    values = [read_quantity(one, unit).value if type(one) is str else None for one in typed]
    read = np.array([np.nan if value is None else value for value in values])
    with np.errstate(over="ignore"):  # two finite numbers can lie further apart than any float
        right = matches(read, np.array([key.value for key in keys], dtype=float), part)
    return [
        CORRECT if is_right else score_part(part, key, one)
        for is_right, key, one in zip(right.tolist(), keys, typed, strict=True)
    ]
