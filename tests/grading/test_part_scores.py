"""One answer to one part: what each outcome needs, and that nothing malformed ever earns."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from grading.exercise import ChoiceKey, ChoicesKey, Number, NumberKey, OrderKey, RangeKey, VerdictsKey
from grading.part_scores import Outcome, score_part

NUMBER_KEY = NumberKey(value=480.0, slips={"halved": 240.0, "doubled": 960.0})
RANGE_KEY = RangeKey(low=432.0, high=528.0, slips={"halved": (216.0, 264.0)})
CHOICE_KEY = ChoiceKey(right="a")
CHOICES_KEY = ChoicesKey(right=("a", "c"))
ORDER_KEY = OrderKey(right=("b", "a", "d", "c"))
VERDICTS_KEY = VerdictsKey(right={"r1": "good", "r2": "bad", "r3": "good"})
KEYS = {
    "energy": NUMBER_KEY,
    "band": RANGE_KEY,
    "one": CHOICE_KEY,
    "many": CHOICES_KEY,
    "sequence": ORDER_KEY,
    "table": VERDICTS_KEY,
    "count": NumberKey(value=12.0, slips={}),
}


@pytest.fixture(scope="module")
def parts(small_bank):
    """Return one part of every kind by id."""
    return {part.id: part for exercise in small_bank.values() for part in exercise.parts}


@pytest.fixture(scope="module")
def score(parts):
    """Return a function that scores an answer to one of the parts."""
    return lambda part_id, typed: score_part(parts[part_id], KEYS[part_id], typed)


@pytest.mark.parametrize(
    ("part_id", "typed", "outcome", "fraction"),
    [
        ("energy", "480 J", "correct", 1.0),
        ("energy", "0,48 kJ", "correct", 1.0),
        ("energy", "470.4 J", "correct", 1.0),  # 2 % below, on the edge
        ("energy", "489.6 J", "correct", 1.0),  # 2 % above, on the edge
        ("energy", "470.3 J", "incorrect", 0.0),
        ("energy", "489.7 J", "incorrect", 0.0),
        ("energy", "240 J", "slip", 0.25),
        ("energy", "960 J", "slip", 0.0),
        ("energy", "-480 J", "incorrect", 0.0),
        ("energy", "480", "invalid", 0.0),
        ("energy", "480 A", "invalid", 0.0),
        ("energy", "six J", "invalid", 0.0),
        ("energy", "", "unanswered", 0.0),
        ("energy", " \n", "unanswered", 0.0),
        ("energy", None, "unanswered", 0.0),
        ("energy", 480, "invalid", 0.0),
        ("energy", 480.0, "invalid", 0.0),
        ("energy", True, "invalid", 0.0),
        ("energy", ["480 J"], "invalid", 0.0),
        ("energy", {"value": "480 J"}, "invalid", 0.0),
        ("count", "12", "correct", 1.0),
        ("count", "12.0 studs", "correct", 1.0),
        ("count", "12.001", "incorrect", 0.0),
        ("count", "13", "incorrect", 0.0),
        ("band", {"low": "432 J", "high": "528 J"}, "correct", 1.0),
        ("band", {"low": "432 J", "high": "600 J"}, "partly", 0.5),
        ("band", {"low": "400 J", "high": "0.528 kJ"}, "partly", 0.5),
        ("band", {"low": "216 J", "high": "264 J"}, "slip", 0.25),
        ("band", {"low": "100 J", "high": "200 J"}, "incorrect", 0.0),
        ("band", {"low": "528 J", "high": "432 J"}, "invalid", 0.0),
        ("band", {"low": "432 J", "high": ""}, "invalid", 0.0),
        ("band", {"low": "432 J"}, "invalid", 0.0),
        ("band", {"low": "432", "high": "528 J"}, "invalid", 0.0),
        ("band", {"low": "", "high": " "}, "unanswered", 0.0),
        ("band", {}, "unanswered", 0.0),
        ("band", {"low": "432 J", "high": "528 J", "best": "480 J"}, "invalid", 0.0),
        ("band", "432 J to 528 J", "invalid", 0.0),
        ("band", ["432 J", "528 J"], "invalid", 0.0),
        ("one", "a", "correct", 1.0),
        ("one", "b", "incorrect", 0.0),
        ("one", "d", "slip", 0.1),
        ("one", "", "unanswered", 0.0),
        ("one", "z", "invalid", 0.0),
        ("one", ["a"], "invalid", 0.0),
        ("many", ["a", "c"], "correct", 1.0),
        ("many", ["c", "a"], "correct", 1.0),
        ("many", ["a"], "partly", 0.5),
        ("many", ["a", "b"], "incorrect", 0.0),
        ("many", ["a", "b", "c"], "partly", 0.5),
        ("many", ["a", "b", "c", "d"], "slip", 0.1),
        ("many", ["a", "c", "d"], "partly", 0.5),
        ("many", ["b", "d"], "slip", 0.1),
        ("many", [], "unanswered", 0.0),
        ("many", ["a", "a", "c"], "invalid", 0.0),
        ("many", ["a", "z"], "invalid", 0.0),
        ("many", "ac", "invalid", 0.0),
        ("many", {"a": True}, "invalid", 0.0),
        ("sequence", ["b", "a", "d", "c"], "correct", 1.0),
        ("sequence", ["b", "a", "c", "d"], "partly", 0.5),
        ("sequence", ["a", "b", "c", "d"], "incorrect", 0.0),
        ("sequence", ["c", "d", "a", "b"], "incorrect", 0.0),
        ("sequence", ["b", "a", "d"], "invalid", 0.0),
        ("sequence", ["b", "a", "d", "d"], "invalid", 0.0),
        ("sequence", [], "unanswered", 0.0),
        ("sequence", "badc", "invalid", 0.0),
        ("table", {"r1": "good", "r2": "bad", "r3": "good"}, "correct", 1.0),
        ("table", {"r1": "good", "r2": "good", "r3": "good"}, "partly", 2 / 3),
        ("table", {"r1": "bad", "r2": "good", "r3": "bad"}, "slip", 0.1),
        ("table", {"r1": "good", "r2": "bad"}, "invalid", 0.0),
        ("table", {"r1": "good", "r2": "bad", "r3": ""}, "invalid", 0.0),
        ("table", {"r1": "", "r2": None}, "unanswered", 0.0),
        ("table", {}, "unanswered", 0.0),
        ("table", {"r1": "good", "r2": "bad", "r3": "fine"}, "invalid", 0.0),
        ("table", {"r1": "good", "r2": "bad", "r3": "good", "r4": "good"}, "invalid", 0.0),
        ("table", {"r1": ["good"], "r2": "bad", "r3": "good"}, "invalid", 0.0),
        ("table", ["good", "bad", "good"], "invalid", 0.0),
    ],
)
def test_outcomes(score, part_id, typed, outcome, fraction):
    """Each kind of answer has its outcome and its share."""
    result = score(part_id, typed)
    assert result.outcome == outcome
    assert result.fraction == pytest.approx(fraction, abs=1e-12)  # abs: thirds are not exact in binary


JSON = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats(allow_nan=True)
    | st.text(max_size=12)
    | st.sampled_from(["480 J", "432 J", "a", "b", "c", "d", "good", "bad", "r1", "low", "high", "12"]),
    lambda inner: (
        st.lists(inner, max_size=5)
        | st.dictionaries(
            st.sampled_from(["low", "high", "r1", "r2", "r3"]) | st.text(max_size=4), inner, max_size=4
        )
    ),
    max_leaves=12,
)


def _well_formed(part_id, typed):
    """Say, independently of the scoring code, whether an answer has the form that its part needs."""
    if part_id in ("energy", "count"):
        return isinstance(typed, str) and any(digit in typed for digit in "0123456789")
    if part_id == "band":
        return (
            isinstance(typed, dict)
            and set(typed) == {"low", "high"}
            and all(isinstance(end, str) for end in typed.values())
        )
    if part_id == "one":
        return typed in ("a", "b", "c", "d") if isinstance(typed, str) else False
    if part_id in ("many", "sequence"):
        letters = isinstance(typed, list) and all(
            item in ("a", "b", "c", "d") for item in typed if isinstance(item, str)
        )
        whole = letters and all(isinstance(item, str) for item in typed) and len(set(typed)) == len(typed)
        return whole and (len(typed) == 4 if part_id == "sequence" else len(typed) > 0)
    return (
        isinstance(typed, dict)
        and set(typed) == {"r1", "r2", "r3"}
        and all(v in ("good", "bad") for v in typed.values() if isinstance(v, str))
        and all(isinstance(v, str) for v in typed.values())
    )


@pytest.mark.parametrize("part_id", list(KEYS))
@given(typed=JSON)
@settings(max_examples=300, deadline=None)
def test_nothing_malformed_earns(score, part_id, typed):
    """Whatever JSON stands for an answer: the outcome is one of seven, and only well-formed ones earn."""
    result = score(part_id, typed)
    assert result.outcome in set(Outcome)
    assert result.outcome is not Outcome.ERROR
    assert 0.0 <= result.fraction <= 1.0
    if result.outcome in (Outcome.UNANSWERED, Outcome.INVALID, Outcome.INCORRECT):
        assert result.fraction == 0.0
    if not _well_formed(part_id, typed):
        assert result.outcome in (Outcome.UNANSWERED, Outcome.INVALID)
    if result.outcome is Outcome.INVALID:
        assert result.sentence


def test_a_fault_of_ours_is_an_error_and_earns_nothing(parts):
    """A key of the wrong kind does not stop the marking; it becomes the outcome error with a reason."""
    result = score_part(parts["energy"], CHOICE_KEY, "480 J")
    assert result.outcome is Outcome.ERROR
    assert result.fraction == 0.0
    assert "could not be marked" in result.sentence


def test_nearest_slip_is_named(parts):
    """Where two wrong paths lie within the tolerance, the nearer one is named."""
    part = replace(parts["energy"], relative_tolerance=0.3)
    key = NumberKey(value=1.0, slips={"halved": 480.0, "doubled": 520.0})
    assert score_part(part, key, "505 J").slip_id == "doubled"
    assert score_part(part, key, "495 J").slip_id == "halved"


def test_right_wins_over_a_slip_that_meets_it(parts):
    """Where a wrong path happens to lead to the right value, the answer is right."""
    key = NumberKey(value=480.0, slips={"halved": 480.0, "doubled": 481.0})
    assert score_part(parts["energy"], key, "480 J").outcome is Outcome.CORRECT


def test_a_slip_that_does_not_apply_matches_nothing(parts):
    """A slip value that is not a number is never met, not even by a huge answer."""
    key = NumberKey(value=480.0, slips={"halved": float("nan"), "doubled": float("nan")})
    assert score_part(parts["energy"], key, "1e300 J").outcome is Outcome.INCORRECT


def test_direction_of_a_wrong_number(score):
    """A wrong number is said to be too high or too low."""
    assert score("energy", "700 J").direction == "high"
    assert score("energy", "1 J").direction == "low"
    assert score("band", {"low": "432 J", "high": "900 J"}).direction == "high"
    assert score("band", {"low": "1 J", "high": "528 J"}).direction == "low"


def test_exact_counts_survive_float_noise():
    """0.1 + 0.2 as the computed key of an exact part is met by a typed 0.3."""
    part = Number(id="x", ask="", unit="", slips=(), tolerance_reason="exact")
    assert score_part(part, NumberKey(value=0.1 + 0.2, slips={}), "0.3").outcome is Outcome.CORRECT
    assert score_part(part, NumberKey(value=0.0, slips={}), "0").outcome is Outcome.CORRECT
    assert score_part(part, NumberKey(value=0.0, slips={}), "1e-12").outcome is Outcome.INCORRECT


def test_absolute_tolerance_counts_where_it_is_wider():
    """The wider of the two tolerances holds."""
    part = Number(
        id="x",
        ask="",
        unit="mm",
        slips=(),
        tolerance_reason="gauge",
        absolute_tolerance=0.1,
        relative_tolerance=0.01,
    )
    key = NumberKey(value=1.0, slips={})
    assert score_part(part, key, "1.1 mm").outcome is Outcome.CORRECT
    assert score_part(part, key, "1.11 mm").outcome is Outcome.INCORRECT
