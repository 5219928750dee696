"""Tells which shaped joints can be, and refuses the others by one sentence with name, limit and value."""

from dataclasses import dataclass

import numpy as np

from secondplate.section_plates import DRAFT_MM

_CLEAR_MM = 0.35  # between the tail and the wall of the die
_LEAST_REACH_MM = 0.3  # of the leg into the second plate
_THICKENING = (0.7, 1.5)
_SINKING_MM = (-0.6, 0.9)


@dataclass(frozen=True, kw_only=True)
class Requirement:
    """One thing that a joint must keep.

    Parameters
    ----------
    name : str
        What must keep it [-]
    got : numpy.ndarray
        Its value, one a joint [-]
    side : str
        ``at least``, ``at most``, ``above`` or ``below`` [-]
    limit : float or numpy.ndarray
        The limit [-]
    unit : str
        Unit of both, empty where there is none [-]

    Examples
    --------
    >>> import numpy as np
    >>> die = Requirement(name="die depth", got=np.array([1.0]), side="at least", limit=1.2, unit="mm")
    >>> die.kept.tolist()
    [False]
    """

    name: str
    got: np.ndarray
    side: str
    limit: float
    unit: str

    @property
    def kept(self):
        """Tell for each joint whether it is kept; no number keeps nothing."""
        kept = {"at least": np.greater_equal, "at most": np.less_equal, "above": np.greater, "below": np.less}
        return kept[self.side](self.got, self.limit)

    def require(self):
        """Raise for the first joint that does not keep it."""
        wrong = np.flatnonzero(~self.kept)
        if wrong.size:
            limit = np.broadcast_to(self.limit, self.got.shape)[wrong[0]]
            limit, got = (f"{value:.4g} {self.unit}".strip() for value in (limit, self.got[wrong[0]]))
            message = f"{self.name} must be {self.side} {limit}, got {got}"
            raise ValueError(message)


def requirements(joint):
    """Return what shaped joints must keep, in the order in which it is to be told.

    Parameters
    ----------
    joint : Shape
        Shaped joints [-]

    Returns
    -------
    tuple of Requirement
        Die wide enough, lengths that fit, steel for the set length, slug under the web, metal under the tail,
        die deep enough [-]

    Examples
    --------
    >>> from secondplate.section_balance import shape
    >>> from secondplate.section_parameters import usual_parameters
    >>> requirements(shape(usual_parameters(set_length_left_mm=4.0).columns()))[3].require()
    Traceback (most recent call last):
    ValueError: thickening of the wall at the set length must be at most 1.5, got ...
    """
    form, columns = joint.form, joint.columns
    tail = joint.under[0][..., -1].max(axis=1)
    under, floor = joint.under[1], joint.floor[1]
    die_mm, room_mm = columns["die_diameter_mm"], columns["die_depth_mm"]
    drawn_mm = columns["top_plate_mm"] + columns["draw_down_mm"]
    reach_mm = (form.entry - form.outermost).min(axis=1)
    remaining_thickness_mm = (under - floor[..., : under.shape[-1]]).min(axis=(1, 2))
    depth_mm = floor[:, 0, -1] - floor.min(axis=(1, 2))
    thickening = np.where(np.isfinite(joint.thickening), joint.thickening, np.inf)  # no wall has that volume
    thick, bend = "thickening of the wall at the set length", "bending of the top plate beyond its draw down"
    listed = (
        ("top plate with its draw down", drawn_mm, "above", 0.1 - form.neck[:, 0], "mm"),
        ("reach into the second plate", reach_mm, "at least", _LEAST_REACH_MM, "mm"),
        (thick, thickening.min(axis=1), "at least", _THICKENING[0], ""),
        (thick, thickening.max(axis=1), "at most", _THICKENING[1], ""),
        ("die diameter", die_mm, "at least", 2 * (tail + _CLEAR_MM + DRAFT_MM), "mm"),
        ("slug above the straight part of the bore", joint.slug_top, "below", -0.02, "mm"),
        (bend, joint.sinking, "at least", _SINKING_MM[0], "mm"),
        (bend, joint.sinking, "at most", _SINKING_MM[1], "mm"),
        ("second plate left under the tail", remaining_thickness_mm, "above", 0.0, "mm"),
        ("die depth, for this button,", room_mm, "at least", depth_mm, "mm"),
    )
    return tuple(
        Requirement(name=name, got=got, side=side, limit=limit, unit=unit)
        for name, got, side, limit, unit in listed
    )
