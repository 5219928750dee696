"""Exercises on a section: reading it with two lines, what a reading is worth, which standard tests what."""

from functools import cache

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Figure,
    NumberKey,
    Reading,
)
from grading.exercises.building_blocks import chosen, slip, wrong
from grading.exercises.scenes import scene
from secondplate.section import judge, measure, random_sections, typical_limits

HEADING = "What does a section show?"
SECTIONS = 400  # seeds that sections are taken from
EYE_MM = 0.05
EYE_REASON = "At this scale an eye sets each line to a few hundredths of a millimetre."
# Where the lines may stand: sections reach from the top plate's face to the lowest button of the catalogue.
ACROSS_MM = (-6.0, 6.0)
ALONG_MM = (-7.6, 0.8)
HEAD_READING_MM = 0.2  # what a reading of the head may be off; "two tenths" in the prompt
HEAD_FAULTS = ("head proud", "head sunk", "sound")


def seed_text(number):
    """Return the seed of one section of the catalogue."""
    return f"page 2 section {number}"


def section_figure(scenario):
    """Return the figure of the section of one scenario."""
    return Figure(
        name="section",
        arguments={"seed": seed_text(scenario["section"]), "fault": scenario["fault"], "measure": ""},
    )


@cache
def catalogue(fault):
    """Return all sections of the catalogue with one fault, and what is measured on them."""
    seeds = [seed_text(number).encode() for number in range(SECTIONS)]
    sections, _ = random_sections(seeds, faults=fault)
    return sections, measure(sections)


@worked_out
def measured_on(fault):
    """Return what can be read off the sections with a fault, right and wrong, by name."""
    sections, measured = catalogue(fault)
    rivet, stack = sections.parameters.rivet, sections.parameters.stack
    wall = (rivet.shank_diameter_mm - rivet.bore_diameter_mm) / 2
    head = measured.head_flushness_mm
    return {
        "left": measured.interlock_left_mm,
        "right": measured.interlock_right_mm,
        "left_wall": measured.interlock_left_mm + wall,
        "right_wall": measured.interlock_right_mm + wall,
        "left_axis": measured.interlock_left_mm + rivet.shank_diameter_mm / 2,
        "right_axis": measured.interlock_right_mm + rivet.shank_diameter_mm / 2,
        "remaining": measured.remaining_thickness_mm,
        "top_plate": stack.top.thickness_mm,
        "plate": stack.second.thickness_mm,
        "button_depth": measured.button_depth_mm,
        "head": np.abs(head),
        "to_bore": np.abs(rivet.web_mm - head),
        "web": rivet.web_mm,
        "tail": measured.tail_diameter_mm,
        "tail_radius": measured.tail_diameter_mm / 2,
        "shank": rivet.shank_diameter_mm,
        "button": measured.button_diameter_mm,
    }


def distances(table):
    """Return what can be read off the sections of a table of scenarios, by name."""
    found = {fault: measured_on(fault) for fault in {str(name) for name in table["fault"]}}
    picked = list(zip(table["fault"].tolist(), table["section"].tolist(), strict=True))
    names = next(iter(found.values()))
    return {
        name: np.array([np.broadcast_to(found[fault][name], SECTIONS)[number] for fault, number in picked])
        for name in names
    }


def _apart(distance, names):
    """Tell which sections have all the named distances plainly apart."""
    columns = [np.broadcast_to(distance[name], SECTIONS) for name in names]
    gaps = [np.abs(one - other) for i, one in enumerate(columns) for other in columns[:i]]
    return np.min(gaps, axis=0) > 2.4 * EYE_MM


# For each reading its own distance, and what the slips measure in place of it.
LEFT = {"other_side": "right", "wall": "left_wall", "axis": "left_axis"}
RIGHT = {"other_side": "left", "wall": "right_wall", "axis": "right_axis"}
REMAINING = {"whole_plate": "plate", "button_height": "button_depth"}
HEAD = {"to_bore": "to_bore", "web": "web"}
TAIL = {"radius": "tail_radius", "shank": "shank", "button": "button"}


