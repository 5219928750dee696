"""Welding processes handbook, 2nd edition 2012: an example in the Schaeffler diagram. Result read.

The compositions of the grades are not printed there; they are usual ones from memory.
"""

import pytest

from secondplate.weldability_composition import Composition, mix
from secondplate.weldability_diagram import constitution_region, diagram_lines
from secondplate.weldability_equivalents import schaeffler_equivalents

SOURCE = "welding_handbook_example"
LOW_ALLOY_1_0401 = Composition(carbon_percent=0.15, silicon_percent=0.25, manganese_percent=0.75)
STAINLESS_1_4301 = Composition(
    carbon_percent=0.04,
    silicon_percent=0.5,
    manganese_percent=1.5,
    chromium_percent=18.2,
    nickel_percent=8.7,
)
FILLER_23_12_2_L = Composition(
    carbon_percent=0.02,
    silicon_percent=0.4,
    manganese_percent=1.5,
    chromium_percent=23,
    nickel_percent=12.5,
    molybdenum_percent=2.6,
)


@pytest.mark.parametrize("dilution", [0.2, 0.3, 0.4])
def test_austenite_with_about_ten_percent_ferrite(dilution):
    """Both plates melted alike, 20 to 40 % of them in the filler: austenite with about 10 % ferrite."""
    plates = mix(LOW_ALLOY_1_0401, STAINLESS_1_4301, dilution=0.5)
    at = schaeffler_equivalents(mix(FILLER_23_12_2_L, plates, dilution=dilution))
    chromium, nickel = at.chromium_equivalent_percent, at.nickel_equivalent_percent
    assert constitution_region(chromium, nickel) == "austenite and ferrite"
    lines = {line.ferrite_percent: line for line in diagram_lines()}
    # Between the lines of 5 and 20 % over the whole range of dilution.
    assert lines[5].nickel_at(chromium) > nickel > lines[20].nickel_at(chromium)
