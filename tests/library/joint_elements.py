"""The riveted joint by finite elements, for comparison: another method, another time scheme, another library.

Quadrilaterals on the edges of the given cells, contact layers between doubled nodes, and a two-stage
diagonally implicit Runge-Kutta scheme of second order. With constant properties the elements are of second
order; with melting they are of first order with the heat content gathered at the nodes.
"""

import numpy as np
from scipy.sparse import coo_matrix, diags
from scipy.sparse.linalg import splu
from skfem import Basis, BilinearForm, FacetBasis, LinearForm, MeshQuad
from skfem.helpers import dot, grad

TOUCHING_W_M2K = 1e9  # so good a contact that it costs less than 0.1 K
GAMMA = 1 - 1 / np.sqrt(2)
_GAUSS_PLACES, _GAUSS_WEIGHTS = np.polynomial.legendre.leggauss(4)


@BilinearForm
def conduction_form(u, v, w):
    """Heat that flows by the slope of temperature."""
    return w["value"] * dot(grad(u), grad(v)) * 2 * np.pi * w.x[0]


@BilinearForm
def storage_form(u, v, w):
    """Heat that stays."""
    return w["value"] * u * v * 2 * np.pi * w.x[0]


@LinearForm
def _face_heat(v, w):
    return v * 2 * np.pi * w.x[0]


