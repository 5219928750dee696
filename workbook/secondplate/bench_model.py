"""Mechanisms of the virtual bench: from settings, job and scatter to melt, plunge, collar faults and fusion.

Each fault has a severity that moves smoothly with the settings; from 1 on it shows. Heat, melt and areas are
models of other modules; how strongly a fault answers to a setting is judgement, in the table bench_limits.
"""

from dataclasses import dataclass

import numpy as np

from secondplate import tables
from secondplate.arc_heat import heat_flux_w_mm2
from secondplate.bench_random import triangular, uniform
from secondplate.bench_settings import (
    BENCH_BANDS,
    EARTHS,
    FLANGES_MM,
    HEADS,
    POLARITIES,
    SETTING_LIMITS,
    STUD_DIAMETERS_MM,
)
from secondplate.gas import FLOW_L_MIN, gas_advice
from secondplate.heat.melt_map import FLUX_LIMITS_W_MM2, melted_depth_mm
from secondplate.inspection import COLLAR_SIGNS
from secondplate.process_window import LIMITS
from secondplate.weld_charts import short_cycle_row
from secondplate.weld_sections import lens_area_mm2, lens_centroid_mm, segment_of_share
from secondplate.weld_strength import STRENGTHS_MPA

NUMBERS = tables.values("bench_limits")
FAULTS = tuple(sign.id for sign in COLLAR_SIGNS if sign.id != "good")
SCATTERED = (
    "current scatter",
    "voltage scatter",
    "reach scatter",
    "shield scatter",
    "blow scatter",
    "tilt scatter",
    "offset scatter",
    "brittle share",
    *STRENGTHS_MPA,
)
# An even draw; low ones mean that the hard zone beside the melt cracks.
CRACK = "crack"
_SCATTER_BANDS = BENCH_BANDS | STRENGTHS_MPA
_CHART_TIMES_MS = tuple(short_cycle_row(size).time_ms for size in STUD_DIAMETERS_MM)
_GAS = gas_advice(stud_material="austenitic stainless", base="steel rivet head", process="short cycle")


@dataclass(frozen=True, kw_only=True)
class Weld:
    """Everything that the model knows of a weld, as arrays of one length.

    Parameters
    ----------
    severity : dict of str to numpy.ndarray
        Severity by fault of ``FAULTS``; from 1 on it shows [-]
    melted_depth_mm : numpy.ndarray
        Melted depth of the head [mm]
    web_left_mm : numpy.ndarray
        Solid web under the melt [mm]
    melt_mm : numpy.ndarray
        Melt between the faces before the plunge, both sides together [mm]
    travel_mm : numpy.ndarray
        How far the stud went into the melt [mm]
    closed_share : numpy.ndarray
        Part of the way round that the collar closes [-]
    fused_share : numpy.ndarray
        Fused part of the flange face [-]
    fused_offset_mm : numpy.ndarray
        Centroid of the fused part off the axis of the stud [mm]
    tilt_deg : numpy.ndarray
        Tilt of the stud [deg]
    offset_mm : numpy.ndarray
        Axis of the stud off the middle of the head [mm]
    scatter : dict of str to numpy.ndarray
        What the dice gave, by the names of ``SCATTERED`` [-]

    Examples
    --------
    >>> len(FAULTS)
    9
    """

    severity: dict
    melted_depth_mm: np.ndarray
    web_left_mm: np.ndarray
    melt_mm: np.ndarray
    travel_mm: np.ndarray
    closed_share: np.ndarray
    fused_share: np.ndarray
    fused_offset_mm: np.ndarray
    tilt_deg: np.ndarray
    offset_mm: np.ndarray
    scatter: dict


