"""Conversions between the trade's units and the units of this library, by exact factors.

Everything else in the library works in one unit a quantity; only these functions convert.
"""

from secondplate.arrays import plain
from secondplate.checks import require_at_least, require_finite
from secondplate.tables import values

_FACTORS = values("unit_factors")
_MM_PER_INCH = _FACTORS["inch"]
_N_PER_LBF = _FACTORS["pound"] * _FACTORS["standard gravity"]
_M_PER_FOOT = _FACTORS["foot"]
# One cubic foot in litres, over 60 minutes.
_L_MIN_PER_FT3_H = 1000 * _M_PER_FOOT**3 / 60
_K_AT_ZERO_C = _FACTORS["zero Celsius"]


def l_min_from_ft3_h(flow_ft3_h):
    """Convert a gas flow: 1 ft3/h = 0.4719474432 L/min.

    Parameters
    ----------
    flow_ft3_h : float or array
        Gas flow [ft3/h]

    Returns
    -------
    float or array
        Gas flow [L/min]

    Raises
    ------
    ValueError
        If the flow is not a finite number.

    Notes
    -----
    Source: nist_sp_811, Appendix B.8, foot = 0.3048 m exactly.

    Examples
    --------
    >>> round(l_min_from_ft3_h(10), 2)
    4.72
    """
    return plain(require_finite("flow", flow_ft3_h, unit="ft3/h") * _L_MIN_PER_FT3_H)


def ft3_h_from_l_min(flow_l_min):
    """Convert a gas flow: 1 L/min = 2.118880 ft3/h.

    Parameters
    ----------
    flow_l_min : float or array
        Gas flow [L/min]

    Returns
    -------
    float or array
        Gas flow [ft3/h]

    Raises
    ------
    ValueError
        If the flow is not a finite number.

    Notes
    -----
    Source: nist_sp_811, Appendix B.8, foot = 0.3048 m exactly.

    Examples
    --------
    >>> round(ft3_h_from_l_min(9), 2)
    19.07
    """
    return plain(require_finite("flow", flow_l_min, unit="L/min") / _L_MIN_PER_FT3_H)


def m_min_from_ft_min(speed_ft_min):
    """Convert a cutting speed: 1 ft/min = 0.3048 m/min.

    Parameters
    ----------
    speed_ft_min : float or array
        Cutting speed [ft/min]

    Returns
    -------
    float or array
        Cutting speed [m/min]

    Raises
    ------
    ValueError
        If the speed is not a finite number.

    Notes
    -----
    Source: nist_sp_811, Appendix B.8, foot exactly.

    Examples
    --------
    >>> round(m_min_from_ft_min(350), 2)
    106.68
    """
    return plain(require_finite("cutting speed", speed_ft_min, unit="ft/min") * _M_PER_FOOT)


def n_m_from_lbf_in(torque_lbf_in):
    """Convert a torque: 1 lbf in = 0.1129848 N m.

    Parameters
    ----------
    torque_lbf_in : float or array
        Torque [lbf in]

    Returns
    -------
    float or array
        Torque [N m]

    Raises
    ------
    ValueError
        If the torque is not a finite number.

    Notes
    -----
    Source: nist_sp_811, Appendix B.8, pound and inch exactly.

    Examples
    --------
    >>> round(n_m_from_lbf_in(58), 2)
    6.55
    """
    torque = require_finite("torque", torque_lbf_in, unit="lbf in")
    return plain(torque * _N_PER_LBF * _MM_PER_INCH / 1000)


def mm_from_inch(length_inch):
    """Convert a length: 1 inch = 25.4 mm.

    Parameters
    ----------
    length_inch : float or array
        Length [inch]

    Returns
    -------
    float or array
        Length [mm]

    Raises
    ------
    ValueError
        If the length is not a finite number.

    Notes
    -----
    Source: nist_sp_811, Appendix B.8, exact.

    Examples
    --------
    >>> mm_from_inch(0.125)
    3.175
    """
    return plain(require_finite("length", length_inch, unit="inch") * _MM_PER_INCH)


def mpa_from_ksi(stress_ksi):
    """Convert a stress: 1 ksi = 6.894757 MPa.

    Parameters
    ----------
    stress_ksi : float or array
        Stress, thousand pounds a square inch [ksi]

    Returns
    -------
    float or array
        Stress [MPa]

    Raises
    ------
    ValueError
        If the stress is not a finite number.

    Notes
    -----
    Source: nist_sp_811, Appendix B.8, pound and inch exactly.

    Examples
    --------
    >>> round(mpa_from_ksi(70), 1)
    482.6
    """
    stress = require_finite("stress", stress_ksi, unit="ksi")
    return plain(stress * 1000 * _N_PER_LBF / _MM_PER_INCH**2)


def n_from_lbf(force_lbf):
    """Convert a force: 1 lbf = 4.4482216 N.

    Parameters
    ----------
    force_lbf : float or array
        Force [lbf]

    Returns
    -------
    float or array
        Force [N]

    Raises
    ------
    ValueError
        If the force is not a finite number.

    Notes
    -----
    Source: nist_sp_811, Appendix B.8, exact.

    Examples
    --------
    >>> round(n_from_lbf(2614))
    11628
    """
    return plain(require_finite("force", force_lbf, unit="lbf") * _N_PER_LBF)


def k_from_c(temperature_c):
    """Convert a temperature: ``T = theta + 273.15``.

    Parameters
    ----------
    temperature_c : float or array
        Temperature, at least -273.15 [C]

    Returns
    -------
    float or array
        Absolute temperature [K]

    Raises
    ------
    ValueError
        If the temperature is below absolute zero.

    Notes
    -----
    Source: si_brochure, 2.3.1, exact.

    Examples
    --------
    >>> k_from_c(20)
    293.15
    """
    temperature = require_at_least("temperature", temperature_c, -_K_AT_ZERO_C, unit="C")
    return plain(temperature + _K_AT_ZERO_C)
