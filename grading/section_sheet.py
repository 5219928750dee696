"""The section-reading sheet: joints to measure with a ruler on paper, and a second page with the answers.

A sheet is made of the class's key and a number: another number gives other joints, the same number the same.
It is for practice on paper and is not marked.
"""

from pathlib import Path
from typing import NamedTuple

from markupsafe import Markup

from grading.html_pages import template
from grading.variants import Draw, seed
from grading.whole_files import write_whole
from secondplate import section

SCALE = 8  # millimetres on paper for one of the joint: three joints stand on a page of A4
BAR_MM = 80  # on paper; whoever prints measures it
ASKED = (
    "interlock_left_mm",
    "interlock_right_mm",
    "remaining_thickness_mm",
    "head_flushness_mm",
    "tail_diameter_mm",
)
# A ruler is read to half a millimetre at both edges: 2 x 0.25 mm / sqrt 3 x sqrt 2 / 8, expanded twice.
UNCERTAINTY_MM = 0.05
FEWEST, MOST = 1, 12
_SOUND = 2  # of each sheet's joints at least
_FAULTS = tuple(name for name in section.FAULT_NAMES if name != "sound")
HALF_WIDTH_MM = 6.4  # of the joint: head, tail and button; further out the plates are only plates
_LIMITS = section.typical_limits()
# Cracks, buckles and gaps are seen and not measured on this sheet.
_UNCERTAINTIES = {
    limit.measure: UNCERTAINTY_MM if limit.measure in ("interlock_mm", *ASKED) else 0.0 for limit in _LIMITS
}


class SheetJoint(NamedTuple):
    """One joint of a sheet."""

    place: int
    section: section.Section
    fault: str

    @property
    def measured(self):
        """Measures by the rules of a laboratory."""
        return section.measure(self.section)

    @property
    def verdict(self):
        """Verdict by the typical limits, with the uncertainty of a ruler where a ruler is used."""
        return section.judge(self.measured, _LIMITS, uncertainty_mm=_UNCERTAINTIES).overall


def sheet_joints(course_key, number, count):
    """Return the joints of one sheet: sound ones and faulty ones in no order, the same whenever asked."""
    draw = Draw(seed(course_key=course_key, learner="", exercise_id="section sheet", round_number=number))
    sound = min(_SOUND, count)
    faults = list(draw.shuffle("faults", _FAULTS))[: count - sound]
    sound = count - len(faults)  # more of them where there are not faults enough
    names = draw.shuffle("places", ["sound"] * sound + faults)
    seeds = [f"section sheet {course_key} {number} {place}".encode() for place in range(count)]
    return [
        SheetJoint(place, section.random_section(each, fault=name)[0], name)
        for place, (each, name) in enumerate(zip(seeds, names, strict=True), start=1)
    ]


def write_section_sheet(out, settings, *, number=1, count=6):
    """Write the sheet and its answers into ``out`` and return both paths."""
    if type(number) is not int or not 1 <= number <= 9999:
        message = f"sheet number must be a whole number from 1 to 9999, got {number!r}"
        raise ValueError(message)
    if type(count) is not int or not FEWEST <= count <= MOST:
        message = f"joints of a sheet must be a whole number from {FEWEST} to {MOST}, got {count!r}"
        raise ValueError(message)
    joints = sheet_joints(settings.course_key, number, count)
    out = Path(out)
    out.mkdir(parents=True, exist_ok=True)
    paths = []
    for name, answers in (
        (f"section_sheet_{number}.html", False),
        (f"section_sheet_{number}_answers.html", True),
    ):
        page = template("section_sheet.html.jinja").render(
            title=settings.title,
            number=number,
            answers=answers,
            scale=SCALE,
            bar_mm=BAR_MM,
            uncertainty_mm=UNCERTAINTY_MM,
            limits=[_limit(limit) for limit in _LIMITS if _UNCERTAINTIES[limit.measure]],
            joints=[_shown(joint, answers=answers) for joint in joints],
        )
        paths.append(out / name)
        write_whole(paths[-1], page.encode())
    return tuple(paths)


def _limit(limit):
    """Tell a limit in words."""
    return f"{section.WORDS[limit.measure]} at {limit.side} {limit.limit_mm:g} mm"


def _shown(joint, *, answers):
    """Return what the page shows of one joint."""
    from drawings import SECTION_FRAME_MM, section_view

    left, right, low, high = SECTION_FRAME_MM
    picture = section_view(joint.section, measured=ASKED[0] if answers else "")
    scale = SCALE / 2 if answers else SCALE
    fault = section.fault(joint.fault)
    values = [f"{float(getattr(joint.measured, name)):.2f}" if answers else "" for name in ASKED]
    return {
        "place": joint.place,
        "svg": Markup(picture.svg[picture.svg.index("<svg") :]),
        "alt": picture.alt,
        "width_mm": 2 * HALF_WIDTH_MM * scale,
        "whole_mm": (right - left) * scale,
        "left_mm": -(left + HALF_WIDTH_MM) * scale,
        "height_mm": (high - low) * scale,
        "rows": list(zip([section.WORDS[name] for name in ASKED], values, strict=True)),
        "verdict": joint.verdict,
        "fault": fault.name,
        "seen": fault.seen,
        "cause": fault.cause,
    }
