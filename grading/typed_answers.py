"""What a learner would type to be right, or to make a named slip: for the invented class and for checks."""

from grading.bench_answers import right_log, slip_log
from grading.exercise import Bench, Choice, Choices, Number, Order, Range, Reading, RowRun, Verdicts
from grading.quantities import show_quantity
from grading.row_plans import right_plan, slip_plan

_DIGITS = 6  # more than any tolerance asks for, so a right answer stays right when it is written down


def right_typed(part, key):
    """Return the right answer to a part as it would be typed and saved."""
    return _RIGHT[type(part)](part, key)


def slip_typed(part, key, slip_id):
    """Return the answer that shows a slip, or None where these numbers give none."""
    if isinstance(part, Number):
        return _quantity(key.slips[slip_id], part.unit)
    if isinstance(part, Bench):
        return slip_log(part, key, slip_id)
    if isinstance(part, RowRun):
        return slip_plan(part, key, slip_id)
    if isinstance(part, Reading):
        return _lines(key.slips[slip_id], part)
    if isinstance(part, Range):
        low, high = key.slips[slip_id]
        return _ends(low, high, part.unit)
    if isinstance(part, Choice):
        wrong = (option.id for option in part.options if _shows(option, slip_id) and option.id != key.right)
        return next(wrong, None)
    if isinstance(part, Choices):
        wrong = [
            option.id for option in part.options if _shows(option, slip_id) and option.id not in key.right
        ]
        return [*key.right[:1], *wrong] if wrong else None
    return None


def slip_ids(part):
    """Return the ids of all slips that a part knows."""
    carriers = (*getattr(part, "options", ()), *getattr(part, "rows", ()))
    slips = (*getattr(part, "slips", ()), *(each.slip for each in carriers if each.slip))
    return [slip.id for slip in slips]


def _shows(option, slip_id):
    """Tell whether choosing an option shows the slip."""
    return option.slip is not None and option.slip.id == slip_id


def _quantity(value, unit):
    """Write a value with its unit, or None where it is none."""
    return show_quantity(value, unit, digits=_DIGITS) if abs(value) < float("inf") else None


def _ends(low, high, unit):
    """Write both ends of a band; a slip can turn them round, and a learner would type the lower one first."""
    return {"low": _quantity(min(low, high), unit), "high": _quantity(max(low, high), unit)}


def _lines(value, part):
    """Place two lines so far apart in the middle of their span, or return None where there is no room."""
    low, high = part.span
    first = (low + high - value) / 2
    return (
        {"from": _quantity(first, part.unit), "to": _quantity(first + value, part.unit)}
        if first >= low
        else None
    )


_RIGHT = {
    Number: lambda part, key: _quantity(key.value, part.unit),
    Range: lambda part, key: _ends(key.low, key.high, part.unit),
    Reading: lambda part, key: _lines(key.value, part),
    Bench: right_log,
    RowRun: right_plan,
    Choice: lambda part, key: key.right,
    Choices: lambda part, key: list(key.right),
    Order: lambda part, key: list(key.right),
    Verdicts: lambda part, key: dict(key.right),
}
