"""Exercises on deciding with a measured thickness: guard band and probability of conformity."""

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.measuring import (
    VERDICTS,
    conformity,
    conformity_probability,
    guard_band_mm,
)

HEADING = "How thick is it, and how sure are you?"
VERDICT_IDS = dict(zip(VERDICTS, ("good", "open", "bad"), strict=True))


def _draw_guard(draw):
    uncertainty_mm = draw.pick("uncertainty_mm", (0.02, 0.025, 0.03, 0.035, 0.04))
    required_mm = draw.decimal("required_mm", 0.3, 0.8, 0.05, 2)
    guard_mm = guard_band_mm(uncertainty_mm)
    # Clear of both ends of the guard, so that rounding decides nothing.
    share = draw.pick("share", (-2.2, -1.5, -0.6, -0.3, 0.3, 0.6, 1.5, 2.2))
    return scene(draw) | {
        "uncertainty_mm": uncertainty_mm,
        "required_mm": required_mm,
        "reading_mm": round(required_mm + share * guard_mm, 2),
    }


def verdict(table):
    """Return the verdict on each reading, as an id."""
    words = conformity(
        table["reading_mm"], standard_uncertainty_mm=table["uncertainty_mm"], least_mm=table["required_mm"]
    )
    return [VERDICT_IDS[str(word)] for word in words]


def _solve_guard(table):
    required_mm, uncertainty_mm = table["required_mm"], table["uncertainty_mm"]
    guard_mm = guard_band_mm(uncertainty_mm)
    return {
        "least": NumberKey(
            value=required_mm + guard_mm,
            slips={
                "below": required_mm - guard_mm,
                "no_factor": required_mm + uncertainty_mm,
                "two_sided": required_mm + guard_band_mm(uncertainty_mm, two_sided=True),
            },
        ),
        "verdict": ChoiceKey(right=verdict(table)),
        "burden": ChoiceKey(right=same(table, "both")),
    }


GUARD_BAND = Exercise(
    id="second_plate.guard_band",
    objective="measure",
    title="How much above the limit is enough?",
    prompt=(
        "At least {required_mm} mm must be left in a plate of {vehicle}. "
        "The gauge of {shop} has a standard uncertainty of {uncertainty_mm} mm. "
        "With 95 % on one side, a verdict takes a guard of {factor} standard uncertainties. "
        "On both sides at once it would be {both}. "
        "The mean reading is {reading_mm} mm."
    ),
    shown=lambda scenario: {
        "factor": f"{guard_band_mm(1.0):.3f}",
        "both": f"{guard_band_mm(1.0, two_sided=True):.3f}",
    },
    parts=(
        Number(
            id="least",
            ask="What must the gauge read at least, to prove that enough is left?",
            unit="mm",
            absolute_tolerance=0.002,
            tolerance_reason="The guards by one side and by two lie more than five micrometres apart.",
            slips=(
                slip("below", "The guard was taken off. To prove something good it goes on top."),
                slip(
                    "no_factor", "The standard uncertainty went in as it is. The guard is a multiple of it."
                ),
                slip("two_sided", "That is the factor for two limits. Here there is only one."),
            ),
        ),
        Choice(
            id="verdict",
            ask="What does this reading say?",
            options=(
                option("open", "Nothing is decided: it lies within the guard."),
                option("bad", "It is proved that too little is left."),
                option("good", "It is proved that enough is left."),
            ),
        ),
        Choice(
            id="burden",
            ask="Another reading lies just below the limit, within the guard. Is that plate bad?",
            options=(
                wrong(
                    "yes",
                    "Yes: it is below the limit.",
                    "Below by less than the guard can still be a good plate. Saying bad takes proof as well.",
                ),
                wrong(
                    "no_good",
                    "No, it is good: nothing has been proved against it.",
                    "Not proved bad is not proved good. There is a third verdict.",
                ),
                option("both", "No: good and bad both take proof, and this is neither yet."),
            ),
        ),
    ),
    draw=_draw_guard,
    solve=_solve_guard,
    reasons=(
        "The guard is the factor times the standard uncertainty, added to the limit. "
        "Above that the plate is proved good; as far below the limit it is proved bad. "
        "Between the two nothing is decided: measure with less uncertainty, "
        "and until then do not count on the plate."
    ),
    read_again=HEADING,
)


