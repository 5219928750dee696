"""29 CFR 1910.95 Occupational noise exposure, Appendix A, Table G-16a. Read on the agency's site."""

import pytest

from secondplate.cautions import noise_time_h

SOURCE = "osha_1910_95"
# Sound level in dB(A) against reference duration in hours; one copy prints 21.1 at 83 dB(A).
TABLE_G_16A = {
    80: 32, 81: 27.9, 82: 24.3, 83: 21.1, 84: 18.4, 85: 16, 86: 13.9, 87: 12.1, 88: 10.6, 89: 9.2,
    90: 8, 91: 7.0, 92: 6.1, 93: 5.3, 94: 4.6, 95: 4, 96: 3.5, 97: 3.0, 98: 2.6, 99: 2.3,
    100: 2, 101: 1.7, 102: 1.5, 103: 1.3, 104: 1.1, 105: 1, 106: 0.87, 107: 0.76, 108: 0.66, 109: 0.57,
    110: 0.5, 112: 0.38, 115: 0.25, 118: 0.16, 120: 0.125, 125: 0.063, 130: 0.031,
}  # fmt: skip


@pytest.mark.parametrize(("level_dba", "hours"), TABLE_G_16A.items())
def test_table_g_16a(level_dba, hours):
    """Each reference duration agrees with the formula of the footnote."""
    assert noise_time_h(level_dba, rule="legal limit") == pytest.approx(hours, rel=0.045)  # cut to 1.1 at 104


def test_dose_of_a_shift():
    """Eight hours at 92 dB(A) are a dose of 131 %, as worked out in a guide to the appendix."""
    assert 100 * 8 / noise_time_h(92, rule="legal limit") == pytest.approx(131, abs=1.5)  # T printed as 6.1 h


def test_dose_of_two_levels():
    """2 h at 95 and 6 h at 90 dB(A) are 125 %, as much as a whole shift at 91.6 dB(A); computed."""
    hours = {95: 2, 90: 6}
    dose = sum(stayed / noise_time_h(level, rule="legal limit") for level, stayed in hours.items())
    assert 100 * dose == pytest.approx(125, rel=1e-12)  # exact
    assert 8 / noise_time_h(91.61, rule="legal limit") == pytest.approx(dose, rel=1e-3)  # two decimals
