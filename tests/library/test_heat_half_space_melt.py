"""Depth of melt under the fluxes of charted short-cycle studs, against another program.

The depths were computed beforehand by an explicit scheme with cells of 5 micrometres on a half-space of one
steel (30 W/mK, 7850 kg/m3, 650 J/kgK, 1480 K to melting, 250 kJ/kg); derived, no measurement is known.
"""

import numpy as np
import pytest

from secondplate.heat.conduction import Stage, conduct
from secondplate.heat.joint import RIVET_MATERIAL, default_joint
from secondplate.heat.substances import Substance, metal
from secondplate.heat.weld import weld_heat
from secondplate.heat.weld_result import melted_depths_mm
from secondplate.heat.weld_settings import WeldHeat
from secondplate.materials import material
from tests.heat_bodies import column, face_power, fine_at_start, heated

MELTING_C = 1500.0
# Flux in W/mm2, time in ms, depth with liquid conductivity of 30 and of 300 W/mK in mm: M4, M5, M6, each at
# 25 V and 0.70 and at 30 V and 0.85.
DEPTHS = (
    (267.4, 15, 0.176, 0.245),
    (389.6, 15, 0.270, 0.424),
    (216.6, 15, 0.121, 0.155),
    (315.7, 15, 0.220, 0.321),
    (181.9, 20, 0.131, 0.165),
    (265.0, 20, 0.244, 0.355),
)


def steel(liquid_conductivity_w_mk):
    """The one steel of the other program, with its melting within 1 K."""
    nodes = np.array([-100.0, MELTING_C - 0.5, MELTING_C + 0.5, 10_000.0])
    latent = 7850 * 250e3 / 1e9 * np.array([0, 0, 1, 1])
    return Substance(
        name="steel",
        nodes_c=nodes,
        heat_content_j_mm3=7850 * 650 / 1e9 * (nodes + 100) + latent,
        conductivity_w_mk=[30.0, 30.0, liquid_conductivity_w_mk, liquid_conductivity_w_mk],
        solidus_c=MELTING_C - 0.5,
        liquidus_c=MELTING_C + 0.5,
    )


@pytest.mark.parametrize(("flux_w_mm2", "time_ms", "still_mm", "stirred_mm"), DEPTHS)
def test_depth_of_a_half_space(flux_w_mm2, time_ms, still_mm, stirred_mm):
    """Melt at rest and stirred melt, by the melted share and by the melting point between cells."""
    for depth_mm, conductivity in ((still_mm, 30.0), (stirred_mm, 300.0)):
        edges = fine_at_start(10.0, finest_mm=0.006, growth=0.02)
        body = column(edges, substance=steel(conductivity))
        power = face_power(body, flux_w_mm2=flux_w_mm2)
        run = heated(body, time_ms / 1000, power_w=power, steps=80, start_c=20.0)
        by_share = run.melted_share[:, 0] @ body.grid.heights_mm
        by_point = float(melted_depths_mm(run.peak_c, edges, MELTING_C)[0])
        # cells of 0.011 mm at the front; the other program moves by 0.001 to 0.003 mm with its cells
        assert by_share == pytest.approx(depth_mm, rel=0.03, abs=0.008)
        assert by_point == pytest.approx(depth_mm, rel=0.03, abs=0.008)


@pytest.mark.parametrize(
    ("stud_mm", "flux_w_mm2", "time_ms"), [(4, 267.4, 15), (5, 216.6, 15), (6, 181.9, 20)]
)
def test_middle_of_the_joint_melts_like_a_column(stud_mm, flux_w_mm2, time_ms):
    """So soon the middle of the joint sees neither rim nor bore: it melts like a column of its steel."""
    joint = default_joint(stud_mm)
    current_a = flux_w_mm2 * np.pi / 4 * joint.flange_diameter_mm**2 / (0.425 * 30)
    weld = weld_heat(joint, WeldHeat(current_a=current_a, time_ms=time_ms, cooling_s=0.5), fineness=2)
    for depths, name in ((weld.head_depths_mm, RIVET_MATERIAL), (weld.stud_depths_mm, joint.stud_material)):
        of = metal(name, liquid_conductivity_w_mk=weld.settings.liquid_conductivity_w_mk)
        edges = fine_at_start(10.0, finest_mm=0.006, growth=0.02)
        body = column(edges, substance=of)
        power = face_power(body, flux_w_mm2=flux_w_mm2)
        arc = Stage(duration_s=time_ms / 1000, steps=80, power_w=power)
        run = conduct(body, [arc, Stage(duration_s=0.02, steps=40)])
        alone = float(melted_depths_mm(run.peak_c, edges, material(name).melting_range_c.best)[0])
        # cells of 0.03 mm at the front in the joint, and its two melts even out their heat
        assert float(depths[0]) == pytest.approx(alone, abs=0.012)
