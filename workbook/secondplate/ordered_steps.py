"""Steps that have an order and a reason each, and what is missing or out of order in a list of them."""

from dataclasses import dataclass

from secondplate.checks import require_choice
from secondplate.tables import load


@dataclass(frozen=True, kw_only=True)
class OrderedStep:
    """One of several things that are done in order.

    Parameters
    ----------
    name : str
        What is done [-]
    conditions : str
        How and where [-]
    reason : str
        Why it is done, and why here [-]
    source : str
        Id in the bibliography [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> step = OrderedStep(name="clean", conditions="no grease", reason="nothing sticks on grease",
    ...                    source="practice", basis="common practice")
    >>> step.name
    'clean'
    """

    name: str
    conditions: str
    reason: str
    source: str
    basis: str


def ordered_steps(name):
    """Load a table whose values are places, and whose column reason says why.

    Parameters
    ----------
    name : str
        File name without its ending [-]

    Returns
    -------
    tuple of OrderedStep
        The steps in the order of their places [-]

    Raises
    ------
    ValueError
        If the table is not as ``tables.load`` wants it.

    Examples
    --------
    >>> ordered_steps("isolation_steps")[0].name
    'deburr'
    """
    return tuple(
        OrderedStep(
            name=row.name,
            conditions=row.conditions,
            reason=row.keys["reason"],
            source=row.source,
            basis=row.basis,
        )
        for row in sorted(load(name), key=lambda row: row.number)
    )


def order_faults(done, steps):
    """Return what is missing or out of order in a list of steps that were done.

    Parameters
    ----------
    done : sequence of str
        Names of the steps in the order in which they were done [-]
    steps : sequence of OrderedStep
        All steps in their order [-]

    Returns
    -------
    tuple of str
        One sentence for each fault, with its reason; empty where all is in order [-]

    Raises
    ------
    ValueError
        If a step is not among them or stands twice.

    Examples
    --------
    >>> steps = ordered_steps("isolation_steps")
    >>> order_faults([step.name for step in steps[1:]], steps)
    ('deburr is missing: a burr pierces coat and film, and holds water',)
    """
    names = tuple(step.name for step in steps)
    for step in done:
        require_choice("step", step, names)
    if len(set(done)) < len(done):
        message = f"each step must stand once, got {', '.join(done)}"
        raise ValueError(message)
    found = []
    for place, step in enumerate(steps):
        if step.name not in done:
            found.append(f"{step.name} is missing: {step.reason}")
            continue
        before = done[: list(done).index(step.name)]
        early = [name for name in before if names.index(name) > place]
        if early:
            found.append(f"{step.name} must come before {early[0]}: {step.reason}")
    return tuple(found)
