"""Parts of an exercise as QTI 2.1: what is asked, what is right, and how an answer becomes points.

Each writer returns the declarations, the body, the processing and the feedback of one part.
"""

from typing import NamedTuple
from xml.etree import ElementTree

from grading.exercise import Choice, Choices, Number, Range, Verdicts
from grading.export import printable
from grading.part_scores import FLOAT_NOISE
from grading.unit_spellings import shown_unit
from grading.variants import fill


class PartXml(NamedTuple):
    """The pieces of one part, each a list of elements for its place in the item."""

    declarations: list
    body: list
    processing: list
    feedback: list


def element(tag, *children, text=None, **attributes):
    """Return an element with attributes, children and text."""
    node = ElementTree.Element(tag, attributes)
    node.text = text
    node.extend(children)
    return node


def plain(text):
    """Return a text as it may stand in XML, on one line."""
    return " ".join(printable(text).split())


def text_of(root):
    """Return a tree as the bytes of a file."""
    ElementTree.indent(root)
    return ElementTree.tostring(root, encoding="utf-8", xml_declaration=True) + b"\n"


def _number(part, key, filled):
    """Write a number: right within its tolerance, else a slip with what it still earns."""
    rules = [_if(_near(part.id, key.value, part), _earn(part.points))]
    for slip in part.slips:
        if slip.id in key.slips:
            near = _near(part.id, key.slips[slip.id], part)
            rules.append(_if(near, *_slipped(part, slip)))
    return PartXml(
        [_declared(part.id, "float", [repr(float(key.value))])],
        [_field_line(part, filled, (("", part.id),))],
        [_first_of(rules)],
        [_feedback(part, slip) for slip in part.slips],
    )


def _range(part, key, filled):
    """Write a band: each end earns half, else a slip that leads to both ends."""
    low_id, high_id = f"{part.id}.low", f"{part.id}.high"
    low, high = _near(low_id, key.low, part), _near(high_id, key.high, part)
    rules = [
        _if(element("and", low, high), _earn(part.points)),
        _if(element("or", low, high), _earn(part.points / 2)),
    ]
    for slip in part.slips:
        if slip.id in key.slips:
            ends = key.slips[slip.id]
            both = element("and", _near(low_id, ends[0], part), _near(high_id, ends[1], part))
            rules.append(_if(both, *_slipped(part, slip)))
    # Two ends in the wrong order earn nothing, as in our own marking.
    ordered = element("lte", _variable(low_id), _variable(high_id))
    return PartXml(
        [
            _declared(low_id, "float", [repr(float(key.low))]),
            _declared(high_id, "float", [repr(float(key.high))]),
        ],
        [_field_line(part, filled, (("lowest", low_id), ("highest", high_id)))],
        [element("responseCondition", element("responseIf", ordered, _first_of(rules)))],
        [_feedback(part, slip) for slip in part.slips],
    )


def _choice(part, key, filled):
    """Write a choice of one: the right option, or one that carries a slip."""
    rules = [_if(_is(part.id, key.right), _earn(part.points))]
    slips = [(each.id, each.slip) for each in part.options if each.slip and each.id != key.right]
    rules += [_if(_is(part.id, option), *_slipped(part, slip)) for option, slip in slips]
    return PartXml(
        [_declared(part.id, "identifier", [key.right])],
        [_choices_of(part.id, fill(part.ask, filled), part.options, most="1")],
        [_first_of(rules)],
        _feedback_once(part, [slip for _, slip in slips]),
    )


def _choices(part, key, filled):
    """Write a choice of several: what a right one gives, a wrong one takes away."""
    share = part.points / len(key.right)
    mapping = element("mapping", lowerBound="0.0", upperBound=repr(float(part.points)), defaultValue="0.0")
    for option in part.options:
        value = share if option.id in key.right else -share
        mapping.append(element("mapEntry", mapKey=option.id, mappedValue=repr(value)))
    declared = _declared(part.id, "identifier", list(key.right), cardinality="multiple")
    declared.append(mapping)
    slips = [(each.id, each.slip) for each in part.options if each.slip and each.id not in key.right]
    # The wrong option that stands first names the slip, as on the page.
    named = [
        _if(element("member", _base("identifier", option), _variable(part.id)), _tell(part, slip))
        for option, slip in slips
    ]
    earned = element("mapResponse", identifier=part.id)
    return PartXml(
        [declared],
        [_choices_of(part.id, fill(part.ask, filled), part.options, most="0")],
        [_add(earned), *([_first_of(named)] if named else [])],
        _feedback_once(part, [slip for _, slip in slips]),
    )


