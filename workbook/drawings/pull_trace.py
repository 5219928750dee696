"""Force of the puller over its stroke while one welded stud is pulled, with its peaks and its break."""

import numpy as np

from drawings.charts import plane
from drawings.marks import dot, line, number, write
from drawings.picture import picture_of
from drawings.scales import steps
from drawings.style import AMBER, PAPER, TEXT_AMBER, TEXT_GREY, sheet_of_paper
from secondplate.bench import TRACE_PLACES, force_trace

WIDTH_IN, HEIGHT_IN = 7.2, 3.9
PLACE = (0.1, 0.2, 0.87, 0.66)
NAMED = {
    "first peak": ("tail leaves its cup", "first peak"),
    "second peak": ("tail opens the top plate", "second peak"),
}
_PATCH = {"facecolor": PAPER, "edgecolor": "none", "pad": 1.5}


def pull_trace(pulled, site):
    """Draw the force over the stroke of one pull.

    Parameters
    ----------
    pulled : secondplate.bench.StudPull
        One pull, no columns [-]
    site : secondplate.bench.PullSite
        Joint and puller [-]

    Returns
    -------
    picture : Picture
        The trace: peaks named, a break marked by a cross and told in words [-]

    Raises
    ------
    ValueError
        If the pull is a column of pulls.

    Notes
    -----
    Trace from ``secondplate.bench.force_trace``; nobody has measured one of a set rivet.

    Examples
    --------
    >>> from secondplate.bench import chart_settings, draw_job, draw_site, pull_studs, weld
    >>> day, settings = b"a day at the shop", chart_settings(stud_diameter_mm=6)
    >>> job, site = draw_job(day, machine="weak"), draw_site(day)
    >>> outcome = weld(settings, job, seed=day, number=1)
    >>> "weld peeled" in pull_trace(pull_studs(outcome, settings, job, site, seed=day, number=1), site).alt
    True
    """
    if np.ndim(pulled.force_n):
        message = f"pull to draw must be one, got {np.size(pulled.force_n)}"
        raise ValueError(message)
    trace = force_trace(pulled, site)
    stroke, force = trace.stroke_mm, trace.force_n / 1000
    top = 1.3 * max(float(force.max()), 0.1)
    far = 1.04 * max(float(stroke[-1]), 2.0)
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = plane(
            figure,
            PLACE,
            across="stroke of the puller in mm",
            up="force in kN",
            wide=(0, far),
            high=(0, top),
            levels=steps(top),
            guides=True,
        )
        line(axes, np.stack([stroke, force], axis=1), width=2.2, order=6)
        bite = float(stroke[TRACE_PLACES.index("jaws bite")])
        write(axes, bite / 2, 0.06 * top, "jaws bite", colour=TEXT_GREY)
        reached = [name for name in NAMED if _reached(trace, name)]
        for name in reached:
            _name_peak(axes, stroke, force, name, far)
        if trace.broke_at:
            _mark_break(axes, trace, pulled.result, far)
        return picture_of(figure, _words(pulled, trace, reached))


def _reached(trace, name):
    """Tell whether a pull got over a peak."""
    return not trace.broke_at or TRACE_PLACES.index(name) < TRACE_PLACES.index(trace.broke_at)


def _name_peak(axes, stroke, force, name, far):
    """Name a peak with its force, beside it on the right."""
    at = TRACE_PLACES.index(name)
    what, title = NAMED[name]
    dot(axes, stroke[at], force[at], size=7)
    late = stroke[at] > 0.55 * far
    x, lift = (far, 0.14) if late else (stroke[at] + 0.02 * far, 0.11)
    lift, across = lift * axes.get_ylim()[1], "right" if late else "left"
    write(axes, x, force[at] + lift, title, across=across, weight="bold", bbox=_PATCH)
    below = force[at] + lift - 0.078 * axes.get_ylim()[1]
    write(axes, x, below, what, across=across, colour=TEXT_GREY, bbox=_PATCH)


def _mark_break(axes, trace, result, far):
    """Mark the break with a cross and say what gave."""
    at = TRACE_PLACES.index(trace.broke_at)
    x, y = float(trace.stroke_mm[at]), float(trace.force_n[at]) / 1000
    dot(axes, x, y, colour=AMBER, size=12, edge=AMBER, edge_width=2.6, marker="x", order=18)
    early = x < 0.55 * far
    to_x, to_y = (x + 0.03 * far, y) if early else (far, y + 0.1 * axes.get_ylim()[1])
    write(
        axes,
        to_x,
        to_y,
        f"{result} at {number(y)} kN",
        across="left" if early else "right",
        colour=TEXT_AMBER,
        weight="bold",
        bbox=_PATCH,
    )
    line(axes, [(x, y), (x, 0)], colour=AMBER, width=2.2, order=7)


def _words(pulled, trace, reached):
    """Tell the trace in sentences."""
    told = []
    for name in reached:
        at = TRACE_PLACES.index(name)
        kilonewtons, stroke = number(trace.force_n[at] / 1000), number(trace.stroke_mm[at])
        told.append(f"{NAMED[name][1].capitalize()} {kilonewtons} kN at {stroke} mm: {NAMED[name][0]}.")
    if trace.broke_at:
        at = TRACE_PLACES.index(trace.broke_at)
        end = f"{pulled.result.capitalize()} at {number(trace.force_n[at] / 1000)} kN and "
        end += f"{number(trace.stroke_mm[at])} mm, before the {trace.broke_at}; the force falls to nothing."
    else:
        crushed = number(trace.force_n[TRACE_PLACES.index("collar crushed half way")] / 1000)
        end = f"Between the peaks the collar crushes and the force falls to {crushed} kN and below. "
        end += f"The rivet is out at {number(trace.stroke_mm[-1])} mm: {_result_words(pulled)}."
    return " ".join(["Force of the puller over its stroke, as computed and not measured.", *told, end])


def _result_words(pulled):
    """Say what the pull left behind."""
    harms = [
        word
        for word, shows in (
            ("top plate dished", pulled.top_plate_dished),
            ("second plate torn", pulled.second_plate_torn),
        )
        if shows
    ]
    return " and ".join(harms) or "no harm is seen"
