"""Every refusal follows one grammar: name, must, limit with unit, got."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.checks import (
    require_above,
    require_at_least,
    require_between,
    require_choice,
    require_finite,
    require_single,
    require_truth,
    require_whole,
)

NO_NUMBERS = [None, "600", True, [1, "a"], 1j, float("nan"), float("inf"), -float("inf"), [1.0, float("nan")]]


@pytest.mark.parametrize("value", NO_NUMBERS, ids=repr)
def test_what_is_no_finite_number_is_refused(value):
    """Text, booleans, complex numbers, NaN and infinities are refused by every check."""
    for check in (
        lambda: require_finite("current", value, unit="A"),
        lambda: require_between("current", value, 0, 1000, unit="A"),
        lambda: require_above("current", value, 0, unit="A"),
        lambda: require_at_least("current", value, 0, unit="A"),
    ):
        with pytest.raises(ValueError, match="^current must be (a number in A|finite), got "):
            check()


@given(st.floats(allow_nan=False, allow_infinity=False))
def test_finite_numbers_pass_unchanged(value):
    """A finite number comes back as the same float."""
    assert require_finite("value", value, unit="") == value


@given(st.floats(-100, 100))
def test_between_takes_both_ends_and_nothing_beyond(value):
    """A value passes exactly where it lies from the lower to the upper end."""
    if -10 <= value <= 10:
        assert require_between("value", value, -10, 10, unit="mm") == value
    else:
        with pytest.raises(ValueError, match="^value must be between -10 mm and 10 mm, got .* mm$"):
            require_between("value", value, -10, 10, unit="mm")


def test_above_refuses_the_limit_itself():
    """The limit passes ``at least`` and is refused by ``above``."""
    assert require_at_least("time", 0, 0, unit="ms") == 0
    with pytest.raises(ValueError, match="^time must be above 0 ms, got 0 ms$"):
        require_above("time", 0, 0, unit="ms")


def test_arrays_name_the_first_offender():
    """In an array the first value out of range is named."""
    with pytest.raises(ValueError, match="^lift must be at least 0.5 mm, got 0.2 mm$"):
        require_at_least("lift", np.array([1.0, 0.2, 0.1]), 0.5, unit="mm")


def test_choice_lists_the_valid_names():
    """An unknown name is refused with the list of names."""
    with pytest.raises(ValueError, match="^process must be one of drawn arc, short cycle, got 'spot'$"):
        require_choice("process", "spot", ("drawn arc", "short cycle"))


@pytest.mark.parametrize("value", ["no", "", 0, 1.0, None, [True, 1], float("nan")], ids=repr)
def test_what_is_neither_true_nor_false_is_refused(value):
    """Text would count as true; it is refused, like numbers, None and a mixed list."""
    with pytest.raises(ValueError, match="^skin torn must be true or false, got "):
        require_truth("skin torn", value)


def test_true_and_false_pass_alone_and_in_columns():
    """Booleans of Python and numpy come back, a list of them as an array."""
    assert require_truth("skin torn", False) is False
    assert require_truth("skin torn", np.True_) is True
    assert require_truth("skin torn", [True, False]).tolist() == [True, False]


def test_whole_numbers_pass_and_parts_of_one_are_refused():
    """Counts come back as whole numbers; a half, or one below the limit, is named."""
    assert require_whole("number of holes", 3.0, 1, unit="") == 3
    assert require_whole("number of holes", np.array([1, 2]), 1, unit="").tolist() == [1, 2]
    with pytest.raises(ValueError, match="^number of holes must be a whole number, got 2.5$"):
        require_whole("number of holes", [2, 2.5], 1, unit="")
    with pytest.raises(ValueError, match="^number of holes must be at least 1, got 0$"):
        require_whole("number of holes", 0, 1, unit="")


def test_one_number_passes_and_a_column_is_refused():
    """What takes one number says so, in place of an error from deep inside."""
    assert require_single("thickness", np.float64(1.5), unit="mm") == 1.5
    with pytest.raises(ValueError, match="^thickness must be one number in mm, got 2 of them$"):
        require_single("thickness", [1.0, 2.0], unit="mm")
    with pytest.raises(ValueError, match="^thickness must be a number in mm, got 'thin'$"):
        require_single("thickness", "thin", unit="mm")
