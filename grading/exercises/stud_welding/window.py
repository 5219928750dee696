"""Exercise on the process window: cold, sound, hot or burnt through, by current and time."""

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import Choice, ChoiceKey, Exercise, Verdicts, VerdictsKey
from grading.exercises.building_blocks import current_and_time, option, same, wrong
from grading.exercises.scenes import scene
from secondplate.process_window import STATES, process_window

HEADING = "Is the setting inside the window?"
ROWS = ("first", "second", "third", "fourth")
# The stud and the head of the map on the page.
STUD_MM, WEB_MM = 6.0, 1.1
CURRENTS_A = np.arange(300, 1101, 50)
TIMES_MS = np.arange(10, 101, 5)


@worked_out
def _settings():
    """Return for each state the settings, as text, that lie well inside it on the map."""
    current_a, time_ms = (grid.ravel() for grid in np.meshgrid(CURRENTS_A, TIMES_MS))
    window = process_window(stud_diameter_mm=STUD_MM, web_mm=WEB_MM, current_a=current_a, time_ms=time_ms)
    plain = ~window.doubtful
    return {
        state: tuple(
            f"{current} A, {time} ms"
            for current, time in zip(
                current_a[plain & (window.state == state)],
                time_ms[plain & (window.state == state)],
                strict=True,
            )
        )
        for state in STATES
    }


def _draw_window(draw):
    states = draw.shuffle("states", STATES)
    rows = {row: draw.pick(row, _settings()[state]) for row, state in zip(ROWS, states, strict=True)}
    return scene(draw) | rows


def _states(settings):
    """Return the state of each setting, as an id."""
    current_a, time_ms = np.array([current_and_time(text) for text in settings]).T
    window = process_window(stud_diameter_mm=STUD_MM, web_mm=WEB_MM, current_a=current_a, time_ms=time_ms)
    return [str(state).replace(" ", "_") for state in window.state]


WINDOW = Exercise(
    id="stud_welding.window",
    objective="set_up",
    title="Four settings on the map",
    prompt=(
        "Four people at {shop} weld a 6 mm stud, each with a setting of their own, on heads with "
        "a web of 1.1 mm. Find each setting on the map."
    ),
    parts=(
        Verdicts(
            id="settings",
            ask="What comes of each setting?",
            rows=tuple(option(row, f"{{{row}}}") for row in ROWS),
            verdicts=(
                option("cold", "cold: the faces hardly melt"),
                option("sound", "sound"),
                option("hot", "hot: the melt runs out flat"),
                option("burnt_through", "the head is burnt through"),
            ),
            points=2.0,
        ),
        Choice(
            id="cooler_way",
            ask="Two settings melt the head equally deep. Which one keeps the aluminium cooler?",
            options=(
                option("short", "More current for a shorter time."),
                wrong(
                    "long",
                    "Less current for a longer time.",
                    "While the arc burns, heat runs on into the head and the plates. "
                    "A longer arc needs more heat for the same melt.",
                ),
                wrong(
                    "same",
                    "Neither: the same melt is the same heat.",
                    "The melt is the same, but what ran away meanwhile is not.",
                ),
            ),
        ),
    ),
    draw=_draw_window,
    solve=lambda table: {
        "settings": VerdictsKey(right={row: _states(table[row]) for row in ROWS}),
        "cooler_way": ChoiceKey(right=same(table, "short")),
    },
    reasons=(
        "Follow the current across and the time up, and read the name of the field. "
        "Near a border nobody can tell: there only the test weld decides. "
        "Of two settings with the same melt the shorter one needs less heat, because less of it has time to "
        "run away into the plates."
    ),
    read_again=HEADING,
)

EXERCISES = (WINDOW,)
