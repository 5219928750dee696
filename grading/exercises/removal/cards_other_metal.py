"""The last job cards: magnesium near the joint, and a fastener that may be something else."""

from dataclasses import replace
from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise
from grading.exercises.building_blocks import chosen, option, same, wrong
from grading.exercises.removal.cards import (
    HEADING,
    Reason,
    barred,
    card_words,
    cheapest,
    draw_case,
    facts,
    judge,
    never,
    prompt,
    reasons_part,
    way_and_reasons,
    way_part,
)
from grading.exercises.scenes import scene
from secondplate.corrosion_couples import index_allows, index_difference_v
from secondplate.removal import (
    NO_METHOD,
    RemovalJob,
)
from secondplate.rivet import Sheet, Stack
from secondplate.rivet_rules import reasons_against

# Magnesium near

BEAM = facts(behind=("open", "closed"), heat_sensitive_mm=(35, 40, 200, 500), damage_min=(45, 60, 90, 120))
BEAM_REASONS = (
    never(
        "only_metal",
        "Magnesium is a metal, so it does not count as something that bears no heat.",
        "In pieces and chips it catches fire. Treat it as you would treat trim, or more strictly.",
    ),
    barred("pull", "heat_sensitive_mm"),
    barred("punch", "behind"),
    barred("grind", "heat_sensitive_mm"),
    barred("drill", "hardness_beyond_drill_hv"),
    cheapest("punch"),
)


def _draw_beam(draw):
    return scene(draw) | draw_case(draw, BEAM, ways=("punch", "drill", "pull", NO_METHOD))


def chips_on(metal):
    """Return the id of what steel chips mean for a metal: it suffers, the chips suffer, or neither."""
    if index_allows("carbon steel", against=metal):
        return "like_aluminium"
    return "magnesium_eaten" if index_difference_v("carbon steel", against=metal) > 0 else "chips_eaten"


BEAM_CARD = Exercise(
    id="removal.job_card_7",
    objective="ways",
    title="Job card 7: beside a magnesium beam",
    prompt=prompt(
        "A bracket comes off the front wall, close to the beam behind the dashboard, a magnesium casting.",
        "next thing that bears no heat: that magnesium beam",
    ),
    shown=card_words,
    parts=(
        way_part("pull", "punch", NO_METHOD, "drill", "grind"),
        reasons_part(*BEAM_REASONS),
        Choice(
            id="chips",
            ask="Steel chips stay on the magnesium in salty weather. What does the anodic index say?",
            options=(
                wrong(
                    "like_aluminium",
                    "Little: steel and magnesium may touch, as steel and aluminium may by this rule.",
                    "Take the difference of both indices, and compare it with the limit for harsh weather.",
                ),
                wrong(
                    "chips_eaten",
                    "The chips rust away first and guard the magnesium.",
                    "The metal with the higher index is the anode, and the anode is eaten.",
                ),
                option("magnesium_eaten", "Magnesium is the anode, far beyond the limit: it is eaten."),
            ),
        ),
    ),
    draw=_draw_beam,
    solve=lambda table: (
        way_and_reasons(judge(table), BEAM_REASONS)
        | {"chips": ChoiceKey(right=same(table, chips_on("magnesium")))}
    ),
    reasons=(
        "Magnesium burns, so it counts as a neighbour that bears no heat, and its distance is held against "
        "the limits. "
        "Close by, arc and sparks wait until it is off or shielded. "
        "Further away only the sparks of grinding still reach it. "
        "Whatever the way, no steel chip stays on it, and no chip of magnesium lies about: it burns."
    ),
    read_again=HEADING,
)

# Something that only looks like a self-piercing rivet

UNDERBODY = facts(
    rivet_hardness_hv=(300, 350, 410), second_plate_mm=(2.2, 2.5, 2.8), rivets=tuple(range(8, 19))
)
KINDS = {
    "soft": {"top_mm": (1.2, 1.5, 2.0), "rivet_hardness_hv": (70, 85, 95, 110, 130)},
    "thick": {"top_mm": (3.5, 4.0, 4.4), "second_plate_mm": (4.0, 4.3, 4.6)},
    "rivet": {"top_mm": (1.2, 1.5, 1.8)},
}
OTHER_FASTENER = "No way yet: this is not a self-piercing rivet, and none of the four was judged for it."


