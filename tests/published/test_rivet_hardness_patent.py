"""Patent on self-piercing rivets, 2018, read: 535 to 585 HV."""

from secondplate.weldability_composition import composition
from secondplate.weldability_hardness import yurioka_hardness
from secondplate.weldability_published import published_hardnesses

SOURCE = "rivet_hardness_patent"


def test_rivet_as_delivered_is_tempered_martensite_of_its_steel():
    """535 to 585 HV lies under untempered martensite of 36MnB4 and far above the steel without martensite."""
    (rivet,) = (found for found in published_hardnesses() if found.source == SOURCE)
    assert (rivet.low_hv, rivet.high_hv) == (535, 585)
    steel = yurioka_hardness(composition("36MnB4"), cooling_time_800_500_s=1)
    assert steel.bainite_hv < rivet.low_hv < rivet.high_hv < steel.martensite_hv
