"""Catalogues worked out beforehand: what the file holds is what the library says."""

import numpy as np
import pytest

from grading import catalogues
from grading.exercises import EXERCISES
from grading.keys import keys_for
from grading.variants import words
from secondplate.bands import Band

STORED = [
    pytest.param(name, arguments, id=f"{name} {number}")
    for name, asked in catalogues.stored_arguments().items()
    for number, arguments in enumerate(asked)
]


def assert_same(one, other):
    """Hold two values together: the same kinds and texts, numbers as near as the last digits of a machine."""
    assert type(one) is type(other)
    if isinstance(one, (list, tuple)):
        assert len(one) == len(other)
        for each, beside in zip(one, other, strict=True):
            assert_same(each, beside)
    elif isinstance(one, dict):
        assert list(one) == list(other)
        for key in one:
            assert_same(one[key], other[key])
    elif isinstance(one, np.ndarray) and one.dtype.kind == "f":
        # rtol: processors round the last of 16 digits in unlike ways, and models take thousands of steps
        np.testing.assert_allclose(one, other, rtol=1e-9, atol=1e-12)
    elif isinstance(one, np.ndarray):
        np.testing.assert_array_equal(one, other)
    elif isinstance(one, Band):
        assert_same(vars(one), vars(other))
    else:
        assert one == (pytest.approx(other, rel=1e-9) if isinstance(one, float) else other)  # as above


@pytest.mark.parametrize(("name", "arguments"), STORED)
def test_the_file_holds_what_the_library_says(name, arguments):
    """Each result is worked out again, and both are read from what is written of them."""
    stored = catalogues._of_function(name)[catalogues.written(arguments)]
    again = catalogues.FUNCTIONS[name](*arguments)
    assert_same(catalogues.read(stored), catalogues.read(catalogues.written(again)))


def test_what_learners_are_given_stands_in_the_file(monkeypatch):
    """Twenty learners ask for nothing that the file has not, and no function is without results there."""
    monkeypatch.setattr(catalogues, "ASKED", catalogues.ASKED | {})
    catalogues.ASKED.clear()
    wanted = [(each, f"anybody {number}", 1) for each in EXERCISES for number in range(20)]
    keys = keys_for(wanted, course_key="catalogues", exercises=EXERCISES)
    assert not [key.problem for key in keys.values() if key.problem]
    for (exercise_id, _, _), key in keys.items():
        words(EXERCISES[exercise_id], key.numbers)
    assert {name: list(asked) for name, asked in catalogues.ASKED.items() if asked} == {}
    assert set(catalogues.FUNCTIONS) == set(catalogues.stored_arguments())


@pytest.mark.parametrize(
    "value",
    [
        (1, 2.5, "three", None, True),
        {"a": [1, (2,)], ("b", 3): {4: 5.0}},
        Band(low=1.0, best=2.0, high=3.0, basis="a guess"),
        [0.1 + 0.2, 1e-300, -0.0],
    ],
)
def test_values_come_back_as_they_were(value):
    """What is written is read back with the same kinds."""
    assert_same(catalogues.read(catalogues.written(value)), value)


def test_arrays_and_functions_come_back():
    """Arrays keep their kind of number, functions are found by their names, strangers are refused."""
    for array in (np.array([1, 2]), np.array([0.5, np.pi]), np.array([True, False]), np.array(["a", "bc"])):
        again = catalogues.read(catalogues.written(array))
        assert again.dtype == array.dtype
        assert again.tolist() == array.tolist()
    assert catalogues.read(catalogues.written(keys_for)) is keys_for
    with pytest.raises(TypeError, match="must be plain values, got object"):
        catalogues.written(object())
