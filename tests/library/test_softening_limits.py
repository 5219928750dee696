"""Limits under heat: words turn in order, a shop's own limits replace the typical ones, refusals."""

import numpy as np
import pytest

from secondplate import softening_limits as limits


@pytest.mark.parametrize("part", limits.typical_heat_limits())
def test_words_turn_in_order(part):
    """Along rising values each part goes from kept to warn to stop, and keeps its limit on the very value."""
    limit = limits.typical_heat_limits()[part]
    values = np.array([0, limit.warn_above, limit.stop_above, 1.01 * limit.stop_above])
    assert limit.word(values).tolist() == ["kept", "kept", "warn", "stop"]


def test_a_shop_may_set_its_own():
    """Limits of the shop are used in place of the typical ones."""
    own = {"bond line": limits.HeatLimit(part="bond line", warn_above=50, stop_above=60)}
    assert limits.judge_heat({"bond line": 70}, heat_limits=own) == {"bond line": "stop"}


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: limits.HeatLimit(part="coat", warn_above=90, stop_above=80),
            "stop for coat must be at least 90, got 80",
        ),
        (lambda: limits.judge_heat({"seat": 80}), "part under heat must be one of bond line, cured coat"),
        (lambda: limits.judge_heat({"bond line": np.nan}), "value for bond line must be finite"),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What has no limit is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
