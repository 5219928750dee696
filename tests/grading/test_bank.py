"""The exercise bank: what must hold for every exercise of every page, whatever numbers a learner draws."""

import itertools
import json
import re

import numpy as np
import pytest

from grading.check import check_bank
from grading.exercise import Choice, Choices, Number, Order, Range, Reading, Verdicts
from grading.exercises import EXERCISES, PAGES
from grading.keys import row_keys
from grading.quantities import require_unit
from grading.variants import fill, scenario, table, words

SEEDS = 1000
SCENE = {"shop", "vehicle"}
NUMERIC = [
    (exercise, part)
    for exercise in EXERCISES.values()
    for part in exercise.parts
    if isinstance(part, (Number, Range, Reading))
]
CHOSEN = [
    (exercise, part)
    for exercise in EXERCISES.values()
    for part in exercise.parts
    if isinstance(part, (Choice, Choices))
]


def _part_id(item):
    return item.id if hasattr(item, "id") else str(item)


each_exercise = pytest.mark.parametrize("exercise", EXERCISES.values(), ids=_part_id)
each_numeric = pytest.mark.parametrize(("exercise", "part"), NUMERIC, ids=_part_id)
each_chosen = pytest.mark.parametrize(("exercise", "part"), CHOSEN, ids=_part_id)


@pytest.fixture(scope="module")
def drawn():
    """Return a maker of the scenarios of an exercise and their keys, each made once."""
    made = {}

    def make(exercise):
        if exercise.id not in made:
            scenarios = [
                scenario(exercise, course_key="bank-test", learner=f"learner {number}", round_number=1)
                for number in range(SEEDS)
            ]
            made[exercise.id] = scenarios, row_keys(exercise, scenarios)
        return made[exercise.id]

    return make


def _ends(key):
    """Return the right values of a numeric key as a tuple, and those of each slip."""
    if hasattr(key, "value"):
        return (key.value,), {name: (value,) for name, value in key.slips.items()}
    return (key.low, key.high), dict(key.slips)


def _tolerance(part, value):
    return max(part.absolute_tolerance, part.relative_tolerance * abs(value))


def _apart(part, first, second):
    """Tell whether no answer can lie within the tolerance of both, at one end at least."""
    return any(
        abs(a - b) > _tolerance(part, a) + _tolerance(part, b) for a, b in zip(first, second, strict=True)
    )


def _all_texts(part):
    """Return the texts of a part that a learner may see before it is right."""
    carriers = (*getattr(part, "options", ()), *getattr(part, "rows", ()), *getattr(part, "verdicts", ()))
    slips = (*getattr(part, "slips", ()), *(each.slip for each in carriers if each.slip))
    return [part.ask, *(each.text for each in carriers), *(slip.sentence for slip in slips)]


# How much there is


def test_the_stud_welding_page_is_as_large_as_promised():
    """At least 16 exercises and 48 parts count, some predictions do not, every kind of part is there."""
    exercises = PAGES["stud_welding"].exercises
    counting = [exercise for exercise in exercises if exercise.counts]
    parts = [part for exercise in counting for part in exercise.parts]
    assert len(counting) >= 24
    assert len(parts) >= 70
    assert 4 <= len(exercises) - len(counting) <= 12
    assert {type(part) for part in parts} >= {Number, Range, Choice, Choices, Order, Verdicts}


def test_start_here_has_practice_of_every_kind():
    """Each kind of part can be tried once without marks, and one exercise counts."""
    exercises = PAGES["start_here"].exercises
    practice = [part for exercise in exercises if not exercise.counts for part in exercise.parts]
    assert sorted(type(part).__name__ for part in practice) == sorted(
        kind.__name__ for kind in (Number, Range, Choice, Choices, Order, Verdicts)
    )
    assert sum(exercise.counts for exercise in exercises) == 1


@pytest.mark.parametrize("page", PAGES.values(), ids=_part_id)
def test_every_objective_is_tested(page):
    """Each objective is a sentence about what you can do, and is asked for by an exercise of the page."""
    assert {exercise.objective for exercise in page.exercises} == set(page.objectives)
    assert all(sentence.startswith("You can ") for sentence in page.objectives.values())


# Names and texts


