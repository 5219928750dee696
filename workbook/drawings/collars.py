"""What collars look like: a drawing for each collar sign of ``secondplate.inspection``, and all together."""

import textwrap

import numpy as np

from drawings.collar_view import STUD_TOP_MM, CollarShape, draw_collar_view
from drawings.marks import bare_axes, line, write
from drawings.picture import picture_of
from drawings.style import GREY, HEADING_PT, TEXT, TEXT_AMBER, TEXT_GREY, THIN, sheet_of_paper
from secondplate.checks import require_choice
from secondplate.inspection import COLLAR_SIGNS


def _steady(value):
    """Return a shape that is the same all round."""
    return lambda angles: np.full_like(angles, value)


def _wavy(mean, *waves):
    """Return a shape that wavers round the stud: pairs of how often and how much; never below nothing."""

    def shape(angles):
        """Waver round the mean."""
        return np.maximum(mean + sum(size * np.cos(often * angles + often) for often, size in waves), 0.0)

    return shape


def _leftward(most, *, bias):
    """Return a shape that grows from nothing at the right to ``most`` at the left."""
    return lambda angles: np.maximum(most * ((1 - np.cos(angles)) / 2) ** 1.2 - bias, 0.0)


def _jagged(mean, size, teeth):
    """Return a shape with teeth."""

    def shape(angles):
        """Rise and fall in a straight line, once for each tooth."""
        return mean + size * (2 * np.abs((angles * teeth / (2 * np.pi)) % 1 - 0.5) - 0.5)

    return shape


SHAPES = {
    "good": CollarShape(width_mm=_wavy(1.05, (5, 0.03)), height_mm=_wavy(0.85, (4, 0.02))),
    "necked": CollarShape(width_mm=_steady(0.0), height_mm=_steady(0.0), longer_mm=1.2, waist=True),
    "cold": CollarShape(
        width_mm=_wavy(0.42, (3, 0.28), (7, 0.13)),
        height_mm=_wavy(0.3, (3, 0.16), (8, 0.08)),
        longer_mm=1.0,
        surface="dull",
    ),
    "hot": CollarShape(
        width_mm=_wavy(1.9, (3, 0.12), (7, 0.08)), height_mm=_steady(0.42), longer_mm=-1.3, spatter=True
    ),
    "one_sided": CollarShape(
        width_mm=_leftward(1.9, bias=0.12), height_mm=_leftward(1.3, bias=0.1), undercut=True
    ),
    "hang_up": CollarShape(width_mm=_steady(0.0), height_mm=_steady(0.0), longer_mm=0.9, gap=True),
    "partial": CollarShape(
        width_mm=_leftward(1.5, bias=0.25), height_mm=_leftward(1.0, bias=0.15), tilt_deg=7
    ),
    "jagged": CollarShape(width_mm=_jagged(1.25, 1.0, 15), height_mm=_wavy(0.7, (6, 0.08))),
    "porous": CollarShape(
        width_mm=_wavy(1.05, (5, 0.08)), height_mm=_wavy(0.85, (4, 0.06)), surface="porous"
    ),
    "off_centre": CollarShape(width_mm=_wavy(1.2, (1, 0.0)), height_mm=_wavy(1.0, (3, 0.08)), offset_mm=2.0),
}
# What the eye sees, without naming the fault: for pictures that a learner has to judge.
LOOKS = {
    "good": "The collar is even and bright and closes all round; the stud ends at the mark for its length.",
    "necked": "The collar stands high and drawn in, narrower at its middle; the stud ends above the mark.",
    "cold": "The collar is low, uneven, dull and broken in places; the stud ends above the mark.",
    "hot": "The collar is low, wide and glossy, drops of melt lie round it; the stud ends below the mark.",
    "one_sided": "The collar is thick on the left and missing on the right, where the flange is eaten away.",
    "hang_up": "There is no collar; the stud stands clear of the head and ends above the mark.",
    "partial": "The collar reaches round the left only; the stud leans to the left.",
    "jagged": "The collar runs out into points all round its edge.",
    "porous": "The collar closes all round but is full of small holes.",
    "off_centre": "The stud and its heavy collar stand right of the middle of the head, partly on the plate.",
}
ACROSS_MM = (-7.6, 7.6)
# One look in the strip: width and height.
CELL_MM = (15.2, 17.35)


