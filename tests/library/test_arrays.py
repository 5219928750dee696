"""Numbers in give numbers out, arrays in give arrays out."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from secondplate.arrays import plain, whole_below


def test_single_numbers_become_plain_floats():
    """Whatever holds one number becomes a Python float."""
    for value in (2, np.float64(2), np.array(2), np.int64(2)):
        assert type(plain(value)) is float


def test_arrays_keep_their_shape():
    """Arrays stay arrays of the same shape."""
    assert plain(np.ones((2, 3))).shape == (2, 3)
    assert whole_below(np.array([1.5, 2.999])).tolist() == [1, 2]


@given(st.integers(1, 10_000), st.integers(1, 999))
def test_whole_below_forgives_decimal_arithmetic(number, thousandths):
    """So many equal parts taken from their sum are that many, whatever the last digits do."""
    part = thousandths / 1000
    assert whole_below(number * part / part) == number
    assert whole_below((number + 0.999) * part / part) == number
