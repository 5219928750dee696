"""Cut faces of a riveted joint and its tools, hatched as drawing offices do. It has no subject of its own."""

from drawings.marks import section
from drawings.style import (
    GREY,
    MID_AMBER,
    MID_GREY,
    MID_SLATE,
    PALE_AMBER,
    PALE_GREY,
    PALE_SLATE,
    SECOND_HATCH,
    SLATE,
    STEEL_HATCH,
    THIN,
    TOP_HATCH,
)

TOP = {"fill": PALE_GREY, "hatch": TOP_HATCH, "hatch_colour": GREY}
SLUG = TOP | {"width": 1.0}
SECOND = {"fill": PALE_AMBER, "hatch": SECOND_HATCH, "hatch_colour": MID_AMBER}
RIVET = {"fill": MID_SLATE, "hatch": STEEL_HATCH, "hatch_colour": SLATE}
TOOL = {"fill": PALE_SLATE, "outline": GREY, "width": THIN}
ADHESIVE = {"fill": MID_GREY, "width": THIN}
_STYLES = {
    "second plate": (SECOND, 2),
    "gap left": (ADHESIVE, 2.5),
    "gap right": (ADHESIVE, 2.5),
    "top plate left": (TOP, 3),
    "top plate right": (TOP, 3),
    "top plate": (TOP, 3),
    "slug": (SLUG, 4),
    "rivet": (RIVET, 5),
}


def draw_section(axes, outlines):
    """Draw the cut faces of a joint by part; a part that is not there is left out."""
    for part, outline in outlines.items():
        style, order = _STYLES[part]
        section(axes, outline, order=order, **style)


def draw_tools(axes, outlines):
    """Draw punch, nose and die behind the joint."""
    for outline in outlines.values():
        section(axes, outline, order=1, **TOOL)
