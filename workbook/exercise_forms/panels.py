"""The explorers of the workbook. Every number comes from the library, every picture from the drawings."""

from drawings import (
    cable_drop,
    energy_chart,
    field_by_distance,
    gas_use,
    stud_and_holder,
    weld_cycle,
)
from exercise_forms.panel import Panel, Pick, Slide, View
from exercise_forms.plate_panels import PLATE_PANELS
from exercise_forms.removal_panels import REMOVAL_PANELS
from exercise_forms.rivet_panels import RIVET_PANELS
from grading.quantities import show_quantity
from secondplate import arc, electrics, gas, stud_weld

CURRENT = Slide(name="current_a", label="Current", unit="A", low=100, high=1200, step=10, start=600)
TIME = Slide(name="time_ms", label="Weld time", unit="ms", low=5, high=200, step=1, start=30)
LIFT = Slide(name="lift_mm", label="Lift", unit="mm", low=0.4, high=4, step=0.1, start=1)
PROTRUSION = Slide(name="protrusion_mm", label="Protrusion", unit="mm", low=0.5, high=5, step=0.1, start=2)
PRE_FLOW = Slide(name="pre_flow_s", label="Gas before the weld", unit="s", low=0, high=3, step=0.1, start=1)
POST_FLOW = Slide(
    name="post_flow_s", label="Gas after the weld", unit="s", low=0, high=3, step=0.1, start=0.5
)
STUD = Pick(name="stud", label="Stud", options=("3 mm", "4 mm", "5 mm", "6 mm"), start="6 mm")


def _charted(stud):
    """Return the chart's line of a picked stud."""
    return stud_weld.short_cycle_row(float(stud.removesuffix(" mm")))


def _band_text(band, unit):
    """Write a band the way a learner reads it."""
    return f"{show_quantity(band.low, '', 3)} to {show_quantity(band.high, unit, 3)}"


def _weld_cycle(*, current_a, time_ms, lift_mm, protrusion_mm, pre_flow_s, post_flow_s):
    """Show the weld cycle and how much longer the gas flows than the arc burns."""
    gas_ms = 1000 * (pre_flow_s + post_flow_s) + time_ms
    return View(
        rows=(
            ("The arc burns for", show_quantity(time_ms, "ms")),
            ("The gas flows for", show_quantity(gas_ms, "ms")),
            ("Spring travel that presses the stud in", show_quantity(protrusion_mm, "mm")),
        ),
        sentence=f"The gas flows {gas_ms / time_ms:.3g} times as long as the arc burns.",
        pictures=(
            weld_cycle(
                current_a=current_a,
                time_ms=time_ms,
                lift_mm=lift_mm,
                protrusion_mm=protrusion_mm,
                pre_flow_s=pre_flow_s,
                post_flow_s=post_flow_s,
            ),
        ),
    )


def _stud_and_holder(*, stud, head_diameter_mm, protrusion_mm, lift_mm, offset_mm):
    """Show where the stud's flange lands on the rivet head."""
    row = _charted(stud)
    margin = head_diameter_mm / 2 - row.flange_diameter_mm / 2 - abs(offset_mm)
    sentence = (
        "The flange stays on the head."
        if margin >= 0
        else "The flange runs over the edge of the head onto the shoulder: this weld will not hold."
    )
    return View(
        rows=(
            ("Flange of the stud", show_quantity(row.flange_diameter_mm, "mm")),
            ("From flange to edge of the head", show_quantity(margin, "mm", 3)),
        ),
        sentence=sentence,
        pictures=(
            stud_and_holder(
                stud_diameter_mm=row.stud_diameter_mm,
                flange_diameter_mm=row.flange_diameter_mm,
                protrusion_mm=protrusion_mm,
                lift_mm=lift_mm,
                head_diameter_mm=head_diameter_mm,
                offset_mm=offset_mm,
            ),
        ),
    )


def _energy(*, stud, current_a, time_ms, voltage_v):
    """Show the arc energy of a setting beside the chart's own setting for the same stud."""
    row = _charted(stud)
    energy = arc.arc_energy_j(voltage_v=voltage_v, current_a=current_a, time_ms=time_ms)
    charted = arc.arc_energy_j(voltage_v=voltage_v, current_a=row.current_a, time_ms=row.time_ms)
    depth = arc.melted_depth_mm(
        energy_j=energy, face_diameter_mm=row.flange_diameter_mm, material="carbon steel"
    )
    area = arc.energy_per_area_j_mm2(energy, face_diameter_mm=row.flange_diameter_mm)
    return View(
        rows=(
            ("Arc energy", show_quantity(energy, "J", 3)),
            ("Energy for each square millimetre of the face", show_quantity(area, "J/mm2", 3)),
            ("One face melts at most", _band_text(depth, "mm")),
            ("Chart for this stud, plain steel", f"{row.current_a:g} A, {row.time_ms:g} ms, {charted:.3g} J"),
        ),
        sentence=f"This setting gives {energy / charted:.2f} times the energy of the short-cycle chart.",
        pictures=(energy_chart(stud_diameter_mm=row.stud_diameter_mm, current_a=current_a, time_ms=time_ms),),
    )


