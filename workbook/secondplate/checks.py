"""One grammar for every refusal: the name, what it must be, the limit with its unit, and what was got.

Every check takes a number or an array, refuses text, booleans, NaN and infinities, and returns the value
as a float or a float array.
"""

import math

import numpy as np

_PLAIN_WHOLE = 2**53  # whole numbers up to here are floats without loss


def _shown(value, unit):
    """Write a value with its unit the way the sentences need it."""
    text = f"{value:.6g}" if isinstance(value, (int, float, np.number)) else repr(value)
    return f"{text} {unit}" if unit else text


def _is_number(value):
    """Tell whether a value is an int or float, or an array of them; booleans are not numbers here."""
    kind = np.asarray(value).dtype.kind
    return kind in "iuf"


def require_finite(name, value, *, unit):
    """Return ``value`` as float or float array, or raise where it is not made of finite numbers.

    Parameters
    ----------
    name : str
        What the value is, as the sentence will call it [-]
    value : float or array
        Value to check, in ``unit`` [-]
    unit : str
        Unit for the sentence, empty where there is none [-]

    Returns
    -------
    float or array
        The value as float or float array, in ``unit`` [-]

    Raises
    ------
    ValueError
        If any of it is text, a boolean, NaN or infinite.

    Examples
    --------
    >>> require_finite("current", 600, unit="A")
    600.0
    """
    kind = type(value)
    plain = kind is float or (kind is int and -_PLAIN_WHOLE < value < _PLAIN_WHOLE)
    if plain and math.isfinite(value):  # most values are plain numbers, and numpy takes long over one
        return float(value)
    if not _is_number(value):
        message = f"{name} must be a number{' in ' + unit if unit else ''}, got {value!r}"
        raise ValueError(message)
    array = np.asarray(value, dtype=float)
    if not np.all(np.isfinite(array)):
        bad = array[~np.isfinite(array)].flat[0]
        message = f"{name} must be finite, got {_shown(float(bad), unit)}"
        raise ValueError(message)
    return float(array) if array.ndim == 0 else array


def _held(name, value, unit, limit, holds):
    """Return the value as float or float array, or raise with the first number that breaks the limit.

    ``limit()`` writes the limit for the sentence, ``holds(number)`` tells whether a number keeps to it.
    """
    checked = require_finite(name, value, unit=unit)
    if type(checked) is float and holds(checked) is True:
        return checked
    numbers = np.atleast_1d(checked)
    wrong = numbers[~holds(numbers)]
    if wrong.size:
        message = f"{name} must be {limit()}, got {_shown(float(wrong.flat[0]), unit)}"
        raise ValueError(message)
    return checked


def require_between(name, value, low, high, *, unit):
    """Return ``value``, or raise where any of it lies outside ``low`` to ``high``, ends included.

    Parameters
    ----------
    name : str
        What the value is, as the sentence will call it [-]
    value : float or array
        Value to check, in ``unit`` [-]
    low : float
        Lower limit, in ``unit`` [-]
    high : float
        Upper limit, in ``unit`` [-]
    unit : str
        Unit for the sentence, empty where there is none [-]

    Returns
    -------
    float or array
        The value as float or float array, in ``unit`` [-]

    Raises
    ------
    ValueError
        If any of it is no finite number or lies outside.

    Examples
    --------
    >>> require_between("lift", 12, 0.5, 7, unit="mm")
    Traceback (most recent call last):
    ValueError: lift must be between 0.5 mm and 7 mm, got 12 mm
    """
    return _held(
        name,
        value,
        unit,
        lambda: f"between {_shown(low, unit)} and {_shown(high, unit)}",
        lambda number: (number >= low) & (number <= high),
    )


def require_above(name, value, low, *, unit):
    """Return ``value``, or raise where any of it is not above ``low``.

    Parameters
    ----------
    name : str
        What the value is, as the sentence will call it [-]
    value : float or array
        Value to check, in ``unit`` [-]
    low : float
        Lower limit, in ``unit`` [-]
    unit : str
        Unit for the sentence, empty where there is none [-]

    Returns
    -------
    float or array
        The value as float or float array, in ``unit`` [-]

    Raises
    ------
    ValueError
        If any of it is no finite number or is not above the limit.

    Examples
    --------
    >>> require_above("weld time", 0, 0, unit="ms")
    Traceback (most recent call last):
    ValueError: weld time must be above 0 ms, got 0 ms
    """
    return _held(name, value, unit, lambda: f"above {_shown(low, unit)}", lambda number: number > low)


