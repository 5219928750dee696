"""Charts of the shielding gas: what one stud uses, and what it does to the air of a closed room."""

import numpy as np

from drawings.charts import chosen_point, forbidden, heading, limit_line, plane
from drawings.marks import area, bare_axes, box, line, number, write
from drawings.picture import picture_of
from drawings.scales import ROUND_CLOSE, round_up
from drawings.style import (
    AMBER,
    BOLD,
    GREY,
    HEADING_PT,
    LINE,
    MID_GREY,
    PALE_AMBER,
    PALE_SLATE,
    PAPER,
    SLATE,
    TEXT,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.checks import require_between
from secondplate.gas import OXYGEN_LIMIT_PERCENT, gas_per_stud_l, oxygen_percent, time_to_oxygen_limit_min


def gas_use(*, flow_l_min, pre_flow_s, weld_time_ms, post_flow_s):
    """Draw how much gas one stud uses before, during and after the arc.

    Parameters
    ----------
    flow_l_min : float
        Gas flow, 1 L/min to 40 L/min [L/min]
    pre_flow_s : float
        Time before the arc, 0 s to 10 s [s]
    weld_time_ms : float
        Time of the arc, 1 ms to 2000 ms [ms]
    post_flow_s : float
        Time after the arc, 0 s to 10 s [s]

    Returns
    -------
    picture : Picture
        Three bars to one scale and their sum [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Volumes from ``secondplate.gas.gas_per_stud_l``.

    Examples
    --------
    >>> "0.228 L" in gas_use(flow_l_min=9, pre_flow_s=1, weld_time_ms=20, post_flow_s=0.5).alt
    True
    """
    flow_l_min = require_between("flow", flow_l_min, 1, 40, unit="L/min")
    pre_flow_s = require_between("pre-flow", pre_flow_s, 0, 10, unit="s")
    weld_time_ms = require_between("weld time", weld_time_ms, 1, 2000, unit="ms")
    post_flow_s = require_between("post-flow", post_flow_s, 0, 10, unit="s")
    stages = (
        ("before the arc", f"{number(pre_flow_s)} s", (pre_flow_s, 0, 0)),
        ("the arc", f"{number(weld_time_ms)} ms", (0, weld_time_ms, 0)),
        ("after the arc", f"{number(post_flow_s)} s", (0, 0, post_flow_s)),
        ("one stud", "all together", (pre_flow_s, weld_time_ms, post_flow_s)),
    )
    used_l = [
        gas_per_stud_l(flow_l_min=flow_l_min, pre_flow_s=pre, weld_time_ms=weld, post_flow_s=post)
        for _, _, (pre, weld, post) in stages
    ]
    with sheet_of_paper(width_in=8.2, height_in=3.5) as figure:
        axes = bare_axes(figure, width=(0, 8.2), height=(0, 3.5))
        for row, ((name, time, _), litres) in enumerate(zip(stages, used_l, strict=True)):
            _draw_bar(axes, 2.7 - 0.72 * row, name, time, litres, share=litres / used_l[-1], total=row == 3)
        write(
            axes,
            0.12,
            3.26,
            f"gas at {number(flow_l_min)} L/min",
            across="left",
            size=HEADING_PT,
            weight="bold",
        )
        return picture_of(figure, _use_words(flow_l_min, stages, used_l))


def _litres(value):
    """Write litres so that the arc's small share still shows."""
    return f"{number(value, digits=3 if value >= 0.01 else 4)} L"


def _use_words(flow_l_min, stages, used_l):
    """Tell the bars in sentences."""
    parts = ", ".join(
        f"{_litres(litres)} {name if name != 'the arc' else 'during the arc'} ({time})"
        for (name, time, _), litres in list(zip(stages, used_l, strict=True))[:3]
    )
    return f"Gas used by one stud at {number(flow_l_min)} L/min: {parts}; {_litres(used_l[3])} in all."


def _draw_bar(axes, y, name, time, litres, *, share, total):
    """Draw one bar with its name at the left and its litres at its end."""
    left, longest, height = 2.05, 4.9, 0.36
    length = max(share * longest, 0.02)
    if total:
        line(axes, [(0.12, y + 0.4), (8.05, y + 0.4)], colour=MID_GREY, width=THIN)
    write(axes, 0.12, y + 0.11, name, across="left", weight="bold")
    write(axes, 0.12, y - 0.13, time, across="left", colour=TEXT_GREY)
    area(axes, box(left, y - height / 2, length, height), fill=PALE_AMBER if total else PALE_SLATE, order=3)
    area(
        axes,
        box(left, y - height / 2, length, height),
        edge=AMBER if total else SLATE,
        width=LINE,
        order=4,
        hatch="\\\\" if total else None,
    )
    write(
        axes,
        left + length + 0.12,
        y,
        _litres(litres),
        across="left",
        weight="bold",
        colour=TEXT_AMBER if total else TEXT,
    )


def oxygen_in_room(*, room_volume_m3, flow_l_min, fresh_air_l_min=0.0):
    """Draw the oxygen of a room while shielding gas flows into it, closed and with fresh air.

    Parameters
    ----------
    room_volume_m3 : float
        Free volume of the room, 0.05 m3 to 1000 m3 [m3]
    flow_l_min : float
        Gas flow, 1 L/min to 40 L/min [L/min]
    fresh_air_l_min : float
        Fresh air, 0 L/min to 5000 L/min; 0 draws the closed room alone [L/min]

    Returns
    -------
    picture : Picture
        Oxygen against time with the limit [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Oxygen from ``secondplate.gas``: a well-mixed room. Argon sinks, so low places are worse.

    Examples
    --------
    >>> "19.5 %" in oxygen_in_room(room_volume_m3=50, flow_l_min=10).alt
    True
    """
    room_volume_m3 = require_between("room volume", room_volume_m3, 0.05, 1000, unit="m3")
    flow_l_min = require_between("flow", flow_l_min, 1, 40, unit="L/min")
    fresh_air_l_min = require_between("fresh air", fresh_air_l_min, 0, 5000, unit="L/min")
    limit_min = time_to_oxygen_limit_min(room_volume_m3=room_volume_m3, flow_l_min=flow_l_min)
    per, unit = _time_unit(limit_min)
    room = {"room_volume_m3": room_volume_m3, "flow_l_min": flow_l_min}
    with sheet_of_paper(width_in=8.6, height_in=4.9) as figure:
        last = round_up(1.5 * limit_min / per, among=ROUND_CLOSE)
        axes = plane(
            figure,
            (0.08, 0.14, 0.88, 0.76),
            across=f"time with the gas open in {unit}",
            up="oxygen in %",
            wide=(0, last),
            high=(18, 21.2),
        )
        forbidden(
            axes,
            18,
            OXYGEN_LIMIT_PERCENT,
            f"below {number(OXYGEN_LIMIT_PERCENT)} %: hazardous",
            text_at=(0.02 * last, 18.3),
            across="left",
        )
        limit_line(axes, OXYGEN_LIMIT_PERCENT)
        times = np.linspace(0, last, 80)
        _draw_oxygen(axes, times, oxygen_percent(time_min=times * per, **room), fresh=False)
        if fresh_air_l_min:
            fresh = oxygen_percent(time_min=times * per, fresh_air_l_min=fresh_air_l_min, **room)
            _draw_oxygen(axes, times, fresh, fresh=True)
        chosen_point(axes, limit_min / per, OXYGEN_LIMIT_PERCENT, across=False)
        heading(
            axes,
            f"{number(room_volume_m3)} m\N{SUPERSCRIPT THREE}, {number(flow_l_min)} L/min: "
            f"{number(limit_min / per, digits=1)} {unit} to the limit",
        )
        return picture_of(figure, _oxygen_words(limit_min / per, unit, last, per, fresh_air_l_min, **room))


def _time_unit(limit_min):
    """Return minutes in the unit of the time axis, and its name."""
    return (60, "h") if limit_min > 120 else (1, "min")


def _oxygen_words(limit, unit, last, per, fresh_air_l_min, *, room_volume_m3, flow_l_min):
    """Tell the chart in sentences."""
    told = (
        f"Oxygen in a room of {number(room_volume_m3)} m3 while {number(flow_l_min)} L/min of gas flow in, well mixed. "
        f"Closed, it falls from 20.95 % to the limit of {number(OXYGEN_LIMIT_PERCENT)} % in {number(limit, digits=1)} {unit}. "
    )
    if fresh_air_l_min:
        end = oxygen_percent(
            room_volume_m3=room_volume_m3,
            flow_l_min=flow_l_min,
            time_min=last * per,
            fresh_air_l_min=fresh_air_l_min,
        )
        told += (
            f"With {number(fresh_air_l_min)} L/min of fresh air it stands at {number(end)} % after "
            f"{number(last)} {unit}. "
        )
    return told + "Argon sinks, so low places are worse than the mixed room."


def _draw_oxygen(axes, times, oxygen, *, fresh):
    """Draw one curve as far as it lies in the plane, and name it."""
    seen = oxygen >= axes.get_ylim()[0]
    curve = np.column_stack([times, oxygen])[seen]
    line(axes, curve, colour=GREY if fresh else SLATE, width=BOLD, dashes=(4, 1.5) if fresh else None)
    x, y = curve[int(len(curve) * (0.6 if fresh else 0.22))]
    ground = {"facecolor": PAPER, "edgecolor": "none", "pad": 1}
    write(
        axes,
        x,
        y + 0.28,
        "fresh air let in" if fresh else "closed room",
        across="left",
        weight="bold",
        colour=TEXT_GREY if fresh else TEXT,
        bbox=ground,
    )
