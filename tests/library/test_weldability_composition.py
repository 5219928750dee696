"""Compositions, mixtures, and refusals of steels outside a formula's range."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.weldability_composition import (
    ELEMENTS,
    ENDS,
    Composition,
    composition,
    mix,
    require_within,
    steel_names,
)


@pytest.mark.parametrize("steel", steel_names())
def test_each_grade_rises_from_lean_to_rich(steel):
    """Every element of every steel rises from the leanest to the richest cast."""
    low, best, high = (composition(steel, end=end) for end in ENDS)
    for element in ELEMENTS:
        name = f"{element}_percent"
        assert getattr(low, name) <= getattr(best, name) <= getattr(high, name)


def test_steels_are_parted_into_studs_and_rivets():
    """Each steel is for a stud or for a rivet; studs are stainless, rivets have boron."""
    assert set(steel_names("stud")) | set(steel_names("rivet")) == set(steel_names())
    assert all(composition(steel).chromium_percent > 10.5 for steel in steel_names("stud"))
    assert all(composition(steel).boron_percent > 0 for steel in steel_names("rivet"))


@given(share=st.floats(0, 1))
def test_mixture_lies_between_its_parts(share):
    """No element of a melt leaves the range of stud and rivet, and the ends are the parts themselves."""
    stud, rivet = composition("304-type"), composition("36MnB4")
    melt = mix(stud, rivet, dilution=share)
    for element in ELEMENTS:
        name = f"{element}_percent"
        parts = sorted((getattr(stud, name), getattr(rivet, name)))
        assert parts[0] - 1e-12 <= getattr(melt, name) <= parts[1] + 1e-12  # rounding
    assert mix(stud, rivet, dilution=0) == stud
    assert mix(stud, rivet, dilution=1) == rivet


def test_a_table_of_shares_is_mixed_at_once():
    """A column of shares gives columns of contents that equal one by one."""
    shares = np.array([0.0, 0.25, 0.5])
    stud, rivet = composition("309-type"), composition("38B2")
    together = mix(stud, rivet, dilution=shares)
    single = [mix(stud, rivet, dilution=share).nickel_percent for share in shares]
    np.testing.assert_allclose(together.nickel_percent, single, rtol=1e-15)  # same arithmetic


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: Composition(carbon_percent=1.3), "carbon must be between 0 % and 1.2 %, got 1.3 %"),
        (
            lambda: Composition(carbon_percent=0.3, boron_percent=0.03),
            "boron must be between 0 % and 0.02 %, got 0.03 %",
        ),
        (
            lambda: Composition(carbon_percent=0.3, chromium_percent=-1),
            "chromium must be between 0 % and 35 %, got -1 %",
        ),
        (lambda: Composition(carbon_percent=np.nan), "carbon must be finite, got nan %"),
        (lambda: composition("S235"), "steel must be one of 304-type, .* got 'S235'"),
        (lambda: composition("38B2", end="middle"), "end must be one of low, best, high, got 'middle'"),
        (lambda: steel_names("nut"), "use must be one of stud, rivet, got 'nut'"),
        (
            lambda: mix(composition("304-type"), composition("38B2"), dilution=1.2),
            "dilution must be between 0 and 1, got 1.2",
        ),
        (lambda: require_within(composition("38B2"), "luck"), "formula must be one of .* got 'luck'"),
        (
            lambda: require_within(composition("304-type"), "carbon equivalent"),
            "chromium for carbon equivalent must be between 0 % and 3 %, got 18.2 %",
        ),
    ],
)
def test_refusals(call, sentence):
    """Each name and number out of its range is refused with its sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
