"""Stud, holder and nose of the gun in section, to scale, as outlines in millimetres.

Heights count from the stud's face upwards; ``place`` moves the whole to where it stands on the plate.
Holder and nose are drawn in sizes that fit the stud; they are no product's.
"""

from dataclasses import dataclass

from drawings.marks import area, box, line, section
from drawings.style import AMBER, ARC_GLOW, CENTRE_LINE, GREY, LINE, MID_GREY, PALE_GREY, PAPER, SLATE, THIN

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


def draw_stud(axes, size, *, x, y, cut_off_mm=None):
    """Draw the stud with its cone, flange and thread; ``y`` is the height of the tip of the cone."""
    flange, radius = size.flange_diameter_mm / 2, size.diameter_mm / 2
    face = y + size.tip_mm
    top = face + size.flange_thickness_mm
    end = y + (cut_off_mm or size.length_mm)
    half = [(0, y), (flange, face), (flange, top), (radius, top), (radius, end - 0.6), (radius - 0.6, end)]
    outline = [(x + px, py) for px, py in half] + [(x - px, py) for px, py in reversed(half)]
    area(axes, outline, fill=PAPER, edge=SLATE, width=LINE + 0.3, order=8)
    pitch = 0.8
    level = top + 0.6
    while level + pitch < end - 0.6:
        line(
            axes, [(x - radius, level), (x + radius, level + 0.3 * pitch)], colour=GREY, width=THIN, order=8.5
        )
        level += pitch
    line(axes, [(x, y - 0.6), (x, end + 1.2)], colour=GREY, width=THIN, dashes=CENTRE_LINE, order=12)


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
        left = x + side * (bore_mm / 2 + wall_mm / 2) - wall_mm / 2
        section(
            axes, box(left, y, wall_mm, top_mm - y), fill=PALE_GREY, hatch="---", hatch_colour=GREY, order=6
        )


def draw_arc(axes, *, x, low, high, width):
    """Draw the arc between the face of the stud and the head as a pale column with ragged sides."""
    if high <= low:
        return
    area(axes, box(x - width / 2, low, width, high - low), fill=ARC_GLOW, order=7)
    count = 7
    for i in range(count):
        foot = x - width / 2 + width * (i + 0.5) / count
        bend = 0.18 if i % 2 else -0.18
        third = (high - low) / 3
        line(
            axes,
            [(foot, low), (foot + bend, low + third), (foot - bend, high - third), (foot, high)],
            colour=AMBER,
            width=1.1,
            order=7.5,
        )
