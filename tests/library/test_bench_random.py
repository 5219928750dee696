"""Draws of the bench: the same everywhere, spread evenly, triangular where asked."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from secondplate.bench_random import triangular, uniform

MANY = np.arange(20_000)
PINNED = {
    ("current", 0): 0.7232362980689852,
    ("current", 1): 0.17737422364600952,
    ("tilt scatter", 2): 0.171425554290917,
    ("web", 123456789): 0.6350787901640218,
}


def test_pinned_draws():
    """Four draws that must never change: they decide what learners saw."""
    found = [uniform(b"a day at the shop", name, number) for name, number in PINNED]
    assert found == list(PINNED.values())


def test_many_and_one_are_the_same():
    """A draw does not know with how many others it is asked for, nor in what order."""
    column = uniform(b"seed", "current", MANY[::-1])[::-1]
    assert uniform(b"seed", "current", 77) == column[77]
    each = uniform([b"seed"] * 3, "current", np.array([1, 2, 3]))
    np.testing.assert_array_equal(each, column[1:4])


def test_draws_are_even():
    """Twenty thousand draws follow the even distribution; so do pairs of neighbours, names and seeds."""
    one, other = uniform(b"seed", "current", MANY), uniform(b"seed", "voltage", MANY)
    third = uniform(b"seeds", "current", MANY)
    assert np.all((one >= 0) & (one < 1))
    assert stats.kstest(one, "uniform").pvalue > 1e-3
    for with_it in (one[1:], other[:-1], third[:-1]):
        assert abs(np.corrcoef(one[:-1], with_it)[0, 1]) < 0.03  # four standard errors of 20,000
    assert len(np.unique(one)) == len(one)


@given(st.floats(-5, 5), st.floats(0, 3), st.floats(0.01, 3), st.floats(0, 1))
def test_triangular_against_the_reference_library(low, rise, fall, share):
    """The inverse agrees with that of scipy.stats."""
    width = rise + fall
    expected = stats.triang.ppf(share, rise / width, loc=low, scale=width)
    found = triangular(low, low + rise, low + width, share)
    assert found == pytest.approx(expected, rel=1e-9, abs=1e-7)  # root of a difference near the ends


def test_triangular_of_no_width():
    """A band of one value gives it."""
    assert triangular(2.0, 2.0, 2.0, 0.3) == 2.0


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: uniform("text", "current", 1),
            "seed must be bytes, at least one, or a list of such, got 'text'",
        ),
        (lambda: uniform(b"", "current", 1), "seed must be bytes, at least one, or a list of such, got b''"),
        (lambda: uniform(b"a", "current", -1), "number must be between 0 and 9.0072e[+]15, got -1"),
        (lambda: triangular(1, 2, 3, 2), "share must be between 0 and 1, got 2"),
        (lambda: triangular(3, 2, 1, 0.5), "band must rise from low to best to high, got 3.0, 2.0, 1.0"),
    ],
)
def test_refusals(call, sentence):
    """Each bad seed, number and share is refused in one sentence."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        call()
