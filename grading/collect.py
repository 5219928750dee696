"""Hand-in files taken into a course by nbgrader's own `zip_collect`, which loads this through its settings.

nbgrader would unpack whatever lies in the archive folder. Here each file is read as data, one that cannot be
used is named and left out, and two hand-ins of one learner are put together, as in `python -m grading mark`.
"""

from pathlib import Path

from nbgrader.plugins.zipcollect import ExtractorPlugin

from grading.course import released_notebook, write_page
from grading.exercises import PAGES
from grading.hand_in import learner_slug
from grading.hand_ins import hand_in_files, hand_in_pages, made_at, merge_hand_ins, read_by_learner


class HandInExtractor(ExtractorPlugin):
    """Take the page of one assignment out of every hand-in, each into a folder of its learner's name."""

    def extract(self, archive_path, extracted_path):
        """Write ``hand_in_<learner>_<time>/`` with page and answers for each learner."""
        coursedir = self.parent.coursedir
        page = next(each for each in PAGES.values() if each.assignment == coursedir.assignment_id)
        released = released_notebook(coursedir.root, page)
        found, problems = read_by_learner(hand_in_files(archive_path))
        for problem in problems:
            self.log.warning("Left out %s", problem.seen_from(archive_path).in_words)
        for group in found:
            hand_in, _ = merge_hand_ins(group)
            if page.id in hand_in_pages(hand_in):
                moment = made_at(hand_in)
                stamp = f"{moment:%Y%m%dT%H%M%S}" if moment else "19700101T000000"
                folder = Path(extracted_path) / f"hand_in_{learner_slug(hand_in.learner)}_{stamp}"
                write_page(folder, page=page, released=released, hand_in=hand_in)
