"""Names, contrast and size: checked by axe-core, and at 200 % zoom on a small laptop."""

import pytest

from tests.browser.one_form import PANEL, put_cell, put_page

pytestmark = pytest.mark.browser

PAGES = [
    "0_start_here.ipynb",
    "1_stud_welding/stud_welding.ipynb",
    "2_rivet_anatomy/rivet_anatomy.ipynb",
    "3_removal/extraction_or_drill_out.ipynb",
    "4_second_plate/second_plate.ipynb",
]
# JupyterLab's own frame round the page is not in the workbook's hands.
OURS = [[".second-plate-strip"], [".second-plate-form"], [".second-plate-page .jp-RenderedMarkdown"]]

OUT_OF_SIGHT = """
() => {
  const width = document.querySelector(".jp-WindowedPanel-outer").clientWidth;
  const nodes = document.querySelectorAll(
    ".second-plate-form, .second-plate-form *, .second-plate-page .jp-RenderedHTMLCommon > *"
  );
  return [...nodes]
    .filter((node) => node.getBoundingClientRect().right > width + 2 && !node.closest(".unseen"))
    .map((node) => `${node.tagName} ${node.className} ${node.textContent.slice(0, 40)}`);
}
"""
OVERFLOW = """
(value) => [document.body, document.querySelector(".jp-LabShell")].forEach((node) => {
  node.style.overflow = value;
})
"""


def violations(window):
    """Return what axe-core finds in the parts of the page that are the workbook's own."""
    sync_playwright = pytest.importorskip(
        "axe_playwright_python.sync_playwright", reason="axe-playwright-python is not installed"
    )
    # Without this axe takes everything below a body without height for hidden, and finds nothing.
    window.evaluate(OVERFLOW, "visible")
    found = sync_playwright.Axe().run(window, context={"include": OURS})
    window.evaluate(OVERFLOW, "")
    return [
        f"{rule['id']}: {node['target']} {node['any'][0]['message'] if node['any'] else rule['help']}"
        for rule in found.response["violations"]
        for node in rule["nodes"]
    ]


@pytest.mark.parametrize("page", PAGES)
def test_a_page_stays_in_sight_and_axe_finds_nothing_on_it(learner, page):
    """At 200 % zoom of a 1366 x 768 screen the page scrolls one way only; names and contrast are all there.

    Both on one opening of the page, which takes most of the time.
    """
    window = learner.window
    usual = window.viewport_size
    window.set_viewport_size({"width": 683, "height": 384})
    learner.open(page)
    assert window.evaluate(OUT_OF_SIGHT) == []
    window.set_viewport_size(usual)
    window.locator(".exercise .main").first.click()
    assert violations(window) == []


def test_axe_finds_nothing_in_feedback_but_a_fault(learner):
    """Right, wrong, unreadable and unsaved answers are all legible; grey words on white are reported."""
    learner.open("0_start_here.ipynb")
    for text in ("six", "1 mm"):
        number = learner.exercise("Practice: a number with its unit")
        number.part("length").locator("input").fill(text)
        number.save()
    number.part("length").locator("input").fill("2 mm")
    choice = learner.exercise("Practice: one choice")
    choice.part("reading").get_by_label("It reads the comma as a decimal point").check()
    choice.save()
    assert violations(learner.window) == []
    learner.window.evaluate("document.querySelector('.exercise .kind').style.color = '#cccccc'")
    assert any(fault.startswith("color-contrast") for fault in violations(learner.window))


@pytest.mark.parametrize("exercise", ["bench_tests.step", "bench_tests.judge", "bench_tests.bench"])
def test_figures_and_bench_stay_in_sight_and_axe_finds_nothing_there(learner, exercise):
    """At 200 % zoom lines, sliders and the log scroll one way only; all have names, pictures have words.

    Both also after a stud was welded.
    """
    window = learner.window
    usual = window.viewport_size
    window.set_viewport_size({"width": 683, "height": 384})
    learner.open(put_page(learner, exercise))
    for press in window.get_by_role("button", name="Weld a stud").all():
        press.click()
        window.locator(".work .status").filter(has_text="Stud 1").wait_for(timeout=30_000)
    assert window.evaluate(OUT_OF_SIGHT) == []
    window.set_viewport_size(usual)
    window.locator(".exercise .main").last.click()
    assert violations(window) == []


def test_axe_finds_nothing_at_the_open_bench(learner):
    """All twelve settings have a name, and the truth told afterwards is legible."""
    learner.open(put_cell(learner, PANEL))
    learner.window.get_by_role("button", name="Weld a stud").click()
    learner.window.locator(".work .status").filter(has_text="Stud 1").wait_for(timeout=30_000)
    learner.window.get_by_role("button", name="Stop: hand").click()
    learner.window.locator(".truth li").first.wait_for(timeout=30_000)
    assert violations(learner.window) == []
