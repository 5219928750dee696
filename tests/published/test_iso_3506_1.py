"""ISO 3506-1:2020 Stainless steel fasteners. Strengths read in a fastener data sheet."""

import pytest

from secondplate.studs import breaking_load_n, proof_load_n, property_class

SOURCE = "iso_3506_1"


@pytest.mark.parametrize(
    ("name", "tensile_mpa", "proof_mpa"), [("A2-50", 500, 210), ("A2-70", 700, 450), ("A2-80", 800, 600)]
)
def test_least_strengths(name, tensile_mpa, proof_mpa):
    """Least tensile strength and 0.2 % proof stress of the austenitic classes."""
    found = property_class(name)
    assert (found.tensile_strength_mpa, found.proof_stress_mpa) == (tensile_mpa, proof_mpa)
    assert found.source == SOURCE


@pytest.mark.parametrize(("area_mm2", "load_n"), [(8.78, 6146), (14.2, 9940)])
def test_breaking_load_from_nominal_area(area_mm2, load_n):
    """Class 70 on the nominal areas of M4 and M5."""
    strength_mpa = property_class("A2-70").tensile_strength_mpa
    assert breaking_load_n(area_mm2, strength_mpa) == pytest.approx(load_n, rel=1e-3)  # three figures


def test_name_holds_a_tenth_of_the_strength():
    """The figure in the name is a tenth of the tensile strength."""
    for name in ("A2-50", "A2-70", "A2-80"):
        assert property_class(name).tensile_strength_mpa == 10 * float(name.partition("-")[2])


def test_proof_before_break():
    """A stud of any class stays longer for good before it breaks."""
    for name in ("A2-50", "A2-70", "A2-80"):
        found = property_class(name)
        assert proof_load_n(20.1, found.proof_stress_mpa) < breaking_load_n(20.1, found.tensile_strength_mpa)
