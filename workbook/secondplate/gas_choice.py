"""Which shielding gas: the groups of ISO 14175 and when a stud weld needs one of them.

Only the groups that matter for stud welding are listed; a mix outside them is refused, not guessed.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from secondplate.bands import Band
from secondplate.checks import require_between, require_choice
from secondplate.tables import load


@dataclass(frozen=True, kw_only=True)
class GasGroup:
    """One group of shielding gases by composition; what is missing to 100 % is argon.

    Parameters
    ----------
    designation : str
        Symbol of the group [-]
    composition : str
        Composition in words [-]
    effect : str
        Chemical effect and remarks [-]
    carbon_dioxide_percent : Band
        Volume fraction of carbon dioxide [%]
    oxygen_percent : Band
        Volume fraction of oxygen [%]
    helium_percent : Band
        Volume fraction of helium [%]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        What the row rests on [-]

    Examples
    --------
    >>> GAS_GROUPS["M21"].carbon_dioxide_percent.high
    25.0
    """

    designation: str
    composition: str
    effect: str
    carbon_dioxide_percent: Band
    oxygen_percent: Band
    helium_percent: Band
    source: str
    locator: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class GasAdvice:
    """Whether one kind of stud weld needs shielding gas, and which groups serve.

    Parameters
    ----------
    needed : bool
        Whether gas is on [-]
    groups : tuple of str
        Designations of ISO 14175 that serve, the usual ones first; empty where a ferrule takes the place [-]
    why : str
        The reason in one sentence [-]
    source : str
        Bibliography id behind ``needed`` [-]
    locator : str
        Place in that source [-]
    basis : str
        What ``needed`` rests on [-]
    groups_source : str
        Bibliography id behind ``groups`` [-]
    groups_locator : str
        Place in that source [-]
    groups_basis : str
        What ``groups`` rests on [-]
    contradiction : str
        Where sources or shops disagree, empty where they do not [-]

    Examples
    --------
    >>> gas_advice(stud_material="carbon steel", base="steel sheet", process="short cycle").needed
    False
    """

    needed: bool
    groups: tuple[str, ...]
    why: str
    source: str
    locator: str
    basis: str
    groups_source: str
    groups_locator: str
    groups_basis: str
    contradiction: str


def _group(row):
    """Make a group of one table row."""

    def part(gas):
        low, high = float(row.keys[f"{gas}_low"]), float(row.keys[f"{gas}_high"])
        return Band(low=low, best=(low + high) / 2, high=high, basis=f"{row.source}, {row.locator}")

    return GasGroup(
        designation=row.name,
        composition=row.value,
        effect=row.conditions,
        carbon_dioxide_percent=part("co2"),
        oxygen_percent=part("o2"),
        helium_percent=part("he"),
        source=row.source,
        locator=row.locator,
        basis=row.basis,
    )


def _advice(row):
    """Make advice of one table row; ``-`` stands for none."""
    keys = {name: "" if cell == "-" else cell for name, cell in row.keys.items()}
    return GasAdvice(
        needed={"yes": True, "no": False}[row.value],
        groups=tuple(keys["groups"].split()),
        why=keys["why"],
        source=row.source,
        locator=row.locator,
        basis=row.basis,
        groups_source=keys["groups_source"],
        groups_locator=keys["groups_locator"],
        groups_basis=keys["groups_basis"],
        contradiction=keys["contradiction"],
    )


GAS_GROUPS: Mapping[str, GasGroup] = MappingProxyType({row.name: _group(row) for row in load("gas_groups")})
_ADVICE = {
    (row.keys["stud_material"], row.keys["base"], row.keys["process"]): _advice(row)
    for row in load("gas_advice")
}


def gas_advice(*, stud_material, base, process):
    """Tell whether a stud weld needs shielding gas and which groups of ISO 14175 serve.

    Parameters
    ----------
    stud_material : str
        Material of the stud [-]
    base : str
        What the stud is welded on; it must suit the stud [-]
    process : str
        Kind of stud welding [-]

    Returns
    -------
    GasAdvice
        Need, groups, reason, sources and contradictions [-]

    Raises
    ------
    ValueError
        If a name is unknown or the stud does not suit the base (aluminium on steel, steel on aluminium).

    Notes
    -----
    Source: table gas_advice, each row with its own source and basis.
    The equipment manual and the vehicle maker's procedure come first.

    Examples
    --------
    >>> advice = gas_advice(
    ...     stud_material="austenitic stainless", base="steel rivet head", process="short cycle")
    >>> advice.needed, advice.groups
    (True, ('M12', 'M13', 'M21'))
    """
    require_choice("stud material", stud_material, _names(0))
    require_choice(
        f"base for a stud of {stud_material}",
        base,
        tuple(dict.fromkeys(key[1] for key in _ADVICE if key[0] == stud_material)),
    )
    require_choice("process", process, _names(2))
    return _ADVICE[stud_material, base, process]


def _names(place):
    """List what stands at one place of the advice keys, in table order."""
    return tuple(dict.fromkeys(key[place] for key in _ADVICE))


def gas_group(*, carbon_dioxide_percent=0.0, oxygen_percent=0.0, helium_percent=0.0):
    """Find the ISO 14175 group of a mix; what is missing to 100 % is argon.

    Parameters
    ----------
    carbon_dioxide_percent : float
        Volume fraction of carbon dioxide [%]
    oxygen_percent : float
        Volume fraction of oxygen [%]
    helium_percent : float
        Volume fraction of helium [%]

    Returns
    -------
    GasGroup
        The group; on a shared limit the milder one [-]

    Raises
    ------
    ValueError
        If a part lies outside 0 to 100 %, all parts exceed 100 %, or no listed group holds the mix.

    Notes
    -----
    Source: iso_14175, Table 2, limits from memory; the order of the rows settles shared limits.

    Examples
    --------
    >>> gas_group(carbon_dioxide_percent=18).designation
    'M21'
    """
    parts = (
        require_between("carbon dioxide", carbon_dioxide_percent, 0, 100, unit="%"),
        require_between("oxygen", oxygen_percent, 0, 100, unit="%"),
        require_between("helium", helium_percent, 0, 100, unit="%"),
    )
    require_between("carbon dioxide, oxygen and helium together", sum(parts), 0, 100, unit="%")
    for group in GAS_GROUPS.values():
        bands = (group.carbon_dioxide_percent, group.oxygen_percent, group.helium_percent)
        if all(band.contains(part) for band, part in zip(bands, parts, strict=True)):
            return group
    message = (
        f"mix must fall in one of the groups {', '.join(GAS_GROUPS)}, got "
        f"{parts[0]:g} % carbon dioxide, {parts[1]:g} % oxygen, {parts[2]:g} % helium"
    )
    raise ValueError(message)
