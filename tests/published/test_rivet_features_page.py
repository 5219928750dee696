"""Page of a welding institute on features, quality and testing of self-piercing rivets. Read."""

import numpy as np
import pytest

from secondplate.rivet import Rivet, Sheet, Stack
from secondplate.rivet_rules import rivet_length_advice_mm
from secondplate.section import random_sections

SOURCE = "rivet_features_page"


@pytest.mark.parametrize(("total", "shank", "length"), [(4.0, 5.0, 7.75), (3.0, 3.0, 5.25), (5.0, 5.0, 8.75)])
def test_length_is_stack_and_three_quarters_of_the_shank(total, shank, length):
    """Length of the rivet: stack + 0.75 D."""
    half = Sheet(thickness_mm=total / 2)
    advice = rivet_length_advice_mm(Stack(top=half, second=half), shank_diameter_mm=shank)
    (rule,) = [rule for rule in advice.rules if rule.source == SOURCE]
    assert rule.band.best == pytest.approx(length, abs=1e-12)  # exact arithmetic


def test_heads_are_wider_than_shanks_by_2_to_3_mm():
    """Most heads are 2 to 3 mm wider than the shank; so are the usual and the invented rivets."""
    rivets = [
        Rivet(rivet_length_mm=5.0),
        random_sections([b"%d" % n for n in range(100)])[0].parameters.rivet,
    ]
    for rivet in rivets:
        wider = np.asarray(rivet.head_diameter_mm - rivet.shank_diameter_mm)
        assert np.all((wider >= 2) & (wider <= 3))


def test_a_sound_section_looks_as_the_page_says():
    """Sections of sound joints: tail flared on both sides, symmetric, tail not through the second plate."""
    sections, _ = random_sections([b"page %d" % n for n in range(200)], faults="sound")
    found = sections.constructed
    assert np.all(np.minimum(found["interlock_left_mm"], found["interlock_right_mm"]) > 0)
    assert np.all(np.abs(found["interlock_left_mm"] - found["interlock_right_mm"]) < 0.1)
    assert np.all(found["remaining_thickness_mm"] > 0)
