"""Arc stud welding of AISI 309 to AISI 1020, 2018. Abstract read: 575 HV at most, at 800 A and 0.35 s."""

from secondplate.weldability_composition import Composition
from secondplate.weldability_hardness import yurioka_hardness
from secondplate.weldability_published import published_hardnesses

SOURCE = "arc_stud_309_1020"


def test_575_hv_is_more_than_the_plain_steel_can_give():
    """Martensite of 0.20 % carbon stays under 500 HV, so the weld metal must have part in the 575 HV."""
    (measured,) = (found for found in published_hardnesses() if found.source == SOURCE)
    assert measured.high_hv == 575
    plain_steel = Composition(carbon_percent=0.20, silicon_percent=0.2, manganese_percent=0.45)
    assert yurioka_hardness(plain_steel, cooling_time_800_500_s=0.1).martensite_hv < 500
