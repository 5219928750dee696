"""One time step of the heat model: finite volumes, two stages, directions one after the other.

For every cell ``V dh/dt = P + sum of G (T' - T) - losses``, with the heat content h(T) as the unknown. One step
tau is a Rosenbrock method with g = 1 - 1/sqrt(2):

    J k1 = F(h),  J k2 = F(h + tau k1) - 2 k1,  h' = h + tau (3/2 k1 + 1/2 k2)

``J = (1 + g tau Kr/C) (1 + g tau Kz/C)`` stands for the conduction along the radius and along the axis, so that
each needs tridiagonal equations only. The method is of second order in time whatever J is, and L-stable for
each direction alone. Summing J k = F over all cells leaves the sum of k only, because what one cell gives
another gets: the heat balance holds by construction, melting or not.
"""

import numpy as np

from secondplate.heat.body import EMPTY
from secondplate.heat.lines import Chain, factored, inflow_w, solved, with_neighbours
from secondplate.heat.lookup import HeatLookup
from secondplate.heat.surface import surfaces

GAMMA = 1 - 1 / np.sqrt(2)


class Scheme:
    """The equations of one body; states are heat contents of its cells, row by row, empty ones left out."""

    def __init__(self, body):
        """Number the cells and lay out the chains along radius and axis."""
        grid = body.grid
        self.solid = body.where > EMPTY
        self.number = np.full(grid.shape, EMPTY)
        self.number[self.solid] = np.arange(np.count_nonzero(self.solid))
        self.volume_mm3 = grid.volumes_mm3[self.solid]
        self.lookup = HeatLookup(body.substances, body.where[self.solid])
        half_r = np.broadcast_to(grid.widths_mm / 2, grid.shape)[self.solid]
        half_z = np.broadcast_to(grid.heights_mm[:, None] / 2, grid.shape)[self.solid]
        ring = np.broadcast_to(grid.ring_areas_mm2, grid.shape)
        self._outwards = _links(self.number, grid.mantle_areas_mm2[:, 1:-1])
        self._down = _links(self.number.T, ring[:-1].T)
        self._radial = Chain(
            self.number[self.solid], links=self._outwards[0], half_mm=half_r, area_mm2=self._outwards[1]
        )
        self._height = Chain(
            self.number.T[self.solid.T], links=self._down[0], half_mm=half_z, area_mm2=self._down[1]
        )
        self._surfaces = surfaces(body, self.number)

    def touch(self, radial_contact_w_m2k, height_contact_w_m2k):
        """Set the contacts of the steps to come."""
        self._contact_r = self._radial.contact_mm2k_w(
            _on_links(self.number, self._outwards[0], radial_contact_w_m2k)
        )
        self._contact_z = self._height.contact_mm2k_w(
            _on_links(self.number.T, self._down[0], height_contact_w_m2k.T)
        )

    def _flows(self, heat):
        """Return temperature, kelvin per J/mm3, conductances, heat gained by each cell and loss of the body."""
        temperature, per_heat, conductivity = self.lookup.all(heat)
        radial = self._radial.conductance_w_k(self._radial.half_mm2k_w(conductivity), self._contact_r)
        height = self._height.conductance_w_k(self._height.half_mm2k_w(conductivity), self._contact_z)
        gain = inflow_w(radial, temperature)
        gain += inflow_w(height, temperature[self._height.order])[self._height.back]
        own, lost = [], 0.0
        for surface in self._surfaces:
            face = surface.conductance_w_k(temperature, conductivity)
            loss = surface.by_cell(surface.loss_w(face, temperature))
            gain -= loss
            lost += loss.sum()
            own.append(surface.by_cell(face))
        return temperature, per_heat, (radial, height, *own), gain, lost

    def step(self, heat, tau_s, power_w):
        """Return the heat contents one step later, and the heat that left the body in joules."""
        _, per_heat, conductances, gain, lost = self._flows(heat)
        solver = _Solver(self._height, self.volume_mm3 / per_heat, GAMMA * tau_s, *conductances)
        first, held = solver.rate(gain + power_w)
        first_lost = lost + held
        _, _, _, gain, lost = self._flows(heat + tau_s / self.volume_mm3 * first)
        second, held = solver.rate(gain + power_w - 2 * first)
        new = heat + tau_s / self.volume_mm3 * (1.5 * first + 0.5 * second)
        return new, tau_s * 0.5 * (first_lost + lost + held)


class _Solver:
    """The factored equations of one step."""

    def __init__(
        self, height, capacity_j_k, weight_s, radial_w_k, height_w_k, own_radial_w_k, own_height_w_k
    ):
        """Factor ``C + g tau K`` for both directions."""
        self._height, self._capacity, self._weight = height, capacity_j_k, weight_s
        self._own = own_radial_w_k, own_height_w_k
        diagonal = capacity_j_k + weight_s * with_neighbours(radial_w_k, own_radial_w_k)
        self._along_radius = factored(diagonal, weight_s * radial_w_k)
        order = height.order
        diagonal = capacity_j_k[order] + weight_s * with_neighbours(height_w_k, own_height_w_k[order])
        self._along_axis = factored(diagonal, weight_s * height_w_k)

    def rate(self, flow_w):
        """Return the heat rate k of each cell, and the part of its sum that went out through the faces."""
        between = solved(self._along_radius, flow_w)
        right = (self._capacity * between)[self._height.order]
        change = solved(self._along_axis, right)[self._height.back]
        held = self._weight * (self._own[0] @ between + self._own[1] @ change)
        return self._capacity * change, held


def _links(number, area):
    """Return whether each cell of a chain is linked to the next, and the area of the link.

    ``number`` has the chain's direction along its rows; ``area`` lies between neighbours.
    """
    rows, columns = np.nonzero(number > EMPTY)
    linked = (rows[1:] == rows[:-1]) & (columns[1:] == columns[:-1] + 1)
    found = np.zeros(len(linked))
    found[linked] = np.broadcast_to(area, (number.shape[0], number.shape[1] - 1))[
        rows[:-1][linked], columns[:-1][linked]
    ]
    return linked, found


def _on_links(number, linked, values):
    """Return the values between neighbours for the links of a chain; where there is no link, no contact."""
    rows, columns = np.nonzero(number > EMPTY)
    found = np.zeros(len(linked))
    found[linked] = values[rows[:-1][linked], columns[:-1][linked]]
    return found
