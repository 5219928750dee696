"""The weld cycle over time: current, stud tip and gas in three strips over one time axis in three scales.

One second of gas and thirty milliseconds of arc cannot share one scale, so the axis is cut twice: seconds,
milliseconds, seconds. The ramps of current and movement are drawn as straight lines; real ones are not.
"""

from dataclasses import dataclass

from drawings.marks import area, arrow, bare_axes, box, dimension, leader, line, number, write
from drawings.picture import picture_of
from drawings.scales import ROUND_CLOSE, round_up, steps
from drawings.style import (
    AMBER,
    BOLD,
    GREY,
    HEADING_PT,
    LINE,
    MID_GREY,
    PALE_AMBER,
    PALE_SLATE,
    SLATE,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.checks import require_between

WIDTH_IN, HEIGHT_IN = 9.0, 6.2
BEFORE = (1.4, 3.1)
WELD = (3.3, 6.8)
AFTER = (7.05, 8.75)
CURRENT_ROW = (4.25, 5.55)
STUD_ROW = (2.1, 3.95)
GAS_ROW = (0.98, 1.36)
AXIS_Y = 0.78
# Share of the milliseconds strip kept for lifting off before the main current starts; schematic.
LIFT_SHARE = 0.15


@dataclass(frozen=True, kw_only=True)
class _Times:
    """The broken time axis: where a time lies across the sheet, in inches."""

    weld_end_ms: float
    gas_end_s: float

    def weld(self, time_ms):
        """Place a time counted from the start of the main current."""
        zero = WELD[0] + LIFT_SHARE * (WELD[1] - WELD[0])
        return zero + time_ms / self.weld_end_ms * (WELD[1] - zero)

    def before(self, time_s):
        """Place a time counted backwards from the moment the stud lifts."""
        return BEFORE[1] - time_s / self.gas_end_s * (BEFORE[1] - BEFORE[0])

    def after(self, time_s):
        """Place a time counted from the end of the milliseconds strip."""
        return AFTER[0] + time_s / self.gas_end_s * (AFTER[1] - AFTER[0])


def weld_cycle(*, current_a, time_ms, lift_mm, protrusion_mm, pre_flow_s, post_flow_s):
    """Draw one stud weld over time: current, place of the stud tip, gas.

    Parameters
    ----------
    current_a : float
        Main current, 50 A to 3000 A [A]
    time_ms : float
        Time for which the main current flows, 1 ms to 2000 ms [ms]
    lift_mm : float
        Height of the stud tip over the rivet head while the arc burns, 0.2 mm to 8 mm [mm]
    protrusion_mm : float
        Length by which the stud stands out of the nose before the gun is pressed on, 0.2 mm to 8 mm [mm]
    pre_flow_s : float
        Time for which gas flows before the stud lifts; 0 where no gas is used, up to 10 s [s]
    post_flow_s : float
        Time for which gas flows after the weld, 0 s to 10 s [s]

    Returns
    -------
    picture : Picture
        Three strips over a time axis in three scales [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    The order touch, lift, arc, plunge is that of drawn arc stud welding (ISO 14555, from memory). The
    duration of the lifting, the pilot current and the depth of the plunge are schematic.

    Examples
    --------
    >>> picture = weld_cycle(
    ...     current_a=600, time_ms=30, lift_mm=1, protrusion_mm=2, pre_flow_s=1, post_flow_s=0.5)
    >>> picture.alt[:10]
    'Weld cycle'
    """
    current_a = require_between("current", current_a, 50, 3000, unit="A")
    time_ms = require_between("weld time", time_ms, 1, 2000, unit="ms")
    lift_mm = require_between("lift", lift_mm, 0.2, 8, unit="mm")
    protrusion_mm = require_between("protrusion", protrusion_mm, 0.2, 8, unit="mm")
    pre_flow_s = require_between("pre-flow", pre_flow_s, 0, 10, unit="s")
    post_flow_s = require_between("post-flow", post_flow_s, 0, 10, unit="s")
    times = _Times(
        weld_end_ms=round_up(time_ms * 1.25, among=ROUND_CLOSE),
        gas_end_s=max(1.0, round_up(max(pre_flow_s, post_flow_s, 1.0))),
    )
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = bare_axes(figure, width=(0, WIDTH_IN), height=(0, HEIGHT_IN))
        _stages(axes, times, time_ms)
        _current(axes, times, current_a, time_ms)
        _stud_tip(axes, times, time_ms, lift_mm, protrusion_mm)
        _gas(axes, times, pre_flow_s, post_flow_s)
        _time_axis(axes, times)
        return picture_of(figure, _words(current_a, time_ms, lift_mm, protrusion_mm, pre_flow_s, post_flow_s))


def _words(current_a, time_ms, lift_mm, protrusion_mm, pre_flow_s, post_flow_s):
    """Tell the cycle in sentences."""
    if pre_flow_s or post_flow_s:
        gas = (
            f"Gas flows for {number(pre_flow_s)} s before the stud lifts, during the arc, "
            f"and for {number(post_flow_s)} s after it."
        )
    else:
        gas = "No gas is used."
    return (
        "Weld cycle over time, in three strips. "
        f"The stud touches the rivet head, the spring loaded by {number(protrusion_mm)} mm of protrusion. "
        f"It lifts {number(lift_mm)} mm under a small pilot arc. "
        f"The main current of {number(current_a)} A then burns for {number(time_ms)} ms. "
        "The stud plunges back into the melt and the current ends. "
        f"{gas} "
        "The gas strip counts in seconds, the weld strip in milliseconds."
    )


def _stages(axes, times, time_ms):
    """Shade the arc across all strips and name the stages along the top."""
    start, end = times.weld(0), times.weld(time_ms)
    area(axes, box(start, AXIS_Y, end - start, 4.97), fill=PALE_AMBER, order=1)
    top = HEIGHT_IN - 0.25
    write(axes, sum(BEFORE) / 2, top, "touch", size=HEADING_PT, weight="bold")
    write(axes, start - 0.08, top, "lift", size=HEADING_PT, weight="bold", across="right")
    write(axes, (start + end) / 2, top, "arc", size=HEADING_PT, weight="bold", colour=TEXT_AMBER)
    write(axes, end + 0.05, top, "plunge", size=HEADING_PT, weight="bold", across="left")
    write(axes, sum(AFTER) / 2 + 0.1, top, "hold", size=HEADING_PT, weight="bold")


def _row_name(axes, row, name, unit):
    """Write the name of a strip at its left."""
    middle = sum(row) / 2
    write(axes, 0.12, middle + 0.13, name, across="left", weight="bold")
    write(axes, 0.12, middle - 0.13, unit, across="left", colour=TEXT_GREY)


def _base_line(axes, y):
    """Draw the zero line of a strip, open where the time axis is cut."""
    for left, right in (BEFORE, WELD, AFTER):
        line(axes, [(left, y), (right, y)], colour=MID_GREY, width=THIN, order=2)


def _current(axes, times, current_a, time_ms):
    """Draw the current: nothing, a small pilot arc, the main current, nothing."""
    low, high = CURRENT_ROW
    top = low + current_a / max(1000.0, round_up(current_a)) * (high - low) * 0.92
    top = max(top, low + 0.3)
    pilot = low + 0.07
    start, end = times.weld(0), times.weld(time_ms)
    _row_name(axes, CURRENT_ROW, "Current", "in A")
    _base_line(axes, low)
    xs = [BEFORE[0], WELD[0] + 0.1, WELD[0] + 0.1, start, start, end, end, AFTER[1]]
    ys = [low, low, pilot, pilot, top, top, low, low]
    area(axes, box(start, low, end - start, top - low), edge=AMBER, hatch="///", order=3)
    line(axes, list(zip(xs, ys, strict=True)), colour=AMBER, width=BOLD, order=5, solid_joinstyle="miter")
    leader(
        axes, "small pilot\narc first", at=(BEFORE[1] - 0.1, 4.85), to=(WELD[0] + 0.3, pilot), across="right"
    )
    write(
        axes,
        end + 0.12,
        max(top - 0.12, low + 0.25),
        f"{number(current_a)} A",
        across="left",
        size=HEADING_PT,
        weight="bold",
        colour=TEXT_AMBER,
    )
    _duration(axes, start, end, top + 0.14, time_ms)


def _duration(axes, start, end, y, time_ms):
    """Dimension the weld time above the main current."""
    arrow(axes, (start, y), (end, y), colour=TEXT_AMBER, width=1.0, head=9, style="<|-|>")
    write(
        axes,
        (start + end) / 2,
        y + 0.15,
        f"{number(time_ms)} ms",
        size=HEADING_PT,
        weight="bold",
        colour=TEXT_AMBER,
    )


def _stud_tip(axes, times, time_ms, lift_mm, protrusion_mm):
    """Draw the height of the stud tip over the rivet head."""
    low, high = STUD_ROW
    inch_per_mm = (high - low) / (max(lift_mm, 1.0) + max(protrusion_mm, 1.0)) / 1.25
    zero = low + max(protrusion_mm, 1.0) * inch_per_mm + 0.1
    up = zero + lift_mm * inch_per_mm
    down = zero - min(0.3 * protrusion_mm, 0.5) * inch_per_mm
    start, end = times.weld(0), times.weld(time_ms)
    fall = min(0.25, 0.3 * (end - start))
    _row_name(axes, STUD_ROW, "Stud tip", "height in mm")
    _base_line(axes, zero)
    xs = [BEFORE[0], WELD[0] + 0.1, start, end - fall, end, AFTER[1]]
    line(axes, list(zip(xs, [zero, zero, up, up, down, down], strict=True)), width=BOLD, order=6)
    write(axes, BEFORE[0], zero + 0.17, "on the head", across="left")
    write(axes, AFTER[0], zero + 0.17, "pressed in", across="left")
    x, text = start + 0.15, f"lift {number(lift_mm)} mm"
    dimension(axes, (x, zero), (x, up), text, text_at=(x + 0.1, (zero + up) / 2 - 0.02))
    _spring_travel(axes, zero, zero - protrusion_mm * inch_per_mm, protrusion_mm)


def _spring_travel(axes, zero, reach, protrusion_mm):
    """Draw the travel that the pressed-on gun holds ready: the protrusion."""
    x, text = BEFORE[0] + 0.15, f"protrusion {number(protrusion_mm)} mm"
    line(axes, [(BEFORE[0], reach), (AFTER[1], reach)], colour=GREY, width=THIN, dashes=(5, 4), order=4)
    write(axes, AFTER[0], reach - 0.17, "reach of the spring", across="left", colour=TEXT_GREY)
    dimension(axes, (x, zero), (x, reach), text, text_at=(x + 0.1, (zero + reach) / 2))


def _gas(axes, times, pre_flow_s, post_flow_s):
    """Draw when the gas is on."""
    low, high = GAS_ROW
    _row_name(axes, GAS_ROW, "Gas", "on or off")
    if not pre_flow_s and not post_flow_s:
        _base_line(axes, low)
        write(axes, sum(WELD) / 2, (low + high) / 2, "no gas")
        return
    left, right = times.before(pre_flow_s), times.after(post_flow_s)
    area(axes, box(left, low, right - left, high - low), fill=PALE_SLATE, edge=SLATE, width=LINE, order=4)
    write(axes, sum(WELD) / 2, (low + high) / 2, "gas on")
    above = high + 0.19
    write(axes, BEFORE[0], above, f"{number(pre_flow_s)} s before", across="left")
    write(axes, AFTER[0], above, f"{number(post_flow_s)} s after", across="left")


def _time_axis(axes, times):
    """Draw the time axis in its three scales with a cut between them."""
    for left, right in (BEFORE, WELD, AFTER):
        line(axes, [(left, AXIS_Y), (right, AXIS_Y)], colour=GREY, width=1.0, order=8)
    for cut in ((BEFORE[1] + WELD[0]) / 2, (WELD[1] + AFTER[0]) / 2):
        for shift in (-0.04, 0.04):
            slant = [(cut + shift - 0.04, AXIS_Y - 0.1), (cut + shift + 0.04, AXIS_Y + 0.1)]
            line(axes, slant, colour=GREY, width=1.0, order=8)
    for time_s in steps(times.gas_end_s, most=2):
        _tick(axes, times.before(time_s), number(-time_s))
        _tick(axes, times.after(time_s), number(time_s))
    # The last mark of the weld strip would run into the 0 of the next one.
    for mark_ms in steps(times.weld_end_ms):
        if mark_ms < 0.95 * times.weld_end_ms:
            _tick(axes, times.weld(mark_ms), number(mark_ms))
    for (left, right), unit in ((BEFORE, "seconds"), (WELD, "milliseconds"), (AFTER, "seconds")):
        write(axes, (left + right) / 2, 0.2, unit, colour=TEXT_GREY)


def _tick(axes, x, text):
    """Mark and number one time on the axis."""
    line(axes, [(x, AXIS_Y), (x, AXIS_Y - 0.07)], colour=GREY, width=1.0, order=8)
    write(axes, x, AXIS_Y - 0.22, text)
