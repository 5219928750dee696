"""Evans, Isaacson and MacDonald 1950, melting at constant flux. Series from memory; table computed apart."""

import numpy as np
import pytest

from secondplate.heat.melting_forms import constant_flux_melting
from secondplate.heat.substances import constant
from tests.heat_bodies import STEEL, column, face_power, heated

SOURCE = "evans_1950"


@pytest.mark.parametrize(("relative_time", "depth"), [(0.05, 0.048843), (0.1, 0.095671)])
def test_series_at_small_times(relative_time, depth):
    """The series meets the computed depth within its first term left out."""
    left_out = 827 / 120 * relative_time**5  # the fifth term, size from memory
    assert constant_flux_melting(relative_time) == pytest.approx(depth, abs=left_out + 6e-7)


PER_CENT = 0.01  # what the heat model promises


@pytest.mark.parametrize(
    ("relative_time", "depth", "face_excess"),
    [
        (0.1, 0.095671, 0.091787),
        (0.2, 0.184548, 0.171725),
        (0.5, 0.424835, 0.371501),
        (1, 0.772444, 0.634497),
        (2, 1.362233, 1.040790),
    ],
)
def test_model_of_melting_at_constant_flux(relative_time, depth, face_excess):
    """The heat model against depths and face temperatures computed with cells that move with the melt."""
    latent_j_kg, flux_w_mm2 = 250e3, 100.0
    latent_j_mm3 = STEEL.density_kg_m3 * latent_j_kg * 1e-9
    length_mm = STEEL.diffusivity_mm2_s * latent_j_mm3 / flux_w_mm2
    time_s = relative_time * length_mm**2 / STEEL.diffusivity_mm2_s
    metal = constant("metal", metal=STEEL, melting_c=1000.0, latent_heat_j_kg=latent_j_kg)
    body = column(np.linspace(0, 1.5 * depth * length_mm, 241), substance=metal)
    power = face_power(body, flux_w_mm2=flux_w_mm2)
    run = heated(body, time_s, power_w=power, start_c=999.995, steps=800)
    assert run.melted_share[:, 0] @ body.grid.heights_mm / length_mm == pytest.approx(depth, rel=PER_CENT)
    face_c = run.final_c[0, 0] + flux_w_mm2 * body.grid.heights_mm[0] / 2 / STEEL.conductivity_w_mmk
    # The front moves from cell to cell, and the face feels each of these jumps.
    assert (face_c - 1000) * 650 / latent_j_kg == pytest.approx(face_excess, rel=2 * PER_CENT)
    assert run.balance < 1e-9
