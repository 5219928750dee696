"""Exercises on two gauges: ultrasound through paint, and whether a gauge can tell plates apart at all."""

from functools import cache
from itertools import pairwise

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, clear_of, option, slip, wrong
from grading.exercises.scenes import scene
from secondplate.measuring import (
    LEAST_CATEGORIES,
    VELOCITIES_M_S,
    GaugeStudy,
    echo_thickness_mm,
    echo_time_us,
    echo_to_echo_thickness_mm,
    gauge_categories,
    paint_reading_mm,
    thinnest_wall_mm,
)

HEADING = "How thick is it, and how sure are you?"
METAL_M_S, PAINT_M_S = VELOCITIES_M_S["aluminium"].best, VELOCITIES_M_S["paint"].best
TO_A_HUNDREDTH = "Such a gauge reads to a hundredth of a millimetre."


def _can(floors_mm, frequencies_mhz):
    """Tell for each floor of a cup whether a probe can measure it, as an id."""
    wall = thinnest_wall_mm(frequency_mhz=frequencies_mhz)
    return chosen([floors_mm >= wall.high, floors_mm < wall.low], ["can", "cannot"], otherwise="doubtful")


@cache
def floors(frequency_mhz):
    """Return floors of a cup in mm by whether a probe can measure them, none close to where that turns."""
    wall = thinnest_wall_mm(frequency_mhz=frequency_mhz)
    floors_mm = np.array(clear_of(np.arange(4, 24) / 20, (wall.low, wall.high), share=0.06))
    found = {}
    for floor_mm, can in zip(floors_mm.tolist(), _can(floors_mm, frequency_mhz), strict=True):
        found.setdefault(can, []).append(floor_mm)
    return found


def _draw_echo(draw):
    hidden_mm = draw.decimal("hidden_mm", 1.07, 2.47, 0.1, 2)
    echo_number = draw.pick("echo_number", (2, 3, 4))
    first_us = echo_time_us(hidden_mm, velocity_m_s=METAL_M_S) + echo_time_us(
        draw.pick("hidden_paint_mm", (0.1, 0.13, 0.16)), velocity_m_s=PAINT_M_S
    )
    between_us = echo_time_us(hidden_mm, velocity_m_s=METAL_M_S)
    frequency_mhz = draw.pick("frequency_mhz", (10, 12, 15, 20))
    can = draw.pick("can", ("can", "cannot", "doubtful"))
    return scene(draw) | {
        "bare_mm": draw.decimal("bare_mm", 0.9, 2.4, 0.1, 1),
        "paint_mm": draw.pick("paint_mm", (0.1, 0.12, 0.15, 0.18, 0.2)),
        "echo_number": echo_number,
        "first_us": round(first_us, 3),
        "later_us": round(first_us + (echo_number - 1) * between_us, 3),
        "frequency_mhz": frequency_mhz,
        "floor_mm": draw.pick("floor_mm", floors(frequency_mhz)[can]),
    }


def _solve_echo(table):
    bare_mm, paint_mm, number = table["bare_mm"], table["paint_mm"], table["echo_number"]
    metal_mm = echo_to_echo_thickness_mm(
        table["first_us"], table["later_us"], echo_number=number, velocity_m_s=METAL_M_S
    )
    turned_mm = paint_reading_mm(paint_mm, velocity_m_s=PAINT_M_S, paint_velocity_m_s=METAL_M_S)
    return {
        "single": NumberKey(
            value=bare_mm + paint_reading_mm(paint_mm, velocity_m_s=METAL_M_S, paint_velocity_m_s=PAINT_M_S),
            slips={"plain": bare_mm + paint_mm, "turned_round": bare_mm + turned_mm},
        ),
        "metal": NumberKey(
            value=metal_mm,
            slips={
                "counted_echoes": metal_mm * (number - 1) / number,
                "there_and_back": 2 * metal_mm,
                "first_echo": echo_thickness_mm(table["first_us"], velocity_m_s=METAL_M_S),
            },
        ),
        "probe": ChoiceKey(right=_can(table["floor_mm"], table["frequency_mhz"])),
    }


ULTRASONIC = Exercise(
    id="second_plate.ultrasonic",
    objective="measure",
    title="The paint counts as metal",
    prompt=(
        "A gauge at {shop} is set to {metal} m/s for aluminium; in paint sound runs at {paint} m/s. "
        "First plate: {bare_mm} mm of metal under {paint_mm} mm of paint, measured by a single echo. "
        "Second plate, painted too: the first echo comes after {first_us:.3f} µs, "
        "echo {echo_number} after {later_us:.3f} µs. "
        "Sound goes there and back. "
        "The probe has {frequency_mhz} MHz; a wall should be at least {least} to {most} waves thick. "
        "The floor of a cup on {vehicle} is about {floor_mm} mm."
    ),
    shown=lambda scenario: {
        "metal": f"{METAL_M_S:.0f}",
        "paint": f"{PAINT_M_S:.0f}",
        **_waves(),
    },
    parts=(
        Number(
            id="single",
            ask="What does the gauge read on the first plate?",
            unit="mm",
            absolute_tolerance=0.01,
            tolerance_reason=TO_A_HUNDREDTH,
            slips=(
                slip("plain", "The paint was added as it is. Sound is slower in it, so it counts for more."),
                slip(
                    "turned_round", "The velocities were taken the wrong way round. Slower means more time."
                ),
            ),
        ),
        Number(
            id="metal",
            ask="How thick is the metal of the second plate?",
            unit="mm",
            absolute_tolerance=0.01,
            tolerance_reason=TO_A_HUNDREDTH,
            slips=(
                slip("counted_echoes", "Count the ways between the two echoes, not the echoes."),
                slip("there_and_back", "Sound goes there and back: half of that way is the plate."),
                slip("first_echo", "The first echo alone has the paint in it. Use the time between the two."),
            ),
        ),
        Choice(
            id="probe",
            ask="Can this probe measure the floor of the cup?",
            options=(
                option("cannot", "No: the floor is thinner than one wave."),
                option("can", "Yes: the floor is thicker than the most that is asked for."),
                option("doubtful", "Perhaps: try it on a step of that thickness first."),
                wrong(
                    "always",
                    "Yes: the display shows a number.",
                    "A gauge shows a number for any echo. Compare the floor with the length of a wave.",
                ),
            ),
        ),
    ),
    draw=_draw_echo,
    solve=_solve_echo,
    reasons=(
        "A single echo takes paint for metal, and stretches it by the ratio of the velocities. "
        "Between two echoes the paint drops out: velocity times time, over twice the number of ways. "
        "A wave is velocity over frequency; a floor thinner than that cannot be told. "
        "So the danger is to read a thin plate as a thick one."
    ),
    read_again=HEADING,
)


