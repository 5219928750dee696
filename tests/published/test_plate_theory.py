"""Round plates under a load in the middle: formulas from memory, values recomputed, statics summed up."""

import numpy as np
import pytest

from secondplate.bench_site import limit_load_n
from secondplate.pull_tool import top_plate_dish_mm

SOURCE = "plate_theory"
PLATE = {"support_radius_mm": 8, "thickness_mm": 1.5, "elastic_modulus_mpa": 70_000, "poisson_ratio": 0.33}


def test_worked_dish():
    """2 kN on a plate of 1.5 mm inside a ring of 16 mm: 0.11526 clamped, 0.28859 mm supported."""
    dish = top_plate_dish_mm(force_n=2000, **PLATE)
    assert dish.low == pytest.approx(0.11526, rel=1e-3)  # the rounding of the worked value
    assert dish.high == pytest.approx(0.28859, rel=1e-3)


@pytest.mark.parametrize("seed", range(20))
def test_slope_integrated_step_by_step(seed):
    """The slope of a clamped plate by D (1/r (r phi)')' = F/(2 pi r), summed up, gives the same dish."""
    dice = np.random.default_rng(seed)
    radius, thickness, force = dice.uniform(4, 12), dice.uniform(0.8, 3), dice.uniform(500, 5000)
    stiffness = 70_000 * thickness**3 / (12 * (1 - 0.33**2))
    r = np.linspace(0, radius, 4001)[1:]
    # phi = F r / (4 pi D) ln(a / r): it is 0 in the middle and at the clamped edge.
    slope = force * r / (4 * np.pi * stiffness) * np.log(radius / r)
    summed = np.trapezoid(slope, r)
    given = PLATE | {"support_radius_mm": radius, "thickness_mm": thickness}
    dish = top_plate_dish_mm(force_n=force, **given)
    assert dish.low == pytest.approx(summed, rel=1e-5)  # four thousand steps


@pytest.mark.parametrize("seed", range(10))
def test_at_the_limit_load_the_edge_has_no_moment_left(seed):
    """With hoop moment M all over, (r m)' = M - P/(2 pi) (load inside r over P) is 0 at the edge."""
    dice = np.random.default_rng(seed)
    ring, thickness, stress = dice.uniform(4, 12), dice.uniform(0.8, 3), dice.uniform(80, 300)
    middle = dice.uniform(0.1, 1) * ring
    load = limit_load_n(
        load_radius_mm=middle,
        support_radius_mm=ring,
        thickness_mm=thickness,
        proof_stress_mpa=stress,
    )
    moment = stress * thickness**2 / 4
    r = np.linspace(0, ring, 20_001)
    inside = np.minimum(r / middle, 1) ** 2
    edge = np.trapezoid(moment - load.low / (2 * np.pi) * inside, r)
    assert abs(edge) < 1e-6 * moment * ring  # twenty thousand steps
    assert load.high == 2 * load.low
