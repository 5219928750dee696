"""Writes ``grading/catalogues.json``: what exercises draw from, asked of the library.

Run it after a change of the library or of an exercise that draws from a catalogue:
``python tests/benchmarks/catalogues.py``. Draws every exercise for some hundred learners and keeps what was
asked on the way; what nobody asked for here is worked out when somebody does.
"""

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "workbook")]

from grading import catalogues  # noqa: E402, after the path is set
from grading.exercises import EXERCISES  # noqa: E402
from grading.keys import keys_for  # noqa: E402
from grading.row_days import DAYS, row_day  # noqa: E402
from grading.row_plans import best_of  # noqa: E402
from grading.variants import words  # noqa: E402

LEARNERS = 400


def main():
    """Write the file."""
    catalogues.CATALOGUES_FILE.unlink(missing_ok=True)
    wanted = [(each, f"learner {number}", 1) for each in EXERCISES for number in range(LEARNERS)]
    for (exercise_id, _, _), key in keys_for(wanted, course_key="catalogues", exercises=EXERCISES).items():
        words(EXERCISES[exercise_id], key.numbers)
    for number in range(DAYS):
        best_of(row_day(number)[1])
    lines = []
    for name, asked in sorted(catalogues.ASKED.items()):
        pairs = sorted((catalogues.written(each), catalogues.written(found)) for each, found in asked.items())
        rows = ",\n".join(f"[{one.decode()},{other.decode()}]" for one, other in pairs)
        lines.append(f'"{name}":[\n{rows}\n]')
    catalogues.CATALOGUES_FILE.write_text("{\n" + ",\n".join(lines) + "\n}\n", encoding="utf-8")
    print(f"wrote {catalogues.CATALOGUES_FILE}")


if __name__ == "__main__":
    main()
