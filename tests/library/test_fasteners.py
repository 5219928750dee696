"""Fasteners: tables that hang together, joints that give at their weakest, counts, play, refusals."""

import numpy as np
import pytest

from secondplate import fasteners
from secondplate.rivet import Sheet

DISTANCES = {"end_distance_mm": 15.0, "edge_distance_mm": 12.0, "width_mm": 25.0}


def joint(fastener, top_mm, second_mm, **changes):
    """Give the joint of two sheets of the usual strength."""
    plates = {"top": Sheet(thickness_mm=top_mm), "second": Sheet(thickness_mm=second_mm)}
    return fasteners.fastener_joint(fastener, **plates, **DISTANCES | changes)


@pytest.mark.parametrize("standard", fasteners.BLIND_RIVETS)
def test_loads_rise_with_the_diameter(standard):
    """A thicker blind rivet bears more, in shear and in tension."""
    rivets = [fasteners.blind_rivet(standard, size) for size in fasteners.blind_rivet_sizes(standard)]
    assert np.all(np.diff([rivet.fastener_shear_n for rivet in rivets]) > 0)
    if rivets[0].fastener_tension_n is not None:
        assert np.all(np.diff([rivet.fastener_tension_n for rivet in rivets]) > 0)


def test_class_h_bears_more_than_class_l_and_its_mandrel_most():
    """ISO 15977: class H above class L; the mandrel breaks above the tension of its rivet."""
    for size in fasteners.blind_rivet_sizes("ISO 15977 H"):
        low, high = (fasteners.blind_rivet(f"ISO 15977 {name}", size) for name in "LH")
        assert low.fastener_shear_n < high.fastener_shear_n
        assert high.fastener_tension_n < fasteners.mandrel_break_n(size)


@pytest.mark.parametrize("fastener", [fasteners.blind_rivet("ISO 15983", 4.8), fasteners.bolt("M6")])
def test_steel_sheet_is_judged_by_codes_for_steel(fastener):
    """Stronger steel bears more in proportion, up to where its code ends; no code for aluminium has a say."""
    aluminium = Sheet(thickness_mm=2.0)
    mild, strong = (
        fasteners.fastener_joint(
            fastener,
            top=Sheet(thickness_mm=1.0, family="steel", tensile_strength_mpa=strength),
            second=aluminium,
            **DISTANCES,
        ).modes.forces_n["bearing of the top plate"]
        for strength in (300.0, 450.0)
    )
    assert strong.low / mild.low == pytest.approx(1.5, rel=1e-12)  # arithmetic only
    assert "1999" not in mild.basis
    assert "aluminium" not in mild.basis


def test_no_code_knows_polymer_sheet():
    """A plate of plastic is refused by one sentence."""
    with pytest.raises(
        ValueError, match="family of the plate must be one of aluminium, cast aluminium, steel"
    ):
        fasteners.fastener_joint(
            fasteners.bolt("M6"),
            top=Sheet(thickness_mm=2.0, family="polymer"),
            second=Sheet(thickness_mm=2.0),
            **DISTANCES,
        )


def test_thin_sheet_gives_before_a_strong_rivet_and_a_weak_rivet_before_thick_sheet():
    """Stainless rivet in 1 mm: the sheet; aluminium rivet in 3 mm: the rivet."""
    thin = joint(fasteners.blind_rivet("ISO 15983", 4.8), 1.0, 1.0)
    thick = joint(fasteners.blind_rivet("ISO 15977 L", 4.8), 3.0, 3.0)
    assert thin.weakest in ("bearing of the top plate", "bearing of the second plate")
    assert thick.weakest == "fastener in shear"
    assert thick.design_strength_n == pytest.approx(1200 / 1.25, rel=1e-12)


def test_narrow_strip_tears_and_the_head_is_counted():
    """A strip hardly wider than the hole tears; pull-through is among the modes by three codes."""
    assert joint(fasteners.bolt("M6"), 2.0, 2.0, width_mm=8.0).weakest.startswith("net section")
    modes = joint(fasteners.blind_rivet("ISO 15979", 4.8), 1.0, 1.5).modes.forces_n
    assert set(modes) == set(fasteners.FASTENER_MODES)
    assert "EN 1999-1-1 punching" in modes["head through the top plate"].basis


@pytest.mark.parametrize(
    "fastener",
    [
        fasteners.blind_rivet("ISO 15973", 4.8),
        fasteners.lock_bolt("steel", 6.4),
        fasteners.bolt("M8", "A2-70"),
    ],
    ids=lambda fastener: fastener.name,
)
def test_a_column_of_joints_is_each_joint(fastener):
    """Arrays of thickness give what each joint gives alone; the design force is the least of all modes."""
    thickness, distances = np.array([0.8, 1.5, 2.5]), {"end_distance_mm": 22.0, "edge_distance_mm": 18.0}
    column = joint(fastener, thickness, 1.2, **distances)
    alone = [joint(fastener, value, 1.2, **distances) for value in thickness.tolist()]
    # The same arithmetic.
    np.testing.assert_allclose(
        column.design_strength_n, [each.design_strength_n for each in alone], rtol=1e-12
    )
    assert column.weakest.tolist() == [each.weakest for each in alone]
    for each in alone:
        assert each.design_strength_n == min(band.low for band in each.modes.forces_n.values())


