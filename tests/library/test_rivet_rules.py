"""Length rules side by side, findings on stacks, and what speaks against riveting."""

import pytest

from secondplate.rivet import Rivet, Sheet, Stack
from secondplate.rivet_rules import flange_findings, reasons_against, rivet_length_advice_mm, stack_findings


def stack(top=2.0, second=2.0, **sheets):
    """Make a stack of two aluminium sheets, with changes by ``top_`` and ``second_``."""
    of = {
        place: {k.removeprefix(place): v for k, v in sheets.items() if k.startswith(place)}
        for place in ("t_", "s_")
    }
    return Stack(top=Sheet(thickness_mm=top, **of["t_"]), second=Sheet(thickness_mm=second, **of["s_"]))


def kept(findings):
    """Return what each rule says, by its name."""
    return {finding.rule: finding.kept for finding in findings}


def test_rules_disagree_and_are_all_shown():
    """Four rules are named, none is chosen, and the sentence says which two lie farthest apart."""
    advice = rivet_length_advice_mm(stack(), shank_diameter_mm=5.3)
    assert [rule.rule for rule in advice.rules] == [
        "shank rule",
        "steel on casting",
        "length series",
        "about 2 mm",
    ]
    assert advice.agreed is None
    assert "Steel on casting gives 4.5 to 5.5 mm but shank rule gives 7.975 mm" in advice.contradiction
    assert len({rule.source for rule in advice.rules}) == 4


def test_only_rules_made_for_the_stack():
    """For aluminium on aluminium and a 5.3 mm rivet two rules remain, for steel on a casting two others."""
    found = rivet_length_advice_mm(stack(), shank_diameter_mm=5.3, only_suiting=True)
    assert [rule.rule for rule in found.rules] == ["shank rule", "about 2 mm"]
    steel = stack(t_family="steel", s_family="cast aluminium")
    found = rivet_length_advice_mm(steel, shank_diameter_mm=3.35, only_suiting=True)
    assert [rule.rule for rule in found.rules] == ["shank rule", "steel on casting"]


def test_a_stack_by_the_rules():
    """Thin on thick and hard on soft keeps every rule whose values are known."""
    good = stack(1.0, 2.0, t_tensile_strength_mpa=280.0, t_elongation_percent=12.0, s_elongation_percent=20.0)
    assert set(kept(stack_findings(good)).values()) == {True}
    assert reasons_against(good) == ()


@pytest.mark.parametrize(
    ("made", "rule"),
    [
        (stack(2.0, 1.5), "thin to thick"),
        (stack(3.0, 1.2), "one third"),
        (stack(2.0, 2.0), "two thirds"),
        (stack(s_tensile_strength_mpa=300.0), "hard to soft"),
        (stack(t_elongation_percent=20.0, s_elongation_percent=9.0), "ductile at the bottom"),
        (stack(3.5, 3.5), "whole stack"),
        (stack(0.7, 2.0), "aluminium thickness"),
        (stack(t_elongation_percent=7.0, s_elongation_percent=20.0), "aluminium elongation"),
        (stack(t_family="steel", t_tensile_strength_mpa=1700.0), "steel strength"),
        (stack(s_family="steel", s_tensile_strength_mpa=980.0), "strong second sheet"),
    ],
)
def test_each_rule_can_be_broken(made, rule):
    """Each rule says no to the stack that breaks it, with limit and value in its sentence."""
    (finding,) = [finding for finding in stack_findings(made) if finding.rule == rule]
    assert finding.kept is False
    assert " must be " in finding.sentence


def test_unknown_values_are_not_judged():
    """A rule whose value is not known says so and neither yes nor no."""
    found = {finding.rule: finding for finding in stack_findings(stack())}
    assert found["aluminium elongation"].kept is None
    assert found["aluminium elongation"].sentence.endswith("is not known")


def test_exactly_a_third_is_not_enough():
    """The published rule asks for more than a third; two sheets of 2 and 1 mm have exactly that."""
    assert kept(stack_findings(stack(2.0, 1.0)))["one third"] is False
    assert kept(stack_findings(stack(2.0, 1.01)))["one third"] is True


def test_reasons_name_what_is_wrong():
    """Too thick, too brittle, no metal below and a rivet that is too short are each told."""
    (thick,) = reasons_against(stack(3.5, 3.5))
    assert thick.startswith("Whole stack broken: All sheets together: must be at most 6.5 mm, is 7 mm")
    (plastic,) = reasons_against(stack(2.0, 2.0, s_family="polymer"))
    assert plastic.startswith("Second plate is no metal")
    (short,) = reasons_against(stack(3.0, 3.0), Rivet(rivet_length_mm=3.0))
    assert short == "Rivet too short: 3 mm does not reach through the 3 mm above the second plate"


def test_harder_rivet_for_harder_sheet():
    """A soft leg collapses on strong steel where a hard one does not."""
    strong = stack(1.4, 2.0, t_family="steel", t_tensile_strength_mpa=1500.0)
    soft, hard = (Rivet(rivet_length_mm=6.0, hardness_hv=hardness) for hardness in (280.0, 555.0))
    assert any(reason.startswith("Leg collapses") for reason in reasons_against(strong, soft))
    assert reasons_against(strong, hard) == ()


def test_flange_refuses_nonsense():
    """Lengths are above 0 and the family is one of the table's."""
    with pytest.raises(ValueError, match="edge distance must be above 0 mm, got 0 mm"):
        flange_findings(family="steel", edge_distance_mm=0, flange_width_mm=20, spacing_mm=30)
    with pytest.raises(ValueError, match="family must be one of aluminium, steel, got 'polymer'"):
        flange_findings(family="polymer", edge_distance_mm=9, flange_width_mm=20, spacing_mm=30)
