"""Exercises on what each way of removal leaves of the second plate."""

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Verdicts, VerdictsKey
from grading.exercises.building_blocks import (
    THREE_FIGURES,
    chosen,
    option,
    same,
    slip,
    wrong,
)
from grading.exercises.scenes import scene
from secondplate.plate import after_drilling, after_pulling, after_punching

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
        "At {shop} five rivets have come out of a scrap sill of {vehicle}, each in its own way. "
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

EXERCISES = (PREDICT_BUTTON, AFTER_EACH_WAY)
