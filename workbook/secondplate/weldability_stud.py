"""Two rules of the seam welder asked about a stud: how fast it cools, and what preheat it wants."""

from secondplate.arc_heat import energy_per_area_j_mm2, face_heat_share
from secondplate.bands import Band
from secondplate.checks import require_above, require_choice
from secondplate.heat.constant_metal import mean_metal
from secondplate.heat.cooling_times import plane_cooling_time_s
from secondplate.weldability_carbon import carbon_equivalent_cet_percent, preheat_c
from secondplate.weldability_composition import composition, steel_names


def stud_cooling_time_s(energy_j, *, face_diameter_mm, start_c=20.0):
    """Return the time from 800 to 500 C at the face of the rivet, as if heat came on a half-space at once.

    Parameters
    ----------
    energy_j : float or array
        Arc energy, above 0 [J]
    face_diameter_mm : float or array
        Diameter of the face, 1 to 30 mm [mm]
    start_c : float or array
        Temperature before the weld, -50 to 450 C [C]

    Returns
    -------
    Band
        Cooling time, its three values in the common shape [s]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Heat shares of ``face_heat_share``, rivet steel with its mean properties up to 800 C. The head is thin and
    the real time differs; the heat model knows better. All of them are far below the seconds that would spare
    the steel from martensite.
    Source: ``heat.cooling_times.plane_cooling_time_s``.

    Examples
    --------
    >>> stud_cooling_time_s(480, face_diameter_mm=7).high < 1
    True
    """
    by_area, share = energy_per_area_j_mm2(energy_j, face_diameter_mm=face_diameter_mm), face_heat_share()
    steel = mean_metal("boron rivet steel", up_to_c=800)
    low, best, high = (
        plane_cooling_time_s(by_area * each, metal=steel, start_c=start_c)
        for each in (share.low, share.best, share.high)
    )
    return Band(
        low=low, best=best, high=high, basis="derived: heat at once on a half-space, band of heat shares"
    )


def stud_preheat_answer(rivet, *, energy_j, face_diameter_mm, thickness_mm, hydrogen_ml_100g=5.0):
    """Return the answer of the preheat rule when it is asked about a stud on a rivet head.

    Parameters
    ----------
    rivet : str
        One of ``steel_names("rivet")`` [-]
    energy_j : float
        Arc energy, above 0 [J]
    face_diameter_mm : float
        Diameter of the face, 1 to 30 mm [mm]
    thickness_mm : float
        Thickness of the rivet head, above 0 [mm]
    hydrogen_ml_100g : float
        Diffusible hydrogen, 1 to 20 ml in 100 g [ml/100g]

    Returns
    -------
    str
        The preheat in words, or the sentence with which the rule refuses [-]

    Raises
    ------
    ValueError
        If the rivet is unknown, or energy, face or thickness are no sizes at all.

    Notes
    -----
    The arc's energy over the diameter of the face stands for the heat input of a seam.
    Source: en_1011_2 annex C.3.

    Examples
    --------
    >>> stud_preheat_answer("36MnB4", energy_j=480, face_diameter_mm=7, thickness_mm=1.5)
    'The rule does not speak of this weld: thickness must be between 10 mm and 90 mm, got 1.5 mm.'
    """
    require_choice("rivet", rivet, steel_names("rivet"))
    require_above("energy", energy_j, 0, unit="J")
    require_above("face diameter", face_diameter_mm, 0, unit="mm")
    require_above("thickness", thickness_mm, 0, unit="mm")
    try:
        found = preheat_c(
            carbon_equivalent_cet_percent(composition(rivet)),
            thickness_mm=thickness_mm,
            hydrogen_ml_100g=hydrogen_ml_100g,
            heat_input_kj_mm=energy_j / face_diameter_mm / 1000,
        )
    except ValueError as refusal:
        return f"The rule does not speak of this weld: {refusal}."
    return f"The rule asks for {found.low:.0f} to {found.high:.0f} C."
