"""EN 1993-1-3:2006 Cold-formed members and sheeting, Table 8.2 (screws). Read in open code and on a page."""

import pytest

from secondplate.eurocode9 import bearing_by_codes, blind_rivet_bearing_n
from secondplate.fastener_bearing import (
    BLIND_RIVET_STANDARD,
    bearing_coefficient,
    pull_through_n,
    screw_bearing_n,
)

SOURCE = "en_1993_1_3"


@pytest.mark.parametrize(
    ("thickness_mm", "force_n"), [(1.0, 1580), (1.5, 2910), (2.0, 4480), (2.5, 5980), (3.0, 7180)]
)
def test_bearing_series_of_a_5_3_mm_shank(thickness_mm, force_n):
    """Equal sheets of 215 MPa, no partial factor: the form worked out by hand, three figures."""
    force = screw_bearing_n(
        thickness_mm,
        shank_diameter_mm=5.3,
        tensile_strength_mpa=215,
        supporting_thickness_mm=thickness_mm,
    )
    assert force == pytest.approx(force_n, rel=4e-3)


def test_linear_part():
    """Table 8.2: between t1 = t and t1 = 2.5 t alpha is interpolated; half way it is the mean."""
    alpha = bearing_coefficient(1.0, shank_diameter_mm=4.8, supporting_thickness_mm=1.75)
    assert alpha == pytest.approx((3.2 / 4.8**0.5 + 2.1) / 2, rel=1e-12)


def test_screw_and_blind_rivet_have_different_slopes():
    """From memory: 3.6 belongs to blind rivets (Table 8.1); the screw's alpha is 3.2/3.6 of it."""
    alpha = bearing_coefficient(1.0, shank_diameter_mm=4.8, supporting_thickness_mm=1.0)
    assert alpha / (3.6 / 4.8**0.5) == pytest.approx(3.2 / 3.6, rel=1e-12)


def test_pull_through_under_repeated_wind():
    """Table 8.2 as on a page: 0.5 d_w t f_u; 14 mm washer, 0.75 mm sheet of 360 MPa, factor 1.25."""
    force = pull_through_n(
        0.75, head_diameter_mm=14, tensile_strength_mpa=360, repeated_wind=True, partial_factor=1.25
    )
    assert force == pytest.approx(0.5 * 14 * 0.75 * 360 / 1.25, rel=1e-12)


def test_static_pull_through_of_a_rivet_head():
    """From memory: d_w t f_u; a 7.75 mm head in 2.0 mm of 215 MPa gives 3.33 kN."""
    force = pull_through_n(2.0, head_diameter_mm=7.75, tensile_strength_mpa=215, beyond_range=True)
    assert force == pytest.approx(3330, rel=2e-3)  # three figures


def blind_rivet(thickness_mm):
    """Give the bearing of equal sheets of 190 MPa at a 4.8 mm blind rivet, e1 10."""
    return blind_rivet_bearing_n(
        thickness_mm,
        diameter_mm=4.8,
        tensile_strength_mpa=190,
        supporting_thickness_mm=thickness_mm,
        end_distance_mm=10,
        edge_distance_mm=8,
    )


def test_blind_rivet_coefficients():
    """Table 8.1, from memory: alpha 2.0125 at t 1.5 and 1.6432 at t 1.0, d 4.8."""
    found = [
        bearing_coefficient(
            t, shank_diameter_mm=4.8, supporting_thickness_mm=t, standard=BLIND_RIVET_STANDARD
        )
        for t in (1.5, 1.0)
    ]
    assert found == pytest.approx([2.0125, 1.6432], abs=6e-5)  # four decimals


def test_blind_rivet_bearing():
    """Table 8.1, from memory: 2202.4 N but not above 1900.0 at t 1.5; 1198.9 below 1266.7 at t 1.0."""
    assert blind_rivet(1.5) == pytest.approx(1900.0, abs=0.06)  # one decimal
    assert blind_rivet(1.0) == pytest.approx(1198.9, abs=0.06)  # one decimal
    free = screw_bearing_n(
        1.5,
        shank_diameter_mm=4.8,
        tensile_strength_mpa=190,
        supporting_thickness_mm=1.5,
        standard=BLIND_RIVET_STANDARD,
        partial_factor=1.25,
    )
    assert free == pytest.approx(2202.4, abs=0.06)  # one decimal


def test_spread_between_codes():
    """The forms for t 1.5 and 1.0 of 190 MPa differ by up to 45 %: 1198.9 against 832.5."""
    by_codes = bearing_by_codes(
        1.0,
        diameter_mm=4.8,
        hole_diameter_mm=4.9,
        tensile_strength_mpa=190,
        supporting_thickness_mm=1.0,
        end_distance_mm=10,
        edge_distance_mm=8,
    )
    ratio = by_codes[BLIND_RIVET_STANDARD] / by_codes["EN 1999-1-4"]
    assert ratio - 1 == pytest.approx(0.44, abs=6e-3)  # whole per cents
