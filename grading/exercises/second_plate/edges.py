"""Exercises on the rules that a new fastener keeps: edges and pitch, bearing, net section at an old site."""

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Number,
    NumberKey,
    Range,
    RangeKey,
)
from grading.exercises.building_blocks import THREE_FIGURES, chosen, clear_of, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.eurocode9 import (
    EUROCODE9,
    GAMMA_M1,
    GAMMA_M2,
    PLATE_CODE,
    SPACING_LEVELS,
    affected_diameter_mm,
    bearing_by_codes,
    bearing_n,
    edge_factor,
    end_factor,
    gross_section_n,
    least_distance_mm,
    net_section_n,
    spacing_verdict,
)
from secondplate.fasteners import blind_rivet, bolt, lock_bolt
from secondplate.sheet_alloys import sheet_band

HEADING = "Where may a new fastener go?"
TENTHS = "Distances are marked out to a tenth of a millimetre: half of that is right."

FASTENERS = {
    "blind rivets of 4 mm": blind_rivet("ISO 15977 H", 4.0),
    "blind rivets of 4.8 mm": blind_rivet("ISO 15977 H", 4.8),
    "blind rivets of 6.4 mm": blind_rivet("ISO 15977 H", 6.4),
    "lock bolts of 4.8 mm": lock_bolt("steel", 4.8),
    "lock bolts of 6.4 mm": lock_bolt("steel", 6.4),
    "M5 bolts": bolt("M5"),
    "M6 bolts": bolt("M6"),
}
# Which distance of the rule runs to the free edge and from fastener to fastener, by how the load runs.
TO_EDGE = {"across": "end distance", "along": "edge distance"}
ALONG_ROW = {"across": "row spacing", "along": "spacing"}
OTHER_WAY = {"across": "along", "along": "across"}


def _by_load(load, distances, hole_mm, *, level="minimum"):
    """Return for each scenario the least distance of the kind that its load asks for."""
    ways = [np.asarray(load) == way for way in distances]
    return np.select(
        ways, [least_distance_mm(kind, hole_mm, level=level) for kind in distances.values()], np.nan
    )


def _draw_rules(draw):
    name = draw.pick("fastener", tuple(FASTENERS))
    fastener = FASTENERS[name]
    load = draw.pick("load", tuple(TO_EDGE))
    hole_mm = fastener.hole_most_mm
    limits = [least_distance_mm(TO_EDGE[load], hole_mm, level=level) for level in SPACING_LEVELS]
    marks = tuple(round(share * limits[0], 1) for share in np.linspace(0.7, 2.1, 29))
    verdict = draw.pick("verdict", ("too short", "minimum", "regular"))
    fitting = [
        mark
        for mark in clear_of(marks, limits)
        if spacing_verdict(TO_EDGE[load], mark, hole_diameter_mm=hole_mm) == verdict
    ]
    return scene(draw) | {
        "fastener": name,
        "body_mm": fastener.diameter_mm,
        "hole_mm": hole_mm,
        "load": load,
        "marked_mm": draw.pick("marked", fitting),
    }


def _rule_words(scenario):
    """Return the factors of the rule in words."""
    return {
        f"{kind.replace(' ', '_')}_{level}": f"{EUROCODE9[f'{level} {kind}']:g}"
        for level in SPACING_LEVELS
        for kind in ("end distance", "edge distance", "spacing", "row spacing")
    }


def _solve_rules(table):
    load, hole_mm, body_mm = table["load"], table["hole_mm"], table["body_mm"]
    edge_mm, pitch_mm = _by_load(load, TO_EDGE, hole_mm), _by_load(load, ALONG_ROW, hole_mm)
    marked = zip(load, table["marked_mm"].tolist(), hole_mm.tolist(), strict=True)
    verdicts = [spacing_verdict(TO_EDGE[way], mark, hole_diameter_mm=hole) for way, mark, hole in marked]
    turned = [OTHER_WAY[way] for way in load]
    return {
        "edge": NumberKey(
            value=edge_mm,
            slips={
                "body": edge_mm * body_mm / hole_mm,
                "rim": edge_mm - hole_mm / 2,
                "regular": _by_load(load, TO_EDGE, hole_mm, level="regular"),
            },
        ),
        "pitch": NumberKey(
            value=pitch_mm,
            slips={
                "turned": _by_load(turned, ALONG_ROW, hole_mm),
                "metal_between": pitch_mm - hole_mm,
                "regular": _by_load(load, ALONG_ROW, hole_mm, level="regular"),
            },
        ),
        "marked": ChoiceKey(right=[str(verdict).replace(" ", "_") for verdict in verdicts]),
    }


