"""Page with a table of metric coarse threads. Read; three decimals."""

import pytest

from secondplate.studs import coarse_pitch_mm, minor_diameter_mm, pitch_diameter_mm

SOURCE = "thread_table_page"
LAST_DIGIT_MM = 6e-4  # half of the last printed digit, and 0.6495 stands for 0.649519

TABLE = [
    (3, 0.5, 2.675, 2.387),
    (4, 0.7, 3.545, 3.141),
    (5, 0.8, 4.48, 4.019),
    (6, 1.0, 5.35, 4.773),
    (8, 1.25, 7.188, 6.466),
    (10, 1.5, 9.026, 8.16),
    (12, 1.75, 10.863, 9.853),
    (16, 2.0, 14.701, 13.546),
]


@pytest.mark.parametrize(("diameter_mm", "pitch_mm", "pitch_diameter", "minor_diameter"), TABLE)
def test_coarse_threads(diameter_mm, pitch_mm, pitch_diameter, minor_diameter):
    """Pitch, pitch diameter d2 and minor diameter d3 come out as printed."""
    assert coarse_pitch_mm(diameter_mm) == pitch_mm
    assert pitch_diameter_mm(diameter_mm, pitch_mm=pitch_mm) == pytest.approx(
        pitch_diameter, abs=LAST_DIGIT_MM
    )
    assert minor_diameter_mm(diameter_mm, pitch_mm=pitch_mm) == pytest.approx(
        minor_diameter, abs=LAST_DIGIT_MM
    )
