"""Exercises on what good pulls prove: the success run, the least reliability shown, and an interval."""

from functools import cache
from statistics import NormalDist

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Range, RangeKey
from grading.exercises.building_blocks import chosen, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.trials import (
    CONVENTIONS,
    reliability_shown,
    row_proof,
    success_run_pulls,
    success_run_reliability,
    wilson_interval,
)

HEADING = "How much does one good pull prove?"
BINOMIAL, UNIFORM = CONVENTIONS
WHOLE_PULLS = "Pulls are counted: only the whole number is right."


def _run(reliable, sure, convention=BINOMIAL):
    """Return the good pulls that a proof takes; both values in percent."""
    return success_run_pulls(reliability=reliable / 100, confidence=sure / 100, convention=convention)


def _run_answers(reliable, sure):
    """Return the pulls of both conventions, and what the slips make of them."""
    needed = _run(reliable, sure)
    return {
        "needed": needed,
        "one_less": needed - 1,
        "swapped": _run(sure, reliable),
        "one_in": np.rint(100 / (100 - reliable)).astype(int),
        "one_more": needed + 1,
    }


@cache
def _proofs():
    """Return pairs of reliability and confidence in percent for which no two answers are alike."""
    reliable, sure = (each.ravel() for each in np.meshgrid(np.arange(80, 100), [75, 80, 85, 90, 95, 99]))
    answers = np.array([*_run_answers(reliable, sure).values()])
    alike = np.array([len(set(column)) < len(answers) for column in answers.T])
    return [
        {"reliable": int(one), "sure": int(other)}
        for one, other in zip(reliable[~alike], sure[~alike], strict=True)
    ]


def _draw_run(draw):
    proof = draw.pick("proof", _proofs())
    needed = _run(proof["reliable"], proof["sure"])
    # A row far longer than the proof is rare on a car, and then the answer is another one.
    longer = draw.pick("longer", (False, False, True)) and needed <= 30
    rivets = needed + draw.whole("more", 2, 8) if longer else draw.whole("rivets", 5, min(30, needed - 2))
    return scene(draw) | proof | {"rivets": rivets}


def _solve_run(table):
    reliable, sure = table["reliable"], table["sure"]
    found = _run_answers(reliable, sure)
    enough = [
        row_proof(rivets, reliability=one / 100, confidence=other / 100).enough
        for rivets, one, other in zip(table["rivets"].tolist(), reliable, sure, strict=True)
    ]
    return {
        "needed": NumberKey(
            value=found["needed"], slips={name: found[name] for name in ("one_less", "swapped", "one_in")}
        ),
        "other_convention": NumberKey(
            value=_run(reliable, sure, UNIFORM),
            slips={"unchanged": found["needed"], "one_more": found["one_more"]},
        ),
        "row": ChoiceKey(right=chosen([enough], ["used_up"], otherwise="too_few")),
    }


SUCCESS_RUN = Exercise(
    id="removal.success_run",
    objective="proof",
    title="How many good pulls make a proof?",
    prompt=(
        "A customer of {shop} asks for proof: of the welds on {vehicle} at least {reliable} % must hold, "
        "with {sure} % confidence. "
        "The row has {rivets} rivets. "
        "If none of n pulls may fail, n is the first whole number for which reliability to the power n "
        "is not above one less the confidence. "
        "Another convention starts from the belief that any reliability is as likely as any other, "
        "and that counts like one good pull beforehand."
    ),
    parts=(
        Number(
            id="needed",
            ask="How many pulls in a row without a failure does the proof take, by the first convention?",
            unit="pulls",
            absolute_tolerance=0.2,
            tolerance_reason=WHOLE_PULLS,
            slips=(
                slip("one_less", "That falls just short. Round up, and keep to the first convention."),
                slip("swapped", "Reliability and confidence have changed places."),
                slip("one_in", "That many pulls would bring one failure on the average. It proves little."),
            ),
        ),
        Number(
            id="other_convention",
            ask="How many by the other convention?",
            unit="pulls",
            absolute_tolerance=0.2,
            tolerance_reason=WHOLE_PULLS,
            slips=(
                slip(
                    "unchanged",
                    "That is the first convention. What is counted beforehand need not be pulled.",
                ),
                slip(
                    "one_more", "What is counted beforehand spares you a pull. It does not ask for one more."
                ),
            ),
        ),
        Choice(
            id="row",
            ask="What can the row of this car prove?",
            options=(
                option("too_few", "Not that: it has too few rivets, however well they come out."),
                wrong(
                    "first_ones",
                    "If the first few come out well, the rest is proved good.",
                    "A few good pulls show only a low reliability. Work out how low.",
                ),
                option(
                    "used_up",
                    "It could be reached, but the pulled rivets are gone and the next car starts anew.",
                ),
            ),
        ),
    ),
    draw=_draw_run,
    solve=_solve_run,
    reasons=(
        "Take the logarithm of one less the confidence, over the logarithm of the reliability, and round up. "
        "The other convention takes one pull less, so say which one you use. "
        "A row on a car is nearly always shorter than the proof. "
        "A test pull is there to find a wrong setting, and it proves no reliability."
    ),
    read_again=HEADING,
)


