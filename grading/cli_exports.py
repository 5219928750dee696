"""Verbs for exports in open standards: scores as xAPI statements, exercises as QTI items."""

import click

from grading.class_settings import read_class_file
from grading.cli_records import gradebook_in, results_folder
from grading.cli_shared import (
    FOLDER,
    as_json,
    class_file,
    gradebook_option,
    one_sentence,
    print_summary,
)


@click.command()
@results_folder
@gradebook_option
@click.option("--out", type=FOLDER, required=True, help="Folder for the statements.")
@click.option(
    "--site",
    help="An address of your school, of which all names in the statements are made.  "
    "[default: a reserved one that leads nowhere]",
)
@class_file
@as_json
def statements(results, gradebook, out, site, class_file, as_json):
    """Write the scores of a class as xAPI statements, for a learning record store.

    One JSON list, OUT/statements.json. Learners stand there by their id in the gradebook, which is made of
    the name. A statement has the same id every time, so sending the file twice makes nothing twice.
    """
    with one_sentence():
        from grading.exercises import PAGES
        from grading.gradebook_scores import read_scores
        from grading.statements import SITE, write_statements

        settings = read_class_file(class_file)
        students = read_scores(gradebook_in(results, gradebook))
        out.mkdir(parents=True, exist_ok=True)
        path = out / "statements.json"
        count = write_statements(path, students, pages=PAGES, settings=settings, site=site or SITE)
        text = f"Wrote {count} statements on {len(students)} learners into {path}"
        print_summary(as_json, {"file": str(path), "statements": count, "learners": len(students)}, text)


@click.command()
@click.option("--out", type=FOLDER, required=True, help="Folder for the package.")
@click.option(
    "--draws",
    type=click.IntRange(1, 100),
    default=3,
    show_default=True,
    help="How many items to make of each exercise, each with other numbers.",
)
@class_file
@as_json
def items(out, draws, class_file, as_json):
    """Write exercises as QTI 2.1 items, for other systems. They hold the answers: keep them from learners.

    OUT/second_plate_items.zip is a content package. OUT/left_out.csv names the exercises that would be
    marked otherwise by the standard, or need a figure or the bench, and why.
    """
    with one_sentence():
        from grading.exercises import EXERCISES
        from grading.items import write_items

        made = write_items(out, EXERCISES, read_class_file(class_file), draws=draws)
        text = (
            f"Wrote {made.items} items of {made.exercises} exercises into {made.package}, "
            f"{made.left_out} exercises are left out, see {made.left_out_table}"
        )
        data = {
            "package": str(made.package),
            "items": made.items,
            "exercises": made.exercises,
            "left_out": made.left_out,
        }
        print_summary(as_json, data, text)
