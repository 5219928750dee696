"""The desk a learner works at: the page's folder, who sits there, the journal, and the forms laid out.

One kernel has one desk. The journal is the only thing that is kept; all else can be made again from it.
"""

from datetime import datetime
from functools import cache
from pathlib import Path

import grading.exercises
from exercise_forms.drafts import Drafts
from grading import variants
from grading.class_settings import settings_of
from grading.hand_in import learner_of
from grading.journal import Journal
from grading.scoring import keys_for, mark_learner, wanted

START_PAGE = "0_start_here.ipynb"


class Desk:
    """Where answers of one folder are read, saved and marked."""

    def __init__(self, folder, *, bank=grading.exercises):
        """Sit down in a page's folder; ``bank`` has EXERCISES, PAGES and BANK_VERSION."""
        self.folder = Path(folder)
        self.bank = bank
        self.settings = settings_of(self.folder)
        self.journal = Journal(self.folder / "answers.jsonl")
        self.drafts = Drafts(self.folder)
        self._keys = {}
        self._forms = {}

    @property
    def learner(self):
        """Who is signed in, read anew each time: another page may have signed somebody in."""
        return learner_of(self.folder)

    @property
    def workbook_folder(self):
        """The folder that holds the start page; the page's own folder where none of its parents does."""
        places = [self.folder, *self.folder.parents]
        return next((place for place in places if (place / START_PAGE).is_file()), self.folder)

    def scenario(self, exercise, learner, round_number):
        """Return the numbers of one learner for one round of an exercise."""
        return variants.scenario(
            exercise, course_key=self.settings.course_key, learner=learner, round_number=round_number
        )

    def keys(self, triples):
        """Return the keys of ``(exercise id, learner, round)``; each is solved once for each kernel."""
        new = set(triples) - self._keys.keys()
        if new:
            self._keys |= keys_for(new, course_key=self.settings.course_key, exercises=self.bank.EXERCISES)
        return {triple: self._keys[triple] for triple in triples}

    def result(self, learner, exercises):
        """Mark what the journal holds of a learner for some exercises, the way the instructor's copy does."""
        chosen = {exercise.id: exercise for exercise in exercises}
        records = [record for record in self.journal.read().records if record.exercise in chosen]
        course_key = self.settings.course_key
        triples = {(name, learner, number) for name, number in wanted(records, learner, course_key)}
        return mark_learner(
            records,
            self.settings,
            learner=learner,
            exercises=chosen,
            bank_version=self.bank.BANK_VERSION,
            keys=self.keys(triples),
        )

    def save(self, exercise, *, learner, round_number, digest, answers):
        """Append answers to the journal and return the local time at which they were safe on disk."""
        record = self.journal.append(
            learner=learner,
            course=self.settings.course_key,
            page=exercise.page,
            exercise=exercise.id,
            round_number=round_number,
            bank=self.bank.BANK_VERSION,
            scenario=digest,
            answers=answers,
        )
        return datetime.fromisoformat(record.at).astimezone().strftime("%H:%M")

    def put(self, name, form):
        """Lay a form on the desk in place of the one that an earlier run of its cell left there."""
        if name in self._forms:
            self._forms[name].close()
        self._forms[name] = form
        return form

    def tell(self, news):
        """Tell every form what happened: ``answered`` or ``signed in``."""
        for form in list(self._forms.values()):
            form.told(news)


@cache
def desk_of(folder):
    """Return the one desk of a folder."""
    return Desk(folder)


def here():
    """Return the desk of the page that is running: a kernel works in its page's folder."""
    return desk_of(Path.cwd())
