"""Sections along the stroke: no metal is lost on the way, and the end is the set joint."""

import numpy as np
import pytest

from secondplate.rivet import Sheet, Stack
from secondplate.rivet_setting import SETTING_STAGES
from secondplate.section import (
    STAGE_STROKES,
    build_section,
    random_section,
    revolved_volume_mm3,
    setting_section,
    stage_sections,
    tool_outlines,
    unset_rivet_outline,
    usual_parameters,
)
from tests.outline_checks import depth_along_lines, proper_crossings

STROKES = (0.0, 0.06, 0.2, 0.4, 0.5, 0.65, 0.8, 0.95, 1.0)
GLUED = Stack(top=Sheet(thickness_mm=1.5), second=Sheet(thickness_mm=2.0), gap_mm=0.2)


@pytest.mark.parametrize("stroke", STROKES)
def test_metal_is_kept_on_the_way(stroke):
    """Rivet and both plates have their volumes at every stroke."""
    parameters = usual_parameters()
    outlines = setting_section(parameters, stroke).outlines
    plate = np.pi * 7.5**2 * 2.0
    rivet = revolved_volume_mm3(unset_rivet_outline(parameters))
    tops = [name for name in outlines if name.startswith("top plate") or name == "slug"]
    assert revolved_volume_mm3(outlines["rivet"]) == pytest.approx(rivet, rel=1e-9)  # solved exactly
    assert sum(revolved_volume_mm3(outlines[name]) for name in tops) == pytest.approx(plate, rel=1e-9)
    assert revolved_volume_mm3(outlines["second plate"]) == pytest.approx(plate, rel=1e-9)


@pytest.mark.parametrize("stroke", STROKES)
def test_nothing_overlaps_on_the_way(stroke):
    """Along 200 level lines no two parts overlap by more than rounding."""
    outlines = [outline[None] for outline in setting_section(usual_parameters(), stroke).outlines.values()]
    heights = np.random.default_rng(2).uniform(-6, 8, (1, 200))
    one, more, turned = depth_along_lines(outlines, heights)
    assert more < 1e-9 * one
    assert turned < 1e-9 * one


def test_the_head_comes_down_evenly():
    """The head never rises, and its way is the share of the stroke."""
    faces = [
        setting_section(usual_parameters(), share).outlines["rivet"][:, 1].max()
        for share in (0.3, 0.6, 0.9, 1)
    ]
    assert np.all(np.diff(faces) < 0)
    assert faces[0] - faces[1] == pytest.approx(faces[1] - faces[2], abs=0.3)  # it jumps while it shears


def test_the_end_is_the_set_joint():
    """At the whole stroke the section is that of the parameters, cracks and all."""
    parameters = random_section(b"cracked", fault="crack in button")[0].parameters
    end, built = setting_section(parameters, 1.0), build_section(parameters)
    for part, outline in built.outlines.items():
        np.testing.assert_allclose(
            end.outlines[part], outline, atol=1e-9
        )  # depth of the tail by a difference


def test_one_section_for_each_stage():
    """Each stage is drawn inside its own part of the stroke."""
    assert list(stage_sections(usual_parameters(stack=GLUED))) == [stage.name for stage in SETTING_STAGES]
    for stage in SETTING_STAGES:
        assert stage.stroke_from <= STAGE_STROKES[stage.name] <= stage.stroke_to


@pytest.mark.parametrize("stroke", STROKES)
def test_tools_stay_outside(stroke):
    """Punch, nose and die never cut into plates or rivet."""
    parameters = usual_parameters()
    section = setting_section(parameters, stroke)
    for tool in tool_outlines(parameters, section).values():
        for outline in section.outlines.values():
            assert proper_crossings(tool, outline) == 0


@pytest.mark.parametrize("number", range(12))
def test_stages_of_invented_joints(number):
    """Every stage of a sound invented joint keeps its rivet and has no crossing edges."""
    parameters = random_section(b"stages %d" % number, fault="sound")[0].parameters
    volume = revolved_volume_mm3(unset_rivet_outline(parameters))
    for section in stage_sections(parameters).values():
        assert revolved_volume_mm3(section.outlines["rivet"]) == pytest.approx(volume, rel=1e-9)  # exact
        outlines = list(section.outlines.values())
        for place, outline in enumerate(outlines):
            assert all(proper_crossings(outline, other) == 0 for other in outlines[place:])


def test_bad_input_is_refused():
    """A stroke beyond the whole and a column of joints are refused."""
    with pytest.raises(ValueError, match="share of the stroke must be between 0 and 1, got 1.2"):
        setting_section(usual_parameters(), 1.2)
    column = usual_parameters(interlock_left_mm=np.array([0.4, 0.5]))
    with pytest.raises(ValueError, match="parameters must be those of 1 joint, got 2"):
        setting_section(column, 0.5)
