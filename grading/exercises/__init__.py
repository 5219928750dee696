"""The exercise bank: one module per page, and the two registries that everything else reads."""

from grading.exercises import removal, rivet_anatomy, second_plate, start_here, stud_welding

BANK_VERSION = "2026.2"

PAGES = {
    page.id: page
    for page in (start_here.PAGE, stud_welding.PAGE, rivet_anatomy.PAGE, removal.PAGE, second_plate.PAGE)
}
EXERCISES = {exercise.id: exercise for page in PAGES.values() for exercise in page.exercises}
