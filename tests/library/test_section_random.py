"""Invented joints: seeds decide, faults are there where asked for, and the joints are those of the trade."""

import numpy as np
import pytest

from secondplate.section import FAULT_NAMES, fault, random_section, random_sections
from secondplate.section_draws import Uniforms

SEEDS = [b"invented %d" % number for number in range(2000)]


def test_numbers_that_never_change():
    """The draws of a seed are the same on every machine: written down once, compared for ever."""
    draws = Uniforms([b"fixed seed"])
    assert float(draws.share("a")[0]).hex() == "0x1.f5ab19c5223dfp-1"
    assert float(draws.share("b")[0]).hex() == "0x1.28d6667c08540p-7"


def test_parameters_of_a_seed_never_change():
    """The joint of a seed is the same for ever, to the micrometre of its parameters."""
    section, name = random_section(b"fixed seed")
    columns = section.parameters.columns()
    kept = ("rivet_length_mm", "interlock_left_mm", "set_length_left_mm", "die_diameter_mm")
    assert name == "sound"
    assert [float(columns[key][0]) for key in kept] == [4.0, 0.532, 3.456, 6.45]


def test_draws_are_even():
    """Shares fill the range from 0 to 1 evenly: mean, spread and tenths of 20,000 draws."""
    shares = Uniforms([b"%d" % number for number in range(20_000)]).share("evenness")
    assert shares.min() >= 0
    assert shares.max() < 1
    assert shares.mean() == pytest.approx(0.5, abs=0.01)  # 5 standard errors of 20,000 draws
    counts = np.histogram(shares, bins=10, range=(0, 1))[0]
    assert np.all(np.abs(counts - 2000) < 215)  # 5 standard deviations of a tenth


def test_names_have_their_own_draws():
    """Draws of two names do not follow each other."""
    draws = Uniforms(SEEDS)
    assert abs(np.corrcoef(draws.share("one"), draws.share("two"))[0, 1]) < 0.12  # 5 standard errors


def test_half_of_the_joints_are_sound():
    """Where no fault is asked for, half of the joints are sound and every fault comes up."""
    _, faults = random_sections(SEEDS)
    assert np.mean(faults == "sound") == pytest.approx(0.5, abs=0.06)  # 5 standard errors
    assert set(faults) == set(FAULT_NAMES)


@pytest.mark.parametrize("name", FAULT_NAMES)
def test_one_fault_for_all_or_one_each(name):
    """A fault can be asked for by its name; it has words for what is seen and where it comes from."""
    _, faults = random_sections(SEEDS[:5], faults=name)
    assert set(faults) == {name}
    assert random_section(SEEDS[0], fault=name)[1] == name
    assert fault(name).seen
    assert fault(name).cause


def test_second_plate_is_never_less_than_a_third():
    """The stacks keep the rules of the trade: a third at least, no plate below 0.8 mm."""
    parameters = random_sections(SEEDS)[0].parameters
    top, second = parameters.stack.top.thickness_mm, parameters.stack.second.thickness_mm
    assert np.all(second / (top + second) > 1 / 3)
    assert np.minimum(top, second).min() >= 0.8


def test_longer_than_the_stack():
    """Every rivet is longer than its stack, most by 0.5 mm to 3 mm, in steps of half a millimetre."""
    parameters = random_sections(SEEDS, faults="sound")[0].parameters
    length = parameters.rivet.rivet_length_mm
    added = length - parameters.stack.total_mm
    assert np.all(added > 0)
    assert np.mean((added >= 0.5) & (added <= 3)) > 0.9
    np.testing.assert_array_equal(length * 2, np.round(length * 2))


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: random_section("text"), "seed must be 1 to 64 bytes, got 'text'"),
        (lambda: random_section(b""), "seed must be 1 to 64 bytes, got b''"),
        (lambda: random_sections([]), "seed must be 1 to 64 bytes, got none"),
        (lambda: random_section(b"x" * 65), "seed must be 1 to 64 bytes, got b'xxx.*"),
        (lambda: random_section(b"x", fault="rust"), "fault must be one of sound, .*, got 'rust'"),
        (
            lambda: random_sections([b"x"], faults=["sound"] * 2),
            "faults must be as many as the seeds, 1, got 2",
        ),
        (lambda: fault("rust"), "fault must be one of sound, .*, got 'rust'"),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """Each bad input has its sentence."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        call()
