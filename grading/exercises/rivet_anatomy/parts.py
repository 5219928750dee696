"""Exercises on the parts of a self-piercing rivet, what each does, and the steel tube between head and tail."""

import numpy as np

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
from grading.exercises.building_blocks import THREE_FIGURES, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.rivet import Rivet, rivet_axial_capacity_n

HEADING = "What is each part called, and what does it do?"
# What each part does; the learner matches the name.
JOBS = {
    "head": "bears on the top plate and is what you weld the stud to",
    "web": "solid steel between the face of the head and the bore",
    "shank": "hollow leg that goes through the top plate",
    "bore": "takes up the slug that was cut out of the top plate",
    "tail": "spreads inside the second plate and locks there",
    "button": "bulge on the back of the second plate, made by the die",
}

NAME_PARTS = Exercise(
    id="rivet_anatomy.name_parts",
    objective="anatomy",
    title="Name the parts",
    prompt="A new helper at {shop} holds a cut joint in hand and asks what is what.",
    parts=(
        Verdicts(
            id="names",
            ask="Which part is meant?",
            rows=tuple(option(part, words) for part, words in JOBS.items()),
            verdicts=tuple(option(part, part) for part in sorted(JOBS)),
            points=2.0,
        ),
        Choice(
            id="weld_on",
            ask="Which of these must still be there when the weld has cooled?",
            options=(
                option("web", "Some of the web, solid, under the weld."),
                wrong(
                    "slug",
                    "The slug in the bore.",
                    "The slug may fall out for all the pull cares: it is loose in the bore.",
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
        "names": VerdictsKey(right={part: same(table, part) for part in JOBS}),
        "weld_on": ChoiceKey(right=same(table, "web")),
    },
    reasons=(
        "From the top: head, web, shank with its bore, tail; the button lies on the back of the second plate. "
        "The weld sits on the head, and the web is all that lies between the melt and the bore."
    ),
    read_again=HEADING,
)

HEAD_FORMS = Exercise(
    id="rivet_anatomy.head_forms",
    objective="anatomy",
    title="Flat or raised?",
    prompt="Two kinds of rivet are found on {vehicle}: one is flush with the top plate, one stands out of it.",
    parts=(
        Choices(
            id="true_of_both",
            ask="What is true of both?",
            options=(
                option("head_wider", "The head is wider than the shank, usually by 2 to 3 mm."),
                option("steel", "The rivet is hard steel, the plates are not."),
                wrong(
                    "through",
                    "The tail can be seen from the back.",
                    "A self-piercing rivet stays inside the second plate. What you see at the back is plate.",
                ),
                wrong(
                    "predrilled",
                    "The plates had holes before the rivet came.",
                    "The rivet cuts its own hole in the top plate and makes none in the second.",
                ),
            ),
        ),
        Choice(
            id="stud_place",
            ask="What changes for the stud on a raised head?",
            options=(
                option("seat", "The holder needs a nose that stands square over the head."),
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
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {
        "true_of_both": ChoicesKey(right=same(table, ("head_wider", "steel"))),
        "stud_place": ChoiceKey(right=same(table, "seat")),
    },
    reasons=(
        "Head forms differ, the idea does not: a hard hollow rivet with a head wider than its shank. "
        "It cuts its own way and stays inside. "
        "The stud must stand square on the middle of the face, whatever the form."
    ),
    read_again=HEADING,
)


def _draw_tube(draw):
    return scene(draw) | {
        "shank_mm": draw.pick("shank_mm", (5.2, 5.3, 5.4, 5.5)),
        "bore_mm": draw.decimal("bore_mm", 3.0, 3.5, 0.1, 1),
        "hardness_hv": draw.whole("hardness_hv", 380, 520, 10),
    }


def _solve_tube(table):
    shank_mm, bore_mm, hardness_hv = table["shank_mm"], table["bore_mm"], table["hardness_hv"]
    rivet = Rivet(
        shank_diameter_mm=shank_mm, bore_diameter_mm=bore_mm, rivet_length_mm=6.0, hardness_hv=hardness_hv
    )
    area_mm2, capacity_n = rivet.tube_area_mm2, rivet_axial_capacity_n(rivet)
    whole_mm2 = np.pi / 4 * shank_mm**2
    return {
        "area": NumberKey(
            value=area_mm2,
            slips={
                "no_bore": whole_mm2,
                "diameter_of_wall": np.pi / 4 * (shank_mm - bore_mm) ** 2,
                "radius": 4 * area_mm2,
            },
        ),
        "capacity": NumberKey(
            value=capacity_n,
            slips={"no_bore": capacity_n * whole_mm2 / area_mm2, "no_factor": capacity_n / 3.2},
        ),
        "gives_first": ChoiceKey(right=same(table, "plate")),
    }


TUBE = Exercise(
    id="rivet_anatomy.tube_section",
    objective="anatomy",
    title="A tube of hard steel",
    prompt=(
        "The shank of a rivet from {vehicle} measures {shank_mm} mm outside and {bore_mm} mm inside, and has a "
        "hardness of {hardness_hv} HV. Take the strength of the steel in N/mm² as 3.2 times the hardness. "
        "The aluminium round a tail usually lets go somewhere between one and five thousand newtons."
    ),
    parts=(
        Number(
            id="area",
            ask="How large is the section of steel in the shank?",
            unit="mm2",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("no_bore", "That is a solid bar. The bore is missing."),
                slip("diameter_of_wall", "Take the circle of the shank, then take off the circle of the bore."),
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
                    "both",
                    "Both at once.",
                    "The forces are far apart, so one of them is long gone before the other is reached.",
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
