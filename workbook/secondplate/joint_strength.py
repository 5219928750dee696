"""What a self-piercing riveted joint bears in cross tension and lap shear, and which side gives first.

Every force is a band, for no strength row of a plain metal joint could be read to try a formula on. Adhesive
is left out; so are the published models whose constants are not known (``joint_facts`` names them).
"""

import numpy as np

from secondplate.bands import Band
from secondplate.failure_modes import FailureModes, untried_band
from secondplate.fastener_bearing import (
    ALUMINIUM_STANDARD,
    BEARING_STANDARDS,
    PULL_THROUGH_STANDARDS,
    pull_through_n,
    screw_bearing_n,
)
from secondplate.hardness import tube_strength_n
from secondplate.rivet import piercing_force_n
from secondplate.tail_pull_out import tail_hold

HEAD_SIDE = "head through the top plate"
TAIL_SIDE = "tail out of the second plate"
RIVET = "rivet breaks"
TOP_BEARING = "bearing of the top plate"
SECOND_BEARING = "bearing of the second plate"


def head_shear_n(rivet, top):
    """Return the force that shears the head through the top plate: F = pi D_h t 0.577 R_m.

    Parameters
    ----------
    rivet : Rivet
        The rivet; its head D_h counts [-]
    top : Sheet
        The top plate [-]

    Returns
    -------
    float or numpy.ndarray
        Force, an upper estimate that leaves out how the plate dishes [N]

    Notes
    -----
    Source: pull_out_mechanics, head side; derived, not tried.

    Examples
    --------
    >>> from secondplate.rivet import Rivet, Sheet
    >>> round(head_shear_n(Rivet(rivet_length_mm=5.0), Sheet(thickness_mm=2.0)))
    6041
    """
    return piercing_force_n(
        shank_diameter_mm=rivet.head_diameter_mm,
        thickness_mm=top.thickness_mm,
        tensile_strength_mpa=top.tensile_strength_mpa,
    )


def head_pull_through_n(rivet, top, *, partial_factor=1.0):
    """Return the pull that brings the head through the top plate, from pull-through to perimeter shear.

    Parameters
    ----------
    rivet : Rivet
        The rivet; its head counts [-]
    top : Sheet
        The top plate [-]
    partial_factor : float
        Partial factor of the pull-through, at least 1 [-]

    Returns
    -------
    Band
        Low by EN 1993-1-3, carried on beyond its 1.5 mm, best by AISI S100, both for screws; high by shear
        round the head [N]

    Raises
    ------
    ValueError
        If the partial factor is below 1 or a size lies outside the form.

    Notes
    -----
    Source: en_1993_1_3 Table 8.2, aisi_s100 and pull_out_mechanics; borrowed and derived, not tried.

    Examples
    --------
    >>> from secondplate.rivet import Rivet, Sheet
    >>> band = head_pull_through_n(Rivet(rivet_length_mm=5.0), Sheet(thickness_mm=2.0))
    >>> round(band.low), round(band.high)
    (3332, 6041)
    """
    low, best = (
        pull_through_n(
            top.thickness_mm,
            head_diameter_mm=rivet.head_diameter_mm,
            tensile_strength_mpa=top.tensile_strength_mpa,
            standard=standard,
            beyond_range=True,
            partial_factor=partial_factor,
        )
        for standard in PULL_THROUGH_STANDARDS
    )
    basis = "pull-through of screws by two standards, to shear round the head"
    return Band(low=low, best=best, high=head_shear_n(rivet, top), basis=basis)


