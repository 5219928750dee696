"""What each link of a pull bears, beside the force that draws the rivet."""

from drawings.marks import area, bare_axes, box, dot, line, number, write
from drawings.picture import picture_of
from drawings.scales import steps
from drawings.style import (
    AMBER,
    GREY,
    MID_GREY,
    MID_SLATE,
    PALE_AMBER,
    SLATE,
    TEXT_AMBER,
    THIN,
    sheet_of_paper,
)

WIDTH_IN = 9.2
LEFT_IN, RIGHT_IN = 2.3, 8.8
FLOOR_IN, ROW_IN, BAR_IN, ROOF_IN = 0.85, 0.5, 0.26, 0.5


def chain_chart(chain):
    """Draw the links of a pull as bands of what they bear, over the band of the force that is needed.

    Parameters
    ----------
    chain : secondplate.pull_chain.LoadChain
        Links and needed force, no columns [-]

    Returns
    -------
    picture : Picture
        One bar a link; the needed force as a band right through [-]

    Notes
    -----
    Bands from the chain itself; where a bar and the band meet, nothing is decided.

    Examples
    --------
    >>> from secondplate.bands import Band
    >>> from secondplate.pull_chain import LoadChain
    >>> chain = LoadChain(links_n={"stud": Band(low=9000, best=10000, high=11000, basis="example")},
    ...                   needed_n=Band(low=2500, best=4000, high=5500, basis="example"))
    >>> "the rivet needs 2.5 to 5.5 kN" in chain_chart(chain).alt
    True
    """
    links, needed = chain.links_n, chain.needed_n
    end = 1.08 * max(band.high for band in (*links.values(), needed)) / 1000
    top = FLOOR_IN + ROW_IN * len(links)

    def place(newtons):
        return LEFT_IN + newtons / 1000 / end * (RIGHT_IN - LEFT_IN)

    height = top + ROOF_IN
    with sheet_of_paper(width_in=WIDTH_IN, height_in=height) as figure:
        axes = bare_axes(figure, width=(0, WIDTH_IN), height=(0, height))
        _draw_needed(axes, needed, place, top)
        for mark in steps(end):
            write(axes, place(1000 * mark), FLOOR_IN - 0.19, number(mark))
        line(axes, [(LEFT_IN, FLOOR_IN), (RIGHT_IN, FLOOR_IN)], colour=GREY, width=THIN)
        write(axes, (LEFT_IN + RIGHT_IN) / 2, FLOOR_IN - 0.48, "force in kN")
        for count, (name, band) in enumerate(links.items()):
            y = top - ROW_IN * (count + 0.5)
            write(axes, LEFT_IN - 0.2, y, name, across="right", weight="bold")
            bar = box(place(band.low), y - BAR_IN / 2, place(band.high) - place(band.low), BAR_IN)
            area(axes, bar, fill=MID_SLATE, edge=SLATE, width=THIN)
            dot(axes, place(band.best), y, size=7)
            line(axes, [(LEFT_IN, y - ROW_IN / 2), (RIGHT_IN, y - ROW_IN / 2)], colour=MID_GREY, width=THIN)
        return picture_of(figure, _words(chain))


def _draw_needed(axes, needed, place, top):
    """Draw the band of the needed force behind all bars, and name it."""
    left, right = place(needed.low), place(needed.high)
    area(axes, box(left, FLOOR_IN, right - left, top - FLOOR_IN), fill=PALE_AMBER, order=0.5)
    for x in (left, right):
        line(axes, [(x, FLOOR_IN), (x, top + 0.08)], colour=AMBER, width=1.4, dashes=(6, 3), order=2)
    text = f"the rivet needs {_kilonewtons(needed)}"
    middle = min(max((left + right) / 2, LEFT_IN + 1.4), RIGHT_IN - 1.4)
    write(axes, middle, top + 0.27, text, colour=TEXT_AMBER, weight="bold")


def _kilonewtons(band):
    """Write a band of forces."""
    return f"{band.low / 1000:.1f} to {band.high / 1000:.1f} kN"


def _words(chain):
    """Tell the chain in sentences."""
    told = "; ".join(f"{name} {_kilonewtons(band)}" for name, band in chain.links_n.items())
    return (
        f"What each link of the pull bears: {told}. To come out, "
        f"the rivet needs {_kilonewtons(chain.needed_n)}. "
        f"Weakest link: {chain.weakest}. What gives first: {chain.verdict}."
    )
