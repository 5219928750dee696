"""Prints how long the layout of fasteners takes by flange; run it by hand, it judges nothing.

Processor time, best of three, on random flanges with old sites; the last line compares the solver with
trying every pair of marks on the same small flanges.
"""

import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "workbook")]
COUNT, SMALL = 300, 30


def milliseconds(work, cases):
    """Return the processor time of each case, best of three."""
    best = [float("inf")] * len(cases)
    for _ in range(3):
        for number, case in enumerate(cases):
            start = time.process_time()
            work(*case)
            best[number] = min(best[number], 1000 * (time.process_time() - start))
    return best


def main():
    """Print the times of placed and refused layouts, and the ratio to trying every pair."""
    import numpy as np

    from secondplate.fastener_layout import hole_rules, most_fasteners, place_fasteners
    from tests.library.test_fastener_layout import both, compatible, most_by_search, random_flange

    rng = np.random.default_rng(1)
    cases = [
        (*random_flange(rng, longest=1000, widest=60, sites=25), int(rng.integers(1, 25)))
        for _ in range(COUNT)
    ]
    refused = []

    def place(flange, sites, count):
        try:
            place_fasteners(flange, fasteners=count, sites=sites, rules=both(5.0))
        except ValueError:
            refused.append(flange)

    times = milliseconds(place, cases)
    print(f"{COUNT} flanges up to 1000 x 60 mm with up to 24 old sites, {len(refused) // 3} refused:")
    print(
        f"    {np.mean(times):.2f} ms a flange in the mean, {np.percentile(times, 99):.1f} ms in 99 of 100,"
    )
    print(f"    {max(times):.1f} ms the slowest")
    rules = hole_rules(3.4, level="minimum")
    small = [random_flange(rng, longest=36, widest=18, sites=4) for _ in range(SMALL)]
    solver = sum(milliseconds(lambda flange, sites: most_fasteners(flange, sites=sites, rules=rules), small))
    search = sum(milliseconds(lambda flange, sites: most_by_search(compatible(flange, sites, rules)), small))
    print(f"{SMALL} small flanges: all marks, pairs and triples take {search / solver:.0f} times as long")


if __name__ == "__main__":
    main()
