"""EN 1999-1-1 Eurocode 9, clauses 6.2.3 and 8.5, Tables 8.2 and 8.5.

The tables are from memory; their form was read in EN 1993-1-8 Table 3.4. The results were worked out by hand
from those forms (computed).
"""

import pytest

from secondplate import eurocode9 as ec9

SOURCE = "en_1999_1_1"
# Worked out to one decimal.
TENTH = 0.06


def bearing(strength, thickness, end, edge, *, single_row=False):
    """Give the bearing of a 4.8 mm fastener in a 4.9 mm hole at an end."""
    return ec9.bearing_n(
        thickness,
        diameter_mm=4.8,
        tensile_strength_mpa=strength,
        along_factor=ec9.end_factor(end, hole_diameter_mm=4.9),
        across_factor=ec9.edge_factor(edge, hole_diameter_mm=4.9),
        single_row=single_row,
    )


@pytest.mark.parametrize(
    ("case", "plain_n", "single_row_n"),
    [
        ((290, 2.0, 10, 8), 3787.8, 3340.8),  # B1
        ((190, 1.5, 10, 8), 1861.2, 1641.6),  # B2
        ((190, 1.5, 14.7, 7.35), 2736.0, 1641.6),  # B3: 3 d0 and 1.5 d0
        ((170, 1.5, 5.88, 5.88), 650.2, 650.2),  # B4: 1.2 d0 both ways, the limit of one row is far off
    ],
)
def test_bearing_at_the_end(case, plain_n, single_row_n):
    """8.5.5 and Table 8.5, from memory: bearing at the end, and the limit of a single lap with one row."""
    assert bearing(*case) == pytest.approx(plain_n, abs=TENTH)
    assert bearing(*case, single_row=True) == pytest.approx(single_row_n, abs=TENTH)


def test_factors_of_the_first_case():
    """Table 8.5, from memory: e1 10 and e2 8 in a 4.9 hole give 0.68027 and 2.5."""
    assert ec9.end_factor(10, hole_diameter_mm=4.9) == pytest.approx(0.68027, abs=6e-6)  # five decimals
    assert ec9.edge_factor(8, hole_diameter_mm=4.9) == 2.5


def test_minimum_distances_cost_three_quarters():
    """From three and one and a half holes to the minimum, k1 alpha_b falls from 2.5 to 0.664."""
    product = ec9.end_factor(5.88, hole_diameter_mm=4.9) * ec9.edge_factor(5.88, hole_diameter_mm=4.9)
    assert product == pytest.approx(0.664, abs=6e-4)  # three decimals
    assert product / 2.5 - 1 == pytest.approx(-0.73, abs=6e-3)  # whole per cents


def test_inner_fastener():
    """B6, Table 8.5, from memory: p1 2.5 d0 and p2 3 d0."""
    along = ec9.inner_factor(12.25, hole_diameter_mm=4.9)
    across = ec9.row_factor(14.7, hole_diameter_mm=4.9)
    assert (along, across) == pytest.approx((0.58333, 2.5), abs=6e-6)  # five decimals
    found = ec9.bearing_n(
        1.5, diameter_mm=4.8, tensile_strength_mpa=190, along_factor=along, across_factor=across
    )
    assert found == pytest.approx(1596.0, abs=TENTH)


def test_net_and_gross_section():
    """N1, 6.2.3, from memory: 40 x 2 with one 4.9 hole of 290/250 MPa."""
    net = ec9.net_area_mm2(40, thickness_mm=2, hole_diameter_mm=4.9, along_mm=0, across_mm=20)
    assert net == pytest.approx(70.2, abs=1e-9)  # exact
    assert ec9.net_section_n(net, tensile_strength_mpa=290) == pytest.approx(14657.8, abs=TENTH)
    assert ec9.gross_section_n(80, proof_stress_mpa=250) == pytest.approx(18181.8, abs=TENTH)


