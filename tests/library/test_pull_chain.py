"""The chain that a pull goes through: weakest link, safety factor, verdict."""

import numpy as np
import pytest

from secondplate.bands import Band
from secondplate.pull_chain import LoadChain
from secondplate.rivet import Rivet
from secondplate.tail_pull_out import tail_pull_out


def band(low, best, high):
    """Return a band of an example."""
    return Band(low=low, best=best, high=high, basis="example")


STUD, WELD = band(9000, 10_000, 11_000), band(4000, 6000, 8000)


@pytest.mark.parametrize(
    ("needed", "verdict"),
    [
        (band(1000, 2000, 3900), "rivet first"),
        (band(1000, 2000, 4100), "not decided"),
        (band(8100, 9000, 9900), "chain first"),
    ],
)
def test_verdict_only_where_the_bands_are_apart(needed, verdict):
    """The rivet is first if the worst case still holds, the chain if the best case does not."""
    chain = LoadChain(links_n={"stud": STUD, "weld": WELD}, needed_n=needed)
    assert chain.verdict == verdict
    assert chain.weakest == "weld"


def test_weakest_is_open_where_two_links_meet():
    """Two links whose bands meet do not tell which of them gives."""
    chain = LoadChain(links_n={"stud": STUD, "weld": band(8000, 9500, 12_000)}, needed_n=band(1, 2, 3))
    assert chain.weakest == "not decided"


def test_safety_factor_is_worst_over_best():
    """Least strength over greatest need, and the other way round."""
    factor = LoadChain(links_n={"weld": WELD}, needed_n=band(2000, 3000, 5000)).safety_factor
    assert (factor.low, factor.best, factor.high) == pytest.approx((0.8, 2.0, 4.0), rel=1e-12)  # exact


def test_more_links_never_help():
    """A further link never makes the chain stronger."""
    dice = np.random.default_rng(3)
    for _ in range(50):
        links = {f"link {k}": band(*np.sort(dice.uniform(1000, 9000, 3))) for k in range(4)}
        some = LoadChain(links_n={"link 0": links["link 0"]}, needed_n=band(1, 2, 3)).strength_n
        every = LoadChain(links_n=links, needed_n=band(1, 2, 3)).strength_n
        assert every.low <= some.low
        assert every.high <= some.high


def test_column_of_rivets():
    """A column of interlocks gives a column of verdicts; more interlock never helps the chain."""
    pull = tail_pull_out(
        Rivet(rivet_length_mm=6.0),
        interlock_mm=np.array([0.1, 0.4, 1.2]),
        penetration_mm=1.6,
        second_tensile_strength_mpa=215,
        top_proof_stress_mpa=100,
    )
    chain = LoadChain(links_n={"stud": STUD, "weld": WELD}, needed_n=pull.peak_n)
    order = {"rivet first": 0, "not decided": 1, "chain first": 2}
    ranks = [order[str(word)] for word in chain.verdict]
    assert ranks == sorted(ranks)
    assert ranks[0] == 0


def test_what_is_no_chain_is_said():
    """No link and no force are refused."""
    with pytest.raises(ValueError, match="load chain must hold one link at least, got none"):
        LoadChain(links_n={}, needed_n=WELD)
    with pytest.raises(ValueError, match="needed force must be above 0 N at its high end, got 0 N"):
        LoadChain(links_n={"weld": WELD}, needed_n=band(0, 0, 0))
