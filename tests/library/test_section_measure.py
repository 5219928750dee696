"""What is measured on outlines is what was constructed, and an honest ruler finds the same."""

import numpy as np
import pytest

from secondplate.section import (
    MEASURES,
    Section,
    build_section,
    measure,
    random_sections,
    section_of_outlines,
    usual_parameters,
)

MICROMETRE = 1e-3


@pytest.fixture(scope="module")
def sections():
    """Ten thousand joints, half of them faulty."""
    return random_sections([b"measured %d" % number for number in range(10_000)])[0]


@pytest.fixture(scope="module")
def measured(sections):
    """Their measures."""
    return measure(sections)


@pytest.mark.parametrize("name", MEASURES)
def test_measured_is_constructed(sections, measured, name):
    """Each measure equals the constructed one to a micrometre."""
    np.testing.assert_allclose(
        getattr(measured, name), sections.constructed[name], rtol=0, atol=MICROMETRE
    )  # the requirement; the difference is rounding


def test_interlock_and_diameters_hang_together(sections, measured):
    """Spread is shank and twice the flare, so at least shank and both interlocks."""
    shank = sections.parameters.rivet.shank_diameter_mm
    both = measured.interlock_left_mm + measured.interlock_right_mm
    assert np.all(measured.tail_diameter_mm >= shank + both - 1e-9)  # flare above the entry holds nothing


def test_smaller_side_and_unevenness(measured):
    """The interlock that counts is the smaller one, and both follow from left and right."""
    low = np.minimum(measured.interlock_left_mm, measured.interlock_right_mm)
    np.testing.assert_array_equal(measured.interlock_mm, low)
    high = np.maximum(measured.interlock_left_mm, measured.interlock_right_mm)
    np.testing.assert_allclose(measured.unevenness_mm, high - low, atol=1e-15)  # rounding


def vertical_thickness(outline, x):
    """Thickness of the lowest metal of an outline at x, by walking up the vertical."""
    begin, end = outline, np.roll(outline, -1, axis=0)
    hit = (begin[:, 0] <= x) != (end[:, 0] <= x)
    (x1, y1), (x2, y2) = begin[hit].T, end[hit].T
    heights = np.sort(y1 + (y2 - y1) * (x - x1) / (x2 - x1))
    return heights[1] - heights[0]


@pytest.mark.parametrize("number", range(0, 10_000, 500))
def test_bottom_thickness_by_a_moving_caliper(sections, measured, number):
    """A caliper moved under tail and bore in 2000 steps finds the least thickness and none below it."""
    one = sections.one(number)
    reach = (
        measured.tail_diameter_mm[number] / 2 - 0.13
    )  # short of the edge, where the leg stands over the metal
    found = min(vertical_thickness(one.outlines["second plate"], x) for x in np.linspace(-reach, reach, 2001))
    assert found >= measured.remaining_thickness_mm[number] - 1e-9  # never less
    assert found == pytest.approx(
        measured.remaining_thickness_mm[number], abs=0.02
    )  # step and slope of the tail


def test_measures_from_the_outlines_alone(sections):
    """Bare outlines, turned the other way round, give the same measures as the built section."""
    one = sections.one(11)
    bare = section_of_outlines({part: outline[::-1] for part, outline in one.outlines.items()})
    assert bare.parameters is None
    for name in MEASURES:
        assert getattr(measure(bare), name) == pytest.approx(
            getattr(measure(one), name), abs=1e-12
        )  # rounding


def test_another_start_of_the_outlines_changes_nothing(sections):
    """Where an outline begins does not matter."""
    one = sections.one(12)
    rolled = {part: np.roll(outline, 17, axis=0) for part, outline in one.outlines.items()}
    for name in MEASURES:
        found = getattr(measure(Section(outlines=rolled, constructed={})), name)
        assert found == pytest.approx(getattr(measure(one), name), abs=1e-12)  # rounding


def test_column_of_one():
    """A column with one joint gives arrays, a single joint gives floats."""
    column = build_section(usual_parameters(interlock_left_mm=np.array([0.4])))
    assert measure(column).interlock_left_mm.shape == (1,)
    assert isinstance(measure(build_section(usual_parameters())).interlock_left_mm, float)


def test_missing_part_is_refused():
    """A section without its second plate is refused."""
    outlines = dict(build_section(usual_parameters()).outlines)
    del outlines["second plate"]
    with pytest.raises(ValueError, match="section must have an outline of the second plate, got rivet, slug"):
        measure(Section(outlines=outlines, constructed={}))


@pytest.mark.parametrize(
    ("part", "sentence"),
    [
        ("top plate left", "rivet and top plate must meet in at least 1 corner, got 0"),
        ("second plate", "rivet and second plate must meet in at least 1 corner at the tail, got 0"),
    ],
)
def test_parts_that_do_not_meet_are_refused(part, sentence):
    """Where the rivet touches no plate there is nothing to measure from."""
    outlines = dict(build_section(usual_parameters()).outlines)
    outlines[part] = outlines[part] - [0.001, 0]
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        measure(Section(outlines=outlines, constructed={}))


def test_underside_that_turns_back_is_refused():
    """An underside that runs back under itself has no thickness along the axis."""
    outlines = dict(build_section(usual_parameters()).outlines)
    second = outlines["second plate"].copy()
    lowest = np.argmin(second[:, 1])
    second[lowest, 0] -= 3
    outlines["second plate"] = second
    with pytest.raises(ValueError, match="underside of the second plate must run from left to right"):
        measure(Section(outlines=outlines, constructed={}))
