"""Pictures of a class: their words tell the numbers, and what cannot be drawn is refused."""

from xml.etree import ElementTree

import numpy as np
import pytest

from drawings.class_charts import exercise_map, marks_spread, objective_spread

COUNTS = [0, 0, 1, 0, 2, 3, 5, 8, 4, 1]
SHARES = np.array([[0.1, np.nan], [0.4, np.nan], [0.5, 0.25], [0.8, 0.75], [1.0, np.nan]])

PICTURES = {
    "spread": (marks_spread, (COUNTS,), ("1 learner from 20 to 30 %", "8 learners from 70 to 80 %")),
    "spread of nobody": (marks_spread, ([0] * 10,), ("nobody",)),
    "objectives": (
        objective_spread,
        (["set up", "gas"], SHARES),
        ("Set up: median 50%, the middle half from 40% to 80%.", "Gas: 25%, 75%."),
    ),
    "objective of nobody": (objective_spread, (["gas"], [[np.nan]]), ("Gas: nobody handed it in.",)),
    "exercises": (
        exercise_map,
        (["Gas need", "Arc", "Cable"], [0.5, 0.8, 0.3], [0.4, -0.1, 0.2]),
        ("3 exercises", "30% to 80%", "\u22120.1 to 0.4", "Below zero: Arc."),
    ),
    "one exercise": (exercise_map, (["Arc"], [1.0], [0.0]), ("1 exercise by", "None lies below zero.")),
}


@pytest.mark.parametrize("name", PICTURES)
def test_words_tell_the_numbers(name):
    """The words hold every number that the drawing shows, and the drawing is whole and small."""
    draw, given, words = PICTURES[name]
    picture = draw(*given)
    for each in words:
        assert each in picture.alt
    tags = {element.tag.rpartition("}")[2] for element in ElementTree.fromstring(picture.svg).iter()}
    assert not tags & {"text", "script", "image"}
    assert len(picture.svg) < 300_000


def test_same_numbers_give_the_same_bytes():
    """The same class gives the same drawing."""
    assert objective_spread(["a", "b"], SHARES).svg == objective_spread(["a", "b"], SHARES).svg


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: marks_spread([1, 2]), "number of tenths must be between 10 and 10, got 2"),
        (lambda: marks_spread([0.5] * 10), "count must be a whole number"),
        (
            lambda: objective_spread([], np.zeros((3, 0))),
            "number of objectives must be between 1 and 40, got 0",
        ),
        (
            lambda: objective_spread(["gas"], np.zeros((3, 2))),
            "number of columns must be between 1 and 1, got 2",
        ),
        (lambda: exercise_map([], [], []), "number of exercises must be between 1 and 400, got 0"),
        (lambda: exercise_map(["a"], [1.2], [0]), "difficulties must be between 0 and 1, got 1.2"),
        (lambda: exercise_map(["a"], [0.2], [-2]), "differences must be between -1 and 1, got -2"),
    ],
)
def test_what_cannot_be_drawn_is_refused(call, sentence):
    """Wrong numbers are refused in one sentence."""
    with pytest.raises(ValueError, match=f"^{sentence}"):
        call()
