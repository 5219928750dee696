"""Every text lies on the sheet, clear of every other text, large and dark enough on what is under it."""

from itertools import combinations

import numpy as np
import pytest
from matplotlib.text import Text

from drawings import style

INKS = {style.TEXT, style.TEXT_AMBER, style.TEXT_GREY}


def shown_texts(figure):
    """Return every text of a figure that can be seen."""
    return [text for text in figure.findobj(Text) if text.get_visible() and text.get_text().strip()]


def box_of(text):
    """Return the box of the letters alone, in pixels."""
    ground = text.get_bbox_patch()
    text.set_bbox(None)
    box = text.get_window_extent()
    if ground is not None:
        text._bbox_patch = ground
    return box


def luminance(colour):
    """Return the relative luminance of a colour (WCAG 2.2, definition of relative luminance)."""
    channels = np.asarray(colour, dtype=float)
    linear = np.where(channels <= 0.04045, channels / 12.92, ((channels + 0.055) / 1.055) ** 2.4)
    return linear @ np.array([0.2126, 0.7152, 0.0722])


def contrast(one, other):
    """Return the contrast ratio of two colours (WCAG 2.2, definition of contrast ratio)."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def rgb(colour):
    """Turn ``#rrggbb`` into three shares of 1."""
    return [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]


def test_no_text_leaves_the_sheet(figure):
    """Every text lies wholly on the sheet."""
    sheet = figure.bbox
    outside = [
        text.get_text()
        for text in shown_texts(figure)
        if (box := box_of(text)).x0 < sheet.x0 or box.y0 < sheet.y0 or box.x1 > sheet.x1 or box.y1 > sheet.y1
    ]
    assert outside == []


def test_no_text_runs_into_another(figure):
    """No two texts overlap by more than a pixel's rounding."""
    boxes = [(text.get_text(), box_of(text)) for text in shown_texts(figure)]
    touching = [
        (one, other)
        for (one, a), (other, b) in combinations(boxes, 2)
        if min(a.x1, b.x1) - max(a.x0, b.x0) > 1 and min(a.y1, b.y1) - max(a.y0, b.y0) > 1
    ]
    assert touching == []


def test_text_is_large_and_in_a_text_ink(figure):
    """Every text is 12 points or more and in one of the three text inks; pole signs may be larger.

    A picture to be judged may hold no text at all.
    """
    texts = shown_texts(figure)
    assert min((text.get_fontsize() for text in texts), default=12) >= 12
    assert {text.get_color() for text in texts} <= INKS


def test_text_stands_out_from_what_is_under_it(figure):
    """Any colour that fills a fifth of a text's box contrasts with the text by at least 4.5."""
    places = [(text.get_text(), text.get_color(), box_of(text)) for text in shown_texts(figure)]
    pixels = without_letters(figure)
    for shown, ink, box in places:
        under = pixels[int(box.y0) : int(box.y1) + 1, int(box.x0) : int(box.x1) + 1].reshape(-1, 3)
        colours, counts = np.unique(under, axis=0, return_counts=True)
        for colour in colours[counts > 0.2 * counts.sum()]:
            assert contrast(rgb(ink), colour / 255) >= 4.5, (shown, ink, colour)


def without_letters(figure):
    """Return the pixels of the figure without its letters, the lowest row first."""
    inks = [(text, text.get_color()) for text in shown_texts(figure)]
    for text, _ in inks:
        text.set_color("none")
    figure.canvas.draw()
    pixels = np.asarray(figure.canvas.buffer_rgba())[::-1, :, :3].copy()
    for text, ink in inks:
        text.set_color(ink)
    return pixels


@pytest.mark.parametrize("ground", ["PAPER", "PALE_SLATE", "PALE_AMBER", "PALE_GREY"])
@pytest.mark.parametrize("ink", ["TEXT", "TEXT_AMBER", "TEXT_GREY"])
def test_text_inks_contrast_with_paper_and_pale_fills(ink, ground):
    """Each text ink has a contrast of at least 4.5 to paper and to every pale fill (WCAG 2.2, 1.4.3)."""
    assert contrast(rgb(getattr(style, ink)), rgb(getattr(style, ground))) >= 4.5


def test_contrast_of_black_on_white_is_21():
    """Black on white gives 21, the example of WCAG 2.2."""
    # Exact by definition: 1.05 / 0.05.
    np.testing.assert_allclose(contrast([0, 0, 0], [1, 1, 1]), 21, rtol=1e-12)
