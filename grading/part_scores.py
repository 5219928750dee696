"""Compare one typed answer with the key of its part: what came of it, and what share of the points it earns.

Closed on failure: an answer that cannot be read earns nothing and says so by its outcome.
"""

from bisect import bisect_left

from grading.bench_scores import score_bench
from grading.exercise import Bench, Choice, Choices, Number, Order, Range, Reading, RowRun, Verdicts
from grading.part_results import (
    CORRECT,
    FAULTS,
    INCORRECT,
    TOO_HIGH,
    TOO_LOW,
    UNANSWERED,
    Outcome,
    PartResult,
    error,
    invalid,
    slipped,
)
from grading.quantities import read_beside, read_quantity, show_quantity
from grading.row_plans import score_row

# Typed text and computed value go through different roundings of the same number; a billionth covers both.
FLOAT_NOISE = 1e-9


def score_part(part, key, typed):
    """Return the result of one typed answer against the key of one scenario."""
    if typed is None:
        return UNANSWERED
    try:
        return _SCORERS[type(part)](part, key, typed)
    except FAULTS as fault:
        return error(f"this answer could not be marked: {type(fault).__name__}: {fault}")


def matches(value, right, part):
    """Tell whether a value lies within the part's tolerance of another; arrays are compared one by one."""
    off, size = abs(value - right), abs(right)
    noise = FLOAT_NOISE * size
    return (off <= part.absolute_tolerance + noise) | (off <= part.relative_tolerance * size + noise)


def _score_number(part, key, typed):
    """Score a number with its unit."""
    if not isinstance(typed, str):
        return invalid("this answer is not a text, so no number can be read from it")
    if not typed or typed.isspace():
        return UNANSWERED
    reading = read_quantity(typed, part.unit)
    if reading.value is None:
        return invalid(reading.problem)
    return _compare_number(part, key, reading.value)


def _compare_number(part, key, value):
    """Compare a value with the right one and with those that slips lead to."""
    if matches(value, key.value, part):
        return CORRECT
    near = [slip for slip in part.slips if slip.id in key.slips and matches(value, key.slips[slip.id], part)]
    if near:
        return slipped(min(near, key=lambda slip: abs(value - key.slips[slip.id])))
    return TOO_HIGH if value > key.value else TOO_LOW


def read_distance(part, typed):
    """Return ``(distance between two caliper lines, problem)``; one of them is None or empty."""
    if not isinstance(typed, dict) or not set(typed) <= {"from", "to"}:
        return None, "this answer needs two lines on the figure"
    places = []
    for name in ("from", "to"):
        reading = read_beside(typed.get(name), part.unit)
        if reading.value is None:
            return None, f"line {name!r}: {reading.problem}"
        low, high = part.span
        if not low - FLOAT_NOISE <= reading.value <= high + FLOAT_NOISE:
            limits = f"between {show_quantity(low, part.unit)} and {show_quantity(high, part.unit)}"
            got = show_quantity(reading.value, part.unit)
            return None, f"line {name!r} must lie {limits} on the figure, got {got}"
        places.append(reading.value)
    return abs(places[1] - places[0]), ""


def _score_reading(part, key, typed):
    """Score the distance between two caliper lines."""
    if isinstance(typed, dict) and set(typed) <= {"from", "to"} and all(map(_is_blank, typed.values())):
        return UNANSWERED
    distance, problem = read_distance(part, typed)
    return invalid(problem) if distance is None else _compare_number(part, key, distance)


def _score_range(part, key, typed):
    """Score a low and a high value, each worth half."""
    if not isinstance(typed, dict) or not set(typed) <= {"low", "high"}:
        return invalid("this answer needs a low and a high value")
    texts = [typed.get(end) for end in ("low", "high")]
    if all(_is_blank(text) for text in texts):
        return UNANSWERED
    if any(_is_blank(text) for text in texts):
        return invalid("only one end was typed: write the low and the high value")
    readings = [read_quantity(text, part.unit) for text in texts]
    for end, reading in zip(("low", "high"), readings, strict=True):
        if reading.value is None:
            return invalid(f"{end} value: {reading.problem}")
    low, high = (reading.value for reading in readings)
    if low > high:
        return invalid("the low value must not be above the high value")
    return _compare_range(part, key, low, high)


def _is_blank(text):
    """Tell whether a field was left empty."""
    return text is None or (isinstance(text, str) and (not text or text.isspace()))


def _compare_range(part, key, low, high):
    """Compare two read ends with the key."""
    right = (matches(low, key.low, part), matches(high, key.high, part))
    if all(right):
        return CORRECT
    slip = next((slip for slip in part.slips if _range_slipped(part, key, slip, low, high)), None)
    if any(right):
        return _half_right(right[0], slip, too_high=high > key.high if right[0] else low > key.low)
    return slipped(slip) if slip else INCORRECT


