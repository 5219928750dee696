"""What the heat of a stud weld hangs on beside the joint: settings of the arc, and values known as bands."""

from dataclasses import dataclass, fields

from secondplate import tables
from secondplate.arc_heat import face_heat_share, voltage_band_v
from secondplate.checks import require_between, require_choice
from secondplate.weld_charts import short_cycle_row, stainless_energy_factor

_NAMES = {
    "contact_rivet_plates_w_m2k": "contact of rivet and plates",
    "contact_plates_w_m2k": "contact of the plates",
    "film_w_m2k": "film",
    "emittance": "emittance",
    "liquid_conductivity_w_mk": "liquid conductivity",
}
# Fields with the limits of the model and their unit.
_LIMITS = {
    "current_a": (50, 2000, "A"),
    "time_ms": (1, 1000, "ms"),
    "voltage_v": (10, 50, "V"),
    "stud_heat_share": (0, 1, ""),
    "rivet_heat_share": (0, 1, ""),
    "contact_rivet_plates_w_m2k": (1, 1e6, "W/m2K"),
    "contact_plates_w_m2k": (1, 1e6, "W/m2K"),
    "film_w_m2k": (0, 1000, "W/m2K"),
    "emittance": (0, 1, ""),
    "liquid_conductivity_w_mk": (5, 1000, "W/mK"),
    "start_c": (-20, 100, "C"),
    "cooling_s": (0.5, 60, "s"),
}


def weld_heat_bands():
    """Return the band of everything in ``WeldHeat`` that is known only as a band.

    Returns
    -------
    dict of str to Band
        Band by the name of the field of ``WeldHeat``, in the unit of that field [-]

    Notes
    -----
    Sources: table weld_heat, each row with its own; voltage and heat shares from ``arc_heat``.

    Examples
    --------
    >>> weld_heat_bands()["voltage_v"].best
    30.0
    """
    bands = {"voltage_v": voltage_band_v(), "stud_heat_share": face_heat_share()}
    bands["rivet_heat_share"] = bands["stud_heat_share"]
    of_table = tables.bands("weld_heat")
    return bands | {field: of_table[name] for field, name in _NAMES.items()}


def _words(name):
    """Turn the name of a field into the words of a sentence, without its unit."""
    ending = next(
        (end for end in ("_w_m2k", "_w_mk", "_ms", "_a", "_v", "_c", "_s") if name.endswith(end)), ""
    )
    return name.removesuffix(ending).replace("_", " ")


_BEST = {name: band.best for name, band in weld_heat_bands().items()}


@dataclass(frozen=True, kw_only=True)
class WeldHeat:
    """Settings of one weld and the values of the heat model; all but the first two have defaults.

    Parameters
    ----------
    current_a : float
        Weld current, 50 to 2000 A [A]
    time_ms : float
        Weld time, 1 to 1000 ms [ms]
    voltage_v : float
        Arc voltage, 10 to 50 V [V]
    stud_heat_share : float
        Share of the arc energy that reaches the stud's face, 0 to 1 [-]
    rivet_heat_share : float
        Share that reaches the face of the rivet head, 0 to 1, both together at most 1 [-]
    contact_rivet_plates_w_m2k : float
        Contact conductance between rivet and aluminium, 1 to 1e6 W/m2K [W/m2K]
    contact_plates_w_m2k : float
        Contact conductance between plates that touch, and of the slug, 1 to 1e6 W/m2K [W/m2K]
    film_w_m2k : float
        Heat loss to the air by convection, 0 to 1000 W/m2K [W/m2K]
    emittance : float
        Emittance of all faces to the air, 0 to 1 [-]
    liquid_conductivity_w_mk : float
        Conductivity of molten steel, raised where the melt is stirred, 5 to 1000 W/mK [W/mK]
    start_c : float
        Temperature of everything before the weld, -20 to 100 C [C]
    cooling_s : float
        Time after the arc that is computed, 0.5 to 60 s [s]

    Raises
    ------
    ValueError
        If a value is out of its range or the two shares exceed 1.

    Examples
    --------
    >>> WeldHeat(current_a=720, time_ms=20).voltage_v
    30.0
    """

    current_a: float
    time_ms: float
    voltage_v: float = _BEST["voltage_v"]
    stud_heat_share: float = _BEST["stud_heat_share"]
    rivet_heat_share: float = _BEST["rivet_heat_share"]
    contact_rivet_plates_w_m2k: float = _BEST["contact_rivet_plates_w_m2k"]
    contact_plates_w_m2k: float = _BEST["contact_plates_w_m2k"]
    film_w_m2k: float = _BEST["film_w_m2k"]
    emittance: float = _BEST["emittance"]
    liquid_conductivity_w_mk: float = _BEST["liquid_conductivity_w_mk"]
    start_c: float = 20.0
    cooling_s: float = 10.0

    def __post_init__(self):
        """Refuse values outside the model's range."""
        for name, (low, high, unit) in _LIMITS.items():
            require_between(_words(name), getattr(self, name), low, high, unit=unit)
        require_between("sum of the heat shares", self.stud_heat_share + self.rivet_heat_share, 0, 1, unit="")

    @property
    def heat_rate_w(self):
        """Heat into the stud's face and into the face of the rivet head in W."""
        power_w = self.voltage_v * self.current_a
        return self.stud_heat_share * power_w, self.rivet_heat_share * power_w


def charted_settings(joint, **changes):
    """Return the settings of the short-cycle chart for the stud of a joint, changed where wished.

    Parameters
    ----------
    joint : RivetedJoint
        The joint, with a stud of 3, 4, 5 or 6 mm [-]
    **changes : float
        Other values for fields of ``WeldHeat`` [-]

    Returns
    -------
    WeldHeat
        Settings; for a stainless stud the current is a tenth lower than charted [-]

    Raises
    ------
    ValueError
        If the stud is not in the chart, a field is unknown or a value is out of its range.

    Notes
    -----
    Source: stud_manual_short_cycle page 39 with footnote 2.

    Examples
    --------
    >>> from secondplate.heat.joint import default_joint
    >>> charted_settings(default_joint()).current_a
    720.0
    """
    row = short_cycle_row(joint.stud_diameter_mm)
    stainless = joint.stud_material == "austenitic stainless"
    factor = stainless_energy_factor().best if stainless else 1.0
    for name in changes:
        require_choice("field of the settings", name, tuple(field.name for field in fields(WeldHeat)))
    return WeldHeat(**({"current_a": factor * row.current_a, "time_ms": row.time_ms} | changes))
