"""Materials: complete, ordered, in sensible bounds."""

import numpy as np
import pytest

from secondplate.materials import MATERIAL_NAMES, MATERIALS, material

each_material = pytest.mark.parametrize("metal", MATERIALS.values(), ids=MATERIAL_NAMES)


@each_material
def test_orders_of_magnitude(metal):
    """Each property lies where metals of its kind lie, so that a slip of units cannot hide."""
    light = "aluminium" in metal.name
    assert 2600 < metal.density_kg_m3 < 2800 if light else 7700 < metal.density_kg_m3 < 8000
    assert 380e3 < metal.latent_heat_j_kg < 400e3 if light else 240e3 < metal.latent_heat_j_kg < 275e3
    assert 430 < metal.heat_capacity_j_kgk(20) < 930
    assert 10 < metal.conductivity_w_mk(20) < 240
    assert 2.5 < metal.heat_content_j_mm3().best < 3 if light else 8 < metal.heat_content_j_mm3().best < 10.5


@each_material
def test_melting_range_rises(metal):
    """Solidus, melting point and liquidus rise in this order."""
    melting = metal.melting_range_c
    assert melting.low < melting.best < melting.high


@each_material
def test_heat_rises_with_temperature(metal):
    """Heat from 20 C is nothing at 20 C and rises up to the liquidus."""
    temperatures = np.linspace(20, metal.melting_range_c.high, 30)
    heat = np.array([metal.heat_to_j_kg(float(temperature)) for temperature in temperatures])
    assert heat[0] == 0
    assert (np.diff(heat) > 0).all()


@each_material
def test_in_use_is_one_of_those_side_by_side(metal):
    """The value in use is the first of those shown side by side."""
    assert next(iter(metal.heat_capacity_by_source(20).values())) == metal.heat_capacity_j_kgk(20)
    assert next(iter(metal.conductivity_by_source(20).values())) == metal.conductivity_w_mk(20)


@each_material
def test_arrays_equal_single_numbers(metal):
    """Arrays of temperatures give what single temperatures give."""
    temperatures = np.array([20.0, 100.0, 300.0, 499.0])
    np.testing.assert_allclose(
        metal.conductivity_w_mk(temperatures),
        [metal.conductivity_w_mk(float(temperature)) for temperature in temperatures],
        rtol=1e-15,  # same arithmetic
    )


def test_outside_the_range_is_refused():
    """The fire formula of stainless steel ends at 1200 C and is not stretched."""
    with pytest.raises(ValueError, match="must be between 20 C and 1200 C, got 1300 C$"):
        material("austenitic stainless").heat_capacity_j_kgk(1300)
    with pytest.raises(ValueError, match="^temperature must be between 20 C and 1453.85 C, got 1500 C$"):
        material("austenitic stainless").heat_to_j_kg(1500)


def test_unknown_material_is_refused():
    """An unknown name is refused with the list, never matched to something near."""
    with pytest.raises(ValueError, match="^material must be one of carbon steel, .*, got 'stainless'$"):
        material("stainless")


def test_stainless_near_melting_is_left_to_the_measurement():
    """Above the fire formula's range only the measurement speaks for the heat capacity of 304L."""
    assert list(material("austenitic stainless").heat_capacity_by_source(1420)) == ["measured_304l"]
