"""What the heat of a weld did to the strength of a plate: over-ageing and dissolution, the worse counts.

Both models give the share of the proof stress that is left, as a band. They overlap between about 200 and
400 C and are not added. Measured yield after fast pulses falls with the peak and with slower heating, as both
models say (maisonnette_2011). For T4 sheet and 5xxx sheet neither holds, and a plain band stands instead.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_at_least, require_choice
from secondplate.softening_dissolution import DissolutionModel
from secondplate.softening_exposure import exposure_band
from secondplate.softening_haz import haz_factors
from secondplate.softening_history import HIGHEST_C, checked_history
from secondplate.tables import values

SOFTENING_KINDS = ("6xxx-T6", "6xxx-T4", "5xxx-O")
OVER_AGEING, DISSOLUTION = "over-ageing", "dissolution"
_VALUES = values("softening")
_LOSS_AT_ONE = 1 - _VALUES["specified proof stress"] / _VALUES["usual proof stress"]


def over_ageing_share(exposure):
    """Return the share of the proof stress left after an exposure: 1 - 0.13 X^(1/3), at least 0.2.

    Parameters
    ----------
    exposure : float or array
        Exposure index X, at least 0 [-]

    Returns
    -------
    float or numpy.ndarray
        Share of the proof stress of 6xxx-T6 that is left [-]

    Raises
    ------
    ValueError
        If the index is below 0.

    Notes
    -----
    At X = 1 the usual 276 MPa of 6061-T6 have fallen to the specified 240 MPa. The cube root is that of
    coarsening; heating_limits_memory gives a loss of about 5 % at X of 0.03 to 0.1, as the formula does.
    Source: coarsening_theory with donovan_2015, derived.

    Examples
    --------
    >>> round(over_ageing_share(1.0), 3), round(over_ageing_share(0.05), 3)
    (0.87, 0.952)
    """
    index = np.asarray(require_at_least("exposure index", exposure, 0, unit=""))
    left = 1 - _LOSS_AT_ONE * index ** _VALUES["coarsening exponent"]
    return plain(np.maximum(_VALUES["annealed share"], left))


@dataclass(frozen=True, kw_only=True)
class Softening:
    """What one history, or each of many, did to a plate.

    Parameters
    ----------
    softening_kind : str
        One of ``SOFTENING_KINDS`` [-]
    peak_c : float or array
        Highest temperature [C]
    exposure : Band
        Exposure index [-]
    by_model : Mapping of str to Band
        Share of the proof stress left by each model [-]

    Examples
    --------
    >>> round(softening([0, 1], [20, 20], softening_kind="6xxx-T6").strength_left.best, 4)
    1.0
    """

    softening_kind: str
    peak_c: float
    exposure: Band
    by_model: Mapping[str, Band]

    @property
    def strength_left(self):
        """Share of the proof stress left as a band: the lower of the models at each end."""
        ends = {
            end: plain(np.min([getattr(band, end) for band in self.by_model.values()], axis=0))
            for end in ("low", "best", "high")
        }
        return Band(**ends, basis="the worse of " + ", ".join(self.by_model))

    @property
    def governing(self):
        """Name of the model that gives the lower best share, one for each history."""
        bests = np.stack([np.asarray(band.best) for band in self.by_model.values()])
        names = np.array(list(self.by_model))[bests.argmin(axis=0)]
        return str(names) if names.ndim == 0 else names


def softening(times_s, temperatures_c, *, softening_kind, model=None):
    """Return what histories of temperature did to the strength of a plate.

    Parameters
    ----------
    times_s : array
        Rising times, two or more [s]
    temperatures_c : array
        Temperatures at these times, -100 to 660; further histories along the first directions [C]
    softening_kind : str
        One of ``SOFTENING_KINDS`` [-]
    model : DissolutionModel or None
        Dissolution model; that of 6082-T6 unless told [-]

    Returns
    -------
    Softening
        Peak, exposure and share of the strength left by each model [-]

    Raises
    ------
    ValueError
        If the history lies outside its range or the kind is unknown.

    Notes
    -----
    Sources: donovan_2015 and coarsening_theory (over-ageing), myhr_grong_1991 (dissolution, time to full
    dissolution twice or half), summers_2015 (nothing below 150 C). Annealed 5xxx sheet keeps its strength;
    what hours at 65 to 180 C do to the corrosion of alloys with more than 3 % magnesium is left out.

    Examples
    --------
    >>> found = softening([0, 0.1, 1.5, 10], [20, 520, 520, 60], softening_kind="6xxx-T6")
    >>> found.governing, bool(found.strength_left.low < found.strength_left.high)
    ('dissolution', True)
    """
    require_choice("kind of sheet", softening_kind, SOFTENING_KINDS)
    _, temperatures = checked_history(times_s, temperatures_c)
    exposure, peak_c = exposure_band(times_s, temperatures_c), plain(temperatures.max(axis=-1))
    if softening_kind == "6xxx-T6":
        by_model = {
            OVER_AGEING: Band(
                low=over_ageing_share(exposure.high),
                best=over_ageing_share(exposure.best),
                high=over_ageing_share(exposure.low),
                basis=exposure.basis,
            ),
            DISSOLUTION: _dissolution_band(times_s, temperatures_c, model or DissolutionModel()),
        }
    else:
        by_model = {"plain band": _plain_band(softening_kind, peak_c)}
    return Softening(softening_kind=softening_kind, peak_c=peak_c, exposure=exposure, by_model=by_model)


def _dissolution_band(times_s, temperatures_c, model):
    """Return the share left by dissolution, with the doubt on the time to full dissolution."""
    strength, doubt = np.asarray(model.kinetic_strength(times_s, temperatures_c)), _VALUES["model factor"]
    low, best, high = (
        model.proof_stress_share(model.fraction_after(strength * factor)) for factor in (doubt, 1, 1 / doubt)
    )
    return Band(low=low, best=best, high=high, basis="myhr_grong_1991 from memory, time twice or half")


def _plain_band(softening_kind, peak_c):
    """Return the band for sheet that the two models do not hold for."""
    whole = np.ones_like(np.asarray(peak_c, dtype=float))
    if softening_kind == "5xxx-O":
        return Band(low=plain(whole), best=plain(whole), high=plain(whole), basis="annealed already")
    floor = haz_factors("6061-T4", product="sheet", thickness_mm=1.5).proof_stress_share
    low = np.where(np.asarray(peak_c) < _VALUES["softening begins"], whole, floor)
    basis = "T4: at worst the factor of an arc weld, en_1999_1_1, from memory"
    return Band(low=plain(low), best=plain(whole), high=plain(whole), basis=basis)


def softening_of_weld(weld, *, softening_kind, model=None):
    """Return what one stud weld did to the second plate, at each place that its heat was kept for.

    Parameters
    ----------
    weld : secondplate.heat.weld_result.WeldHeatResult
        The weld with its temperatures over time [-]
    softening_kind : str
        One of ``SOFTENING_KINDS`` [-]
    model : DissolutionModel or None
        Dissolution model; that of 6082-T6 unless told [-]

    Returns
    -------
    dict of str to Softening
        What it did, by the name of the place [-]

    Raises
    ------
    ValueError
        If the kind is unknown or the weld holds no trace of the second plate.

    Notes
    -----
    A place that melted counts as 660 C. Source: own_heat_model for temperatures; see ``softening``.

    Examples
    --------
    >>> from secondplate.heat.joint import default_joint
    >>> from secondplate.heat.weld import weld_heat
    >>> from secondplate.heat.weld_settings import charted_settings
    >>> weld = weld_heat(default_joint(), charted_settings(default_joint()))
    >>> found = softening_of_weld(weld, softening_kind="6xxx-T6")
    >>> found["second plate under the rivet"].strength_left.best > 0.9
    True
    """
    traces = {name: trace for name, trace in weld.traces_c.items() if name.startswith("second plate")}
    if not traces:
        message = f"weld must hold a trace of the second plate, got {', '.join(weld.traces_c) or 'none'}"
        raise ValueError(message)
    return {
        name: softening(
            weld.times_s, np.minimum(trace, HIGHEST_C), softening_kind=softening_kind, model=model
        )
        for name, trace in traces.items()
    }
