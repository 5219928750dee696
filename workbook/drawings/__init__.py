"""Pictures of what the library computes. Each function returns a ``Picture`` that carries its own words."""

from drawings.bench_collar import bench_collar
from drawings.bond_shear import bond_shear
from drawings.button_from_below import button_from_below
from drawings.chain_chart import chain_chart
from drawings.collars import collar, collar_strip
from drawings.constitution import constitution_diagram
from drawings.drill_in_plates import drill_in_plates
from drawings.electric_charts import cable_drop, field_by_distance
from drawings.energy_chart import energy_chart
from drawings.flange_layout import flange_layout
from drawings.flange_proposals import flange_proposals
from drawings.force_stroke import force_stroke
from drawings.gas_bars import gas_use
from drawings.job_sequence import job_sequence
from drawings.minutes_chart import minutes_chart
from drawings.oxygen_chart import oxygen_in_room
from drawings.picture import Picture
from drawings.plan_chart import plan_chart
from drawings.plates_left import plates_left
from drawings.polarity import polarity
from drawings.proof_chart import proof_chart
from drawings.pull_control import pull_control
from drawings.pull_out_chart import pull_out_chart
from drawings.pull_trace import pull_trace
from drawings.pulled_stud import pulled_stud
from drawings.reading_chart import reading_chart
from drawings.rivet_and_plates import rivet_and_plates
from drawings.row_strip import row_strip
from drawings.rule_bars import rule_bars
from drawings.section_view import SECTION_FRAME_MM, rivet_parts, section_view
from drawings.sensitivity_chart import sensitivity_chart
from drawings.setting import setting_at, setting_stages
from drawings.stud_and_holder import stud_and_holder
from drawings.stud_strength import stud_strength
from drawings.temperature_field import temperature_field
from drawings.temperature_histories import temperature_histories
from drawings.weld_cycle import weld_cycle
from drawings.weld_window import weld_window
from drawings.zone_hardness import zone_hardness_chart

__all__ = [
    "Picture",
    "SECTION_FRAME_MM",
    "bench_collar",
    "bond_shear",
    "button_from_below",
    "cable_drop",
    "chain_chart",
    "collar",
    "collar_strip",
    "constitution_diagram",
    "drill_in_plates",
    "energy_chart",
    "field_by_distance",
    "flange_layout",
    "flange_proposals",
    "force_stroke",
    "gas_use",
    "job_sequence",
    "minutes_chart",
    "oxygen_in_room",
    "plan_chart",
    "plates_left",
    "polarity",
    "proof_chart",
    "pull_control",
    "pull_out_chart",
    "pull_trace",
    "pulled_stud",
    "reading_chart",
    "rivet_and_plates",
    "rivet_parts",
    "row_strip",
    "rule_bars",
    "section_view",
    "sensitivity_chart",
    "setting_at",
    "setting_stages",
    "stud_and_holder",
    "stud_strength",
    "temperature_field",
    "temperature_histories",
    "weld_cycle",
    "weld_window",
    "zone_hardness_chart",
]
