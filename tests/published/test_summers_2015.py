"""Summers and others 2015: aluminium after fires, seen."""

import numpy as np

from secondplate.softening_strength import softening

SOURCE = "summers_2015"


def test_degradation_begins_near_150():
    """Half a minute below 150 C costs less than 1 %, a minute at 350 C more than 5 %."""
    cold, hot = (
        softening([0, seconds], np.full(2, temperature), softening_kind="6xxx-T6").strength_left.best
        for seconds, temperature in ((30, 149.0), (60, 350.0))
    )
    assert cold > 0.99
    assert hot < 0.95
