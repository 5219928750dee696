"""Pages on joints both bonded and riveted. Seen; the numbers are computed."""

import pytest

from secondplate.bonding import rivet_shares, stiff_plate_rivet_share

SOURCE = "hybrid_joining_pages"
LAP = {"rivet_stiffness_n_mm": 14000, "overlap_mm": 25, "width_mm": 25, "adhesive_mm": 0.2}


def test_a_stiff_adhesive_takes_most_of_the_load():
    """25 x 25 mm, G 1000, t_a 0.2: bond 3.125e6 N/mm, the rivet carries 0.45 % (computed)."""
    share = stiff_plate_rivet_share(adhesive_modulus_mpa=1000, **LAP)
    assert 14000 * (1 / share - 1) == pytest.approx(3.125e6, rel=1e-12)
    assert 100 * share == pytest.approx(0.45, abs=6e-3)  # two decimals


def test_a_compliant_adhesive_leaves_the_rivet_something():
    """An adhesive a thousand times softer leaves the rivet most of the load."""
    plates = {"stiffnesses_n_mm": (140000, 140000)}
    stiff, soft = (rivet_shares([0.0], adhesive_modulus_mpa=g, **plates, **LAP)[0] for g in (1000, 1))
    assert stiff < 0.01
    assert soft > 0.5