@worked_out
def readable(fault, *readings):
    """Return the numbers of the sections on which the slips of some readings are told apart."""
    distance = measured_on(fault)
    slips = {"left": LEFT, "right": RIGHT, "remaining": REMAINING, "head": HEAD, "tail": TAIL}
    plain = [_apart(distance, (name, *slips[name].values())) for name in readings]
    seen = [np.broadcast_to(distance[name], SECTIONS) > EYE_MM for name in readings]
    return tuple(np.flatnonzero(np.all([*plain, *seen], axis=0)).tolist())


def _key(distance, name, slips):
    """Return the key of one reading."""
    return NumberKey(
        value=distance[name], slips={slip_id: distance[other] for slip_id, other in slips.items()}
    )


def _draw_section(draw):
    fault = "uneven flare"
    numbers = readable(fault, "left", "right", "remaining")
    return scene(draw) | {"fault": fault, "section": draw.pick("section", numbers)}


def _solve_section(table):
    distance = distances(table)
    return {
        "left": _key(distance, "left", LEFT),
        "right": _key(distance, "right", RIGHT),
        "remaining": _key(distance, "remaining", REMAINING),
        "counts": ChoiceKey(
            right=chosen([distance["left"] < distance["right"]], ["left"], otherwise="right")
        ),
    }


def _interlock(side, other):
    """Return the reading of the interlock at one side."""
    return Reading(
        id=side,
        ask=f"How large is the interlock at the {side}?",
        unit="mm",
        axis="horizontal",
        span=ACROSS_MM,
        absolute_tolerance=EYE_MM,
        tolerance_reason=EYE_REASON,
        slips=(
            slip("other_side", f"That is the {other}. The {side} of the picture was asked for."),
            slip("wall", "One line stands at the bore. Set it where rivet and both plates meet."),
            slip("axis", "One line stands at the axis. Only the part hooked under the plate counts."),
        ),
    )


READ_SECTION = Exercise(
    id="rivet_anatomy.read_section",
    objective="measure",
    title="Read a section",
    prompt=(
        "At {shop} a joint from {vehicle} was cut through the middle of the rivet, ground and etched. "
        "Set the two lines on the picture and read off what is asked."
    ),
    figure=section_figure,
    parts=(
        _interlock("left", "right"),
        _interlock("right", "left"),
        Reading(
            id="remaining",
            ask="How much of the second plate is left where it is thinnest under the rivet?",
            unit="mm",
            axis="vertical",
            span=ALONG_MM,
            absolute_tolerance=EYE_MM,
            tolerance_reason=EYE_REASON,
            slips=(
                slip("whole_plate", "That is the whole plate beside the joint. Look under tail and bore."),
                slip("button_height", "That is how far the button stands out of the plate's back."),
            ),
        ),
        Choice(
            id="counts",
            ask="Which interlock do you judge this joint by?",
            options=(
                wrong(
                    "mean",
                    "The mean of both.",
                    "A good side does not hold for a bad one. The pull finds the weaker.",
                ),
                wrong("left", "The one at the left.", "Compare both readings: the weaker side decides."),
                wrong("right", "The one at the right.", "Compare both readings: the weaker side decides."),
            ),
        ),
    ),
    draw=_draw_section,
    solve=_solve_section,
    reasons=(
        "Interlock runs square to the axis: from the outermost point of the tail to the corner where rivet, "
        "top plate and second plate meet. "
        "The bottom is measured along the axis, where it is thinnest under tail or bore. "
        "Some laboratories report the mean of both sides; this page judges by the smaller."
    ),
    read_again=HEADING,
)


@worked_out
def plain_heads(fault):
    """Return the numbers of the sections whose head lies clear of the limits and of where verdicts change.

    A reading that passes for right then leads to the right verdict.
    """
    limits = [limit.limit_mm for limit in typical_limits() if limit.measure == "head_flushness_mm"]
    head = catalogue(fault)[1].head_flushness_mm
    borders = [limit + off for limit in limits for off in (-HEAD_READING_MM, HEAD_READING_MM)]
    clear = [np.abs(head - border) > EYE_MM for border in borders]
    clear += [np.abs(np.abs(head) - abs(limit)) > EYE_MM for limit in limits]  # they stand in the prompt
    found = np.all(clear, axis=0)
    return tuple(number for number in readable(fault, "head", "tail") if found[number])


