"""A flange with its old sites, the rules that new fasteners on it keep, and which of them a layout breaks.

A flange is a rectangle: x runs along it from its left end, y from its root to its free edge. An old site is a
circle of the diameter that it affects. The rule beside old sites is a choice of this library.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.checks import require_above, require_at_least, require_between, require_choice
from secondplate.eurocode9_spacing import DISTANCES, SPACING_SOURCE, least_distance_mm
from secondplate.fasteners_joint import offset_edge_mm
from secondplate.fasteners_kinds import FASTENER_RULES

LOAD_DIRECTIONS = ("across the flange", "along the flange")
# Distances are marked out to a tenth; what is a millionth short is not short.
FORGIVEN_MM = 1e-6


@dataclass(frozen=True, kw_only=True)
class Flange:
    """A flange that takes new fasteners.

    Parameters
    ----------
    flange_length_mm : float
        Length along x, 5 to 2000 [mm]
    flange_width_mm : float
        Width along y from the root to the free edge, 5 to 200 [mm]
    thickness_mm : float
        Thickness of the thinner outer sheet, 0.3 to 6.5 [mm]
    root_clearance_mm : float
        Least distance from the root to a centre that the tool needs, 0 to 100 [mm]

    Raises
    ------
    ValueError
        If a size lies outside its range.

    Examples
    --------
    >>> Flange(flange_length_mm=150, flange_width_mm=25, thickness_mm=1.5).flange_width_mm
    25
    """

    flange_length_mm: float
    flange_width_mm: float
    thickness_mm: float
    root_clearance_mm: float = 0.0

    def __post_init__(self):
        """Refuse a flange outside the range of the solver."""
        require_between("flange length", self.flange_length_mm, 5, 2000, unit="mm")
        require_between("flange width", self.flange_width_mm, 5, 200, unit="mm")
        require_between("sheet thickness", self.thickness_mm, 0.3, 6.5, unit="mm")
        require_between("clearance at the root", self.root_clearance_mm, 0, 100, unit="mm")


@dataclass(frozen=True, kw_only=True)
class OldSite:
    """A place where an old rivet was.

    Parameters
    ----------
    x_mm : float
        Place along the flange [mm]
    y_mm : float
        Place across it, from the root [mm]
    affected_diameter_mm : float
        Diameter that the site counts with, by ``affected_diameter_mm``, or its button; 0 to 60 [mm]

    Raises
    ------
    ValueError
        If a value is not finite or the diameter lies outside its range.

    Examples
    --------
    >>> OldSite(x_mm=20, y_mm=12, affected_diameter_mm=6).affected_diameter_mm
    6
    """

    x_mm: float
    y_mm: float
    affected_diameter_mm: float

    def __post_init__(self):
        """Refuse a site that is nowhere or too large."""
        require_between("place of an old site along the flange", self.x_mm, -1000, 3000, unit="mm")
        require_between("place of an old site across the flange", self.y_mm, -1000, 1000, unit="mm")
        require_between("affected diameter", self.affected_diameter_mm, 0, 60, unit="mm")


@dataclass(frozen=True, kw_only=True)
class LayoutRules:
    """Least distances between centres, edges and old sites on one flange, with the name of their rule.

    Parameters
    ----------
    name : str
        Which rule it is, as sentences will call it [-]
    to_ends_mm : float
        Least distance of a centre to the ends of the flange, above 0 [mm]
    to_edges_mm : float
        Least distance of a centre to root and free edge, above 0 [mm]
    pitch_mm : float
        Least distance of centres along the flange, above 0 [mm]
    between_rows_mm : float
        Least distance of rows across it, above 0 [mm]
    site_share : float
        Share of an old site's diameter that its distance takes, at least 0 [-]
    site_offset_mm : float
        What is added to it, at least 0 [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Examples
    --------
    >>> round(hole_rules(5.0, level="minimum").site_distance_mm(6.0), 2)
    13.2
    """

    name: str
    to_ends_mm: float
    to_edges_mm: float
    pitch_mm: float
    between_rows_mm: float
    site_share: float
    site_offset_mm: float

    def __post_init__(self):
        """Refuse rules without distances."""
        for label in ("to_ends_mm", "to_edges_mm", "pitch_mm", "between_rows_mm"):
            require_above(label.removesuffix("_mm").replace("_", " "), getattr(self, label), 0, unit="mm")
        require_at_least("share of an old site", self.site_share, 0, unit="")
        require_at_least("offset of an old site", self.site_offset_mm, 0, unit="mm")

    def site_distance_mm(self, affected_diameter_mm):
        """Return the least distance of a centre to an old site of a diameter in mm."""
        return self.site_share * affected_diameter_mm + self.site_offset_mm


def hole_rules(hole_diameter_mm, *, level="regular", load_direction="across the flange"):
    """Return the rules for fasteners in holes: those of EN 1999-1-1 turned the way the load runs.

    An old site counts as a hole of its affected diameter: its distance is the row spacing factor times the
    mean of both diameters.

    Parameters
    ----------
    hole_diameter_mm : float
        Hole diameter d0, above 0 [mm]
    level : str
        ``regular`` or ``minimum`` [-]
    load_direction : str
        One of ``LOAD_DIRECTIONS`` [-]

    Returns
    -------
    LayoutRules
        The rules [-]

    Raises
    ------
    ValueError
        If a name is unknown or the hole is not above 0.

    Notes
    -----
    Source: en_1999_1_1 Table 8.2, from memory; old sites own_judgement.

    Examples
    --------
    >>> rules = hole_rules(4.9, level="minimum")
    >>> round(rules.to_edges_mm, 2), round(rules.pitch_mm, 2)
    (5.88, 11.76)
    """
    across = require_choice("direction of the load", load_direction, LOAD_DIRECTIONS) == LOAD_DIRECTIONS[0]
    distances = (least_distance_mm(kind, hole_diameter_mm, level=level) for kind in DISTANCES)
    end, edge, spacing, row_spacing = distances
    return LayoutRules(
        name=f"{level} of {SPACING_SOURCE}",
        to_ends_mm=edge if across else end,
        to_edges_mm=end if across else edge,
        pitch_mm=row_spacing if across else spacing,
        between_rows_mm=spacing if across else row_spacing,
        site_share=row_spacing / (2 * hole_diameter_mm),
        site_offset_mm=row_spacing / 2,
    )


def die_rules(die_diameter_mm):
    """Return the rules for new self-piercing rivets: the die must clear edges, old buttons and the next die.

    Parameters
    ----------
    die_diameter_mm : float
        Diameter of the die, above 0 [mm]

    Returns
    -------
    LayoutRules
        The rules; an old site counts with its button [-]

    Raises
    ------
    ValueError
        If the diameter is not above 0.

    Notes
    -----
    Edges D/2 + 2 mm, old buttons D_b/2 + D/2 + 2 mm, next D + 2 mm. Source: own_judgement, new rivet beside
    an old site: a choice of this library.

    Examples
    --------
    >>> die_rules(9).site_distance_mm(10)
    11.5
    """
    edge, clear = offset_edge_mm(die_diameter_mm=die_diameter_mm), FASTENER_RULES["clear of an old button"]
    return LayoutRules(
        name="room for the die",
        to_ends_mm=edge,
        to_edges_mm=edge,
        pitch_mm=die_diameter_mm + clear,
        between_rows_mm=die_diameter_mm + clear,
        site_share=0.5,
        site_offset_mm=die_diameter_mm / 2 + clear,
    )


def _short(label, number, given, least, rules):
    """Say for one fastener that a distance is too short."""
    return (
        f"{label} of fastener {number + 1} must be at least {least:.6g} mm ({rules.name}), got {given:.6g} mm"
    )


def layout_faults(flange, *, sites, rules, x_mm, y_mm):
    """Return every rule that a layout breaks, one sentence each; an empty tuple where it keeps them all.

    Two fasteners keep off each other where they are a pitch apart along the flange or a row apart across it.

    Parameters
    ----------
    flange : Flange
        The flange [-]
    sites : sequence of OldSite
        Old sites [-]
    rules : LayoutRules
        The rules [-]
    x_mm : array
        Place of each fastener along the flange [mm]
    y_mm : array
        Place of each across it, from the root [mm]

    Returns
    -------
    tuple of str
        Sentences that name the rule and the value [-]

    Raises
    ------
    ValueError
        If the places are no numbers or do not pair.

    Examples
    --------
    >>> flange = Flange(flange_length_mm=60, flange_width_mm=20, thickness_mm=1.5)
    >>> layout_faults(flange, sites=(), rules=die_rules(9), x_mm=[30], y_mm=[5])
    ('distance to the root of fastener 1 must be at least 6.5 mm (room for the die), got 5 mm',)
    """
    x = require_between("place along the flange", np.atleast_1d(x_mm), -1e6, 1e6, unit="mm")
    y = require_between("place across the flange", np.atleast_1d(y_mm), -1e6, 1e6, unit="mm")
    if x.shape != y.shape:
        message = f"places along must be as many as places across, got {x.size} and {y.size}"
        raise ValueError(message)
    checks = [
        ("distance to the left end", x, rules.to_ends_mm),
        ("distance to the right end", flange.flange_length_mm - x, rules.to_ends_mm),
        ("distance to the root", y, max(rules.to_edges_mm, flange.root_clearance_mm)),
        ("distance to the free edge", flange.flange_width_mm - y, rules.to_edges_mm),
    ]
    for site in sites:
        label = f"distance to the old site at x {site.x_mm:.6g} mm"
        off = np.hypot(x - site.x_mm, y - site.y_mm)
        checks.append((label, off, rules.site_distance_mm(site.affected_diameter_mm)))
    found = [
        _short(label, number, given[number], least, rules)
        for label, given, least in checks
        for number in np.flatnonzero(given < least - FORGIVEN_MM)
    ]
    return tuple(found + _too_close(x, y, rules))


def _too_close(x, y, rules):
    """Say which fasteners are neither a pitch nor a row apart."""
    along, across = np.abs(x[:, None] - x), np.abs(y[:, None] - y)
    close = (along < rules.pitch_mm - FORGIVEN_MM) & (across < rules.between_rows_mm - FORGIVEN_MM)
    pairs = np.argwhere(np.triu(close, k=1))
    return [
        _short(f"spacing to fastener {second + 1}", first, along[first, second], rules.pitch_mm, rules)
        for first, second in pairs
    ]
