"""The explorers of the page on ways out: numbers from the library, pictures from the drawings."""

from drawings import chain_chart, drill_in_plates, minutes_chart, plan_chart, proof_chart
from exercise_forms.panel import Panel, Pick, View, slide
from exercise_forms.rivet_panels import kilonewtons
from grading.quantities import show_quantity
from secondplate import studs
from secondplate.bands import Band
from secondplate.drilling_depth import point_length_mm
from secondplate.plate_states import after_drilling
from secondplate.pull_chain import LoadChain
from secondplate.removal import JobTimes, first_row_no_slower, usual_times
from secondplate.rivet import Rivet
from secondplate.tail_pull_out import tail_pull_out
from secondplate.trials import RowModel, best_policy, plan_with_tests_min, reliability_shown, weld_all_min
from secondplate.weld_strength import fused_face, pull_limits

FLANGES_MM = {"M4": 5.0, "M5": 6.0, "M6": 7.0}
HEAD_MM, SHANK_MM = 7.75, 5.3
POINTS = {"118 degrees": 118.0, "135 degrees": 135.0, "170 degrees, nearly flat": 170.0}
WAYS = {
    "drill out": "drill",
    "weld and pull": "pull",
    "grind the head": "grind",
    "punch from behind": "punch",
}
LONGEST_ROW = 60


def _chain(*, stud, stud_class, fused_percent, offset_mm, interlock_mm):
    """Show the chain of one pull: what each link bears, and what the rivet needs."""
    diameter = float(stud.removeprefix("M"))
    area = studs.stress_area_mm2(diameter, pitch_mm=studs.coarse_pitch_mm(diameter))
    grade = studs.property_class(stud_class)
    low, high = (
        studs.proof_load_n(area, grade.proof_stress_mpa),
        studs.breaking_load_n(area, grade.tensile_strength_mpa),
    )
    face = fused_face(
        flange_diameter_mm=FLANGES_MM[stud],
        head_diameter_mm=HEAD_MM,
        offset_mm=offset_mm,
        fused_share=fused_percent / 100,
    )
    limits = pull_limits(face, stress_area_mm2=area, shank_diameter_mm=SHANK_MM, web_left_mm=0.8)
    needed = tail_pull_out(
        Rivet(rivet_length_mm=6.0),
        interlock_mm=interlock_mm,
        penetration_mm=1.6,
        second_tensile_strength_mpa=215.0,
        top_proof_stress_mpa=100.0,
    ).peak_n
    stud_n = Band(low=low, best=(low + high) / 2, high=high, basis="proof load to breaking load")
    chain = LoadChain(
        links_n={"stud": stud_n, "weld": limits.weld_n, "rivet head": limits.head_n}, needed_n=needed
    )
    return View(
        rows=(
            ("The rivet needs", kilonewtons(needed)),
            *((f"The {name} bears", kilonewtons(band)) for name, band in chain.links_n.items()),
            ("Weakest link", chain.weakest),
        ),
        sentence={
            "rivet first": "The rivet comes before anything else gives.",
            "chain first": f"The {chain.weakest} gives before the rivet comes.",
        }.get(chain.verdict, "The bands meet: only a test pull can tell."),
        pictures=(chain_chart(chain),),
    )


def _drill(*, top_mm, second_mm, drill_mm, point, depth_mm):
    """Show a drill in two plates at a depth, and what it leaves."""
    angle = POINTS[point]
    left = after_drilling(
        metal_mm=second_mm,
        tip_depth_mm=max(0.0, depth_mm - top_mm),
        drill_diameter_mm=drill_mm,
        point_angle_deg=angle,
    )
    length = point_length_mm(drill_diameter_mm=drill_mm, point_angle_deg=angle)
    through = depth_mm - length >= top_mm
    return View(
        rows=(
            ("The point is long", show_quantity(length, "mm", 3)),
            ("Full diameter through the top plate", "yes" if through else "not yet"),
            ("Left of the second plate", show_quantity(left.least_thickness_mm, "mm", 3)),
        ),
        sentence="A pointed drill is in the second plate before its full diameter is through the first.",
        pictures=(
            drill_in_plates(
                top_plate_mm=top_mm,
                second_plate_mm=second_mm,
                drilled_depth_mm=depth_mm,
                drill_diameter_mm=drill_mm,
                point_angle_deg=angle,
            ),
        ),
    )


def _job(way):
    """Return the usual times of a way at their best values."""
    times = usual_times(WAYS[way])
    return JobTimes(
        set_up_min=times.set_up_min.best,
        first_min=times.first_min.best,
        learning_rate=times.learning_rate.best,
        failure_probability=times.failure_probability.best,
        rework_min=times.rework_min.best,
        clean_up_min=times.clean_up_min.best,
    )


