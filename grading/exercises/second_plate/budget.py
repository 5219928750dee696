"""Exercise on the uncertainty budget of one measured thickness."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, option, slip
from grading.exercises.scenes import scene
from secondplate.measuring import (
    Budget,
    Contribution,
    certificate_uncertainty,
    limits_uncertainty,
    repeated_uncertainty,
    resolution_uncertainty,
)

HEADING = "How thick is it, and how sure are you?"
LINES = ("repeats", "seating", "certificate", "display")
SIZES = {
    "spread_mm": (0.008, 0.012, 0.02, 0.03),
    "readings": (4, 5, 6, 8),
    "seating_mm": (0.005, 0.01, 0.02, 0.03),
    "certificate_mm": (0.004, 0.01, 0.02, 0.03),
    "step_mm": (0.01, 0.02, 0.05),
}


def budget(*, spread_mm, readings, seating_mm, certificate_mm, step_mm):
    """Return the budget of a mean thickness; its lines stand in the order of ``LINES``."""
    uncertainties = (
        repeated_uncertainty(standard_deviation=spread_mm, readings_count=readings),
        limits_uncertainty(half_width=seating_mm),
        certificate_uncertainty(expanded_uncertainty=certificate_mm),
        resolution_uncertainty(step_mm),
    )
    degrees = (np.subtract(readings, 1), np.inf, np.inf, np.inf)
    return Budget(
        contributions=tuple(
            Contribution(name=name, standard_uncertainty=value, degrees_of_freedom=number)
            for name, value, number in zip(LINES, uncertainties, degrees, strict=True)
        )
    )


def _wrong_sums(found, sizes):
    """Return what wrong paths make of the combined uncertainty of a budget."""
    whole = found.combined_uncertainty**2
    parts = {each.name: each.component for each in found.contributions}
    return {
        "added": sum(parts.values()),
        "single": np.sqrt(whole - parts["repeats"] ** 2 + np.square(sizes["spread_mm"])),
        "half_width": np.sqrt(whole - parts["seating"] ** 2 + np.square(sizes["seating_mm"])),
    }


@cache
def budgets():
    """Return sizes of budgets by the line that counts most, where no two paths lead to much the same."""
    grid = np.meshgrid(*SIZES.values(), indexing="ij")
    sizes = {name: column.ravel() for name, column in zip(SIZES, grid, strict=True)}
    made = budget(**sizes)
    sums = np.sort([made.combined_uncertainty, *_wrong_sums(made, sizes).values()], axis=0)
    shares = np.array([made.variance_shares[name] for name in LINES])
    second, first = np.sort(shares, axis=0)[-2:]
    plain = np.all(sums[1:] > 1.05 * sums[:-1], axis=0) & (first > 1.2 * second)
    found = {}
    for row in np.flatnonzero(plain):
        line = LINES[np.argmax(shares[:, row])]
        found.setdefault(line, []).append({name: column[row].item() for name, column in sizes.items()})
    return found


def _draw_budget(draw):
    return scene(draw) | draw.pick("sizes", budgets()[draw.pick("line", LINES)])


@cache
def _factor(*sizes):
    """Return the coverage factor for sizes in the order of ``SIZES``, in words."""
    return f"{budget(**dict(zip(SIZES, sizes, strict=True))).coverage_factor():.2f}"


def _solve_budget(table):
    sizes = {name: table[name] for name in SIZES}
    found = budget(**sizes)
    factor, shares = found.coverage_factor(), found.variance_shares
    largest = np.argmax([shares[name] for name in LINES], axis=0)
    sums = _wrong_sums(found, sizes)
    return {
        "combined": NumberKey(value=found.combined_uncertainty, slips=sums),
        "expanded": NumberKey(
            value=found.expanded_uncertainty(),
            slips={
                "not_expanded": found.combined_uncertainty,
                "percent": 0.95 * found.combined_uncertainty,
                "added": factor * sums["added"],
            },
        ),
        "largest": ChoiceKey(right=[LINES[number] for number in largest]),
    }


BUDGET = Exercise(
    id="second_plate.budget",
    objective="measure",
    title="A budget for one thickness",
    prompt=(
        "A floor of a cup on {vehicle} was measured {readings} times, and the mean taken. "
        "Single readings scatter with a standard deviation of {spread_mm} mm. "
        "How the anvil sits may add up to {seating_mm} mm either way, all equally likely. "
        "The certificate of the gauge says {certificate_mm} mm, with a factor of 2. "
        "The display steps by {step_mm} mm. "
        "Divisors: root of the count for a mean, root of 3 for limits, the factor for a certificate, "
        "root of 12 for a step. "
        "For 95 % take the factor {factor}."
    ),
    shown=lambda scenario: {"factor": _factor(*(scenario[name] for name in SIZES))},
    parts=(
        Number(
            id="combined",
            ask="What is the combined standard uncertainty of the mean?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("added", "The lines were simply added. Independent lines add as squares."),
                slip("single", "That takes the scatter of one reading. A mean of several scatters less."),
                slip("half_width", "The limits of the seating went in whole. They have a divisor too."),
            ),
        ),
        Number(
            id="expanded",
            ask="Within how much either way does the thickness lie, with 95 %?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("not_expanded", "That is the standard uncertainty. The factor is missing."),
                slip("percent", "The per cent were multiplied. They choose the factor, and that multiplies."),
                slip(
                    "added", "The factor is right. The lines below it were added without squares.", credit=0.3
                ),
            ),
        ),
        Choice(
            id="largest",
            ask="Where is work worth most, to become surer?",
            options=(
                option("certificate", "A gauge with a better certificate."),
                option("repeats", "More readings for the mean."),
                option("seating", "A better seat for the anvil."),
                option("display", "A display with finer steps."),
            ),
        ),
    ),
    draw=_draw_budget,
    solve=_solve_budget,
    reasons=(
        "Bring every line to a standard uncertainty with its divisor. "
        "Square them, add them, take the root; then multiply by the factor. "
        "Squares make the largest line count most by far, so work on that one first."
    ),
    read_again=HEADING,
)


EXERCISES = (BUDGET,)
