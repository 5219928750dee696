"""Verdicts on sections: what is decidable, and that they move one way with each limit."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.rivet import FAMILIES
from secondplate.section import (
    FAULT_NAMES,
    MEASURES,
    VERDICTS,
    WORDS,
    Limit,
    Measured,
    judge,
    measure,
    random_sections,
    typical_limits,
)

RANK = {word: rank for rank, word in enumerate(VERDICTS)}
COUNT = 10_000


@pytest.fixture(scope="module")
def joints():
    """Ten thousand joints with their measures and faults."""
    sections, faults = random_sections([b"judged %d" % number for number in range(COUNT)])
    return measure(sections), faults


def ranks(words):
    """Turn verdicts into numbers that rise from accept to reject."""
    return np.vectorize(RANK.get)(words)


def only(**values):
    """Make a measured joint that is sound but for some values."""
    sound = dict.fromkeys(MEASURES, 0.0)
    sound |= {"interlock_left_mm": 0.5, "interlock_right_mm": 0.5, "remaining_thickness_mm": 0.5}
    return Measured(**sound | values)


@pytest.mark.parametrize("limit", typical_limits(), ids=lambda limit: f"{limit.measure}-{limit.side}")
@pytest.mark.parametrize("uncertainty", [0.0, 0.03])
def test_verdicts_move_one_way_with_each_limit(joints, limit, uncertainty):
    """A harder limit never makes a verdict better, for any of 10,000 joints."""
    measured, _ = joints
    harder = np.linspace(-0.6, 0.6, 25) * (1 if limit.side == "least" else -1) + limit.limit_mm
    found = [
        ranks(judge(measured, [limit.moved(value)], uncertainty_mm=uncertainty).overall) for value in harder
    ]
    assert np.all(np.diff(found, axis=0) >= 0)
    assert found[0].min() == 0
    assert found[-1].max() == 2


def test_more_uncertainty_decides_less(joints):
    """What is decided with a large uncertainty is decided the same way with a small one."""
    measured, _ = joints
    sharp = ranks(judge(measured, typical_limits(), uncertainty_mm=0.01).overall)
    blunt = ranks(judge(measured, typical_limits(), uncertainty_mm=0.06).overall)
    decided = blunt != RANK["not decidable"]
    assert np.all(sharp[decided] == blunt[decided])
    assert np.sum(sharp == 1) < np.sum(blunt == 1)


def test_every_fault_is_found_and_no_sound_joint_refused(joints):
    """Without measuring uncertainty each sound joint is accepted and each faulty one rejected."""
    measured, faults = joints
    verdicts = judge(measured, typical_limits(), uncertainty_mm=0.0).overall
    assert set(faults) == set(FAULT_NAMES)
    assert set(verdicts[faults == "sound"]) == {"accept"}
    assert set(verdicts[faults != "sound"]) == {"reject"}


@pytest.mark.parametrize(
    ("fault", "measures"),
    [
        ("head proud", {"head_flushness_mm"}),
        ("head sunk", {"head_flushness_mm"}),
        ("uneven flare", {"interlock_mm"}),
        ("small interlock", {"interlock_mm"}),
        ("thin bottom", {"remaining_thickness_mm"}),
        ("buckled shank", {"buckle_mm", "interlock_mm"}),
        ("crack in button", {"crack_mm"}),
        ("wrong die", {"interlock_mm"}),
        ("plates gapped", {"gap_mm"}),
    ],
)
def test_each_fault_shows_where_it_should(joints, fault, measures):
    """A fault breaks its own measures in every joint; unevenness may go with an uneven flare only."""
    measured, faults = joints
    by_measure = judge(measured, typical_limits(), uncertainty_mm=0.0).by_measure
    broken = {name for name, verdict in by_measure.items() if np.all(verdict[faults == fault] == "reject")}
    touched = {name for name, verdict in by_measure.items() if np.any(verdict[faults == fault] == "reject")}
    assert broken - {"unevenness_mm"} == measures
    assert touched - {"unevenness_mm"} == measures
    assert ("unevenness_mm" in touched) == (fault == "uneven flare")


@pytest.mark.parametrize(
    ("interlock", "verdict"),
    [
        (0.46, "accept"),
        (0.45, "accept"),
        (0.449, "not decidable"),
        (0.35, "not decidable"),
        (0.349, "reject"),
    ],
)
def test_edges_of_the_doubtful_range(interlock, verdict):
    """0.4 mm with an uncertainty of 0.05 mm: both edges belong to what they touch from outside the doubt."""
    found = judge(only(interlock_left_mm=interlock), typical_limits(), uncertainty_mm=0.05)
    assert found.by_measure["interlock_mm"] == verdict


def test_one_rejected_measure_rejects_the_joint():
    """A joint is as bad as its worst measure, and each limit keeps its own verdict."""
    found = judge(
        only(head_flushness_mm=0.4, interlock_left_mm=0.41),
        typical_limits(),
        uncertainty_mm={limit.measure: 0.02 for limit in typical_limits()},
    )
    assert found.overall == "reject"
    assert found.by_measure["interlock_mm"] == "not decidable"
    verdicts = {(limit.measure, limit.side): verdict for limit, verdict in found.by_limit}
    assert verdicts["head_flushness_mm", "most"] == "reject"
    assert verdicts["head_flushness_mm", "least"] == "accept"


@given(value=st.floats(-1, 1), limit=st.floats(-1, 1), uncertainty=st.floats(0, 0.5))
def test_least_and_most_are_mirror_images(value, limit, uncertainty):
    """Judging minus the value against minus the limit from the other side is the same."""
    least = Limit(measure="head_flushness_mm", side="least", limit_mm=limit, conditions="trial")
    most = Limit(measure="head_flushness_mm", side="most", limit_mm=-limit, conditions="trial")
    first = judge(only(head_flushness_mm=value), [least], uncertainty_mm=uncertainty)
    second = judge(only(head_flushness_mm=-value), [most], uncertainty_mm=uncertainty)
    assert first.overall == second.overall


@pytest.mark.parametrize("family", [family for family in FAMILIES if family != "polymer"])
def test_each_family_has_all_limits(family):
    """Every metal has a limit for interlock, bottom and both sides of the head."""
    names = [(limit.measure, limit.side) for limit in typical_limits(family)]
    assert len(names) == len(set(names))
    assert {
        ("interlock_mm", "least"),
        ("remaining_thickness_mm", "least"),
        ("head_flushness_mm", "least"),
        ("head_flushness_mm", "most"),
    } <= set(names)


def test_every_measure_has_words():
    """What can be judged has words for the reader."""
    assert {limit.measure for limit in typical_limits()} <= set(WORDS)
    assert set(MEASURES) <= set(WORDS)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: judge(only(), (), uncertainty_mm=0), "limits must hold at least 1 limit, got 0"),
        (
            lambda: judge(only(), typical_limits(), uncertainty_mm=-0.1),
            "uncertainty must be at least 0 mm, got -0.1 mm",
        ),
        (lambda: typical_limits("polymer"), "family of the second plate must be one of aluminium, .*"),
        (
            lambda: Limit(measure="weight", side="least", limit_mm=1, conditions="x"),
            "measure must be one of .*",
        ),
        (
            lambda: Limit(measure="crack_mm", side="under", limit_mm=1, conditions="x"),
            "side of a limit must be one of least, most, got 'under'",
        ),
        (
            lambda: Limit(measure="crack_mm", side="most", limit_mm=np.inf, conditions="x"),
            "limit must be finite, got inf mm",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """Each bad input has its sentence."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        call()
