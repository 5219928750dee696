"""Force of the puller over its stroke while a welded stud of the virtual bench is pulled.

The peaks, the ways and the break are those of ``bench_pull``; the course between them is own judgement:
nobody has measured the trace of a set rivet that is drawn head first.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.bench_model import NUMBERS
from secondplate.bench_site import pull_out_of

TRACE_PLACES = (
    "start",
    "jaws bite",
    "first peak",
    "collar crushed half way",
    "tail free",
    "second peak",
    "through the top plate",
    "rivet out",
)
_OPENED = 0.3  # part of the top plate that the tail has entered when the force is greatest: own judgement
_FIRST, _SECOND = TRACE_PLACES.index("first peak"), TRACE_PLACES.index("second peak")


@dataclass(frozen=True, kw_only=True)
class ForceTrace:
    """Force of the puller over its stroke, by places in the order of ``TRACE_PLACES``; straight between them.

    From a break on every place lies at the stroke of the break, without force.

    Parameters
    ----------
    stroke_mm : numpy.ndarray
        Stroke at each place, one row a stud where there are several [mm]
    force_n : numpy.ndarray
        Force there [N]
    broke_at : str or array of str
        Place of the break, ``first peak`` or ``second peak`` where it lies on the rise to it; empty where the
        rivet came out [-]
    broke_n : float or array
        Force of the break, 0 where there was none [N]

    Examples
    --------
    >>> TRACE_PLACES[2], TRACE_PLACES[5]
    ('first peak', 'second peak')
    """

    stroke_mm: np.ndarray
    force_n: np.ndarray
    broke_at: str
    broke_n: float


def force_trace(pulled, site):
    """Return the force over the stroke of a pull, or of many.

    Rise to the first peak by the stiffness of puller, plates and stud; the collar crushes while the tail
    leaves its cup; the shank drags by its friction; the tail opens the top plate; the rivet is clear.

    Parameters
    ----------
    pulled : StudPull
        The pulls [-]
    site : PullSite
        Joint and puller [-]

    Returns
    -------
    ForceTrace
        Places of the trace [-]

    Notes
    -----
    Source: peaks and ways as in ``pull_studs``; friction from ``tail_pull_out``; the course between them is
    own judgement.

    Examples
    --------
    >>> from secondplate.bench_pull import StudPull
    >>> from secondplate.bench_site import draw_site
    >>> pulled = StudPull(result="rivet out clean", rivet_out=True, top_plate_dished=False,
    ...                   second_plate_torn=False, force_n=2000.0, first_peak_n=2000.0, second_peak_n=900.0,
    ...                   spare=2.5, lasting_dish_mm=0.0, spring_back_mm=0.05, stretch_mm=0.015,
    ...                   stroke_mm=4.1, energy_j=0.0, minutes=1.5)
    >>> trace = force_trace(pulled, draw_site(b"a day at the shop"))
    >>> float(trace.force_n.max()), trace.broke_at
    (2000.0, '')
    """
    first, second = np.asarray(pulled.first_peak_n), np.asarray(pulled.second_peak_n)
    out, broken = np.asarray(pulled.rivet_out), np.asarray(pulled.force_n)
    early = ~out & (broken <= first)
    stroke, force = _whole_trace(pulled, site, np.where(early, broken, first), second)
    at = np.where(out, len(TRACE_PLACES), np.where(early, _FIRST, _SECOND))[..., None]
    place = np.arange(len(TRACE_PLACES))
    break_mm = np.take_along_axis(stroke, np.minimum(at, len(TRACE_PLACES) - 1), axis=-1)
    stroke = np.where(place > at, break_mm, stroke)
    force = np.where(place > at, 0.0, np.where(place == at, np.asarray(broken)[..., None], force))
    named = np.where(out, "", np.where(early, TRACE_PLACES[_FIRST], TRACE_PLACES[_SECOND]))
    return ForceTrace(
        stroke_mm=np.round(stroke, 3),
        force_n=np.round(force),
        broke_at=named if named.ndim else str(named),
        broke_n=plain(np.where(out, 0.0, broken)),
    )


def _whole_trace(pulled, site, reached_n, second_n):
    """Return stroke and force at every place, as if nothing broke after the force that is reached first."""
    first = np.asarray(pulled.first_peak_n)
    bite = NUMBERS["way of the jaws"]
    rise = reached_n / NUMBERS["stiffness of the puller"] + pulled.spring_back_mm + pulled.stretch_mm
    depth, top = np.asarray(site.penetration_mm), np.asarray(site.top_plate_mm)
    drag = first * _friction_share(site)
    peak = bite + rise
    # The tail is out of its cup after its depth; being widest at its end, it opens the top plate at once.
    ways = (0.0, bite, peak, peak + 0.5 * depth, peak + depth, peak + depth + _OPENED * top)
    ways = (*ways, peak + depth + top, np.maximum(pulled.stroke_mm, peak + depth + top))
    forces = (0.0, 0.0, reached_n, np.maximum(NUMBERS["force after the crush"] * first, drag), drag)
    forces = (*forces, second_n, np.minimum(drag, second_n), 0.0)
    return tuple(np.stack(np.broadcast_arrays(*column), axis=-1) for column in (ways, forces))


def _friction_share(site):
    """Return the friction of the shank over the first peak, as the mechanics see this joint."""
    pull = pull_out_of(site)
    return np.asarray(pull.friction_n.best) / pull.first_peak_n.best
