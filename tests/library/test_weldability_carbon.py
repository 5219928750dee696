"""Carbon equivalents, martensite start and preheat: order, limits and vectors."""

import numpy as np
import pytest

from secondplate.weldability_carbon import (
    carbon_equivalent_cen_percent,
    carbon_equivalent_cet_percent,
    carbon_equivalent_iiw_percent,
    cracking_parameter_percent,
    martensite_start_c,
    preheat_c,
)
from secondplate.weldability_composition import Composition, composition, steel_names

FORMULAS = (
    carbon_equivalent_iiw_percent,
    cracking_parameter_percent,
    carbon_equivalent_cet_percent,
    carbon_equivalent_cen_percent,
)


@pytest.mark.parametrize("formula", FORMULAS)
def test_iron_with_carbon_only_has_its_carbon(formula):
    """Without other elements each equivalent is the carbon itself."""
    carbon = np.array([0.05, 0.2, 0.4])
    found = formula(Composition(carbon_percent=carbon))
    np.testing.assert_allclose(found, carbon, rtol=1e-15)  # exact


@pytest.mark.parametrize("formula", FORMULAS)
@pytest.mark.parametrize("steel", steel_names("rivet"))
def test_richer_cast_hardens_more_and_turns_later(formula, steel):
    """From the leanest to the richest cast each equivalent rises and the start of martensite falls."""
    casts = [composition(steel, end=end) for end in ("low", "best", "high")]
    assert np.all(np.diff([formula(cast) for cast in casts]) > 0)
    assert np.all(np.diff([martensite_start_c(cast) for cast in casts]) < 0)


def test_cen_passes_from_half_the_bracket_to_the_whole():
    """The factor of the bracket is 0.5 at no carbon, 0.75 at 0.12 % and 1 at high carbon."""
    steel = Composition(carbon_percent=np.array([0.0, 0.12, 0.6]), manganese_percent=1.2)
    share = (carbon_equivalent_cen_percent(steel) - steel.carbon_percent) / 0.2
    np.testing.assert_allclose(share, [0.5, 0.75, 1.0], rtol=0, atol=0.005)  # tanh(2.4) is 0.984


def test_preheat_rises_with_all_that_cracks():
    """More carbon equivalent, thickness or hydrogen asks for more preheat, more heat for less."""
    usual = {"thickness_mm": 20, "hydrogen_ml_100g": 5, "heat_input_kj_mm": 1}
    start = preheat_c(0.35, **usual).best
    assert preheat_c(0.40, **usual).best > start
    assert preheat_c(0.35, **(usual | {"thickness_mm": 40})).best > start
    assert preheat_c(0.35, **(usual | {"hydrogen_ml_100g": 10})).best > start
    assert preheat_c(0.35, **(usual | {"heat_input_kj_mm": 2})).best < start
    table = preheat_c(np.array([0.35, 0.40]), **usual)
    assert table.best[0] == pytest.approx(start, rel=1e-15)  # same arithmetic


def test_stainless_is_refused():
    """The start of martensite is no matter of a stainless stud."""
    with pytest.raises(ValueError, match="carbon for martensite start must be between 0.11 % and 0.6 %"):
        martensite_start_c(composition("304-type"))
    with pytest.raises(ValueError, match="chromium for carbon equivalent"):
        carbon_equivalent_iiw_percent(composition("304-type"))


def test_alloyed_steel_by_hand():
    """Each element has its weight: 0.2 C with 0.6 Mo and 0.1 V, worked by hand."""
    steel = Composition(
        carbon_percent=0.2, manganese_percent=0.6, molybdenum_percent=0.6, vanadium_percent=0.1
    )
    # Sums of a few decimals, exact but for rounding.
    assert carbon_equivalent_iiw_percent(steel) == pytest.approx(0.2 + 0.1 + 0.14, rel=1e-12)
    assert cracking_parameter_percent(steel) == pytest.approx(0.2 + 0.03 + 0.04 + 0.01, rel=1e-12)
    assert carbon_equivalent_cet_percent(steel) == pytest.approx(0.2 + 0.12, rel=1e-12)
    assert martensite_start_c(steel) == pytest.approx(539 - 84.6 - 18.24 - 4.5, rel=1e-12)
