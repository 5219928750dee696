"""Prints how fast and how true the heat model is; run it by hand, it judges nothing.

Run time of one stud weld on the riveted joint; errors and orders against closed forms; and the run time
against a finite-element and a finite-volume library of others that have come down to the same error on the
same problem, a disc of even heat on a thick steel body. All use the same family of graded edges and a scheme
of second order in time; each takes the fewest cells and even steps that reach the error, and the faster of
two ways to set it up where there are two. The finite elements factor their matrix once, since nothing changes
here; the library does not know that. All in one run, in processor time; the runs at equal error take turns,
since the pace of a shared machine changes within seconds, and the ratio is the median over the rounds.
"""

import statistics
import sys
import time
from functools import partial
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "workbook")]
FLUX_W_MM2, DISC_MM, SIZE_MM, TIME_S = 10.0, 3.5, 14.0, 0.1
WANTED = 0.005  # of the rise at the first of the depths
DEPTHS_MM = np.array([0.25, 0.5, 1.0])
FINENESSES = (0.6, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4)
STEPS = (4, 6, 8, 12, 16, 24, 32)
TARGET_RATIO, TARGET_MS, ROUNDS = 10, 150, 11


def times_s(work, runs=5):
    """Return the processor times of some work done several times."""
    found = []
    for _ in range(runs):
        start = time.process_time()
        work()
        found.append(time.process_time() - start)
    return found


def edges_mm(fineness):
    """Return edges along the radius and the depth, fine at the rim of the disc and at the face."""
    from secondplate.heat.grid import graded_edges

    length = 0.3 / fineness
    radius = graded_edges(
        [0, DISC_MM, SIZE_MM], fine_at_mm=[DISC_MM], finest_mm=length, growth=0.3 / fineness
    )
    depth = graded_edges([0, SIZE_MM], fine_at_mm=[0], finest_mm=length / 2, growth=0.3 / fineness)
    return radius, depth


def own_rise_k(fineness, steps):
    """Return the rise down the axis by the library."""
    from tests.heat_bodies import Grid, down_axis, face_power, heated, solid

    radius, depth = edges_mm(fineness)
    body = solid(Grid(radius_edges_mm=radius, height_edges_mm=depth))
    power = face_power(body, flux_w_mm2=FLUX_W_MM2, within_mm=DISC_MM)
    run = heated(body, TIME_S, power_w=power, start_c=0.0, steps=steps)
    return down_axis(run, body, DEPTHS_MM)


def half_space_error(fineness):
    """Return the largest error under an even flux, from the face down, as a share of the rise at the face."""
    from secondplate.heat.closed_forms import half_space_flux_rise_k
    from tests.heat_bodies import STEEL, column, face_power, face_rise_k, fine_at_start, heated

    body = column(fine_at_start(SIZE_MM, finest_mm=0.15 / fineness, growth=0.3 / fineness))
    power = face_power(body, flux_w_mm2=FLUX_W_MM2)
    run = heated(body, TIME_S, power_w=power, start_c=0.0, steps=round(16 * fineness))
    depths_mm = np.concatenate([[0.0], body.grid.depths_mm])
    found_k = np.concatenate([face_rise_k(run, body, flux_w_mm2=FLUX_W_MM2), run.final_c[:, 0]])
    exact_k = half_space_flux_rise_k(depths_mm, TIME_S, heat_flux_w_mm2=FLUX_W_MM2, metal=STEEL)
    return np.abs(found_k - exact_k).max() / exact_k[0]


def element_rise_k(fineness, steps, element):
    """Return the rise down the axis by finite elements, factored once for all steps."""
    from skfem import Basis, FacetBasis, LinearForm, MeshQuad

    from tests.heat_bodies import STEEL
    from tests.library.joint_elements import conduction_form, march, storage_form

    radius, depth = edges_mm(fineness)
    mesh = MeshQuad.init_tensor(radius / 1000, depth / 1000)
    basis = Basis(mesh, element)
    ones = np.ones((mesh.nelements, basis.X.shape[1]))
    stiffness = conduction_form.assemble(basis, value=STEEL.conductivity_w_mk * ones)
    storage = storage_form.assemble(basis, value=1e9 * STEEL.heat_by_volume_j_mm3k * ones)
    face = mesh.facets_satisfying(lambda x: (x[1] < 1e-9) & (x[0] < DISC_MM / 1000), boundaries_only=True)
    load = LinearForm(lambda v, w: v * 2 * np.pi * w.x[0]).assemble(FacetBasis(mesh, element, facets=face))
    rows = basis.probes(np.array([np.full(len(DEPTHS_MM), 1e-9), DEPTHS_MM / 1000]))
    stage = (stiffness, 1e6 * FLUX_W_MM2 * load, TIME_S, steps)
    return march(storage, [stage], start_c=0.0, rows=rows)[1][-1]


