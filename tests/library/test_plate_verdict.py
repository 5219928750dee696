"""The verdict on a plate: more damage is never milder, doubt only widens, each verdict is reached."""

from dataclasses import replace

import numpy as np
import pytest

from secondplate import plate_verdict as plates
from secondplate.bands import Band
from secondplate.plate_verdict import PlateFinding, judge_plate

SOUND = PlateFinding(
    least_thickness_mm=0.6,
    required_thickness_mm=0.4,
    thickness_uncertainty_mm=0.0081,
    critical_crack_mm=8.0,
    detectable_mm=3.0,
    flush_needed=False,
)
CASES = 4000


def random_findings(seed=1):
    """Return a column of random findings, some of them sound and some bad in several ways."""
    random = np.random.default_rng(seed)
    high = random.uniform(0.7, 1, CASES)
    hole_mm = np.where(random.uniform(size=CASES) < 0.7, 0, random.uniform(0, 14, CASES))
    return PlateFinding(
        least_thickness_mm=np.where(hole_mm > 0, 0, random.uniform(0.2, 0.8, CASES)),
        required_thickness_mm=random.uniform(0.2, 0.5, CASES),
        thickness_uncertainty_mm=random.uniform(0, 0.03, CASES),
        hole_diameter_mm=hole_mm,
        hole_uncertainty_mm=random.uniform(0, 0.1, CASES),
        crack_length_mm=np.where(random.uniform(size=CASES) < 0.7, 0, random.uniform(0, 12, CASES)),
        crack_uncertainty_mm=random.uniform(0, 0.5, CASES),
        critical_crack_mm=random.uniform(4, 10, CASES),
        detectable_mm=random.uniform(1, 6, CASES),
        button_depth_mm=random.uniform(0, 1, CASES),
        flush_needed=random.uniform(size=CASES) < 0.5,
        press_back_used=random.uniform(0, 1.5, CASES),
        strength_left=Band(low=0.95 * high, best=high, high=high, basis="drawn"),
    )


WORSE = {
    "least_thickness_mm": lambda size: 0.8 * size,
    "required_thickness_mm": lambda size: 1.2 * size,
    "hole_diameter_mm": lambda size: np.where(size > 0, size + 1.5, 0),
    "crack_length_mm": lambda size: size + 1.0,
    "critical_crack_mm": lambda size: 0.7 * size,
    "detectable_mm": lambda size: size + 1.0,
    "button_depth_mm": lambda size: size + 0.2,
    "press_back_used": lambda size: size + 0.3,
    "required_strength_share": lambda size: size + 0.05,
}


@pytest.mark.parametrize("name", WORSE)
def test_more_damage_is_never_milder(name):
    """On 4000 random plates, making one finding worse never lowers the verdict at best or at worst."""
    before = random_findings()
    one = judge_plate(before)
    other = judge_plate(replace(before, **{name: WORSE[name](getattr(before, name))}))
    assert np.all(other.at_best >= one.at_best)
    assert np.all(other.at_worst >= one.at_worst)
    assert np.any((other.at_worst > one.at_worst) | (other.at_best > one.at_best))


@pytest.mark.parametrize("name", ["thickness_uncertainty_mm", "hole_uncertainty_mm", "crack_uncertainty_mm"])
def test_doubt_only_widens(name):
    """A larger uncertainty never raises the verdict at best nor lowers it at worst."""
    before = random_findings()
    one = judge_plate(before)
    other = judge_plate(replace(before, **{name: 3 * getattr(before, name)}))
    assert np.all(other.at_best <= one.at_best)
    assert np.all(other.at_worst >= one.at_worst)


def test_columns_are_single_plates():
    """The verdict on a plate of a column is the verdict on that plate alone."""
    column = random_findings()
    words = judge_plate(column).verdict
    for number in range(40):
        taken = {
            name: value[number] if isinstance(value, np.ndarray) else value
            for name, value in vars(column).items()
        }
        ends = {end: getattr(column.strength_left, end)[number] for end in ("low", "best", "high")}
        alone = judge_plate(PlateFinding(**(taken | {"strength_left": Band(**ends, basis="drawn")})))
        assert alone.verdict == words[number]
        assert bool(alone.reasons()) == bool(judge_plate(column).reasons(number))


