"""The pages of the workbook, read once for all tests of this folder."""

import nbformat
import pytest

from grading.exercises import PAGES
from tests.notebooks.places import page_path


@pytest.fixture(params=PAGES.values(), ids=PAGES)
def page(request):
    """Return each page of the bank in turn."""
    return request.param


@pytest.fixture
def notebook(page):
    """Return the notebook of the page."""
    return nbformat.read(page_path(page), as_version=4)
