"""What a set joint is built from: rivet, die and stack, and how far the setting went on either side.

Leaves out what follows from them: bottom thickness, button height and slug come out of the volume balance.
"""

from dataclasses import dataclass, fields, replace

import numpy as np

from secondplate.checks import require_between
from secondplate.rivet import Die, Rivet, Sheet, Stack

# Lowest and highest of each parameter in mm, wide enough for faults.
_RANGES_MM = {
    "interlock_left_mm": (0, 1.5),
    "interlock_right_mm": (0, 1.5),
    "set_length_left_mm": (1.5, 16),
    "set_length_right_mm": (1.5, 16),
    "head_flushness_mm": (-0.8, 0.8),
    "draw_down_mm": (0.1, 4),
    "buckle_left_mm": (0, 0.8),
    "buckle_right_mm": (0, 0.8),
    "crack_left_mm": (0, 1),
    "crack_right_mm": (0, 1),
    "hump_mm": (-0.4, 1),
    "gap_reach_mm": (0.05, 3),
    "corner_mm": (0.2, 3),
}


@dataclass(frozen=True, kw_only=True)
class SectionParameters:
    """Everything that a section is built from; arrays stand for a column of joints.

    Parameters
    ----------
    rivet : Rivet
        The rivet before setting [-]
    die : Die
        The die [-]
    stack : Stack
        Two plates, and the gap between them [-]
    interlock_left_mm : float or array
        Interlock at the left, 0 to 1.5 [mm]
    interlock_right_mm : float or array
        Interlock at the right, 0 to 1.5 [mm]
    set_length_left_mm : float or array
        Length of the set rivet from the head's face to the lowest point of the tail, at the left, 1.5 to 16
        [mm]
    set_length_right_mm : float or array
        The same at the right [mm]
    head_flushness_mm : float or array
        Height of the head's face above the top plate, negative where sunk, -0.8 to 0.8 [mm]
    draw_down_mm : float or array
        How far the top plate is drawn down along the shank, 0.1 to 4 [mm]
    buckle_left_mm : float or array
        How far the shank has bulged outwards within the top plate at the left, 0 to 0.8 [mm]
    buckle_right_mm : float or array
        The same at the right [mm]
    crack_left_mm : float or array
        Depth of a crack in the button at the left, 0 to 1 [mm]
    crack_right_mm : float or array
        The same at the right [mm]
    slug_share : float or array
        Volume of the slug over that of a disc as wide as the bore and as thick as the top plate, 0.7 to 2 [-]
    hump_mm : float or array
        How far the second plate stands up under the slug, -0.4 to 1 [mm]
    gap_reach_mm : float or array
        Distance from the shank at which the plates begin to part, 0.05 to 3 [mm]
    corner_mm : float or array
        Radius of the button's corner; grows where the metal does not fill the die, 0.2 to 3 [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range or the stack has three sheets.

    Examples
    --------
    >>> usual_parameters().count
    1
    """

    rivet: Rivet
    die: Die
    stack: Stack
    interlock_left_mm: float
    interlock_right_mm: float
    set_length_left_mm: float
    set_length_right_mm: float
    head_flushness_mm: float = 0.0
    draw_down_mm: float = 1.45
    buckle_left_mm: float = 0.0
    buckle_right_mm: float = 0.0
    crack_left_mm: float = 0.0
    crack_right_mm: float = 0.0
    slug_share: float = 1.2
    hump_mm: float = 0.15
    gap_reach_mm: float = 1.2
    corner_mm: float = 0.6

    def __post_init__(self):
        """Refuse values outside their range, a stack of three and columns of different lengths."""
        for name, (low, high) in _RANGES_MM.items():
            words = name.removesuffix("_mm").replace("_", " ")
            require_between(words, getattr(self, name), low, high, unit="mm")
        require_between("slug share", self.slug_share, 0.7, 2, unit="")
        if self.stack.middle is not None:
            message = f"stack must have 2 sheets for a section, got {len(self.stack.sheets)}"
            raise ValueError(message)
        self.columns()

    def columns(self):
        """Return all numbers as arrays of one length, by name."""
        numbers = {
            item.name: getattr(self, item.name)
            for item in fields(self)
            if item.name.endswith(("_mm", "_share"))
        }
        for thing in (self.rivet, self.die):
            numbers |= {item.name: getattr(thing, item.name) for item in fields(thing)}
        numbers["top_plate_mm"] = self.stack.top.thickness_mm
        numbers["second_plate_mm"] = self.stack.second.thickness_mm
        numbers["gap_mm"] = self.stack.gap_mm
        arrays = [np.atleast_1d(np.asarray(value, dtype=float)) for value in numbers.values()]
        lengths = {array.shape for array in arrays if array.shape != (1,)}
        if len(lengths) > 1 or any(len(shape) != 1 for shape in lengths):
            message = f"parameters must be numbers or columns of one length, got {sorted(lengths)}"
            raise ValueError(message)
        shape = lengths.pop() if lengths else (1,)
        return {name: np.broadcast_to(array, shape) for name, array in zip(numbers, arrays, strict=True)}

    def one(self, number):
        """Return the parameters of one joint of a column; the families of the plates stay."""
        single = parameters_of({name: float(column[number]) for name, column in self.columns().items()})
        top = replace(self.stack.top, thickness_mm=single.stack.top.thickness_mm)
        second = replace(self.stack.second, thickness_mm=single.stack.second.thickness_mm)
        return replace(single, stack=replace(single.stack, top=top, second=second))

    @property
    def count(self):
        """How many joints these parameters stand for."""
        return len(self.columns()["interlock_left_mm"])

    @property
    def several(self):
        """Whether any of the parameters is a column."""
        things = (self, self.rivet, self.die, self.stack, self.stack.top, self.stack.second)
        return any(
            np.ndim(getattr(thing, item.name)) > 0
            for thing in things
            for item in fields(thing)
            if item.name.endswith(("_mm", "_hv", "_share"))
        )