@pytest.mark.parametrize(
    ("changes", "verdict", "reason"),
    [
        ({}, "leave and seal", None),
        ({"button_depth_mm": 0.6, "flush_needed": True, "press_back_used": 0.7}, "reform", "stands proud"),
        (
            {"button_depth_mm": 0.6, "flush_needed": True, "press_back_used": 1.2},
            "replace the part",
            "cannot be pressed back",
        ),
        ({"button_depth_mm": 0.6, "press_back_used": 1.2}, "leave and seal", None),
        (
            {"button_depth_mm": 0.6, "flush_needed": True, "press_back_used": None},
            plates.MEASURE_AGAIN,
            "strain of pressing it back is not known",
        ),
        ({"button_depth_mm": 0.6, "press_back_used": None}, "leave and seal", None),
        ({"least_thickness_mm": 0.3}, "add a backing", "thickness left is below"),
        ({"least_thickness_mm": 0.0, "hole_diameter_mm": 7.0}, "add a backing", "hole goes through"),
        ({"least_thickness_mm": 0.0, "hole_diameter_mm": 12.0}, "replace the part", "larger than a backing"),
        ({"crack_length_mm": 2.0}, "add a backing", "crack was found"),
        ({"crack_length_mm": 9.0}, "replace the part", "longer than the plate bears"),
        ({"least_thickness_mm": 0.405}, plates.MEASURE_AGAIN, "cannot be told"),
        ({"detectable_mm": None}, plates.MEASURE_AGAIN, "cannot be ruled out"),
        ({"detectable_mm": 8.0}, plates.MEASURE_AGAIN, "cannot be ruled out"),
        ({"strength_left": Band(low=0.5, best=0.6, high=0.7, basis="x")}, "replace the part", "heat has"),
        ({"strength_left": Band(low=0.8, best=0.9, high=1, basis="x")}, plates.MEASURE_AGAIN, "hardness"),
    ],
)
def test_each_verdict_and_its_first_reason(changes, verdict, reason):
    """Each finding gives its verdict, and the gravest reason stands first."""
    found = judge_plate(replace(SOUND, **changes))
    assert found.verdict == verdict
    assert (found.reasons() == ()) if reason is None else (reason in found.reasons()[0])


def test_a_strain_that_nobody_worked_out_is_no_yes():
    """A finding without the strain of pressing back never says reform."""
    told = {name: value for name, value in vars(SOUND).items() if name != "press_back_used"}
    found = PlateFinding(**(told | {"button_depth_mm": 0.6, "flush_needed": True}))
    assert judge_plate(found).verdict == plates.MEASURE_AGAIN


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"least_thickness_mm": -0.1}, "least thickness must be at least 0 mm, got -0.1 mm"),
        (
            {"least_thickness_mm": np.array([0.0, 0.5]), "hole_diameter_mm": np.array([7.0, 7.0])},
            "least thickness must be 0 mm where a hole goes through, got 0.5 mm",
        ),
        ({"required_thickness_mm": 0}, "required thickness must be above 0 mm, got 0 mm"),
        ({"thickness_uncertainty_mm": -1}, "thickness uncertainty must be at least 0 mm, got -1 mm"),
        ({"crack_length_mm": np.nan}, "crack length must be finite, got nan mm"),
        ({"flush_needed": "no"}, "flush needed must be true or false, got 'no'"),
        ({"strength_left": 0.9}, "strength left must be a Band, got 0.9"),
        ({"required_strength_share": 1.2}, "share of the strength must be between 0 and 1, got 1.2"),
    ],
)
def test_bad_input_is_refused(changes, sentence):
    """What is no finding is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        replace(SOUND, **changes)