def _sign(sign_id):
    """Return the sign of the library that has this id."""
    require_choice("collar sign", sign_id, tuple(SHAPES))
    return next(sign for sign in COLLAR_SIGNS if sign.id == sign_id)


def collar(sign_id, *, named=True):
    """Draw a welded stud with one look of collar.

    Parameters
    ----------
    sign_id : str
        Id of a collar sign of ``secondplate.inspection`` [-]
    named : bool
        Whether the picture says what it shows; without, it is for the learner to judge [-]

    Returns
    -------
    picture : Picture
        Stud, collar and rivet head from the front and a little from above [-]

    Raises
    ------
    ValueError
        If the sign is unknown.

    Notes
    -----
    Drawn looks, exaggerated to be told apart; a real collar shows less. Sources of the signs:
    ``secondplate.inspection.COLLAR_SIGNS``.

    Examples
    --------
    >>> "Low, uneven, dull collar" in collar("cold").alt
    True
    """
    sign = _sign(sign_id)
    with sheet_of_paper(width_in=4.6, height_in=4.9 if named else 4.2) as figure:
        axes = bare_axes(figure, width=ACROSS_MM, height=(-6.1, 10.09) if named else (-3.8, 10.08))
        _draw_one(axes, sign_id)
        write(axes, ACROSS_MM[0] + 0.3, STUD_TOP_MM + 0.1, "right\nlength", across="left", colour=TEXT_GREY)
        if named:
            write(axes, 0, -4.6, textwrap.fill(sign.sign, 42), up="center")
        return picture_of(figure, _words(sign, named=named))


def _words(sign, *, named):
    """Tell one collar in sentences; the fault is named only where the picture names it."""
    look = f"Stud welded to a rivet head, drawn. {LOOKS[sign.id]}"
    return f"{look} {sign.sign}." if named else look


def _draw_one(axes, sign_id, *, at=(0.0, 0.0), grain_pt=2.6):
    """Draw one look, with the mark for the length that the welded stud should have behind it."""
    shape = SHAPES[sign_id]
    draw_collar_view(axes, shape, at=at, grain_pt=grain_pt)
    middle, height = at[0] + shape.offset_mm, at[1] + STUD_TOP_MM
    line(
        axes,
        [(middle - 5.0, height), (middle + 5.0, height)],
        colour=GREY,
        width=THIN,
        dashes=(5, 3),
        order=0.5,
    )


def collar_strip(sign_ids=tuple(SHAPES)):
    """Draw several looks of collar side by side, five to a row, each with its name.

    Parameters
    ----------
    sign_ids : tuple of str
        Ids of collar signs, one to ten of them [-]

    Returns
    -------
    picture : Picture
        The looks, each named [-]

    Raises
    ------
    ValueError
        If there is none or a sign is unknown.

    Examples
    --------
    >>> collar_strip(("good", "cold")).alt.count("Stud welded")
    2
    """
    if not sign_ids:
        message = "collar signs must be at least one, got none"
        raise ValueError(message)
    signs = [_sign(sign_id) for sign_id in sign_ids]
    columns = min(len(signs), 5)
    rows = -(-len(signs) // columns)
    with sheet_of_paper(width_in=1.84 * columns, height_in=2.1 * rows) as figure:
        axes = bare_axes(figure, width=(0, CELL_MM[0] * columns), height=(-CELL_MM[1] * rows, 0))
        for index, sign in enumerate(signs):
            row, column = divmod(index, columns)
            at = (CELL_MM[0] * (column + 0.5), -CELL_MM[1] * row - 10.75)
            _draw_one(axes, sign.id, at=at, grain_pt=1.4)
            write(
                axes,
                at[0],
                at[1] - 4.9,
                sign.id.replace("_", "-"),
                size=HEADING_PT - 0.5,
                weight="bold",
                colour=TEXT if sign.id == "good" else TEXT_AMBER,
            )
        return picture_of(figure, " ".join(_words(sign, named=True) for sign in signs))
