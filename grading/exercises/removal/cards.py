"""What the job cards share: facts as a record, cases that are no close call, way and reasons from the limits.

A card is a grid of facts. Of its cases only those are drawn in which every number keeps clear of every hard
limit, and in which the way that is right costs at least ``MARGIN`` less than the next allowed one.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import Choice, ChoiceKey, Choices, ChoicesKey
from grading.exercises.building_blocks import chosen, looked_up, wrong
from secondplate import tables
from secondplate.removal import (
    HARD_LIMITS,
    METHODS,
    NO_METHOD,
    VERDICTS,
    WORDS,
    RemovalJob,
    cheapest_allowed,
    mean_parts,
    screen,
    usual_times,
)

HEADING = "Which way for this car?"
MARGIN = 0.15
_WAYS = (*METHODS, NO_METHOD)
_LETTERS, _CLOSE = "abcdefgh"[: len(_WAYS)], "-"  # for each way, and for a close call
# Hardness is known by class, so a case stands half a class or more from the end of a drill's table.
HALF_CLASS_HV = next(row.number for row in tables.load("rivet_hardness") if row.name == "half width")
JOB_FACTS = (
    "behind",
    "bond",
    "second_plate_mm",
    "rivet_hardness_hv",
    "high_voltage",
    "airbag",
    "heat_sensitive_mm",
    "front_clear_mm",
    "aluminium_dust",
    "drill",
)
USUAL = {
    "behind": ("closed",),
    "bond": ("none",),
    "second_plate_mm": (1.9, 2.2, 2.5, 2.8),
    "rivet_hardness_hv": (300, 350, 410, 480),
    "high_voltage": ("none",),
    "airbag": ("none",),
    "heat_sensitive_mm": (400, 1500),
    "front_clear_mm": (60, 150),
    "aluminium_dust": ("no", "yes"),
    "drill": ("high-speed steel",),
    "rivets": tuple(range(6, 19)),
    "damage_min": (60, 75, 90, 120),
}
FACT_WORDS = {
    "behind": "access from behind",
    "bond": "the adhesive",
    "second_plate_mm": "the second plate",
    "hardness_beyond_drill_hv": "the hardness of the rivet and the drill at hand",
    "high_voltage": "high voltage",
    "airbag": "airbags and pretensioners",
    "heat_sensitive_mm": "what lies near and bears no heat",
    "front_clear_mm": "the room round the head",
    "aluminium_dust": "aluminium dust",
}
BEHIND_WORDS = {"open": "open, the buttons can be reached", "closed": "a closed section, no way in"}
BOND_WORDS = {
    "none": "no adhesive",
    "hard": "hard adhesive between the plates",
    "released": "adhesive, already released by the maker's procedure",
}


def facts(**changes):
    """Return the facts of a card as pairs of a name and its values: the usual ones with some changed."""
    return tuple((USUAL | changes).items())


def job_of(table):
    """Return the jobs of a table of cases."""
    return RemovalJob(**{name: table[name] for name in JOB_FACTS})


@dataclass(frozen=True, kw_only=True)
class Judged:
    """Cases with what the library says of them: limits that stand, ways allowed, costs, the way to take."""

    met: Mapping[tuple[str, str], np.ndarray]
    allowed: np.ndarray
    costs_min: np.ndarray
    way: np.ndarray

    @property
    def sure(self):
        """Tell where the way to take is no close call."""
        first, second = np.sort(np.where(self.allowed, self.costs_min, np.inf), axis=0)[:2]
        return (self.allowed.sum(axis=0) < 2) | (second >= (1 + MARGIN) * first)


def judge(table):
    """Judge the cases of a table by hard limits and expected cost."""
    job = job_of(table)
    screening = screen(job)
    choice = cheapest_allowed(job, rivets=table["rivets"], damage_min=table["damage_min"])
    return Judged(
        met={(limit.method, limit.fact): stands for limit, stands in screening.met},
        allowed=np.array([np.asarray(screening.verdicts[name]) == VERDICTS[0] for name in METHODS]),
        costs_min=np.array([choice.costs_min[name] for name in METHODS]),
        way=np.asarray(choice.method),
    )


def _clear_of_limits(table):
    """Tell for each case whether every number keeps clear of every hard limit."""
    clear = np.abs(job_of(table).hardness_beyond_drill_hv) >= HALF_CLASS_HV
    for limit in HARD_LIMITS:
        if limit.side != "is" and limit.fact in table:
            clear &= np.abs(table[limit.fact] - float(limit.value)) >= MARGIN * float(limit.value)
    return clear


@dataclass(frozen=True, kw_only=True)
class Cases:
    """The cases of a card: the values of every fact, and the numbers of the rows by the way to take."""

    facts: Mapping[str, np.ndarray]
    by_way: Mapping[str, np.ndarray]

    def row(self, number):
        """Return one case as plain values."""
        places = np.unravel_index(number, [values.size for values in self.facts.values()])
        pairs = zip(self.facts.items(), places, strict=True)
        return {name: values[place].item() for (name, values), place in pairs}


def _columns(card_facts):
    """Return every case of a card, each fact as a column."""
    grid = np.meshgrid(*(np.array(values) for _, values in card_facts), indexing="ij")
    return {name: column.ravel() for (name, _), column in zip(card_facts, grid, strict=True)}


@worked_out
def _plain_ways(card_facts, keep):
    """Return for each case a letter: that of the way to take, or a dash where it is a close call."""
    columns = _columns(card_facts)
    judged = judge(columns)
    good = judged.sure & _clear_of_limits(columns)
    if keep:
        good &= keep(columns, judged)
    letters = np.select([judged.way == way for way in _WAYS], list(_LETTERS), default=_CLOSE)
    return "".join(np.where(good, letters, _CLOSE).tolist())


@cache
def cases(card_facts, keep=None):
    """Return the cases of a card that are no close call; ``keep`` may ask for more than that."""
    letters = np.frombuffer(_plain_ways(card_facts, keep).encode(), dtype=np.uint8)
    return Cases(
        facts={name: np.array(values) for name, values in card_facts},
        by_way={way: np.flatnonzero(letters == ord(one)) for way, one in zip(_WAYS, _LETTERS, strict=True)},
    )


def draw_case(draw, card_facts, *, ways, keep=None):
    """Draw the way that is to be right, then a case of the card in which it is."""
    found = cases(card_facts, keep)
    rows = found.by_way[draw.pick("way", ways)]
    return found.row(rows[draw.whole("case", 0, rows.size - 1)])


def outlook(method, table):
    """Return minutes of work and damaged places of one way, for each case of a table or for one case."""
    parts = mean_parts(usual_times(method), rivets=table["rivets"], second_plate_mm=table["second_plate_mm"])
    return np.array([parts.minutes, parts.damaged])


def card_words(scenario):
    """Return what a card says in words: the joint, and what the table of times gives for the row."""
    told = [
        f"{method} {minutes:.1f} min of work and {damaged:.3f} damaged places"
        for method in METHODS
        for minutes, damaged in [outlook(method, scenario)]
    ]
    return {
        "behind_words": BEHIND_WORDS[scenario["behind"]],
        "bond_words": BOND_WORDS[scenario["bond"]],
        "outlook_words": "; ".join(told),
    }


def prompt(place, near, *, more=""):
    """Return the text of a card: where it is, its facts in groups, and what the ways take on the average."""
    groups = (
        f"Job card of {{shop}}, {{vehicle}}. {place}",
        "Joint: behind it {behind_words}; {bond_words}; second plate of aluminium, {second_plate_mm} mm.",
        "Rivets: {rivets} in the row, about {rivet_hardness_hv} HV. Best drill at hand: {drill}.",
        "Round it: {front_clear_mm} mm free round each head; "
        f"{near}, {{heat_sensitive_mm}} mm away; high voltage near: {{high_voltage}}; "
        "airbag or pretensioner near: {airbag}; aluminium dust near or in the extractor: {aluminium_dust}.",
        "The row on the average, by the table of times: {outlook_words}. "
        "A damaged place costs {damage_min} min.",
    )
    return "\n\n".join((*groups, more) if more else groups)


NO_WAY = "No way yet: something on the job has to change first."
WAY_SLIPS = {
    "pull": "Hold the card against every limit of a pull. If none stands, compare what the row costs.",
    "drill": "Hold the card against every limit of a drill. If none stands, compare what the row costs.",
    "grind": "Hold the card against every limit of grinding. If none stands, compare what the row costs.",
    "punch": "Hold the card against every limit of a punch. If none stands, compare what the row costs.",
    NO_METHOD: "At least one way has no limit against it. Go through all four.",
}


def way_part(*order, none=NO_WAY):
    """Return the part that asks for the way; ``order`` is how the options are listed."""
    texts = {method: f"{words[0].upper()}{words[1:]}." for method, words in WORDS.items()} | {NO_METHOD: none}
    return Choice(
        id="way",
        ask="Which way, as the job stands? Hard limits first, then the least cost with damage counted.",
        options=tuple(wrong(name, texts[name], WAY_SLIPS[name]) for name in order),
    )


@dataclass(frozen=True, kw_only=True)
class Reason:
    """Something that may hold on a card: its text, where it holds, what a wrong tick is told."""

    id: str
    text: str
    holds: Callable[[Judged], np.ndarray]
    sentence: str

    @property
    def option(self):
        """The option to tick."""
        return wrong(self.id, self.text, self.sentence)


def barred(method, fact):
    """Return the reason that a limit stands against a way, in the words of the table of limits."""
    limit = next(each for each in HARD_LIMITS if (each.method, each.fact) == (method, fact))
    return Reason(
        id=f"{method}_{fact}",
        text=f"Against {method}: {limit.reason[0].lower()}{limit.reason[1:]}",
        holds=lambda judged: judged.met[method, fact],
        sentence=f"This limit is about {FACT_WORDS[fact]}. Read that line of the card again.",
    )


def cheapest(method):
    """Return the reason that of several ways that are left one costs the least."""
    return Reason(
        id=f"{method}_cheapest",
        text=f"More than one way is left, and {method} costs the least with damage counted.",
        holds=lambda judged: (judged.allowed.sum(axis=0) > 1) & (judged.way == method),
        sentence="Strike out the ways that are barred. Then add price times damaged places to the minutes.",
    )


def never(reason_id, text, sentence):
    """Return something that people say and that never holds."""
    return Reason(
        id=reason_id,
        text=text,
        holds=lambda judged: np.zeros(judged.way.shape, dtype=bool),
        sentence=sentence,
    )


def reasons_part(*reasons):
    """Return the part that asks which reasons hold on the card."""
    return Choices(
        id="reasons",
        ask="Which of these hold on this card?",
        options=tuple(reason.option for reason in reasons),
        points=1.5,
    )


def way_and_reasons(judged, reasons):
    """Return the keys of the way and of the reasons."""
    holds = np.array([reason.holds(judged) for reason in reasons]).T
    return {
        "way": ChoiceKey(right=[str(way) for way in judged.way]),
        "reasons": ChoicesKey(
            right=[
                tuple(reason.id for reason, stands in zip(reasons, row, strict=True) if stands)
                for row in holds
            ]
        ),
    }


def by_reach(hardness_hv, drills):
    """Return for each rivet the first of some drills whose tables reach its hardness, or ``none``."""
    usual = {"behind": "closed", "bond": "none", "second_plate_mm": 2.0}

    def first(text):
        reach = (
            drill
            for drill in drills
            if RemovalJob(**usual, rivet_hardness_hv=float(text), drill=drill).hardness_beyond_drill_hv <= 0
        )
        return next(reach, NO_METHOD)

    return looked_up(np.asarray(hardness_hv).astype(str), first)


def turned_by(changes, table, judged):
    """Return for each change of the job where it turns the way, and where none leaves a close call.

    ``changes`` gives for each name a function from a table to the facts that are changed in it.
    """
    after = {name: judge(table | change(table)) for name, change in changes.items()}
    turned = {name: each.way != judged.way for name, each in after.items()}
    return turned, np.all([each.sure for each in after.values()], axis=0)


def one_turns(changes, table, judged):
    """Tell where at most one of some changes turns the way, and plainly so."""
    turned, sure = turned_by(changes, table, judged)
    return sure & (np.sum(list(turned.values()), axis=0) <= 1)


def turning_key(changes, table, judged):
    """Return the key of the part that asks which change turns the way; ``nothing`` where none does."""
    turned, _ = turned_by(changes, table, judged)
    return ChoiceKey(right=chosen(list(turned.values()), list(turned), otherwise="nothing"))
