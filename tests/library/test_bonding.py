"""Bonded laps against finite elements: shear lag, rivets as springs, peel as two beams on a layer."""

import numpy as np
import pytest
from skfem import Basis, BilinearForm, ElementLineHermite, ElementLineP2, MeshLine, solve
from skfem.helpers import dd, dot, grad

from secondplate.bonding import (
    BentLap,
    bent_lap_peel_mpa,
    bent_lap_shear_mpa,
    bond_peak_mpa,
    bond_shear_mpa,
    limit_overlap_mm,
    rivet_shares,
    stiff_plate_rivet_share,
    transfer_rate_per_mm,
)

CASES = 30
CELLS = 120


@BilinearForm
def slope_form(u, v, _):
    """Integrate slope times slope."""
    return dot(grad(u), grad(v))


@BilinearForm
def value_form(u, v, _):
    """Integrate value times value."""
    return u * v


@BilinearForm
def curvature_form(u, v, _):
    """Integrate curvature times curvature."""
    return dd(u)[0][0] * dd(v)[0][0]


def random_laps(seed):
    """Invent laps: load by width, overlap, moduli times thickness, shear modulus, layer."""
    rng = np.random.default_rng(seed)
    low, high = [20, 8, 0.8, 0.8, 0.5, 50, 0.1], [300, 40, 3.0, 3.0, 1.0, 1500, 0.5]
    return rng.uniform(low, high, (CASES, 7))


def slip_by_elements(half, wave, ends, springs=()):
    """Solve d'' = w^2 d on an overlap with springs at marks; return the slip at all nodes."""
    basis = Basis(MeshLine(np.linspace(-half, half, CELLS + 1)), ElementLineP2())
    matrix = (slope_form.assemble(basis) + wave**2 * value_form.assemble(basis)).tolil()
    load = np.zeros(basis.N)
    load[basis.nodal_dofs[0, 0]], load[basis.nodal_dofs[0, CELLS]] = ends
    for cell, stiffness in springs:
        number = basis.nodal_dofs[0, cell]
        matrix[number, number] += stiffness
    return solve(matrix.tocsr(), load)[basis.nodal_dofs[0]]


def test_shear_lag_agrees_with_finite_elements():
    """Thirty random laps with unlike plates: shear at 121 places within a per mille of the peak."""
    for load, overlap, t1, t2, ratio, shear, layer in random_laps(1):
        plates = (70000 * t1, 70000 * ratio * t2)
        bond = {"adhesive_modulus_mpa": shear, "adhesive_mm": layer}
        wave = transfer_rate_per_mm(plates, **bond)
        slip = slip_by_elements(overlap / 2, wave, (load / plates[0], load / plates[1]))
        lap = {"line_load_n_mm": load, "overlap_mm": overlap, "stiffnesses_n_mm": plates, **bond}
        x = np.linspace(-overlap / 2, overlap / 2, CELLS + 1)
        # Quadratic elements a hundredth of the overlap long.
        peak = bond_peak_mpa(**lap)
        np.testing.assert_allclose(shear / layer * slip, bond_shear_mpa(x, **lap), atol=1e-3 * peak)


def test_rivets_agree_with_finite_elements():
    """Thirty random riv-bonded laps with two rivets: both shares within a per mille."""
    for number, (_, overlap, t1, t2, ratio, shear, layer) in enumerate(random_laps(2)):
        plates, springs = (70000 * t1, 70000 * ratio * t2), np.array([20000.0, 60000.0])
        bond = {"adhesive_modulus_mpa": shear, "adhesive_mm": layer}
        cells, width = (30 + number % 20, 90), 25.0
        wave, give = transfer_rate_per_mm(plates, **bond), 1 / plates[0] + 1 / plates[1]
        stiff = zip(cells, give * springs / width, strict=True)
        slip = slip_by_elements(overlap / 2, wave, (1 / plates[0], 1 / plates[1]), stiff)
        places = np.linspace(-overlap / 2, overlap / 2, CELLS + 1)[list(cells)]
        found = rivet_shares(
            places,
            rivet_stiffness_n_mm=springs,
            overlap_mm=overlap,
            width_mm=width,
            stiffnesses_n_mm=plates,
            **bond,
        )
        np.testing.assert_allclose(found, springs / width * slip[list(cells)], rtol=1e-3)  # elements as above


