"""Exercise on what a pull on the head must overcome: the hold of the tail, friction, the hole on the way."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Range, RangeKey
from grading.exercises.building_blocks import (
    THREE_FIGURES,
    chosen,
    looked_up_numbers,
    option,
    same,
    slip,
    wrong,
)
from grading.exercises.rivet_anatomy.holding import RIVET, clear_bands, newtons, spoken, strength_mpa
from grading.exercises.scenes import scene
from secondplate.pull_out_forces import shank_friction_n
from secondplate.sheet_alloys import sheet_band
from secondplate.tables import values
from secondplate.tail_pull_out import tail_pull_out

HEADING = "What must a pull overcome?"
CONSTANTS = values("pull_out_constants")
ALLOYS = ("5754-O", "6016-T6", "6082-T6")
TO_TEN_NEWTONS = "The forces are shown to ten newtons and the spread to two figures: 2 % covers both."
COLLAR = ("collar shear", "collar crush", "leg closure")


def pull(table):
    """Return what it takes to draw out the rivets of a table of joints."""
    return tail_pull_out(
        RIVET,
        interlock_mm=table["interlock_mm"],
        penetration_mm=table["penetration_mm"],
        second_tensile_strength_mpa=strength_mpa(table["second"]),
        top_proof_stress_mpa=looked_up_numbers(
            table["top"], lambda name: sheet_band(name, "proof stress").best
        ),
        contact_length_mm=table["contact_mm"],
    )


def greater_event(drawn_out):
    """Return which of the two events asks for the greater force, as an id."""
    first, second = drawn_out.first_peak_n, drawn_out.second_peak_n
    return chosen([first.low > second.high, second.low > first.high], ["first", "second"], otherwise="open")


@cache
def joints():
    """Return joints by the event that asks for the greater force; bands that only just meet are left out."""
    sizes = {
        "second": ALLOYS,
        "top": ALLOYS,
        "interlock_mm": (0.2, 0.3, 0.4, 0.5, 0.6),
        "penetration_mm": (1.4, 1.7, 2.0),
        "contact_mm": (2.5, 3.0, 3.5, 4.0),
    }
    grid = np.meshgrid(*sizes.values(), indexing="ij")
    table = dict(zip(sizes, (column.ravel() for column in grid), strict=True))
    drawn_out = pull(table)
    plain = clear_bands(drawn_out.first_peak_n, drawn_out.second_peak_n)
    # The shear stands in the prompt: it must not be the answer by chance.
    high_n = drawn_out.first_peak_n.high
    plain &= np.abs(drawn_out.modes.forces_n["collar shear"].best - high_n) > 0.03 * high_n
    found = {}
    for row, event in enumerate(greater_event(drawn_out)):
        if plain[row]:
            joint = {name: column[row].item() for name, column in table.items()}
            found.setdefault(event, []).append(joint)
    return found


def _draw_band(draw):
    events = joints()
    return scene(draw) | draw.pick("joint", events[draw.pick("event", sorted(events))])


def one_pull(scenario):
    """Return the pull of one scenario."""
    return pull({name: np.array([value]) for name, value in scenario.items()})


def _band_words(scenario):
    """Return the forces that the learner puts together, each as it comes out of its sum, to ten newtons."""
    drawn_out = one_pull(scenario)
    forces = drawn_out.modes.forces_n
    crush_n = forces["collar crush"].low / CONSTANTS["crush factor low"]
    return {
        "shear": newtons(forces["collar shear"].best),
        "leg": newtons(forces["leg closure"].best),
        "crush": newtons(crush_n),
        "crush_low": f"{CONSTANTS['crush factor low']}",
        "crush_high": f"{CONSTANTS['crush factor high']}",
        "spread": f"{CONSTANTS['model spread'] ** 0.5:.1f}",
        "opening": spoken(drawn_out.second_peak_n),
        "pressure": f"{CONSTANTS['contact pressure']:.0f}",
        "friction_low": f"{CONSTANTS['friction low']}",
        "friction_high": f"{CONSTANTS['friction high']}",
        "shank_mm": f"{RIVET.shank_diameter_mm}",
    }


def _solve_band(table):
    drawn_out = pull(table)
    friction, first, hold = drawn_out.friction_n, drawn_out.first_peak_n, drawn_out.modes.strength_n
    forces = [drawn_out.modes.forces_n[name] for name in COLLAR]
    highest = np.max([np.broadcast_to(force.high, first.high.shape) for force in forces], axis=0)
    lower_friction = shank_friction_n(
        RIVET,
        contact_length_mm=table["contact_mm"],
        contact_pressure_mpa=CONSTANTS["contact pressure"],
        friction=CONSTANTS["friction low"],
    )
    added = (sum(force.low for force in forces), sum(force.high for force in forces) + friction.high)
    return {
        "friction": NumberKey(
            value=friction.high,
            slips={
                "lower": lower_friction,
                "flat": friction.high / np.pi,
                "pressure_only": friction.high / CONSTANTS["friction high"],
            },
        ),
        "first_peak": RangeKey(
            low=first.low,
            high=first.high,
            slips={
                "added": added,
                "highest": (first.low, highest + friction.high),
                "no_friction": (hold.low, hold.high),
            },
        ),
        "second_peak": ChoiceKey(right=same(table, "later")),
        "greatest": ChoiceKey(right=greater_event(drawn_out)),
    }


BAND = Exercise(
    id="rivet_anatomy.pull_band",
    objective="holding",
    title="How hard will it pull?",
    prompt=(
        "A rivet of {vehicle} is to be drawn out by its head. "
        "The second plate is {second}, the top plate {top}. "
        "Three ways to let go: collar shear at {shear}, leg bending inward at {leg}, "
        "collar crush at {crush} times c. "
        "Nobody tried them: the first two may be {spread} times as much or as little, c lies between "
        "{crush_low} and {crush_high}. "
        "Friction adds coefficient × pressure × π × shank × length: take {pressure} N/mm² over "
        "{contact_mm} mm of the {shank_mm} mm shank, coefficient {friction_low} to {friction_high}. "
        "That is an example, so friction may also be nothing. "
        "When the tail reaches the top plate it must open the hole: {opening}."
    ),
    shown=_band_words,
    parts=(
        Number(
            id="friction",
            ask="How much can friction add at the most?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("lower", "That is the lower coefficient. The most comes with the higher one."),
                slip("flat", "The plates press all round the shank: π is missing."),
                slip("pressure_only", "That is the force that presses. Friction is a share of it."),
            ),
        ),
        Range(
            id="first_peak",
            ask="Between which two forces does the first peak of the pull lie, friction counted?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=TO_TEN_NEWTONS,
            slips=(
                slip("added", "The three ways are not added: the one that needs least comes first."),
                slip("highest", "At the high end too, the way that needs least comes first."),
                slip("no_friction", "The high end lacks its friction."),
            ),
        ),
        Choice(
            id="second_peak",
            ask="How do you count the force that opens the hole of the top plate?",
            options=(
                wrong(
                    "added",
                    "Add it to the first peak.",
                    "By the time the tail gets there, the second plate has let go.",
                ),
                option("later", "As a second event, compared with the first."),
                wrong(
                    "never",
                    "Not at all: the rivet cut that hole itself.",
                    "It cut the hole with its shank. The tail that comes back is wider.",
                ),
            ),
        ),
        Choice(
            id="greatest",
            ask="Which event asks for the greater force?",
            options=(
                option("open", "Nobody can say: the bands meet, so plan for the higher of both high ends."),
                wrong(
                    "second",
                    "The second: the tail in the hole of the top plate.",
                    "Compare the low end of the second with the high end of the first.",
                ),
                option("first", "The first: the hold of the tail."),
            ),
        ),
    ),
    draw=_draw_band,
    solve=_solve_band,
    reasons=(
        "The way that needs the least force comes first, at the low end and at the high end. "
        "Friction comes on top: nothing at the low end, the most at the high end. "
        "Opening the hole is a second event, so it is compared and not added. "
        "No measured pull of this kind was found, so a band of a factor of two and more is all there is."
    ),
    read_again=HEADING,
)

EXERCISES = (BAND,)
