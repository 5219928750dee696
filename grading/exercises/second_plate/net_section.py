"""Exercise on a strip that tears through a new hole in line with an old site."""

from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Number,
    NumberKey,
)
from grading.exercises.building_blocks import chosen, slip, wrong
from grading.exercises.scenes import scene
from grading.exercises.second_plate.bearing import ALLOYS, strength_mpa
from grading.exercises.second_plate.edges import FASTENERS, HEADING
from secondplate.eurocode9 import (
    EUROCODE9,
    GAMMA_M1,
    GAMMA_M2,
    UNSEEN_CRACK_MM,
    affected_diameter_mm,
    gross_section_n,
    net_section_n,
)

# As it is shown: what a clean penetrant test at a hole may have left open.
CRACK_MM = round(UNSEEN_CRACK_MM, 1)


def _draw_net(draw):
    rivet = FASTENERS[f"blind rivets of {draw.pick('diameter', ('4.8', '6.4'))} mm"]
    return scene(draw) | {
        "alloy": draw.pick("alloy", ALLOYS),
        "sheet_mm": draw.decimal("sheet_mm", 1.2, 2.5, 0.1, 1),
        "strip_mm": draw.whole("strip_mm", 40, 64),
        "hole_mm": rivet.hole_most_mm,
        "old_mm": draw.decimal("old_mm", 6.8, 8.8, 0.2, 1),
    }


def _net_words(scenario):
    """Return strength and proof stress of the alloy, and the constants of the rule."""
    return {
        "strength": f"{strength_mpa([scenario['alloy']])[0]:.0f}",
        "proof": f"{strength_mpa([scenario['alloy']], 'proof stress')[0]:.0f}",
        "crack": f"{CRACK_MM:g}",
        "share": f"{EUROCODE9['net section factor']:g}",
        "gamma": f"{GAMMA_M2:g}",
        "gamma_yield": f"{GAMMA_M1:g}",
    }


def _solve_net(table):
    strip_mm, sheet_mm, hole_mm, old_mm = (table[n] for n in ("strip_mm", "sheet_mm", "hole_mm", "old_mm"))
    affected_mm = affected_diameter_mm(old_mm, crack_possible=True, crack_length_mm=CRACK_MM)
    tensile, proof = strength_mpa(table["alloy"]), strength_mpa(table["alloy"], "proof stress")

    def net_n(width_mm):
        return net_section_n(width_mm * sheet_mm, tensile_strength_mpa=tensile)

    torn_n = net_n(strip_mm - hole_mm - affected_mm)
    yields_n = gross_section_n(strip_mm * sheet_mm, proof_stress_mpa=proof)
    return {
        "affected": NumberKey(
            value=affected_mm,
            slips={"no_crack": old_mm, "one_side": (affected_mm + old_mm) / 2},
        ),
        "net": NumberKey(
            value=torn_n,
            slips={
                "gross": net_n(strip_mm),
                "no_crack": net_n(strip_mm - hole_mm - old_mm),
                "no_hole": net_n(strip_mm - affected_mm),
            },
        ),
        "first": ChoiceKey(right=chosen([torn_n < yields_n], ["tears"], otherwise="yields")),
    }


NET_SECTION = Exercise(
    id="second_plate.net_section",
    objective="fasten",
    title="A new hole in line with an old site",
    prompt=(
        "On {vehicle} a strip of {alloy}, {strip_mm} mm wide and {sheet_mm} mm thick, is pulled. "
        "Across it, in one line, lie an old hole of {old_mm} mm and a new hole of {hole_mm} mm. "
        "A penetrant test of the old hole was clean. At a hole it is held to find {crack} mm: "
        "as much cannot be shut out, and counts on either side. "
        "By EN 1999-1-1, from memory, what is left tears at {share} × area × {strength} MPa / {gamma}. "
        "The whole strip yields at area × {proof} MPa / {gamma_yield}."
    ),
    shown=_net_words,
    parts=(
        Number(
            id="affected",
            ask="With how many millimetres does the old site count?",
            unit="mm",
            absolute_tolerance=0.05,
            tolerance_reason="All sizes are given to a tenth of a millimetre: half of that is right.",
            slips=(
                slip("no_crack", "That is the old hole alone. What cannot be shut out has to be counted."),
                slip("one_side", "The crack was counted on one side. It may run from either."),
            ),
        ),
        Number(
            id="net",
            ask="At which pull does the strip tear through the line of the holes?",
            unit="N",
            relative_tolerance=0.01,
            tolerance_reason="Width, thickness and strength are given: 1 % covers rounding on the way.",
            slips=(
                slip("gross", "That is the whole strip. Holes carry nothing."),
                slip("no_crack", "The old site was counted without the crack that cannot be shut out."),
                slip("no_hole", "The new hole is missing. It lies in the same line."),
            ),
        ),
        Choice(
            id="first",
            ask="The pull rises slowly. What comes first?",
            options=(
                wrong(
                    "tears",
                    "The strip tears through the holes.",
                    "Work out both pulls: the lesser comes first.",
                ),
                wrong("yields", "The whole strip yields.", "Work out both pulls: the lesser comes first."),
                wrong(
                    "both",
                    "Both at once: it is one plate.",
                    "It is one plate with two sections, each with a pull of its own.",
                ),
            ),
        ),
    ),
    draw=_draw_net,
    solve=_solve_net,
    reasons=(
        "Take both holes and what may be cracked beside the old one off the width, times the thickness: "
        "that is the net area. "
        "Tearing is reckoned with the tensile strength, yielding of the whole strip with the proof stress. "
        "A strip that tears before it yields gives no warning. "
        "So a new hole does not go in line with an old site where there is room elsewhere."
    ),
    read_again=HEADING,
)

EXERCISES = (NET_SECTION,)
