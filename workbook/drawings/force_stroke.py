"""Force along the stroke while a rivet is set: the shape of the curve, its four stages, one place on it."""

import numpy as np

from drawings.charts import chosen_point, heading, plane
from drawings.marks import area, line, number, write
from drawings.picture import picture_of
from drawings.style import GREY, MID_SLATE, PALE_AMBER, PAPER, SLATE, TEXT_GREY, sheet_of_paper
from secondplate.checks import require_between, require_choice
from secondplate.rivet_setting import SETTING_STAGES, setting_force_share

WIDTH_IN, HEIGHT_IN = 7.2, 3.9
PLACE = (0.105, 0.2, 0.865, 0.68)
LETTERS = "ABCD"
_STROKE = np.linspace(0, 1, 101)
_PATCH = {"facecolor": PAPER, "edgecolor": "none", "pad": 1.5}
_TALLEST = 112  # per cent: room above the peak for the names


def force_stroke(*, stage="", stroke_share=None, named=True):
    """Draw the force over the stroke as a band, with its stages.

    Parameters
    ----------
    stage : str
        A stage to shade, or empty [-]
    stroke_share : float or None
        A place of the stroke to mark, 0 to 1 [-]
    named : bool
        Stages named; otherwise lettered A to D from left to right [-]

    Returns
    -------
    picture : Picture
        The curve [-]

    Raises
    ------
    ValueError
        If the stage is unknown or the share lies outside 0 to 1.

    Notes
    -----
    Curve and stages from ``secondplate.rivet_setting``: a shape from memory, no measured curve.

    Examples
    --------
    >>> "A from 0 %" in force_stroke(named=False).alt
    True
    """
    names = [each.name for each in SETTING_STAGES]
    if stage:
        require_choice("stage", stage, names)
    texts = names if named else list(LETTERS)
    force = setting_force_share(_STROKE)
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = plane(
            figure,
            PLACE,
            across="stroke in %",
            up="force in % of its peak",
            wide=(0, 100),
            high=(0, _TALLEST),
            levels=(0, 25, 50, 75, 100),
        )
        for each, text in zip(SETTING_STAGES, texts, strict=True):
            _draw_stage(axes, each, text, shaded=each.name == stage)
        low, high = 100 * np.asarray(force.low), 100 * np.asarray(force.high)
        across = 100 * _STROKE
        band = [*zip(across, low, strict=True), *zip(across[::-1], high[::-1], strict=True)]
        area(axes, band, fill=MID_SLATE, order=3)
        line(axes, np.stack([across, 100 * np.asarray(force.best)], axis=1), colour=SLATE, width=2.0, order=5)
        write(axes, 1.5, 88, "shape only, from memory", across="left", colour=TEXT_GREY, bbox=_PATCH)
        if stroke_share is not None:
            _mark(axes, stroke_share)
        return picture_of(figure, _words(texts, stage, stroke_share))


def _draw_stage(axes, stage, text, *, shaded):
    """Draw the end of a stage, and its name at the top."""
    left, right = 100 * stage.stroke_from, 100 * stage.stroke_to
    if shaded:
        corners = [(left, 0), (right, 0), (right, _TALLEST), (left, _TALLEST)]
        area(axes, corners, fill=PALE_AMBER, order=0.5)
    if right < 100:
        line(axes, [(right, 0), (right, _TALLEST)], colour=GREY, width=1.0, dashes=(4, 3), order=2)
    write(axes, (left + right) / 2, 106, text, weight="bold")


def _mark(axes, share):
    """Mark a place of the stroke and say the force there."""
    share = require_between("share of the stroke", share, 0, 1, unit="")
    force = setting_force_share(share)
    chosen_point(axes, 100 * share, 100 * force.best)
    heading(axes, f"{100 * share:.0f} %: {_percent(force)} of the peak")


def _percent(band):
    """Write a band of shares in per cent."""
    return f"{100 * band.low:.0f} to {100 * band.high:.0f} %"


def _words(texts, stage, share):
    """Tell the curve in sentences."""
    told = "; ".join(
        f"{text} from {number(100 * each.stroke_from, digits=0)} % of the stroke, force at its end "
        f"{_percent(each.force_at_end)} of the peak"
        for each, text in zip(SETTING_STAGES, texts, strict=True)
    )
    shaded = f" Shaded: {texts[[each.name for each in SETTING_STAGES].index(stage)]}." if stage else ""
    marked = (
        ""
        if share is None
        else f" Marked: {100 * share:.0f} % of the stroke, {_percent(setting_force_share(share))}."
    )
    return (
        "Force over the stroke while a rivet is set, as a band; the shape is from memory and not measured. "
        f"The force never falls. {told[0].upper()}{told[1:]}.{shaded}{marked}"
    )
