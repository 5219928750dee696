"""Exercise on fatigue of one new bolt in the plate: cycles, damage, and what the category does not cover."""

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import chosen, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.fatigue_detail import (
    CATEGORY_CYCLES,
    KNEE_CYCLES,
    FatigueCheck,
    listed_curve,
)

HEADING = "Does the whole job hold on one plate?"
CURVE = listed_curve("bolted joint, clearance holes")
DAMAGES = (0.4, 0.55, 0.7, 0.85, 1.2, 1.5, 1.8)


def _draw_fatigue(draw):
    high_mpa, low_mpa = draw.whole("high_mpa", 60, 90), draw.whole("low_mpa", 32, 41)
    high_share = draw.pick("high_share", (0.3, 0.4, 0.6, 0.7))
    damage = draw.pick("damage", DAMAGES)
    shares = {high_mpa: damage * high_share, low_mpa: damage * (1 - high_share)}
    # Two figures, so that the damage is near the one drawn and no multiple of a round number.
    cycles = {
        name: float(f"{share * CURVE.cycles_to_failure(stress):.2g}")
        for (stress, share), name in zip(shares.items(), ("high_cycles", "low_cycles"), strict=True)
    }
    return scene(draw) | {"high_mpa": high_mpa, "low_mpa": low_mpa, **cycles}


def _solve_fatigue(table):
    high, low = table["high_mpa"], table["low_mpa"]
    at_high, at_low = CURVE.cycles_to_failure(high), CURVE.cycles_to_failure(low)
    below = CURVE.slope_below_knee
    damages = [CURVE.damage(stress_ranges_mpa=high[:, None], cycles=table["high_cycles"][:, None])]
    damages.append(CURVE.damage(stress_ranges_mpa=low[:, None], cycles=table["low_cycles"][:, None]))
    damage = sum(damages)
    together = (table["high_cycles"] + table["low_cycles"]) / at_high
    verdict = FatigueCheck(damage=damage, allowed_damage=1.0).verdict
    return {
        "cycles": NumberKey(
            value=at_low,
            slips={
                "one_slope": CATEGORY_CYCLES * (CURVE.category_mpa / low) ** CURVE.slope,
                "from_category": CATEGORY_CYCLES * (CURVE.category_mpa / low) ** below,
                "high_block": at_high,
            },
        ),
        "damage": NumberKey(
            value=damage, slips={"high_only": damages[0], "low_only": damages[1], "all_high": together}
        ),
        "verdict": ChoiceKey(right=chosen([verdict == "lasts"], ["lasts"], otherwise="too_much")),
        "rivets": ChoiceKey(right=same(table, "none")),
    }


FATIGUE = Exercise(
    id="second_plate.fatigue",
    objective="fasten",
    title="A bolt that is shaken",
    prompt=(
        "A bracket on the flange of {vehicle} is shaken. It hangs on bolts in drilled holes, and a standard "
        "lists that detail: category {category} N/mm², slope {slope}, from memory. "
        "So {category_cycles} cycles of {category} N/mm² are borne, and {knee_cycles} of {knee} N/mm². "
        "Below that knee cycles = {knee_cycles} × (knee / range)^{below}, down to {cut_off} N/mm²; "
        "smaller ranges do no harm. "
        "In the life that {shop} plans for, the net section sees {high_cycles_words} cycles of "
        "{high_mpa} N/mm² and {low_cycles_words} of {low_mpa} N/mm². "
        "Damage is the sum of cycles over cycles borne; 1 is allowed."
    ),
    shown=lambda scenario: {
        "category": f"{CURVE.category_mpa:.0f}",
        "slope": f"{CURVE.slope:.0f}",
        "below": f"{CURVE.slope_below_knee:.0f}",
        "category_cycles": spoken(CATEGORY_CYCLES),
        "knee_cycles": spoken(KNEE_CYCLES),
        "knee": f"{CURVE.knee_mpa:.2f}",
        "cut_off": f"{CURVE.cut_off_mpa:.1f}",
        "high_cycles_words": spoken(scenario["high_cycles"]),
        "low_cycles_words": spoken(scenario["low_cycles"]),
    },
    parts=(
        Number(
            id="cycles",
            ask="How many cycles of the smaller range are borne?",
            unit="times",
            relative_tolerance=0.03,
            tolerance_reason="The knee has four figures and a sixth power: 3 % either way is right.",
            slips=(
                slip("one_slope", "The slope above the knee was used. This range lies below the knee."),
                slip("from_category", "The second slope starts at the knee, not at the category."),
                slip("high_block", "That is for the larger range. The smaller one was asked for."),
            ),
        ),
        Number(
            id="damage",
            ask="How large is the damage of the whole life?",
            unit="",
            relative_tolerance=0.03,
            tolerance_reason="It follows from cycles that are right to 3 %.",
            slips=(
                slip("high_only", "Only the larger range was counted. The many small ones add up too."),
                slip("low_only", "Only the smaller range was counted. The larger one adds to it."),
                slip("all_high", "All cycles were taken at the larger range. Each block has its own."),
            ),
        ),
        Choice(
            id="verdict",
            ask="Is the planned life borne?",
            options=(
                option("lasts", "Yes: the sum stays below 1."),
                option("too_much", "No: the sum is above 1."),
                wrong(
                    "below_category",
                    "It cannot fail: one of the ranges lies below the category.",
                    "The category is no limit of endurance. Below it more cycles are borne, not any number.",
                ),
            ),
        ),
        Choice(
            id="rivets",
            ask="The maker wants blind rivets there instead. Which category do you take for them?",
            options=(
                wrong(
                    "same",
                    "The same: a hole is a hole.",
                    "A rivet fills its hole and clamps otherwise than a bolt. The list does not hold it.",
                ),
                wrong(
                    "half",
                    "Half of it, to be on the safe side.",
                    "Half of an unfitting value is a guess. Nobody tried it.",
                ),
                option("none", "None from this list: the maker's own, or tests on that joint."),
            ),
        ),
    ),
    draw=_draw_fatigue,
    solve=_solve_fatigue,
    reasons=(
        "Find for each range on which side of the knee it lies, and use the slope of that side. "
        "Then add the shares of life that each block takes. "
        "A sum below 1 is no promise: the rule itself scatters widely. "
        "No open curve was found for blind or self-piercing rivets, so none is made up here."
    ),
    read_again=HEADING,
)


def spoken(cycles):
    """Return a number of cycles with thin gaps between its thousands."""
    return f"{cycles:,.0f}".replace(",", " ")


EXERCISES = (FATIGUE,)
