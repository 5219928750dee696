"""Exercise on how far the heat of a weld reaches: what melts, what hardens, what stays cool enough."""

from grading.catalogues import worked_out
from grading.exercise import Choice, ChoiceKey, Exercise, Verdicts, VerdictsKey
from grading.exercises.building_blocks import current_and_time, option, same, wrong
from grading.exercises.scenes import scene

HEADING = "Where does the heat go?"
# Few settings, so that a class costs no more runs of the heat model than these.
SETTINGS = ("600 A, 30 ms", "720 A, 20 ms", "800 A, 22 ms", "700 A, 45 ms", "500 A, 80 ms")
PLACES = {
    "faces": ("fusion face", "the two faces that the arc burns on"),
    "web": ("web over the bore", "the web of the rivet head, over the bore"),
    "shank": ("rivet shank", "the shank of the rivet, under its head"),
    "top_plate": ("top plate at the head", "the top plate, where it touches the head"),
    "second_plate": ("second plate under the rivet", "the second plate, under the rivet"),
}
# Steel melts near 1470 C and turns to austenite, which then hardens, near 850 C (common practice, no source).
# A cured structural adhesive kept its strength at 120 C for a month and lost it at 140 C
# (doi 10.18280/ijht.400307, abstract read).
MELTS_C, HARDENS_C, GLUE_C = 1470.0, 850.0, 120.0


@worked_out
def peaks_c(setting):
    """Return the highest temperature of each place for one setting of a 6 mm stud, by the heat model."""
    # The solver is loaded only when somebody asks: marking other pages does without it.
    from secondplate.heat.joint import default_joint
    from secondplate.heat.weld import weld_heat
    from secondplate.heat.weld_settings import WeldHeat

    current_a, time_ms = current_and_time(setting)
    weld = weld_heat(default_joint(stud_diameter_mm=6), WeldHeat(current_a=current_a, time_ms=time_ms))
    return {place: weld.peak_at_c(name) for place, (name, _) in PLACES.items()}


def _verdict(peak_c):
    """Return what a temperature does, as an id."""
    limits = (("melts", MELTS_C), ("hardens", HARDENS_C), ("too_hot", GLUE_C))
    return next((name for name, limit in limits if peak_c >= limit), "cool")


HEAT_REACH = Exercise(
    id="stud_welding.heat_reach",
    objective="energy",
    title="What does the heat do there?",
    prompt=(
        "A 6 mm stud is welded at {shop} with {setting}. "
        "The model gives the highest temperature that each place reaches: "
        "{temperatures}. "
        "The model lets no steel boil, so the hottest figures are too high. "
        "Rivet steel melts at about 1470 °C and hardens if it was above 850 °C. "
        "Tests on a structural adhesive found it sound up to 120 °C."
    ),
    shown=lambda scenario: {
        "temperatures": "; ".join(
            f"{words}: {peaks_c(scenario['setting'])[place]:.0f} °C" for place, (_, words) in PLACES.items()
        )
    },
    parts=(
        Verdicts(
            id="places",
            ask="What does the heat do at each place?",
            rows=tuple(option(place, words) for place, (_, words) in PLACES.items()),
            verdicts=(
                option("melts", "melts it"),
                option("hardens", "hardens the steel when it cools"),
                option("too_hot", "too hot for adhesive near it, below hardening"),
                option("cool", "stays below the adhesive's limit"),
            ),
            points=2.0,
        ),
        Choice(
            id="next_rivet",
            ask="The next rivet is 20 mm away. What do you do to keep the bond between them sound?",
            options=(
                wrong(
                    "at_once",
                    "Weld it at once, before the heat arrives.",
                    "The heat of both then arrives together and adds up.",
                ),
                option(
                    "elsewhere", "Weld one farther off first and come back when this place is cool to touch."
                ),
                wrong(
                    "water",
                    "Cool the weld with a wet cloth and go on.",
                    "Water brings hydrogen to a hard weld, and current and water do not go together.",
                ),
            ),
        ),
    ),
    draw=lambda draw: scene(draw) | {"setting": draw.pick("setting", SETTINGS)},
    solve=lambda table: {
        "places": VerdictsKey(
            right={
                place: [_verdict(peaks_c(str(setting))[place]) for setting in table["setting"]]
                for place in PLACES
            }
        ),
        "next_rivet": ChoiceKey(right=same(table, "elsewhere")),
    },
    reasons=(
        "Take each temperature and ask from the top: does steel melt, does it harden, is it too hot for "
        "adhesive? "
        "The heat reaches the plates a second after the arc, and a second weld near by adds to it. "
        "Spread the welds, and let a place cool before the next."
    ),
    read_again=HEADING,
)

EXERCISES = (HEAT_REACH,)
