"""The form of an explorer: settings in, picture and computed values out. Saves nothing, marks nothing."""

from exercise_forms.form import Form, script, sentence
from exercise_forms.panel import read_settings


class PanelForm(Form):
    """An explorer as data makes it: see ``panels``."""

    _esm = script("controls.js", "panel.js")

    def __init__(self, panel):
        """Show the panel with its starting values."""
        self.panel = panel
        self.title = panel.title
        super().__init__(
            state={
                "title": panel.title,
                "intro": panel.intro,
                "controls": [control.as_data() for control in panel.controls],
                "view": self._view({control.name: control.start for control in panel.controls}),
            }
        )

    def answer(self, message):
        """Compute the view of the settings that the browser sent."""
        settings, problem = read_settings(self.panel.controls, message["values"])
        view = {"problem": problem} if problem else self._view(settings)
        return {"kind": "view", "sentence": "", "view": view}

    def _view(self, settings):
        """Return what the panel shows, or the library's own sentence where it refuses a setting."""
        try:
            view = self.panel.view(**settings)
        except ValueError as problem:
            return {"problem": sentence(problem)}
        return {
            "sentence": view.sentence,
            "rows": [list(row) for row in view.rows],
            "pictures": [picture._repr_html_() for picture in view.pictures],
        }
