"""What must hold of every spoilt hand-in, and of the whole folder of results, once a class is marked."""

import csv
import shutil
from collections import Counter, defaultdict
from dataclasses import dataclass, field

from grading.answers import Record
from grading.exercises import BANK_VERSION, EXERCISES, PAGES
from grading.export import harmless, write_problems
from grading.gradebook import cell_name, graded_cells
from grading.hand_in import learner_slug
from grading.hand_ins import hand_in_files
from grading.marking import mark_class
from grading.results import mark_folder
from grading.scoring import mark_answered
from tests.grading.made_hand_ins import SETTINGS
from tests.hostile.mutations import spoilt_class
from tests.hostile.mutations_forging import NOT_RIGHT
from tests.hostile.mutations_inert import acting_cells, html_faults
from tests.hostile.mutations_watch import watched

WHOLE = 20  # every twentieth class is marked by the whole command, with gradebook and tables
WITH_PAGES = 40  # of those every second with feedback pages, the others twice
WITH_REPORT = 200  # pictures take seconds
_LOSSES = frozenset({"unreadable", "bad check", "torn", "missing record"})
_LINE_KINDS = ("unreadable", "bad check", "torn")
_CELLS = {cell: page.id for page in PAGES.values() for cell in graded_cells(page)}


HEADS = ["hand-ins", "problems told", "answers kept", "faults found"]


@dataclass
class Tally:
    """How many of each family were marked, and what came of them."""

    marked: Counter = field(default_factory=Counter)
    told: Counter = field(default_factory=Counter)
    kept: Counter = field(default_factory=Counter)
    faults: list = field(default_factory=list)

    def add(self, other):
        """Add what came of some more."""
        for name in ("marked", "told", "kept"):
            getattr(self, name).update(getattr(other, name))
        self.faults += other.faults

    def rows(self):
        """Return the counts of each family, in the order of ``HEADS``."""
        faults = Counter(family for family, _ in self.faults)
        return {
            each: [self.marked[each], self.told[each], self.kept[each], faults[each]]
            for each in sorted({*self.marked, *faults})
        }


def check_class(folder, sounds, number):
    """Spoil a class, mark it in ``folder``, check all, take the folder away, and return a ``Tally``."""
    spoilt = spoilt_class(sounds, number)
    hand_ins, out = folder / "hand_ins", folder / "results"
    hand_ins.mkdir(parents=True)
    out.mkdir()
    (folder / "beside.txt").write_text("nobody touches this")
    for place, (_, _, mutant) in enumerate(spoilt):
        for name, data in zip(file_names(place, mutant), (mutant.data, *mutant.more), strict=True):
            mutant.put(hand_ins / name, data)
    tally = Tally()
    with watched(folder, out) as acted:
        if number % WHOLE:
            marks = _marked_in_short(hand_ins, out)
        else:
            marks = _marked_whole(hand_ins, out, number, acted)
    tally.faults += [("all of a class", f"class {number}: {each}") for each in acted]
    check_tables(out, marks, spoilt, number, tally)
    for path in sorted(out.rglob("*.html")):
        for fault in html_faults(path.read_text(encoding="utf-8")):
            tally.faults.append(("all of a class", f"class {number}: {path.name} {fault}"))
    shutil.rmtree(folder)
    return tally


def _marked_in_short(hand_ins, out):
    """Mark without gradebook and pages; return what each learner got, as the gradebook would take it."""
    result = mark_class(hand_in_files(hand_ins), SETTINGS, processes=1)
    write_problems(out / "problems.csv", [each.seen_from(hand_ins) for each in result.problems])
    return {
        each.marks.student_id: {
            cell_name(exercise): round(points, 4)
            for exercise, points in each.marks.points.items()
            if EXERCISES[exercise].page in each.marks.pages
        }
        for each in result.learners
    }


