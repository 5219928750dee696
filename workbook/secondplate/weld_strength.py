"""Strength of a stud weld on a rivet head: what is fused, what weld, stud and head bear, which gives first.

Areas are in ``weld_sections``, limits of a round face in ``weld_loads``. It leaves out notches, hydrogen and
fatigue; the strength of the weld metal is known only as a band.
"""

from dataclasses import dataclass

import numpy as np

from secondplate import tables
from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_above, require_at_least, require_between
from secondplate.weld_loads import elastic_limit_n, plastic_limit_n
from secondplate.weld_sections import lens_area_mm2, lens_centroid_mm

PARTS = ("weld", "stud", "head")


STRENGTHS_MPA = tables.bands("weld_strength", cited=False)


@dataclass(frozen=True, kw_only=True)
class FusedFace:
    """What is fused between flange and head, as a round face of the same area about its centroid.

    Parameters
    ----------
    area_mm2 : float or array
        Fused area [mm2]
    centroid_mm : float or array
        Centroid off the axis of the stud [mm]

    Examples
    --------
    >>> round(fused_face(flange_diameter_mm=7, head_diameter_mm=7.75, offset_mm=0).diameter_mm, 6)
    7.0
    """

    area_mm2: float
    centroid_mm: float

    @property
    def diameter_mm(self):
        """Diameter of the round face of the same area in mm."""
        return plain(np.sqrt(4 * np.asarray(self.area_mm2) / np.pi))


def fused_face(*, flange_diameter_mm, head_diameter_mm, offset_mm, fused_share=1.0):
    """Return what is fused where flange and head overlap.

    Parameters
    ----------
    flange_diameter_mm : float or array
        Diameter of the flange, above 0 [mm]
    head_diameter_mm : float or array
        Diameter of the head, above 0 [mm]
    offset_mm : float or array
        Axis of the stud off the middle of the head, at least 0, so that the two overlap [mm]
    fused_share : float or array
        Fused part of the overlap, above 0 and at most 1, spread evenly over it [-]

    Returns
    -------
    FusedFace
        Area and centroid [-]

    Raises
    ------
    ValueError
        If an argument is out of its range or the circles do not meet.

    Notes
    -----
    Source: plane_geometry, lens of two circles. The round face of the same area is a little stiffer across
    than a lens and a little softer along it; a weld shown good by it keeps a margin all the same.

    Examples
    --------
    >>> face = fused_face(flange_diameter_mm=5, head_diameter_mm=7.75, offset_mm=2)
    >>> round(face.area_mm2, 2)
    17.58
    """
    circles = {
        "first_radius_mm": require_above("flange diameter", flange_diameter_mm, 0, unit="mm") / 2,
        "second_radius_mm": require_above("head diameter", head_diameter_mm, 0, unit="mm") / 2,
        "offset_mm": offset_mm,
    }
    require_above("fused share", fused_share, 0, unit="")
    share = require_between("fused share", fused_share, 0, 1, unit="")
    centroid = lens_centroid_mm(**circles)
    return FusedFace(area_mm2=lens_area_mm2(**circles) * share, centroid_mm=centroid)


def web_tear_n(*, shank_diameter_mm, web_left_mm, strength_mpa):
    """Return the pull at which the web shears out of the head round the shank, pi d t R / sqrt 3.

    Parameters
    ----------
    shank_diameter_mm : float or array
        Diameter d of the shank, above 0 [mm]
    web_left_mm : float or array
        Solid web t under the melt, at least 0 [mm]
    strength_mpa : float or array
        Tensile strength R of the web, above 0 [MPa]

    Returns
    -------
    float or array
        Pull, in the common shape [N]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: strength_of_materials, punching shear with the shear strength of von Mises. The melt wets the head
    beyond the bore, so that the ring of the shank carries it; a web bent through breaks earlier.

    Examples
    --------
    >>> round(web_tear_n(shank_diameter_mm=5.3, web_left_mm=0.7, strength_mpa=900))
    6056
    """
    shank = require_above("shank diameter", shank_diameter_mm, 0, unit="mm")
    web = require_at_least("web left", web_left_mm, 0, unit="mm")
    return np.pi * shank * web * require_above("strength", strength_mpa, 0, unit="MPa") / np.sqrt(3)


