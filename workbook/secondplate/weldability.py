"""What is to be thought of a stainless stud on a boron-steel rivet: hard, brittle, good for one pull.

It gathers composition, diagram, hardness and cooling time, and sets what has been published beside them.
It is a judgement for teaching, no test of a weld.
"""

from dataclasses import dataclass

from secondplate import tables
from secondplate.bands import Band
from secondplate.checks import require_choice
from secondplate.weldability_carbon import carbon_equivalent_iiw_percent, martensite_start_c
from secondplate.weldability_composition import ENDS, composition, steel_names
from secondplate.weldability_dilution import dilution_path, martensite_dilution
from secondplate.weldability_hardness import yurioka_hardness, zone_hardness
from secondplate.weldability_published import Reason, published_hardnesses, published_warnings

USE = (
    "Good for one pull, soon after the weld, straight and without a jerk; then stud and rivet are scrap. "
    "It carries nothing, is not hit or bent, and nobody stands in line with it."
)


def dilution_band():
    """Return the share of the rivet in the weld metal to reckon with.

    Returns
    -------
    Band
        Share of the rivet, 0.35 to 0.65 around equal melting [-]

    Notes
    -----
    Common practice, no source: nobody has published a measured share for such a weld.

    Examples
    --------
    >>> dilution_band().best
    0.5
    """
    return tables.bands("weldability_rules")["dilution"]


def hardness_limit_hv():
    """Return the hardness above which a heat-affected zone is held to be open to cold cracks.

    Returns
    -------
    Band
        Limit, 350 to 450 with 380 as the one of the standard for seams not heat-treated [HV]

    Notes
    -----
    Source: iso_15614_1, from memory.

    Examples
    --------
    >>> hardness_limit_hv().best
    380.0
    """
    return tables.bands("weldability_rules")["hardness limit"]


@dataclass(frozen=True, kw_only=True)
class WeldVerdict:
    """What is to be thought of a weld, with the numbers and the published reasons.

    Parameters
    ----------
    stud : str
        Steel of the stud [-]
    rivet : str
        Steel of the rivet [-]
    surface : str
        ``bare`` or ``coated`` [-]
    dilution : Band
        Share of the rivet in the weld metal [-]
    regions : tuple of str
        Structure of the weld metal at the low, best and high dilution [-]
    martensite_from : Band
        Share of the rivet from which the weld metal is martensite alone [-]
    cooling_time_800_500_s : Band
        Time from 800 to 500 C [s]
    hardness_hv : Band
        Hardness of the rivet's heat-affected zone, over both formulas and the range of the grade [HV]
    martensite_start_c : Band
        Start of martensite in the rivet, over the range of the grade [C]
    carbon_equivalent_iiw_percent : Band
        Carbon equivalent of the institute, over the range of the grade [%]
    reasons : tuple of Reason
        What has been published, for and against [-]

    Examples
    --------
    >>> from secondplate.weldability_stud import stud_cooling_time_s
    >>> times = stud_cooling_time_s(480, face_diameter_mm=7)
    >>> verdict(stud="304-type", rivet="36MnB4", surface="bare", cooling_time_800_500_s=times).brittle
    True
    """

    stud: str
    rivet: str
    surface: str
    dilution: Band
    regions: tuple[str, ...]
    martensite_from: Band
    cooling_time_800_500_s: Band
    hardness_hv: Band
    martensite_start_c: Band
    carbon_equivalent_iiw_percent: Band
    reasons: tuple[Reason, ...]

    @property
    def brittle(self):
        """Whether the zone is harder, even at its softest, than any limit for seams."""
        return bool(self.hardness_hv.low > hardness_limit_hv().high)

    @property
    def use(self):
        """What such a weld is good for."""
        return USE

    @property
    def computed(self):
        """What the numbers say, one sentence each."""
        return (self._cooling_words(), self._hardness_words(), self._rivet_words(), self._metal_words())

    @property
    def contradiction(self):
        """What the published reasons disagree about; empty where they agree."""
        if {reason.bears for reason in self.reasons} != {"against", "for"}:
            return ""
        sheet = "took studs very well" if self.surface == "bare" else "was marginal with its coating on"
        least, most = (composition(self.rivet, end=end).carbon_percent for end in ("low", "high"))
        return (
            f"The published voices differ: boron-steel sheet of about 0.22 % carbon {sheet}, while a table "
            "of stud materials allows austenitic studs up to 0.35 % carbon and not above; this rivet has "
            f"{least:.2f} to {most:.2f} %. Neither proves your weld; a test pull tells."
        )

    def _cooling_words(self):
        """Say how fast the rivet cools, and how slow would still be too fast."""
        at, usual = self.cooling_time_800_500_s, composition(self.rivet)
        longest_s = yurioka_hardness(usual, cooling_time_800_500_s=at.best).martensite_time_s
        return (
            f"The rivet cools from 800 to 500 C in {at.low:.2f} to {at.high:.2f} s; "
            f"up to {longest_s:.1f} s all of its heat-affected zone turns to martensite."
        )

    def _hardness_words(self):
        """Set the computed hardness beside the limit for seams and measured stud welds."""
        limit, at = hardness_limit_hv(), self.hardness_hv
        welds = [found.high_hv for found in published_hardnesses() if found.what == "weld"]
        return (
            f"That zone comes out at {at.low:.0f} to {at.high:.0f} HV, "
            f"where seams are kept under {limit.low:.0f} to {limit.high:.0f} HV; "
            f"stud welds were measured at up to {min(welds):.0f} and {max(welds):.0f} HV."
        )

    def _rivet_words(self):
        """Set the zone beside the rivet as it was delivered."""
        rivets = [found for found in published_hardnesses() if found.what == "rivet"]
        least, most = min(found.low_hv for found in rivets), max(found.high_hv for found in rivets)
        return (
            f"The rivet itself came tempered, at {least:.0f} to {most:.0f} HV: "
            "the zone is untempered and mostly harder, and beside it lies a ring that the heat has softened."
        )

    def _metal_words(self):
        """Say what the melt of stud and rivet freezes to."""
        low, high = 100 * self.dilution.low, 100 * self.dilution.high
        return (
            f"With {low:.0f} % of rivet in the melt the weld metal is {self.regions[0]}, with {high:.0f} % "
            f"{self.regions[-1]}; from {100 * self.martensite_from.best:.0f} % on it is martensite alone."
        )


