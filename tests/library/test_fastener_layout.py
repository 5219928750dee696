"""Layouts of fasteners: each returned one obeys every rule, each refused one is impossible, wishes hold."""

import re

import numpy as np
import pytest

from secondplate.fastener_layout import (
    Flange,
    LayoutRules,
    OldSite,
    die_rules,
    hole_rules,
    layout_faults,
    most_fasteners,
    place_fasteners,
)

LEVELS = ("regular", "minimum")
# Factors of d0 written down again, apart from the library: e1, e2, p1, p2.
FACTORS = {"regular": (2.0, 1.5, 2.5, 3.0), "minimum": (1.2, 1.2, 2.2, 2.4)}
# A place is a sum of decimals; a thousandth of a micrometre is rounding.
ROUNDING_MM = 1e-6


def both(hole_mm, load_direction="across the flange"):
    """Give the regular and the minimum rules."""
    return tuple(hole_rules(hole_mm, level=level, load_direction=load_direction) for level in LEVELS)


def random_flange(rng, *, longest=450, widest=45, sites=15):
    """Invent a flange with old sites, most of them on it."""
    length, width = rng.uniform(30, longest), rng.uniform(10, widest)
    flange = Flange(
        flange_length_mm=length,
        flange_width_mm=width,
        thickness_mm=rng.uniform(0.8, 3),
        root_clearance_mm=rng.choice([0.0, 9.0]),
    )
    places = rng.uniform([-5, -5, 2], [length + 5, width + 5, 12], (rng.integers(0, sites), 3))
    return flange, [OldSite(x_mm=x, y_mm=y, affected_diameter_mm=d) for x, y, d in places.tolist()]


def obeys(layout, flange, sites, hole_mm, load_direction):
    """Check a layout against the factors above, written apart from the library's own check."""
    e1, e2, p1, p2 = (hole_mm * factor for factor in FACTORS[layout.rules.name.split()[0]])
    along = load_direction.startswith("along")
    to_end, to_edge, pitch, rows = (e1, e2, p1, p2) if along else (e2, e1, p2, p1)
    x, y = layout.x_mm, layout.y_mm
    inside = min((x - to_end).min(), (flange.flange_length_mm - to_end - x).min()) >= -ROUNDING_MM
    inside &= (y - max(to_edge, flange.root_clearance_mm)).min() >= -ROUNDING_MM
    inside &= (flange.flange_width_mm - to_edge - y).min() >= -ROUNDING_MM
    clear = all(
        abs(complex(a - site.x_mm, b - site.y_mm))
        >= p2 * (1 + site.affected_diameter_mm / hole_mm) / 2 - ROUNDING_MM
        for site in sites
        for a, b in zip(x.tolist(), y.tolist(), strict=True)
    )
    dx, dy = np.abs(x[:, None] - x) + pitch * np.eye(x.size), np.abs(y[:, None] - y)
    return inside and clear and bool(((dx >= pitch - ROUNDING_MM) | (dy >= rows - ROUNDING_MM)).all())


def test_a_thousand_random_flanges():
    """Every returned layout has the asked count and obeys every rule by separate code."""
    rng = np.random.default_rng(20)
    refusals, placed = [], 0
    for _ in range(1000):
        flange, sites = random_flange(rng)
        hole, count = float(rng.choice([3.4, 4.2, 5.0, 6.6])), int(rng.integers(1, 16))
        load = str(rng.choice(["across the flange", "along the flange"]))
        try:
            layout = place_fasteners(flange, fasteners=count, sites=sites, rules=both(hole, load))
        except ValueError as refusal:
            refusals.append(str(refusal))
            continue
        placed += 1
        assert layout.x_mm.size == layout.y_mm.size == count
        assert obeys(layout, flange, sites, hole, load)
    sentence = re.compile(r".* must be at (least|most) .* by minimum of EN 1999-1-1 Table 8.2\), got .*")
    assert all(sentence.fullmatch(refusal) for refusal in refusals)
    assert 500 < placed < 950


def compatible(flange, sites, rules):
    """List every clear mark of a small flange and which two of them may both be used, mark by mark."""
    low, high = max(rules.to_edges_mm, flange.root_clearance_mm), flange.flange_width_mm - rules.to_edges_mm
    steps = low + 0.5 * np.arange(400)
    ys = {*steps[steps <= high + 1e-9].tolist(), (low + high) / 2} if high >= low else set()
    steps = rules.to_ends_mm + 0.5 * np.arange(400)
    xs = steps[steps <= flange.flange_length_mm - rules.to_ends_mm + 1e-9]
    marks = [
        (x, y)
        for x in xs.tolist()
        for y in sorted(ys)
        if all(
            np.hypot(x - site.x_mm, y - site.y_mm) >= rules.site_distance_mm(site.affected_diameter_mm) - 1e-9
            for site in sites
        )
    ]
    x, y = np.array(marks).reshape(-1, 2).T
    apart = np.abs(x[:, None] - x) >= rules.pitch_mm - 1e-9
    return apart | (np.abs(y[:, None] - y) >= rules.between_rows_mm - 1e-9)


