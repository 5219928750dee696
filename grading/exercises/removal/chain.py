"""Exercises on the chain of a pull: what each link bears, which gives first, what a leaning tool costs."""

from functools import cache

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Range, RangeKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, looked_up, option, slip, wrong
from grading.exercises.removal.force import needs
from grading.exercises.scenes import scene
from grading.exercises.stud_welding.strength import CLASSES, NOMINAL_AREA, nominal_area_mm2, thread_area_mm2
from secondplate import studs
from secondplate.bands import Band
from secondplate.failure_modes import NOT_DECIDED
from secondplate.pull_chain import LoadChain
from secondplate.weld_loads import edge_stresses_mpa, pull_eccentricity_mm
from secondplate.weld_strength import fused_face, pull_limits

HEADING = "Where will the chain break?"
LINKS = ("stud", "weld", "head", "tool")
FLANGES_MM = {4: 5.0, 5: 6.0, 6: 7.0}
HEAD_MM, SHANK_MM = 7.75, 5.3
TOOL_SCATTER = 0.05  # of the rating, for the sake of the exercise


def _loads_n(area_mm2, names):
    """Return proof load and breaking load of studs with an area and a property class."""
    classes = looked_up(names, studs.property_class)
    return tuple(
        load(area_mm2, np.array([getattr(each, strength) for each in classes]))
        for load, strength in (
            (studs.proof_load_n, "proof_stress_mpa"),
            (studs.breaking_load_n, "tensile_strength_mpa"),
        )
    )


def _band(low, high, basis):
    """Return a band with its best in the middle."""
    return Band(low=low, best=(low + high) / 2, high=high, basis=basis)


def chain(table):
    """Return the chains of a table of scenarios."""
    stud = _loads_n(thread_area_mm2(table["thread_mm"]), table["property_class"])
    bands = {"stud": _band(*stud, "proof load to breaking load")}
    for link in LINKS[1:]:
        bands[link] = _band(table[f"{link}_low_n"], table[f"{link}_high_n"], "as on the card")
    return LoadChain(
        links_n=bands, needed_n=_band(table["need_low_n"], table["need_high_n"], "as worked out")
    )


def _factors(found):
    """Return the worst-case safety factor and what slips make of it."""
    strength, need = found.strength_n, found.needed_n
    return {
        "right": found.safety_factor.low,
        "low_need": strength.low / need.low,
        "upside_down": need.high / strength.low,
        "best_chain": strength.high / need.high,
    }


def _weakest(found):
    """Return the link that gives first, as an id."""
    return [str(name).replace(" ", "_") for name in np.asarray(found.weakest)]


def _to_change(found):
    """Return what to change: the link with the lowest low end, or nothing where the rivet comes first."""
    lows = np.stack([np.asarray(found.links_n[link].low) for link in LINKS])
    first = np.array(LINKS)[lows.argmin(axis=0)]
    return [str(name) for name in np.where(np.asarray(found.safety_factor.low) > 1, "nothing", first)]


@worked_out
def _joined_n(thread_mm, share, offset_mm, web_left_mm):
    """Return what weld and head of one stud bear, from low to high, to ten newtons."""
    face = fused_face(
        flange_diameter_mm=FLANGES_MM[thread_mm],
        head_diameter_mm=HEAD_MM,
        offset_mm=offset_mm,
        fused_share=share,
    )
    area_mm2 = float(thread_area_mm2(float(thread_mm)))
    limits = pull_limits(face, stress_area_mm2=area_mm2, shank_diameter_mm=SHANK_MM, web_left_mm=web_left_mm)
    return {
        f"{link}_{end}_n": int(np.round(getattr(band, end), -1))
        for link, band in (("weld", limits.weld_n), ("head", limits.head_n))
        for end in ("low", "high")
    }


@cache
def _chains():
    """Return chains by weakest link and by what is to be changed; close calls are left out."""
    made = [
        {"thread_mm": thread_mm, "property_class": name, "tool_n": tool_n}
        | {
            "tool_low_n": round(tool_n * (1 - TOOL_SCATTER)),
            "tool_high_n": round(tool_n * (1 + TOOL_SCATTER)),
        }
        | _joined_n(thread_mm, share, offset_mm, web_left_mm)
        | need
        for thread_mm in FLANGES_MM
        for share, offset_mm in ((1.0, 0.0), (0.8, 0.3), (0.3, 0.3), (0.2, 0.0))
        for web_left_mm in (0.3, 0.5, 0.8)
        for name in CLASSES
        for tool_n in (2000, 4000, 8000, 12000)
        for need in needs()[::2]
    ]
    table = {name: np.array([each[name] for each in made]) for name in made[0]}
    found = chain(table)
    lows = np.sort(np.stack([np.asarray(band.low) for band in found.links_n.values()]), axis=0)
    highs = np.sort(np.stack([np.asarray(band.high) for band in found.links_n.values()]), axis=0)
    factors = np.stack(list(_factors(found).values()))
    # More than rounding tells these apart: the factors, the two lowest links, the ends where bands meet.
    rising = np.sort(factors, axis=0)
    plain = np.all(np.diff(rising, axis=0) > 0.06 * rising[1:], axis=0)
    plain &= (lows[1] - lows[0] > 0.06 * lows[0]) & (np.abs(lows[1] - highs[0]) > 0.06 * highs[0])
    by_case = {}
    for each, weakest, change, kept in zip(made, _weakest(found), _to_change(found), plain, strict=True):
        if kept:
            by_case.setdefault((change, weakest), []).append(each)
    return by_case


