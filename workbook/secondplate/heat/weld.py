"""Heat of one stud weld in the real shape of the joint: arc on both faces, plunge, cooling.

While the arc burns it heats the stud's face and the rivet head under it evenly, and the two do not touch; at
the plunge they join. It leaves out the pressing out of the melt into the collar, the current that flows on
for a moment after the plunge, and the movement of the melt, for which a raised conductivity stands.
"""

from dataclasses import replace
from functools import lru_cache

import numpy as np

from secondplate.bands import Band
from secondplate.heat.conduction import Body, Stage, conduct
from secondplate.heat.joint import RIVET_MATERIAL
from secondplate.heat.joint_body import (
    FINEST_MM,
    RADII_MM,
    contact_w_m2k,
    joint_cells,
    places,
    weights_at,
)
from secondplate.heat.substances import filler, metal
from secondplate.heat.weld_result import WeldHeatResult
from secondplate.heat.weld_settings import weld_heat_bands

# Steps of the arc and of the cooling, and how much each of these exceeds the one before; found by doubling
# their number until the results stood still within 1 %.
_ARC_STEPS = 24
_COOLING_STEPS = 36
_COOLING_GROWTH = 1.22
# A cell at the weld face must be this part of the depth over which the flux would melt steel.
_CELL_SHARE = 0.35
_STEEL_W_MM_K, _MELTING_RISE_K = 0.03, 1450.0


@lru_cache(maxsize=64)
def weld_heat(joint, settings, *, fineness=1.0, radii_mm=RADII_MM):
    """Return temperatures and melt of one stud weld.

    Parameters
    ----------
    joint : RivetedJoint
        The joint [-]
    settings : WeldHeat
        Settings of the arc and values of the model [-]
    fineness : float
        1 for the usual grid and steps, 2 for half the length of both, 0.25 to 8 [-]
    radii_mm : tuple of float
        Distances from the axis at which bond line and plates are looked at [mm]

    Returns
    -------
    WeldHeatResult
        Traces, fields and what follows from them [-]

    Raises
    ------
    ValueError
        If a value is out of its range or the grid is too coarse for the heat flux.

    Notes
    -----
    Conduction with melting by heat content (``conduction``), properties from ``materials``, contact layers
    between steel and aluminium, convection and radiation from all outer faces. The heat of the arc is even
    over the stud's face and over the same area of the head; ``arc_heat`` says how little is known of it.
    Checked against an independent finite element solution on the same joint, and against closed forms.
    Sources: iron_arc_energy_balance (shares), materials and weld_heat tables for the rest.

    Examples
    --------
    >>> from secondplate.heat.joint import default_joint
    >>> from secondplate.heat.weld_settings import charted_settings
    >>> weld = weld_heat(default_joint(), charted_settings(default_joint()))
    >>> 0.1 < weld.head_depth_mm < 0.45
    True
    """
    cells = joint_cells(joint, fineness=fineness)
    _require_fine_enough(cells, settings, fineness)
    outwards, down = contact_w_m2k(
        part=cells.part,
        contact_rivet_plates_w_m2k=settings.contact_rivet_plates_w_m2k,
        contact_plates_w_m2k=settings.contact_plates_w_m2k,
    )
    body = Body(
        grid=cells.grid,
        substances=_substances(joint, settings.liquid_conductivity_w_mk),
        where=cells.part,
        radial_contact_w_m2k=outwards,
        height_contact_w_m2k=down,
        film_w_m2k=settings.film_w_m2k,
        emittance=settings.emittance,
        ambient_c=settings.start_c,
        lower_end="exposed",
    )
    named = places(joint, radii_mm=radii_mm)
    keep = {name: weights_at(cells, *place) for name, place in named.items()} | _haz_cells(cells)
    run = conduct(body, _stages(cells, settings, down, fineness), start_c=settings.start_c, keep=keep)
    return _result(settings, cells, run, tuple(named))


def _require_fine_enough(cells, settings, fineness):
    """Refuse a grid whose cells at the weld face cannot show the steep temperature under the flux."""
    rate_w = max(settings.heat_rate_w)
    flux_w_mm2 = rate_w / (np.pi / 4 * cells.joint.flange_diameter_mm**2)
    needed = FINEST_MM / (_CELL_SHARE * _STEEL_W_MM_K * _MELTING_RISE_K / flux_w_mm2)
    if fineness < needed:
        flux = f"a heat flux of {flux_w_mm2:.0f} W/mm2"
        message = f"fineness must be at least {needed:.2g} for {flux}, got {fineness:g}"
        raise ValueError(message)


