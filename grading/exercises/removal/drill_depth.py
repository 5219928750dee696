"""Exercises on what spoils the depth of a drilled rivet, and on where its chips go."""

from functools import cache
from itertools import combinations

import numpy as np

from grading.exercise import Choice, ChoiceKey, Choices, ChoicesKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.drilling import chips_left, depth_budget, swarf_volume_mm3
from secondplate.plate_states import DRILLED_HOLE, STATE_SEEN, after_drilling
from secondplate.removal import hazards_of

HEADING = "What does a drill do to the second plate?"
ERRORS = ("stop_mm", "give_mm", "lunge_mm", "length_mm")
ROOMS_MM = tuple(step / 10 for step in range(3, 16))
ANGLE_DEG = 118.0


@cache
def _sums(errors):
    """Return every sum that people make of the errors of one depth, the right ones first."""
    budget = depth_budget(errors)
    return {
        "worst": budget.worst_mm,
        "expected": budget.expected_mm,
        "largest": max(errors),
        "mean": float(np.mean(errors)),
        "no_root": float(np.square(errors).sum()),
        "root_of_sum": budget.worst_mm**0.5,
    }


def _plain(sums):
    """Tell whether all sums of one depth can be told apart to two hundredths and 5 %."""
    return all(abs(a - b) > 0.02 + 0.05 * max(a, b) for a, b in combinations(sums.values(), 2))


def _verdict(sums, room_mm):
    """Return what the metal left under the tip is enough for."""
    return "both" if room_mm > sums["worst"] else "expected" if room_mm > sums["expected"] else "neither"


@cache
def _depths():
    """Return errors and room by what the room is enough for; sums that run together are left out."""
    found = {}
    sizes = (0.1, 0.15, 0.2), (0.1, 0.2, 0.3, 0.4), (0.3, 0.4, 0.5, 0.6), (0.05, 0.1, 0.2)
    grid = np.stack([axis.ravel() for axis in np.meshgrid(*sizes, indexing="ij")], axis=1)
    for errors in map(tuple, grid.tolist()):
        sums = _sums(errors)
        if not _plain(sums):
            continue
        for room_mm in ROOMS_MM:
            if min(abs(room_mm - sums[name]) for name in ("worst", "expected")) > 0.04:
                found.setdefault(_verdict(sums, room_mm), []).append(
                    dict(zip(ERRORS, errors, strict=True)) | {"room_mm": room_mm}
                )
    return found


def _draw_budget(draw):
    depths = _depths()
    return scene(draw) | draw.pick("depth", depths[draw.pick("enough", sorted(depths))])


def _solve_budget(table):
    every = [_sums(errors) for errors in zip(*(table[name].tolist() for name in ERRORS), strict=True)]
    sums = {name: np.array([each[name] for each in every]) for name in every[0]}
    return {
        "worst": NumberKey(
            value=sums["worst"], slips={"expected": sums["expected"], "largest": sums["largest"]}
        ),
        "expected": NumberKey(
            value=sums["expected"],
            slips={name: sums[name] for name in ("mean", "no_root", "root_of_sum")},
        ),
        "enough": ChoiceKey(
            right=[_verdict(each, room) for each, room in zip(every, table["room_mm"].tolist(), strict=True)]
        ),
    }


DEPTH_BUDGET = Exercise(
    id="removal.depth_budget",
    objective="drill",
    title="What can go wrong with the depth?",
    prompt=(
        "{shop} drills the rivets of {vehicle} with a depth stop. "
        "If all goes to plan, {room_mm} mm of metal is left under the tip. "
        "Four things can be off, each either way: the setting of the stop by {stop_mm} mm, "
        "the give of the plates under thrust by {give_mm} mm, the lunge as the drill breaks through the head "
        "by {lunge_mm} mm, and the drill's length after a regrind by {length_mm} mm."
    ),
    parts=(
        Number(
            id="worst",
            ask="In the worst case, by how much is the depth off?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "expected", "That is what is to be expected. In the worst case all errors pull one way."
                ),
                slip("largest", "That is one error alone. The others may come on top."),
            ),
        ),
        Number(
            id="expected",
            ask="Errors that know nothing of each other: what does the root of the sum of squares give?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("mean", "That is a mean. Errors add up, only not all in one direction."),
                slip("no_root", "The squares are added, but the root is missing."),
                slip("root_of_sum", "The errors were added first. Square each before you add."),
            ),
        ),
        Choice(
            id="enough",
            ask="Is the metal under the tip enough?",
            options=(
                option("neither", "No: not even what is to be expected leaves metal there."),
                option("expected", "As a rule, but not in the worst case: some plates will be pierced."),
                option("both", "Yes: even in the worst case some metal is left."),
            ),
        ),
    ),
    draw=_draw_budget,
    solve=_solve_budget,
    reasons=(
        "The worst case adds all four errors. "
        "What is to be expected squares each, adds, and takes the root; it is always less. "
        "Compare both with the metal under the tip. "
        "The lunge is no error of chance: it comes at every break-through, so it is the first to be mended."
    ),
    read_again=HEADING,
)

# What is said against chips, by the word of the library's control that it stands on.
CONTROLS = {hazard.name: hazard.control for hazard in hazards_of("drill")}
AGAINST_CHIPS = {"catch": "Catch", "vacuum": "vacuum", "magnet": "magnet", "gloves": "wear gloves"}
CHIP_DRILLS_MM = (5.0, 5.3, 5.5)  # the rivet's shank, or a hair more
NEEDLE_MM3 = 0.02


