"""Exercise on what a clean crack test leaves open: cracks that it misses, and what the plate bears."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, option, slip, wrong
from grading.exercises.scenes import scene
from secondplate.plate import (
    DetectionCurve,
    clean_test_words,
    crack_left_probability,
    detectable_length_mm,
)

HEADING = "What does a clean crack test say?"
CURVE = DetectionCurve()
SAID = {"decides nothing": "nothing", "little in hand": "closer", "is enough": "enough"}


@cache
def said(detectable_mm, critical_mm):
    """Return what a clean test says of a plate, as an id."""
    words = clean_test_words(detectable_mm=detectable_mm, critical_mm=critical_mm)
    return next(name for ending, name in SAID.items() if ending in words)


def _draw_missed(draw):
    place = draw.pick("place", ("open surface", "edge or hole"))
    detectable_mm = detectable_length_mm(thickness_mm=1.2, place=place).best
    share = draw.pick("share", (0.6, 0.8, 1.3, 1.7, 2.3, 2.8))
    return scene(draw) | {
        "place": place,
        "critical_mm": round(share * detectable_mm, 1),
        # Not where half of the cracks are found: there a wrong path would be right.
        "crack_mm": draw.pick("crack_mm", (1.0, 1.1, 1.9, 2.0, 2.2, 2.4, 2.6, 2.8)),
        "prior_percent": draw.pick("prior_percent", (20, 25, 30, 35, 40)),
    }


def _solve_missed(table):
    crack_mm, prior = table["crack_mm"], table["prior_percent"] / 100
    found = CURVE.probability(crack_mm)
    left = crack_left_probability(prior=prior, detection=found)
    # The curve in the length itself, for those who leave the logarithm out.
    plain_length = CURVE.probability(np.exp(crack_mm))
    pairs = zip(_detectable_mm(table["place"]), table["critical_mm"].tolist(), strict=True)
    return {
        "missed": NumberKey(
            value=100 * (1 - found), slips={"found": 100 * found, "no_log": 100 * (1 - plain_length)}
        ),
        "left": NumberKey(
            value=100 * left,
            slips={
                "product": 100 * prior * (1 - found),
                "turned_round": 100 * (1 - left),
                "found_share": 100 * prior * found,
            },
        ),
        "says": ChoiceKey(right=[said(*pair) for pair in pairs]),
    }


def _detectable_mm(places):
    """Return the length that a penetrant is held to find in thin sheet, for each place."""
    return [float(detectable_length_mm(thickness_mm=1.2, place=str(place)).best) for place in places]


MISSED_CRACK = Exercise(
    id="second_plate.missed_crack",
    objective="inspect",
    title="What a clean test leaves open",
    prompt=(
        "On cracked samples {shop} found cracks of length a, in mm, as often as 1/(1 + e^-(b0 + b1 ln a)), "
        "with b0 = {b0} and b1 = {b1}. That is an example: every shop has its own curve. "
        "Before the test, {prior_percent} % of such buttons had a crack of {crack_mm} mm. "
        "The test of this button was clean, and it raises no false alarm. "
        "At this place ({place}) a good shop is held to find {detectable} mm. "
        "By its own sum this plate bears {critical_mm} mm. "
        "House rule: a plate must bear twice what is found."
    ),
    shown=lambda scenario: {
        "b0": f"{CURVE.b0:g}",
        "b1": f"{CURVE.b1:g}",
        "detectable": f"{_detectable_mm([scenario['place']])[0]:.1f}",
    },
    parts=(
        Number(
            id="missed",
            ask="How likely is it that this test misses a crack of that length?",
            unit="%",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("found", "That is how likely it is found. What was asked for is the rest."),
                slip("no_log", "The length itself was put in. The curve takes its natural logarithm."),
            ),
        ),
        Number(
            id="left",
            ask="How likely is such a crack in this button, now that the test was clean?",
            unit="%",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "product",
                    "That is the share of all buttons that are cracked and missed. "
                    "Only the buttons with a clean test are left to count among.",
                    credit=0.3,
                ),
                slip("turned_round", "That is how likely the button is sound."),
                slip("found_share", "Those are the cracks that were found. They had no clean test."),
            ),
        ),
        Choice(
            id="says",
            ask="What does the clean test say of this plate?",
            options=(
                option("closer", "It leaves little in hand: look again, or with a closer method."),
                option("nothing", "It decides nothing: a crack that matters may have been missed."),
                option("enough", "It is enough: what may be left is far shorter than the plate bears."),
                wrong(
                    "none",
                    "There is no crack in it.",
                    "No test says that. It says that nothing longer than what it finds is open to the face.",
                ),
            ),
        ),
    ),
    draw=_draw_missed,
    solve=_solve_missed,
    reasons=(
        "Put the length into the curve; what it does not find is missed. "
        "Among buttons with a clean test are the sound ones and the cracked ones that were missed: "
        "divide the missed by both together. "
        "Then compare what the plate bears with what the test is held to find, and with twice as much. "
        "A clean test says that no long crack is open here, never that there is none."
    ),
    read_again=HEADING,
)

EXERCISES = (MISSED_CRACK,)
