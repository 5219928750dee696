"""Thrust and torque of a twist drill in two ways side by side, for the metals of a riveted joint.

The handbook's factors and the specific cutting force rest on different tests and differ; both are returned,
never their mean. They tell what drill and hand have to bear, and are no setting of any machine.
"""

from dataclasses import dataclass
from types import MappingProxyType

from secondplate.bands import Band
from secondplate.checks import require_choice
from secondplate.drilling_factors import STANDARD_POINT, handbook_thrust_n, handbook_torque_n_m
from secondplate.drilling_kienzle import CUTTING_GROUPS, kienzle_thrust_n, kienzle_torque_n_m
from secondplate.tables import load


@dataclass(frozen=True, kw_only=True)
class WorkMaterial:
    """One metal to drill in: factor of the handbook, and its groups by specific cutting force.

    Parameters
    ----------
    work_material_factor : float
        K_d of the handbook [-]
    cutting_groups : tuple of str
        Groups of ``CUTTING_GROUPS`` that hold it or lie on either side of it [-]
    conditions : str
        For what the factor holds [-]
    basis : str
        Where the factor comes from, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> WORK_MATERIALS["steel 400 HB"].cutting_groups
    ('9', '38')
    """

    work_material_factor: float
    cutting_groups: tuple[str, ...]
    conditions: str
    basis: str


WORK_MATERIALS = MappingProxyType(
    {
        row.name: WorkMaterial(
            work_material_factor=row.number,
            cutting_groups=tuple(row.keys["groups"].split()),
            conditions=row.conditions,
            basis=row.basis,
        )
        for row in load("drill_work_materials")
    }
)


@dataclass(frozen=True, kw_only=True)
class DrillForces:
    """Thrust and torque of one drill in two ways.

    Parameters
    ----------
    handbook_thrust_n : float or array
        Thrust by the handbook's factors [N]
    handbook_torque_n_m : float or array
        Torque by the handbook's factors [N m]
    kienzle_thrust_n : Band
        Thrust by specific cutting force [N]
    kienzle_torque_n_m : Band
        Torque by specific cutting force; its ends are the groups on either side [N m]

    Examples
    --------
    >>> both = drill_forces(work_material="aluminium", drill_diameter_mm=6.4, feed_mm_rev=0.1)
    >>> round(both.handbook_torque_n_m, 2), round(both.kienzle_torque_n_m.best, 2)
    (0.85, 0.84)
    """

    handbook_thrust_n: float
    handbook_torque_n_m: float
    kienzle_thrust_n: Band
    kienzle_torque_n_m: Band


def _by_groups(material, **cut):
    """Return thrust and torque by specific cutting force, from the least group to the most."""
    constants = [CUTTING_GROUPS[group].constants() for group in material.cutting_groups]
    thrusts = [kienzle_thrust_n(**one, **cut) for one in constants]
    torques = [kienzle_torque_n_m(**one, **cut) for one in constants]
    basis = "group " + " to group ".join(material.cutting_groups)
    thrust = Band(
        low=thrusts[0].low,
        best=(thrusts[0].best + thrusts[-1].best) / 2,
        high=thrusts[-1].high,
        basis=f"{basis}; {thrusts[0].basis}",
    )
    torque = Band(low=torques[0], best=(torques[0] + torques[-1]) / 2, high=torques[-1], basis=basis)
    return thrust, torque


def drill_forces(
    *,
    work_material,
    drill_diameter_mm,
    feed_mm_rev,
    point_angle_deg=118.0,
    chisel_edge=STANDARD_POINT,
    wear_factor=1.0,
):
    """Return thrust and torque of a drill by the handbook and by specific cutting force, side by side.

    Parameters
    ----------
    work_material : str
        One of ``WORK_MATERIALS`` [-]
    drill_diameter_mm : float or array
        Diameter of the drill, 1.5 to 25 [mm]
    feed_mm_rev : float or array
        Feed for a turn, 0.01 to 0.4 [mm/rev]
    point_angle_deg : float or array
        Angle of the point, 60 to 180; only the specific cutting force knows it [deg]
    chisel_edge : ChiselEdge
        Factors of the point; only the handbook knows them [-]
    wear_factor : float or array
        1.0 for a sharp drill, up to 1.5; only the handbook knows it [-]

    Returns
    -------
    DrillForces
        Both thrusts and both torques [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or the material is not listed.

    Notes
    -----
    Source: machinery_handbook p. 1152 and iso_513_groups. No group lies between 350 HB and 55 HRC, so the
    hardened steel of a rivet stands between groups 9 and 38.

    Examples
    --------
    >>> both = drill_forces(work_material="steel 400 HB", drill_diameter_mm=8, feed_mm_rev=0.1)
    >>> round(both.handbook_torque_n_m, 2), round(both.kienzle_torque_n_m.high, 2)
    (6.17, 8.09)
    """
    material = WORK_MATERIALS[require_choice("work material", work_material, WORK_MATERIALS)]
    cut = {"drill_diameter_mm": drill_diameter_mm, "feed_mm_rev": feed_mm_rev}
    handbook = {
        "work_material_factor": material.work_material_factor,
        "chisel_edge": chisel_edge,
        "wear_factor": wear_factor,
    }
    thrust, torque = _by_groups(material, **cut, point_angle_deg=point_angle_deg)
    return DrillForces(
        handbook_thrust_n=handbook_thrust_n(**handbook, **cut),
        handbook_torque_n_m=handbook_torque_n_m(**handbook, **cut),
        kienzle_thrust_n=thrust,
        kienzle_torque_n_m=torque,
    )
