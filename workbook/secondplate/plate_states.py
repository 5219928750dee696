"""What the second plate looks like after each way of removal: pulled, drilled or punched.

Plain geometry of what the rivet, the drill or the punch leaves. It leaves out how the plate was bent while it
happened and cracks, which have to be looked for.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between, require_truth
from secondplate.tables import load

PULLED_WHOLE, PULLED_TORN, DRILLED_DIMPLE, DRILLED_HOLE, PUNCHED = (row.name for row in load("plate_states"))
PLATE_STATES = (PULLED_WHOLE, PULLED_TORN, DRILLED_DIMPLE, DRILLED_HOLE, PUNCHED)
# What is seen of each state, and what it means for the work that follows.
STATE_SEEN: Mapping[str, str] = MappingProxyType({row.name: row.value for row in load("plate_states")})
STATE_MEANS: Mapping[str, str] = MappingProxyType(
    {row.name: row.keys["means"] for row in load("plate_states")}
)


@dataclass(frozen=True, kw_only=True)
class PlateLeft:
    """What is left of a second plate at one site; arrays stand for a column of sites.

    Parameters
    ----------
    plate_state : str or array
        One of ``PLATE_STATES`` [-]
    hole_diameter_mm : float or array
        Diameter of the hole right through, 0 where there is none [mm]
    mark_diameter_mm : float or array
        Diameter of the cup, dimple or hole at the upper face [mm]
    mark_depth_mm : float or array
        Depth of the cup or dimple below the upper face; of the whole plate for a hole [mm]
    least_thickness_mm : float or array
        Least metal left, 0 for a hole [mm]
    button_diameter_mm : float or array
        Diameter of the button, 0 where it is lost [mm]
    button_depth_mm : float or array
        How far the button stands proud, 0 where it is lost [mm]

    Examples
    --------
    >>> left = after_punching(second_plate_mm=1.5, button_diameter_mm=9)
    >>> left.plate_state, left.hole_diameter_mm
    ('punched, button lost', 9.0)
    """

    plate_state: str
    hole_diameter_mm: float
    mark_diameter_mm: float
    mark_depth_mm: float
    least_thickness_mm: float
    button_diameter_mm: float
    button_depth_mm: float

    @property
    def tight(self):
        """Whether some metal is left everywhere, so that nothing leaks."""
        return self.least_thickness_mm > 0


def _left(state, **sizes):
    """Bring all sizes to one shape and make the record."""
    state, *arrays = np.broadcast_arrays(state, *(np.asarray(size, dtype=float) for size in sizes.values()))
    word = str(state) if state.ndim == 0 else state
    return PlateLeft(plate_state=word, **dict(zip(sizes, map(plain, arrays), strict=True)))


def after_pulling(
    *,
    second_plate_mm,
    remaining_thickness_mm,
    tail_diameter_mm,
    button_diameter_mm,
    button_depth_mm,
    torn=False,
):
    """Return what is left where the rivet was drawn out: a cup, and the button under it.

    Parameters
    ----------
    second_plate_mm : float or array
        Thickness of the second plate beside the site, above 0 [mm]
    remaining_thickness_mm : float or array
        Metal under the tail, at least 0; 0 tears the skin [mm]
    tail_diameter_mm : float or array
        Diameter of the spread tail, above 0 [mm]
    button_diameter_mm : float or array
        Diameter of the button, at least that of the tail [mm]
    button_depth_mm : float or array
        How far the button stands proud, at least 0 [mm]
    torn : bool or array
        Whether the skin tore while it was pulled [-]

    Returns
    -------
    PlateLeft
        State and sizes [-]

    Raises
    ------
    ValueError
        If a size lies outside its range, more is left under the tail than there was, or torn is neither true
        nor false.

    Notes
    -----
    A tear is taken as wide as the tail, its worst. Source: plane_geometry, and practice for what is seen.

    Examples
    --------
    >>> left = after_pulling(second_plate_mm=1.5, remaining_thickness_mm=0.5, tail_diameter_mm=7,
    ...                      button_diameter_mm=9, button_depth_mm=1.2)
    >>> left.plate_state, round(left.mark_depth_mm, 2), left.tight
    ('pulled, skin whole', 2.2, True)
    """
    plate = require_above("thickness of the second plate", second_plate_mm, 0, unit="mm")
    left = np.asarray(require_at_least("remaining thickness", remaining_thickness_mm, 0, unit="mm"))
    tail = require_above("diameter of the tail", tail_diameter_mm, 0, unit="mm")
    button = require_above("diameter of the button", button_diameter_mm, 0, unit="mm")
    require_at_least("diameter of the button less that of the tail", np.subtract(button, tail), 0, unit="mm")
    depth = require_at_least("height of the button", button_depth_mm, 0, unit="mm")
    cup = np.add(plate, depth) - left
    require_at_least("depth of the cup", cup, 0, unit="mm")
    through = np.asarray(require_truth("skin torn", torn)) | (left == 0)
    return _left(
        np.where(through, PULLED_TORN, PULLED_WHOLE),
        hole_diameter_mm=np.where(through, tail, 0.0),
        mark_diameter_mm=tail,
        mark_depth_mm=cup,
        least_thickness_mm=np.where(through, 0.0, left),
        button_diameter_mm=button,
        button_depth_mm=depth,
    )


def after_drilling(
    *,
    metal_mm,
    tip_depth_mm,
    drill_diameter_mm,
    point_angle_deg=118.0,
    button_diameter_mm=0.0,
    button_depth_mm=0.0,
):
    """Return what is left where the rivet was drilled out: a dimple, or a hole where the tip came through.

    Parameters
    ----------
    metal_mm : float or array
        Metal on the axis of the drill that was there before the tip met it, above 0 [mm]
    tip_depth_mm : float or array
        How far the tip went into it, at least 0 [mm]
    drill_diameter_mm : float or array
        Diameter of the drill, above 0 [mm]
    point_angle_deg : float or array
        Point angle of the drill, 60 to 170 [deg]
    button_diameter_mm : float or array
        Diameter of the button, at least 0 [mm]
    button_depth_mm : float or array
        How far the button stands proud, at least 0 [mm]

    Returns
    -------
    PlateLeft
        State and sizes [-]

    Raises
    ------
    ValueError
        If a size lies outside its range.

    Notes
    -----
    The cone of the point is ``2 depth tan(angle/2)`` wide, at most the drill. Source: plane_geometry.

    Examples
    --------
    >>> left = after_drilling(metal_mm=1.5, tip_depth_mm=[1.0, 2.0], drill_diameter_mm=5)
    >>> left.plate_state.tolist(), left.hole_diameter_mm.round(2).tolist()
    (['drilled, dimple', 'drilled, hole'], [0.0, 1.66])
    """
    metal = np.asarray(require_above("metal under the drill", metal_mm, 0, unit="mm"))
    tip = np.asarray(require_at_least("depth of the tip", tip_depth_mm, 0, unit="mm"))
    drill = require_above("drill diameter", drill_diameter_mm, 0, unit="mm")
    angle = np.asarray(require_between("point angle", point_angle_deg, 60, 170, unit="deg"))
    require_at_least("diameter of the button", button_diameter_mm, 0, unit="mm")
    require_at_least("height of the button", button_depth_mm, 0, unit="mm")
    widening = 2 * np.tan(np.radians(angle) / 2)
    beyond = np.maximum(0.0, tip - metal)
    return _left(
        np.where(tip >= metal, DRILLED_HOLE, DRILLED_DIMPLE),
        hole_diameter_mm=np.minimum(drill, widening * beyond),
        mark_diameter_mm=np.minimum(drill, widening * tip),
        mark_depth_mm=np.minimum(tip, metal),
        least_thickness_mm=np.maximum(0.0, metal - tip),
        button_diameter_mm=button_diameter_mm,
        button_depth_mm=button_depth_mm,
    )


def after_punching(*, second_plate_mm, button_diameter_mm):
    """Return what is left where the rivet was punched out with its button: a hole as wide as the button.

    Parameters
    ----------
    second_plate_mm : float or array
        Thickness of the second plate, above 0 [mm]
    button_diameter_mm : float or array
        Diameter of the button, above 0 [mm]

    Returns
    -------
    PlateLeft
        State and sizes [-]

    Raises
    ------
    ValueError
        If a size lies outside its range.

    Notes
    -----
    Source: plane_geometry, and practice for what is seen.

    Examples
    --------
    >>> after_punching(second_plate_mm=1.5, button_diameter_mm=9).least_thickness_mm
    0.0
    """
    plate = require_above("thickness of the second plate", second_plate_mm, 0, unit="mm")
    button = require_above("diameter of the button", button_diameter_mm, 0, unit="mm")
    return _left(
        PUNCHED,
        hole_diameter_mm=button,
        mark_diameter_mm=button,
        mark_depth_mm=plate,
        least_thickness_mm=0.0,
        button_diameter_mm=0.0,
        button_depth_mm=0.0,
    )
