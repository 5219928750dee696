"""A folder of results from a folder of hand-ins: gradebook, tables, feedback pages, and a summary.

The order matters: whether the folder can be written is found out before anything is marked, and the
gradebook is written, while the marking goes on, before the tables that are read back out of it.
"""

import tempfile
from contextlib import closing
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from grading.changes import keep_changes, log_beside
from grading.class_work import class_work, save_class_work, work_of
from grading.counts import how_many
from grading.exercises import EXERCISES, PAGES
from grading.export import write_problems, write_results
from grading.gradebook import MarksWriter
from grading.gradebook_places import GradebookDatabase, gradebook_at
from grading.gradebook_scores import read_scores
from grading.hand_ins import hand_in_files
from grading.held_folders import FEEDBACK, held
from grading.late import extensions_in, write_late_penalties
from grading.marking import mark_class
from grading.marking_state import MarkingState

REPORTED_BY_ITSELF = 300  # hand-ins; a larger class gets its report only where it is asked for
MOST_SLIPS = 8  # in the printed summary; a class report lists them all


@dataclass(frozen=True, kw_only=True)
class Summary:
    """What a marking came to: how many, how well, what went wrong, and where everything lies."""

    out: Path
    gradebook: Path | GradebookDatabase
    report: Path | None
    files: int
    learners: int
    mean: float
    maximum: float
    late: tuple[str, ...]
    waiting: int
    slips: tuple[tuple[str, int], ...]
    kept: tuple[str, ...]
    given: int
    problems: tuple[str, ...]

    @property
    def log(self):
        """Where changes by a person are logged."""
        return log_beside(self.gradebook)

    def as_dict(self):
        """Return the summary as plain values."""
        return {
            "out": str(self.out),
            "gradebook": str(self.gradebook),
            "report": str(self.report) if self.report else None,
            "files": self.files,
            "learners": self.learners,
            "mean_points": round(self.mean, 4),
            "maximum_points": self.maximum,
            "late": list(self.late),
            "waiting_for_a_person": self.waiting,
            "slips": [
                {"slip": slip, "learners": count, "sentence": slip_sentence(slip)}
                for slip, count in self.slips
            ],
            "kept": list(self.kept),
            "given_by_a_person": self.given,
            "problems": list(self.problems),
        }

    def as_text(self):
        """Return the summary in words."""
        lines = [
            f"Marked {how_many(self.learners, 'learner')} from {how_many(self.files, 'file')}.",
            f"Mean {self.mean:.1f} of {self.maximum:.0f} points; "
            f"{how_many(self.waiting, 'learner')} with something that a person has to mark.",
        ]
        if self.late:
            lines.append(f"Late: {', '.join(self.late)}.")
        if self.given:
            lines.append(f"Kept {how_many(self.given, 'score')} that a person gave, all in {self.log}.")
            lines += [f"  {each}" for each in self.kept[:MOST_SLIPS]]
        if self.slips:
            lines += ["", "Most frequent slips:"]
            lines += [
                f"  {count:>4}  {slip}: {slip_sentence(slip)}" for slip, count in self.slips[:MOST_SLIPS]
            ]
        if self.problems:
            lines += [
                "",
                f"{how_many(len(self.problems), 'problem')}, all of them in {self.out / 'problems.csv'}:",
            ]
            lines += [f"  {each}" for each in self.problems[:MOST_SLIPS]]
        lines += ["", f"Gradebook {self.gradebook}", f"Results   {self.out / 'results.csv'}"]
        lines += [f"Report    {self.report}"] if self.report else []
        return "\n".join(lines)


def slip_sentence(slip):
    """Return the sentence of a slip from its full id, ``<exercise id>.<part id>.<slip id>``."""
    exercise_id, part_id, slip_id = slip.rsplit(".", 2)
    part = next(each for each in EXERCISES[exercise_id].parts if each.id == part_id)
    options = (*getattr(part, "options", ()), *getattr(part, "rows", ()))
    slips = (*getattr(part, "slips", ()), *(option.slip for option in options if option.slip))
    return next(each.sentence for each in slips if each.id == slip_id)


def mark_folder(
    hand_ins,
    out,
    settings,
    *,
    course=None,
    gradebook=None,
    feedback=True,
    report=None,
    processes=None,
    run_chunks=None,
    progress=None,
):
    """Mark a folder of hand-ins, or one file, and write everything into ``out``; return the ``Summary``.

    ``gradebook`` is a file or a ``GradebookDatabase``, in place of the one in the course or in ``out``.
    ``report`` says whether the class report is written; None writes it for a class of usual size.
    ``run_chunks`` marks elsewhere, as ``mark_class`` takes it.
    """
    files = hand_in_files(hand_ins)
    out = Path(out)
    report = len(files) <= REPORTED_BY_ITSELF if report is None else report
    _require_writable(out)
    with held(out):
        return _mark_held(
            hand_ins,
            files,
            out,
            settings,
            course=course,
            gradebook=gradebook or gradebook_at(None, course or out),
            feedback=feedback,
            report=report,
            processes=processes,
            run_chunks=run_chunks,
            progress=progress,
        )


