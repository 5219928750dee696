"""The heat model itself: its orders, its balance, its limits, and bodies that are awkward.

Comparisons with printed solutions are in ``tests/published``.
"""

import itertools
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from secondplate.heat.conduction import Body, Stage, conduct
from secondplate.heat.finite_bodies import cylinder_temperature, wall_temperature
from secondplate.heat.grid import Grid
from secondplate.heat.substances import Substance, constant, filler, metal
from tests.heat_bodies import STEEL, column, face_power, fine_at_start, heated, solid

HEAT_BALANCE = 1e-9  # the model promises 1e-6
SIX_CELLS = Grid(radius_edges_mm=[0, 1, 2, 4], height_edges_mm=[0, 1, 3])
EVERYWHERE = np.zeros((2, 3), dtype=int)


def orders(errors):
    """Return the observed orders between runs of which each is twice as fine as the one before."""
    return [math.log2(coarse / fine) for coarse, fine in itertools.pairwise(errors)]


def cooled_cylinder(cells):
    """Return the largest error in a cylinder that cools at Bi 1, on a grid whose cells differ sixfold."""
    steps = np.linspace(0, 1, cells + 1)
    edges = 5 * (steps + 0.23 * np.sin(np.pi * steps))  # stretched smoothly
    grid = Grid(radius_edges_mm=edges, height_edges_mm=edges)
    body = solid(grid, lower_end="exposed", outer_end="exposed", film_w_m2k=6000.0, ambient_c=0.0)
    start = 1000 * _product(grid, 0.1)
    run = heated(body, 0.1 * 25 / STEEL.diffusivity_mm2_s, start_c=start, steps=160)
    return np.abs(run.final_c - 1000 * _product(grid, 0.2)).max()


def _product(grid, relative_time):
    """Return the exact excess of a cylinder as long as wide at the middles of its cells."""
    across = cylinder_temperature(grid.radii_mm / 5, relative_time, biot_number=1)
    along = wall_temperature(grid.depths_mm / 5, relative_time, biot_number=1)
    return np.outer(along, across)


def test_second_order_in_space():
    """Halving the cells of a graded grid divides the largest error by four: observed order 1.9 at least."""
    errors = [cooled_cylinder(cells) for cells in (8, 16, 32)]
    assert min(orders(errors)) > 1.9
    assert errors[-1] < 1.0  # of 1000 K


@pytest.mark.parametrize(
    "substance", [constant("metal", metal=STEEL), metal("boron rivet steel")], ids=lambda s: s.name
)
def test_second_order_in_time(substance):
    """Halving the steps divides the error by four, with constant and with changing properties."""
    body = column(np.linspace(0, 4, 41), substance=substance)
    start = 20 + 800 * np.cos(np.pi * body.grid.depths_mm / 8)[:, None] ** 2
    power = face_power(body, flux_w_mm2=5)

    def final(steps):
        """Return the temperatures after 0.6 s."""
        return heated(body, 0.6, power_w=power, start_c=start, steps=steps).final_c

    exact = final(1024)
    errors = [np.abs(final(steps) - exact).max() for steps in (16, 32, 64)]
    assert min(orders(errors)) > 1.85  # the tables of the steel have corners


def test_order_in_time_with_growing_steps():
    """Steps that grow keep the order when each is halved."""
    body = column(fine_at_start(6, finest_mm=0.02))
    power = face_power(body, flux_w_mm2=20)

    def final(steps, growth):
        """Return the temperatures after 0.05 s."""
        return heated(body, 0.05, power_w=power, steps=steps, growth=growth).final_c

    exact = final(640, 1.1 ** (1 / 32))
    errors = [np.abs(final(20 * n, 1.1 ** (1 / n)) - exact).max() for n in (1, 2, 4)]
    assert min(orders(errors)) > 1.8  # the flux begins with a jump


MELTS = [
    # current, heat flux and time of three studs at two settings, melted depth with a still and a stirred melt
    (267.4, 0.015, 0.176, 0.245),
    (389.6, 0.015, 0.270, 0.424),
    (216.6, 0.015, 0.121, 0.155),
    (315.7, 0.015, 0.220, 0.321),
    (181.9, 0.020, 0.131, 0.165),
    (265.0, 0.020, 0.244, 0.355),
]


