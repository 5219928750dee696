"""Who is to be forgotten, and how a text is searched for them: by id and by every spelling of the name."""

import html
import json
import re
from functools import cached_property

from grading.learners import learner_slug
from grading.variants import normalise_learner

FORGOTTEN = "[forgotten]"
MADE_LIST = ".invented_class"  # names the files of an invented class, so that only those are taken away
_SHORTEST = 4  # letters; a shorter name or a bare number stands in many texts by chance
# Folders that hold one page or one folder for each learner: our own, and those of an nbgrader course.
FOLDERS_BY_LEARNER = ("feedback", "learners", "submitted", "autograded")
_PICTURES = re.compile(r"data:[\w/+.;-]*base64,[\w/+=]*")


class Person:
    """One learner by id; ``spellings`` are all texts by which the records name them, the id included."""

    def __init__(self, learner_id, names=()):
        """Begin with the id and the names that are known already."""
        self.id = learner_id
        self.spellings = {learner_id}
        for name in names:
            self.add(name)

    def add(self, name):
        """Add a spelling of the name that was met."""
        if name.strip():
            self.spellings |= {name, " ".join(name.split()), normalise_learner(name)}
            self.__dict__.pop("pattern", None)

    def is_named(self, text):
        """Tell whether a whole text, such as a table's cell, is this learner's id or name."""
        text = text.strip().removeprefix("'")
        if not text or text in self.spellings:
            return bool(text)
        name = normalise_learner(text)
        return name in self.spellings or learner_slug(name) == self.id

    def owns(self, path):
        """Tell whether a file or folder is this learner's by its name and place."""
        if path.name.startswith((f"hand_in_{self.id}_", f"{self.id}+")):
            return True
        return path.parent.name in FOLDERS_BY_LEARNER and path.name in (self.id, f"{self.id}.html")

    @cached_property
    def pattern(self):
        """A pattern that finds id and names inside a longer text, as whole words; None if too short."""
        long = {each for each in self.spellings if len(each) >= _SHORTEST and not each.isdigit()}
        ways = {way for each in long for way in (each, html.escape(each), json.dumps(each)[1:-1])}
        if not ways:
            return None
        words = "|".join(map(re.escape, sorted(ways, key=len, reverse=True)))
        return re.compile(rf"(?<![^\W_])(?:{words})(?![^\W_])", re.IGNORECASE)

    def is_in(self, text):
        """Tell whether a text names the learner anywhere; pictures inside it are left out."""
        return bool(self.pattern and self.pattern.search(_PICTURES.sub("", text)))

    def cut_from(self, text):
        """Return a text with every naming of the learner taken out; pictures inside it stay as they are."""
        if not self.pattern:
            return text
        pieces = _PICTURES.split(text)
        pictures = [*_PICTURES.findall(text), ""]
        return "".join(
            self.pattern.sub(FORGOTTEN, piece) + picture
            for piece, picture in zip(pieces, pictures, strict=True)
        )
