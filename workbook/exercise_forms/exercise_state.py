"""What the form of an exercise shows, as plain data: prompt, parts, what was saved, what is said about it."""

from exercise_forms import bench_view, row_view
from grading import variants
from grading.bench_logs import MOST_STEPS, read_typed_log
from grading.exercise import Bench, Choice, Choices, Number, Order, Range, Reading, RowRun, Verdicts
from grading.feedback import exercise_feedback
from grading.scoring import Outcome
from grading.unit_spellings import shown_unit

KINDS = {
    Number: "number",
    Range: "range",
    Reading: "reading",
    Choice: "choice",
    Choices: "choices",
    Order: "order",
    Verdicts: "verdicts",
    Bench: "bench",
    RowRun: "row_run",
}
PRACTICE_NUMBERS = "Practice numbers: you are not signed in, so these answers are saved but not handed in."


def state_key(exercise, learner, round_number, digest):
    """Name one set of numbers of one learner; a form is built anew when it changes."""
    return f"{exercise.id} | {learner} | {round_number} | {digest}"


def exercise_state(exercise, desk, learner, round_number, result):
    """Return the state of an exercise's form in a round."""
    scenario = desk.scenario(exercise, learner, round_number)
    words = variants.words(exercise, scenario)
    triple = (exercise.id, learner, round_number)
    keys = desk.keys([triple])[triple].keys
    current = result.current if result.current and result.current.round_number == round_number else None
    said = _said(exercise, desk, result, scenario, keys) if current else None
    key_name = state_key(exercise, learner, round_number, variants.scenario_digest(scenario))
    return {
        "key": key_name,
        "round": round_number,
        "title": exercise.title,
        "kind_text": _kind_text(exercise),
        "prompt": _paragraphs(variants.fill(exercise.prompt, words)),
        "notes": [] if learner else [PRACTICE_NUMBERS],
        "parts": [
            _part_state(part, place, current, said, words, _draw(desk, exercise, learner, round_number), keys)
            | _bench_state(part, desk, key_name, keys.get(part.id), current)
            for place, part in enumerate(exercise.parts)
        ],
        "mark_text": _mark_text(exercise, result),
        "finished": bool(current and current.finished),
        "reasons": list(said.reasons) if said else [],
        "read_again": _read_again(said),
    }


def _draw(desk, exercise, learner, round_number):
    """Return the draws that only decide how things lie on the page."""
    return variants.Draw(
        variants.seed(
            course_key=desk.settings.course_key,
            learner=learner,
            exercise_id=exercise.id,
            round_number=round_number,
        )
    )


def _said(exercise, desk, result, scenario, keys):
    return exercise_feedback(exercise, result, settings=desk.settings, scenario=scenario, keys=keys)


def _paragraphs(text):
    return [paragraph.strip() for paragraph in text.split("\n\n") if paragraph.strip()]


def _kind_text(exercise):
    if not exercise.counts:
        return "Carries no marks"
    return f"Exercise, {exercise.points:g} point{'' if exercise.points == 1 else 's'}"


def _mark_text(exercise, result):
    """Say the mark; it stays provisional because the instructor's copy marks the hand-in again."""
    if not exercise.counts or not result.rounds:
        return ""
    return f"Mark so far: {result.points:.4g} of {result.maximum:g} (provisional)."


def _read_again(said):
    """Name the heading to go back to, where something is not right yet."""
    if said is None or all(part.outcome is Outcome.CORRECT for part in said.parts):
        return ""
    return f'To read again: "{said.read_again}".'


def _part_state(part, place, current, said, words, draw, keys):
    """Return one part: how to ask it, what was saved, what is said about it."""
    feedback = said.parts[place] if said else None
    unit = getattr(part, "unit", "")
    more = {"axis": part.axis, "span": list(part.span)} if isinstance(part, Reading) else {}
    if isinstance(part, RowRun):
        more = {"fields": row_view.fields()}
    return more | {
        "id": part.id,
        "kind": KINDS[type(part)],
        "ask": variants.fill(part.ask, words),
        "unit": shown_unit(unit) if unit else "",
        "options": _options(part, draw, keys.get(part.id)),
        "rows": [{"id": row.id, "text": variants.fill(row.text, words)} for row in getattr(part, "rows", ())],
        "verdicts": [_plain(option) for option in getattr(part, "verdicts", ())],
        "saved": current.answers.get(part.id) if current else None,
        "finished": bool(current and current.parts[part.id].finished),
        "feedback": _feedback(feedback) if feedback else None,
    }


def _bench_state(part, desk, key_name, key, current):
    """Return what the bench of a part needs: settings, the log in progress or saved, and what it shows."""
    if not isinstance(part, Bench):
        return {}
    if key is None:
        return {"controls": []}
    draft = desk.drafts.read(draft_name(key_name, part))
    saved = current.answers.get(part.id) if current else None
    found = ((steps, *read_typed_log(part, key, steps)) for steps in (draft, saved) if steps is not None)
    steps, log = next(((steps, log) for steps, log, problem in found if not problem), ([], None))
    return bench_state(part, key, steps, log) | {"draft": draft is not None and steps == draft}


def bench_state(part, key, steps, log):
    """Return the bench as it stands after a log that has been read; None is an empty one."""
    bench_view.warm_up()
    return {
        "controls": bench_view.controls(part, key.start),
        "fixed": bench_view.fixed(part, key.start),
        "reasons": [_plain(option) for option in part.stop_reasons],
        "most_steps": MOST_STEPS,
        "steps": steps,
        "view": bench_view.view(part, key, log or read_typed_log(part, key, [])[0]),
    }


def draft_name(key_name, part):
    """Name the draft of one part with one set of numbers."""
    return f"{key_name} | {part.id}"


def _plain(option):
    return {"id": option.id, "text": option.text}


def _options(part, draw, key):
    """Return options as they lie on the page; things to put in order never lie in the right one."""
    options = [_plain(option) for option in getattr(part, "options", ())]
    if not isinstance(part, Order):
        return options
    lying = draw.shuffle(f"page order of {part.id}", options)
    if key is not None and [option["id"] for option in lying] == list(key.right):
        lying = lying[1:] + lying[:1]
    return lying


def _feedback(said):
    return {"outcome": str(said.outcome), "headline": said.headline, "sentences": list(said.sentences)}
