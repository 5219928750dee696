"""Body sheet by alloy and temper: strengths and elongations as sources print them, side by side.

Covers aluminium sheet, one die-casting alloy and steel sheet. Nothing is merged: a band spans every row.
Heat damage and ageing are left out.
"""

from dataclasses import dataclass

from secondplate.bands import Band
from secondplate.checks import require_choice
from secondplate.rivet import Sheet
from secondplate.tables import load

KINDS = ("least", "typical", "greatest")


@dataclass(frozen=True, kw_only=True)
class SheetProperty:
    """What one source says of one property of a sheet.

    Parameters
    ----------
    sheet : str
        Alloy and temper, or grade of steel [-]
    quantity : str
        Property, one of ``SHEET_QUANTITIES`` [-]
    unit : str
        Its unit [-]
    least : float or None
        Specified least value, None where there is none [-]
    typical : float or None
        Typical value, None where there is none [-]
    greatest : float or None
        Specified greatest value, None where there is none [-]
    thickness_range_mm : tuple of float or None
        Thickness for which it holds, None where it is not said [mm]
    conditions : str
        For what it holds [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> sheet_properties("6111-T4", "proof stress")[0].typical
    115.0
    """

    sheet: str
    quantity: str
    unit: str
    least: float | None
    typical: float | None
    greatest: float | None
    thickness_range_mm: tuple[float, float] | None
    conditions: str
    source: str
    locator: str
    basis: str

    @property
    def numbers(self):
        """The numbers that the source gives, least to greatest."""
        return tuple(number for number in (self.least, self.typical, self.greatest) if number is not None)


def _thickness_range(row):
    """Read the range of thickness of a row, None where the row says none."""
    ends = (row.keys["thickness_low_mm"], row.keys["thickness_high_mm"])
    return None if "-" in ends else (float(ends[0]), float(ends[1]))


def _gathered():
    """Gather the rows that belong to one statement of one source."""
    statements = {}
    for row in load("sheet_alloys"):
        origin = (row.source, row.locator, row.basis, row.conditions, _thickness_range(row))
        key = (row.keys["sheet"], row.name, row.unit, *origin)
        kind = require_choice(f"kind of {row.name}", row.keys["kind"], KINDS)
        statements.setdefault(key, dict.fromkeys(KINDS))[kind] = row.number
    return tuple(
        SheetProperty(
            sheet=sheet,
            quantity=quantity,
            unit=unit,
            source=source,
            locator=locator,
            basis=basis,
            conditions=conditions,
            thickness_range_mm=thickness,
            **numbers,
        )
        for (
            sheet,
            quantity,
            unit,
            source,
            locator,
            basis,
            conditions,
            thickness,
        ), numbers in statements.items()
    )


SHEET_PROPERTIES = _gathered()
SHEETS = tuple(dict.fromkeys(found.sheet for found in SHEET_PROPERTIES))
SHEET_QUANTITIES = tuple(dict.fromkeys(found.quantity for found in SHEET_PROPERTIES))
_STATEMENTS = {
    (sheet, quantity): tuple(
        found for found in SHEET_PROPERTIES if (found.sheet, found.quantity) == (sheet, quantity)
    )
    for sheet in SHEETS
    for quantity in SHEET_QUANTITIES
}
_FAMILIES = {row.keys["sheet"]: row.keys["family"] for row in load("sheet_alloys")}


def sheet_properties(sheet, quantity, *, thickness_mm=None):
    """Return what each source says of one property of a sheet, side by side.

    Parameters
    ----------
    sheet : str
        One of ``SHEETS`` [-]
    quantity : str
        One of ``SHEET_QUANTITIES`` [-]
    thickness_mm : float or None
        Keeps what holds for this thickness or says none; None keeps all [mm]

    Returns
    -------
    tuple of SheetProperty
        The statements in the order of the table, empty where nobody says anything [-]

    Raises
    ------
    ValueError
        If sheet or property is not in the list.

    Notes
    -----
    Source: table sheet_alloys, each row with its own source and basis. riveting_overview_2021 tells why the
    elongation of the second plate matters.

    Examples
    --------
    >>> [found.source for found in sheet_properties("6016-T4", "tensile strength")]
    ['en_485_2', 'body_sheet_offer', 'sheet_literature']
    """
    require_choice("sheet", sheet, SHEETS)
    require_choice("property", quantity, SHEET_QUANTITIES)
    return tuple(found for found in _STATEMENTS[sheet, quantity] if _holds_for(found, thickness_mm))


def _holds_for(found, thickness_mm):
    """Tell whether a statement holds for a thickness."""
    if thickness_mm is None or found.thickness_range_mm is None:
        return True
    low, high = found.thickness_range_mm
    return low <= thickness_mm <= high


def sheet_band(sheet, quantity):
    """Span every number that the sources give for one property of a sheet.

    The best is the working value where there is one, else the middle of the first statement with both ends,
    else the lowest number. Where only least values are specified, the band says so: the true value is mostly
    higher.

    Parameters
    ----------
    sheet : str
        One of ``SHEETS`` [-]
    quantity : str
        One of ``SHEET_QUANTITIES`` [-]

    Returns
    -------
    Band
        The property, in the unit of the table [-]

    Raises
    ------
    ValueError
        If sheet or property is not in the list, or nobody gives the property of that sheet.

    Examples
    --------
    >>> band = sheet_band("5754-O", "tensile strength")
    >>> band.low, band.best, band.high
    (190.0, 215.0, 240.0)
    """
    found = sheet_properties(sheet, quantity)
    numbers = sorted(number for each in found for number in each.numbers)
    if not numbers:
        message = f"{quantity} must be one that a source gives for {sheet}, got none"
        raise ValueError(message)
    open_ended = all(each.greatest is None for each in found)
    basis = "all rows side by side" + (", no greatest value is specified" if open_ended else "")
    return Band(low=numbers[0], best=_best(found, numbers), high=numbers[-1], basis=basis)


def _best(found, numbers):
    """Pick the value to start from."""
    typical = [each.typical for each in found if each.typical is not None]
    middles = [(each.least + each.greatest) / 2 for each in found if None not in (each.least, each.greatest)]
    return (typical[-1:] or middles[:1] or numbers[:1])[0]


def body_sheet(sheet, *, thickness_mm):
    """Return a sheet of a stack from its alloy and temper, with the values to start from.

    Parameters
    ----------
    sheet : str
        One of ``SHEETS`` [-]
    thickness_mm : float or array
        Thickness, 0.3 to 6.5 [mm]

    Returns
    -------
    secondplate.rivet.Sheet
        The sheet with its family, tensile strength and least elongation where one is specified [-]

    Raises
    ------
    ValueError
        If the sheet is not in the list or the thickness lies outside its range.

    Examples
    --------
    >>> body_sheet("AlSi10MnMg-T7", thickness_mm=2.5).elongation_percent
    12.0
    """
    require_choice("sheet", sheet, SHEETS)
    elongations = [
        found.least
        for quantity in ("elongation A50", "elongation A80", "elongation A")
        for found in sheet_properties(sheet, quantity)
        if found.least is not None
    ]
    return Sheet(
        thickness_mm=thickness_mm,
        family=_FAMILIES[sheet],
        tensile_strength_mpa=sheet_band(sheet, "tensile strength").best,
        elongation_percent=min(elongations, default=None),
    )
