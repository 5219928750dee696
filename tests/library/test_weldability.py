"""The verdict on a stud weld: hard and brittle for every rivet, both sides shown, sources with reasons."""

import numpy as np
import pytest

from secondplate.bands import Band
from secondplate.sources import BIBLIOGRAPHY
from secondplate.weldability import (
    dilution_band,
    hardness_limit_hv,
    rivet_zone_hardness_hv,
    verdict,
)
from secondplate.weldability_composition import composition, steel_names
from secondplate.weldability_hardness import yurioka_hardness, zone_hardness
from secondplate.weldability_published import SURFACES, levers, published_hardnesses, published_warnings
from secondplate.weldability_stud import stud_cooling_time_s, stud_preheat_answer

# Charted welds: face and arc energy at 30 V of 4, 5 and 6 mm studs.
WELDS = [(5, 270.0), (6, 315.0), (7, 480.0)]
TIMES = stud_cooling_time_s(480, face_diameter_mm=7)


@pytest.mark.parametrize("surface", SURFACES)
@pytest.mark.parametrize("rivet", steel_names("rivet"))
@pytest.mark.parametrize("stud", steel_names("stud"))
def test_every_stud_on_every_rivet_is_brittle(stud, rivet, surface):
    """No pair escapes: hard zone, reasons against, both voices shown, good for one pull."""
    found = verdict(stud=stud, rivet=rivet, surface=surface, cooling_time_800_500_s=TIMES)
    assert found.brittle
    assert found.hardness_hv.low > 500
    assert "one pull" in found.use
    assert {reason.bears for reason in found.reasons} == {"against", "for"}
    assert f"{composition(rivet, end='low').carbon_percent:.2f} to" in found.contradiction
    assert len(found.computed) == 4


@pytest.mark.parametrize("surface", SURFACES)
def test_every_reason_has_a_source(surface):
    """Each reason names an entry of the bibliography and is a sentence."""
    for reason in published_warnings("36MnB4", surface=surface):
        assert reason.source in BIBLIOGRAPHY
        assert reason.text.endswith(".")
        assert reason.locator


def test_coating_turns_the_good_voice():
    """What is said for bare sheet is not said for a coated head, and the sentence says so."""
    bare, coated = (
        verdict(stud="304-type", rivet="36MnB4", surface=surface, cooling_time_800_500_s=TIMES)
        for surface in SURFACES
    )
    assert "took studs very well" in bare.contradiction
    assert "marginal" in coated.contradiction
    assert len(coated.reasons) > len(bare.reasons)


def test_soft_zone_is_not_called_brittle():
    """With a cooling of minutes the zone comes out under the limit, so the verdict is no constant."""
    slow = Band(low=300.0, best=400.0, high=500.0, basis="made up")
    found = verdict(stud="304-type", rivet="33B2", surface="bare", cooling_time_800_500_s=slow)
    assert not found.brittle


def test_slow_cooling_softens_the_low_end_only_of_a_band_of_times():
    """A band of times from quick to slow keeps the hard end and lowers the soft one."""
    wide = Band(low=TIMES.low, best=TIMES.best, high=60.0, basis="made up")
    quick, slow = (rivet_zone_hardness_hv("36MnB4", cooling_time_800_500_s=times) for times in (TIMES, wide))
    assert slow.high == quick.high
    assert slow.low < quick.low - 200


def test_dilution_may_be_given():
    """With little of the rivet in the melt the weld metal keeps austenite."""
    little = Band(low=0.05, best=0.1, high=0.2, basis="made up")
    found = verdict(
        stud="309-type", rivet="36MnB4", surface="bare", cooling_time_800_500_s=TIMES, dilution=little
    )
    assert found.regions == ("austenite and ferrite", "austenite and ferrite", "austenite")
    assert dilution_band().contains(0.5)


@pytest.mark.parametrize(("face_mm", "energy_j"), WELDS)
def test_charted_welds_cool_in_under_a_second(face_mm, energy_j):
    """Each charted short-cycle weld cools far faster than any rivet steel can bear."""
    times = stud_cooling_time_s(energy_j, face_diameter_mm=face_mm)
    assert 0.03 < times.low < times.high < 1
    for rivet in steel_names("rivet"):
        usual = yurioka_hardness(composition(rivet), cooling_time_800_500_s=times.high)
        assert times.high < usual.martensite_time_s / 2


def test_cooling_time_scales_with_the_square_of_the_energy():
    """Twice the energy on the same face cools four times as long; arrays pass."""
    times = stud_cooling_time_s(np.array([240.0, 480.0]), face_diameter_mm=7)
    assert times.best[1] == pytest.approx(4 * times.best[0], rel=1e-12)  # exact


def test_hardness_band_spans_grade_and_formulas():
    """The band of the grade is wider than that of one cast, and above the limit of seams."""
    found = rivet_zone_hardness_hv("38B2", cooling_time_800_500_s=TIMES)
    lean, rich = (composition("38B2", end=end) for end in ("low", "high"))
    softest = zone_hardness(lean, cooling_time_800_500_s=TIMES.high).band_hv
    hardest = zone_hardness(rich, cooling_time_800_500_s=TIMES.low).band_hv
    assert (found.low, found.high) == (softest.low, hardest.high)
    assert found.low > hardness_limit_hv().high
    assert found.high - found.low > 50


def test_published_hardness_stands_beside_the_computed():
    """Both measured stud welds and both statements on rivets are listed."""
    assert [found.what for found in published_hardnesses()] == ["weld", "weld", "rivet", "rivet"]


def test_levers_are_sentences_and_preheat_is_not_one():
    """Each lever is one sentence, and heating the joint is advised against."""
    assert all(lever.value.endswith(".") for lever in levers())
    (preheat,) = (lever for lever in levers() if "preheat" in lever.name)
    assert preheat.value.startswith("Do not preheat")


@pytest.mark.parametrize(
    ("thickness_mm", "energy_j", "words"),
    [
        (1.5, 480, "thickness must be between 10 mm and 90 mm, got 1.5 mm"),
        (20, 480, "heat input must be between 0.5 kJ/mm and 4 kJ/mm, got 0.0685714 kJ/mm"),
        (20, 7000, "The rule asks for "),
    ],
)
def test_preheat_rule_refuses_a_stud(thickness_mm, energy_j, words):
    """A rivet head is too thin and a stud arc too short for the rule; a seam's heat it would answer."""
    answer = stud_preheat_answer("36MnB4", energy_j=energy_j, face_diameter_mm=7, thickness_mm=thickness_mm)
    assert words in answer


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: verdict(stud="38B2", rivet="38B2", surface="bare", cooling_time_800_500_s=TIMES),
            "stud must be one of 304-type, 309-type, got '38B2'",
        ),
        (lambda: published_warnings("304-type", surface="bare"), "rivet must be one of 36MnB4, .*'304-type'"),
        (
            lambda: published_warnings("38B2", surface="oily"),
            "surface must be one of bare, coated, got 'oily'",
        ),
        (lambda: stud_cooling_time_s(0, face_diameter_mm=7), "energy must be above 0 J, got 0 J"),
        (
            lambda: stud_preheat_answer("38B2", energy_j=1, face_diameter_mm=0, thickness_mm=1),
            "face diameter must be above 0 mm, got 0 mm",
        ),
    ],
)
def test_refusals(call, sentence):
    """Each name and number out of its range is refused with its sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
