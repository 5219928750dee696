"""Gives the tests the figure behind a picture: the pictures themselves only keep the finished drawing."""

import pytest
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure


@pytest.fixture
def figure_of(monkeypatch):
    """Return a function that draws a picture and gives back its figure, with a canvas that can measure."""
    caught = []
    save = Figure.savefig

    def caught_save(self, *args, **kwargs):
        caught.append(self)
        return save(self, *args, **kwargs)

    monkeypatch.setattr(Figure, "savefig", caught_save)

    def drawn(draw, given):
        draw(**given)
        figure = caught[-1]
        FigureCanvasAgg(figure).draw()
        return figure

    return drawn
