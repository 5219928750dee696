"""Calls of the picture of a flange, for the tables of ``cases``."""

import drawings
from secondplate.fastener_layout import Flange, OldSite, hole_rules, place_fasteners

FLANGE = Flange(flange_length_mm=180, flange_width_mm=26, thickness_mm=1.5)
SITES = [OldSite(x_mm=x, y_mm=12, affected_diameter_mm=7) for x in (30, 70, 110, 150)]
MINIMUM = hole_rules(5.0, level="minimum")
LAYOUT = place_fasteners(FLANGE, fasteners=6, sites=SITES, rules=(MINIMUM,))
PLACED = {"flange": FLANGE, "hole_diameter_mm": 5.0, "x_mm": LAYOUT.x_mm, "y_mm": LAYOUT.y_mm}
PROPOSED = {"flange": FLANGE, "hole_diameter_mm": 5.0, "x_mm": [10.0, 19.0, 90.0], "y_mm": [20.0, 18.0, 5.0]}

USUAL = {
    "flange_layout": (
        drawings.flange_layout,
        {**PLACED, "sites": SITES, "rules": MINIMUM},
        (
            "180 mm long and 26 mm wide",
            "4 old sites, crossed: 30 and 12 mm",
            "6 new fasteners in holes of 5 mm",
            "6 mm to the ends",
            "pitch is at least 12 mm",
        ),
    ),
    "flange_layout with one fastener": (
        drawings.flange_layout,
        {"flange": FLANGE, "hole_diameter_mm": 4.9, "x_mm": [90.0], "y_mm": [13.0]},
        ("1 new fastener in holes of 4.9 mm: 90 and 13 mm",),
    ),
    "flange_proposals": (
        drawings.flange_proposals,
        {**PROPOSED, "sites": SITES},
        (
            "180 mm long and 26 mm wide",
            "4 old sites, crossed: 7 mm wide, 30 mm from the left end and 12 mm from the root",
            "A is 10 mm from the left end, 170 mm from the right end, 20 mm from the root and 6 mm from",
            # 20 along and 8 across: 21.5 (math.hypot); B stands 9 mm further along the flange.
            "21.5 mm from the nearest old site, and 9 mm along the flange from B",
        ),
    ),
    "flange_proposals with one place": (
        drawings.flange_proposals,
        {"flange": FLANGE, "hole_diameter_mm": 5.0, "x_mm": [90.0], "y_mm": [13.0]},
        ("1 proposed fastener in holes of 5 mm", "13 mm from the free edge."),
    ),
}
EXTREMES = {
    "crowded narrow flange": (
        drawings.flange_layout,
        {
            "flange": Flange(flange_length_mm=400, flange_width_mm=8, thickness_mm=1),
            "hole_diameter_mm": 3,
            "sites": [OldSite(x_mm=8 * n + 4, y_mm=4, affected_diameter_mm=3) for n in range(50)],
            "x_mm": [8.0 * n for n in range(51)],
            "y_mm": [0.0, 8.0, 4.0] * 17,
        },
    ),
    "short wide flange with its root kept free": (
        drawings.flange_layout,
        {
            "flange": Flange(flange_length_mm=20, flange_width_mm=80, thickness_mm=1, root_clearance_mm=12),
            "hole_diameter_mm": 6.6,
            "x_mm": [10.0, 10.0, 10.5],
            "y_mm": [13.0, 30.0, 31.0],
            "rules": hole_rules(6.6),
        },
    ),
    "many proposals on a narrow flange": (
        drawings.flange_proposals,
        {
            "flange": Flange(flange_length_mm=400, flange_width_mm=10, thickness_mm=1),
            "hole_diameter_mm": 5,
            "x_mm": [15.0 * n for n in range(1, 27)],
            "y_mm": [5.0] * 26,
        },
    ),
    "one proposal on a short wide flange": (
        drawings.flange_proposals,
        {
            "flange": Flange(flange_length_mm=20.5, flange_width_mm=80, thickness_mm=1),
            "hole_diameter_mm": 6.6,
            "x_mm": [10.0],
            "y_mm": [75.0],
            "sites": [OldSite(x_mm=10, y_mm=40, affected_diameter_mm=0)],
        },
    ),
    "bare flange": (drawings.flange_layout, {"flange": FLANGE, "hole_diameter_mm": 5}),
}
REFUSED = (
    (
        drawings.flange_layout,
        {**PLACED, "flange": Flange(flange_length_mm=500, flange_width_mm=26, thickness_mm=1.5)},
        "flange length must be between 20 mm and 400 mm, got 500 mm",
    ),
    (
        drawings.flange_layout,
        {**PLACED, "hole_diameter_mm": 1},
        "hole diameter must be between 2 mm and 15 mm, got 1 mm",
    ),
    (
        drawings.flange_layout,
        {**PLACED, "x_mm": [200.0], "y_mm": [10.0]},
        "place of new fasteners along the flange must be between 0 mm and 180 mm, got 200 mm",
    ),
    (
        drawings.flange_layout,
        {**PLACED, "x_mm": [20.0]},
        "places of new fasteners along must be as many as across, got 1 and 6",
    ),
    (
        drawings.flange_proposals,
        {**PROPOSED, "x_mm": [], "y_mm": []},
        "proposed fasteners must be 1 to 26, got 0",
    ),
    (
        drawings.flange_proposals,
        {**PROPOSED, "y_mm": [20.0, 27.0, 5.0]},
        "place of proposed fasteners across the flange must be between 0 mm and 26 mm, got 27 mm",
    ),
)
