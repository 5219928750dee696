"""A learner's notebook, for tests of what is packed and read of it."""

import json


def practical_notebook(text, page="arcs"):
    """Return a learner's whole notebook: code, output and the written practical answer."""
    cells = [
        {
            "cell_type": "code",
            "metadata": {},
            "source": "raise SystemExit",
            "outputs": [],
            "execution_count": None,
        },
        {
            "cell_type": "markdown",
            "metadata": {"nbgrader": {"grade_id": f"{page}-practical"}},
            "source": text,
        },
    ]
    return json.dumps({"cells": cells, "metadata": {}, "nbformat": 4, "nbformat_minor": 5})
