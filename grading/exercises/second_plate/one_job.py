"""One job from weld to record, put together from what the same learner got on the pages before.

The weld is that of their exercise on where the heat goes, the plates are as thick as those of the section
that they read, and the rivet is the one whose pull they worked out. All else is drawn so that it fits.
"""

from dataclasses import replace
from functools import cache

import numpy as np

from grading.catalogues import worked_out
from grading.exercises.building_blocks import current_and_time, looked_up_numbers
from grading.exercises.removal.force import PULL_FORCE, joints
from grading.exercises.rivet_anatomy.drawing_out import pull
from grading.exercises.rivet_anatomy.reading import READ_SECTION, measured_on
from grading.exercises.scenes import scene
from grading.exercises.stud_welding.heat_reach import HEAT_REACH
from secondplate import studs
from secondplate.fastener_layout import Flange, OldSite, hole_rules, most_fasteners
from secondplate.fasteners import blind_rivet, equal_strength_count, fastener_joint
from secondplate.measuring import guard_band_mm
from secondplate.plate import PlateFinding, judge_plate
from secondplate.sheet_alloys import body_sheet
from secondplate.softening import judge_heat, softening_of_weld
from secondplate.softening_limits import BOND_LINE
from secondplate.tables import values

STUD_MM, STUD_CLASSES = 6.0, ("A2-50", "A2-70")
BOND_PLACE, PLATE_PLACE = "bond line 4 mm out", "second plate under the rivet"
KINDS = {"5754-O": "5xxx-O", "6016-T4": "6xxx-T4", "6082-T4": "6xxx-T4"}
RESERVE = 1.1  # what the shop adds to the pull that it plans for
# What the exercise on the pull of page 3 says of a rivet.
RIVET_NAMES = ("second", "top", "interlock_mm", "penetration_mm", "contact_mm")
UNCERTAINTY_MM = 0.02
CRITICAL_CRACK_MM, DETECTABLE_MM = 6.0, 3.0
RIVETS = ("ISO 15977 H", "ISO 15979", "ISO 15983")
NEW_MM = 4.8
TENTHS_MM = range(8, 31)  # thicknesses that plates of sections have, in tenths of a millimetre
# Strongest sheet that the form for blind rivets knows: stronger sheet is reckoned as that.
STRONGEST_MPA = values("thin_sheet")["blind rivet strongest"]
OLD_PITCH_MM, AFFECTED_MM = 40.0, 7.0


@cache
def guard_mm():
    """Return how far above what is required a reading must lie; worked out when it is first asked for."""
    return float(guard_band_mm(UNCERTAINTY_MM))


@cache
def _heated(setting):
    """Return the weld of one setting, worked out by the heat model for the usual joint."""
    # The solver is loaded only when somebody asks: marking does without it.
    from secondplate.heat.joint import default_joint
    from secondplate.heat.weld import weld_heat

    return weld_heat(default_joint(stud_diameter_mm=STUD_MM), weld_settings(setting))


@cache
def weld_settings(setting):
    """Return the settings of a weld as the heat model takes them."""
    from secondplate.heat.weld_settings import WeldHeat

    current_a, time_ms = current_and_time(setting)
    return WeldHeat(current_a=current_a, time_ms=time_ms)


@worked_out
def peak_c(setting, place):
    """Return the highest temperature of a place in whole degrees, as it is shown."""
    return round(float(_heated(setting).peak_at_c(place)))


@cache
def heat_word(setting):
    """Return whether the bond line kept its limit."""
    return str(judge_heat({BOND_LINE: peak_c(setting, BOND_PLACE)})[BOND_LINE])


@worked_out
def strength_left(setting, second):
    """Return the share of its strength that the heat left the second plate, as a band."""
    found = softening_of_weld(_heated(setting), softening_kind=KINDS[second])
    return found[PLATE_PLACE].strength_left


def planned_pull(table):
    """Return the pull that is planned for, what slips make of it, and both high ends."""
    found = pull(table)
    first, second = found.first_peak_n, found.second_peak_n
    highest = np.maximum(first.high, second.high)
    low = np.where(second.high > first.high, second.low, first.low)
    slips = {
        "no_reserve": highest,
        "low_end": RESERVE * low,
        "sum": RESERVE * (first.high + second.high),
    }
    return RESERVE * highest, slips


