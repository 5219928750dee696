"""Exercise at the virtual bench: a whole row by a plan, marked by what the plan costs on the average."""

from grading.exercise import Choice, ChoiceKey, Exercise, RowRun
from grading.exercises.building_blocks import option, slip, wrong
from grading.exercises.scenes import scene
from grading.row_days import DAYS, row_day, row_run_key

HEADING = "Can you run a row?"
# How somebody at the bench would tell what can be wrong with the set-up in the morning.
STORIES = {
    "current": "The machine is lent out overnight, and sometimes comes back giving too little current.",
    "tilt": "The stand of the gun gets knocked, and sometimes the gun stands off square in the morning.",
    "earth": "Others use the clamps overnight, and sometimes one is missing and the stand is knocked.",
    "oil": "Somebody wipes the heads in the morning, and sometimes the rag is oily and the stand is knocked.",
}


def _percent(share):
    """Write a share as so many in 100."""
    return f"{100 * share:.3g}"


def _shown(numbers):
    """Return what the prompt says of a day."""
    _, day, fault = row_day(numbers["day"])
    right, wrong_set_up = day.failure_probabilities
    return {
        "story": STORIES[fault],
        "rivets": f"{day.rivets}",
        "wrong": _percent(day.wrong_probability),
        "after": _percent(day.wrong_after_reset_probability),
        "drift": _percent(10 * day.drift_probability),
        "fails_right": f"{100 * right:.0f}",
        "fails_wrong": f"{100 * wrong_set_up:.0f}",
        "rivet_min": f"{day.rivet_min:g}",
        "failed_min": f"{day.failed_pull_min:g}",
        "delay_min": f"{day.test_delay_min:g}",
        "reset_min": f"{day.reset_min:g}",
        "other_min": f"{day.other_min:g}",
        "damage_min": f"{day.damage_min:g}",
        "again_harm": _percent(day.damage_after_failure_probability),
        "other_harm": f"{100 * day.other_damage_probability:.0f}",
    }


ROW_RUN = Exercise(
    id="removal.row_run",
    objective="plan",
    title="A row of your own",
    prompt=(
        "{rivets} rivets hold a flange at {shop}. {story} "
        "On {wrong} mornings in 100 the set-up is wrong. "
        "With the wrong set-up {fails_wrong} pulls in 100 fail, with the right one {fails_right}. "
        "Each stud welded turns a right set-up wrong {drift} times in 1000. "
        "After a re-set it is still wrong {after} times in 100.\n\n"
        "A pulled rivet takes {rivet_min} min. Where its pull fails it is done again: {failed_min} min more, "
        "and its place is harmed {again_harm} times in 100. "
        "Each stop to pull costs {delay_min} min, each re-set {reset_min} min. "
        "Drilled out, a rivet takes {other_min} min and its place is harmed {other_harm} times in 100. "
        "Each harmed place costs {damage_min} min.\n\n"
        "Plan the row so that time and harm cost least over many such days. "
        "You may run your plan on today's row before you save it."
    ),
    parts=(
        RowRun(
            id="plan",
            ask="How do you work through this row?",
            slips=(
                slip(
                    "never_tests",
                    "Nothing is pulled before all is welded: a wrong set-up then spoils the whole row. "
                    "Compare what one test costs with what a row of failures costs.",
                ),
                slip(
                    "tests_every_stud",
                    "Every stud is tested alone, long after the set-up is known: count what the stops cost.",
                ),
                slip(
                    "never_stops",
                    "Pulls may fail one after the other and nothing follows from it. A test that changes "
                    "nothing is worth nothing: say at how many failures you set the machine again.",
                ),
                slip(
                    "gives_up_at_once",
                    "One failed pull sends the whole row to the drill. Set what a re-set costs beside that.",
                ),
            ),
            full_within=0.05,
            nothing_beyond=0.25,
            tolerance_reason=(
                "Several plans cost nearly the same, and nobody knows the chances better than this: "
                "up to 5 % above the best plan is right."
            ),
            points=4.0,
        ),
        Choice(
            id="luck",
            ask="A plan met a bad day and cost far more than reckoned. What does that say of the plan?",
            options=(
                wrong(
                    "bad_plan",
                    "That it was a bad plan.",
                    "One day is one throw of the dice. A plan is judged by what it costs over all such days.",
                ),
                option("one_day", "Nothing by itself: it is judged by what it costs over many such days."),
                wrong(
                    "next_time",
                    "That the next day will be a good one.",
                    "The days know nothing of each other: a bad one makes no good one likelier.",
                ),
                wrong(
                    "more_tests",
                    "That more tests would have prevented it.",
                    "Tests find a wrong set-up. A right one fails now and then too, and each test costs.",
                ),
            ),
        ),
    ),
    draw=lambda draw: scene(draw) | {"day": draw.whole("day", 1, DAYS)},
    solve=lambda table: {
        "plan": row_run_key(table["day"]),
        "luck": ChoiceKey(right="one_day"),
    },
    shown=_shown,
    reasons=(
        "A wrong set-up fails most pulls, so one to three studs tell it from a right one. "
        "Test those alone, set the machine again at the first failure, and weld the rest at once. "
        "Where the set-up may go wrong on the way, weld in parts and look at each part. "
        "A re-set is cheap beside a row that is drilled out, so the drill comes last. "
        "The row proves nothing about the next car: the test finds a wrong set-up, and that is all."
    ),
    read_again=HEADING,
)

EXERCISES = (ROW_RUN,)
