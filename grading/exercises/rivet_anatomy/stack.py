"""Exercises on which plates can be riveted, and which way round."""

from functools import cache
from itertools import combinations, product

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Number,
    NumberKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import THREE_FIGURES, clear_of, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate import tables
from secondplate.rivet import Sheet, Stack
from secondplate.rivet_rules import reasons_against, stack_findings
from secondplate.sheet_alloys import body_sheet

HEADING = "Which stack can be riveted?"
LIMITS = {row.name: row.number for row in tables.load("stack_rules")}
# Rules of the kind that hang on a wall; the numbers are the library's.
BOARD = (
    f"All plates together at most {LIMITS['whole stack']:g} mm. "
    "The second plate more than a third of the stack. "
    f"Aluminium at least {LIMITS['aluminium thickness']:g} mm, with an elongation above "
    f"{LIMITS['aluminium elongation']:g} %."
)
FAMILY_WORDS = {"aluminium": "aluminium", "cast aluminium": "aluminium casting", "steel": "steel"}
PREFERENCES = ("thin to thick", "hard to soft")
# Sheets whose strengths are plainly apart, in thicknesses that a body has.
SHEETS_MM = {
    "6016-T4": (0.6, 1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 4.0),
    "5182-O": (0.6, 1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 4.0),
    "AlSi10MnMg-F": (2.0, 2.5, 3.0, 4.0),
    "HX340LAD": (0.8, 1.0, 1.2, 1.5, 2.0),
}
STACKS = ("first", "second", "third", "fourth")


def plate_words(sheet):
    """Return a plate in words: thickness, metal, strength and elongation."""
    elongation = "" if sheet.elongation_percent is None else f", elongation {sheet.elongation_percent:.0f} %"
    return (
        f"{sheet.thickness_mm:.1f} mm {FAMILY_WORDS[sheet.family]} "
        f"({sheet.tensile_strength_mpa:.0f} N/mm²{elongation})"
    )


def _rank(stack):
    """Return 2 where no rule speaks against a stack, 1 where only a preference does, 0 where it is out."""
    if reasons_against(stack):
        return 0
    kept = {finding.rule: finding.kept for finding in stack_findings(stack)}
    return 2 if all(kept[name] for name in PREFERENCES) else 1


@cache
def _plates(top, top_mm, second, second_mm):
    """Return the two plates of a stack that is drawn as names and thicknesses."""
    return body_sheet(top, thickness_mm=top_mm), body_sheet(second, thickness_mm=second_mm)


def _way_round(*drawn):
    """Return what to do with a stack: rivet it so, turn it, ask a trial joint, or do not rivet it."""
    one, other = _plates(*drawn)
    as_it_is, turned = _rank(Stack(top=one, second=other)), _rank(Stack(top=other, second=one))
    if max(as_it_is, turned) < 2:
        return "trial" if max(as_it_is, turned) else "neither"
    return "so" if as_it_is == 2 else "turn"


@worked_out
def _stacks_by_way():
    """Return the stacks to draw from by what is to be done with them; a share near a third is left out."""
    plates = [(name, thickness_mm) for name, sizes in SHEETS_MM.items() for thickness_mm in sizes]
    found = {"so": [], "turn": [], "trial": [], "neither": []}
    for (top, top_mm), (second, second_mm) in product(plates, plates):
        shares = np.array([top_mm, second_mm]) / (top_mm + second_mm)
        plain = np.all(np.abs(shares / LIMITS["one third"] - 1) > 0.04)
        if plain and top_mm != second_mm and not top == second == "HX340LAD":
            found[_way_round(top, top_mm, second, second_mm)].append([top, top_mm, second, second_mm])
    return {way: tuple(stacks) for way, stacks in found.items()}


@cache
def _ways():
    """Return what to do with each stack that is drawn from."""
    return {tuple(stack): way for way, stacks in _stacks_by_way().items() for stack in stacks}


def _draw_stacks(draw):
    ways = draw.shuffle("ways", ("so", "so", "turn", "trial", "neither"))
    stacks = {row: draw.pick(row, _stacks_by_way()[way]) for row, way in zip(STACKS, ways, strict=False)}
    return scene(draw) | stacks


def _stack_words(scenario):
    """Return each stack in words, and the board."""
    said = {row: " on ".join(map(plate_words, _plates(*scenario[row]))) for row in STACKS}
    return said | {"board": BOARD}


STACK_RULES = Exercise(
    id="rivet_anatomy.stack_rules",
    objective="stack",
    title="Which way round?",
    prompt=(
        "Rules on the board at {shop}: {board} "
        "As a preference, where plates differ, drive from thin to thick and from hard to soft. "
        "Judge each stack by these rules. The plate named first is on the side of the head."
    ),
    shown=_stack_words,
    parts=(
        Verdicts(
            id="stacks",
            ask="What do the rules say of each stack?",
            rows=tuple(option(row, f"{{{row}}}") for row in STACKS),
            verdicts=(
                option("turn", "turn it round: head on the other plate"),
                option("neither", "no self-piercing rivet, either way round"),
                option("so", "rivet it as it lies"),
                option("trial", "no way round suits both preferences: a trial joint, cut open, decides"),
            ),
            points=2.0,
        ),
        Choice(
            id="no_access",
            ask="The rules allow a stack one way round only, and the setter does not fit in there. What now?",
            options=(
                wrong(
                    "longer",
                    "Drive it from the free side with a longer rivet.",
                    "A longer rivet ends deeper, but in the same plate, and that plate does not suit.",
                ),
                wrong(
                    "push",
                    "Drive it from the free side with more force.",
                    "Force does not make the second plate thicker or softer.",
                ),
                option("other", "Join it another way: the one that the vehicle maker's procedure names."),
            ),
        ),
    ),
    draw=_draw_stacks,
    solve=lambda table: {
        "stacks": VerdictsKey(right={row: [_ways()[tuple(stack)] for stack in table[row]] for row in STACKS}),
        "no_access": ChoiceKey(right=same(table, "other")),
    },
    reasons=(
        "Check each plate and the whole stack first: what is too thin, too brittle or too thick stays so "
        "whichever way round it lies. "
        "Then take a third of the stack and compare the second plate with it, both ways round. "
        "Last come the two preferences. "
        "Where one says so and the other says turn, no rule decides. "
        "These limits come from a few published tables; the vehicle maker's come first."
    ),
    read_again=HEADING,
)


