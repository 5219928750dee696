"""Exercises on what can hurt people and the car: argon in a closed room, magnetic fields, fire."""

from grading.exercise import (
    Choice,
    ChoiceKey,
    Choices,
    ChoicesKey,
    Exercise,
    Number,
    NumberKey,
    Option,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.keys import THREE_FIGURES, chosen, same, slip
from grading.exercises.scenes import scene
from secondplate import electrics, gas, units

HEADING = "What can hurt you or the car?"


def _draw_predict(draw):
    return scene(draw) | {"current_a": draw.whole("current_a", 500, 900, 20)}


PREDICT_FIELD = Exercise(
    id="stud_welding.predict_field",
    objective="safety",
    title="Predict: two steps back",
    prompt="A gun cable carries {current_a:.0f} A. You stand half a metre from it and step back to one metre. "
    "Decide before you compute.",
    parts=(
        Choice(
            id="field",
            ask="What happens to the magnetic field where you stand?",
            options=(
                Option(
                    id="gone",
                    text="It is gone: magnetism reaches only a hand's width.",
                    slip=slip("gone", "The field of a long cable fades slowly. It never stops at an edge."),
                ),
                Option(id="half", text="It becomes half as strong."),
                Option(
                    id="quarter",
                    text="It becomes a quarter as strong.",
                    slip=slip("quarter", "A quarter would be a lamp's light. A long straight cable fades more slowly."),
                ),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"field": ChoiceKey(right=same(table, "half"))},
    reasons="Near one long cable the field goes down with the distance: twice as far, half the field. "
    "Where the return cable lies beside it, the two nearly cancel, and that is why they are laid together.",
    read_again=HEADING,
    counts=False,
)


def _draw_oxygen(draw):
    return scene(draw) | {
        "room_m3": draw.whole("room_m3", 6, 30),
        "flow_ft3_h": draw.whole("flow_ft3_h", 15, 30),
    }


def _solve_oxygen(table):
    room_m3, flow_ft3_h = table["room_m3"], table["flow_ft3_h"]
    flow_l_min = units.l_min_from_ft3_h(flow_ft3_h)
    minutes = gas.time_to_oxygen_limit_min(room_volume_m3=room_m3, flow_l_min=flow_l_min)
    return {
        "time": NumberKey(
            value=minutes,
            slips={
                "cubic_feet": gas.time_to_oxygen_limit_min(room_volume_m3=room_m3, flow_l_min=flow_ft3_h),
                "room_full": 1000.0 * room_m3 / flow_l_min,
                "litres": minutes / 1000.0,
            },
        ),
        "fresh_air": NumberKey(
            value=gas.fresh_air_needed_l_min(flow_l_min=flow_l_min),
            slips={
                "cubic_feet": gas.fresh_air_needed_l_min(flow_l_min=flow_ft3_h),
                "as_much_as_gas": flow_l_min,
            },
        ),
        "act": ChoicesKey(right=same(table, ("shut_valve", "open_up", "meter_low"))),
    }


OXYGEN = Exercise(
    id="stud_welding.oxygen",
    objective="safety",
    title="Gas left on in a closed space",
    prompt="{vehicle_first} stands in a closed booth of {room_m3:.0f} m3 at {shop}. "
    "Overnight the gun leaks argon at {flow_ft3_h:.0f} ft3/h on the gauge. "
    "Below 19.5 % oxygen the air counts as hazardous.",
    shown=lambda scenario: {"vehicle_first": scenario["vehicle"][0].upper() + scenario["vehicle"][1:]},
    parts=(
        Number(
            id="time",
            ask="If the gas mixes evenly and no air comes in, how long until the oxygen is down to 19.5 %?",
            unit="min",
            relative_tolerance=0.05,
            tolerance_reason="The room is never evenly mixed, so 5 % is right; that also takes in the straight-line estimate.",
            slips=(
                slip("cubic_feet", "The gauge reads cubic feet per hour; the number was used as litres per minute."),
                slip("room_full", "That is the time to fill the whole room with argon. The air is bad long before."),
                slip("litres", "A cubic metre is a thousand litres."),
            ),
        ),
        Number(
            id="fresh_air",
            ask="How much fresh air would keep it at 19.5 % for ever?",
            unit="L/min",
            relative_tolerance=0.03,
            tolerance_reason="The limit is a round number, so 3 % either way is right.",
            slips=(
                slip("cubic_feet", "The gauge reads cubic feet per hour; the number was used as litres per minute."),
                slip("as_much_as_gas", "As much air as gas would leave half the room argon."),
            ),
        ),
        Choices(
            id="act",
            ask="You come in the next morning and hear the leak. What do you do?",
            options=(
                Option(
                    id="smell",
                    text="Go in and sniff whether the air is bad.",
                    slip=slip("smell", "Argon has no smell and gives no warning. People drop without feeling ill."),
                ),
                Option(id="open_up", text="Stay out, open the doors and switch the extraction on from outside."),
                Option(
                    id="blow_oxygen",
                    text="Blow oxygen in from a cylinder.",
                    slip=slip("blow_oxygen", "Oxygen makes clothes and grease burn like tinder. Use air."),
                ),
                Option(id="shut_valve", text="Have the valve at the cylinder shut, if that can be reached from fresh air."),
                Option(id="meter_low", text="Measure the oxygen before going in, low down as well: argon sinks."),
            ),
        ),
    ),
    draw=_draw_oxygen,
    solve=_solve_oxygen,
    reasons="Turn the flow into litres per minute and the room into litres. "
    "Each litre of argon pushes a litre of the mixed air out, so the oxygen falls a little more slowly as time goes on. "
    "To hold 19.5 % for ever it takes about thirteen times as much fresh air as gas. "
    "Argon is heavier than air: pits and footwells are worse than the sum says.",
    read_again=HEADING,
)

ACTION_LEVEL_UT = 500.0  # static field, people with active implants: 0.5 mT, directive 2013/35/EU Annex II, from memory


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
                "millitesla": electrics.distance_for_field_m(current_a=current_a, field_ut=ACTION_LEVEL_UT / 1000.0),
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
    prompt="The gun cable at {shop} lies alone on the floor and carries {current_a:.0f} A. "
    "For people with active implants a field of 0.5 mT is the action level. "
    "A colleague with a pacemaker wants to watch from {stand_m} m.",
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
                Option(
                    id="far_enough",
                    text="The place is outside that distance, so it is safe.",
                    slip=slip("far_enough", "The sum is for one straight cable. It is no permission for anybody's heart."),
                ),
                Option(
                    id="short_pulse",
                    text="The weld lasts only milliseconds, so it does not matter.",
                    slip=slip("short_pulse", "A short strong pulse is just what can disturb an implant."),
                ),
                Option(id="stays_away", text="Stay out of the welding area until your physician has said yes for this equipment."),
            ),
        ),
        Choices(
            id="cables",
            ask="How are the cables laid so that the field at your own body is small?",
            options=(
                Option(
                    id="around",
                    text="Once round the shoulder, so that nobody trips over them.",
                    slip=slip("around", "A loop round the body puts the body where the field is strongest."),
                ),
                Option(id="together", text="Gun cable and work cable side by side."),
                Option(
                    id="between",
                    text="One on each side of you.",
                    slip=slip("between", "Between the two cables their fields add up."),
                ),
                Option(id="one_side", text="Both on the same side of you."),
            ),
        ),
    ),
    draw=_draw_field,
    solve=_solve_field,
    reasons="For one long cable the field in microtesla is 0.2 times the current divided by the distance in metres. "
    "Solve that for the distance, with 0.5 mT as 500 microtesla. "
    "The number tells where the field is strong; it gives nobody with an implant leave to come near. "
    "Cables side by side nearly cancel each other, so lay them together and on one side.",
    read_again=HEADING,
)

