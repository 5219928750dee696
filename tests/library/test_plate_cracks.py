"""Cracks: the detection curve against a fit of made trials, Bayes by counting, monotone lengths."""

import numpy as np
import pytest
from scipy.optimize import minimize

from secondplate import plate_cracks as cracks
from secondplate.plate_cracks import DetectionCurve


def test_detection_curve_there_and_back():
    """The length found in a share of cases is found with that probability; long cracks are found better."""
    curve, shares = DetectionCurve(), np.array([1.0, 10, 50, 90, 99])
    lengths = curve.length_found_mm(found_percent=shares)
    assert 100 * curve.probability(lengths) == pytest.approx(shares, rel=1e-9)  # logarithm and back
    assert np.all(np.diff(lengths) > 0)
    assert curve.probability(np.array([1e-300, 1e300])).tolist() == [0.0, 1.0]


def test_a_fit_of_made_trials_gives_the_curve_back():
    """Greatest likelihood on 40 000 trials that the curve made gives its 90 per cent length back."""
    random, curve = np.random.default_rng(8), DetectionCurve()
    lengths = random.uniform(0.3, 8, 40_000)
    found = random.uniform(size=lengths.size) < curve.probability(lengths)

    def unlikelihood(constants):
        lines = constants[0] + constants[1] * np.log(lengths)
        return np.sum(np.logaddexp(0, np.where(found, -lines, lines)))

    b0, b1 = minimize(unlikelihood, (0.0, 1.0), method="BFGS", options={"gtol": 1e-3}).x
    assert DetectionCurve(b0=b0, b1=b1).length_found_mm() == pytest.approx(3.593, rel=0.03)  # sampling


def test_crack_left_by_counting():
    """Of a million plates, those that are cracked among the clean ones are the share that Bayes gives."""
    random = np.random.default_rng(3)
    cracked = random.uniform(size=1_000_000) < 0.3
    clean = ~(cracked & (random.uniform(size=cracked.size) < 0.7))
    assert cracks.crack_left_probability(prior=0.3, detection=0.7) == pytest.approx(
        cracked[clean].mean(),
        abs=0.002,  # three times the sampling error
    )


def test_a_test_that_finds_nothing_changes_nothing():
    """Without detection the prior stands; with full detection a clean plate is free of it."""
    priors = np.linspace(0, 0.9, 10)
    assert cracks.crack_left_probability(prior=priors, detection=0) == pytest.approx(priors, abs=1e-15)
    assert np.all(cracks.crack_left_probability(prior=priors, detection=1) == 0)


def test_critical_length_is_the_shorter_and_falls_with_stress():
    """The critical length is never above either of its two, and falls as the stress rises."""
    stress = np.linspace(10, 300, 60)
    found = cracks.critical_length_mm(
        stress_mpa=stress, proof_stress_mpa=240, width_mm=25, toughness_mpa_m05=29
    )
    running = cracks.fracture_length_mm(stress_mpa=stress, toughness_mpa_m05=29)
    yielding = cracks.yielding_length_mm(stress_mpa=stress, proof_stress_mpa=240, width_mm=25)
    assert np.array_equal(found, np.minimum(running, yielding))
    assert np.all(np.diff(found) <= 0)
    assert found[-1] == 0.0


def test_stress_intensity_at_the_critical_length():
    """At the length at which a crack runs its stress intensity is the toughness."""
    whole = cracks.fracture_length_mm(stress_mpa=120, toughness_mpa_m05=29, shape_factor=1.12)
    assert 1.12 * 120 * np.sqrt(np.pi * whole / 2 / 1000) == pytest.approx(29, rel=1e-12)  # arithmetic


def test_words_of_a_clean_test_never_say_no_crack():
    """Whatever the lengths, the words say that shorter cracks may be there, and judge the gap rightly."""
    enough, little, nothing = (
        cracks.clean_test_words(detectable_mm=5, critical_mm=critical) for critical in (20, 8, 5)
    )
    assert all("shorter ones may be there" in words for words in (enough, little, nothing))
    assert "this is enough" in enough
    assert "little in hand" in little
    assert "decides nothing" in nothing


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: DetectionCurve(b1=0), "slope of the detection curve must be above 0, got 0"),
        (lambda: DetectionCurve().probability(0), "crack length must be above 0 mm, got 0 mm"),
        (
            lambda: cracks.crack_left_probability(prior=1.2, detection=0.5),
            "probability before the test must be between 0 and 1, got 1.2",
        ),
        (
            lambda: cracks.crack_left_probability(prior=1, detection=1),
            "probability of a clean test must be above 0, got 0",
        ),
        (
            lambda: cracks.detectable_length_mm(thickness_mm=[1, 2]),
            "thickness must be one number in mm, got 2 of them",
        ),
        (lambda: cracks.detectable_length_mm(thickness_mm=0), "thickness must be above 0 mm, got 0 mm"),
        (
            lambda: cracks.detectable_length_mm(thickness_mm=3, method="eddy current"),
            "thickness must be at most 1.27 mm for eddy current at open surface, got 3 mm",
        ),
        (
            lambda: cracks.fracture_length_mm(stress_mpa=0, toughness_mpa_m05=29),
            "stress must be above 0 MPa, got 0 MPa",
        ),
        (
            lambda: cracks.clean_test_words(detectable_mm=0, critical_mm=5),
            "detectable length must be above 0 mm, got 0 mm",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What is no crack is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
