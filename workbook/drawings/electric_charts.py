"""Charts of the electric side: voltage lost in the cables, and magnetic field against distance."""

import numpy as np

from drawings.charts import chosen_point, forbidden, guide_lines, heading, limit_line, plane
from drawings.marks import line, number, write
from drawings.picture import picture_of
from drawings.scales import ROUND_CLOSE, round_up
from drawings.style import AMBER, BOLD, GREY, LINE, PAPER, SLATE, TEXT, TEXT_AMBER, TEXT_GREY, sheet_of_paper
from secondplate.cautions import cautions_about
from secondplate.checks import require_between
from secondplate.electrics import distance_for_field_m, magnetic_field_ut, pair_field_ut, voltage_drop_v

WIDTH_IN, HEIGHT_IN = 8.6, 4.9
# Highest field of the chart; nearer to the cable the curve runs out of it.
TOP_MT = 1.5
USUAL_AREAS_MM2 = (25, 35, 50, 70)
IMPLANT_FIELD_UT = next(c.value for c in cautions_about("field") if c.name == "field for implants")


def cable_drop(*, current_a, loop_length_m, area_mm2, temperature_c=20.0):
    """Draw the voltage lost in the cables against their length, for usual copper areas and the chosen one.

    Parameters
    ----------
    current_a : float
        Welding current, 50 A to 3000 A [A]
    loop_length_m : float
        Length there and back, 1 m to 100 m [m]
    area_mm2 : float
        Copper area of the chosen cable, 10 mm2 to 120 mm2 [mm2]
    temperature_c : float
        Temperature of the copper, -20 C to 90 C [C]

    Returns
    -------
    picture : Picture
        The chart [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Voltages from ``secondplate.electrics.voltage_drop_v``.

    Examples
    --------
    >>> "2.76 V" in cable_drop(current_a=800, loop_length_m=10, area_mm2=50).alt
    True
    """
    current_a = require_between("current", current_a, 50, 3000, unit="A")
    loop_length_m = require_between("loop length", loop_length_m, 1, 100, unit="m")
    area_mm2 = require_between("copper area", area_mm2, 10, 120, unit="mm2")
    temperature_c = require_between("temperature", temperature_c, -20, 90, unit="C")
    areas = sorted({*USUAL_AREAS_MM2, area_mm2})
    at_chosen = {"current_a": current_a, "loop_length_m": loop_length_m, "temperature_c": temperature_c}
    lost_v = voltage_drop_v(area_mm2=area_mm2, **at_chosen)
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        longest = round_up(loop_length_m * 1.3, among=ROUND_CLOSE)
        worst = voltage_drop_v(
            area_mm2=areas[0], current_a=current_a, loop_length_m=longest, temperature_c=temperature_c
        )
        axes = plane(
            figure,
            (0.08, 0.14, 0.77, 0.76),
            across="cable there and back in m",
            up="voltage lost in V",
            wide=(0, longest),
            high=(0, round_up(worst, among=ROUND_CLOSE)),
        )
        guide_lines(axes)
        ends = {
            a: voltage_drop_v(
                area_mm2=a, current_a=current_a, loop_length_m=longest, temperature_c=temperature_c
            )
            for a in areas
        }
        _draw_cables(axes, ends, area_mm2)
        chosen_point(axes, loop_length_m, lost_v)
        heading(
            axes,
            f"{number(lost_v)} V lost at {number(current_a)} A and {number(temperature_c)} \N{DEGREE SIGN}C",
        )
        return picture_of(figure, _drop_words(areas, area_mm2, lost_v, **at_chosen))


def _drop_words(areas, area_mm2, lost_v, *, current_a, loop_length_m, temperature_c):
    """Tell the chart in sentences."""
    others = ", ".join(
        f"{number(a)} mm2 {number(voltage_drop_v(current_a=current_a, loop_length_m=loop_length_m, area_mm2=a, temperature_c=temperature_c))} V"
        for a in areas
        if a != area_mm2
    )
    return (
        f"Voltage lost in the cables against their length at {number(current_a)} A and {number(temperature_c)} degrees "
        f"Celsius. It rises in step with the length. Chosen: {number(loop_length_m)} m there and back of "
        f"{number(area_mm2)} mm2 copper lose {number(lost_v)} V. At the same length: {others}."
    )


