"""Exercise on one whole job, from weld to record, with what the same learner got on the pages before."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import (
    chosen,
    current_and_time,
    option,
    slip,
    wrong,
)
from grading.exercises.removal.force import TOP_WORDS
from grading.exercises.rivet_anatomy.drawing_out import CONSTANTS, one_pull
from grading.exercises.rivet_anatomy.holding import RIVET, newtons, spoken, strength_mpa
from grading.exercises.second_plate import one_job
from secondplate import studs
from secondplate.arc import arc_energy_j
from secondplate.fasteners import blind_rivet, blind_rivet_length_mm, grip_mm, grip_range_mm
from secondplate.plate import MEASURE_AGAIN, PLATE_VERDICTS
from secondplate.softening import typical_heat_limits
from secondplate.softening_limits import BOND_LINE
from secondplate.tables import values

HEADING = "Does the whole job hold on one plate?"
VERDICTS = dict(
    zip((*PLATE_VERDICTS, MEASURE_AGAIN), ("leave", "reform", "backing", "replace", "again"), strict=True)
)
LENGTHS_MM = (8, 10, 12)
SOFTENS_C = values("softening")["softening begins"]


def stack_mm(table):
    """Return the grip of a job: both plates and the adhesive between them."""
    return grip_mm(table["top_mm"], table["second_mm"], adhesive_mm=table["adhesive_mm"])


@cache
def _pull_words(**rivet):
    """Return the figures of the pull of one rivet as a learner reads them."""
    found = one_pull(rivet)
    return {
        "top_words": TOP_WORDS[rivet["top"]],
        "strength": f"{strength_mpa([rivet['second']])[0]:.0f}",
        "shank_mm": f"{RIVET.shank_diameter_mm}",
        "crush_high": f"{CONSTANTS['crush factor high']}",
        "friction": newtons(found.friction_n.high),
        "opening": spoken(found.second_peak_n),
        "reserve": f"{100 * (one_job.RESERVE - 1):.0f}",
    }


@cache
def _weld_words(setting):
    """Return the figures of one weld as a learner reads them."""
    weld, (current_a, time_ms) = one_job.weld_settings(setting), current_and_time(setting)
    limit = typical_heat_limits()[BOND_LINE]
    return {
        "current": f"{current_a:.0f}",
        "time": f"{time_ms:.0f}",
        "voltage": f"{weld.voltage_v:.0f}",
        "share": f"{100 * weld.rivet_heat_share:g}",
        "bond": one_job.peak_c(setting, one_job.BOND_PLACE),
        "under": one_job.peak_c(setting, one_job.PLATE_PLACE),
        "warn": f"{limit.warn_above:g}",
        "stop": f"{limit.stop_above:g}",
        "softens": f"{SOFTENS_C:g}",
    }


@cache
def _list_words(class_name, standard):
    """Return what lists say of the stud and of the new rivet."""
    area_mm2 = studs.stress_area_mm2(one_job.STUD_MM, pitch_mm=studs.coarse_pitch_mm(one_job.STUD_MM))
    ranges = {length: grip_range_mm(one_job.NEW_MM, rivet_length_mm=length) for length in LENGTHS_MM}
    return {
        "area": f"{area_mm2:.1f}",
        "proof": f"{studs.property_class(class_name).proof_stress_mpa:.0f}",
        "listed": f"{blind_rivet(standard, one_job.NEW_MM).fastener_shear_n:.0f}",
        "grips": ", ".join(f"{size} mm for {low:g} to {high:g}" for size, (low, high) in ranges.items()),
    }


def _job_words(scenario):
    """Return the figures of a job as a learner reads them."""
    return (
        _weld_words(scenario["setting"])
        | _pull_words(**{name: scenario[name] for name in one_job.RIVET_NAMES})
        | _list_words(scenario["property_class"], scenario["standard"])
        | {
            "guard": f"{one_job.guard_mm():.3f}",
            "new": f"{one_job.new_strength_n(scenario):.0f}",
            "room": one_job.room(scenario["old_rivets"], min(scenario["top_mm"], scenario["second_mm"])),
        }
    )


def _weld_and_pull(table):
    """Return the keys of the parts up to the pull."""
    settings = table["setting"].tolist()
    energy_j, head_j = [], []
    for setting in settings:
        current_a, time_ms = current_and_time(setting)
        weld = one_job.weld_settings(setting)
        energy_j.append(arc_energy_j(voltage_v=weld.voltage_v, current_a=current_a, time_ms=time_ms))
        head_j.append(energy_j[-1] * weld.rivet_heat_share)
    plan_n, slips = one_job.planned_pull(table)
    proof_n, breaking_n = one_job.stud_loads_n(table["property_class"])
    return {
        "heat": NumberKey(
            value=head_j,
            slips={"whole_arc": energy_j, "milliseconds": np.multiply(head_j, 1000)},
        ),
        "warm": ChoiceKey(right=[one_job.heat_word(setting) for setting in settings]),
        "pull": NumberKey(value=plan_n, slips=slips),
        "stud": ChoiceKey(
            right=chosen([plan_n < proof_n, plan_n < breaking_n], ["holds", "stretches"], otherwise="breaks")
        ),
        "record": ChoiceKey(right=chosen([table["peak_n"] <= plan_n], ["within"], otherwise="over")),
    }


def _plate(table):
    """Return the keys of the parts on the plate that is left."""
    second_mm, rise_mm, cup_mm = table["second_mm"], table["rise_mm"], table["cup_mm"]
    left_mm = second_mm + rise_mm - cup_mm
    verdicts = []
    rows = zip(left_mm, table["percent"] * second_mm / 100, table["setting"], table["second"], strict=True)
    for left, required, setting, second in rows:
        heat = one_job.strength_left(str(setting), str(second))
        found = one_job.verdict(left_mm=float(left), required_mm=float(required), heat=heat)
        verdicts.append(VERDICTS[found])
    return {
        "left": NumberKey(
            value=left_mm, slips={"no_button": np.abs(second_mm - cup_mm), "no_cup": second_mm + rise_mm}
        ),
        "verdict": ChoiceKey(right=verdicts),
    }


def _fasteners(table):
    """Return the keys of the parts on the new fasteners."""
    jobs = [dict(zip(table, row, strict=True)) for row in zip(*(table[name] for name in table), strict=True)]
    listed_n = [blind_rivet(str(name), one_job.NEW_MM).fastener_shear_n for name in table["standard"]]
    count, slips = one_job.counts(
        old_n=table["old_n"],
        new_n=[one_job.new_strength_n(job) for job in jobs],
        listed_n=listed_n,
        old_rivets=table["old_rivets"],
    )
    thinner_mm = np.minimum(table["top_mm"], table["second_mm"]).tolist()
    held = [one_job.room(*each) for each in zip(table["old_rivets"].tolist(), thinner_mm, strict=True)]
    lengths = [blind_rivet_length_mm(one_job.NEW_MM, closed_grip_mm=float(each)) for each in stack_mm(table)]
    return {
        "count": NumberKey(value=count, slips=slips),
        "fits": ChoiceKey(right=chosen([count <= held], ["fits"], otherwise="no_room")),
        "length": ChoiceKey(right=[f"length_{length:.0f}" for length in lengths]),
    }


WHOLE_JOB = Exercise(
    id="second_plate.whole_job",
    objective="reform",
    title="One job from weld to record",
    prompt=(
        "This is one job, from weld to record, and it is yours. The weld is that of your exercise on where "
        "the heat goes. The plates are as thick as in the section that you read. The rivet is the one whose "
        "pull you worked out. The work is done on {vehicle}, at {shop}."
        "\n\n"
        "Weld: stud M6, {current} A, {time} ms, {voltage} V; {share} % of the arc goes into the rivet head. "
        "By the model the bond line 4 mm out reaches {bond} °C, the second plate under the rivet {under} °C. "
        "For the bond line the shop warns above {warn} °C and stops above {stop} °C. "
        "The plate loses nothing below {softens} °C."
        "\n\n"
        "Pull: second plate {second}, {strength} N/mm²; interlock {interlock_mm} mm, shank {shank_mm} mm. "
        "At the most the collar asks for {crush_high} × strength × π × (shank + interlock) × interlock, "
        "and friction adds {friction}. "
        "Later the hole in the top plate of {top_words} asks for {opening}. "
        "The shop plans for the higher of both high ends and {reserve} % more. "
        "The stud is of class {property_class}: {area} mm², proof stress {proof} N/mm². "
        "The rivet came at {peak_n} N."
        "\n\n"
        "Plate: {second_mm} mm thick beside the site. The button stands {rise_mm} mm proud, the cup is "
        "{cup_mm} mm deep below the near face, and the skin is whole. "
        "A crack test that is close enough for this plate showed nothing, and the button may stand. "
        "At least {percent} % of the thickness must be left, proved beyond a guard of {guard} mm."
        "\n\n"
        "New fasteners: {old_rivets} old rivets bore {old_n} N each. A blind rivet of 4.8 mm ({standard}) "
        "bears {new} N in your plates, all by design; its list says {listed} N. "
        "Clear of the old sites and of any backing there is room for {room}. "
        "The top plate is {top_mm} mm thick, the adhesive {adhesive_mm} mm. "
        "Lengths and their grips: {grips} mm."
    ),
    shown=_job_words,
    parts=(
        Number(
            id="heat",
            ask="Weld: how much heat goes into the rivet head?",
            unit="J",
            relative_tolerance=0.01,
            tolerance_reason="All figures are given, so three of them come out: 1 % either way is right.",
            slips=(
                slip("whole_arc", "That is the whole arc. The head takes a share of it."),
                slip("milliseconds", "The time was taken in seconds. It is in thousandths of a second."),
            ),
        ),
        Choice(
            id="warm",
            ask="What did that heat do?",
            options=(
                option("stop", "The plate is as it was; the bond there counts as lost."),
                wrong(
                    "softened",
                    "The second plate has lost strength.",
                    "Hold its temperature against the one below which it loses nothing.",
                ),
                option("kept", "Nothing that counts: plate and bond are as they were."),
                option("warn", "The plate is as it was; the bond was warm: note it, no second weld there."),
            ),
        ),
        Number(
            id="pull",
            ask="Pull: for which force is the pull planned?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason="Forces are shown to ten newtons and strengths as whole ones: 2 % covers both.",
            slips=(
                slip("no_reserve", "That is the high end itself. What the shop adds to it is missing."),
                slip("low_end", "That starts from a low end. A plan goes by the high end."),
                slip("sum", "Both peaks were added. They come one after the other."),
            ),
        ),
        Choice(
            id="stud",
            ask="Does the stud bear the planned pull?",
            options=(
                option("holds", "Yes, and it keeps its length."),
                option("stretches", "No: it stretches for good before that. Take a stronger class."),
                wrong(
                    "flange",
                    "It cannot be told: only the flange of the stud counts.",
                    "The flange is wider than the thread. The thread is the narrow place of the stud.",
                ),
            ),
        ),
        Choice(
            id="record",
            ask="What goes in the record of the pull, and what follows?",
            options=(
                wrong(
                    "came_out",
                    "That it came out; nothing follows.",
                    "Without the force nobody sees whether this rivet behaved as planned.",
                ),
                option("over", "Setting, force, and that the plan was exceeded: stop and find out why."),
                option("within", "Setting and force; the row goes on."),
            ),
        ),
        Number(
            id="left",
            ask="Plate: how much metal is left under the cup?",
            unit="mm",
            absolute_tolerance=0.02,
            tolerance_reason="The sizes are given to five hundredths: less than half of that.",
            slips=(
                slip("no_button", "The button was left out. Metal goes on to its back."),
                slip("no_cup", "That is the whole height at the button. The cup has to come off."),
            ),
        ),
        Choice(
            id="verdict",
            ask="What becomes of the plate?",
            options=(
                wrong(
                    "reform",
                    "Press the button flat, then seal.",
                    "The button may stand. Pressing costs strain and gives no metal back.",
                ),
                option("backing", "It is too thin: add a backing."),
                option("again", "Not decided: measure again."),
                option("leave", "Leave it and seal it."),
            ),
        ),
        Number(
            id="count",
            ask="New fasteners: how many blind rivets bear what all the old rivets bore?",
            unit="rivets",
            absolute_tolerance=0.1,
            tolerance_reason="Rivets are counted, so only the whole number is right.",
            slips=(
                slip("by_list", "The list's load was used. In your plates a rivet bears less."),
                slip("turned", "Old and new changed places in the ratio."),
            ),
        ),
        Choice(
            id="fits",
            ask="Is there room for them?",
            options=(
                option("no_room", "No: another fastener or pattern is needed, and the maker is asked."),
                wrong(
                    "closer",
                    "There always is: set them closer, or in the old sites.",
                    "Distances are what the strength was worked out with. Old sites are no holes to use.",
                ),
                option("fits", "Yes. Net section and edges are checked with the layout."),
            ),
        ),
        Choice(
            id="length",
            ask="Which length of blind rivet do you take?",
            options=(
                wrong(
                    "length_12",
                    "12 mm",
                    "Its least grip is more than your stack: it would not clamp the plates.",
                ),
                option("length_8", "8 mm"),
                option("length_10", "10 mm"),
            ),
        ),
    ),
    draw=one_job.draw_job,
    solve=lambda table: _weld_and_pull(table) | _plate(table) | _fasteners(table),
    reasons=(
        "Heat: volts, amperes and seconds, then the share of the head; the bond warms before the plate. "
        "Pull: the higher of the two high ends and what the shop adds; what came is held against that. "
        "Plate: thickness and button less the cup, held against what is required, with the guard both ways. "
        "Fasteners: what the old ones bore over what a new one bears in these plates, rounded up. "
        "On a car the vehicle maker's procedure decides every one of these steps."
    ),
    read_again=HEADING,
)

EXERCISES = (WHOLE_JOB,)
