"""What the heat of a weld did to the second plate, to the bond line and to the coat.

Everything that a page needs of it is found here; the parts are in the modules beside it.
"""

from secondplate.softening_dissolution import (
    DissolutionModel,
    dissolution_proof_stress_mpa,
    dissolution_tensile_strength_mpa,
)
from secondplate.softening_exposure import (
    ACTIVATION_ENERGY_J_MOL,
    MEASURED_C,
    equivalent_time_s,
    exposure_band,
    exposure_index,
    heat_life_s,
)
from secondplate.softening_haz import (
    HAZ_ALLOYS,
    PRODUCTS,
    SEAM_PROCESSES,
    HazFactors,
    haz_effective_area_mm2,
    haz_extent_mm,
    haz_factors,
)
from secondplate.softening_limits import HEAT_WORDS, HeatLimit, judge_heat, typical_heat_limits
from secondplate.softening_strength import (
    SOFTENING_KINDS,
    Softening,
    over_ageing_share,
    softening,
    softening_of_weld,
)

__all__ = [
    "ACTIVATION_ENERGY_J_MOL",
    "HAZ_ALLOYS",
    "HEAT_WORDS",
    "MEASURED_C",
    "PRODUCTS",
    "SEAM_PROCESSES",
    "SOFTENING_KINDS",
    "DissolutionModel",
    "HazFactors",
    "HeatLimit",
    "Softening",
    "dissolution_proof_stress_mpa",
    "dissolution_tensile_strength_mpa",
    "equivalent_time_s",
    "exposure_band",
    "exposure_index",
    "haz_effective_area_mm2",
    "haz_extent_mm",
    "haz_factors",
    "heat_life_s",
    "judge_heat",
    "over_ageing_share",
    "softening",
    "softening_of_weld",
    "typical_heat_limits",
]
