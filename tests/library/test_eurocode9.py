"""Eurocode 9 for joints: limits of the forms, net areas against shortest paths, spread of codes, refusals."""

import numpy as np
import pytest
from scipy.sparse.csgraph import shortest_path

from secondplate import eurocode9 as ec9

D0 = 4.9
SPACING = "EN 1999-1-1 Table 8.2"
SHEET = {
    "diameter_mm": 4.8,
    "hole_diameter_mm": D0,
    "tensile_strength_mpa": 190,
    "end_distance_mm": 10,
    "edge_distance_mm": 8,
}


def net_area_by_paths(width, thickness, hole, along, across):
    """Find the least net area as the shortest way from edge to edge, each piece as wide as its net width."""
    count = len(along)
    ways = np.full((count + 2, count + 2), np.inf)
    ways[0, -1] = width
    ways[0, 1:-1], ways[1:-1, -1] = across - hole / 2, width - across - hole / 2
    for i in range(count):
        for j in range(count):
            p = across[j] - across[i]
            if p > 0:
                ways[i + 1, j + 1] = p - hole + (along[j] - along[i]) ** 2 / (4 * p)
    # The way goes up only; a piece can be negative where holes overlap in the view along the load.
    return thickness * shortest_path(ways, method="BF", indices=0)[-1]


def test_net_area_is_the_shortest_way_across():
    """Sixty random hole patterns: the least net area is the shortest way from edge to edge."""
    rng = np.random.default_rng(31)
    for _ in range(60):
        width, thickness, hole, count = (
            rng.uniform(60, 120),
            rng.uniform(0.8, 3),
            rng.uniform(3, 6),
            rng.integers(1, 9),
        )
        along, across = rng.uniform(0, 60, count), rng.uniform(8, width - 8, count)
        expected = net_area_by_paths(width, thickness, hole, along, across)
        found = ec9.net_area_mm2(
            width, thickness_mm=thickness, hole_diameter_mm=hole, along_mm=along, across_mm=across
        )
        assert found == pytest.approx(expected, rel=1e-9)  # sums in another order


def test_a_far_stagger_costs_one_hole_only():
    """Holes far apart along the load weaken like one; holes in one line across weaken like all."""
    strip = {"thickness_mm": 2, "hole_diameter_mm": D0}
    far = ec9.net_area_mm2(60, along_mm=[0, 100], across_mm=[20, 40], **strip)
    near = ec9.net_area_mm2(60, along_mm=[0, 0], across_mm=[20, 40], **strip)
    assert (far, near) == pytest.approx((2 * (60 - D0), 2 * (60 - 2 * D0)), rel=1e-12)


def test_factors_rise_to_their_limits():
    """alpha_b and k1 rise with the distance and stop at 1 and 2.5."""
    distances = np.linspace(2.4 * D0, 30, 50)
    for factor, most in (
        (ec9.end_factor, 1),
        (ec9.inner_factor, 1),
        (ec9.edge_factor, 2.5),
        (ec9.row_factor, 2.5),
    ):
        values = factor(distances, hole_diameter_mm=D0)
        assert np.all(np.diff(values) >= 0)
        assert values[-1] == most


def test_a_weak_fastener_limits_the_bearing():
    """alpha_b is not above the strength of the fastener over that of the plate."""
    assert ec9.end_factor(30, hole_diameter_mm=D0, strength_ratio=0.7) == 0.7


def test_regular_distances_are_regular_and_short_ones_are_named():
    """At the limits of each kind: regular, minimum, and just below it too short."""
    for kind in ec9.DISTANCES:
        least, usual = (ec9.least_distance_mm(kind, D0, level=level) for level in ec9.SPACING_LEVELS)
        found = ec9.spacing_verdict(kind, [0.999 * least, least, usual], hole_diameter_mm=D0)
        assert found.tolist() == ["too short", "minimum", "regular"]


