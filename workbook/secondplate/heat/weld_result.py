"""What one computed stud weld gives: melted depths, fused area, web left, temperatures and times."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from secondplate.bands import Band
from secondplate.checks import require_at_least, require_choice
from secondplate.heat.joint import RIVET_MATERIAL
from secondplate.heat.joint_body import RIVET, SECOND_PLATE, SLUG, STUD, TOP_PLATE, JointCells
from secondplate.heat.weld_settings import WeldHeat
from secondplate.materials import material

# A face counts as fused where both sides melted at least this deep; model choice, a tenth of a usual melt.
LEAST_FUSED_DEPTH_MM = 0.03
HAZ_FROM_C, HAZ_TO_C = 800.0, 500.0
_RING_POINTS = 400


@dataclass(frozen=True, kw_only=True)
class WeldHeatResult:
    """Temperatures and melt of one stud weld.

    Parameters
    ----------
    settings : WeldHeat
        What was computed [-]
    cells : JointCells
        The joint in cells, with the edges for drawing [-]
    times_s : numpy.ndarray
        Times of the traces, from the start of the arc [s]
    traces_c : Mapping of str to numpy.ndarray
        Temperature over time by the name of the place [C]
    haz_traces_c : numpy.ndarray
        Temperature over time (times, rows) down the head above the shank's wall, from the weld face [C]
    peak_c : numpy.ndarray
        Highest temperature by row and column; no number in open air [C]
    melted_share : numpy.ndarray
        Greatest melted share by row and column, 0 to 1 [-]
    heat_in_j : float
        Heat from the arc [J]
    heat_out_j : float
        Heat lost to the air [J]
    heat_kept_j : float
        Heat still in the joint at the end [J]
    balance : float
        Heat in less heat out and kept, as share of the heat in [-]

    Examples
    --------
    >>> from secondplate.heat.joint import default_joint
    >>> from secondplate.heat.weld import weld_heat
    >>> from secondplate.heat.weld_settings import WeldHeat
    >>> weld_heat(default_joint(4), WeldHeat(current_a=400, time_ms=10)).burnt_through
    False
    """

    settings: WeldHeat
    cells: JointCells
    times_s: np.ndarray
    traces_c: Mapping[str, np.ndarray]
    haz_traces_c: np.ndarray
    peak_c: np.ndarray
    melted_share: np.ndarray
    heat_in_j: float
    heat_out_j: float
    heat_kept_j: float
    balance: float

    @property
    def radius_edges_mm(self):
        """Edges of the columns in mm, for drawing."""
        return self.cells.grid.radius_edges_mm

    @property
    def height_edges_mm(self):
        """Edges of the rows in mm below the face of the rivet head, for drawing."""
        return self.cells.grid.height_edges_mm

    def _depths(self, part, melting_c):
        """Melted depth of one part by column under the stud's face."""
        columns, row = slice(0, self.cells.face_columns), self.cells.face_row
        peaks = np.where(self.cells.part == part, self.peak_c, np.nan)[:, columns]
        edges = self.height_edges_mm
        if part == STUD:
            return melted_depths_mm(peaks[:row][::-1], -edges[: row + 1][::-1], melting_c)
        return melted_depths_mm(peaks[row:], edges[row:], melting_c)

    @property
    def stud_depths_mm(self):
        """Melted depth of the stud by column, from the axis to the rim of its face, in mm."""
        return self._depths(STUD, material(self.cells.joint.stud_material).melting_range_c.best)

    @property
    def head_depths_mm(self):
        """Melted depth of the rivet head by column, from the axis to the rim of the stud's face, in mm."""
        return self._depths(RIVET, material(RIVET_MATERIAL).melting_range_c.best)

    @property
    def _ring_areas_mm2(self):
        """Areas of the rings of the stud's face."""
        return np.pi * np.diff(self.radius_edges_mm[: self.cells.face_columns + 1] ** 2)

    def _mean(self, depths):
        """Mean over the stud's face."""
        return float(np.average(depths, weights=self._ring_areas_mm2))

    @property
    def stud_depth_mm(self):
        """Melted depth of the stud in mm, mean over its face."""
        return self._mean(self.stud_depths_mm)

    @property
    def head_depth_mm(self):
        """Melted depth of the rivet head in mm, mean over the stud's face."""
        return self._mean(self.head_depths_mm)

    @property
    def greatest_head_depth_mm(self):
        """Greatest melted depth of the rivet head in mm."""
        return float(self.head_depths_mm.max())

    @property
    def greatest_stud_depth_mm(self):
        """Greatest melted depth of the stud in mm."""
        return float(self.stud_depths_mm.max())

    @property
    def melted_volume_mm3(self):
        """Melted steel under the stud's face, of stud and head together, in mm3."""
        return float(np.sum((self.stud_depths_mm + self.head_depths_mm) * self._ring_areas_mm2))

    @property
    def melted_aluminium_mm3(self):
        """Melted aluminium of plates and slug in mm3."""
        aluminium = np.isin(self.cells.part, (TOP_PLATE, SECOND_PLATE, SLUG))
        return float(np.sum((self.melted_share * self.cells.grid.volumes_mm3)[aluminium]))

    def fused_area_mm2(self, *, least_depth_mm=LEAST_FUSED_DEPTH_MM):
        """Area of the weld face where both sides melted at least a stated depth.

        Parameters
        ----------
        least_depth_mm : float
            Depth that both sides must reach, at least 0.001 mm [mm]

        Returns
        -------
        float
            Area, at most that of the stud's face [mm2]

        Raises
        ------
        ValueError
            If the depth is below its limit.
        """
        require_at_least("least depth", least_depth_mm, 0.001, unit="mm")
        edges = self.radius_edges_mm[: self.cells.face_columns + 1]
        rings = np.sqrt(np.linspace(0, edges[-1] ** 2, _RING_POINTS + 1))  # rings of equal area
        middles = (rings[1:] + rings[:-1]) / 2
        depth = np.minimum(self.stud_depths_mm, self.head_depths_mm)
        fused = np.interp(middles, (edges[1:] + edges[:-1]) / 2, depth) >= least_depth_mm
        return float(np.pi * edges[-1] ** 2 * np.mean(fused))

    @property
    def fused_share(self):
        """Fused share of the stud's face."""
        return self.fused_area_mm2() / float(self._ring_areas_mm2.sum())

    @property
    def burn_off_mm(self):
        """Band of the shortening of the stud in mm.

        Best is the melted depth of the stud, which comes within a quarter of the printed shortenings of long
        arcs (us_stud_time_table). Low leaves a fifth of its melt in the weld, high presses out the melt of
        the head as well, so that the stud sinks into its place.
        """
        stud = self.stud_depth_mm
        basis = "derived: melt of the stud; a fifth of it may stay, that of the head may go too"
        return Band(low=0.8 * stud, best=stud, high=stud + self.head_depth_mm, basis=basis)

    @property
    def web_left_mm(self):
        """Least solid steel left above the bore in mm; 0 where the head is burnt through."""
        web = self.cells.joint.web_mm
        over_bore = int(np.searchsorted(self.radius_edges_mm, self.cells.joint.bore_diameter_mm / 2 - 1e-9))
        return max(0.0, web - float(self.head_depths_mm[:over_bore].max()))

    @property
    def burnt_through(self):
        """Whether the melt reached the bore."""
        return self.web_left_mm == 0.0

    def _trace(self, place):
        """Return the trace of a named place, or raise with the names."""
        return self.traces_c[require_choice("place", place, tuple(self.traces_c))]

    def peak_at_c(self, place):
        """Highest temperature at a named place.

        Parameters
        ----------
        place : str
            Name of a place, see ``traces_c`` [-]

        Returns
        -------
        float
            Temperature [C]

        Raises
        ------
        ValueError
            If there is no such place.
        """
        return float(self._trace(place).max())

    def time_above_s(self, place, temperature_c):
        """Time that a named place spends above a temperature.

        Parameters
        ----------
        place : str
            Name of a place, see ``traces_c`` [-]
        temperature_c : float
            Threshold [C]

        Returns
        -------
        float
            Time within the computed one [s]

        Raises
        ------
        ValueError
            If there is no such place.
        """
        return time_above_s(self.times_s, self._trace(place), temperature_c)

    @property
    def haz_row(self):
        """Row of the heat-affected zone's inner edge: the first below the weld face that stayed solid."""
        melting_c = material(RIVET_MATERIAL).melting_range_c.low
        solid = np.nonzero(self.haz_traces_c.max(axis=0) < melting_c)[0]
        return int(solid[0]) if solid.size else None

    @property
    def cooling_time_800_500_s(self):
        """Time from 800 to 500 C at the edge of the melt in the head, in s; None where it is not passed."""
        if self.haz_row is None:
            return None
        return cooling_time_s(self.times_s, self.haz_traces_c[:, self.haz_row])