def _waves():
    """Return the ends of the rule on thin walls, in waves."""
    wall, wave_mm = thinnest_wall_mm(frequency_mhz=10), METAL_M_S / 10_000
    return {"least": f"{wall.low / wave_mm:g}", "most": f"{wall.high / wave_mm:.1f}"}


@cache
def studies():
    """Return gauge studies by whether the gauge is fit, clear of the limit, with every path told apart."""
    found = {True: [], False: []}
    for repeat in (0.006, 0.008, 0.01, 0.012, 0.016, 0.02):
        for operators in (0.005, 0.007, 0.009, 0.012, 0.015):
            for parts in (0.03, 0.04, 0.05, 0.06, 0.08, 0.1):
                study = _study(repeat, operators, parts)
                right, slips = _groups(repeat, operators, parts)
                values = sorted([right, *slips.values()])
                apart = all(high > 1.05 * low for low, high in pairwise(values))
                if apart and abs(right - LEAST_CATEGORIES) > 0.35 and right > 1.2:
                    found[study.good_enough].append((repeat, operators, parts))
    return found


def _study(repeat, operators, parts):
    """Return a study from its three spreads."""
    return GaugeStudy(repeatability_mm=repeat, reproducibility_mm=operators, part_spread_mm=parts)


def _groups(repeat, operators, parts):
    """Return how many groups a gauge tells apart, and what wrong paths make of it."""
    spread = _study(repeat, operators, parts).gauge_spread_mm
    return gauge_categories(parts, spread), {
        "no_factor": parts / spread,
        "repeats_only": gauge_categories(parts, repeat),
        "turned_round": gauge_categories(spread, parts),
    }


def _draw_study(draw):
    repeat, operators, parts = draw.pick("study", studies()[draw.pick("fit", (True, False))])
    return scene(draw) | {"repeat_mm": repeat, "operators_mm": operators, "parts_mm": parts}


def _solve_study(table):
    repeat, operators, parts = table["repeat_mm"], table["operators_mm"], table["parts_mm"]
    groups, wrong_groups = _groups(repeat, operators, parts)
    return {
        "spread": NumberKey(
            value=_study(repeat, operators, parts).gauge_spread_mm,
            slips={"added": repeat + operators, "mean": (repeat + operators) / 2},
        ),
        "groups": NumberKey(value=groups, slips=wrong_groups),
        "fit": ChoiceKey(
            right=[
                "fit" if _study(*study).good_enough else "unfit"
                for study in zip(repeat, operators, parts, strict=True)
            ]
        ),
    }


GAUGE = Exercise(
    id="second_plate.gauge",
    objective="measure",
    title="Can this gauge tell plates apart?",
    prompt=(
        "Three people at {shop} measured the same floors of cups with one gauge, each floor twice. "
        "Readings of one person on one floor scatter by {repeat_mm} mm. "
        "People differ from each other by {operators_mm} mm. "
        "The floors themselves differ by {parts_mm} mm; all are standard deviations. "
        "A gauge tells apart {factor} × floors/gauge groups, and {least} or more whole groups are wanted."
    ),
    shown=lambda scenario: {"factor": f"{gauge_categories(1.0, 1.0):g}", "least": f"{LEAST_CATEGORIES}"},
    parts=(
        Number(
            id="spread",
            ask="What is the spread of the gauge, people and repeats together?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("added", "The two were simply added. Independent spreads add as squares."),
                slip("mean", "That is the mean of the two. Both act at once, so it gets more, not less."),
            ),
        ),
        Number(
            id="groups",
            ask="Into how many groups can it tell these floors apart, before cutting to whole ones?",
            unit="times",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("no_factor", "That is the bare ratio of the spreads. The factor is missing."),
                slip("repeats_only", "Only the repeats were counted. People are part of the gauge."),
                slip("turned_round", "The ratio stands upside down."),
            ),
        ),
        Choice(
            id="fit",
            ask="Is the gauge fit to judge these floors?",
            options=(
                option("fit", "Yes, by this rule."),
                wrong(
                    "certified",
                    "Yes: it has a certificate.",
                    "The certificate says what the gauge does in a laboratory, not in these hands.",
                ),
                option("unfit", "No: it tells too few groups apart."),
            ),
        ),
    ),
    draw=_draw_study,
    solve=_solve_study,
    reasons=(
        "Square both spreads of the gauge, add them, take the root. "
        "Then the factor times the floors' spread over the gauge's, cut to the whole number below. "
        "A gauge that scatters as much as the plates do sorts them by chance."
    ),
    read_again=HEADING,
)

EXERCISES = (ULTRASONIC, GAUGE)
