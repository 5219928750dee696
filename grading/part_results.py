"""What an answer to one part came to: the closed set of outcomes, and the result that carries one."""

from dataclasses import dataclass
from enum import StrEnum


class Outcome(StrEnum):
    """What an answer to one part came to. Only correct, partly and slip can carry points."""

    CORRECT = "correct"
    PARTLY = "partly"
    SLIP = "slip"
    INCORRECT = "incorrect"
    UNANSWERED = "unanswered"
    INVALID = "invalid"
    ERROR = "error"


# What our own code can raise by mistake: it becomes the outcome ``error`` of a part, not the end of a class.
FAULTS = (
    ArithmeticError,
    AttributeError,
    LookupError,
    NotImplementedError,
    RecursionError,
    TypeError,
    ValueError,
)

NO_TRY = (Outcome.UNANSWERED, Outcome.INVALID, Outcome.ERROR)  # what uses none of the tries


@dataclass(frozen=True, kw_only=True)
class PartResult:
    """One answer to one part: ``fraction`` is the share of the points it earns before tries are counted.

    ``slip_id`` and ``sentence`` name a recognised wrong path; for ``invalid`` and ``error`` the sentence says
    what is wrong. Where one answer shows several, ``more_slip_ids`` are the others. ``direction`` tells
    whether a wrong number is too ``high`` or too ``low``.
    """

    outcome: Outcome
    fraction: float = 0.0
    slip_id: str = ""
    sentence: str = ""
    direction: str = ""
    more_slip_ids: tuple[str, ...] = ()

    @property
    def slip_ids(self):
        """Every slip that the answer shows."""
        return (self.slip_id, *self.more_slip_ids) if self.slip_id else ()


CORRECT = PartResult(outcome=Outcome.CORRECT, fraction=1.0)
INCORRECT = PartResult(outcome=Outcome.INCORRECT)
TOO_HIGH = PartResult(outcome=Outcome.INCORRECT, direction="high")
TOO_LOW = PartResult(outcome=Outcome.INCORRECT, direction="low")
UNANSWERED = PartResult(outcome=Outcome.UNANSWERED)


def invalid(sentence):
    """Return the result of an answer that cannot be read."""
    return PartResult(outcome=Outcome.INVALID, sentence=sentence)


def error(sentence):
    """Return the result where the fault is ours or the numbers are not the learner's."""
    return PartResult(outcome=Outcome.ERROR, sentence=sentence)


def slipped(slip):
    """Return the result of a recognised wrong path."""
    return PartResult(outcome=Outcome.SLIP, fraction=slip.credit, slip_id=slip.id, sentence=slip.sentence)