def melted_depths_mm(peak_c, edges_mm, melting_c):
    """Return how deep the melting point went in from a face, between the middles of cells.

    Parameters
    ----------
    peak_c : numpy.ndarray
        Highest temperatures, rows inwards from the face, by column; no number outside the part [C]
    edges_mm : numpy.ndarray
        Edges of the rows, from 0 at the face [mm]
    melting_c : float
        Melting point [C]

    Returns
    -------
    numpy.ndarray
        Depth by column, the whole thickness of the part where its last cell melted [mm]

    Notes
    -----
    Straight lines between the middles of cells; the first line goes on to the face.
    Source: interpolation.

    Examples
    --------
    >>> import numpy as np
    >>> peaks = np.array([[1600.0, 1600.0, 1425.0], [1400.0, 1500.0, 1325.0], [1200.0, np.nan, 1200.0]])
    >>> melted_depths_mm(peaks, np.array([0.0, 0.1, 0.2, 0.3]), 1450.0).round(3).tolist()
    [0.125, 0.2, 0.025]
    """
    middles = (edges_mm[1:] + edges_mm[:-1]) / 2
    face = peak_c[0] + (peak_c[0] - peak_c[1]) * middles[0] / (middles[1] - middles[0])
    heights = np.concatenate([[0.0], middles])
    values = np.vstack([face, peak_c, np.full_like(face, np.nan)])
    first = np.argmin(values >= melting_c, axis=0)  # first that stayed solid or lies outside
    columns = np.arange(values.shape[1])
    above, below = values[np.maximum(first - 1, 0), columns], values[first, columns]
    high, low = heights[np.maximum(first - 1, 0)], np.append(heights, np.inf)[first]
    with np.errstate(invalid="ignore"):
        between = high + (low - high) * (above - melting_c) / (above - below)
    whole = edges_mm[np.maximum(first - 1, 0)]
    return np.where(first == 0, 0.0, np.where(np.isnan(below), whole, between))


