"""What is to be seen after a plan was run on the row of the day: words, a table and pictures."""

import numpy as np

from drawings import pull_trace, row_strip
from exercise_forms.form import sentence
from grading.quantities import show_quantity
from grading.row_days import row_site
from grading.row_plans import FIELDS, read_plan
from secondplate.bench import CAME, MODES, StudPull, run_rows

ONE_DAY = "This was one day: your marks go by what the plan costs over all such days."


def fields():
    """Return the numbers of a plan as the browser asks for them."""
    return [{"name": field.name, "label": field.label, "hint": field.hint} for field in FIELDS]


def run(key, typed):
    """Return the reply to a plan that is to be run: what came of the row, or why it cannot be run."""
    plan, problem = read_plan(typed)
    if problem:
        return {"kind": "problem", "sentence": sentence(problem)}
    runs = run_rows(plan, key.day, seed=key.seed)
    strip, trace = row_strip(runs), pull_trace(*_pull_to_show(runs, key.day))
    return {
        "kind": "row",
        "sentence": "",
        "view": {
            "sentence": f"{_summary(runs)} {ONE_DAY}",
            "rows": [_line(runs, place) for place in range(key.day.rivets)],
            "pictures": [{"html": each._repr_html_(), "alt": each.alt} for each in (strip, trace)],
        },
    }


def _summary(runs):
    """Say in two sentences what the row took and what came of it."""
    parts = [f"{runs.out_at_once[0]} came at the first pull", f"{runs.failures[0]} had to be done again"]
    if runs.by_other_method[0]:
        parts.append(f"{runs.by_other_method[0]} were drilled out")
    took = show_quantity(float(runs.minutes[0]), "min", 3)
    resets = int(runs.resets[0])
    again = "never set again" if not resets else f"set again {'once' if resets == 1 else f'{resets} times'}"
    harmed = int(runs.damaged[0])
    places = "No place was" if not harmed else "1 place was" if harmed == 1 else f"{harmed} places were"
    return (
        f"Of {len(runs.came)} rivets {', '.join(parts[:-1])} and {parts[-1]}, in {took}. "
        f"The machine was {again}. {places} harmed."
    )


def _line(runs, place):
    """Return one line of the table: number, how it was worked, what came of it."""
    came = CAME[runs.came[place, 0]]
    how = MODES[runs.mode[place, 0]]
    return {
        "number": place + 1,
        "how": f"machine set again, then {how}" if runs.reset_before[place, 0] else how,
        "came": f"{came}, place harmed" if runs.harmed[place, 0] else came,
    }


def _pull_to_show(runs, day):
    """Return the pull whose trace is shown, the first that failed or else the first, and its site."""
    wrong, index = runs.was_wrong[:, 0].astype(int), runs.pool_index[:, 0]
    failed = [
        place for place, at in enumerate(index) if at >= 0 and not day.pools[wrong[place]].rivet_out[at]
    ]
    place = failed[0] if failed else 0
    pool, at = day.pools[wrong[place]], index[place]
    return StudPull(
        **{name: np.asarray(column)[at].item() for name, column in vars(pool).items()}
    ), row_site()
