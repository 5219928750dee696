"""Weibull law: median ranks and scatter; computed."""

import pytest

from secondplate.trials import Weibull, median_ranks

SOURCE = "weibull_law"


def test_first_median_rank_of_five():
    """0.1296 by the usual approximation, 0.1294 exact; four places."""
    found = [median_ranks(5, exact=exact)[0] for exact in (False, True)]
    assert found == pytest.approx([0.1296, 0.1294], abs=5e-5)


def test_scatter_of_shape_ten():
    """Shape 10 has a standard deviation of 12 % of the mean; two figures."""
    assert Weibull(shape=10.0, scale=3000.0).variation == pytest.approx(0.12, abs=5e-3)
