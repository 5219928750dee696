"""Four job cards on closed sections: sill, bonded roof rail, hard rivet, high voltage and pretensioner."""

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, slip, wrong
from grading.exercises.removal.cards import (
    HEADING,
    barred,
    by_reach,
    card_words,
    cheapest,
    draw_case,
    facts,
    judge,
    never,
    one_turns,
    outlook,
    prompt,
    reasons_part,
    turning_key,
    way_and_reasons,
    way_part,
)
from grading.exercises.scenes import scene
from secondplate.removal import DRILLS, HARD_LIMITS, METHODS, NO_METHOD, isolation_needed_ohm

# A closed sill


SILL = facts(
    second_plate_mm=(1.0, 1.9, 2.2, 2.5, 2.8), heat_sensitive_mm=(35, 400, 1500), damage_min=(45, 60, 90)
)
SILL_REASONS = (
    never(
        "punch_fast",
        "Punching takes the fewest minutes, so it is to be preferred.",
        "How quick a way would be does not matter where a limit bars it.",
    ),
    barred("punch", "behind"),
    barred("drill", "hardness_beyond_drill_hv"),
    barred("pull", "heat_sensitive_mm"),
    barred("grind", "heat_sensitive_mm"),
    cheapest("pull"),
)


def _draw_sill(draw):
    return scene(draw) | draw_case(draw, SILL, ways=("pull", "drill"))


def _solve_sill(table):
    judged = judge(table)
    found = np.array([outlook(method, table) for method in METHODS])
    which = np.array([METHODS.index(way) for way in judged.way])
    minutes, damaged = found[which, :, np.arange(which.size)].T
    price, rivets = table["damage_min"], table["rivets"]
    cost = NumberKey(
        value=minutes + price * damaged,
        slips={"work_only": minutes, "for_each_rivet": minutes + price * damaged * rivets},
    )
    return way_and_reasons(judged, SILL_REASONS) | {"cost": cost}


SILL_CARD = Exercise(
    id="removal.job_card_1",
    objective="ways",
    title="Job card 1: closed sill",
    prompt=prompt(
        "The outer sill comes off; the inner sill stays.",
        "next thing that bears no heat: a wiring loom",
    ),
    shown=card_words,
    parts=(
        way_part("punch", "drill", "pull", "grind", NO_METHOD),
        reasons_part(*SILL_REASONS),
        Number(
            id="cost",
            ask="What does the row cost your way on the average, with the damage counted?",
            unit="min",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("work_only", "That is the work alone. The damaged places have a price too."),
                slip(
                    "for_each_rivet",
                    "The damaged places of the card are those of the whole row. Do not count them again "
                    "for each rivet.",
                ),
            ),
        ),
    ),
    draw=_draw_sill,
    solve=_solve_sill,
    reasons=(
        "A closed section strikes out the punch before anything is counted. "
        "Then hold hardness, wiring, room and dust against the ways that are left. "
        "Only among those that stand is cost compared: minutes of work and the price of the damaged places. "
        "A limit that says not before can be lifted by work, and that may pay; then judge again."
    ),
    read_again=HEADING,
)

# A bonded roof rail

# What may be changed about the job, by the option that names it; each gives the changed facts.
CHANGES = {
    "longer": lambda table: {"rivets": 2 * table["rivets"]},
    "released": lambda table: {"bond": np.full(table["bond"].shape, "released")},
    "cheaper": lambda table: {"damage_min": table["damage_min"] / 2},
}


def _plain(table, judged):
    """Tell where the question which change turns the way has one plain answer."""
    return one_turns(CHANGES, table, judged)


ROOF = facts(bond=("hard", "released"), second_plate_mm=(1.9, 2.2, 2.5), damage_min=(60, 90, 120, 150))
ROOF_REASONS = (
    never(
        "glue_helps",
        "Hard adhesive helps the pull, for it holds the plates flat.",
        "The adhesive takes the pull first. Ask what it does to the plate that it holds on to.",
    ),
    barred("pull", "bond"),
    barred("punch", "behind"),
    barred("grind", "heat_sensitive_mm"),
    barred("drill", "hardness_beyond_drill_hv"),
    cheapest("grind"),
)


def _draw_roof(draw):
    return scene(draw) | draw_case(draw, ROOF, ways=("pull", "drill", "grind", NO_METHOD), keep=_plain)


