"""Where tables of speeds end: nothing is carried on beyond them, and each refusal names the limit."""

import numpy as np
import pytest

from secondplate.drilling_depth import spindle_speed_rpm
from secondplate.drilling_speeds import (
    DRILL_KINDS,
    HARDENED_STEEL,
    covering_tables,
    table_covers,
    table_feed_mm_rev,
    table_setting,
    table_speed_m_min,
)
from secondplate.hardness import brinell_hardness_hbw
from secondplate.removal_limits import DRILLS, RemovalJob

HARDNESSES_HV = np.arange(200, 701)
RIVET_HBW = brinell_hardness_hbw(480)


def test_rivet_of_480_is_beyond_high_speed_steel():
    """A rivet of 480 HV, 456 HBW, is refused with the last row of the table, and carbide lists it."""
    with pytest.raises(ValueError, match="must be between 375 HBW and 425 HBW, got 456 HBW"):
        table_speed_m_min(work_material=HARDENED_STEEL, drill="high-speed steel", hardness_hbw=RIVET_HBW)
    carbide = table_speed_m_min(work_material=HARDENED_STEEL, drill="solid carbide", hardness_hbw=RIVET_HBW)
    assert carbide.best == 30
    assert covering_tables(480) == ("cobalt steel", "solid carbide")


def test_last_rows_are_the_hard_limits_of_removal():
    """The hardness at which each table ends is the one that refuses drilling a rivet."""
    assert DRILL_KINDS == DRILLS
    for drill in DRILL_KINDS:
        covered = HARDNESSES_HV[table_covers(drill=drill, hardness_hv=HARDNESSES_HV)]
        job = RemovalJob(
            behind="open", bond="none", second_plate_mm=2, rivet_hardness_hv=float(covered[-1]), drill=drill
        )
        assert -1 < job.hardness_beyond_drill_hv <= 0


def test_a_table_covers_what_it_gives_a_speed_for():
    """Where a table covers a hardness it has a speed, and where not it refuses, at every hardness."""
    for drill in DRILL_KINDS:
        covered = table_covers(drill=drill, hardness_hv=HARDNESSES_HV)
        for hardness_hv in HARDNESSES_HV[::25]:
            asked = {"work_material": HARDENED_STEEL, "drill": drill, "hardness_hbw": 0.95 * hardness_hv}
            if covered[hardness_hv - 200]:
                assert table_speed_m_min(**asked).low > 0
            else:
                with pytest.raises(
                    ValueError, match=f"hardness of hardened steel for {drill} must be between"
                ):
                    table_speed_m_min(**asked)


def test_no_table_for_the_hardest_class():
    """Nothing is listed for 555 HV, nor for softer steel whose rows are not held here."""
    assert covering_tables(555) == covering_tables(300) == ()


def test_between_two_rows_the_harder_counts():
    """Carbide lists 380 to 440 and 450 to 500 HB; 445 has the slower speed, 440 the faster."""
    found = table_speed_m_min(
        work_material=HARDENED_STEEL, drill="solid carbide", hardness_hbw=np.array([380, 440, 445, 500])
    )
    assert found.best.tolist() == [40, 40, 30, 30]


def test_setting_ties_speed_and_turns():
    """Turns follow from the speed of the table and the diameter; bands stay bands."""
    drill = {"drill": "cobalt steel", "drill_diameter_mm": 6.5}
    setting = table_setting(work_material=HARDENED_STEEL, hardness_hbw=RIVET_HBW, **drill)
    for end in ("low", "best", "high"):
        speed = getattr(setting.cutting_speed_m_min, end)
        expected = spindle_speed_rpm(cutting_speed_m_min=speed, drill_diameter_mm=6.5)
        assert getattr(setting.spindle_speed_rpm, end) == expected
    assert setting.feed_mm_rev == table_feed_mm_rev(**drill)


def test_speeds_of_drills_of_one_setting_come_as_a_column():
    """A column of diameters gives a column of turns and feeds, thick drills slower."""
    setting = table_setting(
        work_material="aged aluminium", drill="high-speed steel", drill_diameter_mm=np.array([3, 5, 8.0])
    )
    assert np.all(np.diff(setting.spindle_speed_rpm.best) < 0)
    assert setting.feed_mm_rev.high.tolist() == [0.075, 0.15, 0.25]


@pytest.mark.parametrize(
    ("given", "said"),
    [
        (
            {"hardness_hbw": None},
            "hardness of hardened steel for high-speed steel must be a number in HBW, got None",
        ),
        (
            {"drill": "chisel"},
            "drill must be one of high-speed steel, cobalt steel, solid carbide, got 'chisel'",
        ),
        ({"work_material": "wood"}, "work material must be one of cold-drawn aluminium, .*, got 'wood'"),
        (
            {"work_material": "stainless 304", "drill": "solid carbide"},
            r"drill for stainless 304 must be one that tables list \(high-speed steel\), got 'solid carbide'",
        ),
        (
            {"work_material": "aged aluminium"},
            "hardness of aged aluminium must be left out, its rows have none, got 400",
        ),
        (
            {"work_material": "stainless 304", "hardness_hbw": 300},
            "hardness of stainless 304 for high-speed steel must be between 135 HBW and 275 HBW, got 300 HBW",
        ),
    ],
)
def test_what_tables_do_not_list_is_said(given, said):
    """Each refusal is one sentence that names the limit or the valid names."""
    asked = {"work_material": HARDENED_STEEL, "drill": "high-speed steel", "hardness_hbw": 400}
    with pytest.raises(ValueError, match=said):
        table_speed_m_min(**asked | given)


@pytest.mark.parametrize(
    ("diameter_mm", "said"),
    [
        (0, "drill diameter must be above 0 mm, got 0 mm"),
        (13, "drill diameter must be between 0 mm and 12.7 mm"),
    ],
)
def test_feeds_end_with_their_table(diameter_mm, said):
    """No feed is given for a drill beyond the table."""
    with pytest.raises(ValueError, match=said):
        table_feed_mm_rev(drill="high-speed steel", drill_diameter_mm=diameter_mm)


def test_hardness_of_no_rivet_is_refused():
    """A hardness outside 200 to 700 HV is refused before any table is looked at."""
    with pytest.raises(ValueError, match="hardness must be between 200 HV and 700 HV, got 48 HV"):
        covering_tables(48)


def test_one_hardness_at_a_time():
    """The list of tables is for one hardness; a column goes to ``table_covers``."""
    with pytest.raises(ValueError, match="hardness must be one number in HV, got 2 of them"):
        covering_tables([420, 480])
