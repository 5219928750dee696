"""How many answers each page held when a hand-in was packed, and which was the last, so that a loss shows.

A journal that was cut at the end of a line looks like an earlier state of itself: only a count made before
tells. The counts stand in the manifest; copies of the workbook that know nothing of them pass them over.
"""

from grading.answers import MOST_LINES, Problem, parse_journal
from grading.hand_in_members import MEMBER, Unread


def packed_counts(members):
    """Return ``{page: {"records": count, "last": check of the last}}`` for the journals among members."""
    counts = {}
    for name, data in members.items():
        match = MEMBER.fullmatch(name)
        if match and match["kind"] == "answers":
            records = parse_journal(data, place=name).records
            counts[match["page"]] = {"records": len(records), "last": records[-1].check if records else ""}
    return counts


def lost_answers(counts, members, journals, pages):
    """Give a problem for each page that holds fewer answers than were packed, or another last one.

    ``counts`` is what the manifest says, None in a hand-in of an older copy; ``journals`` are those that the
    archive's ``members`` hold and, under pages that have no member, those that were found elsewhere.
    """
    if counts is None:
        return
    if not isinstance(counts, dict):
        sentence = "the hand-in does not say how many answers were packed"
        yield Problem(kind="lost answers", sentence=sentence)
        return
    for page, count in counts.items():
        place = f"answers/{page}.jsonl"
        if (page in pages or page in journals) and not isinstance(members.get(place), Unread):
            records = journals[page].records if page in journals else ()
            sentence = _what_is_lost(page, count, records)
            if sentence:
                yield Problem(kind="lost answers", sentence=sentence, place=place)


def _what_is_lost(page, count, records):
    """Say what a page has lost since it was packed, or nothing."""
    packed, last = (count.get("records"), count.get("last")) if isinstance(count, dict) else (None, None)
    if type(packed) is not int or not 0 <= packed <= MOST_LINES or not isinstance(last, str):
        return f"the hand-in does not say how many answers were packed on page {page}"
    lost = packed - len(records)
    if lost > 0:
        missing = "is missing" if lost == 1 else "are missing"
        return f"{lost} of the {packed} answers that were packed on page {page} {missing}"
    if last != (records[-1].check if records else ""):
        return f"the last answer on page {page} is not the one that was packed"
    return ""
