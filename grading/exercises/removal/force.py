"""Exercises on the pull that a rivet asks for, and for which force a pull is planned."""

from functools import cache

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import Choice, ChoiceKey, Exercise, Range, RangeKey
from grading.exercises.building_blocks import chosen, option, same, slip, wrong
from grading.exercises.removal.ways import grid, rows_of
from grading.exercises.rivet_anatomy.drawing_out import CONSTANTS, one_pull, pull
from grading.exercises.rivet_anatomy.holding import RIVET, newtons, spoken, strength_mpa
from grading.exercises.scenes import scene

HEADING = "What pull will it take?"
SECONDS = ("5754-O", "6016-T4", "6082-T4")
TOPS = ("5754-O", "6016-T6", "HC340LA", "HCT590X")
TOP_WORDS = {
    "5754-O": "soft aluminium",
    "6016-T6": "hardened aluminium",
    "HC340LA": "high-strength steel",
    "HCT590X": "dual-phase steel",
}


def _draw_predict(draw):
    return scene(draw) | {
        "second": draw.pick("second", SECONDS),
        "interlock_mm": draw.decimal("interlock_mm", 0.3, 0.4, 0.05, 2),
    }


def _solve_predict(table):
    found = pull(table | {"top": table["second"], "penetration_mm": 1.8, "contact_mm": 2.5}).first_peak_n
    return {
        "size": ChoiceKey(right=chosen([(found.low > 1000) & (found.high < 10_000)], ["kn"], otherwise="arm"))
    }


