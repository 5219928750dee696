"""Prints how long each picture takes to draw, and the import; run it by hand, it judges nothing.

Processor time, best of five, so that other work on the machine counts little.
"""

import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "workbook")]
IMPORT = f"import time; t = time.process_time(); import sys; sys.path.insert(0, {str(ROOT / 'workbook')!r}); "
IMPORT += "import drawings; print(time.process_time() - t)"


def import_s():
    """Return the processor time of importing the pictures in a fresh process, best of three."""
    runs = (
        subprocess.run([sys.executable, "-c", IMPORT], capture_output=True, text=True, check=True)
        for _ in "123"
    )
    return min(float(run.stdout) for run in runs)


def draw_ms(draw, given):
    """Return the processor time of drawing one picture, best of five."""
    times = []
    for _ in range(5):
        start = time.process_time()
        draw(**given)
        times.append(1000 * (time.process_time() - start))
    return min(times)


def main():
    """Print the import and every usual picture."""
    from tests.drawings.cases import usual_calls

    print(f"import drawings: {import_s():.2f} s")
    for name, draw, given in usual_calls():
        print(f"{draw_ms(draw, given):6.0f} ms  {name}")


if __name__ == "__main__":
    main()
