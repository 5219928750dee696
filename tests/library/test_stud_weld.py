"""Set-up of a stud weld: every rule carries its origin, and what disagrees is said."""

import itertools

import numpy as np
import pytest

from secondplate.gas import gas_advice
from secondplate.sources import BIBLIOGRAPHY
from secondplate.stud_weld import (
    BASES,
    MAKER_FIRST,
    PROCESSES,
    STUD_MATERIALS,
    allowed_bases,
    minimum_sheet_mm,
    place,
    polarity,
    process_limits,
    set_up,
)
from secondplate.tables import BASES as KINDS_OF_BASIS

DIAMETERS_MM = (3, 3.5, 4, 4.76, 5, 6, 6.35, 7, 8, 9.525, 10, 12, 12.7, 14, 15.875, 16, 19.05, 20, 25)
PAIRS = [(stud, base) for stud in STUD_MATERIALS for base in allowed_bases(stud)]
PULL_STUD = {
    "stud_diameter_mm": 6,
    "stud_material": "austenitic stainless",
    "base": "steel rivet head",
}


def _all_advice():
    """Every advice that the module can give, with a name for it."""
    for (stud, base), process, diameter in itertools.product(PAIRS, PROCESSES, DIAMETERS_MM):
        if diameter <= process_limits(process).largest_diameter_mm:
            found = set_up(stud_diameter_mm=diameter, stud_material=stud, base=base, process=process)
            for advice in (found.current_a, found.time_ms, found.lift_mm, found.protrusion_mm):
                yield f"{stud} {base} {process} {diameter} {advice.quantity}", advice
            for sheet in ("steel sheet", "aluminium sheet"):
                advice = minimum_sheet_mm(diameter, process=process, base=sheet)
                yield f"sheet {process} {diameter} {sheet}", advice


def test_each_rule_carries_its_origin():
    """Source, locator, basis and words are there for every rule of every set-up."""
    for name, advice in _all_advice():
        for rule in advice.rules:
            assert rule.source in BIBLIOGRAPHY, name
            assert rule.basis in KINDS_OF_BASIS, name
            assert rule.locator, name
            assert rule.rule, name
            assert rule.band.basis.startswith(rule.basis), name


def test_agreed_is_what_all_rules_share_or_none():
    """The agreed band lies inside every rule; where there is none a sentence says why, else it is empty."""
    for name, advice in _all_advice():
        if advice.agreed is None:
            assert advice.contradiction.endswith("."), name
        else:
            assert advice.contradiction == "", name
            for rule in advice.rules:
                assert rule.band.low <= advice.agreed.low, name
                assert advice.agreed.high <= rule.band.high, name


def test_no_agreement_means_two_rules_that_do_not_meet():
    """Where rules are held but nothing is agreed, at least two of them lie apart."""
    for name, advice in _all_advice():
        if advice.rules and advice.agreed is None:
            pairs = itertools.combinations(advice.rules, 2)
            assert any(one.band.overlap(other.band) is None for one, other in pairs), name


@pytest.mark.parametrize(
    ("process", "disagreeing"),
    [
        ("short cycle", {"time", "protrusion"}),
        ("drawn arc with gas", {"current", "time", "lift"}),
    ],
)
def test_pull_stud_shows_where_shop_and_print_part(process, disagreeing):
    """For the 6 mm pull stud the sentence names the shop's setting against what is printed."""
    found = set_up(**PULL_STUD, process=process)
    advice = (found.current_a, found.time_ms, found.lift_mm, found.protrusion_mm)
    parted = {each.quantity: each.contradiction for each in advice if each.contradiction}
    assert parted.keys() == disagreeing
    assert all("shop setting" in sentence.lower() for sentence in parted.values())


def test_shop_setting_is_only_for_the_pull_stud():
    """Other sizes, materials and bases do not get the shop's 6 mm setting."""
    changes = ({"stud_diameter_mm": 5}, {"stud_material": "carbon steel"}, {"base": "steel sheet"})
    for change in changes:
        found = set_up(**(PULL_STUD | change), process="short cycle")
        assert "practice" not in {rule.source for rule in found.current_a.rules}


