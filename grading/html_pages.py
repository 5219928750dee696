"""The one set-up of every HTML page that is written: everything escaped, nothing loaded from anywhere."""

from functools import lru_cache
from pathlib import Path

import jinja2
from markupsafe import Markup

TEMPLATES = Path(__file__).parent / "templates"


@lru_cache(maxsize=1)
def environment():
    """Return the environment that all pages share; a name that a template misses is an error.

    ``style_of`` gives a page the text of a style sheet, which stands in the page itself.
    """
    made = jinja2.Environment(
        loader=jinja2.FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.globals["style_of"] = _style_of
    return made


@lru_cache
def _style_of(name):
    """Return the text of a style sheet as it stands."""
    return Markup((TEMPLATES / name).read_text(encoding="utf-8"))


def template(name):
    """Return a template by its file name; it is read once."""
    return environment().get_template(name)
