"""The bibliography: every source that a value, a formula or a test of this library names.

Rows live in ``data/sources.csv``; ``note`` says what was really read: the text itself, a quotation of it,
or nothing but memory.
"""

from dataclasses import dataclass

from secondplate.data_files import read_records

KINDS = (
    "standard",
    "regulation",
    "paper",
    "report",
    "handbook",
    "manual",
    "technical page",
    "open code",
    "common practice",
)


@dataclass(frozen=True, kw_only=True)
class Source:
    """One entry of the bibliography.

    Parameters
    ----------
    id : str
        Name by which data rows, docstrings and tests refer to the source [-]
    kind : str
        One of ``KINDS`` [-]
    title : str
        Title, or for a page that sells something a description of its kind [-]
    year : str
        Year of the edition used, empty where unknown [-]
    doi : str
        Digital object identifier, empty where there is none [-]
    note : str
        What was really read, and what to beware of [-]
    authors : str
        Authors of a paper, empty for standards and pages [-]

    Raises
    ------
    ValueError
        If the kind is not one of ``KINDS``.

    Examples
    --------
    >>> BIBLIOGRAPHY["iso_14175"].kind
    'standard'
    """

    id: str
    kind: str
    title: str
    year: str
    doi: str
    note: str
    authors: str = ""

    def __post_init__(self):
        """Refuse a kind that is not in the list."""
        if self.kind not in KINDS:
            message = f"source {self.id} kind must be one of {', '.join(KINDS)}, got {self.kind!r}"
            raise ValueError(message)

    @property
    def citation(self):
        """Authors, title, year and identifier in one line."""
        parts = (self.authors, self.title, self.year, f"doi {self.doi}" if self.doi else "")
        return ", ".join(part for part in parts if part)


def bibliography(records):
    """Turn rows of text into the dictionary of sources.

    Parameters
    ----------
    records : iterable of dict
        Rows with id, kind, title, year, doi, note and authors; ``-`` stands for none [-]

    Returns
    -------
    dict of str to Source
        The sources by id [-]

    Raises
    ------
    ValueError
        If an id appears twice or a kind is unknown.

    Examples
    --------
    >>> row = dict(id="x", kind="handbook", title="X", year="2020", doi="-", note="read", authors="-")
    >>> bibliography([row])["x"].citation
    'X, 2020'
    """
    found = {}
    for record in records:
        if record["id"] in found:
            message = f"source id must appear once in the bibliography, got {record['id']!r} twice"
            raise ValueError(message)
        found[record["id"]] = Source(**{name: "" if cell == "-" else cell for name, cell in record.items()})
    return found


BIBLIOGRAPHY = bibliography(
    read_records("sources", columns=("id", "kind", "title", "year", "doi", "note", "authors"))
)


def source(source_id):
    """Return one source of the bibliography by its id.

    Parameters
    ----------
    source_id : str
        Id of the source [-]

    Returns
    -------
    Source
        The entry [-]

    Raises
    ------
    ValueError
        If the bibliography has no such id.

    Examples
    --------
    >>> source("practice").title
    'Common practice of the trade, no source'
    """
    if source_id not in BIBLIOGRAPHY:
        message = f"source must be an id of the bibliography, got {source_id!r}"
        raise ValueError(message)
    return BIBLIOGRAPHY[source_id]
