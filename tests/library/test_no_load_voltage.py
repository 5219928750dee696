"""Limits of the no-load voltage rise from place to place."""

from secondplate.no_load_voltage import USES_OF_A_SOURCE, no_load_limits


def test_riskier_places_have_lower_limits():
    """No limit of a riskier use lies above that of a safer one."""
    limits = [no_load_limits(use) for use in USES_OF_A_SOURCE]
    for name in ("direct_peak_v", "alternating_peak_v", "alternating_rms_v"):
        numbers = [getattr(one, name) for one in limits]
        assert numbers == sorted(numbers)
