"""Stud, holder and nose over the rivet head in section: once held off to see the protrusion, once lifted."""

from drawings.gun import HOLDER_WALL_MM, StudSize, draw_arc, draw_holder, draw_nose, draw_stud
from drawings.marks import arrow, bare_axes, dimension, leader, line, number, witness, write
from drawings.picture import picture_of
from drawings.rivet_section import JointSize, draw_joint
from drawings.style import CENTRE_LINE, HEADING_PT, TEXT, TEXT_AMBER, THIN, sheet_of_paper
from secondplate.checks import require_between

WIDTH_IN, HEIGHT_IN = 9.0, 5.35
# Millimetres of the drawing across one of the two views, and at its lower edge.
VIEW_MM = 27.0
FLOOR_MM = -10.6
HELD_OFF_MM = 3.0
TOP_MM = 14.0
LABEL_MM = 16.6
NAME_MM = 19.6
NOTE_MM = -7.6
WALL_MM = 1.1
SHORT_MM = 1.6


def stud_and_holder(
    *, stud_diameter_mm, flange_diameter_mm, protrusion_mm, lift_mm, head_diameter_mm, offset_mm=0.0
):
    """Draw the stud in its holder over the rivet head, to scale: held off, and lifted with the arc burning.

    Parameters
    ----------
    stud_diameter_mm : float
        Thread diameter of the stud, 3 mm to 8 mm [mm]
    flange_diameter_mm : float
        Diameter of the stud's flange, from the thread diameter to 10 mm [mm]
    protrusion_mm : float
        Length by which the stud stands out of the nose, 0.2 mm to 5 mm [mm]
    lift_mm : float
        Height of the stud over the head while the arc burns, 0.2 mm to 5 mm [mm]
    head_diameter_mm : float
        Diameter of the rivet head, 4 mm to 11 mm [mm]
    offset_mm : float
        Distance of the stud's axis from the middle of the head, -4 mm to 4 mm, to the right positive [mm]

    Returns
    -------
    picture : Picture
        Two sections side by side at one scale [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Rivet, plates of 2 mm, holder and nose are drawn in usual sizes that fit the stud (from memory).

    Examples
    --------
    >>> picture = stud_and_holder(stud_diameter_mm=6, flange_diameter_mm=7, protrusion_mm=2, lift_mm=1,
    ...                           head_diameter_mm=7.75)
    >>> "stands 2 mm out of the nose" in picture.alt
    True
    """
    stud_diameter_mm = require_between("stud diameter", stud_diameter_mm, 3, 8, unit="mm")
    flange_diameter_mm = require_between(
        "flange diameter", flange_diameter_mm, stud_diameter_mm, 10, unit="mm"
    )
    protrusion_mm = require_between("protrusion", protrusion_mm, 0.2, 5, unit="mm")
    lift_mm = require_between("lift", lift_mm, 0.2, 5, unit="mm")
    head_diameter_mm = require_between("head diameter", head_diameter_mm, 4, 11, unit="mm")
    offset_mm = require_between("offset", offset_mm, -4, 4, unit="mm")
    stud = StudSize(diameter_mm=stud_diameter_mm, flange_diameter_mm=flange_diameter_mm)
    joint = JointSize(head_diameter_mm=head_diameter_mm, half_width_mm=13.0)
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        left, right = _views(figure)
        _draw_held_off(left, stud, joint, protrusion_mm, offset_mm)
        _draw_lifted(right, stud, joint, lift_mm, offset_mm)
        return picture_of(figure, _words(stud, joint, protrusion_mm, lift_mm, offset_mm))


def _views(figure):
    """Return the two axes, equal in scale both ways."""
    height_mm = VIEW_MM / (WIDTH_IN / 2) * HEIGHT_IN
    span = (FLOOR_MM, FLOOR_MM + height_mm)
    return [
        bare_axes(figure, (0.5 * i, 0, 0.5, 1), width=(-VIEW_MM / 2, VIEW_MM / 2), height=span)
        for i in range(2)
    ]


def _overhang_mm(stud, joint, offset_mm):
    """Return how far the flange stands past the edge of the head; negative is the margin that is left."""
    return abs(offset_mm) + stud.flange_diameter_mm / 2 - joint.head_diameter_mm / 2


