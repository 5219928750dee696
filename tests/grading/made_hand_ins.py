"""Hand-ins made for tests: right in every part, or put together from raw pieces as a stranger could."""

import json
import zipfile
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from grading.answers import journal_bytes
from grading.class_settings import SHIPPED_CLASS_FILE, read_class_file
from grading.exercises import BANK_VERSION, EXERCISES, PAGES
from grading.hand_in import learner_slug
from grading.keys import keys_for
from grading.packed_counts import packed_counts
from grading.typed_answers import right_typed
from grading.variants import normalise_learner

SETTINGS = replace(read_class_file(SHIPPED_CLASS_FILE), due="2026-12-18T18:00:00+00:00")
MADE_AT = datetime(2026, 12, 10, 12, 0, tzinfo=UTC)
MAXIMUM = sum(exercise.points for exercise in EXERCISES.values())


def right_records(name, *, exercises=None, settings=SETTINGS, start=MADE_AT - timedelta(hours=3)):
    """Return one record for each exercise, every part right, one minute apart."""
    learner = normalise_learner(name)
    chosen = [*(EXERCISES if exercises is None else exercises)]
    keys = keys_for(
        [(each, learner, 1) for each in chosen], course_key=settings.course_key, exercises=EXERCISES
    )
    return [
        {
            "at": (start + timedelta(minutes=minute)).isoformat(timespec="milliseconds"),
            "learner": name,
            "course": settings.course_key,
            "page": EXERCISES[each].page,
            "exercise": each,
            "round": 1,
            "bank": BANK_VERSION,
            "scenario": keys[each, learner, 1].digest,
            "answers": {
                part.id: right_typed(part, keys[each, learner, 1].keys[part.id])
                for part in EXERCISES[each].parts
            },
        }
        for minute, each in enumerate(chosen)
    ]


def journals(records):
    """Return the bytes of the journal of each page."""
    return {
        page: journal_bytes(each for each in records if each["page"] == page)
        for page in PAGES
        if any(each["page"] == page for each in records)
    }


def manifest(name, **changes):
    """Return the manifest of a hand-in."""
    fields = {
        "format": "second plate hand-in",
        "version": 1,
        "learner": normalise_learner(name),
        "display_name": name,
        "course": SETTINGS.course_key,
        "bank": BANK_VERSION,
        "made_at": MADE_AT.isoformat(timespec="seconds"),
    }
    return json.dumps({**fields, **changes}).encode()


def zipped(path, members):
    """Write members into a zip file and return its path."""
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for member, data in members.items():
            archive.writestr(member, data)
    return Path(path)


def raw_hand_in(folder, name, journal_of_page, *, notebooks=None, made_at=MADE_AT, file_name=None, **changes):
    """Write a hand-in from raw journals and raw notebooks, each by page id."""
    answers = {f"answers/{page}.jsonl": data for page, data in journal_of_page.items()}
    fields = {"made_at": made_at.isoformat(timespec="seconds"), "journals": packed_counts(answers), **changes}
    members = {"hand_in.json": manifest(name, **fields), **answers}
    members |= {f"pages/{page}.ipynb": data for page, data in (notebooks or {}).items()}
    file_name = file_name or f"hand_in_{learner_slug(name)}_{made_at:%Y%m%d_%H%M%S}.zip"
    return zipped(Path(folder) / file_name, members)


def right_hand_in(folder, name, **changes):
    """Write a hand-in with every answer right."""
    return raw_hand_in(folder, name, journals(right_records(name)), **changes)
