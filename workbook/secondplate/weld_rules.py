"""Reads the rules of stud welding from the tables and gathers those that hold for one stud."""

from secondplate import tables
from secondplate.advice import RuledBand
from secondplate.bands import Band

_ROWS = tables.load("stud_weld_rules")
_DISAGREEMENTS = tables.load("stud_weld_disagreements")


def listed(row, column):
    """Part a cell that holds several names.

    Parameters
    ----------
    row : tables.Row
        A row of a table [-]
    column : str
        Name of a key column [-]

    Returns
    -------
    list of str
        The names [-]

    Examples
    --------
    >>> listed(tables.load("polarity_rules")[0], "stud_material")
    ['carbon steel', 'austenitic stainless']
    """
    return row.keys[column].split(";")


def holds_for(row, stud_diameter_mm):
    """Tell whether a row's range of diameters, its lower end left out, holds the stud.

    Parameters
    ----------
    row : tables.Row
        A row with the key columns ``above_mm`` and ``up_to_mm`` [-]
    stud_diameter_mm : float
        Stud diameter [mm]

    Returns
    -------
    bool
        Whether it does [-]

    Examples
    --------
    >>> holds_for(rule_rows("current", name="drawn arc rule")[0], 16.0)
    True
    """
    return float(row.keys["above_mm"]) < stud_diameter_mm <= float(row.keys["up_to_mm"])


def rule_rows(quantity, *, name=None):
    """Return the rows of the rule table for one quantity.

    Parameters
    ----------
    quantity : str
        Current, time, lift, protrusion, flange or stainless energy factor [-]
    name : str or None
        Name of one rule; all where None [-]

    Returns
    -------
    tuple of tables.Row
        The rows in the order of the table [-]

    Examples
    --------
    >>> [row.number for row in rule_rows("time", name="drawn arc rule")]
    [20.0, 40.0]
    """
    return tuple(
        row for row in _ROWS if row.keys["quantity"] == quantity and (name is None or row.name == name)
    )


def band_of(row, stud_diameter_mm, *, stud_material="carbon steel"):
    """Work out the band of one rule for one stud.

    A rule is a fixed value or a straight line over the diameter. For a stainless stud the rules for plain
    studs come down by the stainless energy factor; their upper end stays, because the energy may be taken
    off the time instead of the current.

    Parameters
    ----------
    row : tables.Row
        A row of the rule table [-]
    stud_diameter_mm : float
        Stud diameter [mm]
    stud_material : str
        Material of the stud [-]

    Returns
    -------
    Band
        The band, in the unit of the row, per millimetre taken out [-]

    Examples
    --------
    >>> band_of(rule_rows("current", name="drawn arc rule")[0], 6.0).best
    480.0
    """
    best = row.number
    if row.unit.endswith("/mm"):
        best = float(row.keys["offset"]) + row.number * stud_diameter_mm
    low, high = (round(best * float(row.keys[end]) / row.number, 6) for end in ("low", "high"))
    basis = f"{row.basis}: {row.conditions}; {row.keys['width']}"
    if stud_material == "austenitic stainless" and row.keys["stainless"] == "less energy":
        factor = rule_rows("stainless energy factor")[0].number
        best, low = best * factor, round(low * factor, 6)
        basis += "; less about 10 % for a stainless stud"
    return Band(low=low, best=round(best, 6), high=high, basis=basis)


def gathered(quantity, stud_diameter_mm, *, stud_material, base, process):
    """Gather the rules that hold for one stud, each with its band.

    Parameters
    ----------
    quantity : str
        Current, time, lift or protrusion [-]
    stud_diameter_mm : float
        Stud diameter [mm]
    stud_material : str
        Material of the stud [-]
    base : str
        What it is welded to [-]
    process : str
        Process [-]

    Returns
    -------
    tuple of RuledBand
        The rules in the order of the table [-]

    Examples
    --------
    >>> len(gathered("lift", 6.0, stud_material="carbon steel", base="steel sheet", process="short cycle"))
    1
    """
    wanted = {"process": process, "stud_material": stud_material, "base": base}
    rows = (
        row
        for row in rule_rows(quantity)
        if holds_for(row, stud_diameter_mm)
        and all(name in listed(row, column) for column, name in wanted.items())
    )
    return tuple(
        ruled(row, quantity, band_of(row, stud_diameter_mm, stud_material=stud_material)) for row in rows
    )


def ruled(row, quantity, band):
    """Put a band and the origin of its rule together.

    Parameters
    ----------
    row : tables.Row
        The row that the rule comes from, with its words in the key column ``rule`` [-]
    quantity : str
        What the band is for [-]
    band : Band
        The band [-]

    Returns
    -------
    RuledBand
        The rule [-]

    Examples
    --------
    >>> row = rule_rows("time", name="drawn arc rule")[0]
    >>> ruled(row, "time", band_of(row, 6.0)).rule
    'rule of 20 ms a millimetre of stud'
    """
    return RuledBand(
        quantity=quantity,
        band=band,
        rule=row.keys["rule"],
        source=row.source,
        locator=row.locator,
        basis=row.basis,
    )


def reason_for(quantity, *, process, stud_diameter_mm):
    """Return why the rules for one quantity may not meet.

    Parameters
    ----------
    quantity : str
        Current, time, lift, protrusion or minimum sheet [-]
    process : str
        Process [-]
    stud_diameter_mm : float
        Stud diameter, above 0 and at most 25 mm [mm]

    Returns
    -------
    str
        The reason, a clause without a full stop [-]

    Examples
    --------
    >>> reason_for("lift", process="short cycle", stud_diameter_mm=6.0)
    'one is a habit for all small studs, the other the setting for one job'
    """
    return next(
        row.value
        for row in _DISAGREEMENTS
        if row.name == quantity and process in listed(row, "process") and holds_for(row, stud_diameter_mm)
    )
