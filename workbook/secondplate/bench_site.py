"""The joint of the day under the puller of the virtual bench, and what mechanics say of it.

Plates and rivet are as given; the interlock is drawn. ``bench_pull`` says what is model and what judgement.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.bench_model import NUMBERS
from secondplate.bench_random import uniform
from secondplate.bench_settings import drawn
from secondplate.checks import require_above, require_between
from secondplate.rivet import Rivet
from secondplate.tail_pull_out import tail_pull_out


@dataclass(frozen=True, kw_only=True)
class PullSite:
    """The joint under the puller, and the puller; single values, or arrays of one length.

    Parameters
    ----------
    top_plate_mm : float or array
        Thickness of the top plate, 0.5 to 4 [mm]
    second_plate_mm : float or array
        Thickness of the second plate, 0.5 to 6 [mm]
    rivet_length_mm : float or array
        Length of the rivet, 3 to 15 [mm]
    interlock_mm : float or array
        Interlock, 0.05 to 2 [mm]
    support_radius_mm : float or array
        Inside radius of the nose ring, above the tail of the rivet up to 30 [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Examples
    --------
    >>> draw_site(b"a day at the shop").top_plate_mm
    1.5
    """

    top_plate_mm: float
    second_plate_mm: float
    rivet_length_mm: float
    interlock_mm: float
    support_radius_mm: float

    def __post_init__(self):
        """Refuse what no puller stands on."""
        require_between("top plate", self.top_plate_mm, 0.5, 4, unit="mm")
        require_between("second plate", self.second_plate_mm, 0.5, 6, unit="mm")
        require_between("rivet length", self.rivet_length_mm, 3, 15, unit="mm")
        require_between("interlock", self.interlock_mm, 0.05, 2, unit="mm")
        require_between("support radius", self.support_radius_mm, 5, 30, unit="mm")

    @property
    def penetration_mm(self):
        """Depth of the tail in the second plate, a share of its thickness."""
        return plain(NUMBERS["penetration over the second plate"] * np.asarray(self.second_plate_mm))


def draw_site(seed, *, top_plate_mm=1.5, second_plate_mm=2.0):
    """Draw the joint of the day: plates as given, interlock from its band, rivet as long as the plates ask.

    A thinner second plate has the smaller interlock, by the root of its thickness.

    Parameters
    ----------
    seed : bytes
        Seed of the day [-]
    top_plate_mm : float
        Thickness of the top plate, 0.5 to 4 [mm]
    second_plate_mm : float
        Thickness of the second plate, 0.5 to 6 [mm]

    Returns
    -------
    PullSite
        The joint, under a nose of usual width [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or the seed is not bytes.

    Notes
    -----
    Source: tables bench_bands and bench_limits.

    Examples
    --------
    >>> 0.2 <= draw_site(b"a day at the shop").interlock_mm <= 0.4
    True
    """
    require_between("top plate", top_plate_mm, 0.5, 4, unit="mm")
    require_between("second plate", second_plate_mm, 0.5, 6, unit="mm")
    depth, thick = (
        NUMBERS["penetration over the second plate"] * second_plate_mm,
        (second_plate_mm / 2) ** 0.5,
    )
    return PullSite(
        top_plate_mm=top_plate_mm,
        second_plate_mm=second_plate_mm,
        rivet_length_mm=max(3.0, float(np.ceil(2 * (top_plate_mm + depth)) / 2)),
        interlock_mm=round(float(thick * drawn("interlock", uniform(seed, "interlock", 0))), 3),
        support_radius_mm=NUMBERS["inside of the nose"] / 2,
    )


def limit_load_n(*, load_radius_mm, support_radius_mm, thickness_mm, proof_stress_mpa):
    """Return the load at which a round plate in its ring goes on bending: supported edge to clamped edge.

    ``P = 2 pi M / (1 - 2 b / (3 a))`` with ``M = R_p t^2 / 4`` where the edge is supported, twice that where
    it is clamped.

    Parameters
    ----------
    load_radius_mm : float or array
        Radius b of the loaded middle, above 0 up to the support radius [mm]
    support_radius_mm : float or array
        Inside radius a of the ring, above 0 [mm]
    thickness_mm : float or array
        Thickness t of the plate, above 0 [mm]
    proof_stress_mpa : float or array
        Proof stress R_p of the plate, 20 to 2000 [MPa]

    Returns
    -------
    Band
        Limit load: supported at the low end, clamped at the high end [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: plate_theory, from memory: yield lines of a plate under an even load on a disc in its middle. The
    factor of two for a clamped edge is that of a load on a point.

    Examples
    --------
    >>> load = limit_load_n(load_radius_mm=3, support_radius_mm=6, thickness_mm=2, proof_stress_mpa=130)
    >>> round(load.low), round(load.high)
    (1225, 2450)
    """
    ring = np.asarray(require_above("support radius", support_radius_mm, 0, unit="mm"))
    middle = np.asarray(require_above("load radius", load_radius_mm, 0, unit="mm"))
    require_between("load radius over support radius", middle / ring, 0, 1, unit="")
    thickness = require_above("thickness", thickness_mm, 0, unit="mm")
    stress = require_between("proof stress", proof_stress_mpa, 20, 2000, unit="MPa")
    moment = np.asarray(stress) * np.square(thickness) / 4
    supported = plain(2 * np.pi * moment / (1 - 2 * middle / (3 * ring)))
    return Band(low=supported, best=1.5 * supported, high=2 * supported, basis="supported to clamped edge")


def pull_out_of(site):
    """Return what the mechanics of a pull say of this joint; the bench uses their ratios only.

    Parameters
    ----------
    site : PullSite
        The joint [-]

    Returns
    -------
    TailPullOut
        Peaks, friction and modes as bands [-]

    Notes
    -----
    Source: ``tail_pull_out``; strengths of the plates from table bench_limits.

    Examples
    --------
    >>> pull_out_of(draw_site(b"a day at the shop")).second_peak_n.best > 0
    True
    """
    return tail_pull_out(
        Rivet(rivet_length_mm=5.0),
        interlock_mm=site.interlock_mm,
        penetration_mm=site.penetration_mm,
        second_tensile_strength_mpa=NUMBERS["tensile strength of the plates"],
        top_proof_stress_mpa=NUMBERS["proof stress of the plates"],
    )
