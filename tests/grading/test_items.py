"""QTI items: of the standard's structure, and another reader marks a first answer as our own marking does."""

import csv
import zipfile
from xml.etree import ElementTree

import pytest

from grading.exercise import Choices, Number, Range, Verdicts
from grading.exercises import EXERCISES
from grading.items import PACKAGE_NAMESPACE, item_bytes, item_id, why_left_out, write_items
from grading.keys import keys_for
from grading.part_scores import score_part
from grading.quantities import read_quantity
from grading.typed_answers import right_typed, slip_ids, slip_typed
from tests.grading.conftest import ENERGY, KINDS
from tests.grading.item_reader import mark_item, read_item
from tests.grading.item_rules import structure_faults
from tests.grading.made_hand_ins import SETTINGS

CHOSEN = {each: exercise for each, exercise in EXERCISES.items() if not why_left_out(exercise)}


@pytest.fixture(scope="module")
def keys():
    """Give the keys of one draw of every exercise that is exported."""
    wanted = [(each, "item 1", 1) for each in CHOSEN]
    solved = keys_for(wanted, course_key=SETTINGS.course_key, exercises=EXERCISES)
    return {each: solved[each, "item 1", 1] for each in CHOSEN}


@pytest.fixture(scope="module")
def items(keys):
    """Give the item of one draw of every exercise that is exported."""
    return {each: item_bytes(CHOSEN[each], keys[each], 1) for each in CHOSEN}


@pytest.fixture(scope="module")
def read(items):
    """Give the same items as another program reads them."""
    return {each: read_item(data) for each, data in items.items()}


def _responses(part, typed):
    """Return what somebody answers in an item who would type this on a page."""
    if typed is None:
        return {}
    if isinstance(part, Number):
        return {part.id: read_quantity(typed, part.unit).value}
    if isinstance(part, Range):
        return {f"{part.id}.{end}": read_quantity(text, part.unit).value for end, text in typed.items()}
    if isinstance(part, Verdicts):
        return {f"{part.id}.{row}": verdict for row, verdict in typed.items()}
    return {part.id: typed}


def _wrong(part, key):
    """Give answers to a part that are not right: each slip's, and for lists and tables one piece wrong."""
    yield from filter(None, (slip_typed(part, key, slip) for slip in slip_ids(part)))
    if isinstance(part, Choices):
        yield from ([option.id] for option in part.options)
        yield [option.id for option in part.options]
    if isinstance(part, Verdicts):
        for row in part.rows:
            for verdict in part.verdicts:
                yield {**key.right, row.id: verdict.id}
    if isinstance(part, Range):
        yield {"low": f"{key.low} {part.unit}", "high": f"{abs(key.high) * 3 + 1} {part.unit}"}


@pytest.mark.parametrize("exercise", CHOSEN)
def test_items_keep_the_standards_structure(exercise, items):
    """Elements, attributes, their order, identifiers and references are as the standard wants them."""
    assert list(structure_faults(items[exercise])) == []


@pytest.mark.parametrize(
    ("old", "new", "fault"),
    [
        ("<sum>", "<sum><p />", "sum holds p "),
        ("<itemBody>", "<modalFeedback /><itemBody>", "assessmentItem holds"),
        ("<prompt>", "<prompt>Twice</prompt><prompt>", "choiceInteraction holds"),
        ("<member>", '<member><baseValue baseType="float">1</baseValue>', "member holds"),
        ('responseIdentifier="readable" ', "", "choiceInteraction has the attributes"),
        ('shuffle="false"', 'shuffle="false" colour="red"', "choiceInteraction has the attributes"),
        (
            'mapResponse identifier="readable"',
            'mapResponse name="readable"',
            "mapResponse has the attributes",
        ),
        (
            'variable identifier="readable"',
            'variable identifier="written"',
            "names written, which is not declared",
        ),
        ('simpleChoice identifier="in_mm"', 'simpleChoice identifier="7 mm"', "identifier '7 mm'"),
    ],
)
def test_the_rules_see_a_fault(items, old, new, fault):
    """What the schema does not allow is found: elements, their order and number, attributes, names."""
    item = items["start_here.practice_choices"].decode()
    assert old in item
    faults = list(structure_faults(item.replace(old, new, 1).encode()))
    assert any(fault in each for each in faults), faults


