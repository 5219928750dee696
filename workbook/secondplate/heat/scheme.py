"""One time step of the heat model: finite volumes in space, two stages in time.

For every cell ``V dh/dt = F(h) = P + sum of G (T' - T) - losses``, with the heat content h(T) as the unknown.
One step tau is a Rosenbrock method with g = 1 - 1/sqrt(2):

    J k1 = F(h),  J k2 = F(h + tau k1/V) - 2 k1,  h' = h + tau (3/2 k1 + 1/2 k2)/V

``J = 1 + g tau K/C`` with the conductances K of now and capacities C. It is L-stable, and of second order in
time whatever K and C are. That leaves C free: it is the least capacity nearby, without the heat of melting,
so that a cell which leaves its melting range within a step does not overshoot. Between the two stages a cell
may stand far beyond its end; the tables then go on as straight lines. Summing ``J k = F`` over all cells
leaves the sum of k, because what one cell gives another gets: the heat balance closes by construction.

A step far longer than a small cell takes to follow its neighbours, across which conductivity changes, can
swing; where that leads out of the tables, the step is done again in parts of one stage, ``(1 + tau K/C) k =
F(h)``: of first order only, but no cell passes what it is drawn towards.
"""

import numpy as np
from scipy.linalg.lapack import dpbtrf, dpbtrs

from secondplate.heat.body import EMPTY
from secondplate.heat.lookup import HeatLookup
from secondplate.heat.surface import Surface

GAMMA = 1 - 1 / np.sqrt(2)
_W_MM2K_PER_W_M2K = 1e-6
# Slopes of the lines along which cells are numbered; the one with the narrowest band is taken.
_SLOPES = (0.0, 0.4, 0.6, 0.8, 1.0, 1.3, 2.0, np.inf)
# A step is done in this many parts at most; what still leaves the tables has too much heat or too few steps.
MOST_PARTS = 200


