"""Habraken and others 2022: five hardening laws of AA6016-T4, seen in an open data repository."""

import pytest

from secondplate.plate_hardening import HARDENING_LAWS

SOURCE = "habraken_2022"


@pytest.mark.parametrize(
    ("name", "necking", "strength_mpa", "proof_mpa"),
    [
        ("Voce, habraken_2022 set 1", 0.1647, 259.2, 140.2),
        ("Voce, habraken_2022 set 2", 0.1695, 245.8, 126.0),
        ("Swift, habraken_2022 set 3", 0.2761, 264.6, 129.9),
        ("Swift, habraken_2022 set 4", 0.2827, 251.8, 112.8),
        ("Swift, habraken_2022 set 5", 0.2680, 254.6, None),
    ],
)
def test_what_each_law_says(name, necking, strength_mpa, proof_mpa):
    """Constants as seen; necking strain, strength and stress at no strain computed apart from them."""
    law = HARDENING_LAWS["6016-T4"][name]
    assert law.necking_strain == pytest.approx(necking, abs=6e-5)  # four decimals
    assert law.tensile_strength_mpa == pytest.approx(strength_mpa, abs=0.06)  # one decimal
    if proof_mpa is not None:
        assert law.flow_stress_mpa(0.0) == pytest.approx(proof_mpa, abs=0.1)  # one decimal, 129.86 is 129.9


def test_laws_differ_for_one_metal():
    """By Voce the sheet necks before 0.17, by Swift after 0.26."""
    laws = HARDENING_LAWS["6016-T4"]
    voce, swift = (
        [law.necking_strain for name, law in laws.items() if kind in name] for kind in ("Voce", "Swift")
    )
    assert max(voce) < 0.17
    assert min(swift) > 0.26
