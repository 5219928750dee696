"""Fasteners that replace a rivet: what they are, what they bear in a joint, how many, how stiff.

Everything that a page needs of them is found here; the parts are in the modules beside it, and where they go
is in ``fastener_layout``. Nothing here is a repair procedure: that of the vehicle maker comes first.
"""

from secondplate.fasteners_grip import (
    GRIP_DIAMETERS_MM,
    HOLE_VERDICTS,
    advised_pitch_mm,
    blind_rivet_length_mm,
    grip_mm,
    grip_range_mm,
    hole_verdict,
)
from secondplate.fasteners_joint import (
    FASTENER_MODES,
    PULLED_THROUGH,
    SECOND_BEARS,
    SECOND_TEARS,
    SHEARED,
    TOP_BEARS,
    TOP_TEARS,
    FastenerJoint,
    equal_strength_count,
    fastener_joint,
    offset_edge_mm,
    offset_site_mm,
)
from secondplate.fasteners_kinds import (
    BLIND_RIVET,
    BLIND_RIVETS,
    BOLT,
    BOLT_CLASSES,
    BOLT_SIZES,
    FASTENER_RULES,
    LOCK_BOLT,
    LOCK_BOLT_METALS,
    Fastener,
    blind_rivet,
    blind_rivet_sizes,
    bolt,
    lock_bolt,
    mandrel_break_n,
)
from secondplate.fasteners_pin import (
    PIN_MODES,
    pin_joint_areas_mm2,
)
from secondplate.fasteners_stiffness import (
    FASTENED,
    fastener_loads_n,
    flexibility_mm_n,
    simple_flexibility_mm_n,
)

__all__ = [
    "BLIND_RIVET",
    "BLIND_RIVETS",
    "BOLT",
    "BOLT_CLASSES",
    "BOLT_SIZES",
    "FASTENED",
    "FASTENER_MODES",
    "FASTENER_RULES",
    "Fastener",
    "FastenerJoint",
    "GRIP_DIAMETERS_MM",
    "HOLE_VERDICTS",
    "LOCK_BOLT",
    "LOCK_BOLT_METALS",
    "PIN_MODES",
    "PULLED_THROUGH",
    "SECOND_BEARS",
    "SECOND_TEARS",
    "SHEARED",
    "TOP_BEARS",
    "TOP_TEARS",
    "advised_pitch_mm",
    "blind_rivet",
    "blind_rivet_length_mm",
    "blind_rivet_sizes",
    "bolt",
    "equal_strength_count",
    "fastener_joint",
    "fastener_loads_n",
    "flexibility_mm_n",
    "grip_mm",
    "grip_range_mm",
    "hole_verdict",
    "lock_bolt",
    "mandrel_break_n",
    "offset_edge_mm",
    "offset_site_mm",
    "pin_joint_areas_mm2",
    "simple_flexibility_mm_n",
]