def flattened(*records):
    """Bring the fields of settings and job to arrays of one length.

    Parameters
    ----------
    records : tuple of WeldSettings or WeldJob or Mapping
        Records or mappings to bring together [-]

    Returns
    -------
    fields : dict of str to numpy.ndarray
        All fields by name, flat [-]
    shape : tuple of int
        Common shape, empty for single values [-]

    Raises
    ------
    ValueError
        If the lengths do not fit together.

    Examples
    --------
    >>> fields, shape = flattened({"a": 1.0, "b": [1.0, 2.0]})
    >>> fields["a"].tolist(), shape
    ([1.0, 1.0], (2,))
    """
    named = {}
    for record in records:
        named |= record if isinstance(record, dict) else vars(record)
    arrays = [np.asarray(value) for value in named.values()]
    try:
        shape = np.broadcast_shapes(*(array.shape for array in arrays))
    except ValueError:
        lengths = ", ".join(sorted({str(array.size) for array in arrays if array.ndim}))
        message = f"settings and job must be single values or of one length, got lengths {lengths}"
        raise ValueError(message) from None
    flat = {
        name: np.broadcast_to(array, shape).reshape(-1) for name, array in zip(named, arrays, strict=True)
    }
    return flat, shape


def scattered(seed, number, fields):
    """Throw the dice of each weld.

    Parameters
    ----------
    seed : bytes or list of bytes or None
        Seed, or one for each weld; None gives every likeliest value, without scatter [-]
    number : int or array
        Number of the weld on its bench [-]
    fields : dict of str to numpy.ndarray
        Settings and job, flat [-]

    Returns
    -------
    dict of str to numpy.ndarray
        Values by the names of ``SCATTERED``, and the draw of ``CRACK`` [-]

    Raises
    ------
    ValueError
        If the seed is not bytes.

    Notes
    -----
    Source: table bench_bands. With the stud positive or in pure argon the arc scatters more.

    Examples
    --------
    >>> float(scattered(None, 1, {"scatter_share": [1.0]})["brittle share"][0])
    0.5
    """
    size = len(fields["scatter_share"])
    if seed is None:
        return {name: np.full(size, _SCATTER_BANDS[name].best) for name in SCATTERED} | {CRACK: np.ones(size)}
    unsteady = (fields["polarity"] == POLARITIES[1]) | (fields["gas"] == "I1")
    arc = fields["scatter_share"] * np.where(unsteady, NUMBERS["unsteady arc"], 1.0)
    values = {CRACK: np.broadcast_to(uniform(seed, CRACK, number), size)}
    for name in SCATTERED:
        band = _SCATTER_BANDS[name]
        thrown = triangular(band.low, band.best, band.high, uniform(seed, name, number))
        share = arc if name in ("current scatter", "voltage scatter") else fields["scatter_share"]
        # Strengths vary as they are, whatever the hand and the machine do.
        widened = (
            thrown if band.low > 0 or name == "brittle share" else band.best + (thrown - band.best) * share
        )
        values[name] = np.broadcast_to(widened, size)
    return values


def _heat(fields, scatter):
    """Return true current, melted depth of head and stud, web left, and a trace of the energy."""
    current = fields["current_a"] * fields["current_share"] * (1 + scatter["current scatter"])
    longer = NUMBERS["voltage by lift"] * (fields["lift_mm"] - NUMBERS["lift of the charts"])
    voltage = np.clip((fields["voltage_v"] + longer) * (1 + scatter["voltage scatter"]), 12, 50)
    face = np.interp(fields["stud_diameter_mm"], STUD_DIAMETERS_MM, FLANGES_MM)
    flux = heat_flux_w_mm2(voltage_v=voltage, current_a=current, face_diameter_mm=face).best
    moved = np.where(fields["polarity"] == POLARITIES[1], NUMBERS["heat moved by polarity"], 0.0)
    time, web = fields["time_ms"], fields["web_mm"]

    def melt(share):
        """Return head, stud and web left under a share of the usual flux."""
        strong = np.minimum(flux * share, FLUX_LIMITS_W_MM2[1])
        return melted_depth_mm(heat_flux_w_mm2=strong, time_ms=time, web_mm=web)

    head, _, web_left = melt(1 - moved)
    _, stud, _ = melt(1 + moved)
    # A trace of the energy keeps a severity from standing still where nothing melts or the web is gone.
    return current, head, stud, web_left, 1e-7 * flux * time


