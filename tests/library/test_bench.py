"""Virtual bench: signs come from their causes, corrections help, outcomes repeat and are always numbers."""

from dataclasses import fields, replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from secondplate import bench
from secondplate.inspection import COLLAR_SIGNS, WELD_SIGNS
from tests.bench_welds import CHART, TRUE_JOB, plain_weld

# For each sign the causes that the table of signs names, as settings changed on sound ones.
CAUSES = (
    ("necked", {"protrusion_mm": 0.45}),
    ("necked", {"lift_mm": 0.4}),
    ("cold", {"current_a": 390.0}),
    ("cold", {"time_ms": 12.0}),
    ("hot", {"current_a": 900.0}),
    ("hot", {"time_ms": 44.0, "current_a": 720.0}),
    ("one_sided", {"earth": bench.EARTHS[1]}),
    ("hang_up", {"protrusion_mm": 0.0}),
    ("partial", {"tilt_deg": 7.0}),
    ("jagged", {"time_ms": 60.0, "current_a": 380.0}),
    ("porous", {"gas": "none"}),
    ("porous", {"flow_l_min": 0.5}),
    ("porous", {"head": "coated"}),
    ("porous", {"head": "oily"}),
    ("off_centre", {"offset_mm": 1.8}),
)
EARTH = {bench.EARTHS[1]: bench.EARTHS[0]}
MANY = np.arange(2000)


def test_every_collar_sign_has_a_cause_here():
    """Each sign of the inspection table is reached, and the bench knows no other."""
    assert (
        {sign for sign, _ in CAUSES} | {"good"} == {sign.id for sign in COLLAR_SIGNS} == set(bench.SIGN_IDS)
    )


def test_sound_settings_weld_soundly():
    """The shop setting on a true machine gives a good collar, and the pull draws the rivet."""
    outcome = plain_weld(CHART)
    assert outcome.sign_id == "good"
    assert outcome.defects == ()
    pull = bench.test_pull(outcome, CHART, TRUE_JOB)
    assert (pull.gave, pull.force_n, pull.face) == ("rivet drawn out", 2000.0, "")
    assert bench.in_window(CHART, TRUE_JOB)


@pytest.mark.parametrize(("sign", "cause"), CAUSES)
def test_cause_brings_its_sign(sign, cause):
    """The cause that the table names shows its sign without scatter, and mostly so with it."""
    settings = replace(CHART, **cause)
    assert plain_weld(settings).sign_id == sign
    outcome = bench.weld(settings, TRUE_JOB, seed=b"scatter", number=MANY)
    assert (outcome.sign_id == sign).mean() > 0.75
    assert not bench.in_window(settings, TRUE_JOB)


@pytest.mark.parametrize(("sign", "cause"), CAUSES)
def test_correction_of_the_table_helps(sign, cause):
    """One of the table's corrections touches the cause; taken back by it, the weld is good again."""
    settings = replace(CHART, **cause)
    assert bench.advise(plain_weld(settings)) == sign
    named = dict(bench.corrections(sign))
    touched = [name for name in cause if name in named] or list(named)
    for name in touched[:1]:
        back = getattr(CHART, name)
        changed = replace(settings, **{name: back})
        assert bench.right_direction(settings, changed, TRUE_JOB) == {name: "better"}
        if named[name] in ("more", "less"):
            assert (back > getattr(settings, name)) == (named[name] == "more")
        else:
            assert back == named[name]
    assert plain_weld(CHART).sign_id == "good"


@pytest.mark.parametrize(("sign", "cause"), CAUSES)
def test_every_directed_correction_leads_the_right_way(sign, cause):
    """A small step in each direction that the table prints never leads away from the window.

    Lift is left out where it is not the cause: the table says to check it, and a longer arc melts more.
    """
    settings = replace(CHART, **cause)
    for name, way in bench.corrections(sign):
        if name == "lift_mm" and name not in cause:
            continue
        if way not in ("more", "less"):
            changed = replace(settings, **{name: way})
        else:
            value = getattr(settings, name)
            step = 0.1 * max(value, 0.5) * (1 if way == "more" else -1)
            changed = replace(settings, **{name: max(value + step, 0.0)})
        verdicts = bench.right_direction(settings, changed, TRUE_JOB)
        assert "worse" not in verdicts.values(), (name, way)


