"""Hand-ins out of learners' own folders: each learner's own, nothing through a link, nobody else's name."""

import os
from collections import Counter

import pytest

from grading.hand_in import MOST_FILE_BYTES
from grading.homes import collect_hand_ins
from grading.learners import HOME_FOLDER
from tests.grading.made_hand_ins import raw_hand_in

pytestmark = pytest.mark.skipif(os.open not in os.supports_dir_fd, reason="hubs run on Linux only")


@pytest.fixture(scope="module")
def hand_in_of(tmp_path_factory):
    """Return the bytes of a hand-in of a learner; each is made once."""
    made = {}

    def give(name):
        if name not in made:
            made[name] = raw_hand_in(tmp_path_factory.mktemp("made"), name, {}).read_bytes()
        return made[name]

    return give


@pytest.fixture
def homes(tmp_path, hand_in_of):
    """Give a folder with the homes of two learners who handed in."""
    for account in ("ann", "bert"):
        folder = tmp_path / "home" / account / HOME_FOLDER
        folder.mkdir(parents=True)
        (folder / f"hand_in_{account}_1.zip").write_bytes(hand_in_of(account))
    return tmp_path / "home"


def copied(out):
    """Return the names of the collected files below the folder."""
    return {path.relative_to(out).as_posix() for path in out.rglob("*") if path.is_file()}


def test_everybodys_hand_ins_are_copied(homes, tmp_path, hand_in_of):
    """Each learner's files come into a folder of the account's name that only its owner may enter."""
    (homes / "cleo").mkdir()  # has not opened the workbook yet
    made = collect_hand_ins(homes, tmp_path / "class")
    assert (made.learners, made.files, made.left_out) == (2, 2, ())
    assert copied(tmp_path / "class") == {"ann/hand_in_ann_1.zip", "bert/hand_in_bert_1.zip"}
    assert (tmp_path / "class" / "ann" / "hand_in_ann_1.zip").read_bytes() == hand_in_of("ann")
    assert (tmp_path / "class").stat().st_mode & 0o077 == 0


@pytest.mark.parametrize("way", ["symbolic", "hard", "pipe", "folder", "large"])
def test_what_is_no_file_of_the_learners_own_is_left_out(homes, tmp_path, way):
    """A link to another's file, a pipe, a folder, a file too large: named, not followed, not waited for."""
    trick = homes / "bert" / HOME_FOLDER / "hand_in_trick.zip"
    target = homes / "ann" / HOME_FOLDER / "hand_in_ann_1.zip"
    if way == "symbolic":
        trick.symlink_to(target)
    elif way == "hard":
        os.link(target, trick)
    elif way == "pipe":
        os.mkfifo(trick)
    elif way == "folder":
        trick.mkdir()
    else:
        with trick.open("wb") as file:
            file.truncate(MOST_FILE_BYTES + 1)
    made = collect_hand_ins(homes, tmp_path / "class", any_name=True)
    assert "bert/hand_in_trick.zip" not in copied(tmp_path / "class")
    assert Counter(each.split(":")[0] for each in made.left_out)["bert/hand_in_trick.zip"] == 1


def test_a_home_that_is_a_link_is_not_entered(homes, tmp_path):
    """A folder that leads to another learner's counts for nobody."""
    (homes / "dora").mkdir()
    (homes / "dora" / HOME_FOLDER).symlink_to(homes / "ann" / HOME_FOLDER)
    (homes / "egon").symlink_to(homes / "ann")
    collect_hand_ins(homes, tmp_path / "class", any_name=True)
    assert {name.split("/")[0] for name in copied(tmp_path / "class")} == {"ann", "bert"}


def test_a_hand_in_in_another_name_is_left_out(homes, tmp_path, hand_in_of):
    """What names another learner than the account would be marked as that one's: left out unless told to."""
    (homes / "bert" / HOME_FOLDER / "hand_in_x.zip").write_bytes(hand_in_of("ann"))
    made = collect_hand_ins(homes, tmp_path / "class")
    assert made.left_out == ("bert/hand_in_x.zip: it is of 'ann', not of bert",)
    assert "bert/hand_in_x.zip" not in copied(tmp_path / "class")
    collect_hand_ins(homes, tmp_path / "all", any_name=True)
    assert "bert/hand_in_x.zip" in copied(tmp_path / "all")


def test_a_broken_hand_in_is_copied_for_marking_to_name(homes, tmp_path):
    """A file that cannot be read names nobody; marking says what is wrong with it."""
    (homes / "ann" / HOME_FOLDER / "hand_in_torn.zip").write_bytes(b"PK torn")
    assert collect_hand_ins(homes, tmp_path / "class").left_out == ()
    assert "ann/hand_in_torn.zip" in copied(tmp_path / "class")
