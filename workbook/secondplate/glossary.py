"""The one glossary: terms of the trade, their symbols and units, and the names the library gives them.

Pages and feedback take their words from here; a term that only the library's code needs is marked so.
"""

from dataclasses import dataclass

from secondplate.data_files import read_records

SHOWN = ("page", "library")


@dataclass(frozen=True, kw_only=True)
class Entry:
    """One term of the glossary.

    Parameters
    ----------
    term : str
        The term in words [-]
    symbol : str
        Symbol in formulas, empty where there is none [-]
    meaning : str
        What it means, in one phrase [-]
    unit : str
        Unit in this library, empty where it has none [-]
    names : tuple of str
        Names that functions, parameters and fields of this library give it [-]
    shown : str
        ``page`` for a term of the trade, ``library`` for a word of the code [-]

    Raises
    ------
    ValueError
        If ``shown`` is neither of the two.

    Examples
    --------
    >>> entry("lift").unit
    'mm'
    """

    term: str
    symbol: str
    meaning: str
    unit: str
    names: tuple[str, ...]
    shown: str

    def __post_init__(self):
        """Refuse an entry that is shown nowhere."""
        if self.shown not in SHOWN:
            message = f"shown of the term {self.term} must be one of {', '.join(SHOWN)}, got {self.shown!r}"
            raise ValueError(message)


def _entry(record):
    """Make an entry of one record; ``-`` stands for none."""
    cells = {column: "" if cell == "-" else cell for column, cell in record.items()}
    return Entry(**(cells | {"names": tuple(cells["names"].split())}))


GLOSSARY = tuple(
    _entry(record)
    for record in read_records("glossary", columns=("term", "symbol", "meaning", "unit", "names", "shown"))
)


def entry(term):
    """Return the entry of a term.

    Parameters
    ----------
    term : str
        The term in words [-]

    Returns
    -------
    Entry
        Its entry [-]

    Raises
    ------
    ValueError
        If the glossary has no such term.

    Examples
    --------
    >>> entry("protrusion").symbol
    'P'
    """
    for found in GLOSSARY:
        if found.term == term:
            return found
    message = f"term must be one of the glossary, got {term!r}"
    raise ValueError(message)


def entry_of_name(name):
    """Return the entry that a name of the library belongs to.

    Parameters
    ----------
    name : str
        Name of a function, parameter or field [-]

    Returns
    -------
    Entry
        Its entry [-]

    Raises
    ------
    ValueError
        If no entry lists the name.

    Examples
    --------
    >>> entry_of_name("weld_time_ms").term
    'weld time'
    """
    for found in GLOSSARY:
        if name in found.names:
            return found
    message = f"name must be listed in the glossary, got {name!r}"
    raise ValueError(message)