def melting_steel(liquid_conductivity_w_mk):
    """Return the substance of the comparison: it melts at 1500 C with 250 kJ/kg."""
    still = constant("steel", metal=STEEL, melting_c=1500.0, latent_heat_j_kg=250e3, melting_range_k=1.0)
    return Substance(
        name="steel",
        nodes_c=still.nodes_c,
        heat_content_j_mm3=still.heat_content_j_mm3,
        conductivity_w_mk=np.where(still.nodes_c > 1500, liquid_conductivity_w_mk, 30.0),
        solidus_c=still.solidus_c,
        liquidus_c=still.liquidus_c,
    )


@pytest.mark.parametrize(("flux_w_mm2", "time_s", "still_mm", "stirred_mm"), MELTS)
def test_melted_depth_against_an_explicit_computation(flux_w_mm2, time_s, still_mm, stirred_mm):
    """Melted depths computed apart, with explicit steps on even cells of 5 micrometres."""
    for conductivity, depth_mm in ((30.0, still_mm), (300.0, stirred_mm)):
        body = column(fine_at_start(5, finest_mm=0.008, growth=0.03), substance=melting_steel(conductivity))
        power = face_power(body, flux_w_mm2=flux_w_mm2)
        run = heated(body, time_s, power_w=power, start_c=20.0, steps=400)
        found_mm = float(run.melted_share[:, 0] @ body.grid.heights_mm)
        # The explicit computation itself moved by 1 % when its cells were halved; three decimals are given,
        # and a cell of 8 micrometres is 6 % of the shallowest melt.
        assert found_mm == pytest.approx(depth_mm, rel=0.02, abs=0.001)
        assert run.balance < HEAT_BALANCE


@pytest.mark.parametrize(("flux_w_mm2", "time_s"), [row[:2] for row in MELTS])
def test_melt_stays_below_the_bound_of_energy(flux_w_mm2, time_s):
    """No more melts than all the heat could melt from 20 C."""
    body = column(fine_at_start(5, finest_mm=0.01, growth=0.05), substance=melting_steel(300.0))
    run = heated(body, time_s, power_w=face_power(body, flux_w_mm2=flux_w_mm2), start_c=20.0, steps=100)
    bound_mm = flux_w_mm2 * time_s / (7850e-9 * (650 * 1480 + 250e3))
    assert 0.2 * bound_mm < run.melted_share[:, 0] @ body.grid.heights_mm < bound_mm


MIXED = (
    metal("boron rivet steel", liquid_conductivity_w_mk=100),
    metal("6xxx aluminium"),
    filler("adhesive"),
)


@settings(max_examples=25, deadline=None)
@given(
    where=st.lists(st.sampled_from([-1, 0, 0, 1, 2]), min_size=30, max_size=30),
    contacts=st.lists(st.sampled_from([0.0, 50.0, 6000.0, math.inf]), min_size=49, max_size=49),
    start=st.lists(st.floats(20, 2500), min_size=30, max_size=30),
    flux=st.floats(0, 60),
)
def test_heat_balance_of_any_body(where, contacts, start, flux):
    """Heat is neither lost nor made: substances, holes, contacts, melting, film and radiation mixed."""
    grid = Grid(radius_edges_mm=[0, 0.02, 0.1, 0.5, 2, 9], height_edges_mm=[0, 0.01, 0.1, 0.2, 1, 3, 3.001])
    field = np.array(where).reshape(grid.shape)
    field[0, 1] = 0
    body = Body(
        grid=grid,
        substances=MIXED,
        where=field,
        radial_contact_w_m2k=np.array(contacts[:24]).reshape(6, 4),
        height_contact_w_m2k=np.array(contacts[24:]).reshape(5, 5),
        film_w_m2k=20.0,
        emittance=0.5,
        upper_end="exposed",
        outer_end=150.0,
    )
    power = np.where(field == 0, flux * grid.volumes_mm3, 0.0)
    stages = [
        Stage(duration_s=0.02, steps=8, power_w=power),
        Stage(duration_s=3.0, steps=12, growth=1.5),
    ]
    run = conduct(body, stages, start_c=np.array(start).reshape(grid.shape))
    assert run.balance < HEAT_BALANCE
    assert np.all(np.isfinite(run.final_c[field >= 0]))
    assert np.all(np.isnan(run.final_c[field < 0]))
    assert np.all((run.melted_share >= 0) & (run.melted_share <= 1))


