"""Logs of the virtual bench: read from anybody, judged by the library, marked rule by rule."""

import json
import random
from dataclasses import replace
from types import SimpleNamespace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from grading import bench_scores
from grading.bench_answers import right_log
from grading.bench_days import DAYS, begin_with, bench_key, day
from grading.bench_logs import MOST_STEPS, log_lines, read_typed_log, replay
from grading.bench_scores import judge_ahead, score_bench
from grading.bench_settings import SETTINGS, Dial
from grading.check import check_exercise
from grading.class_marks import earned_of
from grading.demo_class import _answer
from grading.exercise import Bench, BenchKey, Criterion, Exercise, Option, Slip
from grading.feedback import part_feedback, right_answer
from grading.keys import RoundKey, row_keys
from grading.part_scores import Outcome, score_part
from grading.report import shown_answer
from grading.scoring import mark_rounds
from grading.typed_answers import right_typed, slip_ids, slip_typed
from secondplate.bench import FINDINGS, SETTING_LIMITS, SETTING_NAMES, WeldSettings, draw_job, judge_log

WEIGHTS = {
    "tested_first": 0.3,
    "one_change": 0.2,
    "right_direction": 0.2,
    "reached_window": 0.2,
    "stopped": 0.1,
}
PART = Bench(
    id="log",
    ask="Weld and pull until the row can be welded.",
    settings=("current_a", "time_ms", "gas"),
    criteria=tuple(
        Criterion(id=name, weight=weight, slip=Slip(id=f"not_{name}", sentence=f"Broke {name}."))
        for name, weight in WEIGHTS.items()
    ),
    stop_reasons=(Option(id="head", text="the head is spoilt"), Option(id="tries", text="three tries")),
    points=5.0,
)
EXERCISE = Exercise(
    id="arcs.bench",
    objective="kinds",
    title="A day at the bench",
    prompt="Set it up.",
    parts=(PART,),
    draw=lambda draw: {"day": draw.whole("day", 1, DAYS)},
    solve=lambda table: {
        "log": bench_key([day(int(number)) for number in table["day"]], [begin_with(6)] * len(table["day"]))
    },
    reasons="One first. Then the row.",
    read_again="Which kinds?",
)
WELD, PULL, ROW = (
    {"do": "weld", "settings": {"current_a": "600", "time_ms": "30", "gas": "M12"}},
    {"do": "pull"},
    {"do": "row"},
)


def _key(number=0, **changes):
    seed, job = day(number, "weak", **changes)
    return BenchKey(seed=seed, job=job, start=begin_with(6))


def _stud(**typed):
    return {"do": "weld", "settings": {**WELD["settings"], **typed}}


def _stop(why="tries"):
    return {"do": "stop", "why": why}


GOOD = [WELD, PULL, _stud(current_a="900 A"), PULL, ROW]


# Reading


@pytest.mark.parametrize("name", SETTING_NAMES)
def test_every_setting_can_be_set_from_end_to_end(name):
    """What a dial or a switch offers is what the library takes, and what is written back is read again."""
    setting = SETTINGS[name]
    texts = (
        [setting.typed(end) for end in (setting.low, setting.high)]
        if isinstance(setting, Dial)
        else [option.id for option in setting.options]
    )
    for text in texts:
        value, problem = setting.read(text)
        assert problem == ""
        assert vars(WeldSettings(**{**begin_with(3), name: value}))[name] == value
        assert setting.say(text).startswith(setting.label)
    assert list(SETTINGS) == [*SETTINGS]
    assert len(SETTINGS) == len(SETTING_NAMES)


def test_limits_of_dials_are_the_librarys():
    """A dial that went further would be refused by the library instead of by a sentence."""
    dials = [setting for setting in SETTINGS.values() if isinstance(setting, Dial)]
    assert sorted((dial.low, dial.high) for dial in dials) == sorted(SETTING_LIMITS.values())


def test_what_is_typed_is_read_as_in_any_field():
    """Decimal commas, units and other units of the same kind are understood."""
    typed = {"current_a": "0,6 kA", "time_ms": "0.03 s", "gas": "I1"}
    log, problem = read_typed_log(PART, _key(), [{"do": "weld", "settings": typed}])
    assert problem == ""
    assert (log.welds[0]["current_a"], log.welds[0]["time_ms"]) == pytest.approx((600.0, 30.0), rel=1e-12)
    assert log.welds[0]["gas"] == "I1"
    assert log.welds[0]["lift_mm"] == begin_with(6)["lift_mm"]


