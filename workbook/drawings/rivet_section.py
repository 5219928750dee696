"""The set self-piercing rivet and the two plates in section, to scale, as outlines in millimetres.

The origin is the middle of the rivet head's top face, y points up. The shape of the set rivet is that of a
typical joint; only its size follows the head diameter. It is a picture, not a measured section.
"""

from dataclasses import dataclass

import numpy as np

from drawings.marks import section
from drawings.style import (
    GREY,
    MID_SLATE,
    PALE_AMBER,
    PALE_GREY,
    SECOND_HATCH,
    SLATE,
    STEEL_HATCH,
    TOP_HATCH,
)

# Head 7.75 mm on a shank of 5.3 mm: usual body rivet, from memory; everything scales with the head.
USUAL_HEAD_MM = 7.75
_OUTER = (
    (3.875, 0.0),
    (3.85, -0.22),
    (3.35, -0.55),
    (2.9, -0.95),
    (2.68, -1.4),
    (2.65, -2.1),
    (2.75, -2.7),
    (3.05, -3.15),
    (3.38, -3.4),
)
_INNER = ((2.95, -3.3), (2.4, -2.85), (1.95, -2.35), (1.72, -1.9), (1.66, -1.45), (1.45, -1.17), (0.0, -1.1))


@dataclass(frozen=True, kw_only=True)
class JointSize:
    """Sizes of the drawn joint.

    Parameters
    ----------
    head_diameter_mm : float
        Diameter of the rivet head [mm]
    top_thickness_mm : float
        Thickness of the top plate [mm]
    second_thickness_mm : float
        Thickness of the second plate [mm]
    half_width_mm : float
        How far the plates are drawn to each side [mm]
    """

    head_diameter_mm: float = USUAL_HEAD_MM
    top_thickness_mm: float = 2.0
    second_thickness_mm: float = 2.0
    half_width_mm: float = 11.0

    @property
    def scale(self):
        """Size of this rivet against the usual one."""
        return self.head_diameter_mm / USUAL_HEAD_MM

    @property
    def depth_scale(self):
        """Depth of this rivet against the usual one: it must reach well into the second plate."""
        return (self.top_thickness_mm + self.second_thickness_mm) / 4.0

    @property
    def bottom_mm(self):
        """Height of the underside of the second plate away from the rivet."""
        return -(self.top_thickness_mm + self.second_thickness_mm)

    @property
    def button_mm(self):
        """Height of the lowest point of the button."""
        return self.bottom_mm - 0.7 * self.depth_scale

    @property
    def tail_mm(self):
        """Place of the flared tail's outermost point at the right."""
        return _OUTER[-1][0] * self.scale, _OUTER[-1][1] * self.depth_scale


def _scaled(points, size):
    """Scale outline points to the joint."""
    return [(x * size.scale, y * size.depth_scale) for x, y in points]


def _mirrored(half):
    """Close a right half to a whole outline about the axis."""
    return half + [(-x, y) for x, y in reversed(half)]


def draw_joint(axes, size):
    """Draw both plates, the slug in the bore and the rivet, cut through the middle."""
    _draw_second_plate(axes, size)
    _draw_top_plate(axes, size)
    outer, inner = _scaled(_OUTER, size), _scaled(_INNER, size)
    slug = [p for p in inner if p[1] > -2.6 * size.depth_scale]
    slug_bottom = [(slug[0][0], slug[0][1] - 0.12), (0.0, slug[0][1] - 0.3)]
    section(
        axes,
        _mirrored([inner[-1], *reversed(slug), *slug_bottom]),
        fill=PALE_GREY,
        hatch=TOP_HATCH,
        hatch_colour=GREY,
        width=1.0,
        order=4,
    )
    rivet = _mirrored([*outer, *inner])
    section(axes, rivet, fill=MID_SLATE, hatch=STEEL_HATCH, hatch_colour=SLATE, order=5)


def _between_plates(size):
    """Return the line where the plates meet, from the outside in; it dips along the shank."""
    s, d, top = size.scale, size.depth_scale, -size.top_thickness_mm
    dips = ((4.8, 0.0), (4.0, 0.08), (3.4, 0.22), (3.0, 0.45), (2.75, 0.7), (0.0, 0.7))
    return [(size.half_width_mm, top), *((x * s, top - dip * d) for x, dip in dips)]


def _draw_second_plate(axes, size):
    """Draw the second plate with its button."""
    bottom, s = size.bottom_mm, size.scale
    along = np.linspace(0, 1, 11)
    drop = (3 * along**2 - 2 * along**3) * (size.button_mm - bottom)
    button = [(5.1 * s - 1.1 * s * a, bottom + d) for a, d in zip(along, drop, strict=True)]
    half = [*reversed(_between_plates(size)), (size.half_width_mm, bottom), *button, (0, size.button_mm)]
    section(axes, _mirrored(half), fill=PALE_AMBER, hatch=SECOND_HATCH, hatch_colour="#c99a66", order=2)


def _draw_top_plate(axes, size):
    """Draw the top plate."""
    half = [(0, 0), (size.half_width_mm, 0), *_between_plates(size)]
    section(axes, _mirrored(half), fill=PALE_GREY, hatch=TOP_HATCH, hatch_colour=MID_SLATE, order=3)
