"""Exercises on current and time: reading the chart, judging a machine, two rules side by side."""

from functools import cache

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Verdicts, VerdictsKey
from grading.exercises.building_blocks import THREE_FIGURES, looked_up_numbers, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate import arc, stud_weld

HEADING = "How much current, for how long?"


def _draw_chart(draw):
    return scene(draw) | {
        "thread_mm": draw.pick("thread_mm", (3, 4, 5, 6)),
        "cut_percent": draw.whole("cut_percent", 6, 14),
    }


def _chart_current_a(thread_mm):
    """Return the current of the short-cycle chart for each thread."""
    return looked_up_numbers(thread_mm, lambda thread: stud_weld.short_cycle_row(float(thread)).current_a)


def _solve_chart(table):
    chart_a = _chart_current_a(table["thread_mm"])
    less, more = 1.0 - table["cut_percent"] / 100.0, 1.0 + table["cut_percent"] / 100.0
    return {
        "current": NumberKey(
            value=less * chart_a,
            slips={
                "plain_steel": chart_a,
                "more_instead": more * chart_a,
                "long_arc_rule": less * stud_weld.rule_current_a(1.0 * table["thread_mm"]),
            },
        ),
        "then_time": ChoiceKey(right=same(table, "as_charted")),
    }


CHART_CURRENT = Exercise(
    id="stud_welding.chart_current",
    objective="set_up",
    title="A stainless stud on a chart for plain steel",
    prompt=(
        "At {shop} a stainless M{thread_mm:.0f} flange stud is to be welded by short cycle. "
        "The only chart is the one for plain steel studs on this page. "
        "The manual says: for stainless studs take {cut_percent:.0f} % off the current or off the time."
    ),
    parts=(
        Number(
            id="current",
            ask="To which current do you set the machine, if you take it off the current?",
            unit="A",
            relative_tolerance=0.02,
            tolerance_reason="Machines are set in steps of about 10 A, so 2 % is right.",
            slips=(
                slip("plain_steel", "That is the chart for plain steel. The stud is stainless."),
                slip("more_instead", "A stainless stud needs less, not more: it keeps its heat at the weld."),
                slip(
                    "long_arc_rule",
                    "That is the rule for the long drawn arc. Read the chart for short cycle.",
                ),
            ),
        ),
        Choice(
            id="then_time",
            ask="And the time?",
            options=(
                wrong(
                    "less_too",
                    "Take the same share off the time as well.",
                    "That takes it off twice. The weld turns cold.",
                ),
                option("as_charted", "Leave it as charted and weld a test stud."),
                wrong(
                    "more_to_balance",
                    "Put the same share on the time, so that the energy stays.",
                    "Then the energy is the one for plain steel again.",
                ),
            ),
        ),
    ),
    draw=_draw_chart,
    solve=_solve_chart,
    reasons=(
        "Read the line of the stud's thread in the short-cycle chart. "
        "Take the share off its current and leave its time, or the other way round, never both. "
        "Stainless carries heat away more slowly than plain steel, so less energy melts as much. "
        "It is a start for a test stud, no more."
    ),
    read_again=HEADING,
)

QUANTITIES = {"current": "current_a", "time": "time_ms", "lift": "lift_mm", "protrusion": "protrusion_mm"}
DIGITS = {"current": -1, "time": 0, "lift": 2, "protrusion": 2}


@cache
def _agreed(thread_mm):
    """Return what the rules agree on for a stainless stud on a rivet head, by quantity."""
    found = stud_weld.set_up(
        stud_diameter_mm=float(thread_mm),
        stud_material="austenitic stainless",
        base="steel rivet head",
        process="short cycle",
    )
    return {name: getattr(found, field).agreed for name, field in QUANTITIES.items()}


def _draw_judge(draw):
    thread_mm = draw.pick("thread_mm", (4, 5))
    drawn = {"thread_mm": thread_mm}
    for name, band in _agreed(thread_mm).items():
        middle = (band.low + band.high) / 2.0
        low, high = (
            band.low * draw.pick(f"{name} low", (0.6, 0.7, 0.8)),
            band.high * draw.pick(f"{name} high", (1.25, 1.4, 1.6)),
        )
        drawn[QUANTITIES[name]] = round(draw.pick(name, (low, middle, middle, high)), DIGITS[name])
    return scene(draw) | drawn


def _solve_judge(table):
    bands = {thread: _agreed(thread) for thread in set(table["thread_mm"].tolist())}
    right = {
        name: [
            stud_weld.place(bands[int(thread)][name], value)
            for thread, value in zip(table["thread_mm"], table[field], strict=True)
        ]
        for name, field in QUANTITIES.items()
    }
    return {"settings": VerdictsKey(right=right)}


