"""Form of the rivet in a section, unset and set, for many joints at once.

Heights count upwards from the face of the top plate far from the rivet. The forms are drawn after sections of
usual joints, from memory. Leaves out raised heads and tails with a square edge.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.section_paths import back, both, join, points, run, sides
from secondplate.section_volume import half_volume_mm3

SEAT_MM = 0.03  # the plate touches the underside of the head at least this far below its rim
_LAND_SHARE = 0.045  # height of the head's rim over the shank diameter
_UNDERSIDE_SHARE = 0.16  # height of the head's underside over the shank diameter
_EDGE_MM = 0.16  # width of the cutting edge
_EDGE_RISE_MM = 0.10  # how much higher the outermost point of the tail lies than the lowest
_CHAMFER_SHARE = 0.16  # height of the chamfer in the tail over the shank diameter
_CORNER_SHARE = 0.35  # corner between bore and web over the bore radius
_FOOT_SHARE = 0.8  # the slug begins this far up the chamfer
_LEAST_SEAT_MM = 0.05
_BREAK_MM = 0.06  # broken edge of the head's face
WALL_POINTS = 8, 8, 12  # of the inner wall: up to the slug, along it, above it


@dataclass(frozen=True, kw_only=True)
class RivetForm:
    """Sizes of a rivet on each side, of shape (joints, 2).

    Parameters
    ----------
    head_level : numpy.ndarray
        Height of the head's face [mm]
    head_radius : numpy.ndarray
        Radius of the head [mm]
    shank : numpy.ndarray
        Outer radius of the shank [mm]
    bore : numpy.ndarray
        Radius of the unset bore [mm]
    web : numpy.ndarray
        Thickness of the web [mm]
    tail : numpy.ndarray
        Height of the lowest point of the tail [mm]
    flare : numpy.ndarray
        How far the tail stands out beyond the shank [mm]
    buckle : numpy.ndarray
        How far the shank has bulged [mm]
    entry : numpy.ndarray
        Height at which the rivet passes into the second plate, where a bulge ends [mm]

    Examples
    --------
    >>> import numpy as np
    >>> size = np.ones((1, 2))
    >>> form = RivetForm(head_level=0 * size, head_radius=3.9 * size, shank=2.65 * size, bore=1.65 * size,
    ...                  web=1.1 * size, tail=-5 * size, flare=0 * size, buckle=0 * size, entry=-3 * size)
    >>> float(form.outer(np.full((1, 2, 1), -4.0))[0, 0, 0])
    2.65
    """

    head_level: np.ndarray
    head_radius: np.ndarray
    shank: np.ndarray
    bore: np.ndarray
    web: np.ndarray
    tail: np.ndarray
    flare: np.ndarray
    buckle: np.ndarray
    entry: np.ndarray

    @property
    def rim(self):
        """Height of the lower edge of the head's rim."""
        return self.head_level - _LAND_SHARE * 2 * self.shank

    @property
    def neck(self):
        """Height at which the head's underside has become the shank."""
        return self.rim - _UNDERSIDE_SHARE * 2 * self.shank

    @property
    def outermost(self):
        """Height of the outermost point of the tail."""
        return self.tail + _EDGE_RISE_MM

    @property
    def foot(self):
        """Height at which the slug begins on the inner wall."""
        return self.tail + _FOOT_SHARE * _CHAMFER_SHARE * 2 * self.shank

    @property
    def shoulder(self):
        """Height at which the bore begins to round into the web."""
        return self.head_level - self.web - _CORNER_SHARE * self.bore

    def _bulged(self, height):
        """Return how far the shank stands out by buckling."""
        share = np.clip((self.neck[..., None] - height) / (self.neck - self.entry)[..., None], 0, 1)
        return self.buckle[..., None] * (4 * share * (1 - share)) ** 2

    def _flared(self, height, lowest):
        """Return how far the shank stands out by flaring, all of it at ``lowest``: a curve of power 3.5."""
        share = np.clip((self.neck[..., None] - height) / (self.neck - lowest)[..., None], 0, 1)
        return self.flare[..., None] * (share * share * share * np.sqrt(share))

    def outer(self, height):
        """Radius of the outside below the rim: underside of the head, shank and tail."""
        share = np.clip((height - self.neck[..., None]) / (self.rim - self.neck)[..., None], 0, 1)
        # Power 2.25: how roundly the underside runs into the shank.
        underside = (self.head_radius - self.shank)[..., None] * (share * share * np.sqrt(np.sqrt(share)))
        below = self._bulged(height) + self._flared(height, self.outermost)
        return self.shank[..., None] + underside + below

    def wall(self, height):
        """Return (a, b) such that the inner radius is a - thickening times b."""
        middle = self.shank[..., None] + self._bulged(height) + self._flared(height, self.tail)
        chamfer = _CHAMFER_SHARE * 2 * self.shank[..., None]
        share = np.clip((height - self.tail[..., None]) / chamfer, 0, 1)
        grown = (self.shank - self.bore - _EDGE_MM)[..., None]
        return middle - _EDGE_MM, grown * (1 - (1 - share) * np.sqrt(1 - share))

    def outside(self, contact):
        """Return head, seat, shank and leg as paths downwards, each beginning after the one before.

        ``contact`` is the height at which the top plate touches the head's underside.
        """
        free = run(self.rim, contact, 7, ends="after")
        # While the head still stands high, the plate touches the shank below the neck.
        low = np.minimum(self.neck, contact - _LEAST_SEAT_MM)
        seat = run(contact, low, 9, ends="after")
        shank = run(low, self.entry, 16, ends="after")
        leg = run(self.entry, self.outermost, 17, ends="after")
        face = points(
            (np.zeros_like(self.head_level), self.head_level),
            (self.head_radius - _BREAK_MM, self.head_level),
            (self.head_radius, self.head_level - _BREAK_MM),
            (self.head_radius, self.rim),
        )
        head = join(face, (self.outer(free), free))
        return head, (self.outer(seat), seat), (self.outer(shank), shank), (self.outer(leg), leg)

    def inside(self, slug_top):
        """Return (a, b, heights) of the inner wall from the tail to the axis, as in ``wall``."""
        below, along, above = WALL_POINTS
        heights = (
            run(self.tail, self.foot, below),
            run(self.foot, slug_top, along + 1, ends="after"),
            run(slug_top, self.shoulder, above - 5, ends="after"),
        )
        height = np.concatenate(heights, axis=-1)
        a, b = self.wall(height)
        angle = np.linspace(0, np.pi / 2, 6)[1:]
        radial = np.append(1 - _CORNER_SHARE * (1 - np.cos(angle)), 0.0)
        rounded = self.shoulder[..., None] + _CORNER_SHARE * self.bore[..., None] * np.append(
            np.sin(angle), 1.0
        )
        corner = a[..., -1:] * radial, b[..., -1:] * radial, rounded
        return tuple(np.concatenate(pair, axis=-1) for pair in zip((a, b, height), corner, strict=True))


