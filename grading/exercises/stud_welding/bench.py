"""Exercises at the virtual bench: a machine that is not what its papers say, and a set-up with a fault."""

from types import MappingProxyType

from grading.bench_days import DAYS, begin_with, bench_key, day
from grading.exercise import Bench, Criterion, Exercise
from grading.exercises.building_blocks import option, slip
from grading.exercises.scenes import scene

HEADING = "Can you bring a strange machine to a sound weld?"
STUD_MM = 6

STOP_REASONS = (
    option("head", "The head is burnt through or torn: this rivet goes to another way of removal."),
    option("tries", "Three studs pulled and none sound: stop, and find the cause with somebody."),
)
SENTENCES = {
    "tested_first": "Weld one stud and pull it before anything else. A collar alone proves nothing.",
    "one_change": "Two settings changed between one stud and the next: now nobody knows which one helped.",
    "right_direction": "A setting was changed the wrong way. Sign, cause, correction: read the stud again.",
    "reached_window": "The work ended outside the window: the row would fail, or spoil heads.",
    "stopped": (
        "The row may start only after a sound pull, and the work must stop when the head is spoilt or three "
        "pulls in a row are not sound."
    ),
}


def _criteria(**weights):
    """Return the rules of work with their shares of the points; each has its slip."""
    return tuple(
        Criterion(id=name, weight=weight, slip=slip(f"not_{name}", SENTENCES[name]))
        for name, weight in weights.items()
    )


STRANGE_MACHINE = Exercise(
    id="stud_welding.bench_machine",
    objective="sequence",
    title="A machine you do not know",
    prompt=(
        "A borrowed machine stands at {shop}, set from its papers for a 6 mm stud. "
        "Its display may be wrong. Gas, head, clamps and gun are in order; only current and time are yours. "
        "Weld one, pull it, change one thing, weld one again. "
        "Start the row when one stud was sound, or stop when the rule says so."
    ),
    parts=(
        Bench(
            id="log",
            ask="Bring the machine to a sound weld with as few studs as you can.",
            settings=("current_a", "time_ms"),
            criteria=_criteria(
                tested_first=0.2, one_change=0.2, right_direction=0.2, reached_window=0.2, stopped=0.2
            ),
            stop_reasons=STOP_REASONS,
            points=5.0,
        ),
    ),
    draw=lambda draw: scene(draw) | {"day": draw.whole("day", 1, DAYS)},
    solve=lambda table: {
        "log": bench_key(
            [day(int(number)) for number in table["day"]], [begin_with(STUD_MM)] * len(table["day"])
        )
    },
    reasons=(
        "Weld one stud and pull it. Read the collar: a low, wide, glossy one with a short stud is hot, a "
        "small dull one with a long stud is cold. "
        "Change the current or the time, not both, and pull again. "
        "Start the row only after a good collar and a sound pull. "
        "A burnt or torn head, or three pulls in a row that are not sound, end the work at this rivet."
    ),
    read_again=HEADING,
)

# What is wrong at the start, and nothing else: gas shut, coating left on, one clamp, stud too far in.
FAULTS = MappingProxyType(
    {
        "gas": {"gas": "none"},
        "head": {"head": "coated"},
        "earth": {"earth": "one clamp, to one side"},
        "protrusion": {"protrusion_mm": 0.3},
    }
)
# A machine that does what its display says, so that only the fault is to be found.
TRUE_MACHINE = {"current_share": 1.0, "voltage_v": 30.0}


FAULT = Exercise(
    id="stud_welding.bench_fault",
    objective="collar",
    title="Something is not right",
    prompt=(
        "The machine at {shop} is known to be true and its current and time are right. "
        "Somebody else prepared the rest, and one thing is wrong. "
        "Find it from the stud: weld one, pull it, change that one thing, and prove it with another."
    ),
    parts=(
        Bench(
            id="log",
            ask="Find what is wrong and put it right with as few studs as you can.",
            settings=("gas", "head", "earth", "protrusion_mm", "current_a"),
            criteria=_criteria(
                tested_first=0.2, one_change=0.2, right_direction=0.3, reached_window=0.2, stopped=0.1
            ),
            stop_reasons=STOP_REASONS,
            points=5.0,
        ),
    ),
    draw=lambda draw: (
        scene(draw) | {"day": draw.whole("day", 1, DAYS), "fault": draw.pick("fault", tuple(FAULTS))}
    ),
    solve=lambda table: {
        "log": bench_key(
            [day(int(number), **TRUE_MACHINE) for number in table["day"]],
            [begin_with(STUD_MM, **FAULTS[str(fault)]) for fault in table["fault"]],
        )
    },
    reasons=(
        "Holes in the collar mean air or dirt: look at the gas, then at the head. "
        "A one-sided collar means the field pushes the arc: look at the clamps. "
        "A stud that stands clear or ends too long at the right heat was not pressed in: look at how far it "
        "stands out of the nose. "
        "Change that one thing and prove it with the next stud."
    ),
    read_again=HEADING,
)

EXERCISES = (STRANGE_MACHINE, FAULT)