EDGE_RULES = Exercise(
    id="second_plate.edge_rules",
    objective="fasten",
    title="How near to the edge, how near to each other",
    prompt=(
        "{shop} sets one row of {fastener} along the flange of {vehicle}, in holes of {hole_mm} mm. "
        "The load runs {load} the flange. "
        "EN 1999-1-1, from memory, counts from hole centres in hole diameters. "
        "Along the load, minimum and regular: {end_distance_minimum} and {end_distance_regular} to the end, "
        "{spacing_minimum} and {spacing_regular} from centre to centre. "
        "Across the load: {edge_distance_minimum} and {edge_distance_regular} to the edge, "
        "{row_spacing_minimum} and {row_spacing_regular} from centre to centre. "
        "One centre is marked {marked_mm} mm from the free edge already."
    ),
    shown=_rule_words,
    parts=(
        Number(
            id="edge",
            ask="How far from the free edge must a centre be at the least?",
            unit="mm",
            absolute_tolerance=0.05,
            tolerance_reason=TENTHS,
            slips=(
                slip("body", "The body of the fastener was counted. The rule counts in holes."),
                slip("rim", "That runs from the rim of the hole. The rule counts from its centre."),
                slip("regular", "That is the regular distance. The least that is allowed was asked for."),
            ),
        ),
        Number(
            id="pitch",
            ask="How far from centre to centre must two of the row be at the least?",
            unit="mm",
            absolute_tolerance=0.05,
            tolerance_reason=TENTHS,
            slips=(
                slip("turned", "Look which way the load runs, and which way the row. The rule differs."),
                slip("metal_between", "That is the metal between two holes. The rule counts from centres."),
                slip("regular", "That is the regular distance. The least that is allowed was asked for."),
            ),
        ),
        Choice(
            id="marked",
            ask="What do you say of the centre that is marked?",
            options=(
                wrong("too_short", "Too near: not allowed.", "Hold it against the minimum, in millimetres."),
                wrong(
                    "regular",
                    "Regular: the full rule is kept.",
                    "Hold it against both distances, minimum and regular.",
                ),
                wrong(
                    "minimum",
                    "Allowed, but the plate bears less there.",
                    "Hold it against both distances, minimum and regular.",
                ),
            ),
        ),
    ),
    draw=_draw_rules,
    solve=_solve_rules,
    reasons=(
        "First ask which way the load runs: that tells which distance is an end and which an edge. "
        "Then multiply by the hole, not by the body. "
        "Between minimum and regular a centre may stand, and bearing is worked out with that distance. "
        "A table from memory is for learning: at work the standard itself and the vehicle maker come first."
    ),
    read_again=HEADING,
)

ALLOYS = ("5754-O", "5182-O", "6016-T4", "6016-T6", "6082-T6")
# Limits of the form for one row: end distances that stay clear of where both forms give the same.
END_SHARES = (1.55, 1.6, 1.65, 2.0, 2.1, 2.4, 2.6, 2.8)


def strength_mpa(alloys, quantity="tensile strength"):
    """Return the least value that any source gives for each alloy, which is what a plan rests on."""
    names = np.asarray(alloys)
    return np.select(
        [names == alloy for alloy in ALLOYS], [sheet_band(a, quantity).low for a in ALLOYS], np.nan
    )


def _draw_bearing(draw):
    rivet = FASTENERS[f"blind rivets of {draw.pick('diameter', ('4', '4.8', '6.4'))} mm"]
    hole_mm = rivet.hole_most_mm
    return scene(draw) | {
        "alloy": draw.pick("alloy", ALLOYS),
        "sheet_mm": draw.decimal("sheet_mm", 1.2, 2.5, 0.1, 1),
        "body_mm": rivet.diameter_mm,
        "hole_mm": hole_mm,
        "end_mm": round(hole_mm * draw.pick("end", END_SHARES), 1),
        "edge_mm": round(hole_mm * draw.pick("edge", (1.6, 1.8, 2.0)), 1),
        "rivets": draw.whole("rivets", 3, 8),
    }


def _by_codes(table):
    """Return the bearing of each sheet by the name of each code."""
    return bearing_by_codes(
        table["sheet_mm"],
        diameter_mm=table["body_mm"],
        hole_diameter_mm=table["hole_mm"],
        tensile_strength_mpa=strength_mpa(table["alloy"]),
        supporting_thickness_mm=table["sheet_mm"],
        end_distance_mm=table["end_mm"],
        edge_distance_mm=table["edge_mm"],
    )