@worked_out
def _head_verdicts(fault):
    """Return the verdict on the head of each section of the catalogue."""
    judged = judge(catalogue(fault)[1], typical_limits(), uncertainty_mm=HEAD_READING_MM)
    return judged.by_measure["head_flushness_mm"]


@worked_out
def heads_by_verdict():
    """Return faults and numbers of the sections to draw from, by the verdict on their head."""
    found = {}
    for fault in HEAD_FAULTS:
        for number in plain_heads(fault):
            found.setdefault(str(_head_verdicts(fault)[number]), []).append((fault, number))
    return {verdict: tuple(found[verdict]) for verdict in sorted(found)}


def _draw_head(draw):
    heads = heads_by_verdict()
    fault, number = draw.pick("head", heads[draw.pick("verdict", tuple(heads))])
    return scene(draw) | {"fault": fault, "section": number}


def _head_limits(scenario):
    """Return the limits of the head in words."""
    ends = {limit.side: limit.limit_mm for limit in typical_limits() if limit.measure == "head_flushness_mm"}
    return {"sunk": f"{-ends['least']:g}", "proud": f"{ends['most']:g}"}


def _solve_head(table):
    distance = distances(table)
    picked = zip(table["fault"].tolist(), table["section"].tolist(), strict=True)
    verdicts = [str(_head_verdicts(fault)[number]).replace(" ", "_") for fault, number in picked]
    return {
        "head": _key(distance, "head", HEAD),
        "tail": _key(distance, "tail", TAIL),
        "verdict": ChoiceKey(right=verdicts),
    }


READ_HEAD = Exercise(
    id="rivet_anatomy.read_head",
    objective="measure",
    title="Head height and flare",
    prompt=(
        "Another section from {vehicle} lies under the lens at {shop}. "
        "By typical practice, from memory, a head may lie up to {sunk} mm below the face of the top plate "
        "and up to {proud} mm above it. Your reading may be off by two tenths of a mm."
    ),
    shown=_head_limits,
    figure=section_figure,
    parts=(
        Reading(
            id="head",
            ask="How far is the face of the head from the face of the top plate, above or below?",
            unit="mm",
            axis="vertical",
            span=ALONG_MM,
            absolute_tolerance=EYE_MM,
            tolerance_reason=EYE_REASON,
            slips=(
                slip("to_bore", "One line stands at the roof of the bore. Set it on the face of the head."),
                slip("web", "That is the web: from the face of the head down to the bore."),
            ),
        ),
        Reading(
            id="tail",
            ask="How wide is the tail spread, from side to side?",
            unit="mm",
            axis="horizontal",
            span=ACROSS_MM,
            absolute_tolerance=EYE_MM,
            tolerance_reason=EYE_REASON,
            slips=(
                slip("radius", "That is a radius, from the axis. Go from one side to the other."),
                slip("shank", "That is the shank. Go down to where the tail is widest."),
                slip("button", "That is the button, which is plate. Stay on the rivet."),
            ),
        ),
        Choice(
            id="verdict",
            ask="What do you say of the head of this joint?",
            options=(
                wrong(
                    "accept", "Accept.", "Your reading must keep the limit by at least what it may be off."
                ),
                wrong("reject", "Reject.", "Your reading must break the limit by more than it may be off."),
                wrong(
                    "not_decidable",
                    "My reading cannot decide it.",
                    "Compare the distance to the nearest limit with what your reading may be off.",
                ),
            ),
        ),
    ),
    draw=_draw_head,
    solve=_solve_head,
    reasons=(
        "Head height is taken from the face of the top plate far from the rivet, not from the dish round it. "
        "The spread runs from the outermost point of the tail at one side to that at the other. "
        "Then compare the head with the nearer limit, and leave room for the reading."
    ),
    read_again=HEADING,
)

EXERCISES = (READ_SECTION, READ_HEAD)
