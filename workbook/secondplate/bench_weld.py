"""Welds a stud on the virtual bench and pulls it: what is seen, what it would bear, what let go."""

from dataclasses import dataclass
from functools import cache

import numpy as np

from secondplate.arc_heat import fusion_area_mm2
from secondplate.bench_model import CRACK, FAULTS, NUMBERS, flattened, scattered, weld_of
from secondplate.bench_settings import FLANGES_MM, HEADS, STUD_DIAMETERS_MM
from secondplate.heat.melt_map import melted_depth_mm
from secondplate.process_window import LIMITS
from secondplate.threads import coarse_pitch_mm, stress_area_mm2
from secondplate.weld_loads import elastic_limit_n, plastic_limit_n
from secondplate.weld_strength import web_tear_n

GAVE = ("rivet drawn out", "stud broke", "weld broke", "head tore")
SURFACES = ("bright", "dull", "porous")
FACES = ("", "flat and grey", "pores", "one-sided", "bright crystals")
SIGN_IDS = ("good", *FAULTS)
# Diameter of the round bar that the thread is as strong as.
_THREADS_MM = tuple(
    float(np.sqrt(4 / np.pi * stress_area_mm2(size, pitch_mm=coarse_pitch_mm(size))))
    for size in STUD_DIAMETERS_MM
)


@dataclass(frozen=True, kw_only=True)
class WeldOutcome:
    """What is to be seen and measured on a weld, and what it would bear.

    Parameters
    ----------
    sign_id : str or array of str
        Id of the collar sign, one of ``inspection.COLLAR_SIGNS`` [-]
    burn_off_mm : float or array
        How much shorter the stud became [mm]
    length_off_mm : float or array
        Length over that of a weld in the middle of the window; above 0 is too long [mm]
    melted_depth_mm : float or array
        Melted depth of the head [mm]
    fused_share : float or array
        Fused part of the flange face [-]
    fused_offset_mm : float or array
        Centroid of the fused part off the axis of the stud [mm]
    web_left_mm : float or array
        Solid web under the melt [mm]
    burnt_through : bool or array of bool
        Whether no web is left [-]
    strength_n : float or array
        Pull along the stud at which the weld breaks [N]
    stud_strength_n : float or array
        Pull at which the stud breaks [N]
    head_strength_n : float or array
        Pull at which the web tears out of the head [N]
    defects : tuple of str or array of bool
        Names of all faults that show, the sign among them; for arrays a mask with a column for each of
        ``FAULTS`` [-]
    collar_height_mm : float or array
        Height of the collar [mm]
    collar_width_mm : float or array
        Width of the collar beyond the flange [mm]
    collar_gap_deg : float or array
        Part of the way round without collar [deg]
    surface : str or array of str
        One of ``SURFACES`` [-]
    tilt_deg : float or array
        Tilt of the stud [deg]
    offset_mm : float or array
        Axis of the stud off the middle of the head [mm]

    Examples
    --------
    >>> from secondplate.bench_settings import chart_settings, draw_job
    >>> job = draw_job(b"a day at the shop", machine="weak")
    >>> weld(chart_settings(stud_diameter_mm=6), job, seed=b"a day at the shop", number=1).sign_id
    'cold'
    """

    sign_id: str
    burn_off_mm: float
    length_off_mm: float
    melted_depth_mm: float
    fused_share: float
    fused_offset_mm: float
    web_left_mm: float
    burnt_through: bool
    strength_n: float
    stud_strength_n: float
    head_strength_n: float
    defects: tuple[str, ...]
    collar_height_mm: float
    collar_width_mm: float
    collar_gap_deg: float
    surface: str
    tilt_deg: float
    offset_mm: float


@dataclass(frozen=True, kw_only=True)
class PullOutcome:
    """What a test pull gave.

    Parameters
    ----------
    force_n : float or array
        Greatest force of the pull [N]
    gave : str or array of str
        What let go, one of ``GAVE`` [-]
    face : str or array of str
        What the broken face looks like, one of ``FACES``; empty where the weld held [-]

    Examples
    --------
    >>> GAVE[0]
    'rivet drawn out'
    """

    force_n: float
    gave: str
    face: str


def _shaped(value, shape, digits):
    """Return flat values in their shape, rounded so that the last binary digit of a machine never shows."""
    rounded = np.round(value, digits) + 0.0 if digits is not None else value
    return rounded.reshape(shape) if shape else rounded[0].item()