@cache
def too_soft(hardness_hv):
    """Tell whether the library takes a hardness for one that no self-piercing rivet has."""
    try:
        RemovalJob(behind="closed", bond="none", second_plate_mm=2.0, rivet_hardness_hv=hardness_hv)
    except ValueError:
        return True
    return False


@cache
def cannot_be_riveted(top_mm, second_mm):
    """Tell whether the rules of stacks say that no such rivet joins these plates."""
    return bool(reasons_against(Stack(top=Sheet(thickness_mm=top_mm), second=Sheet(thickness_mm=second_mm))))


FASTENER_REASONS = (
    never(
        "round_head",
        "The heads are round and flush, so these are self-piercing rivets.",
        "Other fasteners have such heads too. Hold hardness and stack against what these rivets can be.",
    ),
    Reason(
        id="soft",
        text="The fastener is far softer than any self-piercing rivet.",
        holds=lambda judged: judged.met["fastener", "soft"],
        sentence="Compare the hardness on the card with the classes of these rivets.",
    ),
    cheapest("pull"),
    Reason(
        id="thick",
        text="The stack is thicker than what such rivets join.",
        holds=lambda judged: judged.met["fastener", "thick"],
        sentence="Add both plates, and compare the sum with the limit for the whole stack.",
    ),
    Reason(
        id="fits",
        text="Hardness and stack both fit a self-piercing rivet.",
        holds=lambda judged: ~(judged.met["fastener", "soft"] | judged.met["fastener", "thick"]),
        sentence="Both have to fit. Check the hardness, then the sum of the plates.",
    ),
)


def _draw_fastener(draw):
    case = draw_case(draw, UNDERBODY, ways=("pull",))
    changed = KINDS[draw.pick("kind", tuple(KINDS))]
    return scene(draw) | case | {name: draw.pick(name, values) for name, values in changed.items()}


def _judge_fastener(table):
    """Judge the cards as they would be if these were rivets, then take the ways away where they are none."""
    hardness_hv = table["rivet_hardness_hv"]
    soft = np.array([too_soft(hardness) for hardness in hardness_hv.tolist()])
    plates = zip(table["top_mm"].tolist(), table["second_plate_mm"].tolist(), strict=True)
    thick = np.array([cannot_be_riveted(*pair) for pair in plates])
    # A soft one has no hardness that could be judged; any rivet's does, for no way is left to it.
    judged = judge(table | {"rivet_hardness_hv": np.where(soft, 300, hardness_hv)})
    other = soft | thick
    return replace(
        judged,
        met=judged.met | {("fastener", "soft"): soft, ("fastener", "thick"): thick},
        allowed=judged.allowed & ~other,
        way=np.where(other, NO_METHOD, judged.way),
    )


def _solve_fastener(table):
    judged = _judge_fastener(table)
    following = chosen([judged.way == NO_METHOD], ["drawing"], otherwise="one_pull")
    return way_and_reasons(judged, FASTENER_REASONS) | {"following": ChoiceKey(right=following)}


FASTENER_CARD = Exercise(
    id="removal.job_card_8",
    objective="ways",
    title="Job card 8: is it one at all?",
    prompt=prompt(
        "A tray under the floor comes off. Somebody filled in the card for self-piercing rivets. "
        "The heads are round and nearly flush; the top plate is aluminium, {top_mm} mm.",
        "next thing that bears no heat: a brake hose",
    ),
    shown=card_words,
    parts=(
        way_part("drill", "pull", NO_METHOD, "grind", "punch", none=OTHER_FASTENER),
        reasons_part(*FASTENER_REASONS),
        Choice(
            id="following",
            ask="What do you do next?",
            options=(
                option("one_pull", "Set up for the way that you chose, and prove it on one."),
                option("drawing", "Find it in the vehicle maker's drawing, and judge again for what it is."),
                wrong(
                    "pilot",
                    "Drill a pilot hole into its middle to see what it is.",
                    "It changes the fastener before anybody knows what it holds or what lies behind.",
                ),
            ),
        ),
    ),
    draw=_draw_fastener,
    solve=_solve_fastener,
    reasons=(
        "Before any way is compared, the card has to be about the right fastener. "
        "A self-piercing rivet is hard steel, and it joins stacks of a few millimetres only. "
        "Where hardness or stack do not fit, no limit and no time of this page holds. "
        "Then the maker's drawing says what it is, and its own procedure how it comes out."
    ),
    read_again=HEADING,
)

EXERCISES = (BEAM_CARD, FASTENER_CARD)
