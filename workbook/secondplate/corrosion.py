"""Corrosion where steel fasteners meet aluminium: which metals, how fast, and the steps that keep them apart.

Everything that a page needs of it is found here; the parts are in the modules beside it.
"""

from secondplate.corrosion_couples import (
    ENVIRONMENTS,
    GALVANIC_RANKING,
    INDEX_METALS,
    PROTECT_ABOVE_MV,
    SEA_WATER_METALS,
    Couple,
    couple,
    galvanic_rank,
    index_allows,
    index_difference_v,
    potential_difference_mv,
    worst_first,
)
from secondplate.corrosion_rates import (
    CORRODING_METALS,
    Electrode,
    MixedPotential,
    anode_rate,
    galvanic_density,
    mixed_potential,
    oxygen_limit_ua_cm2,
    penetration_mm_year,
)
from secondplate.corrosion_steps import (
    CATEGORIES,
    ISOLATION_STEP_NAMES,
    ISOLATION_STEPS,
    SALT_SPRAY,
    first_year_loss,
    isolation_faults,
)

__all__ = [
    "CATEGORIES",
    "CORRODING_METALS",
    "ENVIRONMENTS",
    "GALVANIC_RANKING",
    "INDEX_METALS",
    "ISOLATION_STEPS",
    "ISOLATION_STEP_NAMES",
    "PROTECT_ABOVE_MV",
    "SALT_SPRAY",
    "SEA_WATER_METALS",
    "Couple",
    "Electrode",
    "MixedPotential",
    "anode_rate",
    "couple",
    "first_year_loss",
    "galvanic_density",
    "galvanic_rank",
    "index_allows",
    "index_difference_v",
    "isolation_faults",
    "mixed_potential",
    "oxygen_limit_ua_cm2",
    "penetration_mm_year",
    "potential_difference_mv",
    "worst_first",
]