@pytest.mark.parametrize("exercise", CHOSEN)
def test_an_item_marks_as_we_do(exercise, read, keys):
    """Right answers, slips and half-right answers earn in the item what a first try earns on the page."""
    everything = {}
    for part in CHOSEN[exercise].parts:
        key = keys[exercise].keys[part.id]
        right = right_typed(part, key)
        everything |= _responses(part, right)
        for typed in (right, *_wrong(part, key)):
            ours = score_part(part, key, typed)
            score, shown = mark_item(read[exercise], _responses(part, typed))
            # abs 1e-9: sums of the same shares, added up in another order
            assert score == pytest.approx(part.points * ours.fraction, abs=1e-9), (part.id, typed)
            if ours.slip_id and not isinstance(part, (Verdicts, Range, Number)):
                assert shown == {f"{part.id}.{ours.slip_id}"}
            if ours.slip_id and isinstance(part, (Range, Number)) and ours.fraction < 0.5:
                assert len(shown) == 1
    points = sum(part.points for part in CHOSEN[exercise].parts)
    assert mark_item(read[exercise], everything)[0] == pytest.approx(points, abs=1e-9), "see above"


def test_no_answer_earns_nothing(read):
    """An item that nobody answered gives no points and shows no sentence."""
    assert {(score, len(shown)) for score, shown in (mark_item(each, {}) for each in read.values())} == {
        (0.0, 0)
    }


def test_most_of_the_bank_is_exported_and_the_rest_is_named(tmp_path):
    """The package holds each chosen exercise and draw; what is left out is a table with reasons."""
    bank = {each.id: each for each in [CHOSEN[each] for each in list(CHOSEN)[:3]]}
    bank |= {each.id: each for each in EXERCISES.values() if why_left_out(each)}
    made = write_items(tmp_path / "out", bank, SETTINGS, draws=2)
    assert (made.items, made.exercises, made.left_out) == (6, 3, len(bank) - 3)
    with made.left_out_table.open(encoding="utf-8-sig", newline="") as file:
        assert all(row["why"] for row in csv.DictReader(file))
    with zipfile.ZipFile(made.package) as package:
        names = package.namelist()
        manifest = ElementTree.fromstring(package.read("imsmanifest.xml"))
    space = f"{{{PACKAGE_NAMESPACE}}}"
    resources = manifest.findall(f"{space}resources/{space}resource")
    assert [each.get("href") for each in resources] == names[1:]
    assert {each.get("type") for each in resources} == {"imsqti_item_xmlv2p1"}
    assert [each.tag for each in manifest] == [
        f"{space}{name}" for name in ("metadata", "organizations", "resources")
    ]
    assert names[0] == "imsmanifest.xml"
    assert f"{item_id(next(iter(CHOSEN)), 2)}.xml" in names
    assert len(CHOSEN) > 0.8 * len(EXERCISES)
    again = write_items(tmp_path / "again", bank, SETTINGS, draws=2)
    assert again.package.read_bytes() == made.package.read_bytes()


def test_what_would_be_marked_otherwise_is_left_out():
    """An order with part credit has no item; numbers and bands have one."""
    assert "Order" in why_left_out(KINDS)
    assert why_left_out(ENERGY) == ""


def test_a_fault_in_the_structure_is_seen(items):
    """The reader is awake: a missing attribute, a wrong order, an unknown name and a bad id are told."""
    good = next(iter(items.values())).decode()
    for old, new in (
        (' adaptive="false"', ""),
        ("itemBody>", "body>"),
        ('identifier="SCORE" cardinality', 'identifier="1 SCORE" cardinality'),
        ('<variable identifier="SCORE"', '<variable identifier="SCORES"'),
    ):
        assert old in good
        assert list(structure_faults(good.replace(old, new).encode()))