def stud_loads_n(classes):
    """Return proof load and breaking load of the stud, for each class of a column."""
    area_mm2 = studs.stress_area_mm2(STUD_MM, pitch_mm=studs.coarse_pitch_mm(STUD_MM))
    return (
        looked_up_numbers(
            classes, lambda name: studs.proof_load_n(area_mm2, studs.property_class(name).proof_stress_mpa)
        ),
        looked_up_numbers(
            classes,
            lambda name: studs.breaking_load_n(area_mm2, studs.property_class(name).tensile_strength_mpa),
        ),
    )


def verdict(*, left_mm, required_mm, heat):
    """Return the verdict on the plate, and the band of strength that the heat left goes into it."""
    found = PlateFinding(
        least_thickness_mm=left_mm,
        required_thickness_mm=required_mm,
        thickness_uncertainty_mm=UNCERTAINTY_MM,
        critical_crack_mm=CRITICAL_CRACK_MM,
        detectable_mm=DETECTABLE_MM,
        flush_needed=False,
        strength_left=heat,
    )
    return judge_plate(found).verdict


@cache
def _bears_n(standard, top, second):
    """Return what one new blind rivet bears by design in two plates of all thicknesses, in a table."""
    thicknesses_mm = np.array(TENTHS_MM) / 10
    plates = (body_sheet(name, thickness_mm=thicknesses_mm[0]) for name in (top, second))
    grid = np.meshgrid(thicknesses_mm, thicknesses_mm, indexing="ij")
    sheets = [
        replace(
            plate,
            thickness_mm=each.ravel(),
            tensile_strength_mpa=min(plate.tensile_strength_mpa, STRONGEST_MPA),
        )
        for plate, each in zip(plates, grid, strict=True)
    ]
    joint = fastener_joint(
        blind_rivet(standard, NEW_MM),
        top=sheets[0],
        second=sheets[1],
        end_distance_mm=10.0,
        edge_distance_mm=9.0,
        width_mm=20.0,
    )
    return np.round(joint.design_strength_n).reshape(grid[0].shape)


def new_strength_n(job):
    """Return what one new blind rivet bears in the plates of a job by design, in whole newtons."""
    places = (TENTHS_MM.index(round(10 * job[name])) for name in ("top_mm", "second_mm"))
    return _bears_n(job["standard"], job["top"], job["second"])[tuple(places)].item()


@worked_out
def room(old_rivets, thickness_mm):
    """Return how many new rivets find room on the flange, clear of the old sites."""
    flange = Flange(
        flange_length_mm=OLD_PITCH_MM * old_rivets + 20,
        flange_width_mm=25.0,
        thickness_mm=thickness_mm,
        root_clearance_mm=9.0,
    )
    sites = [
        OldSite(x_mm=30 + OLD_PITCH_MM * place, y_mm=13.0, affected_diameter_mm=AFFECTED_MM)
        for place in range(old_rivets)
    ]
    rules = hole_rules(blind_rivet("ISO 15977 H", NEW_MM).hole_most_mm, level="minimum")
    return most_fasteners(flange, sites=sites, rules=rules)


def _plates(section):
    """Return how thick the plates of a section are, top plate and second plate."""
    measures = measured_on(section["fault"])
    return {
        f"{plate}_mm": round(float(measures[name][section["section"]]), 1)
        for plate, name in (("top", "top_plate"), ("second", "plate"))
    }


# Where the reading lies for each verdict, in guard bands above what is required.
ROOMS = ((1.2, 8.0), (-8.0, -1.2), (-0.6, 0.6))


@cache
def _asked(second_mm, cup_mm, room):
    """Return how far buttons stand proud, and which share of the plate is required, for one verdict."""
    low, high = room
    return [
        (tenths / 10, percent)
        for tenths in range(5, 18)
        for percent in range(15, 66)
        if (left_mm := second_mm + tenths / 10 - cup_mm) >= 0.35
        and low <= (left_mm - percent * second_mm / 100) / guard_mm() <= high
        and abs(left_mm - abs(second_mm - cup_mm)) > 0.05
    ]


