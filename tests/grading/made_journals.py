"""Records and lines of made journals; the fixtures that hold such journals are in the conftest."""

ENTRY = {
    "learner": "ann",
    "course": "test-class",
    "page": "arcs",
    "exercise": "arcs.energy",
    "round_number": 1,
    "bank": "test",
    "scenario": "0123456789abcdef",
}


def entry(number):
    """Return the fields of a numbered answer."""
    return {**ENTRY, "answers": {"energy": f"{number} J", "note": "J\u00fcrgen, 20,5 \u2212 \U0001f600"}}


def lines_of(journal):
    """Return the lines of a journal's file, without their ends."""
    return journal.path.read_bytes().splitlines()