def unset_form(columns, **change):
    """Return the form of the unset rivet, or with some of its sizes changed.

    Parameters
    ----------
    columns : dict of str to numpy.ndarray
        Parameters by name, each of one length, see ``SectionParameters.columns`` [-]
    **change : numpy.ndarray
        Other sizes in mm, by the names of ``RivetForm`` [-]

    Returns
    -------
    RivetForm
        Sizes on each side [-]

    Examples
    --------
    >>> import numpy as np
    >>> names = "head_diameter_mm shank_diameter_mm bore_diameter_mm web_mm rivet_length_mm".split()
    >>> columns = dict(zip(names, map(np.atleast_1d, (7.75, 5.3, 3.3, 1.1, 5.0))))
    >>> unset_form(columns).tail[0].tolist()
    [-5.0, -5.0]
    """
    length = both(columns["rivet_length_mm"])
    sizes = {
        "head_level": np.zeros_like(length),
        "head_radius": both(columns["head_diameter_mm"]) / 2,
        "shank": both(columns["shank_diameter_mm"]) / 2,
        "bore": both(columns["bore_diameter_mm"]) / 2,
        "web": both(columns["web_mm"]),
        "tail": -length,
        "flare": np.zeros_like(length),
        "buckle": np.zeros_like(length),
        "entry": -length * 0.6,
    }
    return RivetForm(**sizes | change)


