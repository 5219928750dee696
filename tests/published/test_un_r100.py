"""UN Regulation 100, electric power train: 100 and 500 ohm per volt; seen."""

from secondplate.removal import isolation_needed_ohm

SOURCE = "un_r100"


def test_isolation_of_400_volt():
    """40 kilo-ohm for a direct-voltage bus, 200 kilo-ohm for combined buses: products, so exact."""
    found = [isolation_needed_ohm(400, combined=combined) for combined in (False, True)]
    assert found == [40_000, 200_000]
