"""How gun, work and source are joined: poles, two earth clamps to both sides, and arc blow with only one."""

from drawings.marks import area, arrow, bare_axes, box, line, oval, section, write
from drawings.picture import picture_of
from drawings.style import (
    AMBER,
    ARC_GLOW,
    BOLD,
    GREY,
    HEADING_PT,
    LINE,
    MID_GREY,
    MID_SLATE,
    PALE_GREY,
    PALE_SLATE,
    PAPER,
    SLATE,
    TEXT_AMBER,
    TEXT_GREY,
    sheet_of_paper,
)
from secondplate.checks import require_choice

WIDTH_IN, HEIGHT_IN = 8.6, 4.7
POLARITIES = ("stud negative", "stud positive")
WELD_X = 4.3
PLATE_Y = 1.05
CLAMPS_X = (1.5, 7.1)


def polarity(*, stud="stud negative", clamps=2):
    """Draw power source, gun and earth clamps with their poles.

    Parameters
    ----------
    stud : str
        ``stud negative``, the general rule for steel and stainless studs, or ``stud positive`` [-]
    clamps : int
        2 for clamps to both sides of the weld, 1 for a single clamp and arc blow [-]

    Returns
    -------
    picture : Picture
        The sketch [-]

    Raises
    ------
    ValueError
        If the polarity is unknown or the number of clamps is neither 1 nor 2.

    Notes
    -----
    Polarity rules with their sources: ``secondplate.stud_weld.polarity``. The arc is pushed away from a
    single clamp because the current, down the stud and sideways to the clamp, pushes its own bend outwards.

    Examples
    --------
    >>> "gun is negative" in polarity().alt
    True
    """
    require_choice("polarity", stud, POLARITIES)
    if isinstance(clamps, bool) or clamps not in (1, 2):
        message = f"earth clamps must be 1 or 2, got {clamps!r}"
        raise ValueError(message)
    negative = stud == "stud negative"
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = bare_axes(figure, width=(0, WIDTH_IN), height=(0, HEIGHT_IN))
        _draw_source(axes, negative, clamps)
        _draw_work(axes)
        _draw_gun(axes, negative, clamps)
        for x in CLAMPS_X[:clamps]:
            _draw_clamp(axes, x, negative)
        _name_all(axes, negative, clamps)
        return picture_of(figure, _words(negative, clamps))


def _words(negative, clamps):
    """Tell the sketch in sentences."""
    gun, work = ("negative", "positive") if negative else ("positive", "negative")
    told = f"Connection of a stud-welding gun: the gun is {gun}, the work is {work}. "
    if clamps == 2:
        return told + (
            "Two earth clamps sit on the plate at equal distance to both sides of the weld, "
            "so the arc burns straight down."
        )
    return told + (
        "Only one earth clamp sits on the plate, at the left; "
        "the arc is pushed away from it, to the right (arc blow)."
    )


def _signs(negative):
    """Return the sign of the gun and of the work."""
    minus, plus = "\N{MINUS SIGN}", "+"
    return (minus, plus) if negative else (plus, minus)


def _pole(axes, x, y, sign):
    """Draw one pole: a round socket with its sign."""
    oval(axes, x, y, 0.36, 0.36, fill=PAPER, edge=SLATE, edge_width=LINE, order=8)
    write(axes, x, y - 0.005, sign, size=HEADING_PT + 2, weight="bold")


def _draw_source(axes, negative, clamps):
    """Draw the power source with the poles in use."""
    section(axes, box(3.2, 3.55, 2.2, 0.98), fill=PALE_SLATE)
    write(axes, WELD_X, 4.28, "power source", weight="bold")
    gun, work = _signs(negative)
    _pole(axes, WELD_X, 3.85, gun)
    for x in (3.5, 5.1)[:clamps]:
        _pole(axes, x, 3.85, work)


