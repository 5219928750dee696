"""Conversions of hardness: rising, inside their table, and in step with the rule of strength."""

import numpy as np
import pytest

from secondplate import hardness
from secondplate.rivet import Rivet, rivet_axial_capacity_n, steel_strength_mpa

CONVERSIONS = [
    hardness.table_strength_mpa,
    hardness.brinell_hardness_hbw,
    hardness.rockwell_hardness_hrc,
]


@pytest.mark.parametrize("convert", CONVERSIONS)
def test_harder_is_more_on_every_scale(convert):
    """Each column rises with Vickers hardness."""
    assert np.all(np.diff(convert(np.linspace(*hardness.TABLE_RANGE_HV, 200))) > 0)


@pytest.mark.parametrize("convert", CONVERSIONS)
@pytest.mark.parametrize("value", [249.9, 560.1])
def test_tables_end_where_their_rows_end(convert, value):
    """Nothing is read beyond the first and last row."""
    with pytest.raises(ValueError, match=f"hardness must be between 250 HV and 560 HV, got {value} HV"):
        convert(value)


def test_table_lies_inside_the_band_of_the_rule():
    """The band round 3.2 HV holds the table from end to end."""
    values = np.linspace(*hardness.TABLE_RANGE_HV, 200)
    assert np.all(hardness.steel_strength_band_mpa(values).contains(hardness.table_strength_mpa(values)))


def test_rule_is_not_above_the_table_and_at_most_3_percent_below():
    """The rule of thumb is on the safe side, least so for soft rivets."""
    values = np.linspace(*hardness.TABLE_RANGE_HV, 200)
    ratio = steel_strength_mpa(values) / hardness.table_strength_mpa(values)
    assert ratio.max() <= 1 + 1e-12  # 250 HV is 800 MPa in both
    assert ratio.min() > 0.97


def test_rockwell_there_and_back():
    """Table and formula, of different origin, agree within 2 % from 250 to 560 HV."""
    values = np.linspace(*hardness.TABLE_RANGE_HV, 50)
    back = hardness.vickers_from_rockwell_hv(hardness.rockwell_hardness_hrc(values))
    assert back == pytest.approx(values, rel=0.02)


@pytest.mark.parametrize("hrc", [19.9, 60.1])
def test_rockwell_formula_ends(hrc):
    """The formula is held to the range of the scale."""
    with pytest.raises(ValueError, match="Rockwell hardness must be between 20 HRC and 60 HRC"):
        hardness.vickers_from_rockwell_hv(hrc)


def test_classes_rise_and_the_upper_three_are_close():
    """Classes rise; 70 to 75 HV part the upper three, so their bands of 30 HV do not meet."""
    bands = hardness.rivet_hardness_classes()
    assert all(low.high < high.low for low, high in zip(bands, bands[1:], strict=False))
    assert [band.high - band.low for band in bands] == [60] * 4


def test_tube_in_tension_is_the_rivets_capacity():
    """Best value in tension is the capacity of the rivet's own module; shear is 0.577 of it."""
    rivet = Rivet(rivet_length_mm=5.0, hardness_hv=np.array([280.0, 480.0]))
    pulled = hardness.tube_strength_n(rivet)
    assert pulled.best == pytest.approx(rivet_axial_capacity_n(rivet), rel=1e-12)
    sheared = hardness.tube_strength_n(rivet, in_shear=True)
    assert sheared.best / pulled.best == pytest.approx([0.577, 0.577], rel=1e-12)


def test_bands_are_10_percent_either_way():
    """Strength and tube by hardness reach from nine to eleven tenths of their best value."""
    for band in (
        hardness.steel_strength_band_mpa(410),
        hardness.tube_strength_n(Rivet(rivet_length_mm=5.0), in_shear=True),
    ):
        assert (band.low / band.best, band.high / band.best) == pytest.approx((0.9, 1.1), rel=1e-12)
