"""Reads the library's own data files: plain CSV, one record a row, no empty cell.

What the columns mean is the business of ``sources``, ``tables``, ``cautions`` and ``glossary``.
"""

import csv
from pathlib import Path

DATA_FOLDER = Path(__file__).with_name("data")


def read_records(name, *, columns, folder=DATA_FOLDER):
    """Read ``<name>.csv`` and return its rows as dictionaries, refusing every gap.

    Parameters
    ----------
    name : str
        File name without its ending [-]
    columns : tuple of str
        Columns that the file must have; more are allowed [-]
    folder : pathlib.Path
        Folder that holds the file; the library's own data folder unless told [-]

    Returns
    -------
    list of dict
        One dictionary of stripped text a row, by column [-]

    Raises
    ------
    ValueError
        If a column is missing, or a row has an empty cell, too few cells or too many.

    Examples
    --------
    >>> read_records("sources", columns=("id", "title"))[0]["id"]
    'practice'
    """
    with open(folder / f"{name}.csv", encoding="utf-8", newline="") as file:
        reader = csv.reader(file, strict=True)
        found = next(reader, [])
        missing = [column for column in columns if column not in found]
        if missing:
            message = f"data file {name} must have the columns {', '.join(columns)}, got no {missing[0]}"
            raise ValueError(message)
        return [_whole_record(name, reader.line_num, found, cells) for cells in reader if cells]


def _whole_record(name, line, columns, cells):
    """Strip the cells of one row, or raise where one is empty or stands beyond the last column."""
    if len(cells) > len(columns):
        message = f"data file {name} line {line} must have {len(columns)} cells, got more"
        raise ValueError(message)
    stripped = [cell.strip() for cell in cells]
    if len(stripped) < len(columns) or not all(stripped):
        empty = columns[[*stripped, ""].index("")]
        message = f"data file {name} line {line} must have a {empty}, got an empty cell"
        raise ValueError(message)
    return dict(zip(columns, stripped, strict=True))
