"""Keeping steel and aluminium apart: the steps in their order, and what air and salt spray do.

The vehicle maker's materials and procedure come first. Hours of salt spray rank coatings against each other;
they are not years on the road.
"""

from collections.abc import Mapping
from types import MappingProxyType

from secondplate.checks import require_choice
from secondplate.ordered_steps import order_faults, ordered_steps
from secondplate.tables import bands, load

# In the order in which they are done.
ISOLATION_STEPS = ordered_steps("isolation_steps")
ISOLATION_STEP_NAMES = tuple(step.name for step in ISOLATION_STEPS)
SALT_SPRAY = bands("salt_spray")
_LOSSES: Mapping[tuple[str, str], tuple[float, str]] = MappingProxyType(
    {(row.name, row.keys["category"]): (row.number, row.unit) for row in load("corrosivity")}
)
CATEGORIES = tuple(dict.fromkeys(category for _, category in _LOSSES))


def isolation_faults(done):
    """Return what is missing or out of order in a list of steps that were done.

    Parameters
    ----------
    done : sequence of str
        Names of the steps in the order in which they were done [-]

    Returns
    -------
    tuple of str
        One sentence for each fault, with its reason; empty where all is in order [-]

    Raises
    ------
    ValueError
        If a step is not in the list or stands twice.

    Notes
    -----
    Source: practice, isolation of mixed joints; courval_1993 and conversion_coating_study for single steps.

    Examples
    --------
    >>> isolation_faults(ISOLATION_STEP_NAMES)
    ()
    >>> isolation_faults(("clean", "deburr", *ISOLATION_STEP_NAMES[2:]))
    ('deburr must come before clean: a burr pierces coat and film, and holds water',)
    """
    return order_faults(done, ISOLATION_STEPS)


def first_year_loss(metal, category):
    """Return the most that a bare metal loses in its first year in the air of a category.

    Parameters
    ----------
    metal : str
        ``steel``, ``zinc`` or ``aluminium`` [-]
    category : str
        Corrosivity category, C1 to CX [-]

    Returns
    -------
    tuple of float and str
        Loss, and its unit: um for steel and zinc, g/m2 for aluminium, which pits [-]

    Raises
    ------
    ValueError
        If the table has no such metal in that category.

    Notes
    -----
    Source: iso_9223, Table 2, upper ends, from memory.

    Examples
    --------
    >>> first_year_loss("steel", "C3")
    (50.0, 'um')
    """
    require_choice("category", category, CATEGORIES)
    metals = tuple(name for name, listed in _LOSSES if listed == category)
    return _LOSSES[require_choice(f"metal in {category}", metal, metals), category]