def _landing(stud, joint, offset_mm):
    """Say in words where the flange lands."""
    overhang = _overhang_mm(stud, joint, offset_mm)
    if overhang > 0:
        return (
            f"it lands on the shoulder, {number(overhang)} mm past the edge of the head, onto the aluminium"
        )
    return f"the flange stays {number(-overhang)} mm inside the edge of the head"


def _words(stud, joint, protrusion_mm, lift_mm, offset_mm):
    """Tell both views in sentences."""
    place = "over the middle of the head"
    if offset_mm:
        side = "right" if offset_mm > 0 else "left"
        place = f"{number(abs(offset_mm))} mm to the {side} of the middle of the head"
    return (
        f"Section to scale of a {number(stud.diameter_mm)} mm stud "
        f"with a {number(stud.flange_diameter_mm)} mm flange over a rivet head of "
        f"{number(joint.head_diameter_mm)} mm, flush in the top one of two aluminium plates. "
        f"Left, gun held off: the stud stands {number(protrusion_mm)} mm out of the nose (protrusion). "
        f"Right, nose pressed on and arc burning: the stud is lifted {number(lift_mm)} mm off the head, "
        "gas flows down between the stud holder and the narrow nose. "
        f"The stud stands {place}: {_landing(stud, joint, offset_mm)}."
    )


def _bore_mm(stud, joint):
    """Return the bore of the drawn nose: it clears the flange and stands on the plate round the head."""
    holder = stud.diameter_mm + 2 * HOLDER_WALL_MM
    return max(stud.flange_diameter_mm + 2.0, holder + 3.0, joint.head_diameter_mm + 2.2)


def _draw_held_off(axes, stud, joint, protrusion_mm, offset_mm):
    """Draw the gun held over the head, with the protrusion dimensioned."""
    draw_joint(axes, joint)
    nose = HELD_OFF_MM + protrusion_mm
    bore = _bore_mm(stud, joint)
    draw_nose(axes, x=offset_mm, y=nose, bore_mm=bore, top_mm=TOP_MM, wall_mm=WALL_MM)
    draw_holder(axes, stud, x=offset_mm, y=HELD_OFF_MM, reach_mm=protrusion_mm + 2.4, top_mm=TOP_MM)
    draw_stud(axes, stud, x=offset_mm, y=HELD_OFF_MM, cut_off_mm=TOP_MM - HELD_OFF_MM - 0.6)
    _dimension_height(
        axes, stud, joint, low=HELD_OFF_MM, high=nose, offset_mm=offset_mm, text=number(protrusion_mm)
    )
    write(axes, 0, NAME_MM, "held off: protrusion", size=HEADING_PT, weight="bold")
    _name_the_gun(axes, stud, joint, offset_mm)
    _name_the_joint(axes, joint)
    _draw_axes_of_turn(axes, offset_mm)


def _draw_lifted(axes, stud, joint, lift_mm, offset_mm):
    """Draw the nose on the plate and the stud lifted, with the lift dimensioned."""
    draw_joint(axes, joint)
    bore = _bore_mm(stud, joint)
    draw_nose(axes, x=offset_mm, y=0, bore_mm=bore, top_mm=TOP_MM, wall_mm=WALL_MM)
    draw_holder(axes, stud, x=offset_mm, y=lift_mm, reach_mm=4.4, top_mm=TOP_MM)
    draw_arc(axes, x=offset_mm, low=0, high=lift_mm + stud.tip_mm / 2, width=stud.flange_diameter_mm * 0.85)
    draw_stud(axes, stud, x=offset_mm, y=lift_mm, cut_off_mm=TOP_MM - lift_mm - 0.6)
    _dimension_height(axes, stud, joint, low=0, high=lift_mm, offset_mm=offset_mm, text=number(lift_mm))
    _draw_gas(axes, stud, joint, offset_mm)
    write(axes, 0, NAME_MM, "lifted: the arc burns", size=HEADING_PT, weight="bold")
    _draw_axes_of_turn(axes, offset_mm)
    _note_landing(axes, stud, joint, offset_mm)


def _free_side(offset_mm):
    """Return the side, -1 or 1, on which the gun leaves more room for a dimension."""
    return -1 if offset_mm > 0 else 1


