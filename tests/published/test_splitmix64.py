"""SplitMix64: the first outputs for the state 1234567, read in the tests of several open libraries."""

import numpy as np

from secondplate.bench_random import mixed_bits

SOURCE = "splitmix64"
FIRST_OUTPUTS = (
    6457827717110365317,
    3203168211198807973,
    9817491932198370423,
    4593380528125082431,
    16408922859458223821,
)


def test_first_outputs():
    """The five outputs after the state 1234567, each found by its number alone."""
    numbers = np.arange(1, 6, dtype=np.uint64)
    found = mixed_bits(np.full(5, 1234567, dtype=np.uint64), numbers)
    assert found.tolist() == list(FIRST_OUTPUTS)


def test_first_output_of_the_state_zero():
    """State 0 gives 0xE220A8397B1DCDAF, read in the test of an open library."""
    found = mixed_bits(np.zeros(1, dtype=np.uint64), np.ones(1, dtype=np.uint64))
    assert int(found[0]) == 0xE220A8397B1DCDAF
