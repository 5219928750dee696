"""Exercises on what decides the setting of a rivet: room in the die, and the force that cuts the slug."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, same, slip, wrong
from grading.exercises.rivet_anatomy.stages import HEADING
from grading.exercises.scenes import scene
from secondplate.rivet import Die, Rivet, piercing_force_n, volume_ratio

WEB_MM = Rivet.web_mm  # the usual one
# Room of the die over steel of the rivet, well on either side of 1, and so that no usual slip meets another.
SMALL, LARGE = (0.60, 0.85), (1.30, 1.60)


@cache
def _rivets_and_dies():
    """Return the sizes of pairs whose die is plainly too small for the rivet, and of those too large."""
    shank_mm, bore_mm, length_mm, die_mm, depth_mm = (
        grid.ravel()
        for grid in np.meshgrid(
            (5.2, 5.3, 5.4, 5.5),
            (3.0, 3.1, 3.2, 3.3, 3.4, 3.5),
            (5.0, 5.5, 6.0, 6.5),
            (8.0, 8.5, 9.0, 9.5, 10.0),
            (1.0, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.8),
        )
    )
    ratio = volume_ratio(
        Rivet(shank_diameter_mm=shank_mm, bore_diameter_mm=bore_mm, rivet_length_mm=length_mm, web_mm=WEB_MM),
        Die(die_diameter_mm=die_mm, die_depth_mm=depth_mm),
    )
    pairs = np.stack([shank_mm, bore_mm, length_mm, die_mm, depth_mm], axis=1)
    return {
        name: tuple(map(tuple, pairs[(low < ratio) & (ratio < high)].tolist()))
        for name, (low, high) in {"small": SMALL, "large": LARGE}.items()
    }


def _draw_volumes(draw):
    pairs = _rivets_and_dies()[draw.pick("room", ("small", "large"))]
    sizes = draw.pick("sizes", pairs)
    names = ("shank_mm", "bore_mm", "length_mm", "die_mm", "depth_mm")
    return scene(draw) | dict(zip(names, sizes, strict=True)) | {"web_mm": WEB_MM}


def _solve_volumes(table):
    shank_mm, length_mm, die_mm, depth_mm = (
        table[name] for name in ("shank_mm", "length_mm", "die_mm", "depth_mm")
    )
    rivet = Rivet(
        shank_diameter_mm=shank_mm,
        bore_diameter_mm=table["bore_mm"],
        rivet_length_mm=length_mm,
        web_mm=table["web_mm"],
    )
    die = Die(die_diameter_mm=die_mm, die_depth_mm=depth_mm)
    ratio = volume_ratio(rivet, die)
    solid_mm3 = np.pi / 4 * shank_mm**2 * length_mm
    return {
        "rivet": NumberKey(
            value=rivet.volume_mm3,
            slips={
                "solid": solid_mm3,
                "no_web": rivet.tube_area_mm2 * length_mm,
                "radius": 4 * rivet.volume_mm3,
            },
        ),
        "die": NumberKey(
            value=die.volume_mm3,
            slips={"radius": 4 * die.volume_mm3, "wall": np.pi * die_mm * depth_mm},
        ),
        "ratio": NumberKey(
            value=ratio, slips={"upside_down": 1 / ratio, "solid": die.volume_mm3 / solid_mm3}
        ),
        "then": ChoiceKey(right=chosen([ratio < 1], ["no_room"], otherwise="not_filled")),
    }


VOLUME_BALANCE = Exercise(
    id="rivet_anatomy.volume_balance",
    objective="setting",
    title="Has the die room for the rivet?",
    prompt=(
        "{shop} tries a rivet in a flat die. The rivet: shank {shank_mm} mm, length {length_mm} mm, "
        "bore {bore_mm} mm, and {web_mm} mm of solid web above the bore. "
        "Leave out the rim of the head. "
        "The round cavity of the die is {die_mm} mm wide and {depth_mm} mm deep."
    ),
    parts=(
        Number(
            id="rivet",
            ask="How much steel is in the rivet?",
            unit="mm3",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("solid", "That is a solid pin. Take the bore off."),
                slip("no_web", "The bore does not go all the way: the web above it is solid.", credit=0.25),
                slip("radius", "Four times too large: a diameter was used as a radius."),
            ),
        ),
        Number(
            id="die",
            ask="How much room is in the die?",
            unit="mm3",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("radius", "Four times too large: a diameter was used as a radius."),
                slip("wall", "That is the wall round the cavity. Take its floor times its depth."),
            ),
        ),
        Number(
            id="ratio",
            ask="How many times the steel of the rivet is the room of the die?",
            unit="times",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("upside_down", "Upside down: divide the room of the die by the steel of the rivet."),
                slip("solid", "That compares the die with a solid pin. The bore is empty."),
            ),
        ),
        Choice(
            id="then",
            ask="By the rule of thumb, what comes of this pair?",
            options=(
                option("not_filled", "Too much room: the button is not filled and the interlock falls."),
                wrong(
                    "no_matter",
                    "Nothing: the setter stops by itself when the die is full.",
                    "The setter goes on to the end of its stroke. What has no room is squeezed.",
                ),
                option("no_room", "Too little room: metal is squeezed and the force climbs."),
            ),
        ),
    ),
    draw=_draw_volumes,
    solve=_solve_volumes,
    reasons=(
        "Steel: the circle of the shank times the length, less the circle of the bore times the length below "
        "the web. "
        "Room: the circle of the cavity times its depth. "
        "Room divided by steel is near 1 in a pair that suits. "
        "Well below 1 the metal has nowhere to go, well above it the plate is not pressed against the tail. "
        "It is a rule of thumb: a section of a trial joint decides."
    ),
    read_again=HEADING,
)


def _draw_piercing(draw):
    return scene(draw) | {
        "shank_mm": draw.pick("shank_mm", (5.2, 5.3, 5.4, 5.5)),
        "top_mm": draw.decimal("top_mm", 1.0, 2.5, 0.1, 1),
        "strength_mpa": draw.whole("strength_mpa", 190, 300, 10),
        "peak_kn": draw.whole("peak_kn", 35, 60),
    }


def _solve_piercing(table):
    force_n = piercing_force_n(
        shank_diameter_mm=table["shank_mm"],
        thickness_mm=table["top_mm"],
        tensile_strength_mpa=table["strength_mpa"],
    )
    tension_n = np.pi * table["shank_mm"] * table["top_mm"] * table["strength_mpa"]
    share_percent = 100 * force_n / (1000 * table["peak_kn"])
    return {
        "force": NumberKey(
            value=force_n,
            slips={"not_shear": tension_n, "no_pi": force_n / np.pi, "radius": force_n / 2},
        ),
        "share": NumberKey(
            value=share_percent,
            slips={"upside_down": 1e4 / share_percent, "not_percent": share_percent / 100},
        ),
        "rest": ChoiceKey(right=same(table, "spread")),
    }


PIERCING = Exercise(
    id="rivet_anatomy.piercing_force",
    objective="setting",
    title="How much force cuts the slug?",
    prompt=(
        "A top plate of {top_mm} mm with a tensile strength of {strength_mpa} N/mm² is riveted at {shop}; "
        "the shank measures {shank_mm} mm. "
        "The slug shears out along the wall of its hole: circumference times thickness. "
        "In shear a metal bears 0.577 times its tensile strength. "
        "The highest force on the curve of this rivet is {peak_kn} kN."
    ),
    parts=(
        Number(
            id="force",
            ask="About which force shears the slug out?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "not_shear",
                    "That is with the tensile strength. The slug is sheared, which takes less.",
                    credit=0.25,
                ),
                slip("no_pi", "The circumference is π times the diameter."),
                slip("radius", "That is half of it: a radius was used as a diameter."),
            ),
        ),
        Number(
            id="share",
            ask="How much is that in percent of the highest force?",
            unit="%",
            relative_tolerance=0.04,
            tolerance_reason="It may rest on a force rounded to two figures.",
            slips=(
                slip("upside_down", "Upside down: divide the force for the slug by the highest force."),
                slip("not_percent", "That is a share of one. Times a hundred makes percent.", credit=0.5),
            ),
        ),
        Choice(
            id="rest",
            ask="What is the highest force mostly needed for?",
            options=(
                option("spread", "For spreading the tail and squeezing the plates into the die."),
                wrong(
                    "slug",
                    "For cutting the slug.",
                    "Compare your two forces. And the slug is long cut when the force is highest.",
                ),
                wrong(
                    "clamp",
                    "For holding the plates together.",
                    "The nose clamps the plates from the start, where the curve is still low.",
                ),
            ),
        ),
    ),
    draw=_draw_piercing,
    solve=_solve_piercing,
    reasons=(
        "π times the shank times the thickness is the wall that has to shear. "
        "Times 0.577 times the strength gives the force, a small part of the highest one. "
        "The rest bends hard steel outwards and squeezes aluminium into the die. "
        "It is an estimate: it takes the whole wall to shear at once."
    ),
    read_again=HEADING,
)

EXERCISES = (VOLUME_BALANCE, PIERCING)
