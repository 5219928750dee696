"""The second plate after the rivet is out: what is left, what may be pressed back, and what to do with it.

Everything that a page needs of it is found here; the parts are in the modules beside it. Nothing here is a
repair procedure: that of the vehicle maker comes first.
"""

from secondplate.plate_button import (
    bearing_thickness_mm,
    button_volume_mm3,
    die_filling,
    die_room_mm3,
    hole_left_volume_mm3,
    net_section_thickness_mm,
)
from secondplate.plate_cracks import (
    METHODS,
    PLACES,
    TOUGHNESS,
    DetectionCurve,
    clean_test_words,
    crack_left_probability,
    critical_length_mm,
    detectable_length_mm,
    fracture_length_mm,
    yielding_length_mm,
)
from secondplate.plate_dome import ButtonDome, bending_strain, least_bend_ratio, springing_rise_mm
from secondplate.plate_forming import (
    FORMING_LIMITS,
    PRESS_VERDICTS,
    STRAIN_SHARE,
    PressBack,
    least_bend_radius_mm,
    press_back,
    tallest_rise_mm,
)
from secondplate.plate_hardening import (
    HARDENING_LAWS,
    HARDENING_SHEETS,
    HollomonLaw,
    SwiftLaw,
    VoceLaw,
    necking_strain_band,
    necking_strains,
)
from secondplate.plate_penetrant import (
    INDICATION_SHAPES,
    PENETRANT_KINDS,
    PENETRANT_RULES,
    indication_accepted,
    penetrant_faults,
)
from secondplate.plate_states import (
    PLATE_STATES,
    STATE_MEANS,
    STATE_SEEN,
    PlateLeft,
    after_drilling,
    after_pulling,
    after_punching,
)
from secondplate.plate_verdict import MEASURE_AGAIN, PLATE_VERDICTS, PlateFinding, PlateVerdict, judge_plate

__all__ = [
    "FORMING_LIMITS",
    "HARDENING_LAWS",
    "HARDENING_SHEETS",
    "INDICATION_SHAPES",
    "MEASURE_AGAIN",
    "METHODS",
    "PENETRANT_KINDS",
    "PENETRANT_RULES",
    "PLACES",
    "PLATE_STATES",
    "PLATE_VERDICTS",
    "PRESS_VERDICTS",
    "STATE_MEANS",
    "STATE_SEEN",
    "STRAIN_SHARE",
    "TOUGHNESS",
    "ButtonDome",
    "DetectionCurve",
    "HollomonLaw",
    "PlateFinding",
    "PlateLeft",
    "PlateVerdict",
    "PressBack",
    "SwiftLaw",
    "VoceLaw",
    "after_drilling",
    "after_pulling",
    "after_punching",
    "bearing_thickness_mm",
    "bending_strain",
    "button_volume_mm3",
    "clean_test_words",
    "crack_left_probability",
    "critical_length_mm",
    "detectable_length_mm",
    "die_filling",
    "die_room_mm3",
    "fracture_length_mm",
    "hole_left_volume_mm3",
    "indication_accepted",
    "judge_plate",
    "least_bend_radius_mm",
    "least_bend_ratio",
    "necking_strain_band",
    "necking_strains",
    "net_section_thickness_mm",
    "penetrant_faults",
    "press_back",
    "springing_rise_mm",
    "tallest_rise_mm",
    "yielding_length_mm",
]
