"""ISO 16809: ultrasonic thickness. Formulas and velocities from memory, values computed apart."""

import pytest

from secondplate import measuring_ultrasonic as ultrasonic

SOURCE = "iso_16809"


def test_time_through_a_plate():
    """A plate of 1.500 mm at 6320 m/s takes 0.47468 us there and back."""
    assert ultrasonic.echo_time_us(1.5, velocity_m_s=6320) == pytest.approx(
        0.47468, abs=5e-6
    )  # five decimals


def test_paint_reads_as_metal():
    """Paint of 0.12 mm at 2400 m/s reads as 0.316 mm of aluminium in one echo."""
    found = ultrasonic.paint_reading_mm(0.12, velocity_m_s=6320, paint_velocity_m_s=2400)
    assert found == pytest.approx(0.316, abs=5e-4)  # three decimals


def test_uncertainty_of_a_thickness():
    """1.5 mm with 50 m/s and 2 ns is known to 0.0134 mm."""
    found = ultrasonic.echo_uncertainty_mm(
        thickness_mm=1.5, velocity_m_s=6320, time_uncertainty_us=0.002, velocity_uncertainty_m_s=50
    )
    assert found == pytest.approx(0.0134, abs=5e-5)  # four decimals


def test_wavelength_at_20_mhz():
    """At 20 MHz one wavelength in aluminium is 0.316 mm, the practical lower limit."""
    assert ultrasonic.thinnest_wall_mm(frequency_mhz=20).low == pytest.approx(
        0.316, abs=5e-4
    )  # three decimals


def test_velocities():
    """Longitudinal 6300 to 6400 in aluminium and 5920 m/s in steel; transverse 3130 and 3255."""
    found = ultrasonic.VELOCITIES_M_S
    assert (found["aluminium"].low, found["aluminium"].best, found["aluminium"].high) == (6300, 6320, 6400)
    assert [found[name].best for name in ("steel", "aluminium across", "steel across")] == [5920, 3130, 3255]
