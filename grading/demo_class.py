"""An invented class: hand-ins with right answers, usual slips, blanks and typing troubles, as real ones have.

Everybody in it is made up. The same size gives the same class, so that a demonstration can be repeated.
"""

import json
import random
import tempfile
from datetime import UTC, datetime, timedelta
from pathlib import Path

from grading.answers import JOURNAL_FILE, journal_bytes
from grading.exercise import Bench, Choice, Choices, Number, Order, Range, Reading, RowRun, Verdicts
from grading.exercises import BANK_VERSION, EXERCISES, PAGES
from grading.forget_person import MADE_LIST
from grading.hand_in import pack_hand_in, practical_id, save_learner
from grading.keys import keys_for
from grading.quantities import show_quantity
from grading.typed_answers import right_typed, slip_ids, slip_typed
from grading.variants import normalise_learner

FIRST_NAMES = (
    "Mara", "Tobin", "Ilse", "Bram", "Senna", "Odell", "Rikke", "Jory", "Anouk", "Davin", "Petra", "Calder",
    "Noor", "Emeka", "Livia", "Soren", "Hana", "Wilbur", "Zofia", "Ansel", "Brisa", "Koji", "Thea", "Ravi",
)  # fmt: skip
LAST_NAMES = (
    "Quillby", "Fennick", "Ostrell", "Harnwood", "Tavish", "Bellamire", "Crowder", "Nyland", "Saltby",
    "Merrin", "Okoner", "Varga-Lind", "Thistle", "Durrow", "Pemberly", "Ashcombe", "Lindqvell", "Marlock",
    "Corvane", "Wexholm", "Ruddick", "Iversholt", "Penhallow", "Grost",
)  # fmt: skip
PRACTICALS = (
    "Set up from the chart, welded one stud on a spare head, pulled it: the collar held, the rivet moved.",
    "First stud came off with a one-sided collar. Cleaned the head, squared the gun, second stud held.",
    "I kept the time too short, the stud broke off at the collar. Put the time up, then it was good.",
)
SLOWEST, CLEVEREST = 0.45, 0.97  # share of first answers that are right, spread evenly over the class


class DemoError(ValueError):
    """The class cannot be invented here; the message is one sentence."""


def write_demo_class(folder, settings, *, learners=24, progress=None):
    """Write the hand-ins of an invented class into ``folder`` and return their paths.

    Beside ordinary ones there are a late one, a broken file, and a learner who handed in twice.
    """
    folder = Path(folder)
    _clear_earlier(folder)
    due = datetime.fromisoformat(settings.due) if settings.due else datetime(2026, 12, 18, 18, tzinfo=UTC)
    paths = []
    for number in range(learners):
        dice = random.Random(f"invented class {number}")
        late = number % 11 == 5
        handed_in = due + timedelta(minutes=dice.randint(90, 1800) if late else -dice.randint(30, 12000))
        paths += _hand_ins(folder, settings, number, dice, handed_in, twice=number % 23 == 9)
        if progress:
            progress(number + 1, learners)
    broken = _hand_ins(folder, settings, learners, random.Random("broken"), due, twice=False)
    _tear(broken[0])
    paths += broken
    (folder / MADE_LIST).write_text("\n".join(path.name for path in paths), encoding="utf-8")
    return paths


def _clear_earlier(folder):
    """Take away an invented class made here before; raise where other files lie in the folder."""
    folder.mkdir(parents=True, exist_ok=True)
    made = folder / MADE_LIST
    earlier = set(made.read_text(encoding="utf-8").splitlines()) if made.exists() else set()
    others = [path for path in folder.iterdir() if path.name not in earlier | {MADE_LIST}]
    if others:
        message = f"{folder} must be empty or hold an invented class, found {others[0].name}"
        raise DemoError(message)
    for name in earlier:
        (folder / name).unlink(missing_ok=True)


