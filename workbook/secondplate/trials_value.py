"""What a test pull is worth: expected times of plain plans, and the value of what a test would tell.

The same model of a wrong set-up as ``trials_policy``, with plans that a shop would name.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.trials_checks import whole
from secondplate.trials_policy import LONGEST_ROW, wrong_belief


def _row(row_rivets):
    """Return a row that the model takes."""
    return whole("row of rivets", row_rivets, least=1, most=LONGEST_ROW)


def weld_all_min(row_rivets, model):
    """Return what failures cost on the average where the whole row is welded at once: ``N p c``.

    Parameters
    ----------
    row_rivets : int or array
        Rivets N in the row, 1 to 200 [-]
    model : RowModel
        Beliefs and times [-]

    Returns
    -------
    float or numpy.ndarray
        Time [min]

    Raises
    ------
    ValueError
        If a row is no whole number from 1 to 200.

    Notes
    -----
    Source: two_state_row.

    Examples
    --------
    >>> from secondplate.trials_policy import RowModel
    >>> model = RowModel(wrong_probability=0.2, good_failure_probability=0.02,
    ...                  wrong_failure_probability=0.6, failed_pull_min=15, test_delay_min=4, reset_min=25)
    >>> round(weld_all_min(12, model), 2)
    24.48
    """
    return plain(_row(row_rivets) * model.failure_chance(model.wrong_probability) * model.failed_pull_min)


def reset_first_min(row_rivets, model):
    """Return what a re-set and the failures after it cost where nothing is tested: ``R + N p' c``.

    Parameters
    ----------
    row_rivets : int or array
        Rivets N in the row, 1 to 200 [-]
    model : RowModel
        Beliefs and times [-]

    Returns
    -------
    float or numpy.ndarray
        Time [min]

    Raises
    ------
    ValueError
        If a row is no whole number from 1 to 200.

    Notes
    -----
    Source: two_state_row.

    Examples
    --------
    >>> from secondplate.trials_policy import RowModel
    >>> model = RowModel(wrong_probability=0.2, good_failure_probability=0.02,
    ...                  wrong_failure_probability=0.6, failed_pull_min=15, test_delay_min=4, reset_min=25)
    >>> round(reset_first_min(12, model), 2)
    28.6
    """
    return plain(model.reset_min + _row(row_rivets) * _later(model))


def _later(model):
    """Return what one rivet costs on the average after a re-set, in minutes."""
    return np.asarray(model.failure_chance(model.wrong_after_reset_probability)) * model.failed_pull_min


def plan_with_tests_min(row_rivets, model, *, tests):
    """Return what the plan "test so many; re-set at the first failure, else weld the rest" costs.

    Parameters
    ----------
    row_rivets : int or array
        Rivets N in the row, 1 to 200 [-]
    model : RowModel
        Beliefs and times [-]
    tests : int
        Tests, 0 up to the shortest row [-]

    Returns
    -------
    float or numpy.ndarray
        Time [min]

    Raises
    ------
    ValueError
        If a count is no whole number in its range.

    Notes
    -----
    Source: two_state_row.

    Examples
    --------
    >>> from secondplate.trials_policy import RowModel
    >>> model = RowModel(wrong_probability=0.2, good_failure_probability=0.02,
    ...                  wrong_failure_probability=0.6, failed_pull_min=15, test_delay_min=4, reset_min=25)
    >>> [round(plan_with_tests_min(12, model, tests=count), 2) for count in (0, 1, 2)]
    [24.48, 20.4, 21.27]
    """
    row = _row(row_rivets)
    count = int(whole("tests", tests, least=0, most=int(row.min())))
    total, going, wrong = 0.0, 1.0, np.asarray(model.wrong_probability, dtype=float)
    for done in range(count):
        chance = np.asarray(model.failure_chance(wrong))
        after = model.reset_min + (row - done - 1) * _later(model)
        total = total + going * (model.test_delay_min + chance * (model.failed_pull_min + after))
        going = going * (1 - chance)
        wrong = np.asarray(wrong_belief(model, pulls=done + 1, failures=0))
    rest = (row - count) * np.asarray(model.failure_chance(wrong)) * model.failed_pull_min
    return plain(total + going * rest)


def value_of_one_test(row_rivets, model):
    """Return what one test pull saves on the average, before its own delay is paid.

    The test pays where the delay costs less. Best plan without a test, less best plan with one. Below 0 where
    a re-set at once is best: the tested rivet is then pulled with the old set-up.

    Parameters
    ----------
    row_rivets : int or array
        Rivets N in the row, 1 to 200 [-]
    model : RowModel
        Beliefs and times [-]

    Returns
    -------
    float or numpy.ndarray
        Expected value of sample information [min]

    Raises
    ------
    ValueError
        If a row is no whole number from 1 to 200.

    Notes
    -----
    Source: raiffa_schlaifer for the definition; two_state_row.

    Examples
    --------
    >>> from secondplate.trials_policy import RowModel
    >>> model = RowModel(wrong_probability=0.2, good_failure_probability=0.02,
    ...                  wrong_failure_probability=0.6, failed_pull_min=15, test_delay_min=4, reset_min=25)
    >>> round(value_of_one_test(12, model), 2)
    8.08
    """
    row = _row(row_rivets)
    failing = np.asarray(model.failure_chance(model.wrong_probability))
    reset = model.reset_min + (row - 1) * _later(model)
    with_test = failing * model.failed_pull_min
    for failed, chance in ((0, 1 - failing), (1, failing)):
        wrong = wrong_belief(model, pulls=1, failures=failed)
        weld = (row - 1) * np.asarray(model.failure_chance(wrong)) * model.failed_pull_min
        with_test = with_test + chance * np.minimum(weld, reset)
    return plain(_best_without(row, model) - with_test)


def _best_without(row, model):
    """Return the time of the better plan without any test."""
    return np.minimum(weld_all_min(row, model), reset_first_min(row, model))


def value_of_knowing(row_rivets, model):
    """Return what it would save on the average to know whether the set-up is wrong: no test can save more.

    Parameters
    ----------
    row_rivets : int or array
        Rivets N in the row, 1 to 200 [-]
    model : RowModel
        Beliefs and times [-]

    Returns
    -------
    float or numpy.ndarray
        Expected value of perfect information [min]

    Raises
    ------
    ValueError
        If a row is no whole number from 1 to 200.

    Notes
    -----
    Source: raiffa_schlaifer for the definition; two_state_row.

    Examples
    --------
    >>> from secondplate.trials_policy import RowModel
    >>> model = RowModel(wrong_probability=0.2, good_failure_probability=0.02,
    ...                  wrong_failure_probability=0.6, failed_pull_min=15, test_delay_min=4, reset_min=25)
    >>> round(value_of_knowing(12, model), 2)
    15.88
    """
    row = _row(row_rivets)
    reset = reset_first_min(row, model)
    known = 0.0
    for wrong, belief in ((0.0, 1 - np.asarray(model.wrong_probability)), (1.0, model.wrong_probability)):
        weld = row * np.asarray(model.failure_chance(wrong)) * model.failed_pull_min
        known = known + belief * np.minimum(weld, reset)
    return plain(_best_without(row, model) - known)
