"""Days of a whole row at the virtual bench: each known by its number and made once.

Exercises draw their day from a finite list, so that a whole class costs no more than the days that occur.
"""

from dataclasses import replace
from functools import lru_cache
from types import MappingProxyType

from grading.exercise import RowRunKey
from grading.variants import Draw
from secondplate.bench import (
    EARTHS,
    RowDay,
    chart_settings,
    draw_job,
    draw_site,
    stud_pool,
    usual_row_times,
)

DAYS = 30  # two neighbours share a day once in so many pairs
STUDS = 1500  # of each set-up that rows are drawn from
SECOND_PLATE_MM = 2.0
_STUDS_SEED = b"studs of the rows"
# A machine that does what it shows, on a rivet that asks for an ordinary pull.
TRUE_JOB = {"current_share": 1.0, "voltage_v": 30.0, "rivet_hold_n": 2100.0, "web_mm": 1.12}
# What is wrong with a wrong set-up; each fails most pulls, none fails all.
FAULTS = MappingProxyType(
    {
        "current": {"current_a": 370.0},
        "tilt": {"tilt_deg": 6.6},
        "earth": {"earth": EARTHS[1], "tilt_deg": 2.5},
        "oil": {"head": "oily", "tilt_deg": 1.8},
    }
)

_NUMBERS = {}  # of the days that were made


@lru_cache(maxsize=1)
def row_site():
    """Return the joint and the puller of every row."""
    return draw_site(_STUDS_SEED, second_plate_mm=SECOND_PLATE_MM)


@lru_cache(maxsize=len(FAULTS) + 1)
def _pool(fault):
    """Return studs pulled with one fault, or with none."""
    settings = replace(chart_settings(stud_diameter_mm=6), **(FAULTS[fault] if fault else {}))
    job = replace(draw_job(_STUDS_SEED), **TRUE_JOB)
    return stud_pool(settings, job, row_site(), seed=_STUDS_SEED, studs=STUDS)


@lru_cache(maxsize=4 * DAYS)
def row_day(number):
    """Return ``(seed, day, fault)`` of one row: a ``RowDay`` and what is wrong when its set-up is wrong."""
    seed = f"row day {number}".encode()
    draw = Draw(seed)
    fault = draw.pick("fault", tuple(FAULTS))
    day = RowDay(
        rivets=draw.whole("rivets", 14, 28),
        right=_pool(""),
        wrong=_pool(fault),
        wrong_probability=draw.pick("wrong", (0.25, 0.3, 0.35, 0.4)),
        wrong_after_reset_probability=draw.pick("after", (0.05, 0.1)),
        drift_probability=draw.pick("drift", (0.002, 0.005, 0.01, 0.02)),
        test_delay_min=draw.pick("delay", (3.0, 4.0, 5.0)),
        reset_min=draw.pick("reset", (12.0, 15.0, 20.0)),
        damage_min=draw.pick("damage", (40.0, 60.0, 90.0)),
        **usual_row_times(SECOND_PLATE_MM),
    )
    _NUMBERS[day] = number
    return seed, day, fault


def number_of(day):
    """Return the number of a day of the list, or None where it is another one."""
    return _NUMBERS.get(day)


def row_run_key(numbers):
    """Return the key for days by their numbers."""
    days = [row_day(int(number)) for number in numbers]
    return RowRunKey(seed=[seed for seed, _, _ in days], day=[day for _, day, _ in days])
