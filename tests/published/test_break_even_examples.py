"""Break-even of two ways of working, linear and with learning; computed independently."""

import pytest

from secondplate.removal import JobTimes, break_even_rivets, first_row_no_slower

SOURCE = "break_even_examples"
MORE_SET_UP = JobTimes(set_up_min=25, first_min=3.5, learning_rate=0.9)
LESS_SET_UP = JobTimes(set_up_min=6, first_min=7.0, learning_rate=0.95)


def test_linear():
    """Set-up 6 and 25 min, 7.0 and 3.5 min a rivet: 5.4286, so from 6 rivets on."""
    found = break_even_rivets(
        less_set_up_min=6, less_set_up_each_min=7.0, more_set_up_min=25, more_set_up_each_min=3.5
    )
    assert found == pytest.approx(5.4286, abs=1e-4)


def test_with_learning():
    """The same with learning of 90 % and 95 %: times of 5 and 6 rivets, and still from 6 rivets on."""
    assert MORE_SET_UP.row_min([5, 6]) == pytest.approx([40.187, 42.853], abs=1e-3)
    assert LESS_SET_UP.row_min([5, 6]) == pytest.approx([38.635, 44.766], abs=1e-3)
    assert first_row_no_slower(MORE_SET_UP, LESS_SET_UP, longest=50) == 6
