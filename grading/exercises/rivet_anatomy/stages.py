"""Exercise on the four stages of setting a rivet, and on what the curve of its force can tell."""

from functools import cache

from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Figure,
    Order,
    OrderKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import option, same, wrong
from grading.exercises.scenes import scene
from secondplate.rivet_setting import SETTING_STAGES, setting_stage

HEADING = "What happens while it is set?"
STAGES = tuple(stage.name for stage in SETTING_STAGES)
PEAK_STAGE = max(SETTING_STAGES, key=lambda stage: stage.force_at_end.best).name
# Listed so that no stage stands in its right place.
HAPPENS = {
    "flare": "The tail spreads inside the second plate, and this plate flows into the die.",
    "clamp": "The plates are pressed together on the die and bend a little.",
    "seat": "The head is pressed down on the top plate.",
    "pierce": "The tail cuts the slug out of the top plate.",
}
STOPPED = ("first", "second", "third", "fourth")
CLEAR_PERCENT = 5  # a stop stays so far from the border of a stage that nobody need argue about it


def _stop_range(stage):
    """Return the lowest and the highest percentage of the stroke that lies well inside a stage."""
    low, high = (round(100 * share) for share in (stage.stroke_from, stage.stroke_to))
    return low + CLEAR_PERCENT, high - CLEAR_PERCENT


@cache
def _stage_at(percent):
    """Return the name of the stage at a whole percentage of the stroke."""
    return setting_stage(percent / 100).name


def _draw_stages(draw):
    stages = draw.shuffle("stages", STAGES)
    stops = {
        row: draw.whole(row, *_stop_range(SETTING_STAGES[STAGES.index(stage)]))
        for row, stage in zip(STOPPED, stages, strict=True)
    }
    return scene(draw) | stops


def _stage_ends(scenario):
    """Return where the first three stages of the curve end, in words."""
    return {
        f"end_{letter}": f"{100 * stage.stroke_to:.0f} %"
        for letter, stage in zip("abc", SETTING_STAGES, strict=False)
    }


STAGES_IN_ORDER = Exercise(
    id="rivet_anatomy.stages",
    objective="setting",
    title="Four stages of one stroke",
    prompt=(
        "A rivet setter at {shop} draws the force over the stroke for every rivet. "
        "The usual curve has four stages, A to D. "
        "A ends at {end_a} of the stroke, B at {end_b}, C at {end_c}. "
        "Four rivets on scrap were stopped on the way and are cut open now."
    ),
    shown=_stage_ends,
    figure=lambda scenario: Figure(name="force_stroke", arguments={"stage": ""}),
    parts=(
        Order(
            id="order",
            ask="Put what happens in order, first at the top.",
            options=tuple(option(stage, happens) for stage, happens in HAPPENS.items()),
            points=2.0,
        ),
        Verdicts(
            id="stopped",
            ask="What does each of the four cuts show?",
            rows=tuple(option(row, f"stopped at {{{row}}} % of the stroke") for row in STOPPED),
            verdicts=(
                option("seat", "tail spread, head on the top plate or almost"),
                option("clamp", "plates bent a little, nothing cut"),
                option("flare", "slug cut, tail partly spread, head well clear"),
                option("pierce", "top plate cut in part or whole, tail not yet spread"),
            ),
            points=2.0,
        ),
        Choice(
            id="peak",
            ask="In which stage is the force at its highest?",
            options=(
                wrong(
                    "pierce",
                    "While the slug is cut.",
                    "The top plate is soft. Look where the curve climbs most steeply.",
                ),
                wrong(
                    "flare",
                    "While the tail spreads.",
                    "The force grows there, but it has not yet come to its end. Follow the curve on.",
                ),
                option("seat", "While the head is pressed down."),
                wrong(
                    "clamp",
                    "While the plates are clamped.",
                    "There the curve only begins. Follow it to its end.",
                ),
            ),
        ),
        Choice(
            id="in_band",
            ask="The curve of one rivet stays inside the band of the good ones. What does that tell?",
            options=(
                wrong(
                    "interlock",
                    "How large its interlock is.",
                    "The curve is compared, not the joint. What lies inside only a section shows.",
                ),
                option("like_others", "It was set much like the good ones, no more."),
                wrong(
                    "strength",
                    "How much it will hold.",
                    "The way from a curve to the strength of a joint is not exact enough for that.",
                ),
            ),
        ),
    ),
    draw=_draw_stages,
    solve=lambda table: {
        "order": OrderKey(right=same(table, STAGES)),
        "stopped": VerdictsKey(
            right={row: [_stage_at(percent) for percent in table[row].tolist()] for row in STOPPED}
        ),
        "peak": ChoiceKey(right=same(table, PEAK_STAGE)),
        "in_band": ChoiceKey(right=same(table, "like_others")),
    },
    reasons=(
        "Clamp, pierce, flare, seat: first the plates are held, then the slug is cut, then the tail spreads, "
        "last the head is pressed down. "
        "Each stop lies in one of the four, so look between which ends it falls. "
        "The force climbs steeply at the end, when metal is squeezed with nowhere left to go. "
        "A curve like the others says that nothing went differently, no more. "
        "Where the stages end differs from joint to joint."
    ),
    read_again=HEADING,
)

EXERCISES = (STAGES_IN_ORDER,)
