"""Shear in a glue line along its overlap: high at both ends, low in the middle."""

import numpy as np

from drawings.charts import heading, limit_line, plane
from drawings.marks import area, line, number, write
from drawings.picture import picture_of
from drawings.scales import ROUND_CLOSE, round_up
from drawings.style import BOLD, MID_SLATE, TEXT_AMBER, sheet_of_paper
from secondplate.bonding import bond_peak_mpa, bond_shear_mpa

WIDTH_IN, HEIGHT_IN = 8.6, 4.0
PLACE = (0.09, 0.18, 0.87, 0.7)


def bond_shear(*, line_load_n_mm, overlap_mm, stiffnesses_n_mm, adhesive_modulus_mpa, adhesive_mm):
    """Draw the shear along a bonded overlap, and its mean.

    Parameters
    ----------
    line_load_n_mm : float
        Load for a millimetre of width [N/mm]
    overlap_mm : float
        Length of the overlap [mm]
    stiffnesses_n_mm : tuple of float
        Modulus times thickness of both plates [N/mm]
    adhesive_modulus_mpa : float
        Shear modulus of the adhesive [MPa]
    adhesive_mm : float
        Thickness of the adhesive [mm]

    Returns
    -------
    picture : Picture
        Curve over the overlap with its mean [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Shear from ``secondplate.bonding``: plates that only stretch, adhesive that stays elastic.

    Examples
    --------
    >>> lap = dict(line_load_n_mm=100, overlap_mm=20, stiffnesses_n_mm=(105000, 105000),
    ...            adhesive_modulus_mpa=600, adhesive_mm=0.3)
    >>> "mean 5 MPa" in bond_shear(**lap).alt
    True
    """
    lap = {
        "line_load_n_mm": line_load_n_mm,
        "overlap_mm": overlap_mm,
        "stiffnesses_n_mm": stiffnesses_n_mm,
        "adhesive_modulus_mpa": adhesive_modulus_mpa,
        "adhesive_mm": adhesive_mm,
    }
    peak, mean = float(bond_peak_mpa(**lap)), line_load_n_mm / overlap_mm
    places = np.linspace(0, overlap_mm, 101)
    shear = np.asarray(bond_shear_mpa(places - overlap_mm / 2, **lap))
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = plane(
            figure,
            PLACE,
            across="along the overlap in mm",
            up="shear in the glue in MPa",
            wide=(0, overlap_mm),
            high=(0, round_up(1.05 * peak, among=ROUND_CLOSE)),
        )
        curve = np.column_stack([places, shear])
        area(axes, [(0, 0), *curve, (overlap_mm, 0)], fill=MID_SLATE, order=1)
        line(axes, curve, width=BOLD)
        limit_line(axes, mean)
        ground = {"facecolor": "white", "edgecolor": "none", "pad": 1.5}
        write(
            axes,
            overlap_mm / 2,
            mean,
            f"mean {number(mean)} MPa",
            colour=TEXT_AMBER,
            weight="bold",
            bbox=ground,
        )
        heading(axes, f"peak {number(peak)} MPa, {number(peak / mean)} times the mean")
        return picture_of(figure, _words(overlap_mm, peak, mean, float(shear.min())))


def _words(overlap, peak, mean, least):
    """Tell the curve in sentences."""
    return (
        f"Shear in the glue along an overlap of {number(overlap)} mm: highest at an end with "
        f"{number(peak)} MPa, mean {number(mean)} MPa, least {number(least)} MPa on the way between."
    )