PREDICT_FORCE = Exercise(
    id="removal.predict_force",
    objective="force",
    title="Predict: how hard must you pull?",
    prompt=(
        "One rivet in {vehicle}, second plate of {second}, interlock {interlock_mm} mm. "
        "There is no adhesive. You draw it out by a stud on its head. Decide before you work it out."
    ),
    parts=(
        Choice(
            id="size",
            ask="Which pull does it take?",
            options=(
                wrong(
                    "arm",
                    "A few hundred newtons: a strong arm does it.",
                    "Metal has to be crushed all round the tail. No arm does that.",
                ),
                option("kn", "A few thousand newtons: some hundred kilograms hung on one stud."),
                wrong(
                    "car",
                    "Some tens of thousands of newtons: more than the car weighs.",
                    "Only a narrow ring of aluminium has to give. The steel of the rivet stays whole.",
                ),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=_solve_predict,
    reasons=(
        "What has to give is a ring of aluminium a few tenths of a millimetre wide. "
        "By mechanics that takes some thousands of newtons, and nobody has measured it more closely."
    ),
    read_again=HEADING,
    counts=False,
)


def planned_peak(found):
    """Return which peak asks for more at its high end, as an id."""
    return chosen([found.second_peak_n.high > found.first_peak_n.high], ["second"], otherwise="first")


def _apart(*ends):
    """Tell where no two of some forces lie so close that one could be taken for the other."""
    pairs = [(one, other) for number, one in enumerate(ends) for other in ends[number + 1 :]]
    return np.all([np.abs(one - other) > 0.06 * np.maximum(one, other) for one, other in pairs], axis=0)


@cache
def joints():
    """Return joints by the peak to plan for; in all of them the crushed ring alone decides the first."""
    table = grid(
        second=SECONDS,
        top=TOPS,
        interlock_mm=(0.16, 0.2, 0.24, 0.28, 0.32, 0.36),
        penetration_mm=(1.8, 2.0),
        contact_mm=(2.0, 2.5, 3.0, 3.5),
    )
    found = pull(table)
    crush, hold = found.modes.forces_n["collar crush"], found.modes.strength_n
    first, second = found.first_peak_n, found.second_peak_n
    plain = (hold.low == crush.low) & (hold.high == crush.high)
    plain &= _apart(first.low, first.high, second.low) & _apart(first.low, first.high, second.high)
    by_peak = {}
    for joint, peak, kept in zip(rows_of(table), planned_peak(found), plain, strict=True):
        if kept:
            by_peak.setdefault(peak, []).append(joint)
    return by_peak


@worked_out
def needs():
    """Return what some of these rivets ask for, as low and high ends of the whole pull to ten newtons."""
    found = [one_pull(joint).peak_n for of_peak in joints().values() for joint in of_peak[::17]]
    ends = {tuple(int(np.round(end.item(), -1)) for end in (band.low, band.high)) for band in found}
    return [{"need_low_n": low, "need_high_n": high} for low, high in sorted(ends)]


def _draw_pull(draw):
    found = joints()
    return scene(draw) | draw.pick("joint", found[draw.pick("peak", sorted(found))])


def _pull_words(scenario):
    """Return the forces and figures of one pull, as a learner reads them."""
    found = one_pull(scenario)
    return {
        "top_words": TOP_WORDS[scenario["top"]],
        "strength": f"{strength_mpa([scenario['second']])[0]:.0f}",
        "shank_mm": f"{RIVET.shank_diameter_mm}",
        "crush_low": f"{CONSTANTS['crush factor low']}",
        "crush_high": f"{CONSTANTS['crush factor high']}",
        "friction": newtons(found.friction_n.high),
        "opening": spoken(found.second_peak_n),
    }


def _solve_pull(table):
    found = pull(table)
    crush, friction, first = found.modes.forces_n["collar crush"], found.friction_n, found.first_peak_n
    return {
        "first_peak": RangeKey(
            low=first.low,
            high=first.high,
            slips={
                "no_friction": (crush.low, crush.high),
                "friction_twice": (crush.low + friction.high, first.high),
                "no_pi": (first.low / np.pi, crush.high / np.pi + friction.high),
            },
        ),
        "plan": ChoiceKey(right=planned_peak(found)),
        "climbs": ChoiceKey(right=same(table, "hole")),
    }


PULL_FORCE = Exercise(
    id="removal.pull_force",
    objective="force",
    title="The pull, from a section",
    prompt=(
        "{shop} cut a joint of {vehicle} open: interlock {interlock_mm} mm all round, shank {shank_mm} mm. "
        "The second plate is {second}, strength {strength} N/mm². "
        "Of all ways to let go, crushing the ring that hooks over the tail asks for the least: "
        "F = c × strength × π × (shank + interlock) × interlock, with c from {crush_low} to {crush_high}. "
        "Friction adds nothing at the least and {friction} at the most. "
        "Later the tail has to open the hole in the top plate of {top_words}: {opening}."
    ),
    shown=_pull_words,
    parts=(
        Range(
            id="first_peak",
            ask="Between which forces does the first peak lie, friction counted?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason="Forces are shown to ten newtons and strengths as whole ones: 2 % covers both.",
            points=2.0,
            slips=(
                slip("no_friction", "Friction is missing at the high end."),
                slip("friction_twice", "Friction was added at the low end too. There it may be nothing."),
                slip("no_pi", "The crushed ring runs all round the tail: the way round needs a π."),
            ),
        ),
        Choice(
            id="plan",
            ask="For which force do you plan stud, weld and tool?",
            options=(
                option("second", "For the high end of the second peak, at the hole of the top plate."),
                wrong(
                    "sum",
                    "For both high ends together.",
                    "When the tail reaches the top plate, the second plate has let go. They do not add.",
                ),
                option("first", "For the high end of the first peak."),
                wrong(
                    "middle",
                    "For the middle of the first peak's band.",
                    "Nobody knows where in its band your rivet lies. The chain must bear the high end.",
                ),
            ),
        ),
        Choice(
            id="climbs",
            ask="The gauge falls almost to nothing and climbs again some millimetres later. What is that?",
            options=(
                wrong(
                    "adhesive",
                    "Adhesive that holds after all.",
                    "Adhesive carries first, before the rivet moves. This rivet has moved already.",
                ),
                wrong(
                    "stretch",
                    "The stud: it stretches before it breaks.",
                    "A stud that stretches keeps its load. It would not have let go in between.",
                ),
                option("hole", "The spread tail has come to the hole in the top plate."),
            ),
        ),
    ),
    draw=_draw_pull,
    solve=_solve_pull,
    reasons=(
        "Put in the smaller c for the low end, the larger one for the high end, and add friction there only. "
        "The second peak comes later, so the greater of both high ends is what the chain must bear. "
        "In a hard top plate that can be the second. "
        "No such pull has been measured and published: a test pull on your joint tells more than this band."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_FORCE, PULL_FORCE)
