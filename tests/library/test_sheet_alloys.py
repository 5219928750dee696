"""Body sheet: every statement has its origin, nothing is merged, bands hold all rows."""

import pytest

from secondplate import sheet_alloys as sheets
from secondplate.sources import BIBLIOGRAPHY


def test_each_statement_has_numbers_in_rising_order():
    """Each statement has a number at least, its own rise, and its source is known."""
    for found in sheets.SHEET_PROPERTIES:
        assert found.numbers
        assert list(found.numbers) == sorted(found.numbers)
        assert found.source in BIBLIOGRAPHY


@pytest.mark.parametrize("sheet", sheets.SHEETS)
def test_each_sheet_has_a_strength_above_its_proof_stress(sheet):
    """Tensile strength is known of each sheet, and its proof stress lies below where it is known."""
    strength = sheets.sheet_band(sheet, "tensile strength")
    if sheets.sheet_properties(sheet, "proof stress"):
        proof = sheets.sheet_band(sheet, "proof stress")
        assert proof.low < strength.low
        assert proof.best < strength.best


@pytest.mark.parametrize("sheet", sheets.SHEETS)
def test_band_holds_every_row(sheet):
    """A band spans every number that any source gives."""
    for quantity in sheets.SHEET_QUANTITIES:
        found = sheets.sheet_properties(sheet, quantity)
        if found:
            band = sheets.sheet_band(sheet, quantity)
            assert all(band.contains(number) for each in found for number in each.numbers)


def test_sources_that_disagree_stand_side_by_side():
    """6111-T4: one mill says 115, an article 146, papers 150 to 165 MPa; none is dropped."""
    found = sheets.sheet_properties("6111-T4", "proof stress")
    assert [each.numbers for each in found] == [(115.0,), (146.0,), (150.0, 165.0)]
    band = sheets.sheet_band("6111-T4", "proof stress")
    assert (band.low, band.high) == (115, 165)


def test_best_is_the_working_value_then_the_middle_then_the_lowest():
    """100 MPa is at work for 5754-O, 365 is the middle of the first HC340LA row, 110 the least of 6082-T4."""
    bests = [sheets.sheet_band(sheet, "proof stress").best for sheet in ("5754-O", "HC340LA", "6082-T4")]
    assert bests == [100, 365, 110]


def test_thickness_picks_the_rows_that_hold_for_it():
    """5754-O asks for more elongation from 1.5 mm on."""
    thin = sheets.sheet_properties("5754-O", "elongation A50", thickness_mm=1.0)
    thick = sheets.sheet_properties("5754-O", "elongation A50", thickness_mm=2.0)
    assert [each.least for each in thin] == [14]
    assert [each.least for each in thick] == [16]


def test_least_values_alone_are_said_to_be_open():
    """A band of least values says that no greatest value is specified."""
    assert sheets.sheet_band("6082-T4", "proof stress").basis.endswith("no greatest value is specified")
    assert not sheets.sheet_band("5754-O", "proof stress").basis.endswith("specified")


def test_paint_oven_and_ageing_raise_the_proof_stress():
    """6016 and 6111 are stronger after the oven or ageing than as delivered."""
    for soft, hard in (("6016-T4", "6016-T6"), ("6111-T4", "6111 baked"), ("6082-T4", "6082-T6")):
        assert sheets.sheet_band(hard, "proof stress").best > sheets.sheet_band(soft, "proof stress").best


def test_sheet_for_a_stack():
    """A sheet carries family, strength and its least specified elongation."""
    cast = sheets.body_sheet("AlSi10MnMg-F", thickness_mm=2.5)
    assert (cast.family, cast.tensile_strength_mpa, cast.elongation_percent) == ("cast aluminium", 200, 5)
    assert sheets.body_sheet("5754-O", thickness_mm=2.0).elongation_percent == 12  # least of all rows
    assert sheets.body_sheet("HX340LAD", thickness_mm=1.2).family == "steel"
    assert sheets.body_sheet("6022-T4", thickness_mm=1.0).elongation_percent is None


def test_unknown_names_are_refused_with_the_list():
    """Sheets and properties that are not there are refused; one that nobody gives is said."""
    with pytest.raises(ValueError, match="sheet must be one of 5754-O, .*, got '9999-O'"):
        sheets.sheet_properties("9999-O", "proof stress")
    with pytest.raises(ValueError, match="property must be one of proof stress, .*, got 'colour'"):
        sheets.sheet_properties("5754-O", "colour")
    with pytest.raises(ValueError, match="modulus must be one that a source gives for 5754-O, got none"):
        sheets.sheet_band("5754-O", "modulus")
