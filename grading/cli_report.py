"""The verb that writes the class report again, after marks were changed or for other eyes."""

from pathlib import Path

import click

from grading.cli_shared import FOLDER, as_json, gradebook_option, one_sentence, print_summary


@click.command()
@click.argument("results", type=FOLDER)
@click.option(
    "--course", type=FOLDER, help="The nbgrader course whose gradebook holds the marks, as with `mark`."
)
@gradebook_option
@click.option(
    "--names/--no-names",
    default=True,
    help="Name the learners, or number them and leave out who needs a talk: for showing to the class.",
)
@click.option(
    "--out",
    type=click.Path(dir_okay=False, path_type=Path),
    help="File to write.  [default: class_report.html in RESULTS, without names class_report_no_names.html]",
)
@as_json
def report(results, course, gradebook, names, out, as_json):
    """Write the class report of a folder of results again.

    RESULTS is the OUT of `mark`. Marks are read from the gradebook as it stands now, so that what a person
    changed there counts; slips, tries and time are those of the marking.
    """
    with one_sentence():
        from grading.class_report import REPORT_FILE, WITHOUT_NAMES_FILE, write_class_report
        from grading.class_work import ClassWorkError, read_class_work
        from grading.gradebook_places import gradebook_at
        from grading.gradebook_scores import read_scores

        try:
            work = read_class_work(results)
        except ClassWorkError as error:
            raise click.ClickException(str(error)) from error
        path = out or results / (REPORT_FILE if names else WITHOUT_NAMES_FILE)
        book = gradebook_at(gradebook, course or results)
        if isinstance(book, Path) and not book.is_file():
            message = f"gradebook {book} must be there, found none; with a course give --course"
            raise click.ClickException(message)
        write_class_report(path, read_scores(book), work, names=names)
        data = {"report": str(path), "learners": len(work.learners), "names": names}
        print_summary(as_json, data, f"Class report {path}")