def _draw_bound(draw):
    return scene(draw) | {
        "pulls": draw.whole("pulls", 4, 12),
        "sure": draw.pick("sure", (80, 85, 90, 95)),
        "rest": draw.whole("rest", 3, 20),
    }


def _solve_bound(table):
    pulls, sure = table["pulls"], table["sure"] / 100
    shown = 100 * success_run_reliability(pulls, confidence=sure, convention=BINOMIAL)
    failed = 100 * reliability_shown(pulls, 1, confidence=sure, convention=BINOMIAL)
    return {
        "shown": NumberKey(
            value=shown,
            slips={
                "every": np.full(len(shown), 100.0),
                "other_convention": 100 * success_run_reliability(pulls, confidence=sure, convention=UNIFORM),
                "fails": 100 - shown,
            },
        ),
        "say": ChoiceKey(right=same(table, "at_least")),
        "one_failed": ChoiceKey(right=chosen([failed < shown], ["lower"], otherwise="same")),
        "mixed": ChoiceKey(right=same(table, "each")),
    }


LOWER_BOUND = Exercise(
    id="removal.lower_bound",
    objective="proof",
    title="All came out: what does it show?",
    prompt=(
        "{shop} has drawn {pulls} rivets from {vehicle} with one setting, and every one came out. "
        "{rest} are still in. "
        "You want to be {sure} % sure of what you say. "
        "The bound is the reliability at which such a run has just the chance that is left over, "
        "100 % less {sure} %. "
        "Nothing is counted beforehand."
    ),
    parts=(
        Number(
            id="shown",
            ask="Which reliability do the good pulls show at the least?",
            unit="%",
            absolute_tolerance=0.4,
            tolerance_reason="Shown to whole percent: a little less than half of one either way.",
            slips=(
                slip("every", "That is the share that came out. It is no bound for the next ones."),
                slip(
                    "other_convention",
                    "That counts one good pull beforehand. Only those that were made are to count.",
                    credit=0.5,
                ),
                slip("fails", "That is the share that may still fail. What holds was asked for."),
            ),
        ),
        Choice(
            id="say",
            ask="What do you write into the report?",
            options=(
                wrong(
                    "all_good",
                    "All rivets of this car come out, for all have done so.",
                    "So far. A setting that often fails can have a good run as well.",
                ),
                option("at_least", "So many pulls, no failure, and the bound with its confidence."),
                wrong(
                    "sure",
                    "The confidence, as the share that will come out.",
                    "The confidence tells how sure you are. The share that comes out is the other figure.",
                ),
            ),
        ),
        Choice(
            id="one_failed",
            ask="Suppose one of these pulls had failed. What would become of the bound?",
            options=(
                option("lower", "It would be lower."),
                wrong(
                    "same",
                    "Nothing, if the others came out.",
                    "A failure is the strongest news there is. It counts for more than a good pull.",
                ),
                wrong(
                    "leave_out",
                    "Nothing: a failure with a known cause is left out.",
                    "Only a change that was made before all later pulls begins a new count.",
                ),
            ),
        ),
        Choice(
            id="mixed",
            ask="Half of the pulls were made before the gun was re-set. What now?",
            options=(
                wrong(
                    "add",
                    "Add them up: more pulls prove more.",
                    "They come from two settings. Together they tell of neither.",
                ),
                wrong(
                    "better",
                    "Report the half that looks better.",
                    "What is picked after the fact proves nothing.",
                ),
                option("each", "Count each setting on its own; only the last one tells of the rest."),
            ),
        ),
    ),
    draw=_draw_bound,
    solve=_solve_bound,
    reasons=(
        "With no failure the bound is one less the confidence, to the power of one over the pulls. "
        "A failure lowers it. "
        "It holds for one setting, one kind of rivet and one pair of hands; after a change you begin again. "
        "Five or ten good pulls leave room for many failures."
    ),
    read_again=HEADING,
)

CONFIDENCE = 0.95
TELL_APART = 0.35  # percent by which an end differs from whatever number a prompt shows
Z = NormalDist().inv_cdf((1 + CONFIDENCE) / 2)
ONE_SIDED_Z = NormalDist().inv_cdf(CONFIDENCE)