def test_net_area_of_staggered_holes():
    """N2, 6.2.3, from memory: 60 x 2, two 4.9 holes, s 12 and p 15."""
    net = ec9.net_area_mm2(60, thickness_mm=2, hole_diameter_mm=4.9, along_mm=[0, 12], across_mm=[22, 37])
    assert net == pytest.approx(105.2, abs=1e-9)  # exact


def test_block_tearing():
    """BT1, 8.5.2.2, from memory: two in line, concentric and eccentric."""
    sheared, torn = ec9.block_areas_mm2(
        end_distance_mm=10, spacing_mm=15, edge_distance_mm=10, thickness_mm=2, hole_diameter_mm=4.9
    )
    assert (sheared, torn) == pytest.approx((35.3, 15.1), abs=1e-9)  # exact
    block = {"sheared_area_mm2": sheared, "torn_area_mm2": torn, "tensile_strength_mpa": 290}
    assert ec9.block_tearing_n(**block, proof_stress_mpa=250) == pytest.approx(8135.1, abs=TENTH)
    eccentric = ec9.block_tearing_n(**block, proof_stress_mpa=250, eccentric=True)
    assert eccentric == pytest.approx(6383.5, abs=TENTH)


def test_bolts_and_solid_rivet():
    """S1, Table 8.5, from memory: M6 of 8.8 and of stainless 70, and an aluminium rivet of 215 MPa."""
    assert ec9.bolt_shear_n(20.1, tensile_strength_mpa=800) == pytest.approx(7718.4, abs=TENTH)
    stainless = ec9.bolt_shear_n(20.1, tensile_strength_mpa=700, material="stainless")
    assert stainless == pytest.approx(5628.0, abs=TENTH)
    assert ec9.solid_rivet_n(4.9, tensile_strength_mpa=215) == pytest.approx(1946.1, abs=TENTH)


def test_aluminium_bolts_bear_half_in_tension():
    """Table 8.5, from memory: k2 is 0.50 for aluminium bolts."""
    found = ec9.bolt_tension_n(36.6, tensile_strength_mpa=310, material="aluminium", partial_factor=1)
    assert found == pytest.approx(0.50 * 310 * 36.6, rel=1e-12)


@pytest.mark.parametrize(
    ("level", "factors"), [("minimum", (1.2, 1.2, 2.2, 2.4)), ("regular", (2.0, 1.5, 2.5, 3.0))]
)
def test_distances(level, factors):
    """Table 8.2, from memory: e1, e2, p1, p2 in hole diameters."""
    found = [ec9.least_distance_mm(kind, 10, level=level) for kind in ec9.DISTANCES]
    assert found == pytest.approx([10 * factor for factor in factors], rel=1e-12)


def test_greatest_distances():
    """Table 8.2, from memory with medium confidence: 4 t + 40 to edges, min(14 t, 200) between."""
    assert ec9.greatest_distance_mm("end distance", 2.0) == pytest.approx(48, rel=1e-12)
    assert ec9.greatest_distance_mm("row spacing", 2.0) == pytest.approx(28, rel=1e-12)
    assert ec9.greatest_distance_mm("spacing", 20.0) == 200


def test_partial_factors_and_scope():
    """6.1.3 and 8.1.1, seen second-hand and from memory; scope of 2023 as on a publisher's page."""
    names = ("gamma M1", "gamma M2", "gamma Mp", "gamma Mw")
    assert [ec9.EUROCODE9[name] for name in names] == [1.10, 1.25, 1.25, 1.25]
    scope = ("thinnest part", "thinnest welded part", "smallest steel bolt", "smallest aluminium bolt")
    assert [ec9.EUROCODE9[name] for name in scope] == [0.6, 1.5, 5, 8]
    assert (ec9.EUROCODE9["smallest rivet"], ec9.EUROCODE9["smallest rivet of 2007"]) == (3.9, 4.2)
