"""Carbon equivalents of low-alloy steel, the start of martensite, and the preheat of a seam.

They leave out time; what hardness comes of a cooling time is in ``weldability_hardness``.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_between
from secondplate.weldability_composition import require_within


def carbon_equivalent_iiw_percent(composition):
    """Return the carbon equivalent of the International Institute of Welding.

    CE = C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15.

    Parameters
    ----------
    composition : Composition
        Low-alloy steel [-]

    Returns
    -------
    float or array
        Carbon equivalent, in the shape of the composition [%]

    Raises
    ------
    ValueError
        If the steel is not low-alloy.

    Notes
    -----
    Source: carbon_equivalent_code, carbon_equivalent_page.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> round(carbon_equivalent_iiw_percent(composition("36MnB4")), 4)
    0.5683
    """
    of = require_within(composition, "carbon equivalent")
    strong = of.chromium_percent + of.molybdenum_percent + of.vanadium_percent
    return plain(
        of.carbon_percent
        + of.manganese_percent / 6
        + strong / 5
        + (of.nickel_percent + of.copper_percent) / 15
    )


def cracking_parameter_percent(composition):
    """Return Pcm = C + Si/30 + (Mn + Cu + Cr)/20 + Ni/60 + Mo/15 + V/10 + 5 B.

    Parameters
    ----------
    composition : Composition
        Low-alloy steel; the parameter was made for less than 0.18 % carbon [-]

    Returns
    -------
    float or array
        Cracking parameter, in the shape of the composition [%]

    Raises
    ------
    ValueError
        If the steel is not low-alloy.

    Notes
    -----
    Source: carbon_equivalent_code.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> round(cracking_parameter_percent(composition("36MnB4")), 3)
    0.44
    """
    of = require_within(composition, "carbon equivalent")
    mild = of.manganese_percent + of.copper_percent + of.chromium_percent
    return plain(
        of.carbon_percent
        + of.silicon_percent / 30
        + mild / 20
        + of.nickel_percent / 60
        + of.molybdenum_percent / 15
        + of.vanadium_percent / 10
        + 5 * of.boron_percent
    )


def carbon_equivalent_cet_percent(composition):
    """Return CET = C + (Mn + Mo)/10 + (Cr + Cu)/20 + Ni/40.

    Parameters
    ----------
    composition : Composition
        Low-alloy steel [-]

    Returns
    -------
    float or array
        Carbon equivalent, in the shape of the composition [%]

    Raises
    ------
    ValueError
        If the steel is not low-alloy.

    Notes
    -----
    Source: en_1011_2 annex C.3, read in carbon_equivalent_code. The standard's own range ends at 0.32 %
    carbon, from memory, below the carbon of most rivets.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> round(carbon_equivalent_cet_percent(composition("36MnB4")), 4)
    0.4712
    """
    of = require_within(composition, "carbon equivalent")
    return plain(
        of.carbon_percent
        + (of.manganese_percent + of.molybdenum_percent) / 10
        + (of.chromium_percent + of.copper_percent) / 20
        + of.nickel_percent / 40
    )


def carbon_equivalent_cen_percent(composition):
    """Return CEN, which passes from Pcm at low carbon to the equivalent of the institute at high carbon.

    CEN = C + A [Si/24 + Mn/6 + Cu/15 + Ni/20 + (Cr + Mo + Nb + V)/5 + 5 B] with
    A = 0.75 + 0.25 tanh(20 (C - 0.12)).

    Parameters
    ----------
    composition : Composition
        Low-alloy steel [-]

    Returns
    -------
    float or array
        Carbon equivalent, in the shape of the composition [%]

    Raises
    ------
    ValueError
        If the steel is not low-alloy.

    Notes
    -----
    Source: yurioka_1987, bracket as in pipe_carbon_equivalent_sheet. One page divides nickel by 15; for a
    rivet the difference is nothing.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> round(carbon_equivalent_cen_percent(composition("36MnB4")), 4)
    0.5858
    """
    of = require_within(composition, "carbon equivalent")
    strong = of.chromium_percent + of.molybdenum_percent + of.niobium_percent + of.vanadium_percent
    bracket = (
        of.silicon_percent / 24
        + of.manganese_percent / 6
        + of.copper_percent / 15
        + of.nickel_percent / 20
        + strong / 5
        + 5 * of.boron_percent
    )
    return plain(of.carbon_percent + (0.75 + 0.25 * np.tanh(20 * (of.carbon_percent - 0.12))) * bracket)


def martensite_start_c(composition):
    """Return the temperature at which martensite begins to form.

    Ms = 539 - 423 C - 30.4 Mn - 17.7 Ni - 12.1 Cr - 7.5 Mo.

    Parameters
    ----------
    composition : Composition
        Steel of 0.11 to 0.60 % carbon, and within the other limits of the formula [-]

    Returns
    -------
    float or array
        Temperature, good to 15 to 30 C, in the shape of the composition [C]

    Raises
    ------
    ValueError
        If the steel lies outside the range of the formula.

    Notes
    -----
    Source: andrews_1965, from memory; the effect of carbon as in martensite_start_page.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> round(martensite_start_c(composition("36MnB4")), 1)
    354.5
    """
    of = require_within(composition, "martensite start")
    return plain(
        539
        - 423 * of.carbon_percent
        - 30.4 * of.manganese_percent
        - 17.7 * of.nickel_percent
        - 12.1 * of.chromium_percent
        - 7.5 * of.molybdenum_percent
    )


def preheat_c(carbon_equivalent_cet_percent, *, thickness_mm, hydrogen_ml_100g, heat_input_kj_mm):
    """Return the preheat that keeps a seam from cold cracks, by method B of the standard.

    Tp = 697 CET + 160 tanh(d/35) + 62 HD^0.35 + (53 CET - 32) Q - 328; an older form has 700 and -330.

    Parameters
    ----------
    carbon_equivalent_cet_percent : float or array
        CET, 0.2 to 0.5 % [%]
    thickness_mm : float or array
        Thickness d, 10 to 90 mm [mm]
    hydrogen_ml_100g : float or array
        Diffusible hydrogen HD of the weld metal, 1 to 20 ml in 100 g [ml/100g]
    heat_input_kj_mm : float or array
        Heat input Q, 0.5 to 4 kJ/mm [kJ/mm]

    Returns
    -------
    Band
        Preheat: the standard's form as best, the two forms as ends [C]

    Raises
    ------
    ValueError
        If an argument is out of the method's range, as with every stud on a rivet head.

    Notes
    -----
    Source: en_1011_2 annex C.3, from memory; carbon_equivalent_code for the older form and the ranges.

    Examples
    --------
    >>> round(preheat_c(0.4712, thickness_mm=10, hydrogen_ml_100g=2, heat_input_kj_mm=0.5).best)
    120
    """
    cet = require_between("carbon equivalent CET", carbon_equivalent_cet_percent, 0.2, 0.5, unit="%")
    thickness_mm = require_between("thickness", thickness_mm, 10, 90, unit="mm")
    hydrogen = require_between("hydrogen", hydrogen_ml_100g, 1, 20, unit="ml/100g")
    heat = require_between("heat input", heat_input_kj_mm, 0.5, 4, unit="kJ/mm")
    common = 160 * np.tanh(thickness_mm / 35) + 62 * hydrogen**0.35 + (53 * cet - 32) * heat
    standard, older = plain(697 * cet - 328 + common), plain(700 * cet - 330 + common)
    basis = "the standard's form and an older one beside it"
    return Band(
        low=plain(np.minimum(standard, older)),
        best=standard,
        high=plain(np.maximum(standard, older)),
        basis=basis,
    )
