"""Shapes set joints so that no metal is lost: rivet, top plate with slug, second plate with button.

The wall of the rivet thickens until the set rivet has the volume of the unset one; the top plate sinks until
it has what the slug has left; the button grows to hold what the second plate was pressed out of. Each step is
linear or quadratic and solved exactly. Leaves out spring-back and thinning of the plates far from the rivet.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.section_paths import back, both, cut, join
from secondplate.section_plates import (
    DOME_MEAN,
    SHARED_POINTS,
    dome,
    edge_mm,
    face_of_top_plate,
    interface,
    underside,
)
from secondplate.section_rivet import (
    SEAT_MM,
    WALL_POINTS,
    RivetForm,
    rivet_path,
    set_form,
    unset_path,
    wall_thickening,
)
from secondplate.section_volume import half_volume_mm3

_BELOW, _ALONG, _ABOVE = WALL_POINTS
# The head's rim may stand above the plate; the plate then touches the underside this far below its face.
_TOUCH_MM = 0.08


@dataclass(frozen=True, kw_only=True)
class Shape:
    """One column of shaped joints.

    Parameters
    ----------
    columns : dict of str to numpy.ndarray
        Parameters by name [-]
    form : RivetForm
        The set rivet [-]
    paths : dict of str to tuple
        Half outlines by part, counter-clockwise, radii and heights of shape (joints, 2, points) [mm]
    outside : tuple of tuple
        Head, seat, shank and leg of the rivet as paths downwards [mm]
    under : tuple of numpy.ndarray
        Second plate's upper boundary from the axis to the outermost point of the tail [mm]
    floor : tuple of numpy.ndarray
        Its underside from the axis to the edge [mm]
    thickening : numpy.ndarray
        Factor on the rivet's wall [-]
    slug_top : numpy.ndarray
        How far the slug stands above the straight part of the bore, below 0 where it fits [mm]
    sinking : numpy.ndarray
        How far the interface sinks by bending [mm]
    button_mm : numpy.ndarray
        Depth of an even floor of the button [mm]

    Examples
    --------
    >>> from secondplate.section_parameters import usual_parameters
    >>> sorted(shape(usual_parameters().columns()).paths)
    ['gap', 'rivet', 'second plate', 'slug', 'top plate']
    """

    columns: dict
    form: RivetForm
    paths: dict
    outside: tuple
    under: tuple
    floor: tuple
    thickening: np.ndarray
    slug_top: np.ndarray
    sinking: np.ndarray
    button_mm: np.ndarray


def _share_for(volume, none, whole):
    """Return the share of a change of height between two paths that gives a volume; V is linear in it."""
    first, last = (half_volume_mm3(*path).mean(axis=1) for path in (none, whole))
    return ((volume - first) / (last - first))[:, None, None]


def _between(share, none, whole):
    """Return the path a share of the way between two paths of equal radii."""
    return none[0], none[1] + share * (whole[1] - none[1])


def _top_plate(columns, form, contact, outside, slug_mm3):
    """Return the top plate, the underside of it, the face of the second plate, and the sinking."""
    _, seat, shank, _ = outside
    path, sinking, parting = interface(columns, shank[0][..., -1])
    rest = join(face_of_top_plate(columns, form, contact), cut(join(seat, shank), None, -1))
    kept = np.pi * edge_mm(columns) ** 2 * columns["top_plate_mm"] - slug_mm3
    sunk = path[0], path[1] - sinking
    sag = _share_for(kept, join(path, rest), join(sunk, rest))
    upper = _between(sag, path, sunk)
    lower = upper[0], upper[1] - both(columns["gap_mm"])[..., None] * parting
    return join(upper, rest), upper, lower, sag[:, 0, 0]


def _rivet(columns, form, outside, slug_mm3):
    """Return the thickening of the wall, the level of the slug's top, the inner wall and the half outline."""
    steel = half_volume_mm3(*unset_path(columns))
    trial = wall_thickening(outside, form.inside((form.foot + form.shoulder) / 2), steel)
    level = _slug_level(form, trial, slug_mm3, columns["hump_mm"])
    inside = form.inside(level)
    thickening = wall_thickening(outside, inside, steel)
    wall = inside[0] - thickening[..., None] * inside[1], inside[2]
    return thickening, level, wall, rivet_path(outside, inside, thickening)