def time_above_s(times_s, temperatures_c, threshold_c):
    """Return how long a trace, straight between its points, lies above a temperature.

    Parameters
    ----------
    times_s : numpy.ndarray
        Times, rising [s]
    temperatures_c : numpy.ndarray
        Temperatures at these times [C]
    threshold_c : float
        Temperature to exceed [C]

    Returns
    -------
    float
        Time above it [s]

    Notes
    -----
    Source: geometry.

    Examples
    --------
    >>> import numpy as np
    >>> time_above_s(np.array([0.0, 1.0, 3.0]), np.array([0.0, 100.0, 0.0]), 50.0)
    1.5
    """
    over = np.asarray(temperatures_c, dtype=float) - threshold_c
    before, after = over[:-1], over[1:]
    span = np.abs(before) + np.abs(after)
    crossing = np.maximum(before, after) / np.where(span > 0, span, 1)
    share = np.where((before > 0) & (after > 0), 1.0, np.where((before > 0) | (after > 0), crossing, 0.0))
    return float(np.sum(share * np.diff(times_s)))


def cooling_time_s(times_s, temperatures_c, *, from_c=HAZ_FROM_C, to_c=HAZ_TO_C):
    """Return the time that a trace takes, after its peak, from one temperature down to another.

    Parameters
    ----------
    times_s : numpy.ndarray
        Times, rising [s]
    temperatures_c : numpy.ndarray
        Temperatures at these times [C]
    from_c : float
        Upper temperature [C]
    to_c : float
        Lower temperature [C]

    Returns
    -------
    float or None
        Time between the last passing of each, or None where one is never passed downwards [s]

    Notes
    -----
    Source: definition of the cooling time t8/5.

    Examples
    --------
    >>> import numpy as np
    >>> cooling_time_s(np.array([0.0, 1.0, 11.0]), np.array([20.0, 1000.0, 0.0]))
    3.0
    """
    passed = [_last_fall_s(times_s, temperatures_c, level) for level in (from_c, to_c)]
    return None if None in passed else passed[1] - passed[0]


def _last_fall_s(times_s, temperatures_c, level_c):
    """Time at which a trace falls below a level for good, or None."""
    above = np.nonzero(temperatures_c >= level_c)[0]
    if not above.size or above[-1] == len(temperatures_c) - 1:
        return None
    last = above[-1]
    pair = temperatures_c[last + 1], temperatures_c[last]
    return float(np.interp(level_c, pair, (times_s[last + 1], times_s[last])))