def most_by_search(pairs):
    """Return the largest set up to three that is compatible, by trying all marks, pairs and triples."""
    if not pairs.size:
        return 0
    if not pairs.any():
        return 1
    shared = pairs.astype(np.float32) @ pairs.astype(np.float32)
    return 3 if (pairs & (shared > 0)).any() else 2


def test_refused_layouts_are_impossible():
    """On small flanges every mark, pair and triple is tried: what can be placed is placed, no more."""
    rng = np.random.default_rng(21)
    rules = hole_rules(3.4, level="minimum")
    seen = set()
    for _ in range(100):
        flange, sites = random_flange(rng, longest=36, widest=18, sites=4)
        found = most_by_search(compatible(flange, sites, rules))
        held = min(most_fasteners(flange, sites=sites, rules=rules), 3)
        # Three marks in a wide flange may stand in a pattern that is not searched; two and fewer may not.
        narrow = flange.flange_width_mm - 2 * rules.to_edges_mm < rules.between_rows_mm
        assert held <= found
        assert held == found or (found == 3 and not narrow)
        seen.add((held, found, narrow))
        if held < 3:
            with pytest.raises(ValueError, match="must be at"):
                place_fasteners(flange, fasteners=held + 1, sites=sites, rules=(rules,))
    assert {0, 1, 2, 3} == {held for held, _, _ in seen}
    assert {True, False} == {narrow for _, _, narrow in seen}


FLANGE = Flange(flange_length_mm=150, flange_width_mm=24, thickness_mm=1.5)


def test_regular_comes_before_minimum():
    """Where the regular pitch fits it is kept, where it does not the minimum is used."""
    short = Flange(flange_length_mm=57, flange_width_mm=24, thickness_mm=1.5)
    layouts = [place_fasteners(flange, fasteners=4, sites=(), rules=both(5.0)) for flange in (FLANGE, short)]
    assert [layout.rules.name.split()[0] for layout in layouts] == ["regular", "minimum"]


def test_open_flange_gets_an_even_row_in_the_middle():
    """Without old sites the row is even, central and on the middle line, no wider than the maximum pitch."""
    layout = place_fasteners(FLANGE, fasteners=5, sites=(), rules=both(5.0))
    assert layout.pattern == "one row"
    np.testing.assert_allclose(layout.pitches_mm, 21, atol=1e-9)  # 14 t, exact on marks
    np.testing.assert_allclose(layout.x_mm + layout.x_mm[::-1], 150, atol=0.5)  # one mark
    np.testing.assert_allclose(layout.y_mm, (10 + 14) / 2, atol=1e-9)  # exact
    assert layout.within_maximum


def test_far_places_exceed_the_maximum_and_say_so():
    """Two fasteners either side of a large old site stand wider than the maximum for compression."""
    sites = [OldSite(x_mm=75, y_mm=12, affected_diameter_mm=35)]
    narrow = Flange(flange_length_mm=150, flange_width_mm=24, thickness_mm=0.8)
    assert not place_fasteners(narrow, fasteners=2, sites=sites, rules=both(5.0)).within_maximum


def test_old_row_is_passed_by():
    """Three old sites on the middle line, new fasteners between and beside them."""
    sites = [OldSite(x_mm=x, y_mm=12, affected_diameter_mm=6) for x in (30, 75, 120)]
    layout = place_fasteners(FLANGE, fasteners=4, sites=sites, rules=both(5.0))
    off = np.hypot(layout.x_mm[:, None] - [30, 75, 120], layout.y_mm[:, None] - 12)
    assert off.min() >= 3.0 * (5 + 6) / 2 - ROUNDING_MM


def test_two_rows_and_stepped_rows():
    """A wide short flange takes two rows; old sites high and low make the row step aside."""
    wide = Flange(flange_length_mm=40, flange_width_mm=40, thickness_mm=2)
    assert place_fasteners(wide, fasteners=4, sites=(), rules=both(5.0)).pattern == "two rows"
    sites = [OldSite(x_mm=x, y_mm=y, affected_diameter_mm=6) for x, y in ((6, 2), (35, 20))]
    bent = Flange(flange_length_mm=40, flange_width_mm=22, thickness_mm=2)
    layout = place_fasteners(bent, fasteners=3, sites=sites, rules=(hole_rules(5.0, level="minimum"),))
    assert layout.pattern == "stepped row"
    assert np.unique(layout.y_mm).size > 1


def test_same_flange_same_layout():
    """Nothing is drawn by lot."""
    rng = np.random.default_rng(22)
    flange, sites = random_flange(rng)
    first, second = (place_fasteners(flange, fasteners=2, sites=sites, rules=both(4.2)) for _ in range(2))
    assert first.x_mm.tobytes() == second.x_mm.tobytes()
    assert first.y_mm.tobytes() == second.y_mm.tobytes()


