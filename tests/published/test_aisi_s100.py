"""AISI S100 Cold-formed steel, screws. Forms with a safety factor of 3 read on a city's permit sheet."""

import numpy as np
import pytest

from secondplate.fastener_bearing import AMERICAN_STANDARD, bearing_coefficient, pull_through_n

SOURCE = "aisi_s100"
SAFETY_FACTOR = 3.0


def test_allowable_forms_in_shear():
    """Allowable 1.4 sqrt(t3 d) f in equal sheets and 0.9 t d f on a thick one: a third of 4.2 and 2.7."""
    shared = {"shank_diameter_mm": 4.826, "standard": AMERICAN_STANDARD}
    equal = bearing_coefficient(1.0, supporting_thickness_mm=1.0, **shared)
    thick = bearing_coefficient(1.0, supporting_thickness_mm=2.5, **shared)
    assert equal / SAFETY_FACTOR == pytest.approx(1.4 / np.sqrt(4.826), rel=1e-12)
    assert thick / SAFETY_FACTOR == pytest.approx(0.9, rel=1e-12)


def test_allowable_form_of_pull_over():
    """Allowable 0.5 t d_w f: a third of 1.5."""
    pull = pull_through_n(
        1.0, head_diameter_mm=10, tensile_strength_mpa=300, standard=AMERICAN_STANDARD, partial_factor=3
    )
    assert pull == pytest.approx(0.5 * 1.0 * 10 * 300, rel=1e-12)