def parameters_of(columns):
    """Make parameters of the columns that ``SectionParameters.columns`` gives.

    Parameters
    ----------
    columns : dict of str to float or array
        Parameters by name; the plates are of aluminium [-]

    Returns
    -------
    SectionParameters
        The parameters [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Examples
    --------
    >>> parameters_of(usual_parameters().columns()).count
    1
    """
    rivet, die = (
        kind(**{item.name: columns[item.name] for item in fields(kind) if item.name in columns})
        for kind in (Rivet, Die)
    )
    top, second = (Sheet(thickness_mm=columns[f"{plate}_plate_mm"]) for plate in ("top", "second"))
    stack = Stack(top=top, second=second, gap_mm=columns["gap_mm"])
    rest = {item.name: columns[item.name] for item in fields(SectionParameters) if item.name in columns}
    return SectionParameters(rivet=rivet, die=die, stack=stack, **rest)


def usual_parameters(**change):
    """Return the parameters of a usual joint: two plates of 2 mm, a rivet of 5.5 mm, a flat die of 9 mm.

    Parameters
    ----------
    **change : float or array or object
        Parameters to change, by the names of ``SectionParameters`` [-]

    Returns
    -------
    SectionParameters
        The parameters [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Sizes of a usual joint from memory; a joint for examples, nobody's measured one.

    Examples
    --------
    >>> usual_parameters(interlock_left_mm=-0.1)
    Traceback (most recent call last):
    ValueError: interlock left must be between 0 mm and 1.5 mm, got -0.1 mm
    """
    sheet = Sheet(thickness_mm=2.0)
    usual = {
        "rivet": Rivet(rivet_length_mm=5.5),
        "die": Die(die_diameter_mm=9.0, die_depth_mm=2.0),
        "stack": Stack(top=sheet, second=sheet),
        "interlock_left_mm": 0.5,
        "interlock_right_mm": 0.5,
        "set_length_left_mm": 5.2,
        "set_length_right_mm": 5.2,
    }
    return SectionParameters(**usual | change)