@cache
def _seasons():
    """Return pulls and failures for which neither end of the interval stands in the prompt by chance."""
    failed, pulls = (each.ravel() for each in np.meshgrid(np.arange(5, 11), np.arange(28, 61)))
    ends = np.array(wilson_interval(pulls, failed, confidence=CONFIDENCE)) * 100
    plain = np.all([np.abs(ends - shown).min(axis=0) > TELL_APART for shown in (failed, pulls, 4)], axis=0)
    return [(int(pulls[place]), int(failed[place])) for place in np.flatnonzero(plain)]


def _draw_interval(draw):
    pulls, failed = draw.pick("season", _seasons())
    low, high = (100 * end for end in wilson_interval(pulls, failed, confidence=CONFIDENCE))
    inside, below, above = (low + high) / 2, low / 2, 1.4 * high
    earlier = draw.pick("earlier", (inside - 3, inside + 4, below, above))
    return scene(draw) | {"failed": failed, "pulls": pulls, "earlier": round(earlier)}


def _plain_interval(pulls, failed, z):
    """Return the interval that is as far to both sides of the share seen, in percent."""
    seen = failed / pulls
    half = z * np.sqrt(seen * (1 - seen) / pulls)
    return 100 * (seen - half), 100 * (seen + half)


def _solve_interval(table):
    pulls, failed, earlier = table["pulls"], table["failed"], table["earlier"]
    low, high = (100 * end for end in wilson_interval(pulls, failed, confidence=CONFIDENCE))
    narrow = [100 * end for end in wilson_interval(pulls, failed, confidence=2 * CONFIDENCE - 1)]
    four_low, four_high = wilson_interval(4 * pulls, 4 * failed, confidence=CONFIDENCE)
    times = (high - low) / (100 * (four_high - four_low))
    return {
        "interval": RangeKey(
            low=low,
            high=high,
            slips={
                "plain": _plain_interval(pulls, failed, Z),
                "one_sided": tuple(narrow),
                "good": (100 - high, 100 - low),
            },
        ),
        "changed": ChoiceKey(
            right=chosen([earlier < low, earlier > high], ["worse", "better"], otherwise="open")
        ),
        "half": ChoiceKey(right=chosen([(times > 1.8) & (times < 2.2)], ["four"], otherwise="two")),
    }


INTERVAL = Exercise(
    id="removal.interval",
    objective="proof",
    title="So many failed: what is the share?",
    prompt=(
        "Over a season {shop} made {pulls} trial pulls with one setting, and {failed} failed. "
        "Before that {earlier} % failed. "
        "The score interval for {confidence} % lies round (x + z²/2) / (n + z²), "
        "to both sides by z / (n + z²) times the root of x (n − x) / n + z²/4. "
        "x is the failures, n the pulls, and z is {z} where both sides count."
    ),
    shown=lambda scenario: {"confidence": f"{100 * CONFIDENCE:.0f}", "z": f"{Z:.2f}"},
    parts=(
        Range(
            id="interval",
            ask="Between which two shares do the failures lie?",
            unit="%",
            absolute_tolerance=0.3,
            tolerance_reason="Shares are worked out to a tenth of a percent: three of them either way.",
            slips=(
                slip(
                    "plain", "That is as far to both sides of the share seen. With few failures it misleads."
                ),
                slip("one_sided", "That z leaves all of the doubt on one side. Both sides count here."),
                slip("good", "That is the share that holds. The failures were asked for."),
            ),
        ),
        Choice(
            id="changed",
            ask="What do you say of the share before?",
            options=(
                option("open", "It lies within: these pulls do not show a change."),
                option("worse", "It lies below: more fail now than before."),
                option("better", "It lies above: fewer fail now than before."),
            ),
        ),
        Choice(
            id="half",
            ask="How many pulls would make the interval half as wide, with the same share?",
            options=(
                wrong("two", "Twice as many.", "The width goes with the root of the pulls."),
                option("four", "About four times as many."),
                wrong(
                    "none",
                    "No number can: it is as wide as the welds scatter.",
                    "It tells how well the share is known, and that grows with every pull.",
                ),
            ),
        ),
    ),
    draw=_draw_interval,
    solve=_solve_interval,
    reasons=(
        "The middle lies a little nearer to a half than the share seen does. "
        "What lies within the interval is not ruled out, so a share within it shows no change. "
        "The width goes with one over the root of the pulls. "
        "The exact interval of the page never covers less than it says, and is a little wider for that."
    ),
    read_again=HEADING,
)

EXERCISES = (SUCCESS_RUN, LOWER_BOUND, INTERVAL)
