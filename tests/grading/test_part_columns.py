"""Many answers to one part at once: the same results as one by one, whatever stands beside what."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from grading.exercise import ChoiceKey, ChoicesKey, NumberKey, OrderKey, RangeKey, VerdictsKey
from grading.part_columns import score_column
from grading.part_scores import score_part

LETTERS = st.sampled_from(["a", "b", "c", "d", "e", "", None, 1, True, 1.0])
VERDICT = st.sampled_from(["good", "bad", "fine", "", None, 1, True, []])
NUMBER = st.sampled_from([480.0, 0.0, -480.0, 1e308])
TYPED = {
    "energy": st.sampled_from(
        ["480 J", "0,48 kJ", "240 J", "960 J", "489.6 J", "489.7 J", "-480 J", "1e308 J", "-1e308 J"]
        + ["480", "0 J", "0", "", " ", "six J", "4,800 J", None, 480, 480.0, True, ["480 J"], {"a": "480 J"}]
    ),
    "one": LETTERS,
    "many": st.lists(LETTERS, max_size=4) | LETTERS | st.just([["a"]]) | st.just(("a", "c")),
    "sequence": st.permutations(list("abcd")) | st.lists(LETTERS, max_size=5),
    "table": st.dictionaries(st.sampled_from(["r1", "r2", "r3", "r4"]), VERDICT, max_size=4) | LETTERS,
    "band": st.fixed_dictionaries({"low": st.just("432 J"), "high": st.sampled_from(["528 J", "0 J", ""])}),
}
KEYS = {
    "energy": NUMBER.map(lambda value: NumberKey(value=value, slips={"halved": value / 2, "doubled": 240.0})),
    "one": st.sampled_from("ab").map(lambda right: ChoiceKey(right=right)),
    "many": st.sampled_from([("a", "c"), ("b",)]).map(lambda right: ChoicesKey(right=right)),
    "sequence": st.permutations("abcd").map(lambda right: OrderKey(right=tuple(right))),
    "table": st.sampled_from(["good", "bad"]).map(
        lambda right: VerdictsKey(right={"r1": right, "r2": "bad", "r3": "good"})
    ),
    "band": st.just(RangeKey(low=432.0, high=528.0, slips={"halved": (216.0, 264.0)})),
}


@pytest.mark.parametrize("part_id", TYPED)
def test_a_column_gives_what_each_answer_gives_alone(small_bank, part_id):
    """Answers that are equal without being the same, such as 1 and true, do not take each other's result."""
    parts = {part.id: part for exercise in small_bank.values() for part in exercise.parts}

    @settings(max_examples=150, deadline=None)
    @given(st.lists(KEYS[part_id], min_size=1, max_size=3), st.data())
    def holds(keys, data):
        rows = data.draw(st.lists(st.tuples(st.sampled_from(keys), TYPED[part_id]), max_size=12))
        alone = [score_part(parts[part_id], key, typed) for key, typed in rows]
        assert score_column(parts[part_id], [key for key, _ in rows], [typed for _, typed in rows]) == alone

    holds()