def _bearing_words(scenario):
    """Return the strength of the alloy, the constants of the rule, and what other codes put for k × a."""
    table = {name: np.array([value]) for name, value in scenario.items()}
    strength = strength_mpa(table["alloy"])
    unit_n = strength * table["body_mm"] * table["sheet_mm"] / GAMMA_M2
    others = [
        f"{name} {float((force / unit_n)[0]):.3f}"
        for name, force in _by_codes(table).items()
        if name != PLATE_CODE
    ]
    return {
        "strength": f"{strength[0]:.0f}",
        "others": ", ".join(others),
        "gamma": f"{GAMMA_M2:g}",
        "slope": f"{EUROCODE9['edge slope of the across factor']:g}",
        "offset": f"{EUROCODE9['offset of the across factor']:g}",
        "most": f"{EUROCODE9['largest across factor']:g}",
        "one_row": f"{EUROCODE9['single row factor']:g}",
    }


def _solve_bearing(table):
    codes = _by_codes(table)
    own = codes[PLATE_CODE]
    factors = {
        "along_factor": end_factor(table["end_mm"], hole_diameter_mm=table["hole_mm"]),
        "across_factor": edge_factor(table["edge_mm"], hole_diameter_mm=table["hole_mm"]),
    }
    sheet = {"diameter_mm": table["body_mm"], "tensile_strength_mpa": strength_mpa(table["alloy"])}
    product = bearing_n(table["sheet_mm"], **factors, **sheet)
    factors = {"along_factor": 1.0, "across_factor": EUROCODE9["single row factor"]}
    limit = bearing_n(table["sheet_mm"], **factors, **sheet)
    forces = np.stack(list(codes.values())) * table["rivets"]
    low, high = forces.min(axis=0), forces.max(axis=0)
    return {
        "own": NumberKey(
            value=own,
            slips={
                "larger": np.maximum(product, limit),
                "no_partial": own * GAMMA_M2,
            },
        ),
        "row": RangeKey(
            low=low,
            high=high,
            slips={
                "one_rivet": (low / table["rivets"], high / table["rivets"]),
                "twice_partial": (low / GAMMA_M2, high / GAMMA_M2),
            },
        ),
        "plan": ChoiceKey(right=same(table, "least")),
    }


BEARING = Exercise(
    id="second_plate.bearing",
    objective="fasten",
    title="What the plate bears at one rivet, by four codes",
    prompt=(
        "A flange of {alloy}, {sheet_mm} mm, of at least {strength} MPa, takes blind rivets of {body_mm} mm "
        "in holes of {hole_mm} mm: one row of {rivets} in a single lap. "
        "It is {end_mm} mm from a centre to the end along the load, {edge_mm} mm to the edge across it. "
        "EN 1999-1-1, from memory: bearing is k × a × strength × body × thickness / {gamma}. "
        "Here a is the end distance over 3 holes, at most 1. "
        "And k is {slope} edge distances over the hole, less {offset}, at most {most}. "
        "One row in a single lap counts at most {one_row} for k × a. "
        "In place of k × a, other codes come to: {others}."
    ),
    shown=_bearing_words,
    parts=(
        Number(
            id="own",
            ask="What does the plate bear at one rivet by EN 1999-1-1?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("larger", "Two forms hold, for k × a and for one row. The lesser of them counts."),
                slip("no_partial", "The partial factor is missing. A plan rests on the force by design."),
            ),
        ),
        Range(
            id="row",
            ask="Between which forces does the bearing of the whole row lie, by all four codes?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("one_rivet", "That is one rivet. The row was asked for."),
                slip(
                    "twice_partial", "The partial factor was taken twice. The codes' forces hold it already."
                ),
            ),
        ),
        Choice(
            id="plan",
            ask="The codes do not agree. Which force do you plan with?",
            options=(
                wrong(
                    "mean",
                    "The mean of the four.",
                    "No code gives the mean, and nothing says that the truth lies in the middle.",
                ),
                wrong(
                    "newest",
                    "That of the code with the highest force, for it wastes least.",
                    "A code that promises more has not tested your plate either.",
                ),
                option("least", "The least of them, unless the vehicle maker says otherwise."),
            ),
        ),
    ),
    draw=_draw_bearing,
    solve=_solve_bearing,
    reasons=(
        "Work out a, then k, and take the lesser of k × a and the form for one row. "
        "The range of the row runs from the lowest code to the highest, times the rivets. "
        "Most of these tables are from memory, some are for steel, none for car bodies. "
        "So the spread is part of the answer, and a plan takes its low end."
    ),
    read_again=HEADING,
)