def _minutes(*, first, second, rivets):
    """Show the minutes of two ways for rows of any length."""
    ways = {first: _job(first), second: _job(second)}
    found = first_row_no_slower(ways[second], ways[first], longest=LONGEST_ROW)
    rows = tuple(
        (f"{name[0].upper()}{name[1:]}", f"{job.row_min(int(rivets)):.0f} min") for name, job in ways.items()
    )
    if first == second:
        sentence = "Pick two ways that differ."
    elif found is None:
        sentence = f"Up to {LONGEST_ROW} rivets, it takes longer to {second} than to {first}."
    else:
        sentence = f"From {found} rivets on, it takes no longer to {second} than to {first}."
    return View(rows=rows, sentence=sentence, pictures=(minutes_chart(ways, rivet_count=LONGEST_ROW),))


def _proof(*, pulls, failures):
    """Show what a number of pulls proves."""
    pulls = int(pulls)
    failed = min(int(failures), pulls - 1)
    shown = [
        (f"{100 * confidence:.0f} % sure", f"at least {100 * _shown(pulls, failed, confidence):.1f} % hold")
        for confidence in (0.5, 0.9, 0.95)
    ]
    return View(
        rows=(("Pulls", f"{pulls}, of them {failed} failed"), *shown),
        sentence="A row is too short to prove a set-up. A test pull finds one that is wrong.",
        pictures=(proof_chart(pulls=pulls, failures=failed),),
    )


def _shown(pulls, failed, confidence):
    """Return the reliability that pulls show."""
    return reliability_shown(pulls, failed, confidence=confidence, convention="binomial")


def _plan(*, rivets, wrong_percent, failed_pull_min, test_delay_min, reset_min):
    """Show what plans for a row cost, and the best first step."""
    model = RowModel(
        wrong_probability=wrong_percent / 100,
        good_failure_probability=0.02,
        wrong_failure_probability=0.6,
        failed_pull_min=failed_pull_min,
        test_delay_min=test_delay_min,
        reset_min=reset_min,
    )
    rivets = int(rivets)
    best = best_policy(rivets, model)
    return View(
        rows=(
            ("Weld the row", f"{weld_all_min(rivets, model):.1f} min lost"),
            ("Test one, then decide", f"{plan_with_tests_min(rivets, model, tests=1):.1f} min lost"),
            ("Best that can be done", f"{best.words}: {best.expected_min:.1f} min lost"),
        ),
        sentence="Minutes are what failures, tests and re-sets cost on the average over many such rows.",
        pictures=(plan_chart(model, row_rivets=rivets, longest=LONGEST_ROW),),
    )


REMOVAL_PANELS = {
    "chain": Panel(
        title="The chain of a pull",
        intro=("A 5.3 mm rivet of 6 mm in aluminium. Nobody has measured this pull: read the bands.",),
        controls=(
            Pick(name="stud", label="Stud", options=tuple(FLANGES_MM), start="M6"),
            Pick(
                name="stud_class",
                label="Property class after the weld",
                options=("A2-50", "A2-70"),
                start="A2-50",
            ),
            slide("fused_percent", "Fused part of the flange", "%", 5, 100, 5, 80),
            slide("offset_mm", "Stud off the middle", "mm", 0, 2, 0.1, 0),
            slide("interlock_mm", "Interlock of the rivet", "mm", 0, 1, 0.05, 0.5),
        ),
        view=_chain,
    ),
    "drill": Panel(
        title="A drill in two plates",
        intro=("Go down slowly and watch the point. The rivet is left out of the picture.",),
        controls=(
            slide("top_mm", "Top plate", "mm", 0.8, 3, 0.1, 1.2),
            slide("second_mm", "Second plate", "mm", 0.8, 3.5, 0.1, 2),
            slide("drill_mm", "Drill", "mm", 3, 10, 0.5, 6),
            Pick(name="point", label="Point", options=tuple(POINTS), start="118 degrees"),
            slide("depth_mm", "Tip below the upper face", "mm", 0, 6, 0.1, 1.2),
        ),
        view=_drill,
    ),
    "minutes": Panel(
        title="Minutes, one way beside another",
        intro=("The times are our own judgement. Your own timings come first.",),
        controls=(
            Pick(name="first", label="One way", options=tuple(WAYS), start="drill out"),
            Pick(name="second", label="The other way", options=tuple(WAYS), start="weld and pull"),
            slide("rivets", "Rivets in the row", "", 1, LONGEST_ROW, 1, 12),
        ),
        view=_minutes,
    ),
    "proof": Panel(
        title="What pulls prove",
        intro=("Add pulls, one after the other, and see how slowly proof grows.",),
        controls=(
            slide("pulls", "Pulls", "", 1, 60, 1, 5),
            slide("failures", "Failed among them", "", 0, 5, 1, 0),
        ),
        view=_proof,
    ),
    "plan": Panel(
        title="Weld one, or weld the row?",
        intro=("A wrong set-up fails 6 pulls in 10 here, a right one 1 in 50. Both are invented.",),
        controls=(
            slide("rivets", "Rivets in the row", "", 1, LONGEST_ROW, 1, 12),
            slide("wrong_percent", "Belief that the set-up is wrong", "%", 0, 100, 5, 20),
            slide("failed_pull_min", "A failed pull costs", "min", 0, 60, 1, 15),
            slide("test_delay_min", "A test pull costs", "min", 0, 30, 1, 4),
            slide("reset_min", "Setting up anew costs", "min", 0, 60, 1, 25),
        ),
        view=_plan,
    ),
}