def test_a_long_step_across_two_tiny_cells_comes_to_rest():
    """A step thousands of times as long as two tiny cells of different metals need to even out is done."""
    grid = Grid(radius_edges_mm=[0, 0.02, 0.1], height_edges_mm=[0, 0.01, 0.1])
    body = Body(
        grid=grid,
        substances=MIXED,
        where=[[-1, 0], [-1, 1]],
        radial_contact_w_m2k=np.zeros((2, 1)),
        film_w_m2k=20.0,
        emittance=0.5,
        upper_end="exposed",
    )
    start = np.array([[20.0, 20.0], [20.0, 286.0]])
    stages = [Stage(duration_s=0.02, steps=8), Stage(duration_s=3.0, steps=12, growth=1.5)]
    run = conduct(body, stages, start_c=start)
    assert run.balance < HEAT_BALANCE
    steel_c, aluminium_c = run.final_c[:, 1]
    assert 20 < steel_c < 286
    assert aluminium_c == pytest.approx(steel_c, abs=1.0)  # one body of one temperature


def test_nothing_crosses_where_there_is_no_contact():
    """Cells without contact keep their heat; the same cells as one piece share it."""
    contact = np.full((2, 2), math.inf)
    contact[:, 0] = 0.0
    start = np.where(np.arange(3) == 0, 500.0, 20.0) * np.ones((2, 1))
    parted = solid(SIX_CELLS, radial_contact_w_m2k=contact)
    assert np.allclose(heated(parted, 10, start_c=start).final_c, start, rtol=0, atol=1e-9)  # rounding
    one = heated(solid(SIX_CELLS), 1000, start_c=start).final_c
    assert np.ptp(one) < 1e-6  # even in the end
    assert one[0, 0] == pytest.approx(20 + 480 / 16, abs=1e-6)  # a sixteenth of the volume was hot


def test_a_stage_may_change_the_contacts():
    """Faces that do not touch in the first stage and do in the second, as in an arc and after it."""
    body = column([0, 1, 2, 3, 4])
    apart = np.full((3, 1), math.inf)
    apart[1] = 0.0
    power = np.array([[0.0], [50.0], [0.0], [0.0]])
    first = Stage(duration_s=0.2, steps=20, power_w=power, height_contact_w_m2k=apart)
    assert conduct(body, [first]).final_c[2:, 0].tolist() == pytest.approx([20.0, 20.0], abs=1e-9)  # rounding
    run = conduct(body, [first, Stage(duration_s=200.0, steps=40, growth=1.3)])
    rise_k = 50 * 0.2 / (4 * STEEL.heat_by_volume_j_mm3k)
    assert run.final_c[:, 0] == pytest.approx(np.full(4, 20 + rise_k), rel=1e-6)  # even in the end


def test_a_good_contact_is_like_none():
    """A contact of 1e12 W/m2K gives what one piece gives."""
    start = 20 + 100 * np.arange(6.0).reshape(2, 3)
    one = heated(solid(SIX_CELLS), 0.1, start_c=start).final_c
    good = solid(SIX_CELLS, radial_contact_w_m2k=1e12, height_contact_w_m2k=1e12)
    np.testing.assert_allclose(
        heated(good, 0.1, start_c=start).final_c, one, rtol=1e-5
    )  # a thousandth of a contact


def test_long_steps_neither_swing_nor_overshoot():
    """One step 1e5 times as long as the body needs ends at even temperature, without a swing."""
    body = column(fine_at_start(5, finest_mm=0.001, growth=0.3))
    start = np.where(body.grid.depths_mm < 1, 900.0, 20.0)[:, None]
    run = conduct(body, [Stage(duration_s=1e5, steps=3)], start_c=start)
    even = np.average(start[:, 0], weights=body.grid.heights_mm)
    assert run.final_c[:, 0] == pytest.approx(np.full(len(start), even), abs=0.01)  # three long steps


def test_cooling_with_growing_steps_falls_all_the_way():
    """In a plate that cools towards the air no temperature rises again or falls below the air."""
    body = column(
        fine_at_start(3, finest_mm=0.02, growth=0.3),
        substance=metal("6xxx aluminium"),
        lower_end="exposed",
        film_w_m2k=25.0,
        emittance=0.3,
    )
    keep = {"face": np.zeros(body.grid.shape)}
    keep["face"][-1] = 1
    run = conduct(body, [Stage(duration_s=3000.0, steps=40, growth=1.3)], start_c=400.0, keep=keep)
    assert np.all(np.diff(run.traces_c["face"]) < 0)
    assert np.all(run.final_c >= 20.0 - 0.001)  # a step may overshoot its end by a thousandth


