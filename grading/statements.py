"""Scores of a class as xAPI statements (IEEE 9274.1.1, before it xAPI 1.0.3), for a learning record store.

One statement for each score that counts, and one for the whole course: who, scored, on what, with how many
points. A statement's id is made from course, learner and item, so sending the same file twice makes nothing
twice. An actor is an account, the learner's id in the gradebook, which is made of the name.
"""

import json
from datetime import UTC
from pathlib import Path
from urllib.parse import quote
from uuid import NAMESPACE_URL, uuid5

from grading.gradebook import cell_name, course_id
from grading.hand_in import practical_id
from grading.whole_files import write_whole_from

SITE = "https://second-plate.invalid"  # a reserved name that leads nowhere: a class gives its own
SCORED = {"id": "http://adlnet.gov/expapi/verbs/scored", "display": {"en": "scored"}}
_KINDS = "http://adlnet.gov/expapi/activities/"
_LATE = "late_points_off"


class StatementsError(ValueError):
    """Statements that cannot be made; the message is one sentence for the instructor."""


def write_statements(path, students, *, pages, settings, site=SITE):
    """Write the statements of all students as one JSON list and return how many there are."""
    if not site.startswith(("https://", "http://")) or any(each.isspace() for each in site):
        message = f"site must be an address that begins with https:// or http://, got {site[:60]!r}"
        raise StatementsError(message)
    count = 0

    def lines():
        nonlocal count
        for statement in statements(students, pages=pages, settings=settings, site=site.rstrip("/")):
            yield ("[\n" if not count else ",\n") + json.dumps(statement, ensure_ascii=False)
            count += 1
        yield "\n]\n" if count else "[]\n"

    write_whole_from(Path(path), (line.encode("utf-8", "replace") for line in lines()))
    return count


def statements(students, *, pages, settings, site=SITE):
    """Give the statements of all students as plain values, one student after the other."""
    course = f"{site}/{course_id(settings)}"
    items = _items(pages, course)
    whole = _activity(course, settings.title, "course")
    maximum = sum(points for points, _, _ in items.values())
    for student in students:
        actor = {"objectType": "Agent", "account": {"homePage": site, "name": student.student_id}}
        when = student.handed_in.replace(tzinfo=UTC).isoformat() if student.handed_in else None
        for item, (points, activity, context) in items.items():
            score = student.scores.get(item)
            if score is not None and item not in student.waiting:
                yield _statement(actor, activity, context, score, points, when)
        if student.scores:
            total = sum(student.scores.values()) - student.late_points_off
            yield _statement(
                actor, whole, None, total, maximum, when, {f"{course}/{_LATE}": student.late_points_off}
            )


def _items(pages, course):
    """Return ``{cell: (points, activity, context)}`` for everything that carries points."""
    items = {}
    for page in pages.values():
        place = f"{course}/{quote(page.id)}"
        above = {
            "contextActivities": {
                "parent": [_activity(place, page.title, "assessment")],
                "grouping": [{"objectType": "Activity", "id": course}],
            }
        }
        for each in page.exercises:
            if each.counts:
                slug = quote(each.id.partition(".")[2])
                items[cell_name(each.id)] = (each.points, _activity(f"{place}/{slug}", each.title), above)
        if page.practical_points:
            activity = _activity(f"{place}/practical", f"{page.title}: practical", "performance")
            items[practical_id(page.id)] = (page.practical_points, activity, above)
    return items


def _activity(iri, title, kind="question"):
    """Return an activity with its title and its kind."""
    return {
        "objectType": "Activity",
        "id": iri,
        "definition": {"name": {"en": title}, "type": f"{_KINDS}{kind}"},
    }


def _statement(actor, activity, context, score, maximum, when, extensions=None):
    """Return one statement; points above the maximum, extra credit, are cut to it as the standard wants."""
    raw = round(min(max(score, 0.0), maximum), 4)
    result = {"score": {"scaled": round(raw / maximum, 6), "raw": raw, "min": 0, "max": maximum}}
    if extensions:
        result["extensions"] = extensions
    account = actor["account"]
    statement = {
        "id": str(uuid5(NAMESPACE_URL, f"{activity['id']} {account['name']}")),
        "actor": actor,
        "verb": SCORED,
        "object": activity,
        "result": result,
    }
    if context:
        statement["context"] = context
    if when:
        statement["timestamp"] = when
    return statement
