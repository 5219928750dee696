"""A section of a set joint: outlines of its parts in the plane of the rivet's axis.

x runs to the right from the axis, y upwards from the face of the top plate far from the rivet, in mm.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from secondplate.section_balance import shape
from secondplate.section_checks import requirements
from secondplate.section_parameters import SectionParameters
from secondplate.section_paths import sides
from secondplate.section_plates import DRAFT_MM, WALL_BOTTOM, WALL_TOP
from secondplate.section_rivet import unset_path

PARTS = ("rivet", "slug", "second plate", "top plate left", "top plate right", "gap left", "gap right")
_NO_AREA_MM2 = 1e-9
_BLOCK = 500  # joints shaped at once: what a call costs is spread, and their arrays stay near the processor


@dataclass(frozen=True, kw_only=True)
class Section:
    """Outlines of one set joint, or of a column of them.

    Parameters
    ----------
    outlines : Mapping of str to numpy.ndarray
        Corners of each of ``PARTS``, counter-clockwise, of shape (corners, 2) or (joints, corners, 2); parts
        meet in shared corners; the gap is left out where the plates lie on each other [mm]
    parameters : SectionParameters or None
        What it was built from, None where it was not built here [-]
    constructed : Mapping of str to float or numpy.ndarray
        What it was built to measure, by the names of ``section_measure.Measured`` [mm]

    Examples
    --------
    >>> from secondplate.section_parameters import usual_parameters
    >>> build_section(usual_parameters()).outlines["rivet"].shape[-1]
    2
    """

    outlines: Mapping[str, np.ndarray]
    parameters: SectionParameters | None = None
    constructed: Mapping[str, float]

    @property
    def several(self):
        """Whether this is a column of joints."""
        return self.outlines["rivet"].ndim == 3

    def one(self, number):
        """Return one joint of a column."""
        outlines = {name: outline[number] for name, outline in self.outlines.items()}
        constructed = {name: float(values[number]) for name, values in self.constructed.items()}
        parameters = self.parameters and self.parameters.one(number)
        return Section(outlines=open_parts(outlines), parameters=parameters, constructed=constructed)


def open_parts(outlines):
    """Leave out gaps without any area.

    Parameters
    ----------
    outlines : dict of str to numpy.ndarray
        Corners of each part [mm]

    Returns
    -------
    dict of str to numpy.ndarray
        The same, without a gap where the plates lie on each other in all joints [mm]

    Examples
    --------
    >>> open_parts({"gap left": np.zeros((3, 2))})
    {}
    """
    return {
        name: outline
        for name, outline in outlines.items()
        if not name.startswith("gap") or np.any(np.abs(_area(outline)) > _NO_AREA_MM2)
    }


def _area(outline):
    """Return the area of each outline."""
    x, y = outline[..., 0], outline[..., 1]
    return np.sum(x * np.roll(y, -1, axis=-1) - np.roll(x, -1, axis=-1) * y, axis=-1) / 2


def _halves(path, side):
    """Return one side of a path as points (x, y); the left one mirrored and turned to run the same way."""
    x, y = path[0][:, side], path[1][:, side]
    return np.stack([x, y], axis=-1) if side else np.stack([-x, y], axis=-1)[:, ::-1]


def whole_outline(path):
    """Join both sides of a half outline that begins and ends on the axis.

    Parameters
    ----------
    path : tuple of numpy.ndarray
        Radii and heights of shape (joints, 2, points) [mm]

    Returns
    -------
    numpy.ndarray
        Corners of shape (joints, corners, 2) [mm]

    Examples
    --------
    >>> triangle = np.array([[[0.0, 1.0, 0.0]] * 2]), np.array([[[0.0, 1.0, 2.0]] * 2])
    >>> whole_outline(triangle)[0].tolist()
    [[0.0, 0.0], [1.0, 1.0], [0.0, 2.0], [-1.0, 1.0]]
    """
    return np.concatenate([_halves(path, 1), _halves(path, 0)[:, 1:-1]], axis=1)


def _outlines(paths):
    """Return the outlines of all parts."""
    whole = {name: whole_outline(paths[name]) for name in ("rivet", "slug", "second plate")}
    split = {
        f"{name} {word}": _halves(paths[name], side)
        for name in ("top plate", "gap")
        for side, word in enumerate(("left", "right"))
    }
    return whole | split


def _constructed(joint):
    """Return what joints were built to measure, from parameters and balance, without any outline."""
    columns, form = joint.columns, joint.form
    under, floor = joint.under[1], joint.floor[1]
    depth = floor[:, 0, -1] - floor.min(axis=(1, 2))
    shank = joint.outside[2][0]
    later = np.minimum.accumulate(shank[..., ::-1], axis=-1)[..., ::-1]
    return {
        "interlock_left_mm": columns["interlock_left_mm"],
        "interlock_right_mm": columns["interlock_right_mm"],
        "remaining_thickness_mm": (under - floor[..., : under.shape[-1]]).min(axis=(1, 2)),
        "head_flushness_mm": columns["head_flushness_mm"],
        "tail_diameter_mm": np.sum(form.shank + form.flare, axis=1),
        "button_diameter_mm": 2 * _half_way_radius(joint, depth),
        "button_depth_mm": depth,
        "buckle_mm": (shank - later).max(axis=(1, 2)),
        "crack_mm": sides(columns, "crack").max(axis=1),
        "gap_mm": columns["gap_mm"],
    }


def _half_way_radius(joint, depth):
    """Return the radius of the button half-way down its wall, which is straight there."""
    whole = joint.button_mm
    share = (depth / 2 / whole - WALL_TOP) / (WALL_BOTTOM - WALL_TOP)
    return joint.columns["die_diameter_mm"] / 2 - DRAFT_MM * share


def _build_block(columns, required):
    """Build some joints: outlines, what they were built to measure, and which of them can be."""
    # What cannot be built may divide by nothing on the way; the requirements then refuse it by its name.
    with np.errstate(divide="ignore", invalid="ignore"):
        joint = shape(columns)
        needs = requirements(joint)
    if required:
        for need in needs:
            need.require()
    possible = np.all([need.kept for need in needs], axis=0)
    return _outlines(joint.paths), _constructed(joint), {"possible": possible}


def build_columns(columns, *, required=True):
    """Build joints from columns of numbers, a block at a time.

    Parameters
    ----------
    columns : dict of str to numpy.ndarray
        Parameters by name, each of one length, see ``SectionParameters.columns`` [-]
    required : bool
        Whether a joint that cannot be is refused, or only told [-]

    Returns
    -------
    built : tuple
        Corners of each part in mm, of shape (joints, corners, 2); what they were built to measure in mm; and
        whether each joint can be: the outlines of others mean nothing [-]

    Raises
    ------
    ValueError
        If one is required that cannot be.

    Examples
    --------
    >>> from secondplate.section_parameters import usual_parameters
    >>> bool(build_columns(usual_parameters().columns())[2][0])
    True
    """
    count = len(columns["web_mm"])
    blocks = [
        _build_block({name: column[first : first + _BLOCK] for name, column in columns.items()}, required)
        for first in range(0, count, _BLOCK)
    ]
    outlines, constructed, possible = (
        {name: np.concatenate([block[part][name] for block in blocks]) for name in blocks[0][part]}
        for part in range(3)
    )
    return outlines, constructed, possible["possible"]


def build_section(parameters):
    """Build the section of a set joint, or of a column of joints, without losing any metal.

    Rivet, interlock, lengths, head and draw-down are given; the bottom thickness, the button and the bending
    of the top plate follow from the volumes, which are kept to rounding.

    Parameters
    ----------
    parameters : SectionParameters
        What the joint is built from [-]

    Returns
    -------
    Section
        Outlines of all parts, and what they were built to measure [-]

    Raises
    ------
    ValueError
        If no such joint can be: the die too narrow or too shallow, the tail through the second plate or not
        in it, the slug longer than the bore, or lengths that the volumes do not allow.

    Notes
    -----
    The forms are drawn after usual sections, from memory; the balance is derived here. It is a teaching model
    of what a section looks like and no simulation of setting.

    Examples
    --------
    >>> from secondplate.section_parameters import usual_parameters
    >>> section = build_section(usual_parameters(head_flushness_mm=0.2))
    >>> round(section.constructed["remaining_thickness_mm"], 2)
    0.62
    """
    outlines, constructed, _ = build_columns(parameters.columns())
    if not parameters.several:
        outlines = {name: outline[0] for name, outline in outlines.items()}
        constructed = {name: float(values[0]) for name, values in constructed.items()}
    return Section(outlines=open_parts(outlines), parameters=parameters, constructed=constructed)


def unset_rivet_outline(parameters):
    """Return the outline of the rivet before setting, its face at height 0.

    Parameters
    ----------
    parameters : SectionParameters
        Parameters of one joint or of a column [-]

    Returns
    -------
    numpy.ndarray
        Corners of shape (corners, 2) or (joints, corners, 2) [mm]

    Examples
    --------
    >>> from secondplate.section_parameters import usual_parameters
    >>> float(unset_rivet_outline(usual_parameters())[:, 1].min())
    -5.5
    """
    outline = whole_outline(unset_path(parameters.columns()))
    return outline if parameters.several else outline[0]