def test_corrections_of_the_table_are_settings():
    """Each correction names a setting of the bench and a way that it can go; good has none."""
    assert bench.corrections("good") == ()
    for sign in bench.FAULTS:
        assert bench.corrections(sign)
        for name, way in bench.corrections(sign):
            assert name in bench.SETTING_NAMES
            assert way in ("more", "less", *bench.GASES, *bench.HEADS, *bench.EARTHS)


def test_signs_of_the_fracture_come_from_their_causes():
    """Flat and grey from a cold weld or a dirty face, one-sided from arc blow, pores from missing gas."""
    strong = replace(TRUE_JOB, rivet_hold_n=20000.0, web_mm=2.5)
    for cause, face in (
        ({"current_a": 390.0}, "flat and grey"),
        ({"head": "oily"}, "flat and grey"),
        ({"earth": bench.EARTHS[1]}, "one-sided"),
        ({"gas": "none"}, "pores"),
        ({"tilt_deg": 8.0}, "one-sided"),
    ):
        settings = replace(CHART, **cause)
        pull = bench.test_pull(plain_weld(settings, strong), settings, strong)
        assert (pull.gave, pull.face) == ("weld broke", face)


def test_fracture_words_fit_the_table_of_signs():
    """The face of a cold weld is called as in the table of signs."""
    flat = next(sign for sign in WELD_SIGNS if sign.id == "flat_grey")
    assert "flat and grey" in flat.sign
    assert bench.FACES[1] == "flat and grey"


def test_too_much_energy_tears_the_head():
    """A weld that melts through the web leaves nothing to pull on."""
    settings = replace(CHART, current_a=1400.0)
    outcome = plain_weld(settings)
    assert outcome.burnt_through
    assert outcome.web_left_mm == 0
    pull = bench.test_pull(outcome, settings, TRUE_JOB)
    assert (pull.gave, pull.force_n) == ("head tore", 0.0)


def test_stud_breaks_where_nothing_else_gives():
    """A sound 4 mm stud on a rivet that holds more than the stud breaks itself."""
    settings = bench.chart_settings(stud_diameter_mm=4)
    held = replace(TRUE_JOB, rivet_hold_n=15000.0, web_mm=1.3)
    assert bench.test_pull(plain_weld(settings, held), settings, held).gave == "stud broke"


@pytest.mark.parametrize("size_mm", bench.STUD_DIAMETERS_MM)
def test_chart_does_on_a_true_machine(size_mm):
    """On a machine that shows the truth every charted stud lies inside the window."""
    assert bench.in_window(bench.chart_settings(stud_diameter_mm=size_mm), TRUE_JOB)


@pytest.mark.parametrize("machine", bench.MACHINES)
def test_chart_alone_does_not_do_on_the_machine_of_the_day(machine):
    """The shop setting lies outside on every day drawn, and the current alone leads inside."""
    days = [bench.draw_job(b"day %d" % day, machine=machine) for day in range(200)]
    job = bench.WeldJob(
        **{
            field.name: np.array([getattr(day, field.name) for day in days])[:, None]
            for field in fields(days[0])
        }
    )
    assert not bench.in_window(CHART, job).any()
    currents = replace(CHART, current_a=np.linspace(300, 1400, 111)[None, :])
    inside = bench.in_window(currents, job)
    assert inside.any(axis=1).all()
    # Wide enough to be hit: at least 80 A of setting on nearly every day.
    assert (inside.sum(axis=1) >= 8).mean() > 0.95


@pytest.mark.parametrize("size_mm", bench.STUD_DIAMETERS_MM)
def test_a_weak_machine_spoils_every_chart(size_mm):
    """No charted stud lies inside the window of a weak machine."""
    chart = bench.chart_settings(stud_diameter_mm=size_mm)
    for day in range(30):
        assert not bench.in_window(chart, bench.draw_job(b"day %d" % day, machine="weak"))


