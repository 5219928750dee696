"""The grid of the heat model: lengths, areas, volumes, and edges that grow with the distance."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from secondplate.heat.grid import Grid, graded_edges

GRID = Grid(radius_edges_mm=[0, 1, 3], height_edges_mm=[0, 0.5, 2, 2.5])


def test_volumes_fill_the_cylinder():
    """Volumes add up to the cylinder, faces across the axis to its end, mantles to its side."""
    assert GRID.volumes_mm3.sum() == pytest.approx(math.pi * 9 * 2.5, rel=1e-12)  # rounding
    assert GRID.ring_areas_mm2.sum() == pytest.approx(math.pi * 9, rel=1e-12)  # rounding
    assert GRID.mantle_areas_mm2[:, -1].sum() == pytest.approx(2 * math.pi * 3 * 2.5, rel=1e-12)  # rounding
    assert GRID.mantle_areas_mm2[:, 0].tolist() == [0, 0, 0]


def test_middles_and_lengths():
    """Middles lie half-way between edges, and rows come first."""
    assert GRID.shape == GRID.volumes_mm3.shape == (3, 2)
    assert GRID.radii_mm.tolist() == [0.5, 2]
    assert GRID.depths_mm.tolist() == [0.25, 1.25, 2.25]
    assert GRID.widths_mm.tolist() == [1, 2]
    assert GRID.heights_mm.tolist() == [0.5, 1.5, 0.5]


def test_edges_cannot_be_changed():
    """A grid that others compute on stays as it is."""
    with pytest.raises(ValueError, match="read-only"):
        GRID.radius_edges_mm[0] = 1


@pytest.mark.parametrize(
    ("edges", "message"),
    [
        ([0, 1, 1], "length of a cell between radius edges must be above 0 mm, got 0 mm"),
        ([0, 2, 1], "length of a cell between radius edges must be above 0 mm, got -1 mm"),
        ([-1, 1], "radius edges must be at least 0 mm, got -1 mm"),
        ([1], "radius edges must be a row of at least 2 lengths in mm, got 1"),
        ([0, math.nan], "radius edges must be finite, got nan mm"),
        ([0, math.inf], "radius edges must be finite, got inf mm"),
        (["0", "1"], "radius edges must be a number in mm"),
    ],
)
def test_refused_edges(edges, message):
    """Cells without size, radii below 0 and edges that are no numbers are refused by one sentence."""
    with pytest.raises(ValueError, match=message):
        Grid(radius_edges_mm=edges, height_edges_mm=[0, 1])


def test_too_many_cells_are_refused():
    """A grid that no run could finish is refused."""
    edges = np.linspace(0, 1, 1102)
    with pytest.raises(ValueError, match="number of cells must be between 1 and 1e\\+06, got 1.2122e\\+06"):
        Grid(radius_edges_mm=edges, height_edges_mm=edges)


LENGTHS = st.lists(st.floats(0, 50), min_size=2, max_size=6, unique_by=lambda value: round(value, 1)).map(
    sorted
)


@settings(max_examples=60, deadline=None)
@given(stops=LENGTHS, finest=st.floats(0.02, 1), growth=st.floats(0, 0.5))
def test_graded_edges_keep_every_stop(stops, finest, growth):
    """Edges rise, pass through every stop, and no cell is longer than its place allows."""
    edges = graded_edges(stops, fine_at_mm=[stops[0]], finest_mm=finest, growth=growth, coarsest_mm=2)
    lengths = np.diff(edges)
    assert np.all(lengths > 0)
    assert np.all(
        np.min(np.abs(edges[:, None] - np.round(stops, 9)), axis=0) < 1e-9
    )  # stops are kept to 1e-9 mm
    middle = (edges[1:] + edges[:-1]) / 2
    allowed = np.minimum(2, finest + growth * (middle - stops[0]))
    assert np.all(lengths <= allowed * 1.3)  # a tenth of a cell is shared by its neighbours


def test_graded_edges_are_fine_where_wanted():
    """Cells on both sides of a fine place are of the finest length, and grow by the given factor."""
    edges = graded_edges([0, 20], fine_at_mm=[5], finest_mm=0.1, growth=0.1)
    lengths = np.diff(edges)
    assert lengths.min() == pytest.approx(0.1, rel=0.1)  # a whole number of cells must fit
    assert edges[np.argmin(lengths)] == pytest.approx(5, abs=0.1)
    assert np.max(lengths[1:] / lengths[:-1]) < 1.12


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"finest_mm": 0}, "finest length of a cell must be above 0 mm, got 0 mm"),
        ({"coarsest_mm": -1}, "coarsest length of a cell must be above 0 mm, got -1 mm"),
        ({"growth": 0.6}, "growth of the cells must be between 0 and 0.5, got 0.6"),
        ({"fine_at_mm": [math.nan]}, "fine places must be finite, got nan mm"),
        ({"stops_mm": [1, 1]}, "stops must be a row of at least 2 lengths in mm, got 1"),
    ],
)
def test_refused_grading(change, message):
    """Wrong lengths are refused by one sentence."""
    usual = {"stops_mm": [0, 1], "fine_at_mm": [0], "finest_mm": 0.1}
    wanted = usual | change
    with pytest.raises(ValueError, match=message):
        graded_edges(wanted.pop("stops_mm"), **wanted)
