"""Exercise on what speaks against riveting a stack with a given rivet."""

from functools import cache
from itertools import product

from grading.catalogues import worked_out
from grading.exercise import Choice, ChoiceKey, Choices, ChoicesKey, Exercise
from grading.exercises.building_blocks import option, same, wrong
from grading.exercises.rivet_anatomy.stack import BOARD, HEADING, LIMITS, plate_words
from grading.exercises.scenes import scene
from secondplate.rivet import Rivet, Sheet, Stack, piercing_force_n, rivet_axial_capacity_n
from secondplate.rivet_rules import reasons_against
from secondplate.sheet_alloys import body_sheet

# How the library's reason begins, by the option that stands for it.
REASONS = {
    "little_second": "One third",
    "brittle": "Aluminium elongation",
    "thick_stack": "Whole stack",
    "leg": "Leg collapses",
    "thin": "Aluminium thickness",
    "short": "Rivet too short",
}
STRONG_STEEL = "strong steel"
TOPS = (
    ("6016-T4", 0.6),
    ("6016-T4", 1.2),
    ("6016-T4", 2.5),
    ("6016-T4", 3.6),
    (STRONG_STEEL, 1.2),
    (STRONG_STEEL, 1.5),
)
SECONDS = (
    ("6016-T4", 0.6),
    ("6016-T4", 1.0),
    ("6016-T4", 2.0),
    ("6016-T4", 3.2),
    ("6016-T4", 4.5),
    ("AlSi10MnMg-F", 2.2),
    ("AlSi10MnMg-F", 3.2),
    ("AlSi10MnMg-F", 4.5),
)


def _sheet(name, thickness_mm):
    """Return a plate of the exercise; the strong steel stands for press-hardened body parts."""
    if name == STRONG_STEEL:
        return Sheet(thickness_mm=thickness_mm, family="steel", tensile_strength_mpa=1500.0)
    return body_sheet(name, thickness_mm=thickness_mm)


@cache
def _case(top, top_mm, second, second_mm, length_mm, hardness_hv):
    """Return stack and rivet of one case."""
    stack = Stack(top=_sheet(top, top_mm), second=_sheet(second, second_mm))
    return stack, Rivet(rivet_length_mm=length_mm, hardness_hv=hardness_hv)


def _forces_n(stack, rivet):
    """Return the force that cuts the slug and the force that the leg bears."""
    need_n = piercing_force_n(
        shank_diameter_mm=rivet.shank_diameter_mm,
        thickness_mm=stack.top.thickness_mm,
        tensile_strength_mpa=stack.top.tensile_strength_mpa,
    )
    return need_n, rivet_axial_capacity_n(rivet)


@cache
def _against(*case):
    """Return which options stand against a case."""
    said = reasons_against(*_case(*case))
    return tuple(name for name, start in REASONS.items() if any(text.startswith(start) for text in said))


@worked_out
def _cases():
    """Return the cases by what stands against them: one or two reasons, none of them close."""
    found = {}
    for top, second, added_mm, hardness_hv in product(TOPS, SECONDS, (None, 2.0), (280, 410, 555)):
        total_mm = top[1] + second[1]
        # Either no doubt that the rivet is long enough, or it ends in the top plate.
        length_mm = 3.5 if added_mm is None else round(total_mm + added_mm, 1)
        case = [*top, *second, length_mm, hardness_hv]
        need_n, bears_n = _forces_n(*_case(*case))
        close = abs(need_n / bears_n - 1) < 0.1 or abs(second[1] / total_mm / LIMITS["one third"] - 1) < 0.04
        plain_length = added_mm is not None or length_mm < top[1]
        against = _against(*case)
        if plain_length and not close and 1 <= len(against) <= 2:
            found.setdefault(against, []).append(case)
    return tuple(map(tuple, found.values()))


def _draw_cannot(draw):
    return scene(draw) | {"case": draw.pick("case", draw.pick("against", _cases()))}


def _case_words(scenario):
    """Return plates, rivet and forces of a case in words."""
    stack, rivet = _case(*scenario["case"])
    need_n, bears_n = _forces_n(stack, rivet)
    return {
        "top": plate_words(stack.top),
        "second": plate_words(stack.second),
        "length": f"{rivet.rivet_length_mm:.1f} mm",
        "need": f"{need_n / 1000:.1f} kN",
        "bears": f"{bears_n / 1000:.1f} kN",
        "board": BOARD,
    }


CANNOT_RIVET = Exercise(
    id="rivet_anatomy.cannot_rivet",
    objective="stack",
    title="What speaks against it?",
    prompt=(
        "Somebody at {shop} wants to rivet this. Top plate: {top}. Second plate: {second}. "
        "The rivet is {length} long; its leg bears {bears}, and cutting the top plate takes {need}. "
        "The rules on the board: {board}"
    ),
    shown=_case_words,
    parts=(
        Choices(
            id="against",
            ask="What speaks against it? Tick all that hold.",
            options=(
                wrong(
                    "no_hole",
                    "The plates have no holes yet.",
                    "A self-piercing rivet cuts its own way and needs no hole.",
                ),
                option("thick_stack", "The stack is too thick."),
                option("little_second", "The second plate is too small a part of the stack."),
                option("brittle", "An aluminium plate does not stretch enough."),
                option("thin", "An aluminium plate is too thin."),
                option("short", "The rivet ends before it reaches the second plate."),
                option("leg", "The leg would collapse before the top plate is cut."),
                wrong(
                    "other_metal",
                    "One of the plates is of another metal than the rivet.",
                    "Steel rivets join aluminium every day. The metal alone rules nothing out.",
                ),
            ),
            points=2.0,
        ),
        Choice(
            id="then",
            ask="What do you do?",
            options=(
                wrong(
                    "force",
                    "Set it with more force.",
                    "What rules a stack out lies in plates and rivet. More force breaks one of them.",
                ),
                option("ask", "Leave it and look up how the vehicle maker joins these plates."),
                wrong(
                    "try",
                    "Try it on the car: if the button looks well, it is well.",
                    "A button can look well over a crack or a tail without hold. Trials are made on scrap.",
                ),
            ),
        ),
    ),
    draw=_draw_cannot,
    solve=lambda table: {
        "against": ChoicesKey(right=[_against(*case) for case in table["case"]]),
        "then": ChoiceKey(right=same(table, "ask")),
    },
    reasons=(
        "Go down the board line by line: sum of the plates, second plate against a third of it, "
        "thickness and elongation of each aluminium plate. "
        "Then the rivet: longer than the top plate is thick, and a leg that bears more than the cut takes. "
        "One broken line is enough to stop."
    ),
    read_again=HEADING,
)

EXERCISES = (CANNOT_RIVET,)