def peel_by_elements(lap):
    """Solve two beams on an elastic layer for their parting; return the peel at all nodes.

    The loaded beam brings moment M = k P t/2 and shear V = M sqrt(P/D) to its end, the other is free there.
    As in the source, D of the plates outside has 1 - nu^2 and the beams inside have not.
    """
    half, beam = lap.overlap_mm / 2, lap.elastic_modulus_mpa * lap.thickness_mm**3 / 12
    plate = beam / (1 - lap.poisson_ratio**2)
    layer = lap.adhesive_stretch_modulus_mpa / lap.adhesive_mm
    basis = Basis(MeshLine(np.linspace(-half, half, CELLS + 1)), ElementLineHermite())
    matrix = beam * curvature_form.assemble(basis) + 2 * layer * value_form.assemble(basis)
    moment = lap.moment_factor * lap.line_load_n_mm * lap.thickness_mm / 2
    shear = moment * np.sqrt(lap.line_load_n_mm / plate)
    load = np.zeros(basis.N)
    for node, side in ((0, -1), (CELLS, 1)):
        value, slope = basis.nodal_dofs[:, node]
        load[value], load[slope] = shear, side * moment
    return layer * solve(matrix, load)[basis.nodal_dofs[0]]


def random_bent_laps(seed):
    """Invent laps of two equal plates."""
    rng = np.random.default_rng(seed)
    low, high = [20, 8, 0.8, 60000, 200, 500, 0.1, 0.28], [250, 30, 3.0, 210000, 1500, 4000, 0.5, 0.35]
    names = (
        "line_load_n_mm",
        "overlap_mm",
        "thickness_mm",
        "elastic_modulus_mpa",
        "adhesive_modulus_mpa",
        "adhesive_stretch_modulus_mpa",
        "adhesive_mm",
        "poisson_ratio",
    )
    rows = rng.uniform(low, high, (CASES, 8)).tolist()
    return [BentLap(**dict(zip(names, row, strict=True))) for row in rows]


def test_peel_agrees_with_beams_on_a_layer():
    """Thirty random laps: peel at 121 places within a per mille of its peak."""
    for lap in random_bent_laps(3):
        x = np.linspace(-lap.overlap_mm / 2, lap.overlap_mm / 2, CELLS + 1)
        peel = bent_lap_peel_mpa(lap, position_mm=x)
        # Cubic elements a hundredth of the overlap long.
        np.testing.assert_allclose(peel_by_elements(lap), peel, atol=1e-3 * peel.max())


def test_shear_of_a_bent_lap_carries_the_load():
    """The integral of the shear over the overlap is the load."""
    points, weights = np.polynomial.legendre.leggauss(60)
    for lap in random_bent_laps(4):
        shear = bent_lap_shear_mpa(lap, position_mm=points * lap.overlap_mm / 2)
        # Sixty points are exact to rounding for these lengths.
        assert shear @ weights * lap.overlap_mm / 2 == pytest.approx(lap.line_load_n_mm, rel=1e-9)


def test_a_column_of_laps_is_each_lap():
    """Arrays give what each lap gives alone."""
    laps = random_bent_laps(5)
    fields = {name: np.array([getattr(lap, name) for lap in laps]) for name in BentLap.__dataclass_fields__}
    column = BentLap(**fields)
    for stress in (bent_lap_peel_mpa, bent_lap_shear_mpa):
        alone = [stress(lap, position_mm=lap.overlap_mm / 2) for lap in laps]
        # The same arithmetic.
        np.testing.assert_allclose(stress(column, position_mm=column.overlap_mm / 2), alone, rtol=1e-12)


def test_equal_plates_peak_over_mean():
    """For equal plates the peak over the mean is (w L/2) coth(w L/2)."""
    plates, bond = (140000, 140000), {"adhesive_modulus_mpa": 800, "adhesive_mm": 0.2}
    overlap = np.array([5.0, 15.0, 40.0])
    peak = bond_peak_mpa(line_load_n_mm=120, overlap_mm=overlap, stiffnesses_n_mm=plates, **bond)
    half = transfer_rate_per_mm(plates, **bond) * overlap / 2
    np.testing.assert_allclose(peak / (120 / overlap), half / np.tanh(half), rtol=1e-12)  # the same formula


