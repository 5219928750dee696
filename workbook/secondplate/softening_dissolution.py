"""Dissolution of the hardening particles of 6xxx-T6: the isothermal kinetic strength model, step by step.

For temperatures above about 300 C; it misses slow over-ageing below, for which the exposure index stands. The
constants are from memory: put in those that fit the hardness of one's own plates where there are any. Leaves
out what natural ageing brings back within days.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between
from secondplate.softening_history import (
    GAS_CONSTANT_J_MOLK,
    HIGHEST_C,
    LOWEST_C,
    integral_over_history,
)
from secondplate.tables import values
from secondplate.units import k_from_c

_VALUES = values("dissolution")


@dataclass(frozen=True, kw_only=True)
class DissolutionModel:
    """Kinetic strength model of one alloy; the values to start from are those of 6082-T6.

    Parameters
    ----------
    highest_hardness_hv : float
        Hardness as delivered [HV]
    lowest_hardness_hv : float
        Hardness with all particles dissolved, above 0 and below the highest [HV]
    reference_time_s : float
        Time to full dissolution at the reference temperature, above 0 [s]
    reference_c : float
        Reference temperature, 200 to 600 [C]
    solvus_energy_j_mol : float
        Energy of the solvus, at least 0 [J/mol]
    diffusion_energy_j_mol : float
        Activation energy of diffusion, above 0 [J/mol]
    time_exponent : float
        Exponent n of time, above 0 and at most 1 [-]

    Raises
    ------
    ValueError
        If a constant lies outside its range.

    Notes
    -----
    ``f/f0 = 1 - I^n``, ``I = integral dt/t1*``,
    ``t1* = tr exp((Qs/(n R) + Qd/R)(1/T - 1/Tr))``. Source: myhr_grong_1991, from memory.

    Examples
    --------
    >>> model = DissolutionModel()
    >>> model.full_time_s(375), round(model.fraction_left([0, 10], [400, 400]), 4)
    (600.0, 0.7515)
    """

    highest_hardness_hv: float = _VALUES["highest hardness"]
    lowest_hardness_hv: float = _VALUES["lowest hardness"]
    reference_time_s: float = _VALUES["reference time"]
    reference_c: float = _VALUES["reference temperature"]
    solvus_energy_j_mol: float = _VALUES["solvus energy"]
    diffusion_energy_j_mol: float = _VALUES["diffusion energy"]
    time_exponent: float = _VALUES["time exponent"]

    def __post_init__(self):
        """Refuse constants that make no model."""
        low = require_above("lowest hardness", self.lowest_hardness_hv, 0, unit="HV")
        require_above("highest less lowest hardness", self.highest_hardness_hv - low, 0, unit="HV")
        require_above("reference time", self.reference_time_s, 0, unit="s")
        require_between("reference temperature", self.reference_c, 200, 600, unit="C")
        require_at_least("energy of the solvus", self.solvus_energy_j_mol, 0, unit="J/mol")
        require_above("activation energy of diffusion", self.diffusion_energy_j_mol, 0, unit="J/mol")
        require_between("exponent of time", self.time_exponent, 0.01, 1, unit="")

    def full_time_s(self, temperature_c):
        """Time in s to full dissolution at a temperature of -100 to 660 C: t1*."""
        temperature = require_between("temperature", temperature_c, LOWEST_C, HIGHEST_C, unit="C")
        energy = self.solvus_energy_j_mol / self.time_exponent + self.diffusion_energy_j_mol
        slope = energy / GAS_CONSTANT_J_MOLK * (1 / k_from_c(temperature) - 1 / k_from_c(self.reference_c))
        return plain(self.reference_time_s * np.exp(slope))

    def kinetic_strength(self, times_s, temperatures_c):
        """Integral I of dt over t1* for one history or many; 1 means all is dissolved."""
        return integral_over_history(
            lambda temperature: 1 / self.full_time_s(temperature), times_s, temperatures_c
        )

    def fraction_left(self, times_s, temperatures_c):
        """Share of the particles left after one history or many: 1 - I^n, at least 0."""
        return self.fraction_after(self.kinetic_strength(times_s, temperatures_c))

    def fraction_after(self, kinetic_strength):
        """Share of the particles left after a kinetic strength of at least 0."""
        strength = require_at_least("kinetic strength", kinetic_strength, 0, unit="")
        return plain(np.maximum(0.0, 1 - np.asarray(strength) ** self.time_exponent))

    def hardness_hv(self, fraction_left):
        """Hardness in HV with a share of 0 to 1 of the particles left."""
        share = require_between("share of particles left", fraction_left, 0, 1, unit="")
        return plain(
            self.lowest_hardness_hv + (self.highest_hardness_hv - self.lowest_hardness_hv) * np.asarray(share)
        )

    def proof_stress_share(self, fraction_left):
        """Proof stress over that as delivered, with a share of 0 to 1 of the particles left."""
        whole = dissolution_proof_stress_mpa(self.highest_hardness_hv)
        return plain(np.divide(dissolution_proof_stress_mpa(self.hardness_hv(fraction_left)), whole))


def dissolution_proof_stress_mpa(hardness_hv):
    """Return the proof stress of 6xxx sheet from its hardness: R_p0.2 = 3.0 HV - 48.1.

    Parameters
    ----------
    hardness_hv : float or array
        Vickers hardness, 40 to 130 [HV]

    Returns
    -------
    float or numpy.ndarray
        Proof stress [MPa]

    Raises
    ------
    ValueError
        If the hardness lies outside its range.

    Notes
    -----
    Source: myhr_grong_1991, regression, from memory.

    Examples
    --------
    >>> round(dissolution_proof_stress_mpa(108.3), 1)
    276.8
    """
    hardness = np.asarray(require_between("hardness", hardness_hv, 40, 130, unit="HV"))
    return plain(_VALUES["proof stress slope"] * hardness + _VALUES["proof stress offset"])


def dissolution_tensile_strength_mpa(hardness_hv):
    """Return the tensile strength of 6xxx sheet from its hardness: R_m = 2.6 HV - 39.8.

    Parameters
    ----------
    hardness_hv : float or array
        Vickers hardness, 40 to 130 [HV]

    Returns
    -------
    float or numpy.ndarray
        Tensile strength [MPa]

    Raises
    ------
    ValueError
        If the hardness lies outside its range.

    Notes
    -----
    Source: myhr_grong_1991, regression, from memory.

    Examples
    --------
    >>> round(dissolution_tensile_strength_mpa(110), 1)
    246.2
    """
    hardness = np.asarray(require_between("hardness", hardness_hv, 40, 130, unit="HV"))
    return plain(_VALUES["tensile strength slope"] * hardness + _VALUES["tensile strength offset"])