def _marked_whole(hand_ins, out, number, acted):
    """Mark as the command does, some classes with pages and report, some twice; read the table of results."""
    options = {"feedback": not number % WITH_PAGES, "report": not number % WITH_REPORT, "processes": 1}
    mark_folder(hand_ins, out, SETTINGS, **options)
    first = {each.name: each.read_bytes() for each in out.glob("*.csv")}
    if number % WITH_PAGES:
        mark_folder(hand_ins, out, SETTINGS, **options)
        acted += [
            f"{name} is another when marked again"
            for name, data in first.items()
            if (out / name).read_bytes() != data
        ]
    rows = _table(out / "results.csv")
    acted += [f"cell {cell!r} of results.csv would act" for row in rows for cell in acting_cells(row)]
    return {row["learner"]: {cell: float(row[cell]) for cell in _CELLS if row[cell]} for row in rows}


def warm_up(folder, sounds):
    """Mark the sound class once: what is loaded and kept on first use is there before anybody watches."""
    folder.mkdir(parents=True)
    for place, sound in enumerate(sounds):
        (folder / f"{place:03}.zip").write_bytes(sound.with_members({}))
    mark_folder(folder, folder.parent / "sound_results", SETTINGS, report=True, processes=1)


def file_names(place, mutant):
    """Return the names of a mutant's files."""
    return [
        f"{mutant.file_name}{place:03}.zip",
        *(f"{place:03}_{number}.zip" for number in range(len(mutant.more))),
    ]


def check_tables(out, marks, spoilt, number, tally):
    """Check marks and the table of problems against what must come of each hand-in."""
    problems, known, by_file = _table(out / "problems.csv"), set(), defaultdict(list)
    for row in problems:
        for name in row["file"].split(", "):
            by_file[name].append(row)
    for place, (family, sound, mutant) in enumerate(spoilt):
        names = [harmless(name) for name in file_names(place, mutant)]
        known.update(names)
        told = list({id(row): row for name in names for row in by_file[name]}.values())
        got = marks.pop(learner_slug(sound.learner), None)
        faults = [*_told_faults(sound, mutant, told, got), *_marks_faults(sound, mutant, got)]
        tally.marked[family] += 1
        tally.told[family] += len(told)
        tally.kept[family] += _kept(sound, mutant, got)
        tally.faults += [(family, f"class {number} hand-in {place} ({family}): {each}") for each in faults]
    faults = [
        f"{learner}, whom nobody knows, has marks" for learner, got in marks.items() if any(got.values())
    ]
    faults += [f"file {name} is not one of the class" for name in by_file if name not in known]
    faults += [f"cell {cell!r} of problems.csv would act" for row in problems for cell in acting_cells(row)]
    tally.faults += [("all of a class", f"class {number}: {each}") for each in faults]


def _table(path):
    """Read a table of results."""
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


def _told_faults(sound, mutant, told, got):
    """Say what should have been told and was not, or was and should not."""
    if mutant.or_refused:
        lost = _lost_pages(sound, mutant, got or {})
        if len(lost) > sum(each["kind"] == "hand-in" for each in told) and (got is not None or not told):
            yield f"the answers to {lost} were lost and not told"
        return
    for wanted in mutant.told:
        if not any(wanted.matches(each) for each in told):
            yield f"{wanted} was not told, but {[(each['kind'], each['line']) for each in told]}"
    if mutant.quiet and told:
        yield f"nothing was amiss, but told {[each['problem'] for each in told]}"
    for page, lines in (mutant.told_lines or {}).items():
        for each in told:
            if (
                each["page"] == page
                and each["kind"] in _LINE_KINDS
                and int(each["line"] or 0) not in {0, *lines}
            ):
                yield f"line {each['line']} was whole, but told {each['problem']}"


def _marks_faults(sound, mutant, got):
    """Say where marks are not what they must be."""
    if mutant.standing is None:
        if got is not None:
            yield "it should have been refused, and was not"
        return
    if got is None:
        if not mutant.or_refused or mutant.surely:
            yield "the learner is missing"
        return
    low, high = expected_marks(sound, mutant)
    lost = set(_lost_pages(sound, mutant, got)) - mutant.surely if mutant.or_refused else ()
    for cell in {*low, *got}:
        least, most, points = low.get(cell, 0.0), high.get(cell, 0.0), got.get(cell, 0.0)
        if not least <= points <= most and _CELLS[cell] not in lost:
            yield f"{cell} must have {least} to {most} points, got {points}"