@dataclass(frozen=True, kw_only=True)
class PullLimits:
    """What weld, stud and head bear, each as a band, and what may give first.

    Parameters
    ----------
    weld_n : Band
        Pull at which the weld breaks [N]
    stud_n : Band
        Pull at which the stud breaks [N]
    head_n : Band
        Pull at which the web of the head tears [N]

    Examples
    --------
    >>> PARTS
    ('weld', 'stud', 'head')
    """

    weld_n: Band
    stud_n: Band
    head_n: Band

    def _bands(self):
        """Pair the parts with their bands."""
        return tuple(zip(PARTS, (self.weld_n, self.stud_n, self.head_n), strict=True))

    @property
    def likely_first(self):
        """The part with the lowest best value."""
        return min(self._bands(), key=lambda pair: pair[1].best)[0]

    @property
    def possible_first(self):
        """Every part that may give first: its low end lies below the high ends of all."""
        lowest_high = min(band.high for _, band in self._bands())
        return tuple(part for part, band in self._bands() if band.low <= lowest_high)


def pull_limits(face, *, stress_area_mm2, shank_diameter_mm, web_left_mm, tilt_deg=0.0, lever_mm=0.0):
    """Return what each part of a welded stud bears, from the bands of strength.

    The weld runs from its elastic limit at the low strength to its plastic limit at the high one; the stud,
    being ductile, has its plastic limits.

    Parameters
    ----------
    face : FusedFace
        What is fused, of single values [-]
    stress_area_mm2 : float
        Stress area of the stud's thread, above 0 [mm2]
    shank_diameter_mm : float
        Diameter of the shank, above 0 [mm]
    web_left_mm : float
        Solid web under the melt, at least 0 [mm]
    tilt_deg : float
        Angle between pull and stud axis, 0 to 45 degrees [deg]
    lever_mm : float
        Height above the weld at which the pull acts, at least 0 [mm]

    Returns
    -------
    PullLimits
        The three bands [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: table weld_strength, mostly own judgement.

    Examples
    --------
    >>> face = fused_face(flange_diameter_mm=7, head_diameter_mm=7.75, offset_mm=0)
    >>> limits = pull_limits(face, stress_area_mm2=20.1, shank_diameter_mm=5.3, web_left_mm=0.7)
    >>> limits.likely_first, limits.possible_first
    ('head', ('head',))
    """
    weld, stud, web = (
        STRENGTHS_MPA[name] for name in ("weld metal", "stud beside the weld", "web of the head")
    )
    askew = {"tilt_deg": tilt_deg, "lever_mm": lever_mm}
    on_face = askew | {"diameter_mm": face.diameter_mm, "eccentricity_mm": face.centroid_mm}
    thread = np.sqrt(4 * require_above("stress area", stress_area_mm2, 0, unit="mm2") / np.pi)
    best = [limit(strength_mpa=weld.best, **on_face) for limit in (elastic_limit_n, plastic_limit_n)]
    return PullLimits(
        weld_n=Band(
            low=elastic_limit_n(strength_mpa=weld.low, **on_face),
            best=sum(best) / 2,
            high=plastic_limit_n(strength_mpa=weld.high, **on_face),
            basis="elastic limit at the low to plastic limit at the high strength of the weld metal",
        ),
        stud_n=_band_n(stud, lambda mpa: plastic_limit_n(diameter_mm=thread, strength_mpa=mpa, **askew)),
        head_n=_band_n(
            web,
            lambda mpa: web_tear_n(
                shank_diameter_mm=shank_diameter_mm, web_left_mm=web_left_mm, strength_mpa=mpa
            ),
        ),
    )


def _band_n(strength, load_n):
    """Turn a band of strength into a band of load."""
    ends = {end: float(load_n(getattr(strength, end))) for end in ("low", "best", "high")}
    return Band(**ends, basis=strength.basis)
