"""What the job is: a self-piercing rivet in two plates, the pull stud on its head, the pull upwards."""

import numpy as np

from drawings.gun import StudSize, draw_stud
from drawings.marks import arrow, bare_axes, leader, line, number, section, write
from drawings.picture import picture_of
from drawings.rivet_section import JointSize, draw_joint
from drawings.style import (
    AMBER,
    BOLD,
    GREY,
    HEADING_PT,
    PALE_AMBER,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.checks import require_between

WIDTH_IN, HEIGHT_IN = 9.4, 5.6
MM_PER_IN = 4.0
FLOOR_MM = -8.4
STUD_END_MM = 9.0
LEFT_MM, RIGHT_MM = -9.9, 9.9


def rivet_and_plates(
    *,
    stud_diameter_mm=6.0,
    flange_diameter_mm=7.0,
    head_diameter_mm=7.75,
    top_thickness_mm=2.0,
    second_thickness_mm=2.0,
):
    """Draw the set rivet in section with the pull stud welded to its head and the direction of the pull.

    Parameters
    ----------
    stud_diameter_mm : float
        Thread diameter of the pull stud, 3 mm to 8 mm [mm]
    flange_diameter_mm : float
        Diameter of the stud's flange, from the thread diameter to 10 mm [mm]
    head_diameter_mm : float
        Diameter of the rivet head, 4 mm to 11 mm [mm]
    top_thickness_mm : float
        Thickness of the top plate, 0.8 mm to 3 mm [mm]
    second_thickness_mm : float
        Thickness of the second plate, 0.8 mm to 3 mm [mm]

    Returns
    -------
    picture : Picture
        One section, to scale [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    The shape of the set rivet is that of a usual joint (from memory), not of a measured one.

    Examples
    --------
    >>> "second plate" in rivet_and_plates().alt
    True
    """
    stud_diameter_mm = require_between("stud diameter", stud_diameter_mm, 3, 8, unit="mm")
    flange_diameter_mm = require_between(
        "flange diameter", flange_diameter_mm, stud_diameter_mm, 10, unit="mm"
    )
    head_diameter_mm = require_between("head diameter", head_diameter_mm, 4, 11, unit="mm")
    top_thickness_mm = require_between("top plate thickness", top_thickness_mm, 0.8, 3, unit="mm")
    second_thickness_mm = require_between("second plate thickness", second_thickness_mm, 0.8, 3, unit="mm")
    stud = StudSize(diameter_mm=stud_diameter_mm, flange_diameter_mm=flange_diameter_mm)
    joint = JointSize(
        head_diameter_mm=head_diameter_mm,
        top_thickness_mm=top_thickness_mm,
        second_thickness_mm=second_thickness_mm,
        half_width_mm=8.9,
    )
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        half = WIDTH_IN * MM_PER_IN / 2
        axes = bare_axes(figure, width=(-half, half), height=(FLOOR_MM, FLOOR_MM + HEIGHT_IN * MM_PER_IN))
        _draw_box_section(axes, joint)
        draw_joint(axes, joint)
        _draw_collar(axes, stud)
        draw_stud(axes, stud, x=0, y=-stud.tip_mm, cut_off_mm=STUD_END_MM + stud.tip_mm)
        _draw_pull(axes)
        _name_left(axes, stud, joint)
        _name_right(axes, joint)
        return picture_of(figure, _words(stud, joint))


def _words(stud, joint):
    """Tell the job in sentences."""
    return (
        "Section of a self-piercing rivet set in two aluminium plates. "
        f"The steel rivet head, {number(joint.head_diameter_mm)} mm across, lies flush in the top plate of "
        f"{number(joint.top_thickness_mm)} mm. The shank goes through it, "
        f"and its flared tail grips the second plate of {number(joint.second_thickness_mm)} mm. "
        f"A stainless pull stud of {number(stud.diameter_mm)} mm is welded to the middle of the head "
        "with an even collar all round. "
        "The pull goes straight up and draws the rivet out through the hole that it made. "
        "The second plate stays on the car; behind it is a closed section without access."
    )


def _draw_box_section(axes, joint):
    """Hint at the closed section behind the second plate."""
    edge, top, bottom = joint.half_width_mm - 0.6, joint.bottom_mm, FLOOR_MM + 0.5
    wall = [(-edge, top), (-edge, bottom), (edge, bottom), (edge, top)]
    line(axes, wall, colour=GREY, width=THIN, dashes=(6, 4), order=1)
    write(axes, 0, (joint.button_mm + bottom) / 2, "closed section: no access from behind", colour=TEXT_GREY)


def _draw_collar(axes, stud):
    """Draw the bead of melt pressed out round the flange."""
    edge = stud.flange_diameter_mm / 2
    for side in (-1, 1):
        round_off = np.linspace(0, np.pi / 2, 10)
        bead = [(edge - 0.3 + 1.0 * np.sin(a), 0.85 * np.cos(a) ** 0.7) for a in round_off]
        section(
            axes,
            [(side * x, y) for x, y in [(edge - 0.3, 0), *bead]],
            fill=PALE_AMBER,
            outline=AMBER,
            order=9,
        )


def _draw_pull(axes):
    """Draw the direction of the pull."""
    top = STUD_END_MM + 4.2
    arrow(axes, (0, STUD_END_MM + 0.5), (0, top), colour=AMBER, width=BOLD + 1.4, head=26)
    write(
        axes,
        1.0,
        top - 1.2,
        "pull, square to the plate",
        across="left",
        colour=TEXT_AMBER,
        size=HEADING_PT,
        weight="bold",
    )


def _two_lines(axes, x, y, first, second, *, across, to):
    """Write a bold name with a plain second line under it and lead from the name to the thing."""
    leader(axes, first, at=(x, y), to=to, across=across, weight="bold")
    write(axes, x, y - 0.95, second, across=across, colour=TEXT_GREY)


def _name_left(axes, stud, joint):
    """Name stud, collar, head and top plate down the left side."""
    thread = -stud.diameter_mm / 2 + 0.5
    _two_lines(
        axes,
        LEFT_MM,
        7.6,
        f"pull stud, {number(stud.diameter_mm)} mm",
        "stainless",
        across="right",
        to=(thread, 6.6),
    )
    _two_lines(
        axes,
        LEFT_MM,
        3.9,
        "weld collar",
        "even, all round",
        across="right",
        to=(-stud.flange_diameter_mm / 2 - 0.25, 0.4),
    )
    _two_lines(
        axes,
        LEFT_MM,
        0.7,
        f"top plate, {number(joint.top_thickness_mm)} mm",
        "aluminium",
        across="right",
        to=(-8.2, -joint.top_thickness_mm * 0.45),
    )


def _name_right(axes, joint):
    """Name head, tail and second plate down the right side."""
    tail_x, tail_y = joint.tail_mm
    _two_lines(
        axes,
        RIGHT_MM,
        3.9,
        f"rivet head, {number(joint.head_diameter_mm)} mm",
        "steel, flush",
        across="left",
        to=(joint.head_diameter_mm / 2 - 0.75, -0.25),
    )
    _two_lines(
        axes,
        RIGHT_MM,
        0.2,
        "flared tail",
        "grips the second plate",
        across="left",
        to=(tail_x - 0.25, tail_y + 0.2),
    )
    _two_lines(
        axes,
        RIGHT_MM,
        -3.5,
        f"second plate, {number(joint.second_thickness_mm)} mm",
        "stays on the car",
        across="left",
        to=(8.2, joint.bottom_mm + joint.second_thickness_mm / 2),
    )
