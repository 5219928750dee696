"""Pulls of the virtual bench: what gives follows from the chain, plates answer to force and thickness."""

from dataclasses import fields, replace

import numpy as np
import pytest

from secondplate.bench_pull import RESULTS, StudPull, pull_studs
from secondplate.bench_settings import BENCH_BANDS
from secondplate.bench_site import PullSite, draw_site, limit_load_n, pull_out_of
from secondplate.bench_trace import TRACE_PLACES, force_trace
from secondplate.bench_weld import GAVE, test_pull, weld
from secondplate.pull_tool import stored_energy_j
from tests.bench_welds import CHART, TRUE_JOB

SEED = b"a row of studs"
SITE = draw_site(SEED)
MANY = np.arange(1, 2001)
FAULTY = replace(CHART, tilt_deg=6.0)


def _pulled(settings=CHART, job=TRUE_JOB, site=SITE, *, seed=SEED, number=MANY):
    outcome = weld(settings, job, seed=seed, number=number)
    return pull_studs(outcome, settings, job, site, seed=seed, number=number)


def test_sound_studs_draw_their_rivets_clean():
    """On ordinary plates a sound setting draws nearly every rivet clean; now and then a weld has a crack."""
    results = _pulled().result
    assert 0.9 < (results == RESULTS[0]).mean() < 1
    assert (results == "weld peeled").any()


@pytest.mark.parametrize("hold_n", [1200.0, 2000.0, 4000.0])
def test_what_gives_is_what_the_test_pull_says(hold_n):
    """Stud, weld and head give exactly where the test pull of the same stud with the same hold says so."""
    job = replace(TRUE_JOB, rivet_hold_n=hold_n)
    outcome = weld(FAULTY, job, seed=SEED, number=MANY)
    pulled = pull_studs(outcome, FAULTY, job, SITE, seed=SEED, number=MANY)
    held = np.maximum(pulled.first_peak_n, pulled.second_peak_n)
    tested = test_pull(outcome, FAULTY, replace(job, rivet_hold_n=held))
    assert (tested.gave == np.where(pulled.rivet_out, GAVE[0], tested.gave)).all()
    assert (pulled.rivet_out == (tested.gave == GAVE[0])).all()
    assert (pulled.force_n == tested.force_n).all()
    peeled = {"weld broke": "weld peeled"}
    broke = ~pulled.rivet_out
    assert [peeled.get(gave, gave) for gave in tested.gave[broke]] == pulled.result[broke].tolist()


def test_a_chain_with_something_to_spare_holds():
    """What the chain has to spare is above 1 exactly where the rivet came; rounding aside."""
    pulled = _pulled(FAULTY, replace(TRUE_JOB, rivet_hold_n=2600.0))
    clear = np.abs(pulled.spare - 1) > 0.002  # spare is kept to three decimals
    assert ((pulled.spare > 1) == pulled.rivet_out)[clear].all()
    assert 0.1 < pulled.rivet_out.mean() < 0.9


@pytest.mark.parametrize(
    ("link", "result"),
    [("stud_strength_n", "stud broke"), ("strength_n", "weld peeled"), ("head_strength_n", "head tore")],
)
def test_the_weakest_link_gives_and_is_named(link, result):
    """Whichever of stud, weld and head is made weak gives at its own strength, and that is what is spare."""
    outcome = replace(weld(CHART, TRUE_JOB, seed=SEED, number=1), **{link: 500.0})
    pulled = pull_studs(outcome, CHART, TRUE_JOB, SITE, seed=None, number=1)
    assert (pulled.result, pulled.force_n) == (result, 500.0)
    assert pulled.spare == 500 / TRUE_JOB.rivet_hold_n


def test_no_plate_tears_where_nothing_comes_out():
    """A torn second plate belongs to a rivet that came; the names follow from the facts."""
    pulled = _pulled(site=draw_site(SEED, second_plate_mm=1.2))
    assert not (pulled.second_plate_torn & ~pulled.rivet_out).any()
    assert (pulled.result[pulled.second_plate_torn] == "second plate torn").all()
    only = pulled.rivet_out & pulled.top_plate_dished & ~pulled.second_plate_torn
    assert (pulled.result[only] == "top plate dished").all()
    clean = pulled.rivet_out & ~pulled.top_plate_dished & ~pulled.second_plate_torn
    assert (pulled.result[clean] == "rivet out clean").all()


@pytest.mark.parametrize("name", ["top_plate_dished", "second_plate_torn"])
def test_thinner_plates_are_harmed_more(name):
    """The same pulls dish and tear thin plates more often than thick ones, and thick ones hardly ever."""
    harmed = [
        getattr(_pulled(site=draw_site(SEED, top_plate_mm=top, second_plate_mm=second)), name).mean()
        for top, second in ((2.0, 2.5), (1.5, 2.0), (1.2, 1.5), (1.0, 1.0))
    ]
    assert harmed == sorted(harmed)
    assert harmed[0] < 0.01
    assert harmed[-1] > 0.3


def test_a_wider_nose_dishes_more():
    """A wide ring lets the plates bend where a close one holds them."""
    dishes = [
        _pulled(site=replace(SITE, support_radius_mm=radius)).lasting_dish_mm.mean() for radius in (5, 6, 9)
    ]
    assert dishes[0] <= dishes[1] < dishes[2]


