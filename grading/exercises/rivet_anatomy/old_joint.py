"""Exercise on a joint with years on the road: what comes before a pull, and what nobody has tested."""

from grading.exercise import Choice, ChoiceKey, Exercise, Order, OrderKey, Verdicts, VerdictsKey
from grading.exercises.building_blocks import option, same, wrong
from grading.exercises.rivet_anatomy.age import HEADING, direction
from grading.exercises.scenes import scene

STEPS = {
    "compare": "Compare the greatest force with the band for a clean joint, and write both down.",
    "look_up": "Look up in the maker's procedure whether the joint is bonded, and how that is released.",
    "pull": "Pull slowly and note the greatest force.",
    "free": "Check that the plates are free of each other round the rivet.",
    "weld": "Clean the head, weld the stud and let it cool.",
    "release": "Release the adhesive round the joint as the procedure says.",
}
IN_ORDER = ("look_up", "release", "free", "weld", "pull", "compare")
# How an earlier load changed what is left; for the last row no test was found.
LATER = {
    "fatigue_raises_lap": "pulled along each other (lap shear)",
    "fatigue_lowers_peel": "peeled apart (T-peel)",
}


def _draw_old(draw):
    return scene(draw) | {"years": draw.whole("years", 8, 20)}


def _solve_old(table):
    found = {name: same(table, direction(name)) for name in LATER}
    return {
        "order": OrderKey(right=same(table, IN_ORDER)),
        "later": VerdictsKey(right=found | {"drawn_out": same(table, "unknown")}),
        "stuck": ChoiceKey(right=same(table, "stop")),
    }


OLD = Exercise(
    id="rivet_anatomy.old_joint",
    objective="age",
    title="A joint with years on it",
    prompt=(
        "On {vehicle}, {years} years old, a row of rivets is to be drawn out at {shop}. "
        "The joint may be bonded, and the road has shaken it all that time."
    ),
    parts=(
        Order(
            id="order",
            ask=(
                "What comes first, what last, before a pull can be read as the force of the rivet? "
                "First step at the top."
            ),
            points=2.0,
            options=tuple(option(name, words) for name, words in STEPS.items()),
        ),
        Verdicts(
            id="later",
            ask="What did tests show of strength left after earlier fatigue, against a new joint?",
            points=1.5,
            rows=(
                *(option(name, words) for name, words in LATER.items()),
                option("drawn_out", "rivet drawn straight out by its head"),
            ),
            verdicts=(
                option("less", "lower"),
                option("unknown", "no test was found"),
                option("more", "higher"),
            ),
        ),
        Choice(
            id="stuck",
            ask="Two rivets came out inside the band. The third does not move at its high end. What now?",
            options=(
                wrong(
                    "harder",
                    "Pull harder: old joints are tight.",
                    "Then the stud breaks and flies, or the plate goes with the rivet.",
                ),
                option("stop", "Stop, take off the load, and find out what else holds."),
                wrong(
                    "hammer",
                    "Keep the load on and strike the plate beside it.",
                    "A loaded stud must not be struck. And the plate is what you want to keep.",
                ),
            ),
        ),
    ),
    draw=_draw_old,
    solve=_solve_old,
    reasons=(
        "Adhesive can carry more than the rivet, so it is released and the plates are seen to be free before "
        "the stud is welded and pulled. "
        "Earlier fatigue left more strength in lap shear, through fretting, and less in T-peel. "
        "For a rivet drawn out by its head no test was found. "
        "A rivet that stays put beyond its band has something else holding it, so stop and look."
    ),
    read_again=HEADING,
)

EXERCISES = (OLD,)
