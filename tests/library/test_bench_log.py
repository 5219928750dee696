"""Logs of the bench: read or refused, and judged by five findings."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate import bench

CHART = vars(bench.chart_settings(stud_diameter_mm=6))
SEED = b"a day at the shop"
WEAK = replace(bench.draw_job(SEED, machine="weak"), scatter_share=0.0)
STRONG = replace(bench.draw_job(SEED, machine="strong"), scatter_share=0.0)
PULL, ROW = {"do": "pull"}, {"do": "row"}
NAMES = bench.FINDINGS


def weld(**change):
    """Return a step that welds with the chart's settings but for what is changed."""
    return {"do": "weld", "settings": CHART | change}


def stop(why):
    """Return a step that stops for a reason."""
    return {"do": "stop", "why": why}


def tries(*currents):
    """Return steps that weld and pull with one current after the other."""
    return [step for current in currents for step in (weld(current_a=float(current)), PULL)]


def met(log, job=WEAK):
    """Return the names of the findings that a log meets."""
    judgement = bench.judge_log(log, job, SEED)
    return {name for name in NAMES if getattr(judgement, name).met}


GOOD_DAY = [*tries(600, 750, 900), ROW]


def test_a_good_day_meets_all():
    """Weld, pull, more current, pull, more current, pull sound, now the row."""
    judgement = bench.judge_log(GOOD_DAY, WEAK, SEED)
    assert met(GOOD_DAY) == set(NAMES)
    assert judgement.signs[0] == "cold"
    assert judgement.signs[-1] == "good"
    assert judgement.gave[-1] == "rivet drawn out"


def test_a_good_day_on_a_strong_machine():
    """Hot at first, then less current, one step after the other."""
    assert met([*tries(600, 480, 420), ROW], STRONG) == set(NAMES)


def test_welds_are_numbered_from_one():
    """The first weld of a log is the weld with the number 1 of its bench, scatter and all."""
    job = bench.draw_job(SEED, machine="weak")
    currents = (680.0,) * 20  # on the edge of the window, so that the dice decide
    shown = [
        bench.weld(bench.WeldSettings(**CHART | {"current_a": current}), job, seed=SEED, number=number)
        for number, current in enumerate(currents, start=1)
    ]
    pulls = [
        bench.test_pull(one, bench.WeldSettings(**CHART | {"current_a": current}), job)
        for one, current in zip(shown, currents, strict=True)
    ]
    judgement = bench.judge_log(tries(*currents), job, SEED)
    assert judgement.signs == tuple(one.sign_id for one in shown)
    assert len(set(judgement.signs)) > 1
    assert judgement.gave == tuple(pull.gave for pull in pulls)


def test_an_empty_log_meets_nothing():
    """Who did nothing kept no rule."""
    assert met([]) == set()
    assert met([stop("tries")]) == set()
    assert met([ROW]) == set()


def test_two_welds_before_the_first_pull():
    """A second stud before the first is pulled breaks the rule of testing one first."""
    judgement = bench.judge_log([weld(), *GOOD_DAY[2:]], WEAK, SEED)
    assert not judgement.tested_first.met
    assert judgement.tested_first.failed_steps == (2,)


def test_two_changes_at_once():
    """Current and time together are two changes; the share counts the welds that changed one thing only."""
    log = [*tries(600), weld(current_a=750.0, time_ms=33.0), PULL, *tries(900), ROW]
    judgement = bench.judge_log(log, WEAK, SEED)
    assert not judgement.one_change.met
    # From the second to the third weld current and time change again.
    assert judgement.one_change.failed_steps == (3, 5)
    assert judgement.one_change.share == 0


def test_a_turn_the_wrong_way():
    """Less current on a cold weld is the wrong way; the way back up is right."""
    judgement = bench.judge_log([*tries(600, 550, 900), ROW], WEAK, SEED)
    assert not judgement.right_direction.met
    assert judgement.right_direction.share == 0.5
    assert judgement.right_direction.failed_steps == (3,)
    assert judgement.one_change.met


def test_a_change_that_does_nothing_is_not_the_right_way():
    """A little more gas does nothing for a cold weld."""
    judgement = bench.judge_log([*tries(600), weld(flow_l_min=9.0), PULL], WEAK, SEED)
    assert not judgement.right_direction.met


def test_the_same_again_is_no_change():
    """A second stud with the same settings confirms the first and counts neither for nor against."""
    assert met([*tries(600, 900, 900), ROW]) == set(NAMES)


def test_row_without_a_sound_pull():
    """The row on settings that only look good, not pulled, is begun too early."""
    judgement = bench.judge_log([*tries(600), weld(current_a=900.0), ROW], WEAK, SEED)
    assert judgement.reached_window.met
    assert not judgement.stopped.met
    assert judgement.stopped.failed_steps == (4,)


