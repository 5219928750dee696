"""Transient conduction in a body of revolution, with melting, contacts and losses.

Finite volumes of second order in space and a two-stage method of second order in time (module ``scheme``).
Leaves out the movement of matter: melt stays where it melts.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from secondplate.checks import require_at_least, require_between
from secondplate.heat.body import Body
from secondplate.heat.scheme import Scheme

__all__ = ["Body", "Run", "Stage", "conduct"]

# A cell with this much between its faces is still cold in the middle when the face that takes the heat melts.
MOST_ACROSS_K = 1500.0


@dataclass(frozen=True, kw_only=True, eq=False)
class Stage:
    """A stretch of time with steady heat and unchanged contacts.

    Parameters
    ----------
    duration_s : float
        How long it lasts, 1e-9 s to 1e6 s [s]
    steps : int
        Number of time steps, 1 to 100,000 [-]
    power_w : float or array
        Heat put into each cell, by row and column, from 0 [W]
    growth : float
        How much longer each step is than the one before, 1 to 2 [-]
    radial_contact_w_m2k : float, array or None
        Contacts along the radius in this stage; those of the body where None [W/m2K]
    height_contact_w_m2k : float, array or None
        Contacts along the axis in this stage; those of the body where None [W/m2K]

    Raises
    ------
    ValueError
        If a value is out of its range.

    Examples
    --------
    >>> Stage(duration_s=7.0, steps=3, growth=2.0).steps_s.tolist()
    [1.0, 2.0, 4.0]
    """

    duration_s: float
    steps: int
    power_w: np.ndarray = 0.0
    growth: float = 1.0
    radial_contact_w_m2k: np.ndarray | None = None
    height_contact_w_m2k: np.ndarray | None = None

    def __post_init__(self):
        """Refuse what is out of range."""
        require_between("duration", self.duration_s, 1e-9, 1e6, unit="s")
        if require_between("number of steps", self.steps, 1, 100_000, unit="") != int(self.steps):
            message = f"number of steps must be a whole number, got {self.steps!r}"
            raise ValueError(message)
        require_between("growth of the steps", self.growth, 1, 2, unit="")
        object.__setattr__(self, "power_w", require_at_least("power", self.power_w, 0, unit="W"))

    @property
    def steps_s(self):
        """Lengths of the time steps in s."""
        lengths = float(self.growth) ** np.arange(self.steps)
        return self.duration_s * lengths / lengths.sum()


@dataclass(frozen=True, kw_only=True, eq=False)
class Run:
    """What came out of a run; fields are NaN in empty cells.

    Parameters
    ----------
    times_s : numpy.ndarray
        Times of the traces, from 0 [s]
    traces_c : Mapping of str to numpy.ndarray
        Temperature of each kept place over time [C]
    peak_c : numpy.ndarray
        Highest temperature of each cell [C]
    final_c : numpy.ndarray
        Temperature of each cell at the end [C]
    melted_share : numpy.ndarray
        Greatest melted share of each cell, 0 to 1 [-]
    heat_in_j : float
        Heat put in [J]
    heat_out_j : float
        Heat that left through the outside [J]
    heat_kept_j : float
        Heat that the body gained, computed anew from the final temperatures [J]
    heat_moved_j : float
        Gains and losses of all cells since the start without their signs [J]

    Examples
    --------
    >>> import numpy as np
    >>> warm = np.array([[30.0]])
    >>> run = Run(times_s=np.array([0.0, 1.0]), traces_c={}, peak_c=warm, final_c=warm,
    ...           melted_share=np.zeros((1, 1)), heat_in_j=10.0, heat_out_j=4.0, heat_kept_j=5.0,
    ...           heat_moved_j=5.0)
    >>> run.balance
    0.1
    """

    times_s: np.ndarray
    traces_c: Mapping[str, np.ndarray]
    peak_c: np.ndarray
    final_c: np.ndarray
    melted_share: np.ndarray
    heat_in_j: float
    heat_out_j: float
    heat_kept_j: float
    heat_moved_j: float

    @property
    def balance(self):
        """What is missing in the heat balance, as a share of the greatest of these heats."""
        greatest = max(abs(self.heat_in_j), abs(self.heat_out_j), self.heat_moved_j)
        missing = self.heat_in_j - self.heat_out_j - self.heat_kept_j
        return float(abs(missing) / greatest) if greatest else 0.0


def conduct(body, stages, *, start_c=20.0, keep=None):
    """Compute the temperatures of a body through stages of heating and cooling.

    ``V dh/dt = P + sum of heat through its faces`` for every cell, with a heat content h(T) that includes
    melting.

    Parameters
    ----------
    body : Body
        The body [-]
    stages : sequence of Stage
        What happens, in order [-]
    start_c : float or array
        Temperature at the start, of all cells or of each [C]
    keep : Mapping of str to array or None
        Names of places whose temperature is wanted over time: weights of the cells by row and column,
        together 1 [-]

    Returns
    -------
    Run
        Temperatures, melted shares and heat balance [-]

    Raises
    ------
    ValueError
        If a shape does not fit, heat is put into an empty cell, cells are too coarse for the heat that they
        take (more than 1500 K between their faces), or a temperature leaves the tables.

    Notes
    -----
    Source: carslaw_jaeger, conduction of heat; the scheme is described in module ``scheme``.

    Examples
    --------
    >>> from secondplate.heat.grid import Grid
    >>> from secondplate.heat.substances import metal
    >>> plate = Body(grid=Grid(radius_edges_mm=[0, 10], height_edges_mm=[0, 1.5]),
    ...              substances=(metal("6xxx aluminium"),), where=[[0]])
    >>> run = conduct(plate, [Stage(duration_s=1.0, steps=4, power_w=11.62)])
    >>> round(float(run.final_c[0, 0]), 1)
    30.0
    """
    scheme, keep = Scheme(body), keep or {}
    start = np.broadcast_to(np.asarray(start_c, dtype=float), body.grid.shape)
    begin = scheme.packed(_heat_of(body, start))
    march = _March(scheme, begin, _weights(scheme, body.grid, keep))
    for stage in stages:
        march.through(stage, body)
    final = scheme.spread(scheme.lookup.temperature_c(march.heat))
    traces = dict(zip(keep, np.array(march.traces).T, strict=True)) if keep else {}
    return Run(
        times_s=np.array(march.times),
        traces_c=traces,
        peak_c=scheme.spread(scheme.lookup.temperature_c(march.peak)),
        final_c=final,
        melted_share=_melted(body, scheme, march.peak),
        heat_in_j=march.heat_in_j,
        heat_out_j=march.heat_out_j,
        heat_kept_j=body.heat_j(np.where(scheme.solid, final, 0.0)) - body.heat_j(start),
        heat_moved_j=float(scheme.volume_mm3 @ np.abs(march.heat - begin)),
    )


class _March:
    """State of a run: heat contents now and at their highest, times, traces and heats."""

    def __init__(self, scheme, heat, weights):
        """Begin at time 0."""
        self.scheme, self.heat, self.peak, self._weights = scheme, heat, heat.copy(), weights
        self.times, self.traces = [0.0], [weights @ scheme.lookup.temperature_c(heat)]
        self.heat_in_j = self.heat_out_j = 0.0

    def through(self, stage, body):
        """Go through one stage."""
        power = _power(self.scheme, body.grid, stage.power_w)
        self._require_fine_enough(body.grid, power, stage.duration_s)
        self.scheme.touch(*_contacts(stage, body))
        for tau_s in stage.steps_s:
            self.heat, lost_j = self.scheme.step(self.heat, tau_s, power)
            np.maximum(self.peak, self.heat, out=self.peak)
            self.heat_out_j += float(lost_j)
            self.times.append(self.times[-1] + tau_s)
            self.traces.append(self._weights @ self.scheme.lookup.temperature_c(self.heat))
        self.heat_in_j += float(power.sum()) * stage.duration_s

    def _require_fine_enough(self, grid, power_w, duration_s):
        """Refuse cells too coarse for the heat that they take.

        Heat through a cell of volume V and greatest face A makes ``P V / (A^2 k)`` between its faces in the
        end, and can never make more than the rise of the cell if it kept all its heat.
        """
        volume = self.scheme.volume_mm3
        face = np.maximum(np.broadcast_to(grid.ring_areas_mm2, grid.shape), grid.mantle_areas_mm2[:, 1:])
        _, conductivity, _, slope = self.scheme.lookup.state(self.heat)
        steady_k = power_w * volume / (self.scheme.packed(face) ** 2 * conductivity)
        across_k = np.minimum(steady_k, power_w * duration_s / volume * slope)
        if across_k.max() > MOST_ACROSS_K:
            message = (
                f"cells that take heat must be so fine that at most {MOST_ACROSS_K:g} K lie between their "
                f"faces, got {across_k.max():.4g} K"
            )
            raise ValueError(message)


def _contacts(stage, body):
    """Return the contacts of a stage: its own where it has any, else those of the body."""
    found = []
    for name in ("radial_contact_w_m2k", "height_contact_w_m2k"):
        own = getattr(stage, name)
        found.append(getattr(body, name) if own is None else body.checked_contact(name, own))
    return found


def _power(scheme, grid, power_w):
    """Return the heat put into each cell of the body, or raise where it goes into empty cells."""
    if np.shape(power_w) not in ((), grid.shape):
        message = f"power must be a number in W or an array with the shape {grid.shape}, "
        message += f"got the shape {np.shape(power_w)}"
        raise ValueError(message)
    everywhere = np.broadcast_to(power_w, grid.shape)
    if np.ndim(power_w) and np.any(everywhere[~scheme.solid] > 0):
        message = f"power into empty cells must be 0 W, got {everywhere[~scheme.solid].max():g} W"
        raise ValueError(message)
    return scheme.packed(everywhere)


def _weights(scheme, grid, keep):
    """Return the weights of the kept places over the cells of the body."""
    found = np.zeros((len(keep), len(scheme.volume_mm3)))
    for row, (name, weights) in zip(found, keep.items(), strict=True):
        given = np.asarray(weights, dtype=float)
        if given.shape != grid.shape or not np.isclose(given[scheme.solid].sum(), 1.0):
            message = f"weights of {name} must have the shape {grid.shape} and be together 1 in the body, "
            message += f"got the shape {given.shape}"
            raise ValueError(message)
        row[:] = scheme.packed(given)
    return found


def _heat_of(body, temperature_c):
    """Return the heat content of each cell at given temperatures."""
    found = np.zeros(body.grid.shape)
    for number, substance in enumerate(body.substances):
        cells = body.where == number
        if np.any(cells):
            found[cells] = substance.heat_at_j_mm3(temperature_c[cells])
    return found


def _melted(body, scheme, heat):
    """Return the melted share of each cell: the heat content between solidus and liquidus."""
    found, everywhere = np.zeros(body.grid.shape), scheme.spread(heat)
    for number, substance in enumerate(body.substances):
        if substance.melts:
            low, high = substance.heat_at_j_mm3(np.array([substance.solidus_c, substance.liquidus_c]))
            cells = body.where == number
            found[cells] = np.clip((everywhere[cells] - low) / (high - low), 0.0, 1.0)
    return found
