"""Work at the virtual bench in a form: every step is seen, kept until it is saved, and marked as saved."""

import pytest

from exercise_forms import panel
from exercise_forms.bench_panel_form import BenchPanelForm
from exercise_forms.bench_view import ROW
from exercise_forms.desk import Desk
from exercise_forms.drafts import LARGEST_BYTES, MOST_DRAFTS, Drafts, NotKeptError
from exercise_forms.exercise_form import ExerciseForm
from grading.hand_in import pack_hand_in, read_hand_in, save_learner
from secondplate.bench import SETTING_NAMES
from tests.forms.new_kinds import BANK, BENCH

SETTINGS = {"current_a": "600", "time_ms": "30", "gas": "M12"}
WELD, PULL, ROW_STEP = {"do": "weld", "settings": SETTINGS}, {"do": "pull"}, {"do": "row"}


def _stud(**typed):
    return {"do": "weld", "settings": {**SETTINGS, **typed}}


@pytest.fixture
def sit_down(folder, wrap):
    """Return a function that sits Ana down at the bench, each time with a new kernel."""
    return lambda: wrap(ExerciseForm(Desk(folder, bank=BANK), BENCH))


@pytest.fixture
def work(sit_down):
    """Return a function that sends the steps of a log to a form."""

    def send(sat, *steps, **more):
        return sat.say(kind="bench", key=sat.form.state["key"], part="log", steps=list(steps), **more)

    return send


def test_the_bench_starts_as_the_day_begins(sit_down):
    """What may be set stands at the papers' values, the rest is told in words, and nothing is in the log."""
    part = sit_down().part("log")
    assert [control["name"] for control in part["controls"]] == list(BENCH.parts[0].settings)
    assert {control["name"]: control["start"] for control in part["controls"]} == SETTINGS
    assert any(text.startswith("Polarity") for text in part["fixed"])
    assert len(part["fixed"]) == 9
    assert (part["kind"], part["steps"], part["draft"]) == ("bench", [], False)
    assert part["view"]["rows"] == part["view"]["pictures"] == []


def test_every_step_is_answered_with_what_is_to_be_seen(sit_down, work):
    """Weld, pull, change, row: words, a picture with the same words, and a line of the log for each stud."""
    sat = sit_down()
    seen = work(sat, WELD)
    assert (seen["kind"], seen["sentence"]) == ("bench", "")
    assert seen["view"]["sentence"].startswith("Stud 1, welded. Stud welded to a rivet head")
    (picture,) = seen["view"]["pictures"]
    assert picture["html"].startswith('<img alt="')
    assert picture["alt"] in seen["view"]["sentence"]
    assert seen["view"]["rows"][0]["pull"] == "not pulled"

    pulled = work(sat, WELD, PULL)["view"]
    assert pulled["sentence"].startswith("Stud 1, pulled. Test pull, let go at")
    assert " N: " in pulled["rows"][0]["pull"]

    second = work(sat, WELD, PULL, _stud(current_a="0,9 kA"), PULL)["view"]
    assert [row["number"] for row in second["rows"]] == [1, 2]
    assert second["rows"][1]["set"] == "Current 900 A (was 600 A)"

    row = work(sat, WELD, PULL, _stud(current_a="900"), PULL, ROW_STEP)["view"]
    assert row["ended"] == "row"
    assert f"of {ROW} studs pulled" in row["sentence"]


def test_no_fault_is_named_before_the_learner_names_it(sit_down, work):
    """The bench tells what eye and rule find; cold or hot is for the learner to say."""
    sat = sit_down()
    for steps in ([WELD], [WELD, PULL], [_stud(current_a="1500", time_ms="90")]):
        view = work(sat, *steps)["view"]
        said = " ".join([view["sentence"], view["rows"][0]["seen"], view["rows"][0]["pull"]]).lower()
        assert not {"cold", "hot", "blow"} & set(said.split())


@pytest.mark.parametrize(
    ("steps", "words"),
    [
        ([_stud(current_a="lots")], "Current: lots holds no digits"),
        ([_stud(current_a="5000")], "Current must be between 50 A and 1500 A, got 5000 A."),
        ([_stud(gas="helium")], "Gas must be one of"),
        ([PULL], "must be a pull of a stud just welded"),
        ([WELD] * 61, "A log must have at most 60 steps"),
        ("nonsense", "not a log of the bench"),
    ],
)
def test_a_step_that_is_not_possible_is_said_and_changes_nothing(sit_down, work, steps, words):
    """The log stays as it was, on the disk as well."""
    sat = sit_down()
    work(sat, WELD)
    reply = sat.say(kind="bench", key=sat.form.state["key"], part="log", steps=steps)
    assert reply["kind"] == "problem"
    assert words in reply["sentence"]
    assert sit_down().part("log")["steps"] == [WELD]