def _draw_work(axes):
    """Draw the plates with the rivet in the middle."""
    section(axes, box(0.5, PLATE_Y - 0.2, 7.6, 0.2), fill=PALE_GREY)
    section(axes, box(0.5, PLATE_Y - 0.4, 7.6, 0.2), fill=PALE_GREY)
    head = [
        (WELD_X - 0.42, PLATE_Y),
        (WELD_X + 0.42, PLATE_Y),
        (WELD_X + 0.28, PLATE_Y - 0.14),
        (WELD_X + 0.33, PLATE_Y - 0.36),
        (WELD_X - 0.33, PLATE_Y - 0.36),
        (WELD_X - 0.28, PLATE_Y - 0.14),
    ]
    section(axes, head, fill=MID_SLATE, hatch="////", order=4)


def _draw_gun(axes, negative, clamps):
    """Draw cable, gun, stud and the arc: straight, or blown away from the only clamp."""
    line(axes, [(WELD_X, 3.66), (WELD_X, 2.75)], width=BOLD + 1, order=4)
    section(axes, box(WELD_X - 0.3, 2.0, 0.6, 0.78), fill=MID_GREY, order=5)
    section(axes, box(WELD_X - 0.16, 1.5, 0.32, 0.5), fill=PAPER, order=5)
    section(axes, box(WELD_X - 0.21, 1.36, 0.42, 0.14), fill=PAPER, order=5)
    blown = 0.34 if clamps == 1 else 0.0
    glow = [
        (WELD_X - 0.17 + 0.25 * blown, 1.36),
        (WELD_X + 0.19, 1.36),
        (WELD_X + 0.19 + blown, PLATE_Y),
        (WELD_X - 0.19 + blown, PLATE_Y),
    ]
    area(axes, glow, fill=ARC_GLOW, edge=AMBER, width=LINE, order=4.5)


def _draw_clamp(axes, x, negative):
    """Draw one earth clamp on the plate with its cable up to the source, and the current in the plate."""
    inner = 3.5 if x < WELD_X else 5.1
    line(
        axes,
        [(inner, 3.66), (inner, 3.1), (x, 3.1), (x, PLATE_Y + 0.42)],
        colour=GREY,
        width=BOLD + 1,
        order=2,
    )
    jaw = [(x - 0.16, PLATE_Y + 0.45), (x + 0.16, PLATE_Y + 0.45), (x + 0.22, PLATE_Y), (x - 0.22, PLATE_Y)]
    section(axes, jaw, fill=MID_GREY, order=5)
    inward = 1 if x < WELD_X else -1
    flow = [(x + inward * 0.1, PLATE_Y - 0.62), (WELD_X - inward * 0.65, PLATE_Y - 0.62)]
    # The current runs from plus to minus: to the weld where the gun is negative.
    arrow(axes, *(flow if negative else flow[::-1]), colour=AMBER, width=1.6)


def _name_all(axes, negative, clamps):
    """Name the parts and the poles where they are."""
    gun, work = _signs(negative)
    write(axes, WELD_X + 0.45, 2.4, f"gun {gun}", across="left", weight="bold", size=HEADING_PT)
    write(axes, WELD_X + 0.3, 1.72, "stud", across="left")
    write(axes, CLAMPS_X[0] + 0.35, 1.72, f"earth clamp {work}", across="left", weight="bold")
    if clamps == 2:
        write(axes, CLAMPS_X[1] - 0.35, 1.72, f"earth clamp {work}", across="right", weight="bold")
        write(axes, WELD_X, 0.2, "same distance to both sides: the arc burns straight", colour=TEXT_GREY)
    else:
        write(
            axes,
            WELD_X + 0.85,
            1.3,
            "arc blown away\nfrom the clamp",
            across="left",
            colour=TEXT_AMBER,
            weight="bold",
        )
        write(axes, WELD_X, 0.2, "all current on one side", colour=TEXT_AMBER)
