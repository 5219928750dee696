"""Stresses in cemented joints (1944). k seen in open code, the rest from memory; computed two ways."""

import pytest

from secondplate.bonding import BentLap, bent_lap_peel_mpa, bent_lap_shear_mpa

SOURCE = "lap_bending_1944"
CASES = [
    ((100, 25, 2, 1000, 2700, 0.2), (0.64955, 1.06904, 7.70876, 20.7529, 1.1008, 26.4540, 147.43)),
    ((100, 12.5, 1.5, 800, 2100, 0.3), (0.70551, 0.67612, 4.05835, 19.4525, 3.8737, 24.5944, 207.77)),
]


@pytest.mark.parametrize(("given", "expected"), CASES)
def test_worked_laps(given, expected):
    """Factors k, beta, lambda, shear at end and middle, peel at the end, stress of the plate; nu 0.33."""
    load, overlap, thickness, shear, stretch, layer = given
    lap = BentLap(
        line_load_n_mm=load,
        overlap_mm=overlap,
        thickness_mm=thickness,
        elastic_modulus_mpa=70000,
        adhesive_modulus_mpa=shear,
        adhesive_stretch_modulus_mpa=stretch,
        adhesive_mm=layer,
    )
    found = (
        lap.moment_factor,
        lap.shear_factor,
        lap.peel_length_factor,
        bent_lap_shear_mpa(lap, position_mm=overlap / 2),
        bent_lap_shear_mpa(lap, position_mm=0),
        bent_lap_peel_mpa(lap, position_mm=-overlap / 2),
        lap.plate_stress_mpa,
    )
    # Six figures and fewer, as worked out.
    assert found == pytest.approx(expected, rel=6e-5)
