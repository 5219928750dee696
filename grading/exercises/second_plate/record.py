"""Exercises on the record of a repair: entries in their order, and what is wrong with a finished one."""

from grading.exercise import Choice, ChoiceKey, Choices, ChoicesKey, Exercise, Order, OrderKey
from grading.exercises.building_blocks import option, same, wrong
from grading.exercises.scenes import scene
from grading.exercises.second_plate.protect import STEPS, sentence
from secondplate.corrosion import ISOLATION_STEP_NAMES, isolation_faults
from secondplate.eurocode9 import least_distance_mm
from secondplate.fasteners import blind_rivet, grip_range_mm, hole_verdict
from secondplate.measuring import VERDICTS, conformity, guard_band_mm
from secondplate.plate import PENETRANT_RULES, penetrant_faults
from secondplate.repair_record import RECORD_ENTRIES, RECORD_ENTRY_NAMES

HEADING = "What goes in the record?"
ENTRY_IDS = dict(
    zip(
        RECORD_ENTRY_NAMES,
        ("procedure", "before", "trial", "pulls", "left", "verdict", "fasteners", "protection", "release"),
        strict=True,
    )
)
SHOWN_ENTRIES = (
    "left",
    "fasteners",
    "before",
    "release",
    "procedure",
    "pulls",
    "protection",
    "trial",
    "verdict",
)
ENTRIES = {ENTRY_IDS[entry.name]: entry for entry in RECORD_ENTRIES}
ASKED_ENTRIES = ("trial", "before", "protection", "left")

RECORD_ORDER = Exercise(
    id="second_plate.record_order",
    objective="protect",
    title="A record that can be read in ten years",
    prompt=(
        "A record is kept at {shop} of each drawn rivet of {vehicle}. "
        "Somebody who was not there has to understand it in ten years. "
        "One entry is asked about on its own: {entry_words}."
    ),
    parts=(
        Order(
            id="entries",
            ask="Put the entries in the order in which they can be written.",
            options=tuple(
                option(name, f"{ENTRIES[name].name}: {ENTRIES[name].conditions}") for name in SHOWN_ENTRIES
            ),
            points=2.0,
        ),
        Choice(
            id="reason",
            ask="Why may the entry that is asked about not be left out?",
            options=tuple(option(name, sentence(ENTRIES[name].reason)) for name in ASKED_ENTRIES),
        ),
        Choice(
            id="thickness",
            ask="Which line on the thickness that is left is of use?",
            options=(
                wrong(
                    "good",
                    "Thickness good.",
                    "Good by which limit, and read with what? Nobody can check it.",
                ),
                wrong(
                    "digits",
                    "0.5183 mm.",
                    "Four digits are no sign of care. Neither its doubt nor its limit is told.",
                ),
                option("whole", "0.52 mm, U 0.03 mm, gauge 4; at least 0.45 mm by the procedure."),
            ),
        ),
    ),
    draw=lambda draw: scene(draw) | {"entry": draw.pick("entry", ASKED_ENTRIES)},
    solve=lambda table: {
        "entries": OrderKey(right=same(table, tuple(ENTRY_IDS[name] for name in RECORD_ENTRY_NAMES))),
        "reason": ChoiceKey(right=[str(name) for name in table["entry"]]),
        "thickness": ChoiceKey(right=same(table, "whole")),
    },
    shown=lambda scenario: {"entry_words": ENTRIES[scenario["entry"]].name},
    reasons=(
        "Write each entry when its work is done, not at the end of the day. "
        "What was there before you began comes before all work; who answers for it comes last. "
        "A value without its limit, its doubt and its tool cannot be checked. "
        "Where the maker, the insurer or the law has a form, that form comes first."
    ),
    read_again=HEADING,
)

RIVET = blind_rivet("ISO 15977 H", 4.8)
GRIP_MM = grip_range_mm(RIVET.diameter_mm, rivet_length_mm=8)
LEAST_EDGE_MM = float(least_distance_mm("edge distance", RIVET.hole_most_mm))
REQUIRED_MM, UNCERTAINTY_MM = 0.45, 0.02
CONFORMS = VERDICTS[0]
DWELL = PENETRANT_RULES["penetrant dwell"]
CRACK_TEST = {
    "penetrant_kind": "colour contrast",
    "part_temperature_c": 20,
    "developing_min": 15,
    "white_light_lx": 1000,
}
# Steps of keeping metals apart, two and two: what the record says was done first, and then.
PAIRS = ("conversion primer", "primer sealer", "wet top_coat", "top_coat wax")
# What each line of the record may say: sound values first, then faulty ones.
LINES = {
    "trial": ((0,), (-60, -40, 40, 60)),  # A on the car more than on the trial piece
    "pull": ((-900, -600, -300), (200, 400, 700)),  # N on the car more than the trial stud held
    "thickness": ((0.06, 0.08, 0.12), (-0.01, 0.01, 0.02)),  # mm above what is required
    "crack": ((10, 15, 20), (2, 3)),  # min that the penetrant was on
    "hole": ((4.9, 4.95, 5.0), (4.8, 5.1, 5.2)),  # mm
    "grip": ((2.8, 3.2, 3.6), (4.3, 4.6, 5.2)),  # mm of stack for a rivet of 8 mm
    "edge": ((8.0, 9.0, 10.0), (4.0, 5.0)),  # mm from the free edge
    "order": ((False,), (True,)),  # whether two steps changed places
}


