"""The riveted joint as cells for the conduction model: grid, parts, contacts and named places.

A sloping face of the rivet becomes a stair of cells.
"""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from secondplate.checks import require_at_least, require_between
from secondplate.heat.grid import Grid, graded_edges
from secondplate.heat.joint import PARTS, RivetedJoint, part_at

STUD, RIVET, TOP_PLATE, GAP, SECOND_PLATE, SLUG, BORE = range(len(PARTS))
# Cell beside the weld, and how much a cell may exceed it with the distance from there; found by halving them
# until the melted depths stood still within 2 %.
FINEST_MM = 0.025
_GROWTH = 0.12
_COARSEST_STUD_MM = 2.0
_COARSEST_PLATE_MM = 0.4
_FINEST_RADIUS_MM = 0.12
_GROWTH_RADIUS = 0.2
_MOST_GROWTH = 0.5  # that a grid may have
_COARSEST_RADIUS_MM = 6.0
# Distances from the axis at which the bond line and the plates are looked at, mm.
RADII_MM = (4.0, 6.0, 8.0, 12.0, 20.0)


@dataclass(frozen=True, kw_only=True)
class JointCells:
    """The joint cut into cells.

    Parameters
    ----------
    joint : RivetedJoint
        The joint [-]
    grid : secondplate.heat.grid.Grid
        Edges of the cells [-]
    part : numpy.ndarray of int
        Number of the part in ``joint.PARTS`` by row and column, -1 for open air [-]

    Examples
    --------
    >>> from secondplate.heat.joint import default_joint
    >>> cells = joint_cells(default_joint())
    >>> cells.part.shape == (cells.rows, cells.columns)
    True
    """

    joint: RivetedJoint
    grid: Grid
    part: np.ndarray

    @property
    def rows(self):
        """Number of rows, from the top of the stud down."""
        return self.part.shape[0]

    @property
    def columns(self):
        """Number of columns, from the axis out."""
        return self.part.shape[1]

    @property
    def face_row(self):
        """First row below the weld face, the uppermost row of the rivet head."""
        return int(np.searchsorted(self.grid.height_edges_mm, -1e-9))

    @property
    def haz_column(self):
        """Column above the middle of the shank's wall."""
        wall = (self.joint.bore_diameter_mm + self.joint.shank_diameter_mm) / 4
        return int(np.searchsorted(self.grid.radius_edges_mm, wall)) - 1

    @property
    def face_columns(self):
        """Number of columns that the stud's face covers."""
        return int(np.searchsorted(self.grid.radius_edges_mm, self.joint.flange_diameter_mm / 2 - 1e-9))


def _height_edges(joint, fineness):
    """Edges along the axis: through every face of the joint, fine at the weld."""
    growth = min(_GROWTH / fineness, _MOST_GROWTH)
    fine = {"fine_at_mm": [0.0], "finest_mm": FINEST_MM / fineness, "growth": growth}
    above = [-joint.stud_length_mm, -joint.flange_thickness_mm, 0.0]
    below = [0.0, joint.web_mm, joint.head_height_mm, joint.top_plate_mm, joint.second_plate_from_mm]
    below += [joint.slug_from_mm, joint.tail_depth_mm, joint.plates_to_mm, joint.button_to_mm]
    upper = graded_edges(above, coarsest_mm=_COARSEST_STUD_MM / fineness, **fine)
    lower = graded_edges(below, coarsest_mm=_COARSEST_PLATE_MM / fineness, **fine)
    return np.concatenate([upper, lower[1:]])


def _radius_edges(joint, fineness):
    """Edges outwards: through every radius of the joint, fine at the rim of the weld and near it."""
    flange = joint.flange_diameter_mm / 2
    stops = [0, joint.bore_diameter_mm / 2, joint.stud_diameter_mm / 2, joint.shank_diameter_mm / 2, flange]
    stops += [joint.head_diameter_mm / 2, joint.button_diameter_mm / 2, joint.outer_radius_mm]
    return graded_edges(
        stops,
        fine_at_mm=[flange],
        finest_mm=_FINEST_RADIUS_MM / fineness,
        growth=min(_GROWTH_RADIUS / fineness, _MOST_GROWTH),
        coarsest_mm=_COARSEST_RADIUS_MM / fineness,
    )


@lru_cache(maxsize=32)
def joint_cells(joint, *, fineness=1.0):
    """Cut a joint into cells.

    Parameters
    ----------
    joint : RivetedJoint
        The joint [-]
    fineness : float
        1 for the usual grid, 2 for cells of half the length and so on, 0.25 to 8 [-]

    Returns
    -------
    JointCells
        Grid and parts [-]

    Raises
    ------
    ValueError
        If the fineness is out of its range.

    Notes
    -----
    Source: geometry. A cell belongs to the part that holds its middle.

    Examples
    --------
    >>> from secondplate.heat.joint import default_joint
    >>> joint_cells(default_joint(), fineness=2).rows > joint_cells(default_joint()).rows
    True
    """
    fineness = require_between("fineness", fineness, 0.25, 8, unit="")
    radius, height = _radius_edges(joint, fineness), _height_edges(joint, fineness)
    grid = Grid(radius_edges_mm=radius, height_edges_mm=height)
    part = part_at(joint, grid.radii_mm[None, :], grid.depths_mm[:, None])
    part.flags.writeable = False  # kept and handed out again
    return JointCells(joint=joint, grid=grid, part=part)


