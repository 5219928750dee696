"""The form for the bench: what an instructor saw of a practical, line by line of its rubric.

It adds rows to the same table that can be written by hand or in a spreadsheet; `grading practical` enters it.
"""

from datetime import datetime
from pathlib import Path

from exercise_forms.form import Form, script, sentence
from grading.practical import NEEDED, PracticalError, append_judged, judged_from

NOTES = [
    "Choose what you saw. What you leave open can be judged later, and a later judgement takes the place of "
    "an earlier one.",
]
STOPPED = "An unsafe act ends the try; it may be repeated another day."


def _part(line):
    """Describe one line of a rubric to the browser as a choice of its levels, the best first."""
    options = []
    for level in range(line.points, -1, -1):
        words = line.levels.get(level, "between the two")
        options.append({"id": str(level), "text": f"{level}: {words}"})
    return {"id": line.id, "kind": "choice", "ask": f"{line.shown} ({line.points})", "options": options}


class PracticalForm(Form):
    """Takes the levels of one learner and adds them to the table."""

    _esm = script("part_editors.js", "practical.js")
    title = "Practical marks"

    def __init__(self, rubric, table):
        """Show the lines of a rubric; ``table`` is the file that rows are added to."""
        self.rubric = rubric
        self.table = Path(table).resolve()
        super().__init__(
            state={
                "heading": rubric.title,
                "notes": [*NOTES, f"Saved in {self.table}."],
                "today": f"{datetime.now():%Y-%m-%d}",
                "parts": [_part(line) for line in rubric.lines],
            }
        )

    def answer(self, message):
        """Save what was judged, or say what is missing."""
        given = {name: " ".join(str(message[name]).split()) for name in ("learner", "by", "when", "note")}
        levels = {line.id: str(message["levels"].get(line.id) or "") for line in self.rubric.lines}
        try:
            rows = self._rows(given, {line: level for line, level in levels.items() if level})
            append_judged(self.table, rows)
        except (PracticalError, OSError) as problem:
            reason = getattr(problem, "strerror", None) or str(problem)
            return {"kind": "problem", "sentence": f"Not saved. {sentence(reason)}"}
        return {"kind": "saved", "sentence": self._came_to(given["learner"], levels)}

    def _rows(self, given, levels):
        """Return the rows for the table, each checked the way the table is checked when it is read."""
        if not levels:
            message = "choose a level in at least one line"
            raise PracticalError(message)
        rows = []
        for criterion, level in levels.items():
            row = {**given, "page": self.rubric.page, "criterion": criterion, "level": level}
            judged_from(row, 0, {self.rubric.page: self.rubric})
            rows.append([*(row[name] for name in NEEDED), row["note"]])
        return rows

    def _came_to(self, learner, levels):
        """Say what the levels of this form come to."""
        judged = {line: int(level) for line, level in levels.items() if level}
        points = self.rubric.score(judged)
        if points is None:
            return f"Saved for {learner}: {len(judged)} of {len(levels)} lines. The others can follow."
        stopped = f" {STOPPED}" if len(judged) < len(levels) else ""
        return f"Saved for {learner}: {points:g} of {self.rubric.points:g} points.{stopped}"
