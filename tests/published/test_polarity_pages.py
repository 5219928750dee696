"""Two general pages on polarity. Read."""

import pytest

from secondplate.stud_weld import polarity

SOURCE = "polarity_pages"


@pytest.mark.parametrize(
    ("stud_material", "base", "choice"),
    [
        ("carbon steel", "steel sheet", "stud negative"),
        ("austenitic stainless", "steel sheet", "stud negative"),
        ("aluminium", "aluminium sheet", "stud positive"),
    ],
)
def test_polarity_by_metal(stud_material, base, choice):
    """Electrode negative for steel, gun positive for aluminium."""
    advice = polarity(stud_material=stud_material, base=base)
    assert advice.agreed == choice
    assert SOURCE in [rule.source for rule in advice.rules]
