"""Exercises on what eats the plate: metals that touch it, wet areas, and how deep a current eats."""

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Order, OrderKey
from grading.exercises.building_blocks import (
    THREE_FIGURES,
    chosen,
    looked_up_numbers,
    option,
    same,
    slip,
    wrong,
)
from grading.exercises.scenes import scene
from secondplate.corrosion import (
    PROTECT_ABOVE_MV,
    anode_rate,
    galvanic_density,
    penetration_mm_year,
    potential_difference_mv,
    worst_first,
)
from secondplate.tables import load, values

HEADING = "What will eat it?"
RANKED = {
    "tin": "tin",
    "carbon_steel": "carbon steel",
    "titanium": "titanium alloy",
    "copper": "copper",
    "cadmium": "cadmium",
    "stainless": "stainless steel",
}
# What a fastener shows outside: its name in the series, and in words. All are clear of the 200 mV.
OUTSIDES = {
    "stainless": ("stainless steel, active", "bare stainless steel"),
    "carbon_steel": ("carbon steel", "bare carbon steel"),
    "tin": ("tin", "tin plate"),
    "brass": ("brass", "brass"),
    "zinc": ("zinc plate", "zinc plate"),
    "cadmium": ("cadmium", "old cadmium plate"),
}


def difference_mv(outside):
    """Return by how much the outside of a fastener is nobler than the sheet, by the series."""
    return potential_difference_mv(OUTSIDES[outside][0])


def _draw_couple(draw):
    sheet_mv = draw.whole("sheet_mv", -850, -790, 5)
    outside = draw.pick("outside", tuple(OUTSIDES))
    shift_mv = draw.whole("shift_mv", -15, 15, 5)
    return scene(draw) | {
        "outside": outside,
        "sheet_mv": sheet_mv,
        "fastener_mv": round(sheet_mv + difference_mv(outside) + shift_mv),
    }


def _solve_couple(table):
    sheet_mv, fastener_mv = table["sheet_mv"], table["fastener_mv"]
    apart_mv = np.abs(np.subtract(fastener_mv, sheet_mv))
    nobler = looked_up_numbers(table["outside"], difference_mv) > 0
    ids = {metal: name for name, metal in RANKED.items()}
    ranking = tuple(ids[metal] for metal in worst_first(RANKED.values()))
    return {
        "ranking": OrderKey(right=same(table, ranking)),
        "apart": NumberKey(
            value=apart_mv,
            slips={"added": np.abs(sheet_mv) + np.abs(fastener_mv), "one": np.abs(fastener_mv)},
        ),
        "rule": ChoiceKey(
            right=chosen([apart_mv <= PROTECT_ABOVE_MV, nobler], ["nothing", "sheet"], otherwise="fastener")
        ),
        "believe": ChoiceKey(right=same(table, "measured")),
    }


COUPLE = Exercise(
    id="second_plate.couple",
    objective="protect",
    title="Metals that touch the plate",
    prompt=(
        "For the flange of {vehicle} new fasteners lie ready at {shop}. Their outside is {outside_words}. "
        "In one tank of salt water the sheet reads {sheet} mV and the fastener {fastener} mV. "
        "A common rule asks for protection where two metals lie more than {limit} mV apart. "
        "The one with the lower reading is the one that is eaten."
    ),
    shown=lambda scenario: {
        "outside_words": OUTSIDES[scenario["outside"]][1],
        "sheet": f"−{-scenario['sheet_mv']}",
        "fastener": f"−{-scenario['fastener_mv']}",
        "limit": f"{PROTECT_ABOVE_MV:.0f}",
    },
    parts=(
        Order(
            id="ranking",
            ask="Put bare metals in the order of what they did to aluminium in salt water, worst first.",
            options=tuple(option(name, metal) for name, metal in RANKED.items()),
            points=2.0,
        ),
        Number(
            id="apart",
            ask="How far are sheet and fastener apart?",
            unit="mV",
            absolute_tolerance=2.0,
            tolerance_reason="Readings are given to 5 mV: a slip of the pencil is less than half of that.",
            slips=(
                slip("added", "The two were added. Both lie on the same side of zero."),
                slip("one", "That is one reading alone. The other metal's reading is its zero."),
            ),
        ),
        Choice(
            id="rule",
            ask="What does the rule say of this pair?",
            options=(
                option("sheet", "Protect: the sheet would be eaten."),
                option("nothing", "It asks for nothing here."),
                option("fastener", "Protect: the outside of the fastener would be eaten."),
            ),
        ),
        Choice(
            id="believe",
            ask="How fast a metal eats the sheet: what do you go by?",
            options=(
                wrong(
                    "potential",
                    "By how far the readings lie apart.",
                    "Readings tell which of the two is eaten. Look where carbon steel stands in each list.",
                ),
                wrong(
                    "nobler",
                    "By how noble the metal is: the dearer, the worse.",
                    "Titanium is noble and did little. What it does as a cathode counts.",
                ),
                option("measured", "By attack that was measured on pairs of metals in salt water."),
            ),
        ),
    ),
    draw=_draw_couple,
    solve=_solve_couple,
    reasons=(
        "The difference of two readings tells the direction: the lower one is eaten. "
        "It does not tell the speed. "
        "Carbon steel reads nearly like the sheet and yet eats it faster than stainless steel does. "
        "So bare steel is never put in, whatever the rule says, and a zinc coat is used up first."
    ),
    read_again=HEADING,
)