def test_even_heat_stays_even():
    """Heat in proportion to volume warms all cells alike, at the axis as well as at the rim."""
    run = heated(solid(SIX_CELLS), 1.0, power_w=0.5 * SIX_CELLS.volumes_mm3)
    np.testing.assert_allclose(run.final_c, 0.5 / STEEL.heat_by_volume_j_mm3k, rtol=1e-12)  # rounding


def test_rows_and_columns_may_be_many_or_one():
    """A long column, a flat disc and a single cell take the same heat by volume to the same temperature."""
    grids = [
        Grid(radius_edges_mm=[0, 1], height_edges_mm=np.linspace(0, 1, 41)),
        Grid(radius_edges_mm=np.linspace(0, 1, 41), height_edges_mm=[0, 1]),
        Grid(radius_edges_mm=[0, 1], height_edges_mm=[0, 1]),
    ]
    for grid in grids:
        run = heated(solid(grid), 1.0, power_w=2 * grid.volumes_mm3)
        np.testing.assert_allclose(run.final_c, 2 / STEEL.heat_by_volume_j_mm3k, rtol=1e-12)  # rounding


def test_melting_and_freezing_again():
    """A melt that cools gives its latent heat back, and the peak remembers that it was liquid."""
    body = column(np.linspace(0, 2, 41), substance=melting_steel(30.0))
    power = face_power(body, flux_w_mm2=200)
    stages = [Stage(duration_s=0.02, steps=60, power_w=power), Stage(duration_s=20.0, steps=60, growth=1.2)]
    run = conduct(body, stages)
    rise_k = 200 * 0.02 / (2 * STEEL.heat_by_volume_j_mm3k)
    assert run.final_c[:, 0] == pytest.approx(
        np.full(40, 20 + rise_k), rel=1e-6
    )  # even in the end, all solid
    assert run.melted_share[0, 0] == 1
    assert run.peak_c.max() > 1500 > run.final_c.max()


def test_half_the_latent_heat_melts_half():
    """A cell that got the heat to its melting point and half its latent heat is half melted, and as warm."""
    body = column([0, 1], substance=melting_steel(30.0))
    power = np.array([[STEEL.heat_by_volume_j_mm3k * 1480 + 7850e-9 * 250e3 / 2]])
    run = heated(body, 1.0, power_w=power, start_c=20.0)
    assert run.melted_share[0, 0] == pytest.approx(0.5, rel=1e-9)  # rounding
    assert run.final_c[0, 0] == pytest.approx(1500.0, abs=1e-6)  # rounding, over a narrow melting range


def test_a_step_that_is_too_long_is_done_in_parts():
    """Melting in five steps gives about what 400 give, although cells pass through their melting in one."""
    body = column(fine_at_start(5, finest_mm=0.02, growth=0.1), substance=melting_steel(300.0))
    power = face_power(body, flux_w_mm2=300)
    few, many = (
        heated(body, 0.02, power_w=power, start_c=20.0, steps=steps).melted_share[:, 0] @ body.grid.heights_mm
        for steps in (5, 400)
    )
    assert few == pytest.approx(many, rel=0.15)  # five steps are few


def test_traces_are_weighted_means():
    """A kept place follows its cells, from the start on."""
    body = column([0, 1, 2, 3])
    half = np.array([[0.5], [0.5], [0.0]])
    run = conduct(
        body, [Stage(duration_s=0.5, steps=5)], start_c=[[100.0], [50.0], [0.0]], keep={"top": half}
    )
    assert len(run.times_s) == len(run.traces_c["top"]) == 6
    assert run.times_s[-1] == pytest.approx(0.5, rel=1e-12)  # rounding
    assert run.traces_c["top"][0] == pytest.approx(75.0, rel=1e-12)  # rounding
    assert run.traces_c["top"][-1] == pytest.approx(run.final_c[:2].mean(), rel=1e-12)  # rounding