def test_stainless_lowers_current_and_time_but_not_lift():
    """Energy comes down by a tenth for stainless studs; lift and protrusion stay."""
    names = {"stud_diameter_mm": 8, "base": "steel sheet", "process": "drawn arc with gas"}
    plain = set_up(stud_material="carbon steel", **names)
    stainless = set_up(stud_material="austenitic stainless", **names)
    for quantity in ("current_a", "time_ms"):
        ratios = [
            lean.band.best / full.band.best
            for lean, full in zip(
                getattr(stainless, quantity).rules, getattr(plain, quantity).rules, strict=True
            )
        ]
        np.testing.assert_allclose(ratios, 0.9, rtol=1e-6)  # bands are rounded to six decimals
    assert stainless.lift_mm == plain.lift_mm


def test_gas_comes_from_the_gas_module():
    """The gas advice is the gas module's own, not a second copy."""
    found = set_up(**PULL_STUD, process="short cycle")
    names = {name: PULL_STUD[name] for name in ("stud_material", "base")}
    assert found.gas == gas_advice(**names, process="short cycle")
    assert found.maker_first == MAKER_FIRST


def test_places_of_a_setting():
    """A setting is below, inside or above each rule."""
    advice = set_up(**PULL_STUD, process="short cycle").time_ms
    assert [where for _, where in advice.places(30)] == ["above", "inside"]
    assert [where for _, where in advice.places(20)] == ["inside", "below"]
    assert place(advice.rules[0].band, advice.rules[0].band.high) == "inside"


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"base": "aluminium sheet"}, "base for a stud of austenitic stainless must be one of steel rivet"),
        ({"stud_material": "aluminium"}, "base for a stud of aluminium must be one of aluminium sheet, got"),
        ({"stud_material": "brass"}, "stud material must be one of austenitic stainless, .* got 'brass'"),
        ({"process": "glue"}, "process must be one of .* got 'glue'"),
        ({"stud_diameter_mm": 13}, "stud diameter must be between 3 mm and 12 mm, got 13 mm"),
        ({"stud_diameter_mm": 2}, "stud diameter must be between 3 mm and 12 mm, got 2 mm"),
        ({"stud_diameter_mm": float("nan")}, "stud diameter must be finite, got nan mm"),
    ],
)
def test_set_up_refuses_what_cannot_be_welded(change, sentence):
    """Names, pairs and diameters out of range are refused in one sentence."""
    with pytest.raises(ValueError, match=sentence):
        set_up(**(PULL_STUD | {"process": "short cycle"} | change))


def test_every_base_takes_some_stud():
    """No base stands in the list that no stud can be welded to."""
    assert {base for _, base in PAIRS} == set(BASES)


@pytest.mark.parametrize(("stud_material", "base"), PAIRS)
def test_polarity_is_agreed_or_explained(stud_material, base):
    """Rivet heads show the contradiction, sheet does not."""
    advice = polarity(stud_material=stud_material, base=base)
    if base == "steel rivet head":
        assert advice.agreed is None
        assert "stud negative" in advice.contradiction
        assert "chart of the equipment" in advice.contradiction
    else:
        assert advice.agreed == ("stud positive" if stud_material == "aluminium" else "stud negative")
        assert advice.contradiction == ""


def test_minimum_sheet_shows_all_schools():
    """The ratios d/8, d/10, d/5, d/4 and d/3 stand side by side over the processes."""
    found = {
        process: sorted({rule.band.best for rule in minimum_sheet_mm(12, process=process).rules})
        for process in PROCESSES
    }
    assert found["short cycle"] == [1.2, 1.5, 2.4]
    assert found["drawn arc with ferrule"] == [3.0, 4.0]
    assert found["drawn arc with gas"] == [1.5]


def test_minimum_sheet_refuses_a_rivet_head():
    """No rule speaks of a rivet head, so it is not a base here."""
    with pytest.raises(ValueError, match="base must be one of steel sheet, aluminium sheet, got 'steel riv"):
        minimum_sheet_mm(6, process="short cycle", base="steel rivet head")
