"""May a button be pressed back: what strain it takes, what the sheet still has, and which law says so.

The stop rule is a design choice, not a published limit: pressing back is allowed only if all strain stays
within a share of what the sheet has by the lowest of its laws and by its forming limit.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_at_least, require_between, require_choice, require_single
from secondplate.plate_dome import ButtonDome
from secondplate.plate_hardening import HARDENING_SHEETS, necking_strains
from secondplate.tables import bands, load, values

# Forming limit at plane strain by sheet, the lowest point of the forming limit curve.
FORMING_LIMITS = bands("forming_limits")
STRAIN_SHARE = values("plate_rules")["share of the strain at hand"]
PRESS_VERDICTS = ("press back", "do not press back")
_FORMING_LIMIT = "forming limit at plane strain, low end"


@dataclass(frozen=True, kw_only=True)
class PressBack:
    """What the stop rule says of pressing buttons back; arrays stand for a column of buttons.

    Parameters
    ----------
    strain_needed : float or array
        Strain before, of forming and of flattening together, with bending of the skin [-]
    limits : Mapping of str to float
        Strain that each law or limit allows, by its name [-]

    Examples
    --------
    >>> PressBack(strain_needed=0.2, limits={"a law": 0.13, "another": 0.22}).allowed_by
    ('another',)
    """

    strain_needed: float
    limits: Mapping[str, float]

    @property
    def limit(self):
        """Lowest limit, the one that counts."""
        return min(self.limits.values())

    @property
    def governing(self):
        """Name of the law or limit that counts."""
        return min(self.limits, key=self.limits.get)

    @property
    def used(self):
        """Strain needed over the limit; above 1 the button is not pressed back."""
        return plain(np.divide(self.strain_needed, self.limit))

    @property
    def verdict(self):
        """One of ``PRESS_VERDICTS`` for each button."""
        words = np.where(np.asarray(self.used) <= 1, *PRESS_VERDICTS)
        return str(words) if words.ndim == 0 else words

    @property
    def allowed_by(self):
        """Names of the laws and limits that would allow it, for the worst button of a column."""
        worst = np.max(self.strain_needed)
        return tuple(name for name, limit in self.limits.items() if worst <= limit)


def press_back(button, sheet, *, strain_before=0.0, strain_share=STRAIN_SHARE):
    """Return what the stop rule says of pressing a button back.

    Parameters
    ----------
    button : ButtonDome
        The button as a dome, one or a column [-]
    sheet : str
        Alloy and temper, one of ``plate_hardening.HARDENING_SHEETS`` [-]
    strain_before : float or array
        Further strain that the sheet has already seen, at least 0 [-]
    strain_share : float
        Share of the strain at hand that may be used, 0.1 to 1 [-]

    Returns
    -------
    PressBack
        Strain needed, limits by law, and the verdict [-]

    Raises
    ------
    ValueError
        If the sheet is not in the list or a value lies outside its range.

    Notes
    -----
    ``e_prior + e_flatten + t/(2 R) <= 0.8 min(e_u, FLC0)`` with both strains ``|ln thinning|``.
    Source: own_judgement, stop rule; a dome is the mild model, so that "press back" is no promise.

    Examples
    --------
    >>> button = ButtonDome(base_radius_mm=4, rise_mm=[0.5, 1.0, 1.5], sheet_mm=1.5)
    >>> press_back(button, "6016-T4").verdict.tolist()
    ['press back', 'do not press back', 'do not press back']
    """
    if not isinstance(button, ButtonDome):
        message = f"button must be a ButtonDome, got {button!r}"
        raise ValueError(message)
    require_choice("sheet", sheet, HARDENING_SHEETS)
    before = require_at_least("strain before", strain_before, 0, unit="")
    share = require_between("share of the strain at hand", strain_share, 0.1, 1, unit="")
    limits = {name: share * strain for name, strain in necking_strains(sheet).items()}
    if sheet in FORMING_LIMITS:
        limits[_FORMING_LIMIT] = share * FORMING_LIMITS[sheet].low
    return PressBack(strain_needed=plain(np.add(button.press_back_strain, before)), limits=limits)


def tallest_rise_mm(sheet, *, base_radius_mm, sheet_mm, strain_share=STRAIN_SHARE):
    """Return the tallest dome that the stop rule lets press back.

    Parameters
    ----------
    sheet : str
        Alloy and temper, one of ``plate_hardening.HARDENING_SHEETS`` [-]
    base_radius_mm : float
        Radius of the foot, above 0 [mm]
    sheet_mm : float
        Sheet thickness, above 0 [mm]
    strain_share : float
        Share of the strain at hand that may be used, 0.1 to 1 [-]

    Returns
    -------
    float
        Rise [mm]

    Raises
    ------
    ValueError
        If the sheet is not in the list or a value lies outside its range.

    Notes
    -----
    Halved until it stands still; the strain rises with the dome. Source: own_judgement, stop rule.

    Examples
    --------
    >>> round(tallest_rise_mm("6016-T4", base_radius_mm=4, sheet_mm=1.5), 2)
    0.73
    """
    low, high = 0.0, require_single("base radius of the dome", base_radius_mm, unit="mm")
    require_single("sheet thickness", sheet_mm, unit="mm")
    for _ in range(60):
        middle = (low + high) / 2
        button = ButtonDome(base_radius_mm=base_radius_mm, rise_mm=middle, sheet_mm=sheet_mm)
        fits = press_back(button, sheet, strain_share=strain_share).used <= 1
        low, high = (middle, high) if fits else (low, middle)
    return low


def least_bend_radius_mm(sheet, *, sheet_mm, angle_deg=90):
    """Return the least inner radius that a standard allows for a cold bend.

    Parameters
    ----------
    sheet : str
        Alloy and temper [-]
    sheet_mm : float
        Sheet thickness [mm]
    angle_deg : float
        Angle of the bend, 90 or 180 [deg]

    Returns
    -------
    float
        Radius [mm]

    Raises
    ------
    ValueError
        If the table has no such sheet, thickness or angle.

    Notes
    -----
    Source: en_485_2, bend radii, from memory. Where two rows meet, the sharper radius of the thinner holds.

    Examples
    --------
    >>> least_bend_radius_mm("6082-T6", sheet_mm=2.0)
    7.0
    """
    rows = load("bend_radii")
    require_choice("sheet", sheet, tuple(dict.fromkeys(row.keys["sheet"] for row in rows)))
    require_single("sheet thickness", sheet_mm, unit="mm")
    for row in rows:
        low, high = float(row.keys["thickness_low_mm"]), float(row.keys["thickness_high_mm"])
        if (row.keys["sheet"], float(row.keys["angle_deg"])) == (
            sheet,
            angle_deg,
        ) and low <= sheet_mm <= high:
            return row.number * sheet_mm
    message = f"bend must be one of the table for {sheet}, got {sheet_mm} mm at {angle_deg} deg"
    raise ValueError(message)
