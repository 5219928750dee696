"""What a test pull leaves: the stud from the side, the joint from above, the faces where a weld parted."""

import numpy as np

from drawings.marks import area, bare_axes, box, dot, line, number, oval, write
from drawings.picture import picture_of
from drawings.style import (
    AMBER,
    GREY,
    LINE,
    MID_GREY,
    MID_SLATE,
    PALE_AMBER,
    PALE_GREY,
    PAPER,
    SLATE,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.bench import FACES, GAVE
from secondplate.checks import require_choice

WIDTH_IN, HEIGHT_IN = 7.6, 4.6
ACROSS_MM = 30.0
HIGH_MM = ACROSS_MM * HEIGHT_IN / WIDTH_IN
STUD_AT, HEAD_AT = (7.0, 11.2), (21.4, 8.1)
FACE_AT = (7.0, 5.6)
PLATE_MM = 6.6
STUD_MM, FLANGE_MM, COLLAR_MM = 4.2, 0.9, 0.8
WEB_MM, SHANK_OUT_MM, LENGTH_MM = 1.1, 1.2, 5.2
SLOPE = "#e6c193"
CIRCLE = np.radians(np.linspace(0, 360, 61))
# Heights of a torn edge, one after the other along it.
TORN = 0.28 * np.array([0, 1, -0.4, 0.8, -1, 0.3, -0.7, 0.9, -0.2, 0.6, -0.9, 0.2])
WORDS_OF_FACE = {
    "flat and grey": "flat, grey and dull, joined over a small patch only",
    "pores": "full of round holes",
    "one-sided": "torn and rough on one side, smooth and never joined on the other",
    "bright crystals": "bright and grainy, with small flat facets that shine",
    "": "rough",
}


def pulled_stud(pull, outcome, settings, job):
    """Draw what a test pull leaves, for the learner to read.

    Parameters
    ----------
    pull : secondplate.bench.PullOutcome
        What the pull of one weld gave [-]
    outcome : secondplate.bench.WeldOutcome
        The weld that was pulled [-]
    settings : secondplate.bench.WeldSettings
        What was set for it [-]
    job : secondplate.bench.WeldJob
        Rivet and machine [-]

    Returns
    -------
    picture : Picture
        Stud from the side, head or hole from above, and the end of the stud where the weld parted [-]

    Raises
    ------
    ValueError
        If what gave or the face is not known to the bench.

    Notes
    -----
    Diameters and the joined part of the face are those of the bench; lengths and textures are drawn.

    Examples
    --------
    >>> from secondplate.bench import chart_settings, draw_job, test_pull, weld
    >>> job, settings = draw_job(b"a day", machine="weak"), chart_settings(stud_diameter_mm=6)
    >>> outcome = weld(settings, job, seed=b"a day", number=1)
    >>> "grey" in pulled_stud(test_pull(outcome, settings, job), outcome, settings, job).alt
    True
    """
    require_choice("what gave", pull.gave, GAVE)
    require_choice("face", pull.face, FACES)
    sizes = {
        "stud": settings.stud_diameter_mm / 2,
        "flange": float(settings.flange_diameter_mm) / 2,
        "head": job.head_diameter_mm / 2,
        "shank": job.head_diameter_mm / 2 - SHANK_OUT_MM,
    }
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = bare_axes(figure, width=(0, ACROSS_MM), height=(0, HIGH_MM))
        area(axes, _round(HEAD_AT, PLATE_MM), fill=PALE_GREY, order=1)
        _DRAW[pull.gave](axes, sizes)
        broke = pull.gave == "weld broke"
        for at, mirrored in ((FACE_AT, True), (HEAD_AT, False)) if broke else ():
            _draw_face(axes, at, sizes["flange"], pull.face, outcome.fused_share, mirrored=mirrored)
        force = f"let go at {number(pull.force_n, digits=0)} N"
        write(axes, ACROSS_MM / 2, HIGH_MM - 0.75, force, colour=TEXT_AMBER, weight="bold")
        name = "the stud; under it its end" if broke else "the stud, from the side"
        write(axes, STUD_AT[0], 0.7, name, colour=TEXT_GREY)
        write(axes, HEAD_AT[0], 0.7, "the joint, from above", colour=TEXT_GREY)
        return picture_of(figure, _words(pull, outcome))


def _words(pull, outcome):
    """Tell both parts in sentences."""
    share = number(100 * outcome.fused_share, digits=0)
    told = {
        "rivet drawn out": "The stud holds the whole rivet: head, shank and flared tail hang on it. "
        "In the plates an open round hole is left.",
        "stud broke": "The stud parted in its thread, drawn thin before it tore. "
        "Collar, flange and a torn stub stay on the rivet head.",
        "weld broke": "The stud came away by itself; the rivet sits in the plates as before. "
        f"The end of the stud and the rivet head are {WORDS_OF_FACE[pull.face]}; "
        f"the joined part is {share} % of the flange face.",
        "head tore": "The stud holds a torn disc of the rivet head. "
        "The ring of the head and the shank stay in the plates, with a hole where the disc was.",
    }[pull.gave]
    return f"Test pull, let go at {number(pull.force_n, digits=0)} N. {told}"


def _round(at, radius, ragged=0.0):
    """Return a circle about a place; a ragged one wavers like a torn edge."""
    waves = ragged * (np.cos(7 * CIRCLE + 1) + 0.7 * np.cos(13 * CIRCLE + 2) + 0.5 * np.cos(19 * CIRCLE))
    return np.column_stack(
        [at[0] + (radius + waves) * np.cos(CIRCLE), at[1] + (radius + waves) * np.sin(CIRCLE)]
    )


def _edge(left, right, level):
    """Return a torn edge from left to right."""
    return np.column_stack([np.linspace(left, right, len(TORN)), level + TORN])


def _draw_shank(axes, sizes, low, high, *, order=6):
    """Draw the stud's thread between two heights."""
    x, radius = STUD_AT[0], sizes["stud"]
    area(axes, box(x - radius, low, 2 * radius, high - low), fill=PAPER, edge=SLATE, width=LINE, order=order)
    for level in np.arange(low + 0.6, high - 0.2, 0.7):
        line(axes, [(x - radius, level), (x + radius, level - 0.25)], colour=MID_GREY, width=1.2, order=order)


def _draw_flange(axes, sizes, level, *, collar=True):
    """Draw the flange standing on a level, with the collar round it."""
    x, flange = STUD_AT[0], sizes["flange"]
    area(axes, box(x - flange, level, 2 * flange, FLANGE_MM), fill=PAPER, edge=SLATE, width=LINE, order=6)
    if collar:
        out = flange + 0.9
        half = [(out, level), (flange, level + COLLAR_MM)]
        bead = [(x - a, b) for a, b in half] + [(x + a, b) for a, b in reversed(half)]
        area(axes, bead, fill=SLOPE, edge=AMBER, width=LINE, order=7)
        lit = [(x - flange, level + 0.45), (x, level + 0.45)]
        line(axes, lit, colour=PAPER, width=3.0, order=7.1)


def _draw_stud(axes, sizes, *, collar=True):
    """Draw the whole stud over the level on which its flange stands."""
    _draw_shank(axes, sizes, STUD_AT[1] + FLANGE_MM, STUD_AT[1] + FLANGE_MM + STUD_MM)
    _draw_flange(axes, sizes, STUD_AT[1], collar=collar)


def _draw_head_above(axes, sizes, *, fill=MID_SLATE):
    """Draw the rivet head in the plate from above."""
    area(axes, _round(HEAD_AT, sizes["head"]), fill=fill, edge=SLATE, width=LINE, order=2)


def _draw_drawn_out(axes, sizes):
    """Draw the rivet on the stud, and the hole that it left."""
    _draw_stud(axes, sizes)
    x, y = STUD_AT
    head, shank = sizes["head"], sizes["shank"]
    half = [
        (head, 0.0),
        (head - 0.2, -0.4),
        (shank + 0.2, -WEB_MM),
        (shank, -WEB_MM - 0.7),
        (shank, -LENGTH_MM + 1.6),
        (shank + 0.8, -LENGTH_MM),
        (shank + 0.2, -LENGTH_MM),
    ]
    outline = [(x + a, y + b) for a, b in half] + [(x - a, y + b) for a, b in reversed(half)]
    area(axes, outline, fill=MID_SLATE, edge=SLATE, width=LINE, order=5)
    line(axes, [(x - shank * 0.5, y - 2.0), (x - shank * 0.5, y - LENGTH_MM + 1.2)], colour=PAPER, width=3.0)
    area(axes, _round(HEAD_AT, head, 0.05), fill=PAPER, edge=GREY, width=LINE, order=2)
    area(axes, _round(HEAD_AT, shank + 0.4, 0.06), fill=MID_GREY, edge=SLATE, width=LINE, order=3)
    area(axes, _round(HEAD_AT, shank - 0.7, 0.08), fill=SLATE, order=4)


def _draw_stud_broke(axes, sizes):
    """Draw the drawn-out end of the stud, and its stub on the head."""
    x, low = STUD_AT[0], STUD_AT[1] - 0.6
    radius = sizes["stud"]
    neck = 0.62 * radius
    _draw_shank(axes, sizes, low + 1.2, STUD_AT[1] + FLANGE_MM + STUD_MM)
    torn = _edge(x - neck, x + neck, low)
    cup = np.vstack([[(x - radius, low + 1.2)], torn, [(x + radius, low + 1.2)]])
    area(axes, cup, fill=MID_GREY, edge=SLATE, width=LINE, order=6)
    _draw_head_above(axes, sizes)
    area(axes, _round(HEAD_AT, sizes["flange"] + 0.9, 0.03), fill=SLOPE, edge=AMBER, width=LINE, order=3)
    area(axes, _round(HEAD_AT, sizes["flange"]), fill=PAPER, edge=SLATE, width=LINE, order=4)
    area(axes, _round(HEAD_AT, radius), fill=PAPER, edge=SLATE, width=LINE, order=5)
    area(axes, _round(HEAD_AT, neck, 0.07), fill=MID_GREY, edge=SLATE, width=LINE, order=6)
    _draw_grains(axes, HEAD_AT, neck * 0.85)


def _draw_weld_broke(axes, sizes):
    """Draw both faces of a weld that parted: the end of the stud from below, the head from above."""
    _draw_stud(axes, sizes, collar=False)
    _draw_head_above(axes, sizes)
    area(axes, _round(FACE_AT, sizes["flange"]), fill=PAPER, edge=SLATE, width=LINE, order=3)


def _draw_head_tore(axes, sizes):
    """Draw the torn disc of the head on the stud, and the hole in the head."""
    _draw_stud(axes, sizes)
    x, y = STUD_AT
    shank = sizes["shank"]
    head = min(sizes["flange"] + 0.5, sizes["head"])
    torn = _edge(x - shank, x + shank, y - WEB_MM)
    left, right = [(x - head, y), (x - head + 0.2, y - 0.35)], [(x + head - 0.2, y - 0.35), (x + head, y)]
    disc = np.vstack([left, torn, right])
    area(axes, disc, fill=MID_SLATE, edge=SLATE, width=LINE, order=5)
    _draw_head_above(axes, sizes)
    area(axes, _round(HEAD_AT, shank, 0.12), fill=MID_GREY, edge=SLATE, width=LINE, order=3)
    area(axes, _round(HEAD_AT, shank - 0.55, 0.1), fill=SLATE, order=4)


def _draw_face(axes, at, flange, face, share, *, mirrored):
    """Draw the joined part of a face, as large as the bench computed it."""
    joined = flange * np.sqrt(max(share, 0.02))
    if face == "one-sided":
        _draw_one_side(axes, at, flange, share, mirrored=mirrored)
        return
    fill = {"flat and grey": MID_GREY, "bright crystals": PAPER, "pores": PALE_AMBER}.get(face, MID_GREY)
    area(axes, _round(at, flange * 0.97), fill=PALE_GREY, edge=GREY, width=THIN, order=3.5)
    if face == "pores":
        # Holes reach over the whole face; what is joined lies between them.
        joined = flange * 0.93
    area(axes, _round(at, joined, 0.04), fill=fill, edge=GREY, width=LINE, order=4)
    if face == "pores":
        _draw_pores(axes, at, joined)
    elif face == "bright crystals":
        _draw_crystals(axes, at, joined, mirrored=mirrored)
    else:
        _draw_grains(axes, at, joined * 0.85)


def _sunflower(count, radius):
    """Return evenly scattered places in a circle about nothing."""
    steps = np.arange(count)
    out, turn = radius * np.sqrt((steps + 0.5) / count), steps * np.pi * (3 - np.sqrt(5))
    return np.column_stack([out * np.cos(turn), out * np.sin(turn)])


def _draw_grains(axes, at, radius):
    """Stipple a dull face."""
    for x, y in _sunflower(26, radius):
        dot(axes, at[0] + x, at[1] + y, size=2.2, edge="none", order=8)


def _draw_pores(axes, at, radius):
    """Draw round holes of several sizes."""
    for index, (x, y) in enumerate(_sunflower(17, radius * 0.86)):
        size = (0.95, 0.55, 0.75, 0.4)[index % 4] * radius / 3.5
        oval(axes, at[0] + x, at[1] + y, size, size, fill=SLATE, edge=PAPER, edge_width=THIN, order=8)


def _draw_crystals(axes, at, radius, *, mirrored):
    """Draw facets that lie all ways: white, pale and dark ones side by side."""
    size = 0.3 * radius
    for index, (x, y) in enumerate(_sunflower(30, radius * 0.78)):
        corners = 3 + index % 3
        turns = index * 1.3 + 2 * np.pi * np.arange(corners) / corners
        side = -1 if mirrored else 1
        points = np.column_stack(
            [at[0] + side * (x + size * np.cos(turns)), at[1] + y + size * np.sin(turns)]
        )
        fill = (PAPER, MID_SLATE, PAPER, MID_GREY, SLATE)[index % 5]
        area(axes, points, fill=fill, edge=GREY, width=THIN, order=8)


def _draw_one_side(axes, at, flange, share, *, mirrored):
    """Draw the torn part on one side, and on the other the smooth face that never joined."""
    side = 1 if mirrored else -1
    area(axes, _round(at, flange * 0.97), fill=PALE_GREY, edge=GREY, width=THIN, order=3.5)
    for radius in (0.45, 0.7):
        turns = np.radians(np.linspace(-65, 65, 15))
        arc = [
            (at[0] - side * flange * radius * np.cos(t), at[1] + flange * radius * np.sin(t)) for t in turns
        ]
        line(axes, arc, colour=GREY, width=THIN, order=4)
    # The chord that cuts off this share of the circle, by the middle of the share: near enough for the eye.
    cut = flange * (1 - 2 * np.clip(share, 0.05, 0.95)) * 0.8
    half = np.sqrt(flange**2 - cut**2) * 0.97
    bend = np.arctan2(half, cut)
    turns = np.linspace(-bend, bend, 30)
    arc = np.column_stack(
        [at[0] + side * flange * 0.97 * np.cos(turns), at[1] + flange * 0.97 * np.sin(turns)]
    )
    levels = np.linspace(half, -half, len(TORN))
    torn = np.column_stack([at[0] + side * (cut + TORN), at[1] + levels])
    area(axes, np.vstack([arc, torn]), fill=MID_GREY, edge=SLATE, width=LINE, order=5)
    for x, y in _sunflower(40, flange * 0.86):
        if side * x > cut + 0.45:
            dot(axes, at[0] + x, at[1] + y, size=2.2, edge="none", order=8)


_DRAW = {
    "rivet drawn out": _draw_drawn_out,
    "stud broke": _draw_stud_broke,
    "weld broke": _draw_weld_broke,
    "head tore": _draw_head_tore,
}
