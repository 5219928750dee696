"""Reads temperature, slope and conductivity of many cells off their heat content, melting included."""

import numpy as np

# Bins of the index from heat content to node; more would no longer fit a fast memory.
_MOST_BINS = 200_000


class HeatLookup:
    """Straight lines between the nodes of several substances, looked up by heat content.

    Heat content is the state of the model: temperature, capacity and conductivity follow from it without
    doubt even where a cell is half melted. A table of evenly spaced bins, each with one node at most, gives
    the line of a cell without a search.
    """

    def __init__(self, substances, where):
        """Join the tables of the substances; ``where`` is the number of the substance of each cell."""
        lines = [_lines(substance) for substance in substances]
        counts = [len(heat) for heat, *_ in lines]
        first = np.concatenate([[0], np.cumsum(counts)[:-1]])
        self._heat, self._temperature, self._per_heat, self._conductivity, self._bend = (
            np.concatenate(parts) for parts in zip(*lines, strict=True)
        )
        bins = [_bins(heat) for heat, *_ in lines]
        starts = np.concatenate([[0], np.cumsum([len(index) for index, _ in bins])[:-1]])
        self._index = np.concatenate([index + at for (index, _), at in zip(bins, first, strict=True)])
        self._next = np.append(self._heat[1:], np.inf)
        self._next[first[1:] - 1] = np.inf
        low = np.array([heat[0] for heat, *_ in lines])
        per_bin = np.array([scale for _, scale in bins])
        last = starts + np.array([len(index) for index, _ in bins]) - 1
        self._low, self._per_bin = low[where], per_bin[where]
        self._start, self._last = starts[where].astype(float), last[where]

    def line(self, heat_j_mm3):
        """Return the number of the line of each cell."""
        place = ((heat_j_mm3 - self._low) * self._per_bin + self._start).astype(np.intp)
        np.clip(place, self._start.astype(np.intp), self._last, out=place)
        line = self._index.take(place)
        return line + (heat_j_mm3 >= self._next.take(line))

    def temperature_c(self, heat_j_mm3, line):
        """Return the temperatures of cells whose lines are known."""
        above = heat_j_mm3 - self._heat.take(line)
        return self._temperature.take(line) + above * self._per_heat.take(line)

    def all(self, heat_j_mm3):
        """Return temperature, kelvin per J/mm3, and conductivity in W/mmK of each cell."""
        line = self.line(heat_j_mm3)
        above = heat_j_mm3 - self._heat.take(line)
        per_heat = self._per_heat.take(line)
        temperature = self._temperature.take(line) + above * per_heat
        return temperature, per_heat, self._conductivity.take(line) + above * self._bend.take(line)


def _lines(substance):
    """Return heat, temperature, their slope, conductivity and its slope at the start of each line."""
    heat, temperature = substance.heat_content_j_mm3, substance.nodes_c
    conductivity = substance.conductivity_w_mk / 1000
    steps = np.diff(heat)
    return (
        heat[:-1],
        temperature[:-1],
        np.diff(temperature) / steps,
        conductivity[:-1],
        np.diff(conductivity) / steps,
    )


def _bins(heat):
    """Return the line at the lower end of each bin, and bins per J/mm3; a bin holds one node at most."""
    if len(heat) == 1:
        return np.zeros(1, dtype=np.intp), 0.0
    span = heat[-1] - heat[0]
    count = int(np.ceil(span / np.diff(heat).min() * 1.001)) + 1
    if count > _MOST_BINS:
        message = f"heat content between nodes must be at least 1/{_MOST_BINS} of the whole, got 1/{count}"
        raise ValueError(message)
    scale = (count - 1) / span
    starts = heat[0] + np.arange(count) / scale
    return np.searchsorted(heat, starts + 1e-12 * span, side="right") - 1, scale
