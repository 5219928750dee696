"""The button that makes the hand-in file."""

from exercise_forms.form import Form, script, sentence
from grading.hand_in import HandInError, pack_hand_in

NOTES = [
    "This makes one file with your saved answers and your written answers, and nothing else. "
    "Make it as often as you like: the newest one counts.",
]
NEXT = "Give this file to your instructor by mail, on a stick or through your school's course page."


class HandInForm(Form):
    """Packs the workbook's answers into one file and says where it lies."""

    _esm = script("hand_in.js")
    title = "Hand in"

    def __init__(self, desk):
        """Show the button."""
        self.desk = desk
        super().__init__(state={"notes": NOTES})

    def answer(self, message):
        """Pack the file, or say in a sentence why there is none."""
        folder = self.desk.workbook_folder
        try:
            path = pack_hand_in(folder, folder, settings=self.desk.settings)
        except HandInError as problem:
            return {"kind": "problem", "sentence": f"No file was made. {sentence(problem)}"}
        return {
            "kind": "saved",
            "sentence": "The hand-in file is made.",
            "file": path.name,
            "folder": str(path.parent),
            "next": NEXT,
        }