def test_limit_load_of_a_plate_by_hand():
    """An even load on the whole plate gives 6 pi M, a load on a point 2 pi M: from memory, plate_theory."""
    moment = 130 * 2**2 / 4
    ring = {"support_radius_mm": 6, "thickness_mm": 2, "proof_stress_mpa": 130}
    whole, point = (limit_load_n(load_radius_mm=radius, **ring) for radius in (6, 1e-9))
    assert whole.low == pytest.approx(6 * np.pi * moment, rel=1e-12)  # closed form
    assert point.low == pytest.approx(2 * np.pi * moment, rel=1e-9)  # the load is no true point
    assert point.high == pytest.approx(4 * np.pi * moment, rel=1e-9)


def test_peaks_stand_to_each_other_as_the_mechanics_say():
    """Second over first peak is the ratio of the mechanics, whatever the hold of the day."""
    pulled = _pulled(seed=None, number=1)
    of_joint = pull_out_of(SITE)
    wanted = of_joint.second_peak_n.best / of_joint.first_peak_n.best
    assert pulled.second_peak_n / pulled.first_peak_n == pytest.approx(wanted, abs=1e-3)  # whole newtons
    assert pulled.first_peak_n == TRUE_JOB.rivet_hold_n


def test_without_scatter_every_stud_is_alike():
    """Without a seed the dice give every likeliest value."""
    one, other = (_pulled(seed=None, number=number) for number in (1, 7))
    assert one == other
    assert one.minutes == BENCH_BANDS["time of one pull"].best


def test_a_stud_keeps_its_pull_whatever_else_is_pulled():
    """One stud gives alone what it gives in a row: same seed, same number, same outcome."""
    row = _pulled(FAULTY)
    for number in (1, 500, 2000):
        alone = _pulled(FAULTY, number=number)
        for field in fields(StudPull):
            assert getattr(row, field.name)[number - 1] == getattr(alone, field.name), field.name


def test_a_break_sets_its_energy_free():
    """Where the chain broke the energy of the spring flies, where the rivet came none does."""
    pulled = _pulled(FAULTY, replace(TRUE_JOB, rivet_hold_n=2600.0))
    stored = stored_energy_j(force_n=pulled.force_n, stiffness_n_mm=20_000)
    expected = np.where(pulled.rivet_out, 0, stored)
    np.testing.assert_allclose(pulled.energy_j, expected, rtol=0, atol=6e-5)  # kept to four decimals


def test_trace_of_a_rivet_that_comes():
    """No force at both ends, both peaks between, never a way back, and the end is that of the stroke."""
    pulled = _pulled(site=SITE)
    trace = force_trace(pulled, SITE)
    out = pulled.rivet_out
    assert (np.diff(trace.stroke_mm, axis=1) >= 0).all()
    assert (trace.force_n[:, [0, 1, -1]] == 0).all()
    for place, peak in (("first peak", pulled.first_peak_n), ("second peak", pulled.second_peak_n)):
        assert (trace.force_n[out, TRACE_PLACES.index(place)] == peak[out]).all()
    np.testing.assert_allclose(trace.stroke_mm[out, -1], pulled.stroke_mm[out], rtol=0, atol=0.006)
    assert (trace.broke_n[out] == 0).all()
    assert (trace.force_n.max(axis=1)[out] == pulled.force_n[out]).all()


@pytest.mark.parametrize(("force_n", "place"), [(600.0, "first peak"), (1500.0, "second peak")])
def test_trace_of_a_chain_that_breaks(force_n, place):
    """The force falls to nothing where the chain broke, on the rise to the peak that it could not bear."""
    whole = _pulled(seed=None, number=1)
    broken = replace(
        whole,
        result="weld peeled",
        rivet_out=False,
        force_n=force_n,
        first_peak_n=1000.0,
        second_peak_n=2000.0,
    )
    trace = force_trace(broken, SITE)
    at = TRACE_PLACES.index(place)
    assert (trace.broke_at, trace.broke_n) == (place, force_n)
    assert trace.force_n[at] == force_n
    assert not trace.force_n[at + 1 :].any()
    assert (trace.stroke_mm[at:] == trace.stroke_mm[at]).all()


def test_the_higher_second_peak_draws_the_whole_hold():
    """Where the mechanics see the second peak above the first, the day's hold is the second."""
    site = PullSite(
        top_plate_mm=3, second_plate_mm=4, rivet_length_mm=8, interlock_mm=1.9, support_radius_mm=10
    )
    pulled = _pulled(site=site, seed=None, number=1)
    ratio = pull_out_of(site).second_peak_n.best / pull_out_of(site).first_peak_n.best
    assert ratio > 2
    assert pulled.second_peak_n == pytest.approx(TRUE_JOB.rivet_hold_n, abs=2)  # whole newtons on the way
    assert pulled.first_peak_n < pulled.second_peak_n


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"top_plate_mm": 0.2}, "top plate must be between 0.5 mm and 4 mm, got 0.2 mm"),
        ({"second_plate_mm": 9.0}, "second plate must be between 0.5 mm and 6 mm, got 9 mm"),
        ({"interlock_mm": 0.0}, "interlock must be between 0.05 mm and 2 mm, got 0 mm"),
        ({"support_radius_mm": 3.0}, "support radius must be between 5 mm and 30 mm, got 3 mm"),
        ({"rivet_length_mm": float("nan")}, "rivet length must be"),
    ],
)
def test_a_site_that_is_none_is_refused(change, sentence):
    """One sentence names what must be and what was got."""
    with pytest.raises(ValueError, match=sentence):
        replace(SITE, **change)


def test_a_load_wider_than_its_ring_is_refused():
    """A plate cannot be loaded beyond the ring that holds it."""
    with pytest.raises(ValueError, match="load radius over support radius must be between 0 and 1, got 2"):
        limit_load_n(load_radius_mm=12, support_radius_mm=6, thickness_mm=2, proof_stress_mpa=130)