JUDGE_SETTINGS = Exercise(
    id="stud_welding.judge_settings",
    objective="set_up",
    title="The machine is already set",
    prompt=(
        "You take over a stud welder at {shop}. "
        "It is set for a stainless M{thread_mm:.0f} flange stud on a steel rivet head, short cycle. "
        "Compare each setting with the band that the rules on this page agree on."
    ),
    parts=(
        Verdicts(
            id="settings",
            ask="How does each setting lie against its band?",
            points=2.0,
            rows=(
                option("current", "current {current_a:.0f} A"),
                option("time", "time {time_ms:.0f} ms"),
                option("lift", "lift {lift_mm:.2f} mm"),
                option("protrusion", "protrusion {protrusion_mm:.2f} mm"),
            ),
            verdicts=(
                option("above", "above the band: lower it"),
                option("inside", "inside the band"),
                option("below", "below the band: raise it"),
            ),
        ),
    ),
    draw=_draw_judge,
    solve=_solve_judge,
    reasons=(
        "Read the band of each quantity for this stud and this process, then compare, one setting at a "
        "time. A setting that somebody else left is no evidence that it was right. "
        "Inside all bands is where the first test stud starts, not where the work ends."
    ),
    read_again=HEADING,
)

SHOP_CURRENT_A = {4: (470, 560), 5: (520, 620), 6: (560, 660)}
SHOP_TIME_MS = {4: (16, 24), 5: (18, 28), 6: (24, 34)}


def _draw_shop(draw):
    thread_mm = draw.pick("thread_mm", (4, 5, 6))
    return scene(draw) | {
        "thread_mm": thread_mm,
        "current_a": draw.whole("current_a", *SHOP_CURRENT_A[thread_mm], 10),
        "time_ms": draw.whole("time_ms", *SHOP_TIME_MS[thread_mm], 2),
    }


def _solve_shop(table):
    rule_a, rule_ms = (
        stud_weld.rule_current_a(1.0 * table["thread_mm"]),
        stud_weld.rule_time_ms(1.0 * table["thread_mm"]),
    )
    voltage_v = arc.voltage_band_v().best
    shop_j = arc.arc_energy_j(voltage_v=voltage_v, current_a=table["current_a"], time_ms=table["time_ms"])
    rule_j = arc.arc_energy_j(voltage_v=voltage_v, current_a=rule_a, time_ms=rule_ms)
    return {
        "times": NumberKey(
            value=rule_j / shop_j,
            slips={
                "current_only": rule_a / table["current_a"],
                "time_only": rule_ms / table["time_ms"],
                "upside_down": shop_j / rule_j,
            },
        ),
        "decide": ChoiceKey(right=same(table, "own_chart")),
    }


RULE_AGAINST_SHOP = Exercise(
    id="stud_welding.rule_against_shop",
    objective="set_up",
    title="The rule says one thing, the shop another",
    prompt=(
        "{shop_first} welds M{thread_mm:.0f} pull studs at {current_a:.0f} A for {time_ms:.0f} ms. "
        "Somebody reads in a book: 80 A for each millimetre of stud, 20 ms for each millimetre."
    ),
    shown=lambda scenario: {"shop_first": scenario["shop"][0].upper() + scenario["shop"][1:]},
    parts=(
        Number(
            id="times",
            ask=(
                "At the same arc voltage, how many times the energy of the shop's setting does the book's "
                "rule put in?"
            ),
            unit="times",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("current_only", "That compares the currents. Energy is current times time."),
                slip("time_only", "That compares the times. Energy is current times time."),
                slip(
                    "upside_down",
                    "That is the shop over the rule. The question is the other way round.",
                    credit=0.25,
                ),
            ),
        ),
        Choice(
            id="decide",
            ask="What do you set for the first test stud?",
            points=2.0,
            options=(
                wrong(
                    "half_way",
                    "Half-way between the rule and the shop.",
                    "Half-way between two processes is in neither of them.",
                ),
                wrong(
                    "book_rule",
                    "The book's rule, because it is printed.",
                    "The rule is for the long drawn arc on thick plate. It would overheat a rivet head.",
                ),
                option(
                    "own_chart",
                    "What the maker's chart says for this stud and this process; then pull it and adjust.",
                ),
                wrong(
                    "mix",
                    "The current of the rule and the time of the shop.",
                    "Current and time belong together as a pair. Mixing two pairs is a new setting.",
                ),
            ),
        ),
    ),
    draw=_draw_shop,
    solve=_solve_shop,
    reasons=(
        "Work out current and time of the rule for this stud, multiply them, and divide by the shop's "
        "current times its time. "
        "The rule puts in several times the energy, because it is made for the long drawn arc on thick "
        "plate. The shop welds a short cycle: much current for a short time. "
        "Both can be right for their own process. "
        "The chart of the equipment decides, and a test stud proves it."
    ),
    read_again=HEADING,
)

EXERCISES = (CHART_CURRENT, JUDGE_SETTINGS, RULE_AGAINST_SHOP)
