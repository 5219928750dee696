"""Setting a rivet as geometry: what a section would show while the punch comes down, and the tools round it.

The joint at the end of the stroke is the one that the parameters stand for; before it the same balance of
volumes is kept with less draw-down, flare and shortening. Leaves out bending beside the die, and what the
tail does while it shears the slug off: there the picture jumps.
"""

import numpy as np

from secondplate.checks import require_between
from secondplate.section_joint import Section, build_columns, open_parts, whole_outline
from secondplate.section_plates import DRAFT_MM, MARGIN_MM, RIM_MM, WALL_TOP, depth_share, edge_mm
from secondplate.section_rivet import unset_path
from secondplate.section_volume import half_volume_mm3

STAGE_STROKES = {"clamp": 0.06, "pierce": 0.5, "flare": 0.8, "seat": 1.0}  # where each stage is drawn
_FIRST_TOUCH_MM = 0.15  # depth of the tail at stroke 0, so that the plates touch it
_SHEARED = 0.9  # of the top plate: from here on the slug is cut off
_THROUGH_MM = 0.35  # depth of the tail in the second plate when the slug has been cut off
_DIE_CORNER_MM = 0.4
_TOOL_MM = 2.5  # how much of the tools is drawn


def _depths(columns):
    """Return depth of the tail below the face of the top plate and share of the stroke, both rising."""
    length, final = columns["rivet_length_mm"][0], columns["head_flushness_mm"][0]
    deepest = columns["set_length_left_mm"][0] - final
    depths = np.linspace(_FIRST_TOUCH_MM, deepest, 200)
    heads = np.array([_partly(columns, depth)["head_flushness_mm"][0] for depth in depths])
    travel = length - _FIRST_TOUCH_MM - heads
    return depths, travel / travel[-1]


def _partly(columns, depth):
    """Return the parameters of a joint whose tail has come to a depth below the face of the top plate."""
    top, length = columns["top_plate_mm"], columns["rivet_length_mm"]
    deepest = columns["set_length_left_mm"] - columns["head_flushness_mm"]
    share = np.clip((depth - top) / (deepest - top), 0.0, 1.0)
    changed = dict(columns)
    for side in ("left", "right"):
        short = columns[f"set_length_{side}_mm"]
        changed[f"set_length_{side}_mm"] = length + (short - length) * share**1.5
        changed[f"interlock_{side}_mm"] = np.maximum(columns[f"interlock_{side}_mm"] * share**2, 0.002)
        changed[f"buckle_{side}_mm"] = columns[f"buckle_{side}_mm"] * share
        changed[f"crack_{side}_mm"] = np.where(share < 1, 0.0, columns[f"crack_{side}_mm"])
    drawn = np.minimum(columns["draw_down_mm"] * share**0.8, np.maximum(depth - top - 0.15, 0.1))
    changed["draw_down_mm"] = np.where(share < 1, drawn, columns["draw_down_mm"])
    changed["hump_mm"] = columns["hump_mm"] * share
    changed["corner_mm"] = columns["corner_mm"] + (1 - share) * 2.0
    changed["head_flushness_mm"] = changed["set_length_left_mm"] - depth
    return changed


def _bent_plate(radius, face, underside, rest):
    """Return how far an underside bends down until the plate has its volume; ``rest`` begins at the edge."""
    metal = np.pi * radius[-1] ** 2 * (face - underside)
    bend = 0.5 * (1 + np.cos(np.pi * np.clip(radius / (radius[-1] - MARGIN_MM), 0, 1)))
    r = np.concatenate([radius, rest[0]])
    volumes = [
        half_volume_mm3(r, np.concatenate([underside - depth * bend, rest[1]])) for depth in (0.0, 1.0)
    ]
    depth = (metal - volumes[0]) / (volumes[1] - volumes[0])
    return bend * depth


def _before_shearing(columns, depth):
    """Return outlines while the tail is still in the top plate."""
    path = unset_path(columns)
    r, z = path[0][0, 1], path[1][0, 1] + columns["rivet_length_mm"][0] - depth
    low = np.flatnonzero(z < 0)
    cuts = [np.interp(0.0, z[pair], r[pair]) for pair in ([low[0], low[0] - 1], [low[-1], low[-1] + 1])]
    edge = edge_mm(columns)[0]
    top, gap, second = (-columns[name][0] for name in ("top_plate_mm", "gap_mm", "second_plate_mm"))
    radius = np.linspace(0, edge, 60)
    around = (
        np.concatenate([[edge, cuts[1]], r[low[::-1]], [cuts[0], 0.0]]),
        np.concatenate([[0.0, 0.0], z[low[::-1]], [0.0, 0.0]]),
    )
    bend = _bent_plate(radius, 0.0, top, around)
    levels = [top - bend, top + gap - bend, top + gap + second - bend]
    plates = {
        "top plate": (np.append(radius, around[0]), np.append(levels[0], around[1])),
        "second plate": (np.append(radius, radius[::-1]), np.append(levels[2], levels[1][::-1])),
        "gap": (np.append(radius, radius[::-1]), np.append(levels[1], levels[0][::-1])),
        "rivet": (r, z),
    }
    twice = {
        name: tuple(np.stack([values, values])[None] for values in path) for name, path in plates.items()
    }
    return open_parts({name: whole_outline(path)[0] for name, path in twice.items()})


