"""The explorers of the page on the second plate: numbers from the library, pictures from the drawings."""

from drawings import bond_shear, flange_layout, plates_left, reading_chart
from exercise_forms.panel import Panel, Pick, View, slide
from grading.quantities import show_quantity
from secondplate import fastener_layout, measuring, plate
from secondplate.bonding import bond_peak_mpa, limit_overlap_mm

WAYS = ("pulled", "pulled, and torn", "drilled", "punched from behind")
SHEETS = tuple(plate.HARDENING_SHEETS)
ALUMINIUM_MPA = 70_000.0
LEAST_MM = 0.40
# For the picture of a button alone: metal under the tail and width of the tail, as parts of plate and button.
UNDER_TAIL, TAIL_OVER_BUTTON = 0.35, 0.78


def _left(*, way, second_mm, remaining_mm, tip_mm, drill_mm):
    """Show what a way of removal leaves of one plate."""
    site = {"button_diameter_mm": 9.0, "button_depth_mm": 1.1}
    pulled = {
        "second_plate_mm": second_mm,
        "remaining_thickness_mm": min(remaining_mm, second_mm),
        "tail_diameter_mm": 7.0,
    }
    left = {
        "pulled": lambda: plate.after_pulling(**pulled, **site),
        "pulled, and torn": lambda: plate.after_pulling(**pulled, **site, torn=True),
        "drilled": lambda: plate.after_drilling(
            metal_mm=second_mm, tip_depth_mm=tip_mm, drill_diameter_mm=drill_mm, **site
        ),
        "punched from behind": lambda: plate.after_punching(
            second_plate_mm=second_mm, button_diameter_mm=9.0
        ),
    }[way]()
    return View(
        rows=(
            ("Opening", show_quantity(left.hole_diameter_mm, "mm", 3)),
            ("Least metal", show_quantity(left.least_thickness_mm, "mm", 3)),
            ("What is seen", plate.STATE_SEEN[left.plate_state]),
        ),
        sentence=f"{plate.STATE_MEANS[left.plate_state].rstrip('.').capitalize()}.",
        pictures=(plates_left([left], second_plate_mm=second_mm),),
    )


def _press_back(*, sheet, base_mm, rise_mm, sheet_mm):
    """Show what the stop rule says of pressing a button back."""
    button = plate.ButtonDome(base_radius_mm=base_mm / 2, rise_mm=rise_mm, sheet_mm=sheet_mm)
    found = plate.press_back(button, sheet)
    left = plate.after_pulling(
        second_plate_mm=sheet_mm,
        remaining_thickness_mm=UNDER_TAIL * sheet_mm,
        tail_diameter_mm=TAIL_OVER_BUTTON * base_mm,
        button_diameter_mm=base_mm,
        button_depth_mm=rise_mm,
    )
    return View(
        rows=(
            ("Strain of pressing back", f"{100 * button.press_back_strain:.1f} %"),
            *((f"At most, by {name}", f"{100 * limit:.1f} %") for name, limit in found.limits.items()),
            ("The rule says", found.verdict),
        ),
        sentence="A dome is the mild model: a yes of this rule is no promise, and a no is a no.",
        pictures=(plates_left([left], second_plate_mm=sheet_mm),),
    )


def _reading(*, reading_mm, doubt_mm):
    """Show a reading against a limit."""
    given = {"standard_uncertainty_mm": doubt_mm, "least_mm": LEAST_MM}
    guard = measuring.guard_band_mm(doubt_mm, confidence_percent=95.0)
    return View(
        rows=(
            ("At least", show_quantity(LEAST_MM, "mm", 3)),
            ("Guard band", show_quantity(guard, "mm", 3)),
            ("Verdict", measuring.conformity(reading_mm, **given)),
        ),
        sentence="The better you measure, the narrower the strip in which nothing is decided.",
        pictures=(reading_chart(reading_mm, **given),),
    )


def _glue(*, overlap_mm, top_mm, second_mm, adhesive_mm, modulus_mpa, line_load_n_mm):
    """Show the shear along a glue line."""
    glue = {"adhesive_modulus_mpa": modulus_mpa, "adhesive_mm": adhesive_mm}
    stiffnesses = (ALUMINIUM_MPA * top_mm, ALUMINIUM_MPA * second_mm)
    lap = {"line_load_n_mm": line_load_n_mm, "overlap_mm": overlap_mm, "stiffnesses_n_mm": stiffnesses} | glue
    peak = bond_peak_mpa(**lap)
    return View(
        rows=(
            ("Mean shear", show_quantity(line_load_n_mm / overlap_mm, "MPa", 3)),
            ("Peak shear", show_quantity(peak, "MPa", 3)),
            ("Longer than this hardly helps", show_quantity(limit_overlap_mm(stiffnesses, **glue), "mm", 3)),
        ),
        sentence="The ends carry, the middle rests: glue gives way from an end.",
        pictures=(bond_shear(**lap),),
    )


