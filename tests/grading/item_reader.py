"""Items of the QTI standard read and marked by pyslet, which others wrote: as another system would."""

import io
import logging
import warnings

with warnings.catch_warnings(action="ignore"):  # its oldest lines are older than some rules of Python
    from pyslet.qtiv2.expressions import Equal
    from pyslet.qtiv2.variables import ItemSessionState
    from pyslet.qtiv2.xml import QTIDocument


def read_item(data):
    """Return the item that the bytes hold; what pyslet finds wrong with it is raised."""
    document = QTIDocument()
    logging.disable(logging.ERROR)  # it speaks of each tolerance, for the reason below
    try:
        with warnings.catch_warnings(action="ignore"):  # it calls its own methods by their old names
            document.read(src=io.BytesIO(data))
    finally:
        logging.disable(logging.NOTSET)
    for node in document.root.find_children_depth_first(Equal):
        if isinstance(node.tolerance, str):  # pyslet keeps the list as it is written, and counts its letters
            node.tolerance = node.tolerance.split()
    return document.root


def mark_item(item, responses):
    """Return ``(score, feedback shown)`` that an item gives to responses by name."""
    state = ItemSessionState(item)
    state.begin_session()
    for name, value in responses.items():
        state[name].set_value(value)
    with warnings.catch_warnings(action="ignore"):  # see above
        item.ResponseProcessing.run(state)
    return state["SCORE"].value, set(state["FEEDBACK"].value or ())