@each_exercise
def test_ids_are_well_formed_and_unique(exercise):
    """Ids are lower-case words; none occurs twice where it has to tell things apart."""
    word = r"[a-z][a-z0-9_]*"
    assert re.fullmatch(rf"{word}\.{word}", exercise.id)
    assert exercise.page in PAGES
    part_ids = [part.id for part in exercise.parts]
    assert len(set(part_ids)) == len(part_ids)
    for part in exercise.parts:
        for items in (getattr(part, name, ()) for name in ("options", "rows", "verdicts", "slips")):
            ids = [item.id for item in items]
            assert len(set(ids)) == len(ids)
            assert all(re.fullmatch(word, item_id) for item_id in [part.id, *ids])


def test_no_exercise_is_lost_between_pages():
    """The registry holds each exercise of each page, under an id of its own."""
    assert sum(len(page.exercises) for page in PAGES.values()) == len(EXERCISES)
    assert all(exercise in PAGES[exercise.page].exercises for exercise in EXERCISES.values())


@each_exercise
def test_texts_are_filled_for_everybody(exercise, drawn):
    """Prompt, reasons and table rows find every name they need, and leave no brace behind."""
    rows = [row.text for part in exercise.parts for row in getattr(part, "rows", ())]
    for numbers in drawn(exercise)[0][:200]:
        filled = [fill(text, words(exercise, numbers)) for text in (exercise.prompt, exercise.reasons, *rows)]
        assert not any(re.search(r"[{}]|\bnan\b", text) for text in filled)


@each_exercise
def test_texts_are_short_plain_sentences(exercise):
    """Nothing that a learner reads runs on: prompts end with a stop, sentences keep under 40 words."""
    asked = [text for part in exercise.parts for text in _all_texts(part)]
    said = [exercise.prompt, exercise.reasons, *asked]
    for text in said:
        assert all(len(sentence.split()) <= 40 for sentence in re.split(r"[.?:!;]\s", text)), text
    assert exercise.prompt.endswith((".", "?", "}"))
    assert exercise.reasons.endswith(".")
    assert 2 <= len(re.findall(r"[.](?:\s|$)", exercise.reasons)) <= 6
    for part in exercise.parts:
        assert part.ask.endswith(("?", ".")), part.ask


@each_exercise
def test_scenarios_are_plain_json(exercise, drawn):
    """What is drawn survives being written as JSON unchanged, so that it means the same for ever."""
    for numbers in drawn(exercise)[0]:
        assert json.loads(json.dumps(numbers, allow_nan=False)) == numbers


# Numbers


@each_numeric
def test_numbers_are_finite_and_positive(exercise, part, drawn):
    """Right values and the values that slips lead to are numbers above 0 for every learner."""
    for keys in drawn(exercise)[1]:
        right, slips = _ends(keys[part.id])
        numbers = np.array([*right, *itertools.chain(*slips.values())], dtype=float)
        assert np.all(np.isfinite(numbers)), keys
        assert np.all(numbers > 0), keys
        assert right == tuple(sorted(right))


@each_numeric
def test_every_number_names_its_slips(exercise, part, drawn):
    """A number or a band knows at least two wrong paths, and the solution computes exactly those."""
    named = {slip.id for slip in part.slips}
    assert len(named) >= 2
    assert set(_ends(drawn(exercise)[1][0][part.id])[1]) == named
    assert part.tolerance_reason.endswith(".")
    assert require_unit(part.unit) == part.unit


@each_numeric
def test_slips_are_told_apart(exercise, part, drawn):
    """No answer can be right and a slip, or two slips, at once."""
    for numbers, keys in zip(*drawn(exercise), strict=True):
        right, slips = _ends(keys[part.id])
        for (one, first), (other, second) in itertools.combinations({"right": right, **slips}.items(), 2):
            assert _apart(part, first, second), (one, other, numbers, keys[part.id])


@each_numeric
def test_neighbours_have_other_numbers(exercise, part, drawn):
    """At least 30 sets of numbers exist, and two learners rarely share one."""
    numbers = [
        json.dumps({name: value for name, value in each.items() if name not in SCENE}, sort_keys=True)
        for each in drawn(exercise)[0]
    ]
    assert len(set(numbers)) >= 30
    assert np.mean([one == other for one, other in itertools.pairwise(numbers)]) < 0.07