def _draw_conformity(draw):
    uncertainty_mm = draw.pick("uncertainty_mm", (0.02, 0.025, 0.03, 0.04, 0.05))
    required_mm = draw.decimal("required_mm", 0.3, 0.8, 0.05, 2)
    # Not where two sides and the rest are alike, and not so far that nobody would ask.
    steps = draw.pick("steps", (0.8, 0.9, 1.0, 1.1, 1.2, 1.3, 1.4, 1.8, 1.9))
    return scene(draw) | {
        "uncertainty_mm": uncertainty_mm,
        "required_mm": required_mm,
        "reading_mm": round(required_mm + steps * uncertainty_mm, 3),
        "plates": draw.pick("plates", (40, 60, 80, 120, 200)),
    }


def _solve_conformity(table):
    inside = conformity_probability(
        table["reading_mm"], standard_uncertainty_mm=table["uncertainty_mm"], least_mm=table["required_mm"]
    )
    plates = table["plates"]
    return {
        "probability": NumberKey(
            value=100 * inside,
            slips={"rest": 100 * (1 - inside), "two_sided": 100 * (2 * inside - 1)},
        ),
        "too_thin": NumberKey(
            value=plates * (1 - inside),
            slips={"good_ones": plates * inside, "two_sides": 2 * plates * (1 - inside)},
        ),
        "verdict": ChoiceKey(right=verdict(table)),
    }


CONFORMITY = Exercise(
    id="second_plate.conformity",
    objective="measure",
    title="How likely is it thick enough?",
    prompt=(
        "At least {required_mm} mm must be left. "
        "On a plate of {vehicle} the gauge reads {reading_mm} mm, with a standard uncertainty of "
        "{uncertainty_mm} mm and a normal scatter. "
        "Nothing else is known of the plate. "
        "A table of the normal curve, a spreadsheet or the cell above gives the share. "
        "At {shop} a plate is called good where 95 % are reached. "
        "In a year {plates} plates read just this."
    ),
    parts=(
        Number(
            id="probability",
            ask="How likely is it that enough is left?",
            unit="%",
            absolute_tolerance=0.4,
            tolerance_reason="A table of the normal curve in steps of a hundredth gives it to 0.4 %.",
            slips=(
                slip("rest", "That is how likely it is too thin. What was asked for is the other part."),
                slip("two_sided", "That is the share within both sides. Too thick does no harm here."),
            ),
        ),
        Number(
            id="too_thin",
            ask="If all of them are let pass, how many are too thin on average?",
            unit="pieces",
            relative_tolerance=0.05,
            tolerance_reason="The share comes off a table: a twentieth of the count covers that.",
            slips=(
                slip("good_ones", "Those are the good ones. Count the others."),
                slip("two_sides", "Both ends of the curve were counted. Only the thin end does harm."),
            ),
        ),
        Choice(
            id="verdict",
            ask="What does the shop's rule say of this plate?",
            options=(
                option("good", "It is proved good."),
                option("open", "It is not decided."),
                wrong(
                    "bad",
                    "It is proved bad, as it is not proved good.",
                    "Proved bad would take a reading below the limit, by as much as good takes above it.",
                ),
            ),
        ),
    ),
    draw=_draw_conformity,
    solve=_solve_conformity,
    reasons=(
        "Take the reading less the limit, in standard uncertainties, and look the share up. "
        "What is left to the whole is too thin: times the number of plates. "
        "Nine in ten sounds good, and still one plate in ten would go out too thin. "
        "That is why the rule asks for 95 %, and why the guard says the same in millimetres."
    ),
    read_again=HEADING,
)

EXERCISES = (GUARD_BAND, CONFORMITY)
