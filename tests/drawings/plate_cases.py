"""Calls of the pictures about the second plate, for the tables of ``cases``."""

import drawings
from secondplate import plate

BUTTON = {"button_diameter_mm": 9.0, "button_depth_mm": 1.1}
PULLED = {"second_plate_mm": 1.8, "remaining_thickness_mm": 0.5, "tail_diameter_mm": 7.0, **BUTTON}
LEFT = [
    plate.after_pulling(**PULLED),
    plate.after_pulling(torn=True, **PULLED),
    plate.after_drilling(metal_mm=1.5, tip_depth_mm=1.1, drill_diameter_mm=5, **BUTTON),
    plate.after_drilling(metal_mm=1.5, tip_depth_mm=2.0, drill_diameter_mm=5, **BUTTON),
    plate.after_punching(second_plate_mm=1.8, button_diameter_mm=9),
]
LAP = {
    "line_load_n_mm": 100,
    "overlap_mm": 20,
    "stiffnesses_n_mm": (105000, 105000),
    "adhesive_modulus_mpa": 600,
    "adhesive_mm": 0.3,
}
DOUBT = {"standard_uncertainty_mm": 0.0135, "least_mm": 0.40}

USUAL = {
    "plates_left": (
        drawings.plates_left,
        {"plates": LEFT, "second_plate_mm": 1.8},
        (
            "pulled, skin whole: tight, 0.5 mm left",
            "pulled, skin torn: open, 7 mm",
            # 1.5 mm of metal less 1.1 mm of tip; 2 x 0.5 x tan 59 = 1.66 mm.
            "drilled, dimple: tight, 0.4 mm left",
            "drilled, hole: open, 1.66 mm",
            "punched, button lost: open, 9 mm",
        ),
    ),
    "reading_chart": (
        drawings.reading_chart,
        {"reading_mm": 0.41, **DOUBT},
        # One-sided 95 %: 1.645 x 0.0135 = 0.022 mm.
        ("reading of 0.41 mm", "Between 0.378 and 0.422 mm", "Verdict: not decided", "77 %"),
    ),
    "bond_shear": (drawings.bond_shear, LAP, ("overlap of 20 mm", "mean 5 MPa")),
}

EXTREMES = {
    "one plate": (drawings.plates_left, {"plates": LEFT[4:], "second_plate_mm": 1.8}),
    "thick plate, hardly touched": (
        drawings.plates_left,
        {
            "plates": [plate.after_drilling(metal_mm=3.5, tip_depth_mm=0.0, drill_diameter_mm=3, **BUTTON)],
            "second_plate_mm": 3.5,
        },
    ),
    "reading far above": (drawings.reading_chart, {"reading_mm": 1.0, **DOUBT}),
    "reading far below": (drawings.reading_chart, {"reading_mm": 0.1, **DOUBT}),
    "reading on the limit": (drawings.reading_chart, {"reading_mm": 0.4, **DOUBT}),
    "soft glue": (drawings.bond_shear, {**LAP, "adhesive_modulus_mpa": 1, "adhesive_mm": 2}),
    "long stiff glue, unlike plates": (
        drawings.bond_shear,
        {**LAP, "overlap_mm": 100, "stiffnesses_n_mm": (50000, 400000), "adhesive_modulus_mpa": 2000},
    ),
}

REFUSED = (
    (drawings.plates_left, {"plates": [], "second_plate_mm": 1.8}, "plates must be 1 to 5, got 0"),
    (
        drawings.reading_chart,
        {"reading_mm": 0.4, "standard_uncertainty_mm": 0, "least_mm": 0.4},
        "standard uncertainty must be above 0 mm, got 0 mm",
    ),
    (drawings.bond_shear, {**LAP, "overlap_mm": 0}, "overlap must be above 0 mm, got 0 mm"),
)