@pytest.mark.parametrize(
    ("machine", "sign", "gave"), [("weak", "cold", "weld broke"), ("strong", "hot", "rivet drawn out")]
)
def test_first_stud_of_the_day_shows_the_fault(machine, sign, gave):
    """Nearly every first stud at the shop setting shows the machine's fault, and the pull what it did."""
    found = []
    for day in range(60):
        seed = b"day %d" % day
        job = bench.draw_job(seed, machine=machine)
        outcome = bench.weld(CHART, job, seed=seed, number=1)
        found.append((outcome.sign_id, bench.test_pull(outcome, CHART, job).gave))
    assert np.mean([one == sign for one, _ in found]) > 0.9
    assert np.mean([one == gave for _, one in found]) > 0.8


def test_hand_scatters():
    """Tilt and offset differ from weld to weld though the gun is set square on the middle."""
    outcome = bench.weld(CHART, TRUE_JOB, seed=b"hand", number=MANY)
    assert outcome.tilt_deg.std() > 0.1
    assert outcome.offset_mm.std() > 0.03
    assert outcome.tilt_deg.mean() > 0


def test_stud_positive_moves_heat_to_the_stud():
    """With the stud positive the head melts less, and the arc scatters more."""
    other = replace(CHART, polarity="stud positive")
    assert plain_weld(other).melted_depth_mm < plain_weld(CHART).melted_depth_mm
    depths = [bench.weld(one, TRUE_JOB, seed=b"arc", number=MANY).melted_depth_mm for one in (CHART, other)]
    assert depths[1].std() / depths[1].mean() > 1.2 * depths[0].std() / depths[0].mean()


def test_window_in_the_middle_holds_against_the_scatter():
    """In the middle of the window nine welds of ten are good although everything scatters."""
    for machine in bench.MACHINES:
        job = bench.draw_job(b"a day at the shop", machine=machine)
        currents = np.linspace(300, 1400, 221)
        inside = currents[bench.in_window(replace(CHART, current_a=currents), job)]
        middle = replace(CHART, current_a=float(np.sqrt(inside[0] * inside[-1])))
        outcome = bench.weld(middle, job, seed=b"scatter", number=MANY)
        assert (outcome.sign_id == "good").mean() > 0.9
        assert (bench.test_pull(outcome, middle, job).gave == "rivet drawn out").mean() > 0.9


def test_scatter_of_nothing_is_the_plain_weld():
    """With no scatter in the job the dice move only the strengths, and without a seed nothing."""
    still = replace(TRUE_JOB, scatter_share=0.0)
    outcome, plain = bench.weld(CHART, still, seed=b"scatter", number=3), plain_weld(CHART, still)
    assert outcome.melted_depth_mm == plain.melted_depth_mm
    assert outcome.collar_height_mm == plain.collar_height_mm


def test_single_and_array_agree():
    """A row of welds gives each single weld, in every field."""
    numbers = np.arange(5)
    currents = np.array([420.0, 600.0, 700.0, 900.0, 1400.0])
    row = bench.weld(replace(CHART, current_a=currents), TRUE_JOB, seed=b"row", number=numbers)
    pulls = bench.test_pull(row, replace(CHART, current_a=currents), TRUE_JOB)
    for index in numbers:
        settings = replace(CHART, current_a=float(currents[index]))
        one = bench.weld(settings, TRUE_JOB, seed=b"row", number=int(index))
        for field in fields(one):
            found = getattr(row, field.name)[index]
            if field.name == "defects":
                found = tuple(fault for fault, shown in zip(bench.FAULTS, found, strict=True) if shown)
            assert found == getattr(one, field.name), field.name
        pull = bench.test_pull(one, settings, TRUE_JOB)
        assert (pulls.force_n[index], pulls.gave[index], pulls.face[index]) == (
            pull.force_n,
            pull.gave,
            pull.face,
        )