def strengths_n(fields, found):
    """Return the pulls at which weld, stud and head give, one after the other.

    Parameters
    ----------
    fields : dict of str to numpy.ndarray
        Settings and job, flat [-]
    found : bench_model.Weld
        The welds [-]

    Returns
    -------
    tuple of numpy.ndarray
        Pulls along the stud at which weld, stud and head give [N]

    Notes
    -----
    The weld bears between its elastic and its plastic limit, on a round face of the fused area about its
    centroid, and next to nothing where the hard zone beside the melt has cracked unseen; the stud bears to
    its plastic limit; the web shears off round the shank.
    Source: ``weld_strength``; strengths from its table, weighed by the dice.

    Examples
    --------
    >>> from secondplate.bench_model import flattened, scattered, weld_of
    >>> from secondplate.bench_settings import chart_settings, draw_job
    >>> fields, _ = flattened(chart_settings(stud_diameter_mm=6), draw_job(b"a day", machine="strong"))
    >>> weld, stud, head = strengths_n(fields, weld_of(fields, scattered(None, 0, fields)))
    >>> bool(weld[0] > stud[0] > head[0])
    True
    """
    dice = found.scatter
    askew = {"tilt_deg": np.clip(found.tilt_deg, 0, 45), "lever_mm": NUMBERS["lever of the pull"]}
    area = fusion_area_mm2(checked_head(fields)) * found.fused_share
    on_face = askew | {
        "diameter_mm": np.sqrt(4 * area / np.pi),
        "eccentricity_mm": found.fused_offset_mm,
        "strength_mpa": dice["weld metal"],
    }
    elastic, plastic = elastic_limit_n(**on_face), plastic_limit_n(**on_face)
    thread = np.interp(fields["stud_diameter_mm"], STUD_DIAMETERS_MM, _THREADS_MM)
    held = elastic + (1 - dice["brittle share"]) * (plastic - elastic)
    hot = np.clip(found.severity["hot"] - 1, 0, 1)
    chance = fields["scatter_share"] * (NUMBERS["crack of any weld"] + NUMBERS["crack of a hot weld"] * hot)
    return (
        np.where(dice[CRACK] < chance, NUMBERS["strength of a cracked weld"], 1.0) * held,
        plastic_limit_n(diameter_mm=thread, strength_mpa=dice["stud beside the weld"], **askew),
        web_tear_n(
            shank_diameter_mm=fields["head_diameter_mm"] - NUMBERS["shank under the head"],
            web_left_mm=np.maximum(found.web_left_mm, 0),
            strength_mpa=dice["web of the head"],
        ),
    )


def _collar(fields, found, shows):
    """Return height, width and gap of the collar."""
    flange = np.interp(fields["stud_diameter_mm"], STUD_DIAMETERS_MM, FLANGES_MM)
    ratio = np.where(
        shows["hot"], NUMBERS["flat collar width over height"], NUMBERS["collar width over height"]
    )
    # A ring of triangular section round the flange: pi D h w / 2 holds a part of pi/4 D^2 times the travel.
    height = np.sqrt(flange * found.travel_mm * NUMBERS["melt in the collar"] / (2 * ratio))
    broken = shows["one_sided"] | shows["partial"] | shows["cold"] | shows["hang_up"]
    return height, height * ratio, np.where(broken, 360 * (1 - found.closed_share), 0.0)


def _sign_ids(found, shows):
    """Name each weld by its worst fault; a stud that never plunged shows nothing else."""
    severity = np.stack([found.severity[fault] for fault in FAULTS])
    worst = np.where(severity.max(axis=0) >= 1, severity.argmax(axis=0) + 1, 0)
    return np.array(SIGN_IDS)[np.where(shows["hang_up"], FAULTS.index("hang_up") + 1, worst)]


def weld(settings, job, *, seed, number):
    """Weld one stud, or many at once; the same seed and number give the same outcome on every machine.

    Parameters
    ----------
    settings : WeldSettings
        What is set [-]
    job : WeldJob
        Rivet and machine [-]
    seed : bytes or list of bytes or None
        Seed of the bench, or one for each weld; None welds without scatter [-]
    number : int or array
        Number of the weld on its bench, from 0 on [-]

    Returns
    -------
    WeldOutcome
        The weld; arrays where settings, job or number are arrays [-]

    Raises
    ------
    ValueError
        If lengths do not fit, the stud's flange is wider than the head, or the seed is not bytes.

    Notes
    -----
    Source: tables bench_limits, bench_bands and process_window, mostly own judgement; see ``bench``.

    Examples
    --------
    >>> from secondplate.bench_settings import chart_settings, draw_job
    >>> job = draw_job(b"a day at the shop", machine="strong")
    >>> weld(chart_settings(stud_diameter_mm=6), job, seed=b"a day at the shop", number=1).sign_id
    'hot'
    """
    fields, shape = flattened(settings, job, {"number": number})
    checked_head(fields)
    found = weld_of(fields, scattered(seed, fields["number"], fields))
    return _outcome(fields, found, shape)


