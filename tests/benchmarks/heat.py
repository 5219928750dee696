"""Prints how fast and how true the heat model is; run it by hand, it judges nothing.

Run time of one stud weld on the riveted joint, error and order against a closed form, and the run time
against a finite-element and a finite-volume library of others that have come down to the same error on the
same problem: a disc of even heat on a thick steel body. Processor time, best of three, all in one run.
"""

import sys
import time
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "workbook")]
FLUX_W_MM2, DISC_MM, SIZE_MM, TIME_S = 10.0, 3.5, 14.0, 0.1
WANTED = 0.005  # of the rise at the face
DEPTHS_MM = np.array([0.25, 0.5, 1.0])
FINENESSES = (1, 1.5, 2, 3, 4, 6, 8)


def seconds(work):
    """Return the processor time of some work, best of three, and its result."""
    times = []
    for _ in range(3):
        start = time.process_time()
        result = work()
        times.append(time.process_time() - start)
    return min(times), result


def edges_mm(fineness):
    """Return edges along the radius and the depth, fine at the rim of the disc and at the face."""
    from secondplate.heat.grid import graded_edges

    length = 0.3 / fineness
    radius = graded_edges(
        [0, DISC_MM, SIZE_MM], fine_at_mm=[DISC_MM], finest_mm=length, growth=0.3 / fineness
    )
    depth = graded_edges([0, SIZE_MM], fine_at_mm=[0], finest_mm=length / 2, growth=0.3 / fineness)
    return radius, depth


def own_rise_k(fineness):
    """Return the rise down the axis by the library."""
    from tests.heat_bodies import Grid, down_axis, face_power, heated, solid

    radius, depth = edges_mm(fineness)
    body = solid(Grid(radius_edges_mm=radius, height_edges_mm=depth))
    power = face_power(body, flux_w_mm2=FLUX_W_MM2, within_mm=DISC_MM)
    run = heated(body, TIME_S, power_w=power, start_c=0.0, steps=steps(fineness))
    return down_axis(run, body, DEPTHS_MM)


def steps(fineness):
    """Return the number of even time steps, the same for all."""
    return round(16 * fineness)


def element_rise_k(fineness):
    """Return the rise down the axis by finite elements of first order on the same edges."""
    from skfem import Basis, ElementQuad1, FacetBasis, LinearForm, MeshQuad

    from tests.heat_bodies import STEEL
    from tests.library.joint_elements import conduction_form, march, storage_form

    radius, depth = edges_mm(fineness)
    mesh = MeshQuad.init_tensor(radius / 1000, depth / 1000)
    basis = Basis(mesh, ElementQuad1())
    ones = np.ones((mesh.nelements, basis.X.shape[1]))
    stiffness = conduction_form.assemble(basis, value=STEEL.conductivity_w_mk * ones)
    storage = storage_form.assemble(basis, value=1e9 * STEEL.heat_by_volume_j_mm3k * ones)
    face = mesh.facets_satisfying(lambda x: (x[1] < 1e-9) & (x[0] < DISC_MM / 1000), boundaries_only=True)
    load = LinearForm(lambda v, w: v * 2 * np.pi * w.x[0]).assemble(
        FacetBasis(mesh, ElementQuad1(), facets=face)
    )
    rows = np.vstack([basis.probes(np.array([[1e-9], [d / 1000]])).toarray() for d in DEPTHS_MM])
    stage = (stiffness, 1e6 * FLUX_W_MM2 * load, TIME_S, steps(fineness))
    return march(storage, [stage], start_c=0.0, rows=rows)[1][-1]


def other_volume_rise_k(fineness):
    """Return the rise down the axis by the finite volumes of a general library, on the same edges."""
    from fipy import (
        CellVariable,
        CylindricalGrid2D,
        DiffusionTerm,
        ExplicitDiffusionTerm,
        LinearLUSolver,
        TransientTerm,
    )

    from tests.heat_bodies import STEEL

    radius, depth = edges_mm(fineness)
    mesh = CylindricalGrid2D(dr=np.diff(radius).tolist(), dz=np.diff(depth).tolist())
    across, down = (np.asarray(centres) for centres in mesh.cellCenters.value)
    rise = CellVariable(mesh=mesh, value=0.0)
    upper, k = down < depth[1], STEEL.conductivity_w_mmk
    source = CellVariable(mesh=mesh, value=np.where(upper & (across < DISC_MM), FLUX_W_MM2 / depth[1], 0.0))
    equation = (
        TransientTerm(STEEL.heat_by_volume_j_mm3k)
        == DiffusionTerm(k / 2) + ExplicitDiffusionTerm(k / 2) + source
    )
    solver = LinearLUSolver()
    for _ in range(steps(fineness)):
        equation.solve(var=rise, dt=TIME_S / steps(fineness), solver=solver)
    axis = across < radius[1]
    order = np.argsort(down[axis])
    return np.interp(DEPTHS_MM, down[axis][order], rise.value[axis][order])


