"""Benchmark tables for hot stamping of 22MnB5 sheet. From memory and unsure."""

import pytest

from secondplate.materials import material

SOURCE = "hot_stamping_22mnb5"
RIVET = material("boron rivet steel")


@pytest.mark.parametrize(
    ("temperature_c", "conductivity_w_mk", "heat_capacity_j_kgk"),
    [(20, 30.7, 444), (100, 31.1, 487), (200, 30.0, 520), (400, 21.7, 561), (1000, 27.6, 603)],
)
def test_table(temperature_c, conductivity_w_mk, heat_capacity_j_kgk):
    """From memory: both columns at the temperatures of the table."""
    assert RIVET.conductivity_w_mk(temperature_c) == pytest.approx(conductivity_w_mk, rel=1e-12)
    assert RIVET.heat_capacity_j_kgk(temperature_c) == pytest.approx(heat_capacity_j_kgk, rel=1e-12)


def test_martensite_is_not_mild_steel():
    """Quenched martensite conducts 31 W/mK at 20 C; the 53 W/mK of the fire formula is for mild steel."""
    mild = material("carbon steel").conductivity_w_mk(20)
    assert mild / RIVET.conductivity_w_mk(20) == pytest.approx(1.74, abs=0.01)
