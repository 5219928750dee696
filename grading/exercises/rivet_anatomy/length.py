"""Exercises on the length of the rivet: what the rules ask for, and what more length buys and costs."""

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
from grading.exercises.scenes import scene
from secondplate import tables
from secondplate.joint_facts import length_series
from secondplate.rivet import Die, Rivet, Sheet, Stack
from secondplate.rivet_rules import rivet_length_advice_mm
from secondplate.rivet_setting import polymer_trends

HEADING = "How long must the rivet be?"
RULES = {row.name: row for row in tables.load("rivet_length_rules")}
TRENDS = {row.name: row for row in tables.load("rivet_trends")}

PREDICT_LONGER = Exercise(
    id="rivet_anatomy.predict_longer",
    objective="stack",
    title="Predict: a longer rivet",
    prompt=(
        "{shop} rivets a panel of {vehicle}. Same plates, same die: the next rivet is 1 mm longer. "
        "Decide before you read on."
    ),
    parts=(
        Choice(
            id="changes",
            ask="What changes in the joint?",
            options=(
                wrong(
                    "both_more",
                    "More interlock, and more metal left below.",
                    "The extra steel has to go somewhere. Think of what lies below the tail.",
                ),
                wrong(
                    "through",
                    "Nothing inside: the tail just comes out at the back.",
                    "The die stops the plate, and the tail spreads. It does not simply go through.",
                ),
                option("trade", "More interlock, and less metal left below."),
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {"changes": ChoiceKey(right=chosen([_trade(table)], ["trade"], otherwise="through"))},
    reasons=(
        "A longer leg spreads further and reaches deeper. "
        "So it buys interlock and spends the metal left under the tail."
    ),
    read_again=HEADING,
    counts=False,
)


def _trade(table):
    """Tell for each scenario whether the trends say: longer, more interlock and less bottom."""
    more = float(TRENDS["interlock by sizes"].keys["rivet_length"]) > 0
    less = float(TRENDS["bottom by sizes"].keys["rivet_length"]) < 0
    return same(table, more and less)


@cache
def _asked_mm(top_mm, second_mm, shank_mm):
    """Return what two rules ask of one stack: the shank rule, then both ends of the other."""
    stack = Stack(top=Sheet(thickness_mm=top_mm), second=Sheet(thickness_mm=second_mm))
    found = {rule.rule: rule.band for rule in rivet_length_advice_mm(stack, shank_diameter_mm=shank_mm).rules}
    return found["shank rule"].best, found["about 2 mm"].low, found["about 2 mm"].high


def _draw_rules(draw):
    return scene(draw) | {
        "top_mm": draw.decimal("top_mm", 1.0, 2.0, 0.1, 1),
        "second_mm": draw.decimal("second_mm", 2.0, 3.2, 0.1, 1),
        "shank_mm": draw.pick("shank_mm", (5.2, 5.3, 5.5)),
    }


def _solve_rules(table):
    top_mm, second_mm, shank_mm = table["top_mm"], table["second_mm"], table["shank_mm"]
    sizes = zip(top_mm.tolist(), second_mm.tolist(), shank_mm.tolist(), strict=True)
    by_shank, low, high = np.array([_asked_mm(*size) for size in sizes]).T
    share = float(RULES["shank rule"].keys["diameters"])
    return {
        "by_shank": NumberKey(
            value=by_shank,
            slips={
                "no_stack": share * shank_mm,
                "whole_shank": by_shank + (1 - share) * shank_mm,
                "one_plate": by_shank - top_mm,
            },
        ),
        "about_two": RangeKey(
            low=low,
            high=high,
            slips={
                "no_stack": (low - top_mm - second_mm, high - top_mm - second_mm),
                "one_plate": (low - top_mm, high - top_mm),
            },
        ),
        # Neither rule's length lies within the other: nothing that both would take.
        "disagree": ChoiceKey(right=chosen([by_shank > high], ["trial"], otherwise="shortest")),
    }


LENGTH_RULES = Exercise(
    id="rivet_anatomy.length_rules",
    objective="stack",
    title="Two rules, two lengths",
    prompt=(
        "On {vehicle} a top plate of {top_mm} mm lies on a second plate of {second_mm} mm, both aluminium. "
        "The shank of the rivet is {shank_mm} mm thick. "
        "One rule says: the stack and {share} shank diameters. "
        "Another, from memory, says: the stack and {low} to {high} mm."
    ),
    shown=lambda scenario: {
        "share": RULES["shank rule"].keys["diameters"],
        "low": RULES["about 2 mm"].keys["low"],
        "high": RULES["about 2 mm"].keys["high"],
    },
    parts=(
        Number(
            id="by_shank",
            ask="Which length does the first rule give?",
            unit="mm",
            absolute_tolerance=0.06,
            tolerance_reason="Lengths are read to a tenth of a millimetre: half of that and a little.",
            slips=(
                slip("no_stack", "That is only the part beyond the stack. The plates come on top."),
                slip("whole_shank", "A whole diameter was added. The rule takes a part of it."),
                slip("one_plate", "The stack is both plates. One of them is missing."),
            ),
        ),
        Range(
            id="about_two",
            ask="Between which lengths does the second rule lie?",
            unit="mm",
            absolute_tolerance=0.06,
            tolerance_reason="Lengths are read to a tenth of a millimetre: half of that and a little.",
            slips=(
                slip("no_stack", "That is only the part beyond the stack. The plates come on top."),
                slip("one_plate", "The stack is both plates. One of them is missing."),
            ),
        ),
        Choice(
            id="disagree",
            ask="The rules disagree. What do you do?",
            options=(
                wrong(
                    "mean",
                    "Take the length half-way between.",
                    "A mean of two rules is no third rule. Nobody tried that length on your plates.",
                ),
                option("trial", "Set trial joints, cut them, and let the section decide."),
                wrong(
                    "shortest",
                    "Take the shortest: it is the safest for the second plate.",
                    "Too short may not hold at all. The rules were made for other plates and rivets.",
                ),
            ),
        ),
    ),
    draw=_draw_rules,
    solve=_solve_rules,
    reasons=(
        "Add both plates, then the addition of each rule. "
        "Each rule was made for its own plates and rivets, so they may differ by millimetres. "
        "On a car the maker's procedure names the rivet; otherwise only a section of a trial joint decides."
    ),
    read_again=HEADING,
)

SERIES = {f"plus_{row.added_length_mm:.0f}": row for row in length_series()}
SERIES_ROWS = ("plus_2", "plus_3", "plus_1")
OUTCOMES = {
    "head_side": "the top plate tears and the rivet leaves it",
    "no_hold": "the rivet hardly holds: the plates part",
    "tail_pull_out": "the tail comes out of the second plate",
}


def _outcome(row):
    """Return the id of how a joint of the series gave."""
    return row.failure_mode.replace(" ", "_").replace("-", "_")


def _series_text(row):
    """Return one joint of the series in words."""
    return f"{row.added_length_mm:.0f} mm longer than the stack"


LENGTH_SERIES = Exercise(
    id="rivet_anatomy.length_series",
    objective="stack",
    title="Three lengths in one stack",
    prompt=(
        "In one study thin steel lay on aluminium, with a little adhesive between: {stack} mm in all. "
        "Rivets of three lengths were set and the joints were pulled. "
        "{shop} wants to know how length changes what gives."
    ),
    shown=lambda scenario: {"stack": f"{SERIES['plus_1'].stack_mm:g}"},
    parts=(
        Verdicts(
            id="gave",
            ask="How did each joint give?",
            rows=tuple(option(name, _series_text(SERIES[name])) for name in SERIES_ROWS),
            verdicts=tuple(option(name, words) for name, words in OUTCOMES.items()),
            points=1.5,
        ),
        Choice(
            id="carries_over",
            ask="Your plates are both aluminium. What of this carries over?",
            options=(
                option("order", "The order in which joints give as rivets get longer, not the millimetres."),
                wrong(
                    "millimetres",
                    "The millimetres: 2 more than the stack always ends with the tail out.",
                    "It was one stack of steel on aluminium. Your plates and die are others.",
                ),
                wrong(
                    "nothing",
                    "Nothing: only your own plates can tell anything.",
                    "What happens inside is alike: first no grip, then the tail, then the other side.",
                ),
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {
        "gave": VerdictsKey(right={name: same(table, _outcome(row)) for name, row in SERIES.items()}),
        "carries_over": ChoiceKey(right=same(table, "order")),
    },
    reasons=(
        "Too short, and the tail has no grip. Longer, and the tail is the weaker side. "
        "Longer still, and the tail holds better than the top plate does round the head. "
        "That is one study of one stack: take the order from it and no lengths."
    ),
    read_again=HEADING,
)

PLATE_MM = 2.0  # each of the two sheets that the trend was fitted on


def _draw_trade(draw):
    return scene(draw) | {
        "length_mm": draw.decimal("length_mm", 4.0, 4.4, 0.1, 1),
        "die_depth_mm": draw.decimal("die_depth_mm", 0.75, 1.0, 0.05, 2),
        "longer_mm": draw.decimal("longer_mm", 0.2, 0.5, 0.1, 1),
    }


def _bottom_mm(length_mm, die_depth_mm):
    """Return what the trend with one shortening factor leaves under the tail."""
    die = Die(die_diameter_mm=8.5, die_depth_mm=die_depth_mm)
    trends = polymer_trends("remaining bottom thickness", Rivet(rivet_length_mm=length_mm), die)
    return next(trend.band.best for trend in trends if trend.name == "bottom by shortening")


def _solve_trade(table):
    length_mm, depth_mm, longer_mm = (table[name] for name in ("length_mm", "die_depth_mm", "longer_mm"))
    left_mm = _bottom_mm(length_mm, depth_mm)
    cost_mm = left_mm - _bottom_mm(length_mm + longer_mm, depth_mm)
    room_mm = 2 * PLATE_MM + depth_mm
    return {
        "sign": ChoiceKey(right=chosen([_trade(table)], ["trade"], otherwise="same")),
        "left": NumberKey(
            value=left_mm, slips={"rigid": room_mm - length_mm, "set_length": room_mm - left_mm}
        ),
        "cost": NumberKey(value=cost_mm, slips={"rigid": longer_mm, "shortening": longer_mm - cost_mm}),
    }


TRADE_OFF = Exercise(
    id="rivet_anatomy.trade_off",
    objective="stack",
    title="What more length buys and costs",
    prompt=(
        "Two plates of {plate} mm each lie over a die {die_depth_mm} mm deep. "
        "The rivet is {length_mm} mm long. "
        "Take it that a rivet is only {share} of its length once set, and that the plate fills the die. "
        "Then a rivet {longer_mm} mm longer is tried. "
        "The share comes from data with a soft plastic top plate: it is good for a sketch only."
    ),
    shown=lambda scenario: {
        "plate": f"{PLATE_MM:g}",
        "share": f"{-float(TRENDS['bottom by shortening'].keys['rivet_length']):.3f}",
    },
    parts=(
        Number(
            id="left",
            ask="How much metal is left under the tail?",
            unit="mm",
            absolute_tolerance=0.02,
            tolerance_reason="Depths are given to five hundredths of a millimetre: less than half of that.",
            slips=(
                slip("rigid", "The rivet was taken as stiff. It gets shorter as it is set."),
                slip("set_length", "That is the length of the set rivet. What lies below it was asked for."),
            ),
        ),
        Number(
            id="cost",
            ask="How much thinner does the bottom get with the longer rivet?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("rigid", "All of the extra length was counted. A part of it goes into shortening."),
                slip("shortening", "That is the part by which it shortens. The rest reaches deeper."),
            ),
        ),
        Choice(
            id="sign",
            ask="The interlock is too small and the bottom is thin already. Does a longer rivet help?",
            options=(
                wrong(
                    "both",
                    "Yes: it makes both better.",
                    "It reaches deeper as well. Look at what is left under the tail.",
                ),
                wrong(
                    "same",
                    "It changes neither: only the die does.",
                    "In the data length moved both measures, and plainly.",
                ),
                option("trade", "It mends one and worsens the other: die or rivet must be chosen anew."),
            ),
        ),
    ),
    draw=_draw_trade,
    solve=_solve_trade,
    reasons=(
        "Both plates and the depth of the die, less the set rivet: that is what is left. "
        "More length buys interlock and is paid for with the bottom. "
        "The directions hold for metal plates too, the figures do not."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_LONGER, LENGTH_RULES, LENGTH_SERIES, TRADE_OFF)