def plate_bearing_n(rivet, plate, other_plate, *, partial_factor=1.0):
    """Return the bearing of one plate at the shank, by the forms of the standards for screws side by side.

    Steel takes the two forms for steel, aluminium also its own; the band is widened, for none was written for
    rivets.

    Parameters
    ----------
    rivet : Rivet
        The rivet; its shank counts [-]
    plate : Sheet
        The plate that bears [-]
    other_plate : Sheet
        The plate on the other side of the joint [-]
    partial_factor : float
        Partial factor, at least 1 [-]

    Returns
    -------
    Band
        Bearing force [N]

    Raises
    ------
    ValueError
        If the partial factor is below 1, a size lies outside the forms, or the plate is a polymer.

    Notes
    -----
    Source: en_1993_1_3 Table 8.2, aisi_s100 and en_1999_1_4 8.3.2.1; no rivet is within their range.

    Examples
    --------
    >>> from secondplate.rivet import Rivet, Sheet
    >>> sheet = Sheet(thickness_mm=2.0)
    >>> round(plate_bearing_n(Rivet(rivet_length_mm=5.0), sheet, sheet).best)
    4482
    """
    if plate.family == "polymer":
        message = "sheet family must be a metal for bearing, got 'polymer'"
        raise ValueError(message)
    shared = {
        "shank_diameter_mm": rivet.shank_diameter_mm,
        "tensile_strength_mpa": plate.tensile_strength_mpa,
        # The forms know a supporting sheet at least as thick: a thinner one counts as equal.
        "supporting_thickness_mm": np.maximum(plate.thickness_mm, other_plate.thickness_mm),
        "partial_factor": partial_factor,
    }
    standards = [name for name in BEARING_STANDARDS if plate.family != "steel" or name != ALUMINIUM_STANDARD]
    forces = (screw_bearing_n(plate.thickness_mm, standard=name, **shared) for name in standards)
    return untried_band(*forces, basis="forms for screws, borrowed")


def cross_tension(rivet, stack, *, interlock_mm, penetration_mm, partial_factor=1.0):
    """Return what each side of a joint bears when its plates are pulled apart square to each other.

    Parameters
    ----------
    rivet : Rivet
        The rivet [-]
    stack : Stack
        The plates, adhesive left out [-]
    interlock_mm : float or array
        Interlock, 0 to 2 [mm]
    penetration_mm : float or array
        Depth of the tail in the second plate, 0.1 to 6 [mm]
    partial_factor : float
        Partial factor of the borrowed form, at least 1 [-]

    Returns
    -------
    FailureModes
        Head side, tail side and rivet, friction left out [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: pull_out_mechanics and en_1993_1_3; ISO 16237 defines the test. The weaker side decides, as in
    lower_bound_2005, whose coefficients are not known and not used.

    Examples
    --------
    >>> from secondplate.rivet import Rivet, Sheet, Stack
    >>> plates = Stack(top=Sheet(thickness_mm=3.0), second=Sheet(thickness_mm=2.0))
    >>> modes = cross_tension(Rivet(rivet_length_mm=6.0), plates, interlock_mm=0.2, penetration_mm=1.6)
    >>> modes.likely_mode
    'tail out of the second plate'
    """
    hold = tail_hold(
        rivet,
        interlock_mm=interlock_mm,
        penetration_mm=penetration_mm,
        tensile_strength_mpa=stack.second.tensile_strength_mpa,
    )
    tail = FailureModes(forces_n={name: band for name, band in hold.forces_n.items() if name != "tube snaps"})
    return FailureModes(
        forces_n={
            HEAD_SIDE: head_pull_through_n(rivet, stack.top, partial_factor=partial_factor),
            TAIL_SIDE: tail.strength_n,
            RIVET: tube_strength_n(rivet),
        }
    )


def lap_shear(rivet, stack, *, partial_factor=1.0):
    """Return what plates and rivet bear in lap shear; a tail that tilts out is not among the modes.

    Parameters
    ----------
    rivet : Rivet
        The rivet [-]
    stack : Stack
        The plates, adhesive left out [-]
    partial_factor : float
        Partial factor of the borrowed forms, at least 1 [-]

    Returns
    -------
    FailureModes
        Bearing of either plate and shear of the rivet: an upper estimate [-]

    Raises
    ------
    ValueError
        If a value lies outside the forms.

    Notes
    -----
    Source: as in ``plate_bearing_n``; ISO 12996 defines the test. In single lap the plates bend and the tail
    is mostly drawn out of the second plate (specimen_configuration); no formula for it with known constants
    was found, so the real joint may give earlier and in another way.

    Examples
    --------
    >>> from secondplate.rivet import Rivet, Sheet, Stack
    >>> plates = Stack(top=Sheet(thickness_mm=1.0), second=Sheet(thickness_mm=3.0))
    >>> lap_shear(Rivet(rivet_length_mm=6.0), plates).likely_mode
    'bearing of the top plate'
    """
    return FailureModes(
        forces_n={
            TOP_BEARING: plate_bearing_n(rivet, stack.top, stack.second, partial_factor=partial_factor),
            SECOND_BEARING: plate_bearing_n(rivet, stack.second, stack.top, partial_factor=partial_factor),
            RIVET: tube_strength_n(rivet, in_shear=True),
        }
    )
