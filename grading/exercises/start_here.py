"""Exercises of the page ``start_here``: practice, and the cautions, which count."""

from grading.exercise import Choice, ChoiceKey, Choices, ChoicesKey, Exercise, Order, OrderKey, Page
from grading.exercises import practice
from grading.exercises.building_blocks import option, same, wrong
from grading.exercises.scenes import scene

OBJECTIVES = {
    "answering": "You can type an answer with its unit, see what was saved, and correct it.",
    "cautions": "You can say what comes first before anybody welds on a car.",
}

CAUTIONS = Exercise(
    id="start_here.cautions",
    objective="cautions",
    title="What comes first?",
    prompt=(
        "{vehicle_first} stands at {shop}. Its aluminium side is joined with rivets. "
        "Somebody wants to start the stud welder now."
    ),
    shown=lambda scenario: {"vehicle_first": scenario["vehicle"][0].upper() + scenario["vehicle"][1:]},
    parts=(
        Choice(
            id="who_decides",
            ask=(
                "This workbook and the vehicle maker's procedure say different things about the joint. "
                "Which one do you follow?"
            ),
            options=(
                wrong(
                    "workbook",
                    "The workbook, because it shows where its numbers come from.",
                    "The workbook teaches. It is not a repair procedure.",
                ),
                wrong(
                    "experience",
                    "What worked on the last car of that kind.",
                    "The last car may have had other rivets, sheets or adhesive.",
                ),
                wrong(
                    "average",
                    "Something between the two.",
                    "A setting between two rules follows neither of them.",
                ),
                option("maker", "The vehicle maker's current procedure."),
            ),
        ),
        Choices(
            id="who_stays_out",
            ask="Who or what must be out of the way before the first arc?",
            options=(
                option("implant", "Anybody with a pacemaker or another active implant."),
                wrong(
                    "gloves",
                    "Anybody who already wears gloves and a helmet.",
                    "People with gloves and helmet are the ones who may stay.",
                ),
                option("flammable", "Rags, solvent, fuel and dust that can burn."),
                option("arc_eyes", "People who would look into the arc without a filter."),
                wrong(
                    "extraction",
                    "The fume extraction, because it carries the shielding gas away.",
                    "Fume extraction stays. Place it so that it does not blow on the arc.",
                ),
            ),
        ),
        Order(
            id="before_the_arc",
            ask="Put the steps in order, first step at the top.",
            points=2.0,
            options=(
                option(
                    "own_protection",
                    "Put on your own protection: filter, gloves, clothing that does not melt.",
                ),
                option("maker", "Read the vehicle maker's current procedure for this joint."),
                option("arc", "Weld the first test stud on a spare piece."),
                option("manual", "Read the equipment manual and the local rules for hot work."),
                option(
                    "car",
                    "Protect the car: its battery and electronics, glass, trim and everything that burns.",
                ),
                option("area", "Clear the area of people with implants, bystanders and things that burn."),
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {
        "who_decides": ChoiceKey(right=same(table, "maker")),
        "who_stays_out": ChoicesKey(right=same(table, ("implant", "flammable", "arc_eyes"))),
        "before_the_arc": OrderKey(
            right=same(table, ("maker", "manual", "area", "car", "own_protection", "arc"))
        ),
    },
    reasons=(
        "The vehicle maker's procedure decides whether the joint may be opened this way at all, so it is "
        "read first. "
        "The manual and the local rules tell what the area and the car need, so they come next. "
        "Then clear the area, protect the car, protect yourself, and strike the first arc on a spare piece."
    ),
    read_again="What comes first?",
)

PAGE = Page(
    id="start_here",
    title="Start here",
    folder=".",
    notebook="0_start_here.ipynb",
    assignment="0_start_here",
    objectives=OBJECTIVES,
    exercises=(*practice.EXERCISES, CAUTIONS),
    practical_points=5.0,
    practical_cue=(
        "Double-click here to write, then press Shift and Enter.\n\n"
        "*Write the date, the place and the name of the person who watched. One sentence on what you "
        "would do differently.*"
    ),
)
