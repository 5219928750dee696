"""Tables of drilling speeds and feeds on suppliers' pages. Read; cobalt and feeds of carbide from memory."""

import pytest

from secondplate.drilling_speeds import table_feed_mm_rev, table_speed_m_min
from secondplate.units import m_min_from_ft_min

SOURCE = "drill_speed_tables"
# Work material, hardest and softest row in HB, speed in ft/min for high-speed steel.
HIGH_SPEED_STEEL = [
    ("cold-drawn aluminium", None, 400),
    ("aged aluminium", None, 350),
    ("stainless 304", (135, 185), 55),
    ("stainless 304", (225, 275), 50),
    ("stainless 316", (135, 185), 50),
    ("martensitic stainless", (375, 425), 20),
    ("hardened steel", (375, 425), 15),
    ("free-machining alloy steel", (375, 425), 30),
]


@pytest.mark.parametrize(("work_material", "rows_hbw", "speed_ft_min"), HIGH_SPEED_STEEL)
def test_speeds_for_high_speed_steel(work_material, rows_hbw, speed_ft_min):
    """Each row comes back at both of its ends: 1055 to 1095 steel of 375 to 425 HB has 15 ft/min."""
    for hardness_hbw in rows_hbw or (None,):
        found = table_speed_m_min(
            work_material=work_material, drill="high-speed steel", hardness_hbw=hardness_hbw
        )
        expected = m_min_from_ft_min(speed_ft_min)
        assert (found.low, found.best, found.high) == pytest.approx((expected,) * 3, rel=1e-12)  # exact foot


def test_feet_to_metres():
    """350 ft/min are 106.68 m/min; 55, 20 and 15 are 16.8, 6.1 and 4.6."""
    assert m_min_from_ft_min(350) == pytest.approx(106.68, rel=1e-12)  # exact foot
    assert [round(m_min_from_ft_min(speed), 1) for speed in (55, 20, 15)] == [16.8, 6.1, 4.6]


@pytest.mark.parametrize(("rows_hbw", "speed"), [((380, 440), 40), ((450, 500), 30)])
def test_speeds_for_solid_carbide(rows_hbw, speed):
    """Steel of 380 to 440 HB has 40 m/min, of 450 to 500 HB 30; copied, so exact."""
    for hardness_hbw in rows_hbw:
        found = table_speed_m_min(
            work_material="hardened steel", drill="solid carbide", hardness_hbw=hardness_hbw
        )
        assert found.low == found.high == speed


def test_speeds_for_cobalt_steel():
    """4 to 8 m/min at 45 to 50 HRC, feed 0.02 to 0.05; from memory."""
    speed = table_speed_m_min(work_material="hardened steel", drill="cobalt steel", hardness_hbw=456)
    assert (speed.low, speed.high) == (4, 8)
    assert speed.basis.startswith("from memory")
    feed = table_feed_mm_rev(drill="cobalt steel", drill_diameter_mm=6.5)
    assert (feed.low, feed.high) == (0.02, 0.05)


@pytest.mark.parametrize(
    ("diameter_mm", "low", "high"),
    [(3.2, 0.025, 0.075), (3.3, 0.05, 0.15), (6.4, 0.05, 0.15), (6.5, 0.1, 0.25), (12.7, 0.1, 0.25)],
)
def test_feeds_by_diameter(diameter_mm, low, high):
    """Three steps of the diameter, each border with the smaller drills."""
    feed = table_feed_mm_rev(drill="high-speed steel", drill_diameter_mm=diameter_mm)
    assert (feed.low, feed.high) == (low, high)


@pytest.mark.parametrize("work_material", [name for name, rows_hbw, _ in HIGH_SPEED_STEEL if rows_hbw])
def test_nothing_beyond_the_printed_rows(work_material):
    """One Brinell number below the first row or above the last is refused."""
    ends = [end for name, rows_hbw, _ in HIGH_SPEED_STEEL if name == work_material for end in rows_hbw]
    for beyond in (min(ends) - 1, max(ends) + 1):
        with pytest.raises(
            ValueError, match=f"between {min(ends)} HBW and {max(ends)} HBW, got {beyond} HBW"
        ):
            table_speed_m_min(work_material=work_material, drill="high-speed steel", hardness_hbw=beyond)