def _flange(*, width_mm, fasteners, hole_mm, level):
    """Show where new fasteners go on a flange with old sites."""
    flange = fastener_layout.Flange(
        flange_length_mm=180.0, flange_width_mm=width_mm, thickness_mm=1.5, root_clearance_mm=10.0
    )
    sites = [
        fastener_layout.OldSite(x_mm=x, y_mm=min(12.0, width_mm - 6), affected_diameter_mm=7.0)
        for x in (30.0, 70.0, 110.0, 150.0)
    ]
    rules = (fastener_layout.hole_rules(hole_mm, level=level),)
    try:
        found = fastener_layout.place_fasteners(flange, fasteners=int(fasteners), sites=sites, rules=rules)
    except ValueError as refusal:
        picture = flange_layout(flange, hole_diameter_mm=hole_mm, sites=sites, rules=rules[0])
        return View(
            rows=(("New fasteners", "none placed"),),
            sentence=f"{str(refusal).rstrip('.')}.",
            pictures=(picture,),
        )
    picture = flange_layout(
        flange, hole_diameter_mm=hole_mm, sites=sites, x_mm=found.x_mm, y_mm=found.y_mm, rules=found.rules
    )
    return View(
        rows=(("New fasteners", str(len(found.x_mm))), ("Rules kept", level)),
        sentence="Clear of the ends, the edges, the old sites and each other.",
        pictures=(picture,),
    )


PLATE_PANELS = {
    "plate_left": Panel(
        title="What each way leaves",
        intro=("A button of 9 mm, 1.1 mm tall. Change the way, then the depth.",),
        controls=(
            Pick(name="way", label="Way of removal", options=WAYS, start="pulled"),
            slide("second_mm", "Second plate", "mm", 1, 3.5, 0.1, 1.8),
            slide("remaining_mm", "Metal under the tail", "mm", 0, 1, 0.05, 0.5),
            slide("tip_mm", "Tip of the drill below the face", "mm", 0, 4, 0.1, 1.1),
            slide("drill_mm", "Drill", "mm", 3, 8, 0.5, 5),
        ),
        view=_left,
    ),
    "press_back": Panel(
        title="May this button be pressed back?",
        intro=("The strain of flattening against what the sheet has left, by every statement at hand.",),
        controls=(
            Pick(name="sheet", label="Sheet", options=SHEETS, start="6016-T4"),
            slide("base_mm", "Width of the button", "mm", 6, 12, 0.5, 8),
            slide("rise_mm", "Height of the button", "mm", 0.1, 2, 0.1, 0.8),
            slide("sheet_mm", "Sheet", "mm", 0.8, 3.5, 0.1, 1.5),
        ),
        view=_press_back,
    ),
    "reading": Panel(
        title="One reading, one limit",
        intro=("At least 0.40 mm must be left. Move the reading, then measure better.",),
        controls=(
            slide("reading_mm", "Reading", "mm", 0.3, 0.5, 0.005, 0.41),
            slide("doubt_mm", "Standard uncertainty", "mm", 0.002, 0.04, 0.001, 0.0135),
        ),
        view=_reading,
    ),
    "glue": Panel(
        title="Where the glue carries",
        intro=("Two aluminium plates that only stretch, glue that stays elastic.",),
        controls=(
            slide("overlap_mm", "Overlap", "mm", 5, 60, 1, 20),
            slide("top_mm", "Top plate", "mm", 0.8, 4, 0.1, 1.5),
            slide("second_mm", "Second plate", "mm", 0.8, 4, 0.1, 2),
            slide("adhesive_mm", "Glue line", "mm", 0.1, 1, 0.05, 0.3),
            slide("modulus_mpa", "Shear modulus of the glue", "MPa", 5, 1500, 5, 600),
            slide("line_load_n_mm", "Load for each millimetre of width", "N/mm", 10, 300, 10, 100),
        ),
        view=_glue,
    ),
    "flange": Panel(
        title="Room on a flange",
        intro=("180 mm of flange with four old sites. How many new fasteners find room?",),
        controls=(
            slide("width_mm", "Width of the flange", "mm", 18, 40, 1, 26),
            slide("fasteners", "New fasteners", "", 1, 10, 1, 4),
            slide("hole_mm", "Hole", "mm", 3, 7, 0.1, 5),
            Pick(name="level", label="Rules", options=("minimum", "regular"), start="regular"),
        ),
        view=_flange,
    ),
}
