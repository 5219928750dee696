"""The explorers of the rivet page. Every number comes from the library, every picture from the drawings."""

from drawings import force_stroke, pull_out_chart, rule_bars, section_view, setting_at
from exercise_forms.panel import Panel, Pick, Slide, View
from grading.quantities import show_quantity
from secondplate import section, studs
from secondplate.rivet import Rivet, Sheet, Stack
from secondplate.rivet_rules import rivet_length_advice_mm, stack_findings
from secondplate.rivet_setting import setting_force_share, setting_stage
from secondplate.tail_pull_out import tail_pull_out

NOTHING = "nothing"
CALIPERS = {
    section.WORDS[name]: name
    for name in (
        "interlock_left_mm",
        "interlock_right_mm",
        "remaining_thickness_mm",
        "head_flushness_mm",
        "tail_diameter_mm",
        "button_diameter_mm",
    )
}
# What is said of each verdict; the library's word for the third is longer than a form has room for.
VERDICT_WORDS = {"accept": "inside", "reject": "outside", "not decidable": "cannot be decided"}
TOP = Slide(name="top_mm", label="Top plate, aluminium", unit="mm", low=0.8, high=3, step=0.1, start=1.5)
SECOND = Slide(
    name="second_mm", label="Second plate, aluminium", unit="mm", low=0.8, high=3.5, step=0.1, start=2
)


def _setting(*, stroke_percent):
    """Show the tools and plates at one place of the stroke, and the force there."""
    share = stroke_percent / 100
    stage, force = setting_stage(share), setting_force_share(share)
    return View(
        rows=(
            ("Stage", stage.name),
            ("Force, as part of the peak", f"{100 * force.low:.0f} to {100 * force.high:.0f} %"),
        ),
        sentence=f"{stage.happens.rstrip('.')}.",
        pictures=(setting_at(stroke_share=share), force_stroke(stroke_share=share)),
    )


def _rivet_length(*, top_mm, second_mm, shank, rivet_length_mm):
    """Show what each rule asks for, and which rules of the stack are broken."""
    stack = Stack(top=Sheet(thickness_mm=top_mm), second=Sheet(thickness_mm=second_mm))
    advice = rivet_length_advice_mm(stack, shank_diameter_mm=float(shank.removesuffix(" mm")))
    broken = [found.rule for found in stack_findings(stack) if found.kept is False]
    allowed = [
        rule.rule for rule in advice.rules if rule.band.low - 1e-9 <= rivet_length_mm <= rule.band.high + 1e-9
    ]
    return View(
        rows=(
            ("Both plates", show_quantity(stack.total_mm, "mm", 3)),
            ("Rivet longer than the plates by", show_quantity(rivet_length_mm - stack.total_mm, "mm", 3)),
            ("Rules that allow this length", ", ".join(allowed) or "none"),
            ("Rules of the stack that are broken", ", ".join(broken) or "none"),
        ),
        sentence="Where the rules do not meet, a section of a trial joint decides.",
        pictures=(rule_bars(advice, value=rivet_length_mm),),
    )


def _section(*, joint, fault, caliper, uncertainty_mm):
    """Show one of many joints, its measures, and the verdict with this measuring uncertainty."""
    drawn, _ = section.random_section(f"drawer {joint:g}".encode(), fault=fault)
    measured = section.measure(drawn)
    judged = section.judge(measured, section.typical_limits(), uncertainty_mm=uncertainty_mm)
    rows = [
        (section.WORDS[name].capitalize(), f"{float(getattr(measured, name)):.2f} mm")
        for name in CALIPERS.values()
    ]
    doubts = [section.WORDS[name] for name, verdict in judged.by_measure.items() if verdict != "accept"]
    why = f": {', '.join(doubts)}" if doubts else ""
    return View(
        rows=(*rows, ("Against the typical limits", VERDICT_WORDS[judged.overall] + why)),
        sentence=section.fault(fault).seen + ".",
        pictures=(section_view(drawn, measured=CALIPERS.get(caliper, "")),),
    )


