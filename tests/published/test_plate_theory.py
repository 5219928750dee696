"""Round plates under a load in the middle: formula from memory, values recomputed, slope summed up."""

import numpy as np
import pytest

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
