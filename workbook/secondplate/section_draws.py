"""Draws of numbers from seeds that are bytes: the same on every machine and in every version of Python.

Each draw has a name and its own bits, so a new draw changes no other: blake2b makes a key of the seed and a
number of the name, and the mixing step of SplitMix64 makes bits of both.
"""

from hashlib import blake2b

import numpy as np

from secondplate.bench_random import mixed_bits

_PURPOSE = b"plate section 1"  # blake2b personalisation: another use of the seed gives other numbers
_MOST_BYTES = 64


def _number(word, key):
    """Return a whole number of 64 bits that belongs to a word and a key."""
    return int.from_bytes(blake2b(word, key=key, digest_size=8, person=_PURPOSE).digest(), "big")


class Uniforms:
    """Uniform numbers by name for a column of seeds.

    Parameters
    ----------
    seeds : sequence of bytes
        One seed a joint, 1 to 64 bytes each [-]
    round_number : int
        Counts fresh draws from the same seeds [-]

    Raises
    ------
    ValueError
        If a seed is no bytes, empty or too long, or there is none.

    Examples
    --------
    >>> Uniforms([b"one", b"two"]).between("interlock", 0.4, 0.6).round(4).tolist()
    [0.431, 0.493]
    """

    def __init__(self, seeds, *, round_number=0):
        seeds = list(seeds)
        bad = [seed for seed in seeds if not isinstance(seed, bytes) or not 1 <= len(seed) <= _MOST_BYTES]
        if bad or not seeds:
            got = repr(bad[0])[:40] if bad else "none"
            message = f"seed must be 1 to {_MOST_BYTES} bytes, got {got}"
            raise ValueError(message)
        self._seeds = seeds
        self._round = round_number
        self._keys = np.array([_number(b"%d" % round_number, seed) for seed in seeds], dtype=np.uint64)

    def __len__(self):
        return len(self._seeds)

    def again(self, numbers):
        """Return fresh draws for some of the seeds."""
        return Uniforms([self._seeds[number] for number in numbers], round_number=self._round + 1)

    def share(self, name):
        """Return numbers from 0 up to but below 1, one a seed."""
        number = np.array(_number(name.encode(), b"name"), dtype=np.uint64)
        return (mixed_bits(self._keys, number) >> np.uint64(11)).astype(float) * 2.0**-53

    def between(self, name, low, high):
        """Return numbers from ``low`` to ``high``, to the micrometre where these are millimetres."""
        return np.round(low + (high - low) * self.share(name), 3)

    def pick(self, name, values):
        """Return one of ``values`` for each seed, each as likely as the others."""
        return np.asarray(values)[(self.share(name) * len(values)).astype(int)]