HOSTILE = [
    "row",
    {"do": "row"},
    7,
    True,
    [[]],
    [None],
    ["weld"],
    [7],
    [{}],
    [{"do": 7}],
    [{"do": ["weld"]}],
    [{"do": "explode"}],
    [{"do": "weld"}],
    [{"do": "weld", "settings": None}],
    [{"do": "weld", "settings": []}],
    [{"do": "weld", "settings": {}}],
    [{"do": "weld", "settings": {"current_a": "600"}}],
    [_stud(lift_mm="1")],
    [_stud(current_a=600)],
    [_stud(current_a=None)],
    [_stud(current_a="NaN")],
    [_stud(current_a="1e999")],
    [_stud(current_a="-600")],
    [_stud(current_a="49")],
    [_stud(current_a="6" * 100_000)],
    [_stud(current_a=["600"])],
    [_stud(gas="helium")],
    [_stud(gas={"gas": "I1"})],
    [{**WELD, "force_n": 9000}],
    [{**PULL, "gave": "rivet drawn out"}],
    [PULL],
    [WELD, PULL, PULL],
    [WELD, PULL, ROW, WELD],
    [WELD, PULL, ROW, ROW],
    [WELD, PULL, _stop("bored")],
    [WELD, PULL, _stop(["head"])],
    [WELD, PULL, {"do": "stop"}],
    [WELD, PULL],
    [WELD],
    [WELD] * (MOST_STEPS + 1),
    [WELD] * 10_000,
    [[[[[[]]]]]] * 50,
]


@pytest.mark.parametrize("typed", HOSTILE, ids=lambda typed: repr(typed)[:60])
def test_what_is_no_log_is_said_in_a_sentence(typed):
    """Wrong shapes, unknown steps, endless logs and results smuggled in earn nothing and raise nothing."""
    result = score_part(PART, _key(), typed)
    assert (result.outcome, result.fraction) == (Outcome.INVALID, 0.0)
    assert 10 < len(result.sentence) < 400


@pytest.mark.parametrize("typed", [None, [], ""])
def test_no_work_is_no_answer(typed):
    """Nobody who only looked at the bench has used a try."""
    assert score_part(PART, _key(), typed).outcome is Outcome.UNANSWERED


_JSON = st.recursive(
    st.none()
    | st.booleans()
    | st.floats()
    | st.text(max_size=8)
    | st.sampled_from([WELD, PULL, ROW, "weld"]),
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(st.sampled_from(["do", "why", "settings", "gas"]), inner)
    ),
    max_leaves=12,
)


@settings(max_examples=300, deadline=None)
@given(typed=_JSON)
def test_anything_that_json_can_hold_is_survived(typed):
    """No saved answer whatever becomes an error of ours, in the mark or in the report."""
    assert score_part(PART, _key(), typed).outcome is not Outcome.ERROR
    shown_answer(PART, typed, {})


def test_a_stud_wider_than_the_head_is_said():
    """Where the stud may be picked, one whose flange hangs over the head is refused in a sentence."""
    part = replace(PART, settings=("stud_diameter_mm",))
    seed, job = day(1, head_diameter_mm=6.5)
    key = BenchKey(seed=seed, job=job, start=begin_with(5))
    result = score_part(part, key, [{"do": "weld", "settings": {"stud_diameter_mm": "6 mm"}}, PULL, ROW])
    assert result.outcome is Outcome.INVALID
    assert result.sentence == "step 1: the flange must fit on the head of 6.5 mm, got 7 mm"


# Marking


def test_the_good_way_earns_everything():
    """One stud, one pull, one change, a sound stud, the row."""
    assert score_part(PART, _key(), GOOD) == score_part(PART, _key(), right_typed(PART, _key()))
    assert score_part(PART, _key(), GOOD).outcome is Outcome.CORRECT


@pytest.mark.parametrize(
    ("typed", "broken"),
    [
        ([WELD, *GOOD], {"tested_first"}),
        ([WELD, PULL, _stud(current_a="900", time_ms="31"), PULL, ROW], {"one_change"}),
        ([WELD, PULL, _stud(current_a="500"), PULL, *GOOD[2:]], {"right_direction"}),
        ([*GOOD[:-1], _stop()], {"stopped"}),
        ([WELD, PULL, ROW], {"one_change", "right_direction", "reached_window", "stopped"}),
        ([ROW], set(FINDINGS)),
        ([_stop()], set(FINDINGS)),
        ([_stop("head")], set(FINDINGS)),
    ],
)
def test_each_broken_rule_costs_its_share_and_is_named(typed, broken):
    """Every rule is judged on its own; the slip of each broken one is reported with its sentence."""
    result = score_part(PART, _key(), typed)
    assert set(result.slip_ids) == {f"not_{rule}" for rule in broken}
    # abs: weights are decimal fractions
    assert result.fraction == pytest.approx(1.0 - sum(WEIGHTS[rule] for rule in broken), abs=1e-9)
    assert result.outcome is (Outcome.PARTLY if result.fraction > 0 else Outcome.SLIP)
    assert all(f"Broke {rule}." in result.sentence for rule in broken)


