"""Pulling a set rivet out by its stud: what it takes, what the chain bears, and the tool.

Forces are bands of at least a factor of two, for nobody has measured them. Everything that a page needs of
the pull is found here; the parts are in the modules beside it.
"""

from secondplate.pull_chain import BREAKS, HOLDS, OPEN, LoadChain
from secondplate.pull_out_forces import (
    collar_crush_n,
    collar_shear_n,
    hole_opening_n,
    leg_closure_n,
    shank_friction_n,
)
from secondplate.pull_tool import (
    STEEL_MODULUS_MPA,
    flight_speed_m_s,
    hydraulic_force_n,
    intensified_pressure_bar,
    nose_bearing_mpa,
    stored_energy_j,
    stroke_needed_mm,
    stud_stretch_mm,
    top_plate_dish_mm,
)
from secondplate.tail_pull_out import TailPullOut, first_peak_n, tail_hold, tail_pull_out

__all__ = [
    "BREAKS",
    "HOLDS",
    "OPEN",
    "STEEL_MODULUS_MPA",
    "LoadChain",
    "TailPullOut",
    "collar_crush_n",
    "collar_shear_n",
    "first_peak_n",
    "flight_speed_m_s",
    "hole_opening_n",
    "hydraulic_force_n",
    "intensified_pressure_bar",
    "leg_closure_n",
    "nose_bearing_mpa",
    "shank_friction_n",
    "stored_energy_j",
    "stroke_needed_mm",
    "stud_stretch_mm",
    "tail_hold",
    "tail_pull_out",
    "top_plate_dish_mm",
]
