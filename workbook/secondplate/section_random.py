"""Invents set joints from seeds: rivet, plates and die that suit each other, with scatter or with one fault.

The bands of the draws are own judgement after usual joints. The joints are invented: they teach what a
section looks like, and their frequencies say nothing about any shop.
"""

import numpy as np

from secondplate.checks import require_choice
from secondplate.section_balance import shape
from secondplate.section_draws import Uniforms
from secondplate.section_faults import FAULT_NAMES, SOUND
from secondplate.section_joint import Section, build_columns, open_parts
from secondplate.section_parameters import parameters_of

# Two classes of rivet, from memory, with plates that suit and how much wider than the shank the die is.
_CLASSES = {
    "shank_diameter_mm": (5.3, 3.35),
    "head_diameter_mm": (7.75, 5.5),
    "bore_diameter_mm": (3.3, 2.1),
    "web_mm": (1.1, 0.8),
    "thinnest_top": (1.2, 1.0),
    "thickest_top": (2.2, 1.4),
    "thinnest_second": (1.5, 1.3),
    "thickest_second": (2.6, 1.8),
    "unspread": (0.965, 0.96),  # set length over rivet length without any flare,
    "by_flare": (0.03, 0.16),  # and how much it falls with a millimetre of interlock
    "die_wider": (3.5, 2.85),
}
_THIN_MM = 0.2  # between the bottoms drawn thin and the others
_GUESS_LOW = 0.04  # the rough figures give a button that is too deep by this part of the shank
_TIP_DEEPER = 0.25  # a tip in the die makes the button deeper
_BLOCK = 500  # joints shaped at once: what a call costs is spread, and their arrays stay near the processor


def _is(faults, *names):
    """Tell for which joints one of some faults was asked for."""
    return np.isin(faults, names)


def _draw_sizes(draws, faults):
    """Draw rivet class, plates, die and head."""
    small = draws.share("small rivet") < 0.25
    sizes = {name: np.where(small, pair[1], pair[0]) for name, pair in _CLASSES.items()}
    for plate in ("top", "second"):
        thin, thick = sizes.pop(f"thinnest_{plate}"), sizes.pop(f"thickest_{plate}")
        sizes[f"{plate}_plate_mm"] = np.round(thin + (thick - thin) * draws.share(f"{plate} plate"), 1)
    # From thin to thick: the second plate is never much thinner than the top plate.
    sizes["second_plate_mm"] = np.maximum(sizes["second_plate_mm"], sizes["top_plate_mm"])
    wrong = _is(faults, "wrong die")
    sizes["die_diameter_mm"] = sizes["shank_diameter_mm"] + sizes.pop("die_wider")
    sizes["die_diameter_mm"] = sizes["die_diameter_mm"] + draws.pick("die", (0.0, 0.2, 0.5)) * np.where(
        small, 0.5, 1.0
    )
    sizes["die_diameter_mm"] = np.round(
        sizes["die_diameter_mm"] + np.where(wrong, np.where(small, 1.0, 1.6), 0.0), 2
    )
    glued = draws.share("adhesive") < 0.4
    sizes["gap_mm"] = np.where(glued, draws.pick("adhesive layer", (0.1, 0.2, 0.3)), 0.0)
    gapped = _is(faults, "plates gapped")
    sizes["gap_mm"] = np.where(gapped, draws.between("gap", 0.42, 0.7), sizes["gap_mm"])
    sizes["gap_reach_mm"] = np.where(gapped, 0.15, draws.between("gap reach", 0.9, 1.4))
    return sizes


