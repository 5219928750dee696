"""The plug-in: runs the workbook's own pages and nothing else, folds code, comes back after a restart.

The first tests are done one after the other on one opening of a page.
"""

import shutil

import pytest

from grading.hand_in import read_hand_in

pytestmark = pytest.mark.browser

START = "0_start_here.ipynb"


@pytest.fixture(scope="module")
def at_start(shared_learner):
    """Return a learner at the first page."""
    return shared_learner.open(START)


@pytest.fixture(scope="module")
def answered(at_start):
    """Return an exercise of that page whose answer was saved."""
    exercise = at_start.exercise("Practice: a number with its unit")
    exercise.part("length").locator("input").fill("1 mm")
    exercise.save()
    return exercise


def test_a_page_opens_as_a_quiet_page_that_has_run(at_start):
    """No side bars, no status bar, no code in sight; the forms are there without a menu being touched."""
    window = at_start.window
    assert window.locator(".exercise").count() == 7
    bars = ".jp-SideBar:visible, #jp-main-statusbar:visible, .jp-NotebookPanel-toolbar:visible"
    assert window.locator(bars).count() == 0
    assert window.locator(".second-plate-page .jp-CodeCell .jp-InputArea-editor:visible").count() == 0
    assert window.locator(".second-plate-mark").count() > 0
    assert window.locator(".second-plate-mark:visible").count() == 0


def test_the_code_can_be_shown_and_hidden(at_start):
    """One button, which says what it does next."""
    editors = at_start.window.locator(".second-plate-page .jp-CodeCell .jp-InputArea-editor:visible")
    at_start.window.get_by_role("button", name="Show the code").click()
    editors.first.wait_for()
    at_start.window.get_by_role("button", name="Hide the code").click()
    editors.first.wait_for(state="hidden")


def test_a_page_that_is_read_cannot_be_taken_apart(at_start):
    """Neither single keys nor a double click turn the page into a notebook that is being edited."""
    cells = at_start.window.locator(".second-plate-page .jp-Cell")
    count = cells.count()
    heading = at_start.window.get_by_role("heading", level=1)
    heading.click()
    for key in ("d", "d", "x", "a", "Enter"):
        at_start.window.keyboard.press(key)
    heading.dblclick()
    assert cells.count() == count
    assert (
        at_start.window.locator(".second-plate-page .jp-MarkdownCell .jp-InputArea-editor:visible").count()
        == 0
    )


def test_a_reloaded_window_shows_what_was_saved(at_start, answered):
    """The kernel lives on; the page is drawn anew."""
    at_start.window.reload()
    at_start.wait_until_ready()
    assert answered.saved("length") == "Saved: 1 mm"


def test_the_start_button_of_the_page_runs_it_again(at_start, answered):
    """It asks no questions here, and the forms come back filled in."""
    at_start.window.get_by_role("button", name="Start this page").click()
    at_start.window.locator('.second-plate-strip[data-state="busy"]').wait_for()
    at_start.wait_until_ready()
    assert answered.saved("length") == "Saved: 1 mm"


def test_a_restarted_page_comes_back_filled_in(at_start, answered):
    """After Kernel, Restart Kernel the page runs again; what was typed and not saved is still there."""
    answered.part("length").locator("input").fill("2 mm")
    at_start.window.get_by_role("menuitem", name="Kernel", exact=True).click()
    at_start.window.locator('li[data-command="kernelmenu:restart"]').click()
    at_start.window.locator(".jp-Dialog button.jp-mod-accept").click()
    at_start.window.locator('.second-plate-strip[data-state="busy"]').wait_for()
    at_start.wait_until_ready()
    assert answered.part("length").locator("input").input_value() == "2 mm"
    assert answered.saved("length") == "Changed, not saved yet. Saved before: 1 mm"


def test_the_written_answer_is_typed_in_its_cell_and_handed_in(at_start):
    """The one cell that is written in opens on a click, closes by itself, and travels with the hand-in."""
    at_start.sign_in("Ana 17")
    exercise = at_start.exercise("What comes first?")
    exercise.part("who_decides").get_by_role("radio").first.check()
    exercise.save()
    at_start.window.locator("em", has_text="Write the date, the place").click()
    at_start.window.keyboard.press("Control+a")
    at_start.window.keyboard.type("Shown on Tuesday to the instructor.")
    written = read_hand_in(at_start.hand_in()).written
    assert written["start_here"] == "Shown on Tuesday to the instructor."


@pytest.mark.parametrize("place", ["submitted/ana/0_start_here", "autograded/ana/0_start_here", "mail"])
def test_a_page_that_lies_somewhere_else_is_not_run(learner, place):
    """A hand-in holds a stranger's code: opening it runs nothing."""
    folder = learner.lab.folder / place
    folder.mkdir(parents=True)
    shutil.copy(learner.lab.folder / START, folder / START)
    learner.window.goto(learner.lab.page_url(f"{place}/{START}"))
    learner.window.locator(".jp-MarkdownCell").first.wait_for(timeout=60_000)
    learner.window.wait_for_timeout(3000)
    assert learner.window.locator(".second-plate-page, .second-plate-strip").count() == 0
    assert learner.window.locator(".jp-OutputArea-output").count() == 0


def test_a_notebook_that_is_no_page_is_not_run(learner):
    """The path alone is not enough: the notebook must say that it is a page."""
    text = (learner.lab.folder / START).read_text(encoding="utf-8")
    (learner.lab.folder / START).write_text(text.replace('"second_plate"', '"other"'), encoding="utf-8")
    learner.window.goto(learner.lab.page_url(START))
    learner.window.locator(".jp-MarkdownCell").first.wait_for(timeout=60_000)
    learner.window.wait_for_timeout(3000)
    assert learner.window.locator(".second-plate-page").count() == 0
    assert learner.window.locator(".jp-OutputArea-output").count() == 0


def test_a_form_that_could_not_start_is_drawn_again(learner):
    """On a slow machine the widget library gives up on a form after two seconds, and its line stays dead."""
    learner.window.add_init_script(
        """
        const real = AbortSignal.timeout;
        let left = 10;
        AbortSignal.timeout = (ms) => real.call(AbortSignal, ms === 2000 && left-- > 0 ? 0 : ms);
        window.timesLeft = () => left;
        """
    )
    learner.open(START)
    learner.window.wait_for_function("() => window.timesLeft() < 1")
    exercise = learner.exercise("Practice: a number with its unit")
    learner.window.wait_for_timeout(12_000)
    exercise.part("length").locator("input").fill("1 mm")
    exercise.save()
    assert exercise.saved("length") == "Saved: 1 mm"
