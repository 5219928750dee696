"""Exercise on what argon does to the air of a closed room."""

from grading.exercise import Choices, ChoicesKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate import gas, units

HEADING = "What can hurt you or the car?"


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
    prompt=(
        "{vehicle_first} stands in a closed booth of {room_m3:.0f} m³ at {shop}. "
        "Overnight the gun leaks argon at {flow_ft3_h:.0f} ft³/h on the gauge. "
        "Below 19.5 % oxygen the air counts as hazardous."
    ),
    shown=lambda scenario: {"vehicle_first": scenario["vehicle"][0].upper() + scenario["vehicle"][1:]},
    parts=(
        Number(
            id="time",
            ask="If the gas mixes evenly and no air comes in, how long until the oxygen is down to 19.5 %?",
            unit="min",
            relative_tolerance=0.05,
            tolerance_reason=(
                "The room is never evenly mixed, so 5 % is right; that also takes in the straight-line "
                "estimate."
            ),
            slips=(
                slip(
                    "cubic_feet",
                    "The gauge reads cubic feet per hour; the number was used as litres per minute.",
                ),
                slip(
                    "room_full",
                    "That is the time to fill the whole room with argon. The air is bad long before.",
                ),
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
                slip(
                    "cubic_feet",
                    "The gauge reads cubic feet per hour; the number was used as litres per minute.",
                ),
                slip("as_much_as_gas", "As much air as gas would leave half the room argon."),
            ),
        ),
        Choices(
            id="act",
            ask="You come in the next morning and hear the leak. What do you do?",
            options=(
                wrong(
                    "smell",
                    "Go in and sniff whether the air is bad.",
                    "Argon has no smell and gives no warning. People drop without feeling ill.",
                ),
                option("open_up", "Stay out, open the doors and switch the extraction on from outside."),
                wrong(
                    "blow_oxygen",
                    "Blow oxygen in from a cylinder.",
                    "Oxygen makes clothes and grease burn like tinder. Use air.",
                ),
                option(
                    "shut_valve",
                    "Have the valve at the cylinder shut, if that can be reached from fresh air.",
                ),
                option("meter_low", "Measure the oxygen before going in, low down as well: argon sinks."),
            ),
        ),
    ),
    draw=_draw_oxygen,
    solve=_solve_oxygen,
    reasons=(
        "Turn the flow into litres per minute and the room into litres. "
        "Each litre of argon pushes a litre of the mixed air out, so the oxygen falls a little more slowly "
        "as time goes on. "
        "To hold 19.5 % for ever it takes about thirteen times as much fresh air as gas. "
        "Argon is heavier than air: pits and footwells are worse than the sum says."
    ),
    read_again=HEADING,
)


EXERCISES = (OXYGEN,)
