"""Where replacement fasteners go on a flange: rules, layouts and what a layout breaks.

Everything that a page needs of it is found here; the parts are in the modules beside it. Nothing here is a
repair procedure: the pattern of the vehicle maker comes first.
"""

from secondplate.fastener_layout_rules import (
    FORGIVEN_MM,
    LOAD_DIRECTIONS,
    Flange,
    LayoutRules,
    OldSite,
    die_rules,
    hole_rules,
    layout_faults,
)
from secondplate.fastener_layout_solver import (
    PATTERNS,
    STEP_MM,
    Layout,
    most_fasteners,
    place_fasteners,
)

__all__ = [
    "FORGIVEN_MM",
    "Flange",
    "LOAD_DIRECTIONS",
    "Layout",
    "LayoutRules",
    "OldSite",
    "PATTERNS",
    "STEP_MM",
    "die_rules",
    "hole_rules",
    "layout_faults",
    "most_fasteners",
    "place_fasteners",
]
