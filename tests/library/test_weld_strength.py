"""Strength of a stud weld on a rivet head."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.bands import Band
from secondplate.studs import property_class
from secondplate.weld_loads import elastic_load_share, plastic_load_share
from secondplate.weld_strength import PARTS, STRENGTHS_MPA, PullLimits, fused_face, pull_limits, web_tear_n

M6 = {"stress_area_mm2": 20.1, "shank_diameter_mm": 5.3, "web_left_mm": 0.7}


def centred(**change):
    """Return a face of a 7 mm flange on a 7.75 mm head, set right unless told otherwise."""
    return fused_face(**({"flange_diameter_mm": 7.0, "head_diameter_mm": 7.75, "offset_mm": 0.0} | change))


def test_full_fusion_without_offset_bears_area_times_strength():
    """The limit A Rm, for both ends of the band, when all is fused and straight."""
    limits = pull_limits(centred(), **M6)
    area = np.pi / 4 * 49
    for end in ("low", "best", "high"):
        expected = area * getattr(STRENGTHS_MPA["weld metal"], end)
        assert getattr(limits.weld_n, end) == pytest.approx(expected, rel=1e-12)  # exact


def test_stud_band_runs_from_soft_to_cold_worked():
    """The stud beside its weld has the strengths of A2-50 and A2-70 as ends."""
    band = STRENGTHS_MPA["stud beside the weld"]
    assert band.low == property_class("A2-50").tensile_strength_mpa
    assert band.high == property_class("A2-70").tensile_strength_mpa
    stud = pull_limits(centred(), **M6).stud_n
    assert stud.low == pytest.approx(10050, rel=1e-12)  # 20.1 mm2 at 500 MPa, exact
    assert stud.high == pytest.approx(14070, rel=1e-12)


def test_overhang_moves_the_centroid_and_takes_area():
    """A stud set 1.5 mm off loses area and pulls off the middle of what is left."""
    off = centred(offset_mm=1.5)
    assert off.area_mm2 < centred().area_mm2
    assert off.centroid_mm > 0
    assert pull_limits(off, **M6).weld_n.low < pull_limits(centred(), **M6).weld_n.low


def test_within_the_slack_nothing_is_lost():
    """Head less flange leaves 0.375 mm each way in which the whole flange is fused."""
    assert centred(offset_mm=0.37).area_mm2 == pytest.approx(centred().area_mm2, rel=1e-12)  # exact
    assert centred(offset_mm=0.37).centroid_mm == 0


def test_half_fused_is_half_the_area():
    """The fused share scales the area and the diameter of the round face by its root."""
    half = centred(fused_share=0.5)
    assert half.area_mm2 == pytest.approx(centred().area_mm2 / 2, rel=1e-12)  # exact
    assert half.diameter_mm == pytest.approx(7 / np.sqrt(2), rel=1e-12)


def lens_limits(flange, head, offset):
    """Work out both limits of the true lens on a net, as shares of its area times strength."""
    x = np.linspace(-flange, flange, 1201)
    grid_x, grid_y = np.meshgrid(x, x)
    both = (grid_x**2 + grid_y**2 <= flange**2) & ((grid_x - offset) ** 2 + grid_y**2 <= head**2)
    places = np.sort(grid_x[both])
    middle = places.mean()
    second_moment = ((places - middle) ** 2).mean()
    # The stud pulls at x = 0; the worst edge is the one beyond it.
    worst = middle - places[0]
    elastic = 1 / (1 + middle * worst / second_moment)
    # Plastic: the neutral axis that lets the block pull at x = 0.
    moments = 2 * np.cumsum(places) - places.sum()
    tension = np.argmax(moments[len(places) // 2 :] > 0) + len(places) // 2
    return elastic, (2 * tension - len(places)) / len(places)


@pytest.mark.parametrize(
    ("flange", "head", "offset"), [(3.5, 3.875, 1.5), (2.5, 3.875, 2.5), (3.0, 3.875, 2.0)]
)
def test_round_face_stands_for_the_lens(flange, head, offset):
    """Both limits of the round face of the same area lie within a tenth of those of the true lens."""
    face = fused_face(flange_diameter_mm=2 * flange, head_diameter_mm=2 * head, offset_mm=offset)
    elastic, plastic = lens_limits(flange, head, offset)
    ratio = face.centroid_mm / face.diameter_mm
    # The lens is slimmer across the offset, so the round face errs a little to either side.
    assert elastic_load_share(ratio) == pytest.approx(elastic, rel=0.1)
    assert plastic_load_share(2 * ratio) == pytest.approx(plastic, rel=0.1)


def test_a_thin_web_gives_first():
    """With little web left the head tears before stud and weld."""
    thin = pull_limits(centred(), **(M6 | {"web_left_mm": 0.2}))
    assert thin.likely_first == "head"
    assert thin.possible_first == ("head",)


def test_a_badly_fused_weld_gives_first():
    """A twentieth of the face fused breaks before a thick web and the stud."""
    limits = pull_limits(centred(fused_share=0.05), **(M6 | {"web_left_mm": 1.3}))
    assert limits.likely_first == "weld"


def test_bands_that_overlap_leave_it_open():
    """Where bands overlap more than one part may give first."""
    one, other, far = (
        Band(low=low, best=low + 1, high=low + 3, basis="made up") for low in (10.0, 12.0, 20.0)
    )
    limits = PullLimits(weld_n=one, stud_n=other, head_n=far)
    assert limits.likely_first == "weld"
    assert limits.possible_first == ("weld", "stud")
    assert PARTS == ("weld", "stud", "head")


@given(st.floats(0, 20), st.floats(0, 5), st.floats(0.05, 1))
def test_bands_keep_their_order(tilt, offset, share):
    """Whatever the tilt, offset and fusion, the bands rise and are numbers."""
    limits = pull_limits(centred(offset_mm=offset, fused_share=share), **M6, tilt_deg=tilt, lever_mm=10.0)
    for band in (limits.weld_n, limits.stud_n, limits.head_n):
        assert 0 < band.low <= band.best <= band.high


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"fused_share": 0}, "fused share must be above 0, got 0"),
        ({"fused_share": 1.2}, "fused share must be between 0 and 1, got 1.2"),
        ({"offset_mm": 9.0}, "shared area must be above 0 mm2, got 0 mm2"),
        ({"flange_diameter_mm": 0}, "flange diameter must be above 0 mm, got 0 mm"),
        ({"head_diameter_mm": -1}, "head diameter must be above 0 mm, got -1 mm"),
    ],
)
def test_face_refusals(change, sentence):
    """Each bad number is refused in one sentence."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        centred(**change)


def test_web_refusals():
    """The web must not be below nothing."""
    with pytest.raises(ValueError, match="^web left must be at least 0 mm, got -0.1 mm$"):
        web_tear_n(shank_diameter_mm=5.3, web_left_mm=-0.1, strength_mpa=900)
    assert web_tear_n(shank_diameter_mm=5.3, web_left_mm=0.0, strength_mpa=900) == 0