def _gas(*, flow_l_min, pre_flow_s, time_ms, post_flow_s, pressure_bar, water_capacity_l, room_volume_m3):
    """Show what a stud, a cylinder and a closed room make of a gas setting."""
    per_stud = gas.gas_per_stud_l(
        flow_l_min=flow_l_min, pre_flow_s=pre_flow_s, weld_time_ms=time_ms, post_flow_s=post_flow_s
    )
    held = gas.cylinder_gas_l(water_capacity_l=water_capacity_l, pressure_bar=pressure_bar)
    studs = gas.studs_per_cylinder(gas_l=held, gas_per_stud_l=per_stud)
    minutes = gas.time_to_oxygen_limit_min(room_volume_m3=room_volume_m3, flow_l_min=flow_l_min)
    return View(
        rows=(
            ("Gas for one stud", show_quantity(per_stud, "L", 3)),
            ("Gas in the cylinder", show_quantity(held, "L", 3)),
            ("Whole studs from the cylinder", f"{studs:,}".replace(",", " ")),
            ("Valve left open, closed room: oxygen at 19.5 % after", f"{minutes / 60:.3g} h"),
        ),
        sentence="Below 19.5 % oxygen the air of a closed space is hazardous: shut the valve, let air in.",
        pictures=(
            gas_use(
                flow_l_min=flow_l_min, pre_flow_s=pre_flow_s, weld_time_ms=time_ms, post_flow_s=post_flow_s
            ),
        ),
    )


def _cable_and_field(*, current_a, loop_length_m, area_mm2, temperature_c, distance_m):
    """Show what the cable takes from the arc and how strong its field is."""
    cable = {
        "current_a": current_a,
        "loop_length_m": loop_length_m,
        "area_mm2": float(area_mm2.removesuffix(" mm2")),
        "temperature_c": temperature_c,
    }
    drop = electrics.voltage_drop_v(**cable)
    field = electrics.magnetic_field_ut(current_a=current_a, distance_m=distance_m)
    half = electrics.distance_for_field_m(current_a=current_a, field_ut=field / 2)
    return View(
        rows=(
            ("Voltage lost in the cables", show_quantity(drop, "V", 3)),
            ("Field of one cable at this distance", show_quantity(field, "uT", 3)),
            ("Half of that field at", show_quantity(half, "m", 3)),
        ),
        sentence="Twice the distance from one cable halves the field; cables side by side nearly cancel it.",
        pictures=(cable_drop(**cable), field_by_distance(current_a=current_a)),
    )


PANELS = (
    RIVET_PANELS
    | REMOVAL_PANELS
    | PLATE_PANELS
    | {
        "weld_cycle": Panel(
            title="One weld, slowed down",
            intro=("Change a setting and watch which strip of the picture moves.",),
            controls=(CURRENT, TIME, LIFT, PROTRUSION, PRE_FLOW, POST_FLOW),
            view=_weld_cycle,
        ),
        "stud_and_holder": Panel(
            title="Stud, holder and rivet head",
            intro=("Move the stud off the middle and see where its flange lands.",),
            controls=(
                STUD,
                Slide(
                    name="head_diameter_mm",
                    label="Rivet head",
                    unit="mm",
                    low=5,
                    high=10,
                    step=0.05,
                    start=7.75,
                ),
                PROTRUSION,
                LIFT,
                Slide(name="offset_mm", label="Off the middle", unit="mm", low=-3, high=3, step=0.1, start=0),
            ),
            view=_stud_and_holder,
        ),
        "energy": Panel(
            title="Current, time and energy",
            intro=("The same energy can come from more current or from more time. They do not weld alike.",),
            controls=(
                STUD,
                CURRENT,
                TIME,
                Slide(name="voltage_v", label="Arc voltage", unit="V", low=20, high=40, step=1, start=30),
            ),
            view=_energy,
        ),
        "gas": Panel(
            title="Gas for a stud, for a row, for a room",
            intro=("Most of the gas flows while nothing burns.",),
            controls=(
                Slide(name="flow_l_min", label="Flow", unit="L/min", low=4, high=25, step=0.5, start=10),
                PRE_FLOW,
                TIME,
                POST_FLOW,
                Slide(
                    name="water_capacity_l",
                    label="Cylinder, water capacity",
                    unit="L",
                    low=2,
                    high=50,
                    step=1,
                    start=10,
                ),
                Slide(
                    name="pressure_bar",
                    label="Cylinder, gauge pressure",
                    unit="bar",
                    low=5,
                    high=200,
                    step=5,
                    start=150,
                ),
                Slide(
                    name="room_volume_m3", label="Closed room", unit="m3", low=5, high=200, step=5, start=40
                ),
            ),
            view=_gas,
        ),
        "cable_and_field": Panel(
            title="Cable and field",
            intro=("The weld current passes through every metre of both cables.",),
            controls=(
                CURRENT,
                Slide(
                    name="loop_length_m",
                    label="Both cables together",
                    unit="m",
                    low=2,
                    high=40,
                    step=0.5,
                    start=10,
                ),
                Pick(
                    name="area_mm2",
                    label="Copper area",
                    options=("25 mm2", "35 mm2", "50 mm2", "70 mm2", "95 mm2"),
                    start="50 mm2",
                ),
                Slide(
                    name="temperature_c",
                    label="Copper temperature",
                    unit="degC",
                    low=0,
                    high=80,
                    step=1,
                    start=20,
                ),
                Slide(
                    name="distance_m",
                    label="Distance from the cable",
                    unit="m",
                    low=0.05,
                    high=2,
                    step=0.05,
                    start=0.3,
                ),
            ),
            view=_cable_and_field,
        ),
    }
)
