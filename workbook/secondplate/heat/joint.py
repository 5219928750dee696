"""The shape of a riveted joint with a stud on its rivet head, as a body of revolution.

Heights run downwards from the face of the rivet head; the stud stands at negative heights. It leaves out the
thread, the small cone on the stud's face, the chamfer of the tail and all that is not round.
"""

from dataclasses import dataclass, fields

import numpy as np

from secondplate import tables
from secondplate.checks import require_between, require_choice
from secondplate.materials import MATERIAL_NAMES
from secondplate.weld_charts import short_cycle_row

PARTS = ("stud", "rivet", "top plate", "gap", "second plate", "slug", "bore")
GAP_FILLINGS = ("adhesive", "air")
RIVET_MATERIAL = "boron rivet steel"
# What the grid and the sources of the default sizes can stand for.
LIMITS_MM = {
    "stud_diameter_mm": (2, 10),
    "stud_length_mm": (3, 60),
    "flange_diameter_mm": (2, 12),
    "flange_thickness_mm": (0.2, 3),
    "head_diameter_mm": (4, 14),
    "head_height_mm": (0.3, 3),
    "web_mm": (0.2, 4),
    "shank_diameter_mm": (2, 10),
    "bore_diameter_mm": (0.5, 9),
    "tail_diameter_mm": (2, 14),
    "slug_mm": (0, 6),
    "top_plate_mm": (0.5, 6),
    "gap_mm": (0, 3),
    "second_plate_mm": (0.5, 6),
    "button_diameter_mm": (3, 20),
    "button_depth_mm": (0, 4),
    "remaining_thickness_mm": (0.05, 5),
    "outer_radius_mm": (15, 200),
}


@dataclass(frozen=True, kw_only=True)
class RivetedJoint:
    """A stud, the rivet under it and the two plates, round about one axis.

    Parameters
    ----------
    stud_material : str
        One of ``materials.MATERIAL_NAMES`` [-]
    stud_diameter_mm : float
        Stud diameter, 2 to 10 mm and at most the flange [mm]
    stud_length_mm : float
        Length from the stud's face to the stud holder, 3 to 60 mm and more than the flange [mm]
    flange_diameter_mm : float
        Diameter of the stud's face, 2 to 12 mm and at most the rivet head [mm]
    flange_thickness_mm : float
        Thickness of the flange, 0.2 to 3 mm [mm]
    head_diameter_mm : float
        Diameter of the rivet head, 4 to 14 mm [mm]
    head_height_mm : float
        Height of the cone between head and shank, 0.3 to 3 mm [mm]
    web_mm : float
        Solid steel between the face of the head and the bore, 0.2 to 4 mm [mm]
    shank_diameter_mm : float
        Outer diameter of the shank, 2 to 10 mm and less than the head [mm]
    bore_diameter_mm : float
        Diameter of the bore, 0.5 to 9 mm and less than the shank [mm]
    tail_diameter_mm : float
        Diameter over the spread tail, 2 to 14 mm, from the shank's to less than the button's [mm]
    slug_mm : float
        Thickness of the slug of the top plate in the bore, 0 where the bore holds only air [mm]
    top_plate_material : str
        One of ``materials.MATERIAL_NAMES`` [-]
    top_plate_mm : float
        Thickness of the top plate, 0.5 to 6 mm [mm]
    gap_mm : float
        Distance of the plates, 0 where they touch, to 3 mm [mm]
    gap_filling : str
        What is between the plates, one of ``GAP_FILLINGS`` [-]
    second_plate_material : str
        One of ``materials.MATERIAL_NAMES`` [-]
    second_plate_mm : float
        Thickness of the second plate beside the button, 0.5 to 6 mm [mm]
    button_diameter_mm : float
        Diameter of the button, 3 to 20 mm [mm]
    button_depth_mm : float
        How far the button stands out below the second plate, 0 to 4 mm [mm]
    remaining_thickness_mm : float
        Second plate left under the tail, 0.05 to 5 mm [mm]
    outer_radius_mm : float
        Radius at which the plates are cut off, without loss of heat there, 15 to 200 mm [mm]

    Raises
    ------
    ValueError
        If a size is out of its range, a part does not fit its neighbour, or a name is unknown.

    Examples
    --------
    >>> default_joint().tail_depth_mm
    4.3
    """

    stud_material: str
    stud_diameter_mm: float
    stud_length_mm: float
    flange_diameter_mm: float
    flange_thickness_mm: float
    head_diameter_mm: float
    head_height_mm: float
    web_mm: float
    shank_diameter_mm: float
    bore_diameter_mm: float
    tail_diameter_mm: float
    slug_mm: float
    top_plate_material: str
    top_plate_mm: float
    gap_mm: float
    gap_filling: str
    second_plate_material: str
    second_plate_mm: float
    button_diameter_mm: float
    button_depth_mm: float
    remaining_thickness_mm: float
    outer_radius_mm: float

    def __post_init__(self):
        """Refuse sizes out of range, unknown names and parts that do not fit together."""
        for name, limits in LIMITS_MM.items():
            require_between(_words(name), getattr(self, name), *limits, unit="mm")
        for name in ("stud_material", "top_plate_material", "second_plate_material"):
            require_choice(_words(name), getattr(self, name), MATERIAL_NAMES)
        require_choice("gap filling", self.gap_filling, GAP_FILLINGS)
        for name, is_less, other, why in _fits(self):
            _require_fit(self, name, is_less, other, why)

    @property
    def second_plate_from_mm(self):
        """Height of the upper face of the second plate in mm."""
        return self.top_plate_mm + self.gap_mm

    @property
    def plates_to_mm(self):
        """Height of the lower face of the second plate beside the button in mm."""
        return self.second_plate_from_mm + self.second_plate_mm

    @property
    def button_to_mm(self):
        """Height of the lower face of the button in mm."""
        return self.plates_to_mm + self.button_depth_mm

    @property
    def tail_depth_mm(self):
        """Height of the end of the tail: length of the rivet as set, in mm."""
        return round(self.button_to_mm - self.remaining_thickness_mm, 9)

    @property
    def slug_from_mm(self):
        """Height of the upper face of the slug in mm; the end of the tail where there is none."""
        return round(self.tail_depth_mm - self.slug_mm, 9)


