"""The grid of the heat model: rings of a cylinder between edges along the radius and edges down the axis.

It knows lengths, areas and volumes only. Arrays over the grid have rows down the axis and columns outwards.
"""

import math
from dataclasses import dataclass

import numpy as np

from secondplate.checks import require_above, require_at_least, require_between, require_finite

# Beyond this a run would take minutes and gigabytes.
_MOST_CELLS = 1_000_000


@dataclass(frozen=True, kw_only=True, eq=False)
class Grid:
    """Rings of rectangular section round an axis.

    Parameters
    ----------
    radius_edges_mm : sequence of float
        Edges of the columns, rising from 0 or more [mm]
    height_edges_mm : sequence of float
        Edges of the rows, rising in the direction down the axis [mm]

    Raises
    ------
    ValueError
        If there are fewer than two edges, a cell has no size, or a radius lies below 0.

    Examples
    --------
    >>> grid = Grid(radius_edges_mm=[0, 1, 3], height_edges_mm=[0, 0.5, 1])
    >>> grid.shape
    (2, 2)
    >>> grid.volumes_mm3.round(3).tolist()
    [[1.571, 12.566], [1.571, 12.566]]
    """

    radius_edges_mm: np.ndarray
    height_edges_mm: np.ndarray

    def __post_init__(self):
        """Keep the edges as read-only arrays, or refuse them."""
        for name in ("radius_edges_mm", "height_edges_mm"):
            edges = np.array(_checked_edges(name.removesuffix("_mm").replace("_", " "), getattr(self, name)))
            edges.flags.writeable = False
            object.__setattr__(self, name, edges)
        require_at_least("radius edges", self.radius_edges_mm[0], 0, unit="mm")
        require_between("number of cells", math.prod(self.shape), 1, _MOST_CELLS, unit="")

    @property
    def shape(self):
        """Number of rows and of columns."""
        return len(self.height_edges_mm) - 1, len(self.radius_edges_mm) - 1

    @property
    def widths_mm(self):
        """Lengths of the cells along the radius, by column, in mm."""
        return np.diff(self.radius_edges_mm)

    @property
    def heights_mm(self):
        """Lengths of the cells along the axis, by row, in mm."""
        return np.diff(self.height_edges_mm)

    @property
    def radii_mm(self):
        """Radii of the middles of the cells, by column, in mm."""
        return (self.radius_edges_mm[1:] + self.radius_edges_mm[:-1]) / 2

    @property
    def depths_mm(self):
        """Places of the middles of the cells along the axis, by row, in mm."""
        return (self.height_edges_mm[1:] + self.height_edges_mm[:-1]) / 2

    @property
    def ring_areas_mm2(self):
        """Areas of the faces across the axis, ``pi (r2^2 - r1^2)``, by column, in mm2."""
        return math.pi * np.diff(self.radius_edges_mm**2)

    @property
    def mantle_areas_mm2(self):
        """Areas of the faces round the axis, ``2 pi r dz``, by row and edge of the radius, in mm2."""
        return 2 * math.pi * self.heights_mm[:, None] * self.radius_edges_mm

    @property
    def volumes_mm3(self):
        """Volumes of the cells in mm3."""
        return self.heights_mm[:, None] * self.ring_areas_mm2


def _checked_edges(name, edges):
    """Return edges as an array that rises from one to the next, or raise."""
    found = np.atleast_1d(require_finite(name, edges, unit="mm"))
    if found.ndim != 1 or found.size < 2:
        message = f"{name} must be a row of at least 2 lengths in mm, got {found.size}"
        raise ValueError(message)
    require_above(f"length of a cell between {name}", np.diff(found), 0, unit="mm")
    return found


def graded_edges(stops_mm, *, fine_at_mm, finest_mm, growth=0.12, coarsest_mm=math.inf):
    """Return edges through every stop, close together at the fine places and wider away from them.

    The length of a cell at the distance s from the nearest fine place is near
    ``min(coarsest, finest + growth s)``, so neighbours differ by the factor 1 + growth; between two stops
    it is shrunk evenly until a whole number of cells fits.

    Parameters
    ----------
    stops_mm : sequence of float
        Places that must be edges; at least two [mm]
    fine_at_mm : sequence of float
        Places where the cells are finest [mm]
    finest_mm : float
        Length of the cells there, above 0 [mm]
    growth : float
        Growth of a cell's length with the distance, 0 to 0.5 [-]
    coarsest_mm : float
        Greatest length of a cell, above 0, infinite where there is no such limit [mm]

    Returns
    -------
    numpy.ndarray
        The edges, rising [mm]

    Raises
    ------
    ValueError
        If a length is not above 0, the growth out of its range, or there are fewer than two stops.

    Notes
    -----
    Source: geometry.

    Examples
    --------
    >>> graded_edges([0, 1], fine_at_mm=[0], finest_mm=0.1, growth=0.5).round(2).tolist()
    [0.0, 0.11, 0.29, 0.57, 1.0]
    """
    require_above("finest length of a cell", finest_mm, 0, unit="mm")
    require_between("growth of the cells", growth, 0, 0.5, unit="")
    if coarsest_mm != math.inf:
        require_above("coarsest length of a cell", coarsest_mm, 0, unit="mm")
    fine = np.atleast_1d(require_finite("fine places", fine_at_mm, unit="mm"))
    stops = _checked_edges("stops", np.unique(np.round(require_finite("stops", stops_mm, unit="mm"), 9)))
    edges = [stops[:1]]
    for low, high in zip(stops[:-1], stops[1:], strict=True):
        place = np.linspace(low, high, 401)
        away = np.min(np.abs(place[:, None] - fine), axis=1)
        per_mm = 1 / np.minimum(coarsest_mm, finest_mm + growth * away)
        steps = (per_mm[1:] + per_mm[:-1]) / 2 * np.diff(place)
        count = np.concatenate([[0], np.cumsum(steps)])
        # A tenth of a cell too many is better than a cell of a tenth.
        whole = max(1, math.ceil(count[-1] - 0.1))
        edges.append(np.interp(np.linspace(0, count[-1], whole + 1)[1:], count, place))
        edges[-1][-1] = high
    return np.concatenate(edges)
