"""What the statistics of a class mean, in sentences that need no statistics to be read."""

from grading.class_statistics import FEWEST_FOR_RELIABILITY, FEWEST_ITEMS
from grading.counts import how_many
from grading.intervals import NO_SPREAD

# How sure the order of learners is; common practice, no source. Taken by the low end of the interval.
_SURE = (
    (0.9, "Even the low end is enough to rest a decision about one learner on, together with the practical."),
    (0.8, "Even the low end tells strong learners from weak ones; those close together it does not."),
    (0.7, "Enough to compare groups of learners; about one learner it says little."),
)
_UNSURE = "Too unsure to decide anything about one learner by these marks alone."


def number(value, digits=2):
    """Write a number with a minus that is one."""
    return f"{round(value, digits) + 0.0:.{digits}f}".replace(
        "-", "\N{MINUS SIGN}"
    )  # plus 0: no minus nought


def percent(value):
    """Write a share in per cent."""
    return f"{100 * value:.0f} %"


def reliability_sentences(found):
    """Say how sure the marks of one set of exercises are: coefficient, interval, standard error, meaning."""
    alpha, error = found.alpha, found.standard_error
    if alpha.value is None:
        said = alpha.why.capitalize()
        needed = f"it takes {FEWEST_FOR_RELIABILITY} learners and {FEWEST_ITEMS} exercises"
        return [f"{said}." if alpha.why == NO_SPREAD else f"{said}: {needed}."]
    low, high = number(alpha.low), number(alpha.high)
    sure = next((words for least, words in _SURE if alpha.low >= least), _UNSURE)
    return [
        f"Alpha is {number(alpha.value)}; with {found.learners} learners anything from {low} to {high} is "
        "likely (19 times in 20).",
        sure,
        f"The standard error is {number(error.value, 1)} of {found.maximum:g} points: two times in three "
        f"a mark lies within {number(error.value, 1)} points of what the learner would get on the average, "
        f"19 times in 20 within {number(2 * error.value, 1)}.",
    ]


def reliability_details(found):
    """Say what the sentences rest on: how many, mean and spread, coefficients with their intervals."""
    counts = (
        how_many(found.learners, "learner"),
        how_many(len(found.items), "exercise"),
        f"{found.maximum:g} points",
    )
    said = [f"{', '.join(counts)}."]
    if found.mean.value is not None:
        said.append(
            f"Mean {number(found.mean.value, 1)}, standard deviation {number(found.standard_deviation, 1)}."
        )
    if found.kr20.value is not None:
        said.append(f"KR-20 of right at the first try or not: {found.kr20.in_words()}.")
    if found.standard_error.value is not None:
        said.append(f"Standard error of measurement: {found.standard_error.in_words('.1f')} points.")
    return " ".join(said)


def spread_sentence(spread, maximum):
    """Say where the marks lie."""
    return (
        f"From {spread.low:.0f} to {spread.high:.0f} of {maximum:g} points; half of the learners lie between "
        f"{spread.lower_quarter:.0f} and {spread.upper_quarter:.0f}, the middle one at {spread.median:.0f}."
    )
