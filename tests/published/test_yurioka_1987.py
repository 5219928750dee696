"""Yurioka and others 1987, hardness of the heat-affected zone. From memory; values worked apart."""

import pytest

from secondplate.weldability_carbon import carbon_equivalent_cen_percent
from secondplate.weldability_composition import Composition, composition
from secondplate.weldability_hardness import yurioka_hardness

SOURCE = "yurioka_1987"


def test_36mnb4():
    """Hardness with and without martensite, and both limits of the cooling time."""
    found = yurioka_hardness(composition("36MnB4"), cooling_time_800_500_s=10)
    assert found.martensite_hv == pytest.approx(599.9, abs=0.06)  # one decimal
    assert found.bainite_hv == pytest.approx(239.9, abs=0.06)
    assert found.martensite_time_s == pytest.approx(3.777, abs=6e-4)  # three decimals
    assert found.bainite_time_s == pytest.approx(100.64, abs=6e-3)  # two decimals


@pytest.mark.parametrize(("time_s", "hardness_hv"), [(5, 588.1), (10, 531.6), (20, 414.8), (0.2, 599.9)])
def test_36mnb4_by_cooling_time(time_s, hardness_hv):
    """The slower, the softer; below 3.8 s the value is held at that of martensite."""
    found = yurioka_hardness(composition("36MnB4"), cooling_time_800_500_s=time_s)
    assert found.hardness_hv == pytest.approx(hardness_hv, abs=0.06)  # one decimal


def test_38b2():
    """Martensite of the other rivet steel."""
    found = yurioka_hardness(composition("38B2"), cooling_time_800_500_s=1)
    assert found.martensite_hv == pytest.approx(611.5, abs=0.06)  # one decimal


@pytest.mark.parametrize(("steel", "percent"), [("36MnB4", 0.5858), ("38B2", 0.5675)])
def test_carbon_equivalent_cen(steel, percent):
    """CEN of two rivet steels."""
    assert carbon_equivalent_cen_percent(composition(steel)) == pytest.approx(percent, abs=6e-5)


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"carbon_percent": 0.81}, "carbon for Yurioka hardness must be between 0 % and 0.8 %, got 0.81 %"),
        ({"nitrogen_percent": 0.011}, "nitrogen for Yurioka hardness must be between 0 % and 0.01 %"),
    ],
)
def test_printed_range(change, sentence):
    """At most 0.8 % carbon and 0.01 % nitrogen, as printed on the page of a welding society."""
    steel = Composition(**({"carbon_percent": 0.3} | change))
    with pytest.raises(ValueError, match=sentence):
        yurioka_hardness(steel, cooling_time_800_500_s=5)
