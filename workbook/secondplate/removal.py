"""Ways to take a set rivet out: hard limits, time, damage, and a decision with its reasons.

Expected cost and the value of knowing more decide; weighted scoring stands beside them to show where it
misleads. Everything that a page needs is found here; the parts are in the modules beside it.
"""

from secondplate.removal_decision import NO_PROCEDURE, Decision, MethodOutlook, decide
from secondplate.removal_information import Information, TimingValue, row_cost_min, value_of_timings
from secondplate.removal_limits import (
    DRILLS,
    FACTS,
    HARD_LIMITS,
    METHODS,
    VERDICTS,
    WORDS,
    HardLimit,
    RemovalJob,
    Screening,
    screen,
)
from secondplate.removal_methods import (
    MOST_RIVETS,
    QUANTITIES,
    REFERENCE_PLATE_MM,
    MethodTimes,
    RowParts,
    damage_chance,
    mean_of_band,
    mean_parts,
    usual_times,
)
from secondplate.removal_scoring import (
    NORMALISATIONS,
    RANDOM_INDEX_TABLES,
    USUAL_LIMIT,
    PairwiseWeights,
    closeness_to_ideal,
    column_mean_weights,
    order,
    pairwise_weights,
    weighted_sum,
)
from secondplate.removal_simulation import RowOutcomes, draw_parts, simulate_rows
from secondplate.removal_time import (
    LEARNING_MODELS,
    JobTimes,
    break_even_rivets,
    first_row_no_slower,
    learning_exponent,
    piece_min,
    series_min,
)

__all__ = [
    "DRILLS",
    "FACTS",
    "HARD_LIMITS",
    "LEARNING_MODELS",
    "METHODS",
    "MOST_RIVETS",
    "NORMALISATIONS",
    "NO_PROCEDURE",
    "QUANTITIES",
    "RANDOM_INDEX_TABLES",
    "REFERENCE_PLATE_MM",
    "USUAL_LIMIT",
    "VERDICTS",
    "WORDS",
    "Decision",
    "HardLimit",
    "Information",
    "JobTimes",
    "MethodOutlook",
    "MethodTimes",
    "PairwiseWeights",
    "RemovalJob",
    "RowOutcomes",
    "RowParts",
    "Screening",
    "TimingValue",
    "break_even_rivets",
    "closeness_to_ideal",
    "column_mean_weights",
    "damage_chance",
    "decide",
    "draw_parts",
    "first_row_no_slower",
    "learning_exponent",
    "mean_of_band",
    "mean_parts",
    "order",
    "pairwise_weights",
    "piece_min",
    "row_cost_min",
    "screen",
    "series_min",
    "simulate_rows",
    "usual_times",
    "value_of_timings",
    "weighted_sum",
]
