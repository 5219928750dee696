"""Exercises on what holds the tail of a set rivet, and on which side of a joint gives first."""

from functools import cache

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Number,
    NumberKey,
    Range,
    RangeKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, same, slip, wrong
from grading.exercises.rivet_anatomy.holding import (
    HEADING,
    RIVET,
    SHARE,
    clear_bands,
    spoken,
    strength_mpa,
)
from grading.exercises.scenes import scene
from secondplate.failure_modes import NOT_DECIDED, FailureModes
from secondplate.joint_strength import HEAD_SIDE, TAIL_SIDE, cross_tension
from secondplate.pull_out_forces import collar_crush_n, collar_shear_n
from secondplate.rivet import Rivet, Sheet, Stack
from secondplate.sheet_alloys import sheet_band
from secondplate.tables import values
from secondplate.tail_pull_out import tail_hold

CONSTANTS = values("pull_out_constants")
CRUSH_LOW, CRUSH_HIGH = CONSTANTS["crush factor low"], CONSTANTS["crush factor high"]


def _hold(interlock_mm, penetration_mm, strength, shank_mm=5.3):
    """Return collar shear and collar crush of a tail as two ways to give."""
    rivet = Rivet(shank_diameter_mm=shank_mm, rivet_length_mm=6.0)
    hold = tail_hold(
        rivet, interlock_mm=interlock_mm, penetration_mm=penetration_mm, tensile_strength_mpa=strength
    )
    return FailureModes(forces_n={name: hold.forces_n[name] for name in ("collar crush", "collar shear")})


@cache
def _tails():
    """Return interlock and penetration of tails by whether it is plain that the crush comes first."""
    interlock_mm, penetration_mm = np.meshgrid(np.arange(0.2, 0.51, 0.05), np.arange(1.2, 2.41, 0.1))
    modes = _hold(interlock_mm, penetration_mm, 215.0)
    plain = clear_bands(*modes.forces_n.values())
    found = {}
    for name in ("collar crush", NOT_DECIDED):
        there = plain & (modes.likely_mode == name)
        pairs = zip(interlock_mm[there], penetration_mm[there], strict=True)
        found[name] = tuple((round(float(f), 2), round(float(p), 1)) for f, p in pairs)
    return found


def _draw_tail(draw):
    interlock_mm, penetration_mm = draw.pick("tail", _tails()[draw.pick("mode", tuple(_tails()))])
    return scene(draw) | {
        "interlock_mm": interlock_mm,
        "penetration_mm": penetration_mm,
        "second_mm": round(penetration_mm + draw.pick("left_mm", (0.4, 0.5, 0.6)), 1),
        "shank_mm": draw.pick("shank_mm", (5.3, 5.4, 5.5)),
        "strength": draw.whole("strength", 190, 320, 10),
    }


def _solve_tail(table):
    shank_mm, interlock_mm = table["shank_mm"], table["interlock_mm"]
    penetration_mm, strength = table["penetration_mm"], table["strength"]
    rivet = Rivet(shank_diameter_mm=shank_mm, rivet_length_mm=6.0)
    plate = {"interlock_mm": interlock_mm, "tensile_strength_mpa": strength}
    shear_n = collar_shear_n(rivet, penetration_mm=penetration_mm, **plate)
    low_n, high_n = (
        collar_crush_n(rivet, crush_factor=factor, **plate) for factor in (CRUSH_LOW, CRUSH_HIGH)
    )
    tail_mm = shank_mm + 2 * interlock_mm
    disc = tail_mm**2 / 4 / ((shank_mm + interlock_mm) * interlock_mm)
    modes = _hold(interlock_mm, penetration_mm, strength, shank_mm)
    return {
        "shear": NumberKey(
            value=shear_n,
            slips={
                "shank": shear_n * shank_mm / tail_mm,
                "whole_plate": shear_n * table["second_mm"] / penetration_mm,
                "tension": shear_n / SHARE,
            },
        ),
        "crush": RangeKey(
            low=low_n,
            high=high_n,
            slips={"sheared": (low_n * SHARE, high_n * SHARE), "disc": (low_n * disc, high_n * disc)},
        ),
        "first": ChoiceKey(
            right=chosen([modes.likely_mode == "collar crush"], ["crush"], otherwise="not_decided")
        ),
        "bottom": ChoiceKey(right=same(table, "skin")),
    }


