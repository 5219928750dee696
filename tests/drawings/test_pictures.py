"""Pictures: same bytes every time, the numbers in their words, bad input refused, nothing foreign inside."""

import base64
import hashlib
import json
import os
import re
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from html.parser import HTMLParser
from pathlib import Path
from xml.etree import ElementTree

import matplotlib as mpl
import pytest

import drawings
from drawings import Picture
from tests.drawings.cases import REFUSED, USUAL, all_calls, picture, usual_calls

ROOT = Path(__file__).resolve().parents[2]
FRESH = """
import hashlib, json, sys
sys.path[:0] = [{root!r}, {workbook!r}]
from tests.drawings.test_pictures import digests
print(json.dumps([digests(), "matplotlib.pyplot" in sys.modules]))
"""


def digests():
    """Return a digest of every usual picture by name."""
    return {name: hashlib.sha256(picture(name).svg.encode()).hexdigest() for name in USUAL}


class ImageReader(HTMLParser):
    """Keeps the attributes of every image element."""

    def __init__(self):
        """Start with no image."""
        super().__init__()
        self.images = []

    def handle_starttag(self, tag, attrs):
        """Keep one start tag."""
        self.images.append((tag, dict(attrs)))


def image_in(shown):
    """Return the attributes of the one element that a picture shows itself as."""
    reader = ImageReader()
    reader.feed(shown._repr_html_())
    [(tag, attributes)] = reader.images
    assert tag == "img"
    return attributes


@pytest.mark.parametrize("name", USUAL)
def test_words_tell_the_numbers(name):
    """The words of a picture hold its numbers with their units."""
    words = picture(name).alt
    told = USUAL[name][2]
    assert [part for part in told if part not in words] == []


@pytest.mark.parametrize("name", [name for name, _, _ in all_calls()])
def test_words_are_clean_sentences(name):
    """The words start with a capital, end with a full stop, and hold no double spaces and no nan."""
    words = picture(name).alt
    assert words[0].isupper()
    assert words.endswith(".")
    assert re.search(r"  |\.\.|nan|inf\b|None|\n", words) is None


@pytest.mark.parametrize(("draw", "given", "sentence"), REFUSED)
def test_bad_input_is_refused_in_one_sentence(draw, given, sentence):
    """Bad input raises the library's sentence: name, limit with unit, value got."""
    with pytest.raises(ValueError, match=sentence):
        draw(**given)


def test_same_call_same_bytes_in_a_fresh_process():
    """Every picture comes out byte for byte the same in two processes with different hash seeds."""
    code = FRESH.format(root=str(ROOT), workbook=str(ROOT / "workbook"))
    run = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        check=True,
        timeout=600,
        env={**os.environ, "PYTHONHASHSEED": "4711"},
    )
    there, pyplot_loaded = json.loads(run.stdout)
    assert there == digests()
    assert pyplot_loaded is False


def test_two_threads_draw_what_one_draws():
    """Pictures drawn from four threads at once equal those drawn one after the other."""
    calls = usual_calls()[:8]
    one_by_one = [picture(name).svg for name, _, _ in calls]
    with ThreadPoolExecutor(4) as pool:
        at_once = list(pool.map(lambda call: call[1](**call[2]).svg, calls))
    assert at_once == one_by_one


def test_learners_own_settings_change_nothing_and_stay():
    """Settings made outside do not reach a picture, and are still there after it."""
    draw, given, _ = USUAL["cable_drop"]
    plain = draw(**given).svg
    with mpl.rc_context({"font.size": 30, "lines.marker": "x", "svg.fonttype": "none"}):
        assert draw(**given).svg == plain
        assert mpl.rcParams["lines.marker"] == "x"
        assert mpl.rcParams["svg.fonttype"] == "none"


@pytest.mark.parametrize("name", USUAL)
def test_drawing_is_complete_in_itself(name):
    """The drawing is well-formed SVG without date, text elements, scripts or links to elsewhere."""
    svg = picture(name).svg
    root = ElementTree.fromstring(svg)
    tags = {element.tag.rpartition("}")[2] for element in root.iter()}
    assert not tags & {"text", "script", "image", "date", "foreignObject"}
    links = [
        value
        for element in root.iter()
        for key, value in element.attrib.items()
        if key.endswith("href") and not value.startswith("#")
    ]
    assert links == []


@pytest.mark.parametrize("name", USUAL)
def test_drawing_stays_small(name):
    """A drawing weighs less than 300 kB, so that a page with twenty of them stays light."""
    assert len(picture(name).svg) < 300_000


def test_picture_shows_itself_as_an_image_with_words():
    """The element carries the words, the drawing itself, and never grows wider than its place."""
    shown = picture("weld_cycle")
    image = image_in(shown)
    assert image["alt"] == shown.alt
    head, _, data = image["src"].partition(",")
    assert head == "data:image/svg+xml;base64"
    assert base64.b64decode(data).decode() == shown.svg
    assert "max-width: 100%" in image["style"]


def test_words_with_marks_of_html_stay_words():
    """Quotes and angle brackets in the words cannot break out of the attribute."""
    words = 'He said "5 < 6" & went <b>on</b>.'
    assert image_in(Picture("<svg/>", words))["alt"] == words


@pytest.mark.parametrize(
    ("svg", "alt", "sentence"), [("", "Words.", "picture svg must"), ("<svg/>", " ", "picture alt must")]
)
def test_picture_without_drawing_or_words_is_refused(svg, alt, sentence):
    """A picture needs both its drawing and its words."""
    with pytest.raises(ValueError, match=sentence):
        Picture(svg, alt)


def test_every_public_picture_has_a_case():
    """No picture function is left out of the tables of cases."""
    drawn = {draw.__name__ for draw, _, _ in USUAL.values()}
    assert drawn == {name for name in drawings.__all__ if name.islower()}
