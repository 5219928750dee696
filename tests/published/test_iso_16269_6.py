"""ISO 16269-6:2014, Annex F, one series: two-sided factors; seen. The fourth decimal is rounded up."""

import numpy as np
import pytest

from secondplate.trials import howe_two_sided_factor, two_sided_tolerance_factor

SOURCE = "iso_16269_6"
TABLES = {
    0.95: {5: 5.0769, 10: 3.3935, 26: 2.6188, 90: 2.2519, 200: 2.1430},
    0.90: {2: 31.0923, 8: 3.1561, 16: 2.4486, 35: 2.0943},
}


@pytest.mark.parametrize("content", TABLES)
def test_factors_at_95_percent(content):
    """Rounding the exact factor up at the fourth decimal gives the printed one."""
    pulls, printed = (np.array(list(part)) for part in (TABLES[content], TABLES[content].values()))
    found = two_sided_tolerance_factor(pulls, content=content, confidence=0.95)
    np.testing.assert_allclose(np.ceil(found * 1e4) / 1e4, printed, rtol=0, atol=1e-9)


def test_the_usual_approximation_is_low():
    """At ten pulls the usual approximation gives 3.3819, the exact factor is 3.39343; computed."""
    given = {"content": 0.95, "confidence": 0.95}
    assert howe_two_sided_factor(10, **given) == pytest.approx(3.3819, abs=1e-4)
    assert two_sided_tolerance_factor(10, **given) == pytest.approx(3.39343, abs=5e-6)
