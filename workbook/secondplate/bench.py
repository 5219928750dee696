"""Virtual bench: weld one stud with given settings, look at it, pull it, all repeatable from a seed.

Model: arc energy and its share to the faces, melted depth against the web, melt pressed out by the plunge,
fused area where flange and head overlap, elastic and plastic limit of an eccentric pull, need for gas.
Judgement: how strongly each fault answers to lift, protrusion, tilt, earth, gas and dirt, at what size it
shows, and all scatter. Each such number stands in data/bench_limits.csv, data/bench_bands.csv or
data/process_window.csv with its basis. No series of real welds stands behind it: the bench teaches the order
of work, not the setting of a machine.

Second half: ``bench_pull`` pulls the studs, with a force trace; ``bench_row`` runs a whole row by a plan, and
``bench_plan`` says what the plan costs on the average beside the best one. Each says what is model there.
"""

from secondplate.bench_day import (
    PLAN_LIMITS,
    RowDay,
    RowPlan,
    example_day,
    stud_pool,
    usual_row_times,
)
from secondplate.bench_log import (
    DOINGS,
    FINDINGS,
    STOP_REASONS,
    BenchLog,
    Finding,
    Judgement,
    judge_log,
    judge_logs,
    read_log,
)
from secondplate.bench_model import FAULTS
from secondplate.bench_plan import (
    HABITS,
    PlanJudgement,
    RowExpectation,
    best_plan,
    expected_row,
    habits_of,
    judge_plan,
)
from secondplate.bench_pull import RESULTS, StudPull, pull_studs
from secondplate.bench_row import CAME, MODES, RowRuns, run_rows
from secondplate.bench_settings import (
    EARTHS,
    GASES,
    HEADS,
    MACHINES,
    POLARITIES,
    SETTING_LIMITS,
    SETTING_NAMES,
    STUD_DIAMETERS_MM,
    WeldJob,
    WeldSettings,
    chart_settings,
    draw_job,
)
from secondplate.bench_site import PullSite, draw_site, limit_load_n
from secondplate.bench_trace import TRACE_PLACES, ForceTrace, force_trace
from secondplate.bench_weld import (
    FACES,
    GAVE,
    SIGN_IDS,
    SURFACES,
    PullOutcome,
    WeldOutcome,
    test_pull,
    weld,
)
from secondplate.bench_window import (
    VERDICTS,
    advise,
    corrections,
    expected_improvement,
    in_window,
    right_direction,
    window,
)

__all__ = [
    "CAME",
    "DOINGS",
    "EARTHS",
    "FACES",
    "FAULTS",
    "FINDINGS",
    "GASES",
    "GAVE",
    "HABITS",
    "HEADS",
    "MACHINES",
    "MODES",
    "PLAN_LIMITS",
    "POLARITIES",
    "RESULTS",
    "SETTING_LIMITS",
    "SETTING_NAMES",
    "SIGN_IDS",
    "STOP_REASONS",
    "STUD_DIAMETERS_MM",
    "SURFACES",
    "TRACE_PLACES",
    "VERDICTS",
    "BenchLog",
    "Finding",
    "ForceTrace",
    "Judgement",
    "PlanJudgement",
    "PullOutcome",
    "PullSite",
    "RowDay",
    "RowExpectation",
    "RowPlan",
    "RowRuns",
    "StudPull",
    "WeldJob",
    "WeldOutcome",
    "WeldSettings",
    "advise",
    "best_plan",
    "chart_settings",
    "corrections",
    "draw_job",
    "draw_site",
    "example_day",
    "expected_improvement",
    "expected_row",
    "force_trace",
    "habits_of",
    "in_window",
    "judge_log",
    "judge_logs",
    "judge_plan",
    "limit_load_n",
    "pull_studs",
    "read_log",
    "right_direction",
    "run_rows",
    "stud_pool",
    "test_pull",
    "usual_row_times",
    "weld",
    "window",
]
