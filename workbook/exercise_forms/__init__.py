"""Forms of the pages: exercises, explorers, sign-in, progress, hand-in. Adapters, and nothing more."""

from exercise_forms.calls import exercise, hand_in, panel, practical, sign_in, summary
from exercise_forms.marks import mark
from exercise_forms.tables import table
from grading.quantities import show_quantity

__all__ = [
    "exercise",
    "hand_in",
    "mark",
    "panel",
    "practical",
    "show_quantity",
    "sign_in",
    "summary",
    "table",
]