def _solve_roof(table):
    judged = judge(table)
    return way_and_reasons(judged, ROOF_REASONS) | {"changes": turning_key(CHANGES, table, judged)}


ROOF_CARD = Exercise(
    id="removal.job_card_2",
    objective="ways",
    title="Job card 2: bonded roof rail",
    prompt=prompt(
        "The side frame comes off the roof rail, and the rail stays.",
        "next thing that bears no heat: the head lining",
    ),
    shown=card_words,
    parts=(
        way_part("grind", "pull", "punch", "drill", NO_METHOD),
        reasons_part(*ROOF_REASONS),
        Choice(
            id="changes",
            ask="Which one of these would turn your choice to another way?",
            options=(
                wrong(
                    "cheaper",
                    "A damaged place that costs half as much.",
                    "Work out the costs again with half the price, for the ways that no limit bars.",
                ),
                option("nothing", "None of the three."),
                option("released", "The adhesive released by the vehicle maker's procedure."),
                wrong(
                    "longer",
                    "A row that is twice as long.",
                    "Twice the rivets, twice the damaged places. Compare only the ways that no limit bars.",
                ),
            ),
        ),
    ),
    draw=_draw_roof,
    solve=_solve_roof,
    reasons=(
        "Hard adhesive stands against pull and punch, because it carries the load first. "
        "What then is left hangs on hardness, trim, room and dust. "
        "A limit that says not before is lifted by work, and that can turn the choice. "
        "Where the adhesive is released already, that has been done."
    ),
    read_again=HEADING,
)

# A very hard rivet


PILLAR = facts(rivet_hardness_hv=(350, 410, 480, 560), heat_sensitive_mm=(35, 40, 400), drill=DRILLS)
PILLAR_REASONS = (
    never(
        "slow_enough",
        "Turned slowly and pressed hard, any drill cuts any rivet.",
        "Outside its table nobody gives a speed for this drill. Slower is no answer to too hard.",
    ),
    barred("drill", "hardness_beyond_drill_hv"),
    barred("punch", "behind"),
    barred("pull", "heat_sensitive_mm"),
    barred("grind", "aluminium_dust"),
    cheapest("pull"),
)


def _draw_pillar(draw):
    return scene(draw) | draw_case(draw, PILLAR, ways=("drill", NO_METHOD, NO_METHOD, "pull"))


def _solve_pillar(table):
    reach = [
        name.replace("-", "_").replace(" ", "_") for name in by_reach(table["rivet_hardness_hv"], DRILLS)
    ]
    return way_and_reasons(judge(table), PILLAR_REASONS) | {"reach": ChoiceKey(right=reach)}


PILLAR_CARD = Exercise(
    id="removal.job_card_3",
    objective="ways",
    title="Job card 3: foot of the pillar",
    prompt=prompt(
        "The outer foot of the middle pillar comes off. The file on the head says how hard the rivets are.",
        "next thing that bears no heat: the foam that fills the pillar",
    ),
    shown=card_words,
    parts=(
        way_part("drill", NO_METHOD, "grind", "pull", "punch"),
        reasons_part(*PILLAR_REASONS),
        Choice(
            id="reach",
            ask="Which is the plainest drill whose tables reach this rivet, whatever lies on the bench?",
            options=(
                option("high_speed_steel", "High-speed steel."),
                option("cobalt_steel", "Cobalt steel."),
                wrong(
                    "solid_carbide",
                    "Solid carbide.",
                    "Go through the ends of the drill tables from the plainest on, and stop at the first.",
                ),
                option("none", "None of the three."),
            ),
        ),
    ),
    draw=_draw_pillar,
    solve=_solve_pillar,
    reasons=(
        "Foam close to the joint takes away pull and grinding until it is shielded or out. "
        "Then everything hangs on the drill: its tables reach the hardness, or they do not. "
        "Outside the tables nothing is stretched: another drill, or another way. "
        "A hardness is known by its class, so these cards stay half a class away from the end of a table."
    ),
    read_again=HEADING,
)

# High voltage and a pretensioner


