"""Applied Statistics and Probability for Engineers, Table XII: one-sided tolerance factors; seen."""

import numpy as np
import pytest

from secondplate.trials import one_sided_tolerance_factor

SOURCE = "tolerance_table_one_sided"
CONTENT, CONFIDENCE = np.array([0.9, 0.95, 0.9, 0.95, 0.99]), np.array([0.9, 0.9, 0.95, 0.95, 0.95])
ROWS = {
    5: (2.742, 3.4, 3.407, 4.203, 5.741),
    10: (2.066, 2.568, 2.355, 2.911, 3.981),
    15: (1.867, 2.329, 2.068, 2.566, 3.52),
    20: (1.765, 2.208, 1.926, 2.396, 3.295),
    30: (1.657, 2.08, 1.777, 2.22, 3.064),
}


@pytest.mark.parametrize(("pulls", "factors"), ROWS.items())
def test_factors(pulls, factors):
    """Content and confidence 90/90, 95/90, 90/95, 95/95 and 99/95, printed to three places."""
    found = one_sided_tolerance_factor(pulls, content=CONTENT, confidence=CONFIDENCE)
    assert found == pytest.approx(factors, abs=1.5e-3)
