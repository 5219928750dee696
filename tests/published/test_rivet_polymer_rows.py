"""116 rows of joints with a polymer top sheet on AA6082, from a public repository; regressions made here.

The rows have no licence and are not stored; checked is that the library gives the regressions, and that they
lie in the range of the rows.
"""

import numpy as np
import pytest

from secondplate.rivet import Die, Rivet
from secondplate.rivet_setting import head_pressure_mpa, polymer_trends

SOURCE = "rivet_polymer_rows"


def test_force_by_volume_ratio():
    """F = 39.2 q^-0.713 kN: at q = 1 it is 39.2 kN, 6.0 % either way."""
    die = Die(die_diameter_mm=9.0, die_depth_mm=0.95)
    volume = np.pi / 4 * (5.3**2 * 4.0 - 2.9 * 3.3**2)
    ratio = np.pi / 4 * 81 * 0.95 / volume
    trend = polymer_trends("setting force", Rivet(rivet_length_mm=4.0), die)[0]
    assert trend.band.best == pytest.approx(39200 * ratio**-0.713, rel=1e-12)  # same formula by hand
    assert trend.band.high / trend.band.best == pytest.approx(1.06, rel=1e-12)


def test_other_regressions_by_hand():
    """L 4.5, bore 3.3, die 8.5 x 0.9 mm: worked by hand from the printed coefficients."""
    rivet, die = Rivet(rivet_length_mm=4.5), Die(die_diameter_mm=8.5, die_depth_mm=0.9)
    force = polymer_trends("setting force", rivet, die)[1].band.best
    by_hand = 150.24 + 28.7055 - 46.4937 - 36.958 - 45.675  # kN
    assert force == pytest.approx(1000 * by_hand, rel=1e-9)  # rounding
    bottom = [trend.band.best for trend in polymer_trends("remaining bottom thickness", rivet, die)]
    assert bottom == pytest.approx([0.9557, 0.9085], abs=1e-4)
    interlock = [trend.band.best for trend in polymer_trends("interlock", rivet, die)]
    assert interlock == pytest.approx([0.2459, 0.2289], abs=1e-4)


def test_values_lie_in_the_range_of_the_rows():
    """Interlock of the rows: 0.07 to 0.44 mm; force 31 to 60 kN; the middle of the range falls inside."""
    rivet, die = Rivet(rivet_length_mm=4.5), Die(die_diameter_mm=8.77, die_depth_mm=0.87)
    assert all(0.07 <= trend.band.best <= 0.44 for trend in polymer_trends("interlock", rivet, die))
    assert all(31e3 <= trend.band.best <= 60e3 for trend in polymer_trends("setting force", rivet, die))


def test_interlock_is_bought_with_bottom():
    """f = 0.506 - 0.346 t_min, mean error 0.045 mm: both linear regressions together follow it."""
    die = Die(die_diameter_mm=8.77, die_depth_mm=0.87)
    for length in (4.2, 4.5, 4.8):
        rivet = Rivet(rivet_length_mm=length)
        bottom = polymer_trends("remaining bottom thickness", rivet, die)[0].band.best
        interlock = polymer_trends("interlock", rivet, die)[0].band.best
        assert interlock == pytest.approx(0.506 - 0.346 * bottom, abs=2 * 0.045)  # twice the mean error


def test_pressure_on_the_head():
    """938 MPa with a scatter of 151 MPa at the peak, head 7.75 mm: the forces of 37 to 51 kN."""
    low, high = (head_pressure_mpa(force_n=force, head_diameter_mm=7.75) for force in (37_120, 51_370))
    assert low == pytest.approx(938 - 151, rel=1e-3)  # forces rounded to 10 N
    assert high == pytest.approx(938 + 151, rel=1e-3)