def test_single_outcomes_are_plain_values():
    """One weld is made of plain Python values, fit to be written down."""
    outcome = bench.weld(CHART, TRUE_JOB, seed=b"row", number=1)
    assert {type(getattr(outcome, field.name)) for field in fields(outcome)} == {str, float, bool, tuple}
    pull = bench.test_pull(outcome, CHART, TRUE_JOB)
    assert {type(getattr(pull, field.name)) for field in fields(pull)} == {str, float}


def test_each_weld_may_have_its_own_seed():
    """A class is welded in one run: each with the seed of its learner."""
    seeds = [b"one", b"two", b"one"]
    row = bench.weld(CHART, TRUE_JOB, seed=seeds, number=np.array([1, 1, 1]))
    assert row.strength_n[0] == row.strength_n[2] != row.strength_n[1]
    assert row.strength_n[1] == bench.weld(CHART, TRUE_JOB, seed=b"two", number=1).strength_n


LIMITS = bench.SETTING_LIMITS
numbers_of = {
    "current_a": st.floats(*LIMITS["current"]),
    "time_ms": st.floats(*LIMITS["time"]),
    "lift_mm": st.floats(*LIMITS["lift"]),
    "protrusion_mm": st.floats(*LIMITS["protrusion"]),
    "flow_l_min": st.floats(*LIMITS["gas flow"]),
    "tilt_deg": st.floats(*LIMITS["tilt"]),
    "offset_mm": st.floats(*LIMITS["offset"]),
}
any_settings = st.builds(
    bench.WeldSettings,
    stud_diameter_mm=st.sampled_from((3, 4)),
    gas=st.sampled_from(bench.GASES),
    polarity=st.sampled_from(bench.POLARITIES),
    head=st.sampled_from(bench.HEADS),
    earth=st.sampled_from(bench.EARTHS),
    **numbers_of,
)
any_job = st.builds(
    bench.WeldJob,
    head_diameter_mm=st.floats(5, 15),
    web_mm=st.floats(0.3, 3),
    rivet_hold_n=st.floats(100, 20000),
    current_share=st.floats(0.3, 1.9),
    voltage_v=st.floats(20, 40),
    scatter_share=st.floats(0, 3),
)


@settings(max_examples=60)
@given(any_settings, any_job, st.integers(0, 10**6))
def test_nothing_is_ever_not_a_number(chosen, job, number):
    """Over the whole range of settings and jobs every outcome is a number within its bounds."""
    outcome = bench.weld(chosen, job, seed=b"any", number=number)
    for field in fields(outcome):
        value = getattr(outcome, field.name)
        if isinstance(value, float):
            assert np.isfinite(value), field.name
    assert 0 <= outcome.fused_share <= 1
    assert 0 <= outcome.web_left_mm <= job.web_mm + 1e-4  # rounded to four decimals
    assert 0 <= outcome.collar_gap_deg <= 360
    assert outcome.sign_id in bench.SIGN_IDS
    assert outcome.surface in bench.SURFACES
    assert (outcome.sign_id == "good") == (outcome.defects == ())
    pull = bench.test_pull(outcome, chosen, job)
    assert 0 <= pull.force_n <= job.rivet_hold_n + 1
    assert pull.gave in bench.GAVE
    assert pull.face in bench.FACES
    assert bench.in_window(chosen, job) in (True, False)


@settings(max_examples=60)
@given(any_settings, any_job, st.floats(0, 300), st.floats(0, 40))
def test_more_energy_never_melts_less(chosen, job, more_a, more_ms):
    """More current or time gives no less depth and no more web, without scatter."""
    start = plain_weld(chosen, job)
    hotter = replace(chosen, current_a=min(chosen.current_a + more_a, LIMITS["current"][1]))
    longer = replace(chosen, time_ms=min(chosen.time_ms + more_ms, LIMITS["time"][1]))
    for more in (hotter, longer):
        outcome = plain_weld(more, job)
        assert outcome.melted_depth_mm >= start.melted_depth_mm - 1e-9
        assert outcome.web_left_mm <= start.web_left_mm + 1e-9


