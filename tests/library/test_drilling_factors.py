"""Handbook's factors of a drill: what a point, a feed and wear do, and what is refused."""

import numpy as np
import pytest

from secondplate.drilling_factors import (
    CHISEL_EDGE_RANGE,
    DIAMETER_RANGE_MM,
    FEED_RANGE_MM_REV,
    SPLIT_POINT,
    STANDARD_POINT,
    WEAR_FACTORS,
    chisel_edge,
    chisel_thrust_n,
    diameter_factors,
    feed_factor,
    handbook_thrust_n,
    handbook_torque_n_m,
)

RIVET = {"work_material_factor": 34_000, "drill_diameter_mm": 6.5, "feed_mm_rev": 0.05}
DIAMETERS_MM, FEEDS_MM_REV = np.linspace(*DIAMETER_RANGE_MM, 40), np.linspace(*FEED_RANGE_MM_REV, 40)
BOTH = [handbook_thrust_n, handbook_torque_n_m]


@pytest.mark.parametrize("force", BOTH)
def test_more_metal_takes_more(force):
    """Thrust and torque rise with diameter, feed and hardness, and with wear by its factor."""
    assert np.all(np.diff(force(**RIVET | {"drill_diameter_mm": DIAMETERS_MM})) > 0)
    assert np.all(np.diff(force(**RIVET | {"feed_mm_rev": FEEDS_MM_REV})) > 0)
    assert np.all(np.diff(force(**RIVET | {"work_material_factor": np.array([7e3, 24e3, 34e3])})) > 0)
    worn = force(**RIVET, wear_factor=WEAR_FACTORS["worn drill"])
    assert worn == pytest.approx(1.5 * force(**RIVET), rel=1e-12)  # a factor


@pytest.mark.parametrize("force", BOTH)
def test_columns_are_single_drills(force):
    """A table of drills and feeds comes out as each drill by itself."""
    table = force(**RIVET | {"drill_diameter_mm": DIAMETERS_MM[:3, None], "feed_mm_rev": FEEDS_MM_REV[:4]})
    assert table.shape == (3, 4)
    alone = force(**RIVET | {"drill_diameter_mm": DIAMETERS_MM[2], "feed_mm_rev": FEEDS_MM_REV[3]})
    assert table[2, 3] == pytest.approx(alone, rel=1e-14)  # same arithmetic


def test_split_point_spares_a_third_of_the_thrust():
    """A split point takes 25 to 45 % less thrust at the feeds of a hand, and at most a tenth less torque."""
    hand = RIVET | {"feed_mm_rev": np.linspace(0.04, 0.15, 20)}
    thrust, torque = (
        force(**hand, chisel_edge=SPLIT_POINT) / force(**hand, chisel_edge=STANDARD_POINT) for force in BOTH
    )
    assert np.all((thrust > 0.55) & (thrust < 0.75))
    assert np.all((torque > 0.9) & (torque < 1))


def test_gentle_feed_does_not_spare_the_chisel_edge():
    """The chisel edge's thrust is the same at any feed: 39 % at 0.04 mm/rev and 10 mm in aluminium."""
    cut = {"work_material_factor": 7000, "drill_diameter_mm": 10.0}
    chisel = chisel_thrust_n(**cut)
    whole = handbook_thrust_n(**cut, feed_mm_rev=np.array([0.04, 0.1]))
    assert chisel / whole == pytest.approx([0.39, 0.24], abs=0.01)  # two digits
    lips = whole - chisel
    assert lips[1] / lips[0] == pytest.approx(2.5**0.8, rel=1e-12)  # the lips alone follow the feed


def test_wider_chisel_edge_is_worse():
    """All three factors rise with the chisel edge."""
    edge = chisel_edge(np.linspace(*CHISEL_EDGE_RANGE, 100))
    for factor in (edge.torque_factor, edge.thrust_factor, edge.chisel_factor):
        assert np.all(np.diff(factor) > 0)


def test_closed_forms_agree_with_the_printed_points():
    """The forms at c/D 0.18 give thrust and torque within 2 % of the printed standard point."""
    for force in BOTH:
        assert force(**RIVET, chisel_edge=chisel_edge(0.18)) == pytest.approx(force(**RIVET), rel=0.02)


def test_factors_make_the_torque():
    """The torque is the product of the factors that the tables list."""
    _, by_diameter = diameter_factors(6.5)
    product = 25e-6 * 34_000 * feed_factor(0.05) * by_diameter * STANDARD_POINT.torque_factor
    assert handbook_torque_n_m(**RIVET) == pytest.approx(product, rel=1e-14)  # same arithmetic


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"feed_mm_rev": -0.1}, "feed must be between 0.01 mm/rev and 0.4 mm/rev, got -0.1 mm/rev"),
        ({"drill_diameter_mm": 30}, "drill diameter must be between 1.5 mm and 25 mm, got 30 mm"),
        ({"work_material_factor": 0}, "work material factor must be above 0, got 0"),
        ({"wear_factor": 0.5}, "wear factor must be between 1 and 1.5, got 0.5"),
        ({"feed_mm_rev": "0.1"}, "feed must be a number in mm/rev, got '0.1'"),
    ],
)
def test_what_no_factor_covers_is_said(given, said):
    """Sizes beyond the tables are refused in one sentence."""
    for force in BOTH:
        with pytest.raises(ValueError, match=said):
            force(**RIVET | given)


def test_chisel_edges_beyond_the_table_are_said():
    """The closed forms end with the printed table."""
    with pytest.raises(ValueError, match="chisel edge ratio must be between 0.03 and 0.4, got 0.5"):
        chisel_edge(0.5)