def _draw_measures(draws, faults):
    """Draw what is to be measured, and the smaller forms."""
    remaining = np.where(
        _is(faults, "thin bottom"),
        draws.between("thin bottom", 0.04, 0.14),
        draws.between("remaining", 0.28, 0.7),
    )
    flared = 0.64 - 0.2 * remaining + draws.between("flare", -0.06, 0.1)
    weak = _is(faults, "small interlock", "wrong die", "buckled shank")
    flared = np.where(weak, draws.between("weak flare", 0.08, 0.3), flared)
    uneven = draws.between("uneven", -0.04, 0.04) * np.where(weak, 0.5, 1.0)
    left, right = flared + uneven, flared - uneven
    one_sided, to_left = _is(faults, "uneven flare"), draws.share("side") < 0.5
    straight = draws.between("straight side", 0.03, 0.15)
    left = np.where(one_sided & to_left, straight, left)
    right = np.where(one_sided & ~to_left, straight, right)
    head = np.where(
        _is(faults, "head proud"), draws.between("proud", 0.36, 0.6), draws.between("head", -0.15, 0.1)
    )
    head = np.where(_is(faults, "head sunk"), -draws.between("sunk", 0.55, 0.72), head)
    buckled, cracked = _is(faults, "buckled shank"), _is(faults, "crack in button")
    crack = draws.between("crack", 0.2, 0.5)
    buckle = draws.between("buckle", 0.25, 0.4)
    return {
        "remaining_thickness_mm": remaining,
        "interlock_left_mm": np.round(left, 3),
        "interlock_right_mm": np.round(right, 3),
        "head_flushness_mm": head,
        "buckle_left_mm": np.where(buckled, buckle, 0.0),
        "buckle_right_mm": np.where(
            buckled, np.round(buckle * draws.between("buckle of the right", 0.7, 1), 3), 0.0
        ),
        "crack_left_mm": np.where(cracked & to_left, crack, 0.0),
        "crack_right_mm": np.where(cracked & ~to_left, crack, 0.0),
        "corner_mm": np.where(_is(faults, "wrong die"), 1.6, draws.between("corner", 0.5, 0.8)),
        "slug_share": draws.between("slug", 1.05, 1.3),
        "tilt": np.where(one_sided, np.where(to_left, -0.12, 0.12), 0.0) + draws.between("tilt", -0.03, 0.03),
        "tip": np.where(draws.share("tip") < 0.4, draws.between("tip height", 0.3, 0.6), 0.0),
        "bend": draws.between("bend", -0.15, 0.15),
    }


def _areas(sizes):
    """Return the areas in mm2 over which bending and sinking of the top plate, button and shank spread."""
    shank, die = sizes["shank_diameter_mm"] / 2, sizes["die_diameter_mm"] / 2
    width = die + 0.6 - shank
    # Integrals of the forms in section_plates over the ring from the shank outwards.
    bend = 2 * np.pi * width * (0.425 * shank + 0.120 * width)
    sink = 2 * np.pi * width * (0.5 * shank + 0.25 * width)
    return bend, sink, 0.92 * np.pi * (die - 0.2) ** 2, np.pi * shank**2


def _lengths(sizes, measures):
    """Guess draw-down, depth of the button and set length from the volumes in rough figures."""
    bend, _, button, shank = _areas(sizes)
    head = np.pi / 4 * sizes["head_diameter_mm"] ** 2
    extra = (head - shank) * 0.095 * sizes["shank_diameter_mm"]
    slug = measures["slug_share"] * np.pi / 4 * sizes["bore_diameter_mm"] ** 2 * sizes["top_plate_mm"]
    closed = 0.8 * sizes["gap_mm"] * np.pi / 4 * sizes["die_diameter_mm"] ** 2
    flush = measures["head_flushness_mm"]
    pressed = shank * sizes["top_plate_mm"] + extra - (head - shank) * flush - slug
    to_tail = (
        sizes["top_plate_mm"]
        + sizes["gap_mm"]
        + sizes["second_plate_mm"]
        - measures["remaining_thickness_mm"]
    )
    depth = (extra - slug - closed - head * flush + shank * (to_tail + flush)) / (button - shank)
    depth = (depth - _GUESS_LOW * sizes["shank_diameter_mm"]) * (1 + _TIP_DEEPER * measures["tip"])
    return 1.05 * pressed / bend, depth, to_tail + depth + flush


