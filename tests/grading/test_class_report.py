"""The class report: whole, readable without sight or colour, escaped, and honest about small classes."""

import re
from html.parser import HTMLParser

import pytest

from grading import class_report as report_module
from grading.class_report import class_report
from grading.class_work import ClassWorkError, read_class_work, save_class_work
from grading.exercises import EXERCISES, PAGES
from grading.results import mark_folder
from grading.slip_notes import slip_notes
from tests.grading.made_classes import made_class
from tests.grading.made_hand_ins import SETTINGS, right_hand_in

SLIP = "stud_welding.cylinder.enough.less_flow"


class _Outline(HTMLParser):
    """Collect tags with their attributes, the words, and whether every tag is closed."""

    def __init__(self, text):
        super().__init__()
        self.tags, self.words, self.open = [], [], []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        """Note an opened tag."""
        self.tags.append((tag, dict(attributes)))
        if tag not in ("meta", "br", "wbr", "img"):
            self.open.append(tag)

    def handle_endtag(self, tag):
        """Check a closed tag against the one opened last."""
        assert self.open.pop() == tag

    def handle_data(self, data):
        """Note text."""
        self.words.append(data)

    def named(self, tag):
        """Return the attributes of every tag of one name."""
        return [attributes for name, attributes in self.tags if name == tag]


def _page(learners, **given):
    """Return the report of an invented class."""
    return class_report(*made_class(learners, **given))


@pytest.fixture(scope="module")
def of_twelve():
    """Give the report of a class of twelve with one slip and one who is late."""
    return _page(12, slips=[[SLIP]] * 7 + [[]] * 5, late={2})


def test_page_is_whole_and_loads_nothing(of_twelve):
    """The page is well formed, has one main heading, and asks for nothing from anywhere."""
    outline = _Outline(of_twelve)
    assert outline.open == []
    assert len(outline.named("h1")) == 1
    assert not {"script", "link", "iframe", "object"} & {tag for tag, _ in outline.tags}
    assert all(each["src"].startswith("data:image/svg+xml;base64,") for each in outline.named("img"))
    assert "http" not in re.sub(r'src="[^"]*"', "", of_twelve)


def test_a_screen_reader_finds_its_way(of_twelve):
    """Headings never skip a level, every header of a table has a scope, every picture its words."""
    outline = _Outline(of_twelve)
    levels = [int(tag[1]) for tag, _ in outline.tags if re.fullmatch("h[1-6]", tag)]
    assert all(after <= before + 1 for before, after in zip(levels, levels[1:], strict=False))
    assert {each.get("scope") for each in outline.named("th")} == {"col", "row", "colgroup"}
    assert all(len(each["alt"]) > 40 for each in outline.named("img"))
    targets = {each["id"] for _, each in outline.tags if "id" in each}
    assert {each["href"][1:] for each in outline.named("a")} <= targets


def test_numbers_stand_in_the_cells_and_not_only_colours(of_twelve):
    """Each cell of the table of learners holds its number; below half it is marked apart from its shade."""
    cells = re.findall(r'<td class="shade(\d)( below)?">([^<]*)</td>', of_twelve)
    assert len(cells) == 12 * 10
    for shade, below, text in cells:
        assert (int(text) < 50) == bool(below)
        assert int(shade) == sum(int(text) >= limit for limit in (25, 50, 75, 90))


def test_slips_come_with_the_place_in_the_notes(of_twelve):
    """The most frequent slip has its count, its sentence and what the note says about it."""
    note = slip_notes()[SLIP]
    found = _Outline(of_twelve).words
    words = " ".join(found)
    assert SLIP in "".join(found), "an id may be broken at its points"
    assert f"Most frequent slip: 7 of 12 in \u201c{EXERCISES['stud_welding.cylinder'].title}\u201d." in words
    for text in (note.behind, note.show, f"{note.note}, {note.heading}"):
        assert text in words


def test_twelve_are_enough_for_coefficients(of_twelve):
    """With twelve learners alpha, KR-20 and standard error are given, each with its interval."""
    words = " ".join(_Outline(of_twelve).words)
    assert re.search(r"Alpha is 0\.\d\d; with 12 learners anything from \S+ to 0\.\d\d is likely", words)
    assert re.search(r"KR-20 of right at the first try or not: 0\.\d\d \(\S+ to 0\.\d\d\)", words)
    assert re.search(r"Standard error of measurement: \d+\.\d \(\d+\.\d to \d+\.\d\) points", words)


