"""What the page calls saved is on disk, and is what was typed: at machine speed, and if kernels die."""

import random
import re
import signal
import threading

import psutil
import pytest

from grading.answers import parse_journal

pytestmark = pytest.mark.browser

SEED = 20_261_125
TRIES = 500
KILLS = 4
PRACTICE = {
    "Practice: a number with its unit": "start_here.practice_number",
    "Practice: a low and a high value": "start_here.practice_range",
    "Practice: one choice": "start_here.practice_choice",
    "Practice: several choices": "start_here.practice_choices",
    "Practice: put in order": "start_here.practice_order",
    "Practice: a table of verdicts": "start_here.practice_verdicts",
}
# One try: fill the one part of a form, press its button in the same breath, type something else at once where
# ``afterwards`` says so, and wait for what the page says. No pause lets a value arrive before the press.
TYPE_AND_PRESS = """
async ({ title, draw, afterwards }) => {
  const forms = [...document.querySelectorAll(".exercise")];
  const form = forms.find((one) => one.querySelector("h3").textContent === title);
  const until = async (holds) => {
    const end = performance.now() + 30000;
    while (!holds() && performance.now() < end) await new Promise((resolve) => setTimeout(resolve, 4));
  };
  const all = (selector) => [...form.querySelectorAll(`.part ${selector}`)];
  const main = form.querySelector("button.main");
  const status = form.querySelector(".buttons .status");
  if (main.disabled) {
    form.querySelector(".after button").click();
    await until(() => !main.disabled);
  }
  const fill = (number) => {
    all("input[type=text]").forEach((input, place) => {
      input.value = `${number + place} furlongs`;
      input.dispatchEvent(new Event("input", { bubbles: true }));
    });
    all("input[type=checkbox]").forEach((box, place) => {
      if (box.checked !== Boolean(((number % 62) + 1) >> place & 1)) box.click();
    });
    const sets = all(".row").length ? all(".row") : all("fieldset");
    sets.forEach((set, place) => {
      const radios = [...set.querySelectorAll("input[type=radio]")];
      if (radios.length) radios[(number + place) % radios.length].click();
    });
    const movers = all("li button:enabled");
    if (movers.length) movers[number % movers.length].click();
  };
  const shown = () => {
    const texts = all("input[type=text]").map((input) => input.value);
    if (texts.length === 1) return texts[0];
    if (texts.length === 2) return { low: texts[0], high: texts[1] };
    if (all("li").length) return all("li").map((item) => item.dataset.option);
    if (all("input[type=checkbox]").length) return all("input:checked").map((box) => box.value);
    if (!all(".row").length) return all("input:checked")[0].value;
    const verdict = (row) => row.querySelector("input:checked").value;
    return Object.fromEntries(all(".row").map((row) => [row.dataset.row, verdict(row)]));
  };
  fill(draw);
  const typed = shown();
  main.click();
  if (afterwards) fill(draw + 1);
  const told = () => status.textContent.startsWith("Saved at") || status.dataset.kind === "problem";
  await until(() => told() || !form.isConnected);
  return { typed, says: status.textContent, drawn_anew: !form.isConnected };
}
"""


def only_answer(record):
    """Return the answer to the one part of a practice exercise."""
    (answer,) = record["answers"].values()
    return answer


@pytest.mark.slow
def test_nothing_but_what_was_typed_is_saved_at_machine_speed(learner):
    """500 tries over every kind of form, half of them with something else typed right after the press."""
    learner.open("0_start_here.ipynb")
    drawn = random.Random(SEED)
    typed = {exercise: [] for exercise in PRACTICE.values()}
    for number in range(TRIES):
        title = drawn.choice(list(PRACTICE))
        told = learner.window.evaluate(
            TYPE_AND_PRESS, {"title": title, "draw": drawn.randrange(1000), "afterwards": number % 2 == 1}
        )
        assert told["says"].startswith("Saved at"), told
        typed[PRACTICE[title]].append(told["typed"])
    saved = {exercise: [] for exercise in PRACTICE.values()}
    for record in learner.journal:
        saved[record["exercise"]].append(only_answer(record))
    stale = [
        pair for name in typed for pair in zip(typed[name], saved[name], strict=True) if pair[0] != pair[1]
    ]
    assert stale == []
    assert sum(map(len, saved.values())) == TRIES


def kill_the_kernel(learner):
    """Kill the kernel the hard way, as a crash or a full memory does."""
    for process in psutil.Process(learner.lab.process.pid).children(recursive=True):
        if any("ipykernel_launcher" in part for part in process.cmdline()):
            process.send_signal(signal.SIGKILL)


@pytest.mark.slow
def test_a_killed_kernel_loses_nothing_that_was_called_saved(learner):
    """The kernel dies at random moments; the page comes back by itself, filled in."""
    learner.open("0_start_here.ipynb")
    drawn = random.Random(SEED)
    title = "Practice: a number with its unit"
    called_saved = []
    for round_number in range(KILLS):
        killer = threading.Timer(drawn.uniform(0.0, 0.8), kill_the_kernel, [learner])
        killer.start()
        for draw in range(1000 * round_number, 1000 * round_number + 999):
            told = learner.window.evaluate(
                TYPE_AND_PRESS, {"title": title, "draw": draw, "afterwards": False}
            )
            if not told["says"].startswith("Saved at"):
                break
            called_saved.append(told["typed"])
        killer.join()
        assert told["drawn_anew"] or "not saved yet" in told["says"]
        learner.wait_until_ready()
        # the answer that was not called saved may still have reached the disk before the kernel died
        on_page = [f"Saved: {typed}" for typed in (*called_saved[-1:], told["typed"])]
        on_page.append("Changed, not saved yet.")
        expected = re.compile("|".join(map(re.escape, on_page)))
        learner.exercise(title).part("length").get_by_text(expected).first.wait_for()
    contents = parse_journal((learner.lab.folder / "answers.jsonl").read_bytes())
    on_disk = [next(iter(record.answers.values())) for record in contents.records]
    assert set(called_saved) <= set(on_disk)
    assert [problem for problem in contents.problems if problem.kind != "torn"] == []