def _first_guess(sizes, measures):
    """Choose a rivet length, suit the second plate to it by tenths, and guess what the trial corrects."""
    _, _, button, shank = _areas(sizes)
    _, _, set_length = _lengths(sizes, measures)
    interlock = (measures["interlock_left_mm"] + measures["interlock_right_mm"]) / 2
    shortening = sizes["unspread"] - sizes["by_flare"] * interlock
    rivet_length = np.round(2 * set_length / shortening) / 2
    missing = (shortening * rivet_length - set_length) * (1 - shank / button)
    sizes["second_plate_mm"] = np.round(sizes["second_plate_mm"] + missing, 1)
    draw_down, depth, set_length = _lengths(sizes, measures)
    return {
        "draw_down_mm": np.clip(draw_down, 0.2, 0.8 * sizes["second_plate_mm"]),
        "set_length_mm": set_length,
        "rivet_length_mm": rivet_length,
        "die_depth_mm": depth + 0.2,
    }


def _columns(sizes, measures, guess):
    """Return all parameters as columns, as ``SectionParameters.columns`` gives them."""
    tilt = measures["tilt"]
    columns = {
        name: values for name, values in (sizes | measures).items() if name.endswith(("_mm", "_share"))
    }
    columns |= {name: values for name, values in guess.items() if name != "set_length_mm"}
    columns["set_length_left_mm"] = guess["set_length_mm"] - np.maximum(tilt, 0)
    columns["set_length_right_mm"] = guess["set_length_mm"] + np.minimum(tilt, 0)
    columns["die_tip_mm"] = measures["tip"] * columns["die_depth_mm"]
    columns["hump_mm"] = np.round(0.1 + 0.4 * columns["die_tip_mm"], 3)
    return {name: np.round(values, 3) for name, values in columns.items()}


def _second_guess(sizes, measures, guess, faults, fill):
    """Correct the guess by one trial, and choose a die with room for the button."""
    bend, sink, button, shank = _areas(sizes)
    trial = _trial(_columns(sizes, measures, guess))
    longer = (trial["remaining"] - measures["remaining_thickness_mm"]) / (1 - shank / button)
    set_length = guess["set_length_mm"] + longer
    draw_down = guess["draw_down_mm"] + trial["sinking"] * sink / bend + measures["bend"]
    # A slug that does not fit under the web is made smaller; the metal goes into the bend of the plate.
    too_high = 1.1 * np.maximum(trial["slug_over"] + 0.15 - 1.7 * longer, 0)
    bore = np.pi / 4 * sizes["bore_diameter_mm"] ** 2
    smaller = np.minimum(too_high / sizes["top_plate_mm"], measures["slug_share"] - 0.75)
    measures["slug_share"] = measures["slug_share"] - smaller
    draw_down = draw_down + smaller * bore * sizes["top_plate_mm"] / bend
    # The plate is never drawn down so far that the tail has no room left to spread in the second plate.
    leg = set_length - 0.205 * sizes["shank_diameter_mm"]
    deepest = 0.62 * leg + 0.205 * sizes["shank_diameter_mm"] - measures["head_flushness_mm"]
    draw_down = np.clip(draw_down, 0.15, deepest - sizes["top_plate_mm"])
    depth = trial["depth"] + longer * shank / button
    room = np.where(_is(faults, "wrong die"), depth / 0.62, depth + 0.1 + fill)
    return {
        "draw_down_mm": draw_down,
        "set_length_mm": set_length,
        "rivet_length_mm": guess["rivet_length_mm"],
        "die_depth_mm": np.ceil(room * 20) / 20,
    }


