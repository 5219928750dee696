"""Saaty, Theory and Applications of the Analytic Network Process, 2005: the newer random index."""

from secondplate import tables

SOURCE = "saaty_2005"


def test_random_index():
    """Index for 3 to 10 criteria: copied, so exact."""
    found = [row.number for row in tables.load("random_index") if row.source == SOURCE]
    assert found == [0.52, 0.89, 1.11, 1.25, 1.35, 1.4, 1.45, 1.49]
