"""Finds what one source says of a sheet, for checks against that source."""

from secondplate.sheet_alloys import sheet_properties


def said(source_id, sheet, quantity, *, thickness_mm=None, conditions=""):
    """Return least, typical and greatest of the one statement of a source that fits the conditions."""
    (found,) = (
        each
        for each in sheet_properties(sheet, quantity, thickness_mm=thickness_mm)
        if each.source == source_id and each.basis != "from memory" and conditions in each.conditions
    )
    return found.least, found.typical, found.greatest
