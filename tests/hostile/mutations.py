"""A hundred thousand spoilt hand-ins: the families, and classes drawn from them.

`python -m tests.hostile.mutations --count 100000` marks as many on one core and prints the table of families.
"""

import argparse
import random
import tempfile
from pathlib import Path

from tests.hostile import mutations_archives, mutations_lines, mutations_members, mutations_records
from tests.hostile.mutations_made import CLASS_SIZE, Mutant, sound_hand_ins

COUNT = 100_000


def untouched(sound, _):
    """Leave a hand-in as it is: a neighbour, who must lose nothing and of whom nothing may be said."""
    return Mutant(data=sound.with_members({}), standing=sound.all, quiet=True)


FAMILIES = {
    "left as it is": (5, untouched),
    **mutations_lines.FAMILIES,
    **mutations_archives.FAMILIES,
    **mutations_records.FAMILIES,
    **mutations_members.FAMILIES,
}
_NAMES = [*FAMILIES]
_SHARES = [share for share, _ in FAMILIES.values()]


def spoilt_class(sounds, number):
    """Return ``(family, sound, mutant)`` for each learner of a class; the same number gives the same."""
    dice = random.Random(f"spoilt class {number}")
    drawn = dice.choices(_NAMES, _SHARES, k=len(sounds))
    return [
        (family, sound, FAMILIES[family][1](sound, random.Random(f"{number} {place} {family}")))
        for place, (family, sound) in enumerate(zip(drawn, sounds, strict=True))
    ]


def main():
    """Mark as many spoilt hand-ins as asked for and print the table."""
    from tests.hostile.mutations_checks import HEADS, Tally, check_class, warm_up

    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=COUNT)
    parser.add_argument("--first", type=int, default=0, help="number of the first class")
    parser.add_argument("--show", type=int, default=20, help="faults to print")
    given = parser.parse_args()
    sounds, tally = sound_hand_ins(), Tally()
    classes = range(given.first, given.first + -(-given.count // CLASS_SIZE))
    with tempfile.TemporaryDirectory() as folder:
        warm_up(Path(folder) / "sound", sounds)
        for number in classes:
            tally.add(check_class(Path(folder) / str(number), sounds, number))
    for family, counts in {"": HEADS, **tally.rows()}.items():
        print(f"{family:<40}", *(f"{each:>14}" for each in counts))
    for fault in tally.faults[: given.show]:
        print(fault)


if __name__ == "__main__":
    main()
