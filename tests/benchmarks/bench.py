"""How fast the virtual bench welds and pulls: 100,000 studs in one run, against one stud after the other.

Both sides weld the same studs with the same seed in one run on one machine; the outcomes must be the same in
every field, or there is no ratio to speak of. Logs of a made-up class are judged as well.

Run it as `python tests/benchmarks/bench.py [--welds 100000] [--sample 200]`; it takes some seconds.
"""

import argparse
import sys
import time
from dataclasses import fields, replace
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "workbook")]

from secondplate import bench  # noqa: E402, after the path is set

TARGET_S = 2.0
SEED = b"benchmark"
CHART = bench.chart_settings(stud_diameter_mm=6)
JOB = bench.draw_job(SEED, machine="weak")


def weld_and_pull(settings, number):
    """Weld and pull and return both outcomes."""
    outcome = bench.weld(settings, JOB, seed=SEED, number=number)
    return outcome, bench.test_pull(outcome, settings, JOB)


def timed(work):
    """Return what work gives and how long it took in seconds."""
    start = time.perf_counter()
    found = work()
    return found, time.perf_counter() - start


def same(row, index, one):
    """Tell whether one weld and one place of a row agree in every field but the mask of defects."""
    return all(
        getattr(row, field.name)[index] == getattr(one, field.name)
        for field in fields(one)
        if field.name != "defects"
    )


def a_log():
    """Return the log of a learner who raises the current step by step."""
    steps = []
    for current_a in (600.0, 700.0, 800.0, 900.0):
        steps += [{"do": "weld", "settings": vars(replace(CHART, current_a=current_a))}, {"do": "pull"}]
    return [*steps, {"do": "row"}]


def main():
    """Print the ratios."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--welds", type=int, default=100_000)
    parser.add_argument("--sample", type=int, default=200)
    asked = parser.parse_args()
    currents = np.linspace(400, 1000, asked.welds)
    numbers = np.arange(1, asked.welds + 1)
    weld_and_pull(CHART, 1)  # tables loaded before the clock starts
    (row, pulls), row_s = timed(lambda: weld_and_pull(replace(CHART, current_a=currents), numbers))
    chosen = np.linspace(0, asked.welds - 1, asked.sample).astype(int)
    singles, single_s = timed(
        lambda: [
            weld_and_pull(replace(CHART, current_a=float(currents[at])), int(numbers[at])) for at in chosen
        ]
    )
    if not all(
        same(row, at, one) and same(pulls, at, pull) for at, (one, pull) in zip(chosen, singles, strict=True)
    ):
        sys.exit("the same weld gave two outcomes")
    each_us, one_us = 1e6 * row_s / asked.welds, 1e6 * single_s / asked.sample
    print(f"{asked.welds} welds and pulls in one run: {row_s:.2f} s, {each_us:.1f} us each")
    print(f"one after the other: {one_us:.0f} us each, {one_us / each_us:.0f} times as long")
    print(f"100,000 welds: {each_us / 10:.2f} s, target {TARGET_S:g} s")
    typed = a_log()
    logs, read_s = timed(lambda: [bench.read_log(typed) for _ in range(2000)])
    _, judge_s = timed(
        lambda: bench.judge_logs(logs, [JOB] * len(logs), [b"%d" % index for index in range(len(logs))])
    )
    print(f"{len(logs)} logs of four welds: read in {read_s:.2f} s, judged in {judge_s:.2f} s,")
    print(f"    {len(logs) / (read_s + judge_s):.0f} logs a second")


if __name__ == "__main__":
    main()