# Hot work: 35 ft round the arc are kept clear, or what burns is covered.
CLEAR_FT = 35.0
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
    clear_m = units.mm_from_inch(12.0 * CLEAR_FT) / 1000.0
    return chosen([distance_m < clear_m], ["move_or_cover"], otherwise="may_stay")


def _solve_fire(table):
    in_m = {name: units.mm_from_inch(12.0 * table[name]) / 1000.0 for name in ("solvent_ft", "seat_ft")}
    in_m |= {name: table[name] for name in ("rags_m", "dust_m")}
    return {
        "things": VerdictsKey(right={name.partition("_")[0]: _fire_verdict(value) for name, value in in_m.items()}),
        "after": ChoiceKey(right=same(table, "watch")),
    }


FIRE = Exercise(
    id="stud_welding.fire_distance",
    objective="safety",
    title="What burns, and how near is it?",
    prompt="Before the first arc at {shop} you walk round {vehicle}. The rule for hot work there is 35 ft clear all round.",
    parts=(
        Verdicts(
            id="things",
            ask="What do you do with each thing?",
            points=2.0,
            rows=(
                Option(id="rags", text="an open bin of rags, {rags_m:.1f} m away"),
                Option(id="solvent", text="a can of solvent, {solvent_ft:.0f} ft away"),
                Option(id="dust", text="a tray of aluminium grinding dust, {dust_m:.1f} m away"),
                Option(id="seat", text="a seat taken out of the car, {seat_ft:.0f} ft away"),
            ),
            verdicts=(
                Option(id="may_stay", text="may stay"),
                Option(id="move_or_cover", text="move it away or cover it"),
            ),
        ),
        Choice(
            id="after",
            ask="The last stud is welded. What now?",
            options=(
                Option(
                    id="go_home",
                    text="Switch off and go, since nothing burns.",
                    slip=slip("go_home", "What smoulders shows only later. Somebody stays and watches."),
                ),
                Option(
                    id="wet_down",
                    text="Hose the area down, the aluminium dust as well.",
                    slip=slip("wet_down", "Wet aluminium dust gives off hydrogen. Keep it dry."),
                ),
                Option(id="watch", text="Keep a fire watch for as long as the local rule says, half an hour or more."),
            ),
        ),
    ),
    draw=_draw_fire,
    solve=_solve_fire,
    reasons="35 ft is 10.7 m. Compare like with like: metres with metres, feet with feet. "
    "What is nearer is moved or covered. "
    "After the last arc somebody stays: rules say at least 30 minutes, newer ones an hour.",
    read_again=HEADING,
)

EXERCISES = (PREDICT_FIELD, OXYGEN, FIELD, FIRE)
