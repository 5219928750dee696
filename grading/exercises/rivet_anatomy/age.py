"""Exercises on what adhesive and salt change in a riveted joint."""

from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Number,
    NumberKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import THREE_FIGURES, looked_up_numbers, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.joint_facts import joint_fact

HEADING = "What do glue, rust and years change?"
TENTH_OF_A_PERCENT = "The changes are printed to a tenth of a percent, so 1 % either way is right."


def direction(fact_id):
    """Return which way a published fact points: more, less or same."""
    fact = joint_fact(fact_id)
    if fact.number is not None:
        return "more" if fact.number > 0 else "less"
    words = fact.value.split()
    return "same" if words[0] == "about" else "more" if "higher" in words else "less"


PREDICT_GLUE = Exercise(
    id="rivet_anatomy.predict_glue",
    objective="age",
    title="Predict: glue and rivet together",
    prompt=(
        "Two plates of {vehicle} are riveted and bonded. A test pulls the joint until it gives. "
        "Decide before you read on."
    ),
    parts=(
        Choice(
            id="first",
            ask="What gives first?",
            options=(
                option("adhesive", "The adhesive; the rivet still carries load afterwards."),
                wrong(
                    "rivet",
                    "The rivet; the adhesive still carries load afterwards.",
                    "Adhesive is stiff and takes the load first. A rivet needs some way before it bears.",
                ),
                wrong(
                    "both",
                    "Both at the same moment.",
                    "They do not stretch alike, so one of them bears first.",
                ),
            ),
        ),
    ),
    draw=scene,
    # The fact reads "adhesive first, then the rivet": its first word is what gives.
    solve=lambda table: {
        "first": ChoiceKey(right=same(table, joint_fact("adhesive_first").value.split()[0]))
    },
    reasons=(
        "In published tests of aluminium on steel the adhesive gave first, and the rivet carried on. "
        "Up to then the force belongs mostly to the adhesive."
    ),
    read_again=HEADING,
    counts=False,
)

# Each row asks which way a published fact points.
GLUE_ROWS = {
    "adhesive_interlock": "Interlock, where the layer of adhesive is thicker",
    "bonded_static": "Static strength of rivet and adhesive, against the adhesive alone (aluminium)",
    "hybrid_energy_gain_over_bonded": (
        "Energy taken up by rivet and adhesive, against the adhesive alone (aluminium on steel)"
    ),
}


def _draw_glue(draw):
    return scene(draw) | {"both_n": draw.whole("both_n", 7000, 12000, 50)}


def _solve_glue(table):
    gain = joint_fact("hybrid_peak_gain").number / 100
    both_n = table["both_n"]
    return {
        "facts": VerdictsKey(right={name: same(table, direction(name)) for name in GLUE_ROWS}),
        "rivet_alone": NumberKey(
            value=both_n / (1 + gain), slips={"of_it": both_n / gain, "wrong_way": both_n * (1 + gain)}
        ),
        "tells": ChoiceKey(right=same(table, "nothing")),
    }


GLUE = Exercise(
    id="rivet_anatomy.glue",
    objective="age",
    title="What does the adhesive add, and what does it hide?",
    prompt=(
        "A joint of {vehicle}, riveted and bonded, reaches {both_n} N in a test. "
        "In one published study such joints had a peak load {gain} % larger than with the rivet alone. "
        "That was aluminium on steel, with rivets set in another way than yours."
    ),
    shown=lambda scenario: {"gain": joint_fact("hybrid_peak_gain").value},
    parts=(
        Verdicts(
            id="facts",
            ask="What was found in published tests?",
            points=1.5,
            rows=tuple(option(name, words) for name, words in GLUE_ROWS.items()),
            verdicts=(
                option("less", "less"),
                option("same", "about the same"),
                option("more", "more"),
            ),
        ),
        Number(
            id="rivet_alone",
            ask="If your joint behaved like those of the study, what would the rivet alone reach?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "of_it",
                    "Larger by that much is not the same as that much of it: add the rivet's own load.",
                ),
                slip("wrong_way", "The larger load is the one that was measured. Go back to the smaller."),
            ),
        ),
        Choice(
            id="tells",
            ask="A first pull on a bonded joint reads high. What does that tell you of the rivet?",
            options=(
                wrong(
                    "strong",
                    "That it is held well: plan for this force.",
                    "The adhesive may have carried most of it.",
                ),
                wrong(
                    "part",
                    "Its share by the study: divide and you have it.",
                    "The study had other plates and rivets. How large the share is here it cannot say.",
                ),
                option("nothing", "Nothing until the adhesive is released."),
            ),
        ),
    ),
    draw=_draw_glue,
    solve=_solve_glue,
    reasons=(
        "The joint with both is the rivet's load and that many per cent on top. "
        "A thicker layer of adhesive leaves less interlock. "
        "In a static test a bonded and riveted joint is about as strong as its adhesive. "
        "So a pull is read as the rivet's force only once the adhesive has been released as the "
        "procedure says."
    ),
    read_again=HEADING,
)

