"""Who is meant by a name that an instructor typed: a learner's id or name, spelt in any of its ways."""

from collections import defaultdict
from difflib import get_close_matches

from grading.learners import learner_slug
from grading.variants import normalise_learner


class UnknownLearnerError(ValueError):
    """Nobody has that name; the message is one sentence for the instructor."""


class LearnerNames:
    """The learners of a gradebook, to be found by id or by name."""

    def __init__(self, names):
        """Take the name of each learner by id."""
        self.names = dict(names)
        self._ids = defaultdict(list)
        for each, name in self.names.items():
            self._ids[normalise_learner(name)].append(each)

    def find(self, typed):
        """Return the id of the learner that is meant, or raise ``UnknownLearnerError``."""
        if typed in self.names:
            return typed
        wanted = normalise_learner(typed)
        found = self._ids.get(wanted, []) if wanted else []
        if not found and wanted and learner_slug(wanted) in self.names:
            found = [learner_slug(wanted)]
        if len(found) == 1:
            return found[0]
        if found:
            message = f"learner must be named by id, got {typed!r}, the name of {', '.join(found)}"
            raise UnknownLearnerError(message)
        near = get_close_matches(wanted, self._ids, n=1) if wanted else []
        hint = f"; the nearest name is {near[0]!r}" if near else ""
        message = f"learner must be one who is in the gradebook, got {typed!r}{hint}"
        raise UnknownLearnerError(message)