def _draw_net(draw):
    rivet = FASTENERS[f"blind rivets of {draw.pick('diameter', ('4.8', '6.4'))} mm"]
    return scene(draw) | {
        "alloy": draw.pick("alloy", ALLOYS),
        "sheet_mm": draw.decimal("sheet_mm", 1.2, 2.5, 0.1, 1),
        "strip_mm": draw.whole("strip_mm", 28, 44),
        "hole_mm": rivet.hole_most_mm,
        "old_mm": draw.decimal("old_mm", 6.8, 8.8, 0.2, 1),
    }


def _net_words(scenario):
    """Return strength and proof stress of the alloy, and the constants of the rule."""
    return {
        "strength": f"{strength_mpa([scenario['alloy']])[0]:.0f}",
        "proof": f"{strength_mpa([scenario['alloy']], 'proof stress')[0]:.0f}",
        "crack": f"{EUROCODE9['undetectable crack']:g}",
        "share": f"{EUROCODE9['net section factor']:g}",
        "gamma": f"{GAMMA_M2:g}",
        "gamma_yield": f"{GAMMA_M1:g}",
    }


def _solve_net(table):
    strip_mm, sheet_mm, hole_mm, old_mm = (table[n] for n in ("strip_mm", "sheet_mm", "hole_mm", "old_mm"))
    affected_mm = affected_diameter_mm(old_mm, crack_possible=True)
    tensile, proof = strength_mpa(table["alloy"]), strength_mpa(table["alloy"], "proof stress")

    def net_n(width_mm):
        return net_section_n(width_mm * sheet_mm, tensile_strength_mpa=tensile)

    torn_n = net_n(strip_mm - hole_mm - affected_mm)
    yields_n = gross_section_n(strip_mm * sheet_mm, proof_stress_mpa=proof)
    return {
        "affected": NumberKey(
            value=affected_mm,
            slips={"no_crack": old_mm, "one_side": (affected_mm + old_mm) / 2},
        ),
        "net": NumberKey(
            value=torn_n,
            slips={
                "gross": net_n(strip_mm),
                "no_crack": net_n(strip_mm - hole_mm - old_mm),
                "no_hole": net_n(strip_mm - affected_mm),
            },
        ),
        "first": ChoiceKey(right=chosen([torn_n < yields_n], ["tears"], otherwise="yields")),
    }


NET_SECTION = Exercise(
    id="second_plate.net_section",
    objective="fasten",
    title="A new hole in line with an old site",
    prompt=(
        "On {vehicle} a strip of {alloy}, {strip_mm} mm wide and {sheet_mm} mm thick, is pulled. "
        "Across it, in one line, lie an old dimple of {old_mm} mm and a new hole of {hole_mm} mm. "
        "No crack was seen at the dimple, but none can be shut out: {crack} mm counts on either side. "
        "By EN 1999-1-1, from memory, what is left tears at {share} × area × {strength} MPa / {gamma}. "
        "The whole strip yields at area × {proof} MPa / {gamma_yield}."
    ),
    shown=_net_words,
    parts=(
        Number(
            id="affected",
            ask="With how many millimetres does the old site count?",
            unit="mm",
            absolute_tolerance=0.05,
            tolerance_reason="All sizes are given to a tenth of a millimetre: half of that is right.",
            slips=(
                slip("no_crack", "That is the dimple alone. What cannot be shut out has to be counted."),
                slip("one_side", "The crack was counted on one side. It may run from either."),
            ),
        ),
        Number(
            id="net",
            ask="At which pull does the strip tear through the line of the holes?",
            unit="N",
            relative_tolerance=0.01,
            tolerance_reason="Width, thickness and strength are given: 1 % covers rounding on the way.",
            slips=(
                slip("gross", "That is the whole strip. Holes carry nothing."),
                slip("no_crack", "The old site was counted without the crack that cannot be shut out."),
                slip("no_hole", "The new hole is missing. It lies in the same line."),
            ),
        ),
        Choice(
            id="first",
            ask="The pull rises slowly. What comes first?",
            options=(
                wrong(
                    "tears",
                    "The strip tears through the holes.",
                    "Work out both pulls: the lesser comes first.",
                ),
                wrong("yields", "The whole strip yields.", "Work out both pulls: the lesser comes first."),
                wrong(
                    "both",
                    "Both at once: it is one plate.",
                    "It is one plate with two sections, each with a pull of its own.",
                ),
            ),
        ),
    ),
    draw=_draw_net,
    solve=_solve_net,
    reasons=(
        "Take hole and old site off the width, times the thickness: that is the net area. "
        "Tearing is reckoned with the tensile strength, yielding of the whole strip with the proof stress. "
        "A strip that tears before it yields gives no warning. "
        "So a new hole does not go in line with an old site where there is room elsewhere."
    ),
    read_again=HEADING,
)

EXERCISES = (EDGE_RULES, BEARING, NET_SECTION)