@pytest.mark.parametrize("learners", [1, 4, 9])
def test_small_classes_get_no_coefficient(learners):
    """Below ten learners nothing looks like a coefficient; below five nothing like a median either."""
    page = re.sub(r"<style>.*?</style>|base64,[^\"]*", "", _page(learners), flags=re.DOTALL)
    words = " ".join(_Outline(page).words)
    assert "Too few to say" in words
    assert "Alpha is" not in words
    assert "Upper less lower</th>" not in page
    assert not re.search(r"\b0\.\d\d \(", words)
    assert ("Median</th>" in page) == (learners >= 5)


def test_names_are_escaped():
    """A name with marks of HTML stays text, and unseen letters become spaces."""
    page = _page(1, names=["<img src=x onerror=alert(1)>\u202eevil"])
    assert "<img src=x" not in page
    assert "&lt;img src=x onerror=alert(1)&gt; evil" in page


def test_without_names_there_are_none():
    """Without names nobody is named and nobody is singled out."""
    students, work = made_class(12, names=[f"Somebody {row}" for row in range(12)])
    page = class_report(students, work, names=False)
    assert "Somebody" not in page
    assert "Who needs a talk" not in page
    assert "Learner 12" in page


def test_large_classes_list_the_weakest(monkeypatch):
    """Where a class is larger than its table may be, the weakest are in it, and the page says so."""
    monkeypatch.setattr(report_module, "MOST_ROWS", 3)
    page = _page(8, skill=[0.9, 0.1, 0.9, 0.2, 0.9, 0.0, 0.9, 0.9])
    listed = set(re.findall(r'<th scope="row">(Learner \d+)</th>', page))
    assert listed == {"Learner 001", "Learner 003", "Learner 005"}
    assert "Only the 3 learners with the fewest marks; 5 more" in page


def test_a_class_that_handed_nothing_in():
    """A class without any mark gets a page that says so."""
    page = _page(2, pages=())
    assert "Nobody handed in anything that carries marks." in page
    assert _Outline(page).open == []


def test_marking_writes_it_and_what_it_takes_to_write_it_again(tmp_path):
    """`mark` leaves the report, and the work of the class to write it again from."""
    (tmp_path / "in").mkdir()
    right_hand_in(tmp_path / "in", "Mara Quillby")
    out = tmp_path / "out"
    summary = mark_folder(tmp_path / "in", out, SETTINGS, feedback=False)
    page = (out / "class_report.html").read_text(encoding="utf-8")
    assert summary.report == out / "class_report.html"
    assert "Mara Quillby" in page
    assert "Points earned of the pages handed in: 100 %." in page
    (mara,) = read_class_work(out).learners
    answered = list(EXERCISES)
    assert mara.at_once == (1,) * len(answered)
    assert mara.tries == (1,) * len(answered)
    assert mara.seconds == (0, *(60,) * (len(answered) - 1)), "one minute apart, the first unknown"


def test_no_report_is_written_where_none_is_wanted(tmp_path):
    """Without a report neither page nor work is left, and the summary names none."""
    (tmp_path / "in").mkdir()
    right_hand_in(tmp_path / "in", "Mara Quillby")
    summary = mark_folder(tmp_path / "in", tmp_path / "out", SETTINGS, feedback=False, report=False)
    assert summary.report is None
    assert sorted(each.name for each in (tmp_path / "out").glob("class*")) == []


def test_work_is_read_as_it_was_written(tmp_path):
    """The work of a class survives its file."""
    _, work = made_class(3, slips=[[SLIP], [], []])
    save_class_work(tmp_path, work)
    assert read_class_work(tmp_path) == work


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (None, "must hold class_work.json, which `mark` writes"),
        (b"{", "cannot be read, mark the class again"),
        (b"[]", "must be a second plate class work of version 1"),
        (b'{"format": "second plate class work", "version": 2}', "of version 1"),
        (b'{"format": "second plate class work", "version": 1}', "does not hold the work of a class"),
        (
            b'{"format": "second plate class work", "version": 1, "title": "x", "tries_per_round": 3,'
            b' "exercises": ["a.b"], "learners": [{"student_id": "x", "tries": [], "rounds": [1],'
            b' "at_once": [1], "seconds": [1], "slips": []}]}',
            "must hold one number for each exercise and learner",
        ),
    ],
)
def test_work_that_cannot_be_used_is_one_sentence(tmp_path, content, sentence):
    """A missing, torn or strange file is refused in one sentence."""
    if content is not None:
        (tmp_path / "class_work.json").write_bytes(content)
    with pytest.raises(ClassWorkError, match=sentence):
        read_class_work(tmp_path)


def test_every_slip_has_its_place_in_the_notes():
    """Notes are found for the slips of every page, each row with all its columns."""
    notes = slip_notes()
    assert {slip.partition(".")[0] for slip in notes} == set(PAGES)
    assert all(note.behind and note.show and note.heading for note in notes.values())
