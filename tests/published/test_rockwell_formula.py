"""Formula of Vickers from Rockwell C hardness in an open source. Read."""

import pytest

from secondplate.hardness import vickers_from_rockwell_hv

SOURCE = "rockwell_formula"


def test_printed_value():
    """50 HRC is 513 HV."""
    assert vickers_from_rockwell_hv(50) == pytest.approx(513, rel=1e-3)  # three printed figures
