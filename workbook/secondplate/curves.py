"""Property curves over temperature: polynomials with poles in pieces, or points joined by straight lines.

A curve knows its source and its range, and refuses a temperature outside it.
"""

from dataclasses import dataclass
from functools import cache

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_between, require_choice
from secondplate.units import k_from_c

_TERMS = {
    "power": lambda theta, place: theta**place,
    "pole above": lambda theta, place: 1 / (place - theta),
    "pole below": lambda theta, place: 1 / (theta - place),
}


@cache
def _gauss_legendre():
    """Return nodes and weights, enough for 1e-9 even next to the pole that heat capacity has at 735 C."""
    return np.polynomial.legendre.leggauss(48)  # loaded only when somebody integrates


@dataclass(frozen=True, kw_only=True)
class Piece:
    """One piece of a curve: a sum of terms, or points to join.

    Parameters
    ----------
    from_c : float
        Lower end [C]
    to_c : float
        Upper end [C]
    terms : tuple of (str, float, float)
        Kind of term, its exponent, pole or temperature, and its value [-]

    Examples
    --------
    >>> Piece(from_c=20, to_c=1200, terms=(("power", 0, 14.6), ("power", 1, 0.0127))).at(100.0)
    15.87
    """

    from_c: float
    to_c: float
    terms: tuple[tuple[str, float, float], ...]

    def __post_init__(self):
        """Refuse an unknown kind of term and points mixed with terms."""
        kinds = {kind for kind, _, _ in self.terms}
        for kind in kinds:
            require_choice("kind of term", kind, ("point", *_TERMS))
        if "point" in kinds and len(kinds) > 1:
            message = f"a piece must be made of points or of terms, got {', '.join(sorted(kinds))}"
            raise ValueError(message)

    def at(self, theta):
        """Evaluate the piece at temperatures on its own scale."""
        if self.terms[0][0] == "point":
            places, heights = zip(*((place, value) for _, place, value in self.terms), strict=True)
            return np.interp(theta, places, heights)
        return sum(value * _TERMS[kind](theta, place) for kind, place, value in self.terms)


@dataclass(frozen=True, kw_only=True)
class Curve:
    """A property over temperature from one source.

    Parameters
    ----------
    quantity : str
        What the curve gives, for instance ``heat capacity`` [-]
    of : str
        Material it belongs to [-]
    unit : str
        Unit of its values [-]
    kelvin : bool
        Whether its formula wants kelvin; callers always give Celsius [-]
    pieces : tuple of Piece
        The pieces in rising order, each beginning where the last ended [-]
    conditions : str
        For what the curve holds [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        What the curve rests on [-]

    Raises
    ------
    ValueError
        If the pieces leave a gap or overlap.

    Examples
    --------
    >>> line = Piece(from_c=0, to_c=500, terms=(("power", 0, 903.0), ("power", 1, 0.41)))
    >>> curve = Curve(quantity="heat capacity", of="aluminium", unit="J/kgK", kelvin=False, pieces=(line,),
    ...               conditions="fire", source="en_1999_1_2", locator="3.3.1.2", basis="published")
    >>> curve.at(100)
    944.0
    """

    quantity: str
    of: str
    unit: str
    kelvin: bool
    pieces: tuple[Piece, ...]
    conditions: str
    source: str
    locator: str
    basis: str

    def __post_init__(self):
        """Refuse gaps and overlaps between the pieces."""
        for before, after in zip(self.pieces, self.pieces[1:], strict=False):
            if before.to_c != after.from_c:
                message = (
                    f"pieces of {self.quantity} of {self.of} must join, "
                    f"got {before.to_c:g} C followed by {after.from_c:g} C"
                )
                raise ValueError(message)

    @property
    def low_c(self):
        """Lowest temperature of the range in Celsius."""
        return self.pieces[0].from_c

    @property
    def high_c(self):
        """Highest temperature of the range in Celsius."""
        return self.pieces[-1].to_c

    def at(self, temperature_c):
        """Evaluate the curve at temperatures in Celsius, or raise where one lies outside its range."""
        name = f"temperature for the {self.quantity} of {self.of}"
        return plain(self._inside(require_between(name, temperature_c, self.low_c, self.high_c, unit="C")))

    def _inside(self, temperature_c):
        """Evaluate without asking; at a joint the upper piece counts."""
        celsius = np.asarray(temperature_c, dtype=float)
        theta = np.asarray(k_from_c(celsius)) if self.kelvin else celsius
        found = np.empty_like(celsius)
        for piece in self.pieces:
            here = (celsius >= piece.from_c) & (celsius <= piece.to_c)
            found[here] = piece.at(theta[here])
        return found

    def integral(self, from_c, to_c):
        """Integrate between two temperatures in Celsius, holding the end values outside the range."""
        edges = [piece.from_c for piece in self.pieces] + [self.high_c]
        inner = [edge for edge in edges if from_c < edge < to_c]
        return sum(map(self._integral_of_piece, [from_c, *inner], [*inner, to_c]))

    def _integral_of_piece(self, from_c, to_c):
        """Integrate where the curve is smooth, by Gauss and Legendre."""
        nodes, weights = _gauss_legendre()
        half = (to_c - from_c) / 2
        inside = np.clip(from_c + half * (1 + nodes), self.low_c, self.high_c)
        return float(half * weights @ self._inside(inside))


def curves_from_rows(rows):
    """Gather table rows into curves, one for each material, quantity and source, in table order.

    Parameters
    ----------
    rows : iterable of secondplate.tables.Row
        Rows with the keys material, from_c, to_c, scale, term and place [-]

    Returns
    -------
    tuple of Curve
        The curves [-]

    Raises
    ------
    ValueError
        If a scale is neither C nor K or pieces do not join.

    Examples
    --------
    >>> from secondplate.tables import load
    >>> curves_from_rows(load("material_curves"))[0].high_c
    1200.0
    """
    grouped = {}
    for row in rows:
        grouped.setdefault((row.keys["material"], row.name, row.source), []).append(row)
    return tuple(_curve(group) for group in grouped.values())


def _curve(rows):
    """Make one curve of its rows."""
    first = rows[0]
    scale = require_choice("scale", first.keys["scale"], ("C", "K"))
    ends = dict.fromkeys((float(row.keys["from_c"]), float(row.keys["to_c"])) for row in rows)
    return Curve(
        quantity=first.name,
        of=first.keys["material"],
        unit=first.unit,
        kelvin=scale == "K",
        pieces=tuple(_piece(rows, from_c, to_c) for from_c, to_c in ends),
        conditions=first.conditions,
        source=first.source,
        locator=first.locator,
        basis=first.basis,
    )


def _piece(rows, from_c, to_c):
    """Make the piece between two temperatures of the rows that carry them."""
    terms = tuple(
        (row.keys["term"], float(row.keys["place"]), row.number)
        for row in rows
        if (float(row.keys["from_c"]), float(row.keys["to_c"])) == (from_c, to_c)
    )
    return Piece(from_c=from_c, to_c=to_c, terms=terms)
