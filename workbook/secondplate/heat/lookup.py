"""Reads temperature, slope and conductivity of many cells off their heat content, melting included."""

import numpy as np

# Bins of the index from heat content to line; more would no longer fit a fast memory.
_MOST_BINS = 200_000
# The steepest slope of temperature over heat content is looked for this far on both sides, K: further than a
# cell moves in one time step while it melts.
_REACH_K = 100.0


class HeatLookup:
    """Straight lines between the nodes of several substances, looked up by heat content.

    Heat content is the state of the model: temperature, capacity and conductivity follow from it without
    doubt even where a cell is half melted. A table of evenly spaced bins, each with one node at most, gives
    the line of a cell without a search.

    Parameters
    ----------
    substances : tuple of Substance
        The substances [-]
    where : array of int
        Number of the substance of each cell [-]

    Raises
    ------
    ValueError
        If two nodes of a substance are so near in heat content that the bins would be too many.

    Examples
    --------
    >>> from secondplate.heat.substances import metal
    >>> steel = metal("carbon steel")
    >>> lookup = HeatLookup((steel,), np.array([0]))
    >>> lookup.temperature_c(np.array([steel.heat_at_j_mm3(777.0)])).round(6).tolist()
    [777.0]
    """

    def __init__(self, substances, where):
        """Join the tables of the substances; ``where`` is the number of the substance of each cell."""
        lines = [_lines(substance) for substance in substances]
        first = np.concatenate([[0], np.cumsum([len(heat) for heat, *_ in lines])[:-1]])
        (
            self._heat,
            self._temperature,
            self._slope,
            self._conductivity,
            self._bend,
            self._sum,
            self._steepest,
        ) = (np.concatenate(columns) for columns in zip(*lines, strict=True))
        self._next = np.append(self._heat[1:], np.inf)
        self._next[first[1:] - 1] = np.inf
        bins = [_bins(substance.heat_content_j_mm3) for substance in substances]
        starts = np.concatenate([[0], np.cumsum([len(index) for index, _ in bins])[:-1]])
        self._index = np.concatenate([index + at for (index, _), at in zip(bins, first, strict=True)])
        self._bins_per_heat = np.array([scale for _, scale in bins])[where]
        self._low = self._heat[first][where]
        self._high = np.array([substance.heat_content_j_mm3[-1] for substance in substances])[where]
        self._start = starts[where]
        self._last = self._start + np.array([len(index) - 1 for index, _ in bins])[where]

    def holds(self, heat_j_mm3):
        """Tell whether all cells are within their tables; numbers that are none are not."""
        return bool(np.all((heat_j_mm3 >= self._low) & (heat_j_mm3 <= self._high)))

    def _line(self, heat_j_mm3):
        """Return the number of the line of each cell; the first and the last line go on without end."""
        place = ((heat_j_mm3 - self._low) * self._bins_per_heat).astype(np.intp)
        place += self._start
        np.clip(place, self._start, self._last, out=place)
        line = self._index.take(place)
        return line + (heat_j_mm3 >= self._next.take(line))

    def temperature_c(self, heat_j_mm3):
        """Return the temperature of each cell."""
        line = self._line(heat_j_mm3)
        above = heat_j_mm3 - self._heat.take(line)
        return self._temperature.take(line) + above * self._slope.take(line)

    def state(self, heat_j_mm3):
        """Return temperature, conductivity in W/mmK, its integral in W/mm, and the steepest slope nearby."""
        line = self._line(heat_j_mm3)
        above = heat_j_mm3 - self._heat.take(line)
        warmer = above * self._slope.take(line)
        start = self._conductivity.take(line)
        conductivity = start + above * self._bend.take(line)
        integral = self._sum.take(line) + warmer * (start + conductivity) / 2
        return self._temperature.take(line) + warmer, conductivity, integral, self._steepest.take(line)


def _lines(substance):
    """Return for the start of each line heat, temperature and its slope, conductivity and its slope, the
    integral of conductivity over temperature, and the steepest slope of temperature nearby.
    """
    heat, temperature = substance.heat_content_j_mm3, substance.nodes_c
    conductivity = substance.conductivity_w_mk / 1000
    slope = np.diff(temperature) / np.diff(heat)
    bend = np.diff(conductivity) / np.diff(heat)
    parts = np.diff(temperature) * (conductivity[1:] + conductivity[:-1]) / 2
    integral = np.concatenate([[0.0], np.cumsum(parts)[:-1]])
    low, high = temperature[:-1, None] - _REACH_K, temperature[1:, None] + _REACH_K
    near = (temperature[1:] > low) & (temperature[:-1] < high)
    steepest = np.where(near, slope, 0.0).max(axis=1)
    return heat[:-1], temperature[:-1], slope, conductivity[:-1], bend, integral, steepest


def _bins(heat):
    """Return the line at the lower end of each bin, and bins per J/mm3; a bin holds one node at most."""
    span = heat[-1] - heat[0]
    count = int(np.ceil(span / np.diff(heat).min() * 1.001)) + 1
    if count > _MOST_BINS:
        message = f"heat content between nodes must be at least 1/{_MOST_BINS} of the whole, got 1/{count}"
        raise ValueError(message)
    scale = (count - 1) / span
    starts = heat[0] + np.arange(count) / scale
    line = np.searchsorted(heat, starts - 1e-9 / scale, side="right") - 1
    return np.clip(line, 0, len(heat) - 2), scale
