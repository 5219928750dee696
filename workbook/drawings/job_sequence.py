"""The order of work in four small pictures: weld one, pull it, look and adjust, only then weld the row."""

from drawings.marks import area, arrow, bare_axes, box, dot, line, section, write
from drawings.picture import picture_of
from drawings.style import (
    AMBER,
    BOLD,
    GREY,
    HEADING_PT,
    LINE,
    MID_GREY,
    MID_SLATE,
    PALE_AMBER,
    PALE_GREY,
    PAPER,
    SLATE,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)

WIDTH_IN, HEIGHT_IN = 9.2, 3.7
FRAME_IN = 2.0
GAP_IN = 0.34
LEFT_IN = 0.09
GROUND_IN = 2.0
RIVETS_IN = (0.35, 0.78, 1.22, 1.65)
NAMES = (
    ("1 weld one", "middle of the head"),
    ("2 pull it", "square, to the end"),
    ("3 look, adjust", "collar, break, settings"),
    ("4 weld the row", "settings proved"),
)


def job_sequence():
    """Draw the order of work: one stud first, pulled and judged, before the row is welded.

    Returns
    -------
    picture : Picture
        Four small pictures with the way back from the third to the first [-]

    Notes
    -----
    Common practice, no source.

    Examples
    --------
    >>> job_sequence().alt.startswith("Order of work")
    True
    """
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = bare_axes(figure, width=(0, WIDTH_IN), height=(0, HEIGHT_IN))
        for index, draw in enumerate((_draw_weld_one, _draw_pull, _draw_adjust, _draw_row)):
            left = _left(index)
            area(axes, box(left, 1.55, FRAME_IN, 2.0), edge=MID_GREY, width=1.0, order=1)
            draw(axes, left)
            name, why = NAMES[index]
            write(axes, left + FRAME_IN / 2, 1.3, name, size=HEADING_PT, weight="bold")
            write(axes, left + FRAME_IN / 2, 1.04, why, colour=TEXT_GREY)
            if index:
                arrow(axes, (left - GAP_IN + 0.04, 2.55), (left - 0.04, 2.55), width=BOLD, head=16)
        _draw_way_back(axes)
        return picture_of(figure, _words())


def _words():
    """Tell the order of work in sentences."""
    return (
        "Order of work in four steps. 1: weld one stud on the middle of the first rivet head of the row. "
        "2: pull it, square to the plate, until the rivet is out or something breaks. "
        "3: look at collar and break, and adjust current, time and lift; "
        "go back to step 1 until weld and pull are right. "
        "4: only then weld studs on all the other heads of the row."
    )


def _left(index):
    """Return the left edge of one frame."""
    return LEFT_IN + index * (FRAME_IN + GAP_IN)


def _draw_plates(axes, left):
    """Draw two thin plates in section."""
    section(axes, box(left + 0.1, GROUND_IN - 0.14, FRAME_IN - 0.2, 0.14), fill=PALE_GREY, width=1.0, order=2)
    section(
        axes, box(left + 0.1, GROUND_IN - 0.28, FRAME_IN - 0.2, 0.14), fill=PALE_AMBER, width=1.0, order=2
    )


def _draw_rivet(axes, x, *, raised=0.0):
    """Draw one rivet in the plates, or raised out of them."""
    y = GROUND_IN + raised
    half = [(0.15, 0.0), (0.1, -0.07), (0.085, -0.14), (0.11, -0.23), (0.06, -0.2), (0.05, -0.1), (0, -0.1)]
    outline = [(x + px, y + py) for px, py in half] + [(x - px, y + py) for px, py in reversed(half)]
    area(axes, outline, fill=MID_SLATE, edge=SLATE, width=1.0, order=4)


def _draw_small_stud(axes, x, *, raised=0.0):
    """Draw a stud with its collar on a rivet head."""
    y = GROUND_IN + raised
    area(axes, box(x - 0.085, y, 0.17, 0.42), fill=PAPER, edge=SLATE, width=LINE, order=5)
    for step in range(4):
        line(
            axes,
            [(x - 0.085, y + 0.14 + 0.07 * step), (x + 0.085, y + 0.155 + 0.07 * step)],
            colour=GREY,
            width=THIN,
            order=5.5,
        )
    collar = [(x - 0.15, y), (x - 0.12, y + 0.06), (x + 0.12, y + 0.06), (x + 0.15, y)]
    area(axes, collar, fill=PALE_AMBER, edge=AMBER, width=LINE, order=6)