def test_load_turns_the_rules():
    """Across the flange its edges take the end distance, along it they take the edge distance."""
    across, along = (
        hole_rules(10, load_direction=name) for name in ("across the flange", "along the flange")
    )
    turned = [(r.to_ends_mm, r.to_edges_mm, r.pitch_mm, r.between_rows_mm) for r in (across, along)]
    np.testing.assert_allclose(turned, [(15, 20, 30, 25), (20, 15, 25, 30)], rtol=1e-12)  # arithmetic only


def test_room_for_the_die():
    """New self-piercing rivets keep half a die and 2 mm from edges and half an old button more from it."""
    rules = die_rules(9)
    assert (rules.to_ends_mm, rules.to_edges_mm, rules.pitch_mm) == (6.5, 6.5, 11)
    layout = place_fasteners(
        FLANGE, fasteners=3, sites=[OldSite(x_mm=75, y_mm=12, affected_diameter_mm=10)], rules=(rules,)
    )
    assert np.hypot(layout.x_mm - 75, layout.y_mm - 12).min() >= 11.5 - ROUNDING_MM


@pytest.mark.parametrize(
    ("x", "y", "words"),
    [
        ([5.0], [12.0], "distance to the left end of fastener 1 must be at least 6 mm"),
        ([75.0, 146.0], [12.0, 12.0], "distance to the right end of fastener 2 must be at least 6 mm"),
        ([40.0], [5.0], "distance to the root of fastener 1 must be at least 6 mm"),
        ([40.0], [19.0], "distance to the free edge of fastener 1 must be at least 6 mm"),
        ([80.0], [12.0], "distance to the old site at x 75 mm of fastener 1 must be at least 13.2 mm"),
        ([30.0, 40.0], [12.0, 12.0], "spacing to fastener 2 of fastener 1 must be at least 12 mm"),
    ],
)
def test_each_broken_rule_is_named(x, y, words):
    """One sentence a fault, with the rule and both values, and no other fault."""
    sites = [OldSite(x_mm=75, y_mm=12, affected_diameter_mm=6)] if x == [80.0] else []
    (fault,) = layout_faults(FLANGE, sites=sites, rules=hole_rules(5.0, level="minimum"), x_mm=x, y_mm=y)
    assert fault.startswith(words)
    assert "(minimum of EN 1999-1-1 Table 8.2), got" in fault


@pytest.mark.parametrize(
    ("changes", "count", "sites", "sentence"),
    [
        ({"flange_width_mm": 11}, 1, (), "flange width must be at least 12 mm (edges by"),
        (
            {"flange_width_mm": 14, "root_clearance_mm": 9},
            1,
            (),
            "flange width must be at least 15 mm (root clearance and edge by",
        ),
        ({"flange_length_mm": 11}, 1, (), "flange length must be at least 12 mm (ends by"),
        (
            {"flange_width_mm": 16},
            13,
            (),
            "number of fasteners must be at most 12 on this flange (pitch of 12 mm",
        ),
        (
            {"flange_width_mm": 16},
            12,
            [OldSite(x_mm=75, y_mm=8, affected_diameter_mm=10)],
            "number of fasteners must be at most 10 clear of the old sites (distance of 18 mm and more",
        ),
    ],
)
def test_no_layout_names_the_rule(changes, count, sites, sentence):
    """Width, root, length, pitch and old sites each have their sentence with the value."""
    flange = Flange(**{"flange_length_mm": 150, "flange_width_mm": 24, "thickness_mm": 1.5} | changes)
    rules = (hole_rules(5.0, level="minimum"),)
    with pytest.raises(ValueError, match=re.escape(sentence)):
        place_fasteners(flange, fasteners=count, sites=sites, rules=rules)


def test_refusals_of_the_records():
    """Sizes outside the range, half a fastener, no rules and places that do not pair."""
    with pytest.raises(ValueError, match="flange width must be between 5 mm and 200 mm, got 300 mm"):
        Flange(flange_length_mm=100, flange_width_mm=300, thickness_mm=1)
    with pytest.raises(ValueError, match="affected diameter must be between 0 mm and 60 mm, got 70 mm"):
        OldSite(x_mm=0, y_mm=0, affected_diameter_mm=70)
    with pytest.raises(ValueError, match="number of fasteners must be a whole number, got 2.5"):
        place_fasteners(FLANGE, fasteners=2.5, sites=(), rules=both(5.0))
    with pytest.raises(ValueError, match="rules must be one at least, got none"):
        place_fasteners(FLANGE, fasteners=2, sites=(), rules=())
    with pytest.raises(ValueError, match="places along must be as many as places across, got 2 and 1"):
        layout_faults(FLANGE, sites=(), rules=die_rules(9), x_mm=[20, 40], y_mm=[12])
    with pytest.raises(ValueError, match="pitch must be above 0 mm, got 0 mm"):
        LayoutRules(
            name="none",
            to_ends_mm=1,
            to_edges_mm=1,
            pitch_mm=0,
            between_rows_mm=1,
            site_share=0,
            site_offset_mm=0,
        )
