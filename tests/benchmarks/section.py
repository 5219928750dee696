"""Prints how long 10,000 joints take to invent, build and measure; run it by hand, it judges nothing.

Processor time, best of three, so that other work on the machine counts little; the ratio compares with the
same work done joint by joint in one run.
"""

import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "workbook")]
COUNT, ALONE = 10_000, 50


def seconds(work):
    """Return the processor time of some work, best of three, and its result."""
    times = []
    for _ in range(3):
        start = time.process_time()
        result = work()
        times.append(time.process_time() - start)
    return min(times), result


def main():
    """Print the times for a column and for single joints."""
    from secondplate import section

    seeds = [b"benchmark %d" % number for number in range(COUNT)]
    invented, (column, _) = seconds(lambda: section.random_sections(seeds))
    built, _ = seconds(lambda: section.build_section(column.parameters))
    measured, found = seconds(lambda: section.measure(column))
    judged, _ = seconds(lambda: section.judge(found, section.typical_limits(), uncertainty_mm=0.02))
    alone, _ = seconds(lambda: [section.measure(section.random_section(seed)[0]) for seed in seeds[:ALONE]])
    print(f"{COUNT} joints invented with their outlines: {invented:.2f} s")
    print(f"    of it built from their parameters:    {built:.2f} s")
    print(f"    measured: {measured:.2f} s, judged: {judged:.3f} s")
    print(f"    invented and measured: {invented + measured:.2f} s")
    ratio = alone / ALONE / ((invented + measured) / COUNT)
    print(f"one joint alone: {1000 * alone / ALONE:.1f} ms, {ratio:.0f} times a row of the column")


if __name__ == "__main__":
    main()