def _lost_pages(sound, mutant, got):
    """Return the pages with marks of which nothing was left; whether that was told is looked at elsewhere."""
    _, high = expected_marks(sound, mutant)
    earned = {_CELLS[cell] for cell, points in high.items() if points}
    return sorted(earned - {_CELLS[cell] for cell, points in got.items() if points})


def _kept(sound, mutant, got):
    """Return how many records stand, without those of pages that were lost with their archive."""
    if got is None or mutant.standing is None:
        return 0
    lost = _lost_pages(sound, mutant, got) if mutant.or_refused else ()
    return sum(
        not isinstance(each, int) or sound.contents[each]["page"] not in lost for each in mutant.standing
    )


_KNOWN_MARKS = {}


def expected_marks(sound, mutant):
    """Return the least and the most points of each cell, scored from the records as they are in memory.

    They are the same but where an answer is one that no part takes: whether it used a try is left open.
    """
    standing, after_loss = mutant.standing, _after_loss(sound, mutant)
    by_exercise = defaultdict(list)
    for each in standing:
        content = sound.contents[each] if isinstance(each, int) else each
        by_exercise[content["exercise"]].append(each)
    low, high = {}, {}
    for exercise, places in by_exercise.items():
        if not EXERCISES[exercise].counts:
            continue
        cell = cell_name(exercise)
        contents = [sound.contents[each] if isinstance(each, int) else each for each in places]
        contents = [
            {**each, "after_loss": isinstance(place, int) and place in after_loss}
            for place, each in zip(places, contents, strict=True)
        ]
        spoilt = [place for place, each in enumerate(contents) if NOT_RIGHT in each["answers"].values()]
        if spoilt:
            low[cell] = _points(sound, exercise, _without(contents, range(spoilt[0], len(contents))))
            high[cell] = _points(sound, exercise, _without(contents, spoilt))
            continue
        lost = tuple(each["after_loss"] for each in contents)
        name = (sound.name, tuple(places), lost) if all(isinstance(each, int) for each in places) else None
        points = _KNOWN_MARKS.get(name)
        if points is None:
            points = _points(sound, exercise, contents)
            if name:
                _KNOWN_MARKS[name] = points
        low[cell] = high[cell] = points
    return low, high


def _after_loss(sound, mutant):
    """Return the places of the records that stand behind a line of their journal that is lost, or may be."""
    told = {each.page for each in mutant.told if each.kinds & _LOSSES}
    found = set()
    for page in sound.pages if "" in told else told & {*sound.pages}:
        standing = [each for each in mutant.standing if each in sound.numbers[page]]
        lost = False
        for place, there in zip(standing, sound.numbers[page], strict=False):
            lost = lost or place != there
            found |= {place} if lost else set()
    return found


def _without(contents, places):
    """Return contents without the answers to the part that was spoilt, in the records at these places."""
    part = next(part for each in contents for part, typed in each["answers"].items() if typed is NOT_RIGHT)
    return [
        {**each, "answers": {name: typed for name, typed in each["answers"].items() if name != part}}
        if place in places
        else each
        for place, each in enumerate(contents)
    ]


def _points(sound, exercise, contents):
    """Return the points that records of one exercise earn."""
    records = [
        Record(
            **{name: value for name, value in each.items() if name != "round"},
            round_number=each["round"],
            previous="",
            check="",
        )
        for each in contents
    ]
    marked = mark_answered(
        records,
        SETTINGS,
        learner=sound.learner,
        exercises=EXERCISES,
        bank_version=BANK_VERSION,
        keys=sound.keys,
    )
    result = marked.exercises.get(exercise)
    return round(result.points, 4) if result else 0.0
