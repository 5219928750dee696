"""Evans, Isaacson and MacDonald 1950, melting at constant flux. Series from memory; table computed apart."""

import pytest

from secondplate.heat.melting_forms import constant_flux_melting

SOURCE = "evans_1950"


@pytest.mark.parametrize(("relative_time", "depth"), [(0.05, 0.048843), (0.1, 0.095671)])
def test_series_at_small_times(relative_time, depth):
    """The series meets the computed depth within its first term left out."""
    left_out = 827 / 120 * relative_time**5  # the fifth term, size from memory
    assert constant_flux_melting(relative_time) == pytest.approx(depth, abs=left_out + 6e-7)