def _advised():
    """Return which of the offered steps the controls of drilling ask for."""
    steps = CONTROLS["hard needle chips"]
    return tuple(name for name, word in AGAINST_CHIPS.items() if word in steps)


def _pierced(metal_mm, tip_mm, drill_mm):
    """Tell where a drill leaves a hole with chips behind the plate."""
    left = after_drilling(
        metal_mm=metal_mm, tip_depth_mm=tip_mm, drill_diameter_mm=drill_mm, point_angle_deg=ANGLE_DEG
    )
    behind = "chips behind the plate" in STATE_SEEN[DRILLED_HOLE]
    return (np.asarray(left.plate_state) == DRILLED_HOLE) & behind


def _draw_chips(draw):
    metal_mm = draw.decimal("metal_mm", 1.2, 2.6, 0.1, 1)
    through = draw.pick("through", (True, True, False))
    further_mm = draw.decimal("further_mm", 0.3, 0.9, 0.1, 1)
    return scene(draw) | {
        "metal_mm": metal_mm,
        "tip_mm": round(metal_mm + further_mm if through else metal_mm - further_mm, 1),
        "drill_mm": draw.pick("drill_mm", CHIP_DRILLS_MM),
        "behind": draw.pick("behind", ("closed", "open")),
        "bore_mm": draw.decimal("bore_mm", 3.0, 3.6, 0.1, 1),
        "rivet_mm": draw.decimal("rivet_mm", 4.0, 6.0, 0.5, 1),
        "missed_percent": draw.pick("missed_percent", (1, 2, 3)),
    }


def _needles(table, *, bored=True, missed=True):
    """Return how many needles cleaning misses, or what slips make of it."""
    share = table["missed_percent"] / 100
    volume = swarf_volume_mm3(
        drill_diameter_mm=table["drill_mm"],
        drilled_length_mm=table["rivet_mm"],
        bore_diameter_mm=table["bore_mm"] if bored else 0.0,
    )
    left = chips_left(
        swarf_volume_mm3=volume,
        missed_share=share if missed else 1 - share,
        chip_volume_mm3=NEEDLE_MM3,
    )
    return np.asarray(left.chips)


def _solve_chips(table):
    pierced = _pierced(table["metal_mm"], table["tip_mm"], table["drill_mm"])
    return {
        "steps": ChoicesKey(right=same(table, _advised())),
        "needles": NumberKey(
            value=_needles(table),
            slips={
                "solid": _needles(table, bored=False),
                "radius": 4 * _needles(table),
                "caught": _needles(table, missed=False),
            },
        ),
        "where": ChoiceKey(
            right=chosen([~pierced, table["behind"] == "closed"], ["front", "box"], otherwise="reach")
        ),
    }


BEHIND_WORDS = {"closed": "a closed box with one small drain", "open": "open, and within reach from inside"}

CHIPS = Exercise(
    id="removal.chips",
    objective="drill",
    title="Where do the chips go?",
    prompt=(
        "At {shop} a hardened rivet of {vehicle} was drilled out. "
        "Its {drill_mm} mm drill went {tip_mm} mm into the second plate, "
        "where {metal_mm} mm of metal lay on the axis. "
        "Behind the second plate: {behind_words}. "
        "Needles of hard steel lie about on the aluminium. "
        "Take it that {rivet_mm} mm of rivet with a bore of {bore_mm} mm were cut up across the whole drill, "
        "that a needle is {needle} mm³, and that cleaning misses {missed_percent} % of them."
    ),
    shown=lambda scenario: {
        "behind_words": BEHIND_WORDS[scenario["behind"]],
        "needle": f"{NEEDLE_MM3}",
    },
    parts=(
        Choices(
            id="steps",
            ask="What belongs to the drilling of such a rivet?",
            options=(
                wrong(
                    "blow_off",
                    "Blow the joint clean with the full air of the line.",
                    "That drives needles into eyes, seams and boxes. Chips are sucked off, not blown about.",
                ),
                option("vacuum", "Suck the chips off."),
                wrong(
                    "gloves",
                    "Wear loose gloves at the drill, for the chips are sharp.",
                    "A turning drill takes a glove and the hand in it. Put gloves on once it stands still.",
                ),
                option("magnet", "Look for the rest with a magnet."),
                option("catch", "Catch the chips while you drill."),
                wrong(
                    "seal_in",
                    "Seal over what cannot be got out.",
                    "Steel under a sealer goes on rusting, and nobody will look there again.",
                ),
            ),
        ),
        Number(
            id="needles",
            ask="About how many needles are left behind?",
            unit="pieces",
            relative_tolerance=0.02,
            tolerance_reason="Needles are not counted one by one: 2 % covers rounding on the way.",
            slips=(
                slip("solid", "The rivet is a tube. The bore gives no chips."),
                slip("radius", "The diameter was used as the radius: look at the area again."),
                slip("caught", "Those are the ones that were caught. What is left is the rest."),
            ),
        ),
        Choice(
            id="where",
            ask="Where must you look for chips of this hole?",
            options=(
                option("box", "In front, and in the box behind, where they are hard to get out."),
                option("front", "In front only: the plate is not pierced."),
                option("reach", "In front, and behind the plate, where you can reach them."),
            ),
        ),
    ),
    draw=_draw_chips,
    solve=_solve_chips,
    reasons=(
        "Catch, suck off, then a magnet; never blow, and no gloves near a turning drill. "
        "A tip that went deeper than the metal has left a hole, and chips fell through it. "
        "In a closed box they stay, get wet and rust on the aluminium. "
        "That is one more reason to keep the second plate whole."
    ),
    read_again=HEADING,
)

EXERCISES = (DEPTH_BUDGET, CHIPS)
