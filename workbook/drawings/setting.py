"""Setting a self-piercing rivet: the tools and the joint at four stages, or at one place of the stroke."""

from drawings.marks import bare_axes, write
from drawings.picture import picture_of
from drawings.section_parts import draw_section, draw_tools
from drawings.style import TEXT_GREY, sheet_of_paper
from secondplate.checks import require_between
from secondplate.rivet_setting import SETTING_STAGES, setting_stage
from secondplate.section import setting_section, stage_sections, tool_outlines, usual_parameters

# Edges of one picture in millimetres; punch and die are cut off there.
WIDE_MM, HIGH_MM = (-8.2, 8.2), (-8.2, 7.6)
INCH_PER_MM, STRIP_INCH_PER_MM = 0.3, 0.19
TEXT_IN = 0.5


def setting_at(*, stroke_share):
    """Draw tools and joint at one place of the stroke.

    Parameters
    ----------
    stroke_share : float
        Share of the stroke, 0 at the first touch to 1 with the head seated [-]

    Returns
    -------
    picture : Picture
        The section with punch, nose and die [-]

    Raises
    ------
    ValueError
        If the share lies outside 0 to 1.

    Notes
    -----
    Outlines from ``secondplate.section``: volumes are kept, the way between the stages is drawn freely.

    Examples
    --------
    >>> "pierce" in setting_at(stroke_share=0.3).alt
    True
    """
    share = require_between("share of the stroke", stroke_share, 0, 1, unit="")
    stage, parameters = setting_stage(share), usual_parameters()
    width, height = (INCH_PER_MM * (edges[1] - edges[0]) for edges in (WIDE_MM, HIGH_MM))
    with sheet_of_paper(width_in=width, height_in=height) as figure:
        axes = bare_axes(figure, width=WIDE_MM, height=HIGH_MM)
        _draw(axes, parameters, setting_section(parameters, share))
        words = (
            f"A rivet being set, at {100 * share:.0f} % of the stroke, stage {stage.name}: {_happens(stage)}."
        )
        return picture_of(figure, words)


def setting_stages():
    """Draw tools and joint at the four stages, side by side.

    Returns
    -------
    picture : Picture
        Four sections, each with the name of its stage [-]

    Notes
    -----
    Outlines from ``secondplate.section``, names from ``secondplate.rivet_setting``.

    Examples
    --------
    >>> "flare" in setting_stages().alt
    True
    """
    parameters = usual_parameters()
    sections = stage_sections(parameters)
    each, tall = (STRIP_INCH_PER_MM * (edges[1] - edges[0]) for edges in (WIDE_MM, HIGH_MM))
    height = tall + TEXT_IN
    with sheet_of_paper(width_in=each * len(sections), height_in=height) as figure:
        for place, stage in enumerate(SETTING_STAGES):
            left, share = place / len(sections), 1 / len(sections)
            axes = bare_axes(
                figure, (left, TEXT_IN / height, share, tall / height), width=WIDE_MM, height=HIGH_MM
            )
            _draw(axes, parameters, sections[stage.name])
            middle = left + share / 2
            name = f"{place + 1}  {stage.name}"
            figure.text(middle, 0.24 / height, name, ha="center", va="center", fontweight="bold")
        told = " ".join(
            f"{place}, {stage.name}: {_happens(stage)}."
            for place, stage in enumerate(SETTING_STAGES, start=1)
        )
        return picture_of(figure, f"A rivet being set, four stages from left to right. {told}")


def _draw(axes, parameters, section):
    """Draw the joint and the tools round it."""
    draw_tools(axes, tool_outlines(parameters, section))
    draw_section(axes, section.outlines)
    for text, at in (("punch", (0, 6.6)), ("die", (0, -7.6))):
        write(axes, *at, text, colour=TEXT_GREY)


def _happens(stage):
    """Return what happens in a stage, as part of a sentence."""
    return stage.happens[0].lower() + stage.happens[1:].rstrip(".")
