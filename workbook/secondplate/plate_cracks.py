"""Cracks at the button: how long one may be, how short a one a test finds, and what a clean test says.

A clean penetrant test in a shop says "no open crack longer than a few millimetres", never "no crack". Leaves
out cracks that do not reach the face that was looked at, and growth by fatigue after the repair.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import (
    require_above,
    require_at_least,
    require_between,
    require_choice,
    require_single,
)
from secondplate.tables import bands, load, values

# Plane-strain toughness by sheet, in MPa m^0.5.
TOUGHNESS = bands("sheet_toughness")
PLACES = ("open surface", "edge or hole")
METHODS = ("penetrant", "eddy current")
_CURVE = values("detection_curve")
_MM_PER_M = 1000.0


@dataclass(frozen=True, kw_only=True)
class DetectionCurve:
    """How likely a test finds a crack: POD(a) = 1/(1 + exp(-(b0 + b1 ln a))), a in mm.

    Parameters
    ----------
    b0 : float
        Constant; the probability at 1 mm is 1/(1 + exp(-b0)) [-]
    b1 : float
        Slope in the logarithm of the length, above 0 [-]

    Raises
    ------
    ValueError
        If the slope is not above 0.

    Notes
    -----
    Source: mil_hdbk_1823, logistic model, from memory. The constants that come with it are an example.

    Examples
    --------
    >>> curve = DetectionCurve()
    >>> round(curve.length_found_mm(), 3), round(curve.probability(1.0), 3)
    (3.593, 0.269)
    """

    b0: float = _CURVE["b0"]
    b1: float = _CURVE["b1"]

    def __post_init__(self):
        """Refuse a curve that finds short cracks better than long ones."""
        require_between("constant of the detection curve", self.b0, -50, 50, unit="")
        require_above("slope of the detection curve", self.b1, 0, unit="")

    def probability(self, crack_length_mm):
        """Probability that a crack of this length, above 0 mm, is found."""
        length = require_above("crack length", crack_length_mm, 0, unit="mm")
        # By tanh, which does not overflow where exp does.
        return plain(0.5 * (1 + np.tanh((self.b0 + self.b1 * np.log(length)) / 2)))

    def length_found_mm(self, *, found_percent=90.0):
        """Length in mm that is found in this many per cent of cases, above 0 and below 100 %."""
        share = np.asarray(require_between("share found", found_percent, 1e-6, 100 - 1e-6, unit="%")) / 100
        return plain(np.exp((np.log(share / (1 - share)) - self.b0) / self.b1))


def crack_left_probability(*, prior, detection):
    """Return how likely a crack is there although the test was clean.

    Parameters
    ----------
    prior : float or array
        How likely a crack of that length was before the test, 0 to 1 [-]
    detection : float or array
        Probability that the test finds a crack of that length, 0 to 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Probability after a clean test; no false alarm is reckoned with [-]

    Raises
    ------
    ValueError
        If a probability lies outside 0 to 1, or a test that finds all met a certain crack and was clean.

    Notes
    -----
    Bayes: ``p (1 - POD)/(1 - p POD)``. Source: derived, as the definition of a conditional probability.

    Examples
    --------
    >>> round(crack_left_probability(prior=0.2, detection=0.9), 3)
    0.024
    """
    before = np.asarray(require_between("probability before the test", prior, 0, 1, unit=""))
    found = np.asarray(require_between("probability of detection", detection, 0, 1, unit=""))
    clean = require_above("probability of a clean test", plain(1 - before * found), 0, unit="")
    return plain(before * (1 - found) / clean)


def detectable_length_mm(*, thickness_mm, method="penetrant", place="open surface"):
    """Return the whole crack length that a test by a good shop is held to find, as a band.

    Parameters
    ----------
    thickness_mm : float
        Thickness of the plate where it is looked at [mm]
    method : str
        One of ``METHODS`` [-]
    place : str
        One of ``PLACES``; at an edge the length is counted from the edge [-]

    Returns
    -------
    Band
        Crack length; more than one row of the standard may hold, and its high counts [mm]

    Raises
    ------
    ValueError
        If method or place is unknown or the thickness is not above 0.

    Notes
    -----
    Source: nasa_std_5009, Table 1, from memory and not sure. Where the table leaves a thickness out, the next
    thicker row stands. Half lengths of cracks inside a surface are doubled.

    Examples
    --------
    >>> detectable_length_mm(thickness_mm=1.2).best
    5.08
    """
    thickness = require_single("thickness", thickness_mm, unit="mm")
    require_above("thickness", thickness, 0, unit="mm")
    require_choice("place", place, PLACES)
    require_choice("method", method, METHODS)
    rows = [
        row for row in load("detectable_cracks") if (row.keys["method"], row.keys["place"]) == (method, place)
    ]
    ends = sorted({float(row.keys["thickness_high_mm"]) for row in rows})
    end = next((end for end in ends if thickness <= end), None)
    if end is None:
        message = f"thickness must be at most {ends[-1]:g} mm for {method} at {place}, got {thickness:g} mm"
        raise ValueError(message)
    whole = 2.0 if place == "open surface" else 1.0
    lengths = [whole * row.number for row in rows if float(row.keys["thickness_high_mm"]) == end]
    basis = "from memory: nasa_std_5009, Table 1, 90 % found with 95 % confidence"
    return Band(low=min(lengths), best=max(lengths), high=max(lengths), basis=basis)


def fracture_length_mm(*, stress_mpa, toughness_mpa_m05, shape_factor=1.0):
    """Return the whole length at which a through crack runs: 2 a = 2 (K_c/(Y s))^2/pi.

    Parameters
    ----------
    stress_mpa : float or array
        Stress across the crack, above 0 [MPa]
    toughness_mpa_m05 : float or array
        Toughness K_c, above 0 [MPa m^0.5]
    shape_factor : float or array
        Shape factor Y, 0.5 to 5; 1 for a crack in a wide plate [-]

    Returns
    -------
    float or numpy.ndarray
        Crack length [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: fracture_handbook, stress intensity of a through crack, from memory.

    Examples
    --------
    >>> round(fracture_length_mm(stress_mpa=120, toughness_mpa_m05=29), 1)
    37.2
    """
    stress = np.asarray(require_above("stress", stress_mpa, 0, unit="MPa"))
    toughness = require_above("toughness", toughness_mpa_m05, 0, unit="MPa m^0.5")
    shape = require_between("shape factor", shape_factor, 0.5, 5, unit="")
    return plain(2 * (toughness / (shape * stress)) ** 2 / np.pi * _MM_PER_M)


def yielding_length_mm(*, stress_mpa, proof_stress_mpa, width_mm):
    """Return the length at which the strip beside a crack yields: b (1 - s/f_o).

    Parameters
    ----------
    stress_mpa : float or array
        Stress in the whole strip, above 0 [MPa]
    proof_stress_mpa : float or array
        Proof stress f_o of the plate, above 0 [MPa]
    width_mm : float or array
        Width of the strip that carries the force, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Crack length; 0 where the strip yields without a crack [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: fracture_handbook, net-section yield, from memory; ductile sheet mostly gives this way.

    Examples
    --------
    >>> yielding_length_mm(stress_mpa=60, proof_stress_mpa=80, width_mm=25)
    6.25
    """
    stress = np.asarray(require_above("stress", stress_mpa, 0, unit="MPa"))
    proof = np.asarray(require_above("proof stress", proof_stress_mpa, 0, unit="MPa"))
    width = np.asarray(require_above("width", width_mm, 0, unit="mm"))
    return plain(width * np.clip(1 - stress / proof, 0, 1))


def critical_length_mm(*, stress_mpa, proof_stress_mpa, width_mm, toughness_mpa_m05=None, shape_factor=1.0):
    """Return the crack length that a plate does not bear: the shorter of running and yielding.

    Parameters
    ----------
    stress_mpa : float or array
        Stress across the crack, above 0 [MPa]
    proof_stress_mpa : float or array
        Proof stress of the plate, above 0 [MPa]
    width_mm : float or array
        Width of the strip that carries the force, above 0 [mm]
    toughness_mpa_m05 : float or array or None
        Toughness; None for ductile sheet that only yields [MPa m^0.5]
    shape_factor : float or array
        Shape factor, 0.5 to 5 [-]

    Returns
    -------
    float or numpy.ndarray
        Crack length [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: fracture_handbook, from memory.

    Examples
    --------
    >>> critical_length_mm(stress_mpa=60, proof_stress_mpa=80, width_mm=25)
    6.25
    """
    yielding = yielding_length_mm(stress_mpa=stress_mpa, proof_stress_mpa=proof_stress_mpa, width_mm=width_mm)
    if toughness_mpa_m05 is None:
        return yielding
    running = fracture_length_mm(
        stress_mpa=stress_mpa, toughness_mpa_m05=toughness_mpa_m05, shape_factor=shape_factor
    )
    return plain(np.minimum(yielding, running))


def clean_test_words(*, detectable_mm, critical_mm, allowance_factor=2.0):
    """Return what a clean test says and does not say of one plate.

    Parameters
    ----------
    detectable_mm : float
        Length that the test is held to find, above 0 [mm]
    critical_mm : float
        Length that the plate does not bear, at least 0 [mm]
    allowance_factor : float
        How many times longer than the detectable the critical length must be, at least 1 [-]

    Returns
    -------
    str
        One or two sentences [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: penetrant_course_page for what a test can find; own_judgement for the factor of 2.

    Examples
    --------
    >>> clean_test_words(detectable_mm=5, critical_mm=4)
    'No open crack longer than about 5 mm; shorter ones may be there. ... 4 mm already counts...'
    """
    found = require_above("detectable length", detectable_mm, 0, unit="mm")
    critical = require_at_least("critical length", critical_mm, 0, unit="mm")
    factor = require_at_least("allowance factor", allowance_factor, 1, unit="")
    said = f"No open crack longer than about {found:g} mm; shorter ones may be there."
    if critical >= factor * found:
        return f"{said} The plate bears {critical:g} mm, so that this is enough."
    if critical > found:
        return f"{said} The plate bears {critical:g} mm, which leaves little in hand: look again, or closer."
    return f"{said} A crack of {critical:g} mm already counts, so that a clean test decides nothing here."