def _words(name):
    """Turn the name of a field into the words of a sentence."""
    return name.removesuffix("_mm").replace("_", " ")


def _fits(joint):
    """List what must be less than (or at most) what: name, limit included, value of the limit, its words."""
    return (
        ("stud_diameter_mm", False, joint.flange_diameter_mm, "flange diameter"),
        ("flange_diameter_mm", False, joint.head_diameter_mm, "head diameter"),
        ("flange_thickness_mm", True, joint.stud_length_mm, "stud length"),
        ("shank_diameter_mm", True, joint.head_diameter_mm, "head diameter"),
        ("bore_diameter_mm", True, joint.shank_diameter_mm, "shank diameter"),
        ("shank_diameter_mm", False, joint.tail_diameter_mm, "tail diameter"),
        ("tail_diameter_mm", True, joint.button_diameter_mm, "button diameter"),
        ("button_diameter_mm", True, 2 * joint.outer_radius_mm, "outer diameter"),
        ("head_diameter_mm", True, joint.outer_radius_mm, "outer radius"),
        ("remaining_thickness_mm", True, joint.button_to_mm - joint.second_plate_from_mm, "button"),
        ("head_height_mm", True, joint.tail_depth_mm, "rivet as set"),
        ("web_mm", True, joint.tail_depth_mm, "rivet as set"),
        ("slug_mm", False, joint.tail_depth_mm - joint.web_mm, "depth of the bore"),
    )


def _require_fit(joint, name, is_less, limit, what):
    """Raise where a size is not below its neighbour's."""
    value = getattr(joint, name)
    if value > limit + 1e-9 or (is_less and value >= limit):
        how = "less than" if is_less else "at most"
        message = f"{_words(name)} must be {how} the {what} of {limit:g} mm, got {value:g} mm"
        raise ValueError(message)


