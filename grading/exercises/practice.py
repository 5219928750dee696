"""Practice exercises of the page ``start_here``: one for each kind of part; they carry no marks."""

from grading.exercise import (
    Choice,
    ChoiceKey,
    Choices,
    ChoicesKey,
    Exercise,
    Number,
    NumberKey,
    Order,
    OrderKey,
    Range,
    RangeKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate import units


def _draw_number(draw):
    return scene(draw) | {"length_in": draw.decimal("length_in", 1.0, 9.0, 0.25, 2)}


def _solve_number(table):
    length_in = table["length_in"]
    return {
        "length": NumberKey(
            value=units.mm_from_inch(length_in),
            slips={
                "centimetres": units.mm_from_inch(length_in / 10),
                "divided": length_in / units.mm_from_inch(1.0),
            },
        )
    }


PRACTICE_NUMBER = Exercise(
    id="start_here.practice_number",
    objective="answering",
    title="Practice: a number with its unit",
    prompt=(
        "At {shop} a strip cut for a test measures {length_in:.2f} inches on an old tape. "
        "Work out its length in millimetres and type the number with its unit."
    ),
    parts=(
        Number(
            id="length",
            ask="How long is the strip in millimetres?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("centimetres", "That is ten times too short: 2.54 turns inches into centimetres."),
                slip(
                    "divided",
                    "It looks as if you divided by 25.4. Millimetres are small, so you need more of them.",
                ),
            ),
        ),
    ),
    draw=_draw_number,
    solve=_solve_number,
    reasons=(
        "One inch is 25.4 mm exactly. Multiply the inches by 25.4. "
        "A length typed with its own unit, for instance in inches, is read as well: the page converts it."
    ),
    read_again="How do I answer?",
    counts=False,
)


def _draw_range(draw):
    low = draw.whole("low_ft3_h", 14, 20)
    return scene(draw) | {"low_ft3_h": low, "high_ft3_h": low + draw.whole("swing_ft3_h", 3, 8)}


def _solve_range(table):
    low, high = table["low_ft3_h"], table["high_ft3_h"]
    return {
        "flow": RangeKey(
            low=units.l_min_from_ft3_h(low),
            high=units.l_min_from_ft3_h(high),
            slips={
                "as_printed": (low, high),
                "wrong_way": (units.ft3_h_from_l_min(low), units.ft3_h_from_l_min(high)),
            },
        )
    }


PRACTICE_RANGE = Exercise(
    id="start_here.practice_range",
    objective="answering",
    title="Practice: a low and a high value",
    prompt=(
        "A flow gauge at {shop} swings between {low_ft3_h:.0f} and {high_ft3_h:.0f} cubic feet per hour. "
        "One cubic foot per hour is 0.472 litres per minute."
    ),
    parts=(
        Range(
            id="flow",
            ask="Between which two values, in litres per minute, does the flow swing?",
            unit="L/min",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("as_printed", "Those are the numbers as the gauge prints them, in cubic feet per hour."),
                slip(
                    "wrong_way",
                    "It looks as if you divided by 0.472. "
                    "A cubic foot in an hour is less than a litre in a minute.",
                ),
            ),
        ),
    ),
    draw=_draw_range,
    solve=_solve_range,
    reasons=(
        "Multiply each end by 0.472. "
        "The low value goes into the first field and the high value into the second."
    ),
    read_again="How do I answer?",
    counts=False,
)


def _draw_choice(draw):
    return scene(draw) | {"whole": draw.whole("whole", 12, 48), "tenths": draw.whole("tenths", 1, 9)}


PRACTICE_CHOICE = Exercise(
    id="start_here.practice_choice",
    objective="answering",
    title="Practice: one choice",
    prompt="You type {whole:.0f},{tenths:.0f} ms with a comma, as many people do.",
    parts=(
        Choice(
            id="reading",
            ask="What does the page do with it?",
            options=(
                wrong(
                    "drops_comma",
                    "It drops the comma and saves a number ten times as large.",
                    "The page never drops a sign that you typed: it shows what it read.",
                ),
                option("decimal", "It reads the comma as a decimal point and says so."),
                wrong(
                    "refuses",
                    "It throws the answer away without a word.",
                    "Nothing is thrown away: what cannot be read is shown to you with a sentence.",
                ),
            ),
        ),
    ),
    draw=_draw_choice,
    solve=lambda table: {"reading": ChoiceKey(right=same(table, "decimal"))},
    reasons=(
        "A comma with one or two figures behind it can only be a decimal sign. "
        "A comma with three figures behind it could be either, so then the page asks again."
    ),
    read_again="How do I answer?",
    counts=False,
)