def test_work_in_progress_outlives_the_kernel(sit_down, work, folder):
    """A new kernel draws the log again as it was left; no try is used and nothing is handed in."""
    work(sit_down(), WELD, PULL, _stud(current_a="700"))
    again = sit_down()
    part = again.part("log")
    assert part["draft"]
    assert part["steps"] == [WELD, PULL, _stud(current_a="700")]
    assert len(part["view"]["rows"]) == 2
    assert again.form.desk.journal.read().records == ()
    assert part["feedback"] is None


def test_a_saved_log_is_the_answer_and_the_draft_goes(sit_down, work):
    """After saving the form shows the saved log, and its draft is away."""
    sat = sit_down()
    steps = [WELD, PULL, ROW_STEP]
    work(sat, *steps)
    sat.submit({"log": steps})
    for part in (sat.part("log"), sit_down().part("log")):
        assert (part["steps"], part["saved"], part["draft"]) == (steps, steps, False)
        assert part["feedback"]["outcome"] == "partly"
    assert sat.form.desk.drafts.read(sat.form.state["key"] + " | log") is None


def test_an_unfinished_log_costs_no_try(sit_down, work):
    """Somebody who saves too early is told so and works on."""
    sat = sit_down()
    work(sat, WELD, PULL)
    sat.submit({"log": [WELD, PULL]})
    part = sat.part("log")
    assert part["feedback"]["outcome"] == "invalid"
    assert "No try was used." in part["feedback"]["sentences"]
    assert work(sat, WELD, PULL, WELD)["kind"] == "bench"


def test_a_new_log_can_be_begun_after_a_judged_one(sit_down, work, right):
    """The second try starts with an empty log, also after the page was closed in between."""
    sat = sit_down()
    sat.submit({"log": [WELD, PULL, ROW_STEP]})
    assert work(sat)["kind"] == "bench"
    part = sit_down().part("log")
    assert (part["steps"], part["draft"]) == ([], True)
    sat.submit(right(sat))
    assert sat.form.state["finished"]


def test_steps_for_somebody_elses_rivet_are_refused(sit_down, work, folder):
    """Where somebody else has signed in, their day is shown and nothing is kept."""
    sat = sit_down()
    old = sat.form.state["key"]
    save_learner(folder, "Ben")
    reply = work(sat, WELD)
    assert reply["kind"] == "problem"
    assert reply["state"]["key"] != old
    assert sit_down().part("log")["steps"] == []


def test_a_draft_that_is_no_log_is_left_alone(sit_down, folder):
    """Whatever stands in the drafts file, the bench opens."""
    name = sit_down().form.state["key"] + " | log"
    for content in ("torn", [[]], {"do": "weld"}, [PULL], [WELD] * 500):
        Drafts(folder).keep(name, content)
        assert sit_down().part("log")["steps"] == []


@pytest.mark.parametrize("data", [b"", b"{", b"[]", b"\xff\xfe", b"7", b'{"a": ' * 5000])
def test_a_torn_drafts_file_holds_nothing_and_is_replaced(tmp_path, data):
    """A file that cannot be read is no reason not to work."""
    drafts = Drafts(tmp_path)
    drafts.path.write_bytes(data)
    assert drafts.read("x") is None
    drafts.keep("x", [1])
    assert Drafts(tmp_path).read("x") == [1]


def test_drafts_do_not_grow_without_end(tmp_path):
    """The newest stay, the oldest go, and a file grown far too large is not read."""
    drafts = Drafts(tmp_path)
    for number in range(MOST_DRAFTS + 5):
        drafts.keep(f"draft {number}", [number])
    assert drafts.read("draft 4") is None
    assert drafts.read(f"draft {MOST_DRAFTS + 4}") == [MOST_DRAFTS + 4]
    drafts.path.write_text('{"x": "' + "y" * LARGEST_BYTES + '"}', encoding="utf-8")
    assert drafts.read("x") is None


