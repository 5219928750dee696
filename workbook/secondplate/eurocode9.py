"""EN 1999-1-1 (Eurocode 9) for the joints of a second plate, with the codes for thin sheet beside it.

Everything that a page needs of it is found here; the parts are in the modules beside it. Most of its tables
are from memory; the national annex and the vehicle maker come first.
"""

from secondplate.eurocode9_bearing import (
    GAMMA_M1,
    GAMMA_M2,
    HOLE_FORMS,
    bearing_n,
    edge_factor,
    end_factor,
    inner_factor,
    row_factor,
)
from secondplate.eurocode9_fasteners import (
    SHEAR_MATERIALS,
    TENSION_MATERIALS,
    bolt_shear_n,
    bolt_tension_n,
    punching_n,
    shear_and_tension_use,
    solid_rivet_n,
)
from secondplate.eurocode9_sections import (
    UNSEEN_CRACK_MM,
    affected_diameter_mm,
    block_areas_mm2,
    block_tearing_n,
    gross_section_n,
    net_area_mm2,
    net_section_n,
    net_width_share,
)
from secondplate.eurocode9_spacing import (
    DISTANCES,
    EUROCODE9,
    SPACING_LEVELS,
    SPACING_SOURCE,
    greatest_distance_mm,
    least_distance_mm,
    require_distance,
    spacing_verdict,
)
from secondplate.eurocode9_thin_sheet import (
    AMERICAN_MANUAL,
    PLATE_CODE,
    aluminium_rivet_n,
    bearing_by_codes,
    bearing_spread_n,
    blind_rivet_bearing_n,
    handbook_bearing_ratio,
    manual_bearing_n,
)

__all__ = [
    "AMERICAN_MANUAL",
    "DISTANCES",
    "EUROCODE9",
    "GAMMA_M1",
    "GAMMA_M2",
    "HOLE_FORMS",
    "PLATE_CODE",
    "SHEAR_MATERIALS",
    "SPACING_LEVELS",
    "SPACING_SOURCE",
    "TENSION_MATERIALS",
    "UNSEEN_CRACK_MM",
    "affected_diameter_mm",
    "aluminium_rivet_n",
    "bearing_by_codes",
    "bearing_n",
    "bearing_spread_n",
    "blind_rivet_bearing_n",
    "block_areas_mm2",
    "block_tearing_n",
    "bolt_shear_n",
    "bolt_tension_n",
    "edge_factor",
    "end_factor",
    "greatest_distance_mm",
    "gross_section_n",
    "handbook_bearing_ratio",
    "inner_factor",
    "least_distance_mm",
    "manual_bearing_n",
    "net_area_mm2",
    "net_section_n",
    "net_width_share",
    "punching_n",
    "require_distance",
    "row_factor",
    "shear_and_tension_use",
    "solid_rivet_n",
    "spacing_verdict",
]