def other_volume_rise_k(fineness, steps, first_implicit):
    """Return the rise down the axis by the finite volumes of a general library, Crank-Nicolson.

    The first step may be two implicit halves, which damp the swings that the jump of the flux begins.
    """
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
    storage = TransientTerm(STEEL.heat_by_volume_j_mm3k)
    implicit = storage == DiffusionTerm(k) + source
    centred = storage == DiffusionTerm(k / 2) + ExplicitDiffusionTerm(k / 2) + source
    solver, step_s = LinearLUSolver(), TIME_S / steps
    for _ in range(2 if first_implicit else 0):
        implicit.solve(var=rise, dt=step_s / 2, solver=solver)
    for _ in range(steps - first_implicit):
        centred.solve(var=rise, dt=step_s, solver=solver)
    axis = across < radius[1]
    order = np.argsort(down[axis])
    return np.interp(DEPTHS_MM, down[axis][order], rise.value[axis][order])


def at_equal_error(rise_k, exact_k):
    """Return work, fineness, steps and error of the runs with a small enough error, none where it never is.

    They are the coarsest grid that can do it and the next finer one. More steps must keep the error small, so
    that no error in time only hides one in space.
    """
    able = []
    for fineness in FINENESSES:
        errors = {}
        for steps in reversed(STEPS):
            error = np.abs(rise_k(fineness, steps) - exact_k).max() / exact_k[0]
            if error > WANTED:
                break
            errors[steps] = error
        if errors:
            fewest = min(errors)
            able.append((partial(rise_k, fineness, fewest), fineness, fewest, errors[fewest]))
        if len(able) == 2:
            break
    return able


def timed_in_turn(able):
    """Return for each name the quickest of its runs, with its times in s in rounds that all took part in."""
    names = [name for name in able if able[name]]
    rounds = [
        {name: [times_s(run[0], runs=1)[0] for run in able[name]] for name in names} for _ in range(ROUNDS)
    ]
    found = {}
    for name in names:
        run_s = np.array([each[name] for each in rounds])
        best = np.median(run_s, axis=0).argmin()
        found[name] = (*able[name][best][1:], run_s[:, best])
    return found


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
    runs_ms = [1000 * run for run in times_s(weld, runs=9)]
    result = weld()
    rows, columns = result.cells.part.shape
    print(f"one weld on the riveted joint, {rows} by {columns} cells:")
    print(
        f"  best {min(runs_ms):.0f} ms, median {statistics.median(runs_ms):.0f} ms of {len(runs_ms)} runs "
        f"(target {TARGET_MS} ms), heat balance closed to {result.balance:.1e}"
    )


def print_orders(what, errors):
    """Print errors of runs of which each has half the cells and steps of the one before, and the orders."""
    print(f"{what}, largest error as share of the rise, cells and steps halved twice:")
    orders = np.log2(np.divide(errors[:-1], errors[1:]))
    print("  " + ", ".join(f"{error:.3%}" for error in errors), end="; ")
    print("observed order " + ", ".join(f"{order:.2f}" for order in orders))


def print_ratios(exact_k):
    """Print the run times of this library and of the others at equal error."""
    from skfem import ElementQuad1, ElementQuad2

    ways = {
        "this library": [own_rise_k],
        "finite elements": [partial(element_rise_k, element=each()) for each in (ElementQuad1, ElementQuad2)],
        "finite volumes": [partial(other_volume_rise_k, first_implicit=first) for first in (False, True)],
    }
    print(f"the same disc, each once its error is at most {WANTED:.1%}:")
    able = {
        name: [run for setup in setups for run in at_equal_error(setup, exact_k)]
        for name, setups in ways.items()
    }
    found = timed_in_turn(able)
    for name in ways:
        if name not in found:
            print(f"  {name:<15} did not come down to this error")
            continue
        fineness, steps, error, run_s = found[name]
        print(f"  {name:<15} fineness {fineness:<4g} {steps:>2} steps, error {error:.2%}, ", end="")
        print(f"median {1000 * np.median(run_s):6.1f} ms, best {1000 * run_s.min():6.1f} ms")
    for name in list(found)[1:] if "this library" in found else ():
        ratios = found[name][-1] / found["this library"][-1]
        verdict = "reached" if np.median(ratios) >= TARGET_RATIO else "missed"
        print(f"  {name} take {np.median(ratios):.1f} times as long, in single rounds ", end="")
        print(f"{ratios.min():.1f} to {ratios.max():.1f} (target {TARGET_RATIO}: {verdict})")


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
    own_s = min(times_s(lambda: joint.by_volumes(cells, substances, steps=40), runs=3))
    run = joint.by_volumes(cells, substances, steps=40)
    face = joint.NAMES.index("fusion face")
    others_steps = sum(stage[3] for stage in stages)
    print(
        "riveted joint with melting, same cells, against first-order finite elements solved by Newton steps"
    )
    print(f"(not at equal error; {others_steps} steps there, {len(run[0]) - 1} here):")
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
    disc = [np.abs(own_rise_k(f, 16 * f) - exact_k).max() / exact_k[0] for f in (1, 2, 4)]
    print_orders("even flux on a half-space", [half_space_error(fineness) for fineness in (1, 2, 4)])
    print_orders("disc of even heat on a thick body, down the axis", disc)
    print_ratios(exact_k)
    print_melting_joint()


if __name__ == "__main__":
    main()
