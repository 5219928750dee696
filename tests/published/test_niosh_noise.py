"""NIOSH recommended exposure limit for noise: time to reach the full dose. Table read."""

import pytest

from secondplate.cautions import noise_time_h

SOURCE = "niosh_noise"


@pytest.mark.parametrize(("level_dba", "hours"), [(85, 8), (88, 4), (91, 2), (94, 1), (97, 0.5), (100, 0.25)])
def test_time_to_the_full_dose(level_dba, hours):
    """Each time of the table comes out exactly."""
    assert noise_time_h(level_dba, rule="recommended limit") == pytest.approx(hours, rel=1e-12)
