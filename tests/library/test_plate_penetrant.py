"""Penetrant tests: each fault is named, the ends of the ranges are kept, acceptance turns once."""

import numpy as np
import pytest

from secondplate import plate_penetrant as penetrant

GOOD = {
    "penetrant_kind": "colour contrast",
    "part_temperature_c": 20,
    "dwell_min": 10,
    "developing_min": 15,
    "white_light_lx": 800,
}


def test_a_good_test_has_no_fault():
    """Ordinary settings have no fault, with either kind of penetrant, the ends of the ranges included."""
    fluorescent = GOOD | {"penetrant_kind": "fluorescent", "white_light_lx": 20, "ultraviolet_w_m2": 10}
    ends = GOOD | {"part_temperature_c": 50, "dwell_min": 60, "developing_min": 30, "white_light_lx": 500}
    assert [penetrant.penetrant_faults(**each) for each in (GOOD, fluorescent, ends)] == [(), (), ()]


@pytest.mark.parametrize(
    ("change", "begins"),
    [
        ({"part_temperature_c": 5}, "part temperature was 5 C"),
        ({"dwell_min": 2}, "penetrant dwell was 2 min"),
        ({"developing_min": 45}, "developing was 45 min"),
        ({"white_light_lx": 300}, "white light, colour contrast was 300 lx"),
    ],
)
def test_each_fault_is_named(change, begins):
    """Each setting out of its range gives one sentence that begins with it."""
    (fault,) = penetrant.penetrant_faults(**(GOOD | change))
    assert fault.startswith(begins)


def test_fluorescent_needs_dark_and_ultraviolet():
    """A fluorescent test in white light without ultraviolet has both faults."""
    faults = penetrant.penetrant_faults(**(GOOD | {"penetrant_kind": "fluorescent"}))
    assert [fault.split(" was ")[0] for fault in faults] == [
        "white light, fluorescent",
        "ultraviolet, fluorescent",
    ]


def test_acceptance_turns_once():
    """Along longer indications acceptance turns once, and a milder level never accepts less."""
    lengths = np.linspace(0, 10, 101)
    levels = [penetrant.indication_accepted(lengths, level=level) for level in (1, 2, 3)]
    assert all(np.all(np.diff(accepted.astype(int)) <= 0) for accepted in levels)
    assert np.all(levels[0] <= levels[1])
    assert np.all(levels[1] <= levels[2])


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: penetrant.penetrant_faults(**(GOOD | {"penetrant_kind": "blue"})),
            "kind of penetrant must be one of colour contrast, fluorescent, got 'blue'",
        ),
        (
            lambda: penetrant.penetrant_faults(**(GOOD | {"dwell_min": -1})),
            "penetrant dwell must be at least 0 min, got -1 min",
        ),
        (
            lambda: penetrant.indication_accepted(3, level=4),
            "acceptance level must be one of 1, 2, 3, got '4'",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What is no test is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
