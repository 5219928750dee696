"""Exercises on the ways to take a rivet out: what each does to the second plate, and what rules it out."""

from functools import cache

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Choices,
    ChoicesKey,
    Exercise,
    Order,
    OrderKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import chosen, option, same, wrong
from grading.exercises.scenes import scene
from secondplate import tables
from secondplate.removal import (
    DRILLS,
    HARD_LIMITS,
    METHODS,
    VERDICTS,
    WORDS,
    RemovalJob,
    mean_of_band,
    screen,
    usual_times,
)

WHICH_WAYS = "Which ways out are there?"
RULED_OUT = "What rules a way out?"
ALLOWED, NOT_BEFORE, _ = VERDICTS


def way(method):
    """Return a way of removal in words, as it stands in a table."""
    return f"{WORDS[method][0].upper()}{WORDS[method][1:]}."


# What a way does to the second plate, by what the limit on a thin plate says of it.
HARMS = {"dishes": "dished", "runs into": "cut", "dents": "dented"}


def _harm(method):
    """Return what a way can do to the second plate; without a limit on its thickness it leaves it alone."""
    reasons = " ".join(
        limit.reason for limit in HARD_LIMITS if (limit.method, limit.fact) == (method, "second_plate_mm")
    )
    return next((harm for words, harm in HARMS.items() if words in reasons), "left_in")


def _rarest_harm_first():
    """Return the ways by how often they harm the second plate, by the middle of their bands."""
    return tuple(sorted(METHODS, key=lambda method: mean_of_band(usual_times(method).damage_probability)))


def _solve_ways(table):
    judged = all(row.source == "own_judgement" for row in tables.load("removal_times"))
    return {
        "harm": VerdictsKey(right={method: same(table, _harm(method)) for method in METHODS}),
        "order": OrderKey(right=same(table, _rarest_harm_first())),
        "trust": ChoiceKey(right=same(table, "own_count" if judged else "study")),
    }


WAYS_TABLE = Exercise(
    id="removal.ways_table",
    objective="ways",
    title="Four ways, four kinds of harm",
    prompt=(
        "A panel of {vehicle} comes off at {shop}. "
        "The second plate stays on the car and is to stay whole. "
        "Four ways to take the rivets out are talked about. "
        "How often each harms the second plate stands in the table above."
    ),
    parts=(
        Verdicts(
            id="harm",
            ask="What does each way do to the second plate when it goes wrong?",
            points=2.0,
            rows=tuple(option(method, way(method)) for method in ("drill", "pull", "punch", "grind")),
            verdicts=(
                option("dented", "strikes it from behind and dents it"),
                option("cut", "runs into it and takes metal away"),
                option(
                    "left_in", "takes the head alone; the shank is still in it and harms it on the way out"
                ),
                option("dished", "lifts it and dishes it where it is thin"),
            ),
        ),
        Order(
            id="order",
            ask="Order the ways by the table: what harms the second plate least often comes first.",
            options=tuple(option(method, way(method)) for method in ("drill", "pull", "punch", "grind")),
        ),
        Choice(
            id="trust",
            ask="How far do you trust the figures of that table?",
            options=(
                wrong(
                    "study",
                    "Fully: they come from a large study.",
                    "Read what the table says it rests on. No such study was found.",
                ),
                option("own_count", "As a start, until the shop's own count takes their place."),
                wrong(
                    "not_at_all",
                    "Not at all: without a measurement no order can be given.",
                    "The bands are wide, but each is a judgement with reasons, and your own count mends it.",
                ),
            ),
        ),
    ),
    draw=scene,
    solve=_solve_ways,
    reasons=(
        "A pull lifts the plate, a drill runs into it, a blow from behind dents it. "
        "A ground head leaves the plate alone, but the shank has to be driven out, and that harms it. "
        "By the bands of the table the pull harms the plate least often and the drill most often. "
        "Those bands are judgement: count in your own shop what happens."
    ),
    read_again=WHICH_WAYS,
)


def ways_left(job):
    """Return for each of many jobs the ways that no limit stands against."""
    verdicts = screen(job).verdicts
    rows = np.stack(np.broadcast_arrays(*(verdicts[method] for method in METHODS))).T
    return [
        tuple(method for method, word in zip(METHODS, row, strict=True) if word == ALLOWED) for row in rows
    ]


def grid(**facts):
    """Return every combination of facts, as columns by name."""
    columns = np.meshgrid(*(np.array(values) for values in facts.values()), indexing="ij")
    return dict(zip(facts, (column.ravel() for column in columns), strict=True))


