"""What an exercise is made of: parts, slips, keys. Plain frozen records, no behaviour beyond self-checks.

How parts are scored is in ``scoring``; how numbers are drawn is in ``variants``.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, NamedTuple


@dataclass(frozen=True, kw_only=True)
class Slip:
    """A wrong path that people really take, recognised by the answer it leads to.

    ``id`` is unique within its part; instructor notes key on ``<exercise id>.<part id>.<slip id>``.
    ``sentence`` tells the learner what was probably done and where to look; it gives no number away.
    ``credit`` is the share of the part's points that the slip still earns, 0 to 0.5.
    """

    id: str
    sentence: str
    credit: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Option:
    """One thing to choose, to put in order, or one verdict: ``id`` is stored, ``text`` is shown.

    A wrong option may carry a ``slip``: the misunderstanding that leads people to choose it.
    """

    id: str
    text: str
    slip: Slip | None = None


@dataclass(frozen=True, kw_only=True)
class Number:
    """A number with its unit, typed into one field; any compatible unit is read."""

    id: str
    ask: str
    unit: str
    slips: tuple[Slip, ...]
    tolerance_reason: str
    relative_tolerance: float = 0.0
    absolute_tolerance: float = 0.0
    points: float = 1.0


@dataclass(frozen=True, kw_only=True)
class Range:
    """A band: a low and a high value with units, each typed into its own field, each worth half."""

    id: str
    ask: str
    unit: str
    slips: tuple[Slip, ...]
    tolerance_reason: str
    relative_tolerance: float = 0.0
    absolute_tolerance: float = 0.0
    points: float = 1.0


@dataclass(frozen=True, kw_only=True)
class Reading:
    """A distance read off the exercise's figure with two caliper lines; scored like a number.

    ``axis`` is the direction that is measured along, ``vertical`` or ``horizontal``. The lines move within
    ``span``, the lowest and highest place in the figure's own millimetres. ``absolute_tolerance`` is what an
    eye can tell apart on the figure.
    """

    id: str
    ask: str
    unit: str
    slips: tuple[Slip, ...]
    tolerance_reason: str
    absolute_tolerance: float
    axis: str
    span: tuple[float, float]
    relative_tolerance: float = 0.0
    points: float = 1.0


@dataclass(frozen=True, kw_only=True)
class Choice:
    """Exactly one option is right."""

    id: str
    ask: str
    options: tuple[Option, ...]
    points: float = 1.0


@dataclass(frozen=True, kw_only=True)
class Choices:
    """Any number of options are right; a wrongly ticked option takes away what a right one gives."""

    id: str
    ask: str
    options: tuple[Option, ...]
    points: float = 1.0

    @cached_property
    def option_ids(self):
        """Ids of the options."""
        return frozenset(option.id for option in self.options)


@dataclass(frozen=True, kw_only=True)
class Order:
    """Put the items in order; the longest run of items kept in the right order earns its share."""

    id: str
    ask: str
    options: tuple[Option, ...]
    points: float = 1.0

    @cached_property
    def option_ids(self):
        """Ids of the options."""
        return frozenset(option.id for option in self.options)


@dataclass(frozen=True, kw_only=True)
class Verdicts:
    """A table: each row gets one of the verdicts.

    ``rows`` carry ``{name}`` places that are filled from the scenario.
    """

    id: str
    ask: str
    rows: tuple[Option, ...]
    verdicts: tuple[Option, ...]
    points: float = 1.0

    @cached_property
    def row_ids(self):
        """Ids of the rows."""
        return frozenset(row.id for row in self.rows)

    @cached_property
    def verdict_ids(self):
        """Ids of the verdicts."""
        return frozenset(verdict.id for verdict in self.verdicts)


@dataclass(frozen=True, kw_only=True)
class Criterion:
    """One rule of work that a log of the bench is judged by.

    ``id`` is one of ``secondplate.bench.FINDINGS``. ``weight`` is its share of the part's points; the slip
    names those who broke it.
    """

    id: str
    weight: float
    slip: Slip


@dataclass(frozen=True, kw_only=True)
class Bench:
    """Studs welded and pulled on the virtual bench, one after the other; the learner's log is marked.

    ``settings`` are the names of what the learner may set, in the order of the form; the others stay as the
    day begins. ``stop_reasons`` are ``secondplate.bench.STOP_REASONS`` in words. ``tries`` is after how many
    pulls in a row without a sound weld the work must stop; None is the library's own rule.
    """

    id: str
    ask: str
    settings: tuple[str, ...]
    criteria: tuple[Criterion, ...]
    stop_reasons: tuple[Option, ...]
    tries: int | None = None
    points: float = 1.0

    @property
    def slips(self):
        """Slips of all criteria."""
        return tuple(criterion.slip for criterion in self.criteria)


@dataclass(frozen=True, kw_only=True)
class RowRun:
    """A plan for a whole row of rivets, in a few whole numbers, that may be run on the row of the day.

    Marked by what the plan costs on the average beside the best plan, not by the luck of its run: all points
    where it costs up to the share ``full_within`` more, none from ``nothing_beyond`` on, a part of them
    between. Slips are the habits of ``secondplate.bench.HABITS``, with underscores.
    """

    id: str
    ask: str
    slips: tuple[Slip, ...]
    full_within: float
    nothing_beyond: float
    tolerance_reason: str
    points: float = 1.0


Part = Number | Range | Reading | Choice | Choices | Order | Verdicts | Bench | RowRun


# What ``solve`` returns for each part. Every sequence has one entry per row of the scenario table. The key of
# one row is of the same kind, with single values; those of numbers are tuples: a school has millions of them.


class NumberKey(NamedTuple):
    """Right values in the part's unit, and for each slip id the values that the slip leads to.

    The key of a reading is of this kind too: its value is the distance between the lines.
    """

    value: Sequence[float]
    slips: Mapping[str, Sequence[float]]


@dataclass(frozen=True, kw_only=True)
class RangeKey:
    """Right low and high values in the part's unit, and ``(low, high)`` for each slip id."""

    low: Sequence[float]
    high: Sequence[float]
    slips: Mapping[str, tuple[Sequence[float], Sequence[float]]]


