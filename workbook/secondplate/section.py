"""Sections of set rivets: invent or build one, measure it, judge it, and know its faults.

Everything that a page needs of a section is found here; the parts are in the modules beside it.
"""

from secondplate.section_faults import FAULT_NAMES, FAULTS, Fault, fault
from secondplate.section_joint import PARTS, Section, build_section, unset_rivet_outline
from secondplate.section_limits import VERDICTS, WORDS, Judgement, Limit, judge, typical_limits
from secondplate.section_measure import MEASURES, Measured, measure
from secondplate.section_outlines import crossing_mm, section_of_outlines
from secondplate.section_parameters import SectionParameters, usual_parameters
from secondplate.section_random import random_section, random_sections
from secondplate.section_stages import STAGE_STROKES, setting_section, stage_sections, tool_outlines
from secondplate.section_volume import revolved_volume_mm3

__all__ = [
    "FAULTS",
    "FAULT_NAMES",
    "MEASURES",
    "PARTS",
    "STAGE_STROKES",
    "VERDICTS",
    "WORDS",
    "Fault",
    "Judgement",
    "Limit",
    "Measured",
    "Section",
    "SectionParameters",
    "build_section",
    "crossing_mm",
    "fault",
    "judge",
    "measure",
    "random_section",
    "random_sections",
    "revolved_volume_mm3",
    "section_of_outlines",
    "setting_section",
    "stage_sections",
    "tool_outlines",
    "typical_limits",
    "unset_rivet_outline",
    "usual_parameters",
]