def _trial(columns):
    """Shape the guessed joints, a block at a time, and return what is wrong with them."""
    found = {"sinking": [], "remaining": [], "depth": [], "slug_over": []}
    for first in range(0, len(columns["web_mm"]), _BLOCK):
        joint = shape({name: column[first : first + _BLOCK] for name, column in columns.items()})
        under, floor = joint.under[1], joint.floor[1]
        found["sinking"].append(joint.sinking)
        found["slug_over"].append(joint.slug_top)
        found["remaining"].append((under - floor[..., : under.shape[-1]]).min(axis=(1, 2)))
        found["depth"].append(floor[:, 0, -1] - floor.min(axis=(1, 2)))
    return {name: np.concatenate(values) for name, values in found.items()}


def _faults(draws, faults):
    """Return the fault of each joint, drawn where none is given."""
    if faults is None:
        drawn = draws.pick("fault", [name for name in FAULT_NAMES if name != SOUND])
        return np.where(draws.share("any fault") < 0.5, SOUND, drawn)
    listed = [faults] * len(draws) if isinstance(faults, str) else list(faults)
    if len(listed) != len(draws):
        message = f"faults must be as many as the seeds, {len(draws)}, got {len(listed)}"
        raise ValueError(message)
    return np.array([require_choice("fault", name, FAULT_NAMES) for name in listed])


def _draw(draws, faults):
    """Draw the parameters of joints as columns."""
    sizes, measures = _draw_sizes(draws, faults), _draw_measures(draws, faults)
    first = _first_guess(sizes, measures)
    guess = _second_guess(sizes, measures, first, faults, draws.between("fill", 0, 0.2))
    return _columns(sizes, measures, guess)


def _build(draws, faults):
    """Draw and build joints; the few that cannot be are drawn again, each from its own seed."""
    columns = _draw(draws, faults)
    outlines, constructed, possible = build_columns(columns, required=False)
    # The bottom is known only after the balance: a thin one stays thin, and no other is.
    possible &= (constructed["remaining_thickness_mm"] < _THIN_MM) == _is(faults, "thin bottom")
    if not possible.all():
        again = np.flatnonzero(~possible)
        fresh = _build(draws.again(again), faults[again])
        for known, new in zip((columns, outlines, constructed), fresh, strict=True):
            for name in known:
                known[name][again] = new[name]
    return columns, outlines, constructed


def random_sections(seeds, *, faults=None):
    """Invent a column of set joints, one a seed.

    Parameters
    ----------
    seeds : sequence of bytes
        One seed a joint, 1 to 64 bytes each [-]
    faults : str or sequence of str or None
        A name of ``FAULT_NAMES`` for all or one a seed; None draws half of the joints sound [-]

    Returns
    -------
    sections : Section
        A column of sections [-]
    faults : numpy.ndarray
        Name of the fault of each joint [-]

    Raises
    ------
    ValueError
        If a seed is no bytes, a fault is not in the list or their number is another than that of the seeds.

    Notes
    -----
    Bands of the draws: own_judgement.

    Examples
    --------
    >>> sections, faults = random_sections([b"first", b"second"])
    >>> len(sections.outlines["rivet"])
    2
    """
    draws = Uniforms(seeds)
    names = _faults(draws, faults)
    columns, outlines, constructed = _build(draws, names)
    section = Section(
        outlines=open_parts(outlines), parameters=parameters_of(columns), constructed=constructed
    )
    return section, names


def random_section(seed, *, fault=None):
    """Invent one set joint.

    Parameters
    ----------
    seed : bytes
        1 to 64 bytes; the same seed gives the same joint on every machine [-]
    fault : str or None
        One of ``FAULT_NAMES``; None draws [-]

    Returns
    -------
    section : Section
        The section [-]
    fault : str
        Name of its fault [-]

    Raises
    ------
    ValueError
        If the seed is no bytes or the fault is not in the list.

    Notes
    -----
    Bands of the draws: own_judgement.

    Examples
    --------
    >>> section, fault = random_section(b"a seed", fault="uneven flare")
    >>> section.constructed["interlock_left_mm"] != section.constructed["interlock_right_mm"]
    True
    """
    sections, faults = random_sections([seed], faults=fault)
    return sections.one(0), str(faults[0])
