"""Arc stud welding of AISI 420 to AISI 316L, 2025. Abstract read: 190 to 633 HV, best at 600 A and 0.2 s."""

from secondplate.weldability import rivet_zone_hardness_hv
from secondplate.weldability_published import published_hardnesses, published_warnings
from secondplate.weldability_stud import stud_cooling_time_s

SOURCE = "arc_stud_420_316l"


def test_measured_hardness_lies_in_the_computed_band_of_a_rivet():
    """The hardest zone, 633 HV in a martensitic steel, is within the band of a 36MnB4 rivet."""
    (measured,) = (found for found in published_hardnesses() if found.source == SOURCE)
    assert (measured.low_hv, measured.high_hv) == (190, 633)
    times = stud_cooling_time_s(480, face_diameter_mm=7)
    assert rivet_zone_hardness_hv("36MnB4", cooling_time_800_500_s=times).contains(measured.high_hv)


def test_longer_arc_is_weaker():
    """The finding on 0.2 and 0.3 s stands against the weld."""
    (reason,) = (each for each in published_warnings("36MnB4", surface="bare") if each.source == SOURCE)
    assert reason.bears == "against"
    assert "600 A and 0.2 s" in reason.text