class Scheme:
    """The equations of one body; a state is the heat content of its cells in J/mm3, empty ones left out.

    Parameters
    ----------
    body : secondplate.heat.body.Body
        The body [-]

    Examples
    --------
    >>> from secondplate.heat.body import Body
    >>> from secondplate.heat.grid import Grid
    >>> from secondplate.heat.substances import metal
    >>> rod = Body(grid=Grid(radius_edges_mm=[0, 1], height_edges_mm=[0, 1, 2]), where=[[0], [0]],
    ...            substances=(metal("carbon steel"),), upper_end=100.0)
    >>> scheme = Scheme(rod)
    >>> scheme.touch(rod.radial_contact_w_m2k, rod.height_contact_w_m2k)
    >>> heat = np.full(2, rod.substances[0].heat_at_j_mm3(20.0))
    >>> later, out_j = scheme.step(heat, 0.01, 0.0)
    >>> bool(np.isclose(scheme.volume_mm3 @ (later - heat), -out_j))
    True
    """

    def __init__(self, body):
        """Number the cells and list the faces between them."""
        grid = body.grid
        self.solid = body.where > EMPTY
        self._number = _numbered(self.solid)
        self._order = np.argsort(self._number[self.solid])
        self.volume_mm3 = self.packed(grid.volumes_mm3)
        self.lookup = HeatLookup(body.substances, self.packed(body.where))
        self._surface = Surface(body, self._number)
        self._across, one, two = _neighbours(self._number)
        same = self._on_faces(body.where[:, :-1] == body.where[:, 1:], body.where[:-1] == body.where[1:])
        half_r = np.broadcast_to(grid.widths_mm / 2, grid.shape)
        half_z = np.broadcast_to(grid.heights_mm[:, None] / 2, grid.shape)
        ring = np.broadcast_to(grid.ring_areas_mm2, grid.shape)
        self._all_faces = {
            "one": one,
            "two": two,
            "same": same,
            "half_one_mm": self._on_faces(half_r[:, :-1], half_z[:-1]),
            "half_two_mm": self._on_faces(half_r[:, 1:], half_z[1:]),
            "face_area_mm2": self._on_faces(grid.mantle_areas_mm2[:, 1:-1], ring[1:]),
        }

    def packed(self, field):
        """Return the values of a field by row and column in the order of the cells."""
        return field[self.solid][self._order]

    def spread(self, values):
        """Spread values of the cells over rows and columns, NaN in empty cells."""
        found = np.full(self.solid.shape, np.nan)
        found[self.solid] = values[self._number[self.solid]]
        return found

    def touch(self, radial_contact_w_m2k, height_contact_w_m2k):
        """Set the contacts of the steps to come."""
        contact = self._on_faces(radial_contact_w_m2k, height_contact_w_m2k)
        self._faces = Faces(contact_w_m2k=contact, **self._all_faces)
        self._band = _Band(self._faces.one, self._faces.two, len(self.volume_mm3))

    def _on_faces(self, radial, height):
        """Return values between neighbours, along the radius first, for the faces."""
        return np.concatenate([radial[self._across[0]], height[self._across[1]]])

    def _gain(self, heat):
        """Return what each cell gains, the losses of all, links and conductances to the outside, and C."""
        temperature, conductivity, integral, steepest = self.lookup.state(heat)
        gain, link = self._faces.flows(temperature, conductivity, integral)
        outside, loss = self._surface.losses(temperature, conductivity)
        return gain - loss, loss.sum(), link, outside, self.volume_mm3 / steepest

    def step(self, heat, tau_s, power_w):
        """Return the heat contents one step later, and the heat that left the body in J.

        A step so long that a cell would leave the table of its substance is done in parts of one stage each:
        half as long after each failure, twice as long after each success.
        """
        later, lost_j = self._step(heat, tau_s, power_w)
        if self.lookup.holds(later):
            return later, lost_j
        left_s, part_s, lost_j = tau_s, tau_s, 0.0
        for _ in range(MOST_PARTS):
            part_s = min(part_s, left_s)
            later, part_j = self._one_stage(heat, part_s, power_w)
            if not self.lookup.holds(later):
                part_s /= 2
                continue
            heat, lost_j, left_s = later, lost_j + part_j, left_s - part_s
            if left_s <= 0:
                return heat, lost_j
            part_s *= 2
        message = (
            "temperature must stay within the tables of the substances, got too much heat or too few steps"
        )
        raise ValueError(message)

    def _one_stage(self, heat, tau_s, power_w):
        """Do one step of one stage: of first order, but no cell passes what it is drawn towards."""
        gain, lost, link, outside, capacity = self._gain(heat)
        self._band.factor(capacity + tau_s * outside, tau_s * link)
        change = self._band.solve(gain + power_w)
        return heat + tau_s / self.volume_mm3 * capacity * change, tau_s * (lost + tau_s * (outside @ change))

    def _step(self, heat, tau_s, power_w):
        """Do one step as it is."""
        weight = GAMMA * tau_s
        gain, lost, link, outside, capacity = self._gain(heat)
        self._band.factor(capacity + weight * outside, weight * link)

        def rate(flow_w):
            """Solve J k = flow; also return what of the sum of k went outside."""
            change = self._band.solve(flow_w)
            return capacity * change, weight * (outside @ change)

        first, out = rate(gain + power_w)
        first_lost = lost + out
        gain, lost, *_ = self._gain(heat + tau_s / self.volume_mm3 * first)
        second, out = rate(gain + power_w - 2 * first)
        new = heat + tau_s / self.volume_mm3 * (1.5 * first + 0.5 * second)
        return new, tau_s * 0.5 * (first_lost + lost + out)