def _over_grade(formula, rivet, basis):
    """Return a band of a formula over the leanest, usual and richest cast of a grade."""
    low, best, high = sorted(formula(composition(rivet, end=end)) for end in ENDS)
    return Band(low=low, best=best, high=high, basis=basis)


def rivet_zone_hardness_hv(rivet, *, cooling_time_800_500_s):
    """Return the hardness of a rivet's heat-affected zone over both formulas and the range of the grade.

    Parameters
    ----------
    rivet : str
        One of ``steel_names("rivet")`` [-]
    cooling_time_800_500_s : Band
        Time from 800 to 500 C [s]

    Returns
    -------
    Band
        Leanest cast and slowest cooling, usual cast, richest cast and quickest cooling [HV]

    Raises
    ------
    ValueError
        If the rivet is unknown or a time is out of the formulas' range.

    Notes
    -----
    Sources: maynier_2004, yurioka_1987.

    Examples
    --------
    >>> from secondplate.weldability_stud import stud_cooling_time_s
    >>> times = stud_cooling_time_s(480, face_diameter_mm=7)
    >>> rivet_zone_hardness_hv("36MnB4", cooling_time_800_500_s=times).contains(600)
    True
    """
    require_choice("rivet", rivet, steel_names("rivet"))
    at = cooling_time_800_500_s
    lean, usual, rich = (
        zone_hardness(composition(rivet, end=end), cooling_time_800_500_s=time_s).band_hv
        for end, time_s in zip(ENDS, (at.high, at.best, at.low), strict=True)
    )
    basis = "Maynier's and Yurioka's formulas over the range of the grade and of the cooling time"
    return Band(low=lean.low, best=usual.best, high=rich.high, basis=basis)


def verdict(*, stud, rivet, surface, cooling_time_800_500_s, dilution=None):
    """Return what is to be thought of a stainless stud welded on a boron-steel rivet.

    Parameters
    ----------
    stud : str
        One of ``steel_names("stud")`` [-]
    rivet : str
        One of ``steel_names("rivet")`` [-]
    surface : str
        ``bare`` when the head was ground clean, ``coated`` when not [-]
    cooling_time_800_500_s : Band
        Time from 800 to 500 C, from ``weldability_stud`` or from the heat model [s]
    dilution : Band or None
        Share of the rivet in the weld metal; None for ``dilution_band()`` [-]

    Returns
    -------
    WeldVerdict
        Numbers, reasons and what the weld is good for [-]

    Raises
    ------
    ValueError
        If a name is not in its list or a number is out of the formulas' ranges.

    Notes
    -----
    Sources: those of ``published_warnings``; schaeffler_code, maynier_2004, yurioka_1987, andrews_1965.

    Examples
    --------
    >>> from secondplate.weldability_stud import stud_cooling_time_s
    >>> times = stud_cooling_time_s(480, face_diameter_mm=7)
    >>> verdict(stud="304-type", rivet="36MnB4", surface="bare", cooling_time_800_500_s=times).regions[1]
    'martensite'
    """
    require_choice("stud", stud, steel_names("stud"))
    hardness = rivet_zone_hardness_hv(rivet, cooling_time_800_500_s=cooling_time_800_500_s)
    share = dilution_band() if dilution is None else dilution
    of_stud, of_rivet = composition(stud), composition(rivet)
    path = dilution_path(of_stud, of_rivet, dilution=[share.low, share.best, share.high])
    return WeldVerdict(
        stud=stud,
        rivet=rivet,
        surface=surface,
        dilution=share,
        regions=tuple(map(str, path.region)),
        martensite_from=martensite_dilution(of_stud, of_rivet),
        cooling_time_800_500_s=cooling_time_800_500_s,
        hardness_hv=hardness,
        martensite_start_c=_over_grade(martensite_start_c, rivet, "Andrews' formula over the grade"),
        carbon_equivalent_iiw_percent=_over_grade(
            carbon_equivalent_iiw_percent, rivet, "the institute's formula over the grade"
        ),
        reasons=published_warnings(rivet, surface=surface),
    )
