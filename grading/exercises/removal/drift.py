"""Exercise on a small lasting shift, which sums of distances find and limits of single values do not."""

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import chosen, option, same, slip, wrong
from grading.exercises.removal.pull_chart import HEADING
from grading.exercises.scenes import scene
from secondplate.bench_random import uniform
from secondplate.trials import cumulative_sums, standardised_sums

SLACK, INTERVAL = 0.5, 5.0
PULLS = 6
SHOWN = ("first", "second", "third", "fourth", "fifth", "sixth")
GOALS_N, SCATTERS_N = (2700, 2900, 3100, 3300), (50, 60, 80)


def _sums(scenario):
    """Return the two one-sided sums of one series of pulls."""
    forces_n = [scenario[name] for name in SHOWN]
    return cumulative_sums(
        forces_n, target=scenario["goal_n"], scatter=scenario["scatter_n"], slack=SLACK, interval=INTERVAL
    )


def _answers(scenario):
    """Return the last sum for a fall, and what the slips make of it."""
    forces_n = [scenario[name] for name in SHOWN]
    given = {"target": scenario["goal_n"], "scatter": scenario["scatter_n"]}
    fall = -standardised_sums(forces_n, **given)[-1]
    return {
        "right": _sums(scenario).below[-1],
        "no_slack": cumulative_sums(forces_n, **given, slack=0.0).below[-1],
        "below_zero": fall - SLACK * PULLS,
    }


@worked_out
def _drifts():
    """Return series that drift down, by whether the sums signal; in none does a single force stand out."""
    share = uniform(b"drifts of page 3", "share", np.arange(PULLS * 240)).reshape(240, PULLS)
    found = {"signals": [], "quiet": []}
    for number, row in enumerate(share):
        goal_n, scatter_n = GOALS_N[number % 4], SCATTERS_N[number % 3]
        # The first pulls lie above the goal, the others fall below it by one or two deviations.
        places = np.where(np.arange(PULLS) < 1 + number % 2, 0.2 + row, -0.8 - 1.7 * row)
        forces_n = np.round(goal_n + places * scatter_n, -1).astype(int)
        series = {"goal_n": goal_n, "scatter_n": scatter_n}
        series |= dict(zip(SHOWN, forces_n.tolist(), strict=True))
        sums, answers = _sums(series), np.array([*_answers(series).values()])
        close = np.abs(answers[:, None] - answers[None]) + np.eye(len(answers))
        signals = sums.below[-1] > INTERVAL
        # The last pull decides, and it does so clearly.
        clear = abs(sums.below[-1] - INTERVAL) > 0.3 and sums.signals.size == signals
        if answers.min() > 0.3 and close.min() > 0.2 and clear:
            found["signals" if signals else "quiet"].append(series)
    return found


def _draw_drift(draw):
    return scene(draw) | draw.pick("series", _drifts()[draw.pick("kind", ("signals", "quiet"))])


def _solve_drift(table):
    rows = [
        {name: table[name][row] for name in ("goal_n", "scatter_n", *SHOWN)}
        for row in range(len(table["goal_n"]))
    ]
    answers = {name: [_answers(row)[name] for row in rows] for name in ("right", "no_slack", "below_zero")}
    signals = np.array([_sums(row).signals.size > 0 for row in rows], dtype=bool)
    return {
        "sum": NumberKey(
            value=answers["right"], slips={name: answers[name] for name in ("no_slack", "below_zero")}
        ),
        "signal": ChoiceKey(right=chosen([signals], ["signals"], otherwise="quiet")),
        "why_sums": ChoiceKey(right=same(table, "small")),
    }


DRIFT = Exercise(
    id="removal.drift",
    objective="proof",
    title="Lower and lower: chance or drift?",
    prompt=(
        "The pulls of {shop} should come out at {goal_n} N, with a standard deviation of {scatter_n} N. "
        "Six in a row: {first}, {second}, {third}, {fourth}, {fifth}, {sixth} N. "
        "The sum for a fall starts at 0. "
        "Each pull adds by how many standard deviations it lies below, less {slack}. "
        "The sum never goes below 0, and it signals above {interval}."
    ),
    shown=lambda scenario: {"slack": f"{SLACK:g}", "interval": f"{INTERVAL:g}"},
    parts=(
        Number(
            id="sum",
            ask="How many standard deviations does the sum for a fall reach after the sixth pull?",
            unit="times",
            absolute_tolerance=0.06,
            tolerance_reason="Sums are worked out to a tenth: half of that and a little.",
            slips=(
                slip("no_slack", "Each pull adds less than its distance: the slack is missing."),
                slip("below_zero", "The sum stays at 0 where it would go below."),
            ),
        ),
        Choice(
            id="signal",
            ask="What do the six pulls say?",
            options=(
                option("signals", "The sum signals: look for the cause before the next weld."),
                option("quiet", "No signal yet: go on, and add up the next pull."),
                wrong(
                    "one_low",
                    "In order, as long as no single pull lies three deviations off.",
                    "One pull alone is not what these sums look for.",
                ),
            ),
        ),
        Choice(
            id="why_sums",
            ask="What do sums find sooner than limits for single pulls do?",
            options=(
                wrong(
                    "wild",
                    "One wild pull.",
                    "That is what limits for single pulls are best at.",
                ),
                option("small", "A small shift that lasts, such as a tip that wears."),
                wrong(
                    "all",
                    "Everything: the limits can be left out.",
                    "Look at both: the sums are slow where one pull is far off.",
                ),
            ),
        ),
    ),
    draw=_draw_drift,
    solve=_solve_drift,
    reasons=(
        "Distance below the goal over the standard deviation, less the slack, added up and never below 0. "
        "Pulls near the goal bring the sum back to 0; a lasting fall lets it climb. "
        "Limits for single pulls catch the wild one, sums the slow one. "
        "Neither names the cause: wear, studs, gas, plates, or the rivets themselves."
    ),
    read_again=HEADING,
)

EXERCISES = (DRIFT,)
