"""Cells in a row: how heat flows between neighbours along one direction, and the equations that this gives.

All rows of one direction are strung into one chain; where a row ends the link has no area, so that one call
of a tridiagonal solver does the whole direction.
"""

import numpy as np
from scipy.linalg.lapack import dpttrf, dpttrs

_W_MM2K_PER_W_M2K = 1e-6


class Chain:
    """The cells of a body in the order of one direction, with links between neighbours.

    The conductance of a link is that of two half cells and the contact between them in series,
    ``G = A / (d1/(2 k1) + 1/h + d2/(2 k2))``.
    """

    def __init__(self, order, *, links, half_mm, area_mm2):
        """Take the order of the cells, whether each is linked to the next, and the areas of these links."""
        self.order = order
        self.back = np.empty_like(order)
        self.back[order] = np.arange(len(order))
        self._half = half_mm[order]
        self._area = np.where(links, area_mm2, 0.0)

    def contact_mm2k_w(self, contact_w_m2k):
        """Turn contact conductances of the links into resistances; no contact is an infinite one."""
        with np.errstate(divide="ignore"):
            return 1 / (contact_w_m2k * _W_MM2K_PER_W_M2K)

    def conductance_w_k(self, half_mm2k_w, contact_mm2k_w):
        """Return the conductance of each link from the half cells' resistances, given in chain order."""
        return self._area / (half_mm2k_w[:-1] + half_mm2k_w[1:] + contact_mm2k_w)

    def half_mm2k_w(self, conductivity_w_mmk):
        """Return the resistance of half of each cell, in chain order."""
        return self._half / conductivity_w_mmk[self.order]


def inflow_w(link_w_k, temperature_c):
    """Return the heat that each cell of a chain gets from its neighbours."""
    flow = link_w_k * np.diff(temperature_c)
    found = np.zeros_like(temperature_c)
    found[:-1] = flow
    found[1:] -= flow
    return found


def factored(diagonal, link):
    """Factor the symmetric matrix with a diagonal and minus the links beside it."""
    if not link.size:  # a single cell: the solver wants two at least
        diagonal, link = np.append(diagonal, 1.0), np.zeros(1)
    found, beside, info = dpttrf(diagonal, -link)
    if info:
        message = f"equations of the heat model must be positive definite, got a failure at cell {info}"
        raise ArithmeticError(message)
    return found, beside


def solved(factors, right):
    """Solve with a factored matrix."""
    missing = len(factors[0]) - len(right)
    found, _ = dpttrs(*factors, np.append(right, np.zeros(missing)) if missing else right)
    return found[: len(right)]


def with_neighbours(link_w_k, own_w_k):
    """Return the sum of each cell's conductances to its neighbours and its own to the surroundings."""
    total = own_w_k.copy()
    total[:-1] += link_w_k
    total[1:] += link_w_k
    return total
