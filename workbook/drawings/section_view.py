"""A set rivet cut through the middle: bare, with its parts named, or with a caliper's lines on it."""

from contextlib import contextmanager

import numpy as np

from drawings.marks import bare_axes, dimension, leader, line, number, write
from drawings.picture import picture_of
from drawings.section_parts import draw_section
from drawings.style import AMBER, CENTRE_LINE, GREY, PAPER, TEXT_AMBER, THIN, sheet_of_paper
from secondplate.checks import require_choice
from secondplate.section import WORDS, measure, random_section
from secondplate.section_places import PLACED, measuring_places, require_single

# Edges of the drawing in the joint's millimetres: left, right, bottom, top. The same for every joint, so that
# nothing jumps; the deepest button of a sunk rivet and the proudest head lie inside.
SECTION_FRAME_MM = (-8.6, 8.6, -8.6, 1.2)
INCH_PER_MM = 0.52
LETTERS = {"head": "A", "web": "B", "shank": "C", "bore": "D", "tail": "E", "button": "F"}
OTHER_NAMES = {name: name for name in ("slug", "top plate", "second plate")}
_EXAMPLE = b"named 198"


def section_view(section, *, measured="", named=False):
    """Draw one section to scale.

    Parameters
    ----------
    section : secondplate.section.Section
        One section, no column [-]
    measured : str
        A measure whose lines and value are drawn, one of ``secondplate.section_places.PLACED``; or empty [-]
    named : bool
        Whether the parts are named [-]

    Returns
    -------
    picture : Picture
        The section; its edges are those of ``SECTION_FRAME_MM`` [-]

    Raises
    ------
    ValueError
        If the measure is not placed or the section is a column.

    Notes
    -----
    Outlines and measures from ``secondplate.section``. Without a measure no value of one is told.

    Examples
    --------
    >>> from secondplate.section import build_section, usual_parameters
    >>> "interlock right is 0.5 mm" in section_view(
    ...     build_section(usual_parameters()), measured="interlock_right_mm").alt
    True
    """
    require_single(section)
    if measured:
        require_choice("measure", measured, PLACED)
    with _sheet() as (figure, axes):
        _draw_joint(axes, section)
        if named:
            _name_parts(axes, section, {part: part for part in LETTERS} | OTHER_NAMES)
        if measured:
            _draw_measure(axes, section, measured)
        return picture_of(figure, _words(section, measured, named))


def rivet_parts(*, named=True):
    """Draw a sound joint with its parts named, or lettered from A for somebody who is to name them.

    Parameters
    ----------
    named : bool
        Names, or letters [-]

    Returns
    -------
    picture : Picture
        The section [-]

    Notes
    -----
    Section from ``secondplate.section``.

    Examples
    --------
    >>> "A points at the top" in rivet_parts(named=False).alt
    True
    """
    section, _ = random_section(_EXAMPLE)
    with _sheet() as (figure, axes):
        _draw_joint(axes, section)
        texts = {part: part for part in LETTERS} | OTHER_NAMES if named else LETTERS
        _name_parts(axes, section, texts)
        return picture_of(figure, _part_words(named))


@contextmanager
def _sheet():
    """Give a sheet whose edges are those of the frame, and its axes."""
    left, right, low, high = SECTION_FRAME_MM
    with sheet_of_paper(
        width_in=(right - left) * INCH_PER_MM, height_in=(high - low) * INCH_PER_MM
    ) as figure:
        yield figure, bare_axes(figure, width=(left, right), height=(low, high))


def _draw_joint(axes, section):
    """Draw the cut faces and the axis of the rivet."""
    draw_section(axes, section.outlines)
    line(
        axes,
        [(0, SECTION_FRAME_MM[2] + 0.2), (0, SECTION_FRAME_MM[3] - 0.2)],
        colour=GREY,
        width=THIN,
        dashes=CENTRE_LINE,
        order=6,
    )


def _places(section):
    """Return where each part is pointed at."""
    outlines, shape = section.outlines, section.parameters.rivet
    top, low = outlines["rivet"][:, 1].max(), outlines["second plate"][:, 1].min()
    slug_top = outlines["slug"][:, 1].max()
    _, (tail_x, tail_y) = measuring_places(section, "interlock_right_mm")
    plates = section.parameters.stack
    return {
        "head": (0.72 * shape.head_diameter_mm / 2, top - 0.2),
        "web": (-0.35 * shape.bore_diameter_mm / 2, top - shape.web_mm / 2),
        "shank": ((shape.shank_diameter_mm + shape.bore_diameter_mm) / 4, (top + tail_y) / 2),
        "bore": (-0.3, (top - shape.web_mm + slug_top) / 2),
        "tail": (tail_x - 0.28, tail_y + 0.15),
        "button": (-1.8, low + 0.25),
        "slug": (-0.8, slug_top - 0.35),
        "top plate": (-6.2, -plates.top.thickness_mm / 2),
        "second plate": (6.2, -plates.total_mm + plates.second.thickness_mm / 2),
    }


def _name_parts(axes, section, texts):
    """Write names or letters round the joint, each with a line to its part."""
    places, low = _places(section), section.outlines["second plate"][:, 1].min()
    spots = {
        "head": (4.6, 0.75, "left"),
        "web": (-4.6, 0.75, "right"),
        "shank": (5.6, low + 0.2, "left"),
        "bore": (-5.6, low + 0.2, "right"),
        "tail": (4.6, low - 0.6, "left"),
        "button": (-4.2, low - 0.6, "right"),
        "slug": (-1.2, low - 1.0, "center"),
        "top plate": (-7.0, 0.5, "center"),
        "second plate": (7.1, 0.5, "center"),
    }
    for part, text in texts.items():
        x, y, across = spots[part]
        leader(axes, text, at=(x, y), to=places[part], across=across, drop=across == "center", weight="bold")