def test_peak_is_where_the_softer_plate_is_loaded():
    """Plate 1 is loaded at the left: the peak is there where it is the softer one, else at the right."""
    bond = {"adhesive_modulus_mpa": 700, "adhesive_mm": 0.3}
    soft, stiff = 105000, 175000
    for plates, end in (((soft, stiff), -10), ((stiff, soft), 10)):
        lap = {"line_load_n_mm": 100, "overlap_mm": 20, "stiffnesses_n_mm": plates, **bond}
        assert bond_shear_mpa(end, **lap) == bond_peak_mpa(**lap)
        # Solved as a boundary value problem: 12.1234 MPa at the one end, 7.6215 MPa at the other.
        assert bond_shear_mpa(end, **lap) == pytest.approx(12.1234, abs=6e-5)
        assert bond_shear_mpa(-end, **lap) == pytest.approx(7.6215, abs=6e-5)


def test_stiff_plates_are_the_limit():
    """Plates a million times as stiff: the rivet's share is that between plates that do not stretch."""
    lap = {"rivet_stiffness_n_mm": 14000, "overlap_mm": 25, "width_mm": 25}
    bond = {"adhesive_modulus_mpa": 1000, "adhesive_mm": 0.2}
    found = rivet_shares([3.0], stiffnesses_n_mm=(1.4e11, 1.4e11), **lap, **bond)
    assert found[0] == pytest.approx(stiff_plate_rivet_share(**lap, **bond), rel=1e-5)  # order of the ratio


def test_longer_overlap_ends_at_the_limit():
    """Beyond the limit overlap the peak falls by less than 2 %."""
    plates, bond = (140000, 140000), {"adhesive_modulus_mpa": 800, "adhesive_mm": 0.2}
    limit = limit_overlap_mm(plates, **bond)
    lap = {"line_load_n_mm": 100, "stiffnesses_n_mm": plates, **bond}
    ratio = bond_peak_mpa(overlap_mm=10 * limit, **lap) / bond_peak_mpa(overlap_mm=limit, **lap)
    assert 0.98 < ratio < 1


LAP = {"line_load_n_mm": 100, "overlap_mm": 25, "adhesive_modulus_mpa": 1000, "adhesive_mm": 0.2}


def test_refusals():
    """One sentence each for what no lap can be."""
    plates = {"stiffnesses_n_mm": (140000, 140000)}
    with pytest.raises(ValueError, match="place over half the overlap must be between -1 and 1, got 1.04"):
        bond_shear_mpa(13, **plates, **LAP)
    with pytest.raises(ValueError, match="adhesive thickness must be above 0 mm, got 0 mm"):
        bond_peak_mpa(**plates, **LAP | {"adhesive_mm": 0})
    with pytest.raises(ValueError, match="in lengths of load transfer must be between 0 and 1400, got 2672"):
        bond_peak_mpa(**plates, **LAP | {"overlap_mm": 10000})
    sheet = {"thickness_mm": 2, "elastic_modulus_mpa": 70000, "adhesive_stretch_modulus_mpa": 2700}
    with pytest.raises(ValueError, match="overlap in lengths of peel must be between 0 and 300, got 61"):
        BentLap(**sheet, **LAP | {"overlap_mm": 2000})
    with pytest.raises(ValueError, match=r"Poisson's ratio must be between 0 and 0.5, got 0.6"):
        BentLap(poisson_ratio=0.6, **sheet, **LAP)


@pytest.mark.parametrize(
    ("places", "sentence"),
    [
        ([20.0], "place of a rivet must be between -12.5 mm and 12.5 mm, got 20 mm"),
        ([5.0, -5.0], "distance from rivet to rivet or to an end must be above 0 mm, got -10 mm"),
        ([12.5], "distance from rivet to rivet or to an end must be above 0 mm, got 0 mm"),
    ],
)
def test_places_of_rivets(places, sentence):
    """Rivets lie inside the overlap in rising order."""
    lap = {"overlap_mm": 25, "width_mm": 25, "stiffnesses_n_mm": (140000, 140000)}
    with pytest.raises(ValueError, match=sentence):
        rivet_shares(places, rivet_stiffness_n_mm=14000, adhesive_modulus_mpa=1000, adhesive_mm=0.2, **lap)
