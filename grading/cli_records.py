"""Verbs for records: practical marks by rubric, changes of single scores, and forgetting a learner."""

from pathlib import Path

import click

from grading.class_settings import read_class_file
from grading.cli_shared import (
    FOLDER,
    as_json,
    class_file,
    gradebook_option,
    one_sentence,
    print_summary,
)

results_folder = click.option(
    "--results",
    type=FOLDER,
    required=True,
    help="The folder with the gradebook: the OUT of `mark`, or a course folder.",
)


@click.command()
@click.argument("table", type=click.Path(path_type=Path))
@results_folder
@gradebook_option
@class_file
@as_json
def practical(table, results, gradebook, class_file, as_json):
    """Enter practical marks from a table, judged line by line of a rubric.

    TABLE is a CSV with the columns learner, page, criterion, level, by, when and note; a later row takes the
    place of an earlier one. The sum goes into the gradebook beside the written marks, and into results.csv.
    Where a row has a mistake nothing is entered, and every mistake is named with its line.
    """
    with one_sentence():
        from grading.exercises import PAGES
        from grading.practical import enter_practical, read_practical
        from grading.rubric import read_rubrics

        rubrics = read_rubrics(PAGES)
        settings = read_class_file(class_file)
        rows, problems = read_practical(table, rubrics)
        if problems:
            count = f"{len(problems)} problem{'s' if len(problems) > 1 else ''}"
            message = f"nothing is entered, {table.name} has {count}: {'; '.join(problems)}"
            raise click.ClickException(message)
        book = gradebook_in(results, gradebook)
        done = enter_practical(
            book,
            rows,
            rubrics=rubrics,
            pages=PAGES,
            settings=settings,
            file_name=table.name,
        )
        refresh_results(results, settings, book)
        data = {
            "entered": [
                {"learner": who, "item": item, "points": n} for (who, item), n in done.entered.items()
            ],
            "same_as_before": done.same,
            "waiting_for_lines": list(done.waiting),
            "kept": list(done.kept),
        }
        lines = [f"Entered {len(done.entered)} practicals, {done.same} were there already."]
        lines += [f"  waits  {each}" for each in done.waiting] + [f"  kept   {each}" for each in done.kept]
        print_summary(as_json, data, "\n".join(lines))


@click.command()
@click.argument("learner")
@click.argument("item")
@click.argument("points")
@results_folder
@gradebook_option
@click.option("--by", required=True, help="Who makes the change.")
@click.option("--why", required=True, help="The reason, in one sentence.")
@class_file
@as_json
def change(learner, item, points, results, gradebook, by, why, class_file, as_json):
    """Give one score by hand, with who and why.

    ITEM is an exercise or a practical as named in the header of results.csv. POINTS is a number, or
    `automatic` to take a score given by hand back. Marking again never replaces it. Every change is added to
    changes.csv: who, when, why, from what to what.
    """
    with one_sentence():
        from grading.changes import change_score

        settings = read_class_file(class_file)
        book = gradebook_in(results, gradebook)
        made = change_score(book, learner=learner, item=item, points=read_points(points), by=by, why=why)
        refresh_results(results, settings, book)
        scores = ["automatic" if score is None else f"{score:g}" for score in (made.before, made.after)]
        text = f"{made.learner} {made.item}: {scores[0]} is now {scores[1]}, by {made.by}: {made.why}"
        print_summary(as_json, made._asdict(), text)


@click.command()
@click.argument("learner")
@click.option(
    "--results",
    type=FOLDER,
    required=True,
    multiple=True,
    help="A folder of results, a course folder, or one with practical.csv; may be given several times.",
)
@click.option(
    "--hand-ins",
    type=FOLDER,
    required=True,
    multiple=True,
    help="A folder of hand-in files; may be given several times.",
)
@gradebook_option
@click.option("--yes", is_flag=True, help="Do it. Without this only what would be done is listed.")
@as_json
def forget(learner, results, hand_ins, gradebook, yes, as_json):
    """Delete what is kept of one learner, at their request.

    Hand-ins, gradebook rows, feedback pages, rows of every table and entries of exports go; pages that name
    several learners, such as a class report, are deleted to be made again. At the end all files are searched
    once more. Copies elsewhere (mail, sticks, backups, the learner's own computer) are not touched.
    """
    with one_sentence():
        from grading.forget import forget_learner

        book = gradebook_in(results[0], gradebook) if gradebook else None
        done = forget_learner(learner, results=results, hand_ins=hand_ins, gradebook=book, do=yes)
        lines = [f"{'Forgotten' if yes else 'To be forgotten'}: {done.learner}"]
        lines += [f"  {step}" for step in done.steps]
        data = {"learner": done.learner, "done": yes, "steps": list(done.steps), "left": list(done.left)}
        print_summary(as_json, data, "\n".join(lines))
        if not yes:
            message = "nothing is deleted yet: look at the list, then run it again with --yes"
            raise click.ClickException(message)
        if done.left:
            message = f"still named, to be looked at by a person: {'; '.join(done.left)}"
            raise click.ClickException(message)


def read_points(text):
    """Return typed points as a number, None for the automatic score."""
    if text == "automatic":
        return None
    try:
        return float(text.replace(",", "."))
    except ValueError as error:
        message = f"points must be a number or the word automatic, got {text!r}"
        raise click.ClickException(message) from error


def gradebook_in(results, gradebook=None):
    """Return the gradebook that was named, or the one in a folder of results."""
    from grading.gradebook_places import gradebook_at

    found = gradebook_at(gradebook, results)
    if isinstance(found, Path) and not found.is_file():
        message = f"results must be a folder with a gradebook, found no {found}: mark the hand-ins first"
        raise click.ClickException(message)
    return found


def refresh_results(results, settings, gradebook):
    """Write the table of results again from the gradebook, late rules applied."""
    from grading.exercises import PAGES
    from grading.export import write_results
    from grading.gradebook_scores import read_scores
    from grading.held_folders import WAIT_S, held
    from grading.late import write_late_penalties

    with held(results, wait_s=WAIT_S):
        write_late_penalties(gradebook, settings, pages=PAGES)
        write_results(Path(results) / "results.csv", read_scores(gradebook), pages=PAGES)
