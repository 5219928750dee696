"""Tells whether outlines overlap or cross, by rules that share nothing with the library."""

import numpy as np


def depth_along_lines(outlines, heights):
    """Cut outlines by level lines; return the width in which one part lies, several, and turned-round ones.

    ``outlines`` are arrays (joints, corners, 2), counter-clockwise; ``heights`` (joints, lines). Walking on
    a line from the left, an edge that falls enters a part and an edge that rises leaves it.
    """
    rows, places, steps = [], [], []
    lines = heights.shape[1]
    for outline in outlines:
        begin, end = outline, np.roll(outline, -1, axis=1)
        low, high = begin[:, None, :, 1], end[:, None, :, 1]
        level = heights[:, :, None]
        hit = (low <= level) != (high <= level)
        joint, line, edge = np.nonzero(hit)
        (x1, y1), (x2, y2) = begin[joint, edge].T, end[joint, edge].T
        rows.append(joint * lines + line)
        places.append(x1 + (x2 - x1) * (heights[joint, line] - y1) / (y2 - y1))
        steps.append(np.where(y2 > y1, -1, 1))
    row, place, step = map(np.concatenate, (rows, places, steps))
    order = np.lexsort((place, row))
    row, place, step = row[order], place[order], step[order]
    depth = np.cumsum(step)  # closed outlines: each line's steps add up to nothing
    width = np.where(np.diff(row) == 0, np.diff(place), 0.0)
    depth = depth[:-1]
    return width[depth == 1].sum(), width[depth > 1].sum(), width[depth < 0].sum()


def proper_crossings(first, second):
    """Count the pairs of edges of two outlines that cross, by the sides on which their ends lie."""
    a, b = first, np.roll(first, -1, axis=0)
    c, d = second, np.roll(second, -1, axis=0)

    def side(p, q, r):
        """Return on which side of the line from p to q the points r lie; nearly on it is 0."""
        area = (q[:, None, 0] - p[:, None, 0]) * (r[None, :, 1] - p[:, None, 1])
        area -= (q[:, None, 1] - p[:, None, 1]) * (r[None, :, 0] - p[:, None, 0])
        return np.where(np.abs(area) < 1e-12, 0, np.sign(area))

    apart = side(a, b, c) * side(a, b, d) < 0
    return int(np.sum(apart & (side(c, d, a) * side(c, d, b) < 0).T))
