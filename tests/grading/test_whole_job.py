"""The last job of page 4 is put together from what the same learner got on the pages before."""

from collections import Counter

import numpy as np
import pytest

from grading.exercises.removal.force import PULL_FORCE
from grading.exercises.rivet_anatomy.reading import READ_SECTION, distances
from grading.exercises.second_plate import one_job
from grading.exercises.second_plate.whole_job import WHOLE_JOB
from grading.exercises.stud_welding.heat_reach import HEAT_REACH, peaks_c
from grading.keys import row_keys
from grading.variants import fill, scenario, table, words
from secondplate.fastener_layout import Flange, OldSite, hole_rules, layout_faults, place_fasteners

LEARNERS = [
    {"course_key": "job", "learner": f"learner {number}", "round_number": 1 + number % 3}
    for number in range(120)
]
JOBS = [scenario(WHOLE_JOB, **who) for who in LEARNERS]
KEYS = row_keys(WHOLE_JOB, JOBS)


def of(exercise):
    """Return what the learners got in an exercise of a page before."""
    return [scenario(exercise, **who) for who in LEARNERS]


def test_weld_is_that_of_page_one():
    """Setting and temperature of the plate are those of the learner's exercise on where the heat goes."""
    before = of(HEAT_REACH)
    assert [job["setting"] for job in JOBS] == [numbers["setting"] for numbers in before]
    for job in JOBS[:10]:
        shown = words(WHOLE_JOB, job)
        assert shown["under"] == round(peaks_c(job["setting"])["second_plate"])


def test_plates_are_as_thick_as_on_page_two():
    """The second plate is as thick as the one that the learner read the section of."""
    plates_mm = distances(table(of(READ_SECTION)))["plate"]
    # abs: the job shows tenths of a millimetre, and plates of sections come in tenths
    assert [job["second_mm"] for job in JOBS] == pytest.approx(plates_mm.tolist(), abs=1e-9)


def test_rivet_is_that_of_page_three():
    """The plan is a tenth above the higher of both high ends of the pull that the learner worked out."""
    before = of(PULL_FORCE)
    first = [key["first_peak"].high for key in row_keys(PULL_FORCE, before)]
    for job, numbers, key, high_n in zip(JOBS, before, KEYS, first, strict=True):
        assert {name: job[name] for name in one_job.RIVET_NAMES} == {
            name: numbers[name] for name in one_job.RIVET_NAMES
        }
        opening_n = float(fill("{opening}", words(PULL_FORCE, numbers)).split()[3])
        # rel: the opening is shown to ten newtons
        assert key["pull"].value == pytest.approx(1.1 * max(high_n, opening_n), rel=5e-3)


def test_plate_is_the_one_that_the_rivet_left():
    """The cup is as deep as the tail had gone in, and metal is left under it."""
    for job, key in zip(JOBS, KEYS, strict=True):
        assert abs(job["cup_mm"] - job["penetration_mm"]) < 0.051
        left_mm = job["second_mm"] + job["rise_mm"] - job["cup_mm"]
        assert key["left"].value == pytest.approx(left_mm, abs=1e-9)  # arithmetic only
        room_mm = left_mm - job["percent"] / 100 * job["second_mm"]
        guard_mm = 1.645 * one_job.UNCERTAINTY_MM
        expected = "again" if abs(room_mm) < guard_mm else "leave" if room_mm > 0 else "backing"
        assert key["verdict"].right == expected


def test_room_for_the_new_rivets_is_real():
    """New rivets that fit can be laid out clear of the old sites by every rule; the others cannot."""
    for job, key in zip(JOBS[:40], KEYS, strict=False):
        old = range(job["old_rivets"])
        flange = Flange(
            flange_length_mm=one_job.OLD_PITCH_MM * len(old) + 20,
            flange_width_mm=25,
            thickness_mm=min(job["top_mm"], job["second_mm"]),
            root_clearance_mm=9,
        )
        sites = [OldSite(x_mm=30 + 40 * place, y_mm=13, affected_diameter_mm=7) for place in old]
        rules = hole_rules(5.0, level="minimum")
        asked = {"fasteners": int(key["count"].value), "sites": sites, "rules": (rules,)}
        if key["fits"].right == "fits":
            layout = place_fasteners(flange, **asked)
            assert not layout_faults(flange, sites=sites, rules=rules, x_mm=layout.x_mm, y_mm=layout.y_mm)
        else:
            with pytest.raises(ValueError, match="number of fasteners must be at most"):
                place_fasteners(flange, **asked)


def test_no_answer_is_usual():
    """Each choice has at least two answers that many learners get, so nobody gains by copying."""
    for part in ("warm", "stud", "record", "verdict", "fits", "length"):
        shares = Counter(key[part].right for key in KEYS)
        assert max(shares.values()) < 0.8 * len(KEYS), (part, shares)
        assert len(shares) >= 2


def test_count_is_the_least_that_bears_as_much():
    """One rivet fewer bears less than the old ones did, this many bear as much."""
    for job, key in zip(JOBS, KEYS, strict=True):
        new_n = one_job.new_strength_n(job)
        asked_n, count = job["old_rivets"] * job["old_n"], key["count"].value
        assert (count - 1) * new_n < asked_n <= count * new_n


def test_heat_is_volts_amperes_seconds_and_a_share():
    """The heat of the head is worked out here again from the figures of the prompt."""
    for job, key in zip(JOBS, KEYS, strict=True):
        shown = words(WHOLE_JOB, job)
        volts, amperes, milliseconds, percent = (
            float(shown[name]) for name in ("voltage", "current", "time", "share")
        )
        heat_j = volts * amperes * milliseconds / 1000 * percent / 100
        assert key["heat"].value == pytest.approx(heat_j, rel=1e-9)  # the prompt shows all digits
    assert np.unique([key["heat"].value for key in KEYS]).size == 5
