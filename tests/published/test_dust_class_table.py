"""Classes of dust explosion by severity; seen."""

import pytest

from secondplate.removal import dust_class

SOURCE = "dust_class_table"


@pytest.mark.parametrize(
    ("severity", "name"), [(400, "St 3"), (100, "St 1"), (200, "St 1"), (300, "St 2"), (301, "St 3")]
)
def test_classes(severity, name):
    """Aluminium powder of 400 is in class 3, aluminium grit of 100 in class 1; the limits belong below."""
    assert dust_class(severity) == name