@lru_cache(maxsize=32)
def _substances(joint, liquid_conductivity_w_mk):
    """Return the substances of the parts, in the order of ``joint.PARTS``."""
    stud, rivet = (
        metal(name, liquid_conductivity_w_mk=liquid_conductivity_w_mk)
        for name in (joint.stud_material, RIVET_MATERIAL)
    )
    top, second = metal(joint.top_plate_material), metal(joint.second_plate_material)
    return stud, rivet, top, filler(joint.gap_filling), second, top, filler("air")


def _haz_cells(cells):
    """Weights that pick each cell of the head above the middle of the shank's wall, from the face down."""
    found = {}
    for row in range(cells.face_row, cells.rows):
        if cells.grid.depths_mm[row] > cells.joint.second_plate_from_mm:
            break
        found[row] = np.zeros(cells.part.shape)
        found[row][row, cells.haz_column] = 1.0
    return found


def _stages(cells, settings, down, fineness):
    """Return the stages: arc with the faces apart, then plunge and cooling."""
    columns = slice(0, cells.face_columns)
    share = cells.grid.ring_areas_mm2[columns] / cells.grid.ring_areas_mm2[columns].sum()
    power, apart = np.zeros(cells.part.shape), down.copy()
    for row, rate_w in zip((cells.face_row - 1, cells.face_row), settings.heat_rate_w, strict=True):
        power[row, columns] = rate_w * share
    apart[cells.face_row - 1] = 0.0
    arc_steps, cooling_steps = (max(4, round(fineness * number)) for number in (_ARC_STEPS, _COOLING_STEPS))
    arc_s = settings.time_ms / 1000
    arc = Stage(duration_s=arc_s, steps=arc_steps, power_w=power, height_contact_w_m2k=apart)
    growth = _COOLING_GROWTH ** (1 / fineness)
    return arc, Stage(duration_s=settings.cooling_s, steps=cooling_steps, growth=growth)


def _result(settings, cells, run, names):
    """Put the run into the words of a weld."""
    return WeldHeatResult(
        settings=settings,
        cells=cells,
        times_s=run.times_s,
        traces_c={name: run.traces_c[name] for name in names},
        haz_traces_c=np.stack([run.traces_c[row] for row in run.traces_c if row not in names], axis=1),
        peak_c=run.peak_c,
        melted_share=run.melted_share,
        heat_in_j=run.heat_in_j,
        heat_out_j=run.heat_out_j,
        heat_kept_j=run.heat_kept_j,
        balance=run.balance,
    )


def weld_heat_band(joint, settings):
    """Return the melted depths and the web left as bands, from the doubt on the heat and on the melt.

    Three runs: heat low, best and high, where the doubts on voltage and shares are independent of each other
    and add as ``sqrt(a^2 + b^2)``, with the conductivity of the melt at the same end of its band.

    Parameters
    ----------
    joint : RivetedJoint
        The joint [-]
    settings : WeldHeat
        Settings; voltage, shares and conductivity of the melt stand at the values given here [-]

    Returns
    -------
    dict of str to Band
        Head depth, stud depth and web left [mm]

    Raises
    ------
    ValueError
        If a value is out of its range.

    Notes
    -----
    Source: model, see ``weld_heat``; bands of ``arc_heat`` and of the table weld_heat.

    Examples
    --------
    >>> from secondplate.heat.joint import default_joint
    >>> from secondplate.heat.weld_settings import charted_settings
    >>> band = weld_heat_band(default_joint(), charted_settings(default_joint()))["head depth"]
    >>> band.low < band.best < band.high
    True
    """
    runs = [weld_heat(joint, _moved(settings, end)) for end in ("low", "best", "high")]
    found = {}
    for name in ("head depth", "stud depth", "web left"):
        low, best, high = sorted(getattr(run, name.replace(" ", "_") + "_mm") for run in runs)
        found[name] = Band(low=low, best=best, high=high, basis="derived: doubt on the heat and the melt")
    return found


def _moved(settings, end):
    """Move heat and conductivity of the melt to one end of their bands."""
    if end == "best":
        return settings
    bands = weld_heat_bands()
    doubts = [getattr(band, end) / band.best - 1 for band in (bands["voltage_v"], bands["stud_heat_share"])]
    factor = 1 + np.copysign(np.hypot(*doubts), doubts[0])
    return replace(
        settings,
        voltage_v=factor * settings.voltage_v,
        liquid_conductivity_w_mk=getattr(bands["liquid_conductivity_w_mk"], end),
    )
