"""EN 1011-2 Recommendations for welding, arc welding of ferritic steels. Formulas from memory."""

import pytest

from secondplate.heat.cooling_times import standard_thick_cooling_time_s, standard_thin_cooling_time_s

SOURCE = "en_1011_2"


def test_cooling_times():
    """Annex D.5 worked apart: 0.6 kJ/mm from 20 C, thick and 3 mm."""
    assert standard_thick_cooling_time_s(0.6) == pytest.approx(3.173077, abs=6e-7)  # six decimals
    assert standard_thin_cooling_time_s(0.6, thickness_mm=3) == pytest.approx(45.454265, abs=6e-7)
