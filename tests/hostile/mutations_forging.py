"""Records forged with a true check sum, whatever their content.

A check sum is no signature: anybody can make a record with a true one, so its content is a stranger's.
"""

from hashlib import blake2b

from grading.answers import claimed_check, line_of
from tests.hostile.mutations_made import Mutant, Told

PLAIN = '"@@@"'  # stands in a line until a text of any kind takes its place
NOT_RIGHT = object()  # an answer that no part takes: what it does to tries is left open


def forged(content, previous, raw=None):
    """Return a line with a true check sum; ``raw`` is JSON, or not quite, to stand where the mark stands."""
    line = line_of({**content, "previous": previous})
    if raw is None:
        return line
    body = line[: line.rindex(b',"check":"')] + b"}"
    body = body.replace(PLAIN.encode(), raw.encode("utf-8", "surrogatepass"))
    return body[:-1] + b',"check":"' + blake2b(body, digest_size=16).hexdigest().encode() + b'"}'


class Changed:
    """A sound hand-in with one record of it about to be forged."""

    def __init__(self, sound, dice):
        self.sound, self.dice = sound, dice
        self.page = dice.choice(sound.pages)
        self.place = dice.randrange(len(sound.lines[self.page]))
        self.number = sound.numbers[self.page][self.place]
        self.content = sound.contents[self.number]
        self.line = self.place + 1

    def data(self, content, raw=None, *, changes=None):
        """Return the hand-in with this content in the record's place, the chain after it made good."""
        lines = list(self.sound.lines[self.page])
        previous = claimed_check(lines[self.place - 1]) if self.place else ""
        lines[self.place] = forged(content, previous, raw)
        for place in range(self.place + 1, len(lines)):
            before = claimed_check(lines[place - 1]) or _check_at_end(lines[place - 1])
            lines[place] = forged(self.sound.contents[self.sound.numbers[self.page][place]], before)
        journal = b"".join(line + b"\n" for line in lines)
        return self.sound.with_members({f"answers/{self.page}.jsonl": journal, **(changes or {})})

    @property
    def others(self):
        """The places of all other records."""
        return tuple(number for number in self.sound.all if number != self.number)

    def with_instead(self, content):
        """Return all records with this content in place of the one that is forged."""
        return tuple(content if number == self.number else number for number in self.sound.all)

    def lost(self, content, *kinds, raw=None):
        """Return the hand-in in which this record earns nothing and something of this kind must be told."""
        page = self.page if content.get("exercise") == self.content["exercise"] else ""
        told = Told(kinds=frozenset(kinds), page=page, line=self.line)
        return Mutant(data=self.data(content, raw), standing=self.others, told=(told,))


def _check_at_end(line):
    """Return the check of a line that nobody can read, from where it stands."""
    return line[-34:-2].decode()


def wrong_part(content, part):
    """Return a content in which one part is answered, but never right."""
    return {**content, "answers": {**content["answers"], part: NOT_RIGHT}}


def inside(typed, text, dice):
    """Return an answer of the same shape with a text in one of its places."""
    if isinstance(typed, dict) and typed:
        name = dice.choice(sorted(typed))
        return {**typed, name: text} if dice.random() < 0.7 else {**typed, text: typed[name]}
    if isinstance(typed, list) and typed:
        place = dice.randrange(len(typed))
        return [*typed[:place], text, *typed[place + 1 :]]
    return text
