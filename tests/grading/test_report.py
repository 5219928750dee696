"""The feedback page: says what came of each answer, gives nothing away early, and runs nothing."""

import json
import random
from dataclasses import replace
from html.parser import HTMLParser

import pytest

from grading.demo_class import invent_records, write_hand_in
from grading.exercises import EXERCISES, PAGES
from grading.hand_in import learner_slug
from grading.marking import mark_class
from grading.report import shown_answer, write_feedback_page
from tests.grading.made_hand_ins import MADE_AT, SETTINGS, journals, raw_hand_in, right_hand_in, right_records

ENERGY = "stud_welding.arc_energy"


class _Outline(HTMLParser):
    """Collect tags and text of a page, and whether every tag is closed."""

    def __init__(self, text):
        super().__init__()
        self.tags, self.words, self.open = [], [], []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        """Note an opened tag."""
        self.tags.append(tag)
        if tag not in ("meta", "br", "link", "img"):
            self.open.append(tag)

    def handle_endtag(self, tag):
        """Check a closed tag against the one opened last."""
        assert self.open.pop() == tag

    def handle_data(self, data):
        """Note text."""
        self.words.append(data)


def _page(tmp_path, path):
    """Mark one file and return its learner's page as text."""

    def write(*marked):
        write_feedback_page(*marked, folder=tmp_path, settings=SETTINGS)

    mark_class([path], SETTINGS, each_learner=write)
    (written,) = tmp_path.glob("*.html")
    return written.read_text(encoding="utf-8")


def _answered(tmp_path, answers, *, name="Mara Quillby", times=1):
    """Return the page of a learner who sent one answer to one exercise, once or several times."""
    records = right_records(name, exercises=[ENERGY] * times)
    for number, record in enumerate(records):
        record["answers"] = answers[number] if isinstance(answers, list) else answers
    return _page(tmp_path, raw_hand_in(tmp_path, name, journals(records)))


def test_page_is_whole_and_loads_nothing(tmp_path):
    """The page is well formed, has a language and one main heading, and asks for nothing from anywhere."""
    text = _page(tmp_path, right_hand_in(tmp_path, "Mara Quillby"))
    outline = _Outline(text)
    assert outline.open == []
    assert outline.tags.count("h1") == 1
    assert '<html lang="en">' in text
    assert not {"script", "img", "link", "iframe", "object"} & set(outline.tags)
    assert "http" not in text
    assert "not a repair procedure" in text


def test_right_answers_are_said_to_be_right(tmp_path):
    """Full marks are shown as such, with nothing to go back to."""
    text = _page(tmp_path, right_hand_in(tmp_path, "Mara Quillby"))
    total = sum(exercise.points for exercise in EXERCISES.values())
    assert f"<strong>{total:g}</strong> of {total:g} points" in text
    assert "What to practise next" not in text
    assert "Not right" not in text


def test_a_slip_is_named_and_where_to_read_again(tmp_path):
    """A recognised slip brings its sentence and the heading to read again, not the right answer."""
    right = right_records("Mara Quillby", exercises=[ENERGY])[0]["answers"]["energy"]
    value = float(right.split()[0]) * 1000
    text = _answered(tmp_path, {"energy": f"{value:.0f} J"})
    slip = next(each for each in EXERCISES[ENERGY].parts[0].slips if each.id == "seconds")
    assert slip.sentence in text
    assert f'read again "{EXERCISES[ENERGY].read_again}"' in text
    assert right not in text


def test_what_to_practise_next_names_objective_exercise_and_slip(tmp_path):
    """The one objective that lost something is named, with exercise, heading to read again, and slip."""
    name = "Mara Quillby"
    records = right_records(name)
    for record in records:
        if record["exercise"] == ENERGY:
            right = float(record["answers"]["energy"].split()[0])
            record["answers"] = {**record["answers"], "energy": f"{right * 1000:.0f} J"}
    text = _page(tmp_path, raw_hand_in(tmp_path, name, journals(records)))
    start = text.index("What to practise next")
    section = text[start : text.index("</section>", start)]
    exercise = EXERCISES[ENERGY]
    slip = next(each for each in exercise.parts[0].slips if each.id == "seconds")
    assert section.count("<strong>") == 1, "nothing else lost anything"
    assert PAGES["stud_welding"].objectives[exercise.objective] in section
    assert f'<a href="#{ENERGY}">{exercise.title}</a>' in section
    assert f'read again "{exercise.read_again}"' in section
    assert slip.sentence in section
    assert f'id="{ENERGY}"' in text, "the link leads somewhere"
    assert f"earns up to {100 * SETTINGS.later_round_credit:.0f}%" in section