def test_count_of_a_column_and_of_even_ratios():
    """An even ratio is not rounded up by the last digit; a margin adds."""
    counts = fasteners.equal_strength_count(
        old_strength_n=np.array([0.3, 3000.0, 3001.0]), new_strength_n=np.array([0.1, 1000.0, 1000.0])
    )
    assert counts.tolist() == [3, 3, 4]
    assert fasteners.equal_strength_count(old_strength_n=3000, new_strength_n=1000, required_margin=1.2) == 4


def test_length_holds_the_grip_with_and_without_its_gap():
    """3.9 mm closed fits 8 mm; with a gap of 0.3 mm it needs one whose range holds both."""
    assert fasteners.blind_rivet_length_mm(4.8, closed_grip_mm=3.9) == 8
    assert fasteners.blind_rivet_length_mm(4.8, closed_grip_mm=4.0, gap_mm=0.3) == 10
    with pytest.raises(ValueError, match="got 3.9 mm to 4.2 mm with the gap"):
        fasteners.blind_rivet_length_mm(4.8, closed_grip_mm=3.9, gap_mm=0.3)


def test_every_grip_in_the_table_finds_a_length():
    """The middle of each range gives a length whose range holds it."""
    for diameter in fasteners.GRIP_DIAMETERS_MM:
        for grip in np.arange(3.2, 12, 0.4).tolist():
            length = fasteners.blind_rivet_length_mm(diameter, closed_grip_mm=grip) if grip < 6 else None
            if length is not None:
                low, high = fasteners.grip_range_mm(diameter, rivet_length_mm=length)
                assert low <= grip + 1e-9
                assert grip <= high + 1e-9


def test_loads_share_by_stiffness_and_close_in_order():
    """Loads sum to the force; without play they go by stiffness; fasteners bear in the order of play."""
    stiffness, plays = np.array([10.0, 20.0, 30.0]), np.array([0.2, 0.0, 0.1])
    for force in (0.0, 1.0, 3.0, 100.0):
        assert fasteners.fastener_loads_n(
            force, stiffnesses_n_mm=stiffness, plays_mm=plays
        ).sum() == pytest.approx(force, rel=1e-12)
    even = fasteners.fastener_loads_n(60, stiffnesses_n_mm=stiffness)
    np.testing.assert_allclose(even, stiffness, rtol=1e-12)  # arithmetic only
    first = fasteners.fastener_loads_n(1.0, stiffnesses_n_mm=stiffness, plays_mm=plays)
    np.testing.assert_allclose(first, [0, 1, 0], atol=1e-12)  # arithmetic only


def test_more_shear_planes_are_stiffer_and_a_thin_shank_softer():
    """Two planes give less; a thinner fastener gives more."""
    plates = {"plate_moduli_mpa": (70000, 70000), "fastener_modulus_mpa": 70000}
    once = fasteners.flexibility_mm_n((1.5, 2.0), diameter_mm=4.8, **plates)
    assert fasteners.flexibility_mm_n((1.5, 2.0), diameter_mm=4.8, planes=2, **plates) < once
    assert fasteners.flexibility_mm_n((1.5, 2.0), diameter_mm=4.0, **plates) > once


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: fasteners.blind_rivet("ISO 15983", 6.4),
            "diameter of ISO 15983 must be one of 3, 3.2, 4, 4.8, 5 mm, got 6.4 mm",
        ),
        (lambda: fasteners.blind_rivet("ISO 1", 4.8), "blind rivet must be one of ISO 15977 L"),
        (
            lambda: fasteners.lock_bolt("steel", 5),
            "diameter of steel lock bolt must be one of 4.8, 6.4, 7.9, 9.5 mm, got 5 mm",
        ),
        (lambda: fasteners.bolt("M7"), "size of the bolt must be one of M5, M6, M8, M10, M12, got 'M7'"),
        (
            lambda: fasteners.grip_range_mm(4.8, rivet_length_mm=7),
            "length of a 4.8 mm rivet must be one of 6, 8, 10, 12, 16, 20, 25, 30 mm, got 7 mm",
        ),
        (
            lambda: fasteners.blind_rivet_length_mm(4.0, closed_grip_mm=0.6),
            r"grip must lie in a range of ISO 15981 for 4 mm \(1 mm to 21 mm\), got 0.6 mm",
        ),
        (
            lambda: fasteners.blind_rivet_length_mm(4.8, closed_grip_mm=3.9, gap_mm=0.7),
            r"grip must lie in the range of one length of ISO 15981 for 4.8 mm "
            r"\(8 mm long: 2.5 mm to 4 mm\), got 3.9 mm to 4.6 mm with the gap",
        ),
        (lambda: fasteners.grip_mm(), "sheets must be one at least, got none"),
        (
            lambda: joint(fasteners.blind_rivet("ISO 15979", 4.8), 1.5, 1.5, end_distance_mm=5.5),
            r"end distance must be at least 6 mm \(minimum of EN 1999-1-1 Table 8.2, 1.2 d0\), got 5.5 mm",
        ),
        (
            lambda: joint(fasteners.blind_rivet("ISO 15979", 4.8), 1.5, 1.5, width_mm=5.0),
            "strip width must be above 5 mm, got 5 mm",
        ),
        (
            lambda: fasteners.equal_strength_count(
                old_strength_n=3000, new_strength_n=900, old_fasteners=2.5
            ),
            "number of old fasteners must be a whole number, got 2.5",
        ),
        (
            lambda: fasteners.fastener_loads_n(1, stiffnesses_n_mm=[0]),
            "stiffness must be above 0 N/mm, got 0",
        ),
    ],
)
def test_refusals(call, sentence):
    """One sentence each that names rule and value."""
    with pytest.raises(ValueError, match=sentence):
        call()
