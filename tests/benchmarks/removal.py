"""Prints how long the policy for a row and simulated rows take; run it by hand, it judges nothing.

Processor time, best of three, so that other work on the machine counts little; the ratios compare with the
same work done row by row, and with numpy's own generator, in one run.
"""

import sys
import time
from dataclasses import replace
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "workbook")]
ROWS, RIVETS, ALONE, LONGEST = 100_000, 12, 50, 200


def seconds(work):
    """Return the processor time of some work, best of three."""
    times = []
    for _ in range(3):
        start = time.process_time()
        work()
        times.append(time.process_time() - start)
    return min(times)


def policy():
    """Print the times of the best policy: one model up to the longest row, and a class of own models."""
    from secondplate import trials

    model = trials.RowModel(
        wrong_probability=0.2,
        good_failure_probability=0.02,
        wrong_failure_probability=0.6,
        failed_pull_min=15,
        test_delay_min=4,
        reset_min=25,
    )
    rows = np.arange(1, LONGEST + 1)
    certain = seconds(lambda: trials.best_policy(rows, model))
    doubtful = seconds(lambda: trials.best_policy(rows, replace(model, wrong_after_reset_probability=0.1)))
    print(f"policies, rows up to {LONGEST} rivets: {certain:.3f} s, {doubtful:.3f} s if it may fail")
    learners = 2000
    beliefs = np.linspace(0.05, 0.5, learners)
    own = replace(model, wrong_probability=beliefs)
    lengths = np.arange(learners) % 28 + 3
    together = seconds(lambda: trials.best_policy(lengths, own))
    alone = seconds(
        lambda: [
            trials.best_policy(int(lengths[number]), replace(model, wrong_probability=float(beliefs[number])))
            for number in range(ALONE)
        ]
    )
    ratio = alone / ALONE / (together / learners)
    print(f"{learners} learners' rows of up to 30 rivets: {together:.2f} s; alone {ratio:.0f} times as long")


def simulation():
    """Print the times of simulated rows of every method, and of the draws in them."""
    from secondplate import removal
    from secondplate.bench_random import uniform

    total = 0.0
    for method in removal.METHODS:
        times = removal.usual_times(method)
        taken = seconds(
            lambda times=times: removal.simulate_rows(
                times, rivets=RIVETS, second_plate_mm=2.0, rows=ROWS, seed=b"benchmark"
            )
        )
        total += taken
        print(f"{ROWS} rows of {RIVETS} rivets, {method}: {taken:.2f} s")
    print(f"    all four methods: {total:.2f} s")
    numbers = np.arange(1_000_000)
    ours = seconds(lambda: uniform(b"benchmark", "draw", numbers))
    theirs = seconds(lambda: np.random.default_rng(1).random(numbers.size))
    print(f"a million draws: {1000 * ours:.0f} ms, {ours / theirs:.1f} times numpy's own generator")
    job = removal.RemovalJob(behind="open", bond="none", second_plate_mm=2.0, rivet_hardness_hv=480)
    decided = seconds(lambda: removal.decide(job, rivets=RIVETS, damage_min=60, seed=b"benchmark"))
    print(f"one decision with 5000 rows a method: {1000 * decided:.0f} ms")


if __name__ == "__main__":
    policy()
    simulation()
