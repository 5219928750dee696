"""What the plain charts share: axes with their quantities named along them, limits, chosen points."""

import numpy as np

from drawings.marks import area, bare_axes, box, dot, line, number, write
from drawings.scales import steps
from drawings.style import AMBER, GREY, MID_GREY, PALE_GREY, TEXT_AMBER, THIN

# Lengths on paper, in inches, for what stands outside the plane.
TICK_IN = 0.05
NUMBER_IN = 0.2
NAME_IN = 0.47


def plane(figure, place, *, across, up, wide, high, levels=None, guides=False):
    """Add a plane between two limits each way, with numbers and the name of the quantity along each.

    ``levels`` are the numbers up the left side, round steps from 0 where None; with ``guides`` a pale line
    runs across from each. matplotlib's own axes would do the same in twice the time.
    """
    axes = bare_axes(figure, place, width=wide, height=high)
    inch_x = (wide[1] - wide[0]) / (place[2] * figure.get_figwidth())
    inch_y = (high[1] - high[0]) / (place[3] * figure.get_figheight())
    line(axes, [(wide[0], high[1]), (wide[0], high[0]), (wide[1], high[0])], colour=GREY, width=THIN)
    for mark in steps(wide[1]):
        line(axes, [(mark, high[0]), (mark, high[0] - TICK_IN * inch_y)], colour=GREY, width=THIN)
        write(axes, mark, high[0] - NUMBER_IN * inch_y, number(mark))
    for level in steps(high[1]) if levels is None else levels:
        line(axes, [(wide[0], level), (wide[0] - TICK_IN * inch_x, level)], colour=GREY, width=THIN)
        write(axes, wide[0] - 2 * TICK_IN * inch_x, level, number(level), across="right")
        if guides and level > high[0]:
            line(axes, [(wide[0], level), (wide[1], level)], colour=MID_GREY, width=THIN, order=1)
    write(axes, sum(wide) / 2, high[0] - NAME_IN * inch_y, across)
    write(axes, 0.0, 1.018, up, across="left", up="bottom", transform=axes.transAxes)
    return axes


def powers_plane(figure, place, *, across, up, marks, levels, height=float):
    """Add a plane whose distances across are powers of ten, with pale lines at its ``marks``.

    ``levels`` are the numbers up the left side, ``height`` turns one into the units of the plane.
    """
    wide, high = np.log10([marks[0], marks[-1]]), (height(levels[0]), height(levels[-1]))
    axes = bare_axes(figure, place, width=wide, height=high)
    inch_x = (wide[1] - wide[0]) / (place[2] * figure.get_figwidth())
    inch_y = (high[1] - high[0]) / (place[3] * figure.get_figheight())
    line(axes, [(wide[0], high[1]), (wide[0], high[0]), (wide[1], high[0])], colour=GREY, width=THIN)
    for mark, x in zip(marks, np.log10(marks), strict=True):
        line(axes, [(x, high[0]), (x, high[1])], colour=MID_GREY, width=THIN, order=1)
        write(axes, x, high[0] - NUMBER_IN * inch_y, number(mark, digits=3))
    for level in levels:
        y = height(level)
        line(axes, [(wide[0], y), (wide[0] - TICK_IN * inch_x, y)], colour=GREY, width=THIN)
        write(axes, wide[0] - 2 * TICK_IN * inch_x, y, number(level), across="right")
    write(axes, sum(wide) / 2, high[0] - NAME_IN * inch_y, across)
    write(axes, 0.0, 1.018, up, across="left", up="bottom", transform=axes.transAxes)
    return axes


def forbidden(axes, low, high, text, *, text_at, across="right"):
    """Hatch the part of the plane between two levels that must not be entered, and say why."""
    left, right = axes.get_xlim()
    area(axes, box(left, low, right - left, high - low), fill=PALE_GREY, order=0.5)
    area(axes, box(left, low, right - left, high - low), edge=MID_GREY, hatch="//", order=0.6)
    write(
        axes,
        *text_at,
        text,
        across=across,
        weight="bold",
        bbox={"facecolor": PALE_GREY, "edgecolor": "none", "pad": 2},
    )


def limit_line(axes, level):
    """Draw the line of a limit right across."""
    line(axes, [(axes.get_xlim()[0], level), (axes.get_xlim()[1], level)], width=1.6, dashes=(7, 3), order=4)


def chosen_point(axes, x, y, *, across=True):
    """Draw a chosen point, with thin lines down and, where wanted, across to the axes."""
    feet = [(x, axes.get_ylim()[0])] + ([(axes.get_xlim()[0], y)] if across else [])
    for foot in feet:
        line(axes, [foot, (x, y)], colour=AMBER, width=THIN, dashes=(4, 3), order=6)
    dot(axes, x, y, colour=AMBER, size=11, edge_width=1.6, order=18)


def heading(axes, text):
    """Write the chosen values over the right end of the plane, where they hide nothing."""
    write(
        axes,
        1.0,
        1.018,
        text,
        colour=TEXT_AMBER,
        weight="bold",
        across="right",
        up="bottom",
        transform=axes.transAxes,
    )