def _draw_chain(draw):
    found = _chains()
    change = draw.pick("change", sorted({change for change, _ in found}))
    weakest = draw.pick("weakest", sorted(weakest for other, weakest in found if other == change))
    return scene(draw) | draw.pick("chain", found[change, weakest])


def _chain_words(scenario):
    """Return what the class of the stud stands for, and the pitch of its thread."""
    grade = studs.property_class(scenario["property_class"])
    pitch_mm = float(studs.coarse_pitch_mm(float(scenario["thread_mm"])))
    return {
        "proof": f"{grade.proof_stress_mpa:.0f}",
        "tensile": f"{grade.tensile_strength_mpa:.0f}",
        "pitch_mm": f"{pitch_mm:g}",
    }


def _solve_chain(table):
    found = chain(table)
    stud, factors = found.links_n["stud"], _factors(found)
    circle = _loads_n(nominal_area_mm2(table["thread_mm"]), table["property_class"])
    return {
        "stud": RangeKey(
            low=stud.low,
            high=stud.high,
            slips={"full_circle": circle, "diameter": tuple(4 * load for load in circle)},
        ),
        "factor": NumberKey(value=factors.pop("right"), slips=factors),
        "weakest": ChoiceKey(right=_weakest(found)),
        "change": ChoiceKey(right=_to_change(found)),
    }


CHAIN = Exercise(
    id="removal.chain",
    objective="force",
    title="The weakest link",
    prompt=(
        "For the rivets of {vehicle} the pull is worked out as {need_low_n} to {need_high_n} N. "
        "At {shop} the chain is: an M{thread_mm} stud, coarse thread, class {property_class} "
        "(proof stress {proof} N/mm², tensile strength {tensile} N/mm²); "
        "its weld, {weld_low_n} to {weld_high_n} N; "
        "the rivet's head, {head_low_n} to {head_high_n} N; the tool, {tool_low_n} to {tool_high_n} N. "
        "The stud counts from the pull at which it stays longer to the pull at which it breaks. "
        "Its stress area is π ÷ 4 × (diameter − 0.9382 × pitch)², with a pitch of {pitch_mm} mm."
    ),
    shown=_chain_words,
    parts=(
        Range(
            id="stud",
            ask="From which to which pull does the stud count?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("full_circle", NOMINAL_AREA),
                slip("diameter", "The area is far too large: the diameter was used as the radius."),
            ),
        ),
        Number(
            id="factor",
            ask="In the worst case, how many times the pull does the chain bear?",
            unit="times",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("low_need", "The worst rivet asks for the high end of its band, not for the low one."),
                slip("upside_down", "That is the pull over what the chain bears. Turn it round."),
                slip("best_chain", "In the worst case the chain bears the low end of its weakest link."),
            ),
        ),
        Choice(
            id="weakest",
            ask="Which link gives first?",
            options=(
                option("head", "The rivet's head."),
                option("tool", "The tool: it stalls."),
                option(NOT_DECIDED.replace(" ", "_"), "Not decided: the bands of two links meet."),
                option("stud", "The stud."),
                option("weld", "The weld."),
            ),
        ),
        Choice(
            id="change",
            ask="You plan by the worst case. What do you change first?",
            options=(
                option("tool", "The tool: take one that pulls harder."),
                option("weld", "The weld: clean, centre, fuse the whole face, and test it again."),
                option("nothing", "Nothing: the rivet comes before any link gives."),
                option("stud", "The stud: take a larger one or a stronger class."),
                option("head", "The melt: weld with less of it, so that more of the head stays whole."),
            ),
        ),
    ),
    draw=_draw_chain,
    solve=_solve_chain,
    reasons=(
        "Stress area times proof stress gives the low end of the stud, times tensile strength the high end. "
        "The chain bears no more than its weakest link; in the worst case that is the lowest low end. "
        "Divide it by the high end of the pull: above one, the rivet comes first. "
        "Where the bands of two links meet, nobody can say which of them gives, but the plan is the same."
    ),
    read_again=HEADING,
)

FACES_MM = (5.0, 5.5, 6.0, 6.5, 7.0)
EASIER_PULL = 0.9  # the gentler pull that a shorter lever is held against