def contact_w_m2k(*, part, contact_rivet_plates_w_m2k, contact_plates_w_m2k):
    """Return the contact conductance between neighbouring cells, outwards and downwards.

    Parameters
    ----------
    part : numpy.ndarray of int
        Number of the part by row and column, -1 for open air [-]
    contact_rivet_plates_w_m2k : float
        Conductance between the rivet and the aluminium that it touches, above 0 [W/m2K]
    contact_plates_w_m2k : float
        Conductance between plates, and between slug and second plate, above 0 [W/m2K]

    Returns
    -------
    tuple of numpy.ndarray
        Outwards (rows, columns - 1) and downwards (rows - 1, columns); infinite inside a part and at glued
        faces, 0 at the open air [W/m2K]

    Notes
    -----
    The two faces of the weld are given as touching; while the arc burns they are parted by the caller.
    Source: model choice.

    Examples
    --------
    >>> import numpy as np
    >>> outwards, down = contact_w_m2k(part=np.array([[1, 2], [1, -1]]), contact_rivet_plates_w_m2k=6000.0,
    ...                                contact_plates_w_m2k=5000.0)
    >>> outwards.tolist(), down.tolist()
    ([[6000.0], [0.0]], [[inf, 0.0]])
    """
    table = np.full((len(PARTS) + 1, len(PARTS) + 1), np.inf)
    aluminium = (TOP_PLATE, SECOND_PLATE, SLUG)
    for one in aluminium:
        for other in aluminium:
            if one != other:
                table[one, other] = contact_plates_w_m2k
        table[one, RIVET] = table[RIVET, one] = contact_rivet_plates_w_m2k
    table[-1, :] = table[:, -1] = 0.0  # part -1 picks the last line: open air
    return table[part[:, :-1], part[:, 1:]], table[part[:-1, :], part[1:, :]]


def places(joint, *, radii_mm=RADII_MM):
    """Return the named places of a joint at which a temperature is wanted.

    Parameters
    ----------
    joint : RivetedJoint
        The joint [-]
    radii_mm : sequence of float
        Distances from the axis for bond line and plates, at least half the shank diameter [mm]

    Returns
    -------
    dict of str to tuple of float
        Radius and height of each place by its name [mm]

    Raises
    ------
    ValueError
        If a radius lies inside the rivet or outside the plates.

    Notes
    -----
    The bond line is the middle of the gap, or the upper face of the second plate where the plates touch.
    Source: geometry.

    Examples
    --------
    >>> from secondplate.heat.joint import default_joint
    >>> places(default_joint())["bond line 8 mm out"]
    (8.0, 1.65)
    """
    wall = (joint.bore_diameter_mm + joint.shank_diameter_mm) / 4
    tail_wall = wall + (joint.tail_diameter_mm - joint.shank_diameter_mm) / 2
    bond = joint.top_plate_mm + joint.gap_mm / 2 + (1e-6 if joint.gap_mm == 0 else 0)
    found = {
        "stud above the flange": (0.0, -joint.flange_thickness_mm),
        "fusion face": (0.0, 1e-6),
        "web over the bore": (0.0, joint.web_mm - 1e-6),
        "rivet shank": (wall, (joint.web_mm + joint.second_plate_from_mm) / 2),
        "rivet tail": (tail_wall, joint.tail_depth_mm - 1e-6),
        "top plate at the head": (joint.head_diameter_mm / 2 + 0.2, 0.1),
        "second plate under the rivet": (tail_wall, joint.tail_depth_mm + joint.remaining_thickness_mm / 2),
        "button": (0.0, joint.button_to_mm - 1e-6),
    }
    heights = {
        "bond line": bond,
        "top plate": joint.top_plate_mm / 2,
        "second plate": joint.second_plate_from_mm + joint.second_plate_mm / 2,
    }
    for radius in radii_mm:
        require_at_least("radius of a place", radius, joint.shank_diameter_mm / 2, unit="mm")
        require_between("radius of a place", radius, 0, joint.outer_radius_mm, unit="mm")
        found |= {f"{what} {radius:g} mm out": (float(radius), height) for what, height in heights.items()}
    return found


def weights_at(cells, radius_mm, height_mm):
    """Return the cells around a place and their weights, for a temperature between their middles.

    Only cells of the part that holds the place take part.

    Parameters
    ----------
    cells : JointCells
        The joint in cells [-]
    radius_mm : float
        Radius of the place [mm]
    height_mm : float
        Height of the place [mm]

    Returns
    -------
    numpy.ndarray
        Weight of each cell by row and column, together 1 [-]

    Raises
    ------
    ValueError
        If the place lies in open air.

    Notes
    -----
    Source: linear interpolation.

    Examples
    --------
    >>> from secondplate.heat.joint import default_joint
    >>> float(weights_at(joint_cells(default_joint()), 8.0, 1.65).sum())
    1.0
    """
    row, row_shares = _around(cells.grid.height_edges_mm, height_mm)
    column, column_shares = _around(cells.grid.radius_edges_mm, radius_mm)
    weights = np.zeros(cells.part.shape)
    weights[np.ix_(*(list(shares) for shares in (row_shares, column_shares)))] = np.outer(
        list(row_shares.values()), list(column_shares.values())
    )
    weights[cells.part != cells.part[row, column]] = 0
    if cells.part[row, column] < 0:
        message = f"place must lie in the joint, got radius {radius_mm:g} mm and height {height_mm:g} mm"
        raise ValueError(message)
    return weights / weights.sum()


def _around(edges, place):
    """Return the cell that holds a place, and the shares of it and of its neighbour on that side."""
    middles = (edges[1:] + edges[:-1]) / 2
    here = int(np.clip(np.searchsorted(edges, place, side="right") - 1, 0, len(middles) - 1))
    other = here + (1 if place > middles[here] else -1)
    if not 0 <= other < len(middles):
        return here, {here: 1.0}
    share = float((place - middles[here]) / (middles[other] - middles[here]))
    return here, {here: 1 - share, other: share}