def test_steps_grow():
    """The steps of a stage add up to it and grow by their factor."""
    steps = Stage(duration_s=2.0, steps=10, growth=1.2).steps_s
    assert steps.sum() == pytest.approx(2.0, rel=1e-12)  # rounding
    np.testing.assert_allclose(steps[1:] / steps[:-1], 1.2, rtol=1e-12)  # rounding


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"duration_s": 0}, "duration must be between 1e-09 s and 1e\\+06 s, got 0 s"),
        ({"duration_s": math.nan}, "duration must be finite, got nan s"),
        ({"steps": 0}, "number of steps must be between 1 and 100000, got 0"),
        ({"steps": 2.5}, "number of steps must be a whole number, got 2.5"),
        ({"growth": 0.9}, "growth of the steps must be between 1 and 2, got 0.9"),
        ({"power_w": -1.0}, "power must be at least 0 W, got -1 W"),
        ({"power_w": math.inf}, "power must be finite, got inf W"),
    ],
)
def test_refused_stages(change, message):
    """Times, steps and powers out of range are refused by one sentence."""
    with pytest.raises(ValueError, match=message):
        Stage(**{"duration_s": 1.0, "steps": 4} | change)


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (
            {"where": EVERYWHERE[:1]},
            r"where must be an array of int with the shape \(2, 3\) of the grid, got int64",
        ),
        ({"where": EVERYWHERE + 0.5}, "where must be an array of int .*, got float64"),
        ({"where": EVERYWHERE + 1}, "number of a substance must be between -1 and 0, got 1"),
        ({"where": EVERYWHERE - 1}, "body must have at least one cell that is not empty, got 0"),
        ({"radial_contact_w_m2k": -1.0}, "radial contact must be at least 0 W/m2K, got -1 W/m2K"),
        (
            {"height_contact_w_m2k": np.ones((2, 3))},
            r"height contact must be .* with the shape \(1, 3\), got",
        ),
        ({"radial_contact_w_m2k": math.nan}, "radial contact must be finite, got nan W/m2K"),
        ({"film_w_m2k": -1}, "film must be between 0 W/m2K and 1e\\+06 W/m2K, got -1 W/m2K"),
        ({"emittance": 1.1}, "emittance must be between 0 and 1, got 1.1"),
        ({"upper_end": "open"}, "upper end must be one of insulated, exposed, got 'open'"),
        ({"outer_end": -500.0}, "outer end must be between -100 C and 10000 C, got -500 C"),
    ],
)
def test_refused_bodies(change, message):
    """Shapes that do not fit and values out of range are refused by one sentence."""
    usual = {"grid": SIX_CELLS, "substances": (constant("metal", metal=STEEL),), "where": EVERYWHERE}
    with pytest.raises(ValueError, match=message):
        Body(**usual | change)


def test_grid_too_coarse_for_the_flux_is_refused():
    """A cell of 1 mm cannot show what 600 W/mm2 do in 20 ms; one of 0.02 mm can."""
    body = column([0, 1, 2, 3])
    with pytest.raises(ValueError, match="at most 1500 K lie between their faces, got 1592 K") as refusal:
        heated(body, 0.02, power_w=face_power(body, flux_w_mm2=600))
    assert "\n" not in str(refusal.value)
    fine = column(fine_at_start(3, finest_mm=0.02))
    assert heated(fine, 0.001, power_w=face_power(fine, flux_w_mm2=400)).balance < HEAT_BALANCE


def test_refused_runs():
    """Heat into the void, weights that are none, and heat beyond all tables are refused by one sentence."""
    body = Body(
        grid=SIX_CELLS,
        substances=(constant("metal", metal=STEEL),),
        where=EVERYWHERE - np.eye(2, 3, dtype=int),
    )
    with pytest.raises(ValueError, match="power into empty cells must be 0 W, got 1 W"):
        conduct(body, [Stage(duration_s=1.0, steps=1, power_w=np.ones((2, 3)))])
    with pytest.raises(ValueError, match=r"power must be .* with the shape \(2, 3\), got the shape \(3,\)"):
        conduct(body, [Stage(duration_s=1.0, steps=1, power_w=np.ones(3))])
    with pytest.raises(ValueError, match=r"weights of head must have the shape \(2, 3\) and be together 1"):
        conduct(body, [], keep={"head": np.zeros((2, 3))})
    with pytest.raises(
        ValueError, match="temperature of metal must be between -100 C and 10000 C, got 20000 C"
    ):
        conduct(body, [], start_c=20_000.0)
    with pytest.raises(ValueError, match="temperature must stay within the tables of the substances"):
        heated(solid(SIX_CELLS), 1.0, power_w=2 * SIX_CELLS.volumes_mm3, start_c=9900.0)
