"""Exercise on what may be done with a plate: leave, reform, back, replace, or measure again."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Verdicts, VerdictsKey
from grading.exercises.building_blocks import option
from grading.exercises.scenes import scene
from secondplate.bands import Band
from secondplate.measuring import guard_band_mm
from secondplate.plate import MEASURE_AGAIN, PLATE_VERDICTS, PlateFinding, judge_plate

HEADING = "May it be pressed back?"
PLATES = ("first", "second", "third", "fourth", "fifth")
VERDICTS = (*PLATE_VERDICTS, MEASURE_AGAIN)
IDS = dict(zip(VERDICTS, ("leave", "reform", "backing", "replace", "again"), strict=True))
LARGEST_HOLE_MM, CRITICAL_CRACK_MM, DETECTABLE_MM, REQUIRED_SHARE = 10.0, 6.0, 3.0, 0.9
RISE_MM = 0.6
SOUND = {
    "more_mm": 0.15,
    "hole_mm": 0.0,
    "crack_mm": 0.0,
    "tested": True,
    "flat": False,
    "used_percent": 0,
    "strength_percent": 100,
}
# What sets a plate apart from a sound one, by the verdict that it leads to.
THIN = tuple({"more_mm": more} for more in (-0.1, -0.12, -0.15))
DEVIATIONS = {
    "leave": tuple({"more_mm": more} for more in (0.1, 0.15, 0.2, 0.25)),
    "reform": tuple({"flat": True, "used_percent": used} for used in (45, 60, 75, 90)),
    "backing": (
        *THIN,
        *({"hole_mm": hole} for hole in (5.0, 6.5, 8.0)),
        *({"crack_mm": crack} for crack in (2.0, 3.5)),
    ),
    "replace": (
        *({"hole_mm": hole} for hole in (11.5, 13.0)),
        *({"crack_mm": crack} for crack in (7.5, 9.0)),
        *({"flat": True, "used_percent": used} for used in (120, 150)),
        *({"strength_percent": share} for share in (65, 78)),
    ),
    "again": (*({"more_mm": more} for more in (-0.02, -0.01, 0.01, 0.02)), {"tested": False}),
}
# A plate with several findings at once, by the gravest of them: a grave one beside a milder one.
SEVERAL = {
    "hole": {"hole_mm": 12.0, "flat": True, "used_percent": 70},
    "crack": {"crack_mm": 8.0, "more_mm": -0.12},
    "strain": {"flat": True, "used_percent": 130, "more_mm": -0.12},
    "heat": {"strength_percent": 70, "more_mm": -0.12},
    "thin": {"flat": True, "used_percent": 70, "more_mm": -0.12},
}
REASONS = {"hole": "hole is larger", "crack": "crack is longer", "strain": "pressed back", "heat": "heat has"}


def finding(site, *, required_mm, uncertainty_mm, detectable_mm=DETECTABLE_MM):
    """Return what was found at the sites of a column."""
    left_mm = np.where(np.greater(site["hole_mm"], 0), 0.0, np.add(required_mm, site["more_mm"]))
    share = np.divide(site["strength_percent"], 100)
    return PlateFinding(
        least_thickness_mm=left_mm,
        required_thickness_mm=required_mm,
        thickness_uncertainty_mm=uncertainty_mm,
        hole_diameter_mm=site["hole_mm"],
        largest_hole_mm=LARGEST_HOLE_MM,
        crack_length_mm=site["crack_mm"],
        critical_crack_mm=CRITICAL_CRACK_MM,
        detectable_mm=detectable_mm,
        button_depth_mm=RISE_MM,
        flush_needed=site["flat"],
        press_back_used=np.divide(site["used_percent"], 100),
        strength_left=Band(low=share, best=share, high=share, basis="hardness"),
        required_strength_share=REQUIRED_SHARE,
    )


def verdicts(site, **asked):
    """Return the verdicts on the sites of a column, as ids."""
    tested, untested = (
        judge_plate(finding(site, detectable_mm=length, **asked)).verdict for length in (DETECTABLE_MM, None)
    )
    return [IDS[str(word)] for word in np.where(site["tested"], tested, untested)]


@cache
def gravest(kind):
    """Return the gravest finding of a plate that has several, as an id."""
    found = finding(SOUND | SEVERAL[kind], required_mm=0.4, uncertainty_mm=0.02)
    first = judge_plate(found).reasons()[0]
    return next((name for name, words in REASONS.items() if words in first), "thin")


def spoken(site, required_mm):
    """Return one site in words."""
    found = [
        f"a hole of {site['hole_mm']:g} mm"
        if site["hole_mm"]
        else f"{required_mm + site['more_mm']:.2f} mm left",
        f"a crack of {site['crack_mm']:g} mm"
        if site["crack_mm"]
        else ("no crack seen" if site["tested"] else "not tested for cracks"),
        f"must lie flat, pressing takes {site['used_percent']} % of what is allowed"
        if site["flat"]
        else "button may stand",
    ]
    if site["strength_percent"] < 100:
        found.append(f"{site['strength_percent']} % of the strength left")
    return "; ".join(found)


def _draw_plates(draw):
    scenario = scene(draw) | {
        "required_mm": draw.pick("required_mm", (0.35, 0.4, 0.45, 0.5)),
        "uncertainty_mm": draw.pick("uncertainty_mm", (0.02, 0.03, 0.04)),
        "sixth": draw.pick("sixth", tuple(SEVERAL)),
    }
    # One verdict is left out and another stands twice, so that the last plate is not found by counting.
    four = draw.shuffle("wanted", IDS.values())[:-1]
    wanted = draw.shuffle("places", [*four, draw.pick("twice", four)])
    for row, verdict in zip(PLATES, wanted, strict=True):
        site = SOUND | draw.pick(f"plate {row}", DEVIATIONS[verdict])
        scenario |= {f"{row}_{name}": value for name, value in site.items()}
    return scenario


def _site(table, row):
    """Return what was found at one row, from one scenario or from a table of them."""
    return {name: table[f"{row}_{name}"] for name in SOUND}


def _plate_words(scenario):
    required_mm = scenario["required_mm"]
    return {
        **{f"{row}_words": spoken(_site(scenario, row), required_mm) for row in PLATES},
        "sixth_words": spoken(SOUND | SEVERAL[scenario["sixth"]], required_mm),
        "guard": f"{guard_band_mm(scenario['uncertainty_mm']):.2f}",
        "largest": f"{LARGEST_HOLE_MM:g}",
        "critical": f"{CRITICAL_CRACK_MM:g}",
        "detectable": f"{DETECTABLE_MM:g}",
        "share": f"{100 * REQUIRED_SHARE:.0f}",
    }


def _solve_plates(table):
    asked = {"required_mm": table["required_mm"], "uncertainty_mm": table["uncertainty_mm"]}
    return {
        "verdicts": VerdictsKey(right={row: verdicts(_site(table, row), **asked) for row in PLATES}),
        "gravest": ChoiceKey(right=[gravest(str(kind)) for kind in table["sixth"]]),
    }


JUDGE_PLATES = Exercise(
    id="second_plate.judge_plates",
    objective="reform",
    title="Five plates, five verdicts",
    prompt=(
        "At {shop} second plates of {vehicle} are judged. "
        "At least {required_mm} mm must be left, and a reading proves it only beyond a guard of {guard} mm. "
        "At least {share} % of the strength must be left. "
        "The plate does not bear a crack of {critical} mm; the test, by eddy current, is held to find "
        "{detectable} mm. "
        "A backing may make good a thin place, a hole of up to {largest} mm or a shorter crack, "
        "and nothing else. "
        "Where a button must lie flat it is pressed back, if the strain allows. "
        "A sixth plate has several findings: {sixth_words}."
    ),
    shown=_plate_words,
    parts=(
        Verdicts(
            id="verdicts",
            ask="What do you do with each plate?",
            points=3.0,
            rows=tuple(option(row, "{" + row + "_words}") for row in PLATES),
            verdicts=(
                option("leave", "leave and seal"),
                option("reform", "reform, then seal"),
                option("backing", "add a backing"),
                option("replace", "replace the part"),
                option("again", "not decided: measure or test again"),
            ),
        ),
        Choice(
            id="gravest",
            ask="Which finding decides what becomes of the sixth plate?",
            options=(
                option("thin", "The thickness that is left."),
                option("crack", "The crack."),
                option("strain", "The strain of pressing it back."),
                option("hole", "The size of the hole."),
                option("heat", "The strength that is left."),
            ),
        ),
    ),
    draw=_draw_plates,
    solve=_solve_plates,
    reasons=(
        "Take each finding on its own; the gravest verdict of all is that of the plate. "
        "Too thin, holed or cracked asks for a backing; a crack is stopped at its ends before it is covered. "
        "What a backing cannot make good asks for a new part: a large hole, a long crack, lost strength, "
        "a button that must be flat and would tear. "
        "Where a reading lies within the guard, or no valid crack test was made, nothing is decided yet. "
        "Where the vehicle maker asks for a new part, that is the verdict, whatever was measured."
    ),
    read_again=HEADING,
)

EXERCISES = (JUDGE_PLATES,)