def _draw_measure(axes, section, name):
    """Draw the two lines of a caliper and the value between them."""
    first, second = measuring_places(section, name)
    value = f"{float(getattr(measure(section), name)):.2f} mm".replace("-", "\N{MINUS SIGN}")
    if first[1] == second[1] and name != "head_flushness_mm":
        lowest = section.outlines["second plate"][:, 1].min()
        if name.startswith("interlock"):  # its inner line begins at the corner where all three meet
            side = "left" if "left" in name else "right"
            first = first[0], section.outlines[f"top plate {side}"][:, 1].min()
        _across(axes, first, second, value, level=lowest - 0.7)
    else:
        _along(axes, first, second, value)


def _across(axes, first, second, value, *, level):
    """Draw a distance across, its dimension at a level below the joint."""
    for x, y in (first, second):
        line(axes, [(x, y), (x, level - 0.15)], colour=AMBER, width=1.2, order=14)
    left, right = sorted((first[0], second[0]))
    if right - left > 1.5:
        dimension(axes, (left, level), (right, level), "", text_at=(0, 0), colour=AMBER)
        _value(axes, (left + right) / 2, level, value, "center")
    else:
        outward = 1 if left + right > 0 else -1
        edge = right if outward > 0 else left
        line(axes, [(left, level), (right, level)], colour=AMBER, width=1.6, order=15)
        _value(axes, edge + outward * 0.2, level, value, "left" if outward > 0 else "right")


def _along(axes, first, second, value):
    """Draw a distance along the axis, its lines carried out to the side of the joint."""
    side = 7.0 if first[0] >= 0 else -7.0
    for x, y in (first, second):
        line(axes, [(x - (0.3 if side > 0 else -0.3), y), (side, y)], colour=AMBER, width=1.2, order=14)
    line(axes, [(side, first[1]), (side, second[1])], colour=AMBER, width=1.6, order=15)
    lower = min(first[1], second[1])
    _value(axes, side, lower - 0.35 if lower < -1 else 0.45, value, "center")


def _value(axes, x, y, text, across):
    """Write a value on a patch of paper, so that it can be read on a hatch."""
    write(
        axes,
        x,
        y,
        text,
        colour=TEXT_AMBER,
        weight="bold",
        across=across,
        bbox={"facecolor": PAPER, "edgecolor": "none", "pad": 1.5},
    )


def _words(section, name, named):
    """Tell what is drawn; where edges lie stands for the lines that an eye would set."""
    told = ["A self-piercing rivet in two plates, cut through the middle, to scale."]
    if named:
        told.append("Its parts are named, from the head to the button.")
    if name:
        value = number(float(getattr(measure(section), name)), digits=2)
        told.append(f"The lines of a caliper show: {WORDS[name]} is {value} mm.")
    else:
        told.append(_edges(section))
    return " ".join(told)


def _edges(section):
    """Tell where the edges lie that distances are taken between."""
    tail_left, tail_right = measuring_places(section, "tail_diameter_mm")
    entries = [measuring_places(section, f"interlock_{side}_mm")[0][0] for side in ("left", "right")]
    low, high = measuring_places(section, "remaining_thickness_mm")
    top = section.outlines["rivet"][:, 1].max()
    plate = float(np.mean([section.outlines[f"top plate {side}"][:, 1].max() for side in ("left", "right")]))

    def at(value):
        return number(value, digits=2)

    return (
        "Places in mm, across from the axis, up from the face of the top plate. "
        f"Face of the top plate {at(plate)}, face of the head {at(top)}. "
        f"The rivet enters the second plate at {at(entries[0])} and {at(entries[1])}; "
        f"the tail ends at {at(tail_left[0])} and {at(tail_right[0])}. "
        f"Where the second plate is thinnest it reaches from {at(low[1])} to {at(high[1])}. "
        f"{_outside(section)}"
    )


def _outside(section):
    """Tell how plates, shank and button run, so that a joint can be judged by ear; it gives no verdict."""
    measured, stack = measure(section), section.parameters.stack
    (left, _), (right, _) = measuring_places(section, "button_diameter_mm")
    lowest, plane = (y for _, y in measuring_places(section, "button_depth_mm"))
    second = plane + stack.second.thickness_mm
    shank = (
        f"turns inwards by {number(measured.buckle_mm)}" if measured.buckle_mm > 0 else "never turns inwards"
    )
    floor = (
        f"has a narrow notch {number(measured.crack_mm)} deep" if measured.crack_mm > 0 else "has no notch"
    )
    return (
        f"Away from the rivet the top plate ends at {number(second + measured.gap_mm)} and the second plate "
        f"reaches from {number(second)} to {number(plane)}. "
        f"On its way down the outside of the shank {shank}. "
        f"The button reaches down to {number(lowest)}, its wall stands at {number(left)} and "
        f"{number(right)}, and its underside {floor}."
    )


def _part_words(named):
    """Tell where each name or letter points, without telling the name behind a letter."""
    if named:
        return (
            "A self-piercing rivet in two plates, cut through the middle. From the top: the head bears on "
            "the top plate; the web is the solid steel under its face; the shank is the wall of the tube; "
            "the bore is the hollow, with the slug at its lower end; the tail has spread inside the second "
            "plate; the button bulges on the back of the second plate."
        )
    return (
        "A self-piercing rivet in two plates, cut through the middle. A points at the top of the rivet, "
        "beside the middle; B at the solid steel under its face; C at the wall of the tube half way down; D "
        "at the hollow inside; E at the spread end inside the second plate; F at the bulge on the back."
    )
