"""Checks outlines that came from elsewhere, such as points read off a photograph, and makes them a section.

Leaves out whether parts overlap each other.
"""

import numpy as np

from secondplate.checks import require_finite
from secondplate.section_joint import PARTS, Section

_NEEDED = tuple(part for part in PARTS if not part.startswith(("gap", "slug")))


def crossing_mm(outline):
    """Return where an outline crosses itself.

    Parameters
    ----------
    outline : numpy.ndarray
        Corners in order, of shape (corners, 2) [mm]

    Returns
    -------
    tuple of float or None
        x and y of the first crossing found, None where there is none [mm]

    Notes
    -----
    Source: plane_geometry: two edges cross where the ends of each lie on both sides of the other.

    Examples
    --------
    >>> import numpy as np
    >>> crossing_mm(np.array([[0, 0], [2, 2], [2, 0], [0, 2]]))
    (1.0, 1.0)
    """
    start = np.asarray(outline, dtype=float)
    edge = np.roll(start, -1, axis=0) - start
    between = start[None] - start[:, None]
    cross = edge[:, None, 0] * edge[None, :, 1] - edge[:, None, 1] * edge[None, :, 0]
    with np.errstate(divide="ignore", invalid="ignore"):  # parallel edges never count
        along = (between[..., 0] * edge[None, :, 1] - between[..., 1] * edge[None, :, 0]) / cross
    inside = (along > 0) & (along < 1) & np.isfinite(along)
    found = np.argwhere(inside & inside.T)
    if not len(found):
        return None
    first = found[0]
    place = start[first[0]] + along[first[0], first[1]] * edge[first[0]]
    return float(place[0]), float(place[1])


def section_of_outlines(outlines):
    """Make a section of outlines, refusing what no section can be.

    Parameters
    ----------
    outlines : Mapping of str to array
        Corners of each part by its name: rivet, both sides of the top plate, second plate; slug and gap may
        be there too; either way round [mm]

    Returns
    -------
    Section
        The section, its outlines counter-clockwise; to be measured by ``measure`` [-]

    Raises
    ------
    ValueError
        If a part is missing or unknown, has too few corners, is not finite or crosses itself.

    Examples
    --------
    >>> from secondplate.section_joint import build_section
    >>> from secondplate.section_parameters import usual_parameters
    >>> known = build_section(usual_parameters()).outlines
    >>> section_of_outlines(known).outlines.keys() == known.keys()
    True
    """
    for part in _NEEDED:
        if part not in outlines:
            got = ", ".join(sorted(outlines)) or "none"
            message = f"section must have an outline of the {part}, got {got}"
            raise ValueError(message)
    return Section(outlines={part: _checked(part, outlines[part]) for part in outlines}, constructed={})


def _checked(part, outline):
    """Return one outline counter-clockwise, or raise."""
    if part not in PARTS:
        message = f"part must be one of {', '.join(PARTS)}, got {part!r}"
        raise ValueError(message)
    corners = np.asarray(require_finite(f"outline of the {part}", np.asarray(outline), unit="mm"))
    if corners.ndim != 2 or corners.shape[1] != 2 or len(corners) < 3:
        message = f"outline of the {part} must have at least 3 corners of x and y, got shape {corners.shape}"
        raise ValueError(message)
    place = crossing_mm(corners)
    if place is not None:
        where = f"{place[0]:.3g} mm, {place[1]:.3g} mm"
        message = f"outline of the {part} must not cross itself, got a crossing at {where}"
        raise ValueError(message)
    following = np.roll(corners, -1, axis=0)
    area = np.sum(corners[:, 0] * following[:, 1] - following[:, 0] * corners[:, 1])
    return corners if area > 0 else corners[::-1]
