"""Two more job cards: an open door, and a thin plate."""

import numpy as np

from grading.exercise import Choice, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, option, slip, wrong
from grading.exercises.removal.cards import (
    HEADING,
    barred,
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
    turned_by,
    turning_key,
    way_and_reasons,
    way_part,
)
from grading.exercises.scenes import scene
from secondplate.removal import (
    NO_METHOD,
    REFERENCE_PLATE_MM,
    damage_chance,
    mean_of_band,
    usual_times,
)

# A door inner that can be reached from both sides

CHANGES = {
    "longer": lambda table: {"rivets": 3 * table["rivets"]},
    "carbide": lambda table: {"drill": np.full(table["drill"].shape, "solid carbide")},
    "shorter": lambda table: {"rivets": np.maximum(table["rivets"] // 3, 1)},
}


def _plain(table, judged):
    """Tell where the question which change turns the way has one plain answer."""
    return one_turns(CHANGES, table, judged)


def _turning(table, judged):
    """Tell where besides one change does turn it, which few cases of the card have."""
    turned, _ = turned_by(CHANGES, table, judged)
    return _plain(table, judged) & np.any(list(turned.values()), axis=0)


DOOR = facts(
    behind=("open",),
    second_plate_mm=(1.9, 2.4, 3.0),
    rivets=tuple(range(3, 31)),
    damage_min=(45, 60, 75, 90, 120, 150),
)
DOOR_REASONS = (
    never(
        "reach_decides",
        "The back can be reached, so the punch is right, whatever the row is like.",
        "Access only means that no limit bars it. Then the costs decide, and they hang on the row.",
    ),
    cheapest("punch"),
    barred("drill", "hardness_beyond_drill_hv"),
    barred("grind", "front_clear_mm"),
    cheapest("pull"),
    barred("punch", "behind"),
)


def _draw_door(draw):
    keep = draw.pick("keep", (_plain, _turning, _turning))
    return scene(draw) | draw_case(draw, DOOR, ways=("punch", "pull"), keep=keep)


def _solve_door(table):
    judged = judge(table)
    (pull_min, pull_harm), (punch_min, punch_harm) = (outlook(way, table) for way in ("pull", "punch"))
    slower, safer = pull_min - punch_min, punch_harm - pull_harm
    return way_and_reasons(judged, DOOR_REASONS) | {
        "price": NumberKey(
            value=slower / safer,
            slips={
                "punch_alone": slower / punch_harm,
                "upside_down": safer / slower,
                "for_each_rivet": slower / safer / table["rivets"],
            },
        ),
        "changes": turning_key(CHANGES, table, judged),
    }


DOOR_CARD = Exercise(
    id="removal.job_card_5",
    objective="plan",
    title="Job card 5: door inner, open from both sides",
    prompt=prompt(
        "The hinge plate comes off the door inner. The trim is out already.",
        "next thing that bears no heat: the glass",
    ),
    shown=card_words,
    parts=(
        way_part("punch", "grind", "pull", "drill", NO_METHOD),
        reasons_part(*DOOR_REASONS),
        Number(
            id="price",
            ask="At what price of a damaged place would pull and punch cost the same on this row?",
            unit="min",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("punch_alone", "The pull damages a place now and then too. Take the difference."),
                slip("upside_down", "The division is upside down: minutes that are lost, over places saved."),
                slip("for_each_rivet", "The card gives the whole row. Do not divide by the rivets again."),
            ),
        ),
        Choice(
            id="changes",
            ask="Which one of these would turn your choice to another way?",
            options=(
                option("shorter", "A row of a third of the length."),
                wrong(
                    "carbide",
                    "A solid carbide drill on the bench.",
                    "It may lift a limit of the drill. Compare what drilling would cost then.",
                ),
                option("longer", "A row three times as long."),
                option("nothing", "None of the three."),
            ),
        ),
    ),
    draw=_draw_door,
    solve=_solve_door,
    reasons=(
        "Open from both sides and free of adhesive, the punch is allowed and quick to set up. "
        "It harms the plate more often than the pull, so each further rivet counts against it. "
        "Both cost the same where the minutes that the pull loses pay for the places that it saves. "
        "Below that price the punch wins, above it the pull."
    ),
    read_again=HEADING,
)

# A thin second plate

THIN = facts(
    behind=("open",),
    second_plate_mm=(0.55, 0.6, 0.65, 0.95, 1.0),
    rivets=tuple(range(4, 15)),
)
THIN_REASONS = (
    never(
        "soft_blow",
        "A thin plate gives way to a light blow, so punching spares it.",
        "It gives way by being dented round the button. Look what the limits say of a punch.",
    ),
    barred("pull", "second_plate_mm"),
    cheapest("pull"),
    barred("drill", "second_plate_mm"),
    barred("grind", "aluminium_dust"),
    barred("grind", "heat_sensitive_mm"),
)


def sound_percent(method):
    """Return how often a rivet out at the first try harms a second plate of the reference thickness."""
    return 100 * mean_of_band(usual_times(method).damage_probability)


def _draw_thin(draw):
    return (
        scene(draw)
        | draw_case(draw, THIN, ways=("pull", "grind", NO_METHOD))
        | {"asked": draw.pick("asked", ("pull", "grind"))}
    )


def _thin_words(scenario):
    """Return the card in words, with the chance of damage that the table of times holds."""
    return card_words(scenario) | {
        "usual": f"{sound_percent(scenario['asked']):.2f}",
        "table_mm": f"{REFERENCE_PLATE_MM:.1f}",
    }


def _solve_thin(table):
    judged = judge(table)
    plate_mm = table["second_plate_mm"]
    usual = np.array([sound_percent(method) for method in table["asked"]])
    chance = 100 * np.asarray(damage_chance(usual / 100, second_plate_mm=plate_mm))
    return way_and_reasons(judged, THIN_REASONS) | {
        "chance": NumberKey(
            value=chance,
            slips={
                "as_usual": usual,
                "wrong_way": usual * plate_mm / REFERENCE_PLATE_MM,
                "whole_row": chance * table["rivets"],
            },
        ),
    }


THIN_CARD = Exercise(
    id="removal.job_card_6",
    objective="ways",
    title="Job card 6: thin rear wall",
    prompt=prompt(
        "A bracket comes off the rear wall behind the seats, and the wall is the thin second plate.",
        "next thing that bears no heat: the noise foam",
        more=(
            "On a second plate of {table_mm} mm, {asked} harms the plate at {usual} % of the rivets "
            "that come out at the first try. "
            "For another plate the table of times takes the chance over the thickness."
        ),
    ),
    shown=_thin_words,
    parts=(
        way_part("drill", "pull", "grind", NO_METHOD, "punch"),
        reasons_part(*THIN_REASONS),
        Number(
            id="chance",
            ask="How often does that way harm this plate, out of the rivets that come out at the first try?",
            unit="%",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("as_usual", "That is the chance for the plate of the table. This one is thinner."),
                slip("wrong_way", "A thinner plate is harmed more often, not less."),
                slip("whole_row", "That counts the row. Asked is the share of the rivets."),
            ),
        ),
    ),
    draw=_draw_thin,
    solve=_solve_thin,
    reasons=(
        "A thin plate bars drill and punch for good, and the pull until the plates are supported. "
        "Grinding leaves the plate alone, but asks for room, no dust and covered surroundings. "
        "The chance of damage goes with one over the thickness. "
        "That rule is judgement: count on your own coupons before you trust it."
    ),
    read_again=HEADING,
)


EXERCISES = (DOOR_CARD, THIN_CARD)