def _share_values(top_mm, second_mm, gap_mm):
    """Return the share of the second plate in percent, and what the usual slips make of it."""
    total_mm = Stack(
        top=Sheet(thickness_mm=top_mm), second=Sheet(thickness_mm=second_mm), gap_mm=gap_mm
    ).total_mm
    return {
        "right": 100 * second_mm / total_mm,
        "top_plate": 100 * top_mm / total_mm,
        "over_top": 100 * second_mm / top_mm,
        "with_adhesive": 100 * second_mm / (total_mm + gap_mm),
    }


@worked_out
def _shares():
    """Return ``[top, second, gap]`` of stacks whose share is plain and whose slips are told apart."""
    thicknesses = (0.8, 0.9, 1.0, 1.1, 1.2, 1.4, 1.5, 1.6, 1.8, 2.0, 2.2, 2.5, 3.0, 3.5)
    found = []
    for top_mm, second_mm, gap_mm in product(thicknesses, thicknesses, (0.2, 0.3, 0.4)):
        values = _share_values(top_mm, second_mm, gap_mm)
        limits = [100 * LIMITS[name] for name in ("one third", "two thirds")]
        apart = all(abs(a - b) > 0.05 * max(a, b) for a, b in combinations(values.values(), 2))
        within = top_mm + second_mm < LIMITS["whole stack"]
        if within and apart and clear_of((values["right"],), limits):
            found.append([top_mm, second_mm, gap_mm])
    return tuple(found)


def _same_alloy(top_mm, second_mm):
    """Return a stack of two plates of one alloy."""
    return Stack(
        top=body_sheet("6016-T4", thickness_mm=top_mm), second=body_sheet("6016-T4", thickness_mm=second_mm)
    )


@cache
def _share_verdict(top_mm, second_mm):
    """Return whether the second plate is enough by the rules on its share."""
    kept = {finding.rule: finding.kept for finding in stack_findings(_same_alloy(top_mm, second_mm))}
    if not kept["one third"]:
        return "too_little"
    return "preferred" if kept["two thirds"] else "enough"


@cache
def _better_side(top_mm, second_mm):
    """Return the side to drive from: the one from which fewer rules speak against the stack."""
    as_it_is, turned = _rank(_same_alloy(top_mm, second_mm)), _rank(_same_alloy(second_mm, top_mm))
    return "outer" if as_it_is > turned else "inner"


def _draw_share(draw):
    sizes = draw.pick("sizes", _shares())
    return scene(draw) | dict(zip(("top_mm", "second_mm", "gap_mm"), sizes, strict=True))


def _solve_share(table):
    sizes = list(zip(table["top_mm"].tolist(), table["second_mm"].tolist(), strict=True))
    values = _share_values(table["top_mm"], table["second_mm"], table["gap_mm"])
    right = values.pop("right")
    return {
        "share": NumberKey(value=right, slips=values),
        "enough": ChoiceKey(right=[_share_verdict(*each) for each in sizes]),
        "side": ChoiceKey(right=[_better_side(*each) for each in sizes]),
    }


BOTTOM_SHARE = Exercise(
    id="rivet_anatomy.bottom_share",
    objective="stack",
    title="How much of the stack is second plate?",
    prompt=(
        "On {vehicle} an outer plate of {top_mm} mm lies on an inner plate of {second_mm} mm of the same "
        "alloy, with {gap_mm} mm of adhesive between them. "
        "The rivet would be driven from outside. "
        "The rule for the second plate: more than a third of the metal, better two thirds or more."
    ),
    parts=(
        Number(
            id="share",
            ask="How much of the metal is second plate?",
            unit="%",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("top_plate", "That is the share of the outer plate. The tail spreads in the other one."),
                slip("over_top", "Divide by both plates together, not by the outer one."),
                slip("with_adhesive", "Adhesive holds no tail: only the plates count.", credit=0.25),
            ),
        ),
        Choice(
            id="enough",
            ask="What does the rule say of it?",
            options=(
                option("enough", "Enough, though less than is best."),
                option("too_little", "Too little to hold the tail."),
                option("preferred", "As much as is best, or more."),
            ),
        ),
        Choice(
            id="side",
            ask="If the setter fits on both sides: on which plate should the head lie?",
            options=(
                wrong(
                    "either",
                    "On either: the plates are of the same alloy.",
                    "The alloy is the same, the thickness is not. The tail wants the thicker plate.",
                ),
                option("inner", "On the inner plate."),
                option("outer", "On the outer plate."),
            ),
        ),
    ),
    draw=_draw_share,
    solve=_solve_share,
    reasons=(
        "Divide the second plate by the sum of both plates and leave the adhesive out. "
        "Compare with a third and with two thirds. "
        "The tail needs the thicker plate to spread in, so the head goes on the thinner one. "
        "On a car the maker's procedure says from where."
    ),
    read_again=HEADING,
)

EXERCISES = (STACK_RULES, BOTTOM_SHARE)
