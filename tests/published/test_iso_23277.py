"""ISO 23277: acceptance levels of penetrant indications. From memory."""

import pytest

from secondplate.plate_penetrant import indication_accepted

SOURCE = "iso_23277"


@pytest.mark.parametrize(
    ("shape", "level", "longest"),
    [
        ("linear", 1, 2),
        ("linear", 2, 4),
        ("linear", 3, 8),
        ("rounded", 1, 4),
        ("rounded", 2, 6),
        ("rounded", 3, 8),
    ],
)
def test_longest_indication(shape, level, longest):
    """Linear up to 2, 4 and 8 mm, rounded up to 4, 6 and 8 mm."""
    found = indication_accepted([longest, longest + 0.1], indication_shape=shape, level=level)
    assert found.tolist() == [True, False]