TAIL = Exercise(
    id="rivet_anatomy.tail_side",
    objective="holding",
    title="What holds the tail?",
    prompt=(
        "A shank of {shank_mm} mm sits {penetration_mm} mm deep in a second plate of {second_mm} mm, with an "
        "interlock of {interlock_mm} mm. The plate's strength is {strength} N/mm². "
        "Shear of the collar: π × (shank + 2 × interlock) × depth × {share} × strength. "
        "Crush under the tail: c × strength × π × (shank + interlock) × interlock. "
        "Nobody knows c better than {low} to {high}."
    ),
    shown=lambda scenario: {"share": f"{SHARE}", "low": f"{CRUSH_LOW}", "high": f"{CRUSH_HIGH}"},
    parts=(
        Number(
            id="shear",
            ask="At which force is the collar sheared out?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("shank", "The cut runs round the spread tail, which is wider than the shank."),
                slip("whole_plate", "That is the whole plate. Only the depth of the tail is cut."),
                slip("tension", "In shear a metal bears less than in tension: the share is missing."),
            ),
        ),
        Range(
            id="crush",
            ask="Between which two forces is the plate crushed under the tail?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "sheared", "The share for shear has no place here: under the tail the plate is pressed."
                ),
                slip("disc", "That is the whole face of the tail. Only the ring of the interlock presses."),
            ),
        ),
        Choice(
            id="first",
            ask=(
                "The shear was never tried on a joint either: it may be 1.4 times as much or as little. "
                "Which gives first?"
            ),
            options=(
                option("crush", "The crush, whichever ends are true."),
                wrong(
                    "shear",
                    "The shear, whichever ends are true.",
                    "Compare the high end of the shear with the low end of the crush.",
                ),
                option("not_decided", "Not decided: the two bands meet."),
            ),
        ),
        Choice(
            id="bottom",
            ask="A like joint has less plate left under its tail. What does that change?",
            options=(
                wrong(
                    "weaker",
                    "It holds less, in proportion.",
                    "Look at the two sums: the plate under the tail is in neither.",
                ),
                option("skin", "Not the pull: it decides whether the skin under the rivet survives."),
                wrong(
                    "nothing",
                    "Nothing at all.",
                    "Not the force, but a thin skin tears or leaks, and that plate is what you want to keep.",
                ),
            ),
        ),
    ),
    draw=_draw_tail,
    solve=_solve_tail,
    reasons=(
        "The shear runs round the tail over its depth. "
        "The crush presses on the ring of the interlock, and its factor is a band, so the force is one too. "
        "Where the bands meet nobody can say which comes first, and it need not be said to plan a pull. "
        "The plate under the tail is in neither sum: it is there to keep water out and to stay whole."
    ),
    read_again=HEADING,
)

JOINT_ROWS = ("first", "second", "third")
SIDE_IDS = {HEAD_SIDE: "head", TAIL_SIDE: "tail", NOT_DECIDED: "not_decided"}
TOP_MM, INTERLOCK_MM, PENETRATION_MM = (
    (0.8, 1.0, 1.5, 2.0, 2.5),
    (0.2, 0.3, 0.4, 0.5, 0.6),
    (1.2, 1.6, 2.0, 2.4),
)
ALLOYS = ("5754-O", "6016-T6", "6082-T6")


def _parted(top_mm, interlock_mm, penetration_mm, alloy):
    """Return both sides of joints in cross tension, the top plate of 5754-O and the second of an alloy."""
    top = Sheet(thickness_mm=top_mm, tensile_strength_mpa=sheet_band("5754-O", "tensile strength").best)
    second = Sheet(thickness_mm=3.0, tensile_strength_mpa=strength_mpa(alloy))
    return cross_tension(
        RIVET, Stack(top=top, second=second), interlock_mm=interlock_mm, penetration_mm=penetration_mm
    )


