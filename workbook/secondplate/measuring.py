"""Measuring: uncertainty budgets, decisions with a guard band, ultrasonic thickness, and gauges.

Everything that a page needs of measuring is found here; the parts are in the modules beside it.
"""

from secondplate.measuring_budget import Budget, Contribution, sensitivities
from secondplate.measuring_decision import VERDICTS, conformity, conformity_probability, guard_band_mm
from secondplate.measuring_gauge import (
    GAP_AND_FLUSH_MM,
    LEAST_CATEGORIES,
    PIN_OUTCOMES,
    GaugeStudy,
    gauge_categories,
    gauge_study,
    largest_gauge_uncertainty_mm,
    pin_outcome,
)
from secondplate.measuring_inputs import (
    SHAPES,
    certificate_uncertainty,
    degrees_from_doubt,
    limits_uncertainty,
    repeated_uncertainty,
    resolution_uncertainty,
)
from secondplate.measuring_ultrasonic import (
    VELOCITIES_M_S,
    echo_thickness_mm,
    echo_time_us,
    echo_to_echo_thickness_mm,
    echo_uncertainty_mm,
    paint_reading_mm,
    thinnest_wall_mm,
    velocity_at_m_s,
)

__all__ = [
    "GAP_AND_FLUSH_MM",
    "LEAST_CATEGORIES",
    "PIN_OUTCOMES",
    "SHAPES",
    "VELOCITIES_M_S",
    "VERDICTS",
    "Budget",
    "Contribution",
    "GaugeStudy",
    "certificate_uncertainty",
    "conformity",
    "conformity_probability",
    "degrees_from_doubt",
    "echo_thickness_mm",
    "echo_time_us",
    "echo_to_echo_thickness_mm",
    "echo_uncertainty_mm",
    "gauge_categories",
    "gauge_study",
    "guard_band_mm",
    "largest_gauge_uncertainty_mm",
    "limits_uncertainty",
    "paint_reading_mm",
    "pin_outcome",
    "repeated_uncertainty",
    "resolution_uncertainty",
    "sensitivities",
    "thinnest_wall_mm",
    "velocity_at_m_s",
]