def learner_name(number):
    """Return the invented name of one learner; names begin to repeat, with a number, after some hundreds."""
    first = FIRST_NAMES[number % len(FIRST_NAMES)]
    last = LAST_NAMES[(number + number // len(FIRST_NAMES)) % len(LAST_NAMES)]
    again = number // (len(FIRST_NAMES) * len(LAST_NAMES))
    return f"{first} {last}" + (f" {again + 1}" if again else "")


def _hand_ins(folder, settings, number, dice, handed_in, *, twice):
    """Write the hand-in of one learner, or an early one and a full one."""
    name = learner_name(number)
    skill = dice.uniform(SLOWEST, CLEVEREST)
    records = invent_records(name, settings, dice, skill=skill, until=handed_in)
    practical = dice.choice(PRACTICALS) if dice.random() < skill else ""
    paths = []
    if twice:
        early = [each for each in records if each["page"] == next(iter(PAGES))]
        paths.append(write_hand_in(folder, name, settings, early, handed_in - timedelta(days=2)))
    paths.append(write_hand_in(folder, name, settings, records, handed_in, practical=practical))
    return paths


def invent_records(name, settings, dice, *, skill, until, diligence=0.93, exercises=None, keys=None):
    """Return what one learner saved, oldest first: the contents of journal records without their chain.

    ``skill`` is the share of first answers that are right, ``diligence`` the share of exercises answered, of
    all or of those named. ``keys`` may hold what was solved for many learners at once.
    """
    learner, records = normalise_learner(name), []
    chosen = [each for each in exercises or EXERCISES if dice.random() < diligence]
    wanted = [(each, learner, number) for each in chosen for number in (1, 2)]
    keys = keys or keys_for(wanted, course_key=settings.course_key, exercises=EXERCISES)
    for exercise_id in chosen:
        exercise = EXERCISES[exercise_id]
        for number, chance in ((1, skill), (1, skill + 0.2), (2, skill + 0.3)):
            key = keys[exercise_id, learner, number]
            answers = {part.id: _answer(part, key.keys[part.id], dice, chance) for part in exercise.parts}
            records.append(_content(name, settings, exercise, number, key.digest, answers))
            if dice.random() < 0.4 + 0.5 * skill:
                break
    moment = until - timedelta(minutes=3 * len(records) + 10)
    for record in records:
        moment += timedelta(seconds=dice.randint(40, 170))
        record["at"] = moment.astimezone(UTC).isoformat(timespec="milliseconds")
    return records


def _content(name, settings, exercise, round_number, digest, answers):
    """Return the contents of one record, its time and its chain still missing."""
    return {
        "learner": name,
        "course": settings.course_key,
        "page": exercise.page,
        "exercise": exercise.id,
        "round": round_number,
        "bank": BANK_VERSION,
        "scenario": digest,
        "answers": answers,
    }


def _answer(part, key, dice, chance):
    """Return what somebody types right with this chance: right, a slip, some other answer, or trouble."""
    luck = dice.random()
    if luck < chance:
        return right_typed(part, key)
    slips = [typed for slip in slip_ids(part) if (typed := slip_typed(part, key, slip)) is not None]
    luck = dice.random()
    if slips and luck < 0.55:
        return dice.choice(slips)
    if luck < 0.85:
        return _OTHER[type(part)](part, key, dice)
    return _in_trouble(part, key, dice)


def _in_trouble(part, key, dice):
    """Return an answer that cannot be read, or none at all."""
    if isinstance(part, Number):
        value = right_typed(part, key).split(" ")[0]
        return dice.choice(["", value, f"{value} furlongs", "about six", "1,200 mm"])
    if isinstance(part, Bench):
        return right_typed(part, key)[:-1]  # work that was never ended
    if isinstance(part, RowRun):
        return {**right_typed(part, key), "reset_at": "when it fails"}
    if isinstance(part, Reading):
        return {**right_typed(part, key), "to": ""}
    if isinstance(part, Range):
        return {"low": right_typed(part, key)["low"], "high": ""}
    return None


def _other_number(part, key, dice):
    """Return a number that is wrong for no reason anybody could name."""
    return show_quantity(key.value * dice.choice((0.37, 0.61, 1.42, 2.9)) + 0.7, part.unit, digits=3)


def _other_range(part, key, dice):
    """Return a band of which one end or none is right."""
    right = right_typed(part, key)
    return dice.choice(
        ({**right, "low": show_quantity(key.low * 0.6, part.unit, digits=3)}, _wide(part, key))
    )


def _other_reading(part, key, dice):
    """Return two lines that mark nothing in particular."""
    first, second = (show_quantity(dice.uniform(*part.span), part.unit, digits=3) for _ in range(2))
    return {"from": first, "to": second}


def _wide(part, key):
    """Return a band far too wide."""
    return {
        "low": show_quantity(key.low * 0.4, part.unit, digits=3),
        "high": show_quantity(key.high * 2.2, part.unit, digits=3),
    }


def _ids(options):
    """Return the ids of options."""
    return [option.id for option in options]


def _shuffled(items, dice):
    """Return the items in another order."""
    return dice.sample(items, len(items))


def _other_log(part, key, dice):
    """Return the log of somebody who welds, does not look, and does something at the end."""
    first, *_ = right_typed(part, key)
    welds = [first] * dice.randint(1, 3)
    return [*welds, dice.choice(({"do": "row"}, {"do": "stop", "why": part.stop_reasons[0].id}))]


def _other_plan(part, key, dice):
    """Return the plan of somebody who has not reckoned."""
    most = {"test_first": 6, "test_after_reset": 3, "weld_at_once": 12, "reset_at": 4, "most_resets": 2}
    return {name: str(dice.randint(0, largest)) for name, largest in most.items()}


_OTHER = {
    Bench: _other_log,
    RowRun: _other_plan,
    Number: _other_number,
    Range: _other_range,
    Reading: _other_reading,
    Choice: lambda part, key, dice: dice.choice(_ids(part.options)),
    Choices: lambda part, key, dice: dice.sample(_ids(part.options), dice.randint(1, len(part.options))),
    Order: lambda part, key, dice: _shuffled(_ids(part.options), dice),
    Verdicts: lambda part, key, dice: {row.id: dice.choice(_ids(part.verdicts)) for row in part.rows},
}


def write_hand_in(folder, name, settings, records, made_at, *, practical=""):
    """Write one hand-in from the contents of records, the way the workbook packs it, and return its path."""
    with tempfile.TemporaryDirectory() as workbook:
        save_learner(workbook, name)
        for page in PAGES.values():
            place = Path(workbook) / page.folder
            place.mkdir(exist_ok=True)
            journal = journal_bytes(each for each in records if each["page"] == page.id)
            if journal:
                (place / JOURNAL_FILE).write_bytes(journal)
            if practical:
                notebook = _practical_notebook(page, practical)
                (place / page.notebook).write_text(notebook, encoding="utf-8")
        return pack_hand_in(workbook, folder, settings=settings, now=made_at)


def _practical_notebook(page, text):
    """Return a notebook with nothing but the practical's cell filled in."""
    nbgrader = {"grade_id": practical_id(page.id), "grade": True, "solution": True}
    cell = {"cell_type": "markdown", "id": "practical", "metadata": {"nbgrader": nbgrader}, "source": text}
    return json.dumps({"cells": [cell], "metadata": {}, "nbformat": 4, "nbformat_minor": 5})


def _tear(path):
    """Leave the first half of a file, as a stick pulled out too early does."""
    path.write_bytes(path.read_bytes()[: path.stat().st_size // 2])
