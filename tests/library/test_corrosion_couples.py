"""Couples with aluminium: order, signs, and where the three sources disagree."""

import pytest

from secondplate import corrosion_couples as couples


def test_order_does_not_depend_on_the_order_given():
    """Sorting the whole list from any start gives the list."""
    assert couples.worst_first(couples.GALVANIC_RANKING[::-1]) == couples.GALVANIC_RANKING
    assert [couples.galvanic_rank(metal) for metal in couples.GALVANIC_RANKING] == list(range(1, 11))


@pytest.mark.parametrize("metal", couples.SEA_WATER_METALS)
def test_potential_of_a_metal_against_itself(metal):
    """A metal has no potential against itself, and the difference turns its sign with the sides."""
    assert couples.potential_difference_mv(metal, against=metal) == 0
    there = couples.potential_difference_mv(metal)
    back = couples.potential_difference_mv("aluminium 5083, 5086, 6061", against=metal)
    assert there == -back


def test_what_the_series_misses_is_said():
    """Steel looks harmless and tin bad by the series; measured attack says otherwise, and it is said."""
    assert "near the worst" in couples.couple("carbon steel").contradiction
    assert "among the least" in couples.couple("tin").contradiction
    assert [couples.couple(metal).contradiction for metal in ("copper", "stainless steel", "cadmium")] == [
        ""
    ] * 3


def test_milder_surroundings_allow_no_less():
    """Whatever is allowed in salt is allowed in dry rooms."""
    for metal in couples.INDEX_METALS:
        allowed = [couples.index_allows(metal, environment=each) for each in couples.ENVIRONMENTS]
        assert allowed == sorted(allowed)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: couples.galvanic_rank("zinc"), "metal must be one of silver, copper, carbon steel"),
        (lambda: couples.potential_difference_mv("gold"), "metal must be one of galvanised iron"),
        (
            lambda: couples.index_allows("zinc", environment="wet"),
            "environment must be one of harsh, normal, controlled, got 'wet'",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What no source lists is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