def _left(draw, job):
    """Return cup, button and what is asked of the plate, so that a drawn verdict is plain."""
    # The tail springs back or digs in a little, so no cup is as deep as a plate is thick.
    cup_mm = round(job["penetration_mm"] + draw.pick("digs_in", (-0.05, 0.05)), 2)
    rise_mm, percent = draw.pick("plate", _asked(job["second_mm"], cup_mm, draw.pick("verdict", ROOMS)))
    return {"cup_mm": cup_mm, "rise_mm": rise_mm, "percent": percent}


def counts(*, old_n, new_n, listed_n, old_rivets):
    """Return how many new rivets are needed, and what slips make of it."""
    old = {"old_strength_n": old_n, "old_fasteners": old_rivets}
    return equal_strength_count(new_strength_n=new_n, **old), {
        "by_list": equal_strength_count(new_strength_n=listed_n, **old),
        "turned": equal_strength_count(old_strength_n=new_n, new_strength_n=old_n, old_fasteners=old_rivets),
    }


@cache
def _old_strengths_n(standard, old_rivets, new_n, held):
    """Return what old rivets may have borne, so that the count is plain: those with room, those without."""
    old_n = np.arange(800, 9001, 20)
    listed_n = blind_rivet(standard, NEW_MM).fastener_shear_n
    count, slips = counts(old_n=old_n, new_n=new_n, listed_n=listed_n, old_rivets=old_rivets)
    over = old_rivets * old_n / new_n % 1
    # Odd counts from 5 on stand nowhere else in the text; no slip leads to the right one or to another.
    plain = (over > 0.1) & (over < 0.9) & (count % 2 == 1) & (count >= 5) & (count != old_rivets)
    plain &= (slips["by_list"] < count) & (slips["turned"] < slips["by_list"]) & (count <= held + 4)
    by_room = [old_n[plain & ((count <= held) == fits)].tolist() for fits in (True, False)]
    return [found for found in by_room if found]


def _new(draw, job):
    """Return the new fasteners and what the old ones bore."""
    standard, old_rivets = draw.pick("standard", RIVETS), draw.pick("old_rivets", (3, 4, 5, 6))
    held = room(old_rivets, min(job["top_mm"], job["second_mm"]))
    found = _old_strengths_n(standard, old_rivets, new_strength_n(job | {"standard": standard}), held)
    old_n = draw.pick("old_n", draw.pick("room for them", found))
    return {"standard": standard, "old_rivets": old_rivets, "old_n": old_n}


@cache
def _plans_n():
    """Return the pull that is planned for each rivet of the exercise on page 3."""
    rivets = [tuple(rivet[name] for name in RIVET_NAMES) for each in joints().values() for rivet in each]
    columns = map(np.array, zip(*rivets, strict=True))
    return dict(
        zip(rivets, planned_pull(dict(zip(RIVET_NAMES, columns, strict=True)))[0].tolist(), strict=True)
    )


@cache
def _proof_n(class_name):
    """Return the proof load of the stud in one class."""
    return stud_loads_n([class_name])[0].item()


def draw_job(draw):
    """Return one job of a learner: weld of page 1, plates of page 2, rivet of page 3, and what follows."""
    pulled = draw.of(PULL_FORCE)
    rivet = {name: pulled[name] for name in RIVET_NAMES}
    job = rivet | {"setting": draw.of(HEAT_REACH)["setting"]} | _plates(draw.of(READ_SECTION))
    plan_n = _plans_n()[tuple(rivet.values())]
    clear = [name for name in STUD_CLASSES if abs(plan_n / _proof_n(name) - 1) > 0.06]
    # A stud that would stretch is shown wherever there is one: most pulls are borne by both classes.
    weak = [name for name in clear if _proof_n(name) < plan_n]
    came = draw.pick("came", (0.5, 0.6, 0.7, 0.8, 1.1, 1.15, 1.2))  # of the plan: plainly below or above
    return (
        scene(draw)
        | job
        | {
            "property_class": draw.pick("property_class", weak or clear),
            "peak_n": round(plan_n * came / 10) * 10,
        }
        | _left(draw, job)
        | _new(draw, job)
        | {"adhesive_mm": draw.pick("adhesive_mm", (0.25, 0.35))}
    )
