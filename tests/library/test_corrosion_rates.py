"""Rates: mixed potential against a root search on random couples, Faraday's law, trends."""

import numpy as np
import pytest
from scipy.optimize import brentq

from secondplate import corrosion_rates as rates
from secondplate.corrosion_rates import Electrode

_RANDOM = np.random.default_rng(6)
SIDES = [
    {
        "potential_v": _RANDOM.uniform(*potential, 100),
        "density_a_cm2": 10 ** _RANDOM.uniform(-8, -4, 100),
        "slope_v": _RANDOM.uniform(0.03, 0.2, 100),
        "area_cm2": 10 ** _RANDOM.uniform(-2, 2, 100),
    }
    for potential in ((-1.0, -0.7), (-0.6, -0.2))
]


def searched(case):
    """Return the potential of one couple by a root search on the currents themselves."""
    anode, cathode = ({name: values[case] for name, values in side.items()} for side in SIDES)

    def surplus(potential):
        given, taken = (
            side["area_cm2"]
            * side["density_a_cm2"]
            * 10 ** (sign * (potential - side["potential_v"]) / side["slope_v"])
            for side, sign in ((anode, 1), (cathode, -1))
        )
        return np.log(given / taken)

    return brentq(surplus, -3, 3, xtol=1e-14)


def test_same_as_a_root_search_on_random_couples():
    """The potential of 100 random couples is where a root search finds equal currents."""
    found = rates.mixed_potential(anode=Electrode(**SIDES[0]), cathode=Electrode(**SIDES[1]))
    assert found.potential_v == pytest.approx([searched(case) for case in range(100)], abs=1e-10)  # search


def test_a_larger_cathode_eats_the_anode_faster():
    """The anode's density rises with the cathode's area and falls with its own."""
    anode = {"potential_v": -0.75, "density_a_cm2": 1e-6, "slope_v": 0.06}
    cathode = {"potential_v": -0.60, "density_a_cm2": 1e-5, "slope_v": 0.12}
    areas = np.logspace(-2, 2, 30)
    by_cathode, by_anode = (
        rates.mixed_potential(
            anode=Electrode(**anode, area_cm2=one), cathode=Electrode(**cathode, area_cm2=other)
        ).density_a_cm2
        for one, other in ((1.0, areas), (areas, 1.0))
    )
    assert np.all(np.diff(by_cathode) > 0)
    assert np.all(np.diff(by_anode) < 0)


@pytest.mark.parametrize(("metal", "gram", "density"), [("aluminium", 8.994, 2.70), ("iron", 27.92, 7.87)])
def test_penetration_is_faradays_law(metal, gram, density):
    """A microampere by square centimetre for a year, by Faraday's constant, eats what the formula says."""
    year_s = 365.25 * 86_400
    depth_mm = 1e-6 * year_s / 96_485.33 * gram / density * 10
    assert rates.penetration_mm_year(1, corroding_metal=metal) == pytest.approx(depth_mm, rel=1e-3)  # 3.27


def test_current_follows_the_cathode():
    """Density times the anode's area depends on the cathode alone; the rate keeps its own part."""
    anode_areas = np.array([0.1, 1.0, 10.0])
    density = rates.galvanic_density(factor=20, area_ratio=5 / anode_areas)
    assert density * anode_areas == pytest.approx([100, 100, 100], rel=1e-12)  # arithmetic only
    assert rates.anode_rate(factor=2, area_ratio=0) == 2.0


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: rates.galvanic_density(factor=1, area_ratio=-1), "area ratio must be at least 0, got -1"),
        (
            lambda: Electrode(potential_v=0, density_a_cm2=0, slope_v=0.1, area_cm2=1),
            "current density of the electrode must be above 0 A/cm2, got 0 A/cm2",
        ),
        (
            lambda: rates.mixed_potential(anode=Electrode(**SIDES[1]), cathode=Electrode(**SIDES[0])),
            "potential of the cathode less that of the anode must be above 0 V",
        ),
        (lambda: rates.oxygen_limit_ua_cm2(layer_cm=0), "still layer must be above 0 cm, got 0 cm"),
        (
            lambda: rates.penetration_mm_year(1, corroding_metal="gold"),
            "corroding metal must be one of aluminium, zinc, iron, got 'gold'",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What does not corrode is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
