"""Marks shared by the pictures: dimension lines, leaders, arrows, sections, plain text. No subject of its own.

Every function takes the axes first and draws in the axes' own data units.
"""

from matplotlib.patches import Polygon

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


def write(axes, x, y, text, *, colour=TEXT, size=TEXT_PT, across="center", up="center", weight="normal", **more):
    """Put a text; ``across`` and ``up`` say which of its edges stands on the point."""
    return axes.text(
        x, y, text, color=colour, fontsize=size, ha=across, va=up, fontweight=weight, zorder=20, **more
    )


def section(axes, points, *, fill, hatch="", hatch_colour=SLATE, outline=SLATE, width=LINE, order=3):
    """Draw a cut face: pale fill, hatch, outline, as three layers so that the hatch can be paler."""
    axes.add_patch(Polygon(points, closed=True, facecolor=fill, edgecolor="none", zorder=order))
    if hatch:
        layer = Polygon(points, closed=True, facecolor="none", edgecolor=hatch_colour, linewidth=0, hatch=hatch)
        layer.set_zorder(order + 0.1)
        axes.add_patch(layer)
    edge = Polygon(points, closed=True, facecolor="none", edgecolor=outline, linewidth=width, joinstyle="round")
    edge.set_zorder(order + 0.2)
    axes.add_patch(edge)


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
    points = [first, *([elbow] if elbow else []), to]
    axes.plot(*zip(*points, strict=True), color=colour, linewidth=THIN, zorder=16, solid_capstyle="round",
              clip_on=False)
    axes.plot(*to, marker="o", markersize=3.6, color=colour, markeredgecolor=PAPER, markeredgewidth=0.6, zorder=17)


def dimension(axes, start, end, text, *, text_at, colour=TEXT, across="left", up="center", size=TEXT_PT):
    """Draw a dimension line with a head at each end and its text beside it."""
    arrow(axes, start, end, colour=colour, width=1.0, head=9, style="<|-|>", order=18)
    write(axes, *text_at, text, across=across, up=up, colour=colour, size=size)


def witness(axes, start, end, *, colour=SLATE):
    """Draw the thin line that carries an edge out to its dimension."""
    axes.plot(*zip(start, end, strict=True), color=colour, linewidth=THIN, zorder=14)