def _slug_level(form, thickening, slug_mm3, hump_mm):
    """Estimate the height of the slug's top on the wall; its dome makes up the rest."""
    bottom = form.foot.mean(axis=1, keepdims=True) + DOME_MEAN * hump_mm[:, None]
    level = bottom + (slug_mm3 / (np.pi * form.bore[:, 0] ** 2))[:, None]
    share = np.linspace(0, 1, 7)
    for _ in range(3):
        heights = form.foot[..., None] * (1 - share) + level[..., None] * share
        a, b = form.wall(heights)
        area = np.pi * np.mean((a - thickening[..., None] * b) ** 2, axis=(1, 2))
        level = bottom + (slug_mm3 / area)[:, None]
    return np.broadcast_to(level, form.foot.shape)


def _slug(columns, form, wall, level, slug_mm3):
    """Return the slug and its lower boundary from the axis to the wall."""
    middle = both(form.foot.mean(axis=1) + columns["hump_mm"])
    bottom = dome(wall[0][..., _BELOW - 1], form.foot, middle, 10)
    along = cut(wall, _BELOW, _BELOW + _ALONG)
    lids = [cut(back(dome(along[0][..., -1], level, level + lift, 10)), 1) for lift in (0.0, 1.0)]
    flat, raised = (join(bottom, along, lid) for lid in lids)
    return _between(_share_for(slug_mm3, flat, raised), flat, raised), bottom


def _over(form, level, slug):
    """Return how far the slug stands above the straight wall of the bore, or its dome into the web."""
    into_web = slug[1].max(axis=(1, 2)) - (form.head_level - form.web)[:, 0]
    return np.maximum((level - form.shoulder).max(axis=1), into_web)


def _second_plate(columns, under, over):
    """Return the second plate and its underside: the button as deep as the metal asks for."""
    radius, share, crack = underside(columns, under[0])
    plane = -both(columns["top_plate_mm"] + columns["gap_mm"] + columns["second_plate_mm"])[..., None]
    flat, deep = (radius, plane + crack), (radius, plane + crack - share)
    metal = np.pi * edge_mm(columns) ** 2 * columns["second_plate_mm"]
    depth = _share_for(metal, join(flat, over), join(deep, over))
    floor = _between(depth, flat, deep)
    return join(floor, over), floor, depth[:, 0, 0]


def shape(columns):
    """Shape one column of joints.

    Parameters
    ----------
    columns : dict of str to numpy.ndarray
        Parameters by name, each of one length, see ``SectionParameters.columns`` [-]

    Returns
    -------
    Shape
        The joints; nothing is checked here, see ``section_checks`` [-]

    Examples
    --------
    >>> from secondplate.section_parameters import usual_parameters
    >>> round(float(shape(usual_parameters().columns()).thickening[0, 0]), 2)
    1.02
    """
    form = set_form(columns)
    contact = np.minimum(form.rim - SEAT_MM, -_TOUCH_MM)
    outside = form.outside(contact)
    slug_mm3 = columns["slug_share"] * np.pi * form.bore[:, 0] ** 2 * columns["top_plate_mm"]
    thickening, level, wall, rivet = _rivet(columns, form, join(*outside), slug_mm3)
    top, upper, lower, sinking = _top_plate(columns, form, contact, outside, slug_mm3)
    slug, bottom = _slug(columns, form, wall, level, slug_mm3)
    leg, tip = outside[-1], cut(wall, 0, _BELOW)
    under = join(bottom, cut(back(tip), 1), cut(leg, -1))
    over = join(back(lower), leg, tip, cut(back(bottom), 1))
    second, floor, button = _second_plate(columns, under, over)
    gap = join(cut(lower, SHARED_POINTS - 1), cut(back(upper), None, -SHARED_POINTS))
    return Shape(
        columns=columns,
        form=form,
        paths={"rivet": rivet, "top plate": top, "slug": slug, "second plate": second, "gap": gap},
        outside=outside,
        under=under,
        floor=floor,
        thickening=thickening,
        slug_top=_over(form, level, slug),
        sinking=sinking,
        button_mm=button,
    )
