"""The figures that exercises show: each name that the bank uses, and the drawing that it stands for.

A figure whose distances are to be read off has a frame, which says which millimetres its edges stand for.
"""

import json
from collections.abc import Callable
from dataclasses import asdict, dataclass
from functools import lru_cache

from drawings import (
    SECTION_FRAME_MM,
    Picture,
    button_from_below,
    collar,
    flange_proposals,
    force_stroke,
    rivet_parts,
    section_view,
)
from secondplate.checks import require_choice
from secondplate.fastener_layout import Flange, OldSite
from secondplate.section import random_section


@dataclass(frozen=True, kw_only=True)
class Frame:
    """What the edges of a picture stand for, in its drawing's millimetres: left, right, bottom, top."""

    x0_mm: float
    x1_mm: float
    y0_mm: float
    y1_mm: float

    def __post_init__(self):
        """Refuse a frame without an inside."""
        if not (self.x0_mm < self.x1_mm and self.y0_mm < self.y1_mm):
            message = f"frame must rise from left to right and from bottom to top, got {self}"
            raise ValueError(message)


@dataclass(frozen=True, kw_only=True)
class Shown:
    """A picture as a form shows it, with its frame where something is read off it."""

    picture: Picture
    frame: Frame | None = None


def _collar(*, sign_id):
    """Draw a collar that the learner has to judge."""
    return Shown(picture=collar(sign_id, named=False))


def _section(*, seed, fault, measure):
    """Draw a section to measure or to judge; with a measure the lines stand where they belong."""
    joint, _ = random_section(seed.encode(), fault=fault or None)
    left, right, low, high = SECTION_FRAME_MM
    return Shown(
        picture=section_view(joint, measured=measure),
        frame=Frame(x0_mm=left, x1_mm=right, y0_mm=low, y1_mm=high),
    )


def _button(*, seed, fault):
    """Draw a button that the learner looks at from below."""
    joint, _ = random_section(seed.encode(), fault=fault or None)
    return Shown(picture=button_from_below(joint))


def _rivet_parts():
    """Draw a joint with letters at its parts."""
    return Shown(picture=rivet_parts(named=False))


def _force_stroke(*, stage):
    """Draw the force along the stroke with letters at its stages."""
    return Shown(picture=force_stroke(stage=stage, named=False))


def _flange(*, length_mm, width_mm, thickness_mm, hole_diameter_mm, x_mm, y_mm, sites_mm):
    """Draw a flange with lettered proposals; each old site is its x, its y and its diameter."""
    flange = Flange(flange_length_mm=length_mm, flange_width_mm=width_mm, thickness_mm=thickness_mm)
    sites = [OldSite(x_mm=x, y_mm=y, affected_diameter_mm=across) for x, y, across in sites_mm]
    picture = flange_proposals(flange, hole_diameter_mm=hole_diameter_mm, x_mm=x_mm, y_mm=y_mm, sites=sites)
    return Shown(picture=picture)


FIGURES: dict[str, Callable[..., Shown]] = {
    "button": _button,
    "collar": _collar,
    "flange": _flange,
    "force_stroke": _force_stroke,
    "rivet_parts": _rivet_parts,
    "section": _section,
}


def figure_state(figure):
    """Return a figure as the browser needs it: its element, and its frame or None."""
    require_choice("figure", figure.name, FIGURES)
    return _drawn(figure.name, json.dumps(dict(figure.arguments), sort_keys=True, allow_nan=False))


@lru_cache(maxsize=32)
def _drawn(name, arguments):
    """Draw a figure once: a form is told anew with every answer, but its figure stays."""
    shown = FIGURES[name](**json.loads(arguments))
    frame = asdict(shown.frame) if shown.frame else None
    return {"html": shown.picture._repr_html_(), "frame": frame}
