"""What is published of self-piercing riveted joints: joint rows, relative facts, and models left out.

All of it comes from abstracts: no plain pair of aluminium sheets with thickness and strength could be read,
and no interlock beside a strength. The models left out are named, each with what is missing.
"""

from dataclasses import dataclass

from secondplate.checks import require_choice
from secondplate.data_files import read_records
from secondplate.sources import source
from secondplate.tables import BASES, load


@dataclass(frozen=True, kw_only=True)
class JointRow:
    """One published joint.

    Parameters
    ----------
    id : str
        Short name, never changed once published [-]
    source : str
        Id in the bibliography [-]
    doi : str
        Digital object identifier, empty where none was shown [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]
    top_sheet : str
        Top sheet, or both where their order is not stated [-]
    second_sheet : str
        Second sheet, empty where the order is not stated [-]
    order_stated : str
        Whether the order is stated: yes, no, as titled [-]
    rivet_length_mm : float or None
        Length of the rivet, None where not given [mm]
    stack_mm : float or None
        Thickness of both sheets, None where not given [mm]
    lap_shear_n : float or None
        Strength in lap shear, None where not given [N]
    statistic : str
        What the strength is: mean, greatest; empty where there is none [-]
    failure_mode : str
        How it gave; empty where not told [-]
    detail : str
        What else is known [-]

    Examples
    --------
    >>> JOINT_ROWS[0].lap_shear_n
    3858.0
    """

    id: str
    source: str
    doi: str
    locator: str
    basis: str
    top_sheet: str
    second_sheet: str
    order_stated: str
    rivet_length_mm: float | None
    stack_mm: float | None
    lap_shear_n: float | None
    statistic: str
    failure_mode: str
    detail: str

    def __post_init__(self):
        """Refuse an unknown source or basis."""
        source(self.source)
        require_choice(f"basis of {self.id}", self.basis, BASES)

    @property
    def added_length_mm(self):
        """Length of the rivet beyond the stack in mm, None where not given."""
        if self.rivet_length_mm is None or self.stack_mm is None:
            return None
        return self.rivet_length_mm - self.stack_mm


@dataclass(frozen=True, kw_only=True)
class JointFact:
    """One fact on riveted joints, mostly relative: more or less than another joint.

    Parameters
    ----------
    id : str
        Short name, never changed once published [-]
    topic : str
        One of ``TOPICS`` [-]
    value : str
        The figure, or the finding in a few words [-]
    unit : str
        Its unit, ``-`` for words [-]
    text : str
        The fact in one sentence [-]
    conditions : str
        For what it was found [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> joint_facts("corrosion")[0].number
    -11.2
    """

    id: str
    topic: str
    value: str
    unit: str
    text: str
    conditions: str
    source: str
    locator: str
    basis: str

    @property
    def number(self):
        """The figure as a float, None where the finding is words."""
        return None if self.unit == "-" else float(self.value)


@dataclass(frozen=True, kw_only=True)
class ModelLeftOut:
    """One published model that this library does not compute, and why.

    Parameters
    ----------
    name : str
        What the model is [-]
    load : str
        Cross tension, lap shear or both [-]
    source : str
        Id in the bibliography [-]
    locator : str
        What of it was seen [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]
    known : str
        What is known of it [-]
    reason : str
        What is missing [-]

    Examples
    --------
    >>> MODELS_LEFT_OUT[0].reason
    'the coefficients of efficiency and damage are not known here'
    """

    name: str
    load: str
    source: str
    locator: str
    basis: str
    known: str
    reason: str

    def __post_init__(self):
        """Refuse an unknown source or basis."""
        source(self.source)
        require_choice(f"basis of {self.name}", self.basis, BASES)


_NUMBERS = ("rivet_length_mm", "stack_mm", "lap_shear_n")


def _cell(column, text):
    """Read a cell of the joint rows: a number or None, words or nothing."""
    if column in _NUMBERS:
        return None if text == "-" else float(text)
    return "" if text == "-" else text


def _read_rows():
    """Read the joint rows in their order."""
    columns = tuple(JointRow.__dataclass_fields__)
    records = read_records("spr_joint_rows", columns=columns)
    return tuple(JointRow(**{name: _cell(name, text) for name, text in record.items()}) for record in records)


def _read_facts():
    """Read the facts in their order; the table's own checks hold for source and basis."""
    return tuple(
        JointFact(
            id=row.name,
            topic=row.keys["topic"],
            value=row.value,
            unit=row.unit,
            text=row.keys["text"],
            conditions=row.conditions,
            source=row.source,
            locator=row.locator,
            basis=row.basis,
        )
        for row in load("joint_facts")
    )


def _read_models():
    """Read the models left out."""
    columns = tuple(ModelLeftOut.__dataclass_fields__)
    return tuple(ModelLeftOut(**record) for record in read_records("joint_models_left_out", columns=columns))


JOINT_ROWS = _read_rows()
JOINT_FACTS = _read_facts()
MODELS_LEFT_OUT = _read_models()
TOPICS = tuple(dict.fromkeys(fact.topic for fact in JOINT_FACTS))


def joint_facts(topic):
    """Return the facts on one topic in their order.

    Parameters
    ----------
    topic : str
        One of ``TOPICS`` [-]

    Returns
    -------
    tuple of JointFact
        The facts, each with its source [-]

    Raises
    ------
    ValueError
        If the topic is not in the list.

    Examples
    --------
    >>> [fact.id for fact in joint_facts("rivet length")]
    ['length_plus_1', 'length_plus_2', 'length_plus_3']
    """
    require_choice("topic", topic, TOPICS)
    return tuple(fact for fact in JOINT_FACTS if fact.topic == topic)


def joint_fact(fact_id):
    """Return one fact by its short name.

    Parameters
    ----------
    fact_id : str
        Short name of the fact [-]

    Returns
    -------
    JointFact
        The fact with its source [-]

    Raises
    ------
    ValueError
        If there is no such fact.

    Examples
    --------
    >>> joint_fact("hybrid_peak_gain").number
    177.3
    """
    found = {fact.id: fact for fact in JOINT_FACTS}
    return found[require_choice("fact", fact_id, found)]


def length_series():
    """Return the joints of the one published series of rivet lengths, short to long.

    Returns
    -------
    tuple of JointRow
        Rivets 1, 2 and 3 mm longer than a stack of 3.0 mm: no hold, tail pull-out, head side [-]

    Notes
    -----
    Source: rivet_length_2024, abstract; adhesive of 0.1 to 0.3 mm lies between the sheets.

    Examples
    --------
    >>> [(row.added_length_mm, row.failure_mode) for row in length_series()]
    [(1.0, 'no hold'), (2.0, 'tail pull-out'), (3.0, 'head side')]
    """
    rows = (row for row in JOINT_ROWS if row.added_length_mm is not None)
    return tuple(sorted(rows, key=lambda row: row.added_length_mm))
