"""Stud, holder and nose of the gun in section, to scale, as outlines in millimetres.

Heights count from the stud's face upwards; ``place`` moves the whole to where it stands on the sheet.
Holder and nose are drawn in sizes that fit the stud; they are no product's.
"""

from dataclasses import dataclass

from matplotlib.patches import Polygon, Rectangle

from drawings.marks import section
from drawings.style import AMBER, GREY, LINE, MID_GREY, PALE_GREY, PAPER, SLATE, THIN

HOLDER_WALL_MM = 1.7


@dataclass(frozen=True, kw_only=True)
class StudSize:
    """Sizes of the drawn stud.

    Parameters
    ----------
    diameter_mm : float
        Thread diameter [mm]
    flange_diameter_mm : float
        Diameter of the flange above the weld face [mm]
    length_mm : float
        Length from the face to the end [mm]
    """

    diameter_mm: float
    flange_diameter_mm: float
    length_mm: float = 16.0

    @property
    def flange_thickness_mm(self):
        """Thickness of the flange as drawn."""
        return 1.0

    @property
    def tip_mm(self):
        """Height of the shallow cone on the weld face."""
        return 0.35


def box(x, y, width, height):
    """Return the corners of an upright box whose middle axis stands at ``x``."""
    return [(x - width / 2, y), (x + width / 2, y), (x + width / 2, y + height), (x - width / 2, y + height)]


def draw_stud(axes, size, *, x, y, cut_off_mm=None):
    """Draw the stud with its cone, flange and thread; ``y`` is the height of the tip of the cone."""
    flange, radius = size.flange_diameter_mm / 2, size.diameter_mm / 2
    face = y + size.tip_mm
    top = face + size.flange_thickness_mm
    end = y + (cut_off_mm or size.length_mm)
    half = [(0, y), (flange, face), (flange, top), (radius, top), (radius, end - 0.6), (radius - 0.6, end)]
    outline = [(x + px, py) for px, py in half] + [(x - px, py) for px, py in reversed(half)]
    axes.add_patch(Polygon(outline, closed=True, facecolor=PAPER, edgecolor=SLATE, linewidth=LINE + 0.3, zorder=8))
    pitch = 0.8
    level = top + 0.6
    while level + pitch < end - 0.6:
        axes.plot([x - radius, x + radius], [level, level + 0.3 * pitch], color=GREY, linewidth=THIN, zorder=8.5)
        level += pitch
    axes.plot([x, x], [y - 0.6, end + 1.2], color=GREY, linewidth=THIN, linestyle=(0, (9, 3, 2, 3)), zorder=12)


def draw_holder(axes, size, *, x, y, reach_mm, top_mm):
    """Draw the holder that grips the stud from ``reach_mm`` above the tip up to ``top_mm``."""
    wall = HOLDER_WALL_MM
    inner = size.diameter_mm / 2 + 0.05
    for side in (-1, 1):
        corners = [
            (x + side * inner, y + reach_mm),
            (x + side * (inner + 0.5 * wall), y + reach_mm),
            (x + side * (inner + wall), y + reach_mm + 1.2),
            (x + side * (inner + wall), top_mm),
            (x + side * inner, top_mm),
        ]
        section(axes, corners, fill=MID_GREY, hatch="xxx", hatch_colour=GREY, order=7)


def draw_nose(axes, *, x, y, bore_mm, top_mm, wall_mm=1.1):
    """Draw the narrow nose as a tube in section with a slot to see through, its end at ``y``."""
    for side in (-1, 1):
        left = x + side * (bore_mm / 2 + wall_mm / 2)
        section(axes, box(left, y, wall_mm, top_mm - y), fill=PALE_GREY, hatch="---", hatch_colour=GREY, order=6)


def draw_arc(axes, *, x, low, high, width):
    """Draw the arc between the face of the stud and the head as a pale column with ragged sides."""
    if high <= low:
        return
    axes.add_patch(Rectangle((x - width / 2, low), width, high - low, facecolor="#f0c48f", edgecolor="none", zorder=7))
    count = 7
    for i in range(count):
        foot = x - width / 2 + width * (i + 0.5) / count
        bend = 0.18 * (1 if i % 2 else -1)
        axes.plot([foot, foot + bend, foot - bend, foot], [low, low + (high - low) / 3, low + 2 * (high - low) / 3, high],
                  color=AMBER, linewidth=1.1, zorder=7.5)
