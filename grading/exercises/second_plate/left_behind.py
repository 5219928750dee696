"""Exercises on what each way of removal leaves of the second plate, and how thick it still is."""

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Verdicts, VerdictsKey
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
from secondplate.plate import after_drilling, after_pulling, after_punching, bearing_thickness_mm
from secondplate.sheet_alloys import sheet_band

HEADING = "What is left of the plate?"
POINT_DEG = 118.0
BUTTON_MM, TAIL_MM, RISE_MM, PLATE_MM = 9.0, 7.0, 1.1, 1.8

PREDICT_BUTTON = Exercise(
    id="second_plate.predict_button",
    objective="inspect",
    title="Predict: the far side",
    prompt=(
        "At {shop} a rivet of {vehicle} has been drawn out by its head, and no light comes through. "
        "Nobody can look behind the plate. Decide before you read on."
    ),
    parts=(
        Choice(
            id="far_side",
            ask="What does the far side of the second plate look like now?",
            options=(
                wrong(
                    "flat",
                    "Flat again: without the rivet the plate springs back.",
                    "The plate was stretched far beyond springing when the rivet was set.",
                ),
                option("button", "The button is still there, as it was before the pull."),
                wrong(
                    "gone",
                    "The button is gone: it came out with the rivet.",
                    "The button is part of the second plate: without it light would come through.",
                ),
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {"far_side": ChoiceKey(right=_far_side(table))},
    reasons=(
        "The button is the second plate itself, pressed into the die when the rivet was set. "
        "The tail leaves it; the button stays, with a cup on the near side."
    ),
    read_again=HEADING,
    counts=False,
)


def pulled(left_mm, *, torn=False):
    """Return what is left of a usual site where the rivet was drawn out."""
    return after_pulling(
        second_plate_mm=PLATE_MM,
        remaining_thickness_mm=left_mm,
        tail_diameter_mm=TAIL_MM,
        button_diameter_mm=BUTTON_MM,
        button_depth_mm=RISE_MM,
        torn=torn,
    )


def drilled(metal_mm, tip_mm, drill_mm):
    """Return what is left of a usual site where the rivet was drilled out."""
    return after_drilling(
        metal_mm=metal_mm,
        tip_depth_mm=tip_mm,
        drill_diameter_mm=drill_mm,
        point_angle_deg=POINT_DEG,
        button_diameter_mm=BUTTON_MM,
        button_depth_mm=RISE_MM,
    )


def _far_side(table):
    """Tell for each scenario what is behind a plate that was pulled and is tight."""
    left = pulled(0.5)
    return same(table, "button" if left.tight and left.button_depth_mm > 0 else "gone")


SITES = ("first", "second", "third", "fourth", "fifth")
TEXTS = {
    "whole": "pulled; {whole_mm} mm of metal was under the tail, and no light comes through",
    "torn": "pulled; {torn_mm} mm of metal was under the tail, and a wire goes through a tear",
    "dimple": "drilled; {dimple_metal_mm} mm of metal on the axis, the tip went {dimple_tip_mm} mm deep",
    "hole": "drilled; {hole_metal_mm} mm of metal on the axis, the tip went {hole_tip_mm} mm deep",
    "punched": "punched out from the head side",
}


def _draw_ways(draw):
    order = dict(zip(SITES, draw.shuffle("order", TEXTS), strict=True))
    dimple_mm, hole_mm = draw.pick("dimple", (1.5, 1.6, 1.7, 1.8)), draw.pick("hole", (1.1, 1.2, 1.3, 1.4))
    return scene(draw) | {
        **order,
        "whole_mm": draw.pick("whole_mm", (0.3, 0.4, 0.5, 0.6)),
        "torn_mm": draw.pick("torn_mm", (0.2, 0.3, 0.4)),
        "dimple_metal_mm": dimple_mm,
        "dimple_tip_mm": round(dimple_mm - draw.pick("dimple_left_mm", (0.2, 0.3, 0.4, 0.6)), 1),
        "hole_metal_mm": hole_mm,
        "hole_tip_mm": round(hole_mm + draw.pick("beyond_mm", (0.2, 0.3, 0.4, 0.5, 0.6, 0.7)), 1),
        "drill_mm": draw.pick("drill_mm", (4.8, 5.0, 5.2)),
    }


def _found(left):
    """Return the verdict on what is left, for each site of a column."""
    return chosen(
        [left.tight & np.greater(left.button_depth_mm, 0), np.greater(left.button_depth_mm, 0)],
        ["tight", "leaks"],
        otherwise="lost",
    )


def _solve_ways(table):
    hole = drilled(table["hole_metal_mm"], table["hole_tip_mm"], table["drill_mm"])
    by_way = {
        "whole": _found(pulled(table["whole_mm"])),
        "torn": _found(pulled(table["torn_mm"], torn=True)),
        "dimple": _found(drilled(table["dimple_metal_mm"], table["dimple_tip_mm"], table["drill_mm"])),
        "hole": _found(hole),
        "punched": same(
            table,
            *_found(after_punching(second_plate_mm=PLATE_MM, button_diameter_mm=np.array([BUTTON_MM]))),
        ),
    }
    right = {row: [by_way[str(way)][number] for number, way in enumerate(table[row])] for row in SITES}
    return {
        "left": VerdictsKey(right=right),
        "opening": NumberKey(
            value=hole.hole_diameter_mm,
            slips={"one_side": hole.hole_diameter_mm / 2, "whole_tip": hole.mark_diameter_mm},
        ),
    }


AFTER_EACH_WAY = Exercise(
    id="second_plate.after_each_way",
    objective="inspect",
    title="Five sites, five ways",
    prompt=(
        "{shop} has taken five rivets out of a scrap sill of {vehicle}. "
        "The drill is {drill_mm} mm wide and its point has {angle}°. "
        "Depths are those of the tip, from where it first met this metal."
    ),
    shown=lambda scenario: {
        "angle": f"{POINT_DEG:.0f}",
        **{f"{row}_words": TEXTS[scenario[row]].format_map(scenario) for row in SITES},
    },
    parts=(
        Verdicts(
            id="left",
            ask="What is left at each site?",
            points=2.0,
            rows=tuple(option(row, "{" + row + "_words}") for row in SITES),
            verdicts=(
                option("leaks", "an opening, and the button is still there"),
                option("tight", "no opening, and the button is still there"),
                option("lost", "an opening, and the button is lost"),
            ),
        ),
        Number(
            id="opening",
            ask="How wide is the opening at the site where the tip of the drill came through?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("one_side", "That is from the axis to the edge. An opening is measured right across."),
                slip(
                    "whole_tip",
                    "That is how wide the cone is where it begins. Only what came out below counts here.",
                ),
            ),
        ),
    ),
    draw=_draw_ways,
    solve=_solve_ways,
    reasons=(
        "A pull leaves the button, and the plate is tight as long as the floor of the cup is whole. "
        "A drill leaves the button too; it is through once the tip went deeper than the metal on its axis. "
        "The opening is twice the depth beyond the metal times the tangent of half the point angle. "
        "A punch takes the button with it and leaves the widest hole of all."
    ),
    read_again=HEADING,
)

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
        "A fastener of {diameter_mm} mm is to carry {force_n} N here by design. "
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

EXERCISES = (PREDICT_BUTTON, AFTER_EACH_WAY, RESIDUAL)
