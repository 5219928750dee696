"""Drawing a set rivet out head first: what the metal round its spread tail holds, and what stops it later.

Nobody's test: no such measurement was found, so each force is a band of a factor of 2 or so. Adhesive is left
out: it must be released before a pull tells anything of the rivet.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.failure_modes import FailureModes, untried_band
from secondplate.hardness import tube_strength_n
from secondplate.pull_out_forces import (
    collar_crush_n,
    collar_shear_n,
    hole_opening_n,
    leg_closure_n,
    shank_friction_n,
)
from secondplate.rivet import rivet_axial_capacity_n
from secondplate.tables import values

_CONSTANTS = values("pull_out_constants")
_DERIVED = "derived, not tried: factor of 2"


def first_peak_n(rivet, *, interlock_mm, penetration_mm, tensile_strength_mpa, crush_factor):
    """Return the least of collar shear, collar crush, closing leg and snapping tube, without friction.

    Parameters
    ----------
    rivet : Rivet
        The rivet [-]
    interlock_mm : float or array
        Interlock, 0 to 2 [mm]
    penetration_mm : float or array
        Depth of the tail in the second plate, 0.1 to 6 [mm]
    tensile_strength_mpa : float or array
        Tensile strength of the second plate, 20 to 2000 [MPa]
    crush_factor : float or array
        Pressure under the tail over tensile strength, 1 to 3.5 [-]

    Returns
    -------
    float or numpy.ndarray
        Force by one set of constants; for a band see ``tail_pull_out`` [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: pull_out_mechanics, least of forces 1 to 4.

    Examples
    --------
    >>> from secondplate.rivet import Rivet
    >>> rivet = Rivet(rivet_length_mm=5.0, bore_diameter_mm=3.34)
    >>> round(first_peak_n(rivet, interlock_mm=0.4, penetration_mm=1.6, tensile_strength_mpa=215,
    ...                    crush_factor=1.4))
    2156
    """
    plate = {"interlock_mm": interlock_mm, "tensile_strength_mpa": tensile_strength_mpa}
    forces = (
        collar_shear_n(rivet, penetration_mm=penetration_mm, **plate),
        collar_crush_n(rivet, crush_factor=crush_factor, **plate),
        leg_closure_n(rivet, interlock_mm=interlock_mm),
        rivet_axial_capacity_n(rivet),
    )
    return plain(np.min(np.stack(np.broadcast_arrays(*forces)), axis=0))


@dataclass(frozen=True, kw_only=True)
class TailPullOut:
    """What it takes to draw a rivet out head first, as bands.

    Parameters
    ----------
    modes : FailureModes
        The four ways in which the hold of the tail can give, without friction [-]
    friction_n : Band
        Friction on the shank, its low end without any [N]
    second_peak_n : Band
        Force with which the tail opens the hole of the top plate, a later event [N]

    Examples
    --------
    >>> from secondplate.rivet import Rivet
    >>> pull = tail_pull_out(Rivet(rivet_length_mm=5.0), interlock_mm=0.4, penetration_mm=1.6,
    ...                      second_tensile_strength_mpa=215, top_proof_stress_mpa=100)
    >>> pull.modes.likely_mode
    'not decided'
    """

    modes: FailureModes
    friction_n: Band
    second_peak_n: Band

    @property
    def first_peak_n(self):
        """First peak of the pull in N: the least of the four modes, and friction on top."""
        hold, friction = self.modes.strength_n, self.friction_n
        return Band(
            low=hold.low + friction.low,
            best=hold.best + friction.best,
            high=hold.high + friction.high,
            basis="derived, not tried: least of collar shear, crush, leg and tube, plus friction",
        )

    @property
    def peak_n(self):
        """Greatest force of the whole pull in N: the larger of the first peak and the second."""
        first, second = self.first_peak_n, self.second_peak_n
        ends = {end: np.maximum(getattr(first, end), getattr(second, end)) for end in ("low", "best", "high")}
        return Band(**ends, basis="larger of first and second peak")


def _crush_band(rivet, **plate):
    """Return the crush of the collar from its low to its high factor, the best between them by ratio."""
    low, high = _CONSTANTS["crush factor low"], _CONSTANTS["crush factor high"]
    ends = {"low": low, "best": np.sqrt(low * high), "high": high}
    forces = {end: collar_crush_n(rivet, crush_factor=float(factor), **plate) for end, factor in ends.items()}
    return Band(**forces, basis=f"crush factor {low} to {high}")


def _friction_ends():
    """Return the coefficients of friction to reckon with: low, best and high."""
    low, high = _CONSTANTS["friction low"], _CONSTANTS["friction high"]
    return low, (low + high) / 2, high


def _friction_band(rivet, **pressed):
    """Return the friction on the shank; its low end is none, for nobody measured how the plates press."""
    _, best, high = (shank_friction_n(rivet, friction=friction, **pressed) for friction in _friction_ends())
    return Band(
        low=0.0, best=best, high=high, basis="friction from memory, pressure as given, none at the least"
    )


def _opening_band(rivet, **top):
    """Return the opening of the hole over the band of friction and the spread of an untried force."""
    low, _, high = (hole_opening_n(rivet, friction=friction, **top) for friction in _friction_ends())
    return untried_band(low, high, basis=_DERIVED)


def tail_hold(rivet, *, interlock_mm, penetration_mm, tensile_strength_mpa):
    """Return the four ways in which the hold of a tail can give, each as a band, without friction.

    Parameters
    ----------
    rivet : Rivet
        The rivet [-]
    interlock_mm : float or array
        Interlock, 0 to 2 [mm]
    penetration_mm : float or array
        Depth of the tail in the second plate, 0.1 to 6 [mm]
    tensile_strength_mpa : float or array
        Tensile strength of the second plate, 20 to 2000 [MPa]

    Returns
    -------
    FailureModes
        Collar shear, collar crush, leg closure and the snapping tube [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: pull_out_mechanics, forces 1 to 4. By these forms the leg always bends in before the tube snaps.

    Examples
    --------
    >>> from secondplate.rivet import Rivet
    >>> hold = tail_hold(Rivet(rivet_length_mm=5.0), interlock_mm=0.2, penetration_mm=1.6,
    ...                  tensile_strength_mpa=200)
    >>> [mode for mode, able in hold.can_be_first.items() if able]
    ['collar crush']
    """
    plate = {"interlock_mm": interlock_mm, "tensile_strength_mpa": tensile_strength_mpa}
    shear = collar_shear_n(rivet, penetration_mm=penetration_mm, **plate)
    return FailureModes(
        forces_n={
            "collar shear": untried_band(shear, basis=_DERIVED),
            "collar crush": _crush_band(rivet, **plate),
            "leg closure": untried_band(leg_closure_n(rivet, interlock_mm=interlock_mm), basis=_DERIVED),
            "tube snaps": tube_strength_n(rivet),
        }
    )


def tail_pull_out(
    rivet,
    *,
    interlock_mm,
    penetration_mm,
    second_tensile_strength_mpa,
    top_proof_stress_mpa,
    contact_length_mm=3.0,
    contact_pressure_mpa=_CONSTANTS["contact pressure"],
):
    """Return what it takes to draw a set rivet out head first, every force as a band.

    Parameters
    ----------
    rivet : Rivet
        The rivet [-]
    interlock_mm : float or array
        Interlock, 0 to 2; an interlock of 0 holds nothing but friction [mm]
    penetration_mm : float or array
        Depth of the tail in the second plate, 0.1 to 6 [mm]
    second_tensile_strength_mpa : float or array
        Tensile strength of the second plate, 20 to 2000 [MPa]
    top_proof_stress_mpa : float or array
        Proof stress of the top plate, 20 to 2000 [MPa]
    contact_length_mm : float or array
        Length of shank that the plates press on, 0 to 16 [mm]
    contact_pressure_mpa : float or array
        Pressure of the plates on the shank, 0 to 500, an example and no measurement; 0 leaves it out [MPa]

    Returns
    -------
    TailPullOut
        First peak, second peak, friction and the modes [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: pull_out_mechanics. Nobody's test: no axial force of drawing a set rivet head first was found. The
    thickness left under the tail does not enter; it decides whether the skin under the rivet survives.

    Examples
    --------
    >>> from secondplate.rivet import Rivet
    >>> pull = tail_pull_out(Rivet(rivet_length_mm=5.0), interlock_mm=0.4, penetration_mm=1.6,
    ...                      second_tensile_strength_mpa=215, top_proof_stress_mpa=100)
    >>> round(pull.first_peak_n.low), round(pull.first_peak_n.high)
    (2156, 4812)
    """
    pressed = {"contact_length_mm": contact_length_mm, "contact_pressure_mpa": contact_pressure_mpa}
    top = {"interlock_mm": interlock_mm, "proof_stress_mpa": top_proof_stress_mpa}
    return TailPullOut(
        modes=tail_hold(
            rivet,
            interlock_mm=interlock_mm,
            penetration_mm=penetration_mm,
            tensile_strength_mpa=second_tensile_strength_mpa,
        ),
        friction_n=_friction_band(rivet, **pressed),
        second_peak_n=_opening_band(rivet, **top),
    )
