"""The stop rule: the lowest law decides, more strain is never milder, and the tallest rise is its edge."""

import numpy as np
import pytest

from secondplate import plate_forming as forming
from secondplate.plate_dome import ButtonDome

RISES = np.linspace(0, 2, 41)


@pytest.mark.parametrize("sheet", ["5754-O", "6016-T4", "6061-T6", "6111-T4"])
def test_verdict_turns_once_and_at_the_tallest_rise(sheet):
    """Along rising domes the verdict turns once, at the rise that the library names."""
    column = ButtonDome(base_radius_mm=4, rise_mm=RISES, sheet_mm=1.5)
    allowed = forming.press_back(column, sheet).verdict == "press back"
    tallest = forming.tallest_rise_mm(sheet, base_radius_mm=4, sheet_mm=1.5)
    assert np.array_equal(allowed, tallest >= RISES)


def test_the_lowest_limit_decides():
    """The limit that counts is the lowest of all, and its name is given."""
    found = forming.press_back(ButtonDome(base_radius_mm=4, rise_mm=1, sheet_mm=1.5), "6016-T4")
    assert found.limit == min(found.limits.values())
    assert found.limits[found.governing] == found.limit
    assert found.governing.startswith("Voce")


def test_strain_before_is_never_milder():
    """Strain that the sheet has already seen adds to what is used."""
    button = ButtonDome(base_radius_mm=4, rise_mm=0.3, sheet_mm=1.5)
    used = [
        forming.press_back(button, "6016-T4", strain_before=before).used for before in (0.0, 0.02, 0.05, 0.2)
    ]
    assert np.all(np.diff(used) > 0)


def test_a_flat_plate_needs_nothing():
    """Where nothing stands proud, no strain is used and every law allows it."""
    found = forming.press_back(ButtonDome(base_radius_mm=4, rise_mm=0, sheet_mm=1.5), "6061-T6")
    assert (found.used, found.verdict, len(found.allowed_by)) == (0.0, "press back", len(found.limits))


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: forming.tallest_rise_mm("6016-T4", base_radius_mm="wide", sheet_mm=1),
            "base radius of the dome must be a number in mm, got 'wide'",
        ),
        (
            lambda: forming.tallest_rise_mm("6016-T4", base_radius_mm=4, sheet_mm=[1, 2]),
            "sheet thickness must be one number in mm, got 2 of them",
        ),
        (
            lambda: forming.least_bend_radius_mm("6082-T6", sheet_mm="thin"),
            "sheet thickness must be a number in mm, got 'thin'",
        ),
        (lambda: forming.press_back(1.0, "6016-T4"), "button must be a ButtonDome, got 1.0"),
        (
            lambda: forming.press_back(ButtonDome(base_radius_mm=4, rise_mm=1, sheet_mm=1), "gold"),
            "sheet must be one of 5754-O",
        ),
        (
            lambda: forming.press_back(
                ButtonDome(base_radius_mm=4, rise_mm=1, sheet_mm=1), "6016-T4", strain_before=-1
            ),
            "strain before must be at least 0, got -1",
        ),
        (
            lambda: forming.least_bend_radius_mm("6082-T6", sheet_mm=9),
            "bend must be one of the table for 6082-T6, got 9 mm at 90 deg",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What the rule does not know is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
