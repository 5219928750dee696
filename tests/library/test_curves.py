"""Property curves: pieces join, ranges are enforced, integrals are exact."""

import dataclasses

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.curves import Curve, Piece, curves_from_rows
from secondplate.tables import load


def curve(*pieces, kelvin=False):
    """Make a curve of pieces without caring for its source."""
    return Curve(
        quantity="heat capacity", of="test metal", unit="J/kgK", kelvin=kelvin, pieces=pieces,
        conditions="none", source="practice", locator="none", basis="common practice",
    )  # fmt: skip


CUBIC = Piece(from_c=0, to_c=100, terms=tuple(("power", n, c) for n, c in enumerate((1.0, 2.0, 3.0, 4.0))))


@given(st.floats(0, 100), st.floats(0, 100))
def test_integral_of_a_polynomial(one, other):
    """The integral of a cubic is its closed form."""

    def closed(x):
        return x + x**2 + x**3 + x**4

    low, high = sorted((one, other))
    # Relative to the whole curve: the difference of two large numbers loses digits.
    assert curve(CUBIC).integral(low, high) == pytest.approx(
        closed(high) - closed(low), abs=1e-12 * closed(100)
    )


def test_integral_next_to_a_pole():
    """Three kelvin below a pole the integral still equals the logarithm."""
    pole = Piece(from_c=600, to_c=735, terms=(("pole above", 738, 13002.0),))
    closed = 13002 * np.log((738 - 600) / (738 - 735))
    assert curve(pole).integral(600, 735) == pytest.approx(closed, rel=1e-9)  # what the nodes are chosen for


def test_integral_holds_the_ends():
    """Outside the range the end values are held."""
    line = Piece(from_c=100, to_c=200, terms=(("power", 1, 1.0),))
    assert curve(line).integral(50, 100) == pytest.approx(50 * 100, rel=1e-12)
    assert curve(line).integral(200, 300) == pytest.approx(100 * 200, rel=1e-12)
    assert curve(line).integral(50, 300) == pytest.approx(5_000 + 15_000 + 20_000, rel=1e-12)


def test_kelvin_formula_is_asked_in_celsius():
    """A formula in kelvin gets its kelvin; the caller gives Celsius."""
    line = Piece(from_c=0, to_c=100, terms=(("power", 1, 1.0),))
    assert curve(line, kelvin=True).at(20) == pytest.approx(293.15, rel=1e-15)


def test_points_are_joined_by_straight_lines():
    """Between two points the value is on the straight line."""
    points = Piece(from_c=0, to_c=20, terms=(("point", 0, 1.0), ("point", 10, 3.0), ("point", 20, 2.0)))
    np.testing.assert_allclose(curve(points).at([0.0, 5.0, 10.0, 15.0]), [1, 2, 3, 2.5], rtol=1e-15)


def test_outside_the_range_is_refused():
    """A temperature outside the range is refused with range and names."""
    with pytest.raises(
        ValueError,
        match="^temperature for the heat capacity of test metal must be between 0 C and 100 C, got 101 C$",
    ):
        curve(CUBIC).at(101)


def test_gaps_between_pieces_are_refused():
    """Pieces that do not join are refused."""
    later = dataclasses.replace(CUBIC, from_c=110, to_c=200)
    with pytest.raises(
        ValueError, match="^pieces of heat capacity of test metal must join, got 100 C followed"
    ):
        curve(CUBIC, later)


@pytest.mark.parametrize(
    ("terms", "complaint"),
    [
        ((("sine", 1, 1.0),), "kind of term must be one of point, power, pole above, pole below, got 'sine'"),
        (
            (("point", 1, 1.0), ("power", 0, 1.0)),
            "a piece must be made of points or of terms, got point, power",
        ),
    ],
)
def test_unknown_or_mixed_terms_are_refused(terms, complaint):
    """A piece is made of known terms, or of points only."""
    with pytest.raises(ValueError, match=f"^{complaint}$"):
        Piece(from_c=0, to_c=1, terms=terms)


@pytest.mark.parametrize(
    "found", curves_from_rows(load("material_curves")), ids=lambda c: f"{c.of} {c.source}"
)
def test_each_curve_is_positive_and_continuous(found):
    """Every curve of the tables is positive, and jumps at its joints by no more than its source says."""
    inside = np.linspace(found.low_c, found.high_c, 400)
    assert (found.at(inside) > 0).all()
    for piece in found.pieces[1:]:
        below, above = found.at(piece.from_c - 1e-9), found.at(piece.from_c)
        # Largest jump of the standard: 650 against 650.4 J/kgK at 900 C, 27.36 against 27.3 W/mK at 800 C.
        assert below == pytest.approx(above, rel=3e-3)
