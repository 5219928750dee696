"""Melted depths of many welds at once, read off a table that the full heat model made.

For the usual joint; only flux, time and web vary. Use ``weld.weld_heat`` where anything else does.
"""

from functools import cache

import numpy as np

from secondplate import tables
from secondplate.arrays import plain
from secondplate.checks import require_between

QUANTITIES = ("head depth", "stud depth", "depth over the bore")
FLUX_LIMITS_W_MM2 = (0.0, 2000.0)
TIME_LIMITS_MS = (2.0, 200.0)
WEB_LIMITS_MM = (0.3, 3.0)
# Heat by area beyond which nobody welds; the depths stay what they are there.
ENERGY_CAP_J_MM2 = 40.0
_KEYS = ("heat_flux_w_mm2", "time_ms", "web_mm")


@cache
def _table():
    """Return the nodes of each key and the values by quantity and node."""
    rows = tables.load("melt_map")
    places = np.array([[float(row.keys[key]) for key in _KEYS] for row in rows])
    nodes = [np.array(sorted(set(column))) for column in places.T.tolist()]
    shape = (len(QUANTITIES), *map(len, nodes))
    values = np.full(shape, np.nan)
    index = [np.searchsorted(each, column) for each, column in zip(nodes, places.T, strict=True)]
    values[[QUANTITIES.index(row.name) for row in rows], *index] = [row.number for row in rows]
    if np.isnan(values).any():
        message = f"table melt_map must have a value at each of {values.size} nodes, got {len(rows)} rows"
        raise ValueError(message)
    # More flux or time never melts less; the last figures of two runs may say so.
    for axis in (1, 2):
        values = np.maximum.accumulate(values, axis=axis)
    nodes[1] = np.sqrt(nodes[1])  # depths are nearly straight over the square root of time
    return nodes, values


def melted_depth_mm(*, heat_flux_w_mm2, time_ms, web_mm):
    """Return the melted depths of head and stud, and the web left, for many welds at once.

    Straight lines in flux, square root of time and web between nodes computed with ``weld.weld_heat``. Above
    600 W/mm2 the same heat is taken at 600 W/mm2 in a longer time. More flux or time never melts less.

    Parameters
    ----------
    heat_flux_w_mm2 : float or array
        Heat flux into each face while the arc burns, 0 to 2000 W/mm2 [W/mm2]
    time_ms : float or array
        Weld time, 2 to 200 ms [ms]
    web_mm : float or array
        Solid steel over the bore before the weld, 0.3 to 3 mm [mm]

    Returns
    -------
    tuple of float or array
        Melted depth of the head and of the stud, means over the stud's face, and the least solid web left
        under the melt, 0 where the head is burnt through; in the common shape [mm]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Within 0.02 mm or 6 % of ``weld_heat``, whichever is more; the heat itself is known to
    no better than 40 %. Beyond 40 J/mm2 the depths no longer grow.
    Source: own_heat_model, table melt_map.

    Examples
    --------
    >>> head_mm, stud_mm, web_left_mm = melted_depth_mm(heat_flux_w_mm2=200, time_ms=30, web_mm=1.1)
    >>> round(head_mm, 1), round(stud_mm, 1), round(web_left_mm, 1)
    (0.4, 0.5, 0.6)
    """
    flux = require_between("heat flux", heat_flux_w_mm2, *FLUX_LIMITS_W_MM2, unit="W/mm2")
    time = require_between("time", time_ms, *TIME_LIMITS_MS, unit="ms")
    web = require_between("web", web_mm, *WEB_LIMITS_MM, unit="mm")
    nodes, values = _table()
    factor = np.maximum(flux / nodes[0][-1], 1.0)
    places = (flux / factor, np.sqrt(time * factor), web)
    head, stud, over_bore = np.maximum(_between(nodes, values, places), 0.0)
    return plain(head), plain(stud), plain(np.maximum(web - over_bore, 0.0))


def _between(nodes, values, places):
    """Interpolate linearly in three directions, ends held."""
    low, share = [], []
    for each, place in zip(nodes, np.broadcast_arrays(*places), strict=True):
        inside = np.clip(place, each[0], each[-1])
        at = np.clip(np.searchsorted(each, inside, side="right") - 1, 0, len(each) - 2)
        low.append(at)
        share.append((inside - each[at]) / (each[at + 1] - each[at]))
    found = 0.0
    for corner in np.ndindex(2, 2, 2):
        weight = np.prod([part if up else 1 - part for part, up in zip(share, corner, strict=True)], axis=0)
        found = found + weight * values[:, *(at + up for at, up in zip(low, corner, strict=True))]
    return found
