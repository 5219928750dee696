"""What a pull on the rivet head has to overcome, beside what the stud carries."""

from drawings.marks import area, bare_axes, box, dot, line, number, write
from drawings.picture import picture_of
from drawings.scales import steps
from drawings.style import (
    AMBER,
    GREY,
    MID_GREY,
    MID_SLATE,
    PALE_SLATE,
    SLATE,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.checks import require_above

WIDTH_IN, HEIGHT_IN = 9.2, 3.1
LEFT_IN, RIGHT_IN = 3.1, 8.8
FLOOR_IN, ROW_IN, BAR_IN = 0.85, 0.55, 0.26


def pull_out_chart(pull, *, stud_n=None):
    """Draw the bands of a pull: first peak, friction in it, second peak; and the breaking load of a stud.

    Parameters
    ----------
    pull : secondplate.tail_pull_out.TailPullOut
        What it takes to draw one rivet out, no columns [-]
    stud_n : float or None
        Breaking load of the stud, above 0; None draws none [N]

    Returns
    -------
    picture : Picture
        One bar a band, its best value as a dot [-]

    Raises
    ------
    ValueError
        If the load of the stud is not above 0.

    Notes
    -----
    Bands from ``secondplate.tail_pull_out``: mechanics that nobody has tried on this pull.

    Examples
    --------
    >>> from secondplate.rivet import Rivet
    >>> from secondplate.tail_pull_out import tail_pull_out
    >>> pull = tail_pull_out(Rivet(rivet_length_mm=5.0), interlock_mm=0.4, penetration_mm=1.6,
    ...                      second_tensile_strength_mpa=215, top_proof_stress_mpa=100)
    >>> "first peak 2.2 to 4.8 kN" in pull_out_chart(pull).alt
    True
    """
    rows = (
        ("first peak", "tail leaves its cup", pull.first_peak_n, MID_SLATE),
        ("of it friction", "grip of the plates", pull.friction_n, PALE_SLATE),
        ("second peak", "tail opens the top plate", pull.second_peak_n, MID_SLATE),
    )
    if stud_n is not None:
        require_above("breaking load of the stud", stud_n, 0, unit="N")
    end = 1.08 * max([band.high for *_, band, _ in rows] + [stud_n or 0.0]) / 1000
    top = FLOOR_IN + ROW_IN * len(rows)

    def place(kilonewtons):
        return LEFT_IN + kilonewtons / end * (RIGHT_IN - LEFT_IN)

    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = bare_axes(figure, width=(0, WIDTH_IN), height=(0, HEIGHT_IN))
        for mark in steps(end):
            line(axes, [(place(mark), FLOOR_IN), (place(mark), top)], colour=MID_GREY, width=THIN, order=1)
            write(axes, place(mark), FLOOR_IN - 0.19, number(mark))
        line(axes, [(LEFT_IN, FLOOR_IN), (RIGHT_IN, FLOOR_IN)], colour=GREY, width=THIN)
        write(axes, (LEFT_IN + RIGHT_IN) / 2, FLOOR_IN - 0.48, "force in kN, nobody has measured it")
        for count, (name, what, band, fill) in enumerate(rows):
            y = top - ROW_IN * (count + 0.5)
            write(axes, LEFT_IN - 0.2, y + 0.11, name, across="right", weight="bold")
            write(axes, LEFT_IN - 0.2, y - 0.12, what, across="right", colour=TEXT_GREY)
            low, high = place(band.low / 1000), place(band.high / 1000)
            area(
                axes,
                box(low, y - BAR_IN / 2, max(high - low, 0.02), BAR_IN),
                fill=fill,
                edge=SLATE,
                width=THIN,
            )
            dot(axes, place(band.best / 1000), y, colour=SLATE, size=7)
        if stud_n is not None:
            _draw_stud(axes, place(stud_n / 1000), top, f"stud breaks at {stud_n / 1000:.1f} kN")
        return picture_of(figure, _words(rows, stud_n))


def _draw_stud(axes, x, top, text):
    """Draw the load of the stud as a line through all bars."""
    line(axes, [(x, FLOOR_IN), (x, top + 0.12)], colour=AMBER, width=1.8, dashes=(6, 3), order=6)
    across = "right" if x > (LEFT_IN + RIGHT_IN) / 2 else "left"
    write(axes, x, top + 0.32, text, colour=TEXT_AMBER, weight="bold", across=across)


def _words(rows, stud_n):
    """Tell the bars in sentences."""
    told = "; ".join(
        f"{name} {band.low / 1000:.1f} to {band.high / 1000:.1f} kN, best {band.best / 1000:.1f} kN"
        for name, _, band, _ in rows
    )
    stud = "" if stud_n is None else f" The stud breaks at {stud_n / 1000:.1f} kN."
    return f"What a pull on the rivet head has to overcome, as bands that nobody has measured: {told}.{stud}"
