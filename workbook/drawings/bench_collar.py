"""A stud just welded on the virtual bench, drawn from what the bench measured; the fault is never named."""

import numpy as np

from drawings.collar_view import FLATTEN, STUD_TOP_MM, CollarShape, ViewSize, draw_collar_view
from drawings.marks import bare_axes, line, number, write
from drawings.picture import picture_of
from drawings.style import GREY, TEXT_GREY, THIN, sheet_of_paper

WIDTH_IN, HEIGHT_IN = 4.8, 4.5
ACROSS_MM, BELOW_MM = 17.0, -4.7
# The missing part of a collar faces the reader, at the right front.
MISSING_AT = np.radians(322)
SPREAD_AT = np.radians((322, 215, 95))
SINKS_MM = 0.5
# Under these a lean, an offset or a difference of length is not to be seen by eye.
EYE_DEG, EYE_MM, EYE_LENGTH_MM = 2.0, 0.4, 0.05


def bench_collar(outcome, settings, job):
    """Draw one welded stud of the bench as it stands there, for the learner to judge.

    Parameters
    ----------
    outcome : secondplate.bench.WeldOutcome
        One weld, with single values [-]
    settings : secondplate.bench.WeldSettings
        What was set for it [-]
    job : secondplate.bench.WeldJob
        Rivet and machine [-]

    Returns
    -------
    picture : Picture
        Stud, collar, rivet head and the mark for the right length, from the front and a little from above [-]

    Raises
    ------
    ValueError
        If the outcome is not of a single weld.

    Notes
    -----
    Sizes of collar, tilt, offset and length are those of the outcome, to one scale; waves, teeth, holes and
    drops are drawn, not computed.

    Examples
    --------
    >>> from secondplate.bench import chart_settings, draw_job, weld
    >>> job, settings = draw_job(b"a day", machine="strong"), chart_settings(stud_diameter_mm=6)
    >>> outcome = weld(settings, job, seed=b"a day", number=1)
    >>> "drops of melt" in bench_collar(outcome, settings, job).alt
    True
    """
    _check_single(outcome)
    shape = collar_shape(outcome, settings, job)
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        left, right = _frame_mm(shape)
        top = BELOW_MM + ACROSS_MM * HEIGHT_IN / WIDTH_IN
        axes = bare_axes(figure, width=(left, right), height=(BELOW_MM, top))
        draw_collar_view(axes, shape)
        middle = shape.offset_mm
        mark = [(middle - 5.2, STUD_TOP_MM), (middle + 5.2, STUD_TOP_MM)]
        line(axes, mark, colour=GREY, width=THIN, dashes=(5, 3), order=0.5)
        _write_beside(axes, outcome, shape, left)
        return picture_of(figure, _words(outcome, shape))


def _check_single(outcome):
    """Refuse the outcome of many welds."""
    if np.ndim(outcome.burn_off_mm):
        message = f"outcome must be of one weld, got {np.size(outcome.burn_off_mm)}"
        raise ValueError(message)


def _frame_mm(shape):
    """Return the left and right end of the sheet; it follows a stud that stands far to the side."""
    reach = shape.offset_mm + shape.size.flange_radius_mm + float(shape.width_mm(np.zeros(1))[0])
    moved = max(0.0, reach - ACROSS_MM / 2 + (2.2 if shape.spatter else 0.4))
    return moved - ACROSS_MM / 2, moved + ACROSS_MM / 2


def collar_shape(outcome, settings, job):
    """Return the shape of the collar that a bench outcome describes.

    Parameters
    ----------
    outcome : secondplate.bench.WeldOutcome
        One weld [-]
    settings : secondplate.bench.WeldSettings
        What was set for it [-]
    job : secondplate.bench.WeldJob
        Rivet and machine [-]

    Returns
    -------
    shape : CollarShape
        What ``collar_view`` draws [-]

    Examples
    --------
    >>> from secondplate.bench import chart_settings, draw_job, weld
    >>> job, settings = draw_job(b"a day", machine="weak"), chart_settings(stud_diameter_mm=6)
    >>> collar_shape(weld(settings, job, seed=b"a day", number=1), settings, job).surface
    'dull'
    """
    seen = set(outcome.defects)
    hung = "hang_up" in seen
    waist = "necked" in seen and not hung
    none = hung or waist
    flange = float(settings.flange_diameter_mm) / 2
    reach = flange + outcome.collar_width_mm
    size = ViewSize(
        plate_radius_mm=8.0,
        head_radius_mm=job.head_diameter_mm / 2,
        flange_radius_mm=flange,
        stud_radius_mm=settings.stud_diameter_mm / 2,
        neck_mm=0.9,
        drops_out_mm=0.0 if none else float(np.clip(reach - 5.0, 0.0, 1.2)),
    )
    around = _around(outcome, seen)
    teeth = outcome.collar_width_mm * (0.75 if "jagged" in seen else 0.0)
    return CollarShape(
        width_mm=_profile(0.0 if none else outcome.collar_width_mm, around, teeth=teeth),
        height_mm=_profile(0.0 if none else outcome.collar_height_mm, around),
        longer_mm=outcome.length_off_mm - (SINKS_MM if outcome.burnt_through else 0.0),
        offset_mm=outcome.offset_mm,
        tilt_deg=outcome.tilt_deg,
        surface=outcome.surface,
        spatter="hot" in seen or outcome.burnt_through,
        gap=hung,
        undercut="one_sided" in seen and not none,
        waist=waist,
        hole=outcome.burnt_through,
        size=size,
    )


