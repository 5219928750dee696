"""The learner's feedback page: what each answer came to, how it was read, and where to read again.

Everything a learner typed is escaped and cut to a length that can be read; the page loads nothing from
anywhere.
"""

from functools import lru_cache
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from grading.bench_logs import log_lines
from grading.exercise import Bench, Choice, Choices, Number, Order, Range, Reading, RowRun, Verdicts
from grading.exercises import PAGES
from grading.export import printable
from grading.feedback import exercise_feedback, in_a_row
from grading.hand_in import learner_slug
from grading.hand_ins import hand_in_pages, made_at
from grading.html_pages import template
from grading.late_words import late_words
from grading.row_plans import plan_lines
from grading.scoring import Outcome
from grading.variants import fill, words
from grading.whole_files import write_whole

MOST_TO_PRACTISE = 4  # objectives; more at once is no advice
MOST_STEPS = 3  # exercises of each
LEAST_LOST = 0.005  # points; less is rounding
PARTS_KEPT = 20_000  # many learners give the same answer to the same question
LONGEST_SHOWN = 300  # characters of one typed answer
NO_EXTENSIONS = MappingProxyType({})
_STATES = {Outcome.CORRECT: "right", Outcome.UNANSWERED: "open", Outcome.PARTLY: "partly"}


def write_feedback_page(hand_in, result, keys, problems, *, folder, settings, extensions=NO_EXTENSIONS):
    """Write the feedback page of one learner into ``folder``; ``extensions`` as the gradebook grants them."""
    page = feedback_page(hand_in, result, keys, problems, settings=settings, extensions=extensions)
    write_whole(Path(folder) / f"{learner_slug(hand_in.learner)}.html", page.encode("utf-8", "replace"))


def feedback_page(hand_in, result, keys, problems, *, settings, extensions=NO_EXTENSIONS):
    """Return the feedback page of one learner as HTML."""
    moment = made_at(hand_in)
    late = late_words(hand_in, result, settings, extensions)
    return template("feedback.html.jinja").render(
        part_of_page=_part_of_page(),
        name=_cut(hand_in.display_name),
        class_title=settings.title,
        points=_number(result.points - (late.points if late else 0.0)),
        earned=_number(result.points),
        maximum=_number(result.maximum),
        number=_number,
        handed_in=f"{moment:%d %B %Y, %H:%M} UTC" if moment else "at a time that is not known",
        late=late,
        practicals=any(page.practical_points for page in PAGES.values()),
        problems=[_cut(problem.sentence, 300) for problem in problems],
        practise=_practise(hand_in, result),
        again=settings.later_round_credit,
        pages=[_page(PAGES[page], result, keys, settings) for page in hand_in_pages(hand_in)],
    )


@lru_cache(maxsize=1)
def _part_of_page():
    """Return what writes one part; many learners give the same answer, so each is written once."""
    return lru_cache(maxsize=PARTS_KEPT)(template("feedback_part.html.jinja").module.part_of_page)


class _Part(NamedTuple):
    """What the page shows of one part."""

    ask: str
    answer: tuple[str, ...]
    headline: str
    sentences: str
    state: str


class _Exercise(NamedTuple):
    """What the page shows of one exercise: of a right one no more than the answers, in one line."""

    anchor: str
    title: str
    points: str
    headline: str = ""
    answers: str = ""
    prompt: str = ""
    parts: tuple[_Part, ...] = ()
    reasons: tuple[str, ...] = ()
    read_again: str = ""


def _page(page, result, keys, settings):
    """Describe one page of the workbook: its objectives, its answered exercises, and what was left open."""
    results = {each.id: result.exercises[each.id] for each in page.exercises}
    counting = [each for each in page.exercises if each.counts]
    answered = [each for each in page.exercises if results[each.id].current]
    plain = [each.id for each in answered if not each.counts and results[each.id].outcome is Outcome.CORRECT]
    return {
        "title": page.title,
        **_sums(counting, results),
        "objectives": list(_objectives(page, counting, results)),
        "open": [each.title for each in counting if not results[each.id].current],
        "plain": [each.title for each in answered if each.id in plain],
        "exercises": [
            _exercise(each, results[each.id], result.learner, keys, settings)
            for each in answered
            if each.id not in plain
        ],
    }


def _sums(exercises, results):
    """Add up what was earned with some exercises and what could have been."""
    return {
        "points": _number(sum(results[each.id].points for each in exercises)),
        "maximum": _number(sum(results[each.id].maximum for each in exercises)),
    }


def _objectives(page, counting, results):
    """Give each objective of a page with what was earned for it."""
    for objective, text in page.objectives.items():
        exercises = [each for each in counting if each.objective == objective]
        if exercises:
            yield {"text": text, **_sums(exercises, results)}


def _practise(hand_in, result):
    """Return the objectives that lost most where answered, each with the exercises to go back to."""
    pages = [PAGES[page] for page in hand_in_pages(hand_in) if page in hand_in.journals]
    found = []
    for page in pages:
        for objective, text in page.objectives.items():
            exercises = [each for each in page.exercises if each.counts and each.objective == objective]
            lost = {each.id: _lost(each, result.exercises[each.id]) for each in exercises}
            worst = sorted((each for each in exercises if lost[each.id]), key=lambda each: -lost[each.id])
            if worst:
                steps = [_step(each, result.exercises[each.id]) for each in worst[:MOST_STEPS]]
                sums = _sums(exercises, result.exercises)
                found.append((sum(lost.values()), {"text": text, **sums, "steps": steps}))
    return [each for _, each in sorted(found, key=lambda pair: -pair[0])[:MOST_TO_PRACTISE]]


