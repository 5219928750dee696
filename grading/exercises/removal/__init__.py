"""Exercises of the page on extraction or drill-out."""
