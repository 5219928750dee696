"""The virtual bench in the browser: by keyboard alone, told in words, and not lost with the kernel."""

import signal

import psutil
import pytest

from tests.browser.one_form import PANEL, put_cell, put_page

pytestmark = pytest.mark.browser

TITLE = "A stud at the bench"
REPLY_MS = 30_000


class AtTheBench:
    """A learner at a bench, in an exercise or the free one."""

    def __init__(self, learner, form):
        """Take the form that the bench stands in."""
        self.learner = learner
        self.form = form
        self.said = form.locator(".work .status")

    def press(self, name, expected):
        """Press a button of the bench with the keyboard, and wait for what is said."""
        self.form.get_by_role("button", name=name, exact=True).focus()
        self.learner.window.keyboard.press("Enter")
        self.said.get_by_text(expected).or_(self.said.filter(has_text=expected)).first.wait_for(
            timeout=REPLY_MS
        )
        return self.said.inner_text()

    def set(self, label, typed):
        """Type a setting into its field."""
        field = self.form.get_by_label(label, exact=True)
        field.focus()
        self.learner.window.keyboard.press("Control+a")
        self.learner.window.keyboard.type(typed)

    @property
    def log(self):
        """Return the log as the page shows it, row by row."""
        rows = self.form.locator("table.log tbody tr").all()
        return [[cell.inner_text() for cell in row.locator("th, td").all()] for row in rows]


@pytest.fixture
def at_the_bench(learner):
    """Return a learner's bench in an exercise."""
    learner.open(put_page(learner, "bench_tests.bench"))
    return AtTheBench(learner, learner.exercise(TITLE).form)


def test_a_stud_is_welded_pulled_and_changed_by_keyboard_alone(at_the_bench):
    """Every step is told where a screen reader hears it, drawn with the same words, and logged."""
    bench, learner = at_the_bench, at_the_bench.learner
    told = bench.press("Weld a stud", "Stud 1, welded.")
    picture = bench.form.locator(".work .picture img")
    assert picture.get_attribute("alt") in told
    told = bench.press("Pull it", "Stud 1, pulled.")
    assert "let go at" in told
    bench.set("Current", "900 A")
    learner.window.keyboard.press("Enter")
    assert learner.journal == []
    bench.press("Weld a stud", "Stud 2, welded.")
    bench.press("Pull it", "Stud 2, pulled.")
    bench.press("Now the row", "The row is welded")
    assert [row[0] for row in bench.log] == ["1", "2"]
    assert bench.log[1][1] == "Current 900 A (was 600 A)"
    exercise = learner.exercise(TITLE)
    exercise.save()
    assert exercise.saved("log") == "Saved: 2 studs welded, 2 pulled, then the row"
    (record,) = learner.journal
    assert [step["do"] for step in record["answers"]["log"]] == ["weld", "pull", "weld", "pull", "row"]
    assert record["answers"]["log"][2]["settings"]["current_a"] == "900 A"
    assert learner.complaints == []


def test_a_step_out_of_turn_is_refused_in_words(at_the_bench):
    """Buttons that cannot be used now keep the focus and say why; a wrong setting is named."""
    bench = at_the_bench
    bench.press("Pull it", "There is no stud to pull yet.")
    bench.press("Now the row", "Weld and pull one stud before the row.")
    bench.set("Weld time", "soon")
    bench.press("Weld a stud", "Weld time: soon holds no digits")
    assert bench.log == []
    bench.set("Weld time", "30 ms")
    bench.press("Weld a stud", "Stud 1, welded.")
    bench.press("Pull it", "Stud 1, pulled.")
    bench.press("Pull it", "This stud is pulled already.")
    bench.form.get_by_label("Why you stop").select_option("tries")
    bench.press("Stop: hand this rivet to another method", "Stopped: Three studs")
    bench.press("Weld a stud", "The work has ended.")


def kill_the_kernel(learner):
    """Kill the kernel the hard way, as a crash or a full memory does."""
    for process in psutil.Process(learner.lab.process.pid).children(recursive=True):
        if any("ipykernel_launcher" in part for part in process.cmdline()):
            process.send_signal(signal.SIGKILL)


def test_a_log_in_progress_outlives_the_kernel_and_the_browser(at_the_bench):
    """After a dead kernel, and in another window, the log is there again and no try is used."""
    bench, learner = at_the_bench, at_the_bench.learner
    bench.press("Weld a stud", "Stud 1, welded.")
    bench.press("Pull it", "Stud 1, pulled.")
    before = bench.log
    kill_the_kernel(learner)
    learner.window.locator('.second-plate-strip:not([data-state="ready"])').wait_for(timeout=REPLY_MS)
    learner.wait_until_ready()
    again = AtTheBench(learner, learner.exercise(TITLE).form)
    again.said.filter(has_text="Stud 1, pulled.").wait_for(timeout=REPLY_MS)
    assert again.log == before
    assert learner.journal == []

    learner.window.evaluate("sessionStorage.clear()")  # what another browser does not have
    learner.window.reload()
    learner.wait_until_ready()
    again = AtTheBench(learner, learner.exercise(TITLE).form)
    assert again.log == before
    assert again.press("Weld a stud", "Stud 2, welded.")
    assert len(again.log) == 2


def test_a_new_log_can_be_begun_after_the_first_was_judged(at_the_bench):
    """The judged log stays until the learner begins anew; then the bench is empty."""
    bench, exercise = at_the_bench, at_the_bench.learner.exercise(TITLE)
    bench.press("Weld a stud", "Stud 1, welded.")
    bench.press("Now the row", "The row is welded")
    exercise.save()
    assert "Broke" in exercise.feedback("log")
    bench.press("Begin a new log", "The bench is ready.")
    assert bench.log == []
    assert exercise.saved("log").startswith("Changed, not saved yet.")
    assert bench.press("Weld a stud", "Stud 1, welded.")


def test_the_free_bench_can_be_played_and_tells_the_truth_afterwards(learner):
    """All settings are open; after the end the machine's truth is told; another day brings another rivet."""
    learner.open(put_cell(learner, PANEL))
    bench = AtTheBench(learner, learner.window.locator(".panel"))
    bench.form.get_by_label("Rivet head").select_option("oily")
    bench.press("Weld a stud", "Stud 1, welded.")
    bench.press("Pull it", "Stud 1, pulled.")
    assert "Rivet head wiped, still oily" in bench.log[0][1]
    assert bench.form.locator(".truth li").count() == 0
    bench.press("Stop: hand this rivet to another method", "Stopped:")
    assert "The machine showed 600 A and gave" in bench.form.locator(".truth").inner_text()
    bench.press("Another day: another rivet and machine", "The bench is ready.")
    assert "Day 2" in bench.form.locator(".kind").inner_text()
    assert bench.log == []
    assert learner.complaints == []
