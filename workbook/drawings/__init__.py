"""Pictures of what the library computes. Each function returns a ``Picture`` that carries its own words."""

from drawings.bench_collar import bench_collar
from drawings.collars import collar, collar_strip
from drawings.constitution import constitution_diagram
from drawings.electric_charts import cable_drop, field_by_distance
from drawings.energy_chart import energy_chart
from drawings.flange_layout import flange_layout
from drawings.gas_bars import gas_use
from drawings.job_sequence import job_sequence
from drawings.oxygen_chart import oxygen_in_room
from drawings.picture import Picture
from drawings.polarity import polarity
from drawings.pulled_stud import pulled_stud
from drawings.rivet_and_plates import rivet_and_plates
from drawings.rule_bars import rule_bars
from drawings.sensitivity_chart import sensitivity_chart
from drawings.stud_and_holder import stud_and_holder
from drawings.stud_strength import stud_strength
from drawings.temperature_field import temperature_field
from drawings.temperature_histories import temperature_histories
from drawings.weld_cycle import weld_cycle
from drawings.weld_window import weld_window
from drawings.zone_hardness import zone_hardness_chart

__all__ = [
    "Picture",
    "bench_collar",
    "cable_drop",
    "collar",
    "collar_strip",
    "constitution_diagram",
    "energy_chart",
    "field_by_distance",
    "flange_layout",
    "gas_use",
    "job_sequence",
    "oxygen_in_room",
    "polarity",
    "pulled_stud",
    "rivet_and_plates",
    "rule_bars",
    "sensitivity_chart",
    "stud_and_holder",
    "stud_strength",
    "temperature_field",
    "temperature_histories",
    "weld_cycle",
    "weld_window",
    "zone_hardness_chart",
]
