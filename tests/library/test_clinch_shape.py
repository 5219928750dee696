"""Shape of clinched joints: ratios only."""

import pytest

from secondplate.clinch_shape import clinch_axial_ratio


def test_equal_joints_have_the_ratio_of_1():
    """Nothing changed, nothing gained."""
    assert clinch_axial_ratio() == 1


def test_changes_multiply_and_undo():
    """Two changes multiply, and a change back undoes."""
    both = clinch_axial_ratio(interlock_ratio=2, top_strength_ratio=1.5)
    apart = clinch_axial_ratio(interlock_ratio=2) * clinch_axial_ratio(top_strength_ratio=1.5)
    assert both == pytest.approx(apart, rel=1e-12)
    undone = clinch_axial_ratio(interlock_ratio=2) * clinch_axial_ratio(interlock_ratio=0.5)
    assert undone == pytest.approx(1, rel=1e-12)


def test_far_comparisons_are_refused():
    """A ratio beyond 4 is no comparison of neighbours."""
    with pytest.raises(ValueError, match="interlock ratio must be between 0.25 and 4, got 5"):
        clinch_axial_ratio(interlock_ratio=5)
