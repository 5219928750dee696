"""Steps that keep metals apart: their order, what is missing, and losses in air."""

import numpy as np
import pytest

from secondplate import corrosion_steps as steps


def test_every_swap_of_neighbours_is_found():
    """Swapping any two neighbours gives exactly one sentence, about the one that came too late."""
    names = steps.ISOLATION_STEP_NAMES
    for place in range(len(names) - 1):
        done = list(names)
        done[place], done[place + 1] = done[place + 1], done[place]
        (fault,) = steps.isolation_faults(done)
        assert fault.startswith(f"{names[place]} must come before {names[place + 1]}: ")


@pytest.mark.parametrize("left_out", steps.ISOLATION_STEP_NAMES)
def test_every_missing_step_is_found(left_out):
    """Leaving out any step gives exactly one sentence, with its reason."""
    done = [name for name in steps.ISOLATION_STEP_NAMES if name != left_out]
    (fault,) = steps.isolation_faults(done)
    assert fault.startswith(f"{left_out} is missing: ")


def test_losses_rise_with_the_category():
    """Steel and zinc lose more in each worse category."""
    for metal in ("steel", "zinc"):
        losses = [steps.first_year_loss(metal, category)[0] for category in steps.CATEGORIES]
        assert np.all(np.diff(losses) > 0)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: steps.isolation_faults(["paint"]), "step must be one of deburr, clean"),
        (lambda: steps.isolation_faults(["clean", "clean"]), "each step must stand once, got clean, clean"),
        (lambda: steps.first_year_loss("steel", "C9"), "category must be one of C1, C2"),
        (lambda: steps.first_year_loss("aluminium", "C1"), "metal in C1 must be one of steel, zinc"),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What is no step or category is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
