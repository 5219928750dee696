"""Exercises on the metal of the weld: equivalents, place on the diagram, carbon."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.weldability_carbon import carbon_equivalent_iiw_percent
from secondplate.weldability_composition import Composition, composition
from secondplate.weldability_dilution import dilution_path
from secondplate.weldability_equivalents import schaeffler_equivalents

HEADING = "Is the weld hard?"
STUDS = {"304": "304-type", "309": "309-type"}
RIVET = composition("36MnB4")
DILUTIONS = (0.2, 0.3, 0.4, 0.5, 0.6)
REGION_IDS = {
    "martensite": "martensite",
    "austenite and martensite": "some_martensite",
    "austenite": "no_martensite",
    "austenite and ferrite": "no_martensite",
    "austenite, martensite and ferrite": "some_martensite",
}
TWO_FIGURES = "Contents are given to two figures, so 2 % either way is right."


def _draw_predict(draw):
    return scene(draw)


PREDICT_METAL = Exercise(
    id="stud_welding.predict_metal",
    objective="metal",
    title="Predict: tough stud, hard rivet",
    prompt=(
        "A tough stainless stud is welded to a hard boron-steel rivet at {shop}. "
        "About equal parts of both melt together. Decide before you look at the diagram."
    ),
    parts=(
        Choice(
            id="metal",
            ask="What is the metal of the weld like?",
            options=(
                wrong(
                    "tough",
                    "Tough, like the stud: stainless filler is used on difficult steel.",
                    "Filler works where little of the hard steel melts in. Here half of the weld is rivet.",
                ),
                option("hard", "Hard and brittle."),
                wrong(
                    "between",
                    "Half-way between the two, so hard but fairly tough.",
                    "Steels do not average. The mixture has too little nickel to stay tough, and carbon "
                    "enough to be hard.",
                ),
            ),
        ),
    ),
    draw=_draw_predict,
    solve=lambda table: {"metal": ChoiceKey(right=same(table, "hard"))},
    reasons=(
        "The mixture falls out of the field of tough stainless steel into the field of martensite. "
        "The diagram further down shows the way."
    ),
    read_again=HEADING,
    counts=False,
)


@cache
def _mixes():
    """Return stud and dilution of every mixture that lies clear of the borders of the diagram."""
    found = []
    for name, steel in STUDS.items():
        path = dilution_path(composition(steel), RIVET, dilution=DILUTIONS)
        found += [(name, share) for share, near in zip(DILUTIONS, path.near_border, strict=True) if not near]
    return tuple(found)


def _draw_equivalents(draw):
    stud, dilution = draw.pick("mix", _mixes())
    return scene(draw) | {
        "chromium": draw.decimal("chromium", 17.4, 18.8, 0.2, 1),
        "nickel": draw.decimal("nickel", 8.0, 9.4, 0.2, 1),
        "manganese": draw.decimal("manganese", 1.0, 1.8, 0.2, 1),
        "silicon": draw.decimal("silicon", 0.3, 0.6, 0.1, 1),
        "carbon": draw.decimal("carbon", 0.04, 0.07, 0.01, 2),
        "stud": stud,
        "dilution": dilution,
    }


@cache
def _structure(stud, dilution):
    """Return what is in the metal of the weld, as an id."""
    path = dilution_path(composition(STUDS[stud]), RIVET, dilution=dilution)
    return REGION_IDS[str(path.region[0])]


def _solve_equivalents(table):
    chromium, nickel, carbon = table["chromium"], table["nickel"], table["carbon"]
    silicon, manganese = table["silicon"], table["manganese"]
    place = schaeffler_equivalents(
        Composition(
            carbon_percent=carbon,
            silicon_percent=silicon,
            manganese_percent=manganese,
            chromium_percent=chromium,
            nickel_percent=nickel,
        )
    )
    return {
        "chromium_equivalent": NumberKey(
            value=place.chromium_equivalent_percent,
            slips={"only_chromium": chromium, "everything": chromium + nickel},
        ),
        "nickel_equivalent": NumberKey(
            value=place.nickel_equivalent_percent,
            slips={
                "carbon_once": nickel + carbon + 0.5 * manganese,
                "manganese_whole": nickel + 30 * carbon + manganese,
            },
        ),
        "structure": ChoiceKey(
            right=[
                _structure(str(stud), float(share))
                for stud, share in zip(table["stud"], table["dilution"], strict=True)
            ]
        ),
    }


EQUIVALENTS = Exercise(
    id="stud_welding.equivalents",
    objective="metal",
    title="Where on the diagram?",
    prompt=(
        "A stud's certificate at {shop} reads {chromium} % chromium, {nickel} % nickel, {manganese} % "
        "manganese, {silicon} % silicon, {carbon} % carbon. "
        "Chromium equivalent = Cr + 1.5 Si. Nickel equivalent = Ni + 30 C + 0.5 Mn. "
        "Another stud, of {stud}-type steel, melts together with a 36MnB4 rivet so that "
        "{share} % of the weld is rivet."
    ),
    shown=lambda scenario: {"share": f"{100 * scenario['dilution']:.0f}"},
    parts=(
        Number(
            id="chromium_equivalent",
            ask="Which chromium equivalent has the first stud?",
            unit="%",
            relative_tolerance=0.01,
            tolerance_reason="Contents are given to a tenth of a percent, so 1 % either way is right.",
            slips=(
                slip("only_chromium", "Silicon counts too, one and a half times."),
                slip("everything", "Nickel belongs to the other axis."),
            ),
        ),
        Number(
            id="nickel_equivalent",
            ask="Which nickel equivalent has the first stud?",
            unit="%",
            relative_tolerance=0.02,
            tolerance_reason="Carbon is given to two figures and counts thirty times.",
            slips=(
                slip("carbon_once", "Carbon counts thirty times here: that is how strong it is."),
                slip("manganese_whole", "Manganese counts half."),
            ),
        ),
        Choice(
            id="structure",
            ask="Read the diagram of the page: what is the weld of the second stud made of?",
            options=(
                option("no_martensite", "No martensite: it stays tough."),
                option("some_martensite", "Austenite with martensite in it."),
                option("martensite", "All martensite."),
            ),
        ),
    ),
    draw=_draw_equivalents,
    solve=_solve_equivalents,
    reasons=(
        "Put the contents into the two sums and mark the place. "
        "For a weld, go from the stud toward the rivet by the share of the rivet. "
        "The richer 309-type stud keeps out of the hard field longer than the 304-type."
    ),
    read_again=HEADING,
)


def _draw_carbon(draw):
    return scene(draw) | {
        "carbon": draw.decimal("carbon", 0.33, 0.39, 0.01, 2),
        "manganese": draw.decimal("manganese", 0.7, 1.3, 0.1, 1),
        "chromium": draw.decimal("chromium", 0.1, 0.3, 0.1, 1),
    }


def _solve_carbon(table):
    carbon, manganese, chromium = table["carbon"], table["manganese"], table["chromium"]
    equivalent = carbon_equivalent_iiw_percent(
        Composition(carbon_percent=carbon, manganese_percent=manganese, chromium_percent=chromium)
    )
    return {
        "equivalent": NumberKey(
            value=equivalent,
            slips={
                "plain_sum": carbon + manganese + chromium,
                "only_carbon": carbon,
            },
        ),
        "table": ChoiceKey(right=np.where(carbon > 0.35, "not_suitable", "on_the_line").tolist()),
    }


CARBON = Exercise(
    id="stud_welding.carbon_equivalent",
    objective="metal",
    title="How much carbon is that, all told?",
    prompt=(
        "A rivet taken out at {shop} is analysed: {carbon} % carbon, {manganese} % manganese, "
        "{chromium} % chromium. Carbon equivalent = C + Mn ÷ 6 + Cr ÷ 5. "
        "One published table calls an austenitic stud good enough on base steel with up to 0.35 % carbon and "
        "not suitable above that."
    ),
    parts=(
        Number(
            id="equivalent",
            ask="Which carbon equivalent does it have?",
            unit="%",
            relative_tolerance=0.02,
            tolerance_reason=TWO_FIGURES,
            slips=(
                slip("plain_sum", "Manganese and chromium count for a part only: a sixth and a fifth."),
                slip("only_carbon", "That is the carbon alone. The others harden too."),
            ),
        ),
        Choice(
            id="table",
            ask="What does that table say of this rivet?",
            options=(
                option("on_the_line", "At or under its line: good enough, and close to not suitable."),
                option("not_suitable", "Past its line: not suitable, so only a test pull can speak for it."),
                wrong(
                    "proof",
                    "That no weld on it can hold even one pull.",
                    "The table was made for a quicker process. It is a warning, not a proof.",
                ),
            ),
        ),
    ),
    draw=_draw_carbon,
    solve=_solve_carbon,
    reasons=(
        "Add the carbon, a sixth of the manganese and a fifth of the chromium. "
        "The table itself goes by the carbon alone, and rivets of this steel lie on its line or past it. "
        "That is why one stud is pulled before the row is welded."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_METAL, EQUIVALENTS, CARBON)
