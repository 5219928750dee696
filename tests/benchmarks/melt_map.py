"""Computes the table behind ``secondplate.heat.melt_map`` with the full heat model and writes it.

Run it after a change of the heat model: ``python tests/benchmarks/melt_map.py``. It takes some minutes.
"""

import csv
import sys
from multiprocessing import Pool

import numpy as np

from secondplate.data_files import DATA_FOLDER
from secondplate.heat.joint import RIVET_MATERIAL, default_joint
from secondplate.heat.joint_body import RIVET, STUD
from secondplate.heat.melt_map import ENERGY_CAP_J_MM2, QUANTITIES
from secondplate.heat.weld import weld_heat
from secondplate.heat.weld_settings import WeldHeat
from secondplate.materials import material

FLUXES_W_MM2 = (30, 42, 58, 82, 114, 159, 222, 310, 432, 600)
TIMES_MS = (2, 3.3, 5.6, 9.3, 15.5, 26, 43, 72, 120, 200)
WEBS_MM = (0.3, 0.6, 1.0, 1.4, 2.0, 3.0)
COLUMNS = ("name", "value", "unit", "conditions", "source", "locator", "basis")
KEYS = ("heat_flux_w_mm2", "time_ms", "web_mm")


def joint_with_web(web_mm):
    """The usual joint with another web; the slug is thinner so that it fits under a thick web."""
    return default_joint(web_mm=web_mm, slug_mm=1.0)


def settings_of(flux_w_mm2, time_ms, face_diameter_mm):
    """Settings that put a flux on both faces; the voltage is high so that the current stays in range."""
    area_mm2 = np.pi / 4 * face_diameter_mm**2
    current_a = flux_w_mm2 * area_mm2 / (0.425 * 45)
    return WeldHeat(
        current_a=max(current_a, 50.0),
        voltage_v=45.0 * min(1.0, current_a / 50.0),
        time_ms=time_ms,
        stud_heat_share=0.425,
        rivet_heat_share=0.425,
        cooling_s=0.5,
    )


def below_melting_mm(weld, part, melting_c):
    """How far the face stayed from melting: what is missing over the slope at the face; negative."""
    row = weld.cells.face_row - (part == STUD)
    inner = row + (1 if part == RIVET else -1)
    depths = np.abs(weld.cells.grid.depths_mm)
    slope = (weld.peak_c[row, 0] - weld.peak_c[inner, 0]) / (depths[inner] - depths[row])
    face = weld.peak_c[row, 0] + slope * depths[row]
    return min(0.0, max(-0.3, (face - melting_c) / slope))


def _weld(joint, flux_w_mm2, time_ms):
    """The weld, a little shorter where its heat is more than the tables of the substances hold."""
    try:
        return weld_heat(joint, settings_of(flux_w_mm2, time_ms, joint.flange_diameter_mm))
    except ValueError:
        print(f"too hot: {flux_w_mm2} W/mm2, {time_ms:.1f} ms, web {joint.web_mm} mm; a tenth less time")
        return _weld(joint, flux_w_mm2, 0.9 * time_ms)


def node(arguments):
    """Values of the three quantities at one node."""
    flux, time, web = arguments
    joint = joint_with_web(web)
    time = min(time, 1000 * ENERGY_CAP_J_MM2 / flux)
    weld = _weld(joint, flux, time)
    head, stud = weld.head_depth_mm, weld.stud_depth_mm
    over_bore = web - weld.web_left_mm
    if weld.burnt_through:  # go on as the stud does, so that lines through the edge of burning stay straight
        over_bore = max(web + 0.001, weld.greatest_stud_depth_mm)
    if head == 0:
        head = over_bore = below_melting_mm(weld, RIVET, material(RIVET_MATERIAL).melting_range_c.best)
    if stud == 0:
        stud = below_melting_mm(weld, STUD, material(joint.stud_material).melting_range_c.best)
    return arguments, (head, stud, over_bore)


def main():
    """Compute all nodes and write the table."""
    nodes = [(flux, time, web) for flux in FLUXES_W_MM2 for time in TIMES_MS for web in WEBS_MM]
    with Pool(int(sys.argv[1]) if len(sys.argv) > 1 else 2) as pool:
        found = pool.map(node, nodes, chunksize=6)
    with (DATA_FOLDER / "melt_map.csv").open("w", newline="", encoding="utf-8") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow((*COLUMNS, *KEYS))
        for place, values in found:
            for name, value in zip(QUANTITIES, values, strict=True):
                row = (name, f"{value:.4f}", "mm", "usual joint", "own_heat_model", "weld_heat", "derived")
                writer.writerow((*row, *place))


if __name__ == "__main__":
    main()