def _draw_cables(axes, ends, area_mm2):
    """Draw one straight line for each copper area and name it at its end."""
    right, top = axes.get_xlim()[1], axes.get_ylim()[1]
    floor = -1.0
    for a in sorted(ends, reverse=True):
        chosen = a == area_mm2
        line(
            axes,
            [(0, 0), (right, ends[a])],
            colour=AMBER if chosen else GREY,
            width=BOLD if chosen else LINE,
            order=5,
        )
        # Names keep clear of one another where the lines lie close.
        level = max(ends[a], floor + 0.062 * top)
        floor = level
        write(
            axes,
            right * 1.015,
            level,
            f"{number(a)} mm\N{SUPERSCRIPT TWO}",
            across="left",
            colour=TEXT_AMBER if chosen else TEXT,
            weight="bold" if chosen else "normal",
        )


def field_by_distance(*, current_a, spacing_m=0.05):
    """Draw the magnetic field against the distance from the cable, single and paired, with the level for implants.

    Parameters
    ----------
    current_a : float
        Welding current, 50 A to 3000 A [A]
    spacing_m : float
        Distance between gun cable and work cable where they run side by side, 0.02 m to 0.1 m [m]

    Returns
    -------
    picture : Picture
        The chart [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Fields from ``secondplate.electrics``, the level from ``secondplate.cautions``.

    Examples
    --------
    >>> "0.24 m" in field_by_distance(current_a=600).alt
    True
    """
    current_a = require_between("current", current_a, 50, 3000, unit="A")
    spacing_m = require_between("spacing", spacing_m, 0.02, 0.1, unit="m")
    reach_m = distance_for_field_m(current_a=current_a, field_ut=IMPLANT_FIELD_UT)
    limit_mt = IMPLANT_FIELD_UT / 1000
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        farthest = max(0.5, round_up(reach_m * 1.8, among=ROUND_CLOSE))
        axes = plane(
            figure,
            (0.08, 0.14, 0.88, 0.76),
            across="distance from the cable in m",
            up="magnetic field in mT",
            wide=(0, farthest),
            high=(0, TOP_MT),
        )
        forbidden(
            axes,
            limit_mt,
            TOP_MT,
            f"over {number(limit_mt)} mT:\nno one with an implant",
            text_at=(0.985 * farthest, 0.78 * TOP_MT),
        )
        limit_line(axes, limit_mt)
        _draw_fields(axes, current_a, spacing_m)
        chosen_point(axes, reach_m, limit_mt, across=False)
        heading(axes, f"{number(current_a)} A: {number(limit_mt)} mT at {number(reach_m)} m from one cable")
        return picture_of(figure, _field_words(current_a, spacing_m, reach_m))


def _pair_reach_m(current_a, spacing_m):
    """Return where the field of the pair falls to the level for implants: B s / r, solved for r."""
    return float(np.sqrt(distance_for_field_m(current_a=current_a, field_ut=IMPLANT_FIELD_UT) * spacing_m))


def _field_words(current_a, spacing_m, reach_m):
    """Tell the chart in sentences."""
    return (
        f"Magnetic field against distance at {number(current_a)} A. Beside one long cable the field falls in step with "
        f"the distance and reaches {number(IMPLANT_FIELD_UT / 1000)} mT, the level for active implants, at "
        f"{number(reach_m)} m. With gun cable and work cable side by side, {number(spacing_m * 1000)} mm apart, it is "
        f"much weaker and reaches the same level at {number(_pair_reach_m(current_a, spacing_m))} m."
    )


def _draw_fields(axes, current_a, spacing_m):
    """Draw both curves where they lie in the plane, and name them."""
    farthest = axes.get_xlim()[1]
    nearest = float(distance_for_field_m(current_a=current_a, field_ut=1000 * TOP_MT))
    single = np.linspace(max(0.01, nearest), farthest, 120)
    line(
        axes,
        np.column_stack([single, magnetic_field_ut(current_a=current_a, distance_m=single) / 1000]),
        width=BOLD,
    )
    pair_nearest = max(2 * spacing_m, float(np.sqrt(nearest * spacing_m)))
    pair = np.linspace(pair_nearest, farthest, 120)
    level = pair_field_ut(current_a=current_a, distance_m=pair, spacing_m=spacing_m) / 1000
    line(axes, np.column_stack([pair, level]), colour=GREY, width=BOLD, dashes=(4, 1.5))
    at = float(distance_for_field_m(current_a=current_a, field_ut=900))
    ground = {"facecolor": PAPER, "edgecolor": "none", "pad": 2}
    write(
        axes,
        at + 0.03 * farthest,
        0.9,
        "one cable alone",
        across="left",
        weight="bold",
        colour=SLATE,
        bbox=ground,
    )
    write(
        axes,
        0.985 * farthest,
        0.13,
        "both cables side by side",
        across="right",
        weight="bold",
        colour=TEXT_GREY,
        bbox=ground,
    )
