"""Charts of the electric side: voltage lost in the cables, and magnetic field against distance."""

import numpy as np

from drawings.charts import chosen_point, forbidden, heading, limit_line, plane
from drawings.marks import line, number, write
from drawings.picture import picture_of
from drawings.scales import ROUND_CLOSE, round_up
from drawings.style import AMBER, BOLD, GREY, LINE, PAPER, TEXT, TEXT_AMBER, TEXT_GREY, sheet_of_paper
from secondplate.cautions import cautions_about
from secondplate.checks import require_between
from secondplate.electrics import distance_for_field_m, magnetic_field_ut, pair_field_ut, voltage_drop_v

WIDTH_IN, HEIGHT_IN = 8.6, 4.9
# Highest field of the chart; nearer to the cable the curve runs out of it.
TOP_MT = 1.5
NAME_GROUND = {"facecolor": PAPER, "edgecolor": "none", "pad": 2}
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
    at_chosen = {"current_a": current_a, "loop_length_m": loop_length_m, "temperature_c": temperature_c}
    areas = sorted({*USUAL_AREAS_MM2, area_mm2})
    lost_v = voltage_drop_v(area_mm2=area_mm2, **at_chosen)
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = _draw_cables(figure, areas, area_mm2, at_chosen)
        chosen_point(axes, loop_length_m, lost_v)
        heading(
            axes,
            f"{number(lost_v)} V lost at {number(current_a)} A and {number(temperature_c)} \N{DEGREE SIGN}C",
        )
        return picture_of(figure, _drop_words(areas, area_mm2, lost_v, at_chosen))


def _drop_words(areas, area_mm2, lost_v, at_chosen):
    """Tell the chart in sentences."""
    others = ", ".join(
        f"{number(area)} mm2 {number(voltage_drop_v(area_mm2=area, **at_chosen))} V"
        for area in areas
        if area != area_mm2
    )
    current, length, temperature = (number(value) for value in at_chosen.values())
    return (
        f"Voltage lost in the cables against their length at {current} A and {temperature} degrees Celsius. "
        f"It rises in step with the length. Chosen: {length} m there and back of "
        f"{number(area_mm2)} mm2 copper lose {number(lost_v)} V. At the same length: {others}."
    )


def _draw_cables(figure, areas, area_mm2, at_chosen):
    """Draw one straight line for each copper area and name it at its end."""
    longest = round_up(at_chosen["loop_length_m"] * 1.3, among=ROUND_CLOSE)
    ends_v = voltage_drop_v(area_mm2=np.array(areas), **{**at_chosen, "loop_length_m": longest})
    top = round_up(ends_v[0], among=ROUND_CLOSE)
    across, up = "cable there and back in m", "voltage lost in V"
    ends = {"wide": (0, longest), "high": (0, top)}
    axes = plane(figure, (0.08, 0.14, 0.77, 0.76), across=across, up=up, guides=True, **ends)
    name_at = -1.0
    for area, end_v in zip(reversed(areas), reversed(ends_v), strict=True):
        chosen = area == area_mm2
        ink, width = (AMBER, BOLD) if chosen else (GREY, LINE)
        line(axes, [(0, 0), (longest, end_v)], colour=ink, width=width, order=5)
        # Names keep clear of one another where the lines lie close.
        name_at = max(end_v, name_at + 0.062 * top)
        name = f"{number(area)} mm\N{SUPERSCRIPT TWO}"
        look = {"colour": TEXT_AMBER, "weight": "bold"} if chosen else {"colour": TEXT}
        write(axes, longest * 1.015, name_at, name, across="left", **look)
    return axes


def field_by_distance(*, current_a, spacing_m=0.05):
    """Draw the magnetic field against the distance from one cable and from a pair.

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
        axes = _field_plane(figure, reach_m, limit_mt)
        _draw_one_cable(axes, current_a)
        _draw_pair(axes, current_a, spacing_m)
        chosen_point(axes, reach_m, limit_mt, across=False)
        heading(axes, f"{number(current_a)} A: {number(limit_mt)} mT at {number(reach_m)} m from one cable")
        return picture_of(figure, _field_words(current_a, spacing_m, reach_m))


def _field_plane(figure, reach_m, limit_mt):
    """Return the axes with the part over the level for implants hatched."""
    farthest = max(0.5, round_up(reach_m * 1.8, among=ROUND_CLOSE))
    across, up = "distance from the cable in m", "magnetic field in mT"
    ends = {"wide": (0, farthest), "high": (0, TOP_MT)}
    axes = plane(figure, (0.08, 0.14, 0.87, 0.76), across=across, up=up, guides=True, **ends)
    text = f"over {number(limit_mt)} mT:\nno one with an implant"
    forbidden(axes, limit_mt, TOP_MT, text, text_at=(0.985 * farthest, 0.78 * TOP_MT))
    limit_line(axes, limit_mt)
    return axes


def _pair_reach_m(current_a, spacing_m):
    """Return where the field of the pair falls to the level for implants: B s / r, solved for r."""
    return float(np.sqrt(distance_for_field_m(current_a=current_a, field_ut=IMPLANT_FIELD_UT) * spacing_m))


def _field_words(current_a, spacing_m, reach_m):
    """Tell the chart in sentences."""
    return (
        f"Magnetic field against distance at {number(current_a)} A. "
        "Beside one long cable the field halves at twice the distance and reaches "
        f"{number(IMPLANT_FIELD_UT / 1000)} mT, the level for active implants, at {number(reach_m)} m. "
        f"With gun cable and work cable side by side, {number(spacing_m * 1000)} mm apart, it is much weaker "
        f"and reaches the same level at {number(_pair_reach_m(current_a, spacing_m))} m."
    )


def _nearest_m(current_a):
    """Return the distance from one cable at which its field runs out of the plane."""
    return max(0.01, float(distance_for_field_m(current_a=current_a, field_ut=1000 * TOP_MT)))


def _draw_one_cable(axes, current_a):
    """Draw the field of one cable alone and name it."""
    farthest = axes.get_xlim()[1]
    away = np.linspace(_nearest_m(current_a), farthest, 120)
    field_mt = magnetic_field_ut(current_a=current_a, distance_m=away) / 1000
    line(axes, np.column_stack([away, field_mt]), width=BOLD)
    at = float(distance_for_field_m(current_a=current_a, field_ut=900)) + 0.03 * farthest
    write(axes, at, 0.9, "one cable alone", across="left", weight="bold", bbox=NAME_GROUND)


def _draw_pair(axes, current_a, spacing_m):
    """Draw the field of the pair, from twice the spacing outwards, and name it."""
    farthest = axes.get_xlim()[1]
    nearest = max(2 * spacing_m, float(np.sqrt(_nearest_m(current_a) * spacing_m)))
    away = np.linspace(nearest, farthest, 120)
    field_mt = pair_field_ut(current_a=current_a, distance_m=away, spacing_m=spacing_m) / 1000
    line(axes, np.column_stack([away, field_mt]), colour=GREY, width=BOLD, dashes=(4, 1.5))
    look = {"weight": "bold", "colour": TEXT_GREY, "bbox": NAME_GROUND}
    write(axes, 0.985 * farthest, 0.13, "both cables side by side", across="right", **look)
