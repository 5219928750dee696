"""Outlines from elsewhere: crossing ones and half ones are refused."""

import numpy as np
import pytest

from secondplate.section import (
    build_section,
    crossing_mm,
    random_section,
    section_of_outlines,
    usual_parameters,
)
from secondplate.section_volume import half_volume_mm3, revolved_volume_mm3
from tests.outline_checks import proper_crossings

KNOWN = dict(build_section(usual_parameters()).outlines)
BOW = np.array([[0, 0], [2, 2], [2, 0], [0, 2]])


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"rivet": None}, "section must have an outline of the rivet, got second plate, .*"),
        ({"rivet": BOW}, "outline of the rivet must not cross itself, got a crossing at 1 mm, 1 mm"),
        (
            {"rivet": BOW[:2]},
            r"outline of the rivet must have at least 3 corners of x and y, got shape \(2, 2\)",
        ),
        ({"rivet": np.zeros((4, 3))}, r"outline of the rivet must have at least 3 .*, got shape \(4, 3\)"),
        ({"rivet": np.full((4, 2), np.nan)}, "outline of the rivet must be finite, got nan mm"),
        ({"stud": KNOWN["rivet"]}, "part must be one of rivet, .*, got 'stud'"),
    ],
)
def test_what_is_no_section_is_refused(change, sentence):
    """Each bad outline has its sentence."""
    outlines = {part: outline for part, outline in (KNOWN | change).items() if outline is not None}
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        section_of_outlines(outlines)


def test_built_outlines_never_cross():
    """Two rules that share nothing agree: no outline of an invented joint crosses itself."""
    for number in range(20):
        for outline in random_section(b"crossing %d" % number)[0].outlines.values():
            assert crossing_mm(outline) is None
            assert proper_crossings(outline, outline) == 0


def test_volumes_of_known_solids():
    """Cone, ring and a square that straddles the axis, by the formulas of school."""
    cone = np.array([[-1.0, 0], [1, 0], [0, 3]])
    assert revolved_volume_mm3(cone) == pytest.approx(np.pi, rel=1e-12)  # pi/3 r^2 h
    ring = np.array([[2.0, 0], [3, 0], [3, 1], [2, 1]])
    assert half_volume_mm3(ring[:, 0], ring[:, 1]) == pytest.approx(5 * np.pi, rel=1e-12)  # pi (9 - 4)
    straddling = np.array([[-1.0, 0], [2, 0], [2, 1], [-1, 1]])
    assert revolved_volume_mm3(straddling) == pytest.approx(2.5 * np.pi, rel=1e-12)  # halves of 1 and of 4
    slanted = np.array([[-1.0, 0], [2, 1], [2, 2], [-1, 2]])
    triangle = revolved_volume_mm3(np.array([[-1.0, 0], [2, 0], [2, 1]]))
    assert revolved_volume_mm3(slanted) == pytest.approx(5 * np.pi - triangle, rel=1e-12)  # whole less corner