@each_exercise
def test_a_table_is_solved_like_its_rows(exercise, drawn):
    """Solving a class at once gives each learner what solving alone gives."""
    scenarios, keys = drawn(exercise)
    for numbers, of_class in zip(scenarios[:40], keys[:40], strict=True):
        (alone,) = row_keys(exercise, [numbers])
        for part in exercise.parts:
            if isinstance(part, (Number, Range, Reading)):
                # 1e-12: the same formula on one value and on many may round its last digit differently.
                one, many = _ends(alone[part.id]), _ends(of_class[part.id])
                np.testing.assert_allclose(one[0], many[0], rtol=1e-12, atol=0)
                for slip in one[1]:
                    np.testing.assert_allclose(one[1][slip], many[1][slip], rtol=1e-12, atol=0)
            else:
                assert alone[part.id] == of_class[part.id]


@each_exercise
def test_solve_takes_a_class_of_arrays(exercise, drawn):
    """The solution is one call on columns; an empty or changed table is not kept from the call before."""
    scenarios, keys = drawn(exercise)
    upside_down = row_keys(exercise, scenarios[::-1])
    assert [str(key) for key in upside_down[::-1][:50]] == [str(key) for key in keys[:50]]
    assert set(exercise.solve(table(scenarios[:2]))) == {part.id for part in exercise.parts}


# Nothing is given away


@each_numeric
def test_prompts_do_not_hold_the_answer(exercise, part, drawn):
    """No text shows the right number, other than by chance for a few learners."""
    hits = 0
    for numbers, keys in zip(*drawn(exercise), strict=True):
        texts = [fill(exercise.prompt, words(exercise, numbers)), *_all_texts(part)]
        shown = [float(number) for number in re.findall(r"\d+(?:\.\d+)?", " ".join(texts))]
        right = _ends(keys[part.id])[0]
        hits += any(abs(number - value) <= _tolerance(part, value) for number in shown for value in right)
    assert hits / SEEDS < 0.12


def _right_places(exercise, part, drawn):
    """Return the places of the right options, over all learners."""
    ids = [option.id for option in part.options]
    return [ids.index(keys[part.id].right) for keys in drawn(exercise)[1]]


def test_the_right_option_has_no_usual_place(drawn):
    """Somebody who always ticks the same place earns no more than by guessing."""
    choices = [(exercise, part) for exercise, part in CHOSEN if isinstance(part, Choice)]
    places = [np.array(_right_places(exercise, part, drawn)) for exercise, part in choices]
    for place in range(3):
        assert 0.15 < np.mean([np.mean(found == place) for found in places]) < 0.5


@each_chosen
def test_wrong_options_say_why(exercise, part, drawn):
    """An option that is right for nobody carries the misunderstanding that leads to it."""
    rights = [keys[part.id].right for keys in drawn(exercise)[1]]
    ever_right = {option for right in rights for option in ((right,) if isinstance(right, str) else right)}
    for option in part.options:
        assert option.id in ever_right or option.slip, option
        assert not option.slip or option.slip.sentence.endswith(".")


@each_exercise
def test_nothing_is_shown_in_the_right_order(exercise, drawn):
    """Things to put in order are listed in another order, and ticking the first ones is not right."""
    for part in exercise.parts:
        ids = [option.id for option in getattr(part, "options", ())]
        for keys in drawn(exercise)[1][:50]:
            if isinstance(part, Order):
                assert sum(a == b for a, b in zip(ids, keys[part.id].right, strict=True)) <= len(ids) / 3
            if isinstance(part, Choices):
                right = keys[part.id].right
                assert set(ids[: len(right)]) != set(right)


@each_exercise
def test_credit_for_a_slip_is_at_most_half(exercise):
    """A wrong path never earns more than half of its part."""
    for part in exercise.parts:
        carriers = (*getattr(part, "options", ()), *getattr(part, "rows", ()))
        slips = (*getattr(part, "slips", ()), *(each.slip for each in carriers if each.slip))
        assert all(0.0 <= slip.credit <= 0.5 for slip in slips)
        assert part.points > 0


def test_the_bank_passes_its_own_check():
    """The check that the command line runs finds nothing either: right answers earn all, slips never do."""
    lines, problems = check_bank()
    assert lines
    assert problems == []