TUNNEL = facts(high_voltage=("live", "isolated"), airbag=("armed", "made safe"))
TUNNEL_REASONS = (
    never(
        "small_weld",
        "One stud weld is so short that it cannot reach anything electrical.",
        "Short it is, but the current of a weld is large, and a drill or a wheel needs only a touch.",
    ),
    barred("pull", "high_voltage"),
    barred("pull", "airbag"),
    barred("punch", "behind"),
    barred("drill", "hardness_beyond_drill_hv"),
    cheapest("pull"),
)
OHM_PER_VOLT = {combined: isolation_needed_ohm(100, combined=combined) / 100 for combined in (False, True)}
BUS_WORDS = {False: "direct voltage alone", True: "alternating voltage as well"}
LIFTED = {
    fact: next(x.lifted_by for x in HARD_LIMITS if x.fact == fact) for fact in ("high_voltage", "airbag")
}


def _draw_tunnel(draw):
    return (
        scene(draw)
        | draw_case(draw, TUNNEL, ways=("pull", NO_METHOD, NO_METHOD, NO_METHOD))
        | {
            "voltage_v": draw.pick("voltage_v", (310, 355, 396, 412, 645, 690)),
            "combined": draw.pick("combined", (False, True)),
        }
    )


def _tunnel_words(scenario):
    """Return the card in words, with the rule of isolation."""
    return card_words(scenario) | {
        "bus_words": BUS_WORDS[scenario["combined"]],
        "alone": f"{OHM_PER_VOLT[False]:.0f}",
        "with_alternating": f"{OHM_PER_VOLT[True]:.0f}",
    }


def _solve_tunnel(table):
    judged = judge(table)
    needed = {
        combined: isolation_needed_ohm(table["voltage_v"], combined=combined) / 1000
        for combined in (False, True)
    }
    live, armed = (judged.met["pull", fact] for fact in ("high_voltage", "airbag"))
    return way_and_reasons(judged, TUNNEL_REASONS) | {
        "first": ChoiceKey(
            right=chosen([live & armed, live, armed], ["both", "isolate", "airbag"], otherwise="neither")
        ),
        "isolation": NumberKey(
            value=np.where(table["combined"], needed[True], needed[False]),
            slips={
                "other_bus": np.where(table["combined"], needed[False], needed[True]),
                "kilo": table["voltage_v"] * 1.0,
            },
        ),
    }


TUNNEL_CARD = Exercise(
    id="removal.job_card_4",
    objective="plan",
    title="Job card 4: beside the tunnel of an electric car",
    prompt=prompt(
        "The vehicle is electric. The seat cross-member comes off beside the tunnel in which the cables run, "
        "and a belt pretensioner sits above it.",
        "next thing that bears no heat: the carpet",
        more=(
            "The system works at {voltage_v} V, with {bus_words} on the bus. "
            "The rule asks for {alone} ohm a volt with direct voltage alone, "
            "and {with_alternating} ohm a volt with alternating voltage as well."
        ),
    ),
    shown=_tunnel_words,
    parts=(
        way_part("pull", NO_METHOD, "drill", "punch", "grind"),
        reasons_part(*TUNNEL_REASONS),
        Choice(
            id="first",
            ask="What still has to come before a tool touches the joint?",
            options=(
                option(
                    "both",
                    f"{LIFTED['high_voltage']} And: {LIFTED['airbag'][0].lower()}{LIFTED['airbag'][1:]}",
                ),
                option("airbag", LIFTED["airbag"]),
                option("neither", "Neither of the two: see that both are on record, then go on."),
                option("isolate", LIFTED["high_voltage"]),
            ),
        ),
        Number(
            id="isolation",
            ask="A qualified person measures. Which isolation resistance must the system have at least?",
            unit="kohm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "other_bus", "That is the rule for the other kind of bus. Read which voltage hangs on it."
                ),
                slip("kilo", "A kilo-ohm for each volt was taken. Read the ohms for each volt again."),
            ),
        ),
    ),
    draw=_draw_tunnel,
    solve=_solve_tunnel,
    reasons=(
        "Live high voltage and an armed pretensioner stand against every way, so nothing is compared yet. "
        "The vehicle maker's procedure says how each is made safe and who may do it. "
        "A good isolation resistance does not make a system dead: absence of voltage is verified by itself. "
        "Only then are the ways judged like on any other card."
    ),
    read_again=HEADING,
)

EXERCISES = (SILL_CARD, ROOF_CARD, PILLAR_CARD, TUNNEL_CARD)
