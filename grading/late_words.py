"""What the late rule took off a learner's points, in words for the feedback page: how much, why and how."""

from datetime import timedelta
from typing import NamedTuple

from grading.counts import how_many
from grading.exercises import PAGES
from grading.hand_in import learner_slug
from grading.hand_ins import hand_in_pages, made_at
from grading.late import late_pages


class LateWords(NamedTuple):
    """What the page says of late work: the points taken off, one row for each late page, and the rule."""

    points: float
    rows: tuple[dict, ...]
    rule: str


def late_words(hand_in, result, settings, extensions):
    """Return the ``LateWords`` of one learner, or None where nothing came late.

    ``extensions`` are those in the gradebook, as ``late.extensions_in`` gives them.
    """
    pages = (PAGES[page] for page in hand_in_pages(hand_in))
    earned = {
        page.id: sum(result.exercises[each.id].points for each in page.exercises if each.counts)
        for page in pages
    }
    granted = extensions.get(learner_slug(hand_in.learner), {})
    late = late_pages(earned, made_at(hand_in), settings, granted=granted)
    if not late:
        return None
    return LateWords(
        points=sum(each.points for each in late),
        rows=tuple(_row(each) for each in late),
        rule=_rule(settings),
    )


def _row(late):
    """Describe one late page."""
    extended = f", {in_words(late.granted)} granted to you included" if late.granted else ""
    return {
        "title": PAGES[late.page].title,
        "due": f"{late.due:%d %B %Y, %H:%M} UTC{extended}",
        "late_by": in_words(late.late_by),
        "share": f"{late.share:.0%}",
        "points": late.points,
        "earned": late.earned,
    }


def _rule(settings):
    """Say the class's rule for late work."""
    grace = timedelta(minutes=settings.late_grace_minutes)
    begin = f"Nothing is taken off within {in_words(grace)} after work is due. " if grace else ""
    if not settings.late_share_by_day:
        return "In this class nothing is taken off for late work."
    after = "that" if grace else "work is due"
    floor = f", until {settings.late_floor:.0%} of them are left" if settings.late_floor else ""
    return (
        f"{begin}Each day begun after {after} takes off {settings.late_share_by_day:.0%} of the points that "
        f"the exercises of a page earned{floor}. A practical is never late."
    )


def in_words(time):
    """Write a length of time in its two largest units, from days down to minutes."""
    minutes = max(1, round(time / timedelta(minutes=1)))
    parts = (minutes // 1440, "day"), (minutes // 60 % 24, "hour"), (minutes % 60, "minute")
    said = [how_many(count, unit) for count, unit in parts if count]
    return " ".join(said[:2])