def test_work_goes_on_where_the_disk_is_full(sit_down, work, monkeypatch):
    """The step is done and shown; that it is not kept is said."""
    sat = sit_down()

    def full(name, content):
        message = "this log is not kept on the disk: no space left"
        raise NotKeptError(message)

    monkeypatch.setattr(sat.form.desk.drafts, "keep", full)
    reply = work(sat, WELD)
    assert reply["kind"] == "bench"
    assert reply["sentence"] == "This log is not kept on the disk: no space left."


def test_drafts_stay_at_home(sit_down, work, folder, tmp_path):
    """A hand-in holds answers that were saved, and nothing of work in progress."""
    sat = sit_down()
    sat.submit({"log": [WELD, PULL, ROW_STEP]})
    work(sat, WELD)
    path = pack_hand_in(
        folder, tmp_path, pages=BANK.PAGES, bank_version="test", settings=sat.form.desk.settings
    )
    (record,) = read_hand_in(path, pages=BANK.PAGES).records
    assert record.answers == {"log": [WELD, PULL, ROW_STEP]}


def test_saving_marks_what_the_library_gives(sit_down, right, work):
    """The right log earns everything through the form too."""
    sat = sit_down()
    answers = right(sat)
    assert work(sat, *answers["log"])["view"]["ended"]
    sat.submit(answers)
    assert sat.part("log")["feedback"]["outcome"] == "correct"
    assert "for instance" in " ".join(sat.form.state["reasons"])


# The bench to play with


@pytest.fixture
def play(folder, wrap):
    """Return a function that opens the free bench, each time with a new kernel."""
    return lambda: wrap(BenchPanelForm(Desk(folder)))


def _do(sat, *steps):
    return sat.say(kind="bench", key=sat.form.state["key"], steps=list(steps))


def _open_stud(sat, **typed):
    starts = {control["name"]: control["start"] for control in sat.form.state["controls"]}
    return {"do": "weld", "settings": starts | typed}


def test_the_free_bench_opens_every_setting(play):
    """All twelve settings can be set, and the whole order of work can be tried."""
    sat = play()
    assert [control["name"] for control in sat.form.state["controls"]] == list(SETTING_NAMES)
    assert sat.form.state["fixed"] == []
    reply = _do(sat, _open_stud(sat), PULL, {"do": "stop", "why": "tries"})
    assert reply["kind"] == "bench"
    assert reply["truth"][0].startswith("The machine showed 600 A and gave")
    assert len(reply["truth"]) == 6


def test_the_truth_is_told_only_after_the_work(play):
    """While work goes on nobody learns what the machine really gives."""
    sat = play()
    assert sat.form.state["truth"] == []
    assert _do(sat, _open_stud(sat), PULL)["truth"] == []


def test_the_free_bench_is_there_again_as_it_was_left(play):
    """Day and log come back with a new kernel; another day begins empty, with another rivet."""
    sat = play()
    stud = _open_stud(sat, offset_mm="1.5")
    first = _do(sat, stud, PULL)["view"]
    assert play().form.state["steps"] == [stud, PULL]
    assert play().form.state["view"]["rows"] == first["rows"]
    sat.say(kind="fresh")
    again = play()
    assert (again.form.state["day"], again.form.state["steps"]) == (2, [])
    assert _do(again, stud, PULL)["view"]["rows"] != first["rows"]


@pytest.mark.parametrize(
    "left", ["x", [], {}, {"day": True}, {"day": 0}, {"day": 1, "steps": "x"}, {"day": 1e3}]
)
def test_a_spoilt_draft_of_the_free_bench_is_a_first_day(play, folder, left):
    """Whatever was left there, the bench opens."""
    drafts = Drafts(folder)
    drafts.keep("panel.bench | ana 17", left)
    assert (play().form.state["day"], play().form.state["steps"]) == (1, [])


def test_the_free_bench_follows_who_is_signed_in(play, folder):
    """Somebody else has other days, and the first learner's log is still there afterwards."""
    sat = play()
    stud = _open_stud(sat)
    _do(sat, stud)
    save_learner(folder, "Ben")
    sat.form.told("signed in")
    assert sat.form.state["steps"] == []
    save_learner(folder, "Ana 17")
    assert play().form.state["steps"] == [stud]


def test_a_page_asks_for_the_bench_by_name(folder, monkeypatch):
    """The bench is called like any explorer, and a name that there is not is refused."""
    monkeypatch.chdir(folder)
    assert isinstance(panel("bench"), BenchPanelForm)
    with pytest.raises(ValueError, match="panel must be one of .*bench, got 'banch'"):
        panel("banch")
