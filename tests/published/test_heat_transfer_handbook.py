"""Handbook of heat transfer, thermophysical properties of metallic solids, AISI 304. From memory."""

import math

import numpy as np
import pytest

from secondplate.heat.constant_metal import ConstantMetal
from secondplate.heat.substances import filler
from secondplate.materials import material
from tests.heat_bodies import column, heated

SOURCE = "heat_transfer_handbook"
STAINLESS = material("austenitic stainless")


@pytest.mark.parametrize("kelvin", [400, 600, 800, 1000, 1200])
def test_conductivity_in_use(kelvin):
    """From memory: the fire formula of conductivity lies within 7 % of the handbook."""
    side_by_side = STAINLESS.conductivity_by_source(kelvin - 273.15)
    assert side_by_side["en_1993_1_2"] == pytest.approx(side_by_side[SOURCE], rel=0.07)


@pytest.mark.parametrize(("kelvin", "low_by_percent"), [(400, 6.7), (600, 7.5), (1000, 9.8), (1200, 11.5)])
def test_heat_capacity_in_use_is_low(kelvin, low_by_percent):
    """From memory: the fire formula of heat capacity falls ever further below the handbook."""
    side_by_side = STAINLESS.heat_capacity_by_source(kelvin - 273.15)
    short = 100 * (1 - side_by_side["en_1993_1_2"] / side_by_side[SOURCE])
    assert short == pytest.approx(low_by_percent, abs=0.2)  # the table has three figures


def test_model_of_a_body_that_radiates():
    """From memory: a thin body of one temperature that radiates, from the chapter on lumps.

    t = m c / (4 e sigma A Ts^3) [f(T) - f(Ti)], f(T) = ln((T + Ts)/(T - Ts)) + 2 atan(T/Ts), in kelvin.
    """
    silver = ConstantMetal(conductivity_w_mk=400, density_kg_m3=7850, heat_capacity_j_kgk=650)
    body = column([0, 0.5, 1], metal=silver, lower_end="exposed", emittance=0.8, ambient_c=20.0)
    start_k, end_k, outside_k = 1273.15, 573.15, 293.15

    def shape(kelvin):
        """Return the part of the form that hangs on temperature."""
        return math.log((kelvin + outside_k) / (kelvin - outside_k)) + 2 * math.atan(kelvin / outside_k)

    heat_j_k = silver.heat_by_volume_j_mm3k
    time_s = heat_j_k / (4 * 0.8 * 5.670374e-14 * outside_k**3) * (shape(end_k) - shape(start_k))
    run = heated(body, time_s, start_c=start_k - 273.15, steps=80, growth=1.03)
    assert run.final_c.mean() + 273.15 == pytest.approx(end_k, rel=1e-3)  # it is 0.1 K warmer inside
    assert run.heat_out_j == pytest.approx(heat_j_k * (start_k - end_k), rel=2e-3)  # as above
    assert run.balance < 1e-9


def test_model_of_a_wall_with_a_contact():
    """From memory: a steady heat flow jumps by q/h at a contact of conductance h."""
    flux_w_mm2, contact_w_m2k = 2.0, 6000.0
    contact = np.full((9, 1), np.inf)
    contact[4] = contact_w_m2k
    body = column(np.linspace(0, 10, 11), lower_end=0.0, height_contact_w_m2k=contact)
    power = np.zeros((10, 1))
    power[0] = flux_w_mm2
    run = heated(body, 300, power_w=power, steps=60, growth=1.2)
    jump_k = run.final_c[4, 0] - run.final_c[5, 0] - flux_w_mm2 * 1 / 0.030
    assert jump_k == pytest.approx(flux_w_mm2 / (contact_w_m2k * 1e-6), rel=1e-6)  # steady to seven figures


@pytest.mark.parametrize(
    ("kelvin", "conductivity"), [(300, 0.0263), (500, 0.0407), (800, 0.0573), (1000, 0.0667)]
)
def test_air_at_rest(kelvin, conductivity):
    """From memory: conductivity of air, between the entries of the library by a straight line."""
    air = filler("air")
    found = np.interp(kelvin - 273.15, air.nodes_c, air.conductivity_w_mk)
    assert found == pytest.approx(conductivity, rel=0.01)  # 300 K lies between two entries