def rows_of(columns):
    """Return columns as one mapping of plain values for each row."""
    values = zip(*(column.tolist() for column in columns.values()), strict=True)
    return [dict(zip(columns, row, strict=True)) for row in values]


# Numbers keep clear of every limit, so that no verdict hangs on how a number is read.
FACTS = {
    "bond": ("none", "hard", "released"),
    "second_plate_mm": (0.7, 1.0, 1.4, 2.0, 2.6),
    "rivet_hardness_hv": (300, 420, 480, 520),
    "front_clear_mm": (22, 60, 120),
    "heat_sensitive_mm": (30, 400, 1500),
}
BOND_WORDS = {
    "none": "no adhesive",
    "hard": "hard adhesive",
    "released": "adhesive, already released",
}
PULL_LIMITS = {limit.fact: limit for limit in HARD_LIMITS if limit.method == "pull" and limit.fact in FACTS}


@cache
def _barred_pulls():
    """Return jobs with one limit against the pull, by that limit and then by what else is barred."""
    columns = grid(behind=("open", "closed"), **FACTS, aluminium_dust=("no", "yes"), drill=DRILLS)
    found, job = {}, RemovalJob(**columns)
    standing = {
        limit.fact: stands
        for limit, stands in screen(job).met
        if limit.method == "pull" and limit.fact in PULL_LIMITS
    }
    stands = np.array(list(standing.values()))
    alone = stands.sum(axis=0) == 1
    columns = {name: column[alone] for name, column in columns.items()}
    against = np.array(list(standing))[stands[:, alone].argmax(axis=0)].tolist()
    for fact, facts, left in zip(against, rows_of(columns), ways_left(RemovalJob(**columns)), strict=True):
        if left:
            found.setdefault(fact, {}).setdefault(left, []).append(facts)
    return found


def _draw_limits(draw):
    by_left = _barred_pulls()[draw.pick("against", sorted(PULL_LIMITS))]
    return scene(draw) | draw.pick("job", by_left[draw.pick("left", sorted(by_left))])


def _solve_limits(table):
    job = RemovalJob(
        **{name: table[name] for name in ("behind", *FACTS, "aluminium_dust", "drill")},
    )
    stands = [limit.met(job) for limit in PULL_LIMITS.values()]
    barred = [tuple(method for method in METHODS if method not in left) for left in ways_left(job)]
    return {
        "barred": ChoicesKey(right=barred),
        "lifted": ChoiceKey(right=chosen(stands, list(PULL_LIMITS), otherwise="bond")),
    }


HARD_LIMITS_EXERCISE = Exercise(
    id="removal.hard_limits",
    objective="ways",
    title="What does this job rule out?",
    prompt=(
        "A job card at {shop} for {vehicle}. "
        "Behind the joint: {behind}. Between the plates: {bond_words}. "
        "Second plate {second_plate_mm} mm, rivet {rivet_hardness_hv} HV, best drill at hand: {drill}. "
        "Free round the head: {front_clear_mm} mm. Next heat-sensitive part: {heat_sensitive_mm} mm away. "
        "Aluminium dust near or in the extractor: {aluminium_dust}. "
        "No airbag and no high voltage near. "
        "Go by the table of hard limits above."
    ),
    shown=lambda scenario: {"bond_words": BOND_WORDS[scenario["bond"]]},
    parts=(
        Choices(
            id="barred",
            ask="Which ways do the limits bar as the job stands?",
            points=2.0,
            options=tuple(option(method, way(method)) for method in ("drill", "punch", "grind", "pull")),
        ),
        Choice(
            id="lifted",
            ask="What would give the pull back?",
            options=tuple(option(fact, limit.lifted_by) for fact, limit in PULL_LIMITS.items()),
        ),
    ),
    draw=_draw_limits,
    solve=_solve_limits,
    reasons=(
        "Take the ways one by one and hold every limit of the table against the card. "
        "One limit that is met bars the way, however quick or cheap it is. "
        "Where work on the job lifts the limit, do that work first and judge again. "
        "What the limits leave is still no repair procedure: the vehicle maker's comes first."
    ),
    read_again=RULED_OUT,
)

PLACES = {
    "sill": "Foot of the sill",
    "roof": "Roof rail",
    "arch": "Rear wheel arch",
    "tower": "Strut tower",
}
# What may be left at a place with a closed section behind it; one place of each learner has nothing left.
SETS = {
    "pull": ("pull",),
    "drill": ("drill",),
    "pull_drill": ("pull", "drill"),
    "grind": ("grind",),
}
NOTHING = "nothing"