class JointElements:
    """Matrices of one joint; ``outwards`` and ``down`` are the contacts between cells, 0 at the weld face."""

    def __init__(self, *, cells, outwards, down, element):
        """Build the mesh in metres and the matrix of the contacts in watts."""
        self.part, self.outwards, self.down, self.element = cells.part, outwards, down, element
        self.radius = cells.grid.radius_edges_mm / 1000
        self.height = cells.grid.height_edges_mm / 1000
        self.cell_rows, self.cell_columns = np.nonzero(cells.part >= 0)
        self.corners, places = self._corners()
        element_corners = self.corners[self.cell_rows, self.cell_columns]
        self.mesh = MeshQuad(places, np.ascontiguousarray(element_corners.T), sort_t=False)
        self.basis = Basis(self.mesh, element, intorder=5)
        self.element_part = cells.part[self.cell_rows, self.cell_columns]
        self.facets = {tuple(sorted(pair)): i for i, pair in enumerate(self.mesh.facets.T)}
        self.contacts = self._contacts(outwards, down)

    def by_part(self, values):
        """Spread one value for each part over the points of integration."""
        shape = (len(self.element_part), self.basis.X.shape[1])
        return np.broadcast_to(np.asarray(values, dtype=float)[self.element_part][:, None], shape)

    def conduction(self, conductivity_w_mk):
        """Matrix of conduction and contacts with one conductivity for each part."""
        return conduction_form.assemble(self.basis, value=self.by_part(conductivity_w_mk)) + self.contacts

    def storage(self, heat_capacity_j_mm3k):
        """Matrix of storage with one heat capacity for each part."""
        return storage_form.assemble(self.basis, value=1e9 * self.by_part(heat_capacity_j_mm3k))

    def _corners(self):
        """Number the corners of the cells; cells that touch perfectly share them, others do not."""
        rows, columns = self.part.shape
        number = np.arange(rows * columns * 4).reshape(
            rows, columns, 4
        )  # order: in/up, out/up, out/down, in/down
        parent = np.arange(number.size)

        def root(i):
            while parent[i] != i:
                i = parent[i]
            return i

        for i, j in zip(*np.nonzero(np.isinf(self.outwards)), strict=True):
            parent[root(number[i, j + 1, 0])] = root(number[i, j, 1])
            parent[root(number[i, j + 1, 3])] = root(number[i, j, 2])
        for i, j in zip(*np.nonzero(np.isinf(self.down)), strict=True):
            parent[root(number[i + 1, j, 0])] = root(number[i, j, 3])
            parent[root(number[i + 1, j, 1])] = root(number[i, j, 2])
        roots = np.array([root(i) for i in range(number.size)]).reshape(number.shape)
        used = roots[self.part >= 0]
        kept, numbered = np.unique(used, return_inverse=True)
        corners = np.full(roots.shape, -1)
        corners[self.part >= 0] = numbered.reshape(used.shape)
        i, j, corner = np.unravel_index(kept, number.shape)
        right, lower = np.isin(corner, (1, 2)), np.isin(corner, (2, 3))
        return corners, np.array([self.radius[j + right], self.height[i + lower]])

    def _edge_dofs(self, one, two):
        """Degrees of freedom on the edge between two corners: both ends, and the middle if it has one."""
        ends = list(self.basis.nodal_dofs[0, [one, two]])
        if not len(self.basis.facet_dofs):
            return ends
        return [*ends, self.basis.facet_dofs[0, self.facets[tuple(sorted((one, two)))]]]

    def _contacts(self, outwards, down):
        """Matrix of the contact layers, each edge on its own."""
        entries = []
        for i, j in zip(*np.nonzero((outwards > 0) & np.isfinite(outwards)), strict=True):
            ends = [
                (self.corners[i, j, 1], self.corners[i, j, 2]),
                (self.corners[i, j + 1, 0], self.corners[i, j + 1, 3]),
            ]
            along = self.height[i + 1] - self.height[i]
            entries.append((ends, np.array([self.radius[j + 1]] * 2), along, outwards[i, j]))
        for i, j in zip(*np.nonzero((down > 0) & np.isfinite(down)), strict=True):
            ends = [
                (self.corners[i, j, 3], self.corners[i, j, 2]),
                (self.corners[i + 1, j, 0], self.corners[i + 1, j, 1]),
            ]
            along = self.radius[j + 1] - self.radius[j]
            entries.append((ends, self.radius[j : j + 2], along, down[i, j]))
        return self._layers(entries)

    def _layers(self, entries):
        """Assemble layers given by the ends on both sides, their radii, length and conductance."""
        place = (1 + _GAUSS_PLACES) / 2
        shapes = np.array([(1 - place) * (1 - 2 * place), place * (2 * place - 1), 4 * place * (1 - place)])
        if not len(self.basis.facet_dofs):
            shapes = np.array([1 - place, place])
        size, edge = self.basis.N, 2 * len(shapes)
        found = ([], [], [])
        for ends, radii, along, conductance in entries:
            weight = conductance * along / 2 * _GAUSS_WEIGHTS * 2 * np.pi * np.interp(place, [0, 1], radii)
            local = (shapes * weight) @ shapes.T
            dofs = np.concatenate([self._edge_dofs(*pair) for pair in ends])
            both = np.block([[local, -local], [-local, local]])
            found[0].append(np.repeat(dofs, edge))
            found[1].append(np.tile(dofs, edge))
            found[2].append(both.ravel())
        if not entries:
            return coo_matrix((size, size)).tocsr()
        values = [np.concatenate(part) for part in found]
        return coo_matrix((values[2], (values[0], values[1])), shape=(size, size)).tocsr()

    def touching(self, face_row, face_columns):
        """Matrix that joins the two faces of the weld above ``face_row``."""
        down = np.zeros_like(self.down)
        down[face_row - 1, :face_columns] = TOUCHING_W_M2K
        return self._contacts(np.zeros_like(self.outwards), down)

    def face_load(self, face_row, face_columns, flux_w_mm2):
        """Heat of one flux into both faces of the weld."""
        facets = []
        for j in range(face_columns):
            for i, ends in ((face_row - 1, (3, 2)), (face_row, (0, 1))):
                facets.append(self.facets[tuple(sorted(self.corners[i, j, list(ends)]))])
        return 1e6 * flux_w_mm2 * _face_heat.assemble(FacetBasis(self.mesh, self.element, facets=facets))

    def at_centres(self, weights, grid):
        """Row of numbers that picks a weighted mean of the solution at the middles of the cells of a grid."""
        row = np.zeros(self.basis.N)
        radius, height = (edges / 1000 for edges in (grid.radius_edges_mm, grid.height_edges_mm))
        for i, j in np.argwhere(weights > 0):
            middle = [(radius[j] + radius[j + 1]) / 2, (height[i] + height[i + 1]) / 2]
            row += weights[i, j] * self.basis.probes(np.array(middle)[:, None]).toarray()[0]
        return row