def is_faulty(line, value, steps):
    """Tell whether one line of the record shows a fault."""
    if line == "thickness":
        room = conformity(REQUIRED_MM + value, standard_uncertainty_mm=UNCERTAINTY_MM, least_mm=REQUIRED_MM)
        return room != CONFORMS
    if line == "crack":
        return bool(penetrant_faults(dwell_min=value, **CRACK_TEST))
    if line == "hole":
        return hole_verdict(value, fastener=RIVET) != "right"
    if line == "grip":
        least_mm, greatest_mm = GRIP_MM
        return not least_mm <= value <= greatest_mm
    if line == "edge":
        return value < LEAST_EDGE_MM
    if line == "order":
        return bool(isolation_faults(_done(steps, value)))
    # The car is to be welded as the trial piece was, and pulled no harder than the trial stud.
    return value != 0 if line == "trial" else value > 0


def _done(steps, swapped):
    """Return the names of all steps in their order, two of them swapped where told."""
    names = list(ISOLATION_STEP_NAMES)
    if swapped:
        first, second = (names.index(STEPS[step].name) for step in steps.split())
        names[first], names[second] = names[second], names[first]
    return names


def _draw_faults(draw):
    faulty = draw.shuffle("faulty", LINES)[: draw.whole("how many", 2, 4)]
    values = {line: draw.pick(line, LINES[line][line in faulty]) for line in LINES}
    return scene(draw) | {
        "trial_a": draw.whole("trial_a", 560, 700, 20),
        "held_n": draw.whole("held_n", 5200, 6400, 100),
        "steps": draw.pick("steps", PAIRS),
        **values,
    }


def _fault_words(scenario):
    first, second = scenario["steps"].split()[:: -1 if scenario["order"] else 1]
    return {
        "car_a": scenario["trial_a"] + scenario["trial"],
        "pulled": scenario["held_n"] + scenario["pull"],
        "reading": f"{REQUIRED_MM + scenario['thickness']:.2f}",
        "required": f"{REQUIRED_MM:.2f}",
        "guard": f"{guard_band_mm(UNCERTAINTY_MM):.3f}",
        "dwell_rule": f"{DWELL.low:g} to {DWELL.high:g}",
        "hole_rule": f"{RIVET.hole_least_mm:g} to {RIVET.hole_most_mm:g}",
        "grip_rule": f"{GRIP_MM[0]:g} to {GRIP_MM[1]:g}",
        "edge_rule": f"{LEAST_EDGE_MM:g}",
        "first_step": STEPS[first].name,
        "second_step": STEPS[second].name,
    }


def _solve_faults(table):
    right = []
    for row, steps in enumerate(table["steps"].tolist()):
        right.append(tuple(line for line in LINES if is_faulty(line, table[line][row].item(), steps)))
    return {"faults": ChoicesKey(right=right), "mend": ChoiceKey(right=same(table, "strike"))}


RECORD_FAULTS = Exercise(
    id="second_plate.record_faults",
    objective="protect",
    title="What is wrong with this record?",
    prompt=(
        "A record of one site on {vehicle}, signed at {shop}. "
        "Procedure: the maker's, of this month. "
        "Weld: trial piece {trial_a} A, on the car {car_a} A, time and stud the same. "
        "Pull: the trial stud held {held_n} N; pulled with {pulled} N at the most. "
        "Thickness: {reading} mm read, {required} mm required, guard {guard} mm; verdict leave and seal. "
        "Crack test: colour, at 20 °C and 1000 lx, penetrant {crack} min of {dwell_rule}, "
        "developer 15 min; clean. "
        "Hole: {hole} mm, to be {hole_rule}. Stack: {grip} mm, rivet for {grip_rule}. "
        "Edge: {edge} mm to the free edge, to be {edge_rule} at the least. "
        "Protection: {first_step}; after it, {second_step}. The rest in order."
    ),
    shown=_fault_words,
    parts=(
        Choices(
            id="faults",
            ask="Which lines show that something is wrong?",
            options=(
                wrong(
                    "procedure",
                    "Procedure",
                    "It says whose procedure and of when. That is what the line is for.",
                ),
                option("order", "Protection"),
                option("hole", "Hole"),
                option("pull", "Pull"),
                option("crack", "Crack test"),
                option("trial", "Weld"),
                option("edge", "Edge"),
                option("thickness", "Thickness"),
                option("grip", "Stack"),
            ),
            points=2.0,
        ),
        Choice(
            id="mend",
            ask="You find a wrong line in your own record. What do you do?",
            options=(
                wrong(
                    "rub_out",
                    "Write the line again as it should be, so that the record is clean.",
                    "Then the record says what did not happen. Nobody can trust the other lines either.",
                ),
                option(
                    "strike",
                    "Strike it out so that it can be read, sign and date, and do again what was done wrong.",
                ),
                wrong(
                    "leave",
                    "Leave it: a record must never be touched.",
                    "A record may be corrected, if everybody can see what, when and by whom.",
                ),
            ),
        ),
    ),
    draw=_draw_faults,
    solve=_solve_faults,
    reasons=(
        "Hold each line against its own limit. "
        "A car that was welded or pulled otherwise than the trial was not tried at all. "
        "A reading within the guard proves nothing, and a crack test outside its times is no test. "
        "Correct a record in the open: the old line stays readable."
    ),
    read_again=HEADING,
)

EXERCISES = (RECORD_ORDER, RECORD_FAULTS)
