"""Haque and Durandet 2016, steel sheets in both loads. Abstract read; coefficients not known."""

import numpy as np
import pytest

from secondplate.joint_facts import MODELS_LEFT_OUT
from secondplate.joint_strength import cross_tension, lap_shear
from secondplate.rivet import Rivet, Stack
from secondplate.sheet_alloys import body_sheet

SOURCE = "strength_prediction_2016"


@pytest.mark.parametrize("sheet", ["HC340LA", "HX340LAD", "HCT600X"])
def test_lap_shear_is_above_cross_tension_in_steel(sheet):
    """Joints of steel sheets were always stronger in lap shear; so are the best values of the model."""
    thickness = np.array([1.0, 1.5, 2.0])
    plates = Stack(
        top=body_sheet(sheet, thickness_mm=thickness), second=body_sheet(sheet, thickness_mm=thickness)
    )
    rivet = Rivet(rivet_length_mm=6.0, hardness_hv=480.0)
    tension = cross_tension(rivet, plates, interlock_mm=0.2, penetration_mm=1.0)
    assert np.all(lap_shear(rivet, plates).strength_n.best > tension.strength_n.best)


def test_hardness_and_thickness_raise_the_strength():
    """Both loads grow with the strength and thickness of the sheets."""
    rivet = Rivet(rivet_length_mm=6.0, hardness_hv=480.0)

    def strengths(sheet, thickness_mm):
        one = body_sheet(sheet, thickness_mm=thickness_mm)
        plates = Stack(top=one, second=one)
        tension = cross_tension(rivet, plates, interlock_mm=0.2, penetration_mm=1.0)
        return tension.strength_n.best, lap_shear(rivet, plates).strength_n.best

    thin, thick, hard = strengths("HC340LA", 1.0), strengths("HC340LA", 1.6), strengths("HCT600X", 1.6)
    assert thin[1] < thick[1] < hard[1]
    assert thin[0] <= thick[0] < hard[0]


def test_its_models_are_left_out_by_name():
    """Neither the model from the curve nor the relation of the two loads is computed here."""
    assert [model.load for model in MODELS_LEFT_OUT if model.source == SOURCE] == [
        "cross tension",
        "lap shear",
    ]