def _verdicts(part, key, filled):
    """Write a table of verdicts: each row is a choice of its own and earns its share."""
    declarations, body, processing = [], [element("p", text=plain(fill(part.ask, filled)))], []
    share, slips = part.points / len(part.rows), []
    for row in part.rows:
        row_id = f"{part.id}.{row.id}"
        right = str(key.right[row.id])
        declarations.append(_declared(row_id, "identifier", [right]))
        body.append(_choices_of(row_id, fill(row.text, filled), part.verdicts, most="1"))
        rules = [_if(_is(row_id, right), _earn(share))]
        if row.slip:
            given = element("not", element("isNull", _variable(row_id)))
            rules.append(_if(given, _tell(part, row.slip)))
            slips.append(row.slip)
        processing.append(_first_of(rules))
    return PartXml(declarations, body, processing, _feedback_once(part, slips))


def _declared(name, kind, values, *, cardinality="single"):
    """Declare a response with what is right."""
    right = element("correctResponse", *(element("value", text=str(value)) for value in values))
    return element("responseDeclaration", right, identifier=name, cardinality=cardinality, baseType=kind)


def _field_line(part, filled, fields):
    """Return a line with the question and one field, or two, each with the unit behind it."""
    line = element("p", text=f"{plain(fill(part.ask, filled))} ")
    for label, name in fields:
        if label:
            _append_text(line, f" {label}: ")
        line.append(element("textEntryInteraction", responseIdentifier=name, expectedLength="12"))
        _append_text(line, f" {shown_unit(part.unit)}" if part.unit else "")
    return line


def _append_text(line, text):
    """Put text behind the last child of a line."""
    if len(line):
        line[-1].tail = (line[-1].tail or "") + text
    else:
        line.text += text


def _choices_of(name, ask, options, *, most):
    """Return a list of options to choose from; ``most`` is 0 where any number may be chosen."""
    listed = [element("simpleChoice", text=plain(each.text), identifier=each.id) for each in options]
    prompt = element("prompt", text=plain(ask))
    return element(
        "choiceInteraction", prompt, *listed, responseIdentifier=name, shuffle="false", maxChoices=most
    )


def _near(name, right, part):
    """Return the test that a response lies within the part's tolerance of a value."""
    right = float(right)
    width = max(part.absolute_tolerance, part.relative_tolerance * abs(right)) + FLOAT_NOISE * abs(right)
    return element(
        "equal",
        _variable(name),
        _base("float", repr(right)),
        toleranceMode="absolute" if width else "exact",
        **({"tolerance": f"{width!r} {width!r}"} if width else {}),
    )


def _is(name, value):
    """Return the test that a response is one option."""
    return element("match", _variable(name), _base("identifier", str(value)))


def _variable(name):
    """Return the value of a variable."""
    return element("variable", identifier=name)


def _base(kind, value):
    """Return a constant."""
    return element("baseValue", text=str(value), baseType=kind)


def _add(value):
    """Return the rule that adds a value to the score."""
    return element("setOutcomeValue", element("sum", _variable("SCORE"), value), identifier="SCORE")


def _earn(points):
    """Return the rule that adds points to the score."""
    return _add(_base("float", repr(float(points))))


def _tell(part, slip):
    """Return the rule that shows the sentence of a slip."""
    seen = element("multiple", _variable("FEEDBACK"), _base("identifier", f"{part.id}.{slip.id}"))
    return element("setOutcomeValue", seen, identifier="FEEDBACK")


def _slipped(part, slip):
    """Return the rules of a slip: what it still earns, and its sentence."""
    return (*([_earn(part.points * slip.credit)] if slip.credit else []), _tell(part, slip))


def _if(test, *rules):
    """Return a test with the rules that follow from it."""
    return (test, rules)


def _first_of(rules):
    """Return a condition of which the first test that holds counts."""
    tags = ("responseIf", *["responseElseIf"] * (len(rules) - 1))
    return element(
        "responseCondition",
        *(element(tag, test, *then) for tag, (test, then) in zip(tags, rules, strict=True)),
    )


def _feedback(part, slip):
    """Return the sentence of a slip, shown where the slip was seen."""
    return element(
        "modalFeedback",
        element("p", text=plain(slip.sentence)),
        outcomeIdentifier="FEEDBACK",
        identifier=f"{part.id}.{slip.id}",
        showHide="show",
    )


def _feedback_once(part, slips):
    """Return the sentences of slips, each once where several options carry the same one."""
    return [_feedback(part, slip) for slip in {slip.id: slip for slip in slips}.values()]


PART_WRITERS = {Number: _number, Range: _range, Choice: _choice, Choices: _choices, Verdicts: _verdicts}
