"""One step at the virtual bench: the log so far is read, kept on the disk, and shown again."""

from exercise_forms import bench_view
from exercise_forms.drafts import NotKeptError
from exercise_forms.form import sentence
from grading.bench_logs import read_typed_log


def work_at_bench(part, key, steps, keep):
    """Return the reply to a log with a new last step: what is to be seen, or why the step is not possible.

    ``keep`` puts the log on the disk.
    """
    log, problem = read_typed_log(part, key, steps)
    if problem:
        return {"kind": "problem", "sentence": sentence(_without_step(problem))}
    try:
        keep(steps)
        note = ""
    except NotKeptError as lost:
        note = sentence(lost)
    return {"kind": "bench", "sentence": note, "view": bench_view.view(part, key, log)}


def _without_step(problem):
    """Leave out which step it was: on the page it is the one just pressed."""
    place, colon, rest = problem.partition(": ")
    return rest if colon and place.startswith("step ") else problem
