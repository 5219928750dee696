"""The explorers: every panel shows something true at every setting, or says why it does not."""

import itertools

import pytest

from exercise_forms.panel import Pick, Slide, read_settings
from exercise_forms.panel_form import PanelForm
from exercise_forms.panels import PANELS

CURRENT = Slide(name="current_a", label="Current", unit="A", low=100, high=1200, step=10, start=600)


def _ends(control):
    return control.options if isinstance(control, Pick) else (str(control.low), str(control.high))


@pytest.mark.parametrize("name", PANELS)
def test_a_panel_starts_with_a_view(name):
    """Rows, a sentence, and a picture that tells its own words."""
    view = PanelForm(PANELS[name]).state["view"]
    assert view["rows"]
    assert view["sentence"]
    assert view["pictures"]
    assert all(picture.startswith('<img alt="') for picture in view["pictures"])


@pytest.mark.parametrize("name", PANELS)
def test_a_panel_answers_at_the_ends_of_every_control(name, wrap):
    """All controls at one end, then each alone at its other end."""
    panel = PANELS[name]
    sat = wrap(PanelForm(panel))
    for place, end in itertools.product(range(len(panel.controls)), (0, -1)):
        values = {
            control.name: _ends(control)[end if place == at else 0]
            for at, control in enumerate(panel.controls)
        }
        view = sat.say(kind="change", values=values)["view"]
        assert view.get("problem") or view["rows"]


@pytest.mark.parametrize(("typed", "value"), [("600", 600), ("600 A", 600), ("0,6 kA", 600), (" 1e3 ", 1000)])
def test_a_number_may_be_typed_with_or_without_its_unit(typed, value):
    """The unit stands beside the field, so it may be left out here."""
    assert read_settings((CURRENT,), {"current_a": typed}) == ({"current_a": value}, "")


@pytest.mark.parametrize("typed", ["", "six", "nan", "600 mm", "5000", "1,200"])
def test_what_cannot_be_set_is_said_with_the_controls_name(typed):
    """Nothing is guessed and nothing is clipped."""
    settings, problem = read_settings((CURRENT,), {"current_a": typed})
    assert settings == {}
    assert problem.startswith("Current")
