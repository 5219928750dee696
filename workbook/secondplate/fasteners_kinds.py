"""Fasteners that replace a rivet: blind rivets, lock bolts, bolts, with their loads and holes.

Loads are those of the fastener alone, between hard plates; what a joint of thin sheet bears is in
``fasteners_joint``. Most tables are from memory.
"""

from dataclasses import dataclass

from secondplate.checks import require_above, require_at_least, require_choice
from secondplate.eurocode9_spacing import EUROCODE9
from secondplate.studs import property_class
from secondplate.tables import load, values
from secondplate.threads import coarse_pitch_mm, stress_area_mm2

FASTENER_RULES = values("fastener_rules")
BLIND_RIVET, LOCK_BOLT, BOLT = "blind rivet", "lock bolt", "bolt"


def _read_loads(table, key):
    """Read a table of loads as {kind: {diameter: {load: row}}}."""
    found = {}
    for row in load(table):
        sizes = found.setdefault(row.keys[key], {})
        sizes.setdefault(float(row.keys["diameter_mm"]), {})[row.name] = row
    return found


_BLIND_RIVETS = _read_loads("blind_rivets", "standard")
_LOCK_BOLTS = _read_loads("lock_bolts", "metal")
BLIND_RIVETS, LOCK_BOLT_METALS = tuple(_BLIND_RIVETS), tuple(_LOCK_BOLTS)
BOLT_SIZES = tuple(name.removeprefix("hole ") for name in FASTENER_RULES if name.startswith("hole M"))
BOLT_CLASSES = {
    "8.8": ("steel to 8.8", "steel"),
    "10.9": ("steel 10.9", "steel"),
    "A2-70": ("stainless", "steel"),
    "A2-80": ("stainless", "steel"),
}


@dataclass(frozen=True, kw_only=True)
class Fastener:
    """One fastener: its sizes and least loads.

    Parameters
    ----------
    name : str
        What it is, with standard or class and size [-]
    kind : str
        Blind rivet, lock bolt or bolt [-]
    diameter_mm : float
        Diameter of body, pin or thread, above 0 [mm]
    hole_least_mm : float
        Least hole, at least the diameter [mm]
    hole_most_mm : float
        Greatest hole, at least the least [mm]
    head_diameter_mm : float
        Least diameter of the head, above the greatest hole [mm]
    fastener_shear_n : float
        Least load in shear, above 0 [N]
    fastener_tension_n : float or None
        Least load in tension, above 0; None where no value is known [N]
    basis : str
        What the loads rest on [-]

    Raises
    ------
    ValueError
        If a size or load lies outside its range.

    Examples
    --------
    >>> blind_rivet("ISO 15977 H", 4.8).fastener_shear_n
    1850.0
    """

    name: str
    kind: str
    diameter_mm: float
    hole_least_mm: float
    hole_most_mm: float
    head_diameter_mm: float
    fastener_shear_n: float
    fastener_tension_n: float | None
    basis: str

    def __post_init__(self):
        """Refuse a fastener that cannot be."""
        require_above("diameter of the fastener", self.diameter_mm, 0, unit="mm")
        require_at_least("least hole", self.hole_least_mm, self.diameter_mm, unit="mm")
        require_at_least("greatest hole", self.hole_most_mm, self.hole_least_mm, unit="mm")
        require_above("head diameter", self.head_diameter_mm, self.hole_most_mm, unit="mm")
        require_above("shear load of the fastener", self.fastener_shear_n, 0, unit="N")
        if self.fastener_tension_n is not None:
            require_above("tension load of the fastener", self.fastener_tension_n, 0, unit="N")


def _size(kind, sizes, diameter_mm):
    """Return the rows of a size, or raise with the sizes that there are."""
    diameter = require_above("diameter of the fastener", diameter_mm, 0, unit="mm")
    if diameter not in sizes:
        listed = ", ".join(f"{size:g}" for size in sizes)
        message = f"diameter of {kind} must be one of {listed} mm, got {diameter:.6g} mm"
        raise ValueError(message)
    return sizes[diameter]


def _basis(row):
    """Say what a row rests on."""
    return f"{row.basis}: {row.conditions} ({row.source}, {row.locator})"


def blind_rivet_sizes(standard):
    """Return the diameters of a blind rivet whose loads are known.

    Parameters
    ----------
    standard : str
        One of ``BLIND_RIVETS`` [-]

    Returns
    -------
    tuple of float
        Diameters [mm]

    Raises
    ------
    ValueError
        If the standard is unknown.

    Examples
    --------
    >>> blind_rivet_sizes("ISO 15976")
    (3.2, 4.0, 4.8, 6.4)
    """
    return tuple(_BLIND_RIVETS[require_choice("blind rivet", standard, BLIND_RIVETS)])


