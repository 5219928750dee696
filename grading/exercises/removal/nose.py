"""Exercise on the nose of the tool: how hard it presses on the top plate, and how far the plate dishes."""

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, looked_up_numbers, option, slip, wrong
from grading.exercises.removal.tool import HEADING
from grading.exercises.scenes import scene
from secondplate.pull_tool import nose_bearing_mpa, top_plate_dish_mm
from secondplate.sheet_alloys import sheet_band

MODULUS_MPA, POISSON_RATIO = 70_000.0, 0.33  # aluminium
CHANGES = {
    "pull": "the pull is doubled",
    "ring": "a ring of twice the inner diameter is fitted",
    "plate": "the next top plate is half as thick",
}
TIMES = {2: "two", 4: "four", 8: "eight"}


def _dish_mm(force_n, inner_mm, top_mm):
    """Return how far a top plate is drawn up inside the ring with its edge held."""
    return top_plate_dish_mm(
        force_n=force_n,
        support_radius_mm=inner_mm / 2,
        thickness_mm=top_mm,
        elastic_modulus_mpa=MODULUS_MPA,
        poisson_ratio=POISSON_RATIO,
    ).low


def _draw_ring(draw):
    inner_mm = draw.whole("inner_mm", 12, 18)
    return scene(draw) | {
        "inner_mm": inner_mm,
        "outer_mm": inner_mm + draw.whole("wall_mm", 6, 12, 2),
        "force_n": draw.whole("force_n", 1000, 2500, 100),
        "top_mm": draw.decimal("top_mm", 1.2, 1.8, 0.1, 1),
        "top": draw.pick("top", ("5754-O", "6016-T4", "6016-T6")),
        "change": draw.pick("change", tuple(CHANGES)),
    }


def _solve_ring(table):
    force_n, inner_mm, outer_mm, top_mm = (
        table[name] for name in ("force_n", "inner_mm", "outer_mm", "top_mm")
    )
    bearing_mpa = nose_bearing_mpa(force_n=force_n, outer_diameter_mm=outer_mm, inner_diameter_mm=inner_mm)
    dish_mm = _dish_mm(force_n, inner_mm, top_mm)
    changed = {
        "pull": _dish_mm(2 * force_n, inner_mm, top_mm),
        "ring": _dish_mm(force_n, 2 * inner_mm, top_mm),
        "plate": _dish_mm(force_n, inner_mm, top_mm / 2),
    }
    times = np.select([table["change"] == name for name in changed], list(changed.values())) / dish_mm
    proof_mpa = looked_up_numbers(table["top"], lambda name: sheet_band(name, "proof stress").low)
    return {
        "bearing": NumberKey(
            value=bearing_mpa,
            slips={
                "no_hole": force_n / (np.pi / 4 * outer_mm**2),
                "radius": bearing_mpa / 4,
                "wall_squared": force_n / (np.pi / 4 * (outer_mm - inner_mm) ** 2),
            },
        ),
        "dish": NumberKey(value=dish_mm, slips={"diameter": 4 * dish_mm, "no_cube": dish_mm * top_mm**2}),
        "changed": ChoiceKey(right=[TIMES[int(each)] for each in np.round(times)]),
        "mark": ChoiceKey(right=chosen([bearing_mpa < proof_mpa / 2], ["edge"], otherwise="crushed")),
    }


NOSE_RING = Exercise(
    id="removal.nose_ring",
    objective="tool",
    title="The nose on the top plate",
    prompt=(
        "The nose of the tool at {shop} is a ring, {outer_mm} mm outside and {inner_mm} mm inside. "
        "It stands on a top plate of {top}, {top_mm} mm thick, proof stress at least {proof} N/mm². "
        "The pull is {force_n} N. "
        "Inside the ring the plate is drawn up by F a² ÷ (16 π D), where a is the inner radius and "
        "D = E t³ ÷ (12 (1 − ν²)); take E = {modulus} N/mm² and ν = {poisson}. "
        "Afterwards {change_words}."
    ),
    shown=lambda scenario: {
        "proof": f"{sheet_band(scenario['top'], 'proof stress').low:.0f}",
        "modulus": f"{MODULUS_MPA:.0f}",
        "poisson": f"{POISSON_RATIO}",
        "change_words": CHANGES[scenario["change"]],
    },
    parts=(
        Number(
            id="bearing",
            ask="How hard does the ring press on the plate, on the mean?",
            unit="MPa",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("no_hole", "That is a full disc. The ring has a hole that bears nothing."),
                slip("radius", "The area is far too large: the diameters were used as radii."),
                slip("wall_squared", "Square each diameter first, then take the difference."),
            ),
        ),
        Number(
            id="dish",
            ask="How far is the top plate drawn up inside the ring?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("diameter", "The form takes the inner radius of the ring, not its diameter."),
                slip("no_cube", "The thickness goes in cubed: that is what makes a plate stiff."),
            ),
        ),
        Choice(
            id="changed",
            ask="How many times as far does the plate dish after the change?",
            options=(
                option("eight", "Eight times."),
                option("two", "Twice."),
                option("four", "Four times."),
            ),
        ),
        Choice(
            id="mark",
            ask="Does that mean pressure mark the plate?",
            options=(
                option("edge", "Hardly. Look for the print of the inner edge and for the dish."),
                wrong(
                    "crushed",
                    "Yes: the plate is crushed under the whole ring.",
                    "Compare the mean pressure with the proof stress of the plate.",
                ),
                wrong(
                    "never",
                    "No, so the top plate needs no look after the pull.",
                    "The mean hides the inner edge, and the dish is another matter than the pressure.",
                ),
            ),
        ),
    ),
    draw=_draw_ring,
    solve=_solve_ring,
    reasons=(
        "Divide the pull by the area of the ring: outside squared less inside squared, times π over four. "
        "The dish grows with the pull, with the square of the ring and against the cube of the thickness. "
        "So take the smallest ring that clears the rivet's head, and a flat one. "
        "The form holds while the plate springs back; a plate that yields dishes further and stays so."
    ),
    read_again=HEADING,
)

EXERCISES = (NOSE_RING,)
