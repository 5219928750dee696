"""Gives the tests the figure behind a picture: the pictures themselves only keep the finished drawing."""

from functools import cache

import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg

from tests.drawings.cases import all_calls, drawn


@cache
def measured(name):
    """Return the figure of a case with a canvas that can measure."""
    _, figure = drawn(name)
    FigureCanvasAgg(figure).draw()
    return figure


@pytest.fixture(params=[name for name, _, _ in all_calls()])
def figure(request):
    """Give the figure of one case after the other."""
    return measured(request.param)
