"""The verb that brings hand-ins together where many learners work on one machine."""

import click

from grading.cli_shared import FOLDER, as_json, one_sentence, print_summary


@click.command()
@click.argument("homes", type=click.Path(exists=True, file_okay=False))
@click.option("--out", type=FOLDER, required=True, help="Folder for the hand-ins, which `mark` then takes.")
@click.option(
    "--any-name",
    is_flag=True,
    help="Take hand-ins also where the name in them is not that of the account they lie with.",
)
@as_json
def collect(homes, out, any_name, as_json):
    """Copy everybody's hand-in files out of the folders in HOMES, such as /home on a hub's machine.

    Run it as a user who may read all of them. Links are not followed. A hand-in that names somebody else
    than the account it lies with is left out and named, since it would be marked as that other learner's.
    """
    with one_sentence():
        from grading.homes import collect_hand_ins

        made = collect_hand_ins(homes, out, any_name=any_name)
        lines = [f"Copied {made.files} hand-ins of {made.learners} learners into {out}"]
        lines += [f"  left out  {each}" for each in made.left_out]
        data = {"learners": made.learners, "files": made.files, "left_out": list(made.left_out)}
        print_summary(as_json, data, "\n".join(lines))
