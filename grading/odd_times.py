"""Time stamps that cannot all be right, as where somebody set a clock back: told, and never acted upon.

Marks rest on the order in which answers stand in their journal, so no stamp changes one. The time of the
hand-in decides whether it is late, which is why a person should know.
"""

from datetime import datetime
from itertools import pairwise

from grading.counts import count_answers
from grading.times import utc

_IN_ORDER = "answers count in the order in which they were saved"
_CLOCK = f"the clock may have been set back or on; {_IN_ORDER}"
_EARLIER = f"stamped earlier than what was saved before: {_CLOCK}"
_LATER = f"stamped later than the hand-in itself: {_CLOCK}"
_UNKNOWN = f"stamped with no usable time: {_IN_ORDER}"
SLACK_S = 60  # two programs that save at once, a clock that is brought in step


def odd_times(hand_in):
    """Give ``(page, line, sentence)`` for every journal of a hand-in whose time stamps are odd."""
    if _plainly_in_order(hand_in):
        return
    made_at = _moment(hand_in.made_at)
    for page, journal in hand_in.journals.items():
        stamps = [(_moment(record.at), record.line) for record in journal.records]
        known = [each for each in stamps if each[0] is not None]
        back = [line for (before, _), (at, line) in pairwise(known) if _is_before(at, before)]
        if back:
            yield page, back[0], f"{count_answers(len(back))} {_EARLIER}"
        after = [line for at, line in known if made_at is not None and _is_before(made_at, at)]
        if after:
            yield page, after[0], f"{count_answers(len(after))} {_LATER}"
        unknown = [line for at, line in stamps if at is None]
        if unknown:
            yield page, unknown[0], f"{count_answers(len(unknown))} {_UNKNOWN}"


def _plainly_in_order(hand_in):
    """Tell whether every stamp is a time, none is before another, and none is after the hand-in: most are."""
    try:
        made_at = datetime.fromisoformat(hand_in.made_at)
        for journal in hand_in.journals.values():
            stamps = [datetime.fromisoformat(record.at) for record in journal.records]
            if stamps and (stamps != sorted(stamps) or stamps[-1] > made_at):
                return False
    except (TypeError, ValueError, OverflowError):  # no time, or one with its offset and one without
        return False
    return True


def _moment(text):
    """Read a time, or return None where there is none."""
    try:
        return utc(text)
    except (ValueError, OverflowError):
        return None


def _is_before(moment, other):
    """Tell whether a moment lies clearly before another one."""
    return (other - moment).total_seconds() > SLACK_S
