"""How every picture looks: paper, inks, fills, hatches, line widths, text sizes. It draws nothing by itself.

Three inks on white, and words or hatches wherever a colour carries a meaning, so that the pictures read the
same to colour-blind eyes and in grey print. Amber is darker for text than for areas, so that every letter has
a contrast of at least 4.5 to whatever it stands on.
"""

import threading
from contextlib import contextmanager

import matplotlib as mpl
from matplotlib.figure import Figure

SLATE = "#1f3a4d"
AMBER = "#b5651d"
GREY = "#6b7780"
PAPER = "#ffffff"

PALE_SLATE = "#dce6ed"
PALE_AMBER = "#f7e8d5"
PALE_GREY = "#eef1f3"
MID_SLATE = "#a9bfce"
MID_GREY = "#c3cad0"
MID_AMBER = "#dfae78"
ARC_GLOW = "#f0c48f"

TEXT = SLATE
TEXT_AMBER = "#8a4a0f"
TEXT_GREY = "#4d585f"

TEXT_PT = 12.5
HEADING_PT = 14

THIN = 0.8
LINE = 1.5
BOLD = 2.6

CENTRE_LINE = (9, 3, 2, 3)

STEEL_HATCH = "/////"
TOP_HATCH = "\\\\\\"
SECOND_HATCH = "///"

_SETTINGS = {
    "font.family": ["sans-serif"],
    "font.sans-serif": ["DejaVu Sans"],
    "font.size": TEXT_PT,
    "text.color": TEXT,
    "text.parse_math": False,
    "hatch.linewidth": 0.7,
    "figure.facecolor": PAPER,
    "savefig.facecolor": PAPER,
    # Letters as outlines: the picture looks the same on a machine that has none of our fonts.
    "svg.fonttype": "path",
    # A fixed salt keeps the element names, and so the bytes, the same in every run.
    "svg.hashsalt": "second plate",
    "path.simplify": True,
}

# matplotlib keeps its settings in one global place; two panels may draw from two threads at once.
_ONE_AT_A_TIME = threading.RLock()


@contextmanager
def sheet_of_paper(*, width_in, height_in):
    """Give an empty figure under the workbook's own settings; whatever else was set is put back after."""
    with _ONE_AT_A_TIME, mpl.rc_context():
        mpl.rcdefaults()
        mpl.rcParams.update(_SETTINGS)
        yield Figure(figsize=(width_in, height_in))
