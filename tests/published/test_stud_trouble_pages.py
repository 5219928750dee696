"""Three pages on visual inspection and trouble shooting. Read."""

import pytest

from secondplate.inspection import weld_sign

SOURCE = "stud_trouble_pages"


@pytest.mark.parametrize(
    ("sign_id", "cause", "correction"),
    [
        ("jagged", "time too long", "shorten the time"),
        ("off_centre", "moved", "still"),
        ("hang_up", "does not plunge", "free the gun"),
        ("partial", "tilted", "square"),
    ],
)
def test_signs(sign_id, cause, correction):
    """Cause and correction by what is seen."""
    sign = weld_sign(sign_id)
    assert sign.source == SOURCE
    assert cause in sign.cause.lower()
    assert correction in sign.correction.lower()


def test_porous_collar_contradicts_itself():
    """One page names too low a current as a cause of pores and then tells to reduce the current."""
    sign = weld_sign("porous")
    assert "current too low" in sign.cause
    assert "contradicts its own cause" in sign.note
    assert "current" not in sign.correction