def _pull_out(*, interlock_mm, penetration_mm, second_strength_mpa, pressure_mpa, stud):
    """Show the force that a pull on the head has to overcome beside what the stud carries."""
    pull = tail_pull_out(
        Rivet(rivet_length_mm=6.0),
        interlock_mm=interlock_mm,
        penetration_mm=penetration_mm,
        second_tensile_strength_mpa=second_strength_mpa,
        top_proof_stress_mpa=100.0,
        contact_pressure_mpa=pressure_mpa,
    )
    diameter = float(stud.removeprefix("M").removesuffix(" A2-50"))
    area = studs.stress_area_mm2(diameter, pitch_mm=studs.coarse_pitch_mm(diameter))
    load = studs.breaking_load_n(area, studs.property_class("A2-50").tensile_strength_mpa)
    first, second = pull.first_peak_n, pull.second_peak_n
    return View(
        rows=(
            ("First peak", kilonewtons(first)),
            ("of it friction on the shank", kilonewtons(pull.friction_n)),
            ("Second peak, at the hole of the top plate", kilonewtons(second)),
            ("The stud breaks at", f"{load / 1000:.1f} kN"),
        ),
        sentence=_enough(pull.peak_n, load),
        pictures=(pull_out_chart(pull, stud_n=load),),
    )


def kilonewtons(band):
    """Write a band of forces in kilonewtons."""
    return f"{band.low / 1000:.1f} to {band.high / 1000:.1f} kN"


def _enough(peak, load_n):
    """Say whether the stud outlasts the pull, over the whole band, part of it, or none."""
    if load_n > peak.high:
        return "The stud outlasts the pull anywhere in the band."
    if load_n > peak.low:
        return "Nobody can say beforehand whether stud or rivet gives: only a test pull can."
    return "The stud breaks first anywhere in the band: take a larger one."


RIVET_PANELS = {
    "setting": Panel(
        title="One rivet, set slowly",
        intro=("Move the stroke and watch where the metal goes. The force is a shape, not a measurement.",),
        controls=(Slide(name="stroke_percent", label="Stroke", unit="%", low=0, high=100, step=1, start=35),),
        view=_setting,
    ),
    "rivet_length": Panel(
        title="Rules for the length, side by side",
        intro=("Change the plates and see how far the rules lie apart.",),
        controls=(
            TOP,
            SECOND,
            Pick(name="shank", label="Shank of the rivet", options=("3.35 mm", "5.3 mm"), start="5.3 mm"),
            Slide(
                name="rivet_length_mm", label="Rivet length", unit="mm", low=3, high=10, step=0.5, start=5.5
            ),
        ),
        view=_rivet_length,
    ),
    "section": Panel(
        title="A drawer full of sections",
        intro=("Look at one joint after the other. All of them are invented.",),
        controls=(
            Slide(name="joint", label="Joint number", unit="", low=1, high=200, step=1, start=1),
            Pick(name="fault", label="Fault", options=section.FAULT_NAMES, start="sound"),
            Pick(
                name="caliper",
                label="Show the lines for",
                options=(NOTHING, *CALIPERS),
                start="interlock left",
            ),
            Slide(
                name="uncertainty_mm",
                label="Measuring uncertainty",
                unit="mm",
                low=0,
                high=0.2,
                step=0.01,
                start=0.05,
            ),
        ),
        view=_section,
    ),
    "pull_out": Panel(
        title="What the pull has to overcome",
        intro=("A 5.3 mm rivet of 6 mm in aluminium. Nobody has measured this pull: read the bands.",),
        controls=(
            Slide(name="interlock_mm", label="Interlock", unit="mm", low=0, high=1, step=0.05, start=0.5),
            Slide(
                name="penetration_mm",
                label="Depth of the tail in the second plate",
                unit="mm",
                low=0.5,
                high=3,
                step=0.1,
                start=1.6,
            ),
            Slide(
                name="second_strength_mpa",
                label="Tensile strength of the second plate",
                unit="MPa",
                low=150,
                high=600,
                step=5,
                start=215,
            ),
            Slide(
                name="pressure_mpa",
                label="Grip of the plates on the shank",
                unit="MPa",
                low=0,
                high=200,
                step=5,
                start=50,
            ),
            Pick(
                name="stud",
                label="Stud, softened by the weld",
                options=("M4 A2-50", "M5 A2-50", "M6 A2-50"),
                start="M6 A2-50",
            ),
        ),
        view=_pull_out,
    ),
}
