"""Exercises on the parts of a self-piercing rivet, what each does, and the tube between head and tail."""

from functools import cache

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Choices,
    ChoicesKey,
    Exercise,
    Figure,
    Number,
    NumberKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.rivet import Rivet, rivet_axial_capacity_n, steel_strength_mpa
from secondplate.sheet_alloys import body_sheet
from secondplate.tail_pull_out import tail_hold

HEADING = "What is each part called, and what does it do?"
# The letters of the figure, from the top of the joint to its back.
LETTERS = {"A": "head", "B": "web", "C": "shank", "D": "bore", "E": "tail", "F": "button"}
# What each part does, in another order than the letters.
JOBS = {
    "bore": "takes up the slug that was cut out of the top plate",
    "tail": "spreads inside the second plate and locks there",
    "web": "solid steel between the face of the head and the hollow below",
    "button": "bulge on the back of the second plate, shaped by the die",
    "head": "bears on the top plate, and is what you weld the stud to",
    "shank": "hollow leg that goes through the top plate",
}
NAMES = tuple(option(part, part) for part in sorted(JOBS))

NAME_PARTS = Exercise(
    id="rivet_anatomy.name_parts",
    objective="anatomy",
    title="Name the parts",
    prompt=(
        "A new helper at {shop} holds a joint that was cut through the middle of the rivet, and asks what is "
        "what. The picture marks six parts with letters."
    ),
    figure=lambda scenario: Figure(name="rivet_parts"),
    parts=(
        Verdicts(
            id="letters",
            ask="Which part does each letter mark?",
            rows=tuple(option(letter.lower(), letter) for letter in LETTERS),
            verdicts=NAMES,
            points=2.0,
        ),
        Verdicts(
            id="names",
            ask="Which part is described?",
            rows=tuple(option(part, words) for part, words in JOBS.items()),
            verdicts=NAMES,
            points=2.0,
        ),
        Choice(
            id="weld_on",
            ask="Which of these has to be left when the weld has cooled, for the pull to reach the rivet?",
            options=(
                option("web", "Some of the web, solid, under the weld."),
                wrong(
                    "slug",
                    "The slug in the bore.",
                    "The slug lies loose or wedged in the bore and carries nothing.",
                ),
                wrong(
                    "button",
                    "The button, round and whole.",
                    "The button belongs to the second plate. The pull goes through the head.",
                ),
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {
        "letters": VerdictsKey(right={letter.lower(): same(table, part) for letter, part in LETTERS.items()}),
        "names": VerdictsKey(right={part: same(table, part) for part in JOBS}),
        "weld_on": ChoiceKey(right=same(table, "web")),
    },
    reasons=(
        "From the top: head, web, shank with its bore, tail. The button lies at the back of the joint. "
        "The weld sits on the head, and the web is all that lies between the melt and the bore."
    ),
    read_again=HEADING,
)

HEAD_FORMS = Exercise(
    id="rivet_anatomy.head_forms",
    objective="anatomy",
    title="Flat or raised?",
    prompt="Two kinds of rivet are found on {vehicle}: one flush with the top plate, one standing out of it.",
    parts=(
        Choices(
            id="true_of_both",
            ask="What is true of both?",
            options=(
                wrong(
                    "through",
                    "The tail can be seen from the back.",
                    "A self-piercing rivet stays inside the second plate. What you see at the back is plate.",
                ),
                option("head_wider", "The head is wider than the shank, usually by 2 to 3 mm."),
                option("hollow", "The shank is hollow: a tube that cuts its own way."),
                wrong(
                    "predrilled",
                    "The plates had holes before the rivet came.",
                    "The rivet cuts its own hole in the top plate and makes none in the second.",
                ),
            ),
        ),
        Choice(
            id="stud_place",
            ask="What changes for the stud on a raised head, where the nose stands on the plate?",
            options=(
                wrong(
                    "polarity",
                    "The poles have to be swapped.",
                    "The poles follow the metals, and they are the same.",
                ),
                wrong(
                    "bigger",
                    "A wider stud fits, because the head stands clear of the plate.",
                    "The face of the head decides what fits, not how high it stands.",
                ),
                option("protrusion", "The protrusion is set anew: the head is nearer than the plate."),
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {
        "true_of_both": ChoicesKey(right=same(table, ("head_wider", "hollow"))),
        "stud_place": ChoiceKey(right=same(table, "protrusion")),
    },
    reasons=(
        "Head forms differ, the idea does not: a hard hollow rivet with a head wider than its shank. "
        "It cuts its own way and stays inside. "
        "Whatever the form, the stud stands square on the middle of the face. "
        "Where the nose stands on the plate, a head that stands out of it is met earlier."
    ),
    read_again=HEADING,
)


# A tail of the usual size in soft sheet, for what holds it.
SECOND_PLATE = body_sheet("5754-O", thickness_mm=2.0)
TAIL = {"interlock_mm": 0.4, "penetration_mm": 1.6}
SIZES = ("shank_mm", "bore_mm", "hardness_hv")


def _draw_tube(draw):
    return scene(draw) | {
        "shank_mm": draw.pick("shank_mm", (5.2, 5.3, 5.4, 5.5)),
        "bore_mm": draw.decimal("bore_mm", 3.0, 3.5, 0.1, 1),
        "hardness_hv": draw.whole("hardness_hv", 380, 520, 10),
    }


def _rivet(sizes):
    """Return the rivet of one scenario, or of a column of them; its length plays no part."""
    return Rivet(
        shank_diameter_mm=sizes["shank_mm"],
        bore_diameter_mm=sizes["bore_mm"],
        rivet_length_mm=6.0,
        hardness_hv=sizes["hardness_hv"],
    )


def _hold(rivet):
    """Return the ways in which the hold of the tail can give."""
    return tail_hold(rivet, tensile_strength_mpa=SECOND_PLATE.tensile_strength_mpa, **TAIL)


@cache
def _hold_ends_n(*sizes):
    """Return the least and the greatest force that may hold the tail of one rivet, to hundreds of newtons."""
    band = _hold(_rivet(dict(zip(SIZES, sizes, strict=True)))).strength_n
    return tuple(round(end, -2) for end in (band.low, band.high))


def _hold_words(scenario):
    """Return what holds the tail in words."""
    low_n, high_n = _hold_ends_n(*(scenario[name] for name in SIZES))
    return {"low": f"{low_n:.0f} N", "high": f"{high_n:.0f} N"}


def _solve_tube(table):
    rivet = _rivet(table)
    area_mm2, capacity_n = rivet.tube_area_mm2, rivet_axial_capacity_n(rivet)
    whole_mm2 = np.pi / 4 * rivet.shank_diameter_mm**2
    return {
        "area": NumberKey(
            value=area_mm2,
            slips={
                "no_bore": whole_mm2,
                "diameter_of_wall": np.pi / 4 * (rivet.shank_diameter_mm - rivet.bore_diameter_mm) ** 2,
                "radius": 4 * area_mm2,
            },
        ),
        "capacity": NumberKey(
            value=capacity_n,
            slips={
                "no_bore": whole_mm2 * steel_strength_mpa(rivet.hardness_hv),
                "no_factor": area_mm2 * rivet.hardness_hv,
            },
        ),
        "gives_first": ChoiceKey(
            right=chosen([_hold(rivet).can_be_first["tube snaps"]], ["not_told"], otherwise="plate")
        ),
    }


TUBE = Exercise(
    id="rivet_anatomy.tube_section",
    objective="anatomy",
    title="A tube of hard steel",
    prompt=(
        "The shank of a rivet from {vehicle} measures {shank_mm} mm outside and {bore_mm} mm inside. "
        "Its hardness is {hardness_hv} HV; take the strength of the steel in N/mm² as 3.2 times that. "
        "What the aluminium round its tail holds can only be estimated: {low} to {high}."
    ),
    shown=_hold_words,
    parts=(
        Number(
            id="area",
            ask="How large is the section of steel in the shank?",
            unit="mm2",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("no_bore", "That is a solid bar. The bore is missing."),
                slip("diameter_of_wall", "Take the circle of the shank less the circle of the bore."),
                slip("radius", "Four times too large: a diameter was used as a radius."),
            ),
        ),
        Number(
            id="capacity",
            ask="At which pull would the shank itself snap?",
            unit="N",
            relative_tolerance=0.03,
            tolerance_reason="The factor of 3.2 is given to two figures.",
            slips=(
                slip("no_bore", "That is the pull for a solid bar. The bore is missing."),
                slip("no_factor", "The hardness is not yet a strength: it is multiplied by 3.2."),
            ),
        ),
        Choice(
            id="gives_first",
            ask="You pull the rivet out by its head. What gives first?",
            options=(
                wrong(
                    "shank",
                    "The shank snaps.",
                    "Compare the two forces: the shank bears several times what holds the tail.",
                ),
                option("plate", "The aluminium round the tail."),
                wrong(
                    "not_told",
                    "That cannot be told: the two forces are too close.",
                    "Compare your force with the highest that the aluminium may hold: they are far apart.",
                ),
            ),
        ),
    ),
    draw=_draw_tube,
    solve=_solve_tube,
    reasons=(
        "The area is the circle of the shank less the circle of the bore. "
        "Times 3.2 times the hardness it gives the pull that would snap the shank. "
        "The soft aluminium gives way long before that, so the rivet moves and does not snap."
    ),
    read_again=HEADING,
)

EXERCISES = (NAME_PARTS, HEAD_FORMS, TUBE)
