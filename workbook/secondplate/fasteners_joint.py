"""What one replacement fastener bears in a joint of thin sheet, what gives first, and how many it takes.

A fastener's own load holds in hard plates; thin aluminium gives earlier, so the joint is the least of all.
Self-piercing rivets are in ``joint_strength``; what a new one needs round itself is here.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_above, require_at_least, require_choice, require_whole
from secondplate.eurocode9_bearing import GAMMA_M2, bearing_n, edge_factor, end_factor
from secondplate.eurocode9_fasteners import punching_n
from secondplate.eurocode9_sections import net_section_n
from secondplate.eurocode9_thin_sheet import (
    AMERICAN_MANUAL,
    PLATE_CODE,
    bearing_by_codes,
    bearing_spread_n,
    blind_rivet_bearing_n,
    manual_bearing_n,
)
from secondplate.failure_modes import FailureModes
from secondplate.fastener_bearing import BLIND_RIVET_STANDARD, PULL_THROUGH_STANDARDS, pull_through_n
from secondplate.fasteners_kinds import BLIND_RIVET, FASTENER_RULES

SHEARED = "fastener in shear"
TOP_BEARS, SECOND_BEARS = "bearing of the top plate", "bearing of the second plate"
TOP_TEARS, SECOND_TEARS = "net section of the top plate", "net section of the second plate"
PULLED_THROUGH = "head through the top plate"
STEEL_CODE = "EN 1993-1-8"
_KNOWN_FAMILIES = ("aluminium", "cast aluminium", "steel")  # sheet that the codes are written for
FASTENER_MODES = (SHEARED, TOP_BEARS, SECOND_BEARS, TOP_TEARS, SECOND_TEARS, PULLED_THROUGH)


@dataclass(frozen=True, kw_only=True)
class FastenerJoint:
    """What one fastener bears in a joint, mode by mode, by design.

    Parameters
    ----------
    modes : FailureModes
        Force of each mode with the spread between codes [-]

    Examples
    --------
    >>> from secondplate.failure_modes import FailureModes
    >>> modes = FailureModes(forces_n={
    ...     "sheet": Band(low=1200, best=1500, high=1900, basis="example"),
    ...     "rivet": Band(low=1480, best=1480, high=1480, basis="example"),
    ... })
    >>> FastenerJoint(modes=modes).weakest
    'sheet'
    """

    modes: FailureModes

    @property
    def design_strength_n(self):
        """Least force of all modes by all codes in N."""
        return self.modes.strength_n.low

    @property
    def weakest(self):
        """The mode with the least force by all codes, so that of ``design_strength_n``."""
        lows = np.stack(np.broadcast_arrays(*(band.low for band in self.modes.forces_n.values())))
        named = np.array(list(self.modes.forces_n))[lows.argmin(axis=0)]
        return str(named) if named.ndim == 0 else named


def _bearing(fastener, plate, other, end_distance_mm, edge_distance_mm):
    """Return the bearing of one plate by every code that knows the fastener and the metal of the plate."""
    steel = require_choice("family of the plate", plate.family, _KNOWN_FAMILIES) == "steel"
    sheet = {"diameter_mm": fastener.diameter_mm, "tensile_strength_mpa": plate.tensile_strength_mpa}
    distances = {"end_distance_mm": end_distance_mm, "edge_distance_mm": edge_distance_mm}
    hole, thickness = fastener.hole_most_mm, plate.thickness_mm
    if fastener.kind == BLIND_RIVET:
        # The forms know a supporting sheet at least as thick: a thinner one counts as equal.
        sheet |= {"supporting_thickness_mm": np.maximum(thickness, other.thickness_mm)} | distances
        if steel:
            return {BLIND_RIVET_STANDARD: blind_rivet_bearing_n(thickness, **sheet)}
        return bearing_by_codes(thickness, hole_diameter_mm=hole, **sheet)
    along = end_factor(end_distance_mm, hole_diameter_mm=hole)
    across = edge_factor(edge_distance_mm, hole_diameter_mm=hole)
    factors = {"along_factor": along, "across_factor": across, "single_row": True}
    plate_code = bearing_n(thickness, **factors, **sheet)
    if steel:
        return {STEEL_CODE: plate_code}  # the same form, there printed for steel
    manual = manual_bearing_n(thickness, end_distance_mm=end_distance_mm, **sheet)
    return {PLATE_CODE: plate_code, AMERICAN_MANUAL: manual}


def _pull_through(fastener, plate):
    """Return the pull-through of the head by every code.

    EN 1993-1-3 ends at 1.5 mm. It is carried on, for it gives the least and so errs on the safe side.
    """
    sheet = {
        "head_diameter_mm": fastener.head_diameter_mm,
        "tensile_strength_mpa": plate.tensile_strength_mpa,
        "partial_factor": GAMMA_M2,
    }
    by_codes = {
        name: pull_through_n(plate.thickness_mm, standard=name, beyond_range=True, **sheet)
        for name in PULL_THROUGH_STANDARDS
    }
    return by_codes | {f"{PLATE_CODE} punching": punching_n(plate.thickness_mm, **sheet)}


def fastener_joint(fastener, *, top, second, end_distance_mm, edge_distance_mm, width_mm):
    """Return what one fastener bears in a single lap of two sheets, as the least of its modes.

    Parameters
    ----------
    fastener : Fastener
        The fastener, in its greatest hole [-]
    top : Sheet
        The top plate, under the head [-]
    second : Sheet
        The second plate [-]
    end_distance_mm : float or array
        End distance e1 along the load, by the rules of every code [mm]
    edge_distance_mm : float or array
        Edge distance e2 across the load, by the rules of every code [mm]
    width_mm : float or array
        Width of strip that one fastener carries for, more than the hole [mm]

    Returns
    -------
    FastenerJoint
        Shear, bearing and net section of both plates, pull-through, each by design [-]

    Raises
    ------
    ValueError
        If a distance is below its rule, no code knows the family of a plate, or a value lies outside its
        range.

    Notes
    -----
    Steel sheet is judged by codes for steel alone: EN 1993-1-3 for blind rivets, up to 550 MPa, EN 1993-1-8
    for bolts. Pull-through counts in a single lap too, for the fastener tilts: a choice on the safe side.
    Source: iso_15977 (loads hold in hard plates), en_1999_1_1 8.5.5 and 6.2.3, en_1993_1_8 Table 3.4, as in
    the functions that are called.

    Examples
    --------
    >>> from secondplate.fasteners_kinds import blind_rivet
    >>> from secondplate.rivet import Sheet
    >>> joint = fastener_joint(blind_rivet("ISO 15983", 4.8), top=Sheet(thickness_mm=1.5),
    ...                        second=Sheet(thickness_mm=2.0), end_distance_mm=10, edge_distance_mm=8,
    ...                        width_mm=20)
    >>> joint.weakest, round(joint.design_strength_n)
    ('bearing of the top plate', 1759)
    """
    shear = fastener.fastener_shear_n / GAMMA_M2
    forces = {SHEARED: Band(low=shear, best=shear, high=shear, basis=fastener.basis)}
    distances = (end_distance_mm, edge_distance_mm)
    for name, plate, other in ((TOP_BEARS, top, second), (SECOND_BEARS, second, top)):
        forces[name] = bearing_spread_n(_bearing(fastener, plate, other, *distances))
    width = np.asarray(require_above("strip width", width_mm, fastener.hole_most_mm, unit="mm"))
    for name, plate in ((TOP_TEARS, top), (SECOND_TEARS, second)):
        net = (width - fastener.hole_most_mm) * np.asarray(plate.thickness_mm)
        torn = net_section_n(net, tensile_strength_mpa=plate.tensile_strength_mpa)
        forces[name] = Band(low=torn, best=torn, high=torn, basis=f"{PLATE_CODE} 6.2.3")
    forces[PULLED_THROUGH] = bearing_spread_n(_pull_through(fastener, top))
    return FastenerJoint(modes=FailureModes(forces_n=forces))


def equal_strength_count(*, old_strength_n, new_strength_n, old_fasteners=1, required_margin=1.0):
    """Return how many new fasteners bear what the old ones did: ceil(margin n_old F_old/F_new).

    Parameters
    ----------
    old_strength_n : float or array
        What one old joint bears, above 0 [N]
    new_strength_n : float or array
        What one new joint bears, as a joint and not by catalogue, above 0 [N]
    old_fasteners : int or array
        Old fasteners, a whole number of at least 1 [-]
    required_margin : float or array
        Margin asked for, at least 1 [-]

    Returns
    -------
    int or numpy.ndarray
        New fasteners; pitch, edge and net section have to be checked again with them [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: strength_of_materials, loads add up; the count is rounded up.

    Examples
    --------
    >>> equal_strength_count(old_strength_n=3858, new_strength_n=2900, old_fasteners=4)
    6
    """
    old = np.asarray(require_above("strength of an old joint", old_strength_n, 0, unit="N"))
    new = np.asarray(require_above("strength of a new joint", new_strength_n, 0, unit="N"))
    number = require_whole("number of old fasteners", old_fasteners, 1, unit="")
    margin = require_at_least("margin", required_margin, 1, unit="")
    # Forgives the last digits: 3 x 0.1 over 0.1 is three.
    count = np.ceil(old * number * margin / new * (1 - 1e-12)).astype(np.int64)
    return int(count) if count.ndim == 0 else count


def offset_site_mm(*, old_button_mm, die_diameter_mm):
    """Return the least distance of a new self-piercing rivet from an old site: D_b/2 + D_d/2 + 2 mm.

    Parameters
    ----------
    old_button_mm : float or array
        Diameter D_b of the old button, above 0 [mm]
    die_diameter_mm : float or array
        Diameter D_d of the new die, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Distance between the centres [mm]

    Raises
    ------
    ValueError
        If a value is not above 0.

    Notes
    -----
    Source: own_judgement, new rivet beside an old site: a choice of this library. Where a button was pressed
    back the plate is thinner and is no place for a rivet.

    Examples
    --------
    >>> offset_site_mm(old_button_mm=10, die_diameter_mm=9)
    11.5
    """
    button = np.asarray(require_above("old button", old_button_mm, 0, unit="mm"))
    die = np.asarray(require_above("die diameter", die_diameter_mm, 0, unit="mm"))
    return plain((button + die) / 2 + FASTENER_RULES["clear of an old button"])


def offset_edge_mm(*, die_diameter_mm):
    """Return the least distance of a new self-piercing rivet from an edge: D_d/2 + 2 mm.

    Parameters
    ----------
    die_diameter_mm : float or array
        Diameter D_d of the new die, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Distance from centre to edge [mm]

    Raises
    ------
    ValueError
        If the diameter is not above 0.

    Notes
    -----
    Source: own_judgement, new rivet beside an old site: a choice of this library.

    Examples
    --------
    >>> offset_edge_mm(die_diameter_mm=9)
    6.5
    """
    die = np.asarray(require_above("die diameter", die_diameter_mm, 0, unit="mm"))
    return plain(die / 2 + FASTENER_RULES["clear of an edge"])
