"""The instructor's class report: one page in one file, for the screen, for print, and for a screen reader.

It holds names and marks. Everything that came from a learner is escaped, and the page loads nothing.
"""

from pathlib import Path
from typing import NamedTuple

import numpy as np
from markupsafe import Markup

from grading import class_statistics as statistics
from grading.class_tables import class_tables
from grading.class_talks import RULES, SAFE_SHARE, objective_words, safety_talks, talks
from grading.class_words import (
    number,
    percent,
    reliability_details,
    reliability_sentences,
    spread_sentence,
)
from grading.counts import how_many
from grading.exercises import EXERCISES, PAGES
from grading.export import printable
from grading.html_pages import template
from grading.intervals import NO_SPREAD, TOO_FEW
from grading.results import slip_sentence
from grading.slip_notes import slip_notes
from grading.whole_files import write_whole

REPORT_FILE = "class_report.html"
WITHOUT_NAMES_FILE = "class_report_no_names.html"
MOST_ROWS = 300  # of the table of learners: the weakest, where a class is larger
MOST_COLUMNS = 10  # of one table of learners
MOST_SLIPS = 25
MOST_TALKS = 60
LONGEST_NAME = 60
SHADES = (25, 50, 75, 90)  # per cent, limits between the five shades of the table of learners


def write_class_report(path, students, work, *, names=True):
    """Write the report of a class from its scores in the gradebook and its ``ClassWork``."""
    page = class_report(students, work, names=names)
    write_whole(Path(path), page.encode("utf-8", "replace"))


def class_report(students, work, *, names=True):
    """Return the report of a class as HTML; without names learners are numbered, fewest marks first."""
    tables = class_tables(students, work)
    named = _names(tables, names)
    spread = statistics.distribution(tables.totals, tables.maxima.sum()) if tables.exercises else None
    return template("class_report.html.jinja").render(
        class_title=work.title,
        learners=how_many(len(tables.names), "learner"),
        names=names,
        safety=_talks(tables, safety_talks(tables)) if names else None,
        talks=_talks(tables, talks(tables)) if names else None,
        rules=RULES,
        safe=percent(SAFE_SHARE),
        pages=[_page(tables, place, page) for place, page in enumerate(tables.pages)],
        heat=[_heat(tables, group, named) for group in _column_groups(tables)],
        rows=len(named),
        rows_left_out=max(len(tables.names) - MOST_ROWS, 0),
        slips=_slips(tables),
        sets=_sets(tables),
        spread=spread and spread_sentence(spread, tables.maxima.sum()),
        spread_picture=spread and _picture("marks_spread", spread.counts),
        fewest=statistics,
        glance=_glance(tables),
    )


def _names(tables, names):
    """Return ``(row, name)`` of everybody in the order of the table of learners."""
    order = np.argsort(np.nan_to_num(tables.total_shares), kind="stable")[:MOST_ROWS]
    if not names:
        return [(int(row), f"Learner {place}") for place, row in enumerate(order, start=1)]
    return [(int(row), _name(tables, row)) for row in sorted(order)]


def _name(tables, row):
    """Return a learner's name as it can be shown."""
    name = printable(tables.names[row])
    return name if len(name) <= LONGEST_NAME else f"{name[:LONGEST_NAME]} ..."


def _picture(name, *given):
    """Return a picture as an image element with its words; drawing is loaded only here."""
    from drawings import class_charts

    return Markup(getattr(class_charts, name)(*given)._repr_html_())


def _glance(tables):
    """Return what an instructor wants to know first, in sentences."""
    if not tables.exercises:
        return ["Nobody handed in anything that carries marks."]
    shares = tables.total_shares[~np.isnan(tables.total_shares)]
    said = [f"Points earned of the pages handed in: {_middle(shares)}."]
    medians = [
        (found.share.value, found.objective)
        for found in statistics.objective_statistics(tables.objectives, tables.shares)
        if found.share.value is not None
    ]
    if medians:
        least, (page, objective) = min(medians)
        place = f"{PAGES[page].title}, {objective_words((page, objective))}"
        said.append(f"Weakest objective: {place} (median {percent(least)}).")
    counts = _counts(tables)
    if counts:
        slip, learners = counts[0]
        title = EXERCISES[slip.rsplit(".", 2)[0]].title
        said.append(f"Most frequent slip: {learners} of {len(tables.names)} in \u201c{title}\u201d.")
    return said


def _middle(shares):
    """Say where shares lie: all of them where they are few, else the median and the middle half."""
    found = statistics.median_estimate(shares)
    if found.value is None:
        return ", ".join(percent(each) for each in sorted(shares))
    return (
        f"median {percent(found.value)}, the middle half from {percent(found.low)} to {percent(found.high)}"
    )


class _Talk(NamedTuple):
    """One learner to talk to."""

    name: str
    reasons: tuple[str, ...]


def _talks(tables, found):
    """Return who needs a talk, and how many more there are than are listed."""
    listed = [_Talk(_name(tables, each.row), each.reasons) for each in found[:MOST_TALKS]]
    return {"listed": listed, "more": len(found) - len(listed)}


def _page(tables, place, page):
    """Describe one page of the workbook: its objectives and its exercises."""
    columns = [number for number, each in enumerate(tables.objectives) if each[0] == page]
    shares = tables.shares[:, columns]
    short = [objective_words(tables.objectives[each]) for each in columns]
    found, left_out = tables.set_of([page])
    return {
        "title": PAGES[page].title,
        "learners": int(tables.handed_in[:, place].sum()),
        "objectives": _objectives(tables, columns, shares),
        "picture": _picture("objective_spread", short, shares),
        "items": _items(tables, found),
        "left_out": [EXERCISES[each].title for each in left_out],
        "map": _map(found),
        "compare": bool(found) and found.items[0].verdict != TOO_FEW,
    }


