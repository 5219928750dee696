"""Exercise on the crack test by penetrant: was it done so that it counts."""

from functools import cache

from grading.exercise import Choice, ChoiceKey, Choices, ChoicesKey, Exercise
from grading.exercises.building_blocks import option, same, wrong
from grading.exercises.scenes import scene
from secondplate.plate import (
    PENETRANT_KINDS,
    PENETRANT_RULES,
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
        "At {shop} a button of {vehicle} was tested for cracks with a {kind} penetrant. "
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
                    "Ultraviolet counts for the fluorescent kind only, and against its own limit.",
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

EXERCISES = (PENETRANT,)
