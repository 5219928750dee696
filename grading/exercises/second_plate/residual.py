"""Exercise on how much metal a pulled site has left, and whether that is enough."""

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import (
    THREE_FIGURES,
    chosen,
    looked_up_numbers,
    option,
    same,
    slip,
    wrong,
)
from grading.exercises.scenes import scene
from secondplate.plate import bearing_thickness_mm
from secondplate.sheet_alloys import sheet_band

HEADING = "What is left of the plate?"
ALLOYS = ("5754-O", "6016-T4", "6082-T6")
BEARING_FACTOR, PARTIAL_FACTOR = 2.5, 1.25


def _strength_mpa(alloys):
    """Return the least tensile strength of each alloy."""
    return looked_up_numbers(alloys, lambda name: sheet_band(name, "tensile strength").low)


def _draw_residual(draw):
    plate_mm = draw.decimal("plate_mm", 1.5, 2.2, 0.1, 1)
    # No pair where the cup reaches as far below the plate as metal is left: a slip would be right.
    left_mm, rise_mm = draw.pick(
        "sizes",
        tuple(
            (left, rise)
            for left in (0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65)
            for rise in (0.8, 0.9, 1.0, 1.1, 1.2, 1.3, 1.4)
            if abs(rise - 2 * left) > 0.08
        ),
    )
    alloy, diameter_mm = draw.pick("alloy", ALLOYS), draw.pick("diameter_mm", (4.0, 4.8, 6.4))
    share = draw.pick("share", (0.6, 0.7, 0.8, 1.2, 1.35, 1.5))
    strength_mpa = sheet_band(alloy, "tensile strength").low
    bears_n = share * left_mm * BEARING_FACTOR * strength_mpa * diameter_mm / PARTIAL_FACTOR
    return scene(draw) | {
        "plate_mm": plate_mm,
        "rise_mm": rise_mm,
        "cup_mm": round(plate_mm + rise_mm - left_mm, 2),
        "alloy": alloy,
        "diameter_mm": diameter_mm,
        "force_n": round(bears_n / 10) * 10,
    }


def _solve_residual(table):
    plate_mm, rise_mm, cup_mm = table["plate_mm"], table["rise_mm"], table["cup_mm"]
    left_mm = plate_mm + rise_mm - cup_mm
    required_mm = bearing_thickness_mm(
        force_n=table["force_n"],
        diameter_mm=table["diameter_mm"],
        tensile_strength_mpa=_strength_mpa(table["alloy"]),
        bearing_factor=BEARING_FACTOR,
        partial_factor=PARTIAL_FACTOR,
    )
    return {
        "left": NumberKey(
            value=left_mm, slips={"below_face": cup_mm - plate_mm, "no_cup": plate_mm + rise_mm}
        ),
        "required": NumberKey(
            value=required_mm,
            slips={
                "no_partial": required_mm / PARTIAL_FACTOR,
                "no_bearing": required_mm * BEARING_FACTOR,
                "partial_on_top": required_mm / PARTIAL_FACTOR**2,
            },
        ),
        "enough": ChoiceKey(right=chosen([left_mm >= required_mm], ["enough"], otherwise="too_thin")),
        "place": ChoiceKey(right=same(table, "ring")),
    }


RESIDUAL = Exercise(
    id="second_plate.residual",
    objective="inspect",
    title="How much metal is left?",
    prompt=(
        "A pulled site on {vehicle}: beside it the second plate of {alloy} is {plate_mm} mm thick. "
        "Behind, the button stands {rise_mm} mm proud. "
        "The deepest place of the cup lies {cup_mm} mm below the near face, over a flat back of the button. "
        "By the maker's procedure a fastener of {diameter_mm} mm goes in here; "
        "it carries {force_n} N by design. "
        "A plate of thickness t bears {bearing} × strength × diameter × t, divided by {partial}. "
        "Take the least strength, {strength} N/mm²."
    ),
    shown=lambda scenario: {
        "bearing": f"{BEARING_FACTOR}",
        "partial": f"{PARTIAL_FACTOR}",
        "strength": f"{sheet_band(scenario['alloy'], 'tensile strength').low:.0f}",
    },
    parts=(
        Number(
            id="left",
            ask="How much metal is left under the deepest place of the cup?",
            unit="mm",
            absolute_tolerance=0.02,
            tolerance_reason="The sizes are given to five hundredths: less than half of that.",
            slips=(
                slip("below_face", "That is how far the cup reaches beyond the plate. The button goes on."),
                slip("no_cup", "That is the whole height at the button. The cup has to come off."),
            ),
        ),
        Number(
            id="required",
            ask="How thick must the metal be, so that the fastener does not crush it?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("no_partial", "The partial factor is missing. It asks for more metal."),
                slip(
                    "no_bearing",
                    "Plain stress was used. In bearing a plate takes a multiple of its strength.",
                ),
                slip(
                    "partial_on_top",
                    "The partial factor stands on the wrong side: it asks for more, not less.",
                ),
            ),
        ),
        Choice(
            id="enough",
            ask="Is the metal that is left enough for that?",
            options=(
                option("too_thin", "No, it is too thin."),
                option("enough", "Yes, by this one check."),
                wrong(
                    "beside",
                    "Yes: the thickness beside the site counts.",
                    "The fastener would press on the metal of the cup. That is the thickness to compare.",
                ),
            ),
        ),
        Choice(
            id="place",
            ask="Where in the cup do you look for the least metal?",
            options=(
                option("ring", "Under the ring that the leg of the rivet has pressed in."),
                wrong(
                    "middle",
                    "In the middle, over what was the bore.",
                    "In the middle nothing pressed but the slug. Think of what cut deepest.",
                ),
                wrong(
                    "rim",
                    "At the rim of the cup, on the near face.",
                    "At the rim the plate is as thick as beside it, or thicker.",
                ),
            ),
        ),
    ),
    draw=_draw_residual,
    solve=_solve_residual,
    reasons=(
        "From the near face to the back of the button there is the plate and what stands proud. "
        "Take the cup off and the metal is left. "
        "The required thickness comes from the formula, solved for t. "
        "The least metal is under the ring of the leg, which pressed in deepest. "
        "On a car the vehicle maker's procedure decides whether an old site may carry anything."
    ),
    read_again=HEADING,
)

EXERCISES = (RESIDUAL,)
