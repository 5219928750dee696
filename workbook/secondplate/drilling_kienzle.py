"""Torque and thrust of a twist drill by specific cutting force, the power it takes and the metal it removes.

The specific cutting force is printed for a chip of 1 mm and grows as the chip gets thinner. The chisel edge
is left out.
"""

from dataclasses import dataclass
from types import MappingProxyType

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_above, require_at_least, require_between
from secondplate.drilling_factors import DIAMETER_RANGE_MM, FEED_RANGE_MM_REV
from secondplate.tables import load

_TURN_S = 60.0
# Share of (D/2) f kc in the thrust: 0.5 to 0.7 with the sine of the lip, and 0.7 without it.
_LOW_SHARE, _BEST_SHARE, _HIGH_SHARE = 0.5, 0.6, 0.7


@dataclass(frozen=True, kw_only=True)
class CuttingGroup:
    """One group of work materials with its specific cutting force.

    Parameters
    ----------
    specific_cutting_force_mpa : float
        Force on a chip 1 mm thick and 1 mm wide, above 0 [MPa]
    force_exponent : float
        Power with which it falls as the chip gets thicker [-]
    conditions : str
        What belongs to the group [-]

    Examples
    --------
    >>> CUTTING_GROUPS["22"].specific_cutting_force_mpa
    800.0
    """

    specific_cutting_force_mpa: float
    force_exponent: float
    conditions: str

    def constants(self):
        """Return both constants by name, as the functions of this module take them."""
        return {
            "specific_cutting_force_mpa": self.specific_cutting_force_mpa,
            "force_exponent": self.force_exponent,
        }


def _groups():
    """Join the rows of each group."""
    rows = load("cutting_force_groups")
    exponents = {row.name: row.number for row in rows if row.keys["quantity"] == "exponent"}
    forces = [row for row in rows if row.keys["quantity"] == "specific cutting force"]
    return MappingProxyType(
        {
            row.name: CuttingGroup(
                specific_cutting_force_mpa=row.number,
                force_exponent=exponents[row.name],
                conditions=row.conditions,
            )
            for row in forces
        }
    )


CUTTING_GROUPS = _groups()


def _lip(drill_diameter_mm, feed_mm_rev, point_angle_deg):
    """Return diameter, feed and the sine of half the point angle, each inside its range."""
    diameter = require_between("drill diameter", drill_diameter_mm, *DIAMETER_RANGE_MM, unit="mm")
    feed = require_between("feed", feed_mm_rev, *FEED_RANGE_MM_REV, unit="mm/rev")
    angle = require_between("point angle", point_angle_deg, 60, 180, unit="deg")
    return np.asarray(diameter), np.asarray(feed), np.sin(np.deg2rad(np.asarray(angle) / 2))


def chip_thickness_mm(*, feed_mm_rev, point_angle_deg=118.0):
    """Return the thickness of the uncut chip of a drill with two lips, h = (f/2) sin(point angle/2).

    Parameters
    ----------
    feed_mm_rev : float or array
        Feed for a turn, 0.01 to 0.4 [mm/rev]
    point_angle_deg : float or array
        Angle of the point, 60 to 180 [deg]

    Returns
    -------
    float or array
        Thickness [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: drilling_formula_sheet.

    Examples
    --------
    >>> round(chip_thickness_mm(feed_mm_rev=0.1, point_angle_deg=140), 4)
    0.047
    """
    _, feed, sine = _lip(DIAMETER_RANGE_MM[0], feed_mm_rev, point_angle_deg)
    return plain(feed / 2 * sine)


def cutting_force_at_chip_mpa(*, specific_cutting_force_mpa, force_exponent, chip_thickness_mm):
    """Return the specific cutting force of a chip, kc = kc1.1 h^(-mc).

    Parameters
    ----------
    specific_cutting_force_mpa : float or array
        kc1.1 of the work material, above 0 [MPa]
    force_exponent : float or array
        mc of the work material, 0 to 0.5 [-]
    chip_thickness_mm : float or array
        Thickness of the uncut chip, above 0 [mm]

    Returns
    -------
    float or array
        Specific cutting force [MPa]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: drilling_formula_sheet.

    Examples
    --------
    >>> round(cutting_force_at_chip_mpa(specific_cutting_force_mpa=800, force_exponent=0.25,
    ...                                 chip_thickness_mm=0.0514))
    1680
    """
    force = np.asarray(require_above("specific cutting force", specific_cutting_force_mpa, 0, unit="MPa"))
    exponent = np.asarray(require_between("exponent of the cutting force", force_exponent, 0, 0.5, unit=""))
    return plain(
        force * np.asarray(require_above("chip thickness", chip_thickness_mm, 0, unit="mm")) ** -exponent
    )