def _around(outcome, seen):
    """Return how much of the collar there is round the stud: 1 where it is whole, 0 where it is missing."""
    uneven = 0.3 if "cold" in seen else 0.04
    # A collar that is short of melt breaks in places; one blown or leaning is missing on one side.
    places = SPREAD_AT if not {"one_sided", "partial"} & seen else (MISSING_AT,)
    half = np.radians(outcome.collar_gap_deg) / 2 / len(places)
    heaped = 0.5 if "one_sided" in seen else 0.25 if {"partial", "off_centre"} & seen else 0.0

    def around(angles):
        waves = 1 + uneven * (0.6 * np.cos(5 * angles + 1) + 0.4 * np.cos(8 * angles + 2))
        heap = 1 + heaped * (1 - np.cos(angles - MISSING_AT)) / 2
        there = np.ones_like(angles)
        for place in places if half > 0 else ():
            off = np.abs((angles - place + np.pi) % (2 * np.pi) - np.pi)
            there = there * np.clip((off - half) / 0.35, 0.0, 1.0) ** 0.7
        return waves * heap * there

    return around


def _profile(size_mm, around, *, teeth=0.0):
    """Return a size that follows the collar round the stud, with teeth where it runs out into points."""

    def profile(angles):
        points = teeth * (2 * np.abs((angles * 15 / (2 * np.pi)) % 1 - 0.5) - 0.5) if size_mm > 0 else 0.0
        return np.maximum(size_mm + points, 0.0) * around(angles)

    return profile


def _length_off(outcome):
    """Say where the stud ends against its mark."""
    off = outcome.length_off_mm
    if abs(off) < EYE_LENGTH_MM:
        return "at its mark"
    return f"{number(abs(off), digits=1)} mm {'above' if off > 0 else 'below'} its mark"


def _write_beside(axes, outcome, shape, left):
    """Write the mark's name and what a rule and a caliper give."""
    write(axes, left + 0.3, STUD_TOP_MM + 0.1, "right\nlength", across="left", colour=TEXT_GREY)
    told = f"stud ends {_length_off(outcome)}; burnt off {number(outcome.burn_off_mm, digits=1)} mm"
    low = -FLATTEN * shape.size.plate_radius_mm - 0.95
    write(axes, left + ACROSS_MM / 2, low, told, colour=TEXT_GREY)


def _collar_words(outcome, shape):
    """Tell the collar as the eye sees it."""
    if shape.gap:
        return "There is no collar, and the stud stands clear of the head."
    if shape.waist:
        return (
            "The melt between flange and head is drawn in, narrower at its middle, and stands off the flange."
        )
    if outcome.collar_height_mm < EYE_LENGTH_MM:
        return "There is no collar to be seen; the flange stands on the head."
    size = (
        f"The collar is {number(outcome.collar_height_mm, digits=1)} mm high and reaches "
        f"{number(outcome.collar_width_mm, digits=1)} mm out of the flange"
    )
    gap = outcome.collar_gap_deg
    if gap <= 0:
        closes = "closes all round"
    elif shape.undercut or "partial" in outcome.defects:
        closes = f"is missing over {number(gap, digits=0)} degrees of one side"
    else:
        closes = f"is broken in places, {number(gap, digits=0)} degrees in all"
    uneven = ", uneven" if "cold" in outcome.defects else ""
    points = " and runs out into points" if "jagged" in outcome.defects else ""
    skin = {"bright": "bright", "dull": "dull", "porous": "full of small holes"}[outcome.surface]
    return f"{size}{uneven}; it {closes}{points}; its surface is {skin}."


def _words(outcome, shape):
    """Tell the weld in sentences that say what is seen, never what is wrong."""
    told = ["Stud welded to a rivet head, drawn.", _collar_words(outcome, shape)]
    if shape.undercut:
        told.append("Where it is missing the flange is eaten away.")
    if shape.spatter:
        told.append("Round drops of melt lie about it.")
    if shape.hole:
        told.append(
            "A hole with ragged edges goes through the head at the right front, the stud sags into it."
        )
    burnt = number(outcome.burn_off_mm, digits=1)
    burnt = "nothing has" if burnt == "0" else f"{burnt} mm have"
    told.append(f"The stud ends {_length_off(outcome)}; {burnt} burnt off.")
    if outcome.tilt_deg >= EYE_DEG:
        told.append(f"The stud leans {number(outcome.tilt_deg, digits=0)} degrees to the left.")
    else:
        told.append("The stud stands square.")
    if outcome.offset_mm >= EYE_MM:
        off = number(outcome.offset_mm, digits=1)
        told.append(f"Its axis lies {off} mm to the right of the middle of the head.")
    else:
        told.append("It stands in the middle of the head.")
    return " ".join(told)
