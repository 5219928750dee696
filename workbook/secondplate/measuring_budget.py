"""Uncertainty budget of one result: what each input adds, how much they make together, how sure that is.

First order in the inputs, which are taken as independent of each other. Leaves out second-order terms, which
matter where an input stands at a turning point of the formula, and correlated inputs.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import (
    require_above,
    require_at_least,
    require_between,
    require_choice,
    require_finite,
)

KINDS = ("A", "B")


@dataclass(frozen=True, kw_only=True)
class Contribution:
    """One line of a budget; arrays stand for a column of budgets.

    Parameters
    ----------
    name : str
        What contributes [-]
    standard_uncertainty : float or array
        Its standard uncertainty, at least 0, in the unit of the input [-]
    sensitivity : float or array
        How much the result moves for one unit of the input [-]
    degrees_of_freedom : float or array
        Degrees of freedom, above 0; infinite where the uncertainty is held to be exact [-]
    kind : str
        ``A`` for a mean of readings, ``B`` for all else [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Examples
    --------
    >>> Contribution(name="thermometer", standard_uncertainty=0.1, sensitivity=-0.02).component
    0.002
    """

    name: str
    standard_uncertainty: float
    sensitivity: float = 1.0
    degrees_of_freedom: float = np.inf
    kind: str = "B"

    def __post_init__(self):
        """Refuse a negative uncertainty, a sensitivity that is no number, and no degree of freedom."""
        require_at_least(f"standard uncertainty of {self.name}", self.standard_uncertainty, 0, unit="")
        require_finite(f"sensitivity to {self.name}", self.sensitivity, unit="")
        degrees = np.asarray(self.degrees_of_freedom)
        bounded = np.where(degrees == np.inf, 1.0, degrees) if degrees.dtype.kind in "iuf" else degrees
        require_above(f"degrees of freedom of {self.name}", bounded, 0, unit="")
        require_choice(f"kind of {self.name}", self.kind, KINDS)

    @property
    def component(self):
        """What it adds to the result: size of sensitivity times standard uncertainty."""
        return plain(np.abs(np.multiply(self.sensitivity, self.standard_uncertainty)))


@dataclass(frozen=True, kw_only=True)
class Budget:
    """Uncertainty budget of one result, or of a column of results.

    Parameters
    ----------
    contributions : tuple of Contribution
        The lines of the budget, independent of each other [-]

    Raises
    ------
    ValueError
        If there is no line, or two have one name.

    Notes
    -----
    Source: jcgm_100, 5.1.2 (combined), G.4.1 (Welch-Satterthwaite, cut to the whole number below) and 6.2.1.

    Examples
    --------
    >>> budget = Budget(contributions=(
    ...     Contribution(name="repeats", standard_uncertainty=0.00447, degrees_of_freedom=4, kind="A"),
    ...     Contribution(name="seating", standard_uncertainty=0.00577),
    ... ))
    >>> round(budget.combined_uncertainty, 4), round(budget.effective_degrees_of_freedom, 1)
    (0.0073, 28.4)
    >>> round(budget.expanded_uncertainty(confidence_percent=95), 4)
    0.015
    """

    contributions: tuple[Contribution, ...]

    def __post_init__(self):
        """Refuse an empty budget and a line that stands twice."""
        names = [each.name for each in self.contributions]
        if not names:
            message = "budget must hold at least 1 contribution, got 0"
            raise ValueError(message)
        if len(set(names)) < len(names):
            message = f"contributions must have names of their own, got {', '.join(names)}"
            raise ValueError(message)

    @property
    def _components(self):
        """Components, one row a line of the budget."""
        return np.stack(np.broadcast_arrays(*(each.component for each in self.contributions)))

    @property
    def combined_uncertainty(self):
        """Combined standard uncertainty: root of the sum of squares."""
        return plain(np.sqrt(np.sum(self._components**2, axis=0)))

    @property
    def variance_shares(self):
        """Share of each line in the combined variance by its name; 0 for all where nothing is uncertain."""
        squares = self._components**2
        whole = squares.sum(axis=0)
        shares = squares / np.where(whole > 0, whole, 1)
        return {each.name: plain(share) for each, share in zip(self.contributions, shares, strict=True)}

    @property
    def effective_degrees_of_freedom(self):
        """Degrees of freedom of the combined uncertainty; infinite where no line limits them."""
        combined = np.asarray(self.combined_uncertainty)
        # Relative components, so that nanometres to the fourth power do not vanish.
        relative = self._components / np.where(combined > 0, combined, 1)
        degrees = [np.asarray(each.degrees_of_freedom, dtype=float) for each in self.contributions]
        total = sum(part**4 / number for part, number in zip(relative, degrees, strict=True))
        return plain(np.where(total > 0, 1 / np.where(total > 0, total, 1), np.inf))

    def coverage_factor(self, *, confidence_percent=95.0):
        """Student's factor for a two-sided interval, with the degrees of freedom cut to the whole below."""
        from scipy.special import ndtri, stdtrit  # loaded only where a budget asks for it

        confidence = require_between("confidence", confidence_percent, 50, 99.99, unit="%")
        upper = 0.5 + np.asarray(confidence) / 200
        degrees = np.floor(np.asarray(self.effective_degrees_of_freedom) * (1 + 1e-12))
        endless = ~np.isfinite(degrees)
        student = stdtrit(np.where(endless, 1.0, np.maximum(degrees, 1)), upper)
        return plain(np.where(endless, ndtri(upper), student))

    def expanded_uncertainty(self, *, confidence_percent=95.0):
        """Half width of the interval that holds the value with this confidence."""
        return plain(self.combined_uncertainty * self.coverage_factor(confidence_percent=confidence_percent))


def sensitivities(function, *, estimates, standard_uncertainties):
    """Return how much a result moves for one unit of each input, by central differences.

    The step of each input is its own standard uncertainty: the slope over the range that matters.

    Parameters
    ----------
    function : callable
        Formula of the result; takes the inputs by name [-]
    estimates : Mapping of str to float or array
        Best value of each input, in its unit [-]
    standard_uncertainties : Mapping of str to float or array
        Standard uncertainty of each input, above 0, in its unit [-]

    Returns
    -------
    dict of str to float or numpy.ndarray
        Sensitivity to each input by its name [-]

    Raises
    ------
    ValueError
        If an uncertainty is not above 0, or the two have different names.

    Notes
    -----
    Source: jcgm_100, 5.1.3 note 2.

    Examples
    --------
    >>> found = sensitivities(
    ...     lambda width, depth: width * depth,
    ...     estimates={"width": 3.0, "depth": 2.0},
    ...     standard_uncertainties={"width": 0.1, "depth": 0.1},
    ... )
    >>> {name: round(value, 6) for name, value in found.items()}
    {'width': 2.0, 'depth': 3.0}
    """
    if set(estimates) != set(standard_uncertainties):
        both = f"{sorted(estimates)} and {sorted(standard_uncertainties)}"
        message = f"names of estimates and uncertainties must be the same, got {both}"
        raise ValueError(message)
    found = {}
    for name, best in estimates.items():
        step = require_above(f"standard uncertainty of {name}", standard_uncertainties[name], 0, unit="")
        ends = (function(**{**estimates, name: np.asarray(best) + sign * step}) for sign in (1, -1))
        found[name] = plain(np.subtract(*ends) / (2 * np.asarray(step)))
    return found