def _draw_hole(axes, x):
    """Draw the hole that a drawn rivet leaves."""
    area(axes, box(x - 0.1, GROUND_IN - 0.24, 0.2, 0.26), fill=PAPER, order=3)
    line(
        axes,
        [
            (x - 0.1, GROUND_IN),
            (x - 0.1, GROUND_IN - 0.24),
            (x + 0.1, GROUND_IN - 0.24),
            (x + 0.1, GROUND_IN),
        ],
        width=1.0,
        order=3.5,
    )


def _draw_weld_one(axes, left):
    """Draw the first stud under the gun's nose, the other heads bare."""
    _draw_plates(axes, left)
    for offset in RIVETS_IN:
        _draw_rivet(axes, left + offset)
    x = left + RIVETS_IN[0]
    _draw_small_stud(axes, x)
    for side in (-1, 1):
        section(
            axes, box(x + side * 0.19 - 0.03, GROUND_IN + 0.02, 0.06, 0.75), fill=MID_GREY, width=1.0, order=7
        )
    handle = [
        (x + 0.2, GROUND_IN + 1.2),
        (x + 0.5, GROUND_IN + 1.12),
        (x + 0.62, GROUND_IN + 0.72),
        (x + 0.42, GROUND_IN + 0.66),
        (x + 0.32, GROUND_IN + 0.92),
        (x + 0.2, GROUND_IN + 0.95),
    ]
    area(axes, handle, fill=MID_GREY, edge=SLATE, width=1.0, order=6.5)
    area(axes, box(x - 0.22, GROUND_IN + 0.77, 0.44, 0.55), fill=MID_GREY, edge=SLATE, width=1.0, order=7)
    write(axes, x + 0.75, GROUND_IN + 1.0, "gun", across="left")


def _draw_pull(axes, left):
    """Draw the first rivet drawn out of the plates on its stud."""
    _draw_plates(axes, left)
    _draw_hole(axes, left + RIVETS_IN[0])
    for offset in RIVETS_IN[1:]:
        _draw_rivet(axes, left + offset)
    x = left + RIVETS_IN[0]
    _draw_rivet(axes, x, raised=0.42)
    _draw_small_stud(axes, x, raised=0.42)
    arrow(axes, (x, GROUND_IN + 0.9), (x, GROUND_IN + 1.4), colour=AMBER, width=BOLD, head=18)
    write(axes, x + 0.28, GROUND_IN + 1.1, "pull", across="left", colour=TEXT_AMBER, weight="bold")


def _draw_adjust(axes, left):
    """Draw three settings as slides with their knobs."""
    for row, (name, place) in enumerate((("current", 0.62), ("time", 0.4), ("lift", 0.5))):
        y = GROUND_IN + 1.15 - 0.47 * row
        write(axes, left + 0.15, y, name, across="left")
        start, end = left + 0.95, left + FRAME_IN - 0.2
        line(axes, [(start, y), (end, y)], colour=GREY, width=LINE)
        dot(axes, start + place * (end - start), y, colour=AMBER, size=12, edge_width=1.5)


def _draw_row(axes, left):
    """Draw studs on all the heads that are left."""
    _draw_plates(axes, left)
    _draw_hole(axes, left + RIVETS_IN[0])
    for offset in RIVETS_IN[1:]:
        _draw_rivet(axes, left + offset)
        _draw_small_stud(axes, left + offset)


def _draw_way_back(axes):
    """Draw the way back from judging to the next test stud."""
    start, end = _left(2) + FRAME_IN / 2, _left(0) + FRAME_IN / 2
    line(axes, [(start, 0.82), (start, 0.52), (end, 0.52), (end, 0.7)], colour=AMBER, width=BOLD, order=4)
    arrow(axes, (end, 0.66), (end, 0.86), colour=AMBER, width=BOLD, head=16)
    write(
        axes,
        (start + end) / 2,
        0.28,
        "again, until weld and pull are right",
        colour=TEXT_AMBER,
        weight="bold",
    )
