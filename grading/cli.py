"""The command line: one verb for each thing an instructor does with hand-ins, classes and the bank.

Every verb ends with exit code 0 only when it did all it was asked for, and says what went wrong in one
sentence on standard error. Heavy modules load inside the verbs, so that help comes at once.
"""

import json
import sys
from contextlib import contextmanager
from pathlib import Path

import click

from grading.class_settings import SHIPPED_CLASS_FILE, read_class_file
from grading.cli_exports import items, statements
from grading.cli_homes import collect
from grading.cli_records import change, forget, practical
from grading.cli_report import report
from grading.cli_shared import FOLDER, as_json, class_file, gradebook_option, one_sentence, print_summary
from grading.collector import loading

ROOT = Path(__file__).resolve().parent.parent
CONTEXT = {"help_option_names": ["-h", "--help"], "max_content_width": 100}


@click.group(context_settings=CONTEXT, invoke_without_command=True)
@click.pass_context
def main(context):
    """Mark the workbook's hand-in files: fast, without running anything that a learner wrote.

    Start with `demo`: it invents a whole class, marks it and leaves everything to look at.
    """
    if context.invoked_subcommand is None:
        click.echo(context.get_help())


@main.command()
@click.option("--out", type=FOLDER, required=True, help="Folder for the invented class and its results.")
@click.option(
    "--learners", type=click.IntRange(4, 5000), default=24, show_default=True, help="Size of the class."
)
@as_json
def demo(out, learners, as_json):
    """Invent a class and mark it, to see the whole thing in a minute.

    Writes hand-in files into OUT/hand_ins (right answers, usual slips, blanks, late ones, a broken file,
    somebody who handed in twice) and the results into OUT/results. All names are invented.
    """
    with one_sentence():
        from grading.demo_class import DemoError, write_demo_class

        settings = read_class_file(SHIPPED_CLASS_FILE)
        with progress_bar("Inventing", quiet=as_json) as progress:
            try:
                write_demo_class(out / "hand_ins", settings, learners=learners, progress=progress)
            except DemoError as error:
                raise click.ClickException(str(error)) from error
        summary = _mark(
            out / "hand_ins", out / "results", settings, course=None, feedback=True, quiet=as_json
        )
        _report(summary, as_json)


@main.command()
@click.argument("hand_ins", type=click.Path(path_type=Path))
@click.option("--out", type=FOLDER, required=True, help="Folder for the results; made where it is not there.")
@class_file
@click.option(
    "--course",
    type=FOLDER,
    help="An nbgrader course made by `course`: the marks go into its gradebook instead of one in OUT, "
    "and the pages into its submitted/ and autograded/ folders, so that its formgrader shows them.",
)
@gradebook_option
@click.option(
    "--feedback/--no-feedback", default=True, help="Write a feedback page for each learner, or none."
)
@click.option(
    "--report/--no-report",
    "class_report",
    default=None,
    help="Write the class report, or not.  [default: for up to 300 hand-ins]",
)
@click.option(
    "--cluster",
    metavar="ADDRESS",
    help="Mark on the workers of a Dask scheduler at this address, such as tcp://192.168.0.10:8786.",
)
@as_json
def mark(hand_ins, out, class_file, course, gradebook, feedback, class_report, cluster, as_json):
    """Mark a folder of hand-in files, or one file.

    Writes into OUT: gradebook.db (opens in nbgrader), results.csv, feedback/<learner>.html, class_report.html
    and problems.csv (everything that could not be read, and why). Marking again replaces nothing that a
    person entered in the gradebook: manual scores, comments, extra credit, extensions.
    """
    with one_sentence():
        with loading():
            import grading.results  # noqa: F401, which takes in all that marking needs
            from grading.gradebook_places import gradebook_at

        settings = read_class_file(class_file)
        try:
            with _elsewhere(cluster) as run_chunks:
                summary = _mark(
                    hand_ins,
                    out,
                    settings,
                    course=course,
                    gradebook=gradebook_at(gradebook, out) if gradebook else None,
                    feedback=feedback,
                    report=class_report,
                    run_chunks=run_chunks,
                    quiet=as_json,
                )
        except KeyboardInterrupt as error:
            message = "interrupted: what is marked is kept, and the same command goes on from there"
            raise click.ClickException(message) from error
        _report(summary, as_json)


@main.command()
@click.option("--out", type=FOLDER, required=True, help="Folder for the bundle.")
@class_file
@as_json
def pack(out, class_file, as_json):
    """Pack what a learner needs into one zip file, without solutions, instructor's notes and tests.

    The class file goes in with it, so every learner works with this class's numbers.
    """
    with one_sentence():
        from grading.pack import pack_workbook

        read_class_file(class_file)
        path, count = pack_workbook(ROOT, out, class_file=class_file)
        print_summary(as_json, {"bundle": str(path), "files": count}, f"Packed {count} files into {path}")