def setting_section(parameters, stroke_share):
    """Return the section of a joint while it is set, from the first touch to the seated head.

    Parameters
    ----------
    parameters : SectionParameters
        Parameters of one joint, the set one [-]
    stroke_share : float
        Share of the stroke of the punch, 0 to 1 [-]

    Returns
    -------
    Section
        Outlines; while the tail is in the top plate, that is one part, ``top plate``, without a slug [-]

    Raises
    ------
    ValueError
        If the share lies outside 0 to 1 or the parameters are columns.

    Notes
    -----
    Derived here for teaching, after the stages of rivet_literature from memory; volumes are kept throughout.

    Examples
    --------
    >>> from secondplate.section_parameters import usual_parameters
    >>> "slug" in setting_section(usual_parameters(), 0.1).outlines
    False
    >>> "slug" in setting_section(usual_parameters(), 0.7).outlines
    True
    """
    share = require_between("share of the stroke", stroke_share, 0, 1, unit="")
    if parameters.several:
        message = f"parameters must be those of 1 joint, got {parameters.count}"
        raise ValueError(message)
    columns = parameters.columns()
    depths, shares = _depths(columns)
    depth = float(np.interp(share, shares, depths))
    top = columns["top_plate_mm"][0]
    if depth < top + columns["gap_mm"][0] + _THROUGH_MM:
        return Section(outlines=_before_shearing(columns, min(depth, _SHEARED * top)), constructed={})
    outlines, constructed, _ = build_columns(_partly(columns, depth), required=False)
    return Section(
        outlines=open_parts({name: outline[0] for name, outline in outlines.items()}),
        constructed={name: float(values[0]) for name, values in constructed.items()},
    )


def stage_sections(parameters):
    """Return one section for each stage of setting: clamp, pierce, flare, seat.

    Parameters
    ----------
    parameters : SectionParameters
        Parameters of one joint, the set one [-]

    Returns
    -------
    dict of str to Section
        Section by the name of its stage, in order [-]

    Raises
    ------
    ValueError
        If the parameters are columns.

    Notes
    -----
    As ``setting_section``.

    Examples
    --------
    >>> from secondplate.section_parameters import usual_parameters
    >>> list(stage_sections(usual_parameters()))
    ['clamp', 'pierce', 'flare', 'seat']
    """
    return {name: setting_section(parameters, share) for name, share in STAGE_STROKES.items()}


def tool_outlines(parameters, section):
    """Return the tools round a section: punch on the head, nose on the top plate, die under the second plate.

    Parameters
    ----------
    parameters : SectionParameters
        Parameters of the joint [-]
    section : Section
        The section at some share of the stroke [-]

    Returns
    -------
    dict of str to numpy.ndarray
        Corners of punch, nose left, nose right and die [mm]

    Examples
    --------
    >>> from secondplate.section_parameters import usual_parameters
    >>> parameters = usual_parameters()
    >>> sorted(tool_outlines(parameters, setting_section(parameters, 1.0)))
    ['die', 'nose left', 'nose right', 'punch']
    """
    columns = parameters.columns()
    head = parameters.rivet.head_diameter_mm / 2
    level = section.outlines["rivet"][:, 1].max()
    upper = max(level, parameters.rivet.rivet_length_mm) + _TOOL_MM
    punch = np.array([[-head, level], [head, level], [head, upper], [-head, upper]])
    inner, outer = head + 0.4, edge_mm(columns)[0]
    nose = np.array([[inner, 0.0], [outer, 0.0], [outer, upper], [inner, upper]])
    return {
        "punch": punch,
        "nose left": (nose * [-1, 1])[::-1],
        "nose right": nose,
        "die": _die_outline(columns),
    }


def _die_outline(columns):
    """Return the outline of the die; its cavity is that of a button that fills it."""
    die = columns["die_diameter_mm"][0] / 2
    wall = die - DRAFT_MM
    corner = wall - _DIE_CORNER_MM * np.linspace(0.9, 0, 10) ** 2
    radius = np.append(np.linspace(0, wall - _DIE_CORNER_MM, 25), corner)
    sharp = columns | {"corner_mm": np.minimum(columns["corner_mm"], _DIE_CORNER_MM)}
    share = depth_share(sharp, radius[None, None], np.array([[wall]]))[0, 0]
    plane = -sum(columns[name][0] for name in ("top_plate_mm", "gap_mm", "second_plate_mm"))
    depth, edge = columns["die_depth_mm"][0], edge_mm(columns)[0]
    bottom = plane - depth - _TOOL_MM
    r = np.concatenate([radius, [die, die + RIM_MM, edge, edge, 0.0]])
    z = np.concatenate([plane - depth * share, [plane - WALL_TOP * depth, plane, plane, bottom, bottom]])
    right = np.stack([r, z], axis=-1)
    return np.concatenate([right, (right * [-1, 1])[::-1][1:-1]])[::-1]