def require_at_least(name, value, low, *, unit):
    """Return ``value``, or raise where any of it is below ``low``.

    Parameters
    ----------
    name : str
        What the value is, as the sentence will call it [-]
    value : float or array
        Value to check, in ``unit`` [-]
    low : float
        Lower limit, in ``unit`` [-]
    unit : str
        Unit for the sentence, empty where there is none [-]

    Returns
    -------
    float or array
        The value as float or float array, in ``unit`` [-]

    Raises
    ------
    ValueError
        If any of it is no finite number or is below the limit.

    Examples
    --------
    >>> require_at_least("pre-flow", 0.5, 0, unit="s")
    0.5
    """
    return _held(name, value, unit, lambda: f"at least {_shown(low, unit)}", lambda number: number >= low)


def require_single(name, value, *, unit):
    """Return one number, or raise where there are several or none.

    Parameters
    ----------
    name : str
        What the value is, as the sentence will call it [-]
    value : float
        Value to check, in ``unit`` [-]
    unit : str
        Unit for the sentence, empty where there is none [-]

    Returns
    -------
    float
        The value, in ``unit`` [-]

    Raises
    ------
    ValueError
        If it is no finite number, or an array of them.

    Examples
    --------
    >>> require_single("thickness", [1.0, 2.0], unit="mm")
    Traceback (most recent call last):
    ValueError: thickness must be one number in mm, got 2 of them
    """
    number = require_finite(name, value, unit=unit)
    if np.ndim(number):
        message = f"{name} must be one number{' in ' + unit if unit else ''}, got {np.size(number)} of them"
        raise ValueError(message)
    return number


def require_whole(name, value, low, *, unit):
    """Return a count, or raise where any of it is no whole number or lies below ``low``.

    Parameters
    ----------
    name : str
        What the count is, as the sentence will call it [-]
    value : int or array
        Count to check; 3.0 passes as well [-]
    low : int
        Lower limit [-]
    unit : str
        Unit for the sentence, empty where there is none [-]

    Returns
    -------
    float or array
        The count as float or float array [-]

    Raises
    ------
    ValueError
        If any of it is no finite number, no whole number, or below the limit.

    Examples
    --------
    >>> require_whole("number of holes", 2.5, 0, unit="")
    Traceback (most recent call last):
    ValueError: number of holes must be a whole number, got 2.5
    """
    count = require_at_least(name, value, low, unit=unit)
    return _held(name, count, unit, lambda: "a whole number", lambda number: number % 1 == 0)


def require_truth(name, value):
    """Return ``value``, or raise where any of it is neither true nor false.

    Parameters
    ----------
    name : str
        What the value says, as the sentence will call it [-]
    value : bool or array
        Value to check; text and numbers are refused, for "no" would count as true [-]

    Returns
    -------
    bool or array
        The value as bool or bool array [-]

    Raises
    ------
    ValueError
        If any of it is neither true nor false.

    Examples
    --------
    >>> require_truth("skin torn", False)
    False
    """
    array = np.asarray(value)
    if array.dtype != bool:
        message = f"{name} must be true or false, got {value!r}"
        raise ValueError(message)
    return bool(array) if array.ndim == 0 else array


def require_choice(name, value, choices):
    """Return ``value``, or raise with the list of valid names where it is none of them.

    Parameters
    ----------
    name : str
        What the value is, as the sentence will call it [-]
    value : str
        Name to check [-]
    choices : collection of str
        Valid names [-]

    Returns
    -------
    str
        The name [-]

    Raises
    ------
    ValueError
        If the value is not one of the names.

    Examples
    --------
    >>> require_choice("process", "short cycle", ("short cycle", "drawn arc with gas"))
    'short cycle'
    """
    if not isinstance(value, str) or value not in choices:
        message = f"{name} must be one of {', '.join(map(str, choices))}, got {value!r}"
        raise ValueError(message)
    return value


def require_below(name, value, limit_name, limit, *, or_equal=False):
    """Return a size, or raise where it is not below another size, or not at most that one.

    Parameters
    ----------
    name : str
        What the size is, as the sentence will call it [-]
    value : float or array
        Size to check, in mm [-]
    limit_name : str
        What the other size is [-]
    limit : float or array
        The other size, in mm [-]
    or_equal : bool
        Whether both may be the same [-]

    Returns
    -------
    float or array
        The size, in mm [-]

    Raises
    ------
    ValueError
        If one of the sizes is not small enough; the sentence tells the first.

    Examples
    --------
    >>> require_below("bore diameter", 3.3, "shank diameter", 5.3)
    3.3
    """
    sizes, limits = np.broadcast_arrays(value, limit)
    wrong = np.flatnonzero(sizes > limits if or_equal else sizes >= limits)
    if wrong.size:
        got, most = float(sizes.flat[wrong[0]]), float(limits.flat[wrong[0]])
        must = "at most" if or_equal else "below"
        message = f"{name} must be {must} the {limit_name} of {most:.6g} mm, got {got:.6g} mm"
        raise ValueError(message)
    return value
