"""Refusals that all test-pull statistics share: counts are whole numbers, shares lie between 0 and 1."""

import numpy as np

from secondplate.checks import require_at_least, require_between, require_finite

_MOST_PULLS = 1_000_000


def whole(name, value, *, least, most=_MOST_PULLS):
    """Return a count or counts, or raise where any is no whole number from ``least`` to ``most``.

    Parameters
    ----------
    name : str
        What is counted, as the sentence will call it [-]
    value : int or array
        The count [-]
    least : int
        Smallest count allowed [-]
    most : int
        Largest count allowed [-]

    Returns
    -------
    numpy.ndarray
        The count as whole numbers, of the shape of the input [-]

    Raises
    ------
    ValueError
        If any of it is no whole number or lies outside.

    Examples
    --------
    >>> whole("pulls", 0, least=1)
    Traceback (most recent call last):
    ValueError: pulls must be at least 1, got 0
    """
    numbers = np.asarray(require_at_least(name, require_finite(name, value, unit=""), least, unit=""))
    require_between(name, numbers, least, most, unit="")
    broken = np.atleast_1d(numbers[numbers != np.floor(numbers)])
    if broken.size:
        message = f"{name} must be a whole number, got {broken.flat[0]:.6g}"
        raise ValueError(message)
    return numbers.astype(np.int64)


def pulls_and_failures(pulls, failures):
    """Return pulls and failures, or raise where there are more failures than pulls.

    Parameters
    ----------
    pulls : int or array
        Test pulls, at least 1 [-]
    failures : int or array
        Failed pulls among them [-]

    Returns
    -------
    tuple of numpy.ndarray
        Pulls and failures of one shape [-]

    Raises
    ------
    ValueError
        If a count is no whole number in its range or failures exceed pulls.

    Examples
    --------
    >>> pulls_and_failures(5, 6)
    Traceback (most recent call last):
    ValueError: failures must be at most the 5 pulls, got 6
    """
    pulls = whole("pulls", pulls, least=1)
    pulls, failures = np.broadcast_arrays(pulls, whole("failures", failures, least=0))
    over = failures > pulls
    if np.any(over):
        first = np.argmax(over)
        message = f"failures must be at most the {pulls.flat[first]} pulls, got {failures.flat[first]}"
        raise ValueError(message)
    return pulls, failures


def share(name, value):
    """Return a probability, or raise where any of it lies outside 0 to 1, ends included.

    Parameters
    ----------
    name : str
        What the probability is of [-]
    value : float or array
        Probability [-]

    Returns
    -------
    numpy.ndarray
        The probability [-]

    Raises
    ------
    ValueError
        If any of it lies outside.

    Examples
    --------
    >>> share("reliability", 95)
    Traceback (most recent call last):
    ValueError: reliability must be between 0 and 1, got 95
    """
    return np.asarray(require_between(name, value, 0, 1, unit=""))


def open_share(name, value):
    """Return a probability, or raise where any of it is not above 0 and below 1.

    Parameters
    ----------
    name : str
        What the probability is of [-]
    value : float or array
        Probability [-]

    Returns
    -------
    numpy.ndarray
        The probability [-]

    Raises
    ------
    ValueError
        If any of it is 0, 1 or outside.

    Examples
    --------
    >>> open_share("confidence", 1)
    Traceback (most recent call last):
    ValueError: confidence must be between 0 and 1, ends excluded, got 1
    """
    numbers = np.asarray(require_finite(name, value, unit=""))
    outside = numbers[(numbers <= 0) | (numbers >= 1)]
    if outside.size:
        message = f"{name} must be between 0 and 1, ends excluded, got {outside.flat[0]:.6g}"
        raise ValueError(message)
    return numbers


def counted(value):
    """Return an int for a single count and an array of whole numbers for several.

    Parameters
    ----------
    value : array
        Counts [-]

    Returns
    -------
    int or numpy.ndarray
        The same, without a zero-dimensional array [-]

    Examples
    --------
    >>> import numpy as np
    >>> counted(np.array(3.0))
    3
    """
    array = np.asarray(value).astype(np.int64)
    return int(array) if array.ndim == 0 else array


def require_data(name, value, *, unit, least):
    """Return a list of numbers as a float array, or raise where there are fewer than ``least``.

    Parameters
    ----------
    name : str
        What the numbers are [-]
    value : array
        The numbers in one row, in ``unit`` [-]
    unit : str
        Unit for the sentence, empty where there is none [-]
    least : int
        How many there must be [-]

    Returns
    -------
    numpy.ndarray
        The numbers, in ``unit`` [-]

    Raises
    ------
    ValueError
        If they are no numbers, not in one row, or too few.

    Examples
    --------
    >>> require_data("pull forces", [2900.0], unit="N", least=2)
    Traceback (most recent call last):
    ValueError: pull forces must be a row of at least 2 numbers, got 1
    """
    numbers = np.asarray(require_finite(name, value, unit=unit))
    if numbers.ndim != 1 or numbers.size < least:
        message = f"{name} must be a row of at least {least} numbers, got {numbers.size}"
        raise ValueError(message)
    return numbers
