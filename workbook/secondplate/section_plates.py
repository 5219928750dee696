"""Forms of the plates round a set rivet: interface, face, slug and button, many joints at once.

The forms are drawn after sections of usual joints, from memory; their depths come out of ``section_balance``.
"""

import numpy as np

from secondplate.rivet import TIP_RADIUS_SHARE
from secondplate.section_paths import both, join, points, run, sides

MARGIN_MM = 3.0  # the plates are drawn this far beyond the die
SHARED_POINTS = 12  # of the interface, from the rivet to where the plates begin to part
WALL_TOP, WALL_BOTTOM = 0.12, 0.55  # straight part of the button's wall, as shares of its depth
DRAFT_MM = 0.25  # of the button's wall
RIM_MM = 0.2  # upper edge of the button's wall
_BEYOND_MM = 0.6  # the plates are bent down this far beyond the die
_TONGUE_SHARE = 0.25  # part of the draw-down that clings to the shank; the rest is bending into the die
_ROLL_OVER_MM = 0.35
_CRACK_HALF_WIDTH_MM = 0.03
_TAIL_POINTS, _CORNER_POINTS = 5, 14
DOME_MEAN = 0.5 - 2 / np.pi**2  # mean height of a cosine dome of unit height over its disc


def edge_mm(columns):
    """Return the radius at which the plates are cut off.

    Parameters
    ----------
    columns : dict of str to numpy.ndarray
        Parameters by name, each of one length, see ``SectionParameters.columns`` [-]

    Returns
    -------
    numpy.ndarray
        Radius, one a joint [mm]

    Examples
    --------
    >>> import numpy as np
    >>> edge_mm({"die_diameter_mm": np.array([9.0])}).tolist()
    [7.5]
    """
    return columns["die_diameter_mm"] / 2 + MARGIN_MM


def interface(columns, entry_radius):
    """Return the path between the plates from the rivet outwards, how it sinks and how the plates part.

    Parameters
    ----------
    columns : dict of str to numpy.ndarray
        Parameters by name, each of one length, see ``SectionParameters.columns`` [-]
    entry_radius : numpy.ndarray
        Radius at which the rivet passes into the second plate, of shape (joints, 2) [mm]

    Returns
    -------
    curves : tuple
        Path in mm of the underside of the top plate before it sinks, share of the sinking at each point, and
        share of the gap at each point [-]

    Examples
    --------
    >>> import numpy as np
    >>> from secondplate.section_parameters import usual_parameters
    >>> path, sinking, parting = interface(usual_parameters().columns(), np.full((1, 2), 2.7))
    >>> float(path[1][0, 0, 0]), float(path[1][0, 0, -1])
    (-3.45, -2.0)
    """
    thickness = both(columns["top_plate_mm"])
    width = both(columns["die_diameter_mm"]) / 2 + _BEYOND_MM - entry_radius
    begin = np.clip(both(columns["gap_reach_mm"]) / width, 0, 0.9)
    outer = run(begin, np.ones_like(width), 12, ends="after")
    share = np.concatenate([run(np.zeros_like(width), begin, SHARED_POINTS), outer], axis=-1)
    bend = (1 - _TONGUE_SHARE) * (1 + np.cos(np.pi * share)) / 2 + _TONGUE_SHARE * (1 - share) ** 4
    height = -thickness[..., None] - both(columns["draw_down_mm"])[..., None] * bend
    opening = np.clip((share - begin[..., None]) / (0.7 * (1 - begin[..., None])), 0, 1)
    end = points((both(edge_mm(columns)), -thickness))
    path = join((entry_radius[..., None] + width[..., None] * share, height), end)
    zero = np.zeros_like(end[0])
    sinking = np.concatenate([np.sin(np.pi * share) ** 2, zero], axis=-1)
    return path, sinking, np.concatenate([opening**2 * (3 - 2 * opening), zero + 1], axis=-1)


def face_of_top_plate(columns, form, contact):
    """Return the face of the top plate from its edge inwards to where it touches the rivet head.

    Parameters
    ----------
    columns : dict of str to numpy.ndarray
        Parameters by name, each of one length, see ``SectionParameters.columns`` [-]
    form : RivetForm
        The set rivet [-]
    contact : numpy.ndarray
        Height at which the plate touches the head, of shape (joints, 2) [mm]

    Returns
    -------
    tuple of numpy.ndarray
        The path [mm]

    Examples
    --------
    >>> from secondplate.section_parameters import usual_parameters
    >>> from secondplate.section_rivet import SEAT_MM, set_form
    >>> columns = usual_parameters().columns()
    >>> form = set_form(columns)
    >>> abs(float(face_of_top_plate(columns, form, form.rim - SEAT_MM)[1].max()))
    0.0
    """
    edge = both(edge_mm(columns))
    width = _ROLL_OVER_MM + 0.6 * np.abs(contact)
    share = np.linspace(1, 0, 9)
    # Level under the rim, so that it never meets the head's underside, then up by a round shoulder; close to
    # the shank while the head still stands high.
    begin = np.where(form.neck > contact, form.shank, form.head_radius) + 0.02
    radius = begin[..., None] + width[..., None] * share
    height = contact[..., None] * (1 + np.cos(np.pi * share)) / 2
    touch = form.outer(contact[..., None])[..., 0]
    return join(points((edge, np.zeros_like(edge))), (radius, height), points((touch, contact)))