def circle_mm2(diameter_mm):
    """Return the area of a circle."""
    return np.pi / 4 * np.square(diameter_mm)


def _draw_areas(draw):
    return scene(draw) | {
        "head_mm": draw.decimal("head_mm", 7.2, 8.2, 0.1, 1),
        "ring_mm": draw.decimal("ring_mm", 0.5, 2.0, 0.1, 1),
        "patch_cm2": draw.decimal("patch_cm2", 3.0, 5.0, 0.5, 1),
    }


def _solve_areas(table):
    head_mm, ring_mm, patch_mm2 = table["head_mm"], table["ring_mm"], 100 * table["patch_cm2"]
    head_mm2, disc_mm2 = circle_mm2(head_mm), circle_mm2(head_mm + 2 * ring_mm)
    ratio, patch = head_mm2 / (disc_mm2 - head_mm2), head_mm2 / patch_mm2
    ring_rate, patch_rate = (anode_rate(factor=1.0, area_ratio=each) for each in (ratio, patch))
    return {
        "ratio": NumberKey(
            value=ratio,
            slips={
                "whole_disc": head_mm2 / disc_mm2,
                "one_side": head_mm2 / (circle_mm2(head_mm + ring_mm) - head_mm2),
            },
        ),
        "faster": NumberKey(
            value=ring_rate / patch_rate,
            slips={"ratios": ratio / patch, "upside_down": patch_rate / ring_rate, "alone": ring_rate},
        ),
        "coat": ChoiceKey(right=same(table, "both")),
    }


AREA_RATIO = Exercise(
    id="second_plate.area_ratio",
    objective="protect",
    title="A ring of bare metal",
    prompt=(
        "A bare steel head {head_mm} mm wide sits in a panel of {vehicle}. Salt water stands on it. "
        "In one case the panel round it has lost its coat over {patch_cm2} cm². "
        "In the other the coat is whole but for a ring {ring_mm} mm wide round the head. "
        "Attack on the bare aluminium goes with 1 + area of steel / area of bare aluminium. "
        "The question at {shop} is which is worse."
    ),
    parts=(
        Number(
            id="ratio",
            ask="In the case of the ring, how large is the area of steel over that of bare aluminium?",
            unit="times",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("whole_disc", "The ring was taken as a whole disc. The head covers its middle."),
                slip("one_side", "The ring adds its width on both sides of the head."),
            ),
        ),
        Number(
            id="faster",
            ask="How many times faster is the metal of the ring eaten than that of the large patch?",
            unit="times",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("ratios", "The area ratios were compared. Each needs the 1 of bare metal by itself."),
                slip("upside_down", "That is patch over ring. The ring was asked for first."),
                slip("alone", "That is the ring against metal with no steel near. The patch has steel too."),
            ),
        ),
        Choice(
            id="coat",
            ask="The ring is to be coated again. What do you coat?",
            options=(
                option("both", "Ring and head: the head is what draws the current."),
                wrong(
                    "ring",
                    "Only the ring: steel needs no coat against aluminium.",
                    "The next scratch is a smaller ring with the same bare head beside it.",
                ),
                wrong(
                    "none",
                    "Neither: a bare patch all round is milder than a ring.",
                    "It is milder by area only. More bare metal is no protection.",
                ),
            ),
        ),
    ),
    draw=_draw_areas,
    solve=_solve_areas,
    reasons=(
        "The ring is the large circle less the head. "
        "The current comes from the steel and leaves through the bare aluminium: the less of it, the faster. "
        "Ratios from 0.1 to 10 were tried. "
        "A steel rivet in a wide wet panel is the good case, a scratch round a bare head the bad one."
    ),
    read_again=HEADING,
)

