"""Flanges with old sites and six proposed places, drawn by number, and which rule each place breaks.

No distance lies nearer to its limit than 1.5 mm, so that an eye can decide it on a scale.
"""

from functools import cache

import numpy as np

from grading.catalogues import worked_out
from grading.exercises.second_plate.edges import FASTENERS
from grading.variants import Draw
from secondplate.fastener_layout import Flange, OldSite, hole_rules, layout_faults

FLANGES = 120  # drawn flanges of the catalogue
OLD_SITES = 4
ROOT_ROOM_MM = 9.0  # what the setting tool needs beside the root


def _spot(draw, kind, gap_mm, flange, rules, site_mm, name):
    """Return the places that one gap between old sites gets, so that they should keep or break one rule."""
    low_mm, high_mm = gap_mm
    middle = round(low_mm + high_mm) / 2
    y = draw.pick(f"{name} y", (12.5, 13.0, 14.0, 14.5))
    if kind == "each_other":
        half = draw.pick(f"{name} half", (3.5, 4.0))
        return [(middle - half, y), (middle + half, y + draw.pick(f"{name} step", (-1.0, 0.0, 1.0)))]
    if kind == "edge":
        down = draw.pick(f"{name} down", (1.5, 2.0))
        free = flange.flange_width_mm - np.floor(2 * (rules.to_edges_mm - down)) / 2
        return [(middle, draw.pick(f"{name} side", (free, ROOT_ROOM_MM - down)))]
    if kind == "old_site":
        # Beside the site at the lower end of the gap, or at its upper end where there is none below.
        off = draw.pick(f"{name} off", (8.0, 9.0, np.floor(2 * (site_mm - 2.7)) / 2))
        return [(low_mm + off if low_mm > 0 else high_mm - off, draw.pick(f"{name} up", (11.0, 15.5)))]
    return [(middle + draw.pick(f"{name} aside", (-4.5, 0.0, 4.5)), y)]


@cache
def drawn_flange(number):
    """Return one flange of the catalogue: the flange, its rules, old sites and proposed places."""
    draw = Draw(f"drawn flange {number}".encode())
    rules = hole_rules(FASTENERS[rivets(number)].hole_most_mm, level="minimum")
    affected_mm = draw.pick("affected", (6.0, 7.0))
    site_mm = rules.site_distance_mm(affected_mm)
    first_mm = np.ceil(rules.to_ends_mm + site_mm + 12)
    pitch_mm = 2 * np.ceil(site_mm + 6.5)
    places = [first_mm + pitch_mm * row for row in range(OLD_SITES)]
    flange = Flange(
        flange_length_mm=float(places[-1] + first_mm),
        flange_width_mm=float(draw.pick("width", (24, 25, 26))),
        thickness_mm=1.5,
        root_clearance_mm=ROOT_ROOM_MM,
    )
    sites = [OldSite(x_mm=float(x), y_mm=13.0, affected_diameter_mm=affected_mm) for x in places]
    # The free length of each gap: ends and old sites keep it clear by as much as their rule asks.
    edges = [rules.to_ends_mm - site_mm, *places, flange.flange_length_mm - rules.to_ends_mm + site_mm]
    extra = draw.pick("extra", ("allowed", "edge", "old_site"))
    kinds = draw.shuffle("kinds", ["each_other", "allowed", "edge", "old_site", extra])
    spots = []
    for row, kind in enumerate(kinds):
        spots += _spot(draw, kind, (edges[row], edges[row + 1]), flange, rules, site_mm, f"gap {row}")
    x, y = zip(*spots, strict=True)
    return flange, rules, sites, [float(place) for place in x], [float(place) for place in y]


def rivets(number):
    """Return the fastener that a flange of the catalogue gets."""
    return ("blind rivets of 4 mm", "blind rivets of 4.8 mm")[number % 2]


@worked_out
def verdicts(number):
    """Return for each proposed place of a flange which rule it breaks, alone or with another."""
    flange, rules, sites, x, y = drawn_flange(number)

    def broken(old, *rows):
        places = {"x_mm": [x[row] for row in rows], "y_mm": [y[row] for row in rows]}
        return bool(layout_faults(flange, sites=old, rules=rules, **places))

    inside = [row for row in range(len(x)) if not broken((), row)]

    def verdict(row):
        if row not in inside:
            return "edge"
        if broken(sites, row):
            return "old_site"
        return "each_other" if any(broken((), row, other) for other in inside if other != row) else "allowed"

    return tuple(verdict(row) for row in range(len(x)))
