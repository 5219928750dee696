"""Refuses joints that cannot be: each impossible shape by one sentence with name, limit and value."""

import numpy as np

from secondplate.section_plates import DRAFT_MM

_CLEAR_MM = 0.35  # between the tail and the wall of the die
_LEAST_LEG_MM = 0.3  # of the leg in the second plate
_THICKENING = (0.7, 1.4)
_SINKING_MM = (-0.6, 0.9)


def _refuse(holds, name, must, got, unit):
    """Raise for the first joint for which a condition does not hold."""
    wrong = np.flatnonzero(~holds)
    if wrong.size:
        limit = np.broadcast_to(must[1], holds.shape).flat[wrong[0]]
        value = np.broadcast_to(got, holds.shape).flat[wrong[0]]
        message = f"{name} must be {must[0]} {limit:.4g} {unit}, got {value:.4g} {unit}"
        raise ValueError(message.replace(" ,", ",").rstrip())


def require_possible(joint):
    """Return a shape, or raise where it stands for a joint that cannot be.

    Parameters
    ----------
    joint : Shape
        Shaped joints [-]

    Returns
    -------
    Shape
        The same [-]

    Raises
    ------
    ValueError
        If the die is too narrow or too shallow, the rivet does not reach into the second plate or goes through
        it, the slug does not fit the bore, or lengths and draw-down do not suit the volumes.

    Examples
    --------
    >>> from secondplate.section_balance import shape
    >>> from secondplate.section_parameters import usual_parameters
    >>> _ = require_possible(shape(usual_parameters(set_length_left_mm=4.5).columns()))
    Traceback (most recent call last):
    ValueError: thickening of the wall by the set length must be at most 1.4, got ...
    """
    form, columns = joint.form, joint.columns
    tail = joint.under[0][..., -1].max(axis=1)
    least = 2 * (tail + _CLEAR_MM + DRAFT_MM)
    die = columns["die_diameter_mm"]
    _refuse(die >= least, "die diameter", ("at least", least), die, "mm")
    _require_lengths(form, columns)
    _require_thickening(joint.thickening)
    sinking, (low, high) = joint.sinking, _SINKING_MM
    name = "bending of the top plate beyond the draw down"
    _refuse(sinking >= low, name, ("at least", low), sinking, "mm")
    _refuse(sinking <= high, name, ("at most", high), sinking, "mm")
    web = (form.face - form.web)[:, 0]
    _refuse(joint.slug_top < web, "top of the slug", ("below the web at", web), joint.slug_top, "mm")
    floor = joint.floor[1][..., : joint.under[1].shape[-1]]
    remaining = (joint.under[1] - floor).min(axis=(1, 2))
    _refuse(remaining > 0, "second plate left under the tail", ("above", 0), remaining, "mm")
    depth = joint.floor[1][..., -1].min(axis=1) - joint.floor[1].min(axis=(1, 2))
    room = columns["die_depth_mm"]
    _refuse(room >= depth, "die depth", ("at least what the button asks for,", depth), room, "mm")
    return joint


def _require_lengths(form, columns):
    """Refuse a leg that does not reach the second plate, and a head that is thicker than the top plate."""
    depth = columns["top_plate_mm"] + columns["draw_down_mm"]
    least = (form.face - form.neck)[:, 0] - form.face[:, 0] + 0.1
    _refuse(depth > least, "top plate with its draw down", ("above the head of", least), depth, "mm")
    reach = (form.entry - form.outermost).min(axis=1)
    _refuse(reach >= _LEAST_LEG_MM, "reach into the second plate", ("at least", _LEAST_LEG_MM), reach, "mm")


def _require_thickening(thickening):
    """Refuse a set length that the steel of the rivet cannot fill."""
    found = np.where(np.isfinite(thickening), thickening, np.inf)
    name, (low, high) = "thickening of the wall by the set length", _THICKENING
    _refuse(found.min(axis=1) >= low, name, ("at least", low), found.min(axis=1), "")
    _refuse(found.max(axis=1) <= high, name, ("at most", high), found.max(axis=1), "")