FARADAY_RATE = values("corrosion_constants")["Faraday rate"]
ALUMINIUM, _, IRON = load("corroding_metals")
AREA_RATIOS = (0.5, 0.6, 0.7, 0.8, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0)


def depth_mm_year(density, ratio, metal="aluminium"):
    """Return how deep the current that the steel draws eats into a bare metal in a year, if evenly."""
    return penetration_mm_year(galvanic_density(factor=density, area_ratio=ratio), corroding_metal=metal)


def _draw_faraday(draw):
    density, ratio = draw.whole("density", 22, 44), draw.pick("ratio", AREA_RATIOS)
    left_mm = draw.decimal("left_mm", 0.4, 0.9, 0.05, 2)
    # So far from what even attack would take that a figure rounded on the way decides nothing.
    months = 12 * left_mm / float(depth_mm_year(density, ratio)) * draw.pick("share", (0.5, 0.65, 1.4, 2.0))
    return scene(draw) | {
        "density": density,
        "ratio": ratio,
        "left_mm": left_mm,
        "months": round(months) if months < 36 else 12 * round(months / 12),
    }


def _term(months):
    """Return a time in words."""
    return f"{months // 12} years" if months % 12 == 0 and months > 12 else f"{months} months"


def _solve_faraday(table):
    density, ratio = table["density"], table["ratio"]
    depth_mm = depth_mm_year(density, ratio)
    return {
        "anode": NumberKey(
            value=galvanic_density(factor=density, area_ratio=ratio),
            slips={"upside_down": density / ratio, "not_spread": density},
        ),
        "depth": NumberKey(
            value=depth_mm,
            slips={
                "iron": depth_mm_year(density, ratio, "iron"),
                "not_spread": depth_mm / ratio,
                "times_density": depth_mm * float(ALUMINIUM.keys["density_g_cm3"]) ** 2,
            },
        ),
        "lasts": ChoiceKey(
            right=chosen([depth_mm * table["months"] / 12 > table["left_mm"]], ["gone"], otherwise="open")
        ),
    }


FARADAY = Exercise(
    id="second_plate.faraday",
    objective="protect",
    title="How deep does a current eat?",
    prompt=(
        "The oxygen in a wet joint of {vehicle} lets each cm² of bare steel draw {density} µA. "
        "The current leaves through bare aluminium; the area of steel is {ratio} times that of aluminium. "
        "A current density of i µA/cm² eats {factor} × i × W / ρ in mm a year. "
        "Aluminium has W = {aluminium_w} g and ρ = {aluminium_rho} g/cm³, "
        "iron W = {iron_w} g and ρ = {iron_rho} g/cm³. "
        "The plate below the cup is {left_mm} mm thick, and {shop} wants it to last {term}."
    ),
    shown=lambda scenario: {
        "factor": f"{FARADAY_RATE:g}",
        "aluminium_w": f"{ALUMINIUM.number:g}",
        "aluminium_rho": ALUMINIUM.keys["density_g_cm3"],
        "iron_w": f"{IRON.number:g}",
        "iron_rho": IRON.keys["density_g_cm3"],
        "term": _term(scenario["months"]),
    },
    parts=(
        Number(
            id="anode",
            ask="How dense is the current that leaves the bare aluminium?",
            unit="uA/cm2",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("upside_down", "The ratio stands upside down. Less bare aluminium, denser current."),
                slip("not_spread", "That is the density on the steel. The same current leaves another area."),
            ),
        ),
        Number(
            id="depth",
            ask="How deep does it eat in a year, if it eats evenly?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("iron", "The values of iron were taken. The steel only draws the current."),
                slip("not_spread", "The density on the steel was put in. Take that on the aluminium."),
                slip("times_density", "The density of the metal multiplies here. The formula divides by it."),
            ),
        ),
        Choice(
            id="lasts",
            ask="Does the plate last as long as that?",
            options=(
                wrong(
                    "lasts",
                    "Yes: something is left at the end, so it lasts.",
                    "That would need even attack. Wet joints are eaten in pits.",
                ),
                option("gone", "No: even attack alone would be through before then."),
                option("open", "Nobody can promise it: even attack leaves metal, but pits go far deeper."),
            ),
        ),
    ),
    draw=_draw_faraday,
    solve=_solve_faraday,
    reasons=(
        "One current flows through both metals, so its density goes with the areas. "
        "The law turns the density on the aluminium into a mean depth. "
        "That is a best case: pits go many times deeper, and currents in a real joint are not known. "
        "The figure says whether to keep water and steel away, never how many years there are."
    ),
    read_again=HEADING,
)

EXERCISES = (COUPLE, AREA_RATIO, FARADAY)
