"""Hand-ins with a strange manifest or notebook, and hand-ins of one learner that come twice."""

import json

from grading.written_answers import practical_id
from tests.hostile.mutations_forging import PLAIN
from tests.hostile.mutations_made import MANIFEST, Mutant, Told, manifest_of, refused
from tests.hostile.mutations_records import deep
from tests.hostile.mutations_texts import ACTING_TEXTS, TIMES, WRONG_TYPES


def acting_names(sound, dice):
    """Give the learner a name to be shown that would act; the name that answers hang on stays as it is."""
    text = dice.choice(ACTING_TEXTS)
    shown = dice.choice((text, text * 3, f"Mara {text}", f"{text} Quillby"))[:200]
    data = sound.with_members({MANIFEST: manifest_of(sound, display_name=shown)})
    return Mutant(data=data, standing=sound.all, quiet=True)


def manifests(sound, dice):
    """Spoil the manifest: fields left out, of another kind, too long; another format, version or encoding."""
    field = dice.choice(("format", "version", "learner", "display_name", "course", "bank", "made_at"))
    content = json.loads(sound.members[MANIFEST])
    how = dice.randrange(6)
    if how == 0:
        del content[field]
        return refused(sound.with_members({MANIFEST: json.dumps(content).encode()}))
    if how == 1:
        wrong = dice.choice(
            [each for each in WRONG_TYPES if type(each) is not type(content[field]) and each != 1]
        )
        return refused(sound.with_members({MANIFEST: manifest_of(sound, **{field: wrong})}))
    if how == 2:
        wrong = {"version": 2}.get(field, dice.choice(("x" * 201, "\x00" * 5000)))
        return refused(sound.with_members({MANIFEST: manifest_of(sound, **{field: wrong})}))
    if how == 3:
        nobody = dice.choice(("", " ", "\u200b", "\x00\x1b", "\u202e", "\ufeff"))
        return refused(sound.with_members({MANIFEST: manifest_of(sound, learner=nobody)}))
    if how == 4:
        strange = dice.choice(
            (b"", b"null", b"[]", b"0", b'"x"', b"{", b"\xff\xfe", b"NaN", b"[" * 60_000, b"9" * 5000)
        )
        return refused(sound.with_members({MANIFEST: strange}))
    text = sound.members[MANIFEST]
    same = dice.choice(
        (
            text + b"\n",
            b" " + text,
            text.replace(b'", "', b'",\r\n"'),
            manifest_of(sound, course="x" * 200, bank="=1"),
        )
    )
    return Mutant(data=sound.with_members({MANIFEST: same}), standing=sound.all, quiet=True)


def times(sound, dice):
    """Let a hand-in be made in the far past or future, or at no time at all."""
    moment = dice.choice(TIMES)
    data = sound.with_members({MANIFEST: manifest_of(sound, made_at=moment)})
    return refused(data) if len(moment) > 200 else Mutant(data=data, standing=sound.all)


def nesting(sound, dice):
    """Nest lists and objects in each other in a manifest or a notebook."""
    depth, raw = deep(dice)
    if dice.random() < 0.5:
        return _with_notebook(sound, raw.encode(), readable=None, page=dice.choice(sound.pages))
    name = dice.choice(("format", "learner", "made_at", "x"))
    text = manifest_of(sound, **{name: "@@@"}).replace(PLAIN.encode(), raw.encode())
    data = sound.with_members({MANIFEST: text})
    return refused(data) if name != "x" else Mutant(data=data, standing=sound.all, or_refused=depth > 200)


def notebooks(sound, dice):
    """Put something else where a page's notebook should be; the answers do not depend on it."""
    page = dice.choice(sound.pages)
    cell = {
        "cell_type": "markdown",
        "metadata": {"nbgrader": {"grade_id": practical_id(page)}},
        "source": "x",
    }
    strange = dice.choice(
        (None, 0, "x", [], {}, True, [None], [[]], {"a": 1}, 1e308, "\ud800", "x" * 100_000)
    )
    good = lambda **changes: json.dumps({"cells": [{**cell, **changes}], "nbformat": 4}).encode()  # noqa: E731
    made, readable = dice.choice(
        (
            (b"", False),
            (b"not a notebook", False),
            (b"\x80\x04cos\nsystem\n.", False),
            (json.dumps(strange).encode(), False),
            (json.dumps({"cells": strange}).encode(), False),
            (json.dumps({"cells": [strange]}).encode(), False),
            (good(metadata=strange), False),
            (good(metadata={"nbgrader": strange}), False),
            (good(source=strange), isinstance(strange, str) or strange == []),
            (good(source=[strange]), isinstance(strange, str)),
            (good(source=dice.choice(ACTING_TEXTS)), True),
            (good(cell_type="code", source="open('ran_by_notebook', 'w').close()"), True),
            (good(source="x" * 1_000_000), True),
        )
    )
    return _with_notebook(sound, made, readable=readable, page=page)


def _with_notebook(sound, data, *, readable, page):
    """Return the hand-in with this notebook; where it cannot be read that must be told, and nothing else."""
    data = sound.with_members({f"pages/{page}.ipynb": data})
    told = () if readable or readable is None else (Told(kinds=frozenset({"hand-in"}), page=page),)
    return Mutant(data=data, standing=sound.all, told=told, quiet=bool(readable))


def twice(sound, dice):
    """Hand in twice: an earlier state, a spoilt copy, the same file again; every answer counts once."""
    page = dice.choice(sound.pages)
    journal = sound.members[f"answers/{page}.jsonl"]
    how = dice.randrange(4)
    if how == 0:
        other = sound.with_members({})
    elif how == 1:
        other = sound.with_members({f"answers/{page}.jsonl": journal[: dice.randrange(len(journal))]})
    elif how == 2:
        other = sound.with_members(
            {f"answers/{page}.jsonl": None, MANIFEST: manifest_of(sound, made_at=dice.choice(TIMES)[:200])}
        )
    else:
        other = sound.with_members({})[: -dice.randint(1, 200)]
        return Mutant(
            data=sound.with_members({}),
            more=(other,),
            standing=sound.all,
            told=(Told(kinds=frozenset({"hand-in"})),),
        )
    told = Told(kinds=frozenset({"several hand-ins"}))
    return Mutant(data=sound.with_members({}), more=(other,), standing=sound.all, told=(told,))


FAMILIES = {
    "acting names": (2, acting_names),
    "manifests": (3, manifests),
    "times of hand-ins": (1, times),
    "deep nesting elsewhere": (1, nesting),
    "notebooks": (2, notebooks),
    "handed in twice": (2, twice),
}
