"""What the heat model computes on: a grid filled with substances, contacts between them, and the outside.

Leaves out faces that slope: a cell belongs to one substance or to none.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.checks import require_at_least, require_between, require_choice, require_finite
from secondplate.heat.grid import Grid
from secondplate.heat.substances import HIGHEST_C, LOWEST_C, Substance

EMPTY = -1
END_KINDS = ("insulated", "exposed")


@dataclass(frozen=True, kw_only=True, eq=False)
class Body:
    """Cells with their substance, contacts between neighbours, and what happens at the outside.

    Parameters
    ----------
    grid : secondplate.heat.grid.Grid
        Edges of the cells [-]
    substances : tuple of secondplate.heat.substances.Substance
        Substances that occur [-]
    where : array of int
        Number of the substance of each cell by row and column, -1 where there is nothing [-]
    radial_contact_w_m2k : float or array
        Contact conductance between neighbours along the radius, shape (rows, columns - 1); infinite where
        they are one piece, 0 where they do not touch [W/m2K]
    height_contact_w_m2k : float or array
        Contact conductance between neighbours along the axis, shape (rows - 1, columns) [W/m2K]
    film_w_m2k : float
        Heat transfer coefficient of exposed faces, 0 to 1e6 W/m2K [W/m2K]
    emittance : float
        Emittance of exposed faces, 0 to 1 [-]
    ambient_c : float
        Temperature around exposed faces, -100 C to 1000 C [C]
    upper_end : str or float
        Upper end of the grid: ``insulated``, ``exposed`` to film and radiation, or its temperature; faces
        next to empty cells are always exposed [C]
    lower_end : str or float
        Lower end of the grid, in the same way [C]
    inner_end : str or float
        Inner end where the grid begins off the axis, in the same way [C]
    outer_end : str or float
        Outer end of the grid, in the same way [C]

    Raises
    ------
    ValueError
        If a shape does not fit the grid, a number of a substance is unknown, or a value is out of its range.

    Examples
    --------
    >>> from secondplate.heat.substances import metal
    >>> plate = Body(grid=Grid(radius_edges_mm=[0, 5, 10], height_edges_mm=[0, 1.5]),
    ...              substances=(metal("6xxx aluminium"),), where=[[0, 0]])
    >>> plate.radial_contact_w_m2k.tolist()
    [[inf]]
    """

    grid: Grid
    substances: tuple[Substance, ...]
    where: np.ndarray
    radial_contact_w_m2k: np.ndarray = np.inf
    height_contact_w_m2k: np.ndarray = np.inf
    film_w_m2k: float = 0.0
    emittance: float = 0.0
    ambient_c: float = 20.0
    upper_end: str | float = "insulated"
    lower_end: str | float = "insulated"
    inner_end: str | float = "insulated"
    outer_end: str | float = "insulated"

    def __post_init__(self):
        """Keep the arrays with their full shape, or refuse them."""
        where = np.asarray(self.where)
        if where.shape != self.grid.shape or where.dtype.kind not in "iu":
            message = f"where must be an array of int with the shape {self.grid.shape} of the grid, "
            message += f"got {where.dtype} with the shape {where.shape}"
            raise ValueError(message)
        require_between("number of a substance", where, EMPTY, len(self.substances) - 1, unit="")
        if not np.any(where > EMPTY):
            message = "body must have at least one cell that is not empty, got 0"
            raise ValueError(message)
        object.__setattr__(self, "where", where)
        for name in ("radial_contact_w_m2k", "height_contact_w_m2k"):
            object.__setattr__(self, name, self.checked_contact(name, getattr(self, name)))
        require_between("film", self.film_w_m2k, 0, 1e6, unit="W/m2K")
        require_between("emittance", self.emittance, 0, 1, unit="")
        require_between("ambient", self.ambient_c, LOWEST_C, 1000, unit="C")
        for name in ("upper_end", "lower_end", "inner_end", "outer_end"):
            _check_end(name, getattr(self, name))

    def checked_contact(self, name, contact_w_m2k):
        """Return contact conductances as a full array of their direction, or raise; infinity is allowed."""
        rows, columns = self.grid.shape
        shape = (rows, columns - 1) if name.startswith("radial") else (rows - 1, columns)
        what = name.removesuffix("_w_m2k").replace("_", " ")
        given = np.asarray(contact_w_m2k)
        if given.shape not in ((), shape) or given.dtype.kind not in "iuf":
            message = f"{what} must be a number in W/m2K or an array with the shape {shape}, "
            message += f"got {given.dtype} with the shape {given.shape}"
            raise ValueError(message)
        array = np.broadcast_to(given.astype(float), shape)
        require_at_least(what, array[~np.isposinf(array)], 0, unit="W/m2K")
        return array

    def heat_j(self, temperature_c):
        """Heat content of the whole body.

        Parameters
        ----------
        temperature_c : float or array
            Temperature of all cells, or of each by row and column; that of empty cells does not matter [C]

        Returns
        -------
        float
            Heat content; only differences have a meaning [J]

        Raises
        ------
        ValueError
            If a temperature lies outside the tables of the substances.

        Examples
        --------
        >>> from secondplate.heat.substances import metal
        >>> plate = Body(grid=Grid(radius_edges_mm=[0, 10], height_edges_mm=[0, 1.5]),
        ...              substances=(metal("6xxx aluminium"),), where=[[0]])
        >>> round(plate.heat_j(30.0) - plate.heat_j(20.0), 2)
        11.62
        """
        temperatures = np.broadcast_to(np.asarray(temperature_c, dtype=float), self.grid.shape)
        found = 0.0
        for number, substance in enumerate(self.substances):
            cells = self.where == number
            if np.any(cells):
                found += self.grid.volumes_mm3[cells] @ substance.heat_at_j_mm3(temperatures[cells])
        return float(found)


def _check_end(name, end):
    """Refuse an outer face that is neither a known kind nor a temperature."""
    words = name.replace("_", " ")
    if isinstance(end, str):
        require_choice(words, end, END_KINDS)
    else:
        require_between(words, require_finite(words, end, unit="C"), LOWEST_C, HIGHEST_C, unit="C")
