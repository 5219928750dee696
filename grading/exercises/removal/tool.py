"""Exercises on the tool that pulls: its force, its stroke, and what is stored in it."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import (
    THREE_FIGURES,
    chosen,
    option,
    same,
    slip,
    wrong,
)
from grading.exercises.removal.force import needs
from grading.exercises.removal.ways import grid, rows_of
from grading.exercises.scenes import scene
from secondplate.pull_tool import (
    flight_speed_m_s,
    hydraulic_force_n,
    intensified_pressure_bar,
    stored_energy_j,
    stroke_needed_mm,
)
from secondplate.removal import HAZARDS_OF_REMOVAL

HEADING = "What does the tool give?"
STEP_N = 50  # to which the limit of a pull is rounded down


def _covers(force_n, low_n, high_n):
    """Return over how much of a band of pulls a force reaches, as an id."""
    return chosen([force_n > high_n, force_n > low_n], ["whole", "part"], otherwise="none")


@cache
def _tools():
    """Return tools that reach some rivets at least, by how far they reach; close calls are left out."""
    asked = needs()
    table = grid(
        pressure_bar=np.arange(80, 420, 20),
        bore_mm=(12, 14, 16, 18, 20),
        efficiency=(0.8, 0.85, 0.9),
        need=np.arange(len(asked)),
    )
    need = table.pop("need")
    force_n = hydraulic_force_n(**table)
    table |= {name: np.array([each[name] for each in asked])[need] for name in asked[0]}
    ends = np.stack([table["need_low_n"], table["need_high_n"]])
    plain = np.all(np.abs(ends - force_n) > 0.06 * ends, axis=0) & (ends[0] < force_n) & (force_n < 12_000)
    found = {}
    for tool, reach, kept in zip(rows_of(table), _covers(force_n, *ends), plain, strict=True):
        if kept:
            found.setdefault(reach, []).append(tool)
    return found


def _draw_force(draw):
    found = _tools()
    tool = draw.pick("tool", found[draw.pick("reach", sorted(found))])
    force_n = hydraulic_force_n(**{name: tool[name] for name in ("pressure_bar", "bore_mm", "efficiency")})
    # What the test stud allows lies within what rivet and tool can come to.
    low_n, high_n = tool["need_low_n"], min(tool["need_high_n"], force_n)
    stop_n = low_n + draw.pick("stop_share", (0.4, 0.5, 0.6, 0.7, 0.8)) * (high_n - low_n)
    own = {
        "stop_n": int(stop_n // STEP_N * STEP_N),
        "air_bar": draw.decimal("air_bar", 5.0, 8.0, 0.5, 1),
        "air_bore_mm": draw.whole("air_bore_mm", 70, 110, 5),
        "ram_bore_mm": draw.whole("ram_bore_mm", 14, 22, 2),
    }
    return scene(draw) | tool | own


def _solve_force(table):
    ram = {"bore_mm": table["bore_mm"], "efficiency": table["efficiency"]}
    force_n = hydraulic_force_n(pressure_bar=table["pressure_bar"], **ram)
    a_bar_n = hydraulic_force_n(pressure_bar=1.0, **ram)
    stop_bar = table["stop_n"] / a_bar_n
    air = {"air_bore_mm": table["air_bore_mm"], "ram_bore_mm": table["ram_bore_mm"]}
    oil_bar = intensified_pressure_bar(pressure_bar=table["air_bar"], **air)
    ratio = table["air_bore_mm"] / table["ram_bore_mm"]
    return {
        "force": NumberKey(
            value=force_n,
            slips={"bar": 10 * force_n, "radius": 4 * force_n, "no_loss": force_n / table["efficiency"]},
        ),
        "stop": NumberKey(
            value=stop_bar, slips={"no_loss": stop_bar * table["efficiency"], "radius": stop_bar / 4}
        ),
        "oil": NumberKey(
            value=oil_bar, slips={"not_squared": oil_bar / ratio, "upside_down": oil_bar / ratio**4}
        ),
        "covers": ChoiceKey(right=_covers(force_n, table["need_low_n"], table["need_high_n"])),
    }


TOOL_FORCE = Exercise(
    id="removal.tool_force",
    objective="tool",
    title="From the gauge to the pull",
    prompt=(
        "{shop} has two pull tools. "
        "The first has a hand pump that gives up to {pressure_bar} bar on a ram of {bore_mm} mm bore; "
        "friction leaves {efficiency} of its force, as measured on this tool. "
        "The rivets of {vehicle} ask for {need_low_n} to {need_high_n} N. "
        "After the test stud no pull may go beyond {stop_n} N. "
        "The second tool runs on air of {air_bar} bar: a piston of {air_bore_mm} mm drives an oil piston of "
        "{ram_bore_mm} mm on the same rod."
    ),
    parts=(
        Number(
            id="force",
            ask="How hard can the first tool pull?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("bar", "One bar is a tenth of a newton on each square millimetre."),
                slip("radius", "The area is far too large: the bore was used as the radius."),
                slip("no_loss", "Friction in the tool takes its share. That share is missing."),
            ),
        ),
        Number(
            id="stop",
            ask="At which reading of its gauge do you stop at the latest?",
            unit="bar",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "no_loss", "The gauge shows oil pressure. Friction takes a part before the stud feels it."
                ),
                slip("radius", "The area is far too large: the bore was used as the radius."),
            ),
        ),
        Number(
            id="oil",
            ask="Which oil pressure does the second tool make, losses left aside?",
            unit="bar",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("not_squared", "That compares the diameters. Pressure works on areas."),
                slip("upside_down", "The small piston must have the higher pressure. Turn the ratio round."),
            ),
        ),
        Choice(
            id="covers",
            ask="Is the first tool strong enough for these rivets, chain left aside?",
            options=(
                option("part", "For some of them: it reaches only part of the band."),
                option("whole", "Yes: it reaches beyond the whole band."),
                wrong(
                    "none",
                    "No: it does not even reach the low end.",
                    "Put the pull of the tool beside the low end once more, and mind what one bar is.",
                ),
            ),
        ),
    ),
    draw=_draw_force,
    solve=_solve_force,
    reasons=(
        "A tenth of the bar times the area of the bore, times what friction leaves, is the pull. "
        "The other way round, the limit divided by what one bar pulls is the reading to stop at. "
        "Two pistons on one rod have the same force, so their pressures go with the areas, upside down. "
        "A strong tool is no licence: the limit is what the test stud held."
    ),
    read_again=HEADING,
)


def _draw_energy(draw):
    return scene(draw) | {
        "rivet_mm": draw.decimal("rivet_mm", 5.0, 7.0, 0.5, 1),
        "lift_mm": draw.decimal("lift_mm", 0.3, 0.9, 0.1, 1),
        "stretch_mm": draw.pick("stretch_mm", (0.1, 0.2)),
        "grip_mm": draw.decimal("grip_mm", 1.0, 2.5, 0.5, 1),
        "force_n": draw.whole("force_n", 4000, 9000, 500),
        "stiffness_kn_mm": draw.whole("stiffness_kn_mm", 12, 30, 2),
        "mass_g": draw.whole("mass_g", 7, 14),
    }


def _off_the_axis():
    """Tell whether the hazard of a broken stud is met by standing off its axis."""
    return any("off the axis" in hazard.control for hazard in HAZARDS_OF_REMOVAL if hazard.method == "pull")


def _solve_energy(table):
    stroke_mm = stroke_needed_mm(
        rivet_length_mm=table["rivet_mm"],
        spring_back_mm=table["lift_mm"],
        stretch_mm=table["stretch_mm"],
        grip_set_mm=table["grip_mm"],
    )
    force_n, mass_g = table["force_n"], table["mass_g"]
    energy_j = stored_energy_j(force_n=force_n, stiffness_n_mm=1000 * table["stiffness_kn_mm"])
    speed_m_s = flight_speed_m_s(energy_j=energy_j, mass_g=mass_g)
    return {
        "stroke": NumberKey(
            value=stroke_mm,
            slips={"rivet_only": table["rivet_mm"], "no_grip": stroke_mm - table["grip_mm"]},
        ),
        "energy": NumberKey(
            value=energy_j, slips={"not_halved": 2 * energy_j, "whole_stroke": force_n * stroke_mm / 1000}
        ),
        "speed": NumberKey(
            value=speed_m_s,
            slips={
                "no_root": np.square(speed_m_s),
                "no_two": speed_m_s / np.sqrt(2),
                "grams": speed_m_s / np.sqrt(1000),
            },
        ),
        "stand": ChoiceKey(right=same(table, "in_line" if _off_the_axis() else "beside")),
    }


STROKE_ENERGY = Exercise(
    id="removal.stroke_energy",
    objective="tool",
    title="Stroke, and what flies when a stud breaks",
    prompt=(
        "At {shop} a rivet {rivet_mm} mm long is to be drawn clear. "
        "Before it moves the plates lift {lift_mm} mm, the stud stretches {stretch_mm} mm and the jaws need "
        "{grip_mm} mm to bite. "
        "Tool and stud together give way one millimetre for every {stiffness_kn_mm} kN. "
        "At {force_n} N the stud breaks, and its piece of {mass_g} g takes up all that was stored: "
        "force squared over twice the stiffness. "
        "Energy of motion is half of mass times speed squared."
    ),
    parts=(
        Number(
            id="stroke",
            ask="Which stroke must the tool have at least?",
            unit="mm",
            absolute_tolerance=0.06,
            tolerance_reason="Ways are given to a tenth of a millimetre: half of that and a little.",
            slips=(
                slip("rivet_only", "That is the rivet alone. The set-up gives way before the rivet moves."),
                slip("no_grip", "The jaws use up stroke too, before they hold."),
            ),
        ),
        Number(
            id="energy",
            ask="How much energy is stored when the stud breaks?",
            unit="J",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("not_halved", "The force grows from nothing, so only half of it counts over the way."),
                slip("whole_stroke", "Not the whole stroke is stored, only the way that tool and stud give."),
            ),
        ),
        Number(
            id="speed",
            ask="How fast can the piece fly?",
            unit="m/s",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("no_root", "That is the square of the speed. The root is still to be taken."),
                slip("no_two", "Twice the energy over the mass: the two is missing under the root."),
                slip("grams", "A joule goes with kilograms. The mass was put in as grams."),
            ),
        ),
        Choice(
            id="stand",
            ask="Where must nobody stand, look or reach while the tool pulls?",
            options=(
                wrong(
                    "beside",
                    "Beside the tool, at a right angle to the stud.",
                    "Think of the direction in which the broken piece is let go.",
                ),
                wrong(
                    "behind_panel",
                    "Only behind the panel.",
                    "The piece is thrown to the side from which it was pulled.",
                ),
                option("in_line", "In line with the stud."),
            ),
        ),
    ),
    draw=_draw_energy,
    solve=_solve_energy,
    reasons=(
        "The stroke is the rivet's length and every way that is lost before it moves. "
        "Stored energy is half of the force times the way that tool and stud give. "
        "Set half of mass times speed squared equal to it. "
        "Part of the energy stays in the tool, so this speed is an upper bound, and still enough to maim. "
        "Guard and tether the tool, wear eye protection and keep out of line."
    ),
    read_again=HEADING,
)

EXERCISES = (TOOL_FORCE, STROKE_ENERGY)
