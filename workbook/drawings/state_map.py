"""The process window as a map with exact borders: states and doubt by current and time. It does not draw."""

from dataclasses import dataclass

import numpy as np

from drawings.scales import ROUND_CLOSE, round_up
from secondplate.process_window import STATES, TIME_LIMITS_MS

TIMES, CURRENTS, HALVINGS = 60, 80, 5


@dataclass(frozen=True, kw_only=True)
class StateMap:
    """The map over currents (down) and times (across).

    ``masks`` are one for each state from the second on, true from it upwards, and the doubt as the last;
    ``borders_a`` are the exact currents between a place of the map and the next above it where a mask turns.
    """

    times_ms: np.ndarray
    currents_a: np.ndarray
    masks: np.ndarray
    borders_a: np.ndarray

    def at(self, currents_a, times_ms):
        """Return state, as its place in ``STATES``, and doubt at the nearest places of the map."""
        row = np.clip(np.searchsorted(self.currents_a, currents_a), 0, len(self.currents_a) - 1)
        column = np.clip(np.searchsorted(self.times_ms, times_ms), 0, len(self.times_ms) - 1)
        found = self.masks[:, row, column]
        return found[:-1].sum(axis=0), found[-1]


def state_map(find, *, longest_ms, largest_a, limits_a):
    """Ask the library for a field of times and currents up to about the longest and the largest wanted.

    ``find`` takes currents and times and returns a ``ProcessWindow``; ``limits_a`` are its least and greatest
    current.
    """
    end_ms = min(round_up(longest_ms, among=ROUND_CLOSE), TIME_LIMITS_MS[1])
    top_a = min(round_up(largest_a, among=ROUND_CLOSE), limits_a[1])
    # Even steps of the ratio: the borders are nearly hyperbolas.
    times = np.geomspace(TIME_LIMITS_MS[0], end_ms, TIMES)
    currents = np.geomspace(limits_a[0], top_a, CURRENTS)
    times[-1], currents[-1] = end_ms, top_a
    masks = _masks(find(currents[:, None], times[None, :]))
    return StateMap(
        times_ms=times, currents_a=currents, masks=masks, borders_a=_borders(find, times, currents, masks)
    )


def _masks(found):
    """Return from where up each state but the first is reached, and where it is doubtful."""
    index = np.select([found.state == state for state in STATES], range(len(STATES)))
    return np.stack([*(index >= level for level in range(1, len(STATES))), np.asarray(found.doubtful)])


def _borders(find, times, currents, masks):
    """Halve down to the currents at which a mask turns; nan where it does not."""
    which, row, column = np.nonzero(masks[:, 1:] != masks[:, :-1])
    low, high, before = currents[row], currents[row + 1], masks[which, row, column]
    each = np.arange(len(which))
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        same = _masks(find(middle, times[column]))[which, each] == before
        low, high = np.where(same, middle, low), np.where(same, high, middle)
    borders = np.full((len(masks), len(currents) - 1, len(times)), np.nan)
    borders[which, row, column] = (low + high) / 2
    return borders


def _runs(plan, which, column):
    """Return the stretches of one mask along one column as time, lowest and highest current."""
    mask = plan.masks[which, :, column]
    turns = np.flatnonzero(np.diff(np.concatenate([[0], mask.astype(int), [0]])))
    ends = np.concatenate([plan.currents_a[:1], plan.borders_a[which, :, column], plan.currents_a[-1:]])
    return [(plan.times_ms[column], ends[first], ends[end]) for first, end in turns.reshape(-1, 2)]


def strips(plan, which):
    """Return the outlines of a mask: for each connected strip rows of time, lowest and highest current."""
    growing, strips = [], []
    for column in range(len(plan.times_ms)):
        going_on = []
        for run in _runs(plan, which, column):
            strip = next((old for old in growing if old[-1][1] < run[2] and run[1] < old[-1][2]), None)
            if strip is None:
                strip = []
                strips.append(strip)
            else:
                growing.remove(strip)
            strip.append(run)
            going_on.append(strip)
        growing = going_on
    return [np.array(strip) for strip in strips if len(strip) > 1]
