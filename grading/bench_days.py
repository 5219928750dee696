"""Days at the virtual bench: each is one rivet and one machine, known by its number and made once.

Exercises draw their day from a finite list, so that a whole class costs no more than the days that occur.
"""

from dataclasses import replace
from functools import lru_cache
from types import MappingProxyType

from grading.exercise import BenchKey
from secondplate.bench import chart_settings, draw_job

DAYS = 250  # two neighbours share a day once in so many pairs


@lru_cache(maxsize=4 * DAYS)
def day(number, machine=None, **changes):
    """Return ``(seed, job)`` of one day; ``changes`` replace what was drawn of the job."""
    seed = f"day {number}".encode()
    return seed, replace(draw_job(seed, machine=machine or None), **changes)


@lru_cache(maxsize=4 * DAYS)
def begin_with(stud_diameter_mm, **changes):
    """Return how a machine stands that was set from the papers for a stud; ``changes`` are what differs."""
    start = vars(replace(chart_settings(stud_diameter_mm=stud_diameter_mm), **changes))
    return MappingProxyType(dict(start))


def bench_key(days, starts):
    """Return the key for days as ``day`` gives them, and how the machine stands on each."""
    days = list(days)
    return BenchKey(seed=[seed for seed, _ in days], job=[job for _, job in days], start=list(starts))