def checked_head(fields):
    """Refuse a stud whose flange is wider than the head.

    Parameters
    ----------
    fields : dict of str to numpy.ndarray
        Settings and job, flat [-]

    Returns
    -------
    numpy.ndarray
        Flange diameter of each weld [mm]

    Raises
    ------
    ValueError
        If a flange is wider than its head.

    Examples
    --------
    >>> import numpy as np
    >>> checked_head({"stud_diameter_mm": np.array([6.0]), "head_diameter_mm": np.array([7.75])}).tolist()
    [7.0]
    """
    flange = np.interp(fields["stud_diameter_mm"], STUD_DIAMETERS_MM, FLANGES_MM)
    wide = flange > fields["head_diameter_mm"]
    if wide.any():
        head = float(fields["head_diameter_mm"][wide][0])
        message = f"head diameter must be at least the flange of {flange[wide][0]:g} mm, got {head:g} mm"
        raise ValueError(message)
    return flange


def _outcome(fields, found, shape):
    """Turn what the model knows into what is handed out."""
    shows = {fault: found.severity[fault] >= 1 for fault in FAULTS}
    strength, stud, head = strengths_n(fields, found)
    height, width, gap = _collar(fields, found, shows)
    dull = shows["cold"] | shows["hang_up"] | (fields["gas"] == "none")
    surface = np.select([shows["porous"], dull], ["porous", "dull"], default="bright")
    mask = np.stack(list(shows.values()), axis=-1)
    return WeldOutcome(
        sign_id=_shaped(_sign_ids(found, shows), shape, None),
        burn_off_mm=_shaped(found.travel_mm, shape, 3),
        length_off_mm=_shaped(_usual_travel_mm() - found.travel_mm, shape, 3),
        melted_depth_mm=_shaped(found.melted_depth_mm, shape, 4),
        fused_share=_shaped(found.fused_share, shape, 4),
        fused_offset_mm=_shaped(found.fused_offset_mm, shape, 3),
        web_left_mm=_shaped(found.web_left_mm, shape, 4),
        burnt_through=_shaped(found.web_left_mm <= 0, shape, None),
        strength_n=_shaped(strength, shape, 0),
        stud_strength_n=_shaped(stud, shape, 0),
        head_strength_n=_shaped(head, shape, 0),
        defects=mask.reshape(*shape, -1) if shape else tuple(fault for fault in FAULTS if shows[fault][0]),
        collar_height_mm=_shaped(height, shape, 2),
        collar_width_mm=_shaped(width, shape, 2),
        collar_gap_deg=_shaped(gap, shape, 0),
        surface=_shaped(surface, shape, None),
        tilt_deg=_shaped(found.tilt_deg, shape, 1),
        offset_mm=_shaped(found.offset_mm, shape, 2),
    )


@cache
def _usual_travel_mm():
    """Return the travel of a stud in the middle of the window, stud and head melting as they usually do."""
    head, stud, _ = melted_depth_mm(heat_flux_w_mm2=200.0, time_ms=30.0, web_mm=1.1)
    middle = np.sqrt(LIMITS["cold limit"].best * LIMITS["hot limit"].best)
    return middle * (1 + stud / head) * (1 - NUMBERS["melt that stays"])


def test_pull(outcome, settings, job):
    """Pull the stud of a weld until something lets go.

    Parameters
    ----------
    outcome : WeldOutcome
        The weld [-]
    settings : WeldSettings
        What was set for it [-]
    job : WeldJob
        Rivet and machine [-]

    Returns
    -------
    PullOutcome
        Force, what gave, look of the face; arrays where the outcome is made of arrays [-]

    Notes
    -----
    The weakest of rivet hold, stud, weld and head gives. Source: see ``weld``; looks of the face from table
    weld_signs.

    Examples
    --------
    >>> from secondplate.bench_settings import chart_settings, draw_job
    >>> job = draw_job(b"a day at the shop", machine="weak")
    >>> settings = chart_settings(stud_diameter_mm=6)
    >>> test_pull(weld(settings, job, seed=b"a day at the shop", number=1), settings, job).gave
    'weld broke'
    """
    loads = np.broadcast_arrays(
        job.rivet_hold_n, outcome.stud_strength_n, outcome.strength_n, outcome.head_strength_n
    )
    # A tie goes to the rivet: what holds exactly as much as the rivet does not break before it.
    which = np.argmin(np.stack(loads), axis=0)
    force = np.min(np.stack(loads), axis=0)
    broke = which == GAVE.index("weld broke")
    mask = outcome.defects
    if isinstance(mask, tuple):
        mask = np.array([fault in mask for fault in FAULTS])
    shows = {fault: mask[..., index] for index, fault in enumerate(FAULTS)}
    grey = shows["cold"] | shows["hang_up"] | (np.asarray(settings.head) != HEADS[0])
    aside = shows["one_sided"] | shows["partial"] | shows["off_centre"]
    face = np.select(
        [~broke, grey, shows["porous"], aside],
        ["", "flat and grey", "pores", "one-sided"],
        default="bright crystals",
    )
    gave = np.array(GAVE)[which]
    if which.ndim == 0:
        return PullOutcome(force_n=float(np.round(force)), gave=str(gave), face=str(face))
    return PullOutcome(force_n=np.round(force), gave=gave, face=face)


test_pull.__test__ = False  # pytest must not take it for a test where it is imported
