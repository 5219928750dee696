"""Public repository of 712 simulated clinch joints. Data seen; powers fitted on it for this library."""

import pytest

from secondplate.clinch_shape import clinch_axial_ratio
from secondplate.pull_out_forces import collar_crush_n
from secondplate.rivet import Rivet

SOURCE = "clinch_simulations"


@pytest.mark.parametrize(
    ("change", "power"),
    [
        ("interlock_ratio", 0.64),
        ("neck_ratio", 0.24),
        ("diameter_ratio", -0.11),
        ("top_strength_ratio", 0.32),
        ("second_strength_ratio", 0.33),
        ("top_thickness_ratio", 0.22),
        ("second_thickness_ratio", 0.29),
    ],
)
def test_powers(change, power):
    """Each change alone acts by its fitted power."""
    assert clinch_axial_ratio(**{change: 2.0}) == pytest.approx(2**power, rel=1e-12)


def test_interlock_helps_less_than_crush_says():
    """Twice the interlock gives 1.56 times the force in clinches, but more than twice by pure crush.

    So a crush model alone promises too much for large interlocks; the least of several modes tames it.
    """
    rivet = Rivet(rivet_length_mm=5.0)
    once, twice = (
        collar_crush_n(rivet, interlock_mm=interlock, tensile_strength_mpa=215, crush_factor=1.4)
        for interlock in (0.3, 0.6)
    )
    assert clinch_axial_ratio(interlock_ratio=2) == pytest.approx(1.56, abs=5e-3)
    assert twice / once > 2
