"""Test pulls: what they prove, what they find, and whether to weld one and pull it or weld the row.

A car never has enough rivets to prove a reliability: the test pull finds a wrong set-up. Everything that a
page needs of test pulls is found here; the parts are in the modules beside it.
"""

from secondplate.trials_beliefs import PRIORS, beta_binomial_chances, chance_better_than, good_pull_mean
from secondplate.trials_charts import ControlChart, individuals_charts, mean_and_range_charts
from secondplate.trials_counts import (
    CONVENTIONS,
    chance_of_at_most,
    pulls_needed,
    reliability_shown,
    success_run_pulls,
    success_run_reliability,
)
from secondplate.trials_intervals import clopper_pearson_interval, wilson_interval
from secondplate.trials_plans import AttributesPlan, VariablesPlan, plans_for_lot, variables_plan
from secondplate.trials_policy import ACTIONS, Policy, RowModel, best_policy, next_step, wrong_belief
from secondplate.trials_rows import (
    RowProof,
    chance_of_at_most_in_row,
    most_bad_left,
    pulls_to_find,
    row_proof,
)
from secondplate.trials_sequential import DECISIONS, SequentialPlan, average_pulls, exact_sequential
from secondplate.trials_sums import (
    CumulativeSums,
    cumulative_sum_run_length,
    cumulative_sums,
    standardised_sums,
    weighted_mean_chart,
)
from secondplate.trials_tolerance import (
    ToleranceLimits,
    howe_two_sided_factor,
    natrella_one_sided_factor,
    one_sided_tolerance_factor,
    tolerance_limits,
    two_sided_tolerance_factor,
)
from secondplate.trials_value import (
    plan_with_tests_min,
    reset_first_min,
    value_of_knowing,
    value_of_one_test,
    weld_all_min,
)
from secondplate.trials_weibull import Weibull, fit_weibull, median_ranks

__all__ = [
    "ACTIONS",
    "CONVENTIONS",
    "DECISIONS",
    "PRIORS",
    "AttributesPlan",
    "ControlChart",
    "CumulativeSums",
    "Policy",
    "RowModel",
    "RowProof",
    "SequentialPlan",
    "ToleranceLimits",
    "VariablesPlan",
    "Weibull",
    "average_pulls",
    "best_policy",
    "beta_binomial_chances",
    "chance_better_than",
    "chance_of_at_most",
    "chance_of_at_most_in_row",
    "clopper_pearson_interval",
    "cumulative_sum_run_length",
    "cumulative_sums",
    "exact_sequential",
    "fit_weibull",
    "good_pull_mean",
    "howe_two_sided_factor",
    "individuals_charts",
    "mean_and_range_charts",
    "median_ranks",
    "most_bad_left",
    "natrella_one_sided_factor",
    "next_step",
    "one_sided_tolerance_factor",
    "plans_for_lot",
    "pulls_needed",
    "pulls_to_find",
    "reliability_shown",
    "reset_first_min",
    "row_proof",
    "standardised_sums",
    "success_run_pulls",
    "success_run_reliability",
    "plan_with_tests_min",
    "tolerance_limits",
    "two_sided_tolerance_factor",
    "value_of_knowing",
    "value_of_one_test",
    "variables_plan",
    "weighted_mean_chart",
    "weld_all_min",
    "wilson_interval",
    "wrong_belief",
]
