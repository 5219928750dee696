"""Courval, Allin and Doyle 1993: a coated fastener and a barrier prevent attack, seen in the abstract."""

from secondplate.corrosion_steps import ISOLATION_STEP_NAMES, ISOLATION_STEPS

SOURCE = "courval_1993"


def test_both_means_are_steps_and_the_barrier_comes_first():
    """The barrier between the plates is laid before the coated fastener is set."""
    named = [step.name for step in ISOLATION_STEPS if step.source == SOURCE]
    assert named == ["sealer or adhesive on the faying faces", "set the fastener wet"]
    assert ISOLATION_STEP_NAMES.index(named[0]) < ISOLATION_STEP_NAMES.index(named[1])
