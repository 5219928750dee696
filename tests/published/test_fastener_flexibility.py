"""Flexibility of fasteners, ASTM STP 927 (1986), and a second formula. From memory; results computed."""

import numpy as np
import pytest

from secondplate.fasteners import fastener_loads_n, flexibility_mm_n, simple_flexibility_mm_n

SOURCE = "fastener_flexibility"
PLATES = {"plate_moduli_mpa": (70000, 70000)}


@pytest.mark.parametrize(
    ("diameter_mm", "modulus_mpa", "fastened", "flexibility", "stiffness"),
    [
        (4.8, 70000, "riveted metal", 3.6735e-5, 27222),
        (4.8, 210000, "riveted metal", 2.8572e-5, 35000),
        (6.0, 210000, "bolted metal", 2.5655e-5, 38979),
    ],
)
def test_first_formula(diameter_mm, modulus_mpa, fastened, flexibility, stiffness):
    """1.5 on 2.0 mm aluminium: aluminium rivet, steel rivet and M6 steel bolt."""
    found = flexibility_mm_n(
        (1.5, 2.0), diameter_mm=diameter_mm, fastener_modulus_mpa=modulus_mpa, fastened=fastened, **PLATES
    )
    assert found == pytest.approx(flexibility, rel=2e-5)  # five figures
    assert 1 / found == pytest.approx(stiffness, abs=0.6)  # whole newtons


def test_second_formula():
    """The same 4.8 mm aluminium rivet: 2.8214e-5 mm/N, 35 443 N/mm."""
    found = simple_flexibility_mm_n((1.5, 2.0), diameter_mm=4.8, fastener_modulus_mpa=70000, **PLATES)
    assert found == pytest.approx(2.8214e-5, rel=2e-5)  # five figures
    assert 1 / found == pytest.approx(35443, abs=0.6)  # whole newtons


def test_one_bolt_beside_one_rivet():
    """Elastic: the bolt takes 58.9 % of the load."""
    loads = fastener_loads_n(1000, stiffnesses_n_mm=[27222, 38979])
    np.testing.assert_allclose(loads, [411, 589], atol=0.6)  # three figures


def test_play_breaks_the_share():
    """A bolt with 0.3 mm play takes nothing until the rivet bears 27.2 kN/mm x 0.3 mm = 8.2 kN."""
    stiffness, plays = [27222, 38979], [0.0, 0.3]
    before = fastener_loads_n(8100, stiffnesses_n_mm=stiffness, plays_mm=plays)
    np.testing.assert_allclose(before, [8100, 0], rtol=1e-12)  # arithmetic only
    after = fastener_loads_n(8400, stiffnesses_n_mm=stiffness, plays_mm=plays)
    assert after[1] > 0
    assert after[0] > 8166