def test_row_after_a_cold_weld():
    """Who welds one cold stud and begins the row meets nothing but the first test."""
    assert met([*tries(600), ROW]) == {"tested_first"}


def test_three_failures_ask_for_a_stop():
    """Three tries without a sound pull: who stops has kept the rule, who goes on has not."""
    failures = tries(600, 610, 620)
    assert "stopped" in met([*failures, stop("tries")])
    assert "reached_window" in met([*failures, stop("tries")])
    assert "stopped" not in met([*failures, stop("head")])
    assert "stopped" not in met(failures)
    gone_on = bench.judge_log([*failures, *tries(900), ROW], WEAK, SEED)
    assert not gone_on.stopped.met
    assert gone_on.stopped.failed_steps == (7, 9)
    assert bench.judge_log([*failures, *tries(900), ROW], WEAK, SEED, tries=4).stopped.met


def test_burnt_head_asks_for_a_stop():
    """A head burnt through goes to another method."""
    assert "stopped" in met([*tries(600, 1500), stop("head")], STRONG)
    assert "stopped" not in met([*tries(600, 1500), stop("tries")], STRONG)
    assert "stopped" not in met([*tries(600, 1500, 450), ROW], STRONG)


def test_stop_without_need():
    """Stopping after one cold weld is no keeping of the rule."""
    assert met([*tries(600), stop("tries")]) == {"tested_first"}


def test_many_logs_at_once():
    """Judging many logs gives the judgement of each alone."""
    logs = [GOOD_DAY, [], [*tries(600, 550, 900), ROW], [*tries(600, 480), ROW]]
    jobs, seeds = [WEAK, WEAK, WEAK, STRONG], [SEED, b"other", b"third", SEED]
    many = bench.judge_logs([bench.read_log(log) for log in logs], jobs, seeds)
    alone = [bench.judge_log(*each) for each in zip(logs, jobs, seeds, strict=True)]
    assert many == alone


@pytest.mark.parametrize(
    ("log", "sentence"),
    [
        ("pull", "log must be a list of at most 100 steps, got str"),
        ({"do": "pull"}, "log must be a list of at most 100 steps, got dict"),
        ([PULL] * 101, "log must be a list of at most 100 steps, got 101 steps"),
        (["weld"], "step 1 must be a mapping with do, got 'weld'"),
        ([{"do": "paint"}], "step 1 must be one of weld, pull, row, stop, got 'paint'"),
        ([{}], "step 1 must be one of weld, pull, row, stop, got None"),
        ([PULL], "step 1 must be a pull of a stud just welded, got a pull with no such stud"),
        ([weld(), PULL, PULL], "step 3 must be a pull of a stud just welded, got a pull with no such stud"),
        ([ROW, weld()], "step 2 must not follow row, got 'weld'"),
        ([{"do": "stop"}], "reason of step 1 must be one of head, tries, got None"),
        ([{"do": "weld"}], "settings of step 1 must be stud_diameter_mm, .*, got None"),
        ([{"do": "weld", "settings": {"gas": "none"}}], "settings of step 1 must be .*, got {'gas': 'none'}"),
        ([weld(gas=["none"])], "settings of step 1 must be single numbers and words, got .*"),
        ([weld(current_a=True)], "settings of step 1 must be single numbers and words, got .*"),
        ([weld(current_a=5000.0)], "current must be between 50 A and 1500 A, got 5000 A"),
        ([weld(current_a=float("nan"))], "current must be finite, got nan A"),
        ([weld(time_ms="30")], "time must be a number in ms, got '30'"),
        ([weld(gas="helium")], "gas must be one of none, I1, M12, M21, got 'helium'"),
        ([weld(stud_diameter_mm=4.5)], "stud diameter must be one of 3, 4, 5, 6 mm, got 4.5 mm"),
    ],
)
def test_what_no_bench_allows_is_refused(log, sentence):
    """Each step that cannot have happened on the bench is refused in one sentence."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        bench.read_log(log)


anything = st.recursive(
    st.none() | st.booleans() | st.floats() | st.text(max_size=8) | st.sampled_from(bench.DOINGS),
    lambda inner: (
        st.lists(inner, max_size=4) | st.dictionaries(st.sampled_from(("do", "why", "settings")), inner)
    ),
    max_leaves=12,
)


@given(anything)
def test_a_strange_log_is_read_or_refused(log):
    """Whatever is handed in, it is read or refused by a sentence, never anything else."""
    try:
        read, said = bench.read_log(log), ""
    except ValueError as refusal:
        read, said = None, str(refusal)
    assert " must " in said if read is None else len(read.steps) == len(log)


def test_lists_of_one_length():
    """Logs, jobs and seeds go together one by one."""
    with pytest.raises(ValueError, match="^logs, jobs and seeds must be of one length, got 1, 0, 1$"):
        bench.judge_logs([bench.read_log([])], [], [SEED])
