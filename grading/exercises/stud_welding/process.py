"""Exercises on choosing the process, and on the least thickness under a stud where rules disagree."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Range, RangeKey, Verdicts, VerdictsKey
from grading.exercises.building_blocks import chosen, clear_of, looked_up, option, slip, wrong
from grading.exercises.scenes import scene
from secondplate import stud_weld

HEADING = "Which process, which chart?"
WELD_ROWS = ("weld_1", "weld_2", "weld_3", "weld_4")
SHIELDS = ("gas", "ferrule")


def _draw_process(draw):
    kinds = draw.shuffle("kinds", ("short", "long gas", "long ferrule", "too wide"))
    drawn = {}
    for name, kind in zip(WELD_ROWS, kinds, strict=True):
        short = kind in ("short", "too wide")
        drawn[name] = {
            "diameter_mm": (
                draw.whole(f"{name} wide", 14, 16) if kind == "too wide" else draw.whole(f"{name} d", 4, 10)
            ),
            "time_ms": draw.whole(f"{name} t", 14, 60, 2) if short else draw.whole(f"{name} t", 120, 320, 10),
            "shield": "ferrule" if kind == "long ferrule" else "gas",
        }
    return scene(draw) | drawn


def _weld_words(scenario):
    """Return each drawn weld in words."""
    shield = {"gas": "gas from the nozzle", "ferrule": "a ceramic ring round the foot"}
    return {
        name: f"{weld['diameter_mm']} mm stud, {weld['time_ms']} ms, {shield[weld['shield']]}"
        for name, weld in ((name, scenario[name]) for name in WELD_ROWS)
    }


@cache
def _process_of(*, diameter_mm, time_ms, shield):
    """Return the process whose limits of diameter and time hold a weld, or that none does."""
    wanted = f"drawn arc with {shield}"
    for process in ("short cycle", wanted):
        limits = stud_weld.process_limits(process)
        fits = (
            limits.smallest_diameter_mm <= diameter_mm <= limits.largest_diameter_mm
            and limits.shortest_time_ms <= time_ms < limits.longest_time_ms
        )
        if fits:
            return process.replace(" ", "_")
    return "none"


def _solve_process(table):
    processes = {name: [_process_of(**weld) for weld in table[name]] for name in WELD_ROWS}
    return {"welds": VerdictsKey(right=processes)}


CHOOSE_PROCESS = Exercise(
    id="stud_welding.choose_process",
    objective="set_up",
    title="Which process is it?",
    prompt=(
        "Four settings are written on the board at {shop}. "
        "Short cycle takes studs up to 12 mm and less than 100 ms. "
        "Drawn arc takes studs up to 25 mm and 100 ms to 1000 ms."
    ),
    shown=_weld_words,
    parts=(
        Verdicts(
            id="welds",
            ask="Which process does each setting belong to?",
            points=2.0,
            rows=tuple(option(name, "{" + name + "}") for name in WELD_ROWS),
            verdicts=(
                option("drawn_arc_with_ferrule", "drawn arc with ferrule"),
                option("short_cycle", "short cycle"),
                option("none", "no process of the chart: ask before welding"),
                option("drawn_arc_with_gas", "drawn arc with gas"),
            ),
        ),
    ),
    draw=_draw_process,
    solve=_solve_process,
    reasons=(
        "Look at the time first: under 100 ms it is short cycle, at 100 ms and more it is drawn arc. "
        "Then look at what keeps the air away: a ceramic ring is a ferrule, a nozzle is gas. "
        "Last, compare the stud with the largest of that process; where it is too wide, no chart covers "
        "the setting."
    ),
    read_again=HEADING,
)

SHEET_STUDS_MM = (4, 5, 6)
THICKNESS_MM = tuple(round(0.1 * tenths, 1) for tenths in range(4, 21))


@cache
def _least_mm(diameter_mm, *, process="short cycle"):
    """Return the lowest and the highest thickness that the rules ask for under one stud."""
    rules = stud_weld.minimum_sheet_mm(float(diameter_mm), process=process).rules
    least = [rule.band.best for rule in rules]
    return min(least), max(least)


PLAIN_THICKNESS_MM = {
    diameter: clear_of(THICKNESS_MM, _least_mm(diameter), share=0.06) for diameter in SHEET_STUDS_MM
}


def _draw_sheet(draw):
    diameter_mm = draw.pick("diameter_mm", SHEET_STUDS_MM)
    thickness_mm = draw.pick("thickness_mm", PLAIN_THICKNESS_MM[diameter_mm])
    return scene(draw) | {"diameter_mm": diameter_mm, "thickness_mm": thickness_mm}


def _least_arrays(table, *, process="short cycle", scale=1.0):
    """Return the two ends of the rules as arrays, for every scenario."""
    pairs = looked_up(table["diameter_mm"], lambda diameter: _least_mm(diameter, process=process))
    low, high = np.array(pairs).T
    return scale * low, scale * high


def _solve_sheet(table):
    low_mm, high_mm = _least_arrays(table)
    thickness_mm = table["thickness_mm"]
    return {
        "least": RangeKey(
            low=low_mm,
            high=high_mm,
            slips={
                "long_arc": _least_arrays(table, process="drawn arc with gas"),
                "radius": _least_arrays(table, scale=0.5),
            },
        ),
        "decide": ChoiceKey(
            right=chosen(
                [thickness_mm < low_mm, thickness_mm < high_mm],
                ["too_thin", "disputed"],
                otherwise="thick_enough",
            )
        ),
    }


MINIMUM_SHEET = Exercise(
    id="stud_welding.minimum_sheet",
    objective="set_up",
    title="Is the steel under the stud thick enough?",
    prompt=(
        "At {shop} somebody wants to weld a {diameter_mm:.0f} mm stud by short cycle on a bracket of steel "
        "sheet that is {thickness_mm:.1f} mm thick. "
        "The books do not agree on how thick it must be."
    ),
    parts=(
        Range(
            id="least",
            ask=(
                "What is the smallest and what is the largest thickness that the rules for short cycle ask "
                "for?"
            ),
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason="The rules are plain fractions, so 2 % covers all rounding.",
            slips=(
                slip("long_arc", "Those are the rules for drawn arc. Short cycle has its own."),
                slip("radius", "That is half of it: the rules go by the diameter, not by the radius."),
            ),
        ),
        Choice(
            id="decide",
            ask="What do you do?",
            points=2.0,
            options=(
                option(
                    "disputed",
                    "The rules disagree here: take it as too thin until the maker of the stud welder and "
                    "test studs on the same sheet say otherwise.",
                ),
                option("too_thin", "Every rule calls it too thin: smaller stud or another way."),
                option("thick_enough", "Every rule is met: go on to a test stud on the same sheet."),
                wrong(
                    "average",
                    "Take the average of the rules and weld if the sheet is thicker than that.",
                    "The average of two rules is a third rule that nobody has tested.",
                ),
            ),
        ),
    ),
    draw=_draw_sheet,
    solve=_solve_sheet,
    reasons=(
        "For short cycle one page asks for an eighth of the diameter, the standard adds at least 0.6 mm, "
        "and another page asks for a fifth of the diameter and at least 1 mm. "
        "Work out all of them and keep the smallest and the largest. "
        "Below both the stud is too large, above both it may be tried. "
        "In between nobody may pick the rule that suits: the careful one holds until a test says otherwise. "
        "No rule here was made for a rivet head."
    ),
    read_again=HEADING,
)

EXERCISES = (CHOOSE_PROCESS, MINIMUM_SHEET)
