"""The section-reading sheet: fresh joints for each class and number, answers as the library measures."""

import dataclasses
import re

import pytest
from click.testing import CliRunner

from grading.class_settings import default_settings
from grading.cli import main
from grading.section_sheet import ASKED, sheet_joints, write_section_sheet
from secondplate import section

SETTINGS = default_settings()


def values(joints):
    """Return what is to be read on a sheet."""
    return [[round(float(getattr(joint.measured, name)), 6) for name in ASKED] for joint in joints]


def test_a_class_and_a_number_have_their_own_joints():
    """The same key and number give the same sheet; another key or another number gives another."""
    first = values(sheet_joints("class A", 1, 6))
    assert first == values(sheet_joints("class A", 1, 6))
    assert first != values(sheet_joints("class B", 1, 6))
    assert first != values(sheet_joints("class A", 2, 6))


@pytest.mark.parametrize("count", [1, 2, 6, 12])
def test_sound_and_faulty_joints_are_mixed(count):
    """No more joints are the same fault than need be, and two are sound where there is room."""
    faults = [joint.fault for joint in sheet_joints("class A", 3, count)]
    faulty = [fault for fault in faults if fault != "sound"]
    assert len(faults) == count
    assert faults.count("sound") >= min(2, count)
    assert len(set(faulty)) == len(faulty)


def test_answers_are_what_the_library_measures(tmp_path):
    """The sheet holds no value; the answers hold each measure of each joint, its fault and its verdict."""
    sheet, answers = (path.read_text() for path in write_section_sheet(tmp_path, SETTINGS, number=7, count=3))
    joints = sheet_joints(SETTINGS.course_key, 7, 3)
    shown = re.findall(r"<td>([^<]*)</td>", answers)
    assert shown == [f"{value:.2f}" for row in values(joints) for value in row]
    assert set(re.findall(r"<td>([^<]*)</td>", sheet)) == {""}
    for joint in joints:
        assert f"Verdict: {joint.verdict}." in answers
        assert section.fault(joint.fault).seen in answers
        assert section.fault(joint.fault).cause not in sheet


def test_sheet_is_drawn_to_scale_and_loads_nothing(tmp_path):
    """Eight millimetres on paper are one of the joint, a bar proves it, and nothing comes from elsewhere."""
    from drawings import SECTION_FRAME_MM

    sheet, _ = (path.read_text() for path in write_section_sheet(tmp_path, SETTINGS, count=1))
    left, right, low, high = SECTION_FRAME_MM
    height, width = re.search(
        r'role="img"[^>]*height: ([\d.]+)mm"><div style="width: ([\d.]+)mm', sheet
    ).groups()
    assert float(width) == pytest.approx(8 * (right - left), rel=1e-9)  # written in full
    assert float(height) == pytest.approx(8 * (high - low), rel=1e-9)
    assert "width: 80mm" in sheet
    assert not re.search(r'(?:src|href)="(?!#)', sheet)


@pytest.mark.parametrize("number", range(1, 6))
def test_faulty_joints_are_not_accepted(number):
    """Each joint with a crack, a buckled shank or another gross fault is rejected or cannot be decided."""
    for joint in sheet_joints("class A", number, 10):
        if joint.fault in ("crack in button", "buckled shank", "plates gapped", "head proud", "head sunk"):
            assert joint.verdict != "accept", joint.fault


def test_title_is_escaped(tmp_path):
    """A class title with signs of HTML is shown as it was written."""
    settings = dataclasses.replace(SETTINGS, title="<b>A & B</b>")
    assert "&lt;b&gt;A &amp; B&lt;/b&gt;" in write_section_sheet(tmp_path, settings, count=1)[0].read_text()


@pytest.mark.parametrize(
    ("given", "said"), [({"number": 0}, "sheet number"), ({"count": 13}, "joints of a sheet")]
)
def test_what_cannot_be_made_is_said(tmp_path, given, said):
    """Numbers outside their range are refused in one sentence."""
    with pytest.raises(ValueError, match=f"{said} must be a whole number from 1 to"):
        write_section_sheet(tmp_path, SETTINGS, **given)


def test_command_writes_both_pages(tmp_path):
    """`sheet` writes the page and its answers and says where."""
    done = CliRunner().invoke(main, ["sheet", "--out", str(tmp_path), "--number", "4", "--joints", "2"])
    assert done.exit_code == 0, done.output
    assert sorted(path.name for path in tmp_path.iterdir()) == [
        "section_sheet_4.html",
        "section_sheet_4_answers.html",
    ]