def _mark_held(hand_ins, files, out, settings, *, course, gradebook, feedback, report, **how):
    """Mark into a folder that nobody else writes into."""
    to_course = _to_course(course) if course else None  # a course that is none is refused before the rest
    extensions = extensions_in(gradebook, pages=PAGES) if feedback else {}
    writers = [
        *([_to_feedback(out, settings, extensions)] if feedback else ()),
        *([to_course] if course else ()),
        *([work_of] if report else ()),
    ]
    with closing(MarksWriter(gradebook, pages=PAGES, settings=settings)) as writer:
        result = mark_class(
            files,
            settings,
            each_learner=partial(_write_for, writers=writers) if writers else None,
            taken=writer.take,
            **how,
            state=None if course or report else _state(out, (settings, extensions), feedback=feedback),
        )
        writer.finish()
    given = keep_changes(gradebook)
    write_late_penalties(gradebook, settings, pages=PAGES)
    students = read_scores(gradebook)
    write_results(out / "results.csv", students, pages=PAGES)
    root = Path(hand_ins) if Path(hand_ins).is_dir() else Path(hand_ins).parent
    problems = [each.seen_from(root) for each in result.problems]
    write_problems(out / "problems.csv", problems)
    written = _write_report(out, result, students, settings) if report and result.learners else None
    return _summary(out, gradebook, written, result, students, given, problems)


def _state(out, rests_on, *, feedback):
    """Return what is kept of a marking into this folder, which rests on the class file and the extensions."""
    pages = out / FEEDBACK

    def still_there(learner):
        return not feedback or (pages / f"{learner.marks.student_id}.html").exists()

    return MarkingState(out, rests_on, still_there=still_there)


def _write_report(out, result, students, settings):
    """Write the class report, and what it takes to write it again after a change; return its path."""
    from grading.class_report import REPORT_FILE, write_class_report

    work = class_work(result.learners, settings)
    save_class_work(out, work)
    write_class_report(out / REPORT_FILE, students, work)
    return out / REPORT_FILE


def _to_feedback(out, settings, extensions):
    """Return what writes a learner's feedback page while the answers are at hand."""
    from grading.report import write_feedback_page

    folder = out / FEEDBACK
    folder.mkdir(exist_ok=True)
    return partial(write_feedback_page, folder=folder, settings=settings, extensions=extensions)


def _to_course(course):
    """Return what puts a learner's pages into a course while the answers are at hand."""
    from grading.course import released_notebook, submit_hand_in

    released = {page.id: released_notebook(course, page) for page in PAGES.values()}
    return partial(submit_hand_in, course=course, released=released)


def _write_for(*marked, writers):
    """Hand one marked learner to every writer and return what the last one makes of them."""
    return [write(*marked) for write in writers][-1]


def _require_writable(out):
    """Raise ``OSError`` now where the results could not be written later."""
    try:
        out.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryFile(dir=out):
            pass
    except OSError as error:
        message = f"results cannot be written there: {error.strerror or error}"
        raise OSError(error.errno, message, str(out)) from error


def _kept(given):
    """Give the scores by a person that differ from what marking came to, in words."""
    for (learner, item), score in sorted(given.items()):
        if score.automatic is not None and score.automatic != score.manual:
            yield f"{learner} {item}: {score.manual:g} stays, marking came to {score.automatic:g}"


def _summary(out, gradebook, report, result, students, given, problems):
    """Put the summary together."""
    marked = {each.marks.student_id for each in result.learners}
    points = [each.points for each in result.learners]
    waiting = zip(students.students, students.waiting, strict=True)
    return Summary(
        out=out,
        gradebook=gradebook,
        report=report,
        files=result.files,
        learners=len(result.learners),
        mean=sum(points) / len(points) if points else 0.0,
        maximum=sum(exercise.points for exercise in EXERCISES.values()),
        late=tuple(each.name for each in students.students if each.late and each.student_id in marked),
        waiting=sum(waits for each, waits in waiting if each.student_id in marked),
        slips=tuple(result.slip_counts),
        kept=tuple(_kept(given)),
        given=len(given),
        problems=tuple(each.in_words for each in problems),
    )
