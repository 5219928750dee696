"""Exercises on protrusion and lift, and on the holder of each stud size."""

import itertools

from grading.exercise import Choice, ChoiceKey, Choices, ChoicesKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import chosen, looked_up_numbers, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate import stud_weld, units

HEADING = "How far out, how far up?"
GAUGE_MM = 0.05  # what a depth gauge at the gun can be read to


def _apart(values, least):
    """Tell whether all values are positive and farther from each other than ``least``."""
    return min(values) > least and all(abs(a - b) > least for a, b in itertools.combinations(values, 2))


def _protrusion_ways_mm(protrusion_in, lift_in, now_mm):
    """Return the way to go by the right path, then by each slip of ``PROTRUSION``."""
    protrusion_mm, lift_mm = units.mm_from_inch(protrusion_in), units.mm_from_inch(lift_in)
    return (
        protrusion_mm - now_mm,
        protrusion_mm,
        protrusion_mm + now_mm,
        protrusion_mm + lift_mm - now_mm,
    )


NOW_MM = tuple(round(0.1 * tenth, 1) for tenth in range(5, 15))
PROTRUSION_CASES = tuple(
    case
    for case in itertools.product((0.06, 0.07, 0.08, 0.09, 0.10), (0.03, 0.04, 0.05, 0.06), NOW_MM)
    if _apart(_protrusion_ways_mm(*case), 4 * GAUGE_MM)
)


def _draw_protrusion(draw):
    protrusion_in, lift_in, now_mm = draw.pick("case", PROTRUSION_CASES)
    return scene(draw) | {"protrusion_in": protrusion_in, "lift_in": lift_in, "now_mm": now_mm}


def _solve_protrusion(table):
    right, whole, added, with_lift = _protrusion_ways_mm(
        table["protrusion_in"], table["lift_in"], table["now_mm"]
    )
    return {
        "way": NumberKey(value=right, slips={"whole": whole, "added": added, "with_lift": with_lift}),
        "more_lift": ChoiceKey(right=same(table, "longer_arc")),
    }


PROTRUSION = Exercise(
    id="stud_welding.protrusion",
    objective="set_up",
    title="How far must the stud come out?",
    prompt=(
        "A chart in inches at {shop} says: protrusion {protrusion_in:.2f} in, lift {lift_in:.2f} in. "
        "The stud now stands {now_mm:.1f} mm out of the foot of the gun."
    ),
    parts=(
        Number(
            id="way",
            ask="How much farther must you let the stud out?",
            unit="mm",
            absolute_tolerance=GAUGE_MM,
            tolerance_reason="A depth gauge at the gun is read to 0.05 mm.",
            slips=(
                slip("whole", "That is the whole protrusion. Part of it is there already."),
                slip("added", "What stands out already comes off, it is not put on top."),
                slip("with_lift", "The lift was put in. Protrusion is measured with the gun at rest."),
            ),
        ),
        Choice(
            id="more_lift",
            ask="Somebody turns the lift up as well, to be on the safe side. What does that do?",
            options=(
                wrong(
                    "deeper",
                    "The stud dips deeper, because it falls from higher up.",
                    "How deep it dips is set by the protrusion. The lift sets the arc.",
                ),
                option("longer_arc", "The arc becomes longer: more voltage, more heat, more wandering."),
                wrong(
                    "nothing",
                    "Nothing, as long as current and time stay.",
                    "Energy is current times time times voltage, and the arc length sets the voltage.",
                ),
            ),
        ),
    ),
    draw=_draw_protrusion,
    solve=_solve_protrusion,
    reasons=(
        "Turn the chart's protrusion into millimetres, 25.4 for an inch, and take off what stands out "
        "already. The lift does not come into it. "
        "Lift is the length of the arc: too little and the stud sticks, too much and the arc wanders and "
        "heats."
    ),
    read_again=HEADING,
)


def _rim_ways_mm(head_mm, flange_mm, thread_mm):
    """Return the rim left round a centred flange by the right path, then by each slip of ``HOLDER``."""
    return (head_mm - flange_mm) / 2.0, head_mm - flange_mm, (head_mm - thread_mm) / 2.0


def _flange_mm(thread_mm):
    return stud_weld.short_cycle_row(float(thread_mm)).flange_diameter_mm


