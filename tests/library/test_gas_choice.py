"""Gas groups and gas advice: complete, consistent, refused where nothing is known."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.gas import GAS_GROUPS, gas_advice, gas_group
from secondplate.sources import BIBLIOGRAPHY
from secondplate.stud_weld import BASES, PROCESSES, STUD_MATERIALS, allowed_bases

SENSIBLE = [
    (stud_material, base, process)
    for stud_material in STUD_MATERIALS
    for base in allowed_bases(stud_material)
    for process in PROCESSES
]


@pytest.mark.parametrize(("stud_material", "base", "process"), SENSIBLE)
def test_each_set_up_has_advice(stud_material, base, process):
    """Every set-up that the library knows has advice with reason, known sources and known groups."""
    advice = gas_advice(stud_material=stud_material, base=base, process=process)
    assert advice.why
    assert {advice.source, advice.groups_source} <= set(BIBLIOGRAPHY)
    assert set(advice.groups) <= set(GAS_GROUPS)
    assert advice.groups or not advice.needed


@pytest.mark.parametrize("base", BASES)
def test_drawn_arc_with_gas_always_needs_gas(base):
    """The process that is named after its gas needs it."""
    for stud_material, own_base, process in SENSIBLE:
        if own_base == base and process == "drawn arc with gas":
            assert gas_advice(stud_material=stud_material, base=base, process=process).needed


def test_nothing_that_oxidises_for_aluminium():
    """No advice for aluminium names a gas with oxygen or carbon dioxide."""
    for stud_material, base, process in SENSIBLE:
        if stud_material == "aluminium":
            for designation in gas_advice(stud_material=stud_material, base=base, process=process).groups:
                group = GAS_GROUPS[designation]
                assert group.oxygen_percent.high == group.carbon_dioxide_percent.high == 0


@pytest.mark.parametrize(
    ("stud_material", "base"),
    [("aluminium", "steel rivet head"), ("austenitic stainless", "aluminium sheet")],
)
def test_a_stud_that_does_not_suit_its_base_is_refused(stud_material, base):
    """Aluminium on steel and steel on aluminium are refused, with the bases that do."""
    with pytest.raises(
        ValueError, match=f"^base for a stud of {stud_material} must be one of .*, got '{base}'$"
    ):
        gas_advice(stud_material=stud_material, base=base, process="short cycle")


def test_unknown_names_are_refused():
    """Unknown stud materials and processes are refused with the list."""
    with pytest.raises(ValueError, match="^stud material must be one of .*, got 'brass'$"):
        gas_advice(stud_material="brass", base="steel sheet", process="short cycle")
    with pytest.raises(ValueError, match="^process must be one of .*, got 'spot'$"):
        gas_advice(stud_material="carbon steel", base="steel sheet", process="spot")


@given(st.sampled_from(sorted(GAS_GROUPS)))
def test_each_group_finds_itself(designation):
    """The middle of each group's composition falls into that group."""
    group = GAS_GROUPS[designation]
    found = gas_group(
        carbon_dioxide_percent=group.carbon_dioxide_percent.best,
        oxygen_percent=group.oxygen_percent.best,
        helium_percent=group.helium_percent.best,
    )
    assert found == group


def test_pure_argon_is_the_rest():
    """Nothing but the rest is argon, I1."""
    assert gas_group().designation == "I1"


@pytest.mark.parametrize(
    ("parts", "complaint"),
    [
        (
            {"oxygen_percent": 21},
            "mix must fall in one of the groups I1, .*, got 0 % carbon dioxide, 21 % oxygen",
        ),
        ({"helium_percent": 101}, "helium must be between 0 % and 100 %, got 101 %"),
        (
            {"helium_percent": 60, "carbon_dioxide_percent": 60},
            "carbon dioxide, oxygen and helium together must be between 0 % and 100 %, got 120 %",
        ),
    ],
)
def test_mixes_outside_the_groups_are_refused(parts, complaint):
    """A mix that no listed group holds is refused, not guessed."""
    with pytest.raises(ValueError, match=f"^{complaint}"):
        gas_group(**parts)
