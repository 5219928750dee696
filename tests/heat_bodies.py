"""Simple bodies on which the heat model is held against exact solutions."""

import math

import numpy as np

from secondplate.heat.conduction import Body, Stage, conduct
from secondplate.heat.constant_metal import ConstantMetal
from secondplate.heat.grid import Grid, graded_edges
from secondplate.heat.substances import constant

STEEL = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
# A column of this radius has a section of one square millimetre.
UNIT_RADIUS_MM = 1 / math.sqrt(math.pi)


def column(edges_mm, *, metal=STEEL, substance=None, **ends):
    """Return a column of 1 mm2 in which heat flows along the axis only."""
    grid = Grid(radius_edges_mm=[0, UNIT_RADIUS_MM], height_edges_mm=edges_mm)
    return solid(grid, metal=metal, substance=substance, **ends)


def disc(edges_mm, *, thickness_mm=1.0, metal=STEEL, **ends):
    """Return a flat disc in which heat flows along the radius only."""
    return solid(Grid(radius_edges_mm=edges_mm, height_edges_mm=[0, thickness_mm]), metal=metal, **ends)


def solid(grid, *, metal=STEEL, substance=None, **ends):
    """Return a body of one constant substance that fills the grid."""
    of = substance or constant("metal", metal=metal)
    return Body(grid=grid, substances=(of,), where=np.zeros(grid.shape, dtype=int), **ends)


def fine_at_start(length_mm, *, finest_mm, growth=0.08):
    """Return edges from 0, fine there."""
    return graded_edges([0, length_mm], fine_at_mm=[0], finest_mm=finest_mm, growth=growth)


def face_power(body, *, flux_w_mm2, within_mm=math.inf):
    """Return the power into the uppermost cells for a flux on the upper end, up to a radius."""
    power = np.zeros(body.grid.shape)
    heated = body.grid.radii_mm < within_mm
    power[0] = np.where(heated, flux_w_mm2 * body.grid.ring_areas_mm2, 0.0)
    return power


def face_rise_k(run, body, *, flux_w_mm2, metal=STEEL):
    """Return the temperature of the upper face: that of the middle of its cell and the slope of the flux."""
    half_mm = body.grid.heights_mm[0] / 2
    return run.final_c[0] + flux_w_mm2 * half_mm / metal.conductivity_w_mmk


def down_axis(run, body, depths_mm):
    """Return temperatures on the axis at depths between the middles of cells, by straight lines."""
    return np.interp(depths_mm, body.grid.depths_mm, run.final_c[:, 0])


def heated(body, duration_s, *, power_w=0.0, steps=60, growth=1.0, **settings):
    """Run a body from 0 C through one stage."""
    stage = Stage(duration_s=duration_s, steps=steps, power_w=power_w, growth=growth)
    return conduct(body, [stage], **{"start_c": 0.0, **settings})
