"""Heat that leaves through the outside: film and radiation at exposed faces, and faces held at a temperature."""

import numpy as np
from scipy.constants import Stefan_Boltzmann

from secondplate.heat.body import EMPTY
from secondplate.units import k_from_c

_W_MM2_PER_W_M2 = 1e-6


class Surface:
    """Outer faces of one direction, each belonging to one cell of the body.

    The conductance of a face is that of half a cell and of the film in series, ``G = A / (d/(2 k) + 1/h)``,
    with ``h = film + emittance sigma (T^2 + Ta^2)(T + Ta)`` in kelvin, T taken at the middle of the cell.
    """

    def __init__(self, body, cells, faces):
        """Gather the faces of ``faces``: tuples of cell number, half length, area and outer face."""
        self.count = cells
        self._film, self._emittance = body.film_w_m2k, body.emittance
        self._cell, self._half, self._area, edge = (np.concatenate(part) for part in zip(*faces, strict=True))
        self._exposed = np.isnan(edge)
        self._outside_c = np.where(self._exposed, body.ambient_c, edge)
        self._outside_k = k_from_c(self._outside_c)

    def conductance_w_k(self, temperature_c, conductivity_w_mmk):
        """Return the conductance of each face."""
        resistance = self._half / conductivity_w_mmk[self._cell]
        if not self._exposed.any():
            return self._area / resistance
        warm_k = k_from_c(temperature_c[self._cell])
        radiation = Stefan_Boltzmann * (warm_k**2 + self._outside_k**2) * (warm_k + self._outside_k)
        transfer = (self._film + self._emittance * radiation) * _W_MM2_PER_W_M2
        with np.errstate(divide="ignore"):
            resistance += np.where(self._exposed, 1 / transfer, 0.0)
        return self._area / resistance

    def by_cell(self, per_face):
        """Sum a quantity of the faces for each cell."""
        return np.bincount(self._cell, weights=per_face, minlength=self.count).astype(float)

    def loss_w(self, conductance_w_k, temperature_c):
        """Return the heat that leaves through each face."""
        return conductance_w_k * (temperature_c[self._cell] - self._outside_c)


def surfaces(body, number):
    """Return the outer faces along the radius and along the axis; ``number`` counts the cells of the body."""
    grid, cells = body.grid, int(number.max()) + 1
    ring, mantle = np.broadcast_to(grid.ring_areas_mm2, grid.shape), grid.mantle_areas_mm2
    half_r = np.broadcast_to(grid.widths_mm / 2, grid.shape)
    half_z = np.broadcast_to(grid.heights_mm[:, None] / 2, grid.shape)
    radial = [
        _faces(number, mantle[:, :-1], half_r, body.bore, 1),
        _faces(
            number,
            mantle[:, 1:],
            half_r,
            body.rim,
            -1,
        ),
    ]
    height = [
        _faces(number.T, ring.T, half_z.T, body.top, 1),
        _faces(number.T, ring.T, half_z.T, body.bottom, -1),
    ]
    return Surface(body, cells, radial), Surface(body, cells, height)


def _faces(number, area, half, edge, ahead):
    """Return the outer faces on one side of the cells: that of lower columns where ``ahead`` is 1."""
    neighbour = np.full(number.shape, EMPTY)
    outer = np.zeros(number.shape, dtype=bool)
    if ahead == 1:
        neighbour[:, 1:], outer[:, 0] = number[:, :-1], True
    else:
        neighbour[:, :-1], outer[:, -1] = number[:, 1:], True
    open_face = (number > EMPTY) & (neighbour == EMPTY) & (area > 0)
    if isinstance(edge, str) and edge == "insulated":
        open_face &= ~outer
    outside = np.where(outer, np.nan if isinstance(edge, str) else edge, np.nan)
    return number[open_face], half[open_face], area[open_face], outside[open_face]
