"""Heat that leaves through the outside: film, radiation, and faces that are held at a temperature."""

import numpy as np
from scipy.constants import Stefan_Boltzmann, zero_Celsius

from secondplate.heat.body import EMPTY

_W_MM2_PER_W_M2 = 1e-6


class Surface:
    """Outer faces of a body, each belonging to one cell.

    The conductance of a face is that of half a cell and of the film in series, ``G = A / (d/(2 k) + 1/h)``,
    with ``h = film + emittance sigma (T^2 + Ta^2)(T + Ta)`` in kelvin, T taken at the middle of the cell.

    Parameters
    ----------
    body : secondplate.heat.body.Body
        The body [-]
    number : array of int
        Number of each cell by row and column, -1 where it is empty [-]

    Examples
    --------
    >>> from secondplate.heat.body import Body
    >>> from secondplate.heat.grid import Grid
    >>> from secondplate.heat.substances import metal
    >>> rod = Body(grid=Grid(radius_edges_mm=[0, 1], height_edges_mm=[0, 1, 2]), where=[[0], [0]],
    ...            substances=(metal("carbon steel"),), upper_end=100.0)
    >>> surface = Surface(rod, np.array([[0], [1]]))
    >>> outside, loss = surface.losses(np.array([20.0, 20.0]), np.array([0.05, 0.05]))
    >>> outside.round(4).tolist()
    [0.3142, 0.0]
    """

    def __init__(self, body, number):
        """Gather the outer faces; ``number`` counts the cells of the body by row and column."""
        grid = body.grid
        self.count = int(number.max()) + 1
        self._film, self._emittance = body.film_w_m2k, body.emittance
        half_r, ring = (np.broadcast_to(row, grid.shape) for row in (grid.widths_mm / 2, grid.ring_areas_mm2))
        half_z = np.broadcast_to(grid.heights_mm[:, None] / 2, grid.shape)
        mantle = grid.mantle_areas_mm2
        sides = (
            _faces(number, mantle[:, :-1], half_r, body.inner_end),
            _faces(number[:, ::-1], mantle[:, :0:-1], half_r[:, ::-1], body.outer_end),
            _faces(number.T, ring.T, half_z.T, body.upper_end),
            _faces(number.T[:, ::-1], ring.T[:, ::-1], half_z.T[:, ::-1], body.lower_end),
        )
        self._cell, self._half, self._area, outside = map(np.concatenate, zip(*sides, strict=True))
        self._exposed = np.isnan(outside)
        self._outside_c = np.where(self._exposed, body.ambient_c, outside)

    def losses(self, temperature_c, conductivity_w_mmk):
        """Return for each cell its conductance to the outside in W/K, and the heat that it loses in W."""
        warm_c = temperature_c.take(self._cell)
        conductance = self._area / (
            self._half / conductivity_w_mmk.take(self._cell) + self._film_mm2k_w(warm_c)
        )
        loss = conductance * (warm_c - self._outside_c)
        return self._by_cell(conductance), self._by_cell(loss)

    def _film_mm2k_w(self, warm_c):
        """Return the resistance of film and radiation; none at a face that is held at a temperature."""
        warm_k, outside_k = warm_c + zero_Celsius, self._outside_c + zero_Celsius
        radiation = Stefan_Boltzmann * (warm_k**2 + outside_k**2) * (warm_k + outside_k)
        transfer = (self._film + self._emittance * radiation) * _W_MM2_PER_W_M2
        with np.errstate(divide="ignore"):
            return np.where(self._exposed, 1 / transfer, 0.0)

    def _by_cell(self, per_face):
        """Sum a quantity of the faces for each cell."""
        return np.bincount(self._cell, weights=per_face, minlength=self.count).astype(float)


def _faces(number, area, half, edge):
    """Return cell, half length, area and temperature of the open faces on the side of lower columns.

    The temperature is NaN where the face is exposed.
    """
    inner = np.full(number.shape, EMPTY)
    inner[:, 1:] = number[:, :-1]
    is_open = (number > EMPTY) & (inner == EMPTY) & (area > 0)
    outside = np.full(number.shape, np.nan)
    if edge == "insulated":
        is_open[:, 0] = False
    elif edge != "exposed":
        outside[:, 0] = edge
    return number[is_open], half[is_open], area[is_open], outside[is_open]