def set_form(columns):
    """Return the form of the set rivet; its flare follows from the interlock.

    What is flared above the second plate holds nothing: interlock = flare (1 - its share at the entry).

    Parameters
    ----------
    columns : dict of str to numpy.ndarray
        Parameters by name, each of one length, see ``SectionParameters.columns`` [-]

    Returns
    -------
    RivetForm
        Sizes on each side [-]

    Examples
    --------
    >>> from secondplate.section_parameters import usual_parameters
    >>> round(float(set_form(usual_parameters().columns()).flare[0, 0]), 3)
    0.593
    """
    face = both(columns["head_flushness_mm"])
    entry = -both(columns["top_plate_mm"] + columns["draw_down_mm"])
    tail = face - sides(columns, "set_length")
    unit = unset_form(columns, head_level=face, tail=tail, flare=np.ones_like(tail), entry=entry)
    share = unit.outer(entry[..., None])[..., 0] - unit.shank
    flare = sides(columns, "interlock") / (1 - share)
    return unset_form(
        columns, head_level=face, tail=tail, flare=flare, buckle=sides(columns, "buckle"), entry=entry
    )


def rivet_path(outside, inside, thickening):
    """Join outside and inside of a rivet to half an outline, from the web over the tail to the face.

    Parameters
    ----------
    outside : tuple of numpy.ndarray
        Path down the outside, from the middle of the face [mm]
    inside : tuple of numpy.ndarray
        As ``RivetForm.inside`` gives it [mm]
    thickening : numpy.ndarray
        Factor on the wall, of shape (joints, 2) [-]

    Returns
    -------
    tuple of numpy.ndarray
        The half outline, counter-clockwise [mm]

    Examples
    --------
    >>> import numpy as np
    >>> one = np.ones((1, 2, 1))
    >>> rivet_path((one, one), (one, 0 * one, one), np.ones((1, 2)))[0].shape
    (1, 2, 2)
    """
    a, b, heights = inside
    return join(back((a - thickening[..., None] * b, heights)), back(outside))


def wall_thickening(outside, inside, volume_mm3):
    """Return the factor on the wall that gives the rivet its volume: a quadratic in it, solved exactly.

    Parameters
    ----------
    outside : tuple of numpy.ndarray
        Path down the outside [mm]
    inside : tuple of numpy.ndarray
        As ``RivetForm.inside`` gives it [mm]
    volume_mm3 : numpy.ndarray
        Volume of the rivet on each side, of shape (joints, 2) [mm3]

    Returns
    -------
    numpy.ndarray
        The factor on each side, NaN where no wall has that volume [-]

    Examples
    --------
    >>> from secondplate.section_parameters import usual_parameters
    >>> form = unset_form(usual_parameters().columns())
    >>> outside = join(*form.outside(form.rim - SEAT_MM))
    >>> inside = form.inside((form.foot + form.shoulder) / 2)
    >>> volume = half_volume_mm3(*rivet_path(outside, inside, 1.25 + 0 * form.head_level))
    >>> round(float(wall_thickening(outside, inside, volume)[0, 0]), 12)
    1.25
    """
    a, b, heights = inside
    step = -np.pi / 3 * np.diff(heights, axis=-1)
    a1, a2, b1, b2 = a[..., :-1], a[..., 1:], b[..., :-1], b[..., 1:]
    first = -np.sum((2 * (a1 * b1 + a2 * b2) + a1 * b2 + a2 * b1) * step, axis=-1)
    second = np.sum((b1 * (b1 + b2) + b2 * b2) * step, axis=-1)
    missing = volume_mm3 - half_volume_mm3(*rivet_path(outside, inside, np.zeros(volume_mm3.shape)))
    with np.errstate(invalid="ignore"):  # NaN where there is no root, refused by the caller
        return 2 * missing / (first + np.sqrt(first * first + 4 * second * missing))


def unset_path(columns):
    """Return the half outline of the unset rivet, from the web over the tail to the face.

    Parameters
    ----------
    columns : dict of str to numpy.ndarray
        Parameters by name, each of one length, see ``SectionParameters.columns`` [-]

    Returns
    -------
    tuple of numpy.ndarray
        The half outline, counter-clockwise [mm]

    Examples
    --------
    >>> from secondplate.section_parameters import usual_parameters
    >>> float(unset_path(usual_parameters().columns())[1].min())
    -5.5
    """
    form = unset_form(columns)
    outside = join(*form.outside(form.rim - SEAT_MM))
    return rivet_path(outside, form.inside((form.foot + form.shoulder) / 2), np.ones_like(form.head_level))
