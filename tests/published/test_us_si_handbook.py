"""Military handbook 1004/6, appendix B: SI conversion factors. Read; title and year from memory."""

import pytest

from secondplate import units

SOURCE = "us_si_handbook"


@pytest.mark.parametrize(
    ("convert", "printed", "locator"),
    [
        (units.mm_from_inch, 25.4, "length: 1 in = 25.4 mm"),
        (units.n_from_lbf, 4.44822, "force: 1 lbf = 4.448 22 N"),
        (units.n_m_from_lbf_in, 0.112985, "moment: 1 lbf.in = 0.112 985 N.m"),
        (lambda cubic_foot: 60 * units.l_min_from_ft3_h(cubic_foot), 28.317, "volume: 1 ft3 = 0.028 317 m3"),
        (lambda ksi: units.mpa_from_ksi(ksi) * 645.16, 4448.22, "force and area: 1000 lbf on 645.16 mm2"),
    ],
)
def test_factor(convert, printed, locator):
    """Each factor equals the printed one."""
    assert convert(1.0) == pytest.approx(printed, rel=2e-5), locator  # six figures printed, five for ft3