def default_joint(stud_diameter_mm=6, **changes):
    """Return the usual joint with a pull stud of 3, 4, 5 or 6 mm, changed where wished.

    Parameters
    ----------
    stud_diameter_mm : float
        Stud diameter, one of 3, 4, 5 and 6 mm; the flange follows from the short-cycle chart [mm]
    **changes : float or str
        Other values for fields of ``RivetedJoint`` [-]

    Returns
    -------
    RivetedJoint
        The joint [-]

    Raises
    ------
    ValueError
        If the stud is not in the chart, a field is unknown or the parts do not fit.

    Notes
    -----
    Sources: table riveted_joint, each size with its own; flange from stud_manual_short_cycle page 39.

    Examples
    --------
    >>> default_joint(5, top_plate_mm=2.0).flange_diameter_mm
    6.0
    """
    sizes = {row.name: row.value if row.unit == "-" else row.number for row in tables.load("riveted_joint")}
    row = short_cycle_row(stud_diameter_mm)
    sizes |= {"stud_diameter_mm": row.stud_diameter_mm, "flange_diameter_mm": row.flange_diameter_mm}
    for name in changes:
        require_choice("field of the joint", name, tuple(field.name for field in fields(RivetedJoint)))
    return RivetedJoint(**(sizes | changes))


def rivet_radii_mm(joint, height_mm):
    """Return inner and outer radius of the rivet at heights; both are 0 outside the rivet.

    Parameters
    ----------
    joint : RivetedJoint
        The joint [-]
    height_mm : float or array
        Heights below the face of the head [mm]

    Returns
    -------
    tuple of numpy.ndarray
        Inner and outer radius, in the shape of the heights [mm]

    Notes
    -----
    The head is a cone down to the shank. The tail spreads along a straight line from the upper face of the
    second plate, with a wall of the same thickness all the way.
    Source: geometry.

    Examples
    --------
    >>> [float(radius) for radius in rivet_radii_mm(default_joint(), 1.6)]
    [1.65, 2.65]
    """
    height = np.asarray(height_mm, dtype=float)
    shank, spread = joint.shank_diameter_mm / 2, (joint.tail_diameter_mm - joint.shank_diameter_mm) / 2
    length = joint.tail_depth_mm - joint.second_plate_from_mm
    flare = spread * np.clip((height - joint.second_plate_from_mm) / length, 0, 1)
    cone = (joint.head_diameter_mm / 2 - shank) * np.clip(1 - height / joint.head_height_mm, 0, 1)
    inside = (height >= 0) & (height < joint.tail_depth_mm)
    bore = np.where(height < joint.web_mm, 0.0, joint.bore_diameter_mm / 2 + flare)
    return np.where(inside, bore, 0.0), np.where(inside, shank + cone + flare, 0.0)


def part_at(joint, radius_mm, height_mm):
    """Return the part at places: its number in ``PARTS``, or -1 in the open air.

    Parameters
    ----------
    joint : RivetedJoint
        The joint [-]
    radius_mm : float or array
        Radii, at least 0 [mm]
    height_mm : float or array
        Heights below the face of the head, negative in the stud [mm]

    Returns
    -------
    numpy.ndarray of int
        Number of the part, in the common shape [-]

    Notes
    -----
    Source: geometry.

    Examples
    --------
    >>> joint = default_joint()
    >>> [PARTS[part_at(joint, radius, height)] for radius, height in ((0, -5), (0, 0.5), (9, 2.5))]
    ['stud', 'rivet', 'second plate']
    """
    radius, height = np.broadcast_arrays(np.asarray(radius_mm, float), np.asarray(height_mm, float))
    bore, outer = rivet_radii_mm(joint, height)
    flange = (height >= -joint.flange_thickness_mm) & (radius < joint.flange_diameter_mm / 2)
    stud = (height >= -joint.stud_length_mm) & (flange | (radius < joint.stud_diameter_mm / 2))
    in_button = (radius < joint.button_diameter_mm / 2) & (height < joint.button_to_mm)
    conditions = (
        ("stud", (height < 0) & stud),
        ("open air", (height < 0) | (radius >= joint.outer_radius_mm)),
        ("rivet", (radius < outer) & (radius >= bore)),
        ("slug", (radius < bore) & (height >= joint.slug_from_mm)),
        ("bore", radius < bore),
        ("top plate", height < joint.top_plate_mm),
        ("gap", height < joint.second_plate_from_mm),
        ("second plate", (height < joint.plates_to_mm) | in_button),
    )
    numbers = [PARTS.index(name) if name in PARTS else -1 for name, _ in conditions]
    return np.select([where for _, where in conditions], numbers, default=-1)
