"""Paper on reversion ageing 2009, seen: paint bake simulated by 20 min at 448 K."""

import pytest

from secondplate.softening_exposure import exposure_index
from secondplate.softening_limits import typical_heat_limits

SOURCE = "paint_bake_2009"


def test_a_bake_is_kept_by_coat_and_metal():
    """A bake at 175 C keeps the limit of the coat and uses almost nothing of the metal's life."""
    limits = typical_heat_limits()
    assert limits["cured coat"].word(448 - 273.15) == "kept"
    used = exposure_index([0, 1200], [448 - 273.15] * 2)
    assert used == pytest.approx(0.0035, rel=0.2)  # extrapolated below the measured points
    assert limits["6xxx-T6 metal"].word(used) == "kept"