def _objectives(tables, columns, shares):
    """Describe the objectives of a page."""
    pairs = [tables.objectives[each] for each in columns]
    for (page, objective), found in zip(pairs, statistics.objective_statistics(pairs, shares), strict=True):
        share = found.share
        yield {
            "short": objective_words((page, objective)),
            "text": PAGES[page].objectives[objective],
            "median": percent(share.value) if share.value is not None else "",
            "half": f"{percent(share.low)} to {percent(share.high)}" if share.value is not None else "",
            "below": f"{found.below_half} of {found.learners}",
        }


def _column_groups(tables):
    """Put the pages together so that each table of learners has at most ten columns and fits on paper."""
    groups = []
    for page in tables.pages:
        columns = [number for number, each in enumerate(tables.objectives) if each[0] == page]
        if groups and sum(len(each) for _, each in groups[-1]) + len(columns) <= MOST_COLUMNS:
            groups[-1].append((page, columns))
        else:
            groups.append([(page, columns)])
    return groups


def _heat(tables, group, named):
    """Describe one table of learner by objective, over one page or several."""
    columns = [column for _, each in group for column in each]
    return {
        "title": ", ".join(PAGES[page].title for page, _ in group),
        "pages": [(PAGES[page].title, len(each)) for page, each in group],
        "columns": [objective_words(tables.objectives[each]) for each in columns],
        "rows": [(name, [_cell(each) for each in tables.shares[row, columns]]) for row, name in named],
    }


class _Cell(NamedTuple):
    """One cell of the table of learners: its text, its shade (0 is weakest), whether it is below half."""

    text: str
    shade: int
    below: bool


def _cell(share):
    """Describe one learner's share of one objective."""
    if np.isnan(share):
        return _Cell("\u2013", 5, below=False)
    shown = round(100 * float(share))  # shade and number never disagree
    return _Cell(str(shown), int(np.searchsorted(SHADES, shown, side="right")), below=shown < 50)


def _counts(tables):
    """Return ``(slip, learners)`` of the slips that this bank knows, most frequent first."""
    counts = {}
    for slips in tables.slips:
        for slip in set(slips):
            counts[slip] = counts.get(slip, 0) + 1
    return sorted(
        ((slip, count) for slip, count in counts.items() if slip.rsplit(".", 2)[0] in EXERCISES),
        key=lambda pair: (-pair[1], pair[0]),
    )


def _slips(tables):
    """Describe the most frequent slips with the row of the note to reteach from."""
    counts, notes = _counts(tables), slip_notes()
    listed = [
        {
            "count": count,
            "of": len(tables.names),
            "id": slip,
            "title": EXERCISES[slip.rsplit(".", 2)[0]].title,
            "sentence": slip_sentence(slip),
            "note": notes.get(slip),
        }
        for slip, count in counts[:MOST_SLIPS]
    ]
    return {"listed": listed, "more": len(counts) - len(listed)}


def _items(tables, found):
    """Describe the exercises of a page: what was earned, how they tell learners apart, tries and minutes."""
    if found is None:
        return []
    place = {each: number for number, each in enumerate(tables.exercises)}
    columns = [place[each.exercise_id] for each in found.items]
    efforts = statistics.effort_statistics(
        [each.exercise_id for each in found.items],
        tables.tries[:, columns],
        tables.minutes[:, columns],
        tables.tries_per_round,
    )
    return [_item(tables, *pair) for pair in zip(found.items, efforts, strict=True)]


def _item(tables, item, effort):
    """Describe one exercise."""
    at_once = int(np.nansum(tables.at_once[:, tables.exercises.index(item.exercise_id)]))
    rest = item.item_rest
    return {
        "title": EXERCISES[item.exercise_id].title,
        "difficulty": _said(item.difficulty, percent),
        "at_once": f"{at_once} of {item.learners}",
        "apart": _said(item.upper_lower, number),
        "rest": _said(rest, number),
        "rest_ends": f"{number(rest.low)} to {number(rest.high)}" if rest.value is not None else "",
        "verdict": item.verdict if item.verdict != NO_SPREAD else "all alike",
        "answered": effort.learners,
        "tries": _said(effort.tries, lambda value: number(value, 1)),
        "used_up": effort.needed_all,
        "minutes": _said(effort.minutes, lambda value: number(value, 1)),
    }


def _said(estimate, form):
    """Write an estimate's value, or a dash: why it has none is said above the table."""
    return form(estimate.value) if estimate.value is not None else "\u2013"


def _map(found):
    """Return the picture of the exercises of a page, or nothing where there are too few learners."""
    items = [each for each in found.items if each.upper_lower.value is not None] if found else []
    if not items:
        return ""
    names = [EXERCISES[each.exercise_id].title for each in items]
    return _picture(
        "exercise_map",
        names,
        [each.difficulty.value for each in items],
        [each.upper_lower.value for each in items],
    )


def _sets(tables):
    """Describe how sure the marks are: of all pages together, then of each page."""
    usual = [
        page for page, there in zip(tables.pages, tables.handed_in.mean(axis=0), strict=True) if there >= 0.5
    ]
    sets = [("All pages that at least half handed in", usual)] if len(usual) > 1 else []
    sets += [(PAGES[page].title, [page]) for page in tables.pages]
    described = []
    for title, pages in sets:
        found, _ = tables.set_of(pages)
        if found:
            described.append(
                {
                    "title": title,
                    "sentences": reliability_sentences(found),
                    "details": reliability_details(found),
                }
            )
    return described
