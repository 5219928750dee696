"""An nbgrader course folder from the workbook's pages, and learners' hand-ins put into one.

The course works with nbgrader's own commands and its formgrader. A file that the instructor has changed is
not written over without being told to.
"""

import json
from dataclasses import dataclass
from pathlib import Path

import jinja2

from grading.answers import JOURNAL_FILE, content_of, journal_bytes
from grading.carried_files import make_folder
from grading.class_settings import CLASS_FILE, SHIPPED_CLASS_FILE
from grading.exercises import PAGES
from grading.gradebook import course_id, notebook_name
from grading.gradebook_file import create_gradebook
from grading.gradebook_places import GRADEBOOK_FILE
from grading.hand_in import learner_slug, practical_id
from grading.hand_ins import hand_in_pages, made_at
from grading.variants import normalise_learner
from grading.whole_files import write_whole

TIMESTAMP_FILE = "timestamp.txt"
_TEMPLATES = Path(__file__).parent / "templates"


class CourseError(ValueError):
    """The course folder cannot be made or used; the message is one sentence for the instructor."""


@dataclass(frozen=True, kw_only=True)
class CourseFolder:
    """What was written into a course folder: its assignments, and which of them were released."""

    folder: Path
    gradebook: Path
    assignments: tuple[str, ...]
    released: tuple[str, ...]


def write_course(
    out, *, pages, settings, workbook, class_file=SHIPPED_CLASS_FILE, replace=False, release=True
):
    """Write a complete nbgrader course for the pages into the folder ``out`` and release the pages there."""
    out = Path(out).resolve()
    refuse_stray_answers(out, pages)
    files = {
        out / "nbgrader_config.py": _config(settings).encode(),
        out / CLASS_FILE: Path(class_file).read_bytes(),
    }
    for page in pages.values():
        source = out / "source" / page.assignment
        files[source / notebook_file(page)] = _notebook_bytes(workbook, page)
        files[source / CLASS_FILE] = Path(class_file).read_bytes()
    _write_files(files, replace)
    exchange = out / "exchange"
    exchange.mkdir(exist_ok=True)
    exchange.chmod(0o777)  # nbgrader refuses an exchange that not everyone can write to
    gradebook = out / GRADEBOOK_FILE
    create_gradebook(gradebook)
    assignments = tuple(page.assignment for page in pages.values())
    if release:
        release_pages(out, assignments)
    return CourseFolder(
        folder=out, gradebook=gradebook, assignments=assignments, released=assignments if release else ()
    )


def refuse_stray_answers(course, pages):
    """Raise where somebody's answers lie beside a page that is going to be released."""
    for page in pages.values():
        for stray in sorted((Path(course) / "source" / page.assignment).glob(f"{JOURNAL_FILE}*")):
            message = (
                f"{stray} must be removed first: released with the page, it would be everybody's answers"
            )
            raise CourseError(message)


def notebook_file(page):
    """Return the file name of the page's notebook in a course."""
    return f"{notebook_name(page)}.ipynb"


def _config(settings):
    """Fill nbgrader's settings file."""
    template = (_TEMPLATES / "nbgrader_config.py.jinja").read_text(encoding="utf-8")
    environment = jinja2.Environment(undefined=jinja2.StrictUndefined, keep_trailing_newline=True)
    return environment.from_string(template).render(course_id=course_id(settings))


def _notebook_bytes(workbook, page):
    """Read a page's notebook from the workbook."""
    path = Path(workbook) / page.folder / page.notebook
    if not path.is_file():
        message = f"page {page.id} must have its notebook at {path}, found none"
        raise CourseError(message)
    return path.read_bytes()


def _write_files(files, replace):
    """Write all files or none: a file that is there and differs is only replaced when told to."""
    differing = [path for path, data in files.items() if path.exists() and path.read_bytes() != data]
    if differing and not replace:
        message = f"{differing[0]} has been changed since it was written: pass --replace to write over it"
        raise CourseError(message)
    for path, data in files.items():
        path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(path, data)


def release_pages(course, assignments):
    """Let nbgrader make the released version of each assignment and enter its cells into the gradebook."""
    api = nbgrader_api(course)
    for assignment in assignments:
        outcome = api.generate_assignment(assignment)
        if not outcome["success"]:
            message = f"nbgrader could not release {assignment}: {_last_line(outcome)}"
            raise CourseError(message)


def nbgrader_api(course):
    """Return nbgrader's programming interface for a course folder; loading it takes some seconds."""
    from nbgrader.apps import NbGraderAPI
    from nbgrader.apps.baseapp import NbGrader
    from traitlets.config import PyFileConfigLoader

    loader = PyFileConfigLoader("nbgrader_config.py", path=str(course))
    application = NbGrader()
    application.update_config(loader.load_config())
    return NbGraderAPI(config=application.config)


def _last_line(outcome):
    """Return the last line that nbgrader logged, its reason."""
    lines = (outcome.get("error") or outcome.get("log") or "no reason given").strip().splitlines()
    return lines[-1]


def write_page(folder, *, page, released, hand_in):
    """Put one learner's page and answers into a folder.

    The page is the released one with the learner's written answer put into the practical's cell; nothing
    else of what a learner may have sent as a notebook is used. The journal holds the learner's own records
    only: the page's marks are those of whoever answered last in it.
    """
    make_folder(folder)
    written = hand_in.written.get(page.id)
    write_whole(folder / notebook_file(page), with_written_answer(released, page, written))
    own = [
        content_of(record)
        for record in hand_in.records
        if record.exercise.startswith(f"{page.id}.") and normalise_learner(record.learner) == hand_in.learner
    ]
    write_whole(folder / JOURNAL_FILE, journal_bytes(own))


def submit_hand_in(hand_in, result, keys, problems, *, course, released):
    """Enter a marked hand-in into a course as submitted and as graded, for its formgrader to show.

    The formgrader takes a submission as graded when its page lies in ``autograded`` and both time stamps
    are the one in the gradebook.
    """
    moment = made_at(hand_in)
    for page in map(PAGES.get, hand_in_pages(hand_in)):
        for step in ("submitted", "autograded"):
            folder = Path(course) / step / learner_slug(hand_in.learner) / page.assignment
            write_page(folder, page=page, released=released[page.id], hand_in=hand_in)
            if moment:
                stamp = f"{moment.isoformat(sep=' ')} UTC\n"
                write_whole(folder / TIMESTAMP_FILE, stamp.encode())


def with_written_answer(released, page, written):
    """Return the released notebook with a learner's text in the practical's cell."""
    notebook = json.loads(released)
    for cell in notebook["cells"] if written is not None else ():
        if cell["metadata"].get("nbgrader", {}).get("grade_id") == practical_id(page.id):
            cell["source"] = written
    return (json.dumps(notebook, indent=1, ensure_ascii=False) + "\n").encode("utf-8", "replace")


def released_notebook(course, page):
    """Read the released version of a page in a course."""
    path = Path(course) / "release" / page.assignment / notebook_file(page)
    if not path.is_file():
        message = f"course {course} must hold the released page {page.assignment}, found no {path.name}"
        raise CourseError(message)
    return path.read_bytes()
