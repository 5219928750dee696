"""Draws of the virtual bench: the same seed, name and number give the same draw on every machine.

A counter-based generator in whole numbers: blake2b turns seed and name of the draw into a 64-bit key, and the
mixing step of SplitMix64 turns key and number into bits. Nothing rests on the streams of a library.
"""

from hashlib import blake2b

import numpy as np

from secondplate.checks import require_between

# Constants of SplitMix64: the odd number nearest 2^64 over the golden ratio, and its two multipliers.
_STEP = np.uint64(0x9E3779B97F4A7C15)
_FIRST, _SECOND = np.uint64(0xBF58476D1CE4E5B9), np.uint64(0x94D049BB133111EB)
_PURPOSE = b"plate bench 1"  # blake2b personalisation: another use of the same seed gives other bits


def mixed_bits(key, number):
    """Return 64 bits for a key and a number: the output of SplitMix64 with that state after that many steps.

    Parameters
    ----------
    key : numpy.ndarray of uint64
        State to start from [-]
    number : numpy.ndarray of uint64
        Which output, from 1 on [-]

    Returns
    -------
    numpy.ndarray of uint64
        Bits [-]

    Notes
    -----
    Source: splitmix64.

    Examples
    --------
    >>> import numpy as np
    >>> int(mixed_bits(np.array([1234567], dtype=np.uint64), np.array([1], dtype=np.uint64))[0])
    6457827717110365317
    """
    with np.errstate(over="ignore"):  # arithmetic modulo 2^64 is meant
        bits = key + number * _STEP
        bits = (bits ^ (bits >> np.uint64(30))) * _FIRST
        bits = (bits ^ (bits >> np.uint64(27))) * _SECOND
        return bits ^ (bits >> np.uint64(31))


def _keys(seed, name):
    """Hash one seed or several with the name of the draw."""
    seeds = (seed,) if isinstance(seed, bytes) else tuple(seed)
    if not seeds or not all(isinstance(each, bytes) and each for each in seeds):
        message = f"seed must be bytes, at least one, or a list of such, got {seed!r}"
        raise ValueError(message)
    text = name.encode()
    keys = {each: _key(each + b"/" + text) for each in set(seeds)}
    return np.array([keys[each] for each in seeds], dtype=np.uint64)


def _key(message):
    """Hash a message to a whole number of 64 bits."""
    return int.from_bytes(blake2b(message, person=_PURPOSE, digest_size=8).digest(), "little")


def uniform(seed, name, number):
    """Return a draw from 0 up to 1 that belongs to a seed, a name and a number.

    Parameters
    ----------
    seed : bytes or list of bytes
        Seed, or one for each number [-]
    name : str
        Name of the draw; each name has its own stream [-]
    number : int or array
        Which draw, 0 to 2^53 [-]

    Returns
    -------
    float or array
        Draw, at least 0 and below 1, in steps of 2^-53 [-]

    Raises
    ------
    ValueError
        If the seed is not bytes or the number is out of its range.

    Notes
    -----
    Source: splitmix64.

    Examples
    --------
    >>> one, many = uniform(b"a day", "current", 1), uniform(b"a day", "current", [0, 1, 2])
    >>> bool(many[1] == one)
    True
    """
    require_between("number", np.asarray(number), 0, 2**53, unit="")
    whole = np.asarray(number).astype(np.uint64) + np.uint64(1)
    bits = mixed_bits(_keys(seed, name), np.atleast_1d(whole))
    draws = (bits >> np.uint64(11)).astype(float) * 2.0**-53
    single = isinstance(seed, bytes) and np.ndim(number) == 0
    return float(draws[0]) if single else draws


def triangular(low, best, high, share):
    """Return where a triangular distribution has gathered a share, by its inverse.

    Parameters
    ----------
    low : float or array
        Lowest value, in any unit [-]
    best : float or array
        Likeliest value, in the same unit [-]
    high : float or array
        Highest value, in the same unit [-]
    share : float or array
        Share gathered, 0 to 1 [-]

    Returns
    -------
    float or array
        Value, in the same unit [-]

    Raises
    ------
    ValueError
        If the share is out of its range or the three do not rise.

    Notes
    -----
    Source: plane_geometry; two right triangles side by side. Square roots only, which every machine rounds
    alike.

    Examples
    --------
    >>> triangular(0.0, 1.0, 2.0, 0.5)
    1.0
    """
    share = require_between("share", share, 0, 1, unit="")
    low, best, high = (np.asarray(end, dtype=float) for end in (low, best, high))
    if not np.all((low <= best) & (best <= high)):
        message = f"band must rise from low to best to high, got {low}, {best}, {high}"
        raise ValueError(message)
    width = high - low
    rising = low + np.sqrt(share * width * (best - low))
    falling = high - np.sqrt((1 - share) * width * (high - best))
    value = np.where(share * width < best - low, rising, falling)
    return float(value) if value.ndim == 0 else value
