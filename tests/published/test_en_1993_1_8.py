"""EN 1993-1-8 Eurocode 3, joints, Table 3.4. Read in a stored copy; results worked out from it (computed)."""

import numpy as np
import pytest

from secondplate import eurocode9 as ec9

SOURCE = "en_1993_1_8"


def test_punching():
    """P1: d_m 9.5, t 1.5, f_u 190 gives 4082.8 N."""
    found = ec9.punching_n(1.5, head_diameter_mm=9.5, tensile_strength_mpa=190)
    assert found == pytest.approx(4082.8, abs=0.06)  # one decimal


@pytest.mark.parametrize(("form", "share"), [("oversized", 0.8), ("slotted across", 0.6)])
def test_wide_holes(form, share):
    """Footnote: 0.8 for oversized holes, 0.6 for slots square to the load."""
    plate = {"diameter_mm": 4.8, "tensile_strength_mpa": 190, "along_factor": 0.5, "across_factor": 2.5}
    ratio = ec9.bearing_n(1.5, hole_form=form, **plate) / ec9.bearing_n(1.5, **plate)
    assert ratio == pytest.approx(share, rel=1e-12)


@pytest.mark.parametrize(("material", "factor"), [("steel", 0.9), ("steel countersunk", 0.63)])
def test_tension_of_bolts(material, factor):
    """k2 f_ub A_s/gamma_M2 with k2 0.9, or 0.63 countersunk."""
    found = ec9.bolt_tension_n(84.3, tensile_strength_mpa=800, material=material)
    assert found == pytest.approx(factor * 800 * 84.3 / 1.25, rel=1e-12)


def test_shear_and_tension_together():
    """F_v/F_v,Rd + F_t/(1.4 F_t,Rd): full tension alone uses 1/1.4."""
    found = ec9.shear_and_tension_use(
        shear_load_n=np.array([1000.0, 0.0, 500.0]),
        shear_strength_n=1000,
        tension_load_n=np.array([0.0, 1700.0, 1190.0]),
        tension_strength_n=1700,
    )
    np.testing.assert_allclose(found, [1.0, 1 / 1.4, 1.0], rtol=1e-12)  # arithmetic only


def test_newer_edge_form_is_the_lesser_of_both():
    """Corrected version: k1 is the lesser of edge and row; here the rows are close and govern."""
    edge, row = ec9.edge_factor(7.35, hole_diameter_mm=4.9), ec9.row_factor(12.0, hole_diameter_mm=4.9)
    assert (edge, row) == pytest.approx((2.5, 1.4 * 12 / 4.9 - 1.7), rel=1e-12)


@pytest.mark.parametrize(("size", "area_mm2"), [("M6", 20.1), ("M8", 36.6), ("M10", 58.0), ("M12", 84.3)])
def test_stress_areas_behind_the_bolts(size, area_mm2):
    """M12 seen, the others from memory: shear of class 8.8 is 0.6 x 800 x A_s."""
    from secondplate.fasteners import bolt

    assert bolt(size).fastener_shear_n / 480 == pytest.approx(area_mm2, abs=0.06)  # one decimal