def _dimension_height(axes, stud, joint, *, low, high, offset_mm, text):
    """Dimension a height beside the nose, on the side that has room."""
    side = _free_side(offset_mm)
    edge = offset_mm + side * (_bore_mm(stud, joint) / 2 + WALL_MM)
    across = edge + side * 1.3
    for level in (low, high):
        witness(axes, (offset_mm + side * stud.flange_diameter_mm / 2, level), (across + side * 0.4, level))
    _heads_inwards(axes, across, low, high)
    # A short height has no room for its text between the witness lines.
    level = (low + high) / 2 if high - low > SHORT_MM else high + 1.1
    write(
        axes, across + side * 0.5, level, f"{text} mm", across="left" if side > 0 else "right", weight="bold"
    )


def _heads_inwards(axes, x, low, high):
    """Draw a dimension line; a short one gets its arrow heads from outside."""
    if high - low > SHORT_MM:
        dimension(axes, (x, low), (x, high), "", text_at=(x, low))
        return
    arrow(axes, (x, high + 1.6), (x, high), width=1.0, head=9)
    arrow(axes, (x, low - 1.6), (x, low), width=1.0, head=9)


def _name_the_gun(axes, stud, joint, offset_mm):
    """Name stud, holder and nose above the gun."""
    wall = offset_mm - _bore_mm(stud, joint) / 2 - WALL_MM / 2
    grip = offset_mm + stud.diameter_mm / 2 + 0.9
    leader(
        axes,
        "nose",
        at=(max(wall - 0.6, -11.8), LABEL_MM),
        to=(wall, TOP_MM - 1.6),
        across="center",
        drop=True,
    )
    leader(
        axes,
        "stud",
        at=(offset_mm - 0.4, LABEL_MM),
        to=(offset_mm - 0.4, TOP_MM - 1.6),
        across="center",
        drop=True,
    )
    at = (min(grip + 3.4, 10.2), LABEL_MM)
    leader(axes, "stud holder", at=at, to=(grip, TOP_MM - 1.6), across="center", drop=True)


def _name_the_joint(axes, joint):
    """Name the plates and the rivet under the joint."""
    half = joint.top_thickness_mm / 2
    leader(axes, "top plate", at=(-10.2, NOTE_MM), to=(-9.0, -half), across="center", drop=True)
    leader(axes, "rivet", at=(-1.6, NOTE_MM), to=(-1.6 * joint.scale, -0.5), across="center", drop=True)
    leader(
        axes, "second plate", at=(9.2, NOTE_MM), to=(8.0, joint.bottom_mm + half), across="center", drop=True
    )


def _draw_gas(axes, stud, joint, offset_mm):
    """Draw the gas running down between nose and holder."""
    bore = _bore_mm(stud, joint)
    middle = (stud.diameter_mm / 2 + HOLDER_WALL_MM + bore / 2) / 2
    for side in (-1, 1):
        x = offset_mm + side * middle
        arrow(axes, (x, TOP_MM + 1.2), (x, TOP_MM - 4.5), width=1.3, head=11)
        arrow(axes, (x, TOP_MM - 6.0), (x, TOP_MM - 9.5), width=1.3, head=11)
        write(axes, x, LABEL_MM, "gas")


def _draw_axes_of_turn(axes, offset_mm):
    """Draw the axis of the head, and with an offset its distance from the stud's."""
    line(axes, [(0, -6.2), (0, 1.6)], width=THIN, dashes=CENTRE_LINE, order=12)
    if offset_mm:
        line(
            axes,
            [(offset_mm, -6.2), (offset_mm, 3.0)],
            colour=TEXT_AMBER,
            width=THIN,
            dashes=CENTRE_LINE,
            order=12,
        )


def _note_landing(axes, stud, joint, offset_mm):
    """Write under the joint where the stud lands."""
    overhang = _overhang_mm(stud, joint, offset_mm)
    first = f"{number(abs(offset_mm))} mm off the middle" if offset_mm else "over the middle of the head"
    if overhang > 0:
        first += ": lands on the shoulder"
    edge = f"{number(overhang)} mm past" if overhang > 0 else f"{number(-overhang)} mm inside"
    colour = TEXT_AMBER if overhang > 0 else TEXT
    write(axes, 0, NOTE_MM, first, colour=colour)
    write(axes, 0, NOTE_MM - 1.6, f"flange {edge} the edge of the head", colour=colour)
