"""What the heat of a stud weld hangs on: each input that is known only as a band, moved to both ends alone.

It leaves out what two inputs do together.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from secondplate import tables
from secondplate.bands import Band
from secondplate.checks import require_choice
from secondplate.heat.weld import weld_heat
from secondplate.heat.weld_settings import weld_heat_bands

# Results that are compared, each with its unit.
RESULTS = {
    "head depth": ("mm", lambda weld: weld.head_depth_mm),
    "stud depth": ("mm", lambda weld: weld.stud_depth_mm),
    "web left": ("mm", lambda weld: weld.web_left_mm),
    "peak in the shank": ("C", lambda weld: weld.peak_at_c("rivet shank")),
    "peak of the bond line 8 mm out": ("C", lambda weld: weld.peak_at_c("bond line 8 mm out")),
    "peak of the button": ("C", lambda weld: weld.peak_at_c("button")),
}


@dataclass(frozen=True, kw_only=True)
class SensitivityRow:
    """What one input does to the results when it alone moves over its band.

    Parameters
    ----------
    name : str
        Field of ``WeldHeat`` or of ``RivetedJoint`` [-]
    band : Band
        Its band [-]
    at_low : Mapping of str to float
        Results with the input at its low end, by their names in ``RESULTS`` [-]
    at_best : Mapping of str to float
        Results with everything at its best value [-]
    at_high : Mapping of str to float
        Results with the input at its high end [-]

    Examples
    --------
    >>> ends = [{"head depth": depth_mm} for depth_mm in (0.2, 0.3, 0.5)]
    >>> band = Band(low=0, best=0.4, high=1, basis="guess")
    >>> row = SensitivityRow(name="emittance", band=band, at_low=ends[0], at_best=ends[1], at_high=ends[2])
    >>> round(row.effect("head depth"), 3)
    0.3
    """

    name: str
    band: Band
    at_low: Mapping[str, float]
    at_best: Mapping[str, float]
    at_high: Mapping[str, float]

    def effect(self, result):
        """Spread of one result between the ends and the best value, in its unit."""
        seen = (self.at_low[result], self.at_best[result], self.at_high[result])
        return max(seen) - min(seen)


def input_bands():
    """Return the band of every input that ``sensitivity`` moves.

    Returns
    -------
    dict of str to Band
        Band by the name of the field of ``WeldHeat`` or ``RivetedJoint``, in the unit of that field [-]

    Notes
    -----
    Sources: tables weld_heat and joint_bands, each row with its own; voltage and heat shares from
    ``arc_heat``.

    Examples
    --------
    >>> input_bands()["web_mm"].best
    1.1
    """
    return weld_heat_bands() | tables.bands("joint_bands")


def sensitivity(joint, settings, *, by="head depth", inputs=None):
    """Return what each input does to the results, the strongest on top.

    Parameters
    ----------
    joint : RivetedJoint
        The joint [-]
    settings : WeldHeat
        Settings of the weld; what is known as a band stands at the values given here [-]
    by : str
        Name in ``RESULTS`` by which the rows are sorted [-]
    inputs : sequence of str or None
        Names of ``input_bands`` to move, all where None [-]

    Returns
    -------
    list of SensitivityRow
        One row an input, by falling effect [-]

    Raises
    ------
    ValueError
        If a name is unknown or a joint with an input at its end does not fit.

    Notes
    -----
    Each input takes two runs of ``weld_heat``.
    Source: model, see ``weld_heat``.

    Examples
    --------
    >>> from secondplate.heat.joint import default_joint
    >>> from secondplate.heat.weld_settings import charted_settings
    >>> joint = default_joint()
    >>> rows = sensitivity(joint, charted_settings(joint), inputs=("emittance", "rivet_heat_share"))
    >>> rows[0].name
    'rivet_heat_share'
    """
    require_choice("result", by, tuple(RESULTS))
    bands = input_bands()
    for name in inputs or ():
        require_choice("input", name, tuple(bands))
    best = _results(joint, settings)
    rows = [_row(joint, settings, name, bands[name], best) for name in inputs or bands]
    return sorted(rows, key=lambda row: row.effect(by), reverse=True)


def _results(joint, settings):
    """Results of one weld by name."""
    weld = weld_heat(joint, settings)
    return {name: of(weld) for name, (_, of) in RESULTS.items()}


def _row(joint, settings, name, band, best):
    """Move one input to both ends."""
    ends = []
    for value in (band.low, band.high):
        moved = {name: value}
        if hasattr(settings, name):
            ends.append(_results(joint, replace(settings, **moved)))
        else:
            ends.append(_results(replace(joint, **moved), settings))
    return SensitivityRow(name=name, band=band, at_low=ends[0], at_best=best, at_high=ends[1])