def _joint(text):
    """Return top thickness, interlock, penetration and alloy of a joint kept as text."""
    *sizes, alloy = text.split(", ")
    return (*map(float, sizes), alloy)


def _columns(joints):
    """Return the joints of a column as four arrays."""
    *sizes, alloy = zip(*map(_joint, map(str, joints)), strict=True)
    return (*map(np.array, sizes), alloy)


@cache
def _joints():
    """Return joints, as text, by the side that gives first; bands that only just meet are left out."""
    texts = [
        f"{top}, {interlock}, {penetration}, {alloy}"
        for top in TOP_MM
        for interlock in INTERLOCK_MM
        for penetration in PENETRATION_MM
        for alloy in ALLOYS
    ]
    modes = _parted(*_columns(texts))
    plain = clear_bands(modes.forces_n[HEAD_SIDE], modes.forces_n[TAIL_SIDE])
    return {
        side: tuple(np.array(texts)[plain & (modes.likely_mode == name)].tolist())
        for name, side in SIDE_IDS.items()
    }


def _draw_sides(draw):
    sides = {row: draw.pick(f"side {row}", tuple(SIDE_IDS.values())) for row in JOINT_ROWS}
    return scene(draw) | {row: draw.pick(row, _joints()[side]) for row, side in sides.items()}


def _side_words(scenario):
    """Return what is known of each joint: its sizes, and the band of each side."""
    found = {}
    for row in JOINT_ROWS:
        top_mm, interlock_mm, _, alloy = _joint(scenario[row])
        modes = _parted(*_columns([scenario[row]]))
        head, tail = (spoken(modes.forces_n[side]) for side in (HEAD_SIDE, TAIL_SIDE))
        found[f"{row}_words"] = (
            f"Top plate {top_mm} mm, interlock {interlock_mm} mm in {alloy}: "
            f"head side {head}, tail side {tail}."
        )
    return found


def _solve_sides(table):
    sides = {row: _parted(*_columns(table[row])).likely_mode for row in JOINT_ROWS}
    return {
        "sides": VerdictsKey(
            right={row: [SIDE_IDS[str(name)] for name in names] for row, names in sides.items()}
        ),
        "by_stud": ChoiceKey(right=same(table, "tail")),
    }


SIDES = Exercise(
    id="rivet_anatomy.head_or_tail",
    objective="holding",
    title="Head side or tail side?",
    prompt=(
        "Three joints of {vehicle} are to be pulled apart on the machine at {shop}, plate from plate. "
        "For each side the band of forces is worked out, and none was tried. "
        "The weaker side gives first."
    ),
    shown=_side_words,
    parts=(
        Verdicts(
            id="sides",
            ask="Which side gives first?",
            points=2.0,
            rows=tuple(option(row, "{" + row + "_words}") for row in JOINT_ROWS),
            verdicts=(
                option("tail", "the tail leaves the second plate"),
                option("not_decided", "not decided: the bands meet"),
                option("head", "the head comes through the top plate"),
            ),
        ),
        Choice(
            id="by_stud",
            ask=(
                "Now you do not part the plates. You pull on the head with a stud, "
                "the puller standing on the top plate. Which side counts?"
            ),
            options=(
                wrong(
                    "head",
                    "The head side: the head sits in the top plate.",
                    "The head is lifted off the top plate. It is not drawn through it.",
                ),
                wrong(
                    "weaker",
                    "The weaker of the two, as before.",
                    "The pull now lifts the head. Ask what has to give before the rivet can rise.",
                ),
                option("tail", "The tail side: the head just lifts off."),
            ),
        ),
    ),
    draw=_draw_sides,
    solve=_solve_sides,
    reasons=(
        "Where the high end of one side lies below the low end of the other, that side gives first. "
        "Where the bands meet, honest work says so. "
        "A stud pulls the head away from the top plate, so there only the tail has to let go. "
        "Later the spread tail has to pass the hole of the top plate."
    ),
    read_again=HEADING,
)

EXERCISES = (TAIL, SIDES)
