"""A table on a page: plain rows with a caption, no index column."""

import pandas as pd
from IPython.display import HTML
from markupsafe import escape


def table(rows, *, caption, folded=False):
    """Return the rows, each a mapping from heading to cell, as a table with its caption.

    A long table that few will read can be folded away under its caption.
    """
    frame = pd.DataFrame(rows)
    body = frame.to_html(index=False, border=0, classes="second-plate-table", justify="left", na_rep="")
    if folded:
        return HTML(f"<details><summary>{escape(caption)}</summary>{body}</details>")
    head, _, rest = body.partition(">")
    return HTML(f"{head}><caption>{escape(caption)}</caption>{rest}")
