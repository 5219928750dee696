"""Open class that draws the Schaeffler diagram. Lines read as digitised end points, good to 0.3.

The path of a stud into a 36MnB4 rivet was worked apart from this library.
"""

import pytest

from secondplate.weldability_composition import composition
from secondplate.weldability_diagram import diagram_lines
from secondplate.weldability_dilution import dilution_path

SOURCE = "schaeffler_code"
RIVET = composition("36MnB4")


@pytest.mark.parametrize(
    ("name", "intercept", "slope"),
    [("martensite line", 20.06, -0.8456), ("austenite line", 25.73, -0.7975)],
)
def test_lines_of_martensite(name, intercept, slope):
    """Nickel equivalent at no chromium and slope of both lines."""
    line = {line.name: line for line in diagram_lines()}[name]
    assert line.nickel_at(0) == pytest.approx(intercept, abs=1e-9)  # as read
    assert line.slope == pytest.approx(slope, abs=6e-5)  # four decimals


def test_line_of_no_ferrite():
    """Ni = 1.0834 (Cr - 6.96)."""
    line = {line.name: line for line in diagram_lines()}["ferrite line 0 %"]
    assert line.slope == pytest.approx(1.0834, abs=6e-5)  # four decimals
    assert line.nickel_at(6.96) == pytest.approx(0, abs=1e-9)  # as read


@pytest.mark.parametrize(
    ("dilution", "carbon", "chromium", "nickel", "martensite_at", "austenite_at", "region"),
    [
        (0, 0.050, 19.075, 10.700, 3.93, 10.52, "austenite and ferrite"),
        (0.2, 0.112, 15.360, 10.825, 7.07, 13.48, "austenite and martensite"),
        (0.4, 0.174, 11.645, 10.950, 10.21, 16.44, "austenite and martensite"),
        (0.5, 0.205, 9.787, 11.013, 11.78, 17.92, "martensite"),
        (1, 0.360, 0.500, 11.325, 19.64, 25.33, "martensite"),
    ],
)
def test_path_of_a_304_stud(dilution, carbon, chromium, nickel, martensite_at, austenite_at, region):
    """Carbon, equivalents, both lines at that place and the structure, for each share of the rivet."""
    path = dilution_path(composition("304-type"), RIVET, dilution=dilution)
    assert path.carbon_percent[0] == pytest.approx(carbon, abs=6e-4)  # three decimals
    assert path.chromium_equivalent_percent[0] == pytest.approx(chromium, abs=6e-4)
    assert path.nickel_equivalent_percent[0] == pytest.approx(nickel, abs=6e-4)
    lines = {line.name: line for line in diagram_lines()}
    at = path.chromium_equivalent_percent[0]
    assert lines["martensite line"].nickel_at(at) == pytest.approx(martensite_at, abs=6e-3)  # two decimals
    assert lines["austenite line"].nickel_at(at) == pytest.approx(austenite_at, abs=6e-3)
    assert path.region[0] == region


@pytest.mark.parametrize(
    ("dilution", "chromium", "nickel", "region"),
    [
        (0, 23.950, 15.300, "austenite and ferrite"),
        (0.2, 19.260, 14.505, "austenite"),
        (0.4, 14.570, 13.710, "austenite and martensite"),
        (0.5, 12.225, 13.312, "austenite and martensite"),
    ],
)
def test_path_of_a_309_stud(dilution, chromium, nickel, region):
    """A richer stud stays out of the field of martensite at equal melting."""
    path = dilution_path(composition("309-type"), RIVET, dilution=dilution)
    assert path.chromium_equivalent_percent[0] == pytest.approx(chromium, abs=6e-4)  # three decimals
    assert path.nickel_equivalent_percent[0] == pytest.approx(nickel, abs=6e-4)
    assert path.region[0] == region