class Faces:
    """Faces between cells ``one`` and ``two``, those within one piece of a substance first.

    Within one piece the heat that flows is ``A / (d1/2 + d2/2)`` times the integral of k over temperature
    from one middle to the other, which stays exact where conductivity jumps at melting. Between two pieces
    it is ``(T2 - T1) A / (d1/(2 k1) + 1/contact + d2/(2 k2))``; no contact is an infinite resistance.

    Parameters
    ----------
    one : array of int
        Number of the first cell of each face [-]
    two : array of int
        Number of its second cell [-]
    same : array of bool
        Whether both are of one substance [-]
    half_one_mm : array
        Half the length of the first cell across the face [mm]
    half_two_mm : array
        Half the length of the second cell [mm]
    face_area_mm2 : array
        Area of the face [mm2]
    contact_w_m2k : array
        Contact conductance [W/m2K]

    Examples
    --------
    >>> pair = {"one": np.array([0]), "two": np.array([1]), "same": np.array([True])}
    >>> faces = Faces(**pair, half_one_mm=np.array([0.5]), half_two_mm=np.array([0.5]),
    ...               face_area_mm2=np.array([2.0]), contact_w_m2k=np.array([np.inf]))
    >>> gain, link = faces.flows(np.array([0.0, 10.0]), np.array([0.05, 0.05]), np.array([0.0, 0.5]))
    >>> gain.tolist(), link.tolist()
    ([1.0, -1.0], [0.1])
    """

    def __init__(self, *, one, two, same, half_one_mm, half_two_mm, face_area_mm2, contact_w_m2k):
        """Sort the faces and work out what does not change."""
        inside = same & np.isposinf(contact_w_m2k)
        order = np.argsort(~inside, kind="stable")
        self.one, self.two = one[order], two[order]
        self._count = int(np.count_nonzero(inside))
        within, self._between = order[: self._count], order[self._count :]
        self._shape_mm = face_area_mm2[within] / (half_one_mm[within] + half_two_mm[within])
        self._half_one, self._half_two = half_one_mm[self._between], half_two_mm[self._between]
        self._area = face_area_mm2[self._between]
        with np.errstate(divide="ignore"):
            self._contact_mm2k_w = 1 / (contact_w_m2k[self._between] * _W_MM2K_PER_W_M2K)

    def flows(self, temperature_c, conductivity_w_mmk, integral_w_mm):
        """Return the heat that each cell gains in W, and the conductance of each face in W/K."""
        one, two = np.split(self.one, [self._count]), np.split(self.two, [self._count])
        flow, link = np.empty(len(self.one)), np.empty(len(self.one))
        flow[: self._count] = self._shape_mm * (integral_w_mm.take(two[0]) - integral_w_mm.take(one[0]))
        best = np.maximum(conductivity_w_mmk.take(one[0]), conductivity_w_mmk.take(two[0]))
        link[: self._count] = self._shape_mm * best
        resistance = self._half_one / conductivity_w_mmk.take(one[1])
        resistance += self._half_two / conductivity_w_mmk.take(two[1])
        link[self._count :] = self._area / (resistance + self._contact_mm2k_w)
        flow[self._count :] = link[self._count :] * (temperature_c.take(two[1]) - temperature_c.take(one[1]))
        cells = len(temperature_c)
        return np.bincount(self.one, flow, cells) - np.bincount(self.two, flow, cells), link


class _Band:
    """Symmetric equations whose only entries beside the diagonal belong to faces between cells."""

    def __init__(self, one, two, count):
        """Remember where the entries of each face and of the diagonal stand in band storage."""
        self._one, self._two, self._count = one, two, count
        first = np.minimum(one, two)
        self._rows = 1 + (int(np.abs(two - one).max()) if len(one) else 0)
        self._beside = first * self._rows + np.abs(two - one)

    def factor(self, own, link):
        """Factor the matrix with ``own`` plus all links on the diagonal and minus the links beside it."""
        matrix = np.zeros((self._count, self._rows))
        matrix[:, 0] = (
            own + np.bincount(self._one, link, self._count) + np.bincount(self._two, link, self._count)
        )
        matrix.ravel()[self._beside] = -link
        self._factor, info = dpbtrf(matrix.T, lower=1, overwrite_ab=1)
        if info:
            message = f"equations of the heat model must be positive definite, got a failure at cell {info}"
            raise ArithmeticError(message)

    def solve(self, right):
        """Solve with the factored matrix."""
        return dpbtrs(self._factor, right, lower=1)[0]


def _numbered(solid):
    """Number the cells of the body so that neighbours have near numbers; empty cells get -1.

    The cells are sorted along lines of one slope; the less neighbours differ, the faster the equations are
    solved.
    """
    rows, columns = np.nonzero(solid)
    best, narrowest = None, np.inf
    for slope in _SLOPES:
        key = columns if slope == np.inf else rows + slope * columns
        number = np.full(solid.shape, EMPTY)
        number[rows, columns] = np.argsort(np.lexsort((rows if slope == np.inf else columns, key)))
        _, one, two = _neighbours(number)
        width = np.abs(two - one).max() if len(one) else 0
        if width < narrowest:
            best, narrowest = number, width
    return best


def _neighbours(number):
    """Return where both neighbours are cells of the body, along radius and axis, and their numbers."""
    pairs = ((number[:, :-1], number[:, 1:]), (number[:-1], number[1:]))
    across = [(one > EMPTY) & (two > EMPTY) for one, two in pairs]
    one, two = (
        np.concatenate([pair[side][both] for pair, both in zip(pairs, across, strict=True)])
        for side in (0, 1)
    )
    return across, one, two
