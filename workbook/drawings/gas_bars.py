"""How much shielding gas one stud uses before, during and after the arc."""

from drawings.marks import area, bare_axes, box, line, number, write
from drawings.picture import picture_of
from drawings.style import (
    AMBER,
    HEADING_PT,
    LINE,
    MID_GREY,
    PALE_AMBER,
    PALE_SLATE,
    SLATE,
    TEXT,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.checks import require_between
from secondplate.gas import (
    gas_per_stud_l,
)


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