def blind_rivet(standard, diameter_mm):
    """Return a break-mandrel blind rivet with protruding head: its least loads and its hole.

    Parameters
    ----------
    standard : str
        One of ``BLIND_RIVETS``, with the class L or H for ISO 15977 [-]
    diameter_mm : float
        One of its sizes [mm]

    Returns
    -------
    Fastener
        The rivet; without tension for ISO 15976 [-]

    Raises
    ------
    ValueError
        If the standard or the size is unknown.

    Notes
    -----
    Hole d + 0.1 to d + 0.2. Source: iso_15977, iso_15979, iso_15983, iso_15973, iso_15975 and iso_15976 from
    memory; iso_16585 tension seen, shear from memory.

    Examples
    --------
    >>> rivet = blind_rivet("ISO 15983", 4.8)
    >>> rivet.fastener_shear_n, rivet.fastener_tension_n, rivet.hole_most_mm
    (4000.0, 5000.0, 5.0)
    """
    require_choice("blind rivet", standard, BLIND_RIVETS)
    rows = _size(standard, _BLIND_RIVETS[standard], diameter_mm)
    return Fastener(
        name=f"{standard}, {diameter_mm:g} mm",
        kind=BLIND_RIVET,
        diameter_mm=float(diameter_mm),
        hole_least_mm=round(diameter_mm + FASTENER_RULES["least hole over rivet"], 6),
        hole_most_mm=round(diameter_mm + FASTENER_RULES["greatest hole over rivet"], 6),
        head_diameter_mm=FASTENER_RULES["least head of a blind rivet"] * diameter_mm,
        fastener_shear_n=rows["shear"].number,
        fastener_tension_n=rows["tension"].number if "tension" in rows else None,
        basis=_basis(rows["shear"]),
    )


def mandrel_break_n(diameter_mm):
    """Return the greatest load at which the mandrel of ISO 15977 class H breaks.

    Parameters
    ----------
    diameter_mm : float
        One of its sizes [mm]

    Returns
    -------
    float
        Load [N]

    Raises
    ------
    ValueError
        If the size is unknown.

    Notes
    -----
    Source: iso_15977, from memory with medium confidence.

    Examples
    --------
    >>> mandrel_break_n(4.8)
    6500.0
    """
    return _size("ISO 15977 H", _BLIND_RIVETS["ISO 15977 H"], diameter_mm)["mandrel break"].number


def lock_bolt(metal, diameter_mm):
    """Return a two-piece swaged lock bolt: pin and collar.

    Parameters
    ----------
    metal : str
        One of ``LOCK_BOLT_METALS`` [-]
    diameter_mm : float
        One of its sizes: 4.8, 6.4, 7.9 or 9.5 [mm]

    Returns
    -------
    Fastener
        The lock bolt [-]

    Raises
    ------
    ValueError
        If the metal or the size is unknown.

    Notes
    -----
    Hole as listed, 0.1 either way. Source: lock_bolt_sheet.

    Examples
    --------
    >>> lock_bolt("steel", 6.4).fastener_shear_n
    9700.0
    """
    require_choice("metal of the lock bolt", metal, LOCK_BOLT_METALS)
    rows = _size(f"{metal} lock bolt", _LOCK_BOLTS[metal], diameter_mm)
    tolerance = FASTENER_RULES["lock bolt hole tolerance"]
    return Fastener(
        name=f"lock bolt, {metal}, {diameter_mm:g} mm",
        kind=LOCK_BOLT,
        diameter_mm=float(diameter_mm),
        hole_least_mm=round(rows["hole"].number - tolerance, 6),
        hole_most_mm=round(rows["hole"].number + tolerance, 6),
        head_diameter_mm=FASTENER_RULES["least head of a lock bolt"] * diameter_mm,
        fastener_shear_n=rows["shear"].number,
        fastener_tension_n=rows["tension"].number,
        basis=_basis(rows["shear"]),
    )


def bolt(size, class_name="8.8"):
    """Return a hexagon bolt with its thread in the shear plane.

    Parameters
    ----------
    size : str
        One of ``BOLT_SIZES`` [-]
    class_name : str
        One of ``BOLT_CLASSES`` [-]

    Returns
    -------
    Fastener
        The bolt; its loads carry no partial factor [-]

    Raises
    ------
    ValueError
        If the size or the class is unknown.

    Notes
    -----
    Loads alpha_v f_ub A_s and k2 f_ub A_s. Source: en_1999_1_1 Table 8.5, iso_898_1, iso_3506_1, holes
    iso_273, heads iso_4017 from memory.

    Examples
    --------
    >>> round(bolt("M6").fastener_shear_n)
    9659
    """
    require_choice("size of the bolt", size, BOLT_SIZES)
    sheared, drawn = BOLT_CLASSES[require_choice("class of the bolt", class_name, tuple(BOLT_CLASSES))]
    diameter = float(size.removeprefix("M"))
    area = float(stress_area_mm2(diameter, pitch_mm=coarse_pitch_mm(diameter)))
    load_n = property_class(class_name).tensile_strength_mpa * area
    return Fastener(
        name=f"bolt {size}, {class_name}",
        kind=BOLT,
        diameter_mm=diameter,
        hole_least_mm=diameter,
        hole_most_mm=FASTENER_RULES[f"hole {size}"],
        head_diameter_mm=FASTENER_RULES["head of a bolt"] * diameter,
        fastener_shear_n=EUROCODE9[f"shear {sheared}"] * load_n,
        fastener_tension_n=EUROCODE9[f"tension {drawn}"] * load_n,
        basis="forms of EN 1999-1-1 Table 8.5, from memory, on the least strength of the class",
    )