def at_equal_error(rise_k, exact_k):
    """Refine until the error is small enough; return fineness, error and time, None where it never is."""
    for fineness in FINENESSES:
        error = np.abs(rise_k(fineness) - exact_k).max() / exact_k[0]
        if error <= WANTED:
            return fineness, error, seconds(lambda fineness=fineness: rise_k(fineness))[0]
    return None


def print_weld():
    """Print the run time of one weld on the riveted joint, and its heat balance."""
    from secondplate.heat.joint import default_joint
    from secondplate.heat.weld import weld_heat
    from secondplate.heat.weld_settings import charted_settings

    joint = default_joint()
    settings = charted_settings(joint)

    def weld():
        weld_heat.cache_clear()
        return weld_heat(joint, settings)

    weld()
    time_s, result = seconds(weld)
    print(
        f"one weld on the riveted joint, {result.cells.part.shape[0]} by {result.cells.part.shape[1]} cells:"
    )
    print(f"  {1000 * time_s:.0f} ms (target 150 ms), heat balance closed to {result.balance:.1e}")


def print_melting_joint():
    """Print both run times on the riveted joint with melting and properties over temperature, same cells."""
    from skfem import ElementQuad1

    from secondplate.heat.substances import filler, metal
    from tests.library import test_heat_joint_elements as joint

    steel = [
        metal(name, liquid_conductivity_w_mk=100.0) for name in ("austenitic stainless", "boron rivet steel")
    ]
    plate = metal("6xxx aluminium")
    substances = (*steel, plate, filler("adhesive"), plate, plate, filler("air"))
    cells = joint.joint_cells(joint.JOINT)
    start = time.process_time()
    elements, touching, load, rows = joint.elements_of(cells, ElementQuad1(), cells)
    melting = joint.MeltingJoint(
        elements,
        contents=[(each.nodes_c, each.heat_content_j_mm3) for each in substances],
        conductivities=[(each.nodes_c, each.conductivity_w_mk) for each in substances],
    )
    stages = [(0 * touching, load, joint.ARC_S, 40)]
    stages += [(touching, 0 * load, *stage) for stage in joint.cooling(8)]
    found = melting.march(stages, start_c=20.0, rows=rows)
    others_s = time.process_time() - start
    own_s, run = seconds(lambda: joint.by_volumes(cells, substances, steps=40))
    face = joint.NAMES.index("fusion face")
    print("riveted joint with melting, finite elements of first order against this library, same cells:")
    print(
        f"  {others_s:.1f} s against {1000 * own_s:.0f} ms, {others_s / own_s:.0f} times as long; "
        f"peaks at the weld face differ by {abs(joint.differences(found, run)[face]):.1%} of the rise"
    )


def main():
    """Print run time, error, order and ratios."""
    from secondplate.heat.closed_forms import disc_rise_k
    from tests.heat_bodies import STEEL

    print_weld()
    exact_k = disc_rise_k(DEPTHS_MM, TIME_S, disc_radius_mm=DISC_MM, heat_flux_w_mm2=FLUX_W_MM2, metal=STEEL)
    errors = [np.abs(own_rise_k(fineness) - exact_k).max() / exact_k[0] for fineness in (1, 2, 4)]
    print("disc of even heat on a thick body, error on the axis as share of the rise:")
    print("  " + ", ".join(f"{error:.2%}" for error in errors) + " with cells and steps halved twice")
    print(f"  observed order {np.log2(errors[0] / errors[1]):.2f}, {np.log2(errors[1] / errors[2]):.2f}")
    print(f"run time once the error is at most {WANTED:.1%}:")
    own = at_equal_error(own_rise_k, exact_k)
    print(f"  this library      fineness {own[0]:<3g} error {own[1]:.2%}  {1000 * own[2]:8.1f} ms")
    for name, rise_k in (("finite elements", element_rise_k), ("finite volumes", other_volume_rise_k)):
        found = at_equal_error(rise_k, exact_k)
        if found is None:
            print(f"  {name:<17} did not come down to this error")
            continue
        ratio = found[2] / own[2]
        print(
            f"  {name:<17} fineness {found[0]:<3g} error {found[1]:.2%}  {1000 * found[2]:8.1f} ms, "
            f"{ratio:.1f} times as long (target 10)"
        )
    print_melting_joint()


if __name__ == "__main__":
    main()