HEADS_MM = tuple(round(7.0 + 0.1 * tenth, 1) for tenth in range(16))
OFFSETS_MM = (0.2, 0.3, 0.4, 0.5, 0.6, 0.8, 1.0)


def _holder_cases(thread_mm):
    """Return head and offset of all cases of one thread in which no slip meets the right answer."""
    flange_mm = _flange_mm(thread_mm)
    return tuple(
        (head_mm, offset_mm)
        for head_mm, offset_mm in itertools.product(HEADS_MM, OFFSETS_MM)
        if _apart(_rim_ways_mm(head_mm, flange_mm, thread_mm), 0.15)
        and abs((head_mm - flange_mm) / 2.0 - offset_mm) > 0.09
    )


HOLDER_CASES = {thread_mm: _holder_cases(thread_mm) for thread_mm in (4, 5, 6)}


def _draw_holder(draw):
    # The thread first: else the small studs, which have more cases, would crowd out the large one.
    thread_mm = draw.pick("thread_mm", tuple(HOLDER_CASES))
    head_mm, offset_mm = draw.pick("case", HOLDER_CASES[thread_mm])
    return scene(draw) | {"thread_mm": thread_mm, "head_mm": head_mm, "offset_mm": offset_mm}


def _solve_holder(table):
    flange_mm = looked_up_numbers(table["thread_mm"], _flange_mm)
    right, twice, thread = _rim_ways_mm(table["head_mm"], flange_mm, table["thread_mm"])
    return {
        "rim": NumberKey(value=right, slips={"not_halved": twice, "thread_for_flange": thread}),
        "off_centre": ChoiceKey(
            right=chosen([table["offset_mm"] < right], ["on_head"], otherwise="over_shoulder")
        ),
        "own_holder": ChoicesKey(right=same(table, ("centred", "current_path"))),
    }


HOLDER = Exercise(
    id="stud_welding.holder",
    objective="set_up",
    title="Why each stud has its own holder",
    prompt=(
        "An M{thread_mm:.0f} stud, with the flange that the short-cycle chart gives it, stands on a rivet "
        "head of {head_mm:.1f} mm. "
        "At {shop} the right holder is lost, and in a holder for a larger stud this one sits "
        "{offset_mm:.1f} mm off the centre."
    ),
    parts=(
        Number(
            id="rim",
            ask="With the stud in the centre, how wide is the rim of head left round the flange?",
            unit="mm",
            absolute_tolerance=GAUGE_MM,
            tolerance_reason="A caliper on a rivet head is read to 0.05 mm.",
            slips=(
                slip("not_halved", "That is both sides together. The rim is on each side."),
                slip("thread_for_flange", "The thread was used. What stands on the head is the flange."),
            ),
        ),
        Choice(
            id="off_centre",
            ask="Where does the weld land with the wrong holder?",
            options=(
                option("on_head", "Still on the head, with a thinner rim on one side."),
                wrong(
                    "self_centring",
                    "In the centre, because the arc pulls the stud there.",
                    "Nothing pulls it to the centre. It lands where the holder points.",
                ),
                option("over_shoulder", "Over the edge of the head, on the shoulder."),
            ),
        ),
        Choices(
            id="own_holder",
            ask="What does a holder of the right size do?",
            options=(
                wrong(
                    "sets_current",
                    "It tells the machine which current to give.",
                    "The machine does not see the holder. You set the current.",
                ),
                option("centred", "It keeps the stud square and in the centre."),
                wrong(
                    "cools",
                    "It cools the stud, so that more current can be used.",
                    "The weld is over before the holder can cool anything.",
                ),
                option(
                    "current_path",
                    "It grips all round, so that the current passes without burning the thread.",
                ),
            ),
        ),
    ),
    draw=_draw_holder,
    solve=_solve_holder,
    reasons=(
        "Read the flange of this thread in the chart. "
        "Take it off the diameter of the head and halve the rest: that is the rim. "
        "Where the stud sits farther off the centre than the rim is wide, the flange hangs over the "
        "shoulder and the weld is bad. "
        "A holder of the right size keeps the stud centred and square and carries the current."
    ),
    read_again=HEADING,
)


EXERCISES = (
    PROTRUSION,
    HOLDER,
)
