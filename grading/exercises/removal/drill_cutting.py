"""Exercises on where the tables of drills end, and on the seconds that a hole takes inside them."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Verdicts, VerdictsKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, looked_up, option, slip, wrong
from grading.exercises.scenes import scene
from secondplate import tables
from secondplate.drilling import (
    DRILL_KINDS,
    HARDENED_STEEL,
    covering_tables,
    drilling_time_min,
    point_length_mm,
    spindle_speed_rpm,
    table_feed_mm_rev,
    table_speed_m_min,
)
from secondplate.hardness import vickers_from_rockwell_hv

HEADING = "Can a drill cut this rivet at all?"
DRILLS_MM = (5.0, 5.5, 6.0, 6.5, 7.0, 7.5, 8.0)
ROWS = ("first", "second", "third", "fourth")
NONE_LISTS = "none"
# Hardness in HV or HRC by the least costly drill whose table lists it, clear of the ends of each table.
RIVETS = {
    "high-speed steel": ("405 HV", "410 HV", "415 HV", "420 HV", "425 HV", "430 HV", "42 HRC", "43 HRC"),
    "cobalt steel": ("455 HV", "465 HV", "475 HV", "480 HV", "490 HV", "47 HRC", "48 HRC", "49 HRC"),
    "solid carbide": ("517 HV", "518 HV", "519 HV", "520 HV", "521 HV", "522 HV"),
    NONE_LISTS: ("540 HV", "545 HV", "555 HV", "565 HV", "575 HV", "53 HRC", "54 HRC", "55 HRC"),
}


def vickers_hv(words):
    """Return the Vickers hardness of a hardness that is written with its scale."""
    number, scale = words.split()
    return float(number) if scale == "HV" else vickers_from_rockwell_hv(float(number))


def _first_table(words):
    """Return the id of the first kind of drill whose table lists a hardness."""
    listed = covering_tables(vickers_hv(words))
    return (listed[0] if listed else NONE_LISTS).replace(" ", "_").replace("-", "_")


def _table_words(scenario):
    """Return the ends of each table in Brinell hardness."""
    rows = [row.keys for row in tables.load("drill_speeds") if row.name == HARDENED_STEEL]
    found = {}
    for kind, name in zip(DRILL_KINDS, ("speed", "cobalt", "carbide"), strict=True):
        of_kind = [row for row in rows if row["drill"] == kind]
        found |= {f"{name}_low": of_kind[0]["low_hbw"], f"{name}_high": of_kind[-1]["high_hbw"]}
    return found


def _draw_hardness(draw):
    kinds = draw.shuffle(
        "kinds", ["high-speed steel", "cobalt steel", NONE_LISTS, draw.pick("kind", sorted(RIVETS))]
    )
    return scene(draw) | {row: draw.pick(row, RIVETS[kind]) for row, kind in zip(ROWS, kinds, strict=True)}


def _solve_hardness(table):
    right = {row: looked_up(table[row], _first_table) for row in ROWS}
    beyond = [NONE_LISTS in column for column in zip(*right.values(), strict=True)]
    return {
        "tables": VerdictsKey(right=right),
        "beyond": ChoiceKey(right=chosen([beyond], ["not_drilled"], otherwise="slower")),
    }


HARDNESS_LIMIT = Exercise(
    id="removal.hardness_limit",
    objective="drill",
    title="Where the tables end",
    prompt=(
        "{shop} has four rivets of {vehicle} measured. "
        "For hardened steel the speed tables reach: high-speed steel from {speed_low} to {speed_high} HB, "
        "cobalt steel from {cobalt_low} to {cobalt_high} HB, "
        "solid carbide from {carbide_low} to {carbide_high} HB. "
        "HB is about 0.95 × HV, and HV = (223 × HRC + 14500) ÷ (100 − HRC). "
        "High-speed steel costs least, solid carbide most."
    ),
    shown=_table_words,
    parts=(
        Verdicts(
            id="tables",
            ask="What is the least costly drill whose table lists each rivet?",
            rows=tuple(option(row, f"The {row} rivet: {{{row}}}.") for row in ROWS),
            verdicts=(
                option("high_speed_steel", "high-speed steel"),
                option("cobalt_steel", "cobalt steel"),
                option("solid_carbide", "solid carbide"),
                option(NONE_LISTS, "no table lists it"),
            ),
            points=2.0,
        ),
        Choice(
            id="beyond",
            ask="What do you do with a rivet that is harder than any table lists?",
            options=(
                wrong(
                    "slower",
                    "Carry the last row on: go slower the harder it is.",
                    "A table ends where nobody has shown that it works. Its last row says nothing beyond.",
                ),
                wrong(
                    "last_row",
                    "Take the last row as it stands, and more oil.",
                    "That row was made for softer steel. Oil cools, but makes no drill harder.",
                ),
                option("not_drilled", "Not drill it, and take another way out."),
            ),
        ),
    ),
    draw=_draw_hardness,
    solve=_solve_hardness,
    reasons=(
        "Bring each rivet to HV, and then to HB; a number without its scale says nothing. "
        "Look for the first table that holds it. "
        "Where no table does, the answer is no, and not the last row. "
        "A table for your drill from its maker comes before all of these."
    ),
    read_again=HEADING,
)

COBALT = DRILL_KINDS[1]
RIVET_HBW = 456.0  # a rivet of 480 HV


def _steps(band, step, digits):
    """Return the values of a band of the tables in steps."""
    count = round((band.high - band.low) / step)
    return tuple(round(band.low + step * number, digits) for number in range(count + 1))


@cache
def _listed():
    """Return the speeds in m/min and the feeds in mm a turn that tables list for cobalt in such a rivet."""
    speeds = table_speed_m_min(work_material=HARDENED_STEEL, drill=COBALT, hardness_hbw=RIVET_HBW)
    feeds = table_feed_mm_rev(drill=COBALT, drill_diameter_mm=DRILLS_MM[-1])
    return _steps(speeds, 0.5, 1), _steps(feeds, 0.005, 3)


def _draw_time(draw):
    speeds, feeds = _listed()
    return scene(draw) | {
        "drill_mm": draw.pick("drill_mm", DRILLS_MM),
        "speed_m_min": draw.pick("speed_m_min", speeds),
        "feed_mm_rev": draw.pick("feed_mm_rev", feeds),
        "depth_mm": draw.decimal("depth_mm", 2.0, 4.5, 0.5, 1),
        "angle_deg": draw.pick("angle_deg", (130, 135, 140)),
    }


def _solve_time(table):
    drill_mm, speed, feed = table["drill_mm"], table["speed_m_min"], table["feed_mm_rev"]
    turns = spindle_speed_rpm(cutting_speed_m_min=speed, drill_diameter_mm=drill_mm)
    minutes = drilling_time_min(
        drilled_depth_mm=table["depth_mm"],
        drill_diameter_mm=drill_mm,
        point_angle_deg=table["angle_deg"],
        cutting_speed_m_min=speed,
        feed_mm_rev=feed,
    )
    point = point_length_mm(drill_diameter_mm=drill_mm, point_angle_deg=table["angle_deg"])
    rate = feed * turns
    return {
        "turns": NumberKey(value=turns, slips={"no_pi": np.pi * turns, "radius": 2 * turns}),
        "rate": NumberKey(value=rate, slips={"one_lip": rate / 2, "rim": 1000 * speed}),
        "time": NumberKey(
            value=60 * minutes,
            slips={
                "no_point": 60 * (minutes - point / rate),
                "minutes": minutes,
                "two_points": 60 * (minutes + point / rate),
            },
        ),
    }


DRILL_TIME = Exercise(
    id="removal.drill_time",
    objective="drill",
    title="Turns, feed and seconds",
    prompt=(
        "For a rivet of 480 HV a table lists cobalt drills. "
        "{shop} takes one of {drill_mm} mm with a point of {angle_deg}°. "
        "The cutting speed is {speed_m_min} m/min, the feed {feed_mm_rev} mm a turn. "
        "Its full width has to go {depth_mm} mm deep into the rivet of {vehicle}. "
        "The tip starts at the face of the rivet. "
        "The cutting speed is that of the rim: in one turn the rim goes once round."
    ),
    parts=(
        Number(
            id="turns",
            ask="How many times must the drill turn in a minute?",
            unit="times",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("no_pi", "In one turn the rim goes round, not across: π is missing."),
                slip("radius", "The radius was used for the diameter. Once round is π times the diameter."),
            ),
        ),
        Number(
            id="rate",
            ask="How fast does the drill go down?",
            unit="mm/min",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("one_lip", "The feed is for a whole turn, both lips together."),
                slip("rim", "That is how fast the rim runs. Down it goes by the feed, turn for turn."),
            ),
        ),
        Number(
            id="time",
            ask="How long does it cut, from the first touch of the tip?",
            unit="s",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("no_point", "The full width is not there yet: the tip arrives first. Add the point."),
                slip("minutes", "That is in minutes."),
                slip("two_points", "The point was counted twice."),
            ),
        ),
    ),
    draw=_draw_time,
    solve=_solve_time,
    reasons=(
        "The cutting speed in millimetres a minute, over π times the diameter, gives the turns. "
        "Turns times feed is how fast it goes down. "
        "The way is the depth and the point; leave the point out and the answer is too short. "
        "Seconds of cutting are the least of it: centring, cooling and chips take the minutes."
    ),
    read_again=HEADING,
)

EXERCISES = (HARDNESS_LIMIT, DRILL_TIME)