@pytest.mark.parametrize(
    ("typed", "lost"),
    [
        ([WELD, PULL] * 3 + [_stop()], {"one_change", "right_direction", "reached_window"}),
        (
            [WELD, PULL, _stud(current_a="601"), PULL, _stud(current_a="602"), PULL, _stop()],
            {"reached_window"},
        ),
        (
            [_stud(current_a="1500", time_ms="200"), PULL, _stop("head")],
            {"one_change", "right_direction", "reached_window"},
        ),
        (
            [
                WELD,
                PULL,
                _stud(current_a="1500"),
                PULL,
                _stud(current_a="1500", time_ms="200"),
                PULL,
                _stop("head"),
            ],
            {"reached_window"},
        ),
    ],
    ids=["three idle tries", "three tiny steps", "head burnt at once", "head burnt in the end"],
)
def test_stopping_does_not_earn_a_setting_that_was_never_reached(typed, lost):
    """Nobody gets round the work by waiting for the rule of stopping, or by spoiling the head."""
    result = score_part(PART, _key(), typed)
    assert {f"not_{rule}" for rule in lost} <= set(result.slip_ids)
    assert "not_stopped" not in result.slip_ids


def test_stopping_is_right_where_the_day_itself_spoils_the_head():
    """Where the setting from the papers burns through a thin web, the rivet is handed over at once."""
    key = _key(web_mm=0.4, current_share=1.6, scatter_share=0.0)
    assert replay(read_typed_log(PART, key, [WELD, PULL])[0], key)[0].outcome.burnt_through
    assert score_part(PART, key, [WELD, PULL, _stop("head")]).outcome is Outcome.CORRECT
    assert score_part(PART, key, [WELD, PULL, _stop("tries")]).outcome is not Outcome.CORRECT


def test_a_broken_rule_names_the_stud():
    """Where several studs were welded, the learner is told which of them it was."""
    typed = [WELD, PULL, _stud(current_a="500"), PULL, *GOOD[2:]]
    assert "Broke right_direction. (Stud 2.)" in score_part(PART, _key(), typed).sentence


def test_the_judgement_is_the_librarys(monkeypatch):
    """Nothing but settings is taken from the log: the seed of the day decides what came of them."""
    key = _key()
    log, _ = read_typed_log(PART, key, GOOD)
    judgement = judge_log(log, key.job, key.seed)
    assert judgement.signs == tuple(one.outcome.sign_id for one in replay(log, key))
    assert judgement.gave == tuple(one.pull.gave for one in replay(log, key))


def test_a_class_is_judged_in_one_call_with_the_same_marks(monkeypatch):
    """What was judged ahead is what judging alone gives, and is not judged again."""
    logs = [(PART, _key(number), typed) for number in range(4) for typed in (GOOD, [WELD, PULL, ROW])]
    alone = [
        score_bench(part, BenchKey(seed=key.seed, job=key.job, start=key.start), typed)
        for part, key, typed in logs
    ]
    judge_ahead([*logs, (PART, _key(), "torn"), (PART, _key(), [WELD] * 10_000)])
    monkeypatch.setattr(bench_scores, "judge_log", None)
    assert [score_part(part, key, typed) for part, key, typed in logs] == alone


# The bank's checks and what learners are told


def test_the_right_log_and_every_slip_can_be_made():
    """Each rule can be broken on an ordinary day, and the bank's own check is content."""
    key = _key(3)
    assert slip_ids(PART) == [f"not_{rule}" for rule in FINDINGS]
    for slip_id in slip_ids(PART):
        assert slip_id in score_part(PART, key, slip_typed(PART, key, slip_id)).slip_ids
    assert list(check_exercise(EXERCISE, 40)) == []