def _lost(exercise, result):
    """Return the points that an answered exercise lost; left open, or our fault, is not lost."""
    if not result.current or result.outcome is Outcome.ERROR:
        return 0.0
    lost = exercise.points - result.points
    return lost if lost > LEAST_LOST else 0.0


def _step(exercise, result):
    """Describe one exercise to go back to: where to read again, and what was probably done there."""
    slips = [mark.latest.sentence for mark in result.parts.values() if mark.latest.outcome is Outcome.SLIP]
    return {
        "anchor": exercise.id,
        "title": exercise.title,
        "read_again": exercise.read_again,
        "slips": list(dict.fromkeys(slips)),
    }


def _exercise(exercise, result, learner, keys, settings):
    """Describe one answered exercise, its latest round."""
    current = result.current
    key = keys[exercise.id, learner, current.round_number]
    head = {"anchor": exercise.id, "title": exercise.title, "points": _points(exercise, result)}
    if all(mark.latest.outcome is Outcome.CORRECT for mark in current.parts.values()):
        return _Exercise(**head, **_all_right(exercise, current, key))
    filled = {} if key.problem else words(exercise, key.numbers)
    feedback = exercise_feedback(
        exercise, result, settings=settings, scenario=key.numbers, keys=key.keys, filled=filled
    )
    parts = (
        _part(part, each, current.parts[part.id], filled)
        for part, each in zip(exercise.parts, feedback.parts, strict=True)
    )
    return _Exercise(
        **head,
        prompt=_prompt(exercise, current, filled),
        parts=tuple(parts),
        reasons=feedback.reasons,
        read_again=feedback.read_again,
    )


def _all_right(exercise, current, key):
    """Describe an exercise with nothing to add to: the answers, and how many tries they took."""
    tables = any(isinstance(part, Verdicts) for part in exercise.parts)
    filled = words(exercise, key.numbers) if tables else {}  # only their rows hold places for numbers
    answers = [shown_answer(part, current.parts[part.id].typed, filled) for part in exercise.parts]
    tries = max(mark.tries_used for mark in current.parts.values())
    headline = "Right." if tries == 1 else f"Right, with try {tries}."
    return {"headline": headline, "answers": "\n".join(map(in_a_row, answers))}


def _points(exercise, result):
    """Say what an exercise earned, and that the best round counts where there were several."""
    if not exercise.counts:
        return "no marks"
    earned = f"{_number(result.points)} of {_number(result.maximum)}"
    return f"{earned}, best of {len(result.rounds)} rounds" if len(result.rounds) > 1 else earned


def _prompt(exercise, current, filled):
    """Return what was asked, and in which round where it is not the first."""
    text = fill(exercise.prompt, filled) if filled else exercise.title
    return f"Round {current.round_number}: {text}" if current.round_number > 1 else text


def _part(part, feedback, mark, filled):
    """Describe one part: what was asked, answered, and what came of it."""
    late = mark.tries_used > 1 and feedback.outcome is Outcome.CORRECT
    return _Part(
        ask=fill(part.ask, filled) if filled else part.id,
        answer=shown_answer(part, mark.typed, filled),
        headline=f"Right, with try {mark.tries_used}." if late else feedback.headline,
        sentences=" ".join(feedback.sentences),
        state=_STATES.get(feedback.outcome, "not-yet"),
    )


def shown_answer(part, typed, filled):
    """Return what a learner answered as lines of text, whatever odd shape was saved."""
    if typed in (None, "", [], {}):
        return ()
    try:
        lines = _LINES[type(part)](part, typed, filled)
    except (TypeError, KeyError, AttributeError, ValueError, IndexError):
        lines = []
    return tuple(_cut(line) for line in lines or [repr(typed)])


def _texts(options):
    """Return the texts of options by id."""
    return {option.id: option.text for option in options}


def _verdict_lines(part, typed, filled):
    """Write one line for each row of a table."""
    verdicts = _texts(part.verdicts)
    return [
        f"{fill(row.text, filled).rstrip('.')}: {verdicts[typed[row.id]]}"
        for row in part.rows
        if typed.get(row.id)
    ]


_LINES = {
    Bench: lambda part, typed, filled: log_lines(part, typed),
    RowRun: lambda part, typed, filled: plan_lines(typed),
    Number: lambda part, typed, filled: [typed] if isinstance(typed, str) else [],
    Range: lambda part, typed, filled: [f"{typed['low']} to {typed['high']}"],
    Reading: lambda part, typed, filled: [f"lines at {typed['from']} and {typed['to']}"],
    Choice: lambda part, typed, filled: [_texts(part.options)[typed]],
    Choices: lambda part, typed, filled: [_texts(part.options)[each] for each in typed],
    Order: lambda part, typed, filled: [
        f"{place}. {_texts(part.options)[each]}" for place, each in enumerate(typed, start=1)
    ],
    Verdicts: _verdict_lines,
}


def _cut(text, length=LONGEST_SHOWN):
    """Return a text that can be read: no unseen letters, and an end where it is far too long."""
    text = printable(text)
    return text if len(text) <= length else f"{text[:length]} ... ({len(text)} characters)"


def _number(value):
    """Write points with as many decimals as they need."""
    return f"{value:.2f}".rstrip("0").rstrip(".")
