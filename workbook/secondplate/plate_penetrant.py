"""Was a penetrant test done so that it counts, and is what it showed accepted.

Ranges of the general standard; the data sheet of the penetrant and the shop's own procedure come first. The
penetrant must be out of the plate again before anything is bonded or sealed.
"""

import numpy as np

from secondplate.checks import require_at_least, require_choice, require_finite
from secondplate.tables import bands, load

PENETRANT_RULES = bands("penetrant_rules")
PENETRANT_KINDS = ("colour contrast", "fluorescent")
INDICATION_SHAPES = ("linear", "rounded")
_LONGEST_MM = {(row.keys["shape"], row.keys["level"]): row.number for row in load("penetrant_acceptance")}


def penetrant_faults(
    *, penetrant_kind, part_temperature_c, dwell_min, developing_min, white_light_lx, ultraviolet_w_m2=0.0
):
    """Return what was wrong with how one penetrant test was done.

    Parameters
    ----------
    penetrant_kind : str
        ``colour contrast`` or ``fluorescent`` [-]
    part_temperature_c : float
        Temperature of the part [C]
    dwell_min : float
        Time that the penetrant was left on [min]
    developing_min : float
        Time from developer to looking [min]
    white_light_lx : float
        White light at the part, at least 0 [lx]
    ultraviolet_w_m2 : float
        Ultraviolet light at the part, at least 0 [W/m2]

    Returns
    -------
    tuple of str
        One sentence for each fault, empty where there is none [-]

    Raises
    ------
    ValueError
        If the kind is unknown or a value is no number or below 0.

    Notes
    -----
    Source: iso_3452_1 (temperature, times) and iso_3059 (light), from memory.

    Examples
    --------
    >>> penetrant_faults(penetrant_kind="colour contrast", part_temperature_c=5, dwell_min=10,
    ...                  developing_min=10, white_light_lx=800)
    ('part temperature was 5 C, to be 10 to 50 C',)
    """
    fluorescent = require_choice("kind of penetrant", penetrant_kind, PENETRANT_KINDS) == "fluorescent"
    found = {
        "part temperature": (require_finite("part temperature", part_temperature_c, unit="C"), "C"),
        "penetrant dwell": (require_at_least("penetrant dwell", dwell_min, 0, unit="min"), "min"),
        "developing": (require_at_least("developing time", developing_min, 0, unit="min"), "min"),
        f"white light, {penetrant_kind}": (
            require_at_least("white light", white_light_lx, 0, unit="lx"),
            "lx",
        ),
    }
    ultraviolet = require_at_least("ultraviolet light", ultraviolet_w_m2, 0, unit="W/m2")
    if fluorescent:
        found["ultraviolet, fluorescent"] = (ultraviolet, "W/m2")
    return tuple(
        f"{name} was {value:g} {unit}, to be {rule.low:g} to {rule.high:g} {unit}"
        for name, (value, unit) in found.items()
        if not (rule := PENETRANT_RULES[name]).contains(value)
    )


def indication_accepted(indication_mm, *, indication_shape="linear", level=1):
    """Tell whether an indication is short enough for an acceptance level.

    Parameters
    ----------
    indication_mm : float or array
        Length of the indication, at least 0 [mm]
    indication_shape : str
        ``linear`` where it is longer than three times its width, else ``rounded`` [-]
    level : int
        Acceptance level 1, 2 or 3; 1 is the strictest [-]

    Returns
    -------
    bool or numpy.ndarray
        Whether it is accepted [-]

    Raises
    ------
    ValueError
        If the length is below 0, or shape or level is unknown.

    Notes
    -----
    Source: iso_23277, Table 1, written for welds, from memory. At a button any linear indication is a crack.

    Examples
    --------
    >>> indication_accepted(3, level=1), indication_accepted(3, level=2)
    (False, True)
    """
    length = np.asarray(require_at_least("length of the indication", indication_mm, 0, unit="mm"))
    require_choice("shape of the indication", indication_shape, INDICATION_SHAPES)
    require_choice("acceptance level", str(level), ("1", "2", "3"))
    accepted = length <= _LONGEST_MM[indication_shape, str(level)]
    return bool(accepted) if accepted.ndim == 0 else accepted
