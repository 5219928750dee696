"""The virtual bench to play with: every setting open, a day as good as any, nothing marked."""

from exercise_forms import bench_view
from exercise_forms.bench_work import work_at_bench
from exercise_forms.drafts import NotKeptError
from exercise_forms.exercise_state import bench_state
from exercise_forms.form import Form, script, sentence
from grading.bench_days import begin_with
from grading.bench_logs import read_typed_log
from grading.exercise import Bench, BenchKey, Option
from grading.variants import seed
from secondplate.bench import SETTING_NAMES, draw_job

PURPOSE = "panel.bench"  # takes the place of an exercise's id in the seed of a day
TITLE = "The virtual bench"
INTRO = (
    "Weld one stud on a spare rivet head, look at it, pull it, and change one thing. Nothing here is marked.",
    "The machine does not always give what it shows, and no two studs come out alike.",
    "It teaches the order of work, not the setting of a real machine: that comes from its manual.",
)
OPEN_BENCH = Bench(
    id="bench",
    ask="Work at the bench.",
    settings=SETTING_NAMES,
    criteria=(),
    stop_reasons=(
        Option(id="head", text="The head is spoilt: a hole burnt through it, or torn out"),
        Option(id="tries", text="Three studs in a row were not sound"),
    ),
)


class BenchPanelForm(Form):
    """A bench for trying out; the log is kept on the disk, so that it is there again after a pause."""

    _esm = script("controls.js", "bench.js", "bench_panel.js")
    title = TITLE

    def __init__(self, desk):
        """Show the bench as it was left."""
        self.desk = desk
        super().__init__(state=self._state())

    def answer(self, message):
        """Do a step, or begin another day."""
        if message["kind"] == "fresh":
            return self._begin(self._left()["day"] + 1)
        if message["key"] != self.state["key"]:
            self.state = self._state()
            return {"kind": "fresh", "sentence": "", "state": self.state}
        key, steps = self._key(self.state["day"]), message["steps"]
        reply = work_at_bench(OPEN_BENCH, key, steps, lambda kept: self._keep(self.state["day"], kept))
        return reply | {"truth": self._truth(key, steps) if reply["kind"] == "bench" else []}

    def told(self, news):
        """Show the bench of whoever has signed in."""
        if news == "signed in":
            self.state = self._state()

    def _name(self):
        """Name the draft of whoever is at work."""
        return f"{PURPOSE} | {self.desk.learner.learner}"

    def _keep(self, day, steps):
        """Put the log on the disk."""
        self.desk.drafts.keep(self._name(), {"day": day, "steps": steps})

    def _left(self):
        """Return the day and the log as they were left; what cannot be read is a first day without a log."""
        left = self.desk.drafts.read(self._name())
        day = left.get("day") if isinstance(left, dict) else None
        if type(day) is not int or not 1 <= day < 10**6:
            return {"day": 1, "steps": []}
        _, problem = read_typed_log(OPEN_BENCH, self._key(day), left.get("steps"))
        return {"day": day, "steps": [] if problem else left["steps"]}

    def _begin(self, day):
        """Begin another day with an empty log."""
        try:
            self._keep(day, [])
            note = ""
        except NotKeptError as lost:
            note = sentence(lost)
        self.state = self._state()
        return {"kind": "fresh", "sentence": note, "state": self.state}

    def _key(self, day):
        """Return the key of one day of whoever is at work."""
        own = seed(
            course_key=self.desk.settings.course_key,
            learner=self.desk.learner.learner,
            exercise_id=PURPOSE,
            round_number=day,
        )
        return BenchKey(seed=own, job=draw_job(own), start=begin_with(6))

    def _truth(self, key, steps):
        """Return what is told after the work has ended."""
        return bench_view.truth(OPEN_BENCH, key, read_typed_log(OPEN_BENCH, key, steps)[0])

    def _state(self):
        """Return what the panel shows."""
        left = self._left()
        key = self._key(left["day"])
        log, _ = read_typed_log(OPEN_BENCH, key, left["steps"])
        return bench_state(OPEN_BENCH, key, left["steps"], log) | {
            "key": f"{self._name()} | {left['day']}",
            "day": left["day"],
            "title": TITLE,
            "intro": list(INTRO),
            "truth": bench_view.truth(OPEN_BENCH, key, log),
        }
