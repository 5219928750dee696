"""What the plain charts share: axes with their quantities named along them, limits, chosen points."""

from drawings.marks import area, box, dot, line, number, write
from drawings.scales import steps
from drawings.style import AMBER, MID_GREY, PALE_GREY, TEXT, TEXT_AMBER, TEXT_PT, THIN


def plane(figure, place, *, across, up, wide, high):
    """Add axes between two limits each way, with the name of the quantity along each."""
    axes = figure.add_axes(place)
    axes.set_xlim(*wide)
    axes.set_ylim(*high)
    axes.set_xticks(steps(wide[1]))
    axes.set_xticklabels([number(mark) for mark in steps(wide[1])])
    axes.set_xlabel(across)
    axes.set_title(up, loc="left", fontsize=TEXT_PT, color=TEXT)
    return axes


def guide_lines(axes):
    """Draw pale level lines to read values off, at the numbers of the upright axis."""
    levels = steps(axes.get_ylim()[1])
    axes.set_yticks(levels)
    axes.set_yticklabels([number(level) for level in levels])
    for level in levels[1:]:
        line(
            axes,
            [(axes.get_xlim()[0], level), (axes.get_xlim()[1], level)],
            colour=MID_GREY,
            width=THIN,
            order=1,
        )


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
