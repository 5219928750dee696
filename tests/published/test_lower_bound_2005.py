"""Sun and Khaleel 2005, lower bound of the limit load. Abstract read; coefficients not known."""

from secondplate.joint_facts import MODELS_LEFT_OUT
from secondplate.joint_strength import cross_tension
from secondplate.rivet import Rivet, Sheet, Stack

SOURCE = "lower_bound_2005"


def test_strength_depends_on_gauge_and_on_the_side_of_riveting():
    """Strength depends on gauges and the direction of riveting: a stack turned round is another joint."""
    thin, thick = Sheet(thickness_mm=1.0), Sheet(thickness_mm=2.5)
    joint = {"interlock_mm": 0.4, "penetration_mm": 1.6}
    rivet = Rivet(rivet_length_mm=5.5)
    there = cross_tension(rivet, Stack(top=thin, second=thick), **joint)
    back = cross_tension(rivet, Stack(top=thick, second=thin), **joint)
    assert there.strength_n.best < back.strength_n.best


def test_model_is_left_out_by_name():
    """Its coefficients are not known, so it is named and not computed."""
    reasons = [model.reason for model in MODELS_LEFT_OUT if model.source == SOURCE]
    assert len(reasons) == 2
    assert all("not known" in reason or "neither" in reason for reason in reasons)
