"""Invented classes as the gradebook and a marking leave them, without marking anything."""

import random

from grading.class_work import ClassWork, LearnerWork
from grading.exercises import EXERCISES
from grading.gradebook import cell_name
from grading.gradebook_scores import StudentScores

PAGE = "start_here"
IDS = tuple(EXERCISES)


def made_class(learners, *, pages=("start_here", "stud_welding"), skill=None, names=None, slips=(), late=()):
    """Return ``(students, work)`` of a class that answered every exercise of some pages.

    ``skill`` gives the share of exercises that each learner has right, spread over the class where None;
    ``slips`` gives the slips of each learner by row.
    """
    dice = random.Random(11)
    students, works = [], []
    for row in range(learners):
        able = skill[row] if skill else 0.3 + 0.6 * row / max(learners - 1, 1)
        right = {each.id: each.page in pages and dice.random() < able for each in EXERCISES.values()}
        there = {each.id: each.page in pages for each in EXERCISES.values()}
        student_id = f"learner_{row:03}"
        students.append(
            StudentScores(
                student_id=student_id,
                name=names[row] if names else f"Learner {row:03}",
                late=row in late,
                scores={
                    cell_name(each.id): each.points * right[each.id]
                    for each in EXERCISES.values()
                    if each.counts and there[each.id]
                },
            )
        )
        works.append(
            LearnerWork(
                student_id=student_id,
                tries=tuple((1 if right[each] else 3) * there[each] for each in IDS),
                rounds=tuple(int(there[each]) for each in IDS),
                at_once=tuple(int(right[each]) for each in IDS),
                seconds=tuple(90 * there[each] for each in IDS),
                slips=tuple(slips[row]) if slips else (),
            )
        )
    work = ClassWork(title="Invented class", tries_per_round=3, exercises=IDS, learners=tuple(works))
    return students, work
