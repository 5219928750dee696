"""What a stud's thread carries: proof and breaking load side by side for the property classes."""

from drawings.marks import area, bare_axes, box, line, number, write
from drawings.picture import picture_of
from drawings.scales import ROUND_CLOSE, round_up, steps
from drawings.style import (
    AMBER,
    GREY,
    LINE,
    MID_GREY,
    MID_SLATE,
    PALE_SLATE,
    SLATE,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.checks import require_between, require_choice
from secondplate.studs import (
    PROPERTY_CLASSES,
    breaking_load_n,
    coarse_pitch_mm,
    proof_load_n,
    property_class,
    stress_area_mm2,
)

LEFT_IN, RIGHT_IN, WIDTH_IN = 1.1, 6.3, 8.4
COLUMNS_IN = (6.95, 7.85)
ROW_IN = 0.58
FLOOR_IN = 0.72


def stud_strength(*, diameter_mm, property_classes=("4.8", "A2-50", "A2-70", "A2-80"), pull_n=None):
    """Draw proof and breaking load of a stud with coarse thread for several property classes.

    Parameters
    ----------
    diameter_mm : float
        Thread diameter with a coarse pitch: 3, 4, 5, 6 or 8 mm [mm]
    property_classes : tuple of str
        Names of ``secondplate.studs.PROPERTY_CLASSES``, one to seven [-]
    pull_n : float or None
        Pull to compare with, above 0 N to 60000 N [N]

    Returns
    -------
    picture : Picture
        One bar for each class: to the proof load filled, to the breaking load hatched [-]

    Raises
    ------
    ValueError
        If the diameter has no coarse pitch, a class is unknown, none is given or the pull is out of range.

    Notes
    -----
    Loads from ``secondplate.studs``: of the thread, not of the weld, which may break earlier.

    Examples
    --------
    >>> "14.1 kN" in stud_strength(diameter_mm=6).alt
    True
    """
    if not property_classes:
        message = "property classes must be at least one, got none"
        raise ValueError(message)
    for name in property_classes:
        require_choice("property class", name, tuple(PROPERTY_CLASSES))
    if pull_n is not None:
        pull_n = require_between("pull", pull_n, 1, 60000, unit="N")
    stress_area = stress_area_mm2(diameter_mm, pitch_mm=coarse_pitch_mm(diameter_mm))
    loads_kn = [_loads_kn(name, stress_area) for name in property_classes]
    largest = round_up(
        max([breaking for _, breaking in loads_kn] + [(pull_n or 1) / 1000]) * 1.02, among=ROUND_CLOSE
    )
    top = FLOOR_IN + ROW_IN * len(property_classes)
    height = top + 0.45
    with sheet_of_paper(width_in=WIDTH_IN, height_in=height) as figure:
        axes = bare_axes(figure, width=(0, WIDTH_IN), height=(0, height))
        _draw_scale(axes, largest, top)
        for row, (name, loads) in enumerate(zip(property_classes, loads_kn, strict=True)):
            _draw_class(axes, top - ROW_IN * (row + 0.5), name, loads, largest)
        _head_columns(axes, top + 0.2)
        if pull_n is not None:
            _draw_pull(axes, pull_n / 1000, largest, top)
        return picture_of(figure, _words(diameter_mm, property_classes, loads_kn, pull_n))


def _loads_kn(name, stress_area):
    """Return proof and breaking load of one class."""
    found = property_class(name)
    return (
        proof_load_n(stress_area, found.proof_stress_mpa) / 1000,
        breaking_load_n(stress_area, found.tensile_strength_mpa) / 1000,
    )


def _words(diameter_mm, property_classes, loads_kn, pull_n):
    """Tell the bars in sentences."""
    told = "; ".join(
        f"{name} yields at {number(proof, digits=1)} kN and breaks at {number(breaking, digits=1)} kN"
        for name, (proof, breaking) in zip(property_classes, loads_kn, strict=True)
    )
    words = (
        f"Least loads of an M{number(diameter_mm)} stud's thread by property class: {told}. "
        "The weld may break earlier."
    )
    if pull_n is not None:
        words += f" The pull to compare with is {number(pull_n / 1000)} kN."
    return words


def _x(load_kn, largest):
    """Place a load on the scale."""
    return LEFT_IN + load_kn / largest * (RIGHT_IN - LEFT_IN)


def _draw_scale(axes, largest, top):
    """Draw the scale under the bars."""
    line(axes, [(LEFT_IN, FLOOR_IN), (RIGHT_IN, FLOOR_IN)], colour=GREY, width=THIN)
    for load in steps(largest):
        x = _x(load, largest)
        line(axes, [(x, FLOOR_IN), (x, top)], colour=MID_GREY, width=THIN, order=1)
        write(axes, x, FLOOR_IN - 0.19, number(load))
    told = "load in kN; filled: to yield, hatched: on to break"
    write(axes, LEFT_IN, FLOOR_IN - 0.5, told, across="left", colour=TEXT_GREY)


def _draw_class(axes, y, name, loads, largest):
    """Draw one class: filled to its proof load, hatched on to its breaking load."""
    low, high = y - 0.17, 0.34
    proof, breaking = (_x(load, largest) for load in loads)
    write(axes, LEFT_IN - 0.15, y, name, across="right", weight="bold")
    area(axes, box(LEFT_IN, low, proof - LEFT_IN, high), fill=MID_SLATE, order=3)
    area(axes, box(proof, low, breaking - proof, high), fill=PALE_SLATE, order=3)
    area(axes, box(proof, low, breaking - proof, high), edge=MID_SLATE, hatch="///", order=3.1)
    area(axes, box(LEFT_IN, low, breaking - LEFT_IN, high), edge=SLATE, width=LINE, order=4)
    line(axes, [(proof, low), (proof, low + high)], order=4)
    for x, load in zip(COLUMNS_IN, loads, strict=True):
        write(axes, x, y, f"{load:.1f} kN")


def _head_columns(axes, y):
    """Head the two columns of numbers."""
    for x, name in zip(COLUMNS_IN, ("yields", "breaks"), strict=True):
        write(axes, x, y, name, weight="bold")


def _draw_pull(axes, pull_kn, largest, top):
    """Draw the pull as a line through all bars."""
    x = _x(pull_kn, largest)
    line(axes, [(x, FLOOR_IN), (x, top + 0.05)], colour=AMBER, width=2.2, dashes=(6, 2), order=9)
    write(
        axes,
        min(x, RIGHT_IN - 0.25),
        top + 0.2,
        f"pull {number(pull_kn)} kN",
        colour=TEXT_AMBER,
        weight="bold",
    )
