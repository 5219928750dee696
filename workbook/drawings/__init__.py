"""Pictures of what the library computes. Each function returns a ``Picture`` that carries its own words."""

from drawings.collars import collar, collar_strip
from drawings.energy_chart import energy_chart
from drawings.picture import Picture
from drawings.rivet_and_plates import rivet_and_plates
from drawings.stud_and_holder import stud_and_holder
from drawings.weld_cycle import weld_cycle

__all__ = [
    "Picture",
    "collar",
    "collar_strip",
    "energy_chart",
    "rivet_and_plates",
    "stud_and_holder",
    "weld_cycle",
]
