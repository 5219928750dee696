"""What the verbs of the command line share: common options, the printed summary, failures in one sentence."""

import json
import sys
from contextlib import contextmanager
from pathlib import Path

import click

from grading.class_settings import SHIPPED_CLASS_FILE

# Failures that are told in one sentence, by the modules that know them: no verb loads those of all others.
EXPECTED = {
    "ChangeError": "grading.changes",
    "ClassFileError": "grading.class_settings",
    "CourseError": "grading.course",
    "ForgetError": "grading.forget",
    "GradebookError": "grading.gradebook_places",
    "HandInError": "grading.hand_in",
    "NoHandInsError": "grading.hand_ins",
    "HomesError": "grading.homes",
    "UnknownLearnerError": "grading.learner_names",
    "PracticalError": "grading.practical",
    "RubricError": "grading.rubric",
    "StatementsError": "grading.statements",
}
FOLDER = click.Path(path_type=Path)

as_json = click.option(
    "--json", "as_json", is_flag=True, help="Print the summary as JSON, for other programs."
)
class_file = click.option(
    "--class",
    "class_file",
    type=click.Path(dir_okay=False, path_type=Path),
    default=SHIPPED_CLASS_FILE,
    help="The class file: course key, due time, credit for later tries.  [default: workbook/class.toml]",
)
gradebook_option = click.option(
    "--gradebook",
    envvar="SECOND_PLATE_GRADEBOOK",
    metavar="FILE|URL",
    help="Where the gradebook lies: a file, or a PostgreSQL database as postgresql+psycopg://user@host/name; "
    "the log of changes stays in the folder.  [default: gradebook.db in the folder of results or course]",
)


def print_summary(as_json, data, text):
    """Print a summary in the form asked for."""
    click.echo(json.dumps(data, indent=2) if as_json else text)


@contextmanager
def one_sentence():
    """Turn every expected failure into one sentence on standard error and exit code 1."""
    try:
        yield
    except _expected() as error:
        raise click.ClickException(str(error)) from error
    except OSError as error:
        place = f"{error.filename}: " if error.filename else ""
        message = f"{place}{error.strerror or error}"
        raise click.ClickException(message) from error


def _expected():
    """Return the failures that are told in one sentence; a module that is not loaded has made none."""
    loaded = ((sys.modules.get(module), name) for name, module in EXPECTED.items())
    return tuple(getattr(module, name) for module, name in loaded if hasattr(module, name))