def _draw_off_axis(draw):
    lever_mm, tilt_deg = draw.whole("lever_mm", 14, 25), draw.decimal("tilt_deg", 2.0, 4.0, 0.5, 1)
    beside_mm = pull_eccentricity_mm(eccentricity_mm=0.0, tilt_deg=tilt_deg, lever_mm=lever_mm)
    return scene(draw) | {
        "lever_mm": lever_mm,
        "tilt_deg": tilt_deg,
        "face_mm": draw.pick("face_mm", FACES_MM),
        "force_n": draw.whole("force_n", 1200, 3000, 100),
        # Plainly more or plainly less than what the slanting pull amounts to.
        "other_mm": round(beside_mm * draw.pick("other", (0.4, 0.6, 1.4, 1.6)), 1),
    }


def _solve_off_axis(table):
    lever_mm, tilt_deg, force_n = table["lever_mm"], table["tilt_deg"], table["force_n"]
    face = {"diameter_mm": table["face_mm"], "tilt_deg": tilt_deg}
    beside_mm = pull_eccentricity_mm(eccentricity_mm=0.0, tilt_deg=tilt_deg, lever_mm=lever_mm)
    stress_mpa, far_mpa = edge_stresses_mpa(force_n=force_n, lever_mm=lever_mm, **face)
    straight_mpa = (stress_mpa + far_mpa) / 2
    shorter_mpa, _ = edge_stresses_mpa(force_n=force_n, lever_mm=lever_mm / 2, **face)
    gentler_mpa, _ = edge_stresses_mpa(force_n=EASIER_PULL * force_n, lever_mm=lever_mm, **face)
    return {
        "beside": NumberKey(
            value=beside_mm,
            slips={"per_cent": lever_mm * tilt_deg / 100, "cosine": lever_mm * np.cos(np.radians(tilt_deg))},
        ),
        "stress": NumberKey(
            value=stress_mpa,
            slips={"straight": straight_mpa, "by_radius": 2 * stress_mpa - straight_mpa},
        ),
        "worse": ChoiceKey(right=chosen([table["other_mm"] > beside_mm], ["centre"], otherwise="slant")),
        "mend": ChoiceKey(right=chosen([shorter_mpa < gentler_mpa], ["lever"], otherwise="force")),
    }


OFF_AXIS = Exercise(
    id="removal.off_axis",
    objective="force",
    title="A tool that does not stand square",
    prompt=(
        "At {shop} the tool leans: the pull of {force_n} N runs {tilt_deg}° off the stud's axis. "
        "It takes hold {lever_mm} mm above the weld, whose face measures {face_mm} mm across. "
        "So at the weld the pull acts beside the middle by lever × tan(angle). "
        "The straight part of the pull, force × cos(angle), loads the face, and the edge feels "
        "(1 + 8 × distance ÷ diameter) times the mean. "
        "The next stud is pulled straight, but {other_mm} mm beside the middle of its weld."
    ),
    parts=(
        Number(
            id="beside",
            ask="How far beside the middle of the weld does the pull act?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("per_cent", "The angle was read as a slope in per cent. It is in degrees."),
                slip("cosine", "That is the lever itself, nearly. The distance goes with the tangent."),
            ),
        ),
        Number(
            id="stress",
            ask="Which stress does the edge of the weld feel?",
            unit="MPa",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("straight", "That is the mean over the face. A pull beside the middle bends the weld."),
                slip("by_radius", "The distance was divided by the radius. The form takes the diameter."),
            ),
        ),
        Choice(
            id="worse",
            ask="Which of the two welds is worse off?",
            options=(
                option("slant", "The one with the leaning tool."),
                wrong(
                    "alike",
                    "Both alike: neither is pulled through the middle.",
                    "What counts is how far beside the middle the pull acts at the weld. Compare the two.",
                ),
                option("centre", "The one that is pulled straight."),
            ),
        ),
        Choice(
            id="mend",
            ask="What helps the leaning stud more: half the lever, or a tenth less pull?",
            options=(
                wrong(
                    "force",
                    "A tenth less pull.",
                    "That takes a tenth off the stress. Work out what half the lever takes off.",
                ),
                wrong(
                    "same",
                    "Both do the same.",
                    "The lever counts in the bending alone, and the bending is most of the stress.",
                ),
                option("lever", "Half the lever: a short stud, gripped low."),
            ),
        ),
    ),
    draw=_draw_off_axis,
    solve=_solve_off_axis,
    reasons=(
        "Lever times the tangent of the angle is where the pull acts at the weld. "
        "Eight times that over the diameter, and one, is how many times the mean the edge feels. "
        "A few degrees on a long stud are worse than a millimetre beside the middle. "
        "So grip low, stand the nose square, and look along the stud before you pull."
    ),
    read_again=HEADING,
)

EXERCISES = (CHAIN, OFF_AXIS)