def _heat_faults(depth_mm, web_left_mm, trace_mm):
    """Return how cold and how hot a weld is; both rise without end the further it lies from its limit."""
    deep = depth_mm / LIMITS["hot limit"].best
    thin = LIMITS["least web"].best / np.maximum(web_left_mm, 0.1)
    return {
        "cold": LIMITS["cold limit"].best / (depth_mm + trace_mm),
        "hot": np.maximum(deep, thin) + trace_mm,
    }


def _room_mm(fields):
    """Return how far off the middle of the head a stud may stand before it is seen."""
    flange = np.interp(fields["stud_diameter_mm"], STUD_DIAMETERS_MM, FLANGES_MM)
    return (fields["head_diameter_mm"] - flange) / 2 + NUMBERS["overhang limit"]


def _plunge(fields, scatter, melt_mm):
    """Return how far the stud goes into the melt, and how badly the plunge falls short."""
    wanted = melt_mm * (1 - NUMBERS["melt that stays"])
    reach = np.maximum(fields["protrusion_mm"] + scatter["reach scatter"], 0.0)
    full = wanted + NUMBERS["plunge margin"]
    short = full / np.maximum(reach, 0.01)
    lift = NUMBERS["least lift"] / np.maximum(fields["lift_mm"], 0.05)
    hung = NUMBERS["hang-up share"] * short
    travel = np.where(hung >= 1, 0.0, np.minimum(wanted, reach))
    return travel, np.maximum(short, lift), hung


def _pores(fields, scatter):
    """Return the tendency to pores from gas, flow, face and time."""
    flow = fields["flow_l_min"]
    most, top = NUMBERS["greatest gas flow"], SETTING_LIMITS["gas flow"][1]
    bared = np.maximum(1 - flow / FLOW_L_MIN.low, 0) + np.maximum(flow - most, 0) / (top - most)
    shielded = fields["gas"] != "none"
    air = np.where(shielded, np.minimum(bared, 1.0), 1.0 if _GAS.needed else 0.0)
    unfit = np.zeros(len(flow))
    for gas in ("I1", "M12", "M21"):
        if gas not in _GAS.groups:
            unfit = np.where(fields["gas"] == gas, NUMBERS["pores of argon"], unfit)
    dirt = np.select(
        [fields["head"] == HEADS[1], fields["head"] == HEADS[2]],
        [NUMBERS["pores of a coated head"], NUMBERS["pores of an oily head"]],
        default=0.0,
    )
    long = np.clip(_overtime(fields), 0, 1) * NUMBERS["pores of a long time"]
    pores = NUMBERS["pores of any weld"] + NUMBERS["pores without gas"] * air + unfit + dirt + long
    return np.maximum(pores + scatter["shield scatter"], 0.0)


def _overtime(fields):
    """Return the weld time over the longest that keeps a smooth collar."""
    chart = np.interp(fields["stud_diameter_mm"], STUD_DIAMETERS_MM, _CHART_TIMES_MS)
    return fields["time_ms"] / (chart * NUMBERS["longest time"])


def _blow(fields, scatter, current_a):
    """Return the tendency of the collar to one side: earth, current, length of the arc, tilt."""
    one = fields["earth"] == EARTHS[1]
    clamp = np.where(one, NUMBERS["blow of one clamp"], NUMBERS["blow of two clamps"])
    pull = current_a / (100 * fields["stud_diameter_mm"])  # 100 A/mm: the short-cycle rule of the manual
    arc = np.sqrt(fields["lift_mm"] / NUMBERS["lift of the charts"])
    return clamp * pull * arc * (1 + scatter["blow scatter"]) + fields["tilt_deg"] / NUMBERS["blow by tilt"]


