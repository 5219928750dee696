"""Gives the tests the figure behind a picture: the pictures themselves only keep the finished drawing."""

import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure

from tests.drawings.cases import all_calls

CALLS = {name: (draw, given) for name, draw, given in all_calls()}
_KEPT = {}


@pytest.fixture(params=CALLS)
def figure(request, monkeypatch):
    """Give the figure of one call after the other, each drawn once, with a canvas that can measure."""
    name = request.param
    if name not in _KEPT:
        save = Figure.savefig

        def kept_save(self, *args, **kwargs):
            _KEPT[name] = self
            return save(self, *args, **kwargs)

        monkeypatch.setattr(Figure, "savefig", kept_save)
        draw, given = CALLS[name]
        draw(**given)
        FigureCanvasAgg(_KEPT[name]).draw()
    return _KEPT[name]
