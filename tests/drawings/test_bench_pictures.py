"""Pictures of the bench: distinct looks, true sizes, and no word of the fault or of what gave way."""

from itertools import combinations

import numpy as np
import pytest

from drawings import bench_collar, pulled_stud
from drawings.bench_collar import MISSING_AT, collar_shape
from drawings.collar_view import AROUND
from secondplate.bench import FACES, GAVE
from secondplate.inspection import COLLAR_SIGNS
from tests.drawings.weld_cases import LOOKS, bench_call, pull_call

FAULT_WORDS = (
    "cold",
    "hot",
    "necked",
    "hang",
    "partial",
    "jagged",
    "porous",
    "burnt through",
    "good",
    "faul",
)


@pytest.mark.parametrize("sign_id", LOOKS)
def test_settings_of_each_look_bring_out_its_sign(sign_id):
    """The settings of the cases show the sign that they are named after, so every look is really drawn."""
    outcome = bench_call(**LOOKS[sign_id])["outcome"]
    assert sign_id in (outcome.sign_id, *outcome.defects)


def test_every_look_differs_from_every_other_in_drawing_and_words():
    """All signs of the collar and a burnt-through head give drawings and words of their own."""
    assert list(LOOKS) == [sign.id for sign in COLLAR_SIGNS]
    calls = [bench_call(**changes) for changes in LOOKS.values()]
    calls.append(bench_call(current_a=1500.0, time_ms=100.0))
    shown = [bench_collar(**call) for call in calls]
    for one, other in combinations(shown, 2):
        assert one.svg != other.svg
        assert one.alt != other.alt


@pytest.mark.parametrize("sign_id", LOOKS)
def test_words_of_a_weld_do_not_name_its_fault(sign_id):
    """The words tell what is seen; no sign, cause or correction of the table is in them."""
    words = bench_collar(**bench_call(**LOOKS[sign_id])).alt.lower()
    assert [word for word in FAULT_WORDS if word in words] == []
    for sign in COLLAR_SIGNS:
        for told in (sign.cause, sign.correction):
            assert not told or told.lower() not in words


@pytest.mark.parametrize("current_a", [450.0, 600.0, 700.0])
def test_drawn_collar_has_the_size_of_the_outcome(current_a):
    """Round a sound stud the drawn collar is as wide and high as the bench says, on average."""
    call = bench_call(current_a=current_a)
    shape, outcome = collar_shape(**call), call["outcome"]
    # The drawn waves are 4 % and cancel round the stud.
    np.testing.assert_allclose(shape.width_mm(AROUND[:-1]).mean(), outcome.collar_width_mm, rtol=0.01)
    np.testing.assert_allclose(shape.height_mm(AROUND[:-1]).mean(), outcome.collar_height_mm, rtol=0.01)


def test_drawn_gap_is_as_wide_as_the_outcome_says():
    """A one-sided collar is nothing over its gap and something beyond it."""
    call = bench_call(**LOOKS["one_sided"])
    shape, half = collar_shape(**call), np.radians(call["outcome"].collar_gap_deg) / 2
    assert half > 0
    inside, beyond = shape.width_mm(MISSING_AT + np.array([0.98 * half, half + 0.3]))
    assert inside == 0
    assert beyond > 0.3


@pytest.mark.parametrize("gave", GAVE[:2] + GAVE[3:])
def test_words_of_a_pull_describe_and_differ(gave):
    """What lets go is described by what is seen, without the bench's own name for it."""
    words = pulled_stud(**pull_call(gave)).alt
    assert gave not in words
    assert "N." in words


def test_faces_of_a_broken_weld_all_look_different():
    """Each face has its own drawing and words."""
    shown = [pulled_stud(**pull_call("weld broke", face)) for face in FACES[1:]]
    assert len({picture.svg for picture in shown}) == len({picture.alt for picture in shown}) == 4


def test_joined_patch_grows_with_the_joined_part():
    """The words tell the part of the face that the bench computed."""
    call = pull_call("weld broke", "flat and grey", current_a=300.0)
    share = call["outcome"].fused_share
    assert f"{100 * share:.0f} %" in pulled_stud(**call).alt