def _fusion(fields, severity, depth_mm, offset_mm):
    """Return fused share of the face, its centroid off the axis, and how far round the collar closes."""
    flange = np.interp(fields["stud_diameter_mm"], STUD_DIAMETERS_MM, FLANGES_MM) / 2
    head = fields["head_diameter_mm"] / 2
    # Where stud and head do not meet at all a sliver is left to reckon with.
    circles = {
        "first_radius_mm": flange,
        "second_radius_mm": head,
        "offset_mm": np.clip(offset_mm, 0, 0.99 * (flange + head)),
    }
    area, along = lens_area_mm2(**circles), lens_centroid_mm(**circles)
    begins, complete = NUMBERS["fusion begins"], NUMBERS["fusion complete"]
    over = depth_mm / LIMITS["cold limit"].best
    deep = np.clip((over - begins) / (complete - begins), 0, 1)
    lost = {
        "porous": NUMBERS["fusion lost to pores"],
        "one_sided": NUMBERS["fusion lost to one side"],
        "partial": NUMBERS["fusion lost to tilt"],
    }
    left = {fault: np.clip(1 - step * (severity[fault] - 0.5), 0.1, 1.0) for fault, step in lost.items()}
    face = np.select(
        [fields["head"] == HEADS[1], fields["head"] == HEADS[2]],
        [NUMBERS["fusion of a coated head"], NUMBERS["fusion of an oily head"]],
        default=1.0,
    )
    one_side = left["one_sided"] * left["partial"]
    share = area / (np.pi * flange**2) * deep * left["porous"] * face * one_side
    share = np.where(severity["hang_up"] >= 1, 0.0, share)
    # The side that stays unfused may lie anywhere to the offset: taken square to it.
    off_axis = np.hypot(along, segment_of_share(radius_mm=flange, share=one_side)[1])
    least = NUMBERS["least fused share"]
    closed = np.where(severity["hang_up"] >= 1, 0.0, one_side * (1 + deep) / 2)
    return np.maximum(share, least), off_axis, closed


def weld_of(fields, scatter):
    """Run the model on flat fields.

    Parameters
    ----------
    fields : dict of str to numpy.ndarray
        Settings and job, flat [-]
    scatter : dict of str to numpy.ndarray
        Values by the names of ``SCATTERED`` [-]

    Returns
    -------
    Weld
        The welds [-]

    Notes
    -----
    Source: tables bench_limits and process_window; physics of ``arc_heat``, ``process_window``,
    ``weld_sections`` and ``gas_choice``.

    Examples
    --------
    >>> from secondplate.bench_settings import chart_settings, draw_job
    >>> fields, _ = flattened(chart_settings(stud_diameter_mm=6), draw_job(b"a day", machine="weak"))
    >>> weld = weld_of(fields, scattered(None, 1, fields))
    >>> [fault for fault in FAULTS if weld.severity[fault][0] >= 1]
    ['cold']
    """
    current, depth, stud, web_left, trace = _heat(fields, scatter)
    travel, short, hung = _plunge(fields, scatter, depth + stud)
    tilt = fields["tilt_deg"] + scatter["tilt scatter"]
    offset = fields["offset_mm"] + scatter["offset scatter"]
    severity = {
        "necked": short,
        **_heat_faults(depth, web_left, trace),
        "one_sided": _blow(fields, scatter, current),
        "hang_up": hung,
        "partial": tilt / NUMBERS["tilt limit"],
        "jagged": _overtime(fields),
        "porous": _pores(fields, scatter),
        "off_centre": offset / _room_mm(fields),
    }
    share, off_axis, closed = _fusion(fields, severity, depth, offset)
    return Weld(
        severity=severity,
        melted_depth_mm=depth,
        web_left_mm=web_left,
        melt_mm=depth + stud,
        travel_mm=travel,
        closed_share=closed,
        fused_share=share,
        fused_offset_mm=off_axis,
        tilt_deg=tilt,
        offset_mm=offset,
        scatter=scatter,
    )
