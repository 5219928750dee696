"""The chain that a pull goes through: stud, weld, head, tool; its weakest link, and what it has to spare.

Each link is a band, and so is the pull that the rivet asks for. Where bands meet, nothing is decided.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.failure_modes import FailureModes

HOLDS, BREAKS, OPEN = "rivet first", "chain first", "not decided"


@dataclass(frozen=True, kw_only=True)
class LoadChain:
    """Links of a pull with what each bears, and the pull that the rivet asks for.

    Parameters
    ----------
    links_n : Mapping of str to Band
        What each link bears before it gives: stud, weld, rivet head, tool ... [N]
    needed_n : Band
        Force that draws the rivet, above 0 at its high end [N]

    Raises
    ------
    ValueError
        If there is no link, or the force is nothing at all.

    Notes
    -----
    Source: practice. A chain is as strong as its weakest link; the good order is that the rivet comes before
    stud or weld yields.

    Examples
    --------
    >>> chain = LoadChain(
    ...     links_n={"stud": Band(low=9000, best=10000, high=11000, basis="example"),
    ...              "weld": Band(low=4000, best=7000, high=10000, basis="example")},
    ...     needed_n=Band(low=2500, best=4000, high=5500, basis="example"))
    >>> chain.verdict, round(chain.safety_factor.low, 2)
    ('not decided', 0.73)
    """

    links_n: Mapping[str, Band]
    needed_n: Band

    def __post_init__(self):
        """Refuse a chain without links and a pull of nothing."""
        if not self.links_n:
            message = "load chain must hold one link at least, got none"
            raise ValueError(message)
        if np.any(np.asarray(self.needed_n.high) <= 0):
            message = (
                f"needed force must be above 0 N at its high end, got {np.min(self.needed_n.high):.6g} N"
            )
            raise ValueError(message)

    @property
    def _modes(self):
        """Links as ways to give."""
        return FailureModes(forces_n=self.links_n)

    @property
    def weakest(self):
        """The link that gives first, or ``not decided`` where the bands of two meet."""
        return self._modes.likely_mode

    @property
    def strength_n(self):
        """What the chain bears, as a band in N: the least of its links at each end."""
        return self._modes.strength_n

    @property
    def safety_factor(self):
        """Strength over need, as a band: the worst case, both at best, and the best case."""
        strength, need = self.strength_n, self.needed_n
        smallest = np.maximum(
            need.low, 1e-9
        )  # a rivet that asks for nothing: the factor is huge, not infinite
        return Band(
            low=plain(np.asarray(strength.low) / need.high),
            best=plain(np.asarray(strength.best) / np.maximum(need.best, 1e-9)),
            high=plain(np.asarray(strength.high) / smallest),
            basis="weakest link over the pull that the rivet asks for",
        )

    @property
    def verdict(self):
        """``rivet first``, ``chain first``, or ``not decided`` where the bands meet."""
        factor = self.safety_factor
        words = np.where(
            np.asarray(factor.low) > 1, HOLDS, np.where(np.asarray(factor.high) < 1, BREAKS, OPEN)
        )
        return str(words) if words.ndim == 0 else words