@pytest.mark.parametrize(
    ("kind", "given", "sentence"),
    [
        (
            "end distance",
            5.0,
            rf"end distance must be at least 5.88 mm \(minimum of {SPACING}, 1.2 d0\), got 5 mm",
        ),
        (
            "edge distance",
            5.0,
            rf"edge distance must be at least 5.88 mm \(minimum of {SPACING}, 1.2 d0\)",
        ),
        (
            "spacing",
            10.0,
            rf"spacing must be at least 10.78 mm \(minimum of {SPACING}, 2.2 d0\), got 10 mm",
        ),
        (
            "row spacing",
            11.0,
            rf"row spacing must be at least 11.76 mm \(minimum of {SPACING}, 2.4 d0\)",
        ),
    ],
)
def test_short_distances_name_rule_and_value(kind, given, sentence):
    """A distance below the minimum is refused by its rule, in a column by its first short one."""
    with pytest.raises(ValueError, match=sentence):
        ec9.require_distance(kind, [30.0, given], hole_diameter_mm=D0)


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        (
            {"end_distance_mm": 7},
            r"end distance must be at least 7.2 mm \(EN 1993-1-3 Table 8.1, blind rivets, 1.5 d",
        ),
        (
            {"edge_distance_mm": 7},
            r"edge distance must be at least 7.2 mm \(EN 1993-1-3 Table 8.1, blind rivets",
        ),
        ({"diameter_mm": 8}, "diameter of the rivet must be between 3 mm and 6.4 mm, got 8 mm"),
        ({"tensile_strength_mpa": 600}, "tensile strength must be between 20 MPa and 550 MPa, got 600 MPa"),
    ],
)
def test_blind_rivets_keep_their_own_rules(changes, sentence):
    """Thin-sheet rules name their code."""
    call = {key: value for key, value in SHEET.items() if key != "hole_diameter_mm"} | changes
    with pytest.raises(ValueError, match=sentence):
        ec9.blind_rivet_bearing_n(1.5, supporting_thickness_mm=1.5, **call)


def test_spread_holds_every_code_and_names_it():
    """The band runs from the least to the greatest code and lists all four; a column works like one sheet."""
    thickness = np.array([0.8, 1.5, 3.0])
    by_codes = ec9.bearing_by_codes(thickness, supporting_thickness_mm=thickness, **SHEET)
    band = ec9.bearing_spread_n(by_codes)
    assert len(by_codes) == 4
    assert all(name in band.basis for name in by_codes)
    assert all(np.all(band.contains(force)) for force in by_codes.values())
    alone = ec9.bearing_spread_n(ec9.bearing_by_codes(1.5, supporting_thickness_mm=1.5, **SHEET))
    assert (alone.low, alone.high) == pytest.approx((band.low[1], band.high[1]), rel=1e-12)


def test_a_code_that_leaves_small_rivets_out_is_left_out():
    """Below 3.9 mm EN 1999-1-1 says nothing of rivets; the other codes stay, and no column mixes both."""
    small = SHEET | {"diameter_mm": 3.2, "hole_diameter_mm": 3.4}
    assert ec9.PLATE_CODE not in ec9.bearing_by_codes(1.5, supporting_thickness_mm=1.5, **small)
    assert len(ec9.bearing_by_codes(1.5, supporting_thickness_mm=1.5, **small)) == 3
    with pytest.raises(
        ValueError, match=r"on one side of 3.9 mm \(scope of EN 1999-1-1\), got 3.2 mm to 4.8 mm"
    ):
        ec9.bearing_by_codes(
            1.5, supporting_thickness_mm=1.5, **SHEET | {"diameter_mm": np.array([3.2, 4.8])}
        )


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: ec9.bearing_n(
                0.5, diameter_mm=4.8, tensile_strength_mpa=190, along_factor=0.5, across_factor=2
            ),
            "sheet thickness must be at least 0.6 mm, got 0.5 mm",
        ),
        (
            lambda: ec9.net_area_mm2(
                8, thickness_mm=1, hole_diameter_mm=5, along_mm=[0, 0], across_mm=[2, 6]
            ),
            "width left beside the holes must be above 0 mm, got -2 mm",
        ),
        (
            lambda: ec9.net_area_mm2(20, thickness_mm=1, hole_diameter_mm=5, along_mm=[0, 0], across_mm=[2]),
            "places along must be as many as places across, got 2 and 1",
        ),
        (
            lambda: ec9.bolt_shear_n(20, tensile_strength_mpa=800, material="brass"),
            "material of the bolt must be one of steel to 8.8, steel 10.9, stainless, aluminium, got 'brass'",
        ),
        (
            lambda: ec9.block_areas_mm2(
                end_distance_mm=10,
                spacing_mm=15,
                edge_distance_mm=10,
                thickness_mm=2,
                hole_diameter_mm=4.9,
                count=2.5,
            ),
            "number of fasteners must be a whole number, got 2.5",
        ),
        (
            lambda: ec9.net_width_share(30, width_mm=20),
            "width left beside the old site must be at least 0 mm, got -10 mm",
        ),
        (
            lambda: ec9.affected_diameter_mm(6, crack_length_mm=1),
            "crack length must be left out where no crack is possible, got 1",
        ),
        (
            lambda: ec9.handbook_bearing_ratio(2.5),
            "in diameters must be between 1.5 and 2, got 2.5",
        ),
        (lambda: ec9.bearing_spread_n({}), "codes must be one at least, got none"),
        (
            lambda: ec9.least_distance_mm("gauge", 5),
            "distance must be one of end distance, edge distance, spacing, row spacing, got 'gauge'",
        ),
    ],
)
def test_refusals(call, sentence):
    """One sentence each."""
    with pytest.raises(ValueError, match=sentence):
        call()
