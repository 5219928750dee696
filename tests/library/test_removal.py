"""Ways of removal: hard limits, learning, simulated rows, the decision and where scoring misleads."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from secondplate import removal
from secondplate.bands import Band

JOB = removal.RemovalJob(behind="closed", bond="none", second_plate_mm=2.0, rivet_hardness_hv=480)
ROW = {"rivets": 12, "second_plate_mm": 2.0}
PINNED_MINUTES = [104.217399, 157.800294, 128.93044]
PINNED_COUNTS = ([2, 2, 2], [0, 2, 4])


def fixed(value):
    """Return a band of one value."""
    return Band(low=value, best=value, high=value, basis="fixed")


CERTAIN = removal.MethodTimes(
    method="drill",
    set_up_min=fixed(10.0),
    first_min=fixed(4.0),
    learning_rate=fixed(1.0),
    failure_probability=fixed(0.25),
    rework_min=fixed(8.0),
    clean_up_min=fixed(5.0),
    damage_probability=fixed(0.1),
    damage_after_failure_probability=fixed(0.3),
)


def test_a_closed_section_leaves_pulling_and_grinding():
    """A hard rivet in a closed section is neither drilled with high-speed steel nor punched."""
    found = removal.screen(JOB)
    assert found.allowed == ("pull", "grind")
    assert [limit.fact for limit in found.against("drill")] == ["hardness_beyond_drill_hv"]


@pytest.mark.parametrize(
    ("change", "verdicts"),
    [
        ({"bond": "hard"}, {"pull": "not before", "drill": "allowed", "punch": "not before"}),
        ({"bond": "released"}, {"pull": "allowed", "punch": "allowed"}),
        ({"behind": "closed"}, {"punch": "refused", "pull": "allowed"}),
        ({"airbag": "armed"}, dict.fromkeys(removal.METHODS, "not before")),
        ({"airbag": "made safe"}, dict.fromkeys(removal.METHODS, "allowed")),
        ({"high_voltage": "live"}, dict.fromkeys(removal.METHODS, "not before")),
        ({"high_voltage": "isolated"}, dict.fromkeys(removal.METHODS, "allowed")),
        ({"second_plate_mm": 1.0}, {"pull": "allowed", "drill": "refused", "punch": "refused"}),
        ({"heat_sensitive_mm": 30.0}, {"pull": "not before", "grind": "not before", "punch": "allowed"}),
        ({"heat_sensitive_mm": 400.0}, {"pull": "allowed", "grind": "not before"}),
        ({"aluminium_dust": "yes"}, {"grind": "refused", "pull": "allowed"}),
        ({"front_clear_mm": 22.0}, {"pull": "refused", "drill": "allowed", "grind": "refused"}),
        ({"drill": "high-speed steel"}, {"drill": "refused"}),
        ({"rivet_hardness_hv": 540.0}, {"drill": "refused"}),
        ({"airbag": "armed", "behind": "closed"}, {"punch": "refused", "pull": "not before"}),
    ],
)
def test_each_hard_limit(change, verdicts):
    """Each fact of a job moves the verdicts it should, with a reason and what lifts it."""
    open_job = replace(JOB, behind="open", drill="solid carbide")
    assert removal.screen(open_job).allowed == removal.METHODS
    found = removal.screen(replace(open_job, **change))
    assert {method: found.verdicts[method] for method in verdicts} == verdicts
    for method, verdict in verdicts.items():
        limits = found.against(method)
        assert bool(limits) == (verdict != "allowed")
        assert all(limit.reason.endswith(".") and limit.lifted_by.endswith(".") for limit in limits)


def test_many_jobs_are_screened_as_each():
    """Jobs in arrays get the verdicts that each gets alone."""
    bonds, plates = np.array(["none", "hard", "released"]), np.array([2.0, 1.0, 3.0])
    many = removal.screen(replace(JOB, bond=bonds, second_plate_mm=plates, drill=np.array(removal.DRILLS)))
    for number in range(3):
        one = replace(
            JOB,
            bond=str(bonds[number]),
            second_plate_mm=float(plates[number]),
            drill=removal.DRILLS[number],
        )
        for method, verdict in removal.screen(one).verdicts.items():
            assert np.broadcast_to(many.verdicts[method], 3)[number] == verdict


@given(st.integers(2, 200), st.floats(0.5, 0.999))
def test_learning_models_are_distinct(count, rate):
    """The cumulative average learns faster: its series is shorter, and its average keeps the rate."""
    curve = {"first_min": 3.0, "learning_rate": rate}
    unit, average = (
        removal.series_min([count, 2 * count], **curve, learning_model=model)
        for model in removal.LEARNING_MODELS
    )
    assert np.all(average < unit)
    assert average[1] / 2 / average[0] == pytest.approx(rate, rel=1e-9)  # a power, but for rounding
    pieces = [
        removal.piece_min(np.arange(1, count + 1), **curve, learning_model=model).sum()
        for model in removal.LEARNING_MODELS
    ]
    assert pieces == pytest.approx([unit[0], average[0]], rel=1e-9)


def test_columns_of_series():
    """A column of counts and rates gives what each pair gives alone."""
    counts, rates = np.array([3, 7, 20]), np.array([0.8, 0.9, 1.0])
    found = removal.series_min(counts, first_min=2.0, learning_rate=rates, learning_model="unit")
    alone = [
        removal.series_min(int(count), first_min=2.0, learning_rate=float(rate), learning_model="unit")
        for count, rate in zip(counts, rates, strict=True)
    ]
    assert found == pytest.approx(alone, rel=1e-12)
    assert (
        removal.first_row_no_slower(
            removal.JobTimes(set_up_min=50, first_min=3),
            removal.JobTimes(set_up_min=0, first_min=2),
            longest=99,
        )
        is None
    )


def test_parts_of_a_job():
    """Set-up, pieces with their allowance, rework and clean-up add up."""
    times = removal.JobTimes(
        set_up_min=10,
        first_min=4,
        allowance=0.15,
        failure_probability=0.25,
        rework_min=8,
        clean_up_min=5,
    )
    assert times.row_min([1, 12]) == pytest.approx([10 + 4.6 + 2 + 5, 10 + 12 * 4.6 + 24 + 5], rel=1e-12)


def test_pinned_rows():
    """Three rows that must never change: they decide what learners see."""
    rows = removal.simulate_rows(removal.usual_times("drill"), **ROW, rows=3, seed=b"a pinned day")
    assert rows.minutes.tolist() == PINNED_MINUTES
    assert (rows.failures.tolist(), rows.damaged.tolist()) == PINNED_COUNTS


def test_a_row_does_not_know_how_many_are_drawn():
    """The first rows are the same however many are drawn; another seed gives others."""
    few, many, other = (
        removal.simulate_rows(removal.usual_times("pull"), **ROW, rows=rows, seed=seed)
        for rows, seed in ((20, b"a"), (3000, b"a"), (20, b"b"))
    )
    np.testing.assert_array_equal(few.minutes, many.minutes[:20])
    np.testing.assert_array_equal(few.damaged, many.damaged[:20])
    assert np.all(few.minutes != other.minutes)


@pytest.mark.parametrize("method", removal.METHODS)
def test_simulation_against_the_means(method):
    """Means of 20,000 rows lie within five standard errors of those worked out from the bands."""
    times = removal.usual_times(method)
    rows = removal.simulate_rows(times, **ROW, rows=20_000, seed=b"means")
    means = removal.mean_parts(times, **ROW)
    for found, expected in ((rows.minutes, means.minutes), (rows.damaged, means.damaged)):
        assert found.mean() == pytest.approx(expected, abs=5 * found.std() / np.sqrt(found.size) + 0.02)


def test_simulation_without_doubt_is_binomial():
    """With bands of one value, rivets done again and damage follow the binomial law; five standard errors."""
    rows = removal.simulate_rows(CERTAIN, **ROW, rows=20_000, seed=b"certain")
    again, hurt = rows.failures, rows.damaged
    chance = 0.75 * 0.1 + 0.25 * 0.3
    for found, share in ((again, 0.25), (hurt, chance)):
        assert found.mean() == pytest.approx(12 * share, abs=5 * found.std() / np.sqrt(found.size))
    none = (1 - chance) ** 12
    assert rows.chance_of_damage == pytest.approx(1 - none, abs=5 * rows.chance_error)
    low, high = rows.minutes_between(0.1, 0.9)
    assert low < 10 + 12 * 4 + 5 + 3 * 8 < high
    assert rows.mean_min == pytest.approx(10 + 48 + 5 + 24, abs=0.3)  # ten standard errors


def test_a_thinner_plate_is_hurt_more():
    """Chances go with one over the thickness and stop at 1."""
    assert removal.damage_chance([0.1, 0.9], second_plate_mm=1.0).tolist() == [0.2, 1.0]
    rows = np.arange(1, 30)
    thin, thick = (
        removal.mean_parts(removal.usual_times("drill"), rivets=rows, second_plate_mm=plate)
        for plate in (1.5, 3.0)
    )
    np.testing.assert_allclose(thin.damaged, 2 * thick.damaged, rtol=1e-12)
    np.testing.assert_array_equal(thin.minutes, thick.minutes)


@settings(max_examples=8)
@given(st.integers(1, 40), st.floats(0, 300), st.sampled_from(("open", "closed")))
def test_the_decision_is_the_cheapest_allowed(rivets, price, behind):
    """No allowed method costs less than the chosen one, and no refused one is chosen."""
    job = replace(JOB, behind=behind)
    found = removal.decide(job, rivets=rivets, damage_min=price, seed=b"any", rows=300)
    costs = {each.method: each.cost_min for each in found.outlooks if each.verdict == "allowed"}
    assert found.method == min(costs, key=costs.get)
    assert set(costs) == set(removal.screen(job).allowed)
    assert found.first == removal.NO_PROCEDURE


def test_choices_of_a_class_are_those_of_each():
    """Jobs in arrays get the method and costs that a decision gives each; none where nothing is allowed."""
    behind, bonds = np.array(["open", "closed", "open", "open"]), np.array(["none", "hard", "none", "none"])
    airbags, rivets = np.array(["none", "none", "armed", "made safe"]), np.array([4, 12, 8, 30])
    many = replace(JOB, behind=behind, bond=bonds, airbag=airbags)
    found = removal.cheapest_allowed(many, rivets=rivets, damage_min=60)
    assert found.method.tolist() == ["punch", "grind", removal.NO_METHOD, "pull"]
    for number in range(4):
        job = replace(JOB, behind=str(behind[number]), bond=str(bonds[number]), airbag=str(airbags[number]))
        alone = removal.decide(job, rivets=int(rivets[number]), damage_min=60, seed=b"any", rows=50)
        assert (alone.method or removal.NO_METHOD) == found.method[number]
        for each in alone.outlooks:
            assert each.cost_min == pytest.approx(found.costs_min[each.method][number], rel=1e-12)


def test_reasons_and_changes_of_a_decision():
    """The reasons name limits and costs; the changes name row length, price and timings, and hold."""
    job = replace(JOB, behind="open")
    found = removal.decide(job, rivets=12, damage_min=60, seed=b"a job")
    assert found.method == "pull"
    assert found.reasons[0].startswith("drill is refused: No table gives a speed")
    assert "punch costs 11 min more: 41 min of work and 1.21 damaged places." in found.reasons
    assert found.changes == (
        "With 7 rivets or fewer punch would cost less.",
        "With a damaged place below 46 min punch would cost less than pull.",
        "Own timings could change it: knowing all of them is worth 7.2 min a row, the damage probability of "
        "punch alone 5.3 min.",
    )
    for change in ({"rivets": 7, "damage_min": 60}, {"rivets": 12, "damage_min": 44}):
        assert removal.decide(job, **change, seed=b"a job").method == "punch"
    near = removal.decide(job, rivets=8, damage_min=60, seed=b"a job", rows=50)
    assert near.changes[0] == "With 7 rivets or fewer punch would cost less."
    for change in ({"rivets": 9, "damage_min": 60}, {"rivets": 12, "damage_min": 48}):
        assert removal.decide(job, **change, seed=b"a job").method == "pull"


def test_what_would_lift_a_limit_is_said():
    """With hard adhesive, grinding is left, and releasing it would make pulling the cheaper way."""
    found = removal.decide(replace(JOB, bond="hard"), rivets=12, damage_min=60, seed=b"a job")
    assert found.method == "grind"
    assert found.changes[0].startswith(
        "Release the adhesive first by the maker's procedure. Then pull would cost 102 min, 130 min less."
    )


def test_no_method_may_be_left():
    """With an armed airbag no method is chosen, and the reasons say so."""
    found = removal.decide(replace(JOB, airbag="armed"), rivets=12, damage_min=60, seed=b"a job", rows=200)
    assert found.method is None
    assert found.reasons[-1] == "No method is allowed on this job as it stands."
    assert all("safe by the maker's procedure" in change for change in found.changes)


def test_own_timings_count():
    """A shop that grinds in a minute without harm grinds, where pulling won before."""
    quick = {name: fixed(0.5) for name in removal.QUANTITIES if name.endswith("min")}
    times = [removal.usual_times(method) for method in removal.METHODS]
    times[2] = replace(times[2], **quick, damage_probability=fixed(0.0))
    found = removal.decide(JOB, rivets=12, damage_min=60, seed=b"a job", times=times, rows=500)
    assert found.method == "grind"


def test_no_timing_is_worth_more_than_all():
    """A quantity is worth at least nothing and at most what all are worth; nothing where all is certain."""
    options = [removal.usual_times("pull"), removal.usual_times("punch")]
    given = {"damage_min": 60, "rows": 4000, "seed": b"worth"}
    found = removal.value_of_timings(options, **ROW, **given)
    worth = np.array([each.worth_min for each in found.each])
    assert np.all(np.diff(worth) <= 0)
    assert worth.min() >= -1e-9
    assert worth.max() <= found.all_min + 0.1  # two sets of draws
    sure = removal.value_of_timings([CERTAIN, replace(CERTAIN, method="punch")], **ROW, **given)
    assert sure.all_min == pytest.approx(0, abs=1e-9)


def test_a_score_lets_a_refused_method_win():
    """Punching scores best on speed and price where nobody can reach the button: limits come first."""
    scores = [[3, 3, 5], [2, 3, 2], [2, 4, 2], [5, 5, 3]]  # speed, price, kindness to the second plate
    sums = removal.weighted_sum(scores, weights=[0.4, 0.3, 0.3])
    best = removal.METHODS[removal.order(sums)[0]]
    assert best == "punch"
    assert removal.screen(JOB).verdicts[best] == "refused"


def test_an_option_nobody_wants_turns_the_order():
    """With scaling by the range, a third option that is worse than both turns the first two round."""
    given = {"weights": [0.5, 0.5], "more_is_better": [True, True], "normalisation": "min-max"}
    two = removal.closeness_to_ideal([[10, 4], [8, 5]], **given)
    three = removal.closeness_to_ideal([[10, 4], [8, 5], [1, 4]], **given)
    assert two[0] == pytest.approx(two[1])
    assert removal.order(three[:2]) != removal.order(
        removal.closeness_to_ideal([[10, 4], [8, 5], [8, 0]], **given)[:2]
    )


def test_consistent_comparisons_give_their_weights():
    """Ratios of known weights give them back, by both ways, with nothing inconsistent."""
    weights = np.array([0.5, 0.3, 0.2])
    matrix = weights[:, None] / weights
    found = removal.pairwise_weights(matrix)
    assert found.weights == pytest.approx(weights, abs=1e-9)
    assert removal.column_mean_weights(matrix) == pytest.approx(weights, abs=1e-9)
    for table in removal.RANDOM_INDEX_TABLES:
        assert abs(found.consistency_ratio(table)) < 1e-9 < removal.USUAL_LIMIT


REFUSED = [
    (lambda: replace(JOB, bond="glue"), "bond must be one of none, hard, released, got 'glue'"),
    (lambda: replace(JOB, second_plate_mm=0), "second plate must be between 0.5 mm and 6 mm, got 0 mm"),
    (lambda: replace(JOB, drill="diamond"), "drill must be one of .*, got 'diamond'"),
    (lambda: removal.usual_times("chisel"), "method must be one of pull, drill, grind, punch, got 'chisel'"),
    (
        lambda: replace(CERTAIN, failure_probability=fixed(1.5)),
        "failure probability must be between 0 and 1, got 1.5",
    ),
    (
        lambda: replace(CERTAIN, set_up_min=fixed(-1.0)),
        "set up must be between 0 min and 600 min, got -1 min",
    ),
    (
        lambda: removal.simulate_rows(CERTAIN, rivets=0, second_plate_mm=2, rows=5, seed=b"a"),
        "rivets must be at least 1, got 0",
    ),
    (
        lambda: removal.simulate_rows(CERTAIN, **ROW, rows=5, seed="a"),
        "seed must be bytes, at least one, or a list of such, got 'a'",
    ),
    (
        lambda: removal.decide(JOB, rivets=5, damage_min=-1, seed=b"a"),
        "price of damage must be at least 0 min, got -1 min",
    ),
    (
        lambda: removal.decide(JOB, rivets=5, damage_min=1, seed=b"a", times=[CERTAIN]),
        "times must be of pull, drill, grind, punch in this order, got drill",
    ),
    (
        lambda: removal.value_of_timings([], **ROW, damage_min=1, rows=5, seed=b"a"),
        "methods must be at least 1, got 0",
    ),
    (lambda: removal.learning_exponent(80), "learning rate must be between 0.5 and 1, got 80"),
    (
        lambda: removal.break_even_rivets(
            less_set_up_min=6, less_set_up_each_min=3, more_set_up_min=25, more_set_up_each_min=3.5
        ),
        "time saved on each rivet must be above 0 min, got -0.5 min",
    ),
    (
        lambda: removal.weighted_sum([[1, 2], [2, 1]], weights=[0.5, 0.6]),
        r"weights must be 2 numbers that sum to 1, got \[0.5, 0.6\]",
    ),
    (
        lambda: removal.pairwise_weights([[1, 3], [3, 1]]),
        "comparison 1 with 2 must be one over 2 with 1, got 3 and 3",
    ),
    (
        lambda: removal.closeness_to_ideal(
            [[1, 2], [1, 3]], weights=[0.5, 0.5], more_is_better=[True, True], normalisation="min-max"
        ),
        "criterion 1 must tell the options apart, got scores all alike",
    ),
]


@pytest.mark.parametrize(("call", "sentence"), REFUSED)
def test_refusals(call, sentence):
    """Each bad word, count, probability and seed is refused in one sentence."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        call()


def test_a_decision_brings_its_hazards():
    """Each method has hazards of its own and those of any; a decision shows those of its method."""
    for method in removal.METHODS:
        own = [hazard for hazard in removal.hazards_of(method) if hazard.method == method]
        assert len(own) >= 1
        assert all(hazard.control.endswith(".") for hazard in removal.hazards_of(method))
    found = removal.decide(JOB, rivets=3, damage_min=60, seed=b"a job", rows=50)
    assert found.hazards == removal.hazards_of(found.method)
    with pytest.raises(ValueError, match="working voltage must be between 30 V and 1500 V, got 12 V"):
        removal.isolation_needed_ohm(12, combined=False)
