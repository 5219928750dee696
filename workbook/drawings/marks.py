"""Marks shared by the pictures: dimensions, leaders, arrows, sections, plain text. It has no subject.

Every function takes the axes first and draws in the axes' own data units.
"""

import numpy as np
from matplotlib.lines import Line2D
from matplotlib.patches import Ellipse, Polygon

from drawings.style import LINE, PAPER, SLATE, TEXT, TEXT_PT, THIN


def number(value, *, digits=2):
    """Write a number the short way: at most ``digits`` decimals, no trailing zeros, a real minus sign."""
    text = f"{value:.{digits}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text.replace("-", "\N{MINUS SIGN}")


def bare_axes(figure, rectangle=(0, 0, 1, 1), *, width=None, height=None):
    """Add axes without ticks or frame; with width and height given they count as in the drawing."""
    axes = figure.add_axes(rectangle)
    axes.set_axis_off()
    if width is not None:
        axes.set_xlim(*width)
    if height is not None:
        axes.set_ylim(*height)
    return axes


def put(axes, artist, *, move=None):
    """Add an artist, moved by a transform where one is given.

    The axes' limits are fixed beforehand and nothing is cut off at their edge, so the costly search for data
    limits and the clipping are left out; that makes a picture about twice as fast.
    """
    if move is not None:
        artist.set_transform(move + axes.transData)
    artist.set_clip_on(False)
    return axes.add_artist(artist)


def line(axes, points, *, colour=SLATE, width=LINE, order=5, dashes=None, move=None, **more):
    """Draw a line through points, given as rows of x and y."""
    xs, ys = np.asarray(points, dtype=float).T
    style = {"color": colour, "linewidth": width, "zorder": order, "solid_capstyle": "round", **more}
    if dashes:
        style |= {"linestyle": (0, dashes), "dash_capstyle": "butt"}
    return put(axes, Line2D(xs, ys, **style), move=move)


def dot(axes, x, y, *, colour=SLATE, size=3.6, edge=PAPER, edge_width=0.6, order=17, marker="o", move=None):
    """Draw one round dot, or another marker, of a size in points."""
    return put(
        axes,
        Line2D(
            [x],
            [y],
            linestyle="none",
            marker=marker,
            markersize=size,
            color=colour,
            markeredgecolor=edge,
            markeredgewidth=edge_width,
            zorder=order,
        ),
        move=move,
    )


def area(axes, points, *, fill="none", edge="none", width=0.0, order=3, hatch=None, move=None):
    """Fill an outline, given as rows of x and y."""
    return put(
        axes,
        Polygon(
            points,
            closed=True,
            facecolor=fill,
            edgecolor=edge,
            linewidth=width,
            zorder=order,
            hatch=hatch,
            joinstyle="round",
        ),
        move=move,
    )


def box(x, y, width, height):
    """Return the corners of an upright box from its lower left corner."""
    return [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]


def oval(axes, x, y, width, height, *, fill="none", edge="none", edge_width=0.0, order=3, move=None):
    """Draw an upright ellipse of a width and height."""
    return put(
        axes,
        Ellipse((x, y), width, height, facecolor=fill, edgecolor=edge, linewidth=edge_width, zorder=order),
        move=move,
    )


def write(
    axes, x, y, text, *, colour=TEXT, size=TEXT_PT, across="center", up="center", weight="normal", **more
):
    """Put a text; ``across`` and ``up`` say which of its edges stands on the point."""
    return axes.text(
        x, y, text, color=colour, fontsize=size, ha=across, va=up, fontweight=weight, zorder=20, **more
    )


def section(axes, points, *, fill, hatch="", hatch_colour=SLATE, outline=SLATE, width=LINE, order=3):
    """Draw a cut face: pale fill, hatch, outline, as three layers so that the hatch can be paler."""
    area(axes, points, fill=fill, order=order)
    if hatch:
        area(axes, points, edge=hatch_colour, hatch=hatch, order=order + 0.1)
    area(axes, points, edge=outline, width=width, order=order + 0.2)


def arrow(axes, start, end, *, colour=SLATE, width=LINE, head=12, style="-|>", order=15):
    """Draw a straight arrow from start to end, its head at the end."""
    axes.annotate(
        "",
        xy=end,
        xytext=start,
        zorder=order,
        arrowprops={
            "arrowstyle": style,
            "color": colour,
            "linewidth": width,
            "mutation_scale": head,
            "shrinkA": 0,
            "shrinkB": 0,
            "joinstyle": "miter",
        },
    )


def leader(axes, text, *, at, to, across="left", up="center", colour=TEXT, elbow=None, drop=False, **more):
    """Write a label and run a thin line from it, over an optional elbow, to a dot on what it names.

    The line starts beside the label, or with ``drop`` at its lower or upper edge.
    """
    write(axes, *at, text, across=across, up=up, colour=colour, **more)
    wide, high = axes.get_xlim(), axes.get_ylim()
    if drop:
        first = (at[0], at[1] + (0.019 if to[1] > at[1] else -0.019) * (high[1] - high[0]))
    else:
        first = (at[0] + {"left": -1, "right": 1, "center": 0}[across] * 0.006 * (wide[1] - wide[0]), at[1])
    line(axes, [first, *([elbow] if elbow else []), to], colour=colour, width=THIN, order=16)
    dot(axes, *to, colour=colour)


def dimension(axes, start, end, text, *, text_at, colour=TEXT, across="left", up="center", size=TEXT_PT):
    """Draw a dimension line with a head at each end and its text beside it."""
    arrow(axes, start, end, colour=colour, width=1.0, head=9, style="<|-|>", order=18)
    write(axes, *text_at, text, across=across, up=up, colour=colour, size=size)


def witness(axes, start, end, *, colour=SLATE):
    """Draw the thin line that carries an edge out to its dimension."""
    line(axes, [start, end], colour=colour, width=THIN, order=14)