@main.command()
@click.option("--out", type=FOLDER, required=True, help="Folder for the two pages.")
@class_file
@click.option(
    "--number",
    type=click.IntRange(1, 9999),
    default=1,
    show_default=True,
    help="Another number gives other joints.",
)
@click.option(
    "--joints", type=click.IntRange(1, 12), default=6, show_default=True, help="How many joints to read."
)
@as_json
def sheet(out, class_file, number, joints, as_json):
    """Make a section-reading sheet to print, and the page with its answers.

    Riveted joints cut through the middle, to be measured on paper with a ruler. The joints come from the
    class's key and the number, so each class has its own; print at 100 %.
    """
    with one_sentence():
        from grading.section_sheet import write_section_sheet

        paths = write_section_sheet(out, read_class_file(class_file), number=number, count=joints)
        summary = {"sheet": str(paths[0]), "answers": str(paths[1]), "joints": joints}
        print_summary(as_json, summary, f"Sheet {paths[0]}, answers {paths[1]}")


@main.command()
@click.argument("what", default="bank")
@as_json
def check(what, as_json):
    """Check the exercise bank, a class file (.toml), or a hand-in file.

    Without an argument, or with `bank`, the bank is checked: every exercise is drawn and solved many times.
    """
    with one_sentence():
        from grading.check import check_anything

        lines, problems = check_anything(what)
        for line in [] if as_json else lines:
            click.echo(line)
        if as_json:
            click.echo(json.dumps({"checked": what, "found": lines, "problems": problems}, indent=2))
        if problems:
            count = f"{len(problems)} problem{'s' if len(problems) > 1 else ''}"
            message = f"{what} has {count}: {'; '.join(problems)}"
            raise click.ClickException(message)


@main.command()
@click.option("--out", type=FOLDER, required=True, help="The course folder; made where it is not there.")
@class_file
@click.option("--replace", is_flag=True, help="Write over files that were changed since they were written.")
@click.option(
    "--release/--no-release", default=True, help="Let nbgrader make the learners' pages, or leave it."
)
@as_json
def course(out, class_file, replace, release, as_json):
    """Write a complete nbgrader course folder with every page as an assignment.

    nbgrader's own commands and its formgrader in JupyterLab work on it; JupyterLab must be opened on this
    folder or one above it. nbgrader's exchange does not run on Windows: use hand-in files there.
    """
    with one_sentence():
        from grading.course import write_course
        from grading.exercises import PAGES

        made = write_course(
            out,
            pages=PAGES,
            settings=read_class_file(class_file),
            workbook=ROOT / "workbook",
            class_file=class_file,
            replace=replace,
            release=release,
        )
        summary = {
            "course": str(made.folder),
            "assignments": list(made.assignments),
            "released": list(made.released),
        }
        released = "released" if made.released else "not released yet"
        print_summary(as_json, summary, f"Course {made.folder}: {', '.join(made.assignments)} ({released})")


for verb in (collect, report, practical, change, forget, statements, items):
    main.add_command(verb)


def _mark(hand_ins, out, settings, *, quiet, **how):
    """Mark with a progress bar and return the summary."""
    from grading.results import mark_folder

    with progress_bar("Marking", quiet=quiet) as progress:
        return mark_folder(hand_ins, out, settings, progress=progress, **how)


@contextmanager
def _elsewhere(address):
    """Give what marks on a cluster, or None where no address is given; end with 2 where nothing is there."""
    if address is None:
        yield None
        return
    from grading.cluster import ClusterError, NoClusterError, cluster_at

    try:
        with cluster_at(address) as run_chunks:
            yield run_chunks
    except ClusterError as error:
        told = click.ClickException(str(error))
        told.exit_code = 2 if isinstance(error, NoClusterError) else 1
        raise told from error


def _report(summary, as_json):
    """Print the summary of a marking and end with an error where nothing could be marked."""
    print_summary(as_json, summary.as_dict(), summary.as_text())
    if not summary.learners:
        message = f"none of the {summary.files} files could be marked, see {summary.out / 'problems.csv'}"
        raise click.ClickException(message)


@contextmanager
def progress_bar(what, *, quiet):
    """Show progress on standard error where somebody watches; give a function that is told (done, total)."""
    if quiet or not sys.stderr.isatty():
        yield None
        return
    from rich.console import Console
    from rich.progress import MofNCompleteColumn, Progress, TimeRemainingColumn

    columns = (*Progress.get_default_columns()[:2], MofNCompleteColumn(), TimeRemainingColumn())
    console = Console(stderr=True)
    # No thread of its own: marking may split into processes while the bar is shown.
    with Progress(*columns, console=console, transient=True, auto_refresh=False) as bar:
        task = bar.add_task(what, total=None)
        yield lambda done, total: bar.update(task, completed=done, total=total, refresh=True)