def test_a_day_that_cannot_be_mastered_is_found():
    """With the wrong settings open nobody could earn the points, and the check says so."""
    stuck = replace(EXERCISE, parts=(replace(PART, settings=("flow_l_min",)),))
    problems = list(check_exercise(stuck, 20))
    assert any("does not take its own right answer" in problem for problem in problems)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"criteria": ()}, "be judged by some of"),
        ({"criteria": PART.criteria[:2]}, "add up to 1"),
        ({"criteria": (replace(PART.criteria[0], id="luck", weight=1.0),)}, "be judged by some of"),
        ({"settings": ("current_a", "colour")}, "open some of the settings"),
        ({"settings": ()}, "open some of the settings"),
        ({"stop_reasons": PART.stop_reasons[:1]}, "have the reasons to stop"),
    ],
)
def test_a_part_that_does_not_fit_the_bench_is_refused(changes, words):
    """Rules, settings and reasons that the library does not know are found with the keys."""
    with pytest.raises(ValueError, match=words):
        row_keys(replace(EXERCISE, parts=(replace(PART, **changes),)), [{"day": 1}])


@pytest.mark.parametrize(
    ("solve", "words"),
    [
        (lambda table: {"log": bench_key([day(1)], [begin_with(6)])}, "hold 2 days"),
        (lambda table: {"log": bench_key([day(1)] * 2, [{"current_a": 600}] * 2)}, "start with the settings"),
        (
            lambda table: {"log": bench_key([day(1, head_diameter_mm=6.5)] * 2, [begin_with(6)] * 2)},
            "start with a flange that fits on the head, got a head of 6.5 mm",
        ),
    ],
)
def test_a_key_that_does_not_fit_is_refused(solve, words):
    """A missing day or setting never becomes a mark."""
    with pytest.raises(ValueError, match=words):
        row_keys(replace(EXERCISE, solve=solve), [{"day": 1}, {"day": 2}])


def test_learners_with_one_day_share_its_key():
    """What is worked out about a day is worked out once for a class."""
    first, second, other = row_keys(EXERCISE, [{"day": 1}, {"day": 1}, {"day": 2}])
    assert first["log"] is second["log"]
    assert first["log"] is not other["log"]


def test_days_are_the_same_for_ever():
    """A day is known by its number alone."""
    seed, job = day(17)
    assert seed == b"day 17"
    assert job == draw_job(b"day 17")


def test_every_broken_rule_stands_in_the_class_report(make_record, class_settings):
    """One log can show several slips, and the instructor sees each of them."""
    record = make_record("arcs.energy", {"log": [WELD, PULL, ROW]}, exercise="arcs.bench", scenario="d")
    key = RoundKey(digest="d", keys={"log": _key()}, numbers={"day": 0})
    marked = mark_rounds(EXERCISE, [record], class_settings, lambda number: key)
    result = SimpleNamespace(exercises={EXERCISE.id: marked}, problems=(), points=marked.points)
    assert earned_of(result, {EXERCISE.id: EXERCISE}).slips == sorted(
        f"arcs.bench.log.not_{rule}"
        for rule in ("one_change", "right_direction", "reached_window", "stopped")
    )
    said = part_feedback(PART, marked.parts["log"], settings=class_settings)
    assert said.headline == "Partly right."
    assert "Broke stopped." in said.sentences[0]
    # abs: a ten-thousandth of a point is the smallest that is shown
    assert marked.points == pytest.approx(5 * WEIGHTS["tested_first"], abs=1e-4)


def test_a_log_is_shown_stud_by_stud():
    """The report and the right answer tell what was changed for each stud, and how the work ended."""
    assert log_lines(PART, GOOD) == [
        "Stud 1: Current 600 A, Weld time 30 ms, Gas M12, 0.5 to 5 % CO\u2082; pulled.",
        "Stud 2: Current 900 A; pulled.",
        "Then the row.",
    ]
    assert log_lines(PART, [WELD, WELD, PULL, _stop()])[1:] == [
        "Stud 2: nothing changed; pulled.",
        "Stopped: three tries.",
    ]
    assert right_answer(PART, _key()).startswith("for instance: Stud 1: Current 600 A")


def test_an_invented_class_works_at_the_bench():
    """Right logs, slips, careless and unfinished ones all occur, can be saved, and none is an error."""
    outcomes = set()
    for number in range(60):
        typed = _answer(PART, _key(number % 3), random.Random(number), 0.3)
        assert json.loads(json.dumps(typed, allow_nan=False)) == typed
        outcomes.add(score_part(PART, _key(number % 3), typed).outcome)
    assert outcomes >= {Outcome.CORRECT, Outcome.PARTLY, Outcome.INVALID}
    assert Outcome.ERROR not in outcomes


def test_most_days_can_be_mastered():
    """The good way ends with the row on most days, and takes no more studs than anybody has patience for."""
    ends = [
        right_log(PART, row)
        for row in (BenchKey(seed=day(n)[0], job=day(n)[1], start=begin_with(6)) for n in range(40))
    ]
    assert sum(log[-1] == ROW for log in ends) >= 30
    assert max(map(len, ends)) <= 15
