"""Gauge studies: spreads that were put in come out, and limiting cases."""

import numpy as np
import pytest

from secondplate import measuring_gauge as gauge


def made_study(seed, *, parts, operators, repeats, spreads):
    """Return readings with known spreads of parts, operators and repeats."""
    random = np.random.default_rng(seed)
    part, operator, repeat = spreads
    return (
        part * random.normal(size=(parts, 1, 1))
        + operator * random.normal(size=(1, operators, 1))
        + repeat * random.normal(size=(parts, operators, repeats))
    )


def test_spreads_put_in_come_out():
    """A large made study gives the spreads that made it, within their own sampling error."""
    found = gauge.gauge_study(made_study(4, parts=400, operators=300, repeats=3, spreads=(0.05, 0.01, 0.02)))
    assert found.repeatability_mm == pytest.approx(0.02, rel=0.01)  # 240 000 degrees of freedom
    assert found.part_spread_mm == pytest.approx(0.05, rel=0.12)  # three times 1/root(2 x 400)
    assert found.reproducibility_mm == pytest.approx(0.01, rel=0.15)  # three times 1/root(2 x 300)


def test_a_constant_changes_nothing_and_a_scale_scales():
    """Spreads do not move with the zero of the gauge and follow its unit."""
    block = made_study(7, parts=10, operators=3, repeats=3, spreads=(1.0, 0.3, 0.2))
    one, other = gauge.gauge_study(block), gauge.gauge_study(25.4 * block + 3)
    for name in ("repeatability_mm", "reproducibility_mm", "part_spread_mm"):
        assert getattr(other, name) == pytest.approx(25.4 * getattr(one, name), rel=1e-9)  # arithmetic


def test_interaction_counts_where_it_is_large():
    """An operator who reads one part differently adds to reproducibility, not to repeatability."""
    block = made_study(3, parts=8, operators=3, repeats=4, spreads=(1.0, 0.0, 0.01))
    block[2, 1] += 0.5
    found = gauge.gauge_study(block)
    assert found.repeatability_mm == pytest.approx(0.01, rel=0.3)  # 72 degrees of freedom
    assert found.reproducibility_mm > 0.05


def test_a_perfect_gauge_has_endless_categories():
    """Without any spread of the gauge every part is told from every other."""
    study = gauge.GaugeStudy(repeatability_mm=0, reproducibility_mm=0, part_spread_mm=0.1)
    assert (study.categories, study.good_enough, study.tolerance_share(0.5)) == (np.inf, True, 0.0)


@pytest.mark.parametrize(
    ("go", "no_go", "word"),
    [
        (True, False, "hole within its limits"),
        (False, False, "hole too small"),
        (True, True, "hole too large"),
        (False, True, "pins mixed up: gauge again"),
    ],
)
def test_pins(go, no_go, word):
    """Each pair of answers has one meaning, alone and in a column."""
    assert gauge.pin_outcome(go_enters=go, no_go_enters=no_go) == word
    assert gauge.pin_outcome(go_enters=np.array([go]), no_go_enters=np.array([no_go])).tolist() == [word]


def test_parts_that_do_not_differ_make_no_gauge_fit():
    """Where all readings are the same nothing was told apart, and the gauge is not proved good."""
    study = gauge.gauge_study(np.ones((3, 3, 2)))
    assert study.categories == 0
    assert not study.good_enough


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: gauge.gauge_study([[1.0, 2.0]]), "readings must be parts by operators by repeats"),
        (lambda: gauge.gauge_study(np.full((3, 2, 2), np.nan)), "reading must be finite"),
        (lambda: gauge.gauge_categories(0.05, 0), "spread of the gauge must be above 0 mm, got 0 mm"),
        (lambda: gauge.largest_gauge_uncertainty_mm(0), "tolerance must be above 0 mm, got 0 mm"),
        (
            lambda: gauge.GaugeStudy(repeatability_mm=-1, reproducibility_mm=0, part_spread_mm=0),
            "repeatability must be at least 0 mm, got -1 mm",
        ),
        (lambda: gauge.pin_outcome(go_enters="yes", no_go_enters=False), "must be true or false, got"),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What is no study is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
