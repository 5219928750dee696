"""Exercises on how fast a weld cools, what that does to the rivet steel, and what the weld is good for."""

from grading.exercise import Choice, ChoiceKey, Choices, ChoicesKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.heat.constant_metal import mean_metal
from secondplate.heat.cooling_times import plane_cooling_time_s

HEADING = "Is the weld hard?"
# Means up to the temperature from which the cooling time is counted.
RIVET_STEEL = mean_metal("boron rivet steel", up_to_c=800.0)


def _draw_cooling(draw):
    return scene(draw) | {
        "first_j_mm2": draw.decimal("first_j_mm2", 3.6, 4.4, 0.2, 1),
        "second_j_mm2": draw.decimal("second_j_mm2", 5.2, 6.4, 0.2, 1),
    }


def _time_s(heat_j_mm2):
    return plane_cooling_time_s(heat_j_mm2, metal=RIVET_STEEL)


def _solve_cooling(table):
    first, second = table["first_j_mm2"], table["second_j_mm2"]
    first_s = _time_s(first)
    return {
        "time": NumberKey(
            value=_time_s(second),
            slips={"linear": first_s * second / first, "upside_down": first_s * (first / second) ** 2},
        ),
        "hard": ChoiceKey(right=same(table, "still_martensite")),
    }


COOLING = Exercise(
    id="stud_welding.cooling_time",
    objective="metal",
    title="From 800 to 500 degrees",
    prompt=(
        "Steel hardens by how fast it falls from 800 to 500 °C. "
        "The face of a rivet head that takes {first_j_mm2} J/mm2 makes that fall in {first_s} s. "
        "At {shop} the setting gives it {second_j_mm2} J/mm2. "
        "The time goes with the square of the heat on each square millimetre."
    ),
    shown=lambda scenario: {"first_s": f"{_time_s(scenario['first_j_mm2']):.3g}"},
    parts=(
        Number(
            id="time",
            ask="How long does the fall from 800 to 500 °C take at the second setting?",
            unit="s",
            relative_tolerance=0.03,
            tolerance_reason="The known time is given to three figures and squared ratios carry rounding.",
            slips=(
                slip("linear", "The time goes with the square of the heat, and this is in proportion to it."),
                slip("upside_down", "More heat cools more slowly. The ratio is the wrong way round."),
            ),
        ),
        Choice(
            id="hard",
            ask=(
                "Rivet steel of this kind turns to hard martensite when the fall takes less than about "
                "four seconds. What does the hotter setting change?"
            ),
            options=(
                wrong(
                    "soft_now",
                    "The steel beside the weld stays soft now, because it cools more slowly.",
                    "Slower, but still many times faster than the few seconds that soft steel would need.",
                ),
                option("still_martensite", "Nothing that helps: it is martensite with either setting."),
                wrong(
                    "preheat",
                    "Nothing, but a gas flame on the panel before the weld would.",
                    "A flame hot enough to help the rivet ruins the aluminium and the glue around it.",
                ),
            ),
        ),
    ),
    draw=_draw_cooling,
    solve=_solve_cooling,
    reasons=(
        "Divide the second heat by the first, square it, and multiply the known time by it. "
        "Both times are far under the seconds that this steel would need to stay soft. "
        "So no setting of a stud welder makes a tough weld on a hard rivet: it is hard, and it is for one "
        "pull, soon."
    ),
    read_again=HEADING,
)

BRITTLE = Exercise(
    id="stud_welding.brittle_weld",
    objective="metal",
    title="What is this weld good for?",
    prompt="A stainless stud sits on a rivet at {shop}. The test pull on its neighbour was sound.",
    parts=(
        Choices(
            id="uses",
            ask="What may be done with the weld?",
            options=(
                option("soon", "Pull it straight, soon after welding."),
                wrong(
                    "tomorrow",
                    "Leave it over the weekend and pull on Monday.",
                    "Hard welds can crack by themselves, up to one or two days later. Pull soon.",
                ),
                wrong(
                    "hammer",
                    "Knock it sideways to see whether it holds.",
                    "A blow or a bend breaks a hard weld that a straight pull would not.",
                ),
                option("aside", "Stand out of line while it is loaded."),
                wrong(
                    "anchor",
                    "Hang the panel on it while you work next to it.",
                    "It is a handle for one pull, not a fastener.",
                ),
                wrong(
                    "again",
                    "If it slips off, weld the next stud on the same warm spot with more current.",
                    "The spot is hard and thinner now. Find out why it let go before another arc.",
                ),
            ),
            points=2.0,
        ),
    ),
    draw=scene,
    solve=lambda table: {"uses": ChoicesKey(right=same(table, ("soon", "aside")))},
    reasons=(
        "The weld and the zone beside it are as hard as a file and will not stretch. "
        "They carry one straight pull, soon, with nobody in line. "
        "Hydrogen and stress can open a crack a day later, so waiting is no test."
    ),
    read_again=HEADING,
)

EXERCISES = (COOLING, BRITTLE)
