"""The riveted joint by another method: finite elements of an open library against the finite volumes.

Same cells, same properties, same contacts; elements of second order, another time scheme, contact layers
between doubled nodes. Every contact between parts is finite here: elements with shared nodes would bridge the
contact beside the corners where adhesive, steel and aluminium meet, which the model does not.
"""

import numpy as np
import pytest
from skfem import ElementQuad1, ElementQuad2

from secondplate.heat.conduction import Body, Stage, conduct
from secondplate.heat.constant_metal import ConstantMetal
from secondplate.heat.grid import Grid
from secondplate.heat.joint import PARTS, default_joint
from secondplate.heat.joint_body import JointCells, contact_w_m2k, joint_cells, places, weights_at
from secondplate.heat.substances import constant, filler, metal
from tests.library.joint_elements import JointElements, MeltingJoint, march

JOINT = default_joint()
FLUX_W_MM2 = 238.5
CONTACT_W_M2K = 6000.0
ARC_S = 0.020
NAMES = (
    "stud above the flange",
    "fusion face",
    "web over the bore",
    "rivet shank",
    "rivet tail",
    "top plate at the head",
    "second plate under the rivet",
    "button",
    "bond line 8 mm out",
)


def halved(edges):
    """Edges with the middle of each cell added."""
    return np.sort(np.concatenate([edges, (edges[1:] + edges[:-1]) / 2]))


def finer(cells):
    """The same parts, stairs and all, on cells of half the length."""
    grid = Grid(
        radius_edges_mm=halved(cells.grid.radius_edges_mm), height_edges_mm=halved(cells.grid.height_edges_mm)
    )
    part = np.repeat(np.repeat(cells.part, 2, axis=0), 2, axis=1)
    return JointCells(joint=cells.joint, grid=grid, part=part)


def contacts(cells):
    """Contacts while the arc burns and after it: finite between all parts, the faces apart, then one."""
    outwards, down = contact_w_m2k(
        part=cells.part, contact_rivet_plates_w_m2k=CONTACT_W_M2K, contact_plates_w_m2k=CONTACT_W_M2K
    )
    outwards = np.where((np.diff(cells.part, axis=1) != 0) & (outwards > 0), CONTACT_W_M2K, outwards)
    down = np.where((np.diff(cells.part, axis=0) != 0) & (down > 0), CONTACT_W_M2K, down)
    apart, joined = down.copy(), down.copy()
    apart[cells.face_row - 1] = 0.0
    joined[cells.face_row - 1, : cells.face_columns] = np.inf
    return outwards, apart, joined


def by_volumes(cells, substances, *, steps):
    """Times and temperatures at the named places by the library's model."""
    outwards, apart, joined = contacts(cells)
    body = Body(
        grid=cells.grid,
        substances=substances,
        where=cells.part,
        radial_contact_w_m2k=outwards,
        height_contact_w_m2k=joined,
    )
    power, columns = np.zeros(cells.part.shape), slice(0, cells.face_columns)
    power[cells.face_row - 1, columns] = FLUX_W_MM2 * cells.grid.ring_areas_mm2[columns]
    power[cells.face_row, columns] = power[cells.face_row - 1, columns]
    arc = Stage(duration_s=ARC_S, steps=steps, power_w=power, height_contact_w_m2k=apart)
    found = places(JOINT)
    keep = {name: weights_at(cells, *found[name]) for name in NAMES}
    run = conduct(body, [arc, Stage(duration_s=2.0, steps=4 * steps, growth=1.03)], keep=keep)
    return run.times_s, np.array([run.traces_c[name] for name in NAMES])


def elements_of(cells, element, seen_on):
    """Elements on the cells, the matrix that joins the weld faces, the load, and the places.

    The places are the middles of the cells ``seen_on``, where the volumes have their temperatures.
    """
    outwards, apart, _ = contacts(cells)
    elements = JointElements(cells=cells, outwards=outwards, down=apart, element=element)
    found = places(JOINT)
    rows = np.array([elements.at_centres(weights_at(seen_on, *found[name]), seen_on.grid) for name in NAMES])
    load = elements.face_load(cells.face_row, cells.face_columns, FLUX_W_MM2)
    return elements, elements.touching(cells.face_row, cells.face_columns), load, rows


def cooling(steps):
    """Lengths and steps of the stages of the comparison after the arc, together 2 s and a little more."""
    return [(0.004 * 2**number, steps) for number in range(9)]


def differences(elements, volumes):
    """Difference of the peaks at each place, as share of the rise there."""
    (_, found), (_, other) = elements, volumes
    return (other.max(axis=1) - found.max(axis=0)) / (found.max(axis=0) - 20.0)


@pytest.mark.slow
def test_constant_properties_agree_within_one_percent():
    """Nothing melts, one conductivity and heat capacity a part: all peaks agree within 1 % of their rise.

    The volumes are eight times finer than half the usual grid: in the tail, whose wall is three cells thick
    on the usual grid, they come from 1.4 % over 1.1 % to 0.6 % when the cells are halved twice.
    """
    conductivities = [22.0, 26.0, 170.0, 0.3, 170.0, 170.0, 0.1]
    capacities = [4.6e-3, 4.5e-3, 2.6e-3, 1.7e-3, 2.6e-3, 2.6e-3, 1e-6]
    cells = finer(joint_cells(JOINT, fineness=0.5))
    fine = finer(finer(cells))
    elements, touching, load, rows = elements_of(cells, ElementQuad2(), fine)
    conduction = elements.conduction(conductivities)
    stages = [(conduction, load, ARC_S, 40)]
    stages += [
        (conduction + touching, 0 * load, length, 8 if length < 0.1 else 12) for length, _ in cooling(8)
    ]
    found = march(elements.storage(capacities), stages, start_c=20.0, rows=rows)
    substances = tuple(
        constant(
            name,
            metal=ConstantMetal(conductivity_w_mk=k, density_kg_m3=1000, heat_capacity_j_kgk=1e6 * c),
        )
        for name, k, c in zip(PARTS, conductivities, capacities, strict=True)
    )
    peaks = differences(found, by_volumes(fine, substances, steps=30))
    assert np.abs(peaks).max() < 0.01


@pytest.mark.slow
def test_melting_agrees_within_one_percent():
    """With melting and properties over temperature the peaks agree within 1 % of their rise.

    Down the thin wall of the rivet both are still coarse here: there they agree within 3 %.
    """
    steel = [
        metal(name, liquid_conductivity_w_mk=100.0) for name in ("austenitic stainless", "boron rivet steel")
    ]
    aluminium, glue, air = metal("6xxx aluminium"), filler("adhesive"), filler("air")
    substances = (*steel, aluminium, glue, aluminium, aluminium, air)
    cells = joint_cells(JOINT, fineness=0.7)
    elements, touching, load, rows = elements_of(finer(cells), ElementQuad1(), finer(cells))
    melting = MeltingJoint(
        elements,
        contents=[(each.nodes_c, each.heat_content_j_mm3) for each in substances],
        conductivities=[(each.nodes_c, each.conductivity_w_mk) for each in substances],
    )
    stages = [(0 * touching, load, ARC_S, 50), *((touching, 0 * load, *stage) for stage in cooling(5))]
    found = melting.march(stages, start_c=20.0, rows=rows)
    peaks = dict(zip(NAMES, differences(found, by_volumes(finer(cells), substances, steps=60)), strict=True))
    down_the_wall = {name: abs(peaks.pop(name)) for name in ("rivet shank", "rivet tail", "button")}
    assert max(map(abs, peaks.values())) < 0.01
    assert max(down_the_wall.values()) < 0.03