# Each kind of joint, and the kind whose change is taken for it by mistake.
SALT_KINDS = {
    "riveted": ("salt_spray_riveted", "salt_spray_bonded"),
    "bonded": ("salt_spray_bonded", "salt_spray_riveted"),
    "riveted and bonded": ("salt_spray_hybrid", "salt_spray_bonded"),
}


def _draw_salt(draw):
    return scene(draw) | {
        "kind": draw.pick("kind", tuple(SALT_KINDS)),
        "new_n": draw.whole("new_n", 3000, 9000, 100),
    }


def _change(kinds, place):
    """Return the change of the peak load of each kind, as a share."""
    return looked_up_numbers(kinds, lambda kind: joint_fact(SALT_KINDS[kind][place]).number / 100)


def _solve_salt(table):
    new_n, change = table["new_n"], _change(table["kind"], 0)
    return {
        "left": NumberKey(
            value=new_n * (1 + change),
            slips={
                "gained": new_n * (1 - change),
                "only_loss": -new_n * change,
                "other_kind": new_n * (1 + _change(table["kind"], 1)),
            },
        ),
        "rises": ChoiceKey(right=same(table, "friction")),
        "plan": ChoiceKey(right=same(table, "open")),
    }


SALT = Exercise(
    id="rivet_anatomy.salt_spray",
    objective="age",
    title="After weeks of salt",
    prompt=(
        "In one study the peak load changed after 25 days of salt spray: "
        "riveted {riveted} %, bonded {bonded} %, riveted and bonded {hybrid} %. "
        "A new joint at {shop}, {kind}, reaches {new_n} N. "
        "The study also saw riveted joints become stronger at first, until about day {rise}."
    ),
    shown=lambda scenario: {
        "riveted": joint_fact("salt_spray_riveted").value,
        "bonded": joint_fact("salt_spray_bonded").value,
        "hybrid": joint_fact("salt_spray_hybrid").value,
        "rise": joint_fact("salt_spray_first_rise").value,
    },
    parts=(
        Number(
            id="left",
            ask="If it behaved likewise, what would it reach after the 25 days?",
            unit="N",
            relative_tolerance=0.01,
            tolerance_reason=TENTH_OF_A_PERCENT,
            slips=(
                slip("gained", "The change is a loss: it is taken off."),
                slip("only_loss", "That is what is lost. What is left was asked for."),
                slip("other_kind", "That is the change of another kind of joint."),
            ),
        ),
        Choice(
            id="rises",
            ask="Why does a riveted joint become stronger at first?",
            options=(
                wrong(
                    "harder",
                    "Salt makes the rivet harder.",
                    "Salt eats metal. It does not change the steel's hardness.",
                ),
                option("friction", "Corrosion products fill the gap and raise the friction."),
                wrong(
                    "welded",
                    "Rust welds the two plates together.",
                    "Nothing melts. The products of corrosion wedge themselves in.",
                ),
            ),
        ),
        Choice(
            id="plan",
            ask="The band for a clean joint is known. What do you plan for on a corroded one?",
            options=(
                wrong(
                    "less",
                    "Less than the band, for salt weakens.",
                    "It may weaken the plates and still hold the shank harder. Friction can have risen.",
                ),
                wrong(
                    "band",
                    "The band as it stands.",
                    "It was worked out with clean metal. Corrosion can raise friction above what was taken.",
                ),
                option("open", "Its high end may be passed: pull one, watch, and look hard at the plates."),
            ),
        ),
    ),
    draw=_draw_salt,
    solve=_solve_salt,
    reasons=(
        "Take the loss of the kind of joint in hand off its new load. "
        "Early corrosion wedges the joint, later it eats the plates. "
        "So an old joint can hold the rivet harder and still have a plate that is not worth keeping. "
        "How salt spray compares with years on the road nobody here can say."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_GLUE, GLUE, SALT)