@settings(max_examples=60)
@given(any_settings, any_job)
def test_what_harms_never_helps(chosen, job):
    """Tilt and offset never raise the strength of the weld, without scatter."""
    strength = plain_weld(chosen, job).strength_n
    tilted = replace(chosen, tilt_deg=min(chosen.tilt_deg + 2, 20))
    moved = replace(chosen, offset_mm=min(chosen.offset_mm + 0.5, 5))
    assert plain_weld(tilted, job).strength_n <= strength + 1  # rounded to a newton
    assert plain_weld(moved, job).strength_n <= strength + 1


PINNED = (
    ({}, "weak", 1, ("cold", 1.1, 0.18, 11328.0, "weld broke", "flat and grey")),
    ({}, "strong", 2, ("hot", 0.4, 0.26, 11415.0, "rivet drawn out", "")),
    ({"current_a": 900.0}, "weak", 3, ("good", 0.8, 0.07, 11227.0, "rivet drawn out", "")),
    ({"gas": "none", "current_a": 420.0}, "strong", 4, ("porous", 0.4, 0.26, 11810.0, "rivet drawn out", "")),
    (
        {"tilt_deg": 8.0, "current_a": 900.0},
        "weak",
        5,
        ("partial", 9.2, 0.23, 6021.0, "weld broke", "one-sided"),
    ),
    (
        {"offset_mm": 1.5, "current_a": 420.0},
        "strong",
        6,
        ("off_centre", 0.4, 1.71, 10010.0, "rivet drawn out", ""),
    ),
)


@pytest.mark.parametrize(("change", "machine", "number", "expected"), PINNED)
def test_pinned_outcomes(change, machine, number, expected):
    """A few outcomes that must be the same on every machine and Python, for learners' marks hang on them."""
    seed = b"a day at the shop"
    job = bench.draw_job(seed, machine=machine)
    changed = replace(CHART, **change)
    outcome = bench.weld(changed, job, seed=seed, number=number)
    pull = bench.test_pull(outcome, changed, job)
    # The strength of the stud hangs on no heat, so that a better heat model may come and the pins stay.
    seen = (outcome.sign_id, outcome.tilt_deg, outcome.offset_mm, outcome.stud_strength_n)
    assert (*seen, pull.gave, pull.face) == expected


def test_other_refusals():
    """A flange wider than its head, lengths that do not fit and unknown names are refused."""
    narrow = replace(TRUE_JOB, head_diameter_mm=5.5)
    with pytest.raises(ValueError, match="^head diameter must be at least the flange of 7 mm, got 5.5 mm$"):
        plain_weld(CHART, narrow)
    two, three = replace(CHART, current_a=np.full(2, 600.0)), replace(TRUE_JOB, web_mm=np.full(3, 1.1))
    with pytest.raises(
        ValueError, match="^settings and job must be single values or of one length, got lengths"
    ):
        plain_weld(two, three)
    with pytest.raises(ValueError, match="^collar sign must be one of good, .* got 'flat_grey'$"):
        bench.corrections("flat_grey")
    with pytest.raises(ValueError, match="^machine must be one of weak, strong, got 'new'$"):
        bench.draw_job(b"a day", machine="new")
    with pytest.raises(ValueError, match="^seed must be bytes"):
        bench.weld(CHART, TRUE_JOB, seed="text", number=1)


def test_a_sound_collar_can_hide_a_crack():
    """A few welds of a hundred look good and break bright and crystalline; hot ones do so more often."""
    outcome = bench.weld(CHART, TRUE_JOB, seed=b"cracks", number=np.arange(20_000))
    pull = bench.test_pull(outcome, CHART, TRUE_JOB)
    hidden = (outcome.sign_id == "good") & (pull.gave == "weld broke")
    assert 0.005 < hidden.mean() < 0.03
    assert set(pull.face[hidden]) == {"bright crystals"}
    hot = bench.weld(replace(CHART, current_a=900.0), TRUE_JOB, seed=b"cracks", number=np.arange(20_000))
    assert (hot.strength_n < 3000).mean() > 1.5 * (outcome.strength_n < 3000).mean()