PRACTICE_CHOICES = Exercise(
    id="start_here.practice_choices",
    objective="answering",
    title="Practice: several choices",
    prompt=(
        "Somebody at {shop} answers a question that asks for a length in millimetres. "
        "Tick all that the page can read."
    ),
    parts=(
        Choices(
            id="readable",
            ask="Which of these can the page read as a length?",
            options=(
                wrong("in_words", "six", "A number in words is not read. Type figures."),
                option("in_mm", "6.2 mm"),
                wrong(
                    "thousands",
                    "1,200 mm",
                    "Nobody can tell whether 1,200 is a bit more than one or more than a thousand.",
                ),
                option("in_cm", "0.62 cm"),
                wrong("other_quantity", "6.2 V", "A voltage is not a length: the page asks again."),
                option("in_inch", "0.244 in"),
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {"readable": ChoicesKey(right=same(table, ("in_mm", "in_cm", "in_inch")))},
    reasons=(
        "Figures with any unit of length are read and converted. "
        "Words, a unit of another kind, and a comma that can mean two things are not."
    ),
    read_again="How do I answer?",
    counts=False,
)

PRACTICE_ORDER = Exercise(
    id="start_here.practice_order",
    objective="answering",
    title="Practice: put in order",
    prompt="You sit down at {shop} to do one exercise and to hand in the page.",
    parts=(
        Order(
            id="steps",
            ask="Put the steps in order, first step at the top.",
            options=(
                option("read_back", "Read what the page says it saved."),
                option("hand_in", "Press the hand-in button and give the file to your instructor."),
                option("sign_in", "Sign in with your name or number."),
                option("answer", "Type the answer with its unit and press the button."),
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {"steps": OrderKey(right=same(table, ("sign_in", "answer", "read_back", "hand_in")))},
    reasons=(
        "Sign in first, because your numbers depend on your name. "
        "Then answer, read back what was saved, and hand in at the end."
    ),
    read_again="How do I answer?",
    counts=False,
)


def _draw_verdicts(draw):
    low, high = draw.whole("low_a", 520, 560, 5), draw.whole("high_a", 620, 660, 5)
    return scene(draw) | {
        "low_a": low,
        "high_a": high,
        "first_a": draw.pick("first_a", (low - 60, low + 30, high + 60)),
        "second_a": draw.pick("second_a", (low - 45, high - 20, high + 45)),
    }


def _inside(table, name):
    value = table[name]
    return chosen([value < table["low_a"], value > table["high_a"]], ["below", "above"], otherwise="inside")


PRACTICE_VERDICTS = Exercise(
    id="start_here.practice_verdicts",
    objective="answering",
    title="Practice: a table of verdicts",
    prompt="A chart on the wall allows {low_a:.0f} A to {high_a:.0f} A. Two machines are set.",
    parts=(
        Verdicts(
            id="machines",
            ask="Give each machine its verdict.",
            rows=(
                option("first", "The first machine is set to {first_a:.0f} A."),
                option("second", "The second machine is set to {second_a:.0f} A."),
            ),
            verdicts=(
                option("below", "below the chart"),
                option("inside", "inside the chart"),
                option("above", "above the chart"),
            ),
        ),
    ),
    draw=_draw_verdicts,
    solve=lambda table: {
        "machines": VerdictsKey(
            right={"first": _inside(table, "first_a"), "second": _inside(table, "second_a")}
        )
    },
    reasons="Compare each setting with both ends. The ends themselves are inside.",
    read_again="How do I answer?",
    counts=False,
)

EXERCISES = (
    PRACTICE_NUMBER,
    PRACTICE_RANGE,
    PRACTICE_CHOICE,
    PRACTICE_CHOICES,
    PRACTICE_ORDER,
    PRACTICE_VERDICTS,
)
