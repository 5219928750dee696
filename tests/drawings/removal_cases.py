"""Calls of the pictures about drawing out and drilling out, for the tables of ``cases``."""

import drawings
from secondplate.bands import Band
from secondplate.pull_chain import LoadChain
from secondplate.removal_time import JobTimes
from secondplate.trials_policy import RowModel


def band(low, best, high):
    """Return a band of forces."""
    return Band(low=low, best=best, high=high, basis="example")


CHAIN = LoadChain(
    links_n={
        "stud": band(8800, 9600, 10500),
        "weld": band(4000, 7000, 11000),
        "rivet head": band(9000, 11000, 14000),
    },
    needed_n=band(2500, 4000, 5500),
)
STRONG_CHAIN = LoadChain(links_n={"stud": band(8800, 9600, 10500)}, needed_n=band(0, 100, 200))
DRILL = {"top_plate_mm": 1.2, "second_plate_mm": 2.0, "drill_diameter_mm": 6.0}
# Example of the break-even page: 5.43 rivets without learning, 6 with it.
WAYS = {
    "drill out": JobTimes(set_up_min=6, first_min=7.0, learning_rate=0.95),
    "weld and pull": JobTimes(set_up_min=25, first_min=3.5, learning_rate=0.9),
}
PULLS_N = [4100, 4000, 4150, 4050, 4100, 4200, 3950, 4080, 2900, 4120]
ROW = RowModel(
    wrong_probability=0.2,
    good_failure_probability=0.02,
    wrong_failure_probability=0.6,
    failed_pull_min=15,
    test_delay_min=4,
    reset_min=25,
)

USUAL = {
    "chain_chart": (
        drawings.chain_chart,
        {"chain": CHAIN},
        ("stud 8.8 to 10.5 kN", "weld 4.0 to 11.0 kN", "needs 2.5 to 5.5 kN", "Weakest link: not decided"),
    ),
    "drill_in_plates with a dimple": (
        drawings.drill_in_plates,
        {**DRILL, "drilled_depth_mm": 2.7},
        # 1.5 mm of a 118 degree point are 2 x 1.5 x tan 59 = 4.99 mm across.
        ("point 118 degrees and 1.8 mm long", "dimple of 4.99 mm across; 0.5 mm is left", "not passed"),
    ),
    "drill_in_plates with a hole": (
        drawings.drill_in_plates,
        {**DRILL, "drilled_depth_mm": 3.8, "point_angle_deg": 135},
        ("point 135 degrees and 1.24 mm long", "hole of 2.9 mm", "has passed the top plate"),
    ),
    "minutes_chart": (
        drawings.minutes_chart,
        {"times": WAYS, "rivet_count": 30},
        ("Drill out: 13 min for 1 rivet", "From 6 rivets on, weld and pull is no slower than drill out"),
    ),
    "proof_chart": (
        drawings.proof_chart,
        {"pulls": 22},
        # 22 good pulls show 90 % at 90 % confidence: 1 - 0.9 = 0.9 ** 22 nearly.
        ("22 pulls without a failure show 90.1 % at 90 % confidence", "87.3 % at 95 %"),
    ),
    "pull_control": (
        drawings.pull_control,
        {"pull_forces_n": PULLS_N, "limits_from": 8},
        ("(10), in kN", "first 8 pulls: 3.74 to 4.41 kN about 4.08 kN", "Outside: pull 9"),
    ),
    "plan_chart": (
        drawings.plan_chart,
        {"model": ROW, "row_rivets": 12},
        ("weld the row 24.5 min; test 1, then decide 20.4 min", "Best for 12 rivets: test 1, 20.4 min"),
    ),
}

EXTREMES = {
    "chain of one link, hardly loaded": (drawings.chain_chart, {"chain": STRONG_CHAIN}),
    "drill not through the top plate": (drawings.drill_in_plates, {**DRILL, "drilled_depth_mm": 0.4}),
    "drill far through": (
        drawings.drill_in_plates,
        {**DRILL, "drilled_depth_mm": 6.0, "drill_diameter_mm": 10.0},
    ),
    "one way, long row": (
        drawings.minutes_chart,
        {"times": {"grind": WAYS["drill out"]}, "rivet_count": 500},
    ),
    "two ways that never meet": (
        drawings.minutes_chart,
        {"times": {"slow": JobTimes(set_up_min=9, first_min=9), "quick": JobTimes(first_min=1, set_up_min=0)}}
        | {"rivet_count": 2},
    ),
    "many failures": (drawings.proof_chart, {"pulls": 10, "failures": 9, "longest": 200}),
    "three pulls": (drawings.pull_control, {"pull_forces_n": [4000, 4100, 3900]}),
    "long row, five tests": (
        drawings.plan_chart,
        {"model": ROW, "row_rivets": 200, "longest": 200, "tests": 5},
    ),
}

REFUSED = (
    (
        drawings.drill_in_plates,
        {**DRILL, "drilled_depth_mm": -1.0},
        "depth of the tip must be at least 0 mm, got -1 mm",
    ),
    (drawings.minutes_chart, {"times": WAYS, "rivet_count": 1}, "rivets must be between 2 and 500, got 1"),
    (
        drawings.minutes_chart,
        {"times": {}, "rivet_count": 9},
        "ways to compare must be between 1 and 4, got 0",
    ),
    (drawings.proof_chart, {"pulls": 61}, "pulls must be between 1 and 60, got 61"),
    (drawings.proof_chart, {"pulls": 5, "failures": 5}, "failed pulls must be between 0 and 4, got 5"),
    (drawings.pull_control, {"pull_forces_n": [4000, 4100]}, "pulls must be 3 at least, got 2"),
    (drawings.plan_chart, {"model": ROW, "row_rivets": 0}, "rivets must be between 1 and 40, got 0"),
)