def march(storage, stages, *, start_c, rows):
    """March through stages of (matrix, load, duration, steps); return times and the picked temperatures."""
    gamma = GAMMA
    solution = np.full(storage.shape[0], float(start_c))
    times, found = [0.0], [rows @ solution]
    for matrix, load, duration, steps in stages:
        step = duration / steps
        solver = splu((storage + gamma * step * matrix).tocsc())
        for _ in range(steps):
            first = solver.solve(load - matrix @ solution)
            second = solver.solve(load - matrix @ (solution + (1 - gamma) * step * first))
            solution = solution + step * ((1 - gamma) * first + gamma * second)
            times.append(times[-1] + step)
            found.append(rows @ solution)
    return np.array(times), np.array(found)


class MeltingJoint:
    """A joint with tables of heat content (J/mm3) and conductivity (W/mK) over temperature for each part."""

    def __init__(self, elements, *, contents, conductivities):
        """Gather element matrices for a conductivity of one, and the volume of each part at each node."""
        self.elements, self.conductivities = elements, conductivities
        basis = elements.basis
        ones = np.ones((len(elements.element_part), basis.X.shape[1]))
        self.local = conduction_form.coo_data(basis, value=ones).tolocal()
        self.dofs = basis.element_dofs
        self.contents = []
        for part, content in enumerate(contents):
            here = 1e9 * ones * (elements.element_part == part)[:, None]
            self.contents.append((storage_form.assemble(basis, value=here) @ np.ones(basis.N), content))

    def content(self, temperature):
        """Heat in joules at each node, and its slope."""
        heat, slope = np.zeros_like(temperature), np.zeros_like(temperature)
        for volume, (places, values) in self.contents:
            heat += volume * np.interp(temperature, places, values)
            line = np.clip(np.searchsorted(places, temperature, side="right") - 1, 0, len(places) - 2)
            slope += volume * ((values[line + 1] - values[line]) / (places[line + 1] - places[line]))
        return heat, slope

    def conduction(self, temperature):
        """Matrix of conduction with conductivities at the mean temperature of each element."""
        mean = temperature[self.dofs].mean(axis=0)
        value = np.empty_like(mean)
        for part, (places, values) in enumerate(self.conductivities):
            here = self.elements.element_part == part
            value[here] = np.interp(mean[here], places, values)
        nodes = len(self.dofs)
        rows = np.repeat(self.dofs.T[:, :, None], nodes, axis=2)
        columns = np.repeat(self.dofs.T[:, None, :], nodes, axis=1)
        size = self.elements.basis.N
        data = (self.local * value[:, None, None]).ravel()
        return coo_matrix((data, (rows.ravel(), columns.ravel())), shape=(size, size)).tocsr()

    def _solve(self, heat, guess, step, extra, load):
        """Solve content(T) = heat + step (load - K T) by Newton steps; return T and its heat flow."""
        temperature = guess
        for attempt in range(80):
            if attempt < 4:  # later ones keep the conductivity, so that Newton steps come to rest
                matrix = self.conduction(temperature) + self.elements.contacts + extra
            content, slope = self.content(temperature)
            flow = load - matrix @ temperature
            change = splu((diags(slope) + step * matrix).tocsc()).solve(heat + step * flow - content)
            temperature = temperature + (change if attempt < 12 else change / 2)
            if np.abs(change).max() < 1e-3:
                return temperature, (self.content(temperature)[0] - heat) / step
        message = "temperatures of the comparison must come to rest in 80 steps, got none"
        raise ArithmeticError(message)

    def march(self, stages, *, start_c, rows):
        """March through stages of (extra matrix, load, duration, steps); return times and temperatures."""
        temperature = np.full(self.elements.basis.N, float(start_c))
        times, found = [0.0], [rows @ temperature]
        for extra, load, duration, steps in stages:
            step = duration / steps
            for _ in range(steps):
                heat = self.content(temperature)[0]
                middle, flow = self._solve(heat, temperature, GAMMA * step, extra, load)
                heat = heat + (1 - GAMMA) * step * flow
                temperature, _ = self._solve(heat, middle, GAMMA * step, extra, load)
                times.append(times[-1] + step)
                found.append(rows @ temperature)
        return np.array(times), np.array(found)
