"""Which mode comes first: decided only where bands part."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.bands import Band
from secondplate.failure_modes import NOT_DECIDED, FailureModes, untried_band


def band(low, best, high):
    """Make a band to try."""
    return Band(low=low, best=best, high=high, basis="trial")


def test_overlap_is_not_decided():
    """Two bands that overlap leave the mode open, both can be first, and a third far above cannot."""
    modes = FailureModes(forces_n={"a": band(1, 2, 4), "b": band(3, 5, 6), "c": band(7, 8, 9)})
    assert modes.likely_mode == NOT_DECIDED
    assert modes.can_be_first == {"a": True, "b": True, "c": False}
    assert modes.margin == pytest.approx(0.6, rel=1e-12)
    assert (modes.strength_n.low, modes.strength_n.best, modes.strength_n.high) == (1, 2, 4)


def test_touching_bands_are_not_decided():
    """A low that equals the least high is still open."""
    assert FailureModes(forces_n={"a": band(1, 2, 3), "b": band(3, 4, 5)}).likely_mode == NOT_DECIDED


def test_one_mode_alone_is_decided_with_full_margin():
    """A single mode is the likely one."""
    modes = FailureModes(forces_n={"a": band(1, 2, 3)})
    assert (modes.likely_mode, modes.margin) == ("a", 1.0)


def test_zero_forces_give_a_margin_and_no_warning():
    """No force at all against some is a full margin; two without force are equal."""
    zero = band(0, 0, 0)
    assert FailureModes(forces_n={"a": zero, "b": band(1, 2, 3)}).margin == 1
    assert FailureModes(forces_n={"a": zero, "b": zero}).margin == 0


def test_columns_of_joints_equal_one_by_one():
    """A column gives what each of its joints gives alone; a plain band spreads over the column."""
    lows = np.array([1.0, 4.0, 9.0])
    column = FailureModes(forces_n={"a": band(lows, lows * 1.2, lows * 1.5), "b": band(6.0, 7.0, 8.0)})
    single = [FailureModes(forces_n={"a": band(x, x * 1.2, x * 1.5), "b": band(6.0, 7.0, 8.0)}) for x in lows]
    assert list(column.likely_mode) == [each.likely_mode for each in single] == ["a", NOT_DECIDED, "b"]
    assert list(column.margin) == [each.margin for each in single]
    assert list(column.strength_n.high) == [each.strength_n.high for each in single]
    assert [list(able) for able in zip(*column.can_be_first.values(), strict=True)] == [
        list(each.can_be_first.values()) for each in single
    ]


def test_no_mode_is_refused():
    """An empty list of modes is refused."""
    with pytest.raises(ValueError, match="failure modes must hold one mode at least, got none"):
        FailureModes(forces_n={})


@given(st.lists(st.floats(min_value=1, max_value=1e5), min_size=1, max_size=4))
def test_untried_band_holds_its_estimates_and_is_a_factor_of_2_wide(forces):
    """Every estimate lies inside, the best is inside, and high over low is 2 at least."""
    found = untried_band(*forces, basis="trial")
    assert all(found.low <= force * (1 + 1e-9) and force <= found.high * (1 + 1e-9) for force in forces)
    assert found.high / found.low >= 2 * (1 - 1e-9)


def test_untried_band_refuses_a_negative_force():
    """A force below 0 is no estimate."""
    with pytest.raises(ValueError, match="force must be at least 0 N, got -1 N"):
        untried_band(-1.0, basis="trial")
