"""A finished picture: its drawing as SVG and the same facts in words. What is drawn is not its business."""

import base64
import html
import io
from dataclasses import dataclass

# Loaded here so that the first picture of a page does not pay for it.
from matplotlib.backends import backend_svg


@dataclass(frozen=True)
class Picture:
    """A drawing and its words.

    Parameters
    ----------
    svg : str
        The drawing, a complete SVG document [-]
    alt : str
        What the drawing shows, in sentences, with its numbers; read out by a screen reader [-]

    Raises
    ------
    ValueError
        If there is no drawing or there are no words.

    Examples
    --------
    >>> Picture("<svg/>", "A line of 3 mm.").alt
    'A line of 3 mm.'
    """

    svg: str
    alt: str

    def __post_init__(self):
        """Refuse a picture without a drawing or without words."""
        for name in ("svg", "alt"):
            text = getattr(self, name)
            if not isinstance(text, str) or not text.strip():
                message = f"picture {name} must be a text that is not empty, got {text!r}"
                raise ValueError(message)

    def _repr_html_(self):
        """Return an image element that carries its own data and its words."""
        data = base64.b64encode(self.svg.encode("utf-8")).decode("ascii")
        return (
            f'<img alt="{html.escape(self.alt, quote=True)}" '
            f'style="max-width: 100%; height: auto" src="data:image/svg+xml;base64,{data}">'
        )


def picture_of(figure, alt):
    """Return the figure as a picture: SVG without a date, so that the same call gives the same bytes.

    Parameters
    ----------
    figure : matplotlib.figure.Figure
        What was drawn; call this inside ``style.sheet_of_paper`` [-]
    alt : str
        The same facts in words [-]

    Returns
    -------
    picture : Picture
        The finished picture [-]
    """
    buffer = io.StringIO()
    backend_svg.FigureCanvasSVG(figure)
    figure.savefig(buffer, format="svg", metadata={"Date": None, "Creator": None})
    return Picture(buffer.getvalue(), alt)
