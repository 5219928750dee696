"""Exercise on a drawn flange: which of six proposed places keep the rules."""

from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Figure,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import option, same, wrong
from grading.exercises.scenes import scene
from grading.exercises.second_plate.drawn_flanges import FLANGES, ROOT_ROOM_MM, drawn_flange, rivets, verdicts
from grading.exercises.second_plate.edges import FASTENERS, HEADING

LETTERS = ("a", "b", "c", "d", "e", "f")


def flange_figure(scenario):
    """Return the figure of the flange of one scenario."""
    flange, _, sites, x, y = drawn_flange(scenario["flange"])
    return Figure(
        name="flange",
        arguments={
            "length_mm": flange.flange_length_mm,
            "width_mm": flange.flange_width_mm,
            "thickness_mm": flange.thickness_mm,
            "hole_diameter_mm": FASTENERS[rivets(scenario["flange"])].hole_most_mm,
            "x_mm": x,
            "y_mm": y,
            "sites_mm": [[site.x_mm, site.y_mm, site.affected_diameter_mm] for site in sites],
        },
    )


def _flange_words(scenario):
    """Return the limits of the rules on the flange of one scenario."""
    _, rules, sites, _, _ = drawn_flange(scenario["flange"])
    return {
        "fasteners": rivets(scenario["flange"]),
        "edge": f"{rules.to_edges_mm:.4g}",
        "root": f"{ROOT_ROOM_MM:g}",
        "pitch": f"{rules.pitch_mm:.4g}",
        "site": f"{rules.site_distance_mm(sites[0].affected_diameter_mm):.4g}",
    }


PLACE_FASTENERS = Exercise(
    id="second_plate.place_fasteners",
    objective="fasten",
    title="Six places on a flange",
    prompt=(
        "On {vehicle} somebody at {shop} marked six places, A to F, for {fasteners}; the picture shows them. "
        "The load runs across the flange. "
        "By the minimum distances a centre must be {edge} mm from both ends and from the free edge. "
        "From the root it must be {root} mm, for the setting tool needs that room. "
        "Two new ones must be {pitch} mm apart along the flange. "
        "From the centre of an old site it must be {site} mm."
    ),
    shown=_flange_words,
    figure=flange_figure,
    parts=(
        Verdicts(
            id="places",
            ask="What do you say of each place?",
            points=3.0,
            rows=tuple(option(letter, letter.upper()) for letter in LETTERS),
            verdicts=(
                option("allowed", "allowed"),
                option("edge", "too near an edge"),
                option("old_site", "too near an old site"),
                option("each_other", "too near another new one"),
            ),
        ),
        Choice(
            id="pair",
            ask="Two of the places are too near each other. What do you do?",
            options=(
                wrong(
                    "both",
                    "Keep both: two fasteners hold more than one.",
                    "Holes that close share the same metal. It tears from one to the other.",
                ),
                option("move", "Move or drop one of them, then check all distances again."),
                wrong(
                    "smaller",
                    "Keep both, and drill one hole smaller than its rivet asks for.",
                    "A rivet in a hole too small does not seat, and the centres stay where they are.",
                ),
            ),
        ),
    ),
    draw=lambda draw: scene(draw) | {"flange": draw.whole("flange", 0, FLANGES - 1)},
    solve=lambda table: {
        "places": VerdictsKey(
            right={
                letter: [verdicts(number)[row] for number in table["flange"].tolist()]
                for row, letter in enumerate(LETTERS)
            }
        ),
        "pair": ChoiceKey(right=same(table, "move")),
    },
    reasons=(
        "Go round each place: ends, free edge, root, old sites, then its neighbours. "
        "All distances run from centres; an old site is measured slantwise where it lies to one side. "
        "Edges and old sites cannot be moved, so they decide first. "
        "The rule beside old sites is a choice of this workbook: the vehicle maker's pattern comes first."
    ),
    read_again=HEADING,
)

EXERCISES = (PLACE_FASTENERS,)
