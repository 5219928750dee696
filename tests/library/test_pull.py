"""One import for the pull: every public name of its parts."""

from secondplate import pull
from tests.library_reader import MEMBERS

PARTS = {
    name: member
    for name, member in MEMBERS.items()
    if name.startswith(("pull_chain.", "pull_out_forces.", "pull_tool.", "tail_pull_out."))
}


def test_every_public_name_is_here():
    """Whatever a part makes public is found in the one import, as the same thing."""
    assert len(PARTS) > 15
    for name, member in PARTS.items():
        short = name.rpartition(".")[2]
        assert short in pull.__all__
        assert getattr(pull, short) is member