def dome(radius, height, apex, count):
    """Return a gentle curve from the axis to a point on the wall of the bore.

    Parameters
    ----------
    radius : numpy.ndarray
        Radius of the point on the wall, of shape (joints, 2) [mm]
    height : numpy.ndarray
        Its height [mm]
    apex : numpy.ndarray
        Height on the axis [mm]
    count : int
        Number of points [-]

    Returns
    -------
    tuple of numpy.ndarray
        The path [mm]

    Examples
    --------
    >>> import numpy as np
    >>> dome(np.ones((1, 2)), np.zeros((1, 2)), np.ones((1, 2)), 3)[1][0, 0].tolist()
    [1.0, 0.5, 0.0]
    """
    share = np.linspace(0, 1, count)
    rise = (apex - height)[..., None] * (1 + np.cos(np.pi * share)) / 2
    return radius[..., None] * share, height[..., None] + rise


def underside(columns, inner_radii):
    """Return the underside of the second plate from the axis outwards: radii, depth shares and cracks.

    Parameters
    ----------
    columns : dict of str to numpy.ndarray
        Parameters by name, each of one length, see ``SectionParameters.columns`` [-]
    inner_radii : numpy.ndarray
        Radii under bore and tail, rising to that of the outermost point of the tail [mm]

    Returns
    -------
    curves : tuple of numpy.ndarray
        Radii in mm, depth of the button there over its greatest, and depth of the crack there in mm, each of
        shape (joints, 2, points) [-]

    Examples
    --------
    >>> import numpy as np
    >>> from secondplate.section_parameters import usual_parameters
    >>> inner = np.linspace(0, 3, 4) + np.zeros((1, 2, 1))
    >>> underside(usual_parameters().columns(), inner)[1][0, 0, :4].tolist()
    [1.0, 1.0, 1.0, 1.0]
    """
    die, tail = both(columns["die_diameter_mm"]) / 2, inner_radii[..., -1]
    wall, beside = die - DRAFT_MM, _CRACK_HALF_WIDTH_MM
    crack = (tail + wall) / 2
    radius = np.concatenate(
        [
            inner_radii,
            run(tail, crack - beside, _TAIL_POINTS, ends="after"),
            np.stack([crack, crack + beside], axis=-1),
            run(crack + beside, wall, _CORNER_POINTS, power=0.5, ends="after"),
        ],
        axis=-1,
    )
    number = np.arange(radius.shape[-1]) - (inner_radii.shape[-1] + _TAIL_POINTS - 1)
    # The lips of a crack stand level, so that its depth is plain.
    share = depth_share(columns, np.where(np.abs(number) <= 1, crack[..., None], radius), wall)
    depth = np.where(number == 0, sides(columns, "crack")[..., None], 0.0)
    rim = np.stack([die, die + RIM_MM, die + MARGIN_MM], axis=-1)
    rest = np.broadcast_to([WALL_TOP, 0.0, 0.0], rim.shape)
    parts = (radius, rim), (share, rest), (depth, 0 * rim)
    return tuple(np.concatenate(pair, axis=-1) for pair in parts)


def depth_share(columns, radius, wall):
    """Return the depth of the button over its greatest: even floor, round corner, and the tip of the die.

    Parameters
    ----------
    columns : dict of str to numpy.ndarray
        Parameters by name, each of one length, see ``SectionParameters.columns`` [-]
    radius : numpy.ndarray
        Radii up to the lower end of the straight wall, of shape (joints, 2, points) [mm]
    wall : numpy.ndarray
        Radius of that end, of shape (joints, 2) [mm]

    Returns
    -------
    numpy.ndarray
        Share of the depth [-]

    Examples
    --------
    >>> import numpy as np
    >>> from secondplate.section_parameters import usual_parameters
    >>> radius, wall = np.array([[[0.0, 4.25]]]), np.array([[4.25]])
    >>> depth_share(usual_parameters().columns(), radius, wall)[0, 0].tolist()
    [1.0, 0.55]
    """
    corner = both(columns["corner_mm"])[..., None]
    share = np.clip((radius - wall[..., None] + corner) / corner, 0, 1)
    floor = 1 - (1 - WALL_BOTTOM) * (1 - np.sqrt(1 - share * share))
    tip_radius = TIP_RADIUS_SHARE * both(columns["die_diameter_mm"])[..., None] / 2
    tip = (1 + np.cos(np.pi * np.clip(radius / tip_radius, 0, 1))) / 2
    return floor - both(columns["die_tip_mm"] / columns["die_depth_mm"])[..., None] * tip
