"""IEC 60974-1 Arc welding equipment, part 1: limits of the no-load voltage. Read in a digest."""

import pytest

from secondplate.no_load_voltage import USES_OF_A_SOURCE, NoLoadLimits, no_load_limits

SOURCE = "iec_60974_1"
# Increased risk, no increased risk, mechanically held torch; in volts.
DIRECT_PEAK, ALTERNATING_PEAK, ALTERNATING_RMS = (113, 113, 141), (68, 113, 141), (48, 80, 100)


def test_limits():
    """Each use has its three limits; copied, so exact."""
    limits = zip(DIRECT_PEAK, ALTERNATING_PEAK, ALTERNATING_RMS, strict=True)
    assert [no_load_limits(use) for use in USES_OF_A_SOURCE] == [
        NoLoadLimits(direct_peak_v=direct, alternating_peak_v=peak, alternating_rms_v=rms)
        for direct, peak, rms in limits
    ]


def test_peak_is_the_effective_value_times_root_two():
    """Alternating peaks are the effective values of a sine, to the volt."""
    for peak, rms in zip(ALTERNATING_PEAK, ALTERNATING_RMS, strict=True):
        assert rms * 2**0.5 == pytest.approx(peak, abs=0.6)  # whole volts


def test_unknown_use():
    """An unknown use is refused with the list of valid ones."""
    with pytest.raises(ValueError, match="use must be one of increased risk, .*, got 'rain'"):
        no_load_limits("rain")
