"""Exercises on bonded joints: what share the rivets carry, and what a longer overlap is worth."""

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Number,
    NumberKey,
)
from grading.exercises.building_blocks import THREE_FIGURES, chosen, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.bonding import bond_peak_mpa, limit_overlap_mm, stiff_plate_rivet_share, transfer_rate_per_mm

HEADING = "What does the glue carry?"
# What one rivet takes by millimetre of slip, and a stiff body adhesive: assumed for the page's own joint.
PREDICTED = {
    "rivet_stiffness_n_mm": 14_000,
    "overlap_mm": 25,
    "width_mm": 25,
    "adhesive_modulus_mpa": 1000,
    "adhesive_mm": 0.2,
}


def _share_id():
    """Return the id of the option that holds the share of the page's own joint."""
    share = stiff_plate_rivet_share(**PREDICTED)
    return "hardly" if share < 0.02 else "tenth" if share < 0.2 else "half"


PREDICT_GLUE_SHARE = Exercise(
    id="second_plate.predict_glue_share",
    objective="bond",
    title="Predict: rivet or glue?",
    prompt=(
        "On {vehicle} a joint has one rivet and, round it, 25 mm by 25 mm of stiff body adhesive. "
        "It is pulled in shear, well below what either bears. Decide before you read on."
    ),
    parts=(
        Choice(
            id="share",
            ask="How much of the load does the rivet carry?",
            options=(
                wrong(
                    "half",
                    "About half, or more: it is steel.",
                    "Steel is strong. What counts here is which of the two gives way less.",
                ),
                wrong(
                    "hardly",
                    "Hardly any: less than one part in fifty.",
                    "Think of how far the adhesive lets the plates slip, and what loads a rivet.",
                ),
                wrong(
                    "tenth",
                    "About a tenth.",
                    "Think of how far the adhesive lets the plates slip, and what loads a rivet.",
                ),
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {"share": ChoiceKey(right=same(table, _share_id()))},
    reasons=(
        "The adhesive is wide and a fraction of a millimetre thin: it hardly lets anything slip. "
        "A rivet carries only as far as the plates slip. "
        "So while the bond holds, the rivet is almost idle."
    ),
    read_again=HEADING,
    counts=False,
)


def _draw_share(draw):
    return scene(draw) | {
        "overlap_mm": draw.whole("overlap_mm", 15, 30),
        "strip_mm": draw.whole("strip_mm", 20, 40, 2),
        "modulus_mpa": draw.whole("modulus_mpa", 500, 1400, 100),
        "adhesive_mm": draw.pick("adhesive_mm", (0.2, 0.25, 0.3, 0.4, 0.5)),
        "rivet_kn_mm": draw.whole("rivet_kn_mm", 12, 32, 2),
    }


def _solve_share(table):
    rivet_n_mm = 1000.0 * table["rivet_kn_mm"]
    joint = {
        "overlap_mm": table["overlap_mm"],
        "width_mm": table["strip_mm"],
        "adhesive_modulus_mpa": table["modulus_mpa"],
        "adhesive_mm": table["adhesive_mm"],
    }
    share = stiff_plate_rivet_share(rivet_stiffness_n_mm=rivet_n_mm, **joint)
    bond_kn_mm = rivet_n_mm * (1 - share) / share / 1000
    return {
        "bond": NumberKey(
            value=bond_kn_mm,
            slips={
                "no_thickness": bond_kn_mm * table["adhesive_mm"],
                "no_width": bond_kn_mm / table["strip_mm"],
            },
        ),
        "share": NumberKey(
            value=100 * share,
            slips={
                "no_width": 100
                * stiff_plate_rivet_share(rivet_stiffness_n_mm=rivet_n_mm, **(joint | {"width_mm": 1.0})),
                "units": 100 * stiff_plate_rivet_share(rivet_stiffness_n_mm=1000 * rivet_n_mm, **joint),
            },
        ),
        "size": ChoiceKey(right=same(table, "alone")),
    }


GLUE_SHARE = Exercise(
    id="second_plate.glue_share",
    objective="bond",
    title="What the glue leaves for the rivet",
    prompt=(
        "{shop} rivets and bonds a lap of {vehicle}. "
        "Each rivet has a strip {strip_mm} mm wide, overlapped by {overlap_mm} mm. "
        "The adhesive is {adhesive_mm} mm thick, its shear modulus {modulus_mpa} MPa. "
        "A rivet takes {rivet_kn_mm} kN for each millimetre of slip; this is assumed. "
        "Take the plates as stiff: the bond takes modulus × width × overlap / thickness for each millimetre."
    ),
    parts=(
        Number(
            id="bond",
            ask="How much does the bond of one strip take for each millimetre of slip?",
            unit="kN/mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "no_thickness", "The thickness of the adhesive is missing. A thin layer is a stiff one."
                ),
                slip("no_width", "The width of the strip is missing. The whole area holds."),
            ),
        ),
        Number(
            id="share",
            ask="Which share of the load does the rivet carry while the bond holds?",
            unit="%",
            relative_tolerance=0.03,
            tolerance_reason="It is a small share of assumed values: 3 % of it covers rounding on the way.",
            slips=(
                slip("no_width", "The bond was taken for a strip of one millimetre. The whole area holds."),
                slip("units", "N and kN were mixed. Write both stiffnesses in the same unit."),
            ),
        ),
        Choice(
            id="size",
            ask="For which load do you size the rivets?",
            options=(
                wrong(
                    "share",
                    "For their share, with a margin.",
                    "The share holds while the bond holds. Ask what is left to carry after it.",
                ),
                wrong(
                    "half",
                    "For half, to be fair to both.",
                    "Nothing divides the load like that, before the bond fails or after.",
                ),
                wrong(
                    "alone",
                    "For the whole load: once the bond has failed they carry it alone.",
                    "Think of a crash, of heat, and of a bond that has aged.",
                ),
            ),
        ),
    ),
    draw=_draw_share,
    solve=_solve_share,
    reasons=(
        "Bond and rivet lie side by side, so each takes its stiffness over the sum of both. "
        "The bond is a hundred times stiffer and more, so the rivet is almost idle. "
        "When the bond goes, all of the load falls on the rivets at once. "
        "Rivets also hold the joint while the adhesive cures, and keep it from peeling."
    ),
    read_again=HEADING,
)

# Round value of the trade for aluminium, in MPa.
ALUMINIUM_MPA = 70_000
# Overlaps over the limit, so that doubling plainly does something or plainly nothing.
LIMIT_SHARES = {"short": (0.3, 0.35, 0.4), "long": (1.2, 1.4, 1.6)}


def _draw_overlap(draw):
    lap = {
        "plate_mm": draw.decimal("plate_mm", 1.5, 2.5, 0.1, 1),
        "modulus_mpa": draw.whole("modulus_mpa", 700, 1300, 50),
        "adhesive_mm": draw.pick("adhesive_mm", (0.2, 0.25, 0.3)),
    }
    share = draw.pick("share", LIMIT_SHARES[draw.pick("kind", tuple(LIMIT_SHARES))])
    return (
        scene(draw)
        | lap
        | {
            "overlap_mm": round(share * limit_overlap_mm(**_lap(lap))),
            "line_load_n_mm": draw.whole("line_load_n_mm", 60, 120, 5),
        }
    )


def _lap(table):
    """Return the lap of each scenario but for its overlap."""
    stiffness = ALUMINIUM_MPA * np.asarray(table["plate_mm"])
    return {
        "stiffnesses_n_mm": (stiffness, stiffness),
        "adhesive_modulus_mpa": np.asarray(table["modulus_mpa"], dtype=float),
        "adhesive_mm": np.asarray(table["adhesive_mm"]),
    }


def _overlap_words(scenario):
    """Return how fast the load passes over in one scenario."""
    rate = transfer_rate_per_mm(**_lap({name: np.array([value]) for name, value in scenario.items()}))
    return {"rate": f"{float(rate[0]):.3f}"}


def _solve_overlap(table):
    lap, overlap_mm, load = _lap(table), table["overlap_mm"], table["line_load_n_mm"]
    peak = bond_peak_mpa(line_load_n_mm=load, overlap_mm=overlap_mm, **lap)
    doubled = bond_peak_mpa(line_load_n_mm=load, overlap_mm=2 * overlap_mm, **lap)
    mean, limit_mm = load / overlap_mm, limit_overlap_mm(**lap)
    return {
        "mean": NumberKey(value=mean, slips={"once_a_plate": 2 * mean, "two_layers": mean / 2}),
        "limit": NumberKey(
            value=limit_mm,
            slips={"inverse": limit_mm / 5, "twice": 2 * limit_mm},
        ),
        # Less than a hundredth off the peak is nothing; more than a tenth is worth having.
        "double": ChoiceKey(right=chosen([doubled > 0.99 * peak], ["nothing"], otherwise="less")),
    }


OVERLAP = Exercise(
    id="second_plate.overlap",
    objective="bond",
    title="Does a longer overlap help?",
    prompt=(
        "A bonded lap of two plates of {plate_mm} mm is overlapped by {overlap_mm} mm. "
        "It bears {line_load_n_mm} N for each millimetre of its width. "
        "The adhesive, {adhesive_mm} mm thick, is sheared most at both ends. "
        "For these plates and this adhesive the load passes over at a rate of {rate} per millimetre. "
        "Beyond an overlap of 5 over that rate, more overlap bears hardly more. "
        "{shop} thinks of doubling the overlap."
    ),
    shown=_overlap_words,
    parts=(
        Number(
            id="mean",
            ask="What is the mean shear of the adhesive now?",
            unit="MPa",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("once_a_plate", "The load was counted for each plate. It is one load that passes over."),
                slip("two_layers", "The area was counted twice. Two plates share one layer of adhesive."),
            ),
        ),
        Number(
            id="limit",
            ask="Beyond which overlap is more of it hardly worth anything?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("inverse", "That is one over the rate. The rule takes five of that."),
                slip("twice", "It was counted for each end. The rule holds for the whole overlap."),
            ),
        ),
        Choice(
            id="double",
            ask="The overlap is doubled. What becomes of the peak at the ends?",
            options=(
                wrong(
                    "less",
                    "It gets plainly smaller, though by less than half.",
                    "Compare the overlap with the limit. In a long lap the middle is idle.",
                ),
                wrong(
                    "half",
                    "It halves, as the mean does.",
                    "The load passes over near the ends. The middle takes only part of what is added.",
                ),
                wrong(
                    "nothing",
                    "Almost nothing changes.",
                    "Compare the overlap with the limit. A short lap is loaded all along.",
                ),
            ),
        ),
    ),
    draw=_draw_overlap,
    solve=_solve_overlap,
    reasons=(
        "The mean is the load over the overlap; it says little, for the ends are loaded most. "
        "Once the overlap is longer than the limit, its middle is idle and more of it changes nothing. "
        "Idle middle is no waste: it keeps the bond from creeping. "
        "The form leaves peel out, and peel is what opens a bond at its ends."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_GLUE_SHARE, GLUE_SHARE, OVERLAP)