def _half_right(low_is_right, slip, *, too_high):
    """Return the result of a band with one right end; naming that end gives away only what was typed."""
    good, bad = ("low", "high") if low_is_right else ("high", "low")
    return PartResult(
        outcome=Outcome.PARTLY,
        fraction=0.5,
        slip_id=slip.id if slip else "",
        sentence=slip.sentence if slip else f"The {good} end is right, the {bad} end is not.",
        direction="high" if too_high else "low",
    )


def _range_slipped(part, key, slip, low, high):
    """Tell whether both ends are those that a slip leads to."""
    ends = key.slips.get(slip.id)
    return ends is not None and matches(low, ends[0], part) and matches(high, ends[1], part)


def _score_choice(part, key, typed):
    """Score the choice of one option."""
    if not isinstance(typed, str):
        return invalid("this answer is not one of the options")
    if not typed:
        return UNANSWERED
    if typed == key.right:
        return CORRECT
    for option in part.options:
        if option.id == typed:
            return slipped(option.slip) if option.slip else INCORRECT
    return invalid("this answer is not one of the options")


def _score_choices(part, key, typed):
    """Score ticked options: what a right one gives, a wrong one takes away."""
    problem = _list_problem(part, typed)
    if problem:
        return invalid(problem)
    if not typed:
        return UNANSWERED
    right, ticked = set(key.right), set(typed)
    if ticked == right:
        return CORRECT
    wrong = [option for option in part.options if option.id in ticked - right]
    fraction = max(0.0, (len(ticked & right) - len(wrong)) / len(right))
    slip = next((option.slip for option in wrong if option.slip), None)
    return _part_credit(fraction, slip)


def _part_credit(fraction, slip):
    """Return the result of an answer that is right in part or not at all, with the slip that it shows."""
    if fraction <= 0.0:
        return slipped(slip) if slip else INCORRECT
    if slip:
        return PartResult(outcome=Outcome.PARTLY, fraction=fraction, slip_id=slip.id, sentence=slip.sentence)
    return PartResult(outcome=Outcome.PARTLY, fraction=fraction)


def _list_problem(part, typed):
    """Say why a list of option ids cannot be used, or return an empty text."""
    if not isinstance(typed, list) or not all(isinstance(item, str) for item in typed):
        return "this answer is not a list of the options"
    if len(set(typed)) != len(typed):
        return "this answer names an option twice"
    return (
        ""
        if part.option_ids.issuperset(typed)
        else "this answer names something that is not one of the options"
    )


def _score_order(part, key, typed):
    """Score an order by the longest run of items that keep the right order.

    A drawn order keeps about half of the items in a right run by chance, so credit starts above half:
    all kept earns 1, half or fewer kept earns 0, evenly between.
    """
    if isinstance(typed, list) and tuple(typed) == key.right:
        return CORRECT
    problem = _list_problem(part, typed)
    if problem:
        return invalid(problem)
    if not typed:
        return UNANSWERED
    if len(typed) != len(part.options):
        return invalid("this answer does not place every item")
    place = {item: index for index, item in enumerate(key.right)}
    kept = _longest_rise([place[item] for item in typed])
    return _part_credit(2.0 * kept / len(place) - 1.0, None)


def _longest_rise(places):
    """Return the length of the longest rising run within a sequence (patience sorting)."""
    tops = []
    for place in places:
        at = bisect_left(tops, place)
        tops[at : at + 1] = [place]
    return len(tops)


def _score_verdicts(part, key, typed):
    """Score a table row by row; every row needs its verdict."""
    if typed == key.right:
        return CORRECT
    if not isinstance(typed, dict) or not part.row_ids.issuperset(typed):
        return invalid("this answer is not a verdict for each row")
    given = {row: verdict for row, verdict in typed.items() if verdict not in (None, "")}
    if not all(isinstance(verdict, str) and verdict in part.verdict_ids for verdict in given.values()):
        return invalid("this answer holds something that is not one of the verdicts")
    if not given:
        return UNANSWERED
    if len(given) < len(part.rows):
        return invalid(f"{len(part.rows) - len(given)} of {len(part.rows)} rows have no verdict yet")
    wrong = [row for row in part.rows if given[row.id] != key.right[row.id]]
    slip = next((row.slip for row in wrong if row.slip), None)
    return _part_credit(1.0 - len(wrong) / len(part.rows), slip)


_SCORERS = {
    Number: _score_number,
    Range: _score_range,
    Reading: _score_reading,
    Choice: _score_choice,
    Choices: _score_choices,
    Order: _score_order,
    Verdicts: _score_verdicts,
    Bench: score_bench,
    RowRun: score_row,
}
