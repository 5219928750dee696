"""How fast the virtual bench pulls studs and runs rows: 100,000 of each in one run, against one by one.

Both sides pull the same studs and run the same rows with the same seed; the outcomes must be the same in
every field, or there is no ratio to speak of. The best plan for a day is timed as well.

Run it as `python tests/benchmarks/bench_row.py [--count 100000] [--sample 100]`; it takes some seconds.
"""

import argparse
import sys
import time
from dataclasses import fields
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "workbook")]

from secondplate import bench  # noqa: E402, after the path is set

PULL_TARGET_S, ROW_TARGET_S = 2.0, 3.0
SEED = b"benchmark"
CHART = bench.chart_settings(stud_diameter_mm=6)
JOB = bench.draw_job(SEED, machine="weak")
SITE = bench.draw_site(SEED)
PLAN = bench.RowPlan(test_first=2, test_after_reset=1, weld_at_once=8, reset_at=1, most_resets=2)


def timed(work):
    """Return what work gives and how long it took in seconds."""
    start = time.perf_counter()
    found = work()
    return found, time.perf_counter() - start


def pull(number):
    """Weld and pull studs, and return the pulls with their traces."""
    outcome = bench.weld(CHART, JOB, seed=SEED, number=number)
    pulled = bench.pull_studs(outcome, CHART, JOB, SITE, seed=SEED, number=number)
    return pulled, bench.force_trace(pulled, SITE)


def report(name, count, whole_s, sample, single_s, target_s):
    """Print one line of ratios."""
    each_us, one_us = 1e6 * whole_s / count, 1e6 * single_s / sample
    print(f"{count} {name} in one run: {whole_s:.2f} s, {each_us:.1f} us each, target {target_s:g} s")
    print(f"    one after the other: {one_us:.0f} us each, {one_us / each_us:.0f} times as long")


def main():
    """Print the ratios."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--count", type=int, default=100_000)
    parser.add_argument("--sample", type=int, default=100)
    asked = parser.parse_args()
    day = bench.example_day()
    pull(1)  # tables loaded before the clock starts
    (many, _), whole_s = timed(lambda: pull(np.arange(1, asked.count + 1)))
    singles, single_s = timed(lambda: [pull(number)[0] for number in range(1, asked.sample + 1)])
    for at, one in enumerate(singles):
        if any(getattr(many, field.name)[at] != getattr(one, field.name) for field in fields(one)):
            sys.exit("the same pull gave two outcomes")
    report("welds, pulls and traces", asked.count, whole_s, asked.sample, single_s, PULL_TARGET_S)
    rows, whole_s = timed(lambda: bench.run_rows(PLAN, day, seed=SEED, rows=asked.count))
    few, single_s = timed(lambda: [bench.run_rows(PLAN, day, seed=SEED) for _ in range(asked.sample)])
    if any(one.minutes[0] != rows.minutes[0] for one in few):
        sys.exit("the same row gave two outcomes")
    report(f"rows of {day.rivets}", asked.count, whole_s, asked.sample, single_s, ROW_TARGET_S)
    mean = bench.expected_row(PLAN, day).minutes
    error = rows.minutes.std() / np.sqrt(asked.count)
    print(f"    mean {rows.minutes.mean():.2f} min, computed {mean:.2f} min, standard error {error:.2f} min")
    best, best_s = timed(lambda: bench.best_plan(day))
    print(f"best plan {tuple(vars(best).values())} of {day.rivets} rivets: {1000 * best_s:.0f} ms")


if __name__ == "__main__":
    main()