def kienzle_torque_n_m(
    *, specific_cutting_force_mpa, force_exponent, drill_diameter_mm, feed_mm_rev, point_angle_deg=118.0
):
    """Return the torque by specific cutting force, M = kc f D^2 / 8000.

    Parameters
    ----------
    specific_cutting_force_mpa : float or array
        kc1.1 of the work material, above 0 [MPa]
    force_exponent : float or array
        mc of the work material, 0 to 0.5 [-]
    drill_diameter_mm : float or array
        Diameter of the drill, 1.5 to 25 [mm]
    feed_mm_rev : float or array
        Feed for a turn, 0.01 to 0.4 [mm/rev]
    point_angle_deg : float or array
        Angle of the point, 60 to 180 [deg]

    Returns
    -------
    float or array
        Torque [N m]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: drilling_formula_sheet; the balance of energy gives 8000. 4000, also met, is twice as much.

    Examples
    --------
    >>> round(kienzle_torque_n_m(specific_cutting_force_mpa=2150, force_exponent=0.2, drill_diameter_mm=6.5,
    ...                          feed_mm_rev=0.1, point_angle_deg=135), 2)
    2.1
    """
    diameter, feed, sine = _lip(drill_diameter_mm, feed_mm_rev, point_angle_deg)
    kc_mpa = cutting_force_at_chip_mpa(
        specific_cutting_force_mpa=specific_cutting_force_mpa,
        force_exponent=force_exponent,
        chip_thickness_mm=feed / 2 * sine,
    )
    return plain(kc_mpa * feed * diameter**2 / 8000)


def kienzle_thrust_n(
    *, specific_cutting_force_mpa, force_exponent, drill_diameter_mm, feed_mm_rev, point_angle_deg=118.0
):
    """Return the thrust by specific cutting force as a band, 0.5 to 0.7 times (D/2) f kc.

    The low end has the sine of half the point angle as well, the high end not; best is 0.6 with it.

    Parameters
    ----------
    specific_cutting_force_mpa : float or array
        kc1.1 of the work material, above 0 [MPa]
    force_exponent : float or array
        mc of the work material, 0 to 0.5 [-]
    drill_diameter_mm : float or array
        Diameter of the drill, 1.5 to 25 [mm]
    feed_mm_rev : float or array
        Feed for a turn, 0.01 to 0.4 [mm/rev]
    point_angle_deg : float or array
        Angle of the point, 60 to 180 [deg]

    Returns
    -------
    Band
        Thrust [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: drilling_formula_sheet for 0.7 without the sine; 0.5 to 0.7 with it from memory. No chisel edge.

    Examples
    --------
    >>> thrust = kienzle_thrust_n(specific_cutting_force_mpa=800, force_exponent=0.25, drill_diameter_mm=6.4,
    ...                           feed_mm_rev=0.1)
    >>> round(thrust.low), round(thrust.best), round(thrust.high)
    (241, 289, 394)
    """
    diameter, feed, sine = _lip(drill_diameter_mm, feed_mm_rev, point_angle_deg)
    kc_mpa = cutting_force_at_chip_mpa(
        specific_cutting_force_mpa=specific_cutting_force_mpa,
        force_exponent=force_exponent,
        chip_thickness_mm=feed / 2 * sine,
    )
    whole = diameter / 2 * feed * kc_mpa
    return Band(
        low=plain(_LOW_SHARE * whole * sine),
        best=plain(_BEST_SHARE * whole * sine),
        high=plain(_HIGH_SHARE * whole),
        basis="0.5 to 0.7 of (D/2) f kc, two formulas",
    )


def cutting_power_w(*, torque_n_m, spindle_speed_rpm):
    """Return the power at the drill, P = 2 pi M N / 60.

    Parameters
    ----------
    torque_n_m : float or array
        Torque, at least 0 [N m]
    spindle_speed_rpm : float or array
        Turns of the drill in a minute, at least 0 [1/min]

    Returns
    -------
    float or array
        Power at the cut; the motor wants more by its losses [W]

    Raises
    ------
    ValueError
        If a value is below 0.

    Notes
    -----
    Source: machinery_handbook p. 1152, which writes M N / 9550 in kilowatt.

    Examples
    --------
    >>> round(cutting_power_w(torque_n_m=1.6, spindle_speed_rpm=800))
    134
    """
    torque = np.asarray(require_at_least("torque", torque_n_m, 0, unit="N m"))
    turns = np.asarray(require_at_least("spindle speed", spindle_speed_rpm, 0, unit="1/min"))
    return plain(2 * np.pi * torque * turns / _TURN_S)


def removal_rate_mm3_min(*, drill_diameter_mm, feed_mm_rev, spindle_speed_rpm):
    """Return the metal that a drill takes away in a minute, pi/4 D^2 f N.

    Parameters
    ----------
    drill_diameter_mm : float or array
        Diameter of the drill, above 0 [mm]
    feed_mm_rev : float or array
        Feed for a turn, above 0 [mm/rev]
    spindle_speed_rpm : float or array
        Turns of the drill in a minute, above 0 [1/min]

    Returns
    -------
    float or array
        Volume by time at full diameter [mm3/min]

    Raises
    ------
    ValueError
        If a value is not above 0.

    Notes
    -----
    Source: machining_textbook.

    Examples
    --------
    >>> round(removal_rate_mm3_min(drill_diameter_mm=10, feed_mm_rev=0.2, spindle_speed_rpm=800))
    12566
    """
    diameter = np.asarray(require_above("drill diameter", drill_diameter_mm, 0, unit="mm"))
    feed = np.asarray(require_above("feed", feed_mm_rev, 0, unit="mm/rev"))
    turns = np.asarray(require_above("spindle speed", spindle_speed_rpm, 0, unit="1/min"))
    return plain(np.pi / 4 * diameter**2 * feed * turns)
