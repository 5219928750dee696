"""Exercises on magnetic fields and on fire."""

from grading.exercise import (
    Choice,
    ChoiceKey,
    Choices,
    ChoicesKey,
    Exercise,
    Number,
    NumberKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import chosen, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate import cautions, electrics, units

HEADING = "What can hurt you or the car?"


def _caution(hazard, name):
    """Return one safety number of the library."""
    return next(item.value for item in cautions.cautions_about(hazard) if item.name == name)


def _draw_predict(draw):
    return scene(draw) | {"current_a": draw.whole("current_a", 500, 900, 20)}


PREDICT_FIELD = Exercise(
    id="stud_welding.predict_field",
    objective="safety",
    title="Predict: two steps back",
    prompt=(
        "A gun cable carries {current_a:.0f} A. "
        "You stand half a metre from it and step back to one metre. "
        "Decide before you compute."
    ),
    parts=(
        Choice(
            id="field",
            ask="What happens to the magnetic field where you stand?",
            options=(
                wrong(
                    "gone",
                    "It is gone: magnetism reaches only a hand's width.",
                    "The field of a long cable fades slowly. It never stops at an edge.",
                ),
                option("half", "It becomes half as strong."),
                wrong(
                    "quarter",
                    "It becomes a quarter as strong.",
                    "A quarter would be a lamp's light. A long straight cable fades more slowly.",
                ),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"field": ChoiceKey(right=same(table, "half"))},
    reasons=(
        "Near one long cable the field goes down with the distance: twice as far, half the field. "
        "Where the return cable lies beside it, the two nearly cancel, and that is why they are laid "
        "together."
    ),
    read_again=HEADING,
    counts=False,
)


ACTION_LEVEL_UT = _caution("field", "field for implants")


def _draw_field(draw):
    return scene(draw) | {
        "current_a": draw.whole("current_a", 480, 900, 10),
        "stand_percent": draw.pick("stand_percent", (150, 200, 250, 300)),
    }


def _solve_field(table):
    current_a = table["current_a"]
    reach_m = electrics.distance_for_field_m(current_a=current_a, field_ut=ACTION_LEVEL_UT)
    return {
        "reach": NumberKey(
            value=reach_m,
            slips={
                "millitesla": electrics.distance_for_field_m(
                    current_a=current_a, field_ut=ACTION_LEVEL_UT / 1000.0
                ),
                "no_two": 2.0 * reach_m,
                "across": 0.5 * reach_m,
            },
        ),
        "implant": ChoiceKey(right=same(table, "stays_away")),
        "cables": ChoicesKey(right=same(table, ("together", "one_side"))),
    }


def _stand(scenario):
    reach_m = electrics.distance_for_field_m(current_a=scenario["current_a"], field_ut=ACTION_LEVEL_UT)
    return {"stand_m": f"{reach_m * scenario['stand_percent'] / 100:.1f}"}


FIELD = Exercise(
    id="stud_welding.magnetic_field",
    objective="safety",
    title="How far does the field reach?",
    prompt=(
        "The gun cable at {shop} lies alone on the floor and carries {current_a:.0f} A. "
        "For people with active implants a field of 0.5 mT is the action level. "
        "A colleague with a pacemaker wants to watch from {stand_m} m."
    ),
    shown=_stand,
    parts=(
        Number(
            id="reach",
            ask="Out to which distance from the single cable is the field above that level?",
            unit="m",
            relative_tolerance=0.03,
            tolerance_reason="A real cable is neither straight nor alone, so 3 % is right.",
            slips=(
                slip("millitesla", "A millitesla is a thousand microtesla."),
                slip("no_two", "Twice too far: the field is the current over two pi times the distance."),
                slip("across", "Half as far: check whether a diameter was used where the distance belongs."),
            ),
        ),
        Choice(
            id="implant",
            ask="What do you tell the colleague?",
            options=(
                wrong(
                    "far_enough",
                    "The place is outside that distance, so it is safe.",
                    "The sum is for one straight cable. It is no permission for anybody's heart.",
                ),
                wrong(
                    "short_pulse",
                    "The weld lasts only milliseconds, so it does not matter.",
                    "A short strong pulse is just what can disturb an implant.",
                ),
                option(
                    "stays_away",
                    "Stay out of the welding area until your physician has said yes for this equipment.",
                ),
            ),
        ),
        Choices(
            id="cables",
            ask="How are the cables laid so that the field at your own body is small?",
            options=(
                wrong(
                    "around",
                    "Once round the shoulder, so that nobody trips over them.",
                    "A loop round the body puts the body where the field is strongest.",
                ),
                option("together", "Gun cable and work cable side by side."),
                wrong("between", "One on each side of you.", "Between the two cables their fields add up."),
                option("one_side", "Both on the same side of you."),
            ),
        ),
    ),
    draw=_draw_field,
    solve=_solve_field,
    reasons=(
        "For one long cable the field in microtesla is 0.2 times the current divided by the distance in "
        "metres. Solve that for the distance, with 0.5 mT as 500 microtesla. "
        "The number tells where the field is strong; it gives nobody with an implant leave to come near. "
        "Cables side by side nearly cancel each other, so lay them together and on one side."
    ),
    read_again=HEADING,
)

CLEAR_M = _caution("fire", "clear distance")  # printed as 35 ft, which is 10.67 m
NEAR_M, FAR_M = (3.0, 4.0, 6.0, 7.5, 9.0), (12.0, 13.0, 15.0, 18.0)
NEAR_FT, FAR_FT = (12.0, 20.0, 25.0, 30.0), (40.0, 45.0, 50.0, 60.0)


def _draw_fire(draw):
    return scene(draw) | {
        "rags_m": draw.pick("rags_m", NEAR_M + FAR_M),
        "solvent_ft": draw.pick("solvent_ft", NEAR_FT + FAR_FT),
        "dust_m": draw.pick("dust_m", NEAR_M + FAR_M),
        "seat_ft": draw.pick("seat_ft", NEAR_FT + FAR_FT),
    }


def _fire_verdict(distance_m):
    return chosen([distance_m < CLEAR_M], ["move_or_cover"], otherwise="may_stay")


def _solve_fire(table):
    in_m = {name: units.mm_from_inch(12.0 * table[name]) / 1000.0 for name in ("solvent_ft", "seat_ft")}
    in_m |= {name: table[name] for name in ("rags_m", "dust_m")}
    return {
        "things": VerdictsKey(
            right={name.partition("_")[0]: _fire_verdict(value) for name, value in in_m.items()}
        ),
        "after": ChoiceKey(right=same(table, "watch")),
    }


FIRE = Exercise(
    id="stud_welding.fire_distance",
    objective="safety",
    title="What burns, and how near is it?",
    prompt=(
        "Before the first arc at {shop} you walk round {vehicle}. "
        "The rule for hot work there is 35 ft clear all round."
    ),
    parts=(
        Verdicts(
            id="things",
            ask="What do you do with each thing?",
            points=2.0,
            rows=(
                option("rags", "an open bin of rags, {rags_m:.1f} m away"),
                option("solvent", "a can of solvent, {solvent_ft:.0f} ft away"),
                option("dust", "a tray of aluminium grinding dust, {dust_m:.1f} m away"),
                option("seat", "a seat taken out of the car, {seat_ft:.0f} ft away"),
            ),
            verdicts=(
                option("may_stay", "may stay"),
                option("move_or_cover", "move it away or cover it"),
            ),
        ),
        Choice(
            id="after",
            ask="The last stud is welded. What now?",
            options=(
                option(
                    "watch", "Keep a fire watch for as long as the local rule says, half an hour or more."
                ),
                wrong(
                    "go_home",
                    "Switch off and go, since nothing burns.",
                    "What smoulders shows only later. Somebody stays and watches.",
                ),
                wrong(
                    "wet_down",
                    "Hose the area down, the aluminium dust as well.",
                    "Wet aluminium dust gives off hydrogen. Keep it dry.",
                ),
            ),
        ),
    ),
    draw=_draw_fire,
    solve=_solve_fire,
    reasons=(
        "35 ft is 10.7 m. Compare like with like: metres with metres, feet with feet. "
        "What is nearer is moved or covered. "
        "After the last arc somebody stays: rules say at least 30 minutes, newer ones an hour."
    ),
    read_again=HEADING,
)

EXERCISES = (
    PREDICT_FIELD,
    FIELD,
    FIRE,
)
