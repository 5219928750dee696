"""Standard uncertainty of one input: limiting cases, and the moments of the shapes by integration."""

import numpy as np
import pytest
from scipy import stats

from secondplate import measuring_inputs as inputs

DISTRIBUTIONS = {
    "rectangle": stats.uniform(-1, 2),
    "triangle": stats.triang(0.5, -1, 2),
    "arcsine": stats.arcsine(-1, 2),
}


@pytest.mark.parametrize("shape", inputs.SHAPES)
def test_shapes_are_standard_deviations(shape):
    """The divisor of each shape is the standard deviation of that distribution over a half width of 1."""
    assert inputs.limits_uncertainty(half_width=1, shape=shape) == pytest.approx(
        DISTRIBUTIONS[shape].std(),
        rel=1e-9,  # integration of the other library
    )


def test_resolution_is_a_rectangle_of_half_a_step():
    """A step is a rectangle of half a step to either side."""
    steps = np.array([0.001, 0.01, 1.0])
    assert inputs.resolution_uncertainty(steps) == pytest.approx(
        inputs.limits_uncertainty(half_width=steps / 2),
        rel=1e-12,  # arithmetic only
    )


def test_mean_of_more_readings_is_surer():
    """Four times the readings halve the uncertainty of the mean; a column gives a column."""
    found = inputs.repeated_uncertainty(standard_deviation=0.01, readings_count=np.array([1, 4, 16]))
    assert found == pytest.approx([0.01, 0.005, 0.0025], rel=1e-12)  # arithmetic only


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: inputs.repeated_uncertainty(standard_deviation=-1, readings_count=3),
            "standard deviation must be at least 0, got -1",
        ),
        (
            lambda: inputs.repeated_uncertainty(standard_deviation=1, readings_count=0),
            "number of readings must be at least 1, got 0",
        ),
        (
            lambda: inputs.repeated_uncertainty(standard_deviation=1, readings_count=2.5),
            "number of readings must be a whole number, got 2.5",
        ),
        (lambda: inputs.limits_uncertainty(half_width=1, shape="bell"), "shape must be one of rectangle, "),
        (lambda: inputs.resolution_uncertainty(-0.01), "step of the display must be at least 0, got -0.01"),
        (
            lambda: inputs.certificate_uncertainty(expanded_uncertainty=1, coverage_factor=0),
            "coverage factor must be above 0, got 0",
        ),
        (lambda: inputs.degrees_from_doubt(2), "doubt on the uncertainty must be between 1e-06 and 1, got 2"),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What makes no sense is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
