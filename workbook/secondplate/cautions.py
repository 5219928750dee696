"""Safety numbers with their sources, so that pages can show them beside the work.

They warn; they do not permit. Local law, the equipment manual and the vehicle maker's procedure come first.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_between, require_choice
from secondplate.tables import load

_FULL_DOSE_H = 8.0


@dataclass(frozen=True, kw_only=True)
class Caution:
    """One safety number with the sentence that a page shows.

    Parameters
    ----------
    hazard : str
        What it is about, one of ``HAZARDS`` [-]
    name : str
        Name of the number [-]
    value : float
        The number, in ``unit`` [-]
    unit : str
        Unit of the number [-]
    sentence : str
        What the reader must do or know [-]
    conditions : str
        For what the number holds [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        What the number rests on [-]

    Examples
    --------
    >>> cautions_about("air")[0].value
    19.5
    """

    hazard: str
    name: str
    value: float
    unit: str
    sentence: str
    conditions: str
    source: str
    locator: str
    basis: str


CAUTIONS = tuple(
    Caution(
        hazard=row.keys["hazard"],
        name=row.name,
        value=row.number,
        unit=row.unit,
        sentence=row.keys["sentence"],
        conditions=row.conditions,
        source=row.source,
        locator=row.locator,
        basis=row.basis,
    )
    for row in load("cautions")
)
HAZARDS = tuple(dict.fromkeys(caution.hazard for caution in CAUTIONS))
NOISE_RULES = tuple(dict.fromkeys(row.keys["rule"] for row in load("noise_rules")))
ARC_PROCESSES = tuple(dict.fromkeys(row.name for row in load("filter_shades")))


def cautions_about(hazard):
    """Return the cautions about one hazard.

    Parameters
    ----------
    hazard : str
        One of ``HAZARDS`` [-]

    Returns
    -------
    tuple of Caution
        The cautions in table order [-]

    Raises
    ------
    ValueError
        If the hazard is not in the list.

    Notes
    -----
    Source: table cautions, each row with its own source and basis.

    Examples
    --------
    >>> [caution.value for caution in cautions_about("fire")]
    [10.7, 30.0, 60.0]
    """
    require_choice("hazard", hazard, HAZARDS)
    return tuple(caution for caution in CAUTIONS if caution.hazard == hazard)


def noise_time_h(level_dba, *, rule):
    """Time at a sound level that uses up the dose of one day: ``T = 8 / 2^((L - L0) / q)``.

    Parameters
    ----------
    level_dba : float or array
        Sound level L, 80 to 130 [dB(A)]
    rule : str
        ``legal limit`` (L0 90, q 5) or ``recommended limit`` (L0 85, q 3) [-]

    Returns
    -------
    float or array
        Time a day without ear protection [h]

    Raises
    ------
    ValueError
        If the level lies outside 80 to 130 dB(A) or the rule is unknown.

    Notes
    -----
    Sources: osha_1910_95, Appendix A, Table G-16a and its footnote; niosh_noise.

    Examples
    --------
    >>> noise_time_h(100, rule="legal limit"), noise_time_h(100, rule="recommended limit")
    (2.0, 0.25)
    """
    level = require_between("sound level", level_dba, 80, 130, unit="dB(A)")
    require_choice("rule", rule, NOISE_RULES)
    of_rule = {row.name: row.number for row in load("noise_rules") if row.keys["rule"] == rule}
    steps = (level - of_rule["criterion level"]) / of_rule["exchange rate"]
    return plain(_FULL_DOSE_H / np.exp2(steps))


def minimum_shade(*, process, current_a):
    """Lowest filter shade that one regulation asks for with an open arc of a listed process.

    Parameters
    ----------
    process : str
        One of ``ARC_PROCESSES``; stud welding is not among them [-]
    current_a : float
        Arc current inside the range of the process [A]

    Returns
    -------
    int
        Shade number; on a shared limit the darker one [shade]

    Raises
    ------
    ValueError
        If the process is not listed or the current lies outside its range.

    Notes
    -----
    A minimum, not advice: another standard asks for shade 14 above 400 A.
    Source: osha_1910_133, table of filter lenses.

    Examples
    --------
    >>> minimum_shade(process="plasma arc", current_a=600)
    11
    """
    require_choice("process", process, ARC_PROCESSES)
    rows = [row for row in load("filter_shades") if row.name == process]
    highest = max(float(row.keys["to_a"]) for row in rows)
    current = require_between(f"current of {process} welding", current_a, 0, highest, unit="A")
    return int(max(row.number for row in rows if _holds(row, current)))


def _holds(row, current_a):
    """Tell whether a row of the shades covers a current, its ends included."""
    return float(row.keys["from_a"]) <= current_a <= float(row.keys["to_a"])