def _closed(columns, drill):
    """Return places with a closed section behind them as jobs."""
    return RemovalJob(behind="closed", drill=drill, **columns)


@cache
def _places(drill):
    """Return the facts of places by what is left there; where nothing is, work gives something back."""
    columns = grid(**FACTS)
    job = _closed(columns, drill)
    later = np.any([verdict == NOT_BEFORE for verdict in screen(job).verdicts.values()], axis=0)
    found, names = {}, {left: name for name, left in SETS.items()}
    for number, (facts, left) in enumerate(zip(rows_of(columns), ways_left(job), strict=True)):
        if left in names or (not left and later[number]):
            found.setdefault(names.get(left, NOTHING), []).append(facts)
    return found


def _draw_places(draw):
    drill = draw.pick("drill", DRILLS)
    found = _places(drill)
    able = draw.shuffle("able", [name for name in SETS if name in found])[: len(PLACES) - 1]
    wanted = draw.shuffle("wanted", [NOTHING, *able])
    scenario = scene(draw) | {"drill": drill}
    for place, name in zip(PLACES, wanted, strict=True):
        facts = draw.pick(f"facts {place}", found[name])
        scenario |= {f"{place}_{fact}": value for fact, value in facts.items()}
    return scenario


def _place_words(scenario):
    """Return what is known of each place in words."""
    return {
        f"{place}_words": (
            f"{name}: {BOND_WORDS[scenario[f'{place}_bond']]}, "
            f"second plate {scenario[f'{place}_second_plate_mm']} mm, "
            f"rivet {scenario[f'{place}_rivet_hardness_hv']} HV, "
            f"{scenario[f'{place}_front_clear_mm']} mm free round the head, "
            f"trim {scenario[f'{place}_heat_sensitive_mm']} mm away"
        )
        for place, name in PLACES.items()
    }


def _solve_places(table):
    names = {left: name for name, left in SETS.items()}
    right, later = {}, []
    for place in PLACES:
        job = _closed({fact: table[f"{place}_{fact}"] for fact in FACTS}, table["drill"])
        right[place] = [names.get(left, NOTHING) for left in ways_left(job)]
        words = np.stack(np.broadcast_arrays(*screen(job).verdicts.values()))
        later.append(np.all(words != ALLOWED, axis=0) & np.any(words == NOT_BEFORE, axis=0))
    return {
        "left": VerdictsKey(right=right),
        "next": ChoiceKey(right=chosen([np.any(later, axis=0)], ["lift"], otherwise="fewest")),
    }


ONE_SIDE = Exercise(
    id="removal.one_side",
    objective="ways",
    title="Nobody can get behind",
    prompt=(
        "Four places on {vehicle} at {shop}. "
        "Behind each of them the section is closed, and nobody may open it. "
        "The best drill at hand is {drill}. "
        "No aluminium dust, no airbag and no high voltage is near. "
        "Go by the table of hard limits above."
    ),
    shown=_place_words,
    parts=(
        Verdicts(
            id="left",
            ask="Which ways do the limits leave at each place, as it stands?",
            points=2.0,
            rows=tuple(option(place, "{" + place + "_words}.") for place in PLACES),
            verdicts=(
                option("drill", "drill only"),
                option("grind", "grind the head only"),
                option(NOTHING, "none as it stands"),
                option("pull_drill", "pull or drill"),
                option("pull", "pull only"),
            ),
        ),
        Choice(
            id="next",
            ask="One place has no way left. What do you do there?",
            options=(
                wrong(
                    "fewest",
                    "Take the way with the fewest limits against it.",
                    "Limits are not votes. One of them that is met is enough to do the harm it names.",
                ),
                wrong(
                    "best_hand",
                    "Give it to the best hand in the shop.",
                    "No skill changes how hard the rivet is, how thin the plate, or what burns beside it.",
                ),
                option("lift", "Lift a limit that work can lift, by the maker's procedure, and judge again."),
            ),
        ),
    ),
    draw=_draw_places,
    solve=_solve_places,
    reasons=(
        "With a closed section the punch is out everywhere. "
        "Then hold adhesive, plate, hardness, room and trim against the limits of each way that is left. "
        "A limit that says not before is lifted by work: adhesive released, trim taken off, plate supported. "
        "One that refuses asks for other means, or for another way."
    ),
    read_again=RULED_OUT,
)

EXERCISES = (WAYS_TABLE, HARD_LIMITS_EXERCISE, ONE_SIDE)
