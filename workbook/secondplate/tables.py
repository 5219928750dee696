"""Loads tables of values: one value a row, each with unit, conditions, source, locator and basis.

A row that lacks any of these, names an unknown source or an unknown basis is refused at load.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from types import MappingProxyType

from secondplate.bands import Band
from secondplate.checks import require_choice
from secondplate.data_files import DATA_FOLDER, read_records
from secondplate.sources import source

BASES = ("published", "handbook", "common practice", "own judgement", "from memory", "derived")
# Every table has these; a table that needs more key columns adds them behind.
COLUMNS = ("name", "value", "unit", "conditions", "source", "locator", "basis")


@dataclass(frozen=True, kw_only=True)
class Row:
    """One value of a table with all that is needed to trust it or not.

    Parameters
    ----------
    name : str
        What the value is [-]
    value : str
        The value as it stands in the file: a number, or words where the value is words [-]
    unit : str
        Unit of the value, ``-`` where it has none [-]
    conditions : str
        For what the value holds [-]
    source : str
        Id in the bibliography; ``practice`` where there is no source [-]
    locator : str
        Table, clause, page or equation within the source [-]
    basis : str
        One of ``BASES`` [-]
    keys : Mapping of str to str
        Further columns of the table [-]

    Raises
    ------
    ValueError
        If the basis or the source is unknown, or the two do not go together.

    Examples
    --------
    >>> row = Row(name="melting point", value="1707", unit="K", conditions="304L",
    ...           source="practice", locator="none", basis="common practice")
    >>> row.number
    1707.0
    """

    name: str
    value: str
    unit: str
    conditions: str
    source: str
    locator: str
    basis: str
    keys: Mapping[str, str] = field(default_factory=dict, hash=False)

    def __post_init__(self):
        """Refuse an unknown basis or source, and common practice that claims a source."""
        require_choice(f"basis of {self.name}", self.basis, BASES)
        kind = source(self.source).kind
        if (self.basis == "common practice") != (kind == "common practice"):
            message = f"basis of {self.name} must fit its source {self.source}, got {self.basis!r}"
            raise ValueError(message)

    @property
    def number(self):
        """The value as a float; raises where it is words or not finite."""
        try:
            number = float(self.value)
        except ValueError:
            number = math.nan
        if not math.isfinite(number):
            message = f"value of {self.name} must be a finite number in {self.unit}, got {self.value!r}"
            raise ValueError(message)
        return number


@cache
def load(name, *, folder=DATA_FOLDER):
    """Load a table of values by the name of its file.

    Parameters
    ----------
    name : str
        File name without its ending [-]
    folder : pathlib.Path
        Folder that holds the file; the library's own data folder unless told [-]

    Returns
    -------
    tuple of Row
        The rows in the order of the file [-]

    Raises
    ------
    ValueError
        If a column or a cell is missing, or a row names an unknown source or basis.

    Examples
    --------
    >>> load("gas_groups")[0].name
    'I1'
    """
    records = read_records(name, columns=COLUMNS, folder=folder)
    return tuple(_row(record) for record in records)


def _row(record):
    """Part one record into the fixed columns and the further ones."""
    fixed = {column: record[column] for column in COLUMNS}
    further = {column: cell for column, cell in record.items() if column not in COLUMNS}
    return Row(**fixed, keys=MappingProxyType(further))


def values(name, *, folder=DATA_FOLDER):
    """Load a table of numbers as a dictionary from the name of each value to its number.

    Parameters
    ----------
    name : str
        File name without its ending [-]
    folder : pathlib.Path
        Folder that holds the file; the library's own data folder unless told [-]

    Returns
    -------
    dict of str to float
        The numbers by name, in the units of the table [-]

    Raises
    ------
    ValueError
        If a name appears twice or a value is not a finite number.

    Examples
    --------
    >>> values("physical_constants")["vacuum permeability"]
    1.25663706127e-06
    """
    found = {}
    for row in load(name, folder=folder):
        if row.name in found:
            message = f"name in table {name} must appear once, got {row.name!r} twice"
            raise ValueError(message)
        found[row.name] = row.number
    return found


def bands(name, *, cited=True, folder=DATA_FOLDER):
    """Load a table of bands: the value of each row is the best one, its columns low and high are the ends.

    Parameters
    ----------
    name : str
        File name without its ending [-]
    cited : bool
        Whether the basis of a band names source and locator as well [-]
    folder : pathlib.Path
        Folder that holds the file; the library's own data folder unless told [-]

    Returns
    -------
    dict of str to Band
        The bands by name, in the units of the table [-]

    Raises
    ------
    ValueError
        If a value is not a finite number or lies outside its ends.

    Examples
    --------
    >>> bands("arc_shares")["arc voltage"].high
    40.0
    """
    return {row.name: _band(row, cited=cited) for row in load(name, folder=folder)}


def _band(row, *, cited):
    """Turn one row into a band that says what it rests on."""
    basis = f"{row.basis}: {row.conditions}"
    if cited:
        basis += f" ({row.source}, {row.locator})"
    return Band(low=float(row.keys["low"]), best=row.number, high=float(row.keys["high"]), basis=basis)
