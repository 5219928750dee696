"""A band is three finite numbers in rising order."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.bands import Band

NUMBERS = st.floats(-1e6, 1e6)


def band(low, best, high):
    """Make a band without caring for its basis."""
    return Band(low=low, best=best, high=high, basis="test")


def test_order_is_refused_where_it_does_not_rise():
    """A best value outside its limits is refused."""
    with pytest.raises(ValueError, match="^band must rise from low to best to high, got 1, 3, 2$"):
        band(1, 3, 2)


def test_a_limit_that_is_no_number_is_refused():
    """A limit that is NaN is refused by name."""
    with pytest.raises(ValueError, match="^band high must be finite, got nan$"):
        band(1, 2, float("nan"))


@given(st.tuples(NUMBERS, NUMBERS, NUMBERS).map(sorted), st.tuples(NUMBERS, NUMBERS, NUMBERS).map(sorted))
def test_overlap_is_mutual_and_lies_in_both(first, second):
    """Two bands share the same stretch whichever is asked, and it belongs to both."""
    one, other = band(*first), band(*second)
    shared = one.overlap(other)
    assert shared == other.overlap(one)
    if shared:
        assert all(one.contains(end) and other.contains(end) for end in shared)
    else:
        assert one.high < other.low or other.high < one.low
