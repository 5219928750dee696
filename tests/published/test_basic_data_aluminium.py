"""Basic physical data of pure aluminium. Read."""

import pytest

from secondplate.materials import material

SOURCE = "basic_data_aluminium"


def test_latent_heat():
    """10.47 kJ/mol at 26.982 g/mol are 388 kJ/kg."""
    assert material("6xxx aluminium").latent_heat_j_kg / 1000 == pytest.approx(10.47 / 0.026982, rel=1e-3)


def test_alloys_melt_below_the_pure_metal():
    """Pure aluminium melts at 660.1 C; no alloy of the table has a higher liquidus."""
    for name in ("6xxx aluminium", "5xxx aluminium"):
        assert material(name).melting_range_c.high < 660.1
