"""Engineering page on joints with blind rivets. Seen."""

import pytest

from secondplate.fasteners import advised_pitch_mm, blind_rivet, hole_verdict

SOURCE = "blind_rivet_design_page"


def test_pitch_is_four_diameters():
    """About 4 d."""
    assert advised_pitch_mm(4.8) == pytest.approx(19.2, rel=1e-12)  # exact


def test_hole_a_tenth_over_the_body_fits():
    """Body plus 0.1 mm is right; an oversize hole weakens shear and tension."""
    rivet = blind_rivet("ISO 15979", 4.0)
    assert [str(word) for word in hole_verdict([4.0, 4.1, 4.4], fastener=rivet)] == [
        "too tight",
        "right",
        "too wide",
    ]