@dataclass(frozen=True, kw_only=True)
class ChoiceKey:
    """The id of the right option."""

    right: Sequence[str]


@dataclass(frozen=True, kw_only=True)
class ChoicesKey:
    """The ids of the right options, as a tuple for each row."""

    right: Sequence[tuple[str, ...]]


@dataclass(frozen=True, kw_only=True)
class OrderKey:
    """The option ids in the right order, as a tuple for each row."""

    right: Sequence[tuple[str, ...]]


@dataclass(frozen=True, kw_only=True)
class VerdictsKey:
    """For each row of the table, by row id, the id of the right verdict."""

    right: Mapping[str, Sequence[str]]


@dataclass(frozen=True, kw_only=True)
class BenchKey:
    """The day at the bench: its seed, its rivet and machine, and how the machine stands when work begins.

    ``job`` holds ``secondplate.bench.WeldJob``, ``start`` the value of every setting by name. ``worked``
    keeps what was found out about this day, so that nothing is computed twice; it is no part of the key.
    """

    seed: Sequence[bytes]
    job: Sequence[Any]
    start: Sequence[Mapping[str, Any]]
    worked: dict = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True, kw_only=True)
class RowRunKey:
    """A row and its day, ``secondplate.bench.RowDay``, and the seed of the run that the learner may see."""

    seed: Sequence[bytes]
    day: Sequence[Any] = field(repr=False)


Key = NumberKey | RangeKey | ChoiceKey | ChoicesKey | OrderKey | VerdictsKey | BenchKey | RowRunKey


@dataclass(frozen=True, kw_only=True)
class Figure:
    """A picture that an exercise shows: the name of a drawing, and what it draws, as plain values.

    Only the form that shows it knows the drawing, so that marking needs none.
    """

    name: str
    arguments: Mapping[str, Any] = field(default_factory=dict)


@dataclass(frozen=True, kw_only=True)
class Exercise:
    """One exercise: own numbers from a seed, parts to answer, and a solution computed by the library.

    ``id`` is ``<page>.<slug>``. ``draw`` takes a ``variants.Draw`` and returns the scenario: plain JSON
    values by name. ``prompt`` carries ``{name}`` places (with format specifications) filled from the
    scenario and from ``shown`` (further text computed from one scenario, for instance a name in words).
    ``solve`` takes the scenario table, a mapping from name to a numpy array with one entry per scenario,
    and returns a key for each part id. ``reasons`` is the worked way in words, shown after the last try;
    ``read_again`` is the heading of the page to go back to. ``counts`` is False for predictions and
    practice, which are saved and answered but carry no marks. ``figure`` returns what the form draws for one
    scenario, where there is something to look at.
    """

    id: str
    objective: str
    title: str
    prompt: str
    parts: tuple[Part, ...]
    draw: Callable[[Any], dict[str, Any]]
    solve: Callable[[Mapping[str, Any]], dict[str, Key]]
    reasons: str
    read_again: str
    shown: Callable[[dict[str, Any]], dict[str, str]] | None = None
    figure: Callable[[dict[str, Any]], Figure] | None = None
    counts: bool = True

    @cached_property
    def points(self):
        """Sum of the points of the parts; 0 where the exercise does not count."""
        return sum(part.points for part in self.parts) if self.counts else 0.0

    @cached_property
    def part_ids(self):
        """Ids of the parts."""
        return frozenset(part.id for part in self.parts)

    @property
    def page(self):
        """Id of the page that the exercise belongs to."""
        return self.id.partition(".")[0]


@dataclass(frozen=True, kw_only=True)
class Page:
    """One page of the workbook: where its notebook lies, its objectives and its exercises in order.

    ``folder`` is relative to the workbook; ``assignment`` is the name that the gradebook uses.
    ``practical_cue`` is what stands in the practical's cell before anybody writes there.
    """

    id: str
    title: str
    folder: str
    notebook: str
    assignment: str
    objectives: Mapping[str, str]
    exercises: tuple[Exercise, ...] = field(default=())
    practical_points: float = 0.0
    practical_cue: str = ""
