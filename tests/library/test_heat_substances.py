"""Substances of the heat model: heat content with melting, conductivity, and what fills gaps."""

import numpy as np
import pytest

from secondplate.heat.constant_metal import ConstantMetal
from secondplate.heat.substances import FILLER_NAMES, HIGHEST_C, LOWEST_C, Substance, constant, filler, metal
from secondplate.materials import MATERIAL_NAMES, material

STEEL = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
WAX = {"name": "wax", "nodes_c": [-100, 50, 52, 200], "conductivity_w_mk": [0.2] * 4}
WAX |= {"heat_content_j_mm3": [0, 0.3, 0.5, 0.9], "solidus_c": 50, "liquidus_c": 52}


@pytest.mark.parametrize("name", MATERIAL_NAMES)
def test_heat_content_is_the_integral_of_the_curve(name):
    """Below melting the heat content is that of the material, above the liquidus the latent heat is in it."""
    of, found = material(name), metal(name)
    low, high = of.melting_range_c.low, of.melting_range_c.high
    at_20 = found.heat_at_j_mm3(20.0)
    for temperature_c in (100.0, 300.0, low):
        expected = of.density_kg_m3 * of.heat_to_j_kg(temperature_c) * 1e-9
        # The tables lie at nodes of their own, between which the curve is not quite straight.
        assert found.heat_at_j_mm3(temperature_c) - at_20 == pytest.approx(expected, rel=1e-4)
    whole = of.density_kg_m3 * (of.heat_to_j_kg(high) + of.latent_heat_j_kg) * 1e-9
    assert found.heat_at_j_mm3(high) - at_20 == pytest.approx(whole, rel=1e-4)  # as above
    assert found.melts
    assert (found.solidus_c, found.liquidus_c) == (low, high)


@pytest.mark.parametrize("name", MATERIAL_NAMES)
def test_between_nodes_the_curve_is_met(name):
    """Between the nodes the straight lines differ little from the curves."""
    of, found = material(name), metal(name)
    for temperature_c in (33.0, 127.0, 444.0):
        expected = of.density_kg_m3 * of.heat_to_j_kg(temperature_c) * 1e-9
        rise = found.heat_at_j_mm3(temperature_c) - found.heat_at_j_mm3(20.0)
        assert rise == pytest.approx(expected, rel=2e-3)  # nodes are 10 K apart
        conductivity = np.interp(temperature_c, found.nodes_c, found.conductivity_w_mk)
        assert conductivity == pytest.approx(of.conductivity_w_mk(temperature_c), rel=1e-3)  # as above


def test_curves_are_held_beyond_their_ends():
    """Liquid has the last heat capacity and conductivity of the solid."""
    steel, of = metal("boron rivet steel"), material("boron rivet steel")
    rise = steel.heat_at_j_mm3(3000.0) - steel.heat_at_j_mm3(2000.0)
    assert rise == pytest.approx(of.density_kg_m3 * of.heat_capacity_j_kgk(1000.0) * 1000 * 1e-9, rel=1e-9)
    assert steel.conductivity_w_mk[-1] == of.conductivity_w_mk(1000.0)


def test_stirred_melt_conducts_better():
    """A raised conductivity holds from the liquidus up and leaves the solid alone."""
    still, stirred = (
        metal("austenitic stainless"),
        metal("austenitic stainless", liquid_conductivity_w_mk=300),
    )
    solid = still.nodes_c <= still.solidus_c
    np.testing.assert_array_equal(still.conductivity_w_mk[solid], stirred.conductivity_w_mk[solid])
    assert np.all(stirred.conductivity_w_mk[stirred.nodes_c >= stirred.liquidus_c] == 300)


def test_constant_substance():
    """A constant substance has straight lines and its latent heat within its melting range."""
    found = constant("steel", metal=STEEL, melting_c=1480, latent_heat_j_kg=250e3, melting_range_k=10)
    assert found.heat_at_j_mm3(100.0) - found.heat_at_j_mm3(0.0) == pytest.approx(0.51025, rel=1e-12)  # exact
    over_range = found.heat_at_j_mm3(1485.0) - found.heat_at_j_mm3(1475.0)
    assert over_range == pytest.approx(7850e-9 * (6500 + 250e3), rel=1e-12)  # exact
    assert not constant("steel", metal=STEEL).melts


@pytest.mark.parametrize("name", FILLER_NAMES)
def test_fillers_reach_over_the_whole_table(name):
    """Air and adhesive have values at every temperature a run may meet."""
    found = filler(name)
    assert (found.nodes_c[0], found.nodes_c[-1]) == (LOWEST_C, HIGHEST_C)
    assert not found.melts


def test_air_holds_next_to_nothing():
    """A cubic millimetre of air takes a 2000th of what aluminium takes at least."""
    rise = [
        found.heat_at_j_mm3(400.0) - found.heat_at_j_mm3(20.0)
        for found in (filler("air"), metal("6xxx aluminium"))
    ]
    assert rise[0] * 2000 < rise[1]


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"nodes_c": [0, 0, 1, 2]}, "step between nodes of wax must be above 0 K, got 0 K"),
        ({"heat_content_j_mm3": [0, 1, 1, 2]}, "heat capacity of wax must be above 0 J/mm3, got 0 J/mm3"),
        ({"conductivity_w_mk": [1, 1, 0, 1]}, "conductivity of wax must be above 0 W/mK, got 0 W/mK"),
        ({"conductivity_w_mk": [1, 1]}, "conductivity_w_mk of wax must have one value for each of 2 nodes"),
    ],
)
def test_refused_tables(change, message):
    """Tables that do not rise or fit are refused by one sentence."""
    with pytest.raises(ValueError, match=message):
        Substance(**WAX | change)


def test_refused_values():
    """Unknown names and values out of range are refused by one sentence."""
    with pytest.raises(ValueError, match="material must be one of carbon steel, .*, got 'tin'"):
        metal("tin")
    with pytest.raises(
        ValueError, match="liquid conductivity must be between 1 W/mK and 2000 W/mK, got 0 W/mK"
    ):
        metal("carbon steel", liquid_conductivity_w_mk=0)
    with pytest.raises(ValueError, match="substance of a gap must be one of air, adhesive, got 'water'"):
        filler("water")
    with pytest.raises(ValueError, match="temperature of wax must be between -100 C and 200 C, got 201 C"):
        Substance(**WAX).heat_at_j_mm3(201)
    with pytest.raises(ValueError, match="latent heat must be at least 0 J/kg, got -1 J/kg"):
        constant("steel", metal=STEEL, latent_heat_j_kg=-1)
    with pytest.raises(ValueError, match="melting range must be between 1e-06 K and 500 K, got 0 K"):
        constant("steel", metal=STEEL, melting_c=1000, melting_range_k=0)
