"""What shielding gas does to the air of a room: oxygen against time, with the limit."""

import numpy as np

from drawings.charts import chosen_point, forbidden, heading, limit_line, plane
from drawings.marks import line, number, write
from drawings.picture import picture_of
from drawings.scales import ROUND_CLOSE, round_up
from drawings.style import BOLD, GREY, PALE_GREY, TEXT_GREY, sheet_of_paper
from secondplate.checks import require_between
from secondplate.gas import (
    OXYGEN_IN_AIR_PERCENT,
    OXYGEN_LIMIT_PERCENT,
    oxygen_percent,
    time_to_oxygen_limit_min,
)

# Lowest oxygen of the chart.
LEAST_PERCENT = 18.0
NAMED = {"weight": "bold"}


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
        axes = _oxygen_plane(figure, last, unit)
        times = np.linspace(0, last, 80)
        _draw_closed(axes, times, oxygen_percent(time_min=times * per, **room))
        if fresh_air_l_min:
            fresh = oxygen_percent(time_min=times * per, fresh_air_l_min=fresh_air_l_min, **room)
            _draw_fresh(axes, times, fresh)
        chosen_point(axes, limit_min / per, OXYGEN_LIMIT_PERCENT, across=False)
        size = f"{number(room_volume_m3)} m\N{SUPERSCRIPT THREE}, {number(flow_l_min)} L/min"
        heading(axes, f"{size}: {number(limit_min / per, digits=1)} {unit} to the limit")
        return picture_of(figure, _words(limit_min / per, unit, last, per, fresh_air_l_min, **room))


def _oxygen_plane(figure, last, unit):
    """Return the axes with the part below the limit hatched."""
    across = f"time with the gas open in {unit}"
    limits = {"wide": (0, last), "high": (LEAST_PERCENT, 21.2), "levels": np.arange(LEAST_PERCENT, 21.1, 0.5)}
    axes = plane(figure, (0.08, 0.14, 0.87, 0.76), across=across, up="oxygen in %", **limits)
    text = f"below {number(OXYGEN_LIMIT_PERCENT)} %: hazardous"
    place = (0.02 * last, LEAST_PERCENT + 0.3)
    forbidden(axes, LEAST_PERCENT, OXYGEN_LIMIT_PERCENT, text, text_at=place, across="left")
    limit_line(axes, OXYGEN_LIMIT_PERCENT)
    return axes


def _time_unit(limit_min):
    """Return minutes in the unit of the time axis, and its name."""
    return (60, "h") if limit_min > 120 else (1, "min")


def _words(limit, unit, last, per, fresh_air_l_min, *, room_volume_m3, flow_l_min):
    """Tell the chart in sentences."""
    told = (
        f"Oxygen in a well-mixed room of {number(room_volume_m3)} m3 while {number(flow_l_min)} L/min of gas "
        f"flow in. Closed, it falls from {number(OXYGEN_IN_AIR_PERCENT)} % to the limit of "
        f"{number(OXYGEN_LIMIT_PERCENT)} % in {number(limit, digits=1)} {unit}. "
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


def _draw_closed(axes, times, oxygen):
    """Draw the closed room as far as it lies in the plane, and name it."""
    curve = np.column_stack([times, oxygen])[oxygen >= LEAST_PERCENT]
    line(axes, curve, width=BOLD)
    x, y = curve[int(len(curve) * 0.72)]
    ground = {"facecolor": PALE_GREY, "edgecolor": "none", "pad": 2}
    write(axes, x + 0.03 * axes.get_xlim()[1], y + 0.1, "closed room", across="left", bbox=ground, **NAMED)


def _draw_fresh(axes, times, oxygen):
    """Draw the room with fresh air, and name it."""
    line(axes, np.column_stack([times, oxygen]), colour=GREY, width=BOLD, dashes=(4, 1.5))
    x, y = times[48], oxygen[48]
    write(axes, x, y + 0.3, "fresh air let in", across="left", colour=TEXT_GREY, **NAMED)
