"""Exercises on the crack test by penetrant: was it done so that it counts, and what a clean one says."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Choices, ChoicesKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.plate import (
    PENETRANT_KINDS,
    PENETRANT_RULES,
    DetectionCurve,
    clean_test_words,
    crack_left_probability,
    detectable_length_mm,
    penetrant_faults,
)

HEADING = "What does a clean crack test say?"
# What each sentence on a fault begins with, as an id.
FAULTS = {
    "penetrant dwell": "dwell",
    "developing": "developing",
    "part temperature": "temperature",
    "white light": "light",
    "ultraviolet": "ultraviolet",
}
# Values on either side of each range: sound ones first, then faulty ones.
TEMPERATURES_C = (18, 22, 30), (4, 6, 58)
DWELLS_MIN = (10, 15, 20), (2, 3, 90)
DEVELOPINGS_MIN = (12, 15, 20), (3, 5, 50)
WHITE_LIGHT_LX = {
    "colour contrast": ((700, 1000, 1500), (120, 200, 350)),
    "fluorescent": ((5, 10, 15), (60, 150, 400)),
}
ULTRAVIOLET_W_M2 = (15, 25, 40), (2, 4, 6)


@cache
def faults_of(kind, temperature_c, dwell_min, developing_min, light_lx, ultraviolet_w_m2):
    """Return the faults of one test as ids, in the order of the options."""
    sentences = penetrant_faults(
        penetrant_kind=kind,
        part_temperature_c=temperature_c,
        dwell_min=dwell_min,
        developing_min=developing_min,
        white_light_lx=light_lx,
        ultraviolet_w_m2=ultraviolet_w_m2,
    )
    return tuple(
        name for start, name in FAULTS.items() if any(words.startswith(start) for words in sentences)
    )


def _draw_test(draw):
    kind = draw.pick("kind", PENETRANT_KINDS)
    steps = {
        "temperature_c": TEMPERATURES_C,
        "dwell_min": DWELLS_MIN,
        "developing_min": DEVELOPINGS_MIN,
        "light_lx": WHITE_LIGHT_LX[kind],
    }
    if kind == "fluorescent":
        steps["ultraviolet_w_m2"] = ULTRAVIOLET_W_M2
    faulty = draw.shuffle("faulty", steps)[: draw.whole("how many", 1, 3)]
    values = {name: draw.pick(name, steps[name][name in faulty]) for name in steps}
    return scene(draw) | {"kind": kind, "ultraviolet_w_m2": 0} | values


def _test_words(scenario):
    """Return the rules of this kind of test, and the light that it was looked at in."""

    def limits(name):
        return f"{PENETRANT_RULES[name].low:g} to {PENETRANT_RULES[name].high:g}"

    ultraviolet = PENETRANT_RULES["ultraviolet, fluorescent"].low
    white = PENETRANT_RULES[f"white light, {scenario['kind']}"]
    colour = scenario["kind"] == "colour contrast"
    seen_in = f"{scenario['light_lx']} lx of white light"
    return {
        "temperature_rule": limits("part temperature"),
        "dwell_rule": limits("penetrant dwell"),
        "developing_rule": limits("developing"),
        "light_rule": (
            f"at least {white.low:g} lx"
            if colour
            else f"at most {white.high:g} lx, and at least {ultraviolet:g} W/m² of ultraviolet"
        ),
        "seen_in": seen_in if colour else f"{seen_in} and {scenario['ultraviolet_w_m2']} W/m² of ultraviolet",
    }


def _solve_test(table):
    columns = ("kind", "temperature_c", "dwell_min", "developing_min", "light_lx", "ultraviolet_w_m2")
    tests = zip(*(table[name].tolist() for name in columns), strict=True)
    return {
        "faults": ChoicesKey(right=[faults_of(*test) for test in tests]),
        "after": ChoiceKey(right=same(table, "remove")),
    }


PENETRANT = Exercise(
    id="second_plate.penetrant",
    objective="inspect",
    title="Does this crack test count?",
    prompt=(
        "{shop} looked for cracks at a button of {vehicle} with a {kind} penetrant. "
        "The part was at {temperature_c} °C. The excess was wiped off with a cloth. "
        "Penetrant on: {dwell_min} min. Developer on: {developing_min} min. "
        "It was looked at in {seen_in}. "
        "The general rule from memory: part {temperature_rule} °C, penetrant {dwell_rule} min, "
        "developer {developing_rule} min, white light {light_rule}."
    ),
    shown=_test_words,
    parts=(
        Choices(
            id="faults",
            ask="What was wrong with this test?",
            points=1.5,
            options=(
                wrong(
                    "wiped",
                    "The excess was wiped off.",
                    "Wiping belongs to the method: what is left in a crack is what comes out later.",
                ),
                option("dwell", "The time that the penetrant was on."),
                option("temperature", "The temperature of the part."),
                option("light", "The white light."),
                option("developing", "The time that the developer was on."),
                wrong(
                    "ultraviolet",
                    "The ultraviolet light.",
                    "Colour is seen in white light. Only the fluorescent kind wants enough ultraviolet.",
                ),
            ),
        ),
        Choice(
            id="after",
            ask="A test that counts was clean. What comes before sealing or bonding?",
            options=(
                wrong(
                    "nothing",
                    "Nothing: a clean test means a clean plate.",
                    "Clean means that nothing was seen. The oil of the penetrant is still on the plate.",
                ),
                wrong(
                    "second_coat",
                    "A second coat of developer, so that the sealer sticks.",
                    "Developer is a powder. Sealer sticks to the powder and the powder to nothing.",
                ),
                option("remove", "Clean off penetrant and developer, as their data sheet says."),
            ),
        ),
    ),
    draw=_draw_test,
    solve=_solve_test,
    reasons=(
        "Compare each step with its range; one fault is enough and the test says nothing. "
        "Colour wants much white light; the fluorescent kind wants the dark and ultraviolet. "
        "The data sheet of the penetrant comes before the general ranges. "
        "Penetrant left on a plate keeps sealer and glue from sticking."
    ),
    read_again=HEADING,
)

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

EXERCISES = (PENETRANT, MISSED_CRACK)