def test_reasons_come_only_after_the_last_try(tmp_path):
    """The worked way is shown once the round is finished and not before."""
    wrong = {"energy": "1 J", "energy_band": {"low": "1 J", "high": "2 J"}}
    text = _answered(tmp_path, wrong)
    assert "The way to work it out" not in text
    tries = [{"energy": f"{n} J", "energy_band": {"low": f"{n} J", "high": "9 J"}} for n in (1, 2, 3)]
    assert "The way to work it out" in _answered(tmp_path, tries, times=3)


def test_what_cannot_be_read_is_told(tmp_path):
    """An answer without a unit is shown as typed with the sentence that says what is missing."""
    text = _answered(tmp_path, {"energy": "480"})
    assert "Could not be read." in text
    assert "unit is missing" in text


@pytest.mark.parametrize("name", ["<script>alert(1)</script>", '"><img src=x onerror=alert(1)>', "=cmd()"])
def test_names_and_answers_are_text(tmp_path, name):
    """Whatever a learner writes stays text: as a name, as an answer, as a file name."""
    text = _answered(tmp_path, {"energy": f"{name} J", "energy_band": {"low": name, "high": name}}, name=name)
    assert name not in text.replace("=cmd()", "") or name == "=cmd()"
    assert not {"script", "img"} & set(_Outline(text).tags)
    (written,) = tmp_path.glob("*.html")
    assert written.name == f"{learner_slug(name)}.html"


def test_ten_thousand_digits_are_cut(tmp_path):
    """A very long answer is shown cut, with its length."""
    text = _answered(tmp_path, {"energy": "7" * 10_000})
    assert "(10000 characters)" in text
    assert len(text) < 20_000


@pytest.mark.parametrize("typed", [7, True, [1], {"low": 3}, {"a": {"b": []}}, [["x"]], "x", 1.5, [None]])
def test_odd_answers_are_shown_somehow(typed):
    """An answer of a shape that no form sends is shown, never a crash."""
    for exercise in EXERCISES.values():
        for part in exercise.parts:
            assert shown_answer(part, typed, {})


def test_nothing_answered_shows_no_answer():
    """An empty field shows no answer line."""
    part = EXERCISES[ENERGY].parts[0]
    assert [shown_answer(part, typed, {}) for typed in (None, "", [], {})] == [(), (), (), ()]


def test_every_invented_learner_has_a_page(tmp_path):
    """Right, wrong, blank and garbled answers in many rounds all make a page with every answered exercise."""
    for number in range(6):
        dice = random.Random(number)
        records = invent_records("Odd Learner", SETTINGS, dice, skill=0.2, until=MADE_AT, diligence=1.0)
        path = write_hand_in(tmp_path, "Odd Learner", SETTINGS, records, MADE_AT)
        text = _page(tmp_path, path)
        titles = [each.title for page in PAGES.values() for each in page.exercises]
        shown = "".join(_Outline(text).words)
        assert all(title in shown for title in titles)


def test_a_problem_is_told_to_the_learner(tmp_path):
    """What could not be used stands on the learner's own page."""
    data = journals(right_records("Mara Quillby"))
    data["stud_welding"] += b'{"torn'
    text = _page(tmp_path, raw_hand_in(tmp_path, "Mara Quillby", data))
    assert "What could not be used" in text
    assert "last line is incomplete" in text


def test_html_of_json_answers_has_no_raw_json_markup():
    """A dictionary typed where text belongs is shown as its own text."""
    part = EXERCISES[ENERGY].parts[0]
    (line,) = shown_answer(part, {"x": "<b>"}, {})
    assert json.dumps("<b>")[1:-1] in line


def test_an_exercise_that_cannot_be_solved_has_a_place_on_the_page(tmp_path, monkeypatch):
    """Where the fault is ours the page says so and shows what was answered to everything else."""

    def fail(draw):
        message = "no such number"
        raise ValueError(message)

    path = right_hand_in(tmp_path, "Mara Quillby")
    exercise = EXERCISES[ENERGY]
    monkeypatch.setitem(EXERCISES, ENERGY, replace(exercise, draw=fail))
    text = _page(tmp_path, path)
    assert "Could not be marked." in text
    assert "What to practise next" not in text, "a fault of ours is nothing to practise"
    assert "please tell your instructor" in text
    assert exercise.title in text
