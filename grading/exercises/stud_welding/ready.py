"""Exercise on the order of work: ready or not, and what comes before what."""

from grading.exercise import Exercise, Order, OrderKey, Verdicts, VerdictsKey
from grading.exercises.building_blocks import option, same
from grading.exercises.scenes import scene
from secondplate import inspection

HEADING = "What do you check before the first weld?"

# For each thing found at the gun: how it reads when it is ready, and when it has to be put right first.
FOUND = {
    "head": ("The rivet head is ground bright all over.", "Half of the rivet head still has its coating."),
    "clamps": (
        "Two clamps sit on bare metal, one on each side of the rivet.",
        "One clamp sits on a painted bracket at the far end of the panel.",
    ),
    "flow": (
        "The flow was read at the gun while the gas was flowing.",
        "The flow was read at the cylinder with the gun's valve shut.",
    ),
    "tip": (
        "The stud is clean and dry, its tip whole.",
        "The stud lay in an oily drawer; its tip is flattened.",
    ),
}


def _draw_ready(draw):
    thread_mm = draw.pick("thread_mm", (4, 5, 6))
    ready = {name: draw.pick(name, (True, False)) for name in FOUND}
    return (
        scene(draw)
        | {"thread_mm": thread_mm, "holder_mm": draw.pick("holder_mm", (thread_mm, 4, 5, 6))}
        | ready
    )


def _found_words(scenario):
    return {f"{name}_words": texts[0 if scenario[name] else 1] for name, texts in FOUND.items()}


# The checks of the library's list whose place in the order has a reason that a learner can work out.
ORDERED_CHECKS = ("isolate", "protect", "head_ground", "square", "test_stud", "pull", "adjust", "row")
SHOWN_FIRST = ("pull", "head_ground", "row", "isolate", "adjust", "square", "protect", "test_stud")
CHECK_BY_ID = {check.id: check for check in inspection.PRE_WELD_CHECKS}


def _solve_ready(table):
    verdicts = {name: ["ready" if ready else "not_ready" for ready in table[name]] for name in FOUND}
    fits = table["holder_mm"] == table["thread_mm"]
    order = tuple(check.id for check in inspection.PRE_WELD_CHECKS if check.id in ORDERED_CHECKS)
    return {
        "found": VerdictsKey(right=verdicts | {"holder": ["ready" if fit else "not_ready" for fit in fits]}),
        "order": OrderKey(right=same(table, order)),
    }


READY = Exercise(
    id="stud_welding.order_of_work",
    objective="sequence",
    title="Ready for the first weld?",
    prompt=(
        "You are about to weld M{thread_mm:.0f} pull studs on {vehicle} at {shop}. "
        "You look at everything once more."
    ),
    shown=_found_words,
    parts=(
        Verdicts(
            id="found",
            ask="What do you say to each thing you find?",
            points=2.0,
            rows=(
                *(option(name, "{" + name + "_words}") for name in FOUND),
                option("holder", "The holder in the gun is marked M{holder_mm:.0f}."),
            ),
            verdicts=(
                option("not_ready", "put it right first"),
                option("ready", "ready"),
            ),
        ),
        Order(
            id="order",
            ask="Put the work in order, first step at the top.",
            points=2.0,
            options=tuple(option(name, CHECK_BY_ID[name].text) for name in SHOWN_FIRST),
        ),
    ),
    draw=_draw_ready,
    solve=_solve_ready,
    reasons=(
        "The car is made safe before anything is connected to it, and people before anything sparks. "
        "The head is ground once both are protected. "
        "Then the gun is placed, one stud welded and pulled, one setting changed if the break says so, and "
        "only then the row. "
        "A coated head, a far or painted clamp, a flow read with the valve shut, a dirty stud or a holder "
        "of another size each spoil the weld before it starts."
    ),
    read_again=HEADING,
)

EXERCISES = (READY,)
