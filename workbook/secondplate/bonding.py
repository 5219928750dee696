"""Bonded and riv-bonded laps: shear, peel, and what share of the load the rivets carry.

Everything that a page needs of them is found here; the parts are in the modules beside it.
"""

from secondplate.bonding_bending import (
    BentLap,
    bent_lap_peel_mpa,
    bent_lap_shear_mpa,
)
from secondplate.bonding_rivets import (
    rivet_shares,
    stiff_plate_rivet_share,
)
from secondplate.bonding_shear_lag import (
    bond_peak_mpa,
    bond_shear_mpa,
    limit_overlap_mm,
    transfer_rate_per_mm,
)

__all__ = [
    "BentLap",
    "bent_lap_peel_mpa",
    "bent_lap_shear_mpa",
    "bond_peak_mpa",
    "bond_shear_mpa",
    "limit_overlap_mm",
    "rivet_shares",
    "stiff_plate_rivet_share",
    "transfer_rate_per_mm",
]
